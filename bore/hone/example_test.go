// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"fmt"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// The engine of these examples is invented: an irrigation pump's, with a bore of 67 mm and 90 mm
// long, in a village workshop that has an electric drill and a ball-type hone.

// A drill turns at 650 rev/min, and half a second is taken to a single stroke of 80 mm. Somebody
// was told that this leaves 45°.
func Example() {
	s := hone.Setting{
		Bore:     67 * units.Millimetre,
		Stroke:   80 * units.Millimetre,
		Spindle:  650 * units.PerMinute,
		Stroking: hone.Strokes(2 * units.Hertz),
	}
	c, err := s.Crosshatch()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("it leaves", c.Format(1))

	n, err := s.SpindleSpeedFor(crosshatch("45° included"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("45° included takes %.0f rev/min\n", n.In(units.PerMinute))
	// Output:
	// it leaves 8.0° included
	// 45° included takes 110 rev/min
}

// My drill turns at 600 rev/min: what crosshatch do I get, by the stroke?
func ExampleSetting_Crosshatch() {
	for _, stroke := range []units.Length{70, 80, 90} {
		s := hone.Setting{
			Bore:     67 * units.Millimetre,
			Stroke:   stroke * units.Millimetre,
			Spindle:  600 * units.PerMinute,
			Stroking: hone.Cycles(60 * units.PerMinute),
		}
		c, err := s.Crosshatch()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(s.Stroke.Format(units.Millimetre, 0), "leaves", c.Format(1))
	}
	// Output:
	// 70 mm leaves 7.6° included
	// 80 mm leaves 8.7° included
	// 90 mm leaves 9.8° included
}

// How slowly must I turn for 30, 45 or 60° at a cycle a second?
func ExampleSetting_SpindleSpeedFor() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Stroking: hone.Cycles(1 * units.Hertz)}
	for _, text := range []string{"30° included", "45° included", "60° included"} {
		n, err := s.SpindleSpeedFor(crosshatch(text))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %.0f rev/min\n", text, n.In(units.PerMinute))
	}
	// Output:
	// 30° included: 170 rev/min
	// 45° included: 110 rev/min
	// 60° included: 79 rev/min
}

// How fast must I stroke for 45°, if the drill will not turn slower? Faster than any hand.
func ExampleSetting_StrokingRateFor() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 650 * units.PerMinute}
	k, err := s.StrokingRateFor(crosshatch("45° included"))
	if err != nil {
		fmt.Println(err)
		return
	}
	s.Stroking = k
	cautions, err := s.Cautions(hone.ByHand)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f cycles a second\n", k.Cycles().In(units.Hertz))
	for _, c := range cautions {
		fmt.Println("caution:", c.Text)
	}
	// Output:
	// 5.9 cycles a second
	// caution: The abrasive goes round faster than 110 m/min, the top of the band often quoted for stones: heat, glazing, and a flatter crosshatch.
	// caution: More than two full cycles a second is beyond what a hand strokes evenly: the strokes get short, the tool comes out of the bore, the wrist pays.
}

func ExampleSetting_StrokeLengthFor() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Spindle: 650 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	l, err := s.StrokeLengthFor(crosshatch("45° included"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("a stroke of", l.Format(units.Millimetre, 0), "in a bore 90 mm long")
	// Output: a stroke of 472 mm in a bore 90 mm long
}

func ExampleSetting_Advance() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 650 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	l, err := s.Advance()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(l.Format(units.Millimetre, 2), "along the bore to a turn")
	// Output: 14.77 mm along the bore to a turn
}

// Is "45 degrees" between the lines or to the horizontal? The text does not say, so it is not
// guessed; the two answers differ by a factor of two and more in spindle speed.
func ExampleParseCrosshatch() {
	_, err := hone.ParseCrosshatch("45°")
	fmt.Println(errors.Is(err, hone.ErrConvention))

	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Stroking: hone.Cycles(1 * units.Hertz)}
	for _, text := range []string{"45° included", "45° from square"} {
		c, err := hone.ParseCrosshatch(text)
		if err != nil {
			fmt.Println(err)
			return
		}
		n, err := s.SpindleSpeedFor(c)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s is %v: %.0f rev/min\n", text, c, n.In(units.PerMinute))
	}
	// Output:
	// true
	// 45° included is 45° included: 110 rev/min
	// 45° from square is 90° included: 46 rev/min
}

