// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// Whatever the numbers: an error, or an answer within bounds; never a panic.
func TestPlansHostile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string) units.Length {
			return units.Length(rapid.OneOf(rapid.Int64(), rapid.Int64Range(-2, 2), rapid.Int64Range(1, 1e13), rapid.Int64Range(1e9, 1e11)).Draw(t, name))
		}
		rate := func(name string) units.Frequency {
			return units.Frequency(rapid.OneOf(rapid.Float64(), rapid.Float64Range(0, 20), rapid.Just(math.NaN())).Draw(t, name))
		}
		s := hone.Setting{Bore: length("bore"), Spindle: rate("spindle"), Stroking: hone.Cycles(rate("stroking"))}
		m := rapid.SampledFrom([]hone.Motion{hone.Steady(), hone.Crank(), hone.Trapezoid(time.Second / 10), hone.Shaped(nil), hone.Shaped(math.Sqrt)}).Draw(t, "motion")
		law := hone.Pressing(rapid.Int8Range(-1, 3).Draw(t, "law"))
		run := hone.Run{
			Kind: hone.Kind(rapid.Int8Range(-1, 4).Draw(t, "kind")), Depth: length("depth"), Tool: length("tool"),
			RoomTop: length("room above"), RoomBottom: length("room below"),
			Ports: []units.Limits{{Min: length("upper"), Max: length("lower")}}[:rapid.IntRange(0, 1).Draw(t, "ports")],
		}
		if travel, err := hone.UsualTravel(run); err == nil {
			if l, err := travel.Stroke(); err != nil || l <= 0 {
				t.Errorf("%+v: %v, %v", travel, l, err)
			}
		}
		travel := hone.Travel{Depth: run.Depth, Tool: run.Tool, Top: length("top"), Bottom: length("bottom")}
		if r, err := s.Removal(m, travel, law, length("stock"), 3); err == nil {
			if r.Min < 0 || r.Max > units.MaxLength || r.Min > r.Max || r.Straightness < 0 {
				t.Errorf("%+v", r)
			}
		}
		c := hone.Correction{Run: run, Measured: []hone.Place{{0, length("first")}, {length("at"), length("last")}}, Size: length("size"), Finish: length("finish")}
		if p, err := s.Correct(m, law, c); err == nil {
			for _, d := range p.Dwells {
				if d.Takes < 0 || !(d.Time >= 0 && d.Time <= 1) {
					t.Errorf("%+v", d)
				}
			}
			if !(p.FullTime >= 0 && p.FullTime <= 1) || p.After < 0 || p.Full < 0 {
				t.Errorf("%+v", p)
			}
		}
	})
}
