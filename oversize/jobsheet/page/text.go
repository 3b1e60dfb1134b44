// SPDX-License-Identifier: BSD-3-Clause

package page

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"
)

// Text types a document as text, in lines of at most so many columns: what is longer is wrapped, a table that is
// wider is turned or split, and of a picture nothing is printed, since whoever puts one in says the same in
// words and figures beside it.
type Text struct {
	// Width is the columns of a line, 40 or more; 0 is 96. The front has at most 80 of them.
	Width int
	// Lines of a page, 20 or more; 0 is one long page. Every page but the first begins with a form
	// feed, and each says which it is.
	Lines int
	// ASCII is for a printer that knows no other characters: "±" is printed "+/-", "°" "deg", what
	// has no such name "?".
	ASCII bool
}

// ErrPaper: pages too short, or lines too narrow, to print on.
var ErrPaper = errors.New("page too short")

const (
	usualWidth, frontWidth = 96, 80
	leastWidth, leastLines = 40, 20
)

// Write writes the document to w. An error is the writer's, or [ErrPaper].
func (t Text) Write(w io.Writer, d Doc) error {
	if t.Width == 0 {
		t.Width = usualWidth
	}
	switch {
	case t.Width < leastWidth:
		return fmt.Errorf("%d columns: %w: want %d or more", t.Width, ErrPaper, leastWidth)
	case t.Lines != 0 && t.Lines < leastLines:
		return fmt.Errorf("%d lines: %w: want %d or more", t.Lines, ErrPaper, leastLines)
	}
	var sections [][]string
	add := func(lines []string) {
		if len(lines) > 0 {
			sections = append(sections, lines)
		}
	}
	add(t.front(d))
	for i, s := range d.Sections {
		add(t.section(i+1, s))
	}
	if t.Lines == 0 {
		return together(w, sections)
	}
	head := d.Subject
	if head == "" {
		head = d.Title
	}
	_, err := io.WriteString(w, t.pages(sections, t.plain(head)))
	return err
}

func (t Text) front(d Doc) []string {
	p := typist{Text: t}
	p.Width = min(t.Width, frontWidth)
	for _, line := range []string{d.Title, d.Subject} {
		if line != "" {
			p.wrap("", line)
		}
	}
	p.blocks(d.Front)
	return p.lines
}

func (t Text) section(number int, s Section) []string {
	p := typist{Text: t}
	p.wrap(fmt.Sprintf("%d  ", number), s.Title)
	p.indent = "  "
	p.blocks(s.Blocks)
	return p.lines
}

// plain returns a text as it may be printed.
func (t Text) plain(s string) string {
	s = clean(s)
	if t.ASCII {
		s = ascii(s)
	}
	return s
}

// A typist types the blocks of one section.
type typist struct {
	Text
	indent string
	lines  []string
	buffer []byte // of the line being typed
}

func (p *typist) line(s []byte) { p.lines = append(p.lines, string(bytes.TrimRight(s, " "))) }

func (p *typist) blocks(blocks []Block) {
	deeper := p.indent // of what hangs on what stands before it
	for i, b := range blocks {
		switch b := b.(type) {
		case Heading:
			if i > 0 {
				p.line(nil)
			}
			p.wrap(p.indent, string(b))
		case Sentence:
			p.wrap(p.indent, string(b))
		case Check:
			p.wrap(p.indent+"[ ] ", string(b))
			continue
		case Caution:
			p.wrap(deeper+"! ", string(b))
			continue
		case Item:
			if b.Label == "" {
				p.wrap(deeper+"- ", b.Text)
			} else {
				p.labelled(b, labelWidth(blocks, i, p.Text))
			}
			continue
		case Table:
			p.table(b)
		case Form:
			p.form(b)
		}
		deeper = p.indent + "  "
	}
}

// mostLabel is the widest label beside which the text of others is lined up.
const mostLabel = 12

// labelled types an item with its text lined up with that of the labels around it.
func (p *typist) labelled(b Item, column int) {
	label := p.plain(b.Label)
	p.wrap(p.indent+label+strings.Repeat(" ", max(1, column-width(label)+2)), b.Text)
}

