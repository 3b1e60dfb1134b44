// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"sort"

	"borewright.example/bore"
	"borewright.example/units"
)

// A Setup is a gauge that touches the wall in two or three places of one plane: what it reads is a
// sum of radii there, so that it magnifies some orders of lobes and does not see others (the idea
// of ISO 4292). The zero Setup touches nowhere. Set-ups compare with ==.
type Setup struct {
	share [3]float64
	at    [3]float64 // rad, from the axis read along
	n     int
}

// TwoPoint returns the set-up of two opposed anvils, a dial bore gauge or a micrometer: it reads
// the diameter r(θ) + r(θ + 180°). It doubles even orders and sees no odd one.
func TwoPoint() Setup {
	return Setup{share: [3]float64{1, 1}, at: [3]float64{0, math.Pi}, n: 2}
}

// ThreePoint returns the set-up of three anvils 120° apart that centre themselves, a three-point
// internal micrometer: it reads the diameter ⅔·(r(θ) + r(θ + 120°) + r(θ + 240°)). It doubles
// orders 3, 6, 9, 12 and so on, and sees no other: no ovality; of the even orders only 6, 12, 18.
func ThreePoint() Setup {
	return Setup{share: [3]float64{2. / 3, 2. / 3, 2. / 3}, at: [3]float64{0, 2 * math.Pi / 3, 4 * math.Pi / 3}, n: 3}
}

// Vee returns the set-up of a vee-block of so many degrees between its faces, from above 0 to below
// 180° (else units.ErrRange), with the indicator on the bisector opposite the vee: r(θ) + (r(θ + 90° +
// a/2) + r(θ − 90° − a/2))/(2·sin(a/2)). The work is turned, and the indicator moves by
// [Setup.Factor] times each lobe. It is for what stands on its outside, a piston or a sleeve; what
// it reads is no diameter, and only its changes count.
func Vee(a units.Angle) (Setup, error) {
	half := float64(a) / 2
	if !(half > 0 && half < math.Pi/2) {
		return Setup{}, fmt.Errorf("form: vee of %v rad: want above 0, below 180°: %w", float64(a), units.ErrRange)
	}
	w := 1 / (2 * math.Sin(half))
	return Setup{share: [3]float64{1, w, w}, at: [3]float64{0, math.Pi/2 + half, -math.Pi/2 - half}, n: 3}, nil
}

// Factor returns by how much, a number without unit, the set-up magnifies lobes of an order: what
// it reads changes, peak to valley, by so many times the radial roundness. Negative where it reads
// a peak as a valley. For a vee it is 1 + cos(n·(90° + a/2))/sin(a/2). An order below 1 gives 0.
func (s Setup) Factor(order int) float64 {
	if order < 1 {
		return 0
	}
	var f float64
	for k := range s.n {
		f += float64(s.share[k] * math.Cos(float64(order)*s.at[k]))
	}
	return f
}

// Read returns what the set-up reads of the trace along each axis, the anvil or indicator at that
// angle. Radii are from the centre given, where the set-up stands: give that of the wall, as of
// [Trace.LeastSquares]. Off it by e, in a radius r, two anvils read up to e²/r too little, three
// e²/(2r) (1 mm off in 40 mm: 25 µm and 12.5 µm), and in a vee the reading moves by
// Factor(2)·e²/(2r) as the work turns.
//
// Two anvils read the chord through the centre, not the width between parallel tangents: in an
// ellipse of 87.55 by 87.45 mm these differ by up to 57 nm. Between neighbouring points the radius
// runs evenly with the angle, which cuts a lobe of order k by (k·step)²/8 of its amplitude at most,
// step in radians.
//
// units.ErrRange for the zero Setup; ErrAngles for an axis that is not finite, or neighbouring points
// more than 90° apart as seen from the centre.
func (s Setup) Read(t Trace, centre Point, axes []units.Angle) ([]units.Length, error) {
	if s.n == 0 {
		return nil, fmt.Errorf("form: read: the set-up touches nowhere: %w", units.ErrRange)
	}
	p, err := t.profile(centre)
	if err != nil {
		return nil, err
	}
	readings := make([]units.Length, len(axes))
	for i, a := range axes {
		if !(math.Abs(float64(a)) <= 1000*2*math.Pi) {
			return nil, fmt.Errorf("form: read along axis %d, %v rad: want a finite angle within a thousand turns: %w", i, float64(a), ErrAngles)
		}
		var sum float64
		for k := range s.n {
			sum += float64(s.share[k] * p.radius(float64(a)+s.at[k]))
		}
		if readings[i], err = units.Of(sum, units.Millimetre); err != nil {
			return nil, fmt.Errorf("form: read along %v: %w: %w", a, err, units.ErrRange)
		}
	}
	return readings, nil
}

