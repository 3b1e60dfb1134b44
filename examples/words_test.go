// SPDX-License-Identifier: BSD-3-Clause

package examples_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"
)

var (
	word     = regexp.MustCompile(`\p{L}+[₀-₉ᵢ]?`)
	article  = regexp.MustCompile(`^a \(?\p{Ll}{2}|^A \(?\p{L}{2}`)
	unit     = regexp.MustCompile(`(\d ?|[/°])[KCNm]$`) // of one letter, after a number or in a quotient
	headword = regexp.MustCompile(`(?m)^//   - ([^:]+): `)
)

// running are symbols that the text names in passing: the heights z, all n of them, the shares Mr, and the
// letters of a fit, H of a hole and h, k of a shaft.
var running = map[string][]string{
	"knowgauge": {"n"}, "plateau": {"z", "Mr"}, "whichfit": {"H", "h", "k"},
}

// TestWords: whatever word or symbol a lesson prints is plain English, stands in the glossary, or is
// explained on the same page: "D: bore", "a, b: radii", or before an equals sign, under a heading or after what
// it is. No term of the trade is in the list of what is plain, so a new one fails here until it is explained. A word
// plain in one sense passes in any.
func TestWords(t *testing.T) {
	if _, err := os.Stat("testdata"); errors.Is(err, fs.ErrNotExist) {
		t.Skip("golden files are no part of the module's archive")
	}
	text, err := os.ReadFile(filepath.Join("testdata", "plain.words"))
	if err != nil {
		t.Fatal(err)
	}
	plain, used := map[string]bool{}, map[string]bool{}
	for line := range strings.Lines(string(text)) {
		line, _, _ = strings.Cut(line, "#")
		for _, w := range strings.Fields(line) {
			if plain[w] {
				t.Errorf("%q is in the list twice", w)
			}
			plain[w] = true
		}
	}
	explained := map[string]bool{}
	for _, m := range headword.FindAllStringSubmatch(glossary(t), -1) {
		for _, w := range word.FindAllString(m[1], -1) {
			explained[w] = true
		}
		if plain[m[1]] {
			t.Errorf("%q is in the glossary, and said to be plain", m[1])
		}
	}
	symbols := 0
	pages, err := filepath.Glob(filepath.Join("testdata", "*.txt"))
	if err != nil || len(pages) < 3*len(lessons(t)) {
		t.Fatalf("%d pages: %v", len(pages), err)
	}
	for _, file := range pages {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name := strings.TrimSuffix(filepath.Base(file), ".txt")
		lesson, _, _ := strings.Cut(name, "_")
		page, asked := string(text), map[string]bool{}
		for _, at := range word.FindAllStringIndex(page, -1) {
			w := page[at[0]:at[1]]
			owned := strings.EqualFold(w, "s") && strings.HasSuffix(page[:at[0]], "'")
			if asked[w] || owned || article.MatchString(page[at[0]:]) || len(w) == 1 && unit.MatchString(page[max(0, at[1]-8):at[1]]) {
				continue
			}
			asked[w] = true
			known := false
			for _, s := range stems(w) {
				if plain[s] {
					used[s] = true
				}
				known = known || plain[s] || explained[s]
			}
			if known {
				continue
			}
			symbols++
			if !named(page, w) && !slices.Contains(running[lesson], w) {
				t.Errorf("%s: %q is not plain, not in the glossary and not explained, in %q", name, w, lineAt(page, at[0]))
			}
		}
	}
	if symbols < 100 {
		t.Errorf("%d symbols in all, want more", symbols)
	}
	for w := range plain {
		if !used[w] {
			t.Errorf("no lesson prints %q any more", w)
		}
	}
}

