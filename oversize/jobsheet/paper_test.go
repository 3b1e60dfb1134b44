// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"borewright.example/oversize/jobsheet"
)

// textSheets calls with the sheet of every demo job and of honest ones, as planned and as finished.
func textSheets(t *testing.T, with func(t *testing.T, s jobsheet.Sheet, text string)) {
	run := func(name string, s jobsheet.Sheet) {
		t.Run(name, func(t *testing.T) {
			b := asPrinted(t, s)
			with(t, s, b)
		})
	}
	for _, name := range demoJobs(t) {
		s, _ := demoSheet(t, name)
		run(filepath.Base(name), s)
	}
	for _, h := range honestJobs(8, 3) {
		for _, finished := range []bool{false, true} {
			s, err := planned(t, h.tree(finished))
			if err != nil {
				t.Fatal(err)
			}
			run(fmt.Sprintf("%g mm, %d cylinders, finished %v", h.bore, h.cylinders, finished), s)
		}
	}
}

// TestFitsThePaper: no line is wider than a sheet of paper shows, and the front page is one page.
func TestFitsThePaper(t *testing.T) {
	const wide, frontWide, frontLong, fewCylinders = 96, 80, 45, 4
	textSheets(t, func(t *testing.T, s jobsheet.Sheet, text string) {
		lines := strings.Split(text, "\n")
		front := slices.Index(lines, "")
		if len(s.Cylinders) <= fewCylinders && front > frontLong {
			t.Errorf("a front of %d lines", front)
		}
		for i, line := range lines {
			most := wide
			if i < front {
				most = frontWide
			}
			if n := utf8.RuneCountInString(line); n > most {
				t.Errorf("%d columns, at most %d: %q", n, most, line)
			}
		}
	})
}

// stepTitles has how the section of an operation begins.
var stepTitles = map[string]string{
	"measuring": "BEFORE MEASURING", "boring": "FINISH SIZES", "honing": "HONING", "fitting rings": "RING GAPS",
	"sleeving": "SLEEVE", "washing": "PROOF", "going together": "GOING",
}

// TestCautionsAtTheStep: every caution of the sheet is printed once, in the section of its operation where there is
// one; the last section has the others.
func TestCautionsAtTheStep(t *testing.T) {
	begins := regexp.MustCompile(`(?m)^\d+  (.*)$`)
	atStep := map[string]bool{}
	textSheets(t, func(t *testing.T, s jobsheet.Sheet, text string) {
		holds := map[string]int{} // sections by the number of a caution in them
		sections := map[string]string{}
		heads := begins.FindAllStringSubmatchIndex(text, -1)
		for i, at := range heads {
			end := len(text)
			if i+1 < len(heads) {
				end = heads[i+1][0]
			}
			sections[text[at[2]:at[3]]] = unbroken(text[at[1]:end])
		}
		for _, c := range s.Cautions {
			clear(holds)
			want := "CAUTIONS"
			for title, body := range sections {
				if n := strings.Count(body, c.Says); n > 0 {
					holds[title] = n
				}
				if step := stepTitles[c.On]; step != "" && strings.HasPrefix(title, step) {
					want = step
				}
			}
			if len(holds) != 1 {
				t.Errorf("%v: %q stands in %v", c.On, c.Says, holds)
			}
			for title, n := range holds {
				if n != 1 || !strings.HasPrefix(title, want) {
					t.Errorf("%v: %q stands %d times in %q, want once in %s", c.On, c.Says, n, title, want)
				}
			}
			atStep[c.On] = atStep[c.On] || want != "CAUTIONS"
		}
	})
	for operation := range stepTitles {
		if !atStep[operation] {
			t.Errorf("no job shows the cautions of %v at their step", operation)
		}
	}
}
