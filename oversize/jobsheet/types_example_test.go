// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"time"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// show prints a value as it stands in a job file.
func show(v any) {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		fmt.Println(err)
	}
	fmt.Print(b.String())
}

// ptr returns where a value stands, for what can be zero or left out.
func ptr[T any](v T) *T { return &v }

// mustLength is a length that is right as written.
func mustLength(s string) units.Length { return units.MustParseLength(s) }

// sheetOf is the sheet of one of the demo jobs of the refresh program.
func sheetOf(name string) jobsheet.Sheet {
	f, err := os.Open("../../examples/refresh/jobs/" + name + ".json")
	if err != nil {
		fmt.Println(err)
		return jobsheet.Sheet{}
	}
	defer f.Close()
	j, err := jobsheet.ReadJob(f)
	if err != nil {
		fmt.Println(err)
		return jobsheet.Sheet{}
	}
	s, err := jobsheet.Plan(j)
	if err != nil {
		fmt.Println(err)
	}
	return s
}

// What the maker and the first look say.
func ExampleEngine() {
	show(jobsheet.Engine{
		Cylinders: 1, Cycle: jobsheet.FourStroke, Wall: oversize.BareIron, Bore: mustLength("67 mm"), Stroke: mustLength("58 mm"),
		Duty: fit.CastAir, CompressionRatio: 7.5,
	})
	// Output:
	// {"cylinders":1,"cycle":"four-stroke","bore":"67 mm","stroke":"58 mm","wall":"bare iron","compression_ratio":7.5,"duty":"cast, air-cooled"}
}

func ExampleLimits() {
	show(jobsheet.Limits{Service: mustLength("67.100 mm"), Ovality: mustLength("2 thou"), PistonClearance: units.Limits{Min: mustLength("0.040 mm"), Max: mustLength("0.070 mm")}})
	// Output:
	// {"service":"67.1 mm","ovality":"0.0508 mm","piston_clearance":"0.04 mm to 0.07 mm"}
}

// The space above the piston, from a dished piston and a measured head.
func ExampleEngine_chamber() {
	show(oversize.Chamber{Head: 28 * units.CubicCentimetre, Crown: -1.5 * units.CubicCentimetre, Deck: mustLength("0.2 mm"), Gasket: mustLength("1.1 mm")})
	// Output:
	// {"head":"28 cm³","crown":"-1.5 cm³","deck":"0.2 mm","gasket":"1.1 mm"}
}

func ExampleRunning() {
	ring, err := bore.ParseTemperature("170 ± 15 °C")
	fmt.Println(err)
	show(jobsheet.Running{Ring: ring})
	// Output:
	// <nil>
	// {"ring":"170 ± 15 °C"}
}

// A pegged ring of a two-stroke.
func ExampleRing() {
	show(jobsheet.Ring{
		Name: "upper", Gap: units.Limits{Min: mustLength("0.20 mm"), Max: mustLength("0.35 mm")},
		Peg: ptr(128 * units.Degree), Play: ptr(mustLength("0.2 mm")),
	})
	// Output:
	// {"name":"upper","gap":"0.2 mm to 0.35 mm","peg":"128°","play":"0.2 mm"}
}

func ExampleOversize() {
	show(jobsheet.Oversize{Over: mustLength("0.50 mm"), MakersList: true, Piston: jobsheet.Piston{Size: jobsheet.Measured{Value: mustLength("78.445 mm"), Expanded: mustLength("0.004 mm")}, Axis: fit.AcrossPin}})
	// Output:
	// {"over":"0.5 mm","makers_list":true,"piston":{"size":"78.445 ± 0.004 mm","axis":"across pin"}}
}

func ExamplePiston() {
	show(jobsheet.Piston{Size: jobsheet.Measured{Value: mustLength("66.955 mm"), Expanded: mustLength("0.003 mm")}, Axis: fit.AcrossPin, Height: mustLength("12 mm"), WithStandard: true})
	// Output:
	// {"size":"66.955 ± 0.003 mm","axis":"across pin","height":"12 mm","with_standard":true}
}

func ExampleGauge() {
	show(jobsheet.Gauge{Kind: ptr(bore.TwoPoint), Resolution: mustLength("0.002 mm"), Dial: bore.PlusIsSmaller})
	// Output:
	// {"kind":"two-point","resolution":"0.002 mm","dial":"plus is smaller","temperatures":{}}
}

