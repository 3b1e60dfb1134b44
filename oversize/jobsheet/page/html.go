// SPDX-License-Identifier: BSD-3-Clause

package page

import (
	"fmt"
	"html"
	"io"
	"slices"
	"strings"
	"unicode/utf8"
)

// HTML types a document for a browser, as one file that needs nothing else: no script, nothing from outside, and
// every text escaped. It is as readable on a telephone as on A4 in black and white; rooms to write and boxes to
// tick are there to be printed. It is well-formed XML too.
type HTML struct {
	// Fragment leaves out all around the document: a div of the class "sheet", for a page that holds
	// [Style] and its own heading.
	Fragment bool
}

// Write writes the document to w. An error is the writer's.
func (h HTML) Write(w io.Writer, d Doc) error {
	p := htmlTypist{level: 1}
	if h.Fragment {
		p.level = 2
		p.raw(`<div class="sheet">` + "\n")
		p.doc(d)
		p.raw("</div>\n")
	} else {
		// The policy says to the browser what is true anyway.
		p.raw("<!DOCTYPE html>\n" + `<html lang="en-GB"><head><meta charset="utf-8"/><meta name="viewport" content="width=device-width, initial-scale=1"/>` +
			`<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'"/>` + "\n<title>")
		p.raw(html.EscapeString(clean(strings.TrimSpace(d.Subject + " " + d.Title))))
		p.raw("</title>\n<style>\n" + Style + "</style></head>\n" + `<body><main class="sheet">` + "\n")
		p.doc(d)
		p.raw("</main></body></html>\n")
	}
	_, err := io.WriteString(w, p.String())
	return err
}

type htmlTypist struct {
	strings.Builder
	level    int // of the heading of the document
	pictures int
}

func (p *htmlTypist) raw(s string) { p.WriteString(s) }

// element writes an element of one line that holds a text.
func (p *htmlTypist) element(name, text string) {
	tag, _, _ := strings.Cut(name, " ")
	p.raw("<" + name + ">" + inline(text) + "</" + tag + ">\n")
}

// inline returns a text as markup: escaped, its rooms to write as rooms, no value broken in two, and a word that is longer than
// any has places where it may be broken.
func inline(text string) string {
	const room = `<span class="blank" role="img" aria-label="to be filled in"></span>`
	list := slices.Collect(words(single(clean(text))))
	for i, word := range list {
		if strings.Contains(word, " ") {
			list[i] = `<span class="value">` + html.EscapeString(word) + `</span>`
			continue
		}
		parts := strings.Split(word, Blank)
		for j, part := range parts {
			parts[j] = breakable(part)
		}
		list[i] = strings.Join(parts, room)
	}
	return strings.Join(list, " ")
}

// breakable returns a word as markup that may be broken every so many letters, where it is long.
func breakable(word string) string {
	const long, every = 30, 15 // letters
	if utf8.RuneCountInString(word) <= long {
		return html.EscapeString(word)
	}
	var b strings.Builder
	for n, r := range []rune(word) {
		if n > 0 && n%every == 0 {
			b.WriteString("<wbr/>")
		}
		b.WriteString(html.EscapeString(string(r)))
	}
	return b.String()
}

// heading writes a heading so many levels below that of the document.
func (p *htmlTypist) heading(below int, text string) {
	p.element(fmt.Sprintf("h%d", p.level+below), text)
}

func (p *htmlTypist) doc(d Doc) {
	p.raw("<header>\n")
	if strings.TrimSpace(d.Subject) != "" {
		p.element(`p class="kind"`, d.Title)
		p.heading(0, d.Subject)
	} else {
		p.heading(0, d.Title)
	}
	p.blocks(d.Front)
	p.raw("</header>\n")
	for i, s := range d.Sections {
		p.raw(fmt.Sprintf("<section id=\"section-%d\">\n", i+1))
		p.heading(1, fmt.Sprintf("%d. %s", i+1, s.Title))
		p.blocks(s.Blocks)
		p.raw("</section>\n")
	}
}

