// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"math"
	"math/rand/v2"
	"slices"

	"borewright.example/bore"
	"borewright.example/units"
)

// A shop is a gauge as it is described, and what it really does: every input that the description
// gives with a spread gets a true value within it.
type shop struct {
	g             bore.Gauge
	repeatability float64 // true, in µm
	known         bool    // and told
}

// errors draws one session: a function from a true size at 20 °C, in µm, and a number of repeats,
// to what the gauge shows.
func (s shop) session(rnd *rand.Rand) func(size float64, repeats int) []units.Length {
	flat := func(half float64) float64 { return half * (2*rnd.Float64() - 1) }
	above := func(t bore.Temperature) float64 {
		v := 0.0
		if !t.Value.IsZero() {
			v = float64(t.Value.AboveReference())
		}
		return v + flat(float64(t.Within))
	}
	g := s.g
	ls := g.Standard.Size.In(um) + rnd.NormFloat64()*g.Standard.Std.In(um)
	as := float64(g.Standard.Material.Expansion) + flat(float64(g.Standard.Material.Within))
	ag := float64(g.Material.Expansion) + flat(float64(g.Material.Within))
	ap := float64(g.Part.Expansion) + flat(float64(g.Part.Within))
	standard, set, use, part := above(g.Standard.At), above(g.SetAt), above(g.UsedAt), above(g.PartAt)
	return func(size float64, repeats int) []units.Length {
		// What this place has to itself: its temperature, the dial where it stands, the zero.
		place := part + flat(float64(g.PlaceSpread))
		own := flat(g.DialError.In(um)) + flat(g.Drift.In(um))
		// The gauge compares the warm wall with the warm standard, carried over by its rod.
		deviation := size*(1+ap*place) - ls*(1+as*standard)*(1+ag*(use-set)) + own
		shown := make([]units.Length, repeats)
		for i := range shown {
			d := units.Length(math.Round((deviation + rnd.NormFloat64()*s.repeatability) * float64(um)))
			shown[i] = g.Standard.Size + d.Round(g.Resolution)
		}
		return shown
	}
}

func (s shop) described() bore.Gauge {
	g := s.g
	if s.known {
		g.Repeatability = millimetres(s.repeatability / 1000)
	}
	return g
}

// A truth is true sizes at 20 °C in µm by depth and axis.
type truth [][]float64

func (tr truth) read(rnd *rand.Rand, s shop, repeats int) []bore.Reading {
	show := s.session(rnd)
	var rs []bore.Reading
	for d, axes := range tr {
		for a, size := range axes {
			for _, shown := range show(size, repeats) {
				rs = append(rs, bore.Reading{
					Depth: units.Length(10+20*d) * mm, Axis: bore.Axis(degrees(180 * float64(a) / float64(len(axes)))), Diameter: shown,
				})
			}
		}
	}
	return rs
}

func (tr truth) extremes() (least, greatest float64) {
	least, greatest = math.Inf(1), math.Inf(-1)
	for _, axes := range tr {
		least, greatest = min(least, slices.Min(axes)), max(greatest, slices.Max(axes))
	}
	return least, greatest
}

func (tr truth) ovality() (most float64) {
	for _, axes := range tr {
		most = max(most, slices.Max(axes)-slices.Min(axes))
	}
	return most
}

func (tr truth) taper() (most float64) {
	for a := range tr[0] {
		most = max(most, math.Abs(tr[0][a]-tr[len(tr)-1][a]))
	}
	return most
}

// belly is the greatest difference of two depths along an axis.
func (tr truth) belly() (most float64) {
	for a := range tr[0] {
		low, high := math.Inf(1), math.Inf(-1)
		for d := range tr {
			low, high = min(low, tr[d][a]), max(high, tr[d][a])
		}
		most = max(most, high-low)
	}
	return most
}

func shops() map[string]shop {
	fine := shopGauge()
	fine.Resolution = 0
	coarse := shopGauge()
	coarse.Resolution = 10 * um
	plain := bore.Gauge{Standard: bore.Standard{Size: 67 * mm, Std: 2 * um}}
	return map[string]shop{
		"everything, repeats": {g: fine, repeatability: 2},
		"coarse dial":         {g: coarse, repeatability: 3, known: true},
		"repeats alone":       {g: plain, repeatability: 3},
	}
}
