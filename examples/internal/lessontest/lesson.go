// SPDX-License-Identifier: BSD-3-Clause

// Package lessontest holds a lesson to what it says, whatever its numbers.
//
// A lesson writes a page about its data. Data sets of its test each have a golden page. Data drawn at
// random, extremes included, have none; of them the test says, by arithmetic of its own, which sentences
// the page must have and which it must not, and the page is held to the form of every lesson: its parts in
// their order, the second way agreeing with the library, something to see in the picture, no line that
// runs off the paper, and nothing that is no number.
package lessontest

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"
)

var update = flag.Bool("update", false, "write the golden pages anew")

// Refused begins the sentence with which a lesson ends where its numbers cannot be.
const Refused = "\nNO ANSWER FOR THESE NUMBERS: "

// A Lesson is the function of a lesson, and what is true of its page. D is its data.
type Lesson[D any] struct {
	Write func(io.Writer, D)
	Data  map[string]D       // three sets or more, by name; that of "" is the one in the file
	Draw  func(*rand.Rand) D // any data, extremes too

	// Claims returns sentences, or parts of them, and whether the page for these data must have each:
	// the branches taken, and numbers, reckoned without the lesson. Refused is one of them. A sentence
	// that many data are asked for must be true of some. It returns nil where the data stand
	// so near an edge that rounding decides, which must be rare.
	Claims func(D) map[string]bool

	// Slow says that a page takes long to make: a quarter of the data are drawn, and none is made for a second time.
	Slow bool
}

// Test holds the lesson to all of that. It is run in the folder of the lesson; the golden pages are in the
// folder testdata beside that, NAME.txt and NAME_SET.txt.
func (l Lesson[D]) Test(t *testing.T) {
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	if _, ok := l.Data[""]; !ok || len(l.Data) < 3 {
		t.Errorf("%d sets of data, want three or more, and the lesson's own among them", len(l.Data))
	}
	for name, d := range l.Data {
		file := filepath.Base(dir)
		if name != "" {
			file += "_" + name
		}
		l.golden(t, filepath.Join("..", "testdata", file+".txt"), d)
	}
	drawn, held, edges, draws := map[string]int{}, map[string]bool{}, 0, draws
	if l.Slow {
		draws /= 4
	}
	for i := range uint64(draws) {
		d := l.Draw(rand.New(rand.NewPCG(1, i)))
		claims := l.hold(t, fmt.Sprintf("draw %d", i), d)
		if claims == nil {
			edges++
		}
		for claim, is := range claims {
			drawn[claim], held[claim] = drawn[claim]+1, held[claim] || is
		}
		if t.Failed() {
			return
		}
	}
	if edges > draws/20 {
		t.Errorf("%d of %d draws are held to nothing but their form", edges, draws)
	}
	for claim, n := range drawn {
		if n > draws/10 && !held[claim] {
			t.Errorf("no data drawn make it say %q", claim)
		}
	}
}

func (l Lesson[D]) golden(t *testing.T, file string, d D) {
	t.Helper()
	l.hold(t, file, d)
	page, _ := l.page(d)
	if !l.Slow {
		if again, _ := l.page(d); again != page {
			t.Errorf("%s: two runs differ", file)
		}
	}
	if _, err := os.Stat(filepath.Dir(file)); errors.Is(err, fs.ErrNotExist) {
		t.Log("golden files are no part of the module's archive")
		return
	}
	if *update {
		if err := os.WriteFile(file, []byte(page), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if page != string(want) {
		t.Errorf("differs from %s; after a look at the difference: go test ./examples/... -update\n%s", file, difference(page, string(want)))
	}
}

// difference returns the first line in which two pages differ.
func difference(got, want string) string {
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			return "got  " + g[i] + "\nwant " + strings.Join(w[min(i, len(w)):min(i+1, len(w))], "")
		}
	}
	return "the golden page goes on"
}

// page returns what the lesson writes, or what it panics with.
func (l Lesson[D]) page(d D) (text string, err error) {
	var b bytes.Buffer
	defer func() {
		if r := recover(); r != nil {
			text, err = b.String(), fmt.Errorf("panics: %v", r)
		}
	}()
	l.Write(&b, d)
	return b.String(), nil
}

