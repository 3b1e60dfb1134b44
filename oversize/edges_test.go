// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestEdges walks the ends of what an engine, a cylinder and the formulas may be given: the last that is taken, and the
// first that is not.
func TestEdges(t *testing.T) {
	const most = units.MaxLength / 10
	nominal := mm("67")
	tenth := nominal / 10
	engine := func(change func(*oversize.Engine)) error {
		e := pump()
		change(&e)
		_, err := oversize.Choose(e, []oversize.Cylinder{cylinder("1", mm("0.02"))}, uncertainty.Risk{})
		return err
	}
	one := func(change func(*oversize.Cylinder)) error {
		c := cylinder("1", mm("0.02"))
		change(&c)
		_, err := oversize.Choose(pump(), []oversize.Cylinder{c}, uncertainty.Risk{})
		return err
	}
	// bare is an engine without piston or clearance, for sizes that no piston suits.
	bare := func(nominal units.Length) error {
		e := oversize.Engine{Wall: oversize.BareIron, Nominal: nominal}
		at := exact(nominal)
		all := bore.Interval{Min: at, Max: at}
		c := oversize.Cylinder{Name: "1", Largest: at, Smallest: at, CleanUp: bore.CleanUp{Original: all, Worn: all}}
		_, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
		return err
	}
	// series has a piston for the largest size, 1 mm over, that much off the middle of its window.
	series := func(off units.Length) error {
		return engine(func(e *oversize.Engine) {
			e.Sizes = oversize.Metric()
			// The middle of the new bore is 67.0095, of the clearance 0.035, of the last step 0.125 mm.
			e.Sizes[3].Piston = fit.Piston{Size: exact(mm("67.9745") + off), Axis: fit.AcrossPin}
		})
	}
	cylinders := func(n int) error {
		cs := make([]oversize.Cylinder, n)
		for i := range cs {
			cs[i] = cylinder(strconv.Itoa(i), mm("0.02"))
		}
		_, err := oversize.Choose(pump(), cs, uncertainty.Risk{})
		return err
	}
	chamber := func(c oversize.Chamber) error { _, err := c.Compression(mm("67"), mm("49.5")); return err }
	const ccm = units.CubicCentimetre
	ratio := func(clearance units.Volume) error { _, err := oversize.Ratio(ccm, clearance); return err }
	hoop := func(bore units.Length, share float64) error {
		_, err := oversize.HoopWall(bore, units.Pressure(share*2), 1)
		return err
	}
	left := func(wall, shift units.Length) error {
		_, err := oversize.WallLeft(exact(wall), exact(mm("67")), mm("68"), shift)
		return err
	}
	for _, tt := range []struct {
		name string
		err  error
		want error // nil: taken
	}{
		{"greatest nominal", bare(most), nil},
		{"nominal beyond it", bare(most + 1), units.ErrRange},
		{"nominal of none", bare(0), units.ErrNotGiven},
		{"greatest service limit", engine(func(e *oversize.Engine) { e.Service = nominal + tenth }), nil},
		{"service limit beyond it", engine(func(e *oversize.Engine) { e.Service = nominal + tenth + 1 }), units.ErrRange},
		{"greatest worn clearance", engine(func(e *oversize.Engine) { e.WornClearance = tenth }), nil},
		{"worn clearance beyond it", engine(func(e *oversize.Engine) { e.WornClearance = tenth + 1 }), units.ErrRange},
		{"worn clearance of a fresh bore", engine(func(e *oversize.Engine) { e.WornClearance = e.Clearance.Max }), nil},
		{"worn clearance below it", engine(func(e *oversize.Engine) { e.WornClearance = e.Clearance.Max - 1 }), units.ErrCrossed},
		{"greatest overbore", engine(func(e *oversize.Engine) { e.MostOver = nominal }), nil},
		{"overbore beyond it", engine(func(e *oversize.Engine) { e.MostOver = nominal + 1 }), units.ErrRange},
		{"greatest least wall", engine(func(e *oversize.Engine) { e.LeastWall = nominal }), nil},
		{"wall beyond it", engine(func(e *oversize.Engine) { e.LeastWall = nominal + 1 }), units.ErrRange},
		{"greatest gasket hole", engine(func(e *oversize.Engine) { e.GasketHole = most }), nil},
		{"gasket hole beyond it", engine(func(e *oversize.Engine) { e.GasketHole = most + 1 }), units.ErrRange},
		{"greatest shift", engine(func(e *oversize.Engine) { e.MayShift = tenth }), nil},
		{"shift beyond it", engine(func(e *oversize.Engine) { e.MayShift = tenth + 1 }), units.ErrRange},
		{"greatest allowance", engine(func(e *oversize.Engine) { e.Honing = tenth }), nil},
		{"allowance beyond it", engine(func(e *oversize.Engine) { e.Honing = tenth + 1 }), units.ErrRange},
		{"allowance below none", engine(func(e *oversize.Engine) { e.Honing = -1 }), units.ErrRange},
		{"smallest new bore", engine(func(e *oversize.Engine) { e.NewBore.Min = nominal - tenth }), nil},
		{"new bore below it", engine(func(e *oversize.Engine) { e.NewBore.Min = nominal - tenth - 1 }), units.ErrRange},
		{"largest new bore", engine(func(e *oversize.Engine) { e.NewBore.Max = nominal + tenth }), nil},
		{"new bore beyond it", engine(func(e *oversize.Engine) { e.NewBore.Max = nominal + tenth + 1 }), units.ErrRange},
		{"least clearance of 1 pm", engine(func(e *oversize.Engine) { e.Clearance.Min = 1 }), nil},
		{"greatest size", engine(func(e *oversize.Engine) { e.Sizes = oversize.Series{{Over: nominal}} }), nil},
		{"size beyond it", engine(func(e *oversize.Engine) { e.Sizes = oversize.Series{{Over: nominal + 1}} }), units.ErrRange},
		{"piston half a step over the last size", series(mm("0.125")), nil},
		{"piston further over", series(mm("0.125") + 1), oversize.ErrPiston},
		{"piston nearer to the size below", series(-mm("0.125") - 1), oversize.ErrPiston},
		{"piston as near to both", series(-mm("0.125")), nil},

		{"cylinder at the greatest size", one(func(c *oversize.Cylinder) { c.Over = nominal }), nil},
		{"cylinder beyond it", one(func(c *oversize.Cylinder) { c.Over = nominal + 1 }), units.ErrRange},
		{"cylinder below none", one(func(c *oversize.Cylinder) { c.Over = -1 }), units.ErrRange},
		{"smallest bore", one(func(c *oversize.Cylinder) { c.Smallest.Value = nominal - tenth }), nil},
		{"bore below it", one(func(c *oversize.Cylinder) { c.Smallest.Value = nominal - tenth - 1 }), units.ErrRange},
		{"largest bore", one(func(c *oversize.Cylinder) { *c = cylinder("1", tenth) }), nil},
		{"bore beyond it", one(func(c *oversize.Cylinder) { *c = cylinder("1", tenth+1) }), units.ErrRange},
		{"greatest doubt", one(func(c *oversize.Cylinder) { c.Largest.Std = most / 100 }), nil},
		{"doubt beyond it", one(func(c *oversize.Cylinder) { c.Largest.Std = most/100 + 1 }), units.ErrRange},
		{"wall below none", one(func(c *oversize.Cylinder) { c.ThinnestWall.Value = -1 }), units.ErrRange},
		{"greatest wall", one(func(c *oversize.Cylinder) { c.ThinnestWall.Value = most }), nil},
		{"wall beyond it", one(func(c *oversize.Cylinder) { c.ThinnestWall.Value = most + 1 }), units.ErrRange},
		{"greatest shift of the clean-up", one(func(c *oversize.Cylinder) { c.CleanUp.Shift = tenth }), nil},
		{"shift of the clean-up beyond it", one(func(c *oversize.Cylinder) { c.CleanUp.Shift = tenth + 1 }), units.ErrRange},
		{"shift of the clean-up below none", one(func(c *oversize.Cylinder) { c.CleanUp.Shift = -1 }), units.ErrRange},

		{"hoop wall of 1 pm", hoop(2, 0.5), nil},
		{"hoop wall of nothing", hoop(2, 0.2), units.ErrRange},
		{"hoop wall of the bore", hoop(mm("67"), 1), nil},
		{"hoop wall beyond it", hoop(mm("67"), 1.001), units.ErrRange},
		{"greatest wall to bore", left(most, 0), nil},
		{"wall to bore beyond it", left(most+1, 0), units.ErrRange},
		{"no wall to bore", left(0, 0), units.ErrNotGiven},
		{"the least wall to bore", left(1, 0), nil},
		{"greatest shift to bore with", left(mm("3"), most), nil},
		{"shift beyond it to bore with", left(mm("3"), most+1), units.ErrRange},

		{"deck lowest", chamber(oversize.Chamber{Head: 10_000 * ccm, Deck: -most}), nil},
		{"deck highest", chamber(oversize.Chamber{Deck: most}), nil},
		{"deck higher", chamber(oversize.Chamber{Deck: most + 1}), units.ErrRange},
		{"gasket thickest", chamber(oversize.Chamber{Head: ccm, Gasket: most}), nil},
		{"gasket thicker", chamber(oversize.Chamber{Head: ccm, Gasket: most + 1}), units.ErrRange},
		{"gasket hole of the bore", chamber(oversize.Chamber{Head: ccm, Gasket: 1, GasketHole: mm("67")}), nil},
		{"gasket hole smaller", chamber(oversize.Chamber{Head: ccm, Gasket: 1, GasketHole: mm("67") - 1}), units.ErrRange},
		{"greatest gasket hole", chamber(oversize.Chamber{Head: ccm, Gasket: 1, GasketHole: units.MaxLength}), nil},
		{"gasket hole beyond it", chamber(oversize.Chamber{Head: ccm, Gasket: 1, GasketHole: units.MaxLength + 1}), units.ErrRange},
		{"greatest head", chamber(oversize.Chamber{Head: units.CubicMetre}), nil},
		{"head beyond it", chamber(oversize.Chamber{Head: units.CubicMetre * 1.0001}), units.ErrRange},
		{"port at the end of the stroke", chamber(oversize.Chamber{Head: ccm, PortTop: mm("49.5")}), nil},
		{"port below it", chamber(oversize.Chamber{Head: ccm, PortTop: mm("49.5") + 1}), units.ErrRange},
		{"port 1 pm down", chamber(oversize.Chamber{Head: ccm, PortTop: 1}), nil},

		{"most cylinders", cylinders(64), nil},
		{"more cylinders", cylinders(65), units.ErrRange},
		{"hoop wall of a bore of 1 pm", hoop(1, 0.9), nil},
		{"greatest clearance volume", ratio(1000 * units.CubicMetre), nil},
		{"clearance volume beyond it", ratio(1000.001 * units.CubicMetre), units.ErrRange},
	} {
		if !errors.Is(tt.err, tt.want) || tt.want == nil && tt.err != nil {
			t.Errorf("%s: %v; want %v", tt.name, tt.err, tt.want)
		}
	}
}

