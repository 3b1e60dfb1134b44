// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Analyse turns the readings of one bore of which nothing else is known into its geometry at
// 20 °C, as [Layout.Analyse] does, with its errors.
func Analyse(readings []Reading, g Gauge) (Geometry, error) { return Layout{}.Analyse(readings, g) }

// Analyse turns the readings of one bore into its geometry at 20 °C. The order of the readings
// does not matter and the slice is left as it was.
//
// Readings at one depth and axis are repeats: their mean counts, and where the gauge's
// repeatability is not known from elsewhere they give it, pooled over all places. A plane is
// all readings at exactly one depth.
//
// Errors: ErrNoReadings; [units.ErrRange] and [units.ErrNotGiven] for layout and gauge; and, for all readings at
// once, ErrReading (also for one below the bore, or with an anvil in a port), ErrSlippedDigit (unless Confirmed).
func (l Layout) Analyse(readings []Reading, g Gauge) (Geometry, error) {
	if len(readings) == 0 {
		return Geometry{}, fmt.Errorf("bore: analyse: %w", ErrNoReadings)
	}
	if err := l.Validate(); err != nil {
		return Geometry{}, err
	}
	if err := g.validate(); err != nil {
		return Geometry{}, err
	}
	rs := slices.Clone(readings)
	if err := l.checkAll(rs, g.Kind); err != nil {
		return Geometry{}, err
	}
	for i := range rs {
		rs[i].Axis = rs[i].Axis.Fold()
	}
	slices.SortStableFunc(rs, func(a, b Reading) int {
		return cmp.Or(cmp.Compare(a.Depth, b.Depth), cmp.Compare(a.Axis, b.Axis))
	})
	s, err := newSession(rs, &g)
	if err != nil {
		return Geometry{}, err
	}
	return s.geometry(l, g.Kind)
}

// checkAll refuses readings, all that are wrong at once.
func (l Layout) checkAll(rs []Reading, k Kind) error {
	var errs []error
	for _, r := range rs {
		if err := r.validate(); err != nil {
			errs = append(errs, err)
		} else if err := l.check(r, k); err != nil {
			errs = append(errs, err)
		}
	}
	if errs == nil {
		return checkSlips(rs)
	}
	return errors.Join(errs...)
}

// A session is the sizes of all places with their doubt, by depth and axis.
type session struct {
	places  []Place
	doubts  []doubt
	scatter scatter // of one reading
	against []Contradiction
	known   bool  // scatter is known, from repeats or from elsewhere
	top     Place // the largest so far
	largest parts // what its doubt is made of

	lengths []units.Length // scratch: a length a reading
	floats  []float64      // scratch: two numbers a reading
	parts   parts          // scratch
}

// newSession takes readings sorted by place.
func newSession(rs []Reading, g *Gauge) (*session, error) {
	n := 0
	for rest := rs; len(rest) > 0; rest = rest[repeats(rest):] {
		n++
	}
	s := &session{
		places: make([]Place, 0, n), doubts: make([]doubt, 0, n),
		known:   g.Repeatability > 0 || len(rs) > n,
		lengths: make([]units.Length, 0, len(rs)), floats: make([]float64, 2*len(rs)),
	}
	var err error
	if s.scatter, err = s.pool(rs, n, scatter{g.Repeatability.In(units.Micrometre), g.RepeatabilityDoF}); err != nil {
		return nil, err
	}
	for rest := rs; len(rest) > 0; {
		k := repeats(rest)
		if err := s.add(rest[:k], g); err != nil {
			return nil, err
		}
		rest = rest[k:]
	}
	return s, nil
}

// repeats returns how many of the readings, sorted by place, are of the first place.
func repeats(rs []Reading) int {
	for i := range rs {
		if rs[i].Depth != rs[0].Depth || rs[i].Axis != rs[0].Axis {
			return i
		}
	}
	return len(rs)
}

