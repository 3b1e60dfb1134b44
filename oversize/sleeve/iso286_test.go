// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"cmp"
	"encoding/csv"
	"errors"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// steps are the ends of the ranges of ISO 286 in mm: the first is the lower end, and main marks the ends of main
// ranges.
var steps = []int{18, 24, 30, 40, 50, 65, 80, 100, 120, 140, 160, 180, 200, 225, 250, 280, 315, 355, 400, 450, 500}

var mains = []int{18, 30, 50, 80, 120, 180, 250, 315, 400, 500}

// sizesOf returns sizes of a range: just over its lower end, the middle, and its upper end.
func sizesOf(over, upTo int) []units.Length {
	lo, hi := units.Length(over)*mm, units.Length(upTo)*mm
	return []units.Length{lo + 1, (lo + hi) / 2, hi}
}

// published returns the rows of a table: the range in mm, and the cells by their heading; an empty cell is left out.
func published(t *testing.T, file string) (rows []publishedRow) {
	t.Helper()
	f, err := os.Open("testdata/" + file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	lines, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range lines[1:] {
		row := publishedRow{over: must(strconv.Atoi(line[0])), upTo: must(strconv.Atoi(line[1])), cells: map[string]units.Length{}}
		for i, cell := range line[2:] {
			if cell != "" {
				row.cells[lines[0][i+2]] = units.Length(must(strconv.Atoi(cell))) * um
			}
		}
		rows = append(rows, row)
	}
	return rows
}

type publishedRow struct {
	over, upTo int
	cells      map[string]units.Length
}

// TestTolerances: the published grades, at both ends of each range: over the lower, up to and including the upper.
func TestTolerances(t *testing.T) {
	n := 0
	for _, row := range published(t, "iso286_it.csv") {
		for _, size := range sizesOf(row.over, row.upTo) {
			for g := 5; g <= 11; g++ {
				n++
				want := row.cells["IT"+strconv.Itoa(g)]
				if got, err := sleeve.Tolerance(size, g); got != want || err != nil {
					t.Errorf("IT%d at %v = %v, %v; want %v", g, size, got, err, want)
				}
			}
		}
	}
	if n != 6*7*3 {
		t.Errorf("%d cells", n)
	}
}

// TestShaftDeviations: the published deviations of shafts, for grades 5, 6 and 7, at both ends of each range.
func TestShaftDeviations(t *testing.T) {
	n := 0
	for _, row := range published(t, "iso286_shafts.csv") {
		for _, size := range sizesOf(row.over, row.upTo) {
			for heading, want := range row.cells {
				for g := 5; g <= 7; g++ {
					n++
					c := sleeve.MustParseClass(heading[:1] + strconv.Itoa(g))
					d, err := c.Deviations(size)
					near, far := d.Min, d.Max
					if heading == "g_es" || heading == "h_es" {
						near, far = d.Max, d.Min
					}
					if near != want || err != nil || (far-near).Abs() != must(sleeve.Tolerance(size, g)) {
						t.Errorf("%v at %v: %+v, %v; want %v", c, size, d, err, want)
					}
				}
			}
		}
	}
	if n != (13*11-1)*3*3 { // there is no t to 24 mm
		t.Errorf("%d cells", n)
	}
}

// TestHoleDeviations: the published upper deviations of holes, grades 6 to 8.
func TestHoleDeviations(t *testing.T) {
	n := 0
	for _, row := range published(t, "iso286_holes.csv") {
		for _, size := range sizesOf(row.over, row.upTo) {
			for heading, want := range row.cells {
				if heading[:2] == "IT" {
					continue
				}
				n++
				c := sleeve.MustParseClass(heading[:2])
				d, err := c.Deviations(size)
				if size == 250*mm+1 && heading == "M6_ES" && d.Max == -11*um {
					t.Errorf("M6 just over 250 mm: the exception is missing")
				}
				if d.Max != want || err != nil || d.Max-d.Min != row.cells["IT"+heading[1:2]] {
					t.Errorf("%v at %v: %+v, %v; want %v", c, size, d, err, want)
				}
			}
		}
	}
	if n != 6*15*3 {
		t.Errorf("%d cells", n)
	}
}

// TestHolesOfEachLetter: H7 stands at zero; JS7 and js7 evenly, halves kept (ISO 286; an older reprint prints 10 for 10.5);
// N from grade 9 is 0, M from 9 and P from 8 have no Δ (Narayana, Kannaiah and Reddy, p. 219); P7 over 18 is that of
// their example, p. 221; f9 over 250 to 315 mm is that of ISO 286-2:1988/Cor.1:2006; M6 at 250 mm follows the rule and M6 over it
// does not (the same, p. 219, footnote).
func TestHolesOfEachLetter(t *testing.T) {
	for _, tt := range []struct {
		size            units.Length
		class           string
		least, greatest units.Length
	}{
		{73 * mm, "H7", 0, 30 * um},
		{30 * mm, "H7", 0, 21 * um},
		{30*mm + 1, "H7", 0, 25 * um},
		{80 * mm, "H7", 0, 30 * um},
		{25 * mm, "JS6", -6500 * units.Nanometre, 6500 * units.Nanometre},
		{25 * mm, "JS7", -10500 * units.Nanometre, 10500 * units.Nanometre},
		{25 * mm, "js7", -10500 * units.Nanometre, 10500 * units.Nanometre},
		{25 * mm, "P7", -35 * um, -14 * um},
		{50 * mm, "P7", -42 * um, -17 * um},
		{73 * mm, "N9", -74 * um, 0},
		{73 * mm, "M9", -85 * um, -11 * um},
		{73 * mm, "P9", -106 * um, -32 * um},
		{250 * mm, "M6", -37 * um, -8 * um},
		{250*mm + 1, "M6", -41 * um, -9 * um},
		{300 * mm, "f9", -186 * um, -56 * um},
		{330 * mm, "r6", 108 * um, 144 * um}, // two bearing catalogues
		{400 * mm, "r6", 114 * um, 150 * um}, // two bearing catalogues
		{65 * mm, "s7", 53 * um, 83 * um},
		{65*mm + 1000, "s7", 59 * um, 89 * um},
		{73 * mm, "k7", 2 * um, 32 * um},
		{73 * mm, "k8", 0, 46 * um},
	} {
		c := sleeve.MustParseClass(tt.class)
		if d, err := c.Deviations(tt.size); err != nil || d.Min != tt.least || d.Max != tt.greatest {
			t.Errorf("%v at %v: %v to %v, %v; want %v to %v", c, tt.size, d.Min, d.Max, err, tt.least, tt.greatest)
		}
	}
}

// mean is D of the standard's formulas for the range of rows that a size lies in, in mm.
func mean(ends []int, size units.Length) float64 {
	i, _ := slices.BinarySearchFunc(ends, size, func(end int, s units.Length) int {
		return cmp.Compare(units.Length(end)*mm, s)
	})
	return math.Sqrt(float64(ends[i-1]) * float64(ends[i]))
}

// TestTolerancesAreTheFormulaRounded: every tolerance, read or from memory, is 7 to 100 times i, rounded to 1 µm up to 100, to 5
// up to 200 and to 10 above, but for seven cells of the standard that are rounded up further, by at most 3 %.
func TestTolerancesAreTheFormulaRounded(t *testing.T) {
	further := map[string]bool{
		"IT11 30-50": true, "IT11 50-80": true, "IT6 315-400": true, "IT11 315-400": true,
		"IT6 400-500": true, "IT7 400-500": true, "IT11 400-500": true,
	}
	for k := 1; k < len(mains); k++ {
		over, upTo := mains[k-1], mains[k]
		d := math.Sqrt(float64(over) * float64(upTo))
		i := 0.45*math.Cbrt(d) + 0.001*d
		for g, times := range []float64{5: 7, 6: 10, 7: 16, 8: 25, 9: 40, 10: 64, 11: 100} {
			if times == 0 {
				continue
			}
			raw, grid := times*i, 1.0
			if raw > 100 {
				grid = 5
			}
			if raw > 200 {
				grid = 10
			}
			rounded := math.Round(raw/grid) * grid
			cell := "IT" + strconv.Itoa(g) + " " + strconv.Itoa(over) + "-" + strconv.Itoa(upTo)
			for _, size := range sizesOf(over, upTo) {
				table := must(sleeve.Tolerance(size, g)).In(um)
				if (table == rounded) == further[cell] || !(table-raw <= max(0.03*raw, grid/2) && raw-table <= grid/2) {
					t.Errorf("%s at %v: table %v, formula %.2f", cell, size, table, raw)
				}
			}
		}
	}
}

// TestDeviationsAreTheFormula: every deviation, read or from memory, lies within 1.2 µm or 0.6 % of the standard's formula, with D
// of the main range for f, g, k, n, and of the narrower one for s, t, u, x; t over 24 to 30 mm is printed 3.1 µm above. For p the standard
// adds 0 to 5 µm to IT7, for s up to 50 mm 1 to 4 µm to IT8.
func TestDeviationsAreTheFormula(t *testing.T) {
	for k := 1; k < len(steps); k++ {
		for _, size := range sizesOf(steps[k-1], steps[k]) {
			wide, narrow := mean(mains, size), mean(steps, size)
			near := func(letter string) float64 {
				d := must(sleeve.MustParseClass(letter + "6").Deviations(size))
				if letter < "h" {
					return -d.Max.In(um)
				}
				return d.Min.In(um)
			}
			it := func(g int) float64 { return must(sleeve.Tolerance(size, g)).In(um) }
			for letter, want := range map[string]float64{
				"f": 5.5 * math.Pow(wide, 0.41), "g": 2.5 * math.Pow(wide, 0.34), "k": 0.6 * math.Cbrt(wide), "m": it(7) - it(6),
				"n": 5 * math.Pow(wide, 0.34), "r": math.Sqrt(near("p") * near("s")), "s": it(7) + 0.4*narrow, "t": it(7) + 0.63*narrow,
				"u": it(7) + narrow, "x": it(7) + 1.6*narrow,
			} {
				switch {
				case letter == "t" && size <= 24*mm:
					continue
				case letter == "s" && size <= 50*mm:
					if add := near("s") - it(8); add < 1 || add > 4 {
						t.Errorf("s at %v is IT8 + %v", size, add)
					}
					continue
				case letter == "t" && size <= 30*mm:
					want += 3.1
				}
				if got := near(letter); math.Abs(got-want) > max(1.2, 0.006*want) {
					t.Errorf("%s at %v: table %v, formula %.2f", letter, size, got, want)
				}
			}
			if add := near("p") - it(7); add < 0 || add > 5 {
				t.Errorf("p at %v is IT7 + %v", size, add)
			}
		}
	}
}

// TestDeltaRule: a hole-basis fit and its shaft-basis twin, K7/h6 and H7/k6, are the same fit. That is what Δ is for.
// M6 over 250 to 315 mm breaks it by 2 µm.
func TestDeltaRule(t *testing.T) {
	for k := 1; k < len(steps); k++ {
		for _, size := range sizesOf(steps[k-1], steps[k]) {
			for _, tt := range [][2]string{{"K", "k"}, {"M", "m"}, {"N", "n"}, {"P", "p"}} {
				for g := 6; g <= 7; g++ {
					fine, coarse := strconv.Itoa(g-1), strconv.Itoa(g)
					pair := func(hole, shaft string) sleeve.Diametral {
						return must(sleeve.DiametralFromClasses(size, sleeve.MustParseClass(hole), sleeve.MustParseClass(shaft)))
					}
					holes, shafts := pair(tt[0]+coarse, "h"+fine), pair("H"+coarse, tt[1]+fine)
					if tt[0] == "M" && g == 6 && size > 250*mm && size <= 315*mm {
						shafts = sleeve.Diametral{Min: shafts.Min - 2*um, Max: shafts.Max - 2*um}
					}
					if holes != shafts {
						t.Errorf("at %v: %s%s/h%s %+v, H%s/%s%s %+v", size, tt[0], coarse, fine, holes, coarse, tt[1], fine, shafts)
					}
				}
			}
		}
	}
}

// TestClassPair: fits computed by hand from the published tables; those at 67 mm are the usual ones and their shaft-basis twins.
func TestClassPair(t *testing.T) {
	for _, tt := range []struct {
		size            units.Length
		hole, shaft     string
		least, greatest units.Length
	}{
		{73 * mm, "H7", "s6", 29 * um, 78 * um},
		{60 * mm, "H7", "s6", 23 * um, 72 * um},
		{73 * mm, "H7", "p6", 2 * um, 51 * um},
		{40 * mm, "H7", "k6", -23 * um, 18 * um},
		{40 * mm, "H8", "f7", -89 * um, -25 * um},
		{25 * mm, "H7", "h6", -34 * um, 0},
		{25 * mm, "H7", "g6", -41 * um, -7 * um},
		{73 * mm, "H6", "r5", 24 * um, 56 * um},
		{73 * mm, "H7", "m6", -19 * um, 30 * um},

		{67 * mm, "H7", "g6", -59 * um, -10 * um},
		{67 * mm, "H7", "k6", -28 * um, 21 * um},
		{67 * mm, "H7", "n6", -10 * um, 39 * um},
		{67 * mm, "H7", "p6", 2 * um, 51 * um},
		{67 * mm, "H7", "s6", 29 * um, 78 * um},
		{67 * mm, "H7", "u6", 72 * um, 121 * um},
		{67 * mm, "H7", "x6", 116 * um, 165 * um},
		{67 * mm, "K7", "h6", -28 * um, 21 * um},
		{67 * mm, "M7", "h6", -19 * um, 30 * um},
		{67 * mm, "N7", "h6", -10 * um, 39 * um},
		{67 * mm, "P7", "h6", 2 * um, 51 * um},
	} {
		d, err := sleeve.DiametralFromClasses(tt.size, sleeve.MustParseClass(tt.hole), sleeve.MustParseClass(tt.shaft))
		if err != nil || d.Min != tt.least || d.Max != tt.greatest {
			t.Errorf("%s/%s at %v: %v to %v, %v; want %v to %v", tt.hole, tt.shaft, tt.size, d.Min, d.Max, err, tt.least, tt.greatest)
		}
	}
	w := must(sleeve.MustParseClass("s6").Sizes(73 * mm))
	if w.Min != 73*mm+59*um || w.Max != 73*mm+78*um {
		t.Errorf("s6 at 73 mm: %v", w)
	}
}

// classes lists every class there is.
func classes() (list []string) {
	for _, l := range []struct {
		letters     []string
		least, most int
	}{
		{[]string{"H", "JS"}, 5, 11}, {[]string{"J", "K"}, 6, 8}, {[]string{"M", "N", "P"}, 6, 11},
		{[]string{"f", "g", "h", "js", "k", "m", "n", "p", "r", "s", "t", "u", "x"}, 5, 11},
	} {
		for _, letters := range l.letters {
			for g := l.least; g <= l.most; g++ {
				list = append(list, letters+strconv.Itoa(g))
			}
		}
	}
	return list
}

// TestClassText: all classes go to text and back, and nothing else is a class.
func TestClassText(t *testing.T) {
	seen := map[sleeve.Class]bool{}
	for _, s := range classes() {
		c, err := sleeve.ParseClass(s)
		if err != nil || c.String() != s {
			t.Errorf("%s: %v, %v", s, c, err)
		}
		text, err := c.MarshalText()
		var back sleeve.Class
		if err != nil || back.UnmarshalText(text) != nil || back != c {
			t.Errorf("%s goes back to %v, %v", text, back, err)
		}
		seen[c] = true
	}
	if len(seen) != 2*7+2*3+3*6+13*7 {
		t.Errorf("%d classes", len(seen))
	}
	for _, s := range []string{"", "H", "7", "H7 ", " H7", "h 7", "H4", "H12", "H07", "H+7", "a9", "J9", "J5", "K5", "K9", "M5", "zc8", "H7/s6", "S6", "F7", "Js7", "jS7", "j6", "H٧", "Η7", "s16", "s-6"} {
		c := sleeve.MustParseClass("k6")
		if _, err := sleeve.ParseClass(s); !errors.Is(err, units.ErrUnknownName) {
			t.Errorf("ParseClass(%q): %v", s, err)
		}
		if s != "" {
			if err := c.UnmarshalText([]byte(s)); !errors.Is(err, units.ErrUnknownName) || c.String() != "k6" {
				t.Errorf("UnmarshalText(%q): %v, receiver %v", s, err, c)
			}
		}
	}
	var zero sleeve.Class
	if text, err := zero.MarshalText(); len(text) != 0 || err != nil {
		t.Errorf("zero class: %q, %v", text, err)
	}
	c := sleeve.MustParseClass("k6")
	if err := c.UnmarshalText(nil); err != nil || c != zero {
		t.Errorf("empty text: %v, %v", c, err)
	}
	defer func() {
		if recover() == nil {
			t.Error("MustParseClass takes anything")
		}
	}()
	sleeve.MustParseClass("H4")
}

// TestNotInTheTable: classes, sizes and pairs that the table has not are refused, not guessed.
func TestNotInTheTable(t *testing.T) {
	h7, s6, t6 := sleeve.MustParseClass("H7"), sleeve.MustParseClass("s6"), sleeve.MustParseClass("t6")
	for _, size := range []units.Length{-30 * mm, 0, 1, 18 * mm, 500*mm + 1, 501 * mm, 1 << 62} {
		want := units.ErrRange
		if size == 0 {
			want = units.ErrNotGiven
		}
		if _, err := sleeve.Tolerance(size, 7); !errors.Is(err, want) {
			t.Errorf("tolerance at %v: %v", size, err)
		}
		if _, err := sleeve.DiametralFromClasses(size, h7, s6); !errors.Is(err, want) {
			t.Errorf("pair at %v: %v", size, err)
		}
		if _, err := s6.Sizes(size); !errors.Is(err, want) {
			t.Errorf("s6 at %v: %v", size, err)
		}
	}
	if _, err := t6.Deviations(24 * mm); !errors.Is(err, units.ErrRange) {
		t.Errorf("t6 at 24 mm: %v", err)
	}
	if d, err := t6.Deviations(24*mm + 1); err != nil || d.Min != 41*um {
		t.Errorf("t6 over 24 mm: %v, %v", d, err)
	}
	for _, g := range []int{-1, 0, 1, 4, 12, 127, 128 + 7, 256 + 7} {
		if _, err := sleeve.Tolerance(73*mm, g); !errors.Is(err, units.ErrRange) {
			t.Errorf("grade %d: %v", g, err)
		}
	}
	for _, pair := range [][2]sleeve.Class{{s6, h7}, {h7, h7}, {s6, s6}, {{}, s6}, {h7, {}}} {
		want := units.ErrRange
		if pair[0].String() == "" || pair[1].String() == "" {
			want = units.ErrNotGiven
		}
		if _, err := sleeve.DiametralFromClasses(73*mm, pair[0], pair[1]); !errors.Is(err, want) {
			t.Errorf("hole %v with shaft %v: %v", pair[0], pair[1], err)
		}
	}
}

// TestGradesAndDeviationsRise: a coarser grade and a larger size have no smaller tolerance; the
// letters of shafts go up in their order and those of holes down; limits are those of the sizes.
func TestGradesAndDeviationsRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := lengthBetween(t, "size", 24*mm+1, 500*mm)
		larger := lengthBetween(t, "larger", size, 500*mm)
		for g := 5; g <= 11; g++ {
			w := must(sleeve.Tolerance(size, g))
			if w > must(sleeve.Tolerance(larger, g)) || g > 5 && w <= must(sleeve.Tolerance(size, g-1)) {
				t.Fatalf("IT%d at %v: %v", g, size, w)
			}
			grade := strconv.Itoa(g)
			last := -units.MaxLength
			for _, letter := range []string{"f", "g", "h", "js", "k", "m", "n", "p", "r", "s", "t", "u", "x"} {
				c := sleeve.MustParseClass(letter + grade)
				d, l := must(c.Deviations(size)), must(c.Sizes(size))
				if d.Max-d.Min > w || d.Max-d.Min < w-1 || l.Min != size+d.Min || l.Max != size+d.Max || d.Max <= last {
					t.Fatalf("%v at %v: %v, %v, after %v", c, size, d, l, last)
				}
				last = d.Max
				hole := sleeve.MustParseClass("H" + grade)
				h, i := must(hole.Sizes(size)), must(sleeve.DiametralFromClasses(size, hole, c))
				if i.Min != l.Min-h.Max || i.Max != l.Max-h.Min {
					t.Fatalf("%v/%v at %v: %v", hole, c, size, i)
				}
			}
			last = units.MaxLength
			for _, letter := range []string{"H", "K", "M", "N", "P"} {
				c, err := sleeve.ParseClass(letter + grade)
				if err != nil || letter == "N" && g > 8 { // which is 0, above M
					continue
				}
				d := must(c.Deviations(size))
				if d.Max-d.Min != w || d.Max >= last {
					t.Fatalf("%v at %v: %v, after %v", c, size, d, last)
				}
				last = d.Max
			}
		}
	})
}

