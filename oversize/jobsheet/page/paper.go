// SPDX-License-Identifier: BSD-3-Clause

package page

import (
	"bufio"
	"fmt"
	"io"
	"strings"
)

// together writes the sections one below the other, a blank line between them.
func together(w io.Writer, sections [][]string) error {
	b := bufio.NewWriter(w) // which keeps the first error
	for i, s := range sections {
		if i > 0 {
			b.WriteByte('\n')
		}
		for _, line := range s {
			b.WriteString(line)
			b.WriteByte('\n')
		}
	}
	return b.Flush()
}

// pages returns the sections in pages under a head. A section that fits a page is not broken.
func (t Text) pages(sections [][]string, head string) string {
	const headLines = 2
	var pages [][]string
	room := 0
	for _, body := range sections {
		if len(body)+1 > room && len(body) <= t.Lines-headLines {
			room = 0
		}
		for i, line := range body {
			if room == 0 || i == 0 && room < 3 { // no title alone at the foot
				pages = append(pages, nil)
				room = t.Lines - headLines
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
	var b strings.Builder
	for i, page := range pages {
		if i > 0 {
			b.WriteByte('\f')
		}
		number := fmt.Sprintf("page %d of %d", i+1, len(pages))
		head, _ := cut(head, t.Width-len(number)-2)
		if head != "" {
			head += "  "
		}
		fmt.Fprintf(&b, "%s%s\n\n%s\n", head, number, strings.Join(page, "\n"))
	}
	return b.String()
}
