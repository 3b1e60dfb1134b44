// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// a finished honest job of one cylinder, bored or kept.
func finished(bored, twoStroke bool) tree {
	return honest{bore: 80, stroke: 76, cylinders: 1, bored: bored, twoStroke: twoStroke, r: rand.New(rand.NewPCG(3, 7))}.tree(true)
}

// put sets what stands at a path, "engine.limits.taper" or "cylinders.0.rings.1"; nil takes it away.
func put(t testing.TB, j any, path string, v any) {
	t.Helper()
	names := strings.Split(path, ".")
	for n, name := range names {
		last := n == len(names)-1
		switch at := j.(type) {
		case tree:
			switch {
			case !last:
				if at[name] == nil {
					at[name] = tree{}
				}
				j = at[name]
			case v == nil:
				delete(at, name)
			default:
				at[name] = v
			}
		case []any:
			var i int
			if _, err := fmt.Sscan(name, &i); err != nil || i >= len(at) {
				t.Fatalf("%s: no item %s", path, name)
			}
			if last {
				at[i] = v
			}
			j = at[i]
		}
	}
}

// numberOf is the number that a text of a job begins with.
func numberOf(t testing.TB, text any) (x float64) {
	t.Helper()
	if _, err := fmt.Sscan(text.(string), &x); err != nil {
		t.Fatal(err)
	}
	return x
}

// anyRowSays reports whether any row of a sheet's ledger says something.
func anyRowSays(s jobsheet.Sheet, what string) bool {
	return slices.ContainsFunc(s.Ledger, func(r jobsheet.Row) bool { return strings.Contains(r.Says, what) })
}

func mustPlan(t testing.TB, j tree) jobsheet.Sheet {
	t.Helper()
	s, err := planned(t, j)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func rowOf(t testing.TB, s jobsheet.Sheet, key string) jobsheet.Row {
	t.Helper()
	for _, r := range s.Ledger {
		if r.Key == key {
			return r
		}
	}
	t.Fatalf("no row %s", key)
	return jobsheet.Row{}
}

// TestNothingGoesTogetherUnproven: what stands against an engine, or is missing, and the row that says so.
func TestNothingGoesTogetherUnproven(t *testing.T) {
	for _, c := range []struct {
		name   string
		change map[string]any // of a finished bored job; "kept." of a kept one
		kept   bool
		row    string
		state  jobsheet.State
		reason string
	}{
		{"a piston larger than its bore, with a service limit alone", map[string]any{
			"cylinders.0.piston.size": "80.060 ± 0.002 mm", "engine.limits.piston_clearance": nil, "engine.limits.worn_clearance": nil}, true,
			"cylinders[0].least clearance", jobsheet.StateOpen, "to come"},
		{"a form limit alone", map[string]any{"engine.limits.service": nil, "engine.limits.new_bore": nil}, true, "engine.told", jobsheet.StateOpen, "untold"},
		{"no piston of that size measured", map[string]any{"engine.oversizes.0.pistons": nil, "engine.oversizes.0.piston": tree{"size": "80.444 ± 0.002 mm", "axis": "across pin", "coating": "0 mm"}}, false,
			"cylinders[0].pistons", jobsheet.StateOpen, "not measured"},
		{"a ring without a window", map[string]any{"engine.rings.1.gap": nil}, false, "cylinders[0].rings[1].gap", jobsheet.StateOpen, "no limit"},
		{"a ring nobody measured", map[string]any{"cylinders.0.rings": []any{}}, false, "cylinders[0].rings[0].gap", jobsheet.StateOpen, "not measured"},
		{"a ring gap of 0.001 mm", map[string]any{"cylinders.0.rings.1.finished": "0.006 ± 0.005 mm"}, false, "cylinders[0].rings[1].gap", jobsheet.StateFailed, "beyond"},
		{"no crosshatch measured", map[string]any{"cylinders.0.crosshatch": nil}, false, "cylinders[0].crosshatch", jobsheet.StateOpen, "not measured"},
		{"a flat crosshatch", map[string]any{"cylinders.0.crosshatch": "20° included"}, false, "cylinders[0].crosshatch", jobsheet.StateFailed, "beyond"},
		{"not washed", map[string]any{"proof.washed": nil}, false, "cylinders[0].washed", jobsheet.StateOpen, "not said"},
		{"read warm", map[string]any{"proof.temperatures.cylinder": "31 ± 0.4 °C"}, false, "cylinders[0].rest", jobsheet.StateOpen, "not at rest"},
		{"read by thermometers that do not say", map[string]any{"proof.temperatures.cylinder": "21 ± 4 °C", "proof.temperatures.standard": "20.5 ± 2 °C"}, false,
			"cylinders[0].rest", jobsheet.StateOpen, "not at rest"},
		{"nobody said how it was held", map[string]any{"survey.torque_plate": nil}, false, "cylinders[0].clamping", jobsheet.StateOpen, "not said"},
		{"nobody counted", map[string]any{"counted.proof": nil}, false, "engine.counted", jobsheet.StateOpen, "not counted"},
		{"nobody looked for pits", map[string]any{"counted.pits": nil}, true, "cylinders[0].pits", jobsheet.StateOpen, "not read"},
		{"no word on running", map[string]any{"engine.running": nil}, false, "cylinders[0].rings[0].running gap", jobsheet.StateOpen, "not said"},
		{"ends that touch in work", map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "320 °C", "bore": "90 °C"}}, false,
			"cylinders[0].rings[0].running gap", jobsheet.StateFailed, "touches"},
		{"a piston that runs tight", map[string]any{"engine.running": tree{"rings_by_window": true, "piston": "250 °C", "bore": "90 °C"}}, false,
			"cylinders[0].running clearance", jobsheet.StateOpen, "runs tight"},
		{"a thin wall", map[string]any{"cylinders.0.thinnest_wall": "3.7 ± 0.2 mm", "engine.limits.least_wall": "3.6 mm"}, true, "cylinders[0].wall", jobsheet.StateOpen, "to come"},
		{"a hidden slip", map[string]any{"engine.limits.taper": "0.72 mm"}, true, "engine.engine.limits.taper.usual", jobsheet.StateOpen, "looks slipped"},
		{"a bore that shrank", map[string]any{"cylinders.0.proof.3.diameter": "79.990 mm"}, true, "cylinders[0].survey and proof.agreement", jobsheet.StateOpen, "contradicts"},
		{"a gap that fell", map[string]any{"cylinders.0.rings.0.gap": "0.62 ± 0.015 mm"}, true, "cylinders[0].gaps of ring first.agreement", jobsheet.StateOpen, "contradicts"},
		{"a deep pit in a kept bore", map[string]any{"cylinders.0.pits": []any{tree{"below": "0.04 mm", "depth": "30 mm", "at": "10°"}}, "counted.pits": 1}, true,
			"cylinders[0].size", jobsheet.StateFailed, "beyond"},
		{"a pit that no ring passes over", map[string]any{"cylinders.0.pits": []any{tree{"below": "0.04 mm", "depth": "1 mm", "length": "1 mm", "at": "10°"}}, "counted.pits": 1}, true,
			"engine.cylinders[0].pits[0].depth.usual", jobsheet.StateOpen, "looks slipped"},
		{"nobody looked for a ridge in a kept bore", map[string]any{"cylinders.0.ridge_gone": nil}, true, "cylinders[0].ridge", jobsheet.StateOpen, "not said"},
		{"a ridge left in a kept bore", map[string]any{"cylinders.0.ridge_gone": false}, true, "cylinders[0].ridge", jobsheet.StateFailed, "ridge left"},
		{"a piston measured elsewhere than its maker says", map[string]any{"cylinders.0.piston.height": "10 mm", "cylinders.0.piston.maker_height": "15 mm"}, true,
			"cylinders[0].pistons", jobsheet.StateOpen, "not said"},
		{"a two-stroke without ports", map[string]any{"engine.cycle": "two-stroke"}, true, "engine.engine.cycle.usual", jobsheet.StateOpen, "looks slipped"},
		{"a pegged ring in a four-stroke", map[string]any{"engine.rings.0.peg": "90°"}, true, "engine.engine.cycle.usual", jobsheet.StateOpen, "looks slipped"},
		{"a gauge on no standard", map[string]any{"gauge.standard": nil, "proof.standard": nil}, true, "engine.told", jobsheet.StateOpen, "untold"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := finished(!c.kept, false)
			for path, v := range c.change {
				put(t, j, path, v)
			}
			s := mustPlan(t, j)
			if s.Next >= jobsheet.StepLeaveUntouched {
				t.Errorf("next: %v", s.Next)
			}
			if r := rowOf(t, s, c.row); r.State != c.state || name(r.Reason) != c.reason {
				t.Errorf("%s: %v, %v (%s), want %v, %v", c.row, r.State, r.Reason, r.Stands, c.state, c.reason)
			}
		})
	}
}

