// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// A LinePoint is a point of a line of the wall, drawn along the axis of the bore.
type LinePoint struct {
	Depth units.Length `json:"depth"` // from the deck
	// Deviation is off any straight line near the wall, positive out of the material: in a bore, to
	// the axis. So a peak is positive, as ISO 12780-1 wants it.
	Deviation units.Length `json:"deviation"`
}

// A Line is a reference line of the points and the straightness about it, by ISO 12780-1.
// Deviations count along Deviation, not square to the line: at a slope of 1 in 100 that is 0.005 %
// more.
type Line struct {
	At    LinePoint    `json:"at"`    // a point of the reference line, at the depth of the first point; of a minimum zone, of its middle
	Slope float64      `json:"slope"` // deviation over depth, a number without unit
	STRt  units.Length `json:"strt"`  // peak-to-valley straightness deviation

	// These are defined about the least-squares line alone, and zero otherwise. STRp + STRv = STRt.
	STRp units.Length `json:"strp,omitzero"` // peak-to-reference
	STRv units.Length `json:"strv,omitzero"` // reference-to-valley
	STRq units.Length `json:"strq,omitzero"` // root mean square of the deviations

	// Contacts carry a minimum zone, which Check proves by them; a least-squares line has none. They
	// are three: two on one side and, at a depth from the one to the other, the third on the other
	// side. Outer is the side of the peaks. With the weights w of the two by the law of the lever,
	// w·depth adds up to the depth of the third, so that by no other line can all three lie closer.
	Contacts []Contact `json:"contacts,omitempty"`
}

// StraightLeastSquares returns the line from which the sum of the squares of the deviations is
// least. Two different depths at least (else ErrPoints); depths and deviations within ±5 m (else
// [units.ErrRange]).
func StraightLeastSquares(points []LinePoint) (Line, error) {
	x, y, err := lineInput(points)
	if err != nil {
		return Line{}, err
	}
	n := float64(len(x))
	var mx, my, sxx, sxy float64
	for i := range x {
		mx, my = mx+x[i]/n, my+y[i]/n
	}
	for i := range x {
		dx := x[i] - mx
		sxx, sxy = sxx+float64(dx*dx), sxy+float64(dx*(y[i]-my))
	}
	if !(sxx > 0) {
		return Line{}, oneDepth(len(x))
	}
	slope := sxy / sxx
	peak, valley, squares := math.Inf(-1), math.Inf(1), 0.0
	for i := range x {
		d := y[i] - my - float64(slope*(x[i]-mx))
		peak, valley, squares = max(peak, d), min(valley, d), squares+float64(d*d)
	}
	l, err := lineOf(points[0], my-float64(slope*mx), slope, 0)
	if err != nil {
		return Line{}, err
	}
	if l.STRp, err = units.Of(max(0, peak), units.Millimetre); err != nil {
		return Line{}, err
	}
	if l.STRv, err = units.Of(max(0, -valley), units.Millimetre); err != nil {
		return Line{}, err
	}
	l.STRt = l.STRp + l.STRv
	l.STRq, err = units.Of(math.Sqrt(squares/n), units.Millimetre)
	return l, err
}

// StraightMinimumZone returns the two parallel lines closest together that hold all points between
// them: the closest there are, for the zone of a line is a convex problem. Errors are those of
// [StraightLeastSquares].
func StraightMinimumZone(points []LinePoint) (Line, error) {
	x, y, err := lineInput(points)
	if err != nil {
		return Line{}, err
	}
	if slices.Min(x) == slices.Max(x) {
		return Line{}, oneDepth(len(x))
	}
	h := hull(x, y)
	best := math.Inf(1)
	var slope, offset float64
	var contacts [3]Contact
	for i, p := range h {
		q := h[(i+1)%len(h)]
		if x[p] == x[q] {
			continue
		}
		rise := (y[q] - y[p]) / (x[q] - x[p])
		off, third, share := 0.0, p, 0.0
		for _, o := range h {
			d, at := y[o]-y[p]-float64(rise*(x[o]-x[p])), (x[o]-x[p])/(x[q]-x[p])
			// Of the two ends of a parallel edge, which are as far but for rounding, that between p
			// and q counts.
			tie := 1e-13 * (math.Abs(y[o]-y[p]) + math.Abs(float64(rise*(x[o]-x[p]))))
			switch a := math.Abs(d) - math.Abs(off); {
			case a > tie, a >= -tie && at >= 0 && at <= 1 && (share < 0 || share > 1):
				off, third, share = d, o, at
			}
		}
		if math.Abs(off) < best && (off == 0 || share >= 0 && share <= 1) {
			best = math.Abs(off)
			slope, offset = rise, y[p]-float64(rise*x[p])+off/2
			contacts = [3]Contact{{Index: p, Outer: off < 0, Weight: 1 - share}, {Index: q, Outer: off < 0, Weight: share}, {Index: third, Outer: off >= 0, Weight: 1}}
		}
	}
	l, err := lineOf(points[0], offset, slope, best)
	if err != nil {
		return Line{}, err
	}
	l.Contacts = contacts[:]
	return l, nil
}

