// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"strconv"
	"strings"

	"borewright.example/units"
)

// A Class is a tolerance class of ISO 286, such as H7 for a hole or s6 for a shaft: letters that say where
// the window stands against the nominal size, and a grade that says how wide it is. Here the
// hole is the seat in the barrel and the shaft is the outside of the sleeve. [ParseClass] makes one; its
// text is "H7". The zero Class is none, and its text "".
type Class struct {
	letters string
	grade   int8
}

// positions are the letters of the tables, each with the grades that it has there.
var positions = [...]struct {
	letters         string
	least, greatest int8
}{
	{"H", finest, coarsest}, {"JS", finest, coarsest}, {"J", 6, greatestJ}, {"K", 6, greatestJ}, {"M", 6, coarsest}, {"N", 6, coarsest}, {"P", 6, coarsest},
	{"f", finest, coarsest}, {"g", finest, coarsest}, {"h", finest, coarsest}, {"js", finest, coarsest}, {"k", finest, coarsest}, {"m", finest, coarsest},
	{"n", finest, coarsest}, {"p", finest, coarsest}, {"r", finest, coarsest}, {"s", finest, coarsest}, {"t", finest, coarsest}, {"u", finest, coarsest}, {"x", finest, coarsest},
}

// ParseClass reads a class: H5 to H11, JS5 to JS11, J6 to J8, K6 to K8 and M, N and P with 6 to 11 for a hole, and f, g,
// h, js, k, m, n, p, r, s, t, u and x with 5 to 11 for a shaft. Capitals are for holes, small letters for shafts.
// Anything else is [units.ErrUnknownName].
func ParseClass(s string) (Class, error) {
	for _, p := range positions {
		number, ok := strings.CutPrefix(s, p.letters)
		for g := p.least; ok && g <= p.greatest; g++ {
			if number == strconv.Itoa(int(g)) {
				return Class{p.letters, g}, nil
			}
		}
	}
	return Class{}, fmt.Errorf("sleeve: class %.20q: %w (H, JS, M, N or P with a grade to 11, J or K to 8, for the hole; f, g, h, js, k, m, n, p, r, s, t, u or x with 5 to 11 for the shaft)", s, units.ErrUnknownName)
}

// String returns "H7", or "" for the zero Class.
func (c Class) String() string {
	if c == (Class{}) {
		return ""
	}
	return c.letters + strconv.Itoa(int(c.grade))
}

// MarshalText returns the text of [Class.String].
func (c Class) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads a class as [ParseClass] does; "" is the zero Class. On error the receiver
// keeps its value.
func (c *Class) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*c = Class{}
		return nil
	}
	v, err := ParseClass(string(text))
	if err != nil {
		return err
	}
	*c = v
	return nil
}

// hole reports whether the class is one of a hole.
func (c Class) hole() bool { return c.letters != "" && c.letters[0] < 'a' }

// Deviations returns the lower and the upper deviation from a nominal size: H7 at 73 mm is 0 and
// +0.030 mm, s6 is +0.059 and +0.078 mm.
//
// A shaft's k is for grades 5 to 7; from 8 up it is 0. Holes follow from shafts of the same letter: K, M, N to
// grade 8 and P to grade 7 have their upper limit at −(deviation of the shaft) + Δ, Δ being the tolerance of the grade less that
// of the next finer one, so that K7/h6 fits as H7/k6 does; coarser ones have no Δ, and N from grade 9 is 0. M6 over 250
// up to 315 mm is −9 µm, which is 2 µm off the rule. JS and js stand evenly to either side, halves of a µm kept.
//
// The zero Class and a size of zero are [units.ErrNotGiven]. A size that is not over 18 mm and up to 500 mm is
// [units.ErrRange], and so is t up to 24 mm, which the standard has not.
func (c Class) Deviations(size units.Length) (Range[units.Length], error) {
	if c == (Class{}) {
		return Range[units.Length]{}, fmt.Errorf("sleeve: class: %w", units.ErrNotGiven)
	}
	w, n, err := rangesOf(size)
	if err != nil {
		return Range[units.Length]{}, err
	}
	if c.letters == "t" && n.t == 0 {
		return Range[units.Length]{}, fmt.Errorf("sleeve: %v at %v: %w (t starts over 24 mm)", c, size, units.ErrRange)
	}
	width := w.grade(c.grade)
	below := func(es int16) Range[units.Length] { // the upper deviation given
		upper := units.Length(es) * units.Micrometre
		return Range[units.Length]{upper - width, upper}
	}
	above := func(ei int16) Range[units.Length] { // the lower one given
		lower := units.Length(ei) * units.Micrometre
		return Range[units.Length]{lower, lower + width}
	}
	// delta is Δ up to a grade, and none from there.
	delta := func(to int8) int16 {
		if c.grade > to {
			return 0
		}
		return w.tolerance[c.grade-finest] - w.tolerance[c.grade-finest-1]
	}
	switch c.letters {
	case "JS", "js":
		return Range[units.Length]{-width / 2, width / 2}, nil
	case "J":
		return below(w.j[c.grade-6]), nil
	case "K":
		return below(delta(8) - w.k), nil
	case "M":
		if c.grade == 6 && w.upTo == 315 {
			return below(-9), nil
		}
		return below(delta(8) - w.m), nil
	case "N":
		if c.grade > 8 {
			return below(0), nil
		}
		return below(delta(8) - w.n), nil
	case "P":
		return below(delta(7) - w.p), nil
	case "f":
		return below(-w.f), nil
	case "g":
		return below(-w.g), nil
	case "h":
		return below(0), nil
	case "k":
		if c.grade > 7 {
			return above(0), nil
		}
		return above(w.k), nil
	case "m":
		return above(w.m), nil
	case "n":
		return above(w.n), nil
	case "p":
		return above(w.p), nil
	case "r":
		return above(n.r), nil
	case "s":
		return above(n.s), nil
	case "t":
		return above(n.t), nil
	case "u":
		return above(n.u), nil
	case "x":
		return above(n.x), nil
	}
	return above(0), nil // H
}

// Sizes returns the window for the diameter of the part at 20 °C: the nominal size with each of
// [Class.Deviations], whose errors it has.
func (c Class) Sizes(size units.Length) (units.Limits, error) {
	d, err := c.Deviations(size)
	if err != nil {
		return units.Limits{}, err
	}
	return units.Limits{Min: size + d.Min, Max: size + d.Max}, nil
}

// DiametralFromClasses returns the DIAMETRAL interference that two parts made to their classes at
// one nominal size can have: H7 with s6 at 73 mm is 0.029 to 0.078 mm. A negative end is a
// clearance: H7 with k6 can be either. hole is the class of the seat in the barrel, shaft that of
// the outside of the sleeve; either on the wrong part is [units.ErrRange], and the other errors are those
// of [Class.Deviations].
//
// The whole range is for parts that were made without a look at each other. Where the sleeve is measured
// first, [SeatFor] gives the seat that suits it, and wastes none of the window.
func DiametralFromClasses(size units.Length, hole, shaft Class) (Diametral, error) {
	h, err := hole.Deviations(size)
	if err != nil {
		return Diametral{}, err
	}
	s, err := shaft.Deviations(size)
	if err != nil {
		return Diametral{}, err
	}
	if !hole.hole() || shaft.hole() {
		return Diametral{}, fmt.Errorf("sleeve: hole %v, shaft %v: %w (the capital for the hole, the small letter for the shaft)", hole, shaft, units.ErrRange)
	}
	return Diametral{Min: s.Min - h.Max, Max: s.Max - h.Min}, nil
}
