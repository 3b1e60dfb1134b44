// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
)

// A node is a value of a job file as it stands there: names in their order, numbers and texts as they were
// typed, what no form shows among them. The nil node is a value that is not there.
type node struct {
	kind    byte    // '{', '[', '"' for a text, '0' for a number, true, false or null
	text    string  // of a text; of a number and the like as it is written
	members []field // of an object
	items   []*node // of a list
}

type field struct {
	name  string
	value *node
}

func object() *node              { return &node{kind: '{'} }
func list() *node                { return &node{kind: '['} }
func textNode(s string) *node    { return &node{kind: '"', text: s} }
func literalNode(s string) *node { return &node{kind: '0', text: s} }

// parse reads a JSON object.
func parse(data string) (*node, error) {
	d := json.NewDecoder(strings.NewReader(data))
	d.UseNumber()
	n, err := readNode(d, 0)
	if err != nil {
		return nil, err
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return nil, errors.New("text after the end")
	}
	if n.kind != '{' {
		return nil, errors.New("want an object")
	}
	return n, nil
}

// deepest is how deep values may stand in values: deeper than in any job.
const deepest = 64

func readNode(d *json.Decoder, depth int) (*node, error) {
	t, err := d.Token()
	if err != nil {
		return nil, err
	}
	if depth > deepest {
		return nil, fmt.Errorf("nested deeper than %d", deepest)
	}
	switch t := t.(type) {
	case string:
		return textNode(t), nil
	case json.Delim:
		n := &node{kind: byte(t)}
		for d.More() {
			name := ""
			if n.kind == '{' {
				t, err := d.Token()
				if err != nil {
					return nil, err
				}
				name = t.(string)
			}
			value, err := readNode(d, depth+1)
			if err != nil {
				return nil, err
			}
			if n.kind == '{' {
				n.members = append(n.members, field{name, value})
			} else {
				n.items = append(n.items, value)
			}
		}
		_, err := d.Token()
		return n, err
	case nil:
		return literalNode("null"), nil
	}
	return literalNode(fmt.Sprint(t)), nil
}

// String returns the value as JSON, indented.
func (n *node) String() string {
	var b bytes.Buffer
	n.write(&b, "\n")
	b.WriteByte('\n')
	return b.String()
}

func (n *node) write(b *bytes.Buffer, line string) {
	deeper := line + "  "
	switch {
	case n.kind == '"':
		b.WriteString(quoted(n.text))
	case n.kind == '0':
		b.WriteString(n.text)
	case len(n.members)+len(n.items) == 0:
		b.WriteByte(n.kind)
		b.WriteByte(n.kind + 2)
	default:
		b.WriteByte(n.kind)
		for i, m := range n.members {
			between(b, i, deeper)
			b.WriteString(quoted(m.name) + ": ")
			m.value.write(b, deeper)
		}
		for i, item := range n.items {
			between(b, i, deeper)
			item.write(b, deeper)
		}
		b.WriteString(line)
		b.WriteByte(n.kind + 2) // the other half of the pair
	}
}

func between(b *bytes.Buffer, i int, line string) {
	if i > 0 {
		b.WriteByte(',')
	}
	b.WriteString(line)
}

// quoted returns a text as JSON.
func quoted(s string) string {
	if !strings.ContainsFunc(s, func(r rune) bool { return r < ' ' || r > '~' || r == '"' || r == '\\' }) {
		return `"` + s + `"`
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		return strconv.Quote(s)
	}
	return strings.TrimSuffix(b.String(), "\n")
}

// clone returns a copy that shares nothing.
func (n *node) clone() *node {
	c := *n
	c.members, c.items = slices.Clone(n.members), slices.Clone(n.items)
	for i := range c.members {
		c.members[i].value = c.members[i].value.clone()
	}
	for i := range c.items {
		c.items[i] = c.items[i].clone()
	}
	return &c
}

// A step is one step of a path: a name, or the place of an item.
type step struct {
	name string
	item int // -1 for a name
}