// named reports whether a page explains a symbol, or that of which it is a change or a part. A longer
// word without a capital is no symbol, nor is what begins a line or follows a bullet: many a sentence has a
// word before a colon.
func named(page, w string) bool {
	base := strings.TrimPrefix(w, "Δ")
	first, _ := utf8.DecodeRuneInString(base)
	symbols := []string{w}
	if r := []rune(base); len(r) == 2 && unicode.IsLower(r[1]) && !legend(w).MatchString(page) && !legend(string(r[1])).MatchString(page) {
		return false // α is, and of what αs is not
	}
	switch {
	case utf8.RuneCountInString(base) <= 2:
		symbols = append(symbols, string(first), "Δ"+string(first), "Δ")
	case !strings.ContainsFunc(base, unicode.IsUpper):
		return false
	}
	return slices.ContainsFunc(symbols, func(s string) bool { return legend(s).MatchString(page) })
}

var legends = map[string]*regexp.Regexp{}

// legend matches where a page says what a symbol is.
func legend(symbol string) *regexp.Regexp {
	if legends[symbol] == nil {
		q := regexp.QuoteMeta(symbol)
		legends[symbol] = regexp.MustCompile(`([^•\n] |[(;,=])` + q + `(, [^\s:,]+)*( and [^\s:]+)?: |[ (;,]` + q + ` = |, ` + q + ` of the `)
	}
	return legends[symbol]
}

func lineAt(page string, at int) string {
	from := strings.LastIndexByte(page[:at], '\n') + 1
	line, _, _ := strings.Cut(page[from:], "\n")
	return strings.TrimSpace(line)
}

// stems returns a word, in small letters too, and what it may be a form of.
func stems(w string) []string {
	all := []string{w}
	if utf8.RuneCountInString(w) > 1 {
		w = strings.ToLower(w)
		all = append(all, w)
	}
	for _, end := range []string{"s", "es", "ed", "ing", "er", "est", "ly", "en"} {
		s, ok := strings.CutSuffix(w, end)
		n := len(s)
		if !ok || n < 2 {
			continue
		}
		all = append(all, s, s+"e")
		if s[n-1] == 'i' {
			all = append(all, s[:n-1]+"y")
		}
		if n > 2 && s[n-1] == s[n-2] {
			all = append(all, s[:n-1])
		}
	}
	return all
}

func glossary(t *testing.T) string {
	t.Helper()
	doc, err := os.ReadFile(filepath.Join("..", "doc.go"))
	if err != nil {
		t.Fatal(err)
	}
	_, after, _ := strings.Cut(string(doc), "# Glossary")
	text, _, _ := strings.Cut(after, "\n// # ")
	return text
}

// TestTerms: the terms of the trade that lessons use are in the glossary.
func TestTerms(t *testing.T) {
	if _, err := os.Stat("testdata"); errors.Is(err, fs.ErrNotExist) {
		t.Skip("golden files are no part of the module's archive")
	}
	glossary := glossary(t)
	pages, err := filepath.Glob(filepath.Join("testdata", "*.txt"))
	if err != nil {
		t.Fatal(err)
	}
	var all strings.Builder
	for _, p := range pages {
		text, err := os.ReadFile(p)
		if err != nil {
			t.Fatal(err)
		}
		all.Write(text)
	}
	for _, term := range []string{
		"anvil", "clean-up", "clearance", "compression ratio", "crosshatch", "deck", "deglaze", "dial", "displacement", "end gap", "feeler leaf", "gasket",
		"hone", "interference", "lobe", "ovality", "oversize", "pin axis", "plug", "roundness", "setting ring", "skirt", "sleeve", "soak", "spindle",
		"standard uncertainty", "stroke", "taper", "thrust axis", "undecided", "vee-block", "Young's modulus",
	} {
		if !strings.Contains(glossary, "\n//   - "+term+": ") {
			t.Errorf("the glossary has no %q", term)
		}
		words := strings.FieldsFunc(term, func(r rune) bool { return r == ' ' || r == '-' })
		if !slices.ContainsFunc(words, func(w string) bool { return strings.Contains(strings.ToLower(all.String()), strings.ToLower(w)) }) {
			t.Errorf("no lesson prints %q", term)
		}
	}
}
