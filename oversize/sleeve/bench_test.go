// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"testing"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// benchJoint has every range, so that nothing is short.
func benchJoint() sleeve.Joint {
	j := demoJoint()
	j.Outer.Max = 110 * mm
	j.Interference = sleeve.Diametral{Min: 29 * um, Max: 78 * um}
	j.Sleeve.Within, j.Barrel.Within = 0.6e-6, 1e-6
	return j
}

// calls are the functions of the package, each ready to run.
func calls() map[string]func() error {
	j := benchJoint()
	hot := sleeve.Warm{Sleeve: 433.15, Barrel: 413.15, Gas: 5 * units.Megapascal}
	with := sleeve.Assembling{Slip: 50 * um, Sleeve: 273.15, Barrel: 353.15, Stands: 523.15}
	h7, s6 := must(sleeve.ParseClass("H7")), must(sleeve.ParseClass("s6"))
	outside, seat := uncertainty.Estimate{Value: 73060 * um, Std: um}, uncertainty.Estimate{Value: 73 * mm, Std: um}
	return map[string]func() error{
		"Fit":                   func() error { _, err := j.Fit(); return err },
		"Stresses":              func() error { _, err := j.Stresses(hot); return err },
		"LooseAt":               func() error { _, err := j.LooseAt(hot); return err },
		"Growth":                func() error { _, err := j.Growth(383.15); return err },
		"HeatTo":                func() error { _, err := j.HeatTo(with); return err },
		"ChillTo":               func() error { _, err := j.ChillTo(with); return err },
		"TakeOut":               func() error { _, err := j.TakeOut(with); return err },
		"Hone":                  func() error { _, err := j.Hone(demoSize); return err },
		"Press":                 func() error { _, err := j.Press(90*mm, demoFriction); return err },
		"Tolerance":             func() error { _, err := sleeve.Tolerance(73*mm, 7); return err },
		"Sizes":                 func() error { _, err := s6.Sizes(73 * mm); return err },
		"ParseClass":            func() error { _, err := sleeve.ParseClass("s11"); return err },
		"DiametralFromClasses":  func() error { _, err := sleeve.DiametralFromClasses(73*mm, h7, s6); return err },
		"DiametralFromMeasured": func() error { _, err := sleeve.DiametralFromMeasured(outside, seat); return err },
	}
}

func Benchmark(b *testing.B) {
	for name, call := range calls() {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := call(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// TestNoAllocs: none of them allocates.
func TestNoAllocs(t *testing.T) {
	for name, call := range calls() {
		if err := call(); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if n := testing.AllocsPerRun(100, func() { _ = call() }); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}
