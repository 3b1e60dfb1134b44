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

// TestSizesLeftOut: in every room a size of zero where one above it is needed is units.ErrNotGiven, one below zero is not.
// Bands of what is usual take any bore, what scales a length takes any length, and a gap that is foretold may be below zero.
func TestSizesLeftOut(t *testing.T) {
	const size = 70 * units.Millimetre
	estimate := func(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }
	window := units.Limits{Min: 30 * units.Micrometre, Max: 50 * units.Micrometre}
	class := func(s string) sleeve.Class {
		c, err := sleeve.ParseClass(s)
		if err != nil {
			t.Fatal(err)
		}
		return c
	}
	joint := sleeve.Joint{
		Bore: size, Seat: size + 6*units.Millimetre, Outer: units.Limits{Min: 100 * units.Millimetre, Max: 100 * units.Millimetre},
		Interference: sleeve.Diametral{Min: 40 * units.Micrometre, Max: 60 * units.Micrometre}, Sleeve: material.GreyIron(), Barrel: material.GreyIron(),
	}
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
		"bore: dial": func(l units.Length) error {
			_, err := bore.Gauge{Dial: bore.PlusIsLarger, Standard: bore.Standard{Size: size}}.DialReading(l)
			return err
		},
		"bore: wear": func(l units.Length) error {
			_, err := bore.WearRate([]bore.Survey{{At: 1, Size: estimate(l)}, {At: 2, Size: estimate(size)}}, 1)
			return err
		},
		"bore: limit of wear": func(l units.Length) error {
			_, _, err := bore.WornOutAt([]bore.Survey{{At: 1, Size: estimate(size)}, {At: 2, Size: estimate(size + 1)}}, l, 0.05)
			return err
		},
		"fit: hot bore": func(l units.Length) error {
			_, err := fit.Warm{}.HotClearance(estimate(l), fit.Piston{Size: estimate(size)})
			return err
		},
		"fit: hot piston": func(l units.Length) error {
			_, err := fit.Warm{}.HotClearance(estimate(size), fit.Piston{Size: estimate(l)})
			return err
		},
		"fit: strip": func(l units.Length) error {
			_, err := fit.FeelerRule{Pull: 10 * units.Newton, Adds: units.Micrometre}.Clearance(l, 5*units.Newton)
			return err
		},
		"surface: diameter": func(l units.Length) error {
			p, err := surface.FromHeights(units.Micrometre, make([]units.Length, 100))
			if err != nil {
				t.Fatal(err)
			}
			_, err = p.Unroll(l)
			return err
		},
		"rings: rim": func(l units.Length) error {
			_, err := rings.GrooveHeight(estimate(units.Millimetre/10), estimate(l))
			return err
		},
		"rings: change from": func(l units.Length) error {
			_, err := rings.DiameterChange(estimate(l), estimate(units.Millimetre))
			return err
		},
		"rings: change to": func(l units.Length) error {
			_, err := rings.DiameterChange(estimate(units.Millimetre), estimate(l))
			return err
		},
		"rings: thick": func(l units.Length) error {
			_, err := rings.Thickness(l, 100*units.Pascal, units.Megapascal)
			return err
		},
		"rings: hot gap": func(l units.Length) error {
			_, err := rings.Warm{}.HotGap(estimate(l), estimate(size))
			return err
		},
		"rings: hot bore": func(l units.Length) error { _, err := rings.Warm{}.Change(l); return err },
		"rings: least":    func(l units.Length) error { _, err := rings.Warm{}.Least(l, 0); return err },
		"oversize: crank": func(l units.Length) error { _, err := oversize.PistonTravel(l, 2*size, 1); return err },
		"oversize: rod":   func(l units.Length) error { _, err := oversize.PistonTravel(size, l, 1); return err },
		"oversize: chamber": func(l units.Length) error {
			_, err := oversize.Chamber{Head: units.CubicCentimetre}.Compression(l, size)
			return err
		},
		"oversize: head": func(l units.Length) error { _, err := (oversize.Chamber{}).HeadFor(size, l, 8); return err },
		"oversize: left": func(l units.Length) error {
			_, err := oversize.WallLeft(estimate(l), estimate(size), size+1, 0)
			return err
		},
		"sleeve: classes": func(l units.Length) error {
			_, err := sleeve.DiametralFromClasses(l, class("H7"), class("s6"))
			return err
		},
		"sleeve: sizes": func(l units.Length) error { _, err := class("H7").Sizes(l); return err },
		"sleeve: measured": func(l units.Length) error {
			_, err := sleeve.DiametralFromMeasured(estimate(size), estimate(l))
			return err
		},
		"sleeve: finish": func(l units.Length) error { _, err := joint.Hone(l); return err },
		"sleeve: pressed": func(l units.Length) error {
			_, err := joint.Press(l, sleeve.Range[float64]{Min: 0.1, Max: 0.2})
			return err
		},
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
