// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"testing"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

const degree = units.Degree

// The common-practice recipe for a small engine, 600 to 700 rev/min and half a second to a single
// stroke: what it leaves and what would leave 45°. All values computed, in double precision, from
// the closed forms; they pin the numbers of the package comment.
func TestFastDrillRecipe(t *testing.T) {
	once, twice := hone.Cycles(1*units.Hertz), hone.Cycles(2*units.Hertz)
	leaves := []struct {
		rpm    float64
		stroke units.Length
		want   float64
	}{
		{600, 70 * mm, 7.609}, {600, 80 * mm, 8.693}, {600, 90 * mm, 9.776},
		{650, 70 * mm, 7.026}, {650, 80 * mm, 8.027}, {650, 90 * mm, 9.027},
		{700, 70 * mm, 6.526}, {700, 80 * mm, 7.456}, {700, 90 * mm, 8.386},
	}
	for _, row := range leaves {
		c := must[hone.Crosshatch](t)(small(row.rpm, row.stroke, once).Crosshatch())
		near(t, "included", included(c), row.want, 0.002)
		half := must[hone.Crosshatch](t)(small(row.rpm, row.stroke, hone.Strokes(2*units.Hertz)).Crosshatch())
		if half != c {
			t.Errorf("two strokes a second leave %v, a cycle a second %v", half, c)
		}
	}
	c := must[hone.Crosshatch](t)(small(650, 80*mm, once).Crosshatch())
	near(t, "lean", c.FromSquare().In(degree), 4.014, 0.002)
	near(t, "to the axis", 90-c.FromSquare().In(degree), 85.986, 0.002)
	near(t, "across the axis", c.AcrossAxis().In(degree), 171.973, 0.002)

	speeds := []struct{ rpm, want float64 }{{600, 126.29}, {650, 136.82}, {700, 147.34}}
	for _, row := range speeds {
		v := must[units.Speed](t)(small(row.rpm, 0, hone.Stroking{}).Peripheral())
		near(t, "peripheral", v.In(units.MetrePerMinute), row.want, 0.01)
	}

	spindles := []struct {
		crosshatch string
		stroke     units.Length
		stroking   hone.Stroking
		want       float64
	}{
		{"45° included", 70 * mm, once, 96.35}, {"45° included", 80 * mm, once, 110.11}, {"45° included", 90 * mm, once, 123.87},
		{"45° included", 70 * mm, twice, 192.69}, {"45° included", 80 * mm, twice, 220.22}, {"45° included", 90 * mm, twice, 247.74},
		{"45° from square", 80 * mm, once, 45.61},
		{"30° included", 80 * mm, once, 170.21}, {"60° included", 80 * mm, once, 79.00},
	}
	for _, row := range spindles {
		n := must[units.Frequency](t)(small(0, row.stroke, row.stroking).SpindleSpeedFor(crosshatch(row.crosshatch)))
		near(t, row.crosshatch, n.In(units.PerMinute), row.want, 0.02)
	}

	s := small(650, 80*mm, hone.Stroking{})
	s.Stroking = must[hone.Stroking](t)(s.StrokingRateFor(crosshatch("45° included")))
	near(t, "cycles a second", float64(s.Stroking.Cycles()), 5.903, 0.0059)
	near(t, "strokes a minute", s.Stroking.Strokes().In(units.PerMinute), 708.4, 0.7)
	near(t, "axial mm/s", must[units.Speed](t)(s.Axial()).In(units.MetrePerSecond/1000), 944.5, 0.9)
	l := must[units.Length](t)(small(650, 0, once).StrokeLengthFor(crosshatch("45° included")))
	near(t, "stroke", l.In(mm), 472.3, 0.05)

	near(t, "advance a turn", must[units.Length](t)(small(650, 80*mm, once).Advance()).In(mm), 14.77, 0.005)
}

// Motions other than steady. Computed: peak π·L·f for a crank, L/(T/2 − t_r) for a trapezoid.
func TestMotionPeaks(t *testing.T) {
	s := small(650, 80*mm, hone.Cycles(1*units.Hertz))
	rows := []struct {
		motion     hone.Motion
		peak, lean float64
	}{
		{hone.Steady(), 160, 4.014},
		{hone.Crank(), 251.33, 6.290},
		{hone.Trapezoid(100 * time.Millisecond), 200, 5.0125},
	}
	for _, row := range rows {
		near(t, row.motion.String(), must[units.Speed](t)(hone.PeakAxial(s, row.motion)).In(units.MetrePerSecond/1000), row.peak, 0.005)
		near(t, row.motion.String(), must[hone.Crosshatch](t)(s.Steepest(row.motion)).FromSquare().In(degree), row.lean, 0.002)
	}
	// What a hand that swings leaves at mid-stroke with the recipe above, as the package comment
	// says: 10.2° to 15.3°.
	near(t, "least", included(must[hone.Crosshatch](t)(small(700, 70*mm, hone.Cycles(1)).Steepest(hone.Crank()))), 10.23, 0.01)
	near(t, "most", included(must[hone.Crosshatch](t)(small(600, 90*mm, hone.Cycles(1)).Steepest(hone.Crank()))), 15.30, 0.01)
}

