// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"fmt"
	"testing"

	"borewright.example/bore"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func BenchmarkScalars(b *testing.B) {
	g := gap(uncertainty.Estimate{Value: length("0.3 mm"), Std: length("0.01 mm"), DoF: 9}, exact("67 mm"))
	wider := uncertainty.Estimate{Value: length("0.36 mm"), Std: length("0.01 mm"), DoF: 9}
	d := uncertainty.Estimate{Value: length("67.02 mm"), Std: length("0.002 mm")}
	s := section()
	r := must(s.Tension(length("8 mm"), 0))
	h := rings.Warm{Ring: plain(11e-6), Bore: plain(11e-6), RingAt: kelvins(180), BoreAt: kelvins(100)}
	groove := rings.Groove{Height: exact("1.55 mm"), Root: exact("61 mm")}
	height, thickness := exact("1.5 mm"), exact("2.7 mm")
	oval := rings.Oval{Max: length("67.03 mm"), Min: length("67 mm")}
	for _, c := range []struct {
		name string
		f    func() error
	}{
		{"Gap.In", func() error { return second(g.In(d)) }},
		{"DiameterChange", func() error { return second(rings.DiameterChange(g.Measured, wider)) }},
		{"Feeler", func() error { return second(rings.Feeler(300*µm, 350*µm)) }},
		{"Oval.Round", func() error { return second(oval.Round()) }},
		{"Warm.Change", func() error { return second(h.Change(d.Value)) }},
		{"Groove.SideClearance", func() error { return second(groove.SideClearance(height)) }},
		{"Groove.BackClearance", func() error { return second(groove.BackClearance(thickness, d)) }},
		{"Section.Tension", func() error { return second(s.Tension(8*units.Millimetre, 0)) }},
		{"Tension.Bound", func() error { return second(r.Bound(4)) }},
		{"FileTo", func() error {
			return second(rings.FileTo(g.Measured, units.Limits{Min: 350 * µm, Max: 500 * µm}, uncertainty.Risk{}))
		}},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := c.f(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkFollow(b *testing.B) {
	r := must(section().Tension(length("8 mm"), 0))
	for _, n := range []int{1, 5, 50} {
		form := make([]bore.Harmonic, n)
		for i := range form {
			form[i] = bore.Harmonic{Order: i + 2, Amplitude: units.Nanometre}
		}
		b.Run(fmt.Sprintf("%d harmonics", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := r.Follow(form); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
