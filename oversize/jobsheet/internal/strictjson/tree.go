// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import (
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
	offset int32
	kind   kind
	text   string  // of a text: its value; of a number, true, false, null: as written
	fields []field // of an object, or the items of a list, which have no name
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
	return strings.Trim(quote(n.text), `"`) // a number, or what stands where one should and may not print
}

// find returns the node at a path, or nil.
func (d *Document) find(path string) *node {
	n := &d.root
	for step := range strings.FieldsFuncSeq(path, func(r rune) bool { return r == '.' || r == '[' || r == ']' }) {
		if n.kind == array {
			i, err := strconv.Atoi(step)
			if err != nil || i < 0 || i >= len(n.fields) {
				return nil
			}
			n = &n.fields[i].value
		} else if n = n.field(step); n == nil {
			return nil
		}
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

// parse builds the tree. What breaks it off is a fault of the whole; fields given twice and
// broken characters are faults that leave a tree to go on with.
func (d *Document) parse(raw []byte) {
	d.data = string(raw)
	data := d.data
	switch {
	case len(data) > d.reader.MostBytes:
		d.broken(-1, nil, "larger than %d bytes, the most allowed", d.reader.MostBytes)
		return
	case strings.TrimSpace(data) == "":
		d.broken(-1, nil, "empty: want a JSON object")
		return
	case !utf8.ValidString(data):
		valid := 0
		for {
			c, size := utf8.DecodeRuneInString(data[valid:])
			if c == utf8.RuneError && size == 1 {
				break
			}
			valid += size
		}
		d.broken(valid, nil, "not UTF-8")
		return
	}
	p := parser{doc: d}
	if !p.value(&d.root, nil, 0) {
		return
	}
	if rest := strings.TrimLeft(data[p.at:], blanks); len(rest) > 0 {
		if !json.Valid(raw[:p.at]) {
			p.syntax()
			return
		}
		d.broken(len(data)-len(rest), nil, "text after the end")
	} else if !json.Valid(raw) {
		p.syntax()
	}
}

const blanks = " \t\r\n"

// broken notes a fault of the whole, at an offset or, where that is below 0, nowhere.
func (d *Document) broken(offset int, err error, want string, args ...any) {
	f := Fault{Want: fmt.Sprintf(want, args...), Err: err}
	if offset >= 0 {
		f.Line, f.Column = d.position(offset)
	}
	d.note(f)
}

// A parser follows where values begin and end. It lets pass much that is no JSON: what it has read is asked of
// encoding/json afterwards, and so is where it could not go on.
type parser struct {
	doc *Document
	at  int // offset of what comes next
}

// value reads the next value into n. It reports false where the reading has to end.
func (p *parser) value(n *node, at *place, depth int) bool {
	first := p.peek()
	n.offset = int32(p.at)
	if depth > p.doc.reader.MostDepth {
		p.doc.broken(p.at, nil, "nested deeper than %d, the most allowed", p.doc.reader.MostDepth)
		return false
	}
	switch first {
	case '{':
		return p.object(n, at, depth)
	case '[':
		return p.array(n, at, depth)
	case '"':
		n.kind = text
		return p.text(&n.text)
	}
	rest := p.doc.data[p.at:]
	end := strings.IndexAny(rest, blanks+",:]}")
	if end < 0 {
		end = len(rest)
	}
	n.text, p.at = rest[:end], p.at+end
	switch n.text {
	case "":
		return p.syntax()
	case "true", "false":
		n.kind = boolean
	case "null":
		n.kind = null
	default:
		n.kind = number
	}
	return true
}

// peek returns the byte that comes next after blanks, 0 at the end.
func (p *parser) peek() byte {
	for ; p.at < len(p.doc.data); p.at++ {
		if c := p.doc.data[p.at]; c != ' ' && c != '\n' && c != '\t' && c != '\r' {
			return c
		}
	}
	return 0
}

// more goes past a comma to what comes next, or past the end of an object or array, where it reports false.
func (p *parser) more(end byte) bool {
	for {
		switch p.peek() {
		case end:
			p.at++
			return false
		case ',':
			p.at++
		default:
			return true
		}
	}
}

// text reads a text, at its first quote.
func (p *parser) text(into *string) bool {
	data := p.doc.data
	escaped := false
	for i := p.at + 1; i < len(data); i++ {
		switch data[i] {
		case '\\':
			escaped = true
			i++
		case '"':
			whole := data[p.at : i+1]
			*into, p.at = whole[1:len(whole)-1], i+1
			return !escaped || json.Unmarshal([]byte(whole), into) == nil || p.syntax()
		}
	}
	return p.syntax()
}

// Of few fields is most of what stands in a list; many are looked up in a map when another is asked for.
const few, many = 3, 16

func (p *parser) object(n *node, at *place, depth int) bool {
	n.kind = object
	in := &place{up: at} // one for all, since a path is made at once
	var seen map[string]bool
	for p.at++; p.more('}'); {
		if p.peek() != '"' {
			return p.syntax()
		}
		var f field
		if !p.text(&f.name) {
			return false
		}
		if p.peek() != ':' {
			return p.syntax()
		}
		p.at++
		in.name = f.name
		if !p.value(&f.value, in, depth+1) {
			return false
		}
		if len(n.fields) == many {
			seen = map[string]bool{}
			for _, g := range n.fields {
				seen[g.name] = true
			}
		}
		if seen[f.name] || seen == nil && n.field(f.name) != nil {
			p.doc.fault(in, &f.value, "given twice", nil)
			continue
		}
		if seen != nil {
			seen[f.name] = true
		}
		if n.fields == nil {
			n.fields = make([]field, 0, few)
		}
		n.fields = append(n.fields, f)
	}
	return true
}

func (p *parser) array(n *node, at *place, depth int) bool {
	n.kind = array
	in := &place{up: at, list: true}
	for p.at++; p.more(']'); {
		n.fields = append(n.fields, field{})
		in.item = len(n.fields) - 1
		if !p.value(&n.fields[in.item].value, in, depth+1) {
			return false
		}
	}
	return true
}

// syntax notes where the JSON breaks off, and returns false. The scanner of encoding/json names the place.
func (p *parser) syntax() bool {
	var whole json.RawMessage
	var s *json.SyntaxError
	switch err := json.Unmarshal([]byte(p.doc.data), &whole); {
	case !errors.As(err, &s):
		p.doc.broken(p.at, err, "not JSON")
	case int(s.Offset) >= len(p.doc.data) && s.Error() == "unexpected end of JSON input":
		p.doc.broken(len(p.doc.data), io.ErrUnexpectedEOF, "not JSON: it ends too early")
	default:
		p.doc.broken(int(s.Offset)-1, s, "not JSON: %s", s.Error()) // the offset counts the byte that offends
	}
	return false
}
