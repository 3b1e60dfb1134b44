// SPDX-License-Identifier: BSD-3-Clause

package house_test

import (
	"errors"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/form"
	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
	"borewright.example/oversize"
	"borewright.example/oversize/sleeve"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// TestSizesLeftOut: in every room a size of zero where one above it is needed is units.ErrNotGiven, one below zero
// is not.
func TestSizesLeftOut(t *testing.T) {
	const size = 70 * units.Millimetre
	estimate := func(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }
	window := units.Limits{Min: 30 * units.Micrometre, Max: 50 * units.Micrometre}
	setting := func(b, s units.Length) error {
		_, err := hone.Setting{Bore: b, Stroke: s, Spindle: 5 * units.Hertz, Stroking: hone.Cycles(units.Hertz)}.Crosshatch()
		return err
	}
	for name, refuse := range map[string]func(units.Length) error{
		"units: turning":     func(l units.Length) error { _, err := units.FrequencyFor(l, 1); return err },
		"material: standard": func(l units.Length) error { _, err := material.Comparison{Standard: l}.DialReading(size); return err },
		"bore: reading": func(l units.Length) error {
			_, err := bore.Analyse([]bore.Reading{{Diameter: l}}, bore.Gauge{})
			return err
		},
		"bore: setting size": func(l units.Length) error {
			_, err := bore.Gauge{Dial: bore.PlusIsLarger, Standard: bore.Standard{Size: l}}.Diameter(0)
			return err
		},
		"fit: piston": func(l units.Length) error {
			_, err := fit.Clearance(estimate(size), fit.Piston{Size: estimate(l)})
			return err
		},
		"fit: bore": func(l units.Length) error {
			_, err := fit.Clearance(estimate(l), fit.Piston{Size: estimate(size)})
			return err
		},
		"fit: bore of pistons": func(l units.Length) error {
			_, err := fit.PistonWindow(units.Limits{Min: l, Max: size}, window)
			return err
		},
		"fit: matching": func(l units.Length) error {
			_, err := fit.Match([]units.Length{l}, []units.Length{size}, window)
			return err
		},
		"fit: usual": func(l units.Length) error { _, err := fit.Usual(fit.CastAir, l); return err },
		"form: radius": func(l units.Length) error {
			_, err := form.FromRadii([]units.Length{l, size, size, size, size, size})
			return err
		},
		"hone: bore":   func(l units.Length) error { return setting(l, size) },
		"hone: stroke": func(l units.Length) error { return setting(size, l) },
		"hone: tool": func(l units.Length) error {
			_, err := hone.UsualTravel(hone.Run{Kind: hone.RigidStone, Depth: size, Tool: l, RoomTop: size, RoomBottom: size})
			return err
		},
		"surface: spacing": func(l units.Length) error { _, err := surface.FromHeights(l, make([]units.Length, 100)); return err },
		"rings: gap": func(l units.Length) error {
			_, err := rings.Gap{Measured: estimate(l), Bore: estimate(size)}.In(estimate(size))
			return err
		},
		"rings: bore of a gap": func(l units.Length) error {
			_, err := rings.Gap{Measured: estimate(units.Millimetre), Bore: estimate(l)}.In(estimate(size))
			return err
		},
		"rings: rule": func(l units.Length) error { _, _, err := rings.Rules(l); return err },
		"rings: groove": func(l units.Length) error {
			_, err := rings.Groove{Height: estimate(l)}.SideClearance(estimate(size))
			return err
		},
		"rings: section": func(l units.Length) error {
			_, err := rings.Section{Bore: size, Thickness: units.Millimetre, Height: l, Young: 100 * units.Gigapascal}.Tension(size/10, 0)
			return err
		},
		"rings: oval":       func(l units.Length) error { _, err := rings.Oval{Max: size, Min: l}.Round(); return err },
		"oversize: bore":    func(l units.Length) error { _, err := oversize.Displacement(l, size, 1); return err },
		"oversize: stroke":  func(l units.Length) error { _, err := oversize.Displacement(size, l, 1); return err },
		"oversize: wall":    func(l units.Length) error { _, err := oversize.HoopWall(l, 1, 10); return err },
		"oversize: rebored": func(l units.Length) error { _, err := oversize.ReboringAllowance(l); return err },
		"oversize: nominal": func(l units.Length) error {
			_, err := oversize.Choose(oversize.Engine{Wall: oversize.BareIron, Nominal: l}, make([]oversize.Cylinder, 1), uncertainty.Risk{})
			return err
		},
		"oversize: cut": func(l units.Length) error { _, err := (oversize.Shop{}).Cuts(l, 0, size); return err },
		"sleeve: seat":  func(l units.Length) error { _, err := sleeve.SeatFor(l, sleeve.Diametral{}); return err },
		"sleeve: class": func(l units.Length) error { _, err := sleeve.Tolerance(l, 7); return err },
		"sleeve: joint": func(l units.Length) error { _, err := sleeve.Joint{Bore: l, Seat: size}.Fit(); return err },
	} {
		if err := refuse(0); !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s of zero: %v", name, err)
		}
		if err := refuse(-1); err == nil || errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s below zero: %v", name, err)
		}
	}
}
