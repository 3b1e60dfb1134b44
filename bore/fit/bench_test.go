// SPDX-License-Identifier: BSD-3-Clause

package fit_test

import (
	"fmt"
	"testing"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

var (
	benchBore   = uncertainty.Estimate{Value: 67_010 * units.Micrometre, Std: 2 * units.Micrometre}
	benchPiston = fit.Piston{Size: uncertainty.Estimate{Value: 66_970 * units.Micrometre, Std: units.Micrometre}}
	benchWarm   = fit.Warm{BoreAt: kelvins(60), PistonAt: kelvins(90), Bore: grows(11), Piston: grows(21)}
)

// formulas are the calls that a loop over many bores makes; none may allocate.
var formulas = []struct {
	name string
	call func() error
}{
	{"finish window", func() error { _, err := fit.FinishWindow(benchPiston, window); return err }},
	{"clearance", func() error { _, err := fit.Clearance(benchBore, benchPiston); return err }},
	{"warm clearance", func() error {
		_, err := benchWarm.HotClearance(benchBore, benchPiston)
		return err
	}},
	{"aim", func() error {
		_, err := fit.AimIn(units.Limits{Min: 67 * units.Millimetre, Max: 68 * units.Millimetre}, 5*units.Micrometre, fit.Tight)
		return err
	}},
	{"usual", func() error { _, err := fit.Usual(fit.CastAir, 67*units.Millimetre); return err }},
}

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

func BenchmarkMatch(b *testing.B) {
	for _, n := range []int{4, 12, 64} {
		var bores, pistons []units.Length
		for i := range n {
			bores = append(bores, 67*units.Millimetre+units.Length(i*7919%40)*units.Micrometre)
			pistons = append(pistons, 66_965*units.Micrometre+units.Length(i*104729%40)*units.Micrometre)
		}
		for _, k := range []struct {
			name    string
			pistons []units.Length
		}{{"sorted", pistons}, {"spare", append(pistons, 66_940*units.Micrometre)}} {
			b.Run(fmt.Sprintf("%s/%d", k.name, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := fit.Match(bores, k.pistons, window); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