// Readings returns what a two-point gauge would have read of the trace at a depth, along each axis:
// what [bore.Analyse] takes. Errors are those of [Setup.Read].
func (t Trace) Readings(depth units.Length, centre Point, axes []units.Angle) ([]bore.Reading, error) {
	ds, err := TwoPoint().Read(t, centre, axes)
	if err != nil {
		return nil, err
	}
	rs := make([]bore.Reading, len(ds))
	for i, d := range ds {
		rs[i] = bore.Reading{Depth: depth, Axis: bore.Axis(axes[i]), Diameter: d}
	}
	return rs, nil
}

// Radial returns the trace as radial points at a depth about the point 0, 0, in the order of their
// angles, from 0 up, once round. [bore.CleanUpRadial] takes them: it gives the smallest cylinder
// that leaves no worn wall about that point, where the register or the spindle is, and about the
// centre that suits the wear best. Traces of several depths go into one call of it. [FromPolar]
// takes them back, unless two lie in one direction. No error: a point at 0, 0 has the radius 0,
// which both refuse.
func (t Trace) Radial(depth units.Length) []bore.Point {
	ox, oy := t.from(Point{})
	ps := make([]bore.Point, t.Len())
	for i := range ps {
		dx, dy := t.x[i]-ox, t.y[i]-oy
		a := math.Atan2(dy, dx)
		if a < 0 {
			a += 2 * math.Pi
		}
		if a >= 2*math.Pi { // from below zero, by less than rounding
			a = 0
		}
		r := math.Round(norm(dx, dy) * units.PerMillimetre)
		ps[i] = bore.Point{Depth: depth, Angle: units.Angle(a), Radius: units.Length(r)}
	}
	slices.SortStableFunc(ps, func(a, b bore.Point) int { return cmp.Compare(a.Angle, b.Angle) })
	return ps
}

// A profile is a trace as radii over increasing angles from a centre.
type profile []struct{ angle, r float64 }

func (t Trace) profile(centre Point) (profile, error) {
	cx, cy := t.from(centre)
	p := make(profile, t.Len(), t.Len()+1)
	for i := range t.x {
		dx, dy := t.x[i]-cx, t.y[i]-cy
		p[i].angle, p[i].r = math.Atan2(dy, dx), norm(dx, dy)
	}
	slices.SortFunc(p, func(a, b struct{ angle, r float64 }) int { return cmp.Compare(a.angle, b.angle) })
	if len(p) > 0 {
		first := p[0]
		first.angle += 2 * math.Pi
		p = append(p, first)
	}
	for i := 1; i < len(p); i++ {
		if p[i].angle-p[i-1].angle > math.Pi/2+1e-9 {
			return nil, fmt.Errorf("form: no point between %.1f° and %.1f° as seen from %v, %v: want points at most 90° apart: %w",
				p[i-1].angle*180/math.Pi, p[i].angle*180/math.Pi, centre.X, centre.Y, ErrAngles)
		}
	}
	if len(p) < 5 {
		return nil, fmt.Errorf("form: %d points: want four all round at least: %w", t.Len(), ErrAngles)
	}
	return p, nil
}

// radius returns the radius at an angle.
func (p profile) radius(a float64) float64 {
	a = math.Remainder(a, 2*math.Pi)
	if a < p[0].angle {
		a += 2 * math.Pi
	}
	i := sort.Search(len(p)-2, func(i int) bool { return p[i+1].angle >= a })
	from, to := p[i], p[i+1]
	if to.angle == from.angle {
		return to.r
	}
	return from.r + float64((to.r-from.r)*min(1, (a-from.angle)/(to.angle-from.angle)))
}
