// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"errors"
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// The examples are of one invented engine, an irrigation pump's of 67 mm bore.

// must1 ends an example that went wrong.
func must1[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// A ring was measured in the worn bore. What is to be filed off once the bore is honed to its finish
// size, and what is left of the gap when the engine is hot?
func Example() {
	now := must1(rings.Feeler(units.MustParseLength("0.35 mm"), units.MustParseLength("0.40 mm")))
	gap := rings.Gap{
		Measured: now,
		Bore:     uncertainty.Estimate{Value: units.MustParseLength("67.062 mm"), Std: 2 * units.Micrometre},
	}
	atFinish := must1(gap.In(uncertainty.Estimate{Value: units.MustParseLength("67.010 mm"), Std: 2 * units.Micrometre}))
	fmt.Println("gap now:", now)
	fmt.Println("gap at finish size:", atFinish)

	window := must1(units.ParseLimits("0.25 to 0.40 mm"))
	filing := must1(rings.FileTo(atFinish, window, uncertainty.Risk{}))
	fmt.Printf("%v: take off %s, stop between %s and %s\n", filing.Action, filing.TakeOff.Format(units.Millimetre, 2),
		filing.Stop.Min.Format(units.Millimetre, 2), filing.Stop.Max.Format(units.Millimetre, 2))

	heat := rings.Warm{
		Ring: material.GreyIron(), RingAt: must1(units.Celsius(200)), RingWithin: 25 * units.Kelvin,
		Bore: material.GreyIron(), BoreAt: must1(units.Celsius(140)), BoreWithin: 25 * units.Kelvin,
	}
	fmt.Println("gap when hot:", must1(heat.HotGap(filing.After(), atDiameter("67.010 mm"))))
	// Output:
	// gap now: 0.375 ± 0.028 mm
	// gap at finish size: 0.212 ± 0.033 mm
	// file: take off 0.07 mm, stop between 0.28 mm and 0.37 mm
	// gap when hot: 0.14 ± 0.11 mm
}

// atDiameter is a bore whose size is known without doubt.
func atDiameter(s string) uncertainty.Estimate {
	return uncertainty.Estimate{Value: units.MustParseLength(s)}
}

// Can taper be found with a ring and a feeler gauge? The growth of the gap, divided by π, is the
// growth of the diameter. 0.05 mm from one leaf to the next is some 0.01 mm of taper either way.
func ExampleDiameterChange() {
	low := must1(rings.Feeler(units.MustParseLength("0.35 mm"), units.MustParseLength("0.40 mm")))
	high := must1(rings.Feeler(units.MustParseLength("0.75 mm"), units.MustParseLength("0.80 mm")))
	fmt.Println("taper:", must1(rings.DiameterChange(low, high)))
	// Output:
	// taper: 0.127 ± 0.013 mm
}

// The ring gap grew after honing: how much did the hone take off the diameter?
func ExampleDiameterChange_honed() {
	before, after := atDiameter("0.30 mm"), atDiameter("0.42 mm")
	fmt.Println(must1(rings.DiameterChange(before, after)).Value.Format(units.Millimetre, 3))
	// Output:
	// 0.038 mm
}

// A ring for the next oversize does not go into a standard bore: its ends overlap.
func ExampleGap() {
	ring := rings.Gap{Measured: atDiameter("0.30 mm"), Bore: atDiameter("67.25 mm")}
	fmt.Println(must1(ring.In(atDiameter("67.00 mm"))).Value.Format(units.Millimetre, 2))
	_, err := rings.Gap{Measured: atDiameter("-0.49 mm"), Bore: atDiameter("67.00 mm")}.In(atDiameter("67.25 mm"))
	fmt.Println(errors.Is(err, units.ErrRange), err)
	// Output:
	// -0.49 mm
	// true rings: end gap -0.49 mm: out of range (a gap is more than 0)
}

func ExampleFeeler() {
	fmt.Println(must1(rings.Feeler(units.MustParseLength("0.30 mm"), units.MustParseLength("0.35 mm"))))
	fmt.Println(must1(rings.Feeler(units.MustParseLength("0.30 mm"), 0)), "by one leaf alone")
	// Output:
	// 0.325 ± 0.028 mm
	// 0.325 ± 0.028 mm by one leaf alone
}

// My end gap is too small: how much do I file off? The plan stops to measure on the way.
func ExampleFileTo() {
	gap := uncertainty.Estimate{Value: units.MustParseLength("0.12 mm"), Std: units.MustParseLength("0.01 mm")}
	f := must1(rings.FileTo(gap, must1(units.ParseLimits("0.25 to 0.40 mm")), uncertainty.Risk{}))
	fmt.Println(f.Action, f.TakeOff.Format(units.Millimetre, 2))
	for _, reading := range f.Steps {
		fmt.Println("file to", reading.Format(units.Millimetre, 2), "and measure")
	}
	// Output:
	// file 0.15 mm
	// file to 0.25 mm and measure
	// file to 0.27 mm and measure
}

// Where a leaf is 0.05 mm from the next, no reading can prove a window of 0.05 mm.
func ExampleFileTo_doubt() {
	gap := must1(rings.Feeler(units.MustParseLength("0.15 mm"), units.MustParseLength("0.20 mm")))
	_, err := rings.FileTo(gap, must1(units.ParseLimits("0.20 to 0.25 mm")), uncertainty.Risk{})
	fmt.Println(errors.Is(err, rings.ErrDoubt))
	// Output:
	// true
}

// What maximum gap before the ring is scrap? The maker's limit, here 1.0 mm, with the doubt of the feeler gauge.
func ExampleFileTo_limit() {
	limit := must1(units.ParseLimits("max 1.0 mm"))
	for _, goes := range []string{"0.90 mm", "0.98 mm", "1.05 mm"} {
		leaf := units.MustParseLength(goes)
		gap := must1(rings.Feeler(leaf, leaf+50*units.Micrometre))
		f := must1(rings.FileTo(gap, limit, uncertainty.Risk{}))
		fmt.Printf("%v: %v, gap %v\n", gap, f.Action, f.Now.Verdict)
	}
	// Output:
	// 0.925 ± 0.028 mm: as is, gap within
	// 1.005 ± 0.028 mm: undecided, gap undecided
	// 1.075 ± 0.028 mm: too wide, gap beyond
}

func ExampleFiling_After() {
	f := must1(rings.FileTo(atDiameter("0.20 mm"), must1(units.ParseLimits("0.25 to 0.40 mm")), uncertainty.Risk{}))
	fmt.Println(f.After())
	// Output:
	// 0.25 mm
}

func ExampleAction() {
	var a rings.Action // nothing is known yet
	fmt.Println(a, rings.FileEnds, rings.TooWide)
	// Output:
	// undecided file too wide
}

// What minimum gap for this bore and duty? The maker's window first; rules of the trade differ by three to one,
// and what the heat takes can be worked out.
func ExampleRules() {
	rules, spread, err := rings.Rules(units.MustParseLength("67 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d rules, from %s to %s\n", len(rules), spread.Min.Format(units.Millimetre, 2), spread.Max.Format(units.Millimetre, 2))

	heavy := rings.Warm{
		Ring: material.GreyIron(), RingAt: must1(units.Celsius(220)),
		Bore: material.GreyIron(), BoreAt: must1(units.Celsius(140)),
	}
	fmt.Println("least that does not butt:", must1(heavy.Least(units.MustParseLength("67 mm"), 50*units.Micrometre)))
	// Output:
	// 7 rules, from 0.13 mm to 0.40 mm
	// least that does not butt: 0.239 ± 0.056 mm
}

// Where in a worn bore should the gap be set? Where it is smallest in the ring's travel: low in one that is
// worn at the top, high in a choked one.
func ExampleNarrowest() {
	travel := bore.RingTravel{Top: units.MustParseLength("8 mm"), Bottom: units.MustParseLength("85 mm")}
	worn := []bore.Plane{
		{Depth: units.MustParseLength("10 mm"), Mean: atDiameter("67.090 mm")},
		{Depth: units.MustParseLength("45 mm"), Mean: atDiameter("67.050 mm")},
		{Depth: units.MustParseLength("80 mm"), Mean: atDiameter("67.020 mm")},
		{Depth: units.MustParseLength("95 mm"), Mean: atDiameter("67.004 mm")}, // no ring comes here
	}
	choked := []bore.Plane{
		{Depth: units.MustParseLength("10 mm"), Mean: atDiameter("66.960 mm")},
		{Depth: units.MustParseLength("80 mm"), Mean: atDiameter("67.010 mm")},
	}
	for _, levels := range [][]bore.Plane{worn, choked} {
		at := must1(rings.Narrowest(levels, travel))
		fmt.Println("at a depth of", at.Depth, "where the bore is", at.Mean)
	}
	// Output:
	// at a depth of 80 mm where the bore is 67.02 mm
	// at a depth of 10 mm where the bore is 66.96 mm
}

// 0.1 mm of ovality makes the bore as long round as a round one of the mean diameter, to 10 nm.
func ExampleOval() {
	o := rings.Oval{Max: units.MustParseLength("87.55 mm"), Min: units.MustParseLength("87.45 mm")}
	fmt.Println(must1(o.Perimeter()).Format(units.Millimetre, 3), must1(o.Round()).Format(units.Millimetre, 6))
	// Output:
	// 274.889 mm 87.500007 mm
}

// A ring that closes its gap when hot is refused loudly, with the overlap.
func ExampleWarm() {
	heat := rings.Warm{
		Ring: material.GreyIron(), RingAt: must1(units.Celsius(250)),
		Bore: material.GreyIron(), BoreAt: must1(units.Celsius(120)),
	}
	hot, err := heat.HotGap(atDiameter("0.20 mm"), atDiameter("67 mm"))
	fmt.Println(errors.Is(err, rings.ErrButts), hot.Value.Format(units.Millimetre, 2))
	// Output:
	// true -0.11 mm
}

// A gap was read with leaves in a barrel of aluminium, in a workshop at 5 °C. At 20 °C, where the window holds, it is
// wider.
func ExampleWarm_Change() {
	five := units.MustParseTemperature("5 °C")
	cold := rings.Warm{Ring: material.GreyIron(), RingAt: five, Bore: material.AluminiumBlock(), BoreAt: five}
	change := must1(cold.Change(units.MustParseLength("72 mm")))
	gap := must1(rings.Feeler(units.MustParseLength("0.10 mm"), units.MustParseLength("0.15 mm")))
	um := units.Micrometre
	at20 := uncertainty.Estimate{Value: gap.Value - change.Value, Std: must1(units.Of(math.Hypot(gap.Std.In(um), change.Std.In(um)), um))}
	window := units.Limits{Min: units.MustParseLength("0.25 mm"), Max: units.MustParseLength("0.45 mm")}
	filing := must1(rings.FileTo(at20, window, uncertainty.Risk{}))
	fmt.Println("read", gap, "at 20 °C", at20)
	fmt.Println(filing.Action, "to", filing.Target.Format(units.Millimetre, 2), "as read at 20 °C")
	// Output:
	// read 0.125 ± 0.028 mm at 20 °C 0.160 ± 0.029 mm
	// file to 0.28 mm as read at 20 °C
}

func ExampleGroove() {
	groove := rings.Groove{Height: atDiameter("1.545 mm"), Root: atDiameter("60.8 mm")}
	fmt.Println("side", must1(groove.SideClearance(atDiameter("1.490 mm"))))
	fmt.Println("back", must1(groove.BackClearance(atDiameter("2.7 mm"), atDiameter("67 mm"))))
	// Output:
	// side 0.055 mm
	// back 0.4 mm
}

// A two-stroke's ring pegged at 40° passes an exhaust port and a transfer port.
func ExampleEnds() {
	ends := rings.Ends{Peg: 40 * units.Degree, Gap: units.MustParseLength("0.4 mm"), Play: units.MustParseLength("0.3 mm"), Bore: units.MustParseLength("52 mm")}
	ports := []bore.Port{
		{Name: "exhaust", At: 0, Width: 60 * units.Degree, From: units.MustParseLength("28 mm"), To: units.MustParseLength("48 mm")},
		{Name: "transfer", At: 63 * units.Degree, Width: 44 * units.Degree, From: units.MustParseLength("36 mm"), To: units.MustParseLength("48 mm")},
	}
	travel := bore.RingTravel{Top: units.MustParseLength("3 mm"), Bottom: units.MustParseLength("50 mm")}
	for _, r := range must1(ends.Clear(ports, travel)) {
		fmt.Println("port", r.Port, "room", r.Room.Format(units.Millimetre, 2), "crosses:", r.Room <= 0)
	}
	// Output:
	// port 0 room 4.04 mm crosses: false
	// port 1 room -0.05 mm crosses: true
}

// A port that the ring does not reach is no danger to it, wherever its ends stand.
func ExampleEnds_Clear() {
	ends := rings.Ends{Peg: 0, Gap: units.MustParseLength("0.4 mm"), Bore: units.MustParseLength("52 mm")}
	crankcase := bore.Port{At: 0, Width: 20 * units.Degree, From: units.MustParseLength("60 mm"), To: units.MustParseLength("70 mm")}
	rooms := must1(ends.Clear([]bore.Port{crankcase}, bore.RingTravel{Top: units.MustParseLength("3 mm"), Bottom: units.MustParseLength("50 mm")}))
	fmt.Println(len(rooms), "ports passed")
	// Output:
	// 0 ports passed
}

// A peg in the middle of the land between two ports 20° apart: half of the land, less half of the gap.
func ExampleRoom() {
	ends := rings.Ends{Peg: 50 * units.Degree, Gap: units.MustParseLength("0.4 mm"), Bore: units.MustParseLength("52 mm")}
	port := bore.Port{At: 230 * units.Degree, Width: 340 * units.Degree, From: units.MustParseLength("28 mm"), To: units.MustParseLength("48 mm")}
	rooms := must1(ends.Clear([]bore.Port{port}, bore.RingTravel{Top: units.MustParseLength("3 mm"), Bottom: units.MustParseLength("50 mm")}))
	fmt.Println(rooms[0].Room.Format(units.Millimetre, 2))
	// Output:
	// 4.34 mm
}

func ExampleStagger() {
	for i, a := range must1(rings.Stagger(3)) {
		fmt.Printf("ring %d at %.0f°\n", i+1, a.In(units.Degree))
	}
	// Output:
	// ring 1 at 15°
	// ring 2 at 135°
	// ring 3 at 255°
}

// How hard does a ring press, and is a measured force what its free gap says?
// A ring of 67 mm whose ends stand 8.3 mm apart on the bench and 0.3 mm in the bore closes by 8 mm.
func ExampleSection_Tension() {
	s := rings.Section{
		Bore: units.MustParseLength("67 mm"), Thickness: units.MustParseLength("2.7 mm"),
		Height: units.MustParseLength("1.5 mm"), Young: 110 * units.Gigapascal,
	}
	t, err := s.Tension(units.MustParseLength("8.3 mm"), units.MustParseLength("0.3 mm"))
	fmt.Printf("%v closed, %.2f N, %v\n", t.Closing, t.Tangential.In(units.Newton), err)
	// Output: 8 mm closed, 6.91 N, <nil>
}

func ExampleSection() {
	s := rings.Section{
		Bore: units.MustParseLength("67 mm"), Thickness: units.MustParseLength("2.7 mm"), Height: units.MustParseLength("1.5 mm"),
		Young: 110 * units.Gigapascal,
	}
	free := must1(s.Tension(units.MustParseLength("8 mm"), 0))
	fmt.Printf("tangential %.1f N, diametral %.1f N, wall %.3f MPa, stress %.0f MPa\n", free.Tangential.In(units.Newton),
		free.Diametral.In(units.Newton), free.Wall.In(units.Megapascal), free.Stress.In(units.Megapascal))
	used := must1(s.TensionUnder(16 * units.Newton * 379 / 1000))
	fmt.Printf("16 N across: a closing of %s\n", used.Closing.Format(units.Millimetre, 1))
	// Output:
	// tangential 6.9 N, diametral 18.2 N, wall 0.138 MPa, stress 244 MPa
	// 16 N across: a closing of 7.0 mm
}

// Will this ring follow a bore that is 0.03 mm out of round? Ovality is a difference of diameters: of 0.03 mm
// the radial amplitude is 0.0075 mm. What two axes do not see stays open.
func ExampleTension_Follow() {
	s := rings.Section{
		Bore: units.MustParseLength("67 mm"), Thickness: units.MustParseLength("2.7 mm"), Height: units.MustParseLength("1.5 mm"),
		Young: 110 * units.Gigapascal,
	}
	ring := must1(s.Tension(units.MustParseLength("8 mm"), 0))
	oval := must1(rings.Oval{Max: units.MustParseLength("67.03 mm"), Min: units.MustParseLength("67 mm")}.Harmonic(0))
	fmt.Println("radial amplitude", oval.Amplitude)
	c := must1(ring.Follow([]bore.Harmonic{oval}))
	fmt.Printf("%v: %.0f %% used by the derived rule, %.0f %% by the empirical one; orders %v not seen\n",
		c.Verdict, 100*c.Derived.Used, 100*c.Empirical.Used, c.Unseen)
	// Output:
	// radial amplitude 0.0075 mm
	// within: 8 % used by the derived rule, 53 % by the empirical one; orders [3 4 5 6] not seen
}

// Four bolts pull a bore into order 4. Each rule says something else of it, so it stays undecided.
func ExampleConformity() {
	s := rings.Section{
		Bore: units.MustParseLength("67 mm"), Thickness: units.MustParseLength("2.7 mm"), Height: units.MustParseLength("1.5 mm"),
		Young: 110 * units.Gigapascal,
	}
	ring := must1(s.Tension(units.MustParseLength("8 mm"), 0))
	c := must1(ring.Follow([]bore.Harmonic{
		{Order: 2, Amplitude: 4 * units.Micrometre},
		{Order: 4, Amplitude: 3 * units.Micrometre},
	}))
	reach := must1(ring.Bound(4))
	fmt.Println("order 4:", reach.Derived.Format(units.Micrometre, 1), "or", reach.Empirical.Format(units.Micrometre, 1))
	fmt.Printf("%v: %.2f, most of it order %d, or %.2f, most of it order %d\n", c.Verdict, c.Derived.Used, c.Derived.Most, c.Empirical.Used, c.Empirical.Most)
	// Output:
	// order 4: 3.8 µm or 2.8 µm
	// undecided: 0.84, most of it order 4, or 1.34, most of it order 4
}

// Each order is inside its bound, and the ring may fail all the same: the parts add up.
func ExampleDemand() {
	s := rings.Section{
		Bore: units.MustParseLength("67 mm"), Thickness: units.MustParseLength("2.7 mm"), Height: units.MustParseLength("1.5 mm"),
		Young: 110 * units.Gigapascal,
	}
	ring := must1(s.Tension(units.MustParseLength("8 mm"), 0))
	c := must1(ring.Follow([]bore.Harmonic{
		{Order: 2, Amplitude: 9 * units.Micrometre},
		{Order: 3, Amplitude: 4 * units.Micrometre},
		{Order: 4, Amplitude: 2600 * units.Nanometre},
	}))
	for _, d := range []rings.Demand{c.Derived, c.Empirical} {
		fmt.Printf("%.2f in all, %.2f of it order %d\n", d.Used, d.ByMost, d.Most)
	}
	fmt.Println(c.Verdict)
	// Output:
	// 1.09 in all, 0.69 of it order 4
	// 2.31 in all, 0.92 of it order 4
	// undecided
}

func ExampleBound() {
	s := rings.Section{
		Bore: units.MustParseLength("67 mm"), Thickness: units.MustParseLength("2.7 mm"), Height: units.MustParseLength("1.5 mm"),
		Young: 110 * units.Gigapascal,
	}
	ring := must1(s.Tension(units.MustParseLength("8 mm"), 0))
	fmt.Println("order  derived  empirical, radial")
	for order := 2; order <= 5; order++ {
		r := must1(ring.Bound(order))
		fmt.Printf("%5d %8.1f %10.1f µm\n", order, r.Derived.In(units.Micrometre), r.Empirical.In(units.Micrometre))
	}
	// Output:
	// order  derived  empirical, radial
	//     2     94.3       14.1 µm
	//     3     13.3        5.3 µm
	//     4      3.8        2.8 µm
	//     5      1.5        1.8 µm
}

// The maker's window begins at 0.25 mm; hot, 0.05 mm is to be left.
func ExampleWarm_Window() {
	h := rings.Warm{
		Ring: material.GreyIron(), Bore: material.GreyIron(),
		RingAt: units.MustParseTemperature("200 °C"), BoreAt: units.MustParseTemperature("120 °C"),
	}
	window := units.Limits{Min: units.MustParseLength("0.25 mm"), Max: units.MustParseLength("0.45 mm")}
	w := must1(h.Window(window, units.MustParseLength("78.5 mm"), units.MustParseLength("0.05 mm")))
	fmt.Println(w.Min.Format(units.Millimetre, 3), "to", w.Max)
	// Output: 0.328 mm to 0.45 mm
}

func ExampleCautions() {
	fmt.Println(rings.Cautions()[0])
	fmt.Println(rings.CautionPegs)
	// Output:
	// The maker's gap and limit come before any rule.
	// Pegged rings keep the place of their pegs; no ring end may cross a port.
}