func ExampleStandard() {
	show(jobsheet.Standard{Name: "setting ring 67", Size: jobsheet.Measured{Value: mustLength("67.0040 mm"), Expanded: mustLength("0.0015 mm")}})
	// Output:
	// {"name":"setting ring 67","size":"67.004 ± 0.0015 mm"}
}

// A temperature that nobody measured is the range it must have been in.
func ExampleTemperatures() {
	var t jobsheet.Temperatures
	fmt.Println(json.Unmarshal([]byte(`{"cylinder": "10 to 25 °C", "gauge_used": "21 ± 1 °C"}`), &t))
	fmt.Println(t.Cylinder, t.GaugeUsed)
	// Output:
	// <nil>
	// 17.5 ± 7.5 °C 21 ± 1 °C
}

func ExampleSurvey() {
	var s jobsheet.Survey
	fmt.Println(json.Unmarshal([]byte(`{"on": "2026-03-14 09:00", "by": "the machinist", "torque_plate": true}`), &s))
	fmt.Println(s.On, s.By, *s.TorquePlate)
	// Output:
	// <nil>
	// 2026-03-14 09:00 the machinist true
}

// The proof has a date and temperatures of its own; its readings stand with each cylinder.
func ExampleProof() {
	p := sheetOf("keep").Job.Proof
	fmt.Println(p.On, p.Washed, p.Temperatures.Cylinder)
	// Output:
	// 2026-03-15 08:30 true 19.1 ± 0.5 °C
}

func ExampleCylinder() {
	show(jobsheet.Cylinder{
		Name: "1", Over: ptr(mustLength("0 mm")), WearShare: 0.7, PlatingWhole: ptr(true),
		Readings: []jobsheet.Reading{{Depth: ptr(mustLength("10 mm")), Axis: ptr(bore.PinAxis), Diameter: mustLength("67.051 mm")}},
		Pits:     []bore.Pit{{Below: mustLength("0.02 mm"), Depth: mustLength("31 mm"), At: ptr(40 * units.Degree)}},
	})
	// Output:
	// {"name":"1","over":"0 mm","readings":[{"depth":"10 mm","axis":"pin","diameter":"67.051 mm"}],"pits":[{"below":"0.02 mm","depth":"31 mm","at":"40°"}],"wear_share":0.7,"plating_whole":true}
}

func ExampleReading() {
	show(jobsheet.Reading{Depth: ptr(mustLength("10 mm")), Axis: ptr(bore.PinAxis), Diameter: mustLength("67.051 mm")})
	show(jobsheet.Reading{Depth: ptr(mustLength("10 mm")), Axis: ptr(bore.ThrustAxis), Deviation: ptr(mustLength("-0.049 mm"))})
	// Output:
	// {"depth":"10 mm","axis":"pin","diameter":"67.051 mm"}
	// {"depth":"10 mm","axis":"thrust","deviation":"-0.049 mm"}
}

func ExampleRingGap() {
	show(jobsheet.RingGap{Ring: "top", Gap: jobsheet.Measured{Value: mustLength("0.21 mm"), Expanded: mustLength("0.02 mm")}, Bore: mustLength("78.500 mm"), Finished: jobsheet.Measured{Value: mustLength("0.33 mm")}, Filed: true})
	// Output:
	// {"ring":"top","gap":"0.21 ± 0.02 mm","bore":"78.5 mm","finished":"0.33 mm","filed":true}
}

// A gap 0.07 mm larger above than below is 0.07 mm/π of taper.
func ExampleFeelerGap() {
	c := sheetOf("keep")
	show(c.Job.Cylinders[0].FeelerTest[0])
	fmt.Println(c.Cylinders[0].FeelerTaper)
	// Output:
	// {"depth":"12 mm","gap":"0.46 ± 0.02 mm"}
	// 0.0223 ± 0.0088 mm
}

func ExamplePass() {
	show(jobsheet.Pass{Lasts: jobsheet.Duration{Duration: 15 * time.Second}, Diameter: mustLength("78.456 mm"), At: units.MustParseTemperature("27 °C")})
	// Output:
	// {"lasts":"15s","diameter":"78.456 mm","at":"27 °C"}
}

func ExampleDuration() {
	var d jobsheet.Duration
	fmt.Println(d.UnmarshalText([]byte("1m30s")), d.Seconds())
	fmt.Println(d.UnmarshalText([]byte("90")))
	// Output:
	// <nil> 90
	// want a time such as "20s" or "1m30s"
}

