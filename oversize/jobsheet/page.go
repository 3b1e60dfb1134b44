// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"bytes"
	"fmt"
	"strings"
	"text/tabwriter"
)

// A page gathers the text of a sheet.
type page struct {
	bytes.Buffer
	show    Shown
	section int
}

func (p *page) line(format string, args ...any) {
	fmt.Fprintf(p, format, args...)
	p.WriteByte('\n')
}

// title begins a numbered section.
func (p *page) title(text string) {
	p.section++
	p.line("\n%d  %s", p.section, text)
}

// wrapped writes an item that may be longer than a line.
func (p *page) wrapped(mark, text string) {
	const width = 96
	indent := strings.Repeat(" ", len([]rune(mark)))
	line := mark
	empty := true
	for _, word := range strings.Fields(text) {
		if !empty && len([]rune(line))+1+len([]rune(word)) > width {
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
		fmt.Fprintln(t, "  "+strings.Join(row, "\t"))
	}
	t.Flush()
	for line := range strings.Lines(b.String()) {
		p.line("%s", strings.TrimRight(line, " \n"))
	}
}