// TestProofIsASecondLook: the survey's readings written down once more, in whatever order, or with the same added to each, prove
// nothing until somebody says that the bore was read again.
func TestProofIsASecondLook(t *testing.T) {
	for _, added := range []float64{0, 0.003} {
		j := finished(false, false)
		c := cylinderOf(j, 0)
		var proof []any
		least, most := 1e3, 0.
		for _, r := range c["readings"].([]any) {
			d := numberOf(t, r.(tree)["diameter"])
			again := maps.Clone(r.(tree))
			again["diameter"] = fmt.Sprintf("%.4f mm", d+added)
			proof = append(proof, again)
			least, most = min(least, d+added), max(most, d+added)
		}
		slices.Reverse(proof)
		c["proof"] = proof
		put(t, j, "counted.proof", len(proof))
		s := mustPlan(t, j)
		const row = "engine.cylinders[0].proof.usual"
		if r := rowOf(t, s, row); r.State != jobsheet.StateOpen || s.Next >= jobsheet.StepLeaveUntouched {
			t.Errorf("%g added: %v, %v, next %v", added, r.State, r.Reason, s.Next)
		}
		text := func(x float64) string { return units.Length(math.Round(x * 1e9)).String() }
		put(t, j, "confirmed", []any{tree{"field": "cylinders[0].proof", "value": fmt.Sprintf("%d readings, %s to %s", len(proof), text(least), text(most))}})
		if s = mustPlan(t, j); slices.ContainsFunc(s.Ledger, func(r jobsheet.Row) bool { return r.Key == row && r.State == jobsheet.StateOpen }) {
			t.Errorf("%g added, confirmed: %s", added, rowOf(t, s, row).Stands)
		}
	}
}

// TestNoBoreIsTheOther: readings that are those of another cylinder hold everything up until somebody confirms them.
func TestNoBoreIsTheOther(t *testing.T) {
	for _, list := range []string{"readings", "proof"} {
		j := demoTrees(t)["pump-finished"]
		if s := mustPlan(t, j); s.Next != jobsheet.StepReassemble {
			t.Fatalf("two bores of their own: %v", s.Next)
		}
		cs := j["cylinders"].([]any)
		among := map[string]string{"readings": "9 readings, 78.024 mm to 78.166 mm", "proof": "18 readings, 78.502 mm to 78.508 mm"}[list]
		turned := slices.Clone(cs[0].(tree)[list].([]any))
		slices.Reverse(turned)
		cs[1].(tree)[list] = turned
		s := mustPlan(t, j)
		if r := rowOf(t, s, "engine.cylinders[1]."+list+".usual"); r.State != jobsheet.StateOpen || s.Next >= jobsheet.StepBore {
			t.Errorf("%s: %v, next %v", list, r.State, s.Next)
		}
		put(t, j, "confirmed", []any{tree{"field": "cylinders[1]." + list, "value": among}})
		for _, r := range mustPlan(t, j).Ledger {
			if r.Key == "engine.cylinders[1]."+list+".usual" && r.State == jobsheet.StateOpen {
				t.Errorf("%s, confirmed: %s", list, r.Stands)
			}
		}
	}
}