// One crosshatch in three of the four ways to say it; the fourth, from the axis, is 67.5°.
func ExampleCrosshatch() {
	c, err := hone.FromSquare(22.5 * units.Degree)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Included(), "included")
	fmt.Println(c.FromSquare(), "from square")
	fmt.Println(c.AcrossAxis(), "across axis")
	// Output:
	// 45° included
	// 22.5° from square
	// 135° across axis
}

// A manual that asks for "90 to 120°" measures across the axis.
func ExampleCrosshatch_AcrossAxis() {
	for _, text := range []string{"90° across axis", "120° across axis"} {
		c, err := hone.ParseCrosshatch(text)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(text, "is", c)
	}
	// Output:
	// 90° across axis is 90° included
	// 120° across axis is 60° included
}

// Does "strokes per minute" mean single strokes or full cycles? It must be said: taken for the
// wrong one, the crosshatch is half or twice what was meant.
func ExampleStroking() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 110 * units.PerMinute}
	for _, k := range []hone.Stroking{hone.Cycles(60 * units.PerMinute), hone.Strokes(60 * units.PerMinute)} {
		s.Stroking = k
		c, err := s.Crosshatch()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(k, "leaves", c.Format(0))
	}
	_, err := hone.ParseStroking("60/min")
	fmt.Println(errors.Is(err, hone.ErrConvention))
	// Output:
	// 60 cycles/min leaves 45° included
	// 60 strokes/min leaves 23° included
	// true
}

// What can be done about 45° with a fast drill, and with one that can be slowed down?
func ExampleOnHand_SettingFor() {
	hand := hone.OnHand{
		Bore:     67 * units.Millimetre,
		Stroke:   80 * units.Millimetre,
		Stroking: hone.StrokingRange{Min: hone.Cycles(40 * units.PerMinute), Max: hone.Cycles(80 * units.PerMinute)},
		Drive:    hone.ByHand,
	}
	want := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * units.Degree}
	for _, text := range []string{"600 to 700 rev/min", "60 to 700 rev/min"} {
		if err := hand.Spindle.UnmarshalText([]byte(text)); err != nil {
			fmt.Println(err)
			return
		}
		r, err := hand.SettingFor(want)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: met %v; %.0f rev/min with %v leaves %s\n",
			hand.Spindle, r.Met, r.Best.Spindle.In(units.PerMinute), r.Best.Stroking, r.Leaves.Format(1))
		for _, c := range r.Changes {
			fmt.Printf("  or %.1f rev/min with %.1f cycles/min and a stroke of %s; advised: %v\n", c.Setting.Spindle.In(units.PerMinute),
				c.Setting.Stroking.Cycles().In(units.PerMinute), c.Setting.Stroke.Format(units.Millimetre, 1), c.Against == hone.Caution{})
		}
		if w, ok := r.SpindlesAt(r.Best.Stroking); ok {
			fmt.Printf("  at that stroking anything from %.0f to %.0f rev/min will do\n", w.Min.In(units.PerMinute), w.Max.In(units.PerMinute))
		}
	}
	// Output:
	// 600 rev/min to 700 rev/min: met false; 600 rev/min with 80 cycles/min leaves 11.6° included
	//   or 146.8 rev/min with 80.0 cycles/min and a stroke of 80.0 mm; advised: true
	//   or 600.0 rev/min with 326.9 cycles/min and a stroke of 80.0 mm; advised: false
	//   or 600.0 rev/min with 80.0 cycles/min and a stroke of 326.9 mm; advised: false
	// 60 rev/min to 700 rev/min: met true; 110 rev/min with 60 cycles/min leaves 45.0° included
	//   at that stroking anything from 98 to 125 rev/min will do
}