// TestTimeWantsAllThree: the time of a cut is left out where length, feed or speed is not given, and none of them makes a fault.
func TestTimeWantsAllThree(t *testing.T) {
	full := oversize.Shop{MostDepth: mm("0.1"), FinishBore: mm("0.05"), Length: mm("90"), Feed: mm("0.1"), Spindle: 300 * units.PerMinute}
	for i, change := range []func(*oversize.Shop){
		func(*oversize.Shop) {}, func(s *oversize.Shop) { s.Length = 0 }, func(s *oversize.Shop) { s.Feed = 0 }, func(s *oversize.Shop) { s.Spindle = 0 },
	} {
		shop := full
		change(&shop)
		list, err := shop.Cuts(mm("67.02"), mm("67.46"), mm("67.5"))
		if err != nil || len(list) == 0 || (list[0].Time != 0) != (i == 0) || (list[1].Time != 0) != (i == 0) {
			t.Errorf("%+v: %+v, %v", shop, list, err)
		}
	}
}

// TestPitsHaveADepth: a pit is deeper than nothing and no deeper than a tenth of the bore, which the error says.
func TestPitsHaveADepth(t *testing.T) {
	for below, sound := range map[units.Length]bool{-1: false, 0: false, 1: true, mm("6.7"): true, mm("6.7") + 1: false} {
		c := cylinder("1", mm("0.01"))
		c.CleanUp.Pits = append(c.CleanUp.Pits, bore.WornPit{Pit: bore.Pit{Below: below}})
		_, err := oversize.Choose(pump(), []oversize.Cylinder{c}, uncertainty.Risk{})
		if sound != (err == nil) || err != nil && (!errors.Is(err, units.ErrRange) || !strings.Contains(err.Error(), "up to 6.7 mm")) {
			t.Errorf("a pit of %v: %v", below, err)
		}
	}
}
