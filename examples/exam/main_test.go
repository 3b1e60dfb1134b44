// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

var update = flag.Bool("update", false, "write the golden papers anew")

// TestGolden holds ten papers and their answers to the letter, and one as HTML.
func TestGolden(t *testing.T) {
	if _, err := os.Stat("testdata"); errors.Is(err, fs.ErrNotExist) {
		t.Skip("golden files are no part of the module's archive")
	}
	for seed := 1; seed <= 10; seed++ {
		args := [][]string{{}, {"-answers"}}
		if seed == 7 {
			args = append(args, []string{"-html"}, []string{"-html", "-answers"})
		}
		var out, errs bytes.Buffer
		for _, a := range args {
			if code := run(append([]string{"-seed", fmt.Sprint(seed)}, a...), &out, &errs); code != 0 || errs.Len() > 0 {
				t.Fatalf("seed %d: exit %d: %s", seed, code, &errs)
			}
		}
		golden := filepath.Join("testdata", fmt.Sprintf("%d.txt", seed))
		if *update {
			if err := os.WriteFile(golden, out.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(golden)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(out.Bytes(), want) {
			t.Errorf("paper %d differs from %s; after a look at the difference: go test ./examples/exam -update", seed, golden)
		}
	}
}

// TestSecondWay solves a thousand papers by the second way: it agrees with the library to a fifth of the last
// digit asked for, and every number is one that can be written down.
func TestSecondWay(t *testing.T) {
	papers := map[string]uint64{}
	for seed := range uint64(1000) {
		p, err := draw(seed)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if len(p.Questions) != 10 {
			t.Fatalf("seed %d: %d questions", seed, len(p.Questions))
		}
		var text strings.Builder
		if err := p.text(&text, false); err != nil {
			t.Fatal(err)
		}
		whole := text.String()[strings.Index(text.String(), "\n"):]
		if other, twice := papers[whole]; twice {
			t.Errorf("seeds %d and %d give one paper", seed, other)
		}
		papers[whole] = seed
		if err := p.text(&text, true); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(text.String()) {
			if n := utf8.RuneCountInString(line); n > width+20 {
				t.Errorf("seed %d: a line of %d: %s", seed, n, line)
			}
		}
		for _, bad := range []string{"NaN", "Inf", "%!", "e+0", "<nil>"} {
			if strings.Contains(text.String(), bad) {
				t.Errorf("seed %d prints %s", seed, bad)
			}
		}
		for i, q := range p.Questions {
			if q.Title == "" || q.Text == "" || len(q.Working) == 0 || len(q.Answers) == 0 {
				t.Errorf("seed %d, question %d has a part missing: %+v", seed, i+1, q)
			}
			for _, a := range q.Answers {
				if !(math.Abs(a.First-a.Second) <= 0.2*math.Pow10(-a.Places)) {
					t.Errorf("seed %d, %s: %s by the library, %s by the second way", seed, q.Title, a.text(a.First), a.text(a.Second))
				}
			}
		}
		if t.Failed() {
			return
		}
	}
}

// TestZoneIsLess: the minimum zone is never wider than the zone about least squares.
func TestZoneIsLess(t *testing.T) {
	for seed := range uint64(200) {
		p, err := draw(seed)
		if err != nil {
			t.Fatal(err)
		}
		for _, q := range p.Questions {
			if q.Title == "Zone and least squares" && q.Answers[1].First >= q.Answers[0].First {
				t.Errorf("seed %d: zone %g, least squares %g", seed, q.Answers[1].First, q.Answers[0].First)
			}
		}
	}
}

// TestArguments: what is wrong prints no paper.
func TestArguments(t *testing.T) {
	for _, args := range [][]string{{"7"}, {"-seed", "x"}, {"-key"}} {
		var out, errs bytes.Buffer
		if code := run(args, &out, &errs); code != 2 || out.Len() > 0 || errs.Len() == 0 {
			t.Errorf("%v: exit %d, %q, %q", args, code, &out, &errs)
		}
	}
	var out, errs bytes.Buffer
	if code := run([]string{"-h"}, &out, &errs); code != 0 || out.Len() > 0 {
		t.Errorf("-h: exit %d, %q", code, &out)
	}
}
