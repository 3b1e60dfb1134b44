// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// A Section is a one-piece ring of plain rectangular section, made for a bore.
type Section struct {
	Bore      units.Length   `json:"bore"`      // d, nominal diameter
	Thickness units.Length   `json:"thickness"` // a, radial
	Height    units.Length   `json:"height"`    // h, axial
	Young     units.Pressure `json:"young"`     // modulus of elasticity of the ring's material
}

// stiffest is a modulus beyond that of any solid.
const stiffest = 10_000 * units.Gigapascal

// validate returns [units.ErrNotGiven] for a length of zero, [units.ErrRange] for one below that or beyond
// [units.MaxLength], a thickness of half the bore or more, and a modulus that is not positive, or beyond 10 000 GPa.
func (s Section) validate() error {
	for _, l := range []units.Length{s.Bore, s.Thickness, s.Height} {
		switch {
		case l <= 0:
			return fmt.Errorf("rings: ring of %v × %v for a bore of %v: %w (each more than 0)", s.Thickness, s.Height, s.Bore, given.Err(l))
		case l > units.MaxLength:
			return fmt.Errorf("rings: ring of %v × %v for a bore of %v: %w (up to %v)", s.Thickness, s.Height, s.Bore, units.ErrRange, units.MaxLength)
		}
	}
	if s.Thickness >= s.Bore/2 {
		return fmt.Errorf("rings: radial thickness %v in a bore of %v: %w (less than half the bore)", s.Thickness, s.Bore, units.ErrRange)
	}
	if !(s.Young > 0 && s.Young <= stiffest) {
		return fmt.Errorf("rings: modulus %v: %w (up to %v)", s.Young, units.ErrRange, stiffest)
	}
	return nil
}

// radius returns r = (d − a)/2, of the middle of the section, in metres.
func (s Section) radius() float64 { return (s.Bore - s.Thickness).In(units.Metre) / 2 }

// stiffness returns E·I = E·h·a³/12 in N·m².
func (s Section) stiffness() float64 {
	a := s.Thickness.In(units.Metre)
	return float64(s.Young) * s.Height.In(units.Metre) * a * a * a / 12
}

// Thickness returns the radial thickness that gives a ring for a bore a mean wall pressure at a greatest bending
// stress when closed: bore·√(3·wall/stress), the textbook's rule for thin rings (R. S. Khurmi, J. K. Gupta, A
// Textbook of Machine Design, chapter 32, with 0.025 to 0.042 MPa and 85 to 110 MPa). The equations of [Section] in
// full give 2 % less at a thickness of 0.034 of the bore.
//
// A bore of zero is [units.ErrNotGiven], below that or beyond [units.MaxLength] [units.ErrRange], and so is a
// pressure or stress that is not positive and finite, and an answer of half the bore or more, or of nothing.
func Thickness(bore units.Length, wall, stress units.Pressure) (units.Length, error) {
	switch {
	case bore <= 0:
		return 0, fmt.Errorf("rings: bore %v: %w (more than 0)", bore, given.Err(bore))
	case bore > units.MaxLength:
		return 0, fmt.Errorf("rings: bore %v: %w (up to %v)", bore, units.ErrRange, units.MaxLength)
	case !(wall > 0 && stress > 0) || math.IsInf(float64(wall), 0) || math.IsInf(float64(stress), 0):
		return 0, fmt.Errorf("rings: wall pressure %v at a stress of %v: %w (both above 0)", wall, stress, units.ErrRange)
	}
	share := math.Sqrt(3 * float64(wall) / float64(stress))
	a, err := units.Of(bore.In(units.Millimetre)*min(share, 1), units.Millimetre)
	if err == nil && (a <= 0 || a >= bore/2) {
		err = fmt.Errorf("rings: wall pressure %v at a stress of %v: thickness of %.3g of the bore: %w (less than half)", wall, stress, share, units.ErrRange)
	}
	if err != nil {
		return 0, err
	}
	return a, nil
}

