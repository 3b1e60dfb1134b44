// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"math"
	"slices"

	"borewright.example/internal/enum"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Shape is how the size runs from the deck to the skirt, as far as it stands out of the doubt.
type Shape int8

// Shapes. They compare the mean sizes of the planes along the axes that all planes share, with
// what the planes do not share of the doubt. The looks at one bore share a chance of 5 %: so
// often at most is a straight bore called anything else, or a bore of even taper anything but
// straight or tapered.
const (
	ShapeUnknown Shape = iota // fewer than three planes, or no axis common to them
	Straight                  // no difference between planes stands out of the doubt, large as that may be
	Tapered                   // the ends differ; no plane between them is larger or smaller than both, nor is it bell-mouthed
	BellMouthed               // the ends differ, and a plane between is smaller than an even taper would be
	Barrelled                 // a plane between is larger than both ends
	Waisted                   // a plane between is smaller than both ends: bell-mouthed at either
	Irregular                 // both at once
)

var shapeNames = [...]string{"unknown", "straight within the doubt", "tapered", "bell-mouthed", "barrelled", "waisted", "irregular"}

// String returns the word of the trade, "bell-mouthed"; [Straight] is "straight within the doubt".
func (s Shape) String() string { return enum.Name(s, shapeNames[:]) }

// MarshalText returns the text of [Shape.String]; a value that is none of them is an error.
func (s Shape) MarshalText() ([]byte, error) { return enum.Marshal(s, shapeNames[:]) }

// UnmarshalText reads the text of [Shape.String]. On error the receiver keeps its value.
func (s *Shape) UnmarshalText(text []byte) error { return enum.Unmarshal(s, text, shapeNames[:]) }

// lookRisk is the chance of a wrong word for a shape, shared over the looks at one bore.
const lookRisk = 0.05

// A profiler compares plane means.
type profiler struct {
	planes  []Plane
	doubts  [][]doubt
	scratch []units.Length
}

// A level is the mean size of a plane along some axes, with the doubt it does not share.
type level struct {
	size     units.Length
	variance float64 // in µm²
	dof      float64
}

// level returns the mean of plane i along axes that it has.
func (p profiler) level(i int, axes []units.Angle) (level, error) {
	places, doubts := p.planes[i].Places, p.doubts[i]
	if len(places) > len(axes) {
		places, doubts = make([]Place, 0, len(axes)), make([]doubt, 0, len(axes))
		for j, q := range p.planes[i].Places {
			if _, ok := slices.BinarySearch(axes, q.Axis); ok {
				places, doubts = append(places, q), append(doubts, p.doubts[i][j])
			}
		}
	}
	size, d, err := meanOf(places, doubts, p.scratch)
	if err != nil {
		return level{}, err
	}
	d.shared = 0
	e, err := d.estimate(size)
	return level{size, d.fixed + d.random, e.DoF}, err
}

// profile returns the levels of planes from first up to last along the axes that all of them
// have, none where there is no such axis, and the fewest degrees of freedom.
func (p profiler) profile(first, last int) ([]level, float64, error) {
	axes := make([]units.Angle, 0, len(p.planes[first].Places))
	for _, q := range p.planes[first].Places {
		axes = append(axes, q.Axis)
	}
	for _, o := range p.planes[first+1 : last] {
		axes = slices.DeleteFunc(axes, func(a units.Angle) bool {
			_, ok := along(o.Places, a)
			return !ok
		})
	}
	if len(axes) == 0 {
		return nil, 0, nil
	}
	levels := make([]level, 0, last-first)
	var dof float64
	for i := first; i < last; i++ {
		l, err := p.level(i, axes)
		if err != nil {
			return nil, 0, err
		}
		levels = append(levels, l)
		dof = fewer(dof, l.dof)
	}
	return levels, dof, nil
}

// standsOut reports whether a difference of levels with a variance lies beyond k standard
// uncertainties above or below zero.
func standsOut(d units.Length, variance, k float64) (above, below bool) {
	u := k * math.Sqrt(variance) * float64(units.Micrometre)
	return float64(d) > u, float64(-d) > u
}

// shape names the run of the means of planes from first up to last.
func (p profiler) shape(first, last int) (Shape, error) {
	if last-first < 3 {
		return ShapeUnknown, nil
	}
	levels, dof, err := p.profile(first, last)
	if err != nil || levels == nil {
		return ShapeUnknown, err
	}
	n := len(levels)
	// Each of n−2 planes between the ends is looked at for three things, in one direction each,
	// and the ends are compared in two: 3(n−2) + 2 looks, fewer than 3(n−1).
	k, err := uncertainty.Coverage(1-2*lookRisk/float64(3*(n-1)), dof)
	if err != nil {
		return ShapeUnknown, err
	}
	top, bottom := levels[0], levels[n-1]
	span := float64(p.planes[last-1].Depth - p.planes[first].Depth)
	var barrelled, waisted, hollow bool
	for i, m := range levels[1 : n-1] {
		aboveTop, belowTop := standsOut(m.size-top.size, m.variance+top.variance, k)
		aboveBottom, belowBottom := standsOut(m.size-bottom.size, m.variance+bottom.variance, k)
		barrelled = barrelled || aboveTop && aboveBottom
		waisted = waisted || belowTop && belowBottom
		t := float64(p.planes[first+1+i].Depth-p.planes[first].Depth) / span // of the way down
		chord := top.size + units.Length(math.Round(t*float64(bottom.size-top.size)))
		_, below := standsOut(m.size-chord, m.variance+float64((1-t)*(1-t)*top.variance)+float64(t*t*bottom.variance), k)
		hollow = hollow || below
	}
	larger, smaller := standsOut(top.size-bottom.size, top.variance+bottom.variance, k)
	switch {
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

// ridge returns the step from the plane above ring travel, if there is one, to the uppermost
// within it, and whether it stands out.
func (p profiler) ridge(first, last int) (uncertainty.Estimate, bool, error) {
	if first == 0 || first == last {
		return uncertainty.Estimate{}, false, nil
	}
	levels, dof, err := p.profile(first-1, first+1)
	if err != nil || levels == nil {
		return uncertainty.Estimate{}, false, err
	}
	std, err := units.Of(math.Sqrt(levels[0].variance+levels[1].variance), units.Micrometre)
	if err != nil {
		return uncertainty.Estimate{}, false, err
	}
	step := uncertainty.Estimate{Value: levels[1].size - levels[0].size, Std: std, DoF: dof}
	u, err := step.Expanded(1 - 2*lookRisk)
	return step, step.Value > u, err
}
