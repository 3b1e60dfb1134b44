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
	benchWarm   = fit.Warm{Bore: kelvins(60), Piston: kelvins(90), BoreMaterial: grows(11), PistonMaterial: grows(21)}
)

// formulas are the calls that a loop over many bores makes; none may allocate.
var formulas = []struct {
	name string
	call func() error
}{
	{"finish window", func() error { _, err := fit.FinishWindow(benchPiston, window); return err }},
	{"clearance", func() error { _, err := fit.Clearance(benchBore, benchPiston); return err }},
	{"warm clearance", func() error {
		_, err := benchWarm.Clearance(benchBore, benchPiston)
		return err
	}},
	{"aim", func() error {
		_, err := fit.Tight.Size(units.Limits{Min: 67 * units.Millimetre, Max: 68 * units.Millimetre}, 5*units.Micrometre)
		return err
	}},
	{"usual", func() error { _, err := fit.Usual(fit.CastAir, 67*units.Millimetre); return err }},
	{"deck", func() error {
		s := fit.Stack{Block: 180 * units.Millimetre, Stroke: 50 * units.Millimetre, Rod: 110 * units.Millimetre, PinHeight: 40 * units.Millimetre}
		_, err := s.Deck()
		return err
	}},
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
		m := fit.Matching{Window: window}
		for i := range n {
			m.Bores = append(m.Bores, 67*units.Millimetre+units.Length(i*7919%40)*units.Micrometre)
			m.Pistons = append(m.Pistons, 66_965*units.Micrometre+units.Length(i*104729%40)*units.Micrometre)
		}
		barred := m
		barred.Barred = []fit.Pair{{Bore: 0, Piston: 0}}
		for _, k := range []struct {
			name string
			m    fit.Matching
		}{{"sorted", m}, {"barred", barred}} {
			b.Run(fmt.Sprintf("%s/%d", k.name, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := k.m.Match(); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
