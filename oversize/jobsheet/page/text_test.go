// SPDX-License-Identifier: BSD-3-Clause

package page_test

import (
	"bytes"
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"borewright.example/oversize/jobsheet/page"
)

var update = flag.Bool("update", false, "write the golden pages anew")

// bread is a document of every kind of block; of another trade, for this package knows none.
func bread() page.Doc {
	return page.Doc{
		Title:   "BAKING SHEET",
		Subject: "Rye & wheat <mixed>, two ovens (invented)",
		Front: []page.Block{
			page.Sentence("2 ovens at 230 °C ± 5 °C, read on a Monday."),
			page.Item{Label: "1st", Text: "HEAT oven 2 to 230 °C, which takes as long as it takes to weigh the flour, mix the dough and let it rest under a cloth."},
			page.Item{Label: "STOP AT", Text: "rye 96 °C"},
			page.Item{Label: "A label too long to be lined up with", Text: "stands by itself"},
		},
		Sections: []page.Section{
			{Title: "BEFORE MIXING", Blocks: []page.Block{
				page.Check("Flour weighed; water at the temperature that the flour and the room leave for it, so that the dough comes to 27 °C."),
				page.Sentence("Two flours are used."),
				page.Item{Text: "rye, of the new harvest, which takes more water than the old one did and has to be stirred for longer before it rests"},
				page.Item{Text: "wheat"},
				page.Caution("Flour dust burns: no flame near the sieve."),
				page.Heading("Oven 1, “left”"),
				page.Table{Head: []string{"loaf", "weight", "crumb"}, Keys: 1, Rows: [][]string{
					{"rye", "1000 ± 5 g", "96 °C"}, {"wheat", "500 ± 5 g"}, {"麦パン", "750 g", page.Blank},
				}},
				page.Heading("Oven 2"),
				page.Form{{Label: "date"}, {Label: "name"}, {Label: "heat", Unit: "°C"}},
			}},
			{Title: "TOO WIDE FOR THE PAPER", Blocks: []page.Block{
				page.Sentence("Turned, for it has two rows:"),
				page.Table{Head: []string{"loaf", "what it weighs before it is baked", "what it weighs after that", "what it weighs on the next day"}, Keys: 1,
					Rows: [][]string{{"rye", "1150 g", "1000 g", "985 g"}, {"wheat", "590 g", "500 g", "489 g"}}},
				page.Sentence("Split, the names of its rows before each part:"),
				page.Table{Title: "Loaves by the hour", Head: []string{"loaf", "oven", "between six and seven o’clock", "between seven and eight o’clock", "between eight and nine o’clock", "between nine and ten o’clock"}, Keys: 2,
					Rows: [][]string{{"rye", "1", "10", "20", "30", "40"}, {"wheat", "2", "11", "21", "31", "41"}, {"spelt", "1", "12", "22", "32", "42"},
						{"oats", "2", "13", "23", "33", "43"}, {"maize", "1", "14", "24", "34", "44"}, {"barley with honey", "2", "15", "25", "35", "45"},
						{"wheat with caraway", "1", "16", "26", "36", "46"}, {"rye with linseed", "2", "17", "27", "37", "47"}}},
				page.Sentence("Wrapped, in its last column:"),
				page.Table{Head: []string{"loaf", "oven", "how it is made"}, Keys: 1, Rows: [][]string{{"rye", "1", strings.Repeat("knead and rest, ", 5) + "bake"}, {"wheat", "2", "in a tin"}}},
				page.Sentence("Written out, where even one column is too wide:"),
				page.Table{Head: []string{"how it is made", "loaf"}, Rows: [][]string{
					{strings.Repeat("knead and rest, ", 8) + "bake", "rye"}, {"in a tin", "wheat"}}},
				page.Picture{Title: "A loaf", Description: "It is round.", Width: 10, Height: 10},
				page.Sentence(strings.Repeat("endless", 15) + "."),
			}},
		},
	}
}

func typed(t testing.TB, p page.Text, d page.Doc) string {
	t.Helper()
	var b bytes.Buffer
	if err := p.Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// golden holds what was printed to a file, to the letter.
func golden(t *testing.T, name, got string) {
	t.Helper()
	file := filepath.Join("testdata", name)
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("differs from %s:\n%s", file, got)
	}
}

func TestGoldenText(t *testing.T) {
	golden(t, "bread.text", typed(t, page.Text{}, bread()))
	golden(t, "bread-60x24.text", typed(t, page.Text{Width: 60, Lines: 24, ASCII: true}, bread()))
}

// TestNarrow: no line is longer than asked for, whatever the width, and no word is lost.
func TestNarrow(t *testing.T) {
	words := func(s string) string { // without what only lines things up
		return strings.Map(func(r rune) rune {
			if unicode.IsLetter(r) || unicode.IsDigit(r) {
				return r
			}
			return -1
		}, s)
	}
	for width := 40; width < 140; width++ {
		text := typed(t, page.Text{Width: width}, bread())
		for line := range strings.Lines(text) {
			if n := columns(strings.TrimSuffix(line, "\n")); n > width {
				t.Errorf("%d columns where %d are the most: %q", n, width, line)
			}
			if strings.TrimSuffix(line, "\n") != strings.TrimRight(line, " \n") {
				t.Errorf("blanks at the end of %q", line)
			}
		}
		for _, all := range []string{"takes as long as it takes to weigh the flour, mix the dough and let it rest under a cloth", "1000 ± 5 g", strings.Repeat("endless", 15)} {
			if !strings.Contains(words(text), words(all)) {
				t.Errorf("width %d: %q is lost:\n%s", width, all, text)
			}
		}
		for _, cell := range []string{"1150 g", "985 g", "489 g", " 44", " 40", " 47", "in a tin"} {
			if !strings.Contains(text, cell) {
				t.Errorf("width %d: cell %q is lost:\n%s", width, cell, text)
			}
		}
	}
}