// The setting that leaves 45° by the simple formula, with a tool of 60 mm that comes half out at
// both ends, stroked by a hand that swings like a crank.
func ExampleSetting_Profile() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Spindle: 124 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	travel := hone.Travel{Depth: 90 * units.Millimetre, Tool: 60 * units.Millimetre, Top: 30 * units.Millimetre, Bottom: 30 * units.Millimetre}
	want := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 10 * units.Degree}
	p, err := s.Profile(hone.Crank(), travel, want, 7)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, pt := range p.Points {
		fmt.Printf("%2.0f mm: %2.0f° to %2.0f°, mean %2.0f°, %2.0f %% within\n", pt.Depth.In(units.Millimetre),
			pt.Min.In(units.Degree), pt.Max.In(units.Degree), pt.Mean.In(units.Degree), 100*pt.Within)
	}
	fmt.Println("lines lie flat down to", p.ReversalTop.Format(units.Millimetre, 0))
	// Output:
	//  0 mm:  0° to 63°, mean 39°, 35 % within
	// 15 mm:  0° to 66°, mean 45°, 27 % within
	// 30 mm:  0° to 66°, mean 49°, 22 % within
	// 45 mm: 52° to 66°, mean 61°, 12 % within
	// 60 mm:  0° to 66°, mean 49°, 22 % within
	// 75 mm:  0° to 66°, mean 45°, 27 % within
	// 90 mm:  0° to 63°, mean 39°, 35 % within
	// lines lie flat down to 30 mm
}

// At mid-stroke a crank is π/2 times as fast as on the mean.
func ExampleSetting_Steepest() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 650 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	for _, m := range []hone.Motion{hone.Steady(), hone.Trapezoid(100 * time.Millisecond), hone.Crank()} {
		c, err := s.Steepest(m)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(m, c.Format(1))
	}
	// Output:
	// steady 8.0° included
	// trapezoid, ramp 100ms 10.0° included
	// crank 12.6° included
}

// A motion of one's own: a stroke that starts with a jerk and dies away.
func ExampleShaped() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 110 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	c, err := s.Steepest(hone.Shaped(func(t float64) float64 { return 1 - t }))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(c.Format(1))
	// Output: 79.3° included
}

func ExampleTravel_Stroke() {
	t := hone.Travel{Depth: 90 * units.Millimetre, Tool: 45 * units.Millimetre, Top: 15 * units.Millimetre, Bottom: 15 * units.Millimetre}
	l, err := t.Stroke()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(l)
	// Output: 75 mm
}

// Take the stock fast, then slow down for the angle: it works only where the slow phase goes as
// deep as the lines of the fast one.
func ExampleTraces() {
	fast := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 650 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	slow := fast
	slow.Spindle = 110 * units.PerMinute
	for _, stock := range []int{1, 4} { // micrometres
		traces, err := hone.Traces([]hone.Phase{
			{Setting: fast, Stock: 20 * units.Micrometre, Groove: 3 * units.Micrometre},
			{Setting: slow, Stock: units.Length(stock) * units.Micrometre, Groove: 3 * units.Micrometre},
		})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println("the slow phase takes", stock, "µm off the radius:")
		for _, t := range traces {
			fmt.Printf("  %s, gone: %v, %s deep\n", t.Crosshatch.Format(0), t.Gone, t.Left.Format(units.Micrometre, 0))
		}
	}
	// Output:
	// the slow phase takes 1 µm off the radius:
	//   8° included, gone: false, 2 µm deep
	//   45° included, gone: false, 3 µm deep
	// the slow phase takes 4 µm off the radius:
	//   8° included, gone: true, 0 µm deep
	//   45° included, gone: false, 3 µm deep
}

