// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Cone is the least-squares cone of a wall: what a taper, or a choke made on purpose, is measured
// against. Deviations count square to its surface. Of a tapered wall they are less than CYLt, by about
// the taper of the radius: what is left is lobes, bend, barrel and waist.
type Cone struct {
	Axis Axis         `json:"axis"` // its ends at the least and the greatest depth of the points
	From units.Length `json:"from"` // diameter of the cone at the one end of Axis, square to it
	To   units.Length `json:"to"`   // and at the other
	// Taper is From − To: positive is larger at the deck, as of a bore.Taper. It is on the diameter, over
	// the whole length of Axis. (The local taper that standards speak of is half of that.)
	Taper units.Length `json:"taper"`
	Angle units.Angle  `json:"angle"` // the full apex angle, not negative
	// Deviation is from the greatest to the least.
	Deviation units.Length `json:"deviation"`
}

// Cone returns the least-squares cone of the wall, by orthogonal distances. Seven points at least (else
// ErrPoints). ErrArc as of [Wall.Cylindricity], and where the steps find no end.
func (w Wall) Cone() (Cone, error) {
	if err := enough(w.len(), wallPoints+1); err != nil {
		return Cone{}, err
	}
	start, ok := w.start(w.x, w.y, w.z)
	p, r := start.pose, start.r
	if !ok && w.high > w.low { // a cone need not look like a cylinder
		var cx, cy float64
		cx, cy, r, ok = algebraic(w.x, w.y)
		p = upright(vector{cx, cy, (w.low + w.high) / 2}, vector{0, 0, 1}, (w.high-w.low)/2)
	}
	if !ok || p.half < float64(shortest*r) {
		return Cone{}, w.unfit(LSCY, fitted{pose: p, r: r})
	}
	f := flare{pose: p, r: r}
	if !f.fit(w.x, w.y, w.z) || norm(f.w[0], f.w[1]) >= leaning {
		return Cone{}, fmt.Errorf("form: cone of %d points: %w", w.len(), ErrArc)
	}
	return w.cone(f)
}

// A flare is a cone as it is fitted: of radius r in the middle of the wall, larger by k at height 1.
type flare struct {
	pose
	r, k float64
}

// off returns how far a point lies off the cone, square to it, and the derivatives of that by a move of
// the axis, and by r and k, turned round.
func (c *flare) off(x, y, z float64) (f float64, slope [6]float64) {
	u, v, h := c.seen(x, y, z)
	d := norm(u, v)
	u, v = u/d, v/d
	steep := c.k / c.half
	cosine := 1 / math.Sqrt(1+float64(steep*steep))
	g := d - c.r - float64(c.k*h)
	// With a tilt the height changes too, by the distance times the angle.
	lever := h + float64(steep*d)/c.half
	slope = [6]float64{u, v, float64(lever * u), float64(lever * v), 1, h + float64(g*steep*cosine*cosine)/c.half}
	for i := range slope {
		slope[i] *= cosine
	}
	return float64(g * cosine), slope
}

// fit goes to the least squares by Gauss and Newton's method, its steps halved where the sum would grow.
func (c *flare) fit(x, y, z []float64) bool {
	n := float64(len(x))
	var s [6]float64
	best, last := *c, math.Inf(1)
	for range mostSteps {
		var a system
		var squares float64
		for i := range x {
			f, slope := c.off(x[i], y[i], z[i])
			squares += float64(f * f)
			for j := range slope {
				for k := range slope {
					a[j][k] += float64(slope[j] * slope[k])
				}
				a[j][6] += float64(slope[j] * f)
			}
		}
		if !(squares <= float64(last*(1+1e-9))+float64(n*float64(rounding*c.r)*float64(rounding*c.r))) {
			for k := range s {
				s[k] /= 2
			}
			*c = best
		} else {
			best, last = *c, squares
			for j := range 6 { // relative to the number of points, for the sake of the pivots
				for k := range a[j][:7] {
					a[j][k] /= n
				}
			}
			if !a.eliminate(6, s[:]) {
				return false
			}
		}
		c.pose = c.moved(move(s[:4]))
		c.r, c.k = c.r+s[4], c.k+s[5]
		if size := move(s[:4]).size() + math.Abs(s[4]) + math.Abs(s[5]); size <= float64(settled*c.r) {
			return true
		} else if !(size < float64(1e6*c.r)) {
			return false
		}
	}
	return false
}

// cone rounds a flare to a Cone.
func (w Wall) cone(f flare) (c Cone, err error) {
	least, most := math.Inf(1), math.Inf(-1)
	for i := range w.x {
		d, _ := f.off(w.x[i], w.y[i], w.z[i])
		least, most = min(least, d), max(most, d)
	}
	at := func(p WallPoint) float64 {
		v := w.from(p)
		_, _, h := f.seen(v[0], v[1], v[2])
		return 2 * (f.r + float64(f.k*h))
	}
	if c.Axis, err = w.axis(f.pose); err == nil {
		c.From, err = units.Of(at(c.Axis.From), units.Millimetre)
	}
	if err == nil {
		c.To, err = units.Of(at(c.Axis.To), units.Millimetre)
	}
	if err == nil {
		c.Deviation, err = units.Of(most-least, units.Millimetre)
	}
	if err != nil {
		return Cone{}, fmt.Errorf("form: cone beyond %v: %w", units.MaxLength, ErrArc)
	}
	c.Taper = c.From - c.To
	c.Angle = units.Angle(2 * math.Atan(math.Abs(f.k)/f.half))
	return c, nil
}
