// SPDX-License-Identifier: BSD-3-Clause

package page_test

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet/page"
)

func browsed(t testing.TB, h page.HTML, d page.Doc) string {
	t.Helper()
	var b bytes.Buffer
	if err := h.Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func TestGoldenHTML(t *testing.T) {
	golden(t, "bread.html", browsed(t, page.HTML{}, bread()))
	if whole, part := browsed(t, page.HTML{}, bread()), browsed(t, page.HTML{Fragment: true}, bread()); strings.Contains(part, "<style") ||
		strings.Count(part, "<table") != strings.Count(whole, "<table") || !strings.HasPrefix(part, `<div class="sheet">`) {
		t.Errorf("the fragment:\n%s", part)
	}
	failing := writer(func([]byte) (int, error) { return 0, os.ErrClosed })
	if err := (page.HTML{}).Write(failing, bread()); !errors.Is(err, os.ErrClosed) {
		t.Error(err)
	}
}

// harmless is all the markup that there is, with the attributes that it may have.
var harmless = map[string]string{
	"html": "lang", "head": "", "meta": "charset name content http-equiv", "title": "id", "style": "", "body": "", "main": "class", "div": "class",
	"header": "", "section": "id", "h1": "", "h2": "", "h3": "", "h4": "", "p": "class", "ul": "class", "li": "", "dl": "class", "dt": "", "dd": "",
	"wbr": "", "label": "", "input": "type", "span": "class role aria-label", "strong": "",
	"table": "class role", "caption": "", "thead": "role", "tbody": "role", "tr": "role", "th": "scope role data-head", "td": "role data-head",
	"figure": "", "figcaption": "",
	"svg": "id role aria-labelledby width height viewBox xmlns", "desc": "id", "defs": "", "g": "fill stroke stroke-width stroke-linecap stroke-linejoin",
	"pattern": "id width height patternUnits patternTransform", "path": "d stroke stroke-width stroke-dasharray fill fill-opacity",
	"circle": "cx cy r stroke-width stroke-dasharray fill stroke", "text": "x y text-anchor textLength lengthAdjust fill stroke font-size font-family",
}

// attack reads markup strictly and returns its text, a blank line for an element: what is not well formed, not
// harmless, from outside, or under an id twice, is an error.
func attack(markup string) (string, error) {
	d := xml.NewDecoder(strings.NewReader(markup))
	var text strings.Builder
	ids := map[string]bool{}
	var open, named []string
	for {
		token, err := d.Token()
		if err == io.EOF {
			for _, id := range named {
				if !ids[id] {
					return "", fmt.Errorf("nothing has the id %q", id)
				}
			}
			return text.String(), nil
		}
		if err != nil {
			return "", err
		}
		switch v := token.(type) {
		case xml.StartElement:
			allowed, ok := harmless[v.Name.Local]
			if !ok {
				return "", fmt.Errorf("<%s>", v.Name.Local)
			}
			for _, a := range v.Attr {
				if !slices.Contains(strings.Fields(allowed), a.Name.Local) {
					return "", fmt.Errorf("<%s %s>", v.Name.Local, a.Name.Local)
				}
				// The one way in that an attribute has: a hatch names the pattern of its own drawing.
				if v := a.Value; a.Name.Local != "data-head" && a.Name.Local != "xmlns" && (strings.Contains(v, "//") || strings.Contains(v, "url(") && !strings.HasPrefix(v, "url(#picture")) {
					return "", fmt.Errorf("%s=%q", a.Name.Local, v)
				}
				if a.Name.Local == "id" {
					if ids[a.Value] {
						return "", fmt.Errorf("id %q twice", a.Value)
					}
					ids[a.Value] = true
				}
			}
			named = append(named, attribute(v, "aria-labelledby")...)
			open = append(open, v.Name.Local)
			if v.Name.Local != "wbr" {
				text.WriteString("\n")
			}
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			if len(open) == 0 || open[len(open)-1] != "style" {
				text.Write(v)
			}
		case xml.Directive:
			if string(v) != "DOCTYPE html" {
				return "", fmt.Errorf("<!%s>", v)
			}
		case xml.Comment:
			return "", errors.New("a comment")
		}
	}
}

func attribute(e xml.StartElement, name string) []string {
	for _, a := range e.Attr {
		if a.Name.Local == name {
			return strings.Fields(a.Value)
		}
	}
	return nil
}

// FuzzHTML: any text is printed as text.
func FuzzHTML(f *testing.F) {
	for _, s := range hostileTexts {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, h := range []page.HTML{{}, {Fragment: true}} {
			markup := browsed(t, h, hostile(text))
			got, err := attack(markup)
			if err != nil {
				t.Fatalf("%v\n%s", err, markup)
			}
			// What the typist of text prints of the same is all there, in as many places as there are.
			plain := strings.TrimSpace(strings.ReplaceAll(typed(t, page.Text{}, page.Doc{Title: text}), "\n", " "))
			plain = strings.Join(strings.Fields(plain), " ")
			if len(plain) < 70 && !strings.Contains(plain, page.Blank) && plain != "" {
				flat := strings.Join(strings.Fields(got), " ")
				if n := strings.Count(flat, plain); n < 20 {
					t.Fatalf("%q stands %d times in\n%s", plain, n, flat)
				}
			}
		}
		var b bytes.Buffer
		for _, block := range hostile(text).Sections[0].Blocks {
			if p, ok := block.(page.Picture); ok {
				if err := p.WriteSVG(&b); err != nil {
					t.Fatal(err)
				}
			}
		}
		if _, err := attack(b.String()); err != nil {
			t.Fatalf("%v\n%s", err, b.String())
		}
	})
}

