// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Shape is how the size runs from the deck to the skirt, as far as it stands out of the doubt.
type Shape int8

// Shapes. They compare the mean sizes of the planes along the axes that all planes share; a
// difference counts when the chance of seeing it on a straight bore is at most 5 %, shared over
// the planes in between.
const (
	ShapeUnknown Shape = iota // fewer than three planes, or no axis common to them
	Straight                  // no difference between planes stands out of the doubt
	Tapered                   // the ends differ; no plane between them is larger or smaller than both
	BellMouthed               // the ends differ, and a plane between is smaller than a straight taper would be
	Barrelled                 // a plane between is larger than both ends
	Waisted                   // a plane between is smaller than both ends
	Irregular                 // both at once
)

var shapeNames = [...]string{"unknown", "straight", "tapered", "bell-mouthed", "barrelled", "waisted", "irregular"}

// String returns the word of the trade: "bell-mouthed".
func (s Shape) String() string { return enumName(shapeNames[:], int(s)) }

// MarshalText returns the text of [Shape.String].
func (s Shape) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the text of [Shape.String].
func (s *Shape) UnmarshalText(text []byte) error { return unmarshalEnum(s, shapeNames[:], text) }

// shape names the run of the plane means.
func shape(planes []Plane) (Shape, error) {
	profile, err := commonProfile(planes)
	n := len(profile)
	if err != nil || n < 3 {
		return ShapeUnknown, err
	}
	top, bottom := profile[0], profile[n-1]
	span := planes[n-1].Depth - planes[0].Depth
	var barrelled, waisted, hollow bool
	for i, m := range profile[1 : n-1] {
		aboveTop, belowTop, err := standsOut(difference(m, top), n-2)
		if err != nil {
			return ShapeUnknown, err
		}
		aboveBottom, belowBottom, err := standsOut(difference(m, bottom), n-2)
		if err != nil {
			return ShapeUnknown, err
		}
		barrelled = barrelled || aboveTop && aboveBottom
		waisted = waisted || belowTop && belowBottom
		chord, err := between(top, bottom, planes[i+1].Depth-planes[0].Depth, span)
		if err != nil {
			return ShapeUnknown, err
		}
		_, below, err := standsOut(difference(m, chord), n-2)
		if err != nil {
			return ShapeUnknown, err
		}
		hollow = hollow || below
	}
	larger, smaller, err := standsOut(difference(top, bottom), 1)
	switch {
	case err != nil:
		return ShapeUnknown, err
	case barrelled && waisted:
		return Irregular, nil
	case barrelled:
		return Barrelled, nil
	case waisted:
		return Waisted, nil
	case !larger && !smaller:
		return Straight, nil
	case hollow:
		return BellMouthed, nil
	}
	return Tapered, nil
}

// commonProfile returns the mean size of each plane along the axes common to all of them, with
// the doubt that planes do not share; nothing where there is no such axis.
func commonProfile(planes []Plane) ([]uncertainty.Estimate, error) {
	common := func(p Place) bool {
		for _, q := range planes {
			if !slices.ContainsFunc(q.Places, func(o Place) bool { return o.Axis == p.Axis }) {
				return false
			}
		}
		return true
	}
	var profile []uncertainty.Estimate
	for _, p := range planes {
		var ps []Place
		for _, q := range p.Places {
			if common(q) {
				q.Size = q.Own // so that nothing is left that the planes share
				ps = append(ps, q)
			}
		}
		if len(ps) == 0 {
			return nil, nil
		}
		m, err := mean(ps)
		if err != nil {
			return nil, err
		}
		profile = append(profile, m)
	}
	return profile, nil
}

// between returns the size at `at` of the way `span` on the straight line from a to b.
func between(a, b uncertainty.Estimate, at, span units.Length) (uncertainty.Estimate, error) {
	d, err := (b.Value - a.Value).MulDiv(int64(at), int64(span))
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	t := float64(at) / float64(span)
	e, err := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "upper end", Sensitivity: 1 - t, Std: a.Std.In(units.Micrometre), DoF: a.DoF},
		{Name: "lower end", Sensitivity: t, Std: b.Std.In(units.Micrometre), DoF: b.DoF},
	}}.Estimate(a.Value+d, units.Micrometre)
	return e, err
}

// standsOut reports whether d is above or below zero beyond doubt: each with a chance of error
// of 5 % shared over n looks.
func standsOut(d uncertainty.Estimate, n int) (above, below bool, err error) {
	u, err := d.Expanded(1 - 2*0.05/float64(n)) // one side of a two-sided interval
	return d.Value > u, d.Value < -u, err
}

// enumName returns the name of an enumeration's value, or the number where it has none.
func enumName(names []string, i int) string {
	if i < 0 || i >= len(names) {
		return fmt.Sprintf("value %d", i)
	}
	return names[i]
}

// unmarshalEnum sets *e to the value whose name is text, or leaves it alone.
func unmarshalEnum[E ~int8](e *E, names []string, text []byte) error {
	i := slices.Index(names, string(text))
	if i < 0 {
		return fmt.Errorf("bore: %q: want one of %q: %w", text, names, units.ErrSyntax)
	}
	*e = E(i)
	return nil
}
