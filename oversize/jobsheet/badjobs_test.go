// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"errors"
	"math"
	"os"
	"strings"
	"testing"
	"testing/iotest"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// small is a sound job of one cylinder; invented.
const small = `{
  "engine": {
    "cylinders": 1, "cycle": "four-stroke", "wall": "bare iron",
    "bore": "67 mm", "stroke": "49.5 mm", "compression_ratio": 9.0,
    "layout": {"length": "100 mm", "ring_top": "8 mm", "ring_bottom": "92 mm"},
    "limits": {"new_bore": "67.000 to 67.019 mm", "service": "67.1 mm", "ovality": "0.05 mm", "taper": "0.09 mm",
               "greatest_less_least": "0.08 mm", "piston_clearance": "0.025 to 0.045 mm"},
    "rings": [{"name": "top", "gap": "0.25 to 0.40 mm", "gap_limit": "1 mm"}],
    "oversizes": [{"over": "0.25 mm", "makers_list": true}, {"over": "0.50 mm", "makers_list": true}],
    "honing_allowance": "0.05 mm", "gasket_hole": "70 mm", "may_shift": "0 mm"
  },
  "gauge": {
    "kind": "two-point", "resolution": "0.001 mm",
    "standard": {"size": "67.002 ± 0.002 mm"},
    "temperatures": {"standard": "21 °C", "gauge_set": "21 °C", "gauge_used": "21 ± 1 °C", "cylinder": "10 to 25 °C"}
  },
  "cylinders": [{
    "name": "1", "over": "0 mm",
    "piston": {"size": "66.972 mm", "axis": "across pin", "coating": "0 mm"}, "piston_for": "0 mm",
    "rings": [{"ring": "top", "gap": "0.30 mm", "bore": "67.01 mm"}],
    "readings": [
      {"depth": "10 mm", "axis": "thrust", "diameter": "67.051 mm"},
      {"depth": "90 mm", "axis": "pin", "diameter": "67.010 mm"}
    ]
  }],
  "tools": {"hone": "ball-type hone", "stroke": "90 mm", "spindle": "60 to 700 rev/min",
            "stroking": "30 to 60 cycles/min", "crosshatch": "45° included"},
  "cuts": {"locating": "0.01 mm", "out_of_square": "0.01 mm", "surface": "0.01 mm"},
  "counted": {"readings": 2, "passes": 0, "rings": 1, "pits": 0},
  "not_known": ["wear share", "least wall"]
}`

// with returns the small job with one text replaced.
func with(t *testing.T, old, new string) string {
	t.Helper()
	if strings.Count(small, old) != 1 {
		t.Fatalf("%q stands %d times in the small job", old, strings.Count(small, old))
	}
	return strings.Replace(small, old, new, 1)
}

// onePass is with, for a job with one honing pass.
func onePass(t *testing.T, old, new string) string {
	return strings.Replace(with(t, old, new), `"passes": 0`, `"passes": 1`, 1)
}