// How many strokes until all of the wall has been touched?
func ExampleSetting_Cover() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 110 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	for _, a := range []hone.Rig{
		{Lines: 4, Width: 6 * units.Millimetre, Length: 40 * units.Millimetre},
		{Lines: 2, Width: 6 * units.Millimetre, Length: 20 * units.Millimetre},
	} {
		c, err := s.Cover(a)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f %% in a stroke; %d to %d strokes by machine; by hand six leave %.1f %%\n",
			100*c.Share, c.Min, c.Max, 100*c.Untouched(6))
	}
	// Output:
	// 100 % in a stroke; 1 to 1 strokes by machine; by hand six leave 0.0 %
	// 52 % in a stroke; 2 to 5 strokes by machine; by hand six leave 1.3 %
}

// A machine whose spindle makes just two turns in a cycle runs in its own tracks for ever.
func ExampleSetting_Retrace() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 120 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	rig := hone.Rig{Kind: hone.RigidStone, Drive: hone.ByMachine, Lines: 4, Track: 500 * units.Micrometre}
	r, err := s.Retrace(rig, 8)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v after %d cycle; clear again at %.2f rev/min\n", r.Meets, r.After, r.Avoid.In(units.PerMinute))
	rig.Drive = hone.ByHand
	if r, err = s.Retrace(rig, 8); err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("by hand nothing is foretold:", r == hone.Retrace{})
	// Output:
	// true after 1 cycle; clear again at 120.14 rev/min
	// by hand nothing is foretold: true
}

// The two families of tools want opposite things.
func ExampleKind_Cautions() {
	for _, k := range []hone.Kind{hone.BallType, hone.RigidStone, 0} {
		for _, c := range k.Cautions()[2:3] { // the first two go for every kind
			fmt.Printf("%v: %s\n", k, c.Text)
		}
	}
	// Output:
	// ball-type hone: A ball-type or brush hone turns slowly as it enters and as it leaves, or it draws straight scratches; never run it at speed in the open air.
	// rigid-stone hone: A rigid-stone hone is put in, started, stopped and taken out with its stones drawn in, and never turns outside the bore or leaves it while turning: it can throw a stone.
	// not given: Say which kind of hone it is: a rigid-stone hone must stand still as it enters and leaves, a ball-type or brush hone must turn. No one rule is safe for both.
}

// A bored cylinder wants stones: what follows the wall keeps its ovality.
func ExampleKind_FollowsWall() {
	for _, k := range []hone.Kind{hone.BallType, hone.BrushType, hone.RigidStone} {
		fmt.Println(k, k.FollowsWall())
	}
	// Output:
	// ball-type hone true
	// brush hone true
	// rigid-stone hone false
}

// Ranges are written as they are said; one unit serves both ends.
func ExampleSpindleRange() {
	var r hone.SpindleRange
	err := r.UnmarshalText([]byte("60 to 700 rev/min"))
	fmt.Println(r, err)
	// Output: 60 rev/min to 700 rev/min <nil>
}

func ExampleStrokingRange() {
	for _, text := range []string{"40 to 90 cycles/min", "40 to 90"} {
		var r hone.StrokingRange
		err := r.UnmarshalText([]byte(text))
		fmt.Println(r, errors.Is(err, hone.ErrConvention))
	}
	// Output:
	// 40 cycles/min to 90 cycles/min false
	//  true
}

// How long a stroke, and how far may the tool leave the bore? A bore of 90 mm: open at both ends, and
// blind at the bottom.
func ExampleUsualTravel() {
	for _, r := range []hone.Run{
		{Kind: hone.BallType, Tool: 60 * units.Millimetre, RoomTop: 100 * units.Millimetre, RoomBottom: 100 * units.Millimetre},
		{Kind: hone.RigidStone, Tool: 45 * units.Millimetre, RoomTop: 100 * units.Millimetre, RoomBottom: 100 * units.Millimetre},
		{Kind: hone.RigidStone, Tool: 45 * units.Millimetre, RoomTop: 100 * units.Millimetre},
	} {
		r.Depth = 90 * units.Millimetre
		t, err := hone.UsualTravel(r)
		if err != nil {
			fmt.Println(err)
			return
		}
		l, err := t.Stroke()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v: %v out at the top, %v at the bottom, a stroke of %v\n", r.Kind, t.Top, t.Bottom, l)
	}
	// Output:
	// ball-type hone: 30 mm out at the top, 30 mm at the bottom, a stroke of 90 mm
	// rigid-stone hone: 15 mm out at the top, 15 mm at the bottom, a stroke of 75 mm
	// rigid-stone hone: 15 mm out at the top, 0 mm at the bottom, a stroke of 60 mm
}

