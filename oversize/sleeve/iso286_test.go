// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// TestTolerances: the table of ISO 286 as reprinted in JIS B 0401 and EN 20286, IT5 to IT11, at
// both ends of each range: over the lower, up to and including the upper.
func TestTolerances(t *testing.T) {
	for _, row := range []struct {
		over, upTo units.Length
		want       [7]units.Length // µm
	}{
		{18 * mm, 30 * mm, [7]units.Length{9, 13, 21, 33, 52, 84, 130}},
		{30 * mm, 50 * mm, [7]units.Length{11, 16, 25, 39, 62, 100, 160}},
		{50 * mm, 80 * mm, [7]units.Length{13, 19, 30, 46, 74, 120, 190}},
	} {
		for _, size := range []units.Length{row.over + 1, (row.over + row.upTo) / 2, row.upTo} {
			for i, want := range row.want {
				g := sleeve.IT5 + sleeve.Grade(i)
				if got, err := g.Tolerance(size); got != want*1_000_000 || err != nil {
					t.Errorf("%v at %v = %v, %v; want %d µm", g, size, got, err, want)
				}
			}
		}
	}
}

// TestShaftDeviations: m, n, p, r, s of Narayana, Kannaiah and Reddy, Machine Drawing, Table 15.2,
// p. 216; f, g, k of ISO 286 from memory, which TestFormulas reproduces.
func TestShaftDeviations(t *testing.T) {
	for _, row := range []struct {
		over, upTo units.Length
		want       string
	}{
		{18 * mm, 30 * mm, "f -20 g -7 h 0 k 2 m 8 n 15 p 22 r 28 s 35"},
		{30 * mm, 50 * mm, "f -25 g -9 h 0 k 2 m 9 n 17 p 26 r 34 s 43"},
		{50 * mm, 65 * mm, "f -30 g -10 h 0 k 2 m 11 n 20 p 32 r 41 s 53"},
		{65 * mm, 80 * mm, "f -30 g -10 h 0 k 2 m 11 n 20 p 32 r 43 s 59"},
	} {
		for _, size := range []units.Length{row.over + 1, row.upTo} {
			var got string
			for p := sleeve.ShaftF; p <= sleeve.ShaftS; p++ {
				d, err := (sleeve.Class{Position: p, Grade: sleeve.IT6}).Fundamental(size)
				if err != nil {
					t.Fatal(err)
				}
				if got != "" {
					got += " "
				}
				text := d.Format(um, 0)
				got += p.String() + " " + text[:len(text)-len(" µm")]
			}
			if got != row.want {
				t.Errorf("at %v: %s, want %s", size, got, row.want)
			}
		}
	}
}

// TestK: the deviation k is +2 µm up to IT7 and 0 from IT8 up (ISO 286, from memory).
func TestK(t *testing.T) {
	for g := sleeve.IT5; g <= sleeve.IT11; g++ {
		want := 2 * um
		if g >= sleeve.IT8 {
			want = 0
		}
		c := sleeve.Class{Position: sleeve.ShaftK, Grade: g}
		if got, err := c.Fundamental(73 * mm); got != want || err != nil {
			t.Errorf("%v = %v, %v; want %v", c, got, err, want)
		}
		f, err := c.Formula(73 * mm)
		if wrong := f.Formula.Abs() > 5*um/2; wrong || err != nil || (want == 0) != (f.Formula == 0) {
			t.Errorf("%v by formula: %+v, %v", c, f, err)
		}
	}
}

