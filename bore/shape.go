// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"math"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Shapes compare the places along each axis that was read near both ends of ring travel, where that
// is known; ports take no part of the wall away from the axes that miss them. The looks at one bore, along
// all of its axes, share a chance of 5 %: so often at most is a straight bore called anything else, or a bore
// of even taper anything but straight or tapered. What stands out along one axis alone is the shape of
// the bore. There is none where no axis was read at three depths, from end to end of ring travel.
const (
	shapeStraight    = "straight within the doubt" // no difference along an axis stands out of the doubt, large as that may be
	shapeTapered     = "tapered"                   // the ends differ; no place between them is larger or smaller than both, nor is it bell-mouthed
	shapeBellMouthed = "bell-mouthed"              // the ends differ, and a place between is smaller than an even taper would be
	shapeBarrelled   = "barrelled"                 // a place between is larger than both ends
	shapeWaisted     = "waisted"                   // a place between is smaller than both ends: bell-mouthed at either
	shapeIrregular   = "irregular"                 // both at once
	shapePortBelly   = "belly at the ports"        // barrelled, at depths that ports cut and nowhere else
)

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
func (p profiler) level(i int, axes []Axis) (level, error) {
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

// common returns the axes that all planes from first up to last have.
func (p profiler) common(first, last int) []Axis {
	axes := make([]Axis, 0, len(p.planes[first].Places))
	for _, q := range p.planes[first].Places {
		axes = append(axes, q.Axis)
	}
	for _, o := range p.planes[first+1 : last] {
		axes = slices.DeleteFunc(axes, func(a Axis) bool {
			_, ok := along(o.Places, a)
			return !ok
		})
	}
	return axes
}

// profile returns the levels of planes from first up to last along the axes that all of them
// have, none where there is no such axis, and the fewest degrees of freedom.
func (p profiler) profile(first, last int) ([]level, float64, error) {
	axes := p.common(first, last)
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

// mean returns the run of the mean sizes of the planes within ring travel along the axes that all of
// them have, where there are two or more: a form that all axes share stands out of it sooner.
func (p profiler) mean(t RingTravel) (profile, error) {
	var within profiler
	for i, q := range p.planes {
		if t.holds(q.Depth) {
			within.planes, within.doubts = append(within.planes, q), append(within.doubts, p.doubts[i])
		}
	}
	within.scratch = p.scratch
	if len(within.planes) == 0 {
		return profile{}, nil
	}
	axes := within.common(0, len(within.planes))
	if len(axes) < 2 {
		return profile{}, nil
	}
	var mean profile
	for i, q := range within.planes {
		l, err := within.level(i, axes)
		if err != nil {
			return profile{}, err
		}
		std, err := units.Of(math.Sqrt(l.variance), units.Micrometre)
		if err != nil {
			return profile{}, err
		}
		mean.places = append(mean.places, Place{Depth: q.Depth, Own: tidy(uncertainty.Estimate{Value: l.size, Std: std, DoF: l.dof})})
	}
	return mean, nil
}

// meanShare is the share of [lookRisk] that the mean of the axes has: its scatter is the least, and to
// look along each axis as well costs it next to nothing.
const meanShare = 0.9

// shape names the run of the sizes along the axes, and of their mean, which has most of the risk of a
// wrong word where there is one.
func (g *Geometry) shape(axes []profile, mean profile) (string, error) {
	looked := func(c profile) bool {
		return len(c.places) > 2 && (!g.Travel.known() || c.whole(g.Travel))
	}
	axes = slices.DeleteFunc(axes, func(c profile) bool { return !looked(c) })
	if len(axes) == 0 {
		return "", nil
	}
	var s run
	risk := lookRisk
	if looked(mean) {
		if err := s.look([]profile{mean}, meanShare*lookRisk, g.Bridges); err != nil {
			return "", err
		}
		risk -= meanShare * lookRisk
	}
	if err := s.look(axes, risk, g.Bridges); err != nil {
		return "", err
	}
	return s.shape(), nil
}

// A run is what stands out along any axis.
type run struct{ barrelled, offPorts, waisted, hollow, tapered bool }

// look notes what stands out along the axes, at a risk shared over all looks.
func (s *run) look(axes []profile, risk float64, bridges []Plane) error {
	var looks, dof float64
	for _, c := range axes {
		// Each of n−2 places between the ends is looked at for three things, in one direction each,
		// and the ends are compared in two: 3(n−2) + 2 looks, fewer than 3(n−1).
		looks += float64(3 * (len(c.places) - 1))
		for _, p := range c.places {
			dof = fewer(dof, p.Own.DoF)
		}
	}
	k, err := uncertainty.Coverage(1-2*risk/looks, dof)
	if err != nil {
		return err
	}
	for _, c := range axes {
		s.along(c, k, bridges)
	}
	return nil
}

// along notes what stands out along one axis beyond k standard uncertainties.
func (s *run) along(c profile, k float64, bridges []Plane) {
	variance := func(p Place) float64 { u := p.Own.Std.In(units.Micrometre); return float64(u * u) }
	top, bottom := c.places[0], c.places[len(c.places)-1]
	span := float64(bottom.Depth - top.Depth)
	size := func(p Place) units.Length { return p.Own.Value }
	larger, smaller := standsOut(size(top)-size(bottom), variance(top)+variance(bottom), k)
	s.tapered = s.tapered || larger || smaller
	for _, m := range c.places[1 : len(c.places)-1] {
		aboveTop, belowTop := standsOut(size(m)-size(top), variance(m)+variance(top), k)
		aboveBottom, belowBottom := standsOut(size(m)-size(bottom), variance(m)+variance(bottom), k)
		if aboveTop && aboveBottom {
			s.barrelled = true
			s.offPorts = s.offPorts || !slices.ContainsFunc(bridges, func(b Plane) bool { return b.Depth == m.Depth })
		}
		s.waisted = s.waisted || belowTop && belowBottom
		t := float64(m.Depth-top.Depth) / span // of the way down
		chord := size(top) + units.Length(math.Round(t*float64(size(bottom)-size(top))))
		_, below := standsOut(size(m)-chord, variance(m)+float64((1-t)*(1-t)*variance(top))+float64(t*t*variance(bottom)), k)
		s.hollow = s.hollow || below && (larger || smaller)
	}
}

// shape names what stands out.
func (s run) shape() string {
	switch {
	case s.barrelled && s.waisted:
		return shapeIrregular
	case s.barrelled && !s.offPorts:
		return shapePortBelly
	case s.barrelled:
		return shapeBarrelled
	case s.waisted:
		return shapeWaisted
	case s.hollow:
		return shapeBellMouthed
	case s.tapered:
		return shapeTapered
	}
	return shapeStraight
}

// ridge returns the step from the plane above ring travel, if there is one, to the uppermost
// within it, and whether it stands out.
func (p profiler) ridge(t RingTravel) (uncertainty.Estimate, bool, error) {
	first := slices.IndexFunc(p.planes, func(q Plane) bool { return t.holds(q.Depth) })
	if first < 1 {
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
