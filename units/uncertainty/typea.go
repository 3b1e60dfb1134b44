// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Spread is a standard deviation or standard uncertainty with its degrees of freedom, as
// repeats give it: of type A in the words of JCGM 100:2008 4.2. Std is a number of any one unit.
type Spread struct {
	Std float64 `json:"std"`          // in the unit of the readings
	DoF float64 `json:"dof,omitzero"` // degrees of freedom; 0 = infinitely many
}

// OfMean returns the spread of the mean of n readings each of which has spread s: Std/√n, with
// the same degrees of freedom (JCGM 100:2008 4.2.3 and, for a spread pooled from earlier work,
// 4.2.4). An n below 1 is taken as 1.
func (s Spread) OfMean(n int) Spread {
	return Spread{Std: s.Std / math.Sqrt(float64(max(n, 1))), DoF: s.DoF}
}

// A Sample is what repeated readings of one thing come to, as numbers of their unit.
type Sample struct {
	N    int     `json:"n"`    // how many readings
	Mean float64 `json:"mean"` // in their unit
	Std  float64 `json:"std"`  // experimental standard deviation, with N − 1 degrees of freedom
}

// Describe returns the mean and the experimental standard deviation of two or more readings
// (JCGM 100:2008 4.2.1 and 4.2.2). It works on the differences from the first reading, in two
// passes, so that small scatter on large numbers keeps its digits.
//
// Fewer than two readings are ErrNoData; a reading that is not finite, or so large that the sum
// of squares is not, is units.ErrNotFinite.
func Describe(xs ...float64) (Sample, error) {
	n := len(xs)
	if n < 2 {
		return Sample{}, fmt.Errorf("uncertainty: scatter of %d readings: %w (two at least)", n, ErrNoData)
	}
	var sum float64
	for _, x := range xs {
		sum += x - xs[0]
	}
	shift := sum / float64(n)
	var rest, squares float64
	for _, x := range xs {
		d := x - xs[0] - shift
		rest += d
		squares += float64(d * d)
	}
	variance := (squares - float64(rest*rest)/float64(n)) / float64(n-1)
	if math.IsNaN(variance) || math.IsInf(variance, 0) {
		return Sample{}, fmt.Errorf("uncertainty: scatter of %d readings from %v: %w", n, xs[0], units.ErrNotFinite)
	}
	return Sample{N: n, Mean: xs[0] + (shift + rest/float64(n)), Std: math.Sqrt(max(0, variance))}, nil
}

// Spread returns the spread of one reading.
func (s Sample) Spread() Spread { return Spread{Std: s.Std, DoF: float64(s.N - 1)} }

// OfMean returns the spread of the mean: Std/√N (JCGM 100:2008 4.2.3).
func (s Sample) OfMean() Spread { return s.Spread().OfMean(s.N) }

// FromRepeats returns the mean of two or more repeated readings of one length as an Estimate,
// with the standard uncertainty of the mean and N − 1 degrees of freedom.
//
// It holds what the repeats show and nothing else: a coarse gauge may repeat itself exactly.
// Put its [Spread] into a [Budget] with the resolution, the setting standard and the
// temperatures. Fewer than two readings are ErrNoData, one beyond ±units.MaxLength is
// units.ErrRange.
func FromRepeats(readings ...units.Length) (Estimate, error) {
	xs := make([]float64, len(readings))
	for i, r := range readings {
		if r.Abs() > units.MaxLength {
			return Estimate{}, fmt.Errorf("uncertainty: reading %v: %w (±%v)", r, units.ErrRange, units.MaxLength)
		}
		xs[i] = r.In(units.Picometre)
	}
	s, err := Describe(xs...)
	if err != nil {
		return Estimate{}, err
	}
	mean, err := units.Mean(readings...)
	if err != nil {
		return Estimate{}, err
	}
	u := s.OfMean()
	return estimate(mean, u.Std, u.DoF, units.Picometre)
}

// Pool returns the spread common to several groups, each of which scatters alike about its own
// mean: √(Σν·s²/Σν), with Σν degrees of freedom (JCGM 100:2008 4.2.4, H.5.2; NIST/SEMATECH
// e-Handbook, page mpc444).
//
// No group is ErrNoData; a Std that is negative or not finite is ErrStd; degrees of freedom
// that are not at least 1 and finite are ErrStd, since a spread known without doubt leaves
// nothing to pool.
func Pool(groups ...Spread) (Spread, error) {
	if len(groups) == 0 {
		return Spread{}, fmt.Errorf("uncertainty: pool of no groups: %w", ErrNoData)
	}
	var top, dof, sum float64
	for _, g := range groups {
		if !(g.Std >= 0) || math.IsInf(g.Std, 0) {
			return Spread{}, fmt.Errorf("uncertainty: pool: std %v: %w", g.Std, ErrStd)
		}
		if !(g.DoF >= 1) || math.IsInf(g.DoF, 0) {
			return Spread{}, fmt.Errorf("uncertainty: pool: %v degrees of freedom: %w", g.DoF, ErrStd)
		}
		top = max(top, g.Std)
		dof += g.DoF
	}
	if top == 0 {
		return Spread{DoF: dof}, checkDoF(dof)
	}
	for _, g := range groups {
		r := g.Std / top
		sum += float64(g.DoF / dof * float64(r*r))
	}
	return Spread{Std: top * math.Sqrt(sum), DoF: dof}, checkDoF(dof)
}