// Three quarters of the stones out of the bore would cut the end best, and would throw a stone.
func ExampleRun_Travel() {
	r := hone.Run{
		Kind: hone.RigidStone, Depth: 90 * units.Millimetre, Tool: 45 * units.Millimetre,
		RoomTop: 100 * units.Millimetre, RoomBottom: 100 * units.Millimetre,
	}
	_, err := r.Travel(30*units.Millimetre, 30*units.Millimetre)
	fmt.Println(errors.Is(err, hone.ErrRoom))
	fmt.Println(err)
	// Output:
	// true
	// hone: tool out of the top by 30 mm: tool does not fit its room: want up to 22.5 mm, the lesser of the room and half the tool
}

// 0.05 mm on the diameter: how straight does the bore stay with stones a third out at the top and not at
// all at the closed bottom?
func ExampleSetting_Removal() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Spindle: 120 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	travel := hone.Travel{Depth: 90 * units.Millimetre, Tool: 45 * units.Millimetre, Top: 15 * units.Millimetre}
	r, err := s.Removal(hone.Steady(), travel, hone.ConstantForce, 50*units.Micrometre, 7)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range r.Points {
		fmt.Printf("%2.0f mm: %s\n", p.Depth.In(units.Millimetre), p.Diameter.Format(units.Micrometre, 0))
	}
	fmt.Println("straight to", r.Straightness.Format(units.Micrometre, 0))
	// Output:
	//  0 mm: 30 µm
	// 15 mm: 55 µm
	// 30 mm: 80 µm
	// 45 mm: 75 µm
	// 60 mm: 50 µm
	// 75 mm: 25 µm
	// 90 mm: 0 µm
	// straight to 40 µm
}

// From the first reading to the size: a trial pass of 5 s, then the longest pass that keeps to the risk.
func ExampleSizing_Next() {
	reading := func(text, warm string) hone.Reading {
		return hone.Reading{
			Diameter: uncertainty.Estimate{Value: units.MustParseLength(text), Std: 1 * units.Micrometre},
			At:       units.MustParseTemperature(warm),
		}
	}
	z := hone.Sizing{
		Metal: material.GreyIron(), Finish: units.Limits{Min: units.MustParseLength("67.020 mm"), Max: units.MustParseLength("67.032 mm")},
		Trial: 5 * time.Second, Longest: 30 * time.Second,
		Start: reading("66.990 mm", "20 °C"),
	}
	for _, p := range []hone.Pass{
		{After: reading("66.995 mm", "22 °C")},
		{After: reading("67.012 mm", "24 °C")},
		{After: reading("67.031 mm", "27 °C")},
	} {
		n, err := z.Next()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(n)
		p.Lasts = n.Lasts
		z.Passes = append(z.Passes, p)
	}
	n, err := z.Next()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(n)
	// Output:
	// go on: 66.9900 ± 0.0020 mm; a pass of 5s, then measure
	// go on: 66.9935 ± 0.0020 mm; a pass of 23s should bring 67.010 ± 0.017 mm; 2 to come, 38s in all
	// go on: 67.0090 ± 0.0020 mm; a pass of 16s should bring 67.0198 ± 0.0066 mm; 2 to come, 24s in all
	// stop: 67.0257 ± 0.0020 mm
}