func TestBadJobs(t *testing.T) {
	deep := strings.Repeat(`{"engine":`, 40) + "1" + strings.Repeat("}", 40)
	const range_ = `missing: write it, "21 °C" or "21 ± 1 °C", or where nobody measured it the range it must have been in, "10 to 25 °C"`
	for _, c := range []struct {
		name string
		job  string
		want []string
	}{
		// The file as such.
		{"empty", "  \n", []string{"job: empty: want a JSON object"}},
		{"not JSON", "bore 67", []string{"job: line 1, column 1: not JSON: invalid character 'b' looking for beginning of value"}},
		{"a comma", ",", []string{"job: line 1, column 1: not JSON: invalid character ',' looking for beginning of value"}},
		{"cut short", small[:200], []string{"job: line 5, column 52: not JSON: it ends too early"}},
		{"trailing text", small + " x", []string{"job: line 31, column 3: text after the end"}},
		{"two jobs", small + small, []string{"job: line 31, column 2: text after the end"}},
		{"a list", "[]", []string{"job: line 1, column 1: […]: want an object"}},
		{"a number", "67", []string{"job: line 1, column 1: 67: want an object"}},
		{"null", "null", []string{"job: line 1, column 1: null: leave the field out where nothing is known"}},
		{"nested deep", deep, []string{"job: line 1, column 331: nested deeper than 32, the most allowed"}},
		{"bad UTF-8", with(t, `"name": "1"`, "\"name\": \"\xff\""), []string{"job: line 18, column 14: not UTF-8"}},
		{"too large", small + strings.Repeat(" ", 1<<20), []string{"job: larger than 1048576 bytes, the most allowed"}},

		// Fields.
		{"unknown", with(t, `"gauge": {`, `"colour": "red", "gauge": {`), []string{
			`colour: "red": unknown field: want one of version, title, units, engine, gauge, survey, cylinders, tools, cuts, proof, counted, not_known, confirmed, accepted, risk`}},
		{"bore in another unit", with(t, `"bore": "67 mm"`, `"bore": "67 m"`), []string{ // and what is held against it says nothing
			`engine.bore: "67 m": want above 0, up to 1000 mm`}},
		{"facing", with(t, `"gap_limit": "1 mm"`, `"gap_limit": "1 mm", "facing": "brass"`), []string{
			`engine.rings[0].facing: "brass": want "plain iron", "chromium" or "molybdenum"`}},
		{"misspelt", with(t, `"wall":`, `"wal":`), []string{
			`engine.wal: "bare iron": unknown field: is wall meant?`,
			"engine.wall: missing: want bare iron, iron sleeve, plated or bare Al-Si"}},
		{"wrong case", with(t, `"stroke": "49.5 mm"`, `"Stroke": "49.5 mm"`), []string{
			`engine.Stroke: "49.5 mm": unknown field: is stroke meant?`,
			"engine.stroke: missing: want a length above 0, up to 5 m"}},
		{"doubled", with(t, `"bore": "67 mm"`, `"bore": "67 mm", "bore": "68 mm"`), []string{
			`engine.bore: "68 mm": given twice`}},
		{"null field", with(t, `"axis": "across pin"`, `"axis": null`), []string{
			"cylinders[0].piston.axis: null: leave the field out where nothing is known"}},
		{"wrong type", with(t, `"cylinders": 1`, `"cylinders": "one"`), []string{
			`engine.cylinders: "one": want a number`}},
		{"fraction of a cylinder", with(t, `"cylinders": 1`, `"cylinders": 1.5`), []string{
			"engine.cylinders: 1.5: want a whole number"}},
		{"list for object", with(t, `{"hone": "ball-type hone", "stroke": "90 mm", "spindle": "60 to 700 rev/min",
            "stroking": "30 to 60 cycles/min", "crosshatch": "45° included"}`, "[]"), []string{
			"tools: […]: want an object"}},
		{"control character in a name", with(t, `"name": "1"`, `"name": "1\u001b[2J"`), []string{
			`cylinders[0].name: "1\x1b[2J": holds a character that does not print`}},
		{"broken surrogate", with(t, `"name": "1"`, `"name": "\ud800"`), []string{
			`cylinders[0].name: "�": holds a broken character`}},
		{"empty name", with(t, `"name": "1"`, `"name": ""`), []string{
			`cylinders[0].name: "": empty: leave the field out where nothing is known`}},
		{"hostile field name", with(t, `"gauge": {`, `"a\u0007.b": 1, "gauge": {`), []string{
			`"a\a.b": 1: unknown field: want one of version, title, units, engine, gauge, survey, cylinders, tools, cuts, proof, counted, not_known, confirmed, accepted, risk`}},

		// Quantities.
		{"bare number", with(t, `"bore": "67 mm"`, `"bore": 67`), []string{
			`engine.bore: 67: a bare number has no unit: want a text such as "72.031 mm" or "2.8360 in"`}},
		{"no unit", with(t, `"67.051 mm"`, `"67.051"`), []string{
			`cylinders[0].readings[0].diameter: "67.051": missing unit: a bare number has no unit: write 67.051 mm or 67.051 in`}},
		{"mil", with(t, `"67.051 mm"`, `"2.6 mil"`), []string{
			`cylinders[0].readings[0].diameter: "2.6 mil": unknown unit: mil is said for a thousandth of an inch and for a millimetre: write thou or mm`}},
		{"spreadsheet's tail", with(t, `"67.051 mm"`, `"67.05099999999999 mm"`), []string{
			`cylinders[0].readings[0].diameter: "67.05099999999999 mm": not a whole number of picometres: the nearest length is 67.051 mm`}},
		{"inch written as mm", with(t, `"67.051 mm"`, `"2.6398 mm"`), []string{
			`cylinders[0].readings[0].diameter: "2.6398 mm": more than 10 % from the nominal bore 67 mm: is the unit right?`}},
		{"columns exchanged", with(t, `"depth": "10 mm", "axis": "thrust", "diameter": "67.051 mm"`, `"depth": "67.051 mm", "axis": "thrust", "diameter": "10 mm"`), []string{
			`cylinders[0].readings[0].diameter: "10 mm": more than 10 % from the nominal bore 67 mm: is the unit right? Or are depth and diameter the wrong way round?`}},
		{"limits crossed", with(t, "67.000 to 67.019 mm", "67.019 to 67.000 mm"), []string{
			`engine.limits.new_bore: "67.019 to 67.000 mm": limits crossed: the smaller limit first`}},
		{"angle without its convention", with(t, "45° included", "45°"), []string{
			`tools.crosshatch: "45°": hone: crosshatch "45°": convention not named: `}},
		{"strokes or cycles", with(t, "30 to 60 cycles/min", "30 to 60 /min"), []string{
			`tools.stroking: "30 to 60 /min": hone: stroking `}},
		{"unknown choice", with(t, `"two-point"`, `"laser"`), []string{
			`gauge.kind: "laser": `}},
		{"no such axis", with(t, `"axis": "thrust"`, `"axis": "north"`), []string{
			`cylinders[0].readings[0].axis: "north": not a quantity: write "thrust", "pin" or an angle such as "45°"`}},
		{"no such metal", with(t, `"wall": "bare iron"`, `"wall": "bare iron", "material": "cheese"`), []string{
			`engine.material: "cheese": want one of `}},

		// Sense.
		{"wall missing", with(t, `"wall": "bare iron",`, ""), []string{
			"engine.wall: missing: want bare iron, iron sleeve, plated or bare Al-Si"}},
		{"cycle missing", with(t, `"cycle": "four-stroke",`, ""), []string{
			"engine.cycle: missing: want two-stroke or four-stroke"}},
		{"both ratio and volume", with(t, `"compression_ratio": 9.0`, `"compression_ratio": 9.0, "clearance_volume": "20 cm³"`), []string{
			"engine.compression_ratio: 9.0: want either this or clearance_volume, not both"}},
		{"ratio of one", with(t, `"compression_ratio": 9.0`, `"compression_ratio": 1`), []string{
			"engine.compression_ratio: 1: want above 1, up to 100"}},
		{"a thousand cylinders", with(t, `"cylinders": 1`, `"cylinders": 1000`), []string{
			"engine.cylinders: 1000: want at most 64"}},
		{"kelvins taken for degrees", with(t, `"10 to 25 °C"`, `"24 ± 1 K"`), []string{
			`gauge.temperatures.cylinder: "24 ± 1 K": missing unit: a bare number has no unit: write 24 °C or 24 °F`}},
		{"plating on iron", with(t, `"name": "1",`, `"name": "1", "plating_whole": false,`), []string{
			`cylinders[0].plating_whole: false: there is none on bare iron: is engine.wall right?`}},
		{"iron that grows like aluminium", with(t, `"wall": "bare iron"`, `"wall": "bare iron", "material": "aluminium block"`), []string{
			`engine.material: "aluminium block": no bare iron expands so much: is engine.wall right?`}},
		{"form less than nothing, a taper of a tenth", with(t, `"taper": "0.09 mm"`, `"taper": "6.7 mm", "roundness": "-0.01 mm"`), []string{
			`engine.limits.taper: "6.7 mm": want 0 to 3.35 mm, 5 % of the nominal bore`,
			`engine.limits.roundness: "-0.01 mm": want 0 to 3.35 mm, 5 % of the nominal bore`}},
		{"a zero for a limit", with(t, `"taper": "0.09 mm"`, `"taper": "0 mm"`), []string{
			`engine.limits.taper: "0 mm": zero, which is the same as nothing here: leave the field out where nothing is known`}},
		{"depth and axis left out", with(t, `{"depth": "10 mm", "axis": "thrust", "diameter": "67.051 mm"}`, `{"diameter": "67.051 mm"}`), []string{
			"cylinders[0].readings[0].depth: missing: want how far below the deck",
			`cylinders[0].readings[0].axis: missing: want "thrust", "pin" or an angle from the thrust axis`}},
		{"no size to stand at", with(t, `"over": "0 mm",`, ""), []string{
			`cylinders[0].over: missing: want at which size it stands over nominal, "0 mm" for the standard one`}},
		{"a piston for no size", with(t, `, "piston_for": "0 mm"`, ""), []string{
			`cylinders[0].piston_for: missing: write for which size the piston is, over nominal, "0 mm" for the standard one`}},
		{"kind of gauge left out", with(t, `"kind": "two-point", `, ""), []string{
			"gauge.kind: missing: want two-point, three-point or telescoping"}},
		{"a reading lost on the way", with(t, `"readings": 2`, `"readings": 3`), []string{
			"counted.readings: 3: the job holds 2: is one missing?"}},
		{"known and not known", with(t, `"name": "1",`, `"name": "1", "wear_share": 0.7,`), []string{
			`not_known[0]: "wear share": the job gives it: take one of the two out`}},
		{"a doubt larger than the thing", with(t, `"67.002 ± 0.002 mm"`, `"67.002 ± 0.9 mm"`), []string{
			`gauge.standard.size: "67.002 ± 0.9 mm": want a doubt up to 0.5 mm`}},
		{"a wall that may not be there", with(t, `"name": "1",`, `"name": "1", "thinnest_wall": "5 ± 59 mm",`), []string{
			`cylinders[0].thinnest_wall: "5 ± 59 mm": want above 0, up to 1000 mm, and a doubt that is smaller`}},
		{"nobody's word", with(t, `"counted": {`, `"accepted": [{"demand": "taper", "by": " ", "why": "x"}], "counted": {`), []string{
			"accepted[0]: want by and why: a row goes on somebody's word"}},
		{"accepted as it stood, not said how", with(t, `"counted": {`, `"accepted": [{"row": "cylinders[0].crosshatch", "by": "A", "why": "x"}], "counted": {`), []string{
			"accepted[0].stood: missing: write what stands in the row, as the sheet prints it"}},
		{"running twice over", with(t, `"honing_allowance"`, `"running": {"piston": "150 °C", "piston_by_window": true}, "honing_allowance"`), []string{
			"engine.running.piston_by_window: true: want either this or the running temperature of the piston"}},
		{"pass of no time", onePass(t, `"name": "1",`, `"name": "1", "honing": [{"diameter": "67.00 mm", "at": "20 °C"}, {"lasts": "0s", "diameter": "67.01 mm"}],`), []string{
			`cylinders[0].honing[1].lasts: "0s": zero, which is the same as nothing here: leave the field out where nothing is known`,
			`cylinders[0].honing[1].at: missing: want the cylinder's temperature then, "27 °C"`}},
		{"pass without a unit", onePass(t, `"name": "1",`, `"name": "1", "honing": [{"diameter": "67.00 mm", "at": "20 °C"}, {"lasts": "20", "diameter": "67.01 mm", "at": "20 °C"}],`), []string{
			`cylinders[0].honing[1].lasts: "20": want a time such as "20s" or "1m30s"`}},
		{"cylinder not listed", with(t, `"cylinders": 1`, `"cylinders": 2`), []string{
			"engine.cylinders: 2: want as many as are listed under cylinders, 1"}},
		{"temperatures missing", with(t, `"gauge_used": "21 ± 1 °C", "cylinder": "10 to 25 °C"`, `"gauge_used": "21 ± 1 °C"`), []string{
			"gauge.temperatures.cylinder: " + range_}},
		{"no readings", strings.Replace(strings.Replace(with(t, `      {"depth": "10 mm", "axis": "thrust", "diameter": "67.051 mm"},
      {"depth": "90 mm", "axis": "pin", "diameter": "67.010 mm"}
`, ""), `, "ring_top": "8 mm", "ring_bottom": "92 mm"`, "", 1), `"readings": 2`, `"readings": 0`, 1), []string{"cylinders[0].readings: missing: want at least one reading, or ring travel in engine.layout to plan them by"}},
		{"dial not said", with(t, `"diameter": "67.051 mm"`, `"deviation": "0.049 mm"`), []string{
			`gauge.dial: missing: the readings are deviations: want which way the dial runs, "plus is larger" or "plus is smaller"`}},
		{"reading twice over", with(t, `"diameter": "67.051 mm"`, `"diameter": "67.051 mm", "deviation": "0.049 mm"`), []string{
			`cylinders[0].readings[0].deviation: "0.049 mm": want either this or diameter, not both`}},
		{"ring nobody knows", with(t, `"ring": "top"`, `"ring": "wiper"`), []string{
			`cylinders[0].rings[0].ring: "wiper": want the name of one of engine.rings: top`}},
		{"gap without its bore", with(t, `, "bore": "67.01 mm"`, ""), []string{
			"cylinders[0].rings[0].bore: missing: want the bore it was measured in"}},
		{"sizes out of order", with(t, `"over": "0.25 mm"`, `"over": "0.75 mm"`), []string{
			`engine.oversizes[1].over: "0.50 mm": want more than the size before it, 0.75 mm`}},
		{"service below new", with(t, `"service": "67.1 mm"`, `"service": "67.01 mm"`), []string{
			`engine.limits.service: "67.01 mm": want at least the upper end of new_bore, 67.019 mm`}},
		{"piston of another engine", with(t, "66.972 mm", "77.972 mm"), []string{
			`cylinders[0].piston.size: "77.972 mm": more than 10 % from the nominal bore 67 mm: is the unit right?`}},
		{"overtravel into the closed end", with(t, `"stroke": "90 mm"`, `"stroke": "90 mm", "overtravel_bottom": "10 mm"`), []string{
			`tools.overtravel_bottom: "10 mm": want at most tools.room_bottom, 0 mm`}},
		{"risk of two", with(t, `"tools": {`, `"risk": {"accept": 2}, "tools": {`), []string{
			"risk.accept: 2: want 0.00001 to 0.5"}},

		{"risk of next to nothing", with(t, `"tools": {`, `"risk": {"reject": 1e-300}, "tools": {`), []string{
			"risk.reject: 1e-300: want 0.00001 to 0.5"}},
		{"grit of less than nothing", with(t, `"tools": {`, `"tools": {"grit": -80, `), []string{
			"tools.grit: -80: want 0 to 5000"}},
		{"newer job", with(t, `"gauge": {`, `"version": 3, "gauge": {`), []string{
			"version: 3: newer than 2, the newest that is known here"}},
		{"older job", with(t, `"gauge": {`, `"version": 1, "gauge": {`), []string{
			"version: 1: an older job file: write doubts behind their values, "}},
		{"port below the bore", with(t, `"ring_bottom": "92 mm"}`, `"ring_bottom": "92 mm", "ports": [{"from": "80 mm", "to": "105 mm", "at": "90°", "width": "60°"}]}`), []string{
			"engine.layout: bore: port "}},
		{"reading below the bore", with(t, `"depth": "90 mm"`, `"depth": "101 mm"`), []string{
			`cylinders[0].readings[1].depth: "101 mm": want 0 at the deck, up to 100 mm`}},
		{"plated wall to be bored", with(t, `"wall": "bare iron"`, `"wall": "plated"`), []string{
			"cuts: a plated wall is never bored here: leave it out"}},
		{"proof by a setting that is gone", strings.Replace(with(t, `"kind": "two-point"`, `"set_on": "2026-03-14 08:00", "kind": "two-point"`), `"tools": {`, `"proof": {"set_on": "2026-03-10 08:15"}, "tools": {`, 1), []string{
			`proof.set_on: "2026-03-10 08:15": before the gauge was set for the survey, on 2026-03-14 08:00: that setting is gone`}},
		{"gauge set after it was used", strings.Replace(with(t, `"kind": "two-point"`, `"set_on": "2026-03-14 10:00", "kind": "two-point"`), `"tools": {`, `"survey": {"on": "2026-03-14 09:30"}, "tools": {`, 1), []string{
			`gauge.set_on: "2026-03-14 10:00": the gauge was set after it was used, on 2026-03-14 09:30`}},
		{"a moment nobody can read", with(t, `"tools": {`, `"survey": {"on": "14.3.26"}, "tools": {`), []string{
			`survey.on: "14.3.26": want a day such as "2026-03-14" or a minute such as "2026-03-14 09:30"`}},
		{"proof before the survey, clamped otherwise, at no temperature", strings.Replace(with(t, `"tools": {`, `"survey": {"on": "2026-03-14", "torque_plate": false}, "proof": {"on": "2026-03-13", "torque_plate": true}, "tools": {`),
			`"name": "1",`, `"name": "1", "proof": [{"depth": "10 mm", "axis": "thrust", "diameter": "67.051 mm"}],`, 1), []string{
			"proof.temperatures.gauge_used: " + range_,
			"proof.temperatures.cylinder: " + range_,
			"proof.standard: missing: write again what the gauge was set on, for it may have been another",
			`proof.on: "2026-03-13": before the survey, on 2026-03-14`,
			`proof.torque_plate: true: the survey was read free, without a torque plate: read both the same way, or they cannot be compared`}},
		{"three ways to the ratio", with(t, `"compression_ratio": 9.0`, `"compression_ratio": 9.0, "chamber": {"head": "20 cm³"}`), []string{
			"engine.chamber: want this, clearance_volume or compression_ratio, and no two of them"}},
		{"more than all of the wear", strings.Replace(with(t, `"name": "1",`, `"name": "1", "wear_share": 1.2,`), `"wear share", `, "", 1), []string{
			"cylinders[0].wear_share: 1.2: want 0.5, as much on one side as on the other, to 1, all on one"}},
		{"feeler test upside down", with(t, `"name": "1",`, `"name": "1", "feeler_test": [{"depth": "90 mm", "gap": "0.4 mm"}, {"depth": "10 mm", "gap": "0.3 mm"}],`), []string{
			`cylinders[0].feeler_test[1].depth: "10 mm": want more than the upper one, 90 mm`}},
		{"phase of no stock", with(t, `"tools": {`, `"tools": {"phases": [{"spindle": "100 rev/min", "stroking": "40 cycles/min"}], `), []string{
			"tools.phases[0].radial_stock: missing: want what comes off the radius"}},
		{"strokes or cycles of a phase", with(t, `"tools": {`, `"tools": {"phases": [{"spindle": "100 rev/min", "stroking": "40 /min", "radial_stock": "0.01 mm"}], `), []string{
			`tools.phases[0].stroking: "40 /min": hone: stroking `}},
		{"peg without an angle", with(t, `"gap_limit": "1 mm"`, `"gap_limit": "1 mm", "peg": "left"`), []string{
			`engine.rings[0].peg: "left": `}},
		{"piston in the box of no size", with(t, `{"over": "0.25 mm", "makers_list": true}`, `{"over": "0.25 mm", "pistons": [{}]}`), []string{
			"engine.oversizes[0].pistons[0].size: missing: want the skirt's diameter"}},

		// Every fault at once, in place.
		{"many", `{"engin": {}, "cylinders": [{"readings": [{"depth": 10, "axis": "thrust", "diameter": "67 mm"}]}], "x": null}`, []string{
			"engin: {…}: unknown field: is engine meant?",
			`cylinders[0].readings[0].depth: 10: a bare number has no unit: want a text such as "72.031 mm" or "2.8360 in"`,
			"x: null: unknown field: want one of version, title, units, engine, gauge, survey, cylinders, tools, cuts, proof, counted, not_known, confirmed, accepted, risk",
			"engine.cylinders: missing: want a whole number from 1 to 64",
			"engine.cycle: missing: want two-stroke or four-stroke",
			"engine.bore: missing: want a length above 0, up to 1 m",
			"engine.stroke: missing: want a length above 0, up to 5 m",
			"engine.wall: missing: want bare iron, iron sleeve, plated or bare Al-Si",
			"gauge.kind: missing: want two-point, three-point or telescoping",
			"gauge.resolution: missing: want a length above 0, up to 0.5 mm",
			`cylinders[0].over: missing: want at which size it stands over nominal, "0 mm" for the standard one`,
			"gauge.temperatures.gauge_used: " + range_,
			"gauge.temperatures.cylinder: " + range_,
			"cylinders[0].name: missing: want a name",
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			j, err := jobsheet.ReadJob(strings.NewReader(c.job))
			var fs jobsheet.Faults
			if !errors.As(err, &fs) || !errors.Is(err, jobsheet.ErrJob) {
				t.Fatalf("got %v, want Faults", err)
			}
			if !bytes.Equal(jobJSON(t, j), jobJSON(t, jobsheet.Job{})) {
				t.Errorf("a job came with the faults: %+v", j)
			}
			if len(fs) != len(c.want) {
				t.Fatalf("got %d faults, want %d:\n%v", len(fs), len(c.want), err)
			}
			for i, f := range fs {
				if got := f.String(); got != c.want[i] && !(strings.HasSuffix(c.want[i], " ") && strings.HasPrefix(got, c.want[i])) {
					t.Errorf("fault %d:\ngot  %s\nwant %s", i, got, c.want[i])
				}
				if strings.ContainsAny(f.String(), "\n\x1b\x07") {
					t.Errorf("fault %d is not one plain line: %q", i, f.String())
				}
			}
		})
	}
}

