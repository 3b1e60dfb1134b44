// SPDX-License-Identifier: BSD-3-Clause

package study

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Check is a reading of a setting ring, or of another standard.
type Check struct {
	Standard units.Length `json:"standard"`     // its size
	Std      units.Length `json:"std,omitzero"` // standard uncertainty of that; 0 = exact
	Reading  units.Length `json:"reading"`      // what the gauge showed, as a size
}

// A Linearity is the error of a gauge over its travel, reading less true size, as a straight line.
type Linearity struct {
	Line uncertainty.Line   `json:"line"` // x: true size in mm; y: error in µm, of one mean reading of a ring
	One  uncertainty.Spread `json:"one"`  // scatter of one reading, µm, pooled from repeats of one ring
	// Rings is the window from the smallest ring to the largest; elsewhere nothing is known.
	Rings units.Limits `json:"rings"`
}

// Linear fits the line through the readings of three or more rings, one or more of each: two rings
// lie on a line whatever the dial does. The repeats of a ring are averaged, so that its own
// doubt, which they share, does not average out; where rings stand off the line by more than their
// doubt, the line's grows with that.
//
// A line cannot show an error that comes and goes with the turn of a wheel or screw; between rings
// it is an assumption. Rings of fewer than three sizes, a ring given with two uncertainties, or more
// than 1,000 checks are ErrTrials; sizes that are not above zero, or beyond units.MaxLength, are
// units.ErrRange; a negative Std is uncertainty.ErrStd.
func Linear(checks ...Check) (Linearity, error) {
	if len(checks) > mostTrials {
		return Linearity{}, fmt.Errorf("study: linearity: %d checks: %w (at most %d)", len(checks), ErrTrials, mostTrials)
	}
	sorted := slices.Clone(checks)
	slices.SortStableFunc(sorted, func(a, b Check) int { return cmp.Compare(a.Standard, b.Standard) })
	type ring struct {
		Check
		sample uncertainty.Sample // of the errors, µm
	}
	var rings []ring
	var pools []uncertainty.Spread
	for len(sorted) > 0 {
		c := sorted[0]
		var errs []float64
		for _, x := range sorted {
			if x.Standard != c.Standard {
				break
			}
			switch {
			case x.Std != c.Std:
				return Linearity{}, fmt.Errorf("study: linearity: ring of %v known to %v and to %v: %w", c.Standard, c.Std, x.Std, ErrTrials)
			case x.Std < 0:
				return Linearity{}, fmt.Errorf("study: linearity: ring of %v known to %v: %w", c.Standard, x.Std, uncertainty.ErrStd)
			case x.Standard <= 0 || x.Standard > units.MaxLength || x.Std > units.MaxLength || x.Reading.Abs() > units.MaxLength:
				return Linearity{}, fmt.Errorf("study: linearity: ring of %v known to %v, read %v: %w (above 0, up to %v)", x.Standard, x.Std, x.Reading, units.ErrRange, units.MaxLength)
			}
			errs = append(errs, (x.Reading - x.Standard).In(units.Micrometre))
		}
		r := ring{Check: c, sample: uncertainty.Sample{N: 1, Mean: errs[0]}}
		if len(errs) > 1 {
			var err error
			if r.sample, err = uncertainty.Describe(errs...); err != nil {
				return Linearity{}, fmt.Errorf("study: linearity: %w", err)
			}
			pools = append(pools, r.sample.Spread())
		}
		rings = append(rings, r)
		sorted = sorted[len(errs):]
	}
	if len(rings) < 3 {
		return Linearity{}, fmt.Errorf("study: linearity from %d sizes of ring: %w (three at least)", len(rings), ErrTrials)
	}
	l := Linearity{Rings: units.Limits{Min: rings[0].Standard, Max: rings[len(rings)-1].Standard}}
	if len(pools) > 0 {
		var err error
		if l.One, err = uncertainty.Pool(pools...); err != nil {
			return Linearity{}, fmt.Errorf("study: linearity: %w", err)
		}
	}
	points := make([]uncertainty.Observation, len(rings))
	for i, r := range rings {
		std, dof, err := uncertainty.Budget{Components: []uncertainty.Component{
			{Name: "ring", Std: r.Std.In(units.Micrometre), Sensitivity: 1},
			{Name: "repeats", Std: l.One.OfMean(r.sample.N).Std, DoF: l.One.DoF, Sensitivity: 1},
		}}.Combined()
		if err != nil {
			return Linearity{}, fmt.Errorf("study: linearity: %w", err)
		}
		points[i] = uncertainty.Observation{X: r.Standard.In(units.Millimetre), Y: r.sample.Mean, Std: std, DoF: dof}
	}
	var err error
	if l.Line, err = uncertainty.FitLine(points...); err != nil {
		return Linearity{}, fmt.Errorf("study: linearity: %w", err)
	}
	if len(pools) == 0 { // what single readings scatter is all in the line
		l.One = l.Line.Scatter
	}
	return l, nil
}

// At returns the gauge's error at a size, with the doubt of the line there, for a place between the
// smallest ring and the largest; elsewhere it is units.ErrRange, since nothing was seen there.
func (l Linearity) At(size units.Length) (uncertainty.Estimate, error) {
	if size < l.Rings.Min || size > l.Rings.Max {
		return uncertainty.Estimate{}, fmt.Errorf("study: error at %v: %w (rings of %v)", size, units.ErrRange, l.Rings)
	}
	y, s := l.Line.At(size.In(units.Millimetre))
	v, err := units.Of(y, units.Micrometre)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("study: error at %v: %w", size, err)
	}
	b := uncertainty.Budget{Components: []uncertainty.Component{{Name: "line", Std: s.Std, DoF: s.DoF, Sensitivity: 1}}}
	return b.Estimate(v, units.Micrometre)
}

// Greatest returns the greatest departure over the travel that is not ruled out at 95 %, the error
// and its expanded uncertainty at the worse end: a half-width for bore.Gauge.DialError, for
// readings that are not corrected. Errors are those of [Linearity.At].
func (l Linearity) Greatest() (units.Length, error) {
	var most units.Length
	for _, size := range [...]units.Length{l.Rings.Min, l.Rings.Max} {
		e, err := l.At(size)
		if err != nil {
			return 0, err
		}
		u, err := e.Expanded(0.95)
		if err != nil {
			return 0, err
		}
		most = max(most, e.Value.Abs()+u)
	}
	return most, nil
}