// pool returns how far single readings scatter: what is known of the gauge, or what the repeats
// show, pooled over the places that were read more than once (JCGM 100:2008 4.2.4), where that
// is not known or is more than it allows.
func (s *session) pool(rs []Reading, places int, known scatter) (scatter, error) {
	if len(rs) == places {
		return known, nil
	}
	groups, at := make([]uncertainty.Spread, 0, places), []Contradiction(nil)
	for rest := rs; len(rest) > 0; {
		n := repeats(rest)
		if n > 1 {
			xs := s.floats[:0]
			for _, r := range rest[:n] {
				xs = append(xs, (r.Diameter - rest[0].Diameter).In(units.Micrometre))
			}
			sample, err := uncertainty.Describe(xs...)
			if err != nil {
				return known, err
			}
			groups = append(groups, sample.Spread())
			at = append(at, Contradiction{Depth: rest[0].Depth, Axis: rest[0].Axis, Repeats: n})
		}
		rest = rest[n:]
	}
	pooled, err := uncertainty.Pool(groups...)
	if err != nil {
		return known, err
	}
	if known.std > 0 {
		together := exceeds(pooled, known, contradiction)
		if s.against, err = contradictions(at, groups, known, together); err != nil || !together {
			return known, err
		}
	}
	return scatter{pooled.Std, pooled.DoF}, nil
}

// add takes the repeats of one place.
func (s *session) add(rs []Reading, g *Gauge) error {
	s.lengths = s.lengths[:0]
	for _, r := range rs {
		s.lengths = append(s.lengths, r.Diameter)
	}
	shown, err := units.Mean(s.lengths...)
	if err != nil {
		return err
	}
	c := g.comparison(shown)
	size, err := c.SizeAt20()
	if err != nil {
		return err
	}
	if s.parts, err = g.components(&c, s.scatter, len(rs)); err != nil {
		return err
	}
	p := Place{Depth: rs[0].Depth, Axis: rs[0].Axis}
	if p.Size, err = combined(size, s.parts[:]); err != nil {
		return err
	}
	if p.Own, err = combined(size, s.parts[firstOwn:]); err != nil {
		return err
	}
	if len(s.places) == 0 || p.larger(s.top) {
		s.top, s.largest = p, s.parts
	}
	s.places = append(s.places, p)
	s.doubts = append(s.doubts, doubtOf(&s.parts))
	return nil
}

// geometry works everything out from the places.
func (s *session) geometry(l Layout, k Kind) (Geometry, error) {
	geo := Geometry{Kind: k, Contradictions: s.against}
	planes, doubts, err := s.planes(l, &geo)
	if err != nil {
		return Geometry{}, err
	}
	geo.Largest = s.top
	_, geo.Smallest = extremes(s.places)
	geo.Spread = geo.Largest.Minus(geo.Smallest)
	if err := s.mean(&geo, doubts); err != nil {
		return Geometry{}, err
	}
	for _, p := range geo.Planes {
		if p.HasOvality && (!geo.HasOvality || p.Ovality.Value > geo.Ovality.Value ||
			p.Ovality.Value == geo.Ovality.Value && p.Ovality.Std > geo.Ovality.Std) {
			geo.Ovality, geo.OvalityAt, geo.HasOvality = p.Ovality, p.Depth, true
		}
	}
	geo.Travel = l.travel()
	profiles := geo.profiles()
	for i, c := range profiles {
		top, bottom := c.places[0].Depth, c.places[len(c.places)-1].Depth
		if i == 0 {
			geo.Travel.From, geo.Travel.To = top, bottom
		}
		geo.Travel.From, geo.Travel.To = min(geo.Travel.From, top), max(geo.Travel.To, bottom)
	}
	geo.Tapers = tapers(profiles, geo.Travel)
	for i, t := range geo.Tapers {
		if i == 0 || t.exceeds(geo.Taper) {
			geo.Taper = t
		}
	}
	means := profiler{planes, doubts, s.lengths}
	mean, err := means.mean(geo.Travel)
	if err != nil {
		return Geometry{}, err
	}
	if geo.Shape, err = geo.shape(profiles, mean); err != nil {
		return Geometry{}, err
	}
	if geo.Ridge, geo.HasRidge, err = means.ridge(geo.Travel); err != nil {
		return Geometry{}, err
	}
	geo.Unseen = unseen(&geo, s.known)
	geo.Budget.Components = slices.Clone(s.largest[:])
	return geo, nil
}

