// SPDX-License-Identifier: BSD-3-Clause

package study

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A MeanSquare is a mean square of an analysis of variance, by its root.
type MeanSquare struct {
	Source string       `json:"source"` // where readings differ: "part", "person", "interaction" or "repeatability"
	Root   units.Length `json:"root"`   // square root of the mean square
	DoF    float64      `json:"dof"`    // its degrees of freedom
}

// A Term is a mean square's part in a variance.
type Term struct {
	Coefficient float64 `json:"coefficient"` // how often it counts; below 0 where it is taken away
	MeanSquare
}

// A Component is a standard deviation whose variance is a sum of mean squares.
type Component struct {
	Std units.Length `json:"std"` // 0 where the variance came out below zero
	// DoF is by Satterthwaite: variance²/Σ(term²/its degrees of freedom), and at least 1. Where the
	// variance is not above zero it is the least of its terms'.
	DoF      float64 `json:"dof"`
	Negative bool    `json:"negative,omitzero"` // the variance came out below zero: noise, and no more than that is known
	Terms    []Term  `json:"terms,omitzero"`    // variance = Σ Coefficient·Root²
}

// Interval returns the ends between which the standard deviation lies with 95 % confidence, 2.5 % at either
// end: 0 where the lower one reaches below. It is the modified large sample method of Graybill and Wang (1980) for
// sums and of Ting, Burdick and others (1990) for differences, which keeps what it promises with few persons too;
// of one mean square it is exact. Where readings were not equally many, mean squares are neither independent nor
// chi-squared, and intervals of sums and differences are approximate.
//
// A component without terms, as of a source that was not seen, is ErrTrials. Bad degrees of freedom are
// uncertainty.ErrStd, an end beyond units.MaxLength is units.ErrRange.
func (c Component) Interval() (units.Limits, error) {
	if len(c.Terms) == 0 {
		return units.Limits{}, fmt.Errorf("study: interval of what was not seen: %w", ErrTrials)
	}
	q := make(combination, len(c.Terms))
	for i, t := range c.Terms {
		if !(t.DoF >= 1) || math.IsInf(t.DoF, 0) {
			return units.Limits{}, fmt.Errorf("study: interval: %v degrees of freedom of %v: %w", t.DoF, t.Source, uncertainty.ErrStd)
		}
		r := t.Root.In(units.Picometre)
		q[i] = share{t.Coefficient, square{t.Source, float64(r * r), t.DoF}}
	}
	variance, _ := q.variance()
	low, high := q.modified(variance)
	var i units.Limits
	var err error
	if i.Min, err = root(low); err != nil {
		return units.Limits{}, err
	}
	i.Max, err = root(high)
	return i, err
}

// root returns the length whose square, in square picometres, is v; 0 where that is below zero.
func root(v float64) (units.Length, error) {
	l, err := units.Of(math.Sqrt(max(v, 0)), units.Picometre)
	if err != nil {
		return 0, fmt.Errorf("study: %w", err)
	}
	return l, nil
}

// A square is a mean square, in square picometres.
type square struct {
	source     string
	value, dof float64
}

// meanSquare rounds it to what is shown.
func (s square) meanSquare() (MeanSquare, error) {
	l, err := root(s.value)
	return MeanSquare{Source: s.source, Root: l, DoF: s.dof}, err
}

// A share is a mean square with its coefficient.
type share struct {
	coefficient float64
	square
}

func (t share) value() float64 { return float64(t.coefficient * t.square.value) }

func squared(x float64) float64 { return float64(x * x) }

// A combination is a variance as a sum of mean squares.
type combination []share

func (q combination) times(f float64) combination {
	r := make(combination, len(q))
	for i, t := range q {
		t.coefficient *= f
		r[i] = t
	}
	return r
}

// plus adds two combinations, like mean squares together; what cancels is gone.
func (q combination) plus(r combination) combination {
	all := make(combination, 0, len(q)+len(r))
	all = append(all, q...)
next:
	for _, t := range r {
		for i := range all {
			if all[i].source == t.source {
				all[i].coefficient += t.coefficient
				continue next
			}
		}
		all = append(all, t)
	}
	kept := all[:0]
	for _, t := range all {
		if math.Abs(t.coefficient) > 1e-12 {
			kept = append(kept, t)
		}
	}
	if len(kept) == 0 {
		return nil
	}
	return kept
}

// variance returns the sum and Satterthwaite's degrees of freedom of it.
func (q combination) variance() (v, dof float64) {
	fourth, least := 0.0, math.Inf(1)
	for _, t := range q {
		x := t.value()
		v += x
		fourth += float64(x*x) / t.dof
		least = min(least, t.dof)
	}
	if !(v > 0) {
		return v, least
	}
	return v, max(1, float64(v*v)/fourth)
}

func (q combination) component() (Component, error) {
	v, dof := q.variance()
	std, err := root(v)
	c := Component{Std: std, DoF: dof, Negative: v < 0, Terms: make([]Term, len(q))}
	for i, t := range q {
		m, e := t.square.meanSquare()
		if e != nil {
			err = e
		}
		c.Terms[i] = Term{t.coefficient, m}
	}
	return c, err
}

// modified returns the ends of the 95 % interval by the modified large sample method: for terms a
// added and b taken away,
//
//	low  = V − √(Σ (G a)² + Σ (H b)² + ΣΣ g·a·b)     g = ((F − 1)² − (G F)² − H²)/F
//	high = V + √(Σ (H a)² + Σ (G b)² + ΣΣ h·a·b)     h = ((1 − f)² − (H f)² − G²)/f
//
// G = 1 − ν/χ²(0.975; ν), H = ν/χ²(0.025; ν) − 1, F and f the 97.5 % and 2.5 % points of the F
// distribution for the degrees of freedom of a and b. They are such that the interval is exact
// where all terms but one, or the true variance, vanish.
func (q combination) modified(v float64) (low, high float64) {
	type bound struct{ x, dof, g, h float64 }
	var added, taken []bound
	for _, t := range q {
		b := bound{math.Abs(t.value()), t.dof, 1 - t.dof/chiSquared(upper, t.dof), t.dof/chiSquared(lower, t.dof) - 1}
		if t.coefficient > 0 {
			added = append(added, b)
		} else {
			taken = append(taken, b)
		}
	}
	var down, up float64
	for _, a := range added {
		down += squared(a.g * a.x)
		up += squared(a.h * a.x)
		for _, b := range taken {
			F := fQuantile(upper, a.dof, b.dof)
			f := fQuantile(lower, a.dof, b.dof)
			down += float64((squared(F-1) - squared(a.g*F) - squared(b.h)) / F * float64(a.x*b.x))
			up += float64((squared(1-f) - squared(a.h*f) - squared(b.g)) / f * float64(a.x*b.x))
		}
	}
	for _, b := range taken {
		down += squared(b.h * b.x)
		up += squared(b.g * b.x)
	}
	return v - math.Sqrt(max(0, down)), v + math.Sqrt(max(0, up))
}
