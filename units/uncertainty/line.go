// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// An Observation is a reading y at a place x of a [Line], numbers of any one unit each.
type Observation struct {
	X   float64 `json:"x"`            // in its unit; taken as exact: put its doubt, times the slope, into Std
	Y   float64 `json:"y"`            // as it was read, in its unit
	Std float64 `json:"std,omitzero"` // standard uncertainty of Y, in the unit of Y; 0 = exact, but for the scatter that the points show
	DoF float64 `json:"dof,omitzero"` // degrees of freedom of Std; 0 = infinitely many
}

// A Line is a straight line through points: y = Line.Y + Slope·(x − Middle). At its Middle, and
// nowhere else, the doubts of level and slope are independent of each other.
type Line struct {
	Middle  float64 `json:"middle"`  // weighted mean of the points' x, in their unit
	Level   Spread  `json:"level"`   // doubt of Y at Middle
	Tilt    Spread  `json:"tilt"`    // doubt of Slope
	Scatter Spread  `json:"scatter"` // of one point about the line; of points with different Std, of one of mean weight
	Y       float64 `json:"y"`       // at Middle, in the unit of the points' y
	Slope   float64 `json:"slope"`   // of y per unit of x
}

// FitLine returns the straight line through two or more points by least squares, each weighed by
// its doubt (NIST/SEMATECH e-Handbook 4.4.3):
//
//	w = 1/u², x̄ = Σwx/Σw, slope = Σw(x − x̄)(y − ȳ)/Σw(x − x̄)²
//	u(level)² = 1/Σw,     u(slope)² = 1/Σw(x − x̄)²
//
// Where three or more points scatter about the line by more than their doubts, what they show
// counts: the doubts are multiplied by the Birge ratio √(Σw·residual²/(n − 2)), with n − 2
// degrees of freedom. Exact points have w = 1 and no doubt but that one, which makes it the
// ordinary regression line; two of them fix an exact line. Otherwise the degrees of freedom are
// the fewest of any point.
//
// The straight line is an assumption: look at the residuals. Fewer than two points, or all at
// one x, are ErrNoData; some exact points and some not, or a negative Std, are ErrStd; bad
// degrees of freedom are ErrStd; numbers that are not finite, or too large for sums of their
// squares, are units.ErrNotFinite.
func FitLine(points ...Observation) (Line, error) {
	n := len(points)
	if n < 2 {
		return Line{}, fmt.Errorf("uncertainty: line through %d points: %w (two at least)", n, ErrNoData)
	}
	exact, dof := 0, 0.0
	for i, p := range points {
		if !(p.Std >= 0) || math.IsInf(p.Std, 0) {
			return Line{}, fmt.Errorf("uncertainty: line: std %v of point %d: %w", p.Std, i+1, ErrStd)
		}
		if err := checkDoF(p.DoF); err != nil {
			return Line{}, err
		}
		if p.Std == 0 {
			exact++
		} else if p.DoF != 0 && (dof == 0 || p.DoF < dof) {
			dof = p.DoF
		}
	}
	if exact != 0 && exact != n {
		return Line{}, fmt.Errorf("uncertainty: line: %d of %d points are exact: %w (give the doubt of all, or of none)", exact, n, ErrStd)
	}
	// The greatest weight is 1, and all is counted from the first point.
	least := math.Inf(1)
	for _, p := range points {
		least = min(least, p.Std)
	}
	weight := func(p Observation) float64 {
		if exact == n {
			return 1
		}
		r := least / p.Std
		return float64(r * r)
	}
	o := points[0]
	var sw, sx, sy float64
	for _, p := range points {
		w := weight(p)
		sw += w
		sx += float64(w * (p.X - o.X))
		sy += float64(w * (p.Y - o.Y))
	}
	mx, my := sx/sw, sy/sw
	var xx, xy float64
	for _, p := range points {
		w, x, y := weight(p), p.X-o.X-mx, p.Y-o.Y-my
		xx += float64(w * float64(x*x))
		xy += float64(w * float64(x*y))
	}
	if xx == 0 {
		return Line{}, fmt.Errorf("uncertainty: line: all points at %v: %w", o.X, ErrNoData)
	}
	slope := xy / xx
	rest := 0.0
	for _, p := range points {
		r := p.Y - o.Y - my - float64(slope*(p.X-o.X-mx))
		rest += float64(weight(p) * float64(r*r))
	}
	scale := least // 0 for exact points
	if n > 2 {
		if shown := math.Sqrt(rest / float64(n-2)); shown > scale {
			scale, dof = shown, float64(n-2)
		}
	}
	l := Line{
		Middle: o.X + mx, Y: o.Y + my, Slope: slope,
		Level:   Spread{scale / math.Sqrt(sw), dof},
		Tilt:    Spread{scale / math.Sqrt(xx), dof},
		Scatter: Spread{scale / math.Sqrt(sw/float64(n)), dof},
	}
	for _, v := range [...]float64{l.Middle, l.Y, l.Slope, l.Level.Std, l.Tilt.Std, l.Scatter.Std, xx} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return Line{}, fmt.Errorf("uncertainty: line through %d points from %v, %v: %w", n, o.X, o.Y, units.ErrNotFinite)
		}
	}
	return l, nil
}

// At returns the line's y at x, each in the unit of the points, with its doubt there: √(u(level)² + (u(slope)·(x − Middle))²).
// It grows away from the middle; beyond the points it says nothing of whether the line goes on.
func (l Line) At(x float64) (y float64, s Spread) {
	d := x - l.Middle
	return l.Y + float64(l.Slope*d), Spread{math.Hypot(l.Level.Std, float64(l.Tilt.Std*d)), l.Level.DoF}
}
