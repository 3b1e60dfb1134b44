// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/units"
)

func TestReadCSV(t *testing.T) {
	want := []bore.Reading{at(10, 0, "67.105 mm"), at(10, 90, "67.07 mm"), at(45, 45, "67.06 mm")}
	for name, text := range map[string]string{
		"units in the header":     "depth (mm),axis (°),diameter (mm)\n10,thrust,67.105\n10,pin,67.07\n45,45,67.06\n",
		"units in the cells":      "depth,axis,diameter\n10 mm,0°,67.105 mm\n10 mm,90 deg,67.07 mm\n45 mm,45°,67.06 mm\n",
		"cells before the header": "depth in,axis rad,diameter in\n10 mm,0,67.105 mm\n10 mm,pin,67.07mm\n45 mm,45°,67.06 mm\n",
		"any order, any case":     "Diameter [mm], AXIS,Depth/mm\n67.105,thrust,10\n67.07,pin,10\n67.06,45 deg,45\n",
		"quotes, marks, blanks":   "\ufeff# an invented bore\n\"depth (mm)\",axis,\"diameter (mm)\"\n\n10, thrust ,\"67.105\"\n,,\n10,pin,67.07\r\n45,45°,67.06",
		"confirmed":               "depth (mm),axis,diameter (mm),confirmed\n10,thrust,67.105,no\n10,pin,67.07,\n45,45°,67.06,NO\n",
	} {
		got, err := bore.ReadCSV(strings.NewReader(text), bore.Gauge{})
		if err != nil || !slices.Equal(got, want) {
			t.Errorf("%s: %v, %v", name, got, err)
		}
	}
	got, err := bore.ReadCSV(strings.NewReader("depth,axis,diameter,confirmed\n1 mm,pin,68 mm,Yes"), bore.Gauge{})
	if err != nil || !got[0].Confirmed {
		t.Errorf("confirmed: %v, %v", got, err)
	}
	// 2.6420 in is 67.1068 mm exactly.
	got, err = bore.ReadCSV(strings.NewReader("depth (in),axis,diameter (in)\n0,pin,2.6420"), bore.Gauge{})
	if err != nil || got[0] != at(0, 90, "67.1068 mm") {
		t.Errorf("inches: %v, %v", got, err)
	}
}

func TestReadCSVDeviations(t *testing.T) {
	text := "depth (mm),axis,deviation (µm)\n10,thrust,-105\n10,pin,+12.5\n45,pin,0\n"
	gauge := bore.Gauge{Standard: bore.Standard{Size: 67 * mm}, Dial: bore.PlusIsSmaller}
	got, err := bore.ReadCSV(strings.NewReader(text), gauge)
	want := []bore.Reading{at(10, 0, "67.105 mm"), at(10, 90, "66.9875 mm"), at(45, 90, "67 mm")}
	if err != nil || !slices.Equal(got, want) {
		t.Errorf("%v, %v", got, err)
	}
	gauge.Dial = 0
	if _, err := bore.ReadCSV(strings.NewReader(text), gauge); !errors.Is(err, units.ErrNotGiven) {
		t.Errorf("no direction of the dial: %v", err)
	}
}

// A spreadsheet prints 67.105 as 67.10499999999999 or with more digits: the nearest picometre is meant.
func TestReadCSVNearest(t *testing.T) {
	for _, tail := range []string{"67.10499999999999999", "67.10500000000001", "67.104999999999997"} {
		text := "depth (mm),axis,diameter (mm)\n10,pin," + tail
		got, err := bore.ReadCSV(strings.NewReader(text), bore.Gauge{})
		if err != nil || got[0] != at(10, 90, "67.105 mm") {
			t.Errorf("%s: %v, %v", tail, got, err)
		}
	}
}