// Printed recipes held against their own numbers.
func TestPrintedRecipes(t *testing.T) {
	// NMWR 9-2815-220, WP 0012: liner of 5.752 in, 77 rev/min, 43 strokes a minute, 35 to 55° to
	// the horizontal, of which the first is given as 70° included. The stroke implied is computed.
	c := must[hone.Crosshatch](t)(hone.FromSquare(35 * degree))
	if want := crosshatch("70° included"); c != want {
		t.Errorf("35° from square is %v, want %v", c, want)
	}
	if c := must[hone.Crosshatch](t)(hone.FromSquare(55 * degree)); c.Included() != 110*degree {
		t.Errorf("55° from square is %v, want 110° included", c)
	}
	s := hone.Setting{Bore: 5752 * units.Thou, Spindle: 77 * units.PerMinute, Stroking: hone.Cycles(43 * units.PerMinute)}
	v := must[units.Speed](t)(s.Peripheral())
	near(t, "peripheral ft/min", v.In(units.FootPerMinute), 115.95, 0.12)
	near(t, "peripheral m/min", v.In(units.MetrePerMinute), 35.34, 0.035)
	l := must[units.Length](t)(s.StrokeLengthFor(c))
	near(t, "steady stroke, in", l.In(units.Inch), 11.329, 0.0113)
	s.Stroke = units.Length(7.212 * units.PerInch)
	near(t, "crank stroke leaves", included(must[hone.Crosshatch](t)(s.Steepest(hone.Crank()))), 70, 0.05)
	// It finishes with five to eight strokes; computed: seven to twelve seconds at single strokes,
	// half that at cycles. The recipe does not say which it counts.
	for strokes, want := range map[int]time.Duration{5: 6977 * time.Millisecond, 8: 11163 * time.Millisecond} {
		near(t, "seconds", float64(strokes)/float64(hone.Strokes(43*units.PerMinute).Strokes()), want.Seconds(), 0.001)
	}

	// US Army TM 10-4320-351-14, 6.4.5: "90 to 120 degrees". Across the axis that is 60 to 90°
	// included, 30 to 45° from square.
	for across, want := range map[units.Angle][2]string{90 * degree: {"90° included", "45° from square"}, 120 * degree: {"60° included", "30° from square"}} {
		c := must[hone.Crosshatch](t)(hone.AcrossAxis(across))
		if c != crosshatch(want[0]) || c != crosshatch(want[1]) {
			t.Errorf("%v across axis is %v, want %v", across, c, want)
		}
	}

	// US Army TM 5-3895-346-14: drill at 300 to 400 rev/min in a liner of 3.8752 to 3.8767 in.
	// Computed: at 350 rev/min and 3.876 in, 71.03 in/s round, 29.42 in/s along for 45° included.
	s = hone.Setting{Bore: units.Length(3.876 * units.PerInch), Stroke: 5 * units.Inch, Spindle: 350 * units.PerMinute}
	const inchPerSecond = 0.0254 * units.MetrePerSecond
	near(t, "peripheral in/s", must[units.Speed](t)(s.Peripheral()).In(inchPerSecond), 71.03, 0.071)
	s.Stroking = must[hone.Stroking](t)(s.StrokingRateFor(crosshatch("45° included")))
	near(t, "axial in/s", must[units.Speed](t)(s.Axial()).In(inchPerSecond), 29.42, 0.029)

	// A recipe in print: 600 rev/min, 30 strokes a minute, bore of 71 mm, stroke about 100 mm, for
	// "60°". Computed: even counted as cycles 5.1° included; as single strokes 2.6°.
	s = hone.Setting{Bore: 71 * mm, Stroke: 100 * mm, Spindle: 600 * units.PerMinute, Stroking: hone.Cycles(30 * units.PerMinute)}
	near(t, "cycles", included(must[hone.Crosshatch](t)(s.Crosshatch())), 5.1, 0.05)
	s.Stroking = hone.Strokes(30 * units.PerMinute)
	near(t, "strokes", included(must[hone.Crosshatch](t)(s.Crosshatch())), 2.6, 0.05)
}