// A Tension is how a ring presses on the wall of the bore that it is made for, by its own spring
// alone: gas pressure behind the ring comes on top.
type Tension struct {
	Section    Section        `json:"section"`    // whose tension it is
	Closing    units.Length   `json:"closing"`    // m, what the free gap closes by in the bore
	Tangential units.Force    `json:"tangential"` // Ft, along the ends, which holds the ring closed as a band round it would
	Diametral  units.Force    `json:"diametral"`  // Q, a pair of opposed loads at 90° to the gap that close the ring as far
	Wall       units.Pressure `json:"wall"`       // p, mean pressure on the wall
	Stress     units.Pressure `json:"stress"`     // greatest bending stress when closed, opposite the gap
	Parameter  float64        `json:"parameter"`  // k = Ft·r²/(E·I), a dimensionless ratio
}

// diametral is Q/Ft = 3π/(2 + π/2).
const diametral = 3 * math.Pi / (2 + math.Pi/2)

// Tension returns the tension from the free gap, with the ring lying on the bench, and the end gap in the
// bore: Ft = E·I·m/(3π·r³), m the free gap less the end gap.
//
// A length of zero is [units.ErrNotGiven]; one below that or beyond [units.MaxLength], a thickness of half the bore
// or more, a closing m that is not positive, or beyond half the bore and so outside the theory, and a modulus that
// is not positive or beyond 10 000 GPa, are [units.ErrRange].
func (s Section) Tension(free, end units.Length) (Tension, error) {
	if err := s.validate(); err != nil {
		return Tension{}, err
	}
	m := free - end
	if m <= 0 || m > s.Bore/2 {
		return Tension{}, fmt.Errorf("rings: closing %v of a ring for a bore of %v: %w (more than 0, up to half the bore)", m, s.Bore, units.ErrRange)
	}
	r := s.radius()
	t, err := s.tension(s.stiffness() * m.In(units.Metre) / (3 * math.Pi * r * r * r)) // (2)
	t.Closing = m                                                                      // without the rounding of the way back
	return t, err
}

// TensionUnder returns the tension from the tangential force, as measured with a band round the ring; a
// diametral force Q, as measured by pressing the ring to its gap between two plates at 90° to the gap, is
// Ft = Q·(2 + π/2)/(3π) = 0.379·Q. A force that is not positive and finite is [units.ErrRange], and so is one whose
// closing would be none or beyond half the bore; others are those of [Section.Tension].
func (s Section) TensionUnder(ft units.Force) (Tension, error) {
	if err := s.validate(); err != nil {
		return Tension{}, err
	}
	if !(ft > 0) || math.IsInf(float64(ft), 0) {
		return Tension{}, fmt.Errorf("rings: force %v: %w (above 0)", ft, units.ErrRange)
	}
	return s.tension(float64(ft))
}

func (s Section) tension(ft float64) (Tension, error) {
	d, a, h := s.Bore.In(units.Metre), s.Thickness.In(units.Metre), s.Height.In(units.Metre)
	r, ei := s.radius(), s.stiffness()
	k := ft * r * r / ei // (3)
	closing, err := units.Of(3*math.Pi*k*r, units.Metre)
	if err != nil || closing <= 0 || closing > s.Bore/2 {
		return Tension{}, fmt.Errorf("rings: force %v N on a ring of %v × %v for a bore of %v: %w (closing more than 0, up to half the bore)", ft, s.Thickness, s.Height, s.Bore, units.ErrRange)
	}
	return Tension{
		Section:    s,
		Closing:    closing,
		Tangential: units.Force(ft),
		Diametral:  units.Force(ft * diametral),
		Wall:       units.Pressure(2 * ft / (d * h)),               // (1)
		Stress:     units.Pressure(6 * ft * (d - a) / (h * a * a)), // (4)
		Parameter:  k,
	}, nil
}
