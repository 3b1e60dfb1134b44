// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A doubt is what one size is uncertain by, as variances in µm², sorted by what happens to it
// when places are compared or averaged.
type doubt struct {
	shared float64 // the same for all places: cancels in differences, stays in means
	fixed  float64 // the place's own, the same at each repeat; not taken to average out over places
	random float64 // repeatability of the mean of the repeats: averages out over places
	dof    float64 // of random; 0 for infinitely many
}

// doubtOf sorts the components of one place.
func doubtOf(ps *parts) doubt {
	d := doubt{dof: ps[firstOwn].DoF}
	for i := range ps {
		u := float64(ps[i].Sensitivity * ps[i].Std)
		switch v := float64(u * u); {
		case i < firstOwn:
			d.shared += v
		case i == firstOwn:
			d.random = v
		default:
			d.fixed += v
		}
	}
	return d
}

// tidy rounds the standard uncertainty up to a nanometre and the degrees of freedom down to a
// whole number, as JCGM 100:2008 G.4.1 does, so that places with one history have one doubt.
func tidy(e uncertainty.Estimate) uncertainty.Estimate {
	e.Std, e.DoF = e.Std.Ceil(units.Nanometre), math.Floor(e.DoF)
	if e.Std == 0 {
		e.DoF = 0
	}
	return e
}

// combined returns the value with the doubt of components in micrometres.
func combined(value units.Length, parts []uncertainty.Component) (uncertainty.Estimate, error) {
	e, err := uncertainty.Budget{Components: parts}.Estimate(value, units.Micrometre)
	return tidy(e), err
}

// estimate returns the size with doubt d.
func (d doubt) estimate(size units.Length) (uncertainty.Estimate, error) {
	return combined(size, []uncertainty.Component{
		{Name: "what does not average out", Sensitivity: 1, Std: math.Sqrt(d.shared + d.fixed)},
		{Name: "repeatability", Sensitivity: 1, Std: math.Sqrt(d.random), DoF: d.dof},
	})
}

// meanOf returns the mean of places and its doubt. What places share does not average out. What
// each has to itself besides repeatability may be the same in all of them, since they are read
// at nearly one place of the dial, and is not taken to average out either.
//
// scratch has room for the sizes.
func meanOf(places []Place, doubts []doubt, scratch []units.Length) (units.Length, doubt, error) {
	var d doubt
	n := float64(len(places))
	scratch = scratch[:0]
	for i := range places {
		scratch = append(scratch, places[i].Size.Value)
		d.shared = max(d.shared, doubts[i].shared)
		d.fixed = max(d.fixed, doubts[i].fixed)
		d.random += doubts[i].random / float64(n*n)
		d.dof = doubts[i].dof // one pool for all
	}
	value, err := units.Mean(scratch...)
	return value, d, err
}

// extremes returns the largest and the smallest of the places; of equal sizes the most doubtful, so
// that an answer does not depend on the order in which they stand.
func extremes(ps []Place) (largest, smallest Place) {
	for i, p := range ps {
		if i == 0 || p.larger(largest) {
			largest = p
		}
		if i == 0 || p.Size.Value < smallest.Size.Value || p.Size.Value == smallest.Size.Value && p.Size.Std > smallest.Size.Std {
			smallest = p
		}
	}
	return largest, smallest
}

// larger reports whether p has the larger size; of equal ones, the more doubtful.
func (p Place) larger(q Place) bool {
	return p.Size.Value > q.Size.Value || p.Size.Value == q.Size.Value && p.Size.Std > q.Size.Std
}

// fewer returns the smaller degrees of freedom, of which 0 is infinitely many.
func fewer(a, b float64) float64 {
	if a == 0 || b != 0 && b < a {
		return b
	}
	return a
}

// difference returns a − b for sizes of one bore with what each has to itself.
//
// Both have their repeatability from one pool, so that its error is the same in both. With
// variances V and the pool's part R of each, ν = ν₀·((V₁+V₂)/(R₁+R₂))² (JCGM 100:2008 G.4.1, the
// pool being one component), which lies between ν₀(V₁/R₁)² and ν₀(V₂/R₂)², the degrees of freedom
// of a and b: the fewer are on the safe side, and exact where both have as many repeats.
func difference(a, b uncertainty.Estimate) uncertainty.Estimate {
	return weighted(less(a.Value, b.Value), a, 1, b, -1)
}

// less returns a − b, each no further from zero than any size can be, so that nothing wraps around.
func less(a, b units.Length) units.Length {
	const most = units.MaxLength
	return min(max(a, -most), most) - min(max(b, -most), most)
}

// weighted is [difference] for other weights than 1 and −1; the value is given.
func weighted(value units.Length, a uncertainty.Estimate, wa float64, b uncertainty.Estimate, wb float64) uncertainty.Estimate {
	ua, ub := float64(wa*a.Std.In(units.Micrometre)), float64(wb*b.Std.In(units.Micrometre))
	std, err := units.Of(math.Sqrt(float64(ua*ua)+float64(ub*ub)), units.Micrometre)
	if err != nil {
		std = units.MaxLength // a doubt beyond all measure stays one
	}
	return tidy(uncertainty.Estimate{Value: value, Std: std, DoF: fewer(a.DoF, b.DoF)})
}

// shared returns what the place's doubt has in common with every other place of the bore.
func (p Place) shared() uncertainty.Estimate {
	whole, own := p.Size.Std.In(units.Micrometre), p.Own.Std.In(units.Micrometre)
	std, err := units.Of(math.Sqrt(max(0, float64(whole*whole)-float64(own*own))), units.Micrometre)
	if err != nil {
		std = units.MaxLength
	}
	return uncertainty.Estimate{Std: std}
}

// independent returns the value with the doubts of estimates that share nothing, each counted as
// often as its weight says (JCGM 100:2008 5.1.2 and G.4.1).
func independent(value units.Length, a uncertainty.Estimate, wa float64, b uncertainty.Estimate, wb float64) (uncertainty.Estimate, error) {
	return combined(value, []uncertainty.Component{
		{Name: "first", Sensitivity: wa, Std: a.Std.In(units.Micrometre), DoF: a.DoF},
		{Name: "second", Sensitivity: wb, Std: b.Std.In(units.Micrometre), DoF: b.DoF},
	})
}
