// SPDX-License-Identifier: BSD-3-Clause

package page_test

import (
	"fmt"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet/page"
)

// body types blocks in one section and returns the lines below its title.
func body(t *testing.T, p page.Text, blocks ...page.Block) []string {
	t.Helper()
	text := typed(t, p, page.Doc{Sections: []page.Section{{Title: "T", Blocks: blocks}}})
	return strings.Split(strings.TrimSuffix(strings.TrimPrefix(text, "1  T\n"), "\n"), "\n")
}

func same(t *testing.T, got []string, want ...string) {
	t.Helper()
	if strings.Join(got, "\n") != strings.Join(want, "\n") {
		t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}

// TestLabels: texts are lined up with those of the labels around them, of 12 columns at most.
func TestLabels(t *testing.T) {
	same(t, body(t, page.Text{},
		page.Item{Label: "twelve wide!", Text: "a"}, page.Item{Label: "b", Text: "b"}, page.Item{Label: "thirteen wide", Text: "c"}, page.Item{Label: "麦", Text: "d"},
		page.Sentence("Between."), page.Item{Label: "e", Text: "e"}, page.Item{Text: "point"}, page.Item{Label: "ff", Text: "f"}),
		"  twelve wide!  a", "  b             b", "  thirteen wide c", "  麦            d", "  Between.", "  e  e", "    - point", "  ff  f")
}

// TestValuesStayWhole: no line ends inside a value, whatever its sign is written with.
func TestValuesStayWhole(t *testing.T) {
	for width := 40; width < 90; width++ {
		for _, value := range []string{"−0.50 mm", "-0.51 mm", "+0.52 mm", "0.53 ± 0.01 mm", "54 × 5 mm"} {
			lines := strings.Join(body(t, page.Text{Width: width}, page.Sentence("The bore is smaller by so much and no more, which is "+value+" in all.")), "\n")
			if !strings.Contains(lines, value) {
				t.Errorf("%d columns: %q is broken:\n%s", width, value, lines)
			}
		}
	}
}

// TestJustFits: what fits to the column stays as it is, and one column more does not.
func TestJustFits(t *testing.T) {
	// Two columns: 2 of the margin, a, 3 between, b.
	for _, c := range []struct {
		room int
		want []string
	}{
		{20 + 2 + 3 + 17, []string{"  k" + strings.Repeat(" ", 16) + "   v", "  aaaaaaaaaaaaaaaaa   bbbbbbbbbbbbbbbbbbbb"}},
		{20 + 2 + 3 + 16, []string{"  k   aaaaaaaaaaaaaaaaa", "  v   bbbbbbbbbbbbbbbbbbbb"}}, // turned
	} {
		same(t, body(t, page.Text{Width: c.room}, page.Table{Head: []string{"k", "v"}, Keys: 1,
			Rows: [][]string{{strings.Repeat("a", 17), strings.Repeat("b", 20)}}}), c.want...)
	}
	// Split where the last part fits to the column.
	row := []string{"key", strings.Repeat("a", 35), strings.Repeat("b", 17), strings.Repeat("c", 15)}
	rows := [][]string{row, row, row}
	same(t, body(t, page.Text{Width: 43}, page.Table{Rows: rows, Keys: 1}),
		"  key   "+row[1], "  key   "+row[1], "  key   "+row[1], "", "  key   "+row[2]+"   "+row[3], "  key   "+row[2]+"   "+row[3], "  key   "+row[2]+"   "+row[3])
	row = []string{"key", strings.Repeat("a", 20), row[2], row[3]}
	same(t, body(t, page.Text{Width: 42}, page.Table{Rows: [][]string{row}, Keys: 1}), "  key   "+row[1], "", "  key   "+row[2], "", "  key   "+row[3])
	// Of the last column 24 columns are left, and 23 are too few.
	words := strings.Repeat("word ", 6)
	table := page.Table{Head: []string{"key", "what"}, Keys: 1, Rows: [][]string{{strings.Repeat("k", 11), words}, {"l", "m"}}}
	same(t, body(t, page.Text{Width: 40}, table), "  key           what", "  kkkkkkkkkkk   word word word word word", "                word", "  l             m")
	table.Rows[0][0] += "k"
	same(t, body(t, page.Text{Width: 40}, table)[:2], "  key: kkkkkkkkkkkk", "    what: word word word word word word")
	// Turned, of as many columns as there are, and of one more.
	long := page.Table{Head: []string{"k", "v"}, Keys: 1, Rows: [][]string{{strings.Repeat("a", 36), strings.Repeat("b", 30)}}}
	same(t, body(t, page.Text{Width: 42}, long), "  k   "+long.Rows[0][0], "  v   "+long.Rows[0][1])
	same(t, body(t, page.Text{Width: 41}, long)[:1], "  k: "+long.Rows[0][0])
	// A line of 94 columns and its margin.
	same(t, body(t, page.Text{}, page.Sentence(strings.Repeat("x", 90)+" yyy z")), "  "+strings.Repeat("x", 90)+" yyy", "  z")
}

// TestNothingToType: what is empty takes no line.
func TestNothingToType(t *testing.T) {
	blocks := []page.Block{page.Table{}, page.Table{Head: []string{"a"}}, page.Table{Title: "x", Rows: [][]string{}}, page.Table{Rows: [][]string{{}, nil}}, page.Form{}, page.Picture{Title: "x"}}
	same(t, body(t, page.Text{}, blocks...), "")
	doc := page.Doc{Sections: []page.Section{{Title: "T", Blocks: blocks[:5]}}}
	if markup := browsed(t, page.HTML{Fragment: true}, doc); strings.Contains(markup, "<t") || strings.Contains(markup, "<dl") {
		t.Errorf("%s", markup)
	}
	same(t, body(t, page.Text{}, page.Form{{Label: "a"}, {Label: "b"}, {Label: "c", Unit: "mm"}, {Label: "d"}}),
		"  a   ________      b   ________", "  c   ________ mm   d   ________")
}

// TestSectionsOnPages: a section that fits a page is not broken, one that does not begins where there is room for it, and no
// title stands alone at the foot.
func TestSectionsOnPages(t *testing.T) {
	section := func(title string, lines int) page.Section {
		s := page.Section{Title: title}
		for i := range lines {
			s.Add(page.Sentence(fmt.Sprintf("%s %d.", title, i)))
		}
		return s
	}
	pages := func(sections ...page.Section) (sizes []int) {
		text := typed(t, page.Text{Lines: 20}, page.Doc{Title: "D", Sections: sections})
		for _, p := range strings.Split(text, "\f")[0:] {
			sizes = append(sizes, strings.Count(p, "\n")-2) // without its head
		}
		return sizes
	}
	// The front takes one line; a page has 18.
	for _, c := range []struct {
		lines []int
		want  []int
	}{
		{[]int{15}, []int{18}},             // 1, a blank line, title and 15
		{[]int{16}, []int{1, 17}},          // one line too many for what is left of the page, but not for the next
		{[]int{17}, []int{1, 18}},          // just a page
		{[]int{18}, []int{18, 3}},          // more than a page: begun at once, where there is room
		{[]int{12, 30}, []int{18, 18, 11}}, // 1, a blank line, 13, a blank line, the second title and one line
		{[]int{13, 30}, []int{16, 18, 13}},
	} {
		var s []page.Section
		for i, n := range c.lines {
			s = append(s, section(fmt.Sprint("s", i), n))
		}
		if got := pages(s...); fmt.Sprint(got) != fmt.Sprint(c.want) {
			t.Errorf("sections of %v lines: pages of %v, want %v", c.lines, got, c.want)
		}
	}
}

// TestNoSpaceTooMany: there is no line above the first heading, and no space before a text, behind it or twice within.
func TestNoSpaceTooMany(t *testing.T) {
	same(t, body(t, page.Text{}, page.Heading("H"), page.Sentence("s"), page.Heading("I")), "  H", "  s", "", "  I")
	for _, text := range []string{" a b", "a b ", "a  b", " a  b "} {
		markup := browsed(t, page.HTML{Fragment: true}, page.Doc{Front: []page.Block{page.Table{Head: []string{text}, Rows: [][]string{{text}}}}})
		if !strings.Contains(markup, ">a b</th>") || !strings.Contains(markup, ">a b</td>") {
			t.Errorf("%q: %s", text, markup)
		}
	}
}

// TestWidths: a mark above a letter takes no column, each of the 11,172 syllables of Hangul and the ideographs take two (Unicode
// Standard Annex 11: Wide).
func TestWidths(t *testing.T) {
	columns := func(text string) float64 {
		from, to := page.Label{Text: text}.Box()
		one, end := page.Label{Text: "a"}.Box()
		return (to.X - from.X) / (end.X - one.X)
	}
	for text, want := range map[string]float64{"e\u0300": 1, "e\u0301a": 2, "é": 1, "µm": 2, "\u1100": 2, "、": 2, "あ": 2, "漢字": 4, "\uff21": 2, "\U00020000": 2} {
		if got := columns(text); got != want {
			t.Errorf("%q takes %v columns, want %v", text, got, want)
		}
	}
	for r := '가'; r <= '힣'; r++ {
		if got := columns(string(r)); got != 2 {
			t.Fatalf("%c takes %v columns", r, got)
		}
	}
}