// planes sorts the places into planes and bridges and works each out. It returns the planes that
// are no bridges, and their doubts.
func (s *session) planes(l Layout, geo *Geometry) ([]Plane, [][]doubt, error) {
	n := 0
	for i := range s.places {
		if i == 0 || s.places[i].Depth != s.places[i-1].Depth {
			n++
		}
	}
	all, doubts := make([]Plane, 0, n), make([][]doubt, 0, n)
	for i := 0; i < len(s.places); {
		j := i + 1
		for j < len(s.places) && s.places[j].Depth == s.places[i].Depth {
			j++
		}
		p, ds := Plane{Depth: s.places[i].Depth, Places: s.places[i:j:j]}, s.doubts[i:j:j]
		if err := s.plane(&p, ds, geo.Kind); err != nil {
			return nil, nil, err
		}
		if l.isBridge(p.Depth) {
			geo.Bridges = append(geo.Bridges, p)
		} else {
			all, doubts = append(all, p), append(doubts, ds)
		}
		i = j
	}
	if len(all) > 0 {
		geo.Planes = all
	}
	return all, doubts, nil
}

// plane works out a plane from its places.
func (s *session) plane(p *Plane, ds []doubt, k Kind) error {
	value, d, err := meanOf(p.Places, ds, s.lengths)
	if err != nil {
		return err
	}
	if p.Mean, err = d.estimate(value); err != nil {
		return err
	}
	if k == ThreePoint || len(p.Places) < 2 {
		return nil
	}
	largest, smallest := extremes(p.Places)
	p.Ovality, p.HasOvality = largest.Minus(smallest), true
	return p.fit(ds, s.floats)
}

// mean sets the mean of all places on planes; where there are none, on bridges.
func (s *session) mean(geo *Geometry, doubts [][]doubt) error {
	places, ds := s.places, s.doubts
	if len(geo.Bridges) > 0 && len(geo.Planes) > 0 {
		places, ds = nil, nil
		for i, p := range geo.Planes {
			places, ds = append(places, p.Places...), append(ds, doubts[i]...)
		}
	}
	value, d, err := meanOf(places, ds, s.lengths)
	if err != nil {
		return err
	}
	geo.Mean, err = d.estimate(value)
	return err
}

// tapers compares the ends of each axis that was read at two depths or more.
func tapers(cs []profile, t RingTravel) []Taper {
	var ts []Taper
	for _, c := range cs {
		if len(c.places) < 2 {
			continue
		}
		if ts == nil {
			ts = make([]Taper, 0, len(cs))
		}
		ts = append(ts, c.taper(t))
	}
	return ts
}

// exceeds reports whether t is the larger taper, whichever end is larger; of equals, the more
// doubtful one, and then that which is larger at the deck.
func (t Taper) exceeds(o Taper) bool {
	a, b := t.Size, o.Size
	if a.Value.Abs() != b.Value.Abs() {
		return a.Value.Abs() > b.Value.Abs()
	}
	return a.Std > b.Std || a.Std == b.Std && a.Value > b.Value
}

// along returns the place of a plane along an axis, and whether there is one.
func along(places []Place, axis Axis) (Place, bool) {
	i, ok := slices.BinarySearchFunc(places, axis, func(p Place, a Axis) int { return cmp.Compare(p.Axis, a) })
	if !ok {
		return Place{}, false
	}
	return places[i], true
}