// hold checks one page, and returns what was claimed of it.
func (l Lesson[D]) hold(t *testing.T, name string, d D) map[string]bool {
	t.Helper()
	page, err := l.page(d)
	faults := check(page)
	if err != nil {
		faults = append(faults, err.Error())
	}
	claims := l.Claims(d)
	for claim, is := range claims {
		if strings.Contains(page, claim) != is {
			faults = append(faults, fmt.Sprintf("%q is on the page: %t, and ought to be: %t", claim, !is, is))
		}
	}
	if len(faults) > 0 {
		t.Errorf("%s: %+v\n%s\n%s", name, d, page, strings.Join(faults, "\n"))
	}
	return claims
}

var (
	// leak matches what is no number, and what Go prints of values that want words.
	leak = regexp.MustCompile(`NaN|[+-]?Inf\b|%!|<nil>|[:=(] ?(?:true|false)\b|\[-?\d+( -?\d+)*\]|\[\]|\b[A-Za-z]\.[A-Z][a-z]|\de[+-]\d\d|0x`)
	// pair matches a number of the second way and that of the library.
	pair = regexp.MustCompile(`([+\-−]?[\d.]+)([^\d()]*)\(the library: ([+\-−]?[\d.]+)`)
	// heading is a line in capitals, the picture's among them.
	heading = regexp.MustCompile(`(?m)^[A-Z]{2}[A-Z0-9 ,'Δ°-]*[A-Z]`)
	marks   = "█▓▒░●○•◆▲╳│┃─━·"
)

const widest = 130 // characters, with what a picture needs beside it

// check returns what is wrong with the form of a page.
func check(page string) (faults []string) {
	fault := func(format string, a ...any) { faults = append(faults, fmt.Sprintf(format, a...)) }
	if m := leak.FindString(page); m != "" {
		fault("prints %q", m)
	}
	for line := range strings.Lines(page) {
		if n := utf8.RuneCountInString(line); n > widest && !strings.HasPrefix(line, Refused[1:]) {
			fault("a line of %d characters: %.60q…", n, line)
		}
	}
	if _, after, ok := strings.Cut(page, Refused); ok {
		reason, _, _ := strings.Cut(after, "\n")
		if len(reason) < 10 {
			fault("a refusal without a reason")
		}
		return faults
	}
	rest := page
	for _, part := range []string{"\nThe question: ", "\n1  ", "\nA SECOND WAY", "\nWHAT USUALLY GOES WRONG\n", "\nCAUTION: "} {
		before, after, ok := strings.Cut(rest, part)
		if !ok {
			fault("no %q after what comes before it", part)
			return faults
		}
		switch part {
		case "\nA SECOND WAY":
			if !pictured(before) {
				fault("no picture, or an empty one")
			}
		case "\nWHAT USUALLY GOES WRONG\n":
			pairs := pair.FindAllStringSubmatch(before, -1)
			if n := strings.Count(before, "the library: "); n == 0 || n != len(pairs) {
				fault("%d numbers of the second way beside the library's, %d of them legible", n, len(pairs))
			}
			for _, p := range pairs {
				if !agree(p[1], p[3]) {
					fault("the second way has %s, the library %s", p[1], p[3])
				}
			}
		}
		rest = after
	}
	return faults
}

// pictured reports whether under some heading in capitals stands a mark, or a dot of Braille.
func pictured(text string) bool {
	for _, at := range heading.FindAllStringIndex(text, -1) {
		_, block, _ := strings.Cut(text[at[1]:], "\n")
		block, _, _ = strings.Cut(block, "\n\n")
		if strings.ContainsAny(block, marks) || strings.ContainsFunc(block, func(r rune) bool { return r > 0x2800 && r <= 0x28FF }) {
			return true
		}
	}
	return false
}

// agree reports whether two printed numbers are the same to a unit in the last place of the coarser.
func agree(a, b string) bool {
	x, errX := strconv.ParseFloat(strings.Replace(a, "−", "-", 1), 64)
	y, errY := strconv.ParseFloat(strings.Replace(b, "−", "-", 1), 64)
	places := func(s string) int {
		_, after, _ := strings.Cut(s, ".")
		return len(after)
	}
	unit := math.Pow10(-min(places(a), places(b)))
	return errX == nil && errY == nil && math.Abs(x-y) < 1.5*unit
}
