// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"errors"
	"math"
	"math/rand/v2"

	"pgregory.net/rapid"

	"borewright.example/bore/form"
)

// minimax are the three minimax cylinders.
var minimax = []form.Reference{form.MZCY, form.MCCY, form.MICY}

// boreWall makes points of a wall: lobes, taper and barrel of a size given, scatter, off the axis and
// leaning, on levels that are not quite even.
func boreWall(r *rand.Rand, levels, around int, radius, length, size float64) [][3]float64 {
	lean, toward, shift := 1e-3*r.Float64(), 2*math.Pi*r.Float64(), r.Float64()
	two, three := 2*math.Pi*r.Float64(), 2*math.Pi*r.Float64()
	oval, lobes, taper, barrel := r.Float64(), r.Float64()/2, r.Float64()-0.5, r.Float64()
	var ps [][3]float64
	for l := range levels {
		at := float64(l) / float64(levels-1)
		for k := range around {
			a := 2 * math.Pi * (float64(k) + 0.4*r.Float64()) / float64(around)
			d := radius + size*(oval*math.Cos(2*a+two)+lobes*math.Cos(3*a+three)+taper*at+barrel*at*(1-at)+0.2*r.NormFloat64())
			z := length * (at + 0.01*(r.Float64()-0.5))
			ps = append(ps, [3]float64{shift + z*lean*math.Cos(toward) + d*math.Cos(a), -shift/2 + z*lean*math.Sin(toward) + d*math.Sin(a), z + 10})
		}
	}
	return ps
}

// someWall makes such points of a wall of any usual size and form.
func someWall(r *rand.Rand) (ps [][3]float64, radius float64) {
	radius = 20 + 30*r.Float64()
	return boreWall(r, 2+r.IntN(4), 6+r.IntN(12), radius, radius*(0.6+3*r.Float64()), radius*math.Pow(10, -2-3*r.Float64())), radius
}

// drawWall draws such points.
func drawWall(t *rapid.T, least, most int) [][3]float64 {
	r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 5))
	levels := rapid.IntRange(2, 6).Draw(t, "levels")
	around := rapid.IntRange(least, most).Draw(t, "around")
	radius := rapid.Float64Range(5, 200).Draw(t, "radius")
	return boreWall(r, levels, around, radius, radius*rapid.Float64Range(0.5, 4).Draw(t, "length"),
		radius*rapid.SampledFrom([]float64{1e-6, 1e-4, 1e-3, 5e-3}).Draw(t, "size"))
}

// cylinders returns all four, each checked.
func cylinders(t failer, w form.Wall) map[form.Reference]form.Cylinder {
	t.Helper()
	cs := map[form.Reference]form.Cylinder{}
	for _, kind := range append(minimax, form.LSCY) {
		c, err := w.Cylindricity(kind)
		cs[kind] = must(t, c, err)
		if err := c.Check(w); err != nil && !errors.Is(err, form.ErrUnproved) {
			t.Fatal(err)
		}
	}
	return cs
}