// TestChecksOfEveryRoute: an engine of which one cylinder is sleeved and another bored has the checks of both, and a
// torque plate is on before the first cut.
func TestChecksOfEveryRoute(t *testing.T) {
	j := demoTrees(t)["sleeve"]
	put(t, j, "survey.torque_plate", true)
	var ops []string
	plate := map[string]bool{}
	for _, c := range mustPlan(t, j).Checklist {
		ops = append(ops, c.On)
		plate[c.On] = plate[c.On] || strings.Contains(c.Says, "torque plate on")
	}
	for _, op := range []string{"sleeving", "boring", "honing"} {
		if !slices.Contains(ops, op) {
			t.Errorf("no check of %s", op)
		}
	}
	if !strings.Contains(asPrinted(t, mustPlan(t, j)), "stopped to cool and measured before the last passes") {
		t.Error("no check of honing on paper")
	}
	if !plate["boring"] || !plate["honing"] {
		t.Errorf("the torque plate is asked for at %v", plate)
	}
}

// TestRunningIsTheWorst: what the running temperatures may be takes from the clearance left.
func TestRunningIsTheWorst(t *testing.T) {
	var last units.Length
	for n, within := range []string{" ± 5", " ± 15", "", " ± 40"} {
		j := finished(false, false)
		put(t, j, "engine.running", tree{"rings_by_window": true, "piston": "150" + within + " °C", "bore": "90" + within + " °C"})
		hot := mustPlan(t, j).Cylinders[0].Clearances[0].Hot.Value
		if n > 0 && hot >= last {
			t.Errorf("%q leaves %v, less doubt %v", within, hot, last)
		}
		last = hot
	}
}

// TestNoWordForAMeasurement: where touching parts could not be accepted, not having looked cannot be either.
func TestNoWordForAMeasurement(t *testing.T) {
	for row, path := range map[string]string{
		"cylinders[0].washed":          "proof.washed",
		"cylinders[0].pistons":         "cylinders.0.piston",
		"cylinders[0].least clearance": "cylinders.0.piston",
		"cylinders[0].ridge":           "cylinders.0.ridge_gone",
	} {
		j := finished(false, false)
		put(t, j, path, nil)
		r := rowOf(t, mustPlan(t, j), row)
		put(t, j, "accepted", []any{tree{"row": row, "stood": r.Stands, "by": "the machinist", "why": "in a hurry"}})
		if got := rowOf(t, mustPlan(t, j), row); r.State != jobsheet.StateOpen || got.State != jobsheet.StateOpen {
			t.Errorf("%s, %s: %v, then %v", row, r.Stands, r.State, got.State)
		}
	}
}

// TestTwoPlanesClose: two planes 4 mm apart prove no taper over 84 mm of travel.
func TestTwoPlanesClose(t *testing.T) {
	j := finished(false, false)
	for _, list := range []string{"readings", "proof"} {
		c := j["cylinders"].([]any)[0].(tree)
		var near []any
		for _, r := range c[list].([]any) {
			switch r.(tree)["depth"] {
			case "11.4000 mm":
				near = append(near, r)
			case "53.2000 mm":
				r.(tree)["depth"] = "15.4000 mm"
				near = append(near, r)
			}
		}
		if len(near) != 10 {
			t.Fatalf("%d readings", len(near))
		}
		c[list] = near
	}
	put(t, j, "counted.readings", 10)
	put(t, j, "counted.proof", 10)
	s := mustPlan(t, j)
	for _, key := range []string{"cylinders[0].travel", "cylinders[0].taper"} {
		if r := rowOf(t, s, key); r.State != jobsheet.StateOpen {
			t.Errorf("%s: %s", key, r.Stands)
		}
	}
	if s.Next >= jobsheet.StepLeaveUntouched {
		t.Error(s.Next)
	}
}

// TestSmallPit: a pit that deglazing takes sends no bore to a sleeve, nor away.
func TestSmallPit(t *testing.T) {
	j := finished(false, false)
	put(t, j, "cylinders.0.pits", []any{tree{"below": "0.001 mm", "depth": "30 mm", "at": "10°"}})
	put(t, j, "counted.pits", 1)
	if s := mustPlan(t, j); s.Next != jobsheet.StepReassemble {
		t.Errorf("next %v, pits %s", s.Next, rowOf(t, s, "cylinders[0].pits").Stands)
	}
}

// TestAcceptance: a word stands for what was open while that stands as it stood, and for nothing that nobody
// may accept.
func TestAcceptance(t *testing.T) {
	const row = "cylinders[0].crosshatch"
	j := finished(true, false)
	put(t, j, "cylinders.0.crosshatch", nil)
	stood := rowOf(t, mustPlan(t, j), row).Stands
	word := tree{"row": row, "by": "the machinist", "why": "judged by eye, under a lamp", "stood": stood}
	put(t, j, "accepted", []any{word})
	s := mustPlan(t, j)
	if r := rowOf(t, s, row); r.State != jobsheet.StateAccepted || r.By != "the machinist" || s.Next != jobsheet.StepReassemble {
		t.Fatalf("%v, next %v", r, s.Next)
	}
	if !strings.Contains(asPrinted(t, s), "reassemble, 1 on the word of the machinist") {
		t.Error("the sheet does not name the word")
	}
	// The word lapses when what stood there changes.
	put(t, j, "cylinders.0.crosshatch", "21° included")
	s = mustPlan(t, j)
	if r := rowOf(t, s, row); r.State != jobsheet.StateFailed || !r.Lapsed || s.Next == jobsheet.StepReassemble {
		t.Errorf("lapsed: %+v, next %v", r, s.Next)
	}
	if len(s.Unused) != 1 || !strings.Contains(s.Unused[0].Says, "lapsed") {
		t.Errorf("unused: %v", s.Unused)
	}
	// A maker's figure may be exceeded by a named person.
	word["stood"] = rowOf(t, s, row).Stands
	if s = mustPlan(t, j); rowOf(t, s, row).State != jobsheet.StateAccepted || s.Next != jobsheet.StepReassemble {
		t.Errorf("beyond, accepted: %v", s.Next)
	}

	// A kind for which the maker gives no figure, for the whole engine.
	j = finished(false, false)
	put(t, j, "engine.limits.greatest_less_least", nil)
	if s = mustPlan(t, j); s.Next != jobsheet.StepTell {
		t.Errorf("no figure: %v", s.Next)
	}
	put(t, j, "accepted", []any{tree{"demand": "greatest minus least", "by": "the machinist", "why": "the manual has none"}})
	if s = mustPlan(t, j); s.Next != jobsheet.StepReassemble || rowOf(t, s, "cylinders[0].greatest minus least").State != jobsheet.StateAccepted {
		t.Errorf("accepted by kind: %v", s.Next)
	}
	// It covers the want of a figure and nothing else.
	put(t, j, "accepted", []any{tree{"demand": "crosshatch", "by": "the machinist", "why": "x"}})
	put(t, j, "engine.limits.greatest_less_least", "0.09 mm")
	put(t, j, "cylinders.0.crosshatch", nil)
	if s = mustPlan(t, j); s.Next == jobsheet.StepReassemble {
		t.Error("a kind was accepted that wants a measurement")
	}
}

