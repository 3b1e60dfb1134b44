// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"math"
	"strconv"

	"borewright.example/units"
)

// A Position is where a tolerance window stands against the nominal size, the letter of an
// ISO 286 class. The zero Position is not given.
type Position int8

// The positions of the table. A hole H has its lower limit at the nominal size; a shaft h its
// upper limit; f and g lie below, k to s above.
const (
	NoPosition Position = iota
	HoleH
	ShaftF
	ShaftG
	ShaftH
	ShaftK
	ShaftM
	ShaftN
	ShaftP
	ShaftR
	ShaftS
)

// A Class is a tolerance class of ISO 286, such as H7 for a hole or s6 for a shaft. Here the hole
// is the seat in the barrel and the shaft is the outside of the sleeve. Its text is "H7"; that of
// the zero Class is "".
type Class struct {
	Position Position // where the window stands: the letter
	Grade    Grade    // how wide it is: the number
}

func (c Class) check() error {
	if c.Position < HoleH || c.Position > ShaftS {
		return fmt.Errorf("sleeve: class with position %v: %w (H for the hole; f, g, h, k, m, n, p, r, s for the shaft)", c.Position, ErrClass)
	}
	return c.Grade.check()
}

// String returns "H7", or "" for the zero Class.
func (c Class) String() string {
	if c == (Class{}) {
		return ""
	}
	return c.Position.String() + strconv.Itoa(int(c.Grade))
}

// MarshalText returns the text of [Class.String]. A class that is neither zero nor in the table is
// ErrClass.
func (c Class) MarshalText() ([]byte, error) {
	if c != (Class{}) {
		if err := c.check(); err != nil {
			return nil, err
		}
	}
	return []byte(c.String()), nil
}

// ParseClass reads a class, "H7" or "s6": a letter of the table, a grade from 5 to 11, nothing
// else. The capital is for the hole, small letters are for shafts. Anything else is ErrClass.
func ParseClass(s string) (Class, error) {
	if len(s) > 1 {
		for p := HoleH; p <= ShaftS; p++ {
			if s[:1] != positionNames[p] {
				continue
			}
			for g := IT5; g <= IT11; g++ {
				if s[1:] == gradeNames[g][len("IT"):] {
					return Class{p, g}, nil
				}
			}
		}
	}
	return Class{}, fmt.Errorf("sleeve: class %.20q: %w (H5 to H11 for the hole; f, g, h, k, m, n, p, r or s with 5 to 11 for the shaft)", s, ErrClass)
}

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

// Fundamental returns the fundamental deviation of the class for a nominal size: from the nominal
// size to the nearer limit, negative below it. That is the lower limit for H and for the shafts k
// to s, the upper one for f, g and h.
//
// Values for m, n, p, r and s are those of a published table (Narayana, Kannaiah and Reddy,
// Machine Drawing, Table 15.2, p. 216); for f, g and k from memory of ISO 286, and [Class.Formula]
// reproduces them. The deviation k is for IT5 to IT7; from IT8 up it is 0 (from memory).
//
// A class that is not in the table is ErrClass, a size that is not over 18 mm and up to 80 mm is
// ErrSize.
func (c Class) Fundamental(size units.Length) (units.Length, error) {
	at, err := c.place(size)
	if err != nil {
		return 0, err
	}
	return c.fundamental(at), nil
}

// place checks the class and the size.
func (c Class) place(size units.Length) (place, error) {
	if err := c.check(); err != nil {
		return place{}, err
	}
	return placeOf(size)
}

func (c Class) fundamental(at place) units.Length {
	if c.Position == ShaftK && c.Grade > IT7 {
		return 0
	}
	micrometres := [...][4]int8{ // over 18, 30, 50, 65 mm
		HoleH:  {},
		ShaftF: {-20, -25, -30, -30},
		ShaftG: {-7, -9, -10, -10},
		ShaftH: {},
		ShaftK: {2, 2, 2, 2},
		ShaftM: {8, 9, 11, 11},
		ShaftN: {15, 17, 20, 20},
		ShaftP: {22, 26, 32, 32},
		ShaftR: {28, 34, 41, 43},
		ShaftS: {35, 43, 53, 59},
	}
	return units.Length(micrometres[c.Position][at.deviationAt]) * units.Micrometre
}