func ExampleTools() {
	show(jobsheet.Tools{Hone: hone.RigidStone, Drive: hone.ByHand, ToolLength: mustLength("60 mm"), Crosshatch: included(45)})
	// Output:
	// {"hone":"rigid-stone hone","drive":"by hand","tool_length":"60 mm","crosshatch":"45° included"}
}

// A last phase that replaces the lines of the one before takes off as much radius as those are deep.
func ExamplePhase() {
	for i, t := range sheetOf("pump").Honing.Traces {
		fmt.Println(i+1, t.Crosshatch.Format(1), "gone:", t.Gone)
	}
	// Output:
	// 1 7.8° included gone: true
	// 2 42.1° included gone: false
}

func ExampleCuts() {
	show(jobsheet.Cuts{Shop: oversize.Shop{MostDepth: mustLength("0.15 mm"), FinishBore: mustLength("0.05 mm"), FinishHone: mustLength("0.015 mm")}, Warm: units.MustParseTemperature("35 °C")})
	// Output:
	// {"most_depth":"0.15 mm","finish_bore":"0.05 mm","finish_hone":"0.015 mm","warm":"35 °C"}
}

func ExampleSleeve() {
	s := sheetOf("sleeve-loose")
	fmt.Println(s.Job.Engine.Sleeve.Hole, s.Job.Engine.Sleeve.Shaft, "DIAMETRAL", s.Sleeve.Joint.Interference.Min, "to", s.Sleeve.Joint.Interference.Max)
	// Output:
	// H7 s6 DIAMETRAL 0.029 mm to 0.078 mm
}

func ExampleSleeveSheet() {
	v := sheetOf("sleeve-loose").Sleeve
	fmt.Printf("heat to %.0f °C; slips home: %v; grips when running: %v\n", v.Heat.Barrel.Celsius(), v.Heat.Slips, v.Running.Grips)
	// Output:
	// heat to 106 °C; slips home: within; grips when running: undecided
}

// The pump's first cylinder is being honed, its second still to be bored.
func ExamplePlan() {
	s := sheetOf("pump")
	for _, c := range s.Cylinders {
		fmt.Println(c.Name, "-", c.Next)
	}
	fmt.Println("engine:", s.Choice.Route, s.Choice.Over, "- next:", s.Next)
	// Output:
	// 1, flywheel side - hone
	// 2, pump side - bore
	// engine: rebore 0.5 mm - next: bore
}

func ExampleStep() {
	for _, name := range []string{"unread", "pump", "pump-finished", "plated"} {
		fmt.Println(name, "-", sheetOf(name).Next)
	}
	// Output:
	// unread - measure
	// pump - bore
	// pump-finished - reassemble
	// plated - ask the maker
}

func ExampleCylinderSheet() {
	c := sheetOf("keep").Cylinders[0]
	fmt.Println(c.Bore.Largest.Size, c.Bore.Ovality, c.Bore.Shape)
	fmt.Println(c.Findings[1].Subject, c.Findings[1].Verdict)
	// Output:
	// 67.0361 ± 0.0026 mm 0.0110 ± 0.0027 mm tapered
	// service limit within
}

// What would settle an undecided finding.
func ExampleCylinderSheet_remedies() {
	c := sheetOf("two-stroke").Cylinders[0]
	for i, r := range c.Remedies {
		fmt.Printf("%s: %s\n", c.Findings[i].Subject, r.Format(units.Millimetre))
	}
	// Output:
	// ovality at 9 mm: beyond, were the standard uncertainty 0.00062 mm or less; more readings alone would not do
}

func ExampleClearance() {
	j := sheetOf("keep").Job
	j.Engine.Running = jobsheet.Running{
		Bore:   bore.Temperature{Value: units.MustParseTemperature("120 °C"), Within: 10 * units.Kelvin},
		Piston: bore.Temperature{Value: units.MustParseTemperature("135 °C"), Within: 10 * units.Kelvin}, RingsByWindow: true,
	}
	s, err := jobsheet.Plan(j)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, k := range s.Cylinders[0].Clearances {
		fmt.Println(k.At, k.Size, "running", k.Hot)
	}
	// Output:
	// greatest now 0.0811 ± 0.0039 mm running -0.015 ± 0.012 mm
	// least now 0.0516 ± 0.0039 mm running -0.044 ± 0.012 mm
}