// TestNobodyAccepts: what no word can stand for.
func TestNobodyAccepts(t *testing.T) {
	for _, c := range []struct {
		name, row string
		change    map[string]any
		twoStroke bool
		kept      bool
	}{
		{"ends that touch", "cylinders[0].rings[0].running gap", map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "320 °C", "bore": "90 °C"}}, false, false},
		{"ends that may touch", "cylinders[0].rings[0].running gap", map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "226 ± 20 °C", "bore": "90 ± 10 °C"}}, false, false},
		{"an end that crosses a port", "cylinders[0].rings[0].ports[0].ring ends", map[string]any{"engine.rings.0.peg": "28°"}, true, false},
		{"facts that contradict each other", "cylinders[0].gaps of ring first.agreement", map[string]any{"cylinders.0.rings.0.gap": "0.62 ± 0.015 mm"}, false, true},
		{"what the route hangs on", "engine.told", map[string]any{"engine.may_shift": nil}, false, false},
		{"a lost count", "engine.counted", map[string]any{"counted.proof": nil}, false, false},
		{"a slip", "engine.engine.limits.taper.usual", map[string]any{"engine.limits.taper": "0.72 mm"}, false, true},
		{"work to come", "cylinders[0].work", map[string]any{"cylinders.0.proof": []any{}, "counted.proof": 0}, false, false},
		{"a piston larger than its bore", "cylinders[0].least clearance", map[string]any{"cylinders.0.piston.size": "80.060 ± 0.002 mm",
			"engine.limits.piston_clearance": nil, "engine.limits.worn_clearance": nil, "engine.oversizes": nil}, false, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := finished(!c.kept, c.twoStroke)
			for path, v := range c.change {
				put(t, j, path, v)
			}
			kind := tree{"demand": "least clearance", "by": "somebody", "why": "the manual has none"}
			put(t, j, "accepted", []any{kind})
			r := rowOf(t, mustPlan(t, j), c.row)
			if settled(r.State) {
				t.Fatalf("%s stands: %s", c.row, r.Stands)
			}
			put(t, j, "accepted", []any{kind, tree{"row": c.row, "by": "somebody", "why": "in a hurry", "stood": r.Stands}})
			s := mustPlan(t, j)
			if r := rowOf(t, s, c.row); r.State == jobsheet.StateAccepted || s.Next >= jobsheet.StepLeaveUntouched {
				t.Errorf("accepted: %s, next %v", r.Stands, s.Next)
			}
			if len(s.Unused) == 0 || !strings.Contains(s.Unused[len(s.Unused)-1].Says, "nobody can accept this") {
				t.Errorf("not said: %v", s.Unused)
			}
		})
	}
}

// TestConfirmed: what looks like a slip goes on when it is confirmed as it stands, and not when it is changed.
func TestConfirmed(t *testing.T) {
	j := finished(false, false)
	put(t, j, "engine.limits.ovality", "0.24 mm")
	put(t, j, "confirmed", []any{tree{"field": "engine.limits.ovality", "value": "0.24 mm"}})
	if s := mustPlan(t, j); s.Next != jobsheet.StepReassemble {
		t.Errorf("confirmed: %v", s.Next)
	}
	put(t, j, "engine.limits.ovality", "0.25 mm")
	if s := mustPlan(t, j); s.Next != jobsheet.StepTell {
		t.Errorf("changed since: %v", s.Next)
	}
}

// TestDepthConfirmed: a place deeper than a bore of two strokes is asked about by its own path, wherever it stands, and goes on
// when that is confirmed.
func TestDepthConfirmed(t *testing.T) {
	for path, name := range map[string]string{"readings.2": "pump-finished", "proof.2": "pump-finished", "traces.4": "traced", "proof_traces.4": "traced"} {
		j := demoTrees(t)[name]
		list, n, _ := strings.Cut(path, ".")
		field := "cylinders[0]." + list + "[" + n + "].depth"
		put(t, j, "engine.layout.length", nil)
		put(t, j, "cylinders.0."+path+".depth", "171 mm")
		asked := func() bool {
			return slices.ContainsFunc(mustPlan(t, j).Ledger, func(r jobsheet.Row) bool {
				return strings.Contains(r.Says, field+" 171 mm: a bore ends within two strokes")
			})
		}
		if !asked() {
			t.Errorf("%s is not asked about", field)
		}
		put(t, j, "confirmed", []any{tree{"field": field, "value": "171 mm"}})
		if asked() {
			t.Errorf("%s is asked about though it is confirmed", field)
		}
	}
}