// TestReaderFails: an error of the reader is no fault of the job.
func TestReaderFails(t *testing.T) {
	_, err := jobsheet.ReadJob(iotest.ErrReader(os.ErrPermission))
	if !errors.Is(err, os.ErrPermission) || errors.Is(err, jobsheet.ErrJob) {
		t.Error(err)
	}
}

// TestSheetKeepsItsOwn: what happens to the job afterwards does not reach the sheet.
func TestSheetKeepsItsOwn(t *testing.T) {
	j, err := jobsheet.ReadJob(strings.NewReader(small))
	if err != nil {
		t.Fatal(err)
	}
	s := plan(t, j)
	before := asJSON(t, s)
	j.Cylinders[0].Name, j.Cylinders[0].Readings[0].Diameter, j.Engine.Rings[0].Name = "x", 1, "x"
	if after := asJSON(t, s); after != before {
		t.Errorf("changed from outside:\n%s\n%s", before, after)
	}
}

// TestBadSheets: what is no sheet is refused.
func TestBadSheets(t *testing.T) {
	for _, text := range []string{"", `{"version": 0}`, `{"version": 2}`, `{"version": 2} trailing`, `{"version": 2, "job": {}}`, `{"version": 3, "job": ` + small + `}`} {
		if _, err := jobsheet.ReadSheet(strings.NewReader(text)); !errors.Is(err, jobsheet.ErrSheet) {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// TestRoomsRefuse: what only a room can refuse comes back from Plan as a fault with its place and the room's
// error.
func TestRoomsRefuse(t *testing.T) {
	for _, c := range []struct {
		name, job, path string
		err             error
	}{
		{"slipped digit", with(t, "67.051 mm", "69.051 mm"), "cylinders[0].readings", bore.ErrSlippedDigit},
		{"piston of another size", with(t, "66.972 mm", "67.472 mm"), "cylinders[0].piston", oversize.ErrPiston},
		{"no space above the piston", with(t, `"compression_ratio": 9.0`, `"chamber": {"head": "20 cm³", "crown": "25 cm³"}`), "engine.chamber", oversize.ErrNoSpace},
		{"port under an anvil", strings.Replace(with(t, `"ring_bottom": "92 mm"}`, `"ring_bottom": "92 mm", "ports": [{"name": "exhaust", "from": "80 mm", "to": "95 mm", "at": "90°", "width": "60°"}]}`),
			"four-stroke", "two-stroke", 1), "cylinders[0].readings", bore.ErrReading},
		{"dial run the wrong way", strings.NewReplacer(`"kind": "two-point"`, `"kind": "two-point", "dial": "plus is smaller"`,
			`"diameter": "67.051 mm"`, `"deviation": "0.049 mm"`, `"diameter": "67.010 mm"`, `"deviation": "0.030 mm"`).Replace(small), "cylinders[0].readings", nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			j, err := jobsheet.ReadJob(strings.NewReader(c.job))
			if err != nil {
				t.Fatal(err)
			}
			_, err = jobsheet.Plan(j)
			var fs jobsheet.Faults
			if !errors.As(err, &fs) || fs[0].Path != c.path || c.err != nil && !errors.Is(err, c.err) {
				t.Errorf("%v", err)
			}
		})
	}
}

func TestSmallJobIsSound(t *testing.T) {
	if _, err := jobsheet.ReadJob(strings.NewReader(small)); err != nil {
		t.Fatal(err)
	}
}

func jobJSON(t *testing.T, j jobsheet.Job) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := j.WriteJSON(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// demo reads the demo job of the refresh program.
func demo(t testing.TB) []byte {
	t.Helper()
	b, err := os.ReadFile("../../examples/refresh/jobs/pump.json")
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestChangedSheet: of a written sheet the job alone is believed; what differs is named, and the new sheet comes.
func TestChangedSheet(t *testing.T) {
	var b bytes.Buffer
	if err := plan(t, job(t, "pump-finished")).WriteJSON(&b); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ old, new, names string }{
		{`"next": "reassemble"`, `"next": "bore"`, "next is reassemble, was bore"},
		{`"state": "proven"`, `"state": "failed"`, "row engine.told"},
		{`"stands": "proven: as the job shows"`, `"stands": "open"`, "row engine.told"},
		{`"route": "rebore"`, `"route": "sleeve"`, ""}, // the choice is not believed, nor looked at
		{`"diameter": "78.505 mm"`, `"diameter": "78.535 mm"`, "row cylinders[0]."},
	} {
		text := strings.Replace(b.String(), c.old, c.new, 1)
		s, err := jobsheet.ReadSheet(strings.NewReader(text))
		if c.names == "" {
			if err != nil {
				t.Errorf("%s: %v", c.new, err)
			}
			continue
		}
		if !errors.Is(err, jobsheet.ErrChanged) || !strings.Contains(err.Error(), c.names) || !strings.Contains(err.Error(), "version 2") {
			t.Errorf("%s: %v", c.new, err)
		}
		if len(s.Ledger) == 0 {
			t.Errorf("%s: no sheet came with the error", c.new)
		}
	}
}

// TestHostileTexts: what ReadJob refuses in a text Plan refuses too, wherever the job comes from.
func TestHostileTexts(t *testing.T) {
	for name, change := range map[string]func(j *jobsheet.Job, text string){
		"title":                func(j *jobsheet.Job, text string) { j.Title = text },
		"cylinders[0].name":    func(j *jobsheet.Job, text string) { j.Cylinders[0].Name = text },
		"engine.rings[1].name": func(j *jobsheet.Job, text string) { j.Engine.Rings[1].Name = text },
		"engine.layout.ports[0].name": func(j *jobsheet.Job, text string) {
			j.Engine.Layout.Ports = []bore.Port{{Name: text, From: units.Millimetre, To: 2 * units.Millimetre, Width: 1}}
		},
		"gauge.standard.name": func(j *jobsheet.Job, text string) { j.Gauge.Standard.Name = text },
		"survey.by":           func(j *jobsheet.Job, text string) { j.Survey.By = text },
		"proof.by":            func(j *jobsheet.Job, text string) { j.Proof.By = text },
	} {
		for _, text := range []string{"a\nROUTE: fake", "\x1b[31m", "\xff", strings.Repeat("x", 10_000)} {
			j := job(t, "pump-finished")
			change(&j, text)
			_, err := jobsheet.Plan(j)
			var fs jobsheet.Faults
			if !errors.As(err, &fs) || fs[0].Path != name {
				t.Errorf("%s %.20q: %v", name, text, err)
			}
		}
	}
}

// TestNoNumbers: a temperature that is no number, as only a program can write it, is a fault of its field.
func TestNoNumbers(t *testing.T) {
	for path, set := range map[string]func(*jobsheet.Job){
		"gauge.temperatures.cylinder": func(j *jobsheet.Job) { j.Gauge.Temperatures.Cylinder.Within = units.TemperatureChange(math.NaN()) },
		"proof.temperatures.standard": func(j *jobsheet.Job) { j.Proof.Temperatures.Standard.Value = units.Temperature(math.Inf(1)) },
		"engine.running.ring":         func(j *jobsheet.Job) { j.Engine.Running.Ring.Within = -1 },
	} {
		j := job(t, "pump-finished")
		set(&j)
		_, err := jobsheet.Plan(j)
		var fs jobsheet.Faults
		if !errors.As(err, &fs) || fs[0].Path != path {
			t.Errorf("%s: %v", path, err)
		}
	}
}

// TestUnreadJobSurvives: a job without readings is written as ReadJob reads it.
func TestUnreadJobSurvives(t *testing.T) {
	j := job(t, "unread")
	j.Cylinders[0].Readings = nil
	again, err := jobsheet.ReadJob(bytes.NewReader(jobJSON(t, j)))
	if err != nil || len(again.Cylinders[0].Readings) != 0 {
		t.Error(err)
	}
}