// steps takes a path apart: "cylinders[0].readings[3].depth".
func steps(path string) ([]step, error) {
	var list []step
	for rest := path; rest != ""; {
		switch {
		case rest[0] == '[':
			number, after, ok := strings.Cut(rest[1:], "]")
			i, err := strconv.Atoi(number)
			if !ok || err != nil || i < 0 {
				return nil, fmt.Errorf("no path: %.80q", path)
			}
			list, rest = append(list, step{item: i}), after
		case rest[0] == '.' && len(list) > 0:
			rest = rest[1:]
			if rest == "" || rest[0] == '.' || rest[0] == '[' {
				return nil, fmt.Errorf("no path: %.80q", path)
			}
		case rest[0] == '"':
			name, err := strconv.QuotedPrefix(rest)
			if err != nil {
				return nil, fmt.Errorf("no path: %.80q", path)
			}
			rest = rest[len(name):]
			name, _ = strconv.Unquote(name)
			list = append(list, step{name, -1})
		default:
			end := strings.IndexAny(rest, ".[")
			if end < 0 {
				end = len(rest)
			}
			if end == 0 {
				return nil, fmt.Errorf("no path: %.80q", path)
			}
			list, rest = append(list, step{rest[:end], -1}), rest[end:]
		}
	}
	return list, nil
}

// child returns what one step leads to, or nil.
func (n *node) child(s step) *node {
	switch {
	case n == nil:
	case s.item < 0:
		for _, m := range n.members {
			if m.name == s.name {
				return m.value
			}
		}
	case s.item < len(n.items):
		return n.items[s.item]
	}
	return nil
}

// at returns the value at a path, or nil.
func (n *node) at(path string) *node {
	list, err := steps(path)
	if err != nil {
		return nil
	}
	for _, s := range list {
		n = n.child(s)
	}
	return n
}

// textAt returns the text at a path, "" where there is none.
func (n *node) textAt(path string) string {
	if v := n.at(path); v != nil {
		return v.shown()
	}
	return ""
}

// shown returns what a box shows of a value.
func (n *node) shown() string {
	if n.kind == '{' || n.kind == '[' {
		return strings.Join(strings.Fields(n.String()), " ")
	}
	return n.text
}

// put sets the value at a path, and makes the objects and lists on the way to it. An item may be set that is there, or
// the one behind the last.
func (n *node) put(path string, v *node) error {
	list, err := steps(path)
	if err != nil || len(list) == 0 {
		return fmt.Errorf("no path: %.80q", path)
	}
	for i, s := range list {
		next := v
		if i+1 < len(list) {
			next = n.child(s)
			if want := kindOf(list[i+1]); next == nil || next.kind != want {
				next = &node{kind: want}
			}
		}
		switch {
		case n.kind != kindOf(s):
			return fmt.Errorf("no path: %.80q", path)
		case s.item < 0:
			n.setMember(s.name, next)
		case s.item < len(n.items):
			n.items[s.item] = next
		case s.item == len(n.items):
			n.items = append(n.items, next)
		default:
			return fmt.Errorf("no item %d: %.80q", s.item, path)
		}
		n = next
	}
	return nil
}

// kindOf returns what a step is taken in.
func kindOf(s step) byte {
	if s.item < 0 {
		return '{'
	}
	return '['
}

// setMember sets a field, once, where it stood first.
func (n *node) setMember(name string, v *node) {
	found := false
	n.members = slices.DeleteFunc(n.members, func(m field) bool {
		again := m.name == name && found
		found = found || m.name == name
		return again
	})
	for i := range n.members {
		if n.members[i].name == name {
			n.members[i].value = v
			return
		}
	}
	n.members = append(n.members, field{name, v})
}

// drop takes out what stands at a path, of a field that is given twice the later one, and whatever object holds
// nothing then, up to an item of a list; a list that holds nothing goes too, for an empty one may say more than none.
func (n *node) drop(path string) {
	list, err := steps(path)
	if err != nil || len(list) == 0 {
		return
	}
	way := []*node{n}
	for _, s := range list[:len(list)-1] {
		n = n.child(s)
		way = append(way, n)
	}
	for i := len(list) - 1; i >= 0; i-- {
		at, s := way[i], list[i]
		if at.child(s) == nil {
			return
		}
		if s.item >= 0 {
			at.items = slices.Delete(at.items, s.item, s.item+1)
		} else {
			last := 0
			for k, m := range at.members {
				if m.name == s.name {
					last = k
				}
			}
			at.members = slices.Delete(at.members, last, last+1)
		}
		if len(at.members)+len(at.items) > 0 || i > 0 && list[i-1].item >= 0 {
			return
		}
	}
}