// TestFormulas: i of the three ranges, IT5 to IT11 of 50 to 80 mm, and the deviations that have a
// formula (computed apart from this package).
func TestFormulas(t *testing.T) {
	for _, tt := range []struct {
		size units.Length
		g    sleeve.Grade
		want float64 // µm
		tol  float64
	}{
		{25 * mm, sleeve.IT6, 13.074, 0.0006}, {40 * mm, sleeve.IT6, 15.612, 0.0006}, {73 * mm, sleeve.IT6, 18.561, 0.0006},
		{73 * mm, sleeve.IT5, 12.99, 0.006}, {73 * mm, sleeve.IT6, 18.56, 0.006}, {73 * mm, sleeve.IT7, 29.70, 0.006}, {73 * mm, sleeve.IT8, 46.40, 0.006},
		{73 * mm, sleeve.IT9, 74.25, 0.006}, {73 * mm, sleeve.IT10, 118.79, 0.006}, {73 * mm, sleeve.IT11, 185.61, 0.006},
	} {
		f, err := tt.g.Formula(tt.size)
		if err != nil {
			t.Fatal(err)
		}
		close64(t, tt.g.String()+" by formula", f.Formula.In(um), tt.want, tt.tol)
	}
	for _, tt := range []struct {
		p    sleeve.Position
		size units.Length
		want float64
		tol  float64
	}{
		{sleeve.ShaftS, 60 * mm, 52.80, 0.006}, {sleeve.ShaftS, 73 * mm, 58.84, 0.006},
		{sleeve.ShaftF, 73 * mm, -30.12, 0.006}, {sleeve.ShaftG, 73 * mm, -10.24, 0.006}, {sleeve.ShaftN, 73 * mm, 20.48, 0.006},
	} {
		f, err := (sleeve.Class{Position: tt.p, Grade: sleeve.IT6}).Formula(tt.size)
		if err != nil {
			t.Fatal(err)
		}
		close64(t, tt.p.String()+" by formula", f.Formula.In(um), tt.want, tt.tol)
	}
}

// TestTableIsTheFormulaRounded: every value of the tables lies within 1 µm of its formula, but the
// three that the standard rounds further: IT9 to IT11 lie within 3 %.
func TestTableIsTheFormulaRounded(t *testing.T) {
	for _, size := range []units.Length{25 * mm, 40 * mm, 60 * mm, 73 * mm} {
		for g := sleeve.IT5; g <= sleeve.IT11; g++ {
			f := must(g.Formula(size))
			most := um
			if g >= sleeve.IT9 {
				most = f.Table * 3 / 100
			}
			if f.Difference.Abs() > most || f.Table-f.Formula != f.Difference {
				t.Errorf("%v at %v: %+v", g, size, f)
			}
			for p := sleeve.HoleH; p <= sleeve.ShaftS; p++ {
				c := sleeve.Class{Position: p, Grade: g}
				f, err := c.Formula(size)
				if errors.Is(err, sleeve.ErrNoFormula) && (p == sleeve.ShaftP || p == sleeve.ShaftS && size <= 50*mm) {
					continue
				}
				if err != nil || f.Difference.Abs() > um || f.Table-f.Formula != f.Difference {
					t.Errorf("%v at %v: %+v, %v", c, size, f, err)
				}
				if table := must(c.Fundamental(size)); f.Table != table {
					t.Errorf("%v at %v: table %v beside the formula, %v by itself", c, size, f.Table, table)
				}
			}
		}
	}
}

// TestEdgeOfRange: 30 mm belongs to 18 to 30 mm, so that H7 is 0/+21 µm; one published table has
// +25, which is that of 30 to 50 mm.
func TestEdgeOfRange(t *testing.T) {
	s7 := sleeve.Class{Position: sleeve.ShaftS, Grade: sleeve.IT7}
	if _, err := s7.Formula(50 * mm); !errors.Is(err, sleeve.ErrNoFormula) {
		t.Errorf("s at 50 mm: %v", err)
	}
	if f, err := s7.Formula(50*mm + 1); err != nil || f.Table != 53*um {
		t.Errorf("s just over 50 mm: %+v, %v", f, err)
	}
	h7 := sleeve.Class{Position: sleeve.HoleH, Grade: sleeve.IT7}
	if d := must(h7.Deviations(30 * mm)); d.Least != 0 || d.Greatest != 21*um {
		t.Errorf("H7 at 30 mm: %+v", d)
	}
	if d := must(h7.Deviations(30*mm + 1)); d.Greatest != 25*um {
		t.Errorf("H7 just over 30 mm: %+v", d)
	}
}