// The barrel is read right after honing, at 45 °C. The gauge shows 67.030 mm, past the stop size; at
// 20 °C the bore is not there yet.
func ExampleReading() {
	z := hone.Sizing{
		Metal: material.AluminiumBlock(), Finish: units.Limits{Min: units.MustParseLength("67.010 mm"), Max: units.MustParseLength("67.020 mm")},
		Trial: 5 * time.Second, Longest: 30 * time.Second,
		Start: hone.Reading{
			Diameter: uncertainty.Estimate{Value: units.MustParseLength("67.030 mm"), Std: 2 * units.Micrometre},
			At:       units.MustParseTemperature("45 °C"),
		},
	}
	n, err := z.Next()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(n.Decision, "at", n.Size.Value.Format(units.Millimetre, 3))
	z.Start.At = 0
	_, err = z.Next()
	fmt.Println(err)
	// Output:
	// go on at 66.994 mm
	// hone: at the start: hone: temperature of the cylinder: not given: the reading waits for it
}

// The bore is 30 µm wider at the top. Where to dwell with rigid stones, and what comes of it?
func ExampleSetting_Correct() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Spindle: 120 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	c := hone.Correction{
		Run: hone.Run{
			Kind: hone.RigidStone, Depth: 90 * units.Millimetre, Tool: 30 * units.Millimetre,
			RoomTop: 50 * units.Millimetre, RoomBottom: 50 * units.Millimetre,
		},
		Measured: []hone.Place{
			{Depth: 10 * units.Millimetre, Diameter: units.MustParseLength("67.040 mm")},
			{Depth: 45 * units.Millimetre, Diameter: units.MustParseLength("67.025 mm")},
			{Depth: 80 * units.Millimetre, Diameter: units.MustParseLength("67.010 mm")},
		},
		Size: units.MustParseLength("67.080 mm"), Finish: 10 * units.Micrometre,
	}
	p, err := s.Correct(hone.Crank(), hone.ConstantForce, c)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range p.Dwells {
		if d.Takes < 1*units.Micrometre {
			continue
		}
		fmt.Printf("short strokes about %s: %s, %.0f %% of the time\n",
			d.Middle.Format(units.Millimetre, 0), d.Takes.Format(units.Micrometre, 0), 100*d.Time)
	}
	fmt.Printf("full strokes: %s, %.0f %%\n", p.Full.Format(units.Micrometre, 0), 100*p.FullTime)
	fmt.Println("differs by", p.After.Format(units.Micrometre, 1), "after")
	// Output:
	// short strokes about 16 mm: 27 µm, 18 % of the time
	// short strokes about 38 mm: 7 µm, 5 % of the time
	// short strokes about 45 mm: 28 µm, 19 % of the time
	// short strokes about 52 mm: 9 µm, 6 % of the time
	// short strokes about 67 mm: 7 µm, 5 % of the time
	// short strokes about 74 mm: 31 µm, 21 % of the time
	// short strokes about 81 mm: 12 µm, 7 % of the time
	// full strokes: 10 µm, 19 %
	// differs by 10.2 µm after
}

func ExampleFinishes() {
	for _, f := range hone.Finishes() {
		fmt.Printf("%s: %s %s to %s\n", f.Of, f.Measure, f.Roughness.Min.Format(units.Micrometre, 2), f.Roughness.Max.Format(units.Micrometre, 2))
	}
	// Output:
	// liners, from the first honing to the finished wall: Ra 0.65 µm to 4.00 µm
	// bores honed with 180 to 220 grit:  0.46 µm to 0.97 µm
	// bores from one maker's production, the unit taken for microinches: Ra 0.38 µm to 0.97 µm
	// honed surfaces, most common range: rms 0.08 µm to 1.27 µm
	// bare aluminium-silicon bores after the silicon is laid open by lapping, no work for stones: Rz 1.00 µm to 3.00 µm
}