// labelWidth returns the width of the widest label in the list that the item stands in, of those that are not
// too wide to be lined up with.
func labelWidth(blocks []Block, at int, t Text) int {
	column := 0
	measure := func(b Block) bool {
		item, ok := b.(Item)
		if ok = ok && item.Label != ""; ok {
			if w := width(t.plain(item.Label)); w <= mostLabel {
				column = max(column, w)
			}
		}
		return ok
	}
	for i := at; i >= 0 && measure(blocks[i]); i-- {
	}
	for i := at; i < len(blocks) && measure(blocks[i]); i++ {
	}
	return column
}

// wrap types a text behind a mark, and lines that follow under its beginning.
func (p *typist) wrap(mark, text string) {
	indent := min(width(mark), p.Width/2)
	if width(mark) > p.Width/2 { // a mark so long is a line of its own
		p.lines = append(p.lines, fold(mark, p.Width, "  ")...)
		indent = width(p.indent) + 2
		mark = blanks(indent)
	}
	line, columns, empty := append(p.buffer[:0], mark...), width(mark), true
	end := func() {
		p.line(line)
		line, columns, empty = append(line[:0], blanks(indent)...), indent, true
	}
	for word := range words(single(p.plain(text))) {
		for {
			space := 0
			if !empty {
				space = 1
			}
			if w := width(word); columns+space+w <= p.Width {
				line = append(append(line, " "[:space]...), word...)
				columns, empty = columns+space+w, false
				break
			}
			if empty { // a word longer than a line is broken
				var head string
				head, word = cut(word, p.Width-columns)
				line = append(line, head...)
			}
			end()
		}
	}
	end()
	p.buffer = line
}

// blanks returns so many spaces.
func blanks(n int) string {
	const many = "                                                                "
	if n <= len(many) {
		return many[:max(n, 0)]
	}
	return strings.Repeat(" ", n)
}

// words divides a text with single spaces where lines may end: not inside a value, "78.5025 ± 0.0048 mm", which would be
// misread.
func words(text string) iter.Seq[string] {
	const most = 24 // columns of what is held together
	return func(yield func(string) bool) {
		from, to := 0, 0 // of what is held together so far
		last := ""
		for to < len(text) {
			next := to
			if to > 0 {
				next++ // the space
			}
			word, _, _ := strings.Cut(text[next:], " ")
			held := slices.Contains(signs, last) || isNumber(last) && follows(word)
			if to > 0 && !(held && width(text[from:to]) < most) {
				if !yield(text[from:to]) {
					return
				}
				from = next
			}
			last, to = word, next+len(word)
		}
		if to > from {
			yield(text[from:to])
		}
	}
}

// isNumber reports whether a word is one, with its sign.
func isNumber(word string) bool {
	for _, r := range word {
		if (r < '0' || r > '9') && r != '.' && r != '+' && r != '-' && r != '−' {
			return false
		}
	}
	return word != ""
}

// signs stand between the parts of a value.
var signs = []string{"±", "×", "+/-", "deg"}

// follows reports whether a word belongs to the number before it: a sign or a unit.
func follows(word string) bool {
	if word = strings.TrimRight(word, ".,;:)"); strings.ContainsAny(word, "±×°µ²³%/") {
		return true
	}
	return slices.Contains(unitNames, word)
}

var unitNames = []string{"+/-", "mm", "m", "in", "thou", "um", "g", "kg", "N", "K", "deg", "s", "min", "h", "MPa", "psi"}

// fold breaks a text into lines at its words.
func fold(text string, columns int, indent string) []string {
	q := typist{Text: Text{Width: columns}, indent: indent}
	q.wrap("", text)
	return q.lines
}

// form types fields two to a line, their rooms to write in line.
func (p *typist) form(f Form) {
	rows := make([][]string, 0, (len(f)+1)/2)
	for i := 0; i < len(f); i += 2 {
		row := make([]string, 0, 4)
		for _, field := range f[i:min(i+2, len(f))] {
			row = append(row, field.Label, blankWith(field.Unit))
		}
		rows = append(rows, row)
	}
	p.table(Table{Rows: rows})
}

// blankWith returns room to write before a unit.
func blankWith(unit string) string {
	if unit == "" {
		return Blank
	}
	return Blank + " " + unit
}
