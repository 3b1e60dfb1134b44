// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// pump is a single-cylinder pump engine of a village workshop, worn; invented.
func pump() jobsheet.Job {
	length := units.MustParseLength
	at20 := bore.Temperature{Value: units.ReferenceTemperature, Within: units.Kelvin / 2}
	twoPoint, standard := bore.TwoPoint, units.Length(0)
	reading := func(depth string, axis bore.Axis, diameter string) jobsheet.Reading {
		d := length(depth)
		return jobsheet.Reading{Depth: &d, Axis: &axis, Diameter: length(diameter)}
	}
	return jobsheet.Job{
		Engine: jobsheet.Engine{
			Cylinders: 1, Cycle: jobsheet.FourStroke, Wall: oversize.BareIron,
			Bore: length("67 mm"), Stroke: length("49.5 mm"), CompressionRatio: 9,
			Limits: jobsheet.Limits{
				Service: length("67.10 mm"), Taper: length("0.09 mm"),
				PistonClearance: units.Limits{Min: length("0.025 mm"), Max: length("0.045 mm")},
			},
			Oversizes:       []jobsheet.Oversize{{Over: length("0.25 mm"), MakersList: true}, {Over: length("0.50 mm"), MakersList: true}},
			HoningAllowance: length("0.06 mm"), GasketHole: length("70 mm"), MayShift: &standard,
		},
		Gauge: jobsheet.Gauge{
			Kind: &twoPoint, Resolution: length("0.001 mm"), Repeatability: length("0.001 mm"),
			Standard:     jobsheet.Standard{Size: jobsheet.Measured{Value: length("67.004 mm"), Expanded: length("0.002 mm")}},
			Temperatures: jobsheet.Temperatures{Standard: at20, GaugeSet: at20, GaugeUsed: at20, Cylinder: at20},
		},
		Survey: jobsheet.Survey{By: "the machinist", TorquePlate: ptr(false)},
		Cylinders: []jobsheet.Cylinder{{
			Name: "1", Over: &standard, WearShare: 0.7,
			Readings: []jobsheet.Reading{
				reading("10 mm", bore.ThrustAxis, "67.131 mm"),
				reading("10 mm", bore.PinAxis, "67.084 mm"),
				reading("90 mm", bore.ThrustAxis, "67.020 mm"),
			},
		}},
		Counted:  jobsheet.Counted{Readings: ptr(3), Passes: ptr(0), Pits: ptr(0)},
		NotKnown: []string{"ring travel", "least wall"},
	}
}

// From a job file to a sheet: read, plan, write. Here only the verdict is printed.
func Example() {
	file, err := os.Open("../../examples/refresh/jobs/pump.json")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer file.Close()
	job, err := jobsheet.ReadJob(file)
	if err != nil {
		fmt.Println(err)
		return
	}
	sheet, err := jobsheet.Plan(job)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(sheet.Choice.Route, sheet.Choice.Over)
	// Output: rebore 0.5 mm
}

// A tool that holds its data elsewhere fills a Job in Go.
func ExampleJob() {
	sheet, err := jobsheet.Plan(pump())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range sheet.Cylinders {
		fmt.Println("largest", c.Bore.Largest.Size)
		for _, f := range c.Findings {
			fmt.Println(f.Subject, f.Verdict)
		}
	}
	for _, r := range sheet.Ledger {
		if len(r.Give) > 0 && r.Step == sheet.Next {
			fmt.Println(r.Key, "-", r.Step)
			fmt.Println("  give", r.Give)
		}
	}
	// Output:
	// largest 67.1310 ± 0.0038 mm
	// service limit beyond
	// taper, thrust axis beyond
	// cylinders[0].travel - measure
	//   give [cylinders[0].readings]
}

// Every fault of a job comes at once, each with its place, its value and what was allowed.
func ExampleReadJob() {
	_, err := jobsheet.ReadJob(strings.NewReader(`{
		"engine": {"cylinders": 0, "cycle": "four-stroke", "wal": "plated", "bore": 67, "stroke": "49.5 mm"},
		"gauge": {"resolution": "0.001", "temperatures": {"gauge_used": "21 °C", "cylinder": "10 to 25 °C"}},
		"cylinders": []
	}`))
	fmt.Println(err)
	fmt.Println(errors.Is(err, jobsheet.ErrJob))
	// Output:
	// engine.wal: "plated": unknown field: is wall meant?
	// engine.bore: 67: a bare number has no unit: want a text such as "72.031 mm" or "2.8360 in"
	// gauge.resolution: "0.001": missing unit: a bare number has no unit: write 0.001 mm or 0.001 in
	// engine.cylinders: 0: want a whole number from 1 to 64
	// engine.wall: missing: want bare iron, iron sleeve, plated or bare Al-Si
	// gauge.kind: missing: want two-point, three-point or telescoping
	// true
}

