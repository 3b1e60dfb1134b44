// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"borewright.example/bore/internal/lobes"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Measure turns the readings of one bore into its geometry at 20 °C. The order of the readings
// does not matter and the slice is left as it was.
//
// Readings at one depth and axis are repeats: their mean counts, and where the gauge's
// repeatability is not known from elsewhere they give it, pooled over all places. A plane is
// all readings at exactly one depth.
//
// Errors: ErrNoReadings, ErrReading, ErrSlippedDigit (unless Confirmed), ErrGauge.
func Measure(readings []Reading, g Gauge) (Geometry, error) {
	if len(readings) == 0 {
		return Geometry{}, fmt.Errorf("bore: measure: %w", ErrNoReadings)
	}
	for _, r := range readings {
		if err := r.validate(); err != nil {
			return Geometry{}, err
		}
	}
	if err := g.validate(); err != nil {
		return Geometry{}, err
	}
	if err := checkSlips(readings); err != nil {
		return Geometry{}, err
	}
	groups := group(readings)
	repeatability, dof := g.Repeatability.In(units.Micrometre), 0.0
	if repeatability == 0 {
		repeatability, dof = pooled(groups)
	}
	geo := Geometry{Kind: g.Kind}
	for _, rs := range groups {
		p, budget, err := g.place(rs, repeatability, dof)
		if err != nil {
			return Geometry{}, err
		}
		if n := len(geo.Planes); n == 0 || geo.Planes[n-1].Depth != p.Depth {
			geo.Planes = append(geo.Planes, Plane{Depth: p.Depth})
		}
		plane := &geo.Planes[len(geo.Planes)-1]
		plane.Places = append(plane.Places, p)
		if len(geo.Budget.Components) == 0 || p.Size.Value > geo.Largest.Size.Value {
			geo.Largest, geo.Budget = p, budget
		}
	}
	for i := range geo.Planes {
		if err := geo.Planes[i].finish(g.Kind); err != nil {
			return Geometry{}, err
		}
	}
	if err := geo.finish(); err != nil {
		return Geometry{}, err
	}
	return geo, nil
}

// group sorts a copy of the readings into places, by depth and axis.
func group(readings []Reading) [][]Reading {
	rs := slices.Clone(readings)
	for i := range rs {
		rs[i].Axis = foldAxis(rs[i].Axis)
	}
	slices.SortFunc(rs, func(a, b Reading) int {
		return cmp.Or(cmp.Compare(a.Depth, b.Depth), cmp.Compare(a.Axis, b.Axis), cmp.Compare(a.Diameter, b.Diameter))
	})
	var groups [][]Reading
	for i, r := range rs {
		if i == 0 || r.Depth != rs[i-1].Depth || r.Axis != rs[i-1].Axis {
			groups = append(groups, rs[i:i:len(rs)])
		}
		last := &groups[len(groups)-1]
		*last = append(*last, r)
	}
	return groups
}

// pooled returns the standard deviation of one reading, in micrometres, pooled over the places
// that were read more than once, and its degrees of freedom (JCGM 100:2008 H.3.6 calls it s_p).
func pooled(groups [][]Reading) (std, dof float64) {
	var ss, n float64
	for _, rs := range groups {
		var mean float64 // of the departures from the first reading, small numbers
		for _, r := range rs {
			mean += (r.Diameter - rs[0].Diameter).In(units.Micrometre)
		}
		mean /= float64(len(rs))
		for _, r := range rs {
			d := (r.Diameter - rs[0].Diameter).In(units.Micrometre) - mean
			ss += float64(d * d)
		}
		n += float64(len(rs) - 1)
	}
	if n == 0 {
		return 0, 0
	}
	return math.Sqrt(ss / n), n
}

// place returns the size of one place from its repeats, and the budget of that size.
func (g Gauge) place(rs []Reading, repeatability, dof float64) (Place, uncertainty.Budget, error) {
	ds := make([]units.Length, len(rs))
	for i, r := range rs {
		ds[i] = r.Diameter
	}
	shown, err := units.Mean(ds...)
	if err != nil {
		return Place{}, uncertainty.Budget{}, err
	}
	c := g.comparison(shown)
	size, err := c.SizeAt20()
	if err != nil {
		return Place{}, uncertainty.Budget{}, err
	}
	shared, err := g.shared(c)
	if err != nil {
		return Place{}, uncertainty.Budget{}, err
	}
	own, err := g.own(c, repeatability, dof, len(rs))
	if err != nil {
		return Place{}, uncertainty.Budget{}, err
	}
	p := Place{Depth: rs[0].Depth, Axis: rs[0].Axis}
	whole := uncertainty.Budget{Components: append(shared, own...)}
	if p.Size, err = whole.Estimate(size, units.Micrometre); err != nil {
		return Place{}, uncertainty.Budget{}, err
	}
	p.Own, err = uncertainty.Budget{Components: own}.Estimate(size, units.Micrometre)
	return p, whole, err
}

// finish works out a plane from its places.
func (p *Plane) finish(k Kind) (err error) {
	p.Largest, p.Smallest = extremes(p.Places)
	if p.Mean, err = mean(p.Places); err != nil {
		return err
	}
	if k == ThreePoint || len(p.Places) < 2 {
		return nil
	}
	p.HasOvality = true
	p.Ovality = p.Largest.minus(p.Smallest)
	return p.fit()
}