// TestClassPair: H7/s6 at 73 mm: hole 0/+30, shaft +59/+78, interference 29 to 78 µm (computed
// from the tables); the others from the same tables by hand.
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
		{73 * mm, "H7", "n6", -10 * um, 39 * um},
		{73 * mm, "H7", "m6", -19 * um, 30 * um},
	} {
		d, err := sleeve.DiametralFromClasses(tt.size, must(sleeve.ParseClass(tt.hole)), must(sleeve.ParseClass(tt.shaft)))
		if err != nil || d.Least != tt.least || d.Greatest != tt.greatest {
			t.Errorf("%s/%s at %v: %v to %v, %v; want %v to %v", tt.hole, tt.shaft, tt.size, d.Least, d.Greatest, err, tt.least, tt.greatest)
		}
	}
	w := must(must(sleeve.ParseClass("s6")).Sizes(73 * mm))
	if w.Min != 73*mm+59*um || w.Max != 73*mm+78*um {
		t.Errorf("s6 at 73 mm: %v", w)
	}
}

// TestClassText: all 70 classes go to text and back, and nothing else is a class.
func TestClassText(t *testing.T) {
	n := 0
	for p := sleeve.HoleH; p <= sleeve.ShaftS; p++ {
		for g := sleeve.IT5; g <= sleeve.IT11; g++ {
			n++
			c := sleeve.Class{Position: p, Grade: g}
			text, err := c.MarshalText()
			if err != nil {
				t.Errorf("%v: %v", c, err)
			}
			var back sleeve.Class
			if err := back.UnmarshalText(text); err != nil || back != c {
				t.Errorf("%s goes back to %v, %v", text, back, err)
			}
		}
	}
	if n != 70 {
		t.Errorf("%d classes", n)
	}
	for _, s := range []string{"", "H", "7", "H7 ", " H7", "h 7", "H4", "H12", "H07", "H+7", "a9", "J7", "js6", "zc8", "H7/s6", "S6", "K6", "H٧", "Η7", "s16", "s-6"} {
		c := sleeve.Class{Position: sleeve.ShaftK, Grade: sleeve.IT6}
		if _, err := sleeve.ParseClass(s); !errors.Is(err, sleeve.ErrClass) {
			t.Errorf("ParseClass(%q): %v", s, err)
		}
		if s != "" {
			if err := c.UnmarshalText([]byte(s)); !errors.Is(err, sleeve.ErrClass) || c.String() != "k6" {
				t.Errorf("UnmarshalText(%q): %v, receiver %v", s, err, c)
			}
		}
	}
	var zero sleeve.Class
	if text, err := zero.MarshalText(); len(text) != 0 || err != nil {
		t.Errorf("zero class: %q, %v", text, err)
	}
	c := sleeve.Class{Position: sleeve.ShaftK, Grade: sleeve.IT6}
	if err := c.UnmarshalText(nil); err != nil || c != zero {
		t.Errorf("empty text: %v, %v", c, err)
	}
}