// Formula returns the deviation of [Class.Fundamental] beside its formula, in µm with D the
// geometric mean of the size range in mm:
//
//	f  −5.5·D^0.41        g  −2.5·D^0.34        H, h  0
//	k  0.6·∛D (to IT7)    m  IT7 − IT6          n  5·D^0.34
//	r  √(p·s)             s  IT7 + 0.4·D (over 50 mm)
//
// (ISO 286-1, from memory; IT7, IT6, p and s are those of the table). For p the standard adds 0 to
// 5 µm to IT7, for s up to 50 mm 1 to 4 µm to IT8, as its authors saw fit: these are
// ErrNoFormula. Other errors are those of Fundamental.
func (c Class) Formula(size units.Length) (Formula, error) {
	at, err := c.place(size)
	if err != nil {
		return Formula{}, err
	}
	table, d := c.fundamental(at), at.wide.mean()
	tolerance := func(g Grade) float64 { return g.tolerance(at).In(units.Micrometre) }
	deviation := func(p Position) float64 { return Class{p, c.Grade}.fundamental(at).In(units.Micrometre) }
	switch c.Position {
	case ShaftF:
		return formula(table, -5.5*math.Pow(d, 0.41))
	case ShaftG:
		return formula(table, -2.5*math.Pow(d, 0.34))
	case ShaftK:
		if c.Grade > IT7 {
			return formula(table, 0)
		}
		return formula(table, 0.6*math.Cbrt(d))
	case ShaftM:
		return formula(table, tolerance(IT7)-tolerance(IT6))
	case ShaftN:
		return formula(table, 5*math.Pow(d, 0.34))
	case ShaftR:
		return formula(table, math.Sqrt(deviation(ShaftP)*deviation(ShaftS)))
	case ShaftS:
		if size > 50*mm {
			return formula(table, tolerance(IT7)+float64(0.4*at.narrow.mean()))
		}
		return Formula{}, fmt.Errorf("sleeve: %v at %v: %w (IT8 plus 1 to 4 µm)", c, size, ErrNoFormula)
	case ShaftP:
		return Formula{}, fmt.Errorf("sleeve: %v at %v: %w (IT7 plus 0 to 5 µm)", c, size, ErrNoFormula)
	}
	return formula(table, 0) // H and h
}

// Deviations returns the lower and the upper deviation from a nominal size: H7 at 73 mm is 0 and
// +0.030 mm, s6 is +0.059 and +0.078 mm. Errors are those of [Class.Fundamental].
func (c Class) Deviations(size units.Length) (Range[units.Length], error) {
	at, err := c.place(size)
	if err != nil {
		return Range[units.Length]{}, err
	}
	near, width := c.fundamental(at), c.Grade.tolerance(at)
	switch c.Position {
	case ShaftF, ShaftG, ShaftH:
		return Range[units.Length]{near - width, near}, nil
	}
	return Range[units.Length]{near, near + width}, nil
}

// Sizes returns the window for the diameter of the part at 20 °C: the nominal size with each of
// [Class.Deviations]. Errors are those of [Class.Fundamental].
func (c Class) Sizes(size units.Length) (units.Limits, error) {
	d, err := c.Deviations(size)
	if err != nil {
		return units.Limits{}, err
	}
	return units.Limits{Min: size + d.Least, Max: size + d.Greatest}, nil
}

// DiametralFromClasses returns the DIAMETRAL interference that two parts made to their classes at
// one nominal size can have: H7 with s6 at 73 mm is 0.029 to 0.078 mm. A negative end is a
// clearance: H7 with k6 can be either. hole is the class of the seat in the barrel, shaft that of
// the outside of the sleeve; either on the wrong part is ErrClass, and the other errors are those
// of [Class.Fundamental].
func DiametralFromClasses(size units.Length, hole, shaft Class) (Diametral, error) {
	h, err := hole.Deviations(size)
	if err != nil {
		return Diametral{}, err
	}
	s, err := shaft.Deviations(size)
	if err != nil {
		return Diametral{}, err
	}
	if hole.Position != HoleH || shaft.Position == HoleH {
		return Diametral{}, fmt.Errorf("sleeve: hole %v, shaft %v: %w (the capital for the hole, the small letter for the shaft)", hole, shaft, ErrClass)
	}
	return Diametral{Least: s.Least - h.Greatest, Greatest: s.Greatest - h.Least}, nil
}