// TestOrderOfSteps: the most pressing row calls, and every step but StepReassemble has a row that calls for it.
func TestOrderOfSteps(t *testing.T) {
	called := map[jobsheet.Step]bool{}
	look := func(s jobsheet.Sheet) {
		for _, r := range s.Ledger {
			if !settled(r.State) || r.Step == jobsheet.StepLeaveUntouched {
				called[r.Step] = true
			}
			if r.State == jobsheet.StateProven && r.Step != jobsheet.StepReassemble && r.Step != jobsheet.StepLeaveUntouched {
				t.Errorf("%s is proven and calls for %v", r.Key, r.Step)
			}
		}
		stands := slices.ContainsFunc(s.Ledger, func(r jobsheet.Row) bool { return !settled(r.State) })
		if stands == (s.Next >= jobsheet.StepLeaveUntouched) {
			t.Errorf("%s: rows stand open %v, next %v", s.Job.Title, stands, s.Next)
		}
	}
	turn := 0
	jobs := attacked(t)
	for _, name := range slices.Sorted(maps.Keys(jobs)) { // in one order, so that every run tries the same
		j := jobs[name]
		look(mustPlan(t, j))
		spots("", j, func(p spot) {
			if turn++; p.item || turn%stride != 0 {
				return
			}
			undo := p.remove()
			if s, err := planned(t, j); err == nil {
				look(s)
			}
			undo()
		})
	}
	for _, c := range []struct {
		bored  bool
		change map[string]any
	}{
		{true, map[string]any{"cylinders.0.proof.0.diameter": "80.600 mm", "cylinders.0.proof.0.confirmed": true}}, // past its size
		{true, map[string]any{"cylinders.0.proof.0.diameter": "80.480 mm"}},                                        // too small
		{true, map[string]any{"cylinders.0.crosshatch": "20° included"}},
		{true, map[string]any{"cylinders.0.rings.1.finished": "0.006 ± 0.005 mm"}},
		{true, map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "320 °C", "bore": "90 °C"}}},
		{false, map[string]any{"cylinders.0.proof": []any{}, "counted.proof": 0}},
		{false, map[string]any{"engine.wall": "plated", "engine.material": "aluminium block", "cylinders.0.plating_whole": true, "cuts": nil, "cylinders.0.proof": []any{}, "counted.proof": 0}},
	} {
		j := finished(c.bored, false)
		for path, v := range c.change {
			put(t, j, path, v)
		}
		look(mustPlan(t, j))
	}
	for s := jobsheet.StepMeasure; s < jobsheet.StepReassemble; s++ {
		if !called[s] {
			t.Errorf("no row called for: %v", s)
		}
	}
}

// TestLedgerIsPrinted: text, JSON and rows agree.
func TestLedgerIsPrinted(t *testing.T) {
	for name, j := range demoTrees(t) {
		s := mustPlan(t, j)
		text := asPrinted(t, s)
		var written bytes.Buffer
		if err := s.WriteJSON(&written); err != nil {
			t.Fatal(err)
		}
		var file struct {
			Next   string
			Ledger []struct{ Key, State, Step, Stands string }
		}
		if err := json.Unmarshal(written.Bytes(), &file); err != nil {
			t.Fatal(err)
		}
		if file.Next != s.Next.String() || len(file.Ledger) != len(s.Ledger) {
			t.Fatalf("%s: %d rows, next %s", name, len(file.Ledger), file.Next)
		}
		keys := map[string]bool{}
		said := unbroken(text)
		for i, r := range s.Ledger {
			f := file.Ledger[i]
			if f.Key != r.Key || f.State != r.State.String() || f.Step != r.Step.String() || f.Stands != r.Stands {
				t.Errorf("%s: %+v is written as %+v", name, r, f)
			}
			if keys[r.Key] {
				t.Errorf("%s: two rows %s", name, r.Key)
			}
			keys[r.Key] = true
			if !strings.Contains(said, r.Demand.String()) {
				t.Errorf("%s: %q is not on the sheet", name, r.Demand)
			}
		}
		if !strings.Contains(said, s.Next.String()) {
			t.Errorf("%s: the step is not on the sheet", name)
		}
	}
}

// TestStudyOfTheGauge: ten readings of one ring give the repeatability, and a trial that is lost is missed.
func TestStudyOfTheGauge(t *testing.T) {
	j := finished(false, false)
	var trials []any
	for _, um := range []string{"2.2", "1.9", "2.4", "1.6", "2.1", "2.0", "2.7", "1.8", "2.3", "1.7"} {
		trials = append(trials, tree{"part": "ring", "reading": "80.00" + strings.Replace(um, ".", "", 1) + " mm"})
	}
	put(t, j, "gauge.repeatability", nil)
	put(t, j, "gauge.study", trials)
	if _, err := planned(t, j); err == nil || !strings.Contains(err.Error(), "counted.trials") {
		t.Errorf("nobody counted the trials: %v", err)
	}
	put(t, j, "counted.trials", 10)
	s := mustPlan(t, j)
	// By hand: mean 2.07 µm, squares of the departures 1.041 in all, over 9: one standard deviation 0.340 µm.
	if got := s.Study.Repeatability.Std.Format(units.Micrometre, 3); got != "0.340 µm" || s.Study.Repeatability.DoF != 9 {
		t.Errorf("scatter %s with %v degrees of freedom", got, s.Study.Repeatability.DoF)
	}
	if s.Next != jobsheet.StepReassemble {
		t.Error(s.Next)
	}
	put(t, j, "gauge.study", trials[1:])
	if _, err := planned(t, j); err == nil {
		t.Error("a lost trial is not missed")
	}
}

// TestCrosshatchDoubt: an angle with its doubt, as a photograph gives it, is judged with it.
func TestCrosshatchDoubt(t *testing.T) {
	j := finished(true, false)
	put(t, j, "cylinders.0.crosshatch", "49.5° included")
	for doubt, state := range map[string]jobsheet.State{"1.4°": jobsheet.StateProven, "1.9°": jobsheet.StateOpen} {
		put(t, j, "cylinders.0.crosshatch_doubt", doubt)
		if r := rowOf(t, mustPlan(t, j), "cylinders[0].crosshatch"); r.State != state {
			t.Errorf("± %s: %s", doubt, r.Stands)
		}
	}
	put(t, j, "cylinders.0.crosshatch_doubt", nil)
	if r := rowOf(t, mustPlan(t, j), "cylinders[0].crosshatch"); r.State != jobsheet.StateOpen {
		t.Errorf("of no doubt at all: %s", r.Stands)
	}
}

