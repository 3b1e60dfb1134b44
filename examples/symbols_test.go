// SPDX-License-Identifier: BSD-3-Clause

package examples_test

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

var (
	formula = regexp.MustCompile(`(?m)^\d  \S.*?     (.*)$`) // of a step, after its heading
	symbol  = regexp.MustCompile(`\p{L}+[₀-₉ᵢ]?`)
)

// running are symbols that the text names in passing: the heights z, all n of them.
var running = map[string][]string{
	"knowgauge": {"n"}, "plateau": {"z"},
}

// TestSymbols: every symbol of a formula that a lesson prints is named on its page: "D: bore", "a, b: radii",
// or it stands before an equals sign, under a heading or after what it is.
func TestSymbols(t *testing.T) {
	words := []string{"cos", "sin", "tan", "atan", "ln", "max", "min", "π", "Σ", "mm", "µm", "K", "C",
		"an", "as", "at", "be", "by", "if", "in", "is", "it", "of", "on", "or", "so", "to"}
	checked := 0
	for _, name := range lessons(t) {
		text, err := os.ReadFile(filepath.Join("testdata", name+".txt"))
		if err != nil {
			t.Fatal(err)
		}
		page := string(text)
		named := func(s string) bool {
			q := regexp.QuoteMeta(s)
			return regexp.MustCompile(`(?m)(^|[\s(;,=])` + q + `(, [^\s:,]+)*( and [^\s:]+)?: |(^|[\s(;,])` + q + ` = `).MatchString(page)
		}
		for _, m := range formula.FindAllStringSubmatch(page, -1) {
			for _, at := range symbol.FindAllStringIndex(m[1], -1) {
				s, article := m[1][at[0]:at[1]], regexp.MustCompile(`^a \p{Ll}{2}`).MatchString(m[1][at[0]:])
				short := utf8.RuneCountInString(strings.TrimPrefix(s, "Δ")) <= 2
				if !short || article || slices.Contains(words, s) || strings.HasSuffix(m[1][:at[0]], "'") {
					continue
				}
				checked++
				first, _ := utf8.DecodeRuneInString(strings.TrimPrefix(s, "Δ"))
				if !named(s) && !named(string(first)) && !named("Δ"+string(first)) && !named("Δ") && !slices.Contains(running[name], s) {
					t.Errorf("%s does not say what %s is, in %q", name, s, m[1])
				}
			}
		}
	}
	if checked < 60 {
		t.Errorf("%d symbols in all, want more", checked)
	}
}

// TestTerms: the terms of the trade that lessons use are in the glossary.
func TestTerms(t *testing.T) {
	doc, err := os.ReadFile(filepath.Join("..", "doc.go"))
	if err != nil {
		t.Fatal(err)
	}
	_, glossary, _ := strings.Cut(string(doc), "# Glossary")
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
