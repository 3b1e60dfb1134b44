// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"fmt"
	"testing"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// benchEngine returns an engine of n worn cylinders with eight sizes on offer; the last serves.
func benchEngine(n int, dof float64) (oversize.Engine, []oversize.Cylinder) {
	e := pump()
	e.Sizes = nil
	for i := range 8 {
		e.Sizes = append(e.Sizes, oversize.Size{Over: units.Length(i+1) * units.Millimetre / 8})
	}
	cs := make([]oversize.Cylinder, n)
	for i := range cs {
		c := cylinder(fmt.Sprint(i+1), mm("0.9")-units.Length(i)*units.Micrometre)
		own := dof
		if dof > 0 {
			own += float64(i) / 7 // no two alike
		}
		doubt := func(l units.Length) uncertainty.Estimate {
			return uncertainty.Estimate{Value: l, Std: units.Micrometre, DoF: own}
		}
		c.Largest, c.Smallest = doubt(c.Largest.Value), doubt(c.Smallest.Value)
		all := bore.Interval{Min: c.Largest, Max: c.Largest}
		c.CleanUp = bore.CleanUp{Original: all, Worn: all}
		c.ThinnestWall = doubt(mm("3"))
		cs[i] = c
	}
	return e, cs
}

func BenchmarkChoose(b *testing.B) {
	for _, n := range []int{1, 4, 12} {
		for _, dof := range []float64{0, 9} {
			e, cs := benchEngine(n, dof)
			b.Run(fmt.Sprintf("cylinders=%d/sizes=8/dof=%v", n, dof), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					c, err := oversize.Choose(e, cs, uncertainty.Risk{})
					if err != nil || c.Over != mm("1") {
						b.Fatal(c, err)
					}
				}
			})
		}
	}
}

// formulas are the scalar calls; none may allocate.
var formulas = []struct {
	name string
	call func() error
}{
	{"swept", func() error { _, err := oversize.Displacement(67*units.Millimetre, 50*units.Millimetre, 1); return err }},
	{"displacement", func() error {
		_, err := oversize.Displacement(67*units.Millimetre, 50*units.Millimetre, 4)
		return err
	}},
	{"ratio", func() error {
		_, err := oversize.Ratio(176*units.CubicCentimetre, 20*units.CubicCentimetre)
		return err
	}},
	{"clearance volume", func() error { _, err := oversize.ClearanceVolume(176*units.CubicCentimetre, 9); return err }},
	{"compression", func() error {
		_, err := benchChamber.Compression(67*units.Millimetre, 50*units.Millimetre)
		return err
	}},
	{"head for ratio", func() error {
		_, err := benchChamber.HeadFor(67*units.Millimetre, 50*units.Millimetre, 9)
		return err
	}},
	{"travel", func() error {
		_, err := oversize.PistonTravel(50*units.Millimetre, 100*units.Millimetre, 80*units.Degree)
		return err
	}},
	{"wall left", func() error {
		_, err := oversize.WallLeft(benchWall, benchSize, 68*units.Millimetre, 0)
		return err
	}},
	{"boring time", func() error {
		_, err := oversize.BoringTime(90*units.Millimetre, units.Millimetre/10, 5*units.Hertz, 3)
		return err
	}},
}

var (
	benchChamber = oversize.Chamber{Head: 16 * units.CubicCentimetre, Deck: units.Millimetre, Gasket: units.Millimetre, GasketHole: 70 * units.Millimetre}
	benchWall    = uncertainty.Estimate{Value: 3 * units.Millimetre, Std: 50 * units.Micrometre}
	benchSize    = uncertainty.Estimate{Value: 67 * units.Millimetre, Std: units.Micrometre}
)

func BenchmarkFormulas(b *testing.B) {
	for _, f := range formulas {
		b.Run(f.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := f.call(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func TestFormulasDoNotAllocate(t *testing.T) {
	for _, f := range formulas {
		if n := testing.AllocsPerRun(100, func() { _ = f.call() }); n != 0 {
			t.Errorf("%s: %v allocations", f.name, n)
		}
	}
}