// TestRepeatsThatContradict: repeats that scatter more than the gauge is said to are named; where nobody says how well
// it repeats, repeats far apart wait to be confirmed, so that leaving one out helps nobody.
func TestRepeatsThatContradict(t *testing.T) {
	again := func(um string) tree {
		j := finished(false, false)
		c := j["cylinders"].([]any)[0].(tree)
		first := c["proof"].([]any)[0].(tree)
		c["proof"] = append(c["proof"].([]any), tree{"depth": first["depth"], "axis": first["axis"], "diameter": um})
		put(t, j, "counted.proof", len(c["proof"].([]any)))
		return j
	}
	at := finished(false, false)["cylinders"].([]any)[0].(tree)["proof"].([]any)[0].(tree)["diameter"]
	mm := numberOf(t, at)
	far, near := fmt.Sprintf("%.4f mm", mm+0.009), fmt.Sprintf("%.4f mm", mm+0.001)
	if r := rowOf(t, mustPlan(t, again(far)), "cylinders[0].repeats.agreement"); r.State != jobsheet.StateOpen || name(r.Reason) != "contradicts" {
		t.Errorf("9 µm apart, 0.8 µm stated: %s", r.Stands)
	}
	if r := rowOf(t, mustPlan(t, again(near)), "cylinders[0].repeats.agreement"); r.State != jobsheet.StateProven {
		t.Errorf("1 µm apart: %s", r.Stands)
	}
	j := again(far)
	put(t, j, "gauge.repeatability", nil)
	if s := mustPlan(t, j); s.Next != jobsheet.StepTell {
		t.Errorf("9 µm apart and nothing stated: %v", s.Next)
	}
}

// TestTexture: a texture that the rings want is a row of its own; nobody asks, and it is not asked.
func TestTexture(t *testing.T) {
	j := finished(true, false)
	if r := rowOf(t, mustPlan(t, j), "cylinders[0].texture"); r.State != jobsheet.StateNotAsked {
		t.Error(r.Stands)
	}
	put(t, j, "engine.texture", tree{"rpk": "max 0.3 µm", "rvk": "0.8 to 2.0 µm"})
	if s := mustPlan(t, j); name(rowOf(t, s, "cylinders[0].texture").Reason) != "not measured" || s.Next == jobsheet.StepReassemble {
		t.Errorf("wanted and not read: %v", s.Next)
	}
	read := func(rpk ...string) {
		var list []any
		for i, x := range rpk {
			list = append(list, tree{"place": fmt.Sprintf("place %d", i), "texture": tree{"rpk": x, "rk": "0.7 µm", "rvk": fmt.Sprintf("1.%d µm", 35+i), "mr1": 0.08, "mr2": 0.84}})
		}
		put(t, j, "cylinders.0.texture", list)
		put(t, j, "counted.textures", len(list))
	}
	put(t, j, "gauge.profiler", tree{"relative": 0.02, "resolution": "0.01 µm"})
	for _, c := range []struct {
		rpk   []string
		state jobsheet.State
	}{
		{[]string{"0.20 µm", "0.21 µm", "0.19 µm", "0.20 µm", "0.21 µm"}, jobsheet.StateProven},
		{[]string{"0.52 µm", "0.53 µm", "0.50 µm", "0.51 µm", "0.52 µm"}, jobsheet.StateFailed},
		{[]string{"0.29 µm", "0.30 µm", "0.28 µm", "0.30 µm", "0.29 µm"}, jobsheet.StateOpen},
		{[]string{"0.20 µm"}, jobsheet.StateOpen},
	} {
		read(c.rpk...)
		if r := rowOf(t, mustPlan(t, j), "cylinders[0].texture"); r.State != c.state {
			t.Errorf("Rpk %v: %s", c.rpk, r.Stands)
		}
	}
}

// TestCoarseGaugeIsSaid: where no size in the finish window can be proven the sheet says so, of a bored cylinder as of
// a sleeve. The window is 0.025 mm wide.
func TestCoarseGaugeIsSaid(t *testing.T) {
	for _, c := range []struct{ demo, path, size string }{
		{"pump", "engine.oversizes.1.pistons.0.size", "78.446"}, {"sleeve", "cylinders.0.piston", "77.946"},
	} {
		for doubt, coarse := range map[string]bool{"0.004": false, "0.014": true, "0.030": true} {
			j := demoTrees(t)[c.demo]
			size := any(fmt.Sprintf("%s ± %s mm", c.size, doubt))
			if c.demo == "sleeve" {
				size = tree{"size": size, "axis": "across pin", "coating": "0 mm"}
				put(t, j, "cylinders.0.piston_for", "0 mm")
				put(t, j, "engine.one_size", false)
			}
			put(t, j, c.path, size)
			choice := mustPlan(t, j).Choice
			said := func(caution string) bool { return strings.Contains(caution, "cannot be proven") }
			if slices.ContainsFunc(choice.Cautions, said) != coarse || slices.ContainsFunc(choice.Cylinders[0].Cautions, said) != coarse {
				t.Errorf("%s, piston ± %s mm: %v", c.demo, doubt, choice.Cautions)
			}
		}
	}
}

// TestWideRing: a ring wider than a new one may stay in a bore that stays, up to its limit in service, but not one that
// was filed for it; the front asks for another where the row of its gap does.
func TestWideRing(t *testing.T) {
	for _, c := range []struct {
		gap    string
		filed  bool
		bought bool
	}{{"0.60 ± 0.03 mm", false, false}, {"0.60 ± 0.03 mm", true, true}, {"1.30 ± 0.03 mm", false, true}} {
		j := demoTrees(t)["keep"]
		put(t, j, "cylinders.0.rings.0.gap", c.gap)
		put(t, j, "cylinders.0.rings.0.finished", c.gap)
		put(t, j, "cylinders.0.rings.0.filed", c.filed)
		s := mustPlan(t, j)
		text := asPrinted(t, s)
		if row := rowOf(t, s, "cylinders[0].rings[0].gap"); strings.Contains(text, "another top ring") != c.bought || settled(row.State) == c.bought {
			t.Errorf("%+v: %v %v\n%s", c, row.State, row.Stands, text[:900])
		}
	}
}