// TestHTMLParts: lists hold what belongs together, tables name their rows and columns, and what is to be written or
// ticked is there to be written or ticked.
func TestHTMLParts(t *testing.T) {
	markup := browsed(t, page.HTML{Fragment: true}, bread())
	for part, times := range map[string]int{
		"<ul>": 1, `<ul class="checks">`: 1, `<dl class="labels">`: 1, `<dl class="form">`: 1, `<input type="checkbox"/>`: 1,
		`class="blank"`: 4, "<h2>": 1, "<h3>": 2, "<h4>": 2, `<th scope="col"`: 3 + 4 + 6 + 3 + 2, `<th scope="row"`: 3 + 2 + 16 + 2,
		"<strong>Caution:</strong>": 1, "<caption>": 1, `<table>`: 1, `<table class="stack" role="table">`: 4, "<figure>": 1,
		`data-head="loaf: "`: 2 + 8 + 2 + 2, `<span class="value">1000 ± 5 g</span>`: 1, "Rye &amp; wheat &lt;mixed&gt;": 1,
	} {
		if n := strings.Count(markup, part); n != times {
			t.Errorf("%s stands %d times, want %d", part, n, times)
		}
	}
	if t.Failed() {
		t.Log(markup)
	}
}

// TestTight: values of a table may be broken in two where they do not all fit on the paper beside each other, and
// nowhere else.
func TestTight(t *testing.T) {
	for columns, want := range map[int]bool{4: false, 5: true} {
		row := slices.Repeat([]string{"60.1330 ± 0.0041 mm"}, columns)
		doc := page.Doc{Title: "t", Front: []page.Block{page.Table{Rows: [][]string{row}}}}
		if got := strings.Contains(browsed(t, page.HTML{}, doc), `class="stack tight"`); got != want {
			t.Errorf("%d columns: tight %v, want %v", columns, got, want)
		}
	}
}

// TestStacked: a table of 36 columns, the gaps between them among those, is shown whole on a telephone; of 37 it may be
// written out.
func TestStacked(t *testing.T) {
	for last, want := range map[int]bool{16: false, 17: true} {
		row := []string{strings.Repeat("a", 17), strings.Repeat("b", last)}
		doc := page.Doc{Title: "t", Front: []page.Block{page.Table{Rows: [][]string{row}}}}
		if got := strings.Contains(browsed(t, page.HTML{}, doc), `class="stack"`); got != want {
			t.Errorf("17 and %d letters: stacked %v, want %v", last, got, want)
		}
	}
}
