// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"io"
	"strings"

	doc "borewright.example/oversize/jobsheet/page"
)

// A Paper is what a sheet is printed on. The zero Paper is a screen: one long page, any character.
type Paper struct {
	// Lines of a page, 20 or more; 0 is one long page. Every page but the first begins with a form
	// feed, and each says which it is.
	Lines int
	// ASCII is for a printer that knows no other characters: "±" is printed "+/-", "°" "deg", what
	// has no such name "?".
	ASCII bool
}

// ErrPaper: pages too short to print on.
var ErrPaper = doc.ErrPaper

// WriteText writes the sheet for a person at a bench. An error is the writer's.
func (s Sheet) WriteText(w io.Writer) error { return s.Print(w, Paper{}) }

// Print writes the text of the sheet on paper. An error is the writer's, or [ErrPaper].
func (s Sheet) Print(w io.Writer, paper Paper) error {
	if err := (doc.Text{Lines: paper.Lines, ASCII: paper.ASCII}).Write(w, s.document()); err != nil {
		return fmt.Errorf("jobsheet: %w", err)
	}
	return nil
}

// WriteHTML writes the sheet as one file for a browser, a telephone or A4, which needs nothing beside itself. An
// error is the writer's.
func (s Sheet) WriteHTML(w io.Writer) error { return doc.HTML{}.Write(w, s.document()) }

// A page gathers the parts of a sheet.
type page struct {
	show Shown
	doc  doc.Doc
	part bool // the next line begins a part of its section
}

func (p *page) add(b doc.Block) {
	if n := len(p.doc.Sections); n > 0 {
		p.doc.Sections[n-1].Add(b)
		return
	}
	p.doc.Front = append(p.doc.Front, b)
}

// title begins a section.
func (p *page) title(text string) {
	p.doc.Sections = append(p.doc.Sections, doc.Section{Title: text})
}

// line adds a sentence; after an empty line, a heading.
func (p *page) line(format string, args ...any) {
	text := strings.TrimSpace(fmt.Sprintf(format, args...))
	part := p.part
	if p.part = text == ""; p.part {
		return
	}
	if part {
		p.add(doc.Heading(text))
		return
	}
	p.add(doc.Sentence(text))
}

// wrapped adds what its mark says: an item, a check, a caution, a sentence.
func (p *page) wrapped(mark, text string) {
	switch mark = strings.TrimSpace(mark); mark {
	case "-":
		p.add(doc.Item{Text: text})
	case "[ ]":
		p.add(doc.Check(text))
	case "!":
		p.add(doc.Caution(text))
	case "":
		p.add(doc.Sentence(text))
	default:
		p.add(doc.Item{Label: mark, Text: text})
	}
}

// table adds rows under their head, each named by its first cell.
func (p *page) table(rows [][]string) { p.add(doc.Table{Head: rows[0], Rows: rows[1:], Keys: 1}) }

// judged adds rows under [findingHead]: each is named by its cylinder and what the limit is on.
func (p *page) judged(rows [][]string) { p.add(doc.Table{Head: rows[0], Rows: rows[1:], Keys: 2}) }

// list adds rows that each begin with what they are about, without a head.
func (p *page) list(rows [][]string) { p.add(doc.Table{Rows: rows, Keys: 1}) }