// TestTwoAxesProveNoOvality: what lies midway between two axes reads alike on both, so that a proof along them, however
// small its difference, leaves the ovality open; what it finds beyond is beyond.
func TestTwoAxesProveNoOvality(t *testing.T) {
	for name, want := range map[string]jobsheet.State{"as read": jobsheet.StateOpen, "beyond": jobsheet.StateFailed} {
		j := demoTrees(t)["pump-finished"]
		left := 0
		for _, c := range j["cylinders"].([]any) {
			for _, field := range []string{"readings", "proof"} {
				kept := slices.DeleteFunc(c.(tree)[field].([]any), func(r any) bool { return r.(tree)["axis"] == "45°" })
				c.(tree)[field] = kept
				put(t, j, "counted."+field, len(kept)*len(j["cylinders"].([]any)))
				if field == "proof" {
					left = len(kept)
				}
			}
			if name == "beyond" {
				moveProof(t, c.(tree), "pin", 0.03)
			}
		}
		s := mustPlan(t, j)
		if s.Next == jobsheet.StepReassemble || left == 0 {
			t.Errorf("%s: %v with %d readings", name, s.Next, left)
		}
		n := 0
		for _, r := range s.Ledger {
			if r.Demand.String() == "ovality" {
				if n++; r.State != want {
					t.Errorf("%s: ovality of %s is %v, want %v", name, r.Cylinder, r.State, want)
				}
			}
			if r.Demand.String() == "greatest minus least" && r.State == jobsheet.StateProven { // which holds the ovality of each plane
				t.Errorf("%s: greatest minus least of %s is %v", name, r.Cylinder, r.State)
			}
		}
		if n != 2 {
			t.Errorf("%d rows of ovality", n)
		}
	}
}

// TestTwoAxesKeepNoBore: a worn bore that is read along one axis or two may be too oval to keep along another, so that
// its route waits for a third one. A size is bored to on two: what is left unseen there, the proof has to show.
func TestTwoAxesKeepNoBore(t *testing.T) {
	for axes, want := range map[string]jobsheet.Step{
		"thrust, 36°, 72°, 108°, 144°": jobsheet.StepDeglaze, "thrust, 36°, 108°": jobsheet.StepDeglaze,
		"thrust, 72°": jobsheet.StepMeasureBetter, "thrust": jobsheet.StepTell, // it says nothing of a limit on ovality
	} {
		j := demoTrees(t)["keep"]
		c := cylinderOf(j, 0)
		delete(c, "proof")
		delete(c, "crosshatch")
		left := slices.DeleteFunc(c["readings"].([]any), func(r any) bool { return !slices.Contains(strings.Split(axes, ", "), r.(tree)["axis"].(string)) })
		c["readings"] = left
		put(t, j, "counted.readings", len(left))
		put(t, j, "counted.proof", 0)
		s := mustPlan(t, j)
		r := rowOf(t, s, "cylinders[0].route")
		if s.Next != want || (r.State == jobsheet.StateProven) != (want == jobsheet.StepDeglaze) {
			t.Errorf("%s: %v, %s", axes, s.Next, r.Stands)
		}
		if axes == "thrust, 72°" && (name(r.Reason) != "not seen" || s.Choice.Route != oversize.HoneAndKeep) {
			t.Errorf("%s: %v, route %v", axes, r.Reason, s.Choice.Route)
		}
	}
}

// moveProof adds to every reading of a proof along an axis, in millimetres.
func moveProof(t *testing.T, c tree, axis string, by float64) {
	t.Helper()
	for _, r := range c["proof"].([]any) {
		if r := r.(tree); r["axis"] == axis {
			for _, field := range []string{"diameter", "deviation"} {
				if text, ok := r[field].(string); ok {
					r[field] = fmt.Sprintf("%.4f mm", numberOf(t, text)+by)
				}
			}
		}
	}
}

// TestFeelerAndBore: a ring's gap grows by π times the mean diameter (rings.DiameterChange), so that a feeler test at two
// depths that were read must find what the readings find: (0.46 − 0.39) mm/π = 0.022 mm beside 0.022 mm of them.
func TestFeelerAndBore(t *testing.T) {
	const row = "cylinders[0].feeler test and bore.agreement"
	for _, q := range []struct {
		upper, depth string
		want         jobsheet.State
	}{
		{"0.46 ± 0.02 mm", "12 mm", jobsheet.StateProven}, {"0.48 ± 0.02 mm", "12 mm", jobsheet.StateProven},
		{"0.56 ± 0.02 mm", "12 mm", jobsheet.StateOpen}, {"0.36 ± 0.02 mm", "12 mm", jobsheet.StateOpen},
		{"0.56 ± 0.02 mm", "20 mm", -1}, // where nobody read there is nothing to compare
	} {
		j := demoTrees(t)["keep"]
		put(t, j, "cylinders.0.feeler_test.0", tree{"depth": q.depth, "gap": q.upper})
		s := mustPlan(t, j)
		there := slices.ContainsFunc(s.Ledger, func(r jobsheet.Row) bool { return r.Key == row })
		unused := slices.ContainsFunc(s.Unused, func(r jobsheet.Remark) bool { return r.On == "cylinders[0].feeler_test" })
		switch {
		case q.want < 0:
			if there || !unused {
				t.Errorf("at %s: a row %v, said to be unused %v", q.depth, there, unused)
			}
		case unused || rowOf(t, s, row).State != q.want || (s.Next == jobsheet.StepReassemble) != (q.want == jobsheet.StateProven):
			t.Errorf("%s: %v, %s", q.upper, s.Next, rowOf(t, s, row).Stands)
		}
	}
	// Two axes may miss the mean.
	j := demoTrees(t)["keep"]
	put(t, j, "cylinders.0.feeler_test.0.gap", "0.56 ± 0.02 mm")
	left := slices.DeleteFunc(cylinderOf(j, 0)["readings"].([]any), func(r any) bool {
		return r.(tree)["depth"] == "12 mm" && r.(tree)["axis"] != "thrust" && r.(tree)["axis"] != "72°"
	})
	cylinderOf(j, 0)["readings"] = left
	put(t, j, "counted.readings", len(left))
	s := mustPlan(t, j)
	if slices.ContainsFunc(s.Ledger, func(r jobsheet.Row) bool { return r.Key == row }) || len(s.Unused) == 0 {
		t.Errorf("along two axes: %v", s.Unused)
	}
	// The traces of the wall will do as well.
	j = tracedDemo(t)
	for gap, want := range map[string]jobsheet.State{"0.51 ± 0.02 mm": jobsheet.StateProven, "0.38 ± 0.02 mm": jobsheet.StateOpen} {
		put(t, j, "cylinders.0.feeler_test", []any{tree{"depth": "10 mm", "gap": gap}, tree{"depth": "104 mm", "gap": "0.30 ± 0.02 mm"}})
		if r := rowOf(t, mustPlan(t, j), row); r.State != want {
			t.Errorf("traced, %s: %s", gap, r.Stands)
		}
	}
}

