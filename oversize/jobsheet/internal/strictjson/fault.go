// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A Fault is one thing that is wrong.
type Fault struct {
	Path         string // "engine.rings[2].name"; "" is the document as a whole
	Value        string // what stands there, as JSON, cut short where it is long; "" where nothing does
	Want         string // what is wrong with it and what was allowed
	Err          error  // what lies beneath it, if anything does
	Line, Column int    // where it stands in the file, in characters from 1; 0 where it does not
}

// String returns the fault in one line: where, the value, and what is wanted.
func (f Fault) String() string {
	var parts []string
	switch {
	case f.Path != "":
		parts = append(parts, f.Path)
	case f.Line > 0:
		parts = append(parts, fmt.Sprintf("line %d, column %d", f.Line, f.Column))
	}
	if f.Value != "" {
		parts = append(parts, f.Value)
	}
	return strings.Join(append(parts, f.Want), ": ")
}

// A place is the way to a value: a name in, or an item of, what stands above it. The text is made when there
// is a fault, and not before.
type place struct {
	up   *place
	name string // of a field
	item int    // of a list
	list bool
}

// String returns the path, "" at the top.
func (p *place) String() string {
	switch {
	case p == nil:
		return ""
	case p.list:
		return fmt.Sprintf("%v[%d]", p.up, p.item)
	case p.up == nil:
		return pathName(p.name)
	}
	return p.up.String() + "." + pathName(p.name)
}

// pathName returns a field's name as it stands in a path: quoted where it is no plain word.
func pathName(name string) string {
	plain := name != "" && len(name) <= 40
	for _, r := range name {
		plain = plain && (r == '_' || r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9')
	}
	if plain {
		return name
	}
	return quote(shorten(name))
}

// A mark is a place in the file whose line and column are known, counted from 0.
type mark struct{ offset, line, column int }

// position returns the line and column of an offset, from 1. It counts from where it was asked last, since
// faults come mostly in the order of the file.
func (d *Document) position(offset int) (line, column int) {
	m := &d.last
	between := d.data[min(offset, m.offset):max(offset, m.offset)]
	lines, characters := strings.Count(between, "\n"), utf8.RuneCountInString(between)
	if offset < m.offset {
		lines, characters = -lines, -characters
	}
	m.offset, m.line, m.column = offset, m.line+lines, m.column+characters
	if lines != 0 {
		m.column = utf8.RuneCountInString(d.data[strings.LastIndexByte(d.data[:offset], '\n')+1 : offset])
	}
	return m.line + 1, m.column + 1
}

// shorten cuts a value to what fits a line.
func shorten(s string) string {
	const most = 60
	if len(s) <= most {
		return s
	}
	return strings.ToValidUTF8(s[:most], "") + "…"
}

// quote writes a text so that nothing in it can move the cursor or hide.
func quote(s string) string { return strconv.QuoteToGraphic(s) }