// What the gauge shows when a bore at 35 °C has its size.
func ExampleGaugeSize() {
	for _, w := range sheetOf("pump").Cylinders[0].Warm {
		fmt.Println(w.Operation, w.Size.Format(units.Millimetre, 4), w.Shows.Format(units.Millimetre, 3))
	}
	// Output:
	// rough hone 78.4855 mm 0.493 mm
	// finish hone 78.5005 mm 0.508 mm
	// plateau hone 78.5035 mm 0.511 mm
}

func ExampleRingSheet() {
	for _, r := range sheetOf("pump").Cylinders[0].Rings {
		fmt.Println(r.Ring, r.Gap, r.Filing.Action, "hot", r.Hot.Measured)
	}
	// Output:
	// top 0.221 ± 0.023 mm file hot 0.123 ± 0.097 mm
	// second 0.291 ± 0.023 mm as is hot 0.125 ± 0.097 mm
	// oil 0.631 ± 0.023 mm too wide hot 0.465 ± 0.097 mm
}

func ExampleHoneSheet() {
	h := sheetOf("pump").Honing
	fmt.Println("as set:", h.Leaves.Format(1))
	fmt.Printf("better: %.0f rev/min, %s\n", h.Used.Spindle.In(units.PerMinute), h.Reach.Leaves.Format(1))
	fmt.Printf("along the wall %.0f° to %.0f°\n", h.Wall.Min.In(units.Degree), h.Wall.Max.In(units.Degree))
	// Output:
	// as set: 7.8° included
	// better: 74 rev/min, 45.0° included
	// along the wall 0° to 66°
}

// What the sheet took because the job did not say it, and what it left out.
func ExampleRemark() {
	s := sheetOf("unread")
	for _, r := range append(s.Assumed, s.Omitted...) {
		fmt.Printf("%s: %s\n", r.On, r.Says)
	}
	// Output:
	// engine.material: the cylinder wall is grey iron
	// engine.barrel: the barrel around the sleeve is aluminium block
	// engine.piston_material: a piston is cast aluminium-silicon, eutectic
	// gauge.material: the gauge's rod is plain steel
	// everything that follows from the readings: read every cylinder
}

func ExampleProofSheet() {
	p := sheetOf("pump-finished").Cylinders[0].Proof
	fmt.Println("came off", p.Changed.Stock)
	for _, f := range p.Findings {
		fmt.Println(f.Limit, f.Verdict)
	}
	// Output:
	// came off 0.4244 ± 0.0062 mm
	// new bore within
	// ovality within
	// taper within
	// greatest minus least within
}

// Pages for a printer that knows ASCII alone.
func ExampleSheet_Print() {
	var b strings.Builder
	if err := sheetOf("keep").Print(&b, page.Text{Lines: 60, ASCII: true}); err != nil {
		fmt.Println(err)
	}
	fmt.Println(strings.Count(b.String(), "\f")+1, "pages; the first begins")
	fmt.Println(strings.SplitN(b.String(), "\n", 2)[0])
	// Output:
	// 5 pages; the first begins
	// Irrigation pump engine, one cylinder, kept: village workshop (invented)  page 1 of 5
}

// What the checklist says of the wash.
func ExampleSheet_checklist() {
	for _, c := range sheetOf("keep").Checklist {
		if c.On == "washing" {
			fmt.Println(c.Says)
		}
	}
	// Output:
	// Power off, the work cold; swarf off by brush, never by hand. Solvent only moves the grit about: hot water, soap and a brush.
	// Washed until a white cloth stays clean, dried, oiled at once.
	// Read again at rest, at the same places, clamped the same way; readings, temperatures, gauge and standard written down with date and name.
}

// A value and its doubt are one text, as a sheet prints it.
func ExampleMeasured() {
	for _, text := range []string{"78.194 ± 0.004 mm", "3.0785 ± 0.0002 in (9 readings)", "78.194 mm", "78.194"} {
		var m jobsheet.Measured
		err := m.UnmarshalText([]byte(text))
		fmt.Println(m, err)
	}
	// Output:
	// 78.194 ± 0.004 mm <nil>
	// 78.1939 ± 0.00508 mm (9 readings) <nil>
	// 78.194 mm <nil>
	// 0 mm units: length "78.194": missing unit at byte 6 (a bare number has no unit: write 78.194 mm or 78.194 in)
}

