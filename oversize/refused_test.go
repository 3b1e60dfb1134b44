// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"errors"
	"math"
	"testing"

	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func TestFormulasRefuse(t *testing.T) {
	const ccm = units.CubicCentimetre
	nan, inf := math.NaN(), math.Inf(1)
	bore, stroke := mm("67"), mm("50")
	swept := func(b, s units.Length) error { _, err := oversize.Displacement(b, s, 1); return err }
	displacement := func(b units.Length, n int) error { _, err := oversize.Displacement(b, stroke, n); return err }
	ratio := func(v, c units.Volume) error { _, err := oversize.Ratio(v, c); return err }
	clearance := func(v units.Volume, r float64) error { _, err := oversize.ClearanceVolume(v, r); return err }
	compression := func(c oversize.Chamber) error { _, err := c.Compression(bore, stroke); return err }
	head := func(c oversize.Chamber, r float64) error { _, err := c.HeadFor(bore, stroke, r); return err }
	travel := func(s, r units.Length, a units.Angle) error { _, err := oversize.PistonTravel(s, r, a); return err }
	wall := func(w, now uncertainty.Estimate, to, shift units.Length) error {
		_, err := oversize.WallLeft(w, now, to, shift)
		return err
	}
	hoop := func(d units.Length, p, s units.Pressure) error { _, err := oversize.HoopWall(d, p, s); return err }
	allowance := func(d units.Length) error { _, err := oversize.ReboringAllowance(d); return err }
	plan := func(s oversize.Shop, from, bored, to units.Length) error {
		_, err := s.Cuts(from, bored, to)
		return err
	}
	minutes := func(l, f units.Length, n units.Frequency, passes int) error {
		_, err := oversize.BoringTime(l, f, n, passes)
		return err
	}
	sixteen := oversize.Chamber{Head: 16 * ccm}
	with := func(f func(*oversize.Chamber)) oversize.Chamber { c := sixteen; f(&c); return c }
	deep := oversize.Shop{MostDepth: mm("0.1")}
	timed := oversize.Shop{MostDepth: mm("0.1"), Length: mm("90"), Feed: mm("0.1"), Spindle: units.Frequency(nan)}
	for _, test := range []struct {
		name string
		err  error
		want error
	}{
		{"bore of nothing", swept(0, stroke), units.ErrNotGiven},
		{"negative stroke", swept(bore, -1), units.ErrRange},
		{"bore of 11 m", swept(11*units.Metre, stroke), units.ErrRange},
		{"displacement of nothing", displacement(0, 4), units.ErrNotGiven},
		{"no cylinders", displacement(bore, 0), units.ErrRange},
		{"65 cylinders", displacement(bore, 65), units.ErrRange},
		{"ratio of no swept volume", ratio(0, ccm), units.ErrNotGiven},
		{"ratio of NaN", ratio(units.Volume(nan), ccm), units.ErrRange},
		{"ratio of infinity", ratio(units.Volume(inf), ccm), units.ErrRange},
		{"ratio over nothing", ratio(ccm, 0), oversize.ErrNoSpace},
		{"ratio over NaN", ratio(ccm, units.Volume(nan)), oversize.ErrNoSpace},
		{"ratio over infinity", ratio(ccm, units.Volume(inf)), units.ErrRange},
		{"ratio over next to nothing", ratio(ccm, 5e-324), units.ErrRange},
		{"clearance for a ratio of one", clearance(ccm, 1), units.ErrRange},
		{"clearance for NaN", clearance(ccm, nan), units.ErrRange},
		{"clearance for 1001", clearance(ccm, 1001), units.ErrRange},
		{"clearance of NaN", clearance(units.Volume(nan), 9), units.ErrRange},
		{"head NaN", compression(oversize.Chamber{Head: units.Volume(nan)}), units.ErrRange},
		{"head negative", compression(oversize.Chamber{Head: -ccm, Deck: mm("5")}), units.ErrRange},
		{"crown infinite", compression(with(func(c *oversize.Chamber) { c.Crown = units.Volume(inf) })), units.ErrRange},
		{"crown fills the head", compression(with(func(c *oversize.Chamber) { c.Crown = c.Head })), oversize.ErrNoSpace},
		{"deck of 2 m", compression(with(func(c *oversize.Chamber) { c.Deck = 2 * units.Metre })), units.ErrRange},
		{"gasket negative", compression(with(func(c *oversize.Chamber) { c.Gasket = -1 })), units.ErrRange},
		{"hole smaller than the bore", compression(with(func(c *oversize.Chamber) { c.Gasket = 1; c.GasketHole = bore - 1 })), units.ErrRange},
		{"port above the piston", compression(with(func(c *oversize.Chamber) { c.Deck = mm("5"); c.PortTop = mm("5") })), units.ErrRange},
		{"port below the stroke", compression(with(func(c *oversize.Chamber) { c.PortTop = stroke + 1 })), units.ErrRange},
		{"port that leaves nothing", compression(with(func(c *oversize.Chamber) { c.PortTop = -1 })), units.ErrRange},
		{"head for a ratio of one", head(sixteen, 1), units.ErrRange},
		{"head for too high a ratio", head(oversize.Chamber{Deck: mm("10")}, 20), oversize.ErrNoSpace},
		{"head over a wide gasket", head(oversize.Chamber{Gasket: 1, GasketHole: 1}, 9), units.ErrRange},
		{"head from a port out of reach", head(oversize.Chamber{PortTop: mm("60")}, 9), units.ErrRange},
		{"travel of no stroke", travel(0, mm("100"), 1), units.ErrNotGiven},
		{"travel on no rod", travel(stroke, 0, 1), units.ErrNotGiven},
		{"rod of half the stroke", travel(stroke, stroke/2, 1), units.ErrRange},
		{"crank NaN", travel(stroke, mm("100"), units.Angle(nan)), units.ErrNotFinite},
		{"crank infinite", travel(stroke, mm("100"), units.Angle(inf)), units.ErrNotFinite},
		{"wall negative", wall(exact(-1), exact(bore), bore, 0), units.ErrRange},
		{"wall's doubt negative", wall(uncertainty.Estimate{Value: mm("3"), Std: -1}, exact(bore), bore, 0), uncertainty.ErrStd},
		{"wall of no bore", wall(exact(mm("3")), exact(0), bore, 0), units.ErrNotGiven},
		{"wall after no bore", wall(exact(mm("3")), exact(bore), 0, 0), units.ErrNotGiven},
		{"shift negative", wall(exact(mm("3")), exact(bore), bore, -1), units.ErrRange},
		{"hoop of no bore", hoop(0, units.Bar, units.Megapascal), units.ErrNotGiven},
		{"hoop of no pressure", hoop(bore, 0, units.Megapascal), units.ErrRange},
		{"hoop of no stress", hoop(bore, units.Bar, 0), units.ErrRange},
		{"hoop of infinite stress", hoop(bore, units.Bar, units.Pressure(inf)), units.ErrRange},
		{"hoop of NaN", hoop(bore, units.Pressure(nan), units.Megapascal), units.ErrRange},
		{"hoop thicker than the bore", hoop(bore, 3*units.Megapascal, units.Megapascal), units.ErrRange},
		{"allowance below the table", allowance(mm("75") - 1), units.ErrRange},
		{"allowance above the table", allowance(mm("500") + 1), units.ErrRange},
		{"plan from nothing", plan(deep, 0, bore, bore), units.ErrNotGiven},
		{"plan to nothing", plan(deep, bore, 0, 0), units.ErrNotGiven},
		{"plan bored below the present size", plan(deep, bore, bore-1, bore), units.ErrRange},
		{"plan finished below the bored size", plan(deep, bore, bore+2, bore+1), units.ErrRange},
		{"plan finished below the present size", plan(deep, bore, 0, bore-1), units.ErrRange},
		{"plan with no depth of cut", plan(oversize.Shop{}, bore, mm("68"), mm("68")), units.ErrRange},
		{"plan of a million cuts", plan(oversize.Shop{MostDepth: units.Nanometre}, bore, mm("68"), mm("68")), units.ErrRange},
		{"plan with a negative finish", plan(oversize.Shop{MostDepth: 1, FinishBore: -1}, bore, mm("68"), mm("68")), units.ErrRange},
		{"plan that hones more than is left", plan(oversize.Shop{FinishHone: mm("0.03")}, bore, 0, mm("67.02")), units.ErrRange},
		{"plan at no speed, rough", plan(timed, bore, mm("68"), mm("68")), units.ErrRange},
		{"plan at no speed, finish", plan(oversize.Shop{FinishBore: mm("1"), Length: 1, Feed: 2, Spindle: 1}, bore, mm("68"), mm("68")), units.ErrRange},
		{"time for no length", minutes(0, 1, 1, 1), units.ErrNotGiven},
		{"time at no feed", minutes(mm("90"), 0, 5, 1), units.ErrNotGiven},
		{"time at a feed above the length", minutes(1, 2, 5, 1), units.ErrRange},
		{"time at no speed", minutes(mm("90"), mm("0.1"), 0, 1), units.ErrRange},
		{"time at infinite speed", minutes(mm("90"), mm("0.1"), units.Frequency(inf), 1), units.ErrRange},
		{"time for no passes", minutes(mm("90"), mm("0.1"), 5, 0), units.ErrRange},
		{"years", minutes(units.Metre, 1, 1e-9, 1), units.ErrRange},
	} {
		if !errors.Is(test.err, test.want) {
			t.Errorf("%s: %v; want %v", test.name, test.err, test.want)
		}
	}
}