// fit adds the two-lobed form where three axes or more can carry it.
func (p *Plane) fit() error {
	theta, d := make([]float64, len(p.Places)), make([]float64, len(p.Places))
	var std, dof float64 // of one place: the largest, and the fewest
	for i, q := range p.Places {
		theta[i], d[i] = float64(q.Axis), (q.Size.Value - p.Mean.Value).In(units.Micrometre)
		if s := q.Own.Std.In(units.Micrometre); s > std {
			std = s
		}
		if q.Own.DoF > 0 && (dof == 0 || q.Own.DoF < dof) {
			dof = q.Own.DoF
		}
	}
	f, ok := lobes.Solve(theta, d, 1)
	if !ok {
		return nil
	}
	amplitude, phase := f.Amplitude(0)
	t := TwoLobe{Mean: p.Mean, Axis: foldAxis(units.Angle(phase))}
	for _, v := range []struct {
		to    *units.Length
		um    float64
		shift units.Length
	}{
		{&t.Mean.Value, f.Mean, p.Mean.Value},
		{&t.Amplitude.Value, amplitude, 0},
		{&t.Amplitude.Std, std * math.Sqrt(math.Max(0, f.Variance(0))), 0},
	} {
		l, err := units.Of(v.um, units.Micrometre)
		if err != nil {
			return err
		}
		// The fit goes through sines, which differ in the last bit from machine to machine.
		*v.to = v.shift + l.Round(units.Nanometre)
	}
	t.Amplitude.DoF = dof
	p.TwoLobe = t
	return nil
}

// finish works out the whole bore from its planes.
func (g *Geometry) finish() (err error) {
	all := g.places()
	g.Largest, g.Smallest = extremes(all)
	if g.Mean, err = mean(all); err != nil {
		return err
	}
	g.Spread = g.Largest.minus(g.Smallest)
	for _, p := range g.Planes {
		if p.HasOvality && (!g.HasOvality || p.Ovality.Value > g.Ovality.Value) {
			g.Ovality, g.OvalityAt, g.HasOvality = p.Ovality, p.Depth, true
		}
	}
	g.Tapers = tapers(g.Planes)
	for i, t := range g.Tapers {
		if i == 0 || t.Size.Value.Abs() > g.Taper.Size.Value.Abs() {
			g.Taper = t
		}
	}
	if g.Shape, err = shape(g.Planes); err != nil {
		return err
	}
	g.Unseen = unseen(*g)
	return nil
}

// tapers compares the uppermost with the lowest plane along each axis they share.
func tapers(planes []Plane) []Taper {
	if len(planes) < 2 {
		return nil
	}
	top, bottom := planes[0], planes[len(planes)-1]
	var ts []Taper
	for _, a := range top.Places {
		for _, b := range bottom.Places {
			if a.Axis == b.Axis {
				ts = append(ts, Taper{Axis: a.Axis, From: top.Depth, To: bottom.Depth, Size: a.minus(b)})
			}
		}
	}
	return ts
}

// extremes returns the first largest and the first smallest of the places.
func extremes(ps []Place) (largest, smallest Place) {
	largest, smallest = ps[0], ps[0]
	for _, p := range ps[1:] {
		if p.Size.Value > largest.Size.Value {
			largest = p
		}
		if p.Size.Value < smallest.Size.Value {
			smallest = p
		}
	}
	return largest, smallest
}

// mean returns the mean size of places of one bore. What they share does not average out.
func mean(ps []Place) (uncertainty.Estimate, error) {
	sizes := make([]units.Length, len(ps))
	var shared, own, dof float64 // variances in µm², degrees of freedom of one place
	n := float64(len(ps))
	for i, p := range ps {
		sizes[i] = p.Size.Value
		o := p.Own.Std.In(units.Micrometre)
		own += float64(o*o) / float64(n*n)
		w := p.Size.Std.In(units.Micrometre)
		if s := float64(w*w) - float64(o*o); s > shared {
			shared = s
		}
		if p.Own.DoF > 0 && (dof == 0 || p.Own.DoF < dof) {
			dof = p.Own.DoF
		}
	}
	value, err := units.Mean(sizes...)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	b := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "shared by all places", Sensitivity: 1, Std: math.Sqrt(shared)},
		{Name: "of each place", Sensitivity: 1, Std: math.Sqrt(own), DoF: dof},
	}}
	return b.Estimate(value, units.Micrometre)
}

// difference returns a − b for independent estimates.
func difference(a, b uncertainty.Estimate) uncertainty.Estimate {
	d := uncertainty.Estimate{Value: a.Value - b.Value}
	sa, sb := a.Std.In(units.Micrometre), b.Std.In(units.Micrometre)
	va, vb := float64(sa*sa), float64(sb*sb)
	std, err := units.Of(math.Sqrt(va+vb), units.Micrometre)
	if err != nil {
		std = units.MaxLength // a doubt beyond all measure stays one
	}
	d.Std = std
	// Welch–Satterthwaite, JCGM 100:2008 G.4.1. Here the two share their repeatability, pooled
	// over all places, so the degrees of freedom are those of the pool, not their sum.
	switch {
	case a.DoF == 0 || b.DoF != 0 && b.DoF < a.DoF:
		d.DoF = b.DoF
	default:
		d.DoF = a.DoF
	}
	return d
}