// A swinging hand leaves long stretches of flat lines where it turns round, but few of them.
func ExampleSetting_CountLines() {
	travel := hone.Travel{Depth: 90 * units.Millimetre, Tool: 60 * units.Millimetre, Top: 30 * units.Millimetre, Bottom: 30 * units.Millimetre}
	drill := hone.Setting{Bore: 67 * units.Millimetre, Spindle: 150 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	byLength, byNumber, err := drill.CountLines(hone.Crank(), travel, crosshatch("30° included"))
	for _, row := range []struct {
		by string
		hone.Tally
	}{{"length", byLength}, {"number", byNumber}} {
		fmt.Printf("by %s: %.1f° on the mean, %.0f %% flatter than 30°\n", row.by, row.Mean.In(units.Degree), 100*row.Flat)
	}
	fmt.Println(err)
	// Output:
	// by length: 41.8° on the mean, 22 % flatter than 30°
	// by number: 47.6° on the mean, 9 % flatter than 30°
	// <nil>
}

// What the ends get of what the middle gets, with a third and with half of the stones out.
func ExamplePressing() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Spindle: 120 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	for _, out := range []units.Length{20 * units.Millimetre, 30 * units.Millimetre} {
		t := hone.Travel{Depth: 150 * units.Millimetre, Tool: 60 * units.Millimetre, Top: out, Bottom: out}
		for _, law := range []hone.Pressing{hone.ConstantPressure, hone.ConstantForce} {
			r, err := s.Removal(hone.Steady(), t, law, 50*units.Micrometre, 2)
			if err != nil {
				fmt.Println(err)
				return
			}
			fmt.Printf("%v out, %v: %.2f\n", out, law, r.Top.In(r.Middle))
		}
	}
	// Output:
	// 20 mm out, constant pressure: 0.33
	// 20 mm out, constant force: 0.41
	// 30 mm out, constant pressure: 0.50
	// 30 mm out, constant force: 0.69
}

// A gauge that may be off by 20 µm cannot bring a bore to within 10 µm: the answer is not a guess.
func ExampleDecision() {
	reading := func(text string) hone.Reading {
		return hone.Reading{
			Diameter: uncertainty.Estimate{Value: units.MustParseLength(text), Std: 10 * units.Micrometre},
			At:       units.MustParseTemperature("20 °C"),
		}
	}
	z := hone.Sizing{
		Metal: material.GreyIron(), Finish: units.Limits{Min: units.MustParseLength("67.020 mm"), Max: units.MustParseLength("67.030 mm")},
		Trial: 5 * time.Second, Longest: 20 * time.Second, Start: reading("66.990 mm"),
		Passes: []hone.Pass{{Lasts: 20 * time.Second, After: reading("67.015 mm")}},
	}
	n, err := z.Next()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(n.Decision)
	// Output: measure again
}

// Which grit for molybdenum-faced rings, for the last honing? What the sources say, and who says it.
func ExampleGrits() {
	for _, g := range hone.Grits() {
		if g.Stage == "last honing" && (g.Facing == "" || g.Facing == "molybdenum") {
			fmt.Printf("%d to %d %s %s (%s)\n", g.Coarse, g.Fine, g.Facing, g.Of, g.Source)
		}
	}
	// Output:
	// 180 to 220   (common practice, an engine maker's manual)
	// 220 to 220   (common practice, an engine maker's manual, another)
	// 280 to 280 molybdenum silicon carbide (common practice, a trade magazine of 2004)
	// 320 to 320  aluminium oxide, a small air-cooled engine (common practice, an engine maker's manual, a third)
	// 320 to 400 molybdenum silicon carbide, for competition (common practice, a trade magazine of 2004)
}

// A stone of 45 mm spans a port of 20 mm, not one of 25 mm: its middle would stand on nothing.
func ExampleRun() {
	for _, lower := range []units.Length{70 * units.Millimetre, 75 * units.Millimetre} {
		_, err := hone.UsualTravel(hone.Run{
			Kind: hone.RigidStone, Depth: 90 * units.Millimetre, Tool: 45 * units.Millimetre,
			RoomTop: 50 * units.Millimetre, RoomBottom: 50 * units.Millimetre,
			Ports: []units.Limits{{Min: 50 * units.Millimetre, Max: lower}},
		})
		fmt.Println(lower, errors.Is(err, hone.ErrRoom))
	}
	// Output:
	// 70 mm false
	// 75 mm true
}
