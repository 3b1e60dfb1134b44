// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestPublishedSideClearance: US Army TM 5-3895-382-24 prints grooves, rings and the clearances that they leave.
func TestPublishedSideClearance(t *testing.T) {
	for _, tt := range []struct{ groove, ring, want string }{
		{"2.57 mm", "2.49 mm", "0.08 mm"}, {"2.59 mm", "2.48 mm", "0.11 mm"},
		{"2.55 mm", "2.49 mm", "0.06 mm"}, {"2.57 mm", "2.48 mm", "0.09 mm"},
	} {
		side := must(rings.Groove{Height: exact(tt.groove)}.SideClearance(exact(tt.ring)))
		if side != exact(tt.want) {
			t.Errorf("%s in %s: %v, want %s", tt.ring, tt.groove, side, tt.want)
		}
		// The play and the ring give the groove back.
		if g := must(rings.GrooveHeight(side, exact(tt.ring))); g != exact(tt.groove) {
			t.Errorf("%v over %s: %v, want %s", side, tt.ring, g, tt.groove)
		}
	}
	g := must(rings.GrooveHeight(uncertainty.Estimate{Value: length("0.15 mm"), Std: 3 * µm, DoF: 5}, uncertainty.Estimate{Value: length("2.4 mm"), Std: 4 * µm}))
	if g.Std != 5*µm || !(g.DoF > 5) {
		t.Errorf("%v", g)
	}
	for _, e := range []uncertainty.Estimate{{}, {Value: -1}, {Value: 1, Std: -1}} {
		if _, err := rings.GrooveHeight(e, exact("2 mm")); err == nil {
			t.Errorf("play of %v", e)
		}
		if _, err := rings.GrooveHeight(exact("0.1 mm"), e); err == nil {
			t.Errorf("ring of %v", e)
		}
	}
}

// TestPublishedThickness: Khurmi and Gupta, A Textbook of Machine Design, ch. 32: 3.4 mm for 100 mm at 0.035 and 90 MPa; the ends of
// their ranges give 0.0261 to 0.0385 of the bore (computed).
func TestPublishedThickness(t *testing.T) {
	mpa := units.Pressure(units.Megapascal)
	for _, tt := range []struct {
		wall, stress units.Pressure
		want, tol    string
	}{
		{0.035 * mpa, 90 * mpa, "3.416 mm", "0.02 mm"},
		{0.025 * mpa, 110 * mpa, "2.61 mm", "0.01 mm"},
		{0.042 * mpa, 85 * mpa, "3.85 mm", "0.01 mm"},
	} {
		near(t, tt.wall.String(), must(rings.Thickness(length("100 mm"), tt.wall, tt.stress)), tt.want, tt.tol)
	}
	// By the full equations the stress is less by the share that the thickness has in the bore.
	a := must(rings.Thickness(length("100 mm"), 0.035*mpa, 90*mpa))
	s := rings.Section{Bore: length("100 mm"), Thickness: a, Height: length("2 mm"), Young: 100 * units.Gigapascal}
	tension := must(s.Tension(length("5 mm"), 0))
	agree(t, "stress over wall pressure", float64(tension.Stress/tension.Wall), 90/0.035*(1-a.In(units.Millimetre)/100), 1e-9)
	for _, tt := range []struct {
		bore         units.Length
		wall, stress units.Pressure
		want         error
	}{
		{0, mpa, mpa, units.ErrNotGiven}, {-1, mpa, mpa, units.ErrRange}, {units.MaxLength + 1, 0.035 * mpa, 90 * mpa, units.ErrRange},
		{length("100 mm"), 0, mpa, units.ErrRange}, {length("100 mm"), mpa, 0, units.ErrRange}, {length("100 mm"), -mpa, -mpa, units.ErrRange},
		{length("100 mm"), units.Pressure(math.NaN()), mpa, units.ErrRange}, {length("100 mm"), mpa, units.Pressure(math.NaN()), units.ErrRange},
		{length("100 mm"), units.Pressure(math.Inf(1)), mpa, units.ErrRange}, {length("100 mm"), mpa, units.Pressure(math.Inf(1)), units.ErrRange},
		{length("100 mm"), mpa, mpa, units.ErrRange}, {length("100 mm"), 1e-30, 1e15, units.ErrRange},
		{length("100 mm"), 7.5 * mpa, 90 * mpa, units.ErrRange}, // exactly half the bore
	} {
		if a, err := rings.Thickness(tt.bore, tt.wall, tt.stress); !errors.Is(err, tt.want) || a != 0 {
			t.Errorf("%v, %v, %v: %v, %v", tt.bore, tt.wall, tt.stress, a, err)
		}
	}
}

// A ring was worn to 2.40 mm and has 0.17 mm of play: is the groove worn, or the ring?
func ExampleGrooveHeight() {
	groove := rings.Groove{Height: must1(rings.GrooveHeight(atDiameter("0.17 mm"), atDiameter("2.40 mm")))}
	fmt.Println("with a new ring", must1(groove.SideClearance(atDiameter("2.48 mm"))))
	// Output:
	// with a new ring 0.09 mm
}

// The radial thickness of a ring for 100 mm that is to press with 0.035 MPa at 90 MPa.
func ExampleThickness() {
	a, err := rings.Thickness(100*units.Millimetre, 0.035*units.Megapascal, 90*units.Megapascal)
	fmt.Println(a.Format(units.Millimetre, 2), err)
	// Output:
	// 3.42 mm <nil>
}
