// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// What a job file may be at most. It is data from a stranger.
const (
	maxBytes = 1 << 20
	maxDepth = 32
)

// A node is one JSON value with its place. encoding/json by itself stops at the first unknown
// field and lets doubled keys, keys of another case, null and bad UTF-8 through, so the tree
// is built token by token.
type node struct {
	path   string
	kind   kind
	text   string // of a string: its value; of a number, true, false: as written
	fields []field
	items  []node
}

type field struct {
	name  string
	value node
}

type kind int8

const (
	object kind = iota
	array
	text
	number
	boolean
	null
)

var kindNames = [...]string{"an object", "a list", "a text", "a number", "true or false", "null"}

// show returns the node as it stands in the file, for a fault.
func (n node) show() string {
	switch n.kind {
	case object:
		return "{…}"
	case array:
		return "[…]"
	case text:
		return quote(shorten(n.text))
	}
	return n.text
}

// readTree reads one JSON value. Where it is none, or not whole, it reports false with the
// fault; doubled fields and broken characters are faults that leave a tree to go on with.
func readTree(data []byte) (root node, fs Faults, whole bool) {
	switch {
	case len(data) > maxBytes:
		fs.add("", "", "larger than %d bytes, the most allowed", maxBytes)
	case len(bytes.TrimSpace(data)) == 0:
		fs.add("", "", "empty: want a JSON object")
	case !utf8.Valid(data):
		n := 0
		for rest := data; ; n++ {
			c, size := utf8.DecodeRune(rest)
			if c == utf8.RuneError && size == 1 {
				break
			}
			rest = rest[size:]
			n += size - 1
		}
		fs.add("", "", "%s: not UTF-8", position(data, int64(n)))
	}
	if len(fs) > 0 {
		return node{}, fs, false
	}
	b := builder{data: data, dec: json.NewDecoder(bytes.NewReader(data))}
	b.dec.UseNumber()
	root, err := b.value("", 0)
	if err != nil {
		b.faults.add("", "", "%v", err)
		return node{}, b.faults, false
	}
	end := b.dec.InputOffset()
	if rest := bytes.TrimLeft(data[end:], " \t\r\n"); len(rest) > 0 {
		b.faults.add("", "", "%s: text after the end of the job", position(data, int64(len(data)-len(rest))))
	}
	return root, b.faults, true
}

type builder struct {
	data   []byte
	dec    *json.Decoder
	faults Faults
}

// value reads the next value. An error ends the reading; what it can go on after is a fault.
func (b *builder) value(path string, depth int) (node, error) {
	if depth > maxDepth {
		return node{}, fmt.Errorf("%s: nested deeper than %d, the most allowed", position(b.data, b.dec.InputOffset()), maxDepth)
	}
	t, err := b.dec.Token()
	if err != nil {
		return node{}, b.syntax(err)
	}
	n := node{path: path}
	switch v := t.(type) {
	case json.Delim:
		if v == '{' {
			return b.object(n, depth)
		}
		return b.array(n, depth)
	case string:
		n.kind, n.text = text, v
		if strings.ContainsRune(v, utf8.RuneError) {
			b.faults.add(path, n.show(), "holds a broken character")
		}
	case json.Number:
		n.kind, n.text = number, v.String()
	case bool:
		n.kind, n.text = boolean, fmt.Sprint(v)
	case nil:
		n.kind, n.text = null, "null"
	}
	return n, nil
}

func (b *builder) object(n node, depth int) (node, error) {
	n.kind = object
	seen := map[string]bool{}
	for b.dec.More() {
		t, err := b.dec.Token()
		if err != nil {
			return n, b.syntax(err)
		}
		name, _ := t.(string) // the decoder lets nothing else stand here
		path := join(n.path, name)
		v, err := b.value(path, depth+1)
		if err != nil {
			return n, err
		}
		if seen[name] {
			b.faults.add(path, v.show(), "given twice")
			continue
		}
		seen[name] = true
		n.fields = append(n.fields, field{name, v})
	}
	_, err := b.dec.Token()
	return n, b.syntax(err)
}

func (b *builder) array(n node, depth int) (node, error) {
	n.kind = array
	for i := 0; b.dec.More(); i++ {
		v, err := b.value(fmt.Sprintf("%s[%d]", n.path, i), depth+1)
		if err != nil {
			return n, err
		}
		n.items = append(n.items, v)
	}
	_, err := b.dec.Token()
	return n, b.syntax(err)
}

// syntax says where the JSON broke off.
func (b *builder) syntax(err error) error {
	if err == nil {
		return nil
	}
	at := b.dec.InputOffset()
	var s *json.SyntaxError
	switch {
	case errors.As(err, &s):
		at = s.Offset - 1 // the offset counts the byte that offends
		err = errors.New(s.Error())
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		at = int64(len(b.data))
		err = errors.New("the file ends before the job does")
	}
	return fmt.Errorf("%s: not JSON: %w", position(b.data, at), err)
}

// position returns the line and column of an offset, both from 1.
func position(data []byte, offset int64) string {
	offset = max(0, min(offset, int64(len(data))))
	before := data[:offset]
	line := bytes.Count(before, []byte("\n")) + 1
	column := utf8.RuneCount(before[bytes.LastIndexByte(before, '\n')+1:]) + 1
	return fmt.Sprintf("line %d, column %d", line, column)
}

// join adds a field's name to a path; a name that is no plain word is quoted.
func join(path, name string) string {
	plain := name != "" && len(name) <= 40
	for _, r := range name {
		plain = plain && (r == '_' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9')
	}
	if !plain {
		name = quote(shorten(name))
	}
	if path == "" {
		return name
	}
	return path + "." + name
}
