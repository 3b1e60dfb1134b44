// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"text/tabwriter"
	"unicode/utf8"
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
var ErrPaper = errors.New("page too short")

// width of a wrapped line, in characters.
const width = 96

// A page gathers the text of a sheet, section by section.
type page struct {
	show     Shown
	ascii    bool
	sections []string
	bytes.Buffer
}

// inASCII names what a plain printer cannot print. The order matters: "°C" comes before "°".
var inASCII = []string{
	"±", "+/-", "×", "x", "°C", "deg C", "°F", "deg F", "°", " deg", "–", "-", "—", "-", "−", "-", "…", "...", "µ", "u", "³", "3", "²", "2", "’", "'",
}

// text returns a text as this page can print it.
func (p *page) text(s string) string {
	if !p.ascii {
		return s
	}
	s = strings.NewReplacer(inASCII...).Replace(s)
	return strings.Map(func(r rune) rune {
		if r >= utf8.RuneSelf {
			return '?'
		}
		return r
	}, s)
}

func (p *page) line(format string, args ...any) {
	p.WriteString(p.text(fmt.Sprintf(format, args...)))
	p.WriteByte('\n')
}

// end closes a section.
func (p *page) end() {
	if p.Len() > 0 {
		p.sections = append(p.sections, p.String())
		p.Reset()
	}
}

// title begins a numbered section.
func (p *page) title(text string) {
	p.end()
	p.line("%d  %s", len(p.sections), text)
}

// wrapped writes an item that may be longer than a line.
func (p *page) wrapped(mark, text string) {
	line := p.text(mark)
	indent := strings.Repeat(" ", utf8.RuneCountInString(line))
	empty := true
	for _, word := range strings.Fields(p.text(text)) {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > width {
			p.line("%s", line)
			line, empty = indent, true
		}
		if !empty {
			line += " "
		}
		line += word
		empty = false
	}
	p.line("%s", line)
}

// table writes rows in aligned columns.
func (p *page) table(rows [][]string) {
	var b bytes.Buffer // which does not fail
	t := tabwriter.NewWriter(&b, 0, 0, 3, ' ', 0)
	for _, row := range rows {
		fmt.Fprintln(t, p.text("  "+strings.Join(row, "\t")))
	}
	t.Flush()
	for line := range strings.Lines(b.String()) {
		p.line("%s", strings.TrimRight(line, " \n"))
	}
}

// print writes the sections to w, a blank line between them.
func (p *page) print(w io.Writer, lines int, title string) error {
	p.end()
	if lines == 0 {
		_, err := io.WriteString(w, strings.Join(p.sections, "\n"))
		return err
	}
	const least, head = 20, 2 // lines of a page, and of its head
	if lines < least {
		return fmt.Errorf("jobsheet: %d lines: %w: want %d or more", lines, ErrPaper, least)
	}
	var pages [][]string
	room := 0
	for _, section := range p.sections {
		body := strings.Split(strings.TrimSuffix(section, "\n"), "\n")
		// A section that fits a page is not broken.
		if len(body)+1 > room && len(body) <= lines-head {
			room = 0
		}
		for i, line := range body {
			if room == 0 || i == 0 && room < 3 { // no title alone at the foot
				pages = append(pages, nil)
				room = lines - head
			}
			last := &pages[len(pages)-1]
			if i == 0 && len(*last) > 0 {
				*last = append(*last, "")
				room--
			}
			*last = append(*last, line)
			room--
		}
	}
	var b bytes.Buffer
	for i, page := range pages {
		if i > 0 {
			b.WriteByte('\f')
		}
		fmt.Fprintf(&b, "%s\n\n%s\n", p.text(strings.TrimSpace(fmt.Sprintf("%s  page %d of %d", title, i+1, len(pages)))), strings.Join(page, "\n"))
	}
	_, err := w.Write(b.Bytes())
	return err
}