// One thing that must be true, and where it stands.
func ExampleRow() {
	for _, r := range sheetOf("pump").Ledger {
		if strings.HasSuffix(r.Key, ".pistons") {
			fmt.Println(r.Demand, "-", r.Stands, "-", r.Step)
		}
	}
	// Output:
	// the piston is there and measured - 1, flywheel side, +0.5 mm: proven: as the job shows - reassemble
	// the piston is there and measured - 2, pump side, +0.5 mm: proven: as the job shows - reassemble
}

func ExampleDemand() {
	var d jobsheet.Demand
	fmt.Println(d.UnmarshalText([]byte("running gap")), d)
	// Output:
	// <nil> ring ends apart in work
}

// The zero State is open: nothing is true because nobody spoke against it.
func ExampleState() {
	var s jobsheet.State
	fmt.Println(s)
	fmt.Println(s.UnmarshalText([]byte("proven")), s)
	// Output:
	// open
	// <nil> proven
}

func ExampleReason() {
	var r jobsheet.Reason
	fmt.Println(r.UnmarshalText([]byte("comes loose")), r)
	// Output:
	// <nil> its grip at the running temperature is not proven: do not run on it
}

// What was judged by eye goes on a named person's word, while it stands as it stood.
func ExampleAcceptance() {
	j := sheetOf("keep").Job
	j.Cylinders[0].Crosshatch = hone.Crosshatch{}
	s, err := jobsheet.Plan(j)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range s.Ledger {
		if strings.HasSuffix(r.Key, ".crosshatch") {
			fmt.Println(r.Stands)
			j.Accepted = append(j.Accepted, jobsheet.Acceptance{Row: r.Key, By: "the machinist", Why: "judged by eye, under a lamp", Stood: r.Stands})
		}
	}
	if s, err = jobsheet.Plan(j); err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range s.Ledger {
		if r.State == jobsheet.StateAccepted {
			fmt.Println(r.Key, r.State, "by", r.By)
		}
	}
	// Output:
	// 1, 2026-03-15 08:30: open: not measured
	// cylinders[0].crosshatch accepted by the machinist
}

// A figure that looks like a slip and is right says so; the word lapses when the figure changes.
func ExampleConfirmation() {
	show(jobsheet.Confirmation{Field: "engine.limits.service", Value: "78.400 mm"})
	// Output:
	// {"field":"engine.limits.service","value":"78.400 mm"}
}

// No pits is a count too: nil is nobody counted.
func ExampleCounted() {
	show(jobsheet.Counted{Readings: ptr(18), Pits: ptr(0)})
	// Output:
	// {"readings":18,"pits":0}
}

// A doubt that costs a size says so: what smaller doubt would keep it.
func ExamplePrice() {
	p := jobsheet.Price{Route: oversize.BoreOversize, Over: mustLength("0.25 mm"), Now: mustLength("0.020 mm"), Would: mustLength("0.010 mm")}
	fmt.Println("±", p.Would, "instead of ±", p.Now, "could keep", p.Route, p.Over)
	// Output:
	// ± 0.01 mm instead of ± 0.02 mm could keep rebore 0.25 mm
}

// A page for a browser, which needs no other file.
func ExampleSheet_WriteHTML() {
	var page strings.Builder
	fmt.Println(sheetOf("keep").WriteHTML(&page), strings.HasPrefix(strings.ToLower(page.String()), "<!doctype html>"))
	// Output:
	// <nil> true
}

func ExampleSheet_WriteJSON() {
	var file strings.Builder
	err := sheetOf("keep").WriteJSON(&file)
	fmt.Println(err)
	fmt.Println(file.String()[:18])
	// Output:
	// <nil>
	// {
	//   "version": 2,
}

// A job filled in Go becomes a file that anyone can go on with.
func ExampleJob_WriteJSON() {
	var file strings.Builder
	fmt.Println(pump().WriteJSON(&file))
	again, err := jobsheet.ReadJob(strings.NewReader(file.String()))
	fmt.Println(again.Cylinders[0].Readings[0].Diameter, err)
	// Output:
	// <nil>
	// 67.131 mm <nil>
}

func included(degrees units.Angle) hone.Crosshatch {
	c, err := hone.Included(degrees * units.Degree)
	if err != nil {
		panic(err)
	}
	return c
}