// blocks writes blocks; those that make a list together stand in one.
func (p *htmlTypist) blocks(blocks []Block) {
	open := ""
	for _, b := range blocks {
		list := listOf(b)
		if list != open {
			p.closeList(open)
			if list != "" {
				p.raw("<" + list + ">\n")
			}
			open = list
		}
		switch b := b.(type) {
		case Heading:
			p.heading(2, string(b))
		case Sentence:
			p.element("p", string(b))
		case Item:
			if b.Label == "" {
				p.element("li", b.Text)
			} else {
				p.raw("<div><dt>" + inline(b.Label) + "</dt><dd>" + inline(b.Text) + "</dd></div>\n")
			}
		case Check:
			p.raw(`<li><label><input type="checkbox"/> <span>` + inline(string(b)) + "</span></label></li>\n")
		case Caution:
			p.raw(`<p class="caution"><strong>Caution:</strong> ` + inline(string(b)) + "</p>\n")
		case Table:
			p.table(b)
		case Form:
			if len(b) > 0 {
				p.form(b)
			}
		case Picture:
			p.picture(b)
		}
	}
	p.closeList(open)
}

// listOf returns the tag of the list that a block stands in, or "".
func listOf(b Block) string {
	switch b := b.(type) {
	case Item:
		if b.Label != "" {
			return `dl class="labels"`
		}
		return "ul"
	case Check:
		return `ul class="checks"`
	}
	return ""
}

func (p *htmlTypist) closeList(list string) {
	if tag, _, _ := strings.Cut(list, " "); tag != "" {
		p.raw("</" + tag + ">\n")
	}
}

func (p *htmlTypist) form(f Form) {
	p.raw(`<dl class="form">` + "\n")
	for _, field := range f {
		p.raw("<div><dt>" + inline(field.Label) + "</dt><dd>" + inline(blankWith(field.Unit)) + "</dd></div>\n")
	}
	p.raw("</dl>\n")
}

// What is shown beside each other, in columns of text.
const (
	narrow = 36 // on a telephone
	sheet  = 90 // on A4
)

// least returns the columns of text that a table takes at the least with every value in one piece.
func (t Table) least() (sum int) {
	for i := range t.columns() {
		widest := 0
		for _, row := range append([][]string{t.Head}, t.Rows...) {
			for word := range words(single(clean(cell(row, i)))) {
				widest = max(widest, width(word))
			}
		}
		sum += widest + 1
	}
	return sum
}

// table writes a table. The cells of one that no telephone shows whole carry the heads of their columns, so that the
// style can write each row out where there is no room; the roles keep it a table for a screen reader then.
func (p *htmlTypist) table(t Table) {
	n := t.columns()
	if n == 0 || len(t.Rows) == 0 {
		return
	}
	stack := t.grid(clean).width() > narrow
	role := func(r string) string {
		if !stack {
			return ""
		}
		return fmt.Sprintf(` role="%s"`, r)
	}
	class := ""
	switch {
	case t.least() > sheet: // rather in two pieces than off the paper
		class = ` class="stack tight"`
	case stack:
		class = ` class="stack"`
	}
	p.raw("<table" + class + role("table") + ">\n")
	if t.Title != "" {
		p.element("caption", t.Title)
	}
	if t.Head != nil {
		p.raw("<thead" + role("rowgroup") + "><tr" + role("row") + ">")
		for i := range n {
			if h := inline(cell(t.Head, i)); h != "" {
				p.raw(`<th scope="col"` + role("columnheader") + ">" + h + "</th>")
			} else {
				p.raw("<td" + role("cell") + "></td>")
			}
		}
		p.raw("</tr></thead>\n")
	}
	p.raw("<tbody" + role("rowgroup") + ">\n")
	for _, row := range t.Rows {
		p.raw("<tr" + role("row") + ">")
		for i := range n {
			text := inline(cell(row, i))
			head := ""
			if h := clean(cell(t.Head, i)); stack && text != "" && strings.TrimSpace(h) != "" {
				head = ` data-head="` + html.EscapeString(h) + `: "`
			}
			if i < t.keys() && text != "" {
				p.raw(`<th scope="row"` + role("rowheader") + head + ">" + text + "</th>")
			} else {
				p.raw("<td" + role("cell") + head + ">" + text + "</td>")
			}
		}
		p.raw("</tr>\n")
	}
	p.raw("</tbody></table>\n")
}

// picture writes a drawing with what stands below it.
func (p *htmlTypist) picture(pic Picture) {
	p.pictures++
	p.raw("<figure>\n")
	p.raw(pic.svg(fmt.Sprintf("picture-%d", p.pictures), ""))
	p.raw("<figcaption>")
	p.element("p class=\"title\"", pic.Title)
	for _, note := range pic.Notes {
		p.element("p", note)
	}
	p.raw("</figcaption></figure>\n")
}
