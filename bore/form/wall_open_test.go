// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// Of a wall that is open on one side, or too wild for its points to exclude anything, the contacts alone reach, and as far as both ends of the axis may move at once: what they
// prove is of a move by the squares of both, so that either end has a √2th of it. Nothing bounds what is farther off.
func TestReachOfAnOpenWall(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 5))
	var reached [2]int
	for k := range 18 {
		radius, deep, arc, rough := 20+20*r.Float64(), 20+80*r.Float64(), math.Pi*(0.7+0.25*r.Float64()), 0.01
		if k%3 == 2 {
			arc, rough = 2*math.Pi, 3
		}
		var ps [][3]float64
		for level := range 5 {
			for i := range 20 {
				s, c := math.Sincos(arc * (float64(i) + r.Float64()) / 20)
				d := radius + rough*r.NormFloat64()
				ps = append(ps, [3]float64{d * c, d * s, deep * float64(level) / 4})
			}
		}
		w := wallOf(t, ps)
		for _, kind := range minimax {
			c, err := w.Cylinder(kind)
			if err != nil {
				continue // not every arc has one
			}
			e := endsOf(c.Axis)
			dir := vectorOf(e[3]-e[0], e[4]-e[1], e[5]-e[2])
			low, high := math.Inf(1), math.Inf(-1)
			for _, p := range ps {
				h := p[0]*dir[0] + p[1]*dir[1] + p[2]*dir[2]
				low, high = min(low, h), max(high, h)
			}
			in := c.Inner.In(mm)
			if kind == form.MCCY {
				in = c.Outer.In(mm) // of the contacts, which all lie on it
			}
			growth, stiff := form.Growth(c, w)
			proved := form.Margin{Growth: growth, Stiff: stiff, In: in, Out: c.Outer.In(mm), Length: high - low, Kind: kind}.Reach()
			open := c.CYLt // nothing is narrower than nothing
			if kind != form.MZCY {
				open = units.MaxLength
			}
			if c.Certificate.Bound != open && rough < 1 {
				t.Errorf("%v of %.3g°: bound %v", kind, arc*180/math.Pi, c.Certificate.Bound)
			}
			if c.Certificate.Bound != open || rough > 1 && kind == form.MZCY { // the points exclude something after all
				continue
			}
			reach := c.Certificate.Reach.In(mm)
			if reach > 1.01*proved/math.Sqrt2+1e-9 {
				t.Errorf("%v of %.3g°: reach %v of a move of %v", kind, arc*180/math.Pi, c.Certificate.Reach, proved)
			}
			if reach > 0.5*proved && proved > 1e-4 {
				reached[k%3/2]++
			}
		}
	}
	if min(reached[0], reached[1]) < 3 {
		t.Errorf("%d cylinders of open walls and of wild ones with a reach", reached)
	}
}