// TestRowsFromMemory pins the rows that were read nowhere; the formulas above hold each of them but J.
func TestRowsFromMemory(t *testing.T) {
	const shafts = "f g k m n p r s t u x"
	for _, row := range []struct {
		upTo   int
		shafts string
		j      string
	}{
		{100, "-36 -12 3 13 23 37 51 71 91 124 178", "16 22 34"},
		{120, "-36 -12 3 13 23 37 54 79 104 144 210", "16 22 34"},
		{140, "-43 -14 3 15 27 43 63 92 122 170 248", "18 26 41"},
		{160, "-43 -14 3 15 27 43 65 100 134 190 280", "18 26 41"},
		{180, "-43 -14 3 15 27 43 68 108 146 210 310", "18 26 41"},
		{450, "-68 -20 5 23 40 68 126 232 330 490 740", "33 43 66"},
		{500, "-68 -20 5 23 40 68 132 252 360 540 820", "33 43 66"},
		{250, "-50 -15 4 17 31 50 84 140 196 284 425", "22 30 47"},
		{315, "-56 -17 4 20 34 56 98 170 240 350 525", "25 36 55"},
		{400, "-62 -18 4 21 37 62 114 208 294 435 660", "29 39 60"},
	} {
		size := units.Length(row.upTo) * mm
		values := strings.Fields(row.shafts)
		for i, letter := range strings.Fields(shafts) {
			d := must(sleeve.MustParseClass(letter + "6").Deviations(size))
			near := d.Min
			if letter < "h" {
				near = d.Max
			}
			if want := units.Length(must(strconv.Atoi(values[i]))) * um; near != want {
				t.Errorf("%s at %v: %v, want %v", letter, size, near, want)
			}
		}
		for i, value := range strings.Fields(row.j) {
			c := sleeve.MustParseClass("J" + strconv.Itoa(6+i))
			if d := must(c.Deviations(size)); d.Max != units.Length(must(strconv.Atoi(value)))*um {
				t.Errorf("%v at %v: %v, want %s µm", c, size, d.Max, value)
			}
		}
	}
}

// TestF pins f, which was read nowhere, in every range.
func TestF(t *testing.T) {
	for i, want := range []units.Length{20, 25, 30, 36, 43, 50, 56, 62, 68} {
		for _, size := range sizesOf(mains[i], mains[i+1]) {
			if d := must(sleeve.MustParseClass("f7").Deviations(size)); d.Max != -want*um {
				t.Errorf("f at %v: %v, want -%d µm", size, d.Max, want)
			}
		}
	}
}
