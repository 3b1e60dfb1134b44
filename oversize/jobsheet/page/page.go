// SPDX-License-Identifier: BSD-3-Clause

// Package page is what stands on a workshop's paper before it is typed: sections of blocks. Blocks say what they are
// (a heading, a sentence, an item, something to tick, a caution, a table, a form to fill in, a picture) and never how
// they look. It knows no engine and decides nothing.
//
// Typists print a document: [Text] for a screen, a printer or a page of so many lines, [HTML] for a browser
// and a sheet of A4. Whatever text they are handed, of any length and with any character, comes out as that
// text and as nothing else: no control character moves a cursor, no mark becomes markup.
//
//	gaps := page.Section{Title: "Ring gaps"}
//	gaps.Add(page.Sentence("Each ring in its own bore."), page.Form{{Label: "Top ring", Unit: "mm"}})
//	err := page.Text{}.Write(os.Stdout, page.Doc{Title: "Bench card", Sections: []page.Section{gaps}})
//
// A [Picture] is data too: lines, dots with the bar of their doubt, bands, ranges and labels, in millimetres of
// paper. [Picture.WriteSVG] is one way to print it.
package page

// A Doc is a document: what is to be seen first, and the sections behind it, which typists number from 1.
type Doc struct {
	Title    string  // of the kind of document
	Subject  string  // what it is about; at the head of every page
	Front    []Block // before the first section
	Sections []Section
}

// A Section is a part of a document.
type Section struct {
	Title  string  // without its number
	Blocks []Block // in the order in which they are read
}

// Add adds blocks to the end of a section.
func (s *Section) Add(blocks ...Block) { s.Blocks = append(s.Blocks, blocks...) }

// A Block is a [Heading], [Sentence], [Item], [Check], [Caution], [Table], [Form] or [Picture].
type Block interface{ block() }

type (
	// A Heading begins a part of a section.
	Heading string
	// A Sentence is one or more, with a full stop.
	Sentence string
	// A Check is something to do or to look at, with a box to tick.
	Check string
	// A Caution is what would hurt somebody or spoil the work, said where that may happen.
	Caution string
)

// An Item is one of a list, which hangs on the sentence or heading before it. A label is what it answers to, "why";
// without one it is a point among others.
type Item struct {
	Label string // may be left out
	Text  string // without the label
}

// A Table has a row for each thing and a column for each thing that is said of it.
type Table struct {
	Title string     // may be left out
	Head  []string   // of the columns; nil where they need none
	Rows  [][]string // a short row ends in empty cells
	Keys  int        // how many columns at the left say what a row is about
}

// A Form is what somebody has to write down.
type Form []Field

// A Field is a label, room to write, and the unit of what is written there.
type Field struct {
	Label string // what is asked for
	Unit  string // may be left out
}

// Blank is room to write inside a text or a cell of a table.
const Blank = "________"

func (Heading) block()  {}
func (Sentence) block() {}
func (Item) block()     {}
func (Check) block()    {}
func (Caution) block()  {}
func (Table) block()    {}
func (Form) block()     {}
func (Picture) block()  {}

// columns returns how many columns a table has: those of its longest row.
func (t Table) columns() int {
	n := len(t.Head)
	for _, row := range t.Rows {
		n = max(n, len(row))
	}
	return n
}

// keys returns how many of the columns say what a row is about.
func (t Table) keys() int { return max(0, min(t.Keys, t.columns()-1)) }

// cell returns a cell of a row, empty where the row is short.
func cell(row []string, i int) string {
	if i < len(row) {
		return row[i]
	}
	return ""
}
