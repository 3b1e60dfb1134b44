// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A node is one JSON value and where it begins in the file.
type node struct {
	offset int
	kind   kind
	text   string // of a text: its value; of a number, true, false, null: as written
	fields []field
	items  []node
}

type field struct {
	name  string
	value node
}

type kind int8

const (
	nothing kind = iota // read yet
	object
	array
	text
	number
	boolean
	null
)

var kindNames = [...]string{object: "an object", array: "a list", text: "a text", number: "a number", boolean: "true or false"}

// show returns the node as it stands in the file.
func (n *node) show() string {
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

// find returns the node at a path, or nil.
func (d *Document) find(path string) *node {
	n := &d.root
	for path != "" {
		path = strings.TrimPrefix(path, ".")
		if index, rest, ok := strings.Cut(strings.TrimPrefix(path, "["), "]"); path[0] == '[' && ok {
			i, err := strconv.Atoi(index)
			if err != nil || i < 0 || i >= len(n.items) {
				return nil
			}
			n, path = &n.items[i], rest
			continue
		}
		end := len(path)
		if i := strings.IndexAny(path, ".["); i >= 0 {
			end = i
		}
		next := n.field(path[:end])
		if next == nil {
			return nil
		}
		n, path = next, path[end:]
	}
	if n.kind == nothing {
		return nil
	}
	return n
}

func (n *node) field(name string) *node {
	for i := range n.fields {
		if n.fields[i].name == name {
			return &n.fields[i].value
		}
	}
	return nil
}

// parse builds the tree, token by token. What breaks it off is a fault of the whole; fields given twice and
// broken characters are faults that leave a tree to go on with.
func (d *Document) parse() {
	data := d.data
	switch {
	case len(data) > d.reader.MostBytes:
		d.broken(-1, nil, "larger than %d bytes, the most allowed", d.reader.MostBytes)
		return
	case len(bytes.TrimSpace(data)) == 0:
		d.broken(-1, nil, "empty: want a JSON object")
		return
	case !utf8.Valid(data):
		valid := 0
		for valid < len(data) {
			c, size := utf8.DecodeRune(data[valid:])
			if c == utf8.RuneError && size == 1 {
				break
			}
			valid += size
		}
		d.broken(valid, nil, "not UTF-8")
		return
	}
	p := parser{d, json.NewDecoder(bytes.NewReader(data))}
	p.dec.UseNumber()
	if !p.value(&d.root, nil, 0) {
		return
	}
	end := int(p.dec.InputOffset())
	if rest := bytes.TrimLeft(data[end:], " \t\r\n"); len(rest) > 0 {
		d.broken(len(data)-len(rest), nil, "text after the end")
	}
}

// broken notes a fault of the whole, at an offset or, where that is below 0, nowhere.
func (d *Document) broken(offset int, err error, want string, args ...any) {
	f := Fault{Want: fmt.Sprintf(want, args...), Err: err}
	if offset >= 0 {
		f.Line, f.Column = d.position(offset)
	}
	d.note(f)
}

type parser struct {
	doc *Document
	dec *json.Decoder
}

// value reads the next value into n. It reports false where the reading has to end.
func (p parser) value(n *node, at *place, depth int) bool {
	n.offset = p.next()
	if depth > p.doc.reader.MostDepth {
		p.doc.broken(n.offset, nil, "nested deeper than %d, the most allowed", p.doc.reader.MostDepth)
		return false
	}
	t, err := p.dec.Token()
	if err != nil {
		return p.syntax(err)
	}
	switch v := t.(type) {
	case json.Delim:
		if v == '{' {
			return p.object(n, at, depth)
		}
		return p.array(n, at, depth)
	case string:
		n.kind, n.text = text, v
	case json.Number:
		n.kind, n.text = number, v.String()
	case bool:
		n.kind, n.text = boolean, fmt.Sprint(v)
	case nil:
		n.kind, n.text = null, "null"
	}
	return true
}

// next returns where the next value begins.
func (p parser) next() int {
	at := int(p.dec.InputOffset())
	return len(p.doc.data) - len(bytes.TrimLeft(p.doc.data[at:], " \t\r\n,:"))
}

func (p parser) object(n *node, at *place, depth int) bool {
	n.kind = object
	seen := map[string]bool{}
	for p.dec.More() {
		t, err := p.dec.Token()
		if err != nil {
			return p.syntax(err)
		}
		f := field{name: t.(string)} // the decoder lets nothing else stand here
		in := &place{up: at, name: f.name}
		if !p.value(&f.value, in, depth+1) {
			return false
		}
		if seen[f.name] {
			p.doc.fault(in, &f.value, "given twice", nil)
			continue
		}
		seen[f.name] = true
		n.fields = append(n.fields, f)
	}
	_, err := p.dec.Token()
	return p.syntax(err)
}

func (p parser) array(n *node, at *place, depth int) bool {
	n.kind = array
	for p.dec.More() {
		n.items = append(n.items, node{})
		i := len(n.items) - 1
		if !p.value(&n.items[i], &place{up: at, item: i, list: true}, depth+1) {
			return false
		}
	}
	_, err := p.dec.Token()
	return p.syntax(err)
}

// syntax notes where the JSON broke off, and reports whether it did not. The scanner of encoding/json names the
// place; its tokens count it in two ways.
func (p parser) syntax(err error) bool {
	if err == nil {
		return true
	}
	var whole json.RawMessage
	var s *json.SyntaxError
	switch errors.As(json.Unmarshal(p.doc.data, &whole), &s); {
	case s == nil:
		p.doc.broken(-1, err, "not JSON: %v", err)
	case int(s.Offset) >= len(p.doc.data) && s.Error() == "unexpected end of JSON input":
		p.doc.broken(len(p.doc.data), io.ErrUnexpectedEOF, "not JSON: it ends too early")
	default:
		p.doc.broken(int(s.Offset)-1, s, "not JSON: %s", s.Error()) // the offset counts the byte that offends
	}
	return false
}