func ExampleFaults() {
	_, err := jobsheet.Plan(jobsheet.Job{})
	var faults jobsheet.Faults
	if errors.As(err, &faults) {
		fmt.Println(len(faults), "faults, the first:", faults[0])
	}
	// Output:
	// 9 faults, the first: engine.cylinders: missing: want a whole number from 1 to 64
}

func ExampleFault() {
	fmt.Println(jobsheet.Fault{Path: "engine.stroke", Value: `"-1 mm"`, Want: "want above 0"})
	// Output: engine.stroke: "-1 mm": want above 0
}

// Of a written sheet the job alone is believed: it is planned again, and what differs is said.
func ExampleReadSheet() {
	sheet, err := jobsheet.Plan(pump())
	if err != nil {
		fmt.Println(err)
		return
	}
	var file bytes.Buffer
	if err := sheet.WriteJSON(&file); err != nil {
		fmt.Println(err)
		return
	}
	written := file.String()
	again, err := jobsheet.ReadSheet(strings.NewReader(written))
	fmt.Println(again.Next == sheet.Next, err)
	again, err = jobsheet.ReadSheet(strings.NewReader(strings.Replace(written, `"next": "`+sheet.Next.String(), `"next": "reassemble`, 1)))
	fmt.Println(again.Next == sheet.Next, errors.Is(err, jobsheet.ErrChanged))
	_, err = jobsheet.ReadSheet(strings.NewReader(`{"version": 99}`))
	fmt.Println(err)
	// Output:
	// true <nil>
	// true true
	// jobsheet: sheet: not a sheet: version 99, want 2
}

// The text begins with the verdict.
func ExampleSheet_WriteText() {
	sheet, err := jobsheet.Plan(pump())
	if err != nil {
		fmt.Println(err)
		return
	}
	var text bytes.Buffer
	if err := sheet.WriteText(&text); err != nil {
		fmt.Println(err)
		return
	}
	lines := strings.SplitN(text.String(), "\n", 5)
	fmt.Println(strings.Join(lines[:4], "\n"))
	// Output:
	// JOB SHEET
	// 1 × bore 67 mm, stroke 49.5 mm, four-stroke, bare iron
	// Read by the machinist, free, without a torque plate.
	// NEXT:        measure
}

// A dial reading of zero is a reading: it means the size of the setting standard.
func ExampleReading_deviation() {
	j := pump()
	j.Gauge.Dial = bore.PlusIsSmaller
	for i := range j.Cylinders[0].Readings {
		r := &j.Cylinders[0].Readings[i]
		r.Diameter, r.Deviation = 0, ptr(units.Length(i)*-20*units.Micrometre)
	}
	sheet, err := jobsheet.Plan(j)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range sheet.Cylinders[0].Bore.Planes[0].Places {
		fmt.Println(p.Size.Value)
	}
	// Output:
	// 67.004 mm
	// 67.024 mm
}

func ExampleMetal() {
	var m jobsheet.Metal
	fmt.Println(m.UnmarshalText([]byte("grey iron")), m)
	fmt.Println(m.UnmarshalText([]byte("11.4e-6/K ± 0.3e-6/K")), m)
	// Output:
	// <nil> grey iron
	// <nil> 11.4e-6/K ± 0.3e-6/K
}

func ExampleShown() {
	var s jobsheet.Shown
	fmt.Println(s.UnmarshalText([]byte("both")), s)
	// Output: <nil> both
}

func ExampleCycle() {
	var c jobsheet.Cycle
	fmt.Println(c.UnmarshalText([]byte("two-stroke")), c)
	// Output: <nil> two-stroke
}

// Cautions come in the order of the work.
func ExampleSheet_cautions() {
	sheet, err := jobsheet.Plan(pump())
	if err != nil {
		fmt.Println(err)
		return
	}
	last := ""
	for _, c := range sheet.Cautions {
		if c.On != last {
			fmt.Println(c.On)
			last = c.On
		}
	}
	// Output:
	// any work
	// stripping
	// measuring
	// washing
}