func TestReadCSVRefusals(t *testing.T) {
	const head = "depth (mm),axis,diameter (mm)\n"
	for name, c := range map[string]struct {
		text string
		want error
		says string
	}{
		"empty":            {"", bore.ErrCSV, ""},
		"comments alone":   {"# nothing\n", bore.ErrCSV, ""},
		"no rows":          {head, bore.ErrNoReadings, ""},
		"blank rows":       {head + ",,\n", bore.ErrNoReadings, ""},
		"no diameter":      {"depth,axis\n1 mm,pin\n", bore.ErrCSV, "diameter"},
		"both":             {"depth,axis,diameter,deviation\n1 mm,pin,1 mm,1 mm\n", bore.ErrCSV, "either"},
		"no axis":          {"depth,diameter\n1 mm,1 mm\n", bore.ErrCSV, "axis"},
		"no depth":         {"axis,diameter\npin,1 mm\n", bore.ErrCSV, "depth"},
		"twice":            {"depth,axis,diameter,depth (mm)\n", bore.ErrCSV, `"depth" twice`},
		"semicolons":       {"depth;axis;diameter\n", bore.ErrCSV, "separated by commas"},
		"unknown":          {"depth,axis,diameter,colour\n", bore.ErrCSV, `"colour"`},
		"unknown unit":     {"depth (cm),axis,diameter\n", units.ErrUnknownUnit, `"depth (cm)"`},
		"axis in mm":       {"depth,axis (mm),diameter\n", units.ErrUnknownUnit, "axis"},
		"no unit":          {"depth,axis,diameter\n10,pin,67\n", units.ErrMissingUnit, "line 2: depth"},
		"no unit of angle": {"depth,axis,diameter\n10 mm,45,67 mm\n", units.ErrMissingUnit, "line 2: axis"},
		"comma decimal":    {head + "10,pin,\"67,105\"\n", units.ErrSyntax, "line 2: diameter"},
		"not a number":     {head + "10,pin,NaN\n", units.ErrSyntax, "line 2: diameter"},
		"axis unknown":     {head + "10,front,67\n", units.ErrSyntax, "line 2: axis"},
		"too few cells":    {head + "\n10,pin,67\n10,pin\n", bore.ErrCSV, "line 4: 2 cells for 3"},
		"too many cells":   {head + "10,pin,67,67\n", bore.ErrCSV, "line 2: 4 cells"},
		"above the deck":   {head + "10,pin,67\n-1,pin,67\n", bore.ErrReading, "line 3"},
		"no size":          {head + "10,pin,0\n", bore.ErrReading, "line 2"},
		"confirmed":        {"depth,axis,diameter,confirmed\n1 mm,pin,67 mm,maybe\n", bore.ErrCSV, "line 2: confirmed"},
		"bare quote":       {head + "10,pin,6\"7\n", bore.ErrCSV, ""},
		"too many rows":    {head + strings.Repeat("1,pin,67\n", 10_001), bore.ErrCSV, "10000 rows"},
		"too many bad":     {head + strings.Repeat("x,pin,67\n", 10_001), bore.ErrCSV, "10000 rows"},
		"too large":        {head + "#" + strings.Repeat("x", 1<<20), bore.ErrCSV, "bytes"},
		"too large a cell": {head + strings.Repeat("x", 1<<21), bore.ErrCSV, "bytes"},
	} {
		rs, err := bore.ReadCSV(strings.NewReader(c.text), bore.Gauge{})
		if !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) || rs != nil {
			t.Errorf("%s: %v, %v; want %v with %q", name, rs, err, c.want, c.says)
		}
	}
	for name, text := range map[string]string{
		"10,000 rows": head + strings.Repeat("1,pin,67\n", 10_000),
		"1 MiB":       head + "1,pin,67\n#" + strings.Repeat("x", 1<<20-len(head)-len("1,pin,67\n#")),
	} {
		if _, err := bore.ReadCSV(strings.NewReader(text), bore.Gauge{}); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := bore.ReadCSV(strings.NewReader(head+"1,pin,67\n#"+strings.Repeat("x", 1<<20-len(head)-len("1,pin,67\n#")+1)), bore.Gauge{}); !errors.Is(err, bore.ErrCSV) {
		t.Errorf("1 MiB and a byte: %v", err)
	}
	if _, err := bore.ReadCSV(iotest.ErrReader(io.ErrUnexpectedEOF), bore.Gauge{}); !errors.Is(err, io.ErrUnexpectedEOF) {
		t.Errorf("failing reader: %v", err)
	}
	// All that is wrong at once, each with its place.
	_, err := bore.ReadCSV(strings.NewReader(head+"x,pin,67\n10,y,z\n"), bore.Gauge{})
	if !strings.HasPrefix(err.Error(), "bore: line 2: depth: ") || !strings.Contains(err.Error(), "\nbore: line 3: axis: ") {
		t.Errorf("faults: %v", err)
	}
	if n := strings.Count(err.Error(), "line"); n != 3 {
		t.Errorf("%d faults in %v", n, err)
	}
}

// The same table in inches and in millimetres gives the same readings, whatever the columns' order.
func TestCSVRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		for i := range rs {
			rs[i].Depth, rs[i].Diameter = rs[i].Depth.Round(254), rs[i].Diameter.Round(254)
		}
		unit := rapid.SampledFrom([]units.Length{mm, units.Inch, um, units.Thou}).Draw(t, "unit")
		name := map[units.Length]string{mm: "mm", units.Inch: "in", um: "µm", units.Thou: "thou"}[unit]
		number := func(l units.Length) string {
			s, _, _ := strings.Cut(l.Format(unit, 10), " ")
			return s
		}
		var b bytes.Buffer
		w := csv.NewWriter(&b)
		order := rapid.Permutation([]int{0, 1, 2}).Draw(t, "order")
		row := func(cells ...string) {
			turned := make([]string, 3)
			for i, o := range order {
				turned[i] = cells[o]
			}
			if err := w.Write(turned); err != nil {
				t.Fatal(err)
			}
		}
		row(fmt.Sprintf("depth (%s)", name), "axis", fmt.Sprintf("diameter (%s)", name))
		for _, r := range rs {
			row(number(r.Depth), r.Axis.String(), number(r.Diameter))
		}
		w.Flush()
		got, err := bore.ReadCSV(&b, bore.Gauge{})
		if err != nil || !slices.Equal(got, rs) {
			t.Fatalf("%v\n%v, %v", rs, got, err)
		}
	})
}