// TestProofOfAnotherSize: a bore that was finished to one size is not cut on to another because less is known of it than
// when it was cut.
func TestProofOfAnotherSize(t *testing.T) {
	const row = "cylinders[0].proof and size.agreement"
	j := tracedDemo(t)
	if s := mustPlan(t, j); rowOf(t, s, row).State != jobsheet.StateProven || s.Choice.Over != 250*units.Micrometre {
		t.Fatalf("%v over: %s", s.Choice.Over, rowOf(t, s, row).Stands)
	}
	put(t, j, "gauge.spindle.out_of_square", nil) // its clean-up is not about the axis then, and +0.25 mm not enough
	s := mustPlan(t, j)
	if r := rowOf(t, s, row); s.Choice.Over != 500*units.Micrometre || name(r.Reason) != "contradicts" || s.Next != jobsheet.StepMeasureBetter {
		t.Errorf("%v over, %v: %s", s.Choice.Over, s.Next, r.Stands)
	}

	kept := demoTrees(t)["keep"] // and one that was cut is not taken for one that is kept
	if r := rowOf(t, mustPlan(t, kept), row); r.State != jobsheet.StateProven {
		t.Error(r.Stands)
	}
	put(t, kept, "engine.oversizes", []any{tree{"over": "0.25 mm", "makers_list": true}})
	for _, axis := range []string{"thrust", "36°", "72°", "108°", "144°"} {
		moveProof(t, cylinderOf(kept, 0), axis, 0.24)
	}
	if r := rowOf(t, mustPlan(t, kept), row); name(r.Reason) != "contradicts" {
		t.Errorf("kept, and 0.24 mm larger: %s", r.Stands)
	}
	put(t, kept, "engine.layout.ring_top", nil) // while nothing is decided nothing is proven
	if r := rowOf(t, mustPlan(t, kept), row); r.State != jobsheet.StateOpen {
		t.Errorf("undecided: %s", r.Stands)
	}
}

// TestRecordOfAnotherSize: nor is a bore honed on to a size that it was not bored for.
func TestRecordOfAnotherSize(t *testing.T) {
	j := demoTrees(t)["pump-finished"]
	c := cylinderOf(j, 0)
	delete(c, "proof")
	put(t, j, "counted.proof", len(cylinderOf(j, 1)["proof"].([]any)))
	for start, broken := range map[string]bool{"78.450 mm": false, "78.205 mm": true} { // for +0.50 and for +0.25 mm
		c["honing"] = []any{tree{"diameter": start, "at": "20 °C"}}
		put(t, j, "counted.passes", 0)
		r := rowOf(t, mustPlan(t, j), "cylinders[0].honing record")
		if (name(r.Reason) == "record broken" && strings.Contains(r.Says, "nearer")) != broken {
			t.Errorf("from %s: %s", start, r.Stands)
		}
	}
}

// TestUnaskedIsSaid: a demand that vanishes with its limit is on the front page, where everybody sees it.
func TestUnaskedIsSaid(t *testing.T) {
	for field, what := range map[string]string{
		"": "side clearance, hot ring gaps", "engine.limits.roundness": "roundness, side clearance, hot ring gaps",
		"engine.limits.cylindricity": "cylindricity, side clearance, hot ring gaps", "engine.texture": "texture, side clearance, hot ring gaps", "engine.rings.1": "",
	} {
		j := tracedDemo(t)
		for n := range 3 {
			if what == "" {
				put(t, j, fmt.Sprintf("engine.rings.%d.hot_gap", n), "0.05 mm")
				put(t, j, fmt.Sprintf("engine.rings.%d.side", n), "0.02 to 0.10 mm")
			}
		}
		if what != "" && field != "" {
			put(t, j, field, nil)
		}
		text := asPrinted(t, mustPlan(t, j))
		if at := strings.Index(text, "UNASKED:"); what == "" != (at < 0) || what != "" && !strings.Contains(text[at:at+60], " "+what+"\n") {
			t.Errorf("without %q: want %q", field, what)
		}
	}
}

// TestEveryPlaceIsReadAgain: a place of the survey that the proof leaves out is missed, though no part of ring travel goes
// without one.
func TestEveryPlaceIsReadAgain(t *testing.T) {
	j := demoTrees(t)["keep"]
	c := cylinderOf(j, 0)
	left := slices.DeleteFunc(c["proof"].([]any), func(r any) bool { return r.(tree)["depth"] == "84 mm" && r.(tree)["axis"] == "144°" })
	c["proof"] = left
	put(t, j, "counted.proof", len(left))
	s := mustPlan(t, j)
	if r := rowOf(t, s, "cylinders[0].travel"); name(r.Reason) != "not seen" || !strings.Contains(r.Says, "not read again: 1") || s.Next != jobsheet.StepWashAndProve {
		t.Errorf("%v: %s", s.Next, r.Stands)
	}
}

// TestNoStandardProvesNoSize: what a gauge shows that was set on nothing is no size, whatever it is held against.
func TestNoStandardProvesNoSize(t *testing.T) {
	j := demoTrees(t)["plated"] // which stays as it is, so that no route asks what the gauge was set on
	put(t, j, "gauge.standard", nil)
	for _, r := range cylinderOf(j, 0)["readings"].([]any) {
		if r, ok := r.(tree); ok && r["deviation"] != nil {
			delete(r, "deviation")
			r["diameter"] = "48.010 mm"
		}
	}
	s := mustPlan(t, j)
	if r := rowOf(t, s, "cylinders[0].size"); name(r.Reason) != "no standard" || s.Next == jobsheet.StepLeaveUntouched {
		t.Errorf("%v: %s", s.Next, r.Stands)
	}
}

// TestNoToleranceProvesNoCrosshatch: a crosshatch is held against nothing where nobody said how far it may be off; that is
// asked, and a wall is not ready without it.
func TestNoToleranceProvesNoCrosshatch(t *testing.T) {
	j := demoTrees(t)["keep"]
	put(t, j, "tools.tolerance", nil)
	if s := mustPlan(t, j); s.Next != jobsheet.StepTell {
		t.Error(s.Next)
	} else if r := rowOf(t, s, "cylinders[0].crosshatch"); name(r.Reason) != "not said" || !slices.Contains(r.Give, "tools.tolerance") {
		t.Error(r.Stands)
	}
}