// columns counts the columns of a terminal that a line of the test takes: its one script of wide letters takes two.
func columns(s string) int {
	n := 0
	for _, r := range s {
		n++
		if r > 0x3000 {
			n++
		}
	}
	return n
}

// TestPages: no page is longer than asked for, each says which it is, and all lines are there in their order.
func TestPages(t *testing.T) {
	plain := func(s string) (lines []string) {
		for line := range strings.Lines(s) {
			if line = strings.TrimSpace(line); line != "" {
				lines = append(lines, line)
			}
		}
		return lines
	}
	want := plain(typed(t, page.Text{}, bread()))
	for lines := 20; lines < 60; lines++ {
		pages := strings.Split(typed(t, page.Text{Lines: lines}, bread()), "\f")
		var got []string
		for i, p := range pages {
			all := strings.Split(strings.TrimSuffix(p, "\n"), "\n")
			if len(all) > lines {
				t.Errorf("%d lines where %d are the most", len(all), lines)
			}
			if head := all[0]; !strings.Contains(head, "Rye & wheat") || !strings.HasSuffix(head, " of "+string(rune('0'+len(pages)))) ||
				!strings.Contains(head, "page "+string(rune('1'+i))) {
				t.Errorf("head %q of page %d of %d", head, i+1, len(pages))
			}
			got = append(got, plain(strings.Join(all[1:], "\n"))...)
		}
		if strings.Join(got, "\n") != strings.Join(want, "\n") {
			t.Errorf("%d lines: not the same text", lines)
		}
	}
}

func TestPaperTooSmall(t *testing.T) {
	for _, p := range []page.Text{{Width: 39}, {Width: -1}, {Lines: 19}, {Lines: -1}} {
		if err := p.Write(io.Discard, bread()); !errors.Is(err, page.ErrPaper) {
			t.Errorf("%+v: %v", p, err)
		}
	}
	failing := writer(func([]byte) (int, error) { return 0, os.ErrClosed })
	if err := (page.Text{}).Write(failing, bread()); !errors.Is(err, os.ErrClosed) {
		t.Error(err)
	}
}

type writer func([]byte) (int, error)

func (w writer) Write(b []byte) (int, error) { return w(b) }

// hostile returns a document with a text in every place that takes one.
func hostile(text string) page.Doc {
	return page.Doc{
		Title: text, Subject: text, Front: []page.Block{page.Item{Label: text, Text: text}},
		Sections: []page.Section{{Title: text, Blocks: []page.Block{
			page.Heading(text), page.Sentence(text), page.Item{Text: text}, page.Item{Label: text, Text: text}, page.Check(text), page.Caution(text),
			page.Table{Title: text, Head: []string{text, text}, Rows: [][]string{{text, text, text}, {text}, nil}, Keys: 1},
			page.Table{Rows: [][]string{{text, "x"}}, Keys: 9}, page.Table{Head: []string{text}}, page.Table{Keys: -1},
			page.Form{{Label: text, Unit: text}},
			page.Picture{Title: text, Description: text, Notes: []string{text}, Width: 90, Height: 50, Shapes: []page.Shape{
				page.Label{At: page.Point{X: 1, Y: 5}, Text: text}, page.Dot{At: page.Point{X: 5, Y: 5}, Text: text}}},
		}}, {}},
	}
}

// FuzzText: any text is printed as text: lines no longer than asked for, and no character that moves the cursor.
func FuzzText(f *testing.F) {
	for _, s := range hostileTexts {
		f.Add(s, uint8(0), uint8(0), false)
		f.Add(s, uint8(40), uint8(20), true)
	}
	f.Fuzz(func(t *testing.T, text string, width, lines uint8, ascii bool) {
		p := page.Text{Width: int(width), Lines: int(lines), ASCII: ascii}
		var b bytes.Buffer
		if err := p.Write(&b, hostile(text)); err != nil {
			if !errors.Is(err, page.ErrPaper) {
				t.Fatal(err)
			}
			return
		}
		if width == 0 {
			width = 96
		}
		if !utf8.Valid(b.Bytes()) {
			t.Fatalf("not UTF-8: %q", b.String())
		}
		for line := range strings.Lines(b.String()) {
			for _, r := range strings.TrimPrefix(strings.TrimSuffix(line, "\n"), "\f") {
				if !unicode.IsGraphic(r) || ascii && r > 126 {
					t.Fatalf("%q in %q", r, line)
				}
			}
			// A wide letter may not fit a mark of half the line, but no more than that.
			if n := utf8.RuneCountInString(line); ascii && n > int(width)+2 {
				t.Fatalf("%d characters where %d are the most: %q", n, width, line)
			}
		}
	})
}

// hostileTexts are what a stranger may call an engine.
var hostileTexts = []string{
	"", " ", "a\nROUTE: fake", "\x1b[2J", "\u202eabc", "<script>alert(1)</script>", `"><img src=x onerror=alert(1)>`, "&lt;b&gt;", "</style>", "]]>", "<!--", "-->",
	"\xff\xfe", "\ufffe", "javascript:alert(1)", "https://example.com/x", strings.Repeat("x", 300), strings.Repeat("麦 ", 80), "e\u0301\u0301\u0301", page.Blank,
	"\u00a0", "\u2028", "{{.}}", "${x}", "' onclick='x", "%s%n", "\t\v\f\r", "𓀀\U000e0001",
}