func oneDepth(n int) error {
	return fmt.Errorf("form: straightness: all %d points at one depth: %w", n, ErrPoints)
}

// Check checks a minimum zone against the points: that all lie within it, that the contacts lie on
// its two sides, and that the weights balance them by the law of the lever. It shares no arithmetic
// with what found the zone. ErrCertificate tells what does not hold; a least-squares line has no
// contacts. ErrPoints where the points are not those of the line.
func (l Line) Check(points []LinePoint) error {
	fail := func(format string, args ...any) error {
		return fmt.Errorf("form: straightness: "+format+": %w", append(args, ErrCertificate)...)
	}
	if len(l.Contacts) != 3 {
		return fail("%d contacts: want 3", len(l.Contacts))
	}
	if l.STRp != 0 || l.STRv != 0 || l.STRq != 0 {
		return fail("STRp %v, STRv %v, STRq %v of a minimum zone", l.STRp, l.STRv, l.STRq)
	}
	half := l.STRt.In(units.Millimetre) / 2
	off := func(p LinePoint) float64 {
		return (p.Deviation - l.At.Deviation).In(units.Millimetre) - float64(l.Slope*(p.Depth-l.At.Depth).In(units.Millimetre))
	}
	for i, p := range points {
		if d := math.Abs(off(p)); !(d <= half+slack) {
			return fail("point %d lies %.3g mm off the middle of a zone of %v", i, d, l.STRt)
		}
	}
	var weight, depth [2]float64
	for k, c := range l.Contacts {
		if c.Index < 0 || c.Index >= len(points) {
			return fmt.Errorf("form: straightness: contact %d among %d points: %w", c.Index, len(points), ErrPoints)
		}
		side := k / 2
		sign := -1.0
		if c.Outer {
			sign = 1
		}
		if c.Outer != l.Contacts[2*side].Outer || !(c.Weight >= 0 && math.Abs(off(points[c.Index])-float64(sign*half)) <= slack) {
			return fail("contact %d is not on its side", c.Index)
		}
		weight[side] += c.Weight
		depth[side] += float64(c.Weight * (points[c.Index].Depth - l.At.Depth).In(units.Millimetre))
	}
	if l.Contacts[0].Outer == l.Contacts[2].Outer || !(math.Abs(weight[0]-1) <= 1e-12 && math.Abs(weight[1]-1) <= 1e-12 && math.Abs(depth[0]-depth[1]) <= slack) {
		return fail("contacts do not balance")
	}
	return nil
}

// lineInput returns depths and deviations in mm from those of the first point.
func lineInput(points []LinePoint) (x, y []float64, err error) {
	if err := enough(len(points), 2); err != nil {
		return nil, nil, err
	}
	x, y = make([]float64, len(points)), make([]float64, len(points))
	for i, p := range points {
		if max(p.Depth, p.Deviation) > mostRadius || min(p.Depth, p.Deviation) < -mostRadius {
			return nil, nil, fmt.Errorf("form: straightness: point %d, %v at %v: want within ±%v: %w", i, p.Deviation, p.Depth, mostRadius, units.ErrRange)
		}
		x[i], y[i] = (p.Depth - points[0].Depth).In(units.Millimetre), (p.Deviation - points[0].Deviation).In(units.Millimetre)
	}
	return x, y, nil
}

// lineOf returns a line that passes so far above the first point.
func lineOf(first LinePoint, above, slope, zone float64) (l Line, err error) {
	l.Slope = slope
	off, err := units.Of(above, units.Millimetre)
	if err != nil {
		return Line{}, fmt.Errorf("form: straightness: %w: %w", err, ErrPoints)
	}
	l.At = LinePoint{first.Depth, first.Deviation + off}
	l.STRt, err = units.Of(zone, units.Millimetre)
	return l, err
}