// TestNotInTheTable: classes, sizes and pairs that the table has not are refused, not guessed.
func TestNotInTheTable(t *testing.T) {
	h7 := sleeve.Class{Position: sleeve.HoleH, Grade: sleeve.IT7}
	s6 := sleeve.Class{Position: sleeve.ShaftS, Grade: sleeve.IT6}
	for _, size := range []units.Length{-30 * mm, 0, 1, 18 * mm, 80*mm + 1, 100 * mm, 1 << 62} {
		if _, err := sleeve.IT7.Tolerance(size); !errors.Is(err, sleeve.ErrSize) {
			t.Errorf("tolerance at %v: %v", size, err)
		}
		if _, err := sleeve.IT7.Formula(size); !errors.Is(err, sleeve.ErrSize) {
			t.Errorf("formula at %v: %v", size, err)
		}
		if _, err := s6.Formula(size); !errors.Is(err, sleeve.ErrSize) {
			t.Errorf("s6 by formula at %v: %v", size, err)
		}
		if _, err := sleeve.DiametralFromClasses(size, h7, s6); !errors.Is(err, sleeve.ErrSize) {
			t.Errorf("pair at %v: %v", size, err)
		}
		if _, err := s6.Sizes(size); !errors.Is(err, sleeve.ErrSize) {
			t.Errorf("s6 at %v: %v", size, err)
		}
	}
	for _, g := range []sleeve.Grade{-1, 0, 1, 4, 12, 127} {
		if _, err := g.Tolerance(73 * mm); !errors.Is(err, sleeve.ErrClass) {
			t.Errorf("grade %d: %v", g, err)
		}
		if _, err := (sleeve.Class{Position: sleeve.ShaftS, Grade: g}).Fundamental(73 * mm); !errors.Is(err, sleeve.ErrClass) {
			t.Errorf("s with grade %d: %v", g, err)
		}
	}
	for _, p := range []sleeve.Position{-1, 0, sleeve.ShaftS + 1, 127} {
		c := sleeve.Class{Position: p, Grade: sleeve.IT7}
		if _, err := c.Deviations(73 * mm); !errors.Is(err, sleeve.ErrClass) {
			t.Errorf("position %d: %v", p, err)
		}
		if _, err := c.MarshalText(); !errors.Is(err, sleeve.ErrClass) {
			t.Errorf("text of position %d: %v", p, err)
		}
	}
	for _, pair := range [][2]sleeve.Class{{s6, h7}, {h7, h7}, {s6, s6}} {
		if _, err := sleeve.DiametralFromClasses(73*mm, pair[0], pair[1]); !errors.Is(err, sleeve.ErrClass) {
			t.Errorf("hole %v with shaft %v: %v", pair[0], pair[1], err)
		}
	}
	if _, err := sleeve.DiametralFromClasses(73*mm, sleeve.Class{}, s6); !errors.Is(err, sleeve.ErrClass) {
		t.Errorf("no hole: %v", err)
	}
	if _, err := sleeve.DiametralFromClasses(73*mm, h7, sleeve.Class{}); !errors.Is(err, sleeve.ErrClass) {
		t.Errorf("no shaft: %v", err)
	}
}

// TestGradesAndDeviationsRise: a coarser grade and a larger size have no smaller tolerance; the
// letters go up in their order; limits are those of the sizes.
func TestGradesAndDeviationsRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := lengthBetween(t, "size", 18*mm+1, 80*mm)
		larger := lengthBetween(t, "larger", size, 80*mm)
		for g := sleeve.IT5; g <= sleeve.IT11; g++ {
			w := must(g.Tolerance(size))
			if w > must(g.Tolerance(larger)) || g > sleeve.IT5 && w <= must((g-1).Tolerance(size)) {
				t.Fatalf("%v at %v: %v", g, size, w)
			}
			for p := sleeve.ShaftF; p < sleeve.ShaftS; p++ {
				c, next := sleeve.Class{Position: p, Grade: g}, sleeve.Class{Position: p + 1, Grade: g}
				if a, b := must(c.Fundamental(size)), must(next.Fundamental(size)); a > b || a == b && p != sleeve.ShaftH {
					t.Fatalf("%v %v, %v %v", c, a, next, b)
				}
				d, l := must(c.Deviations(size)), must(c.Sizes(size))
				if d.Greatest-d.Least != w || l.Min != size+d.Least || l.Max != size+d.Greatest {
					t.Fatalf("%v at %v: %v, %v", c, size, d, l)
				}
				hole := sleeve.Class{Position: sleeve.HoleH, Grade: g}
				h, i := must(hole.Sizes(size)), must(sleeve.DiametralFromClasses(size, hole, c))
				if i.Least != l.Min-h.Max || i.Greatest != l.Max-h.Min {
					t.Fatalf("%v/%v at %v: %v", hole, c, size, i)
				}
			}
		}
	})
}
