// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"fmt"
	"testing"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

func BenchmarkSetting(b *testing.B) {
	s, c := small(650, 80*mm, hone.Cycles(1*units.Hertz)), crosshatch("45° included")
	for name, run := range map[string]func() error{
		"Crosshatch":      func() error { _, err := s.Crosshatch(); return err },
		"SpindleSpeedFor": func() error { _, err := s.SpindleSpeedFor(c); return err },
		"StrokingRateFor": func() error { _, err := s.StrokingRateFor(c); return err },
		"StrokeLengthFor": func() error { _, err := s.StrokeLengthFor(c); return err },
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := run(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkSettingFor(b *testing.B) {
	h := hone.OnHand{
		Bore: 67 * mm, Stroke: 80 * mm, Drive: hone.ByMachine,
		Spindle:  hone.SpindleRange{Min: 20 * units.PerMinute, Max: 700 * units.PerMinute},
		Stroking: hone.StrokingRange{Min: hone.Cycles(0.2), Max: hone.Cycles(4)},
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := h.SettingFor(want45); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkProfile(b *testing.B) {
	s := small(110, 90*mm, hone.Cycles(1*units.Hertz))
	parabola := hone.Shaped(func(t float64) float64 { return t * (1 - t) })
	for _, m := range []hone.Motion{hone.Steady(), hone.Crank(), hone.Trapezoid(100 * time.Millisecond), parabola} {
		for _, n := range []int{10, 1000} {
			b.Run(fmt.Sprintf("%v/points=%d", m, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := s.Profile(m, halfOut, want45, n); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkRemoval(b *testing.B) {
	s := small(110, 90*mm, hone.Cycles(1*units.Hertz))
	parabola := hone.Shaped(func(t float64) float64 { return t * (1 - t) })
	for _, m := range []hone.Motion{hone.Steady(), hone.Crank(), hone.Trapezoid(100 * time.Millisecond), parabola} {
		for _, n := range []int{10, 1000} {
			b.Run(fmt.Sprintf("%v/points=%d", m, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := s.Removal(m, halfOut, hone.ConstantForce, 50*um, n); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkNext(b *testing.B) {
	for _, dof := range []float64{0, 9} {
		for _, n := range []int{1, 10, 100} {
			z := sizing(n, dof)
			b.Run(fmt.Sprintf("passes=%d/dof=%v", n, dof), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if next, err := z.Next(); err != nil || next.Decision != hone.GoOn {
						b.Fatal(next, err)
					}
				}
			})
		}
	}
}

func BenchmarkCover(b *testing.B) {
	s, a := small(127, 80*mm, hone.Cycles(1*units.Hertz)), hone.Rig{Lines: 2, Width: 3 * mm, Length: 5 * mm}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Cover(a); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRetrace(b *testing.B) {
	s := small(120, 80*mm, hone.Cycles(1*units.Hertz))
	for _, cycles := range []int{10, 1000} {
		rig := hone.Rig{Kind: hone.RigidStone, Drive: hone.ByMachine, Lines: 4, Track: mm / 100}
		b.Run(fmt.Sprintf("cycles=%d", cycles), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := s.Retrace(rig, cycles); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkText(b *testing.B) {
	c, err := small(650, 80*mm, hone.Cycles(1*units.Hertz)).Crosshatch()
	if err != nil {
		b.Fatal(err)
	}
	b.Run("ParseCrosshatch", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := hone.ParseCrosshatch("45° included"); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("Crosshatch.String", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if c.String() == "" {
				b.Fatal("empty")
			}
		}
	})
	b.Run("ParseStroking", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := hone.ParseStroking("120 strokes/min"); err != nil {
				b.Fatal(err)
			}
		}
	})
}
