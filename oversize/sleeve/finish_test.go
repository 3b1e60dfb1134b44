// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestPressForce: in proportion to the length and to friction, and p·π·seat·length·µ.
func TestPressForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := rangedJoint(t)
		length := lengthBetween(t, "length", mm, 300*mm)
		var friction sleeve.Range[float64]
		friction.Min = rapid.Float64Range(0.01, 0.5).Draw(t, "least friction")
		friction.Max = rapid.Float64Range(friction.Min, 1).Draw(t, "greatest friction")
		f, s := must(j.Press(length, friction)), must(j.Fit())
		area := math.Pi * j.Seat.In(units.Metre) * length.In(units.Metre)
		near(t, "least", float64(f.Min), float64(s.Pressure.Min)*area*friction.Min, 1e-9*float64(f.Max))
		near(t, "greatest", float64(f.Max), float64(s.Pressure.Max)*area*friction.Max, 1e-9*float64(f.Max))
	})
}

// TestHoning: fitted bore and stock add up to the finish size, and the honed joint's own fitted
// bore is the finish size to within its range.
func TestHoning(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := rangedJoint(t)
		room := (j.Seat - j.Bore) / 2
		s := must(j.Fit())
		over := room
		if rapid.Bool().Draw(t, "near") {
			over = 10 * um
		}
		finish := j.Bore - s.BoreCloses.Min + lengthBetween(t, "over", s.BoreCloses.Min-s.BoreCloses.Max-10*um, over)
		h, err := j.Hone(finish)
		if smallest := j.Bore - s.BoreCloses.Max; (finish <= smallest) != errors.Is(err, units.ErrRange) {
			t.Fatalf("finish %v, fitted from %v: %v", finish, smallest, err)
		}
		if err != nil {
			return
		}
		if h.Fitted.Min != j.Bore-s.BoreCloses.Max || h.Fitted.Max != j.Bore-s.BoreCloses.Min {
			t.Fatalf("fitted %v, closes in by %v", h.Fitted, s.BoreCloses)
		}
		if h.Stock.Min != finish-h.Fitted.Max || h.Stock.Max != finish-h.Fitted.Min || h.Stock.Min > h.Stock.Max {
			t.Fatalf("stock %v", h.Stock)
		}
		if (h.CleansUp == uncertainty.Within) != (h.Stock.Min > 0) || h.CleansUp == uncertainty.Beyond {
			t.Fatalf("cleans up: %v with stock %v", h.CleansUp, h.Stock)
		}
		after := must(h.Joint.Fit())
		middle := h.Joint.Bore - after.BoreCloses.Min - (after.BoreCloses.Max-after.BoreCloses.Min)/2
		// The free bore is larger than the finish size by the closing-in, which changes the
		// closing-in itself by that share of it, and the more the thinner the wall.
		closes := float64(h.Joint.Bore - finish)
		near(t, "fitted bore of the honed joint", float64(middle), float64(finish), 2+4*closes*closes/float64(j.Seat-finish))
	})
}

// TestMeasuredInterference: exact measurements give their exact difference; doubt widens it on
// both sides alike by 1.96 times the root of the sum of squares.
func TestMeasuredInterference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		seat := lengthBetween(t, "seat", 10*mm, 200*mm)
		outside := seat + lengthBetween(t, "interference", -100*um, 200*um)
		d := must(sleeve.DiametralFromMeasured(uncertainty.Estimate{Value: outside}, uncertainty.Estimate{Value: seat}))
		if d != exactly(outside-seat) {
			t.Fatalf("%v less %v: %v", outside, seat, d)
		}
		u1, u2 := lengthBetween(t, "u1", 0, 10*um), lengthBetween(t, "u2", 0, 10*um)
		d = must(sleeve.DiametralFromMeasured(uncertainty.Estimate{Value: outside, Std: u1}, uncertainty.Estimate{Value: seat, Std: u2}))
		half := 1.959964 * math.Hypot(float64(u1), float64(u2))
		near(t, "half-width", float64(d.Max-d.Min)/2, half, 2+1e-6*half)
		near(t, "middle", float64(d.Max+d.Min)/2, float64(outside-seat), 0)
	})
}

// TestEdges: the greatest length is one, and a joint that overlaps by a picometre grips.
func TestEdges(t *testing.T) {
	j := demoJoint()
	j.Outer = units.Limits{Min: 90 * mm, Max: units.MaxLength}
	if err := j.Validate(); err != nil {
		t.Error(err)
	}
	j.Outer.Max++
	if err := j.Validate(); !errors.Is(err, units.ErrRange) {
		t.Error(err)
	}
	for _, tt := range []struct {
		least, greatest units.Length
		want            uncertainty.Verdict
	}{{1, 1, uncertainty.Within}, {0, 1, uncertainty.Undecided}, {-1, 1, uncertainty.Undecided}} {
		j := demoJoint()
		j.Interference = sleeve.Diametral{Min: tt.least, Max: tt.greatest}
		if s := must(j.Fit()); s.Grips != tt.want || s.Cautions.Has(sleeve.CanComeLoose) != (tt.want != uncertainty.Within) {
			t.Errorf("interference %v: %v", j.Interference, s.Grips)
		}
	}
}
