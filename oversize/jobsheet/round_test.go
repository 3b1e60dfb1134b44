// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// A roundOf is one job file, growing as the work goes on, and what the sheet last said of it.
type roundOf struct {
	t     *testing.T
	job   tree
	whole tree // the same job, carried to its end: where each stage takes from
	rows  []jobsheet.Row
}

// cylinderOf returns one cylinder of a job.
func cylinderOf(j tree, i int) tree { return j["cylinders"].([]any)[i].(tree) }

// count writes down how many of each thing stand in the file by now.
func (r *roundOf) count() {
	n := map[string]int{"readings": 0, "proof": 0, "passes": 0}
	for i := range r.job["cylinders"].([]any) {
		c := cylinderOf(r.job, i)
		for _, of := range []string{"readings", "proof"} {
			list, _ := c[of].([]any)
			n[of] += len(list)
		}
		if h, ok := c["honing"].([]any); ok {
			n["passes"] += len(h) - 1
		}
	}
	for of, x := range n {
		put(r.t, r.job, "counted."+of, x)
	}
}

// says plans the file and holds the engine's step and each cylinder's to those wanted. No row goes while the file
// grows, but for a sleeve's, once there is to be none.
func (r *roundOf) says(stage string, engine jobsheet.Step, each ...jobsheet.Step) jobsheet.Sheet {
	r.t.Helper()
	r.count()
	s := mustPlan(r.t, r.job)
	if s.Next != engine {
		r.t.Errorf("%s: next %v, want %v", stage, s.Next, engine)
		for _, row := range s.Ledger {
			if !settled(row.State) {
				r.t.Logf("  %s: %s (%v)", row.Key, row.Stands, row.Step)
			}
		}
	}
	for i, want := range each {
		if got := s.Cylinders[i].Next; got != want {
			r.t.Errorf("%s: cylinder %d: next %v, want %v", stage, i, got, want)
		}
	}
	for _, was := range r.rows {
		if name(was.Demand) != "sleeve" && !slices.ContainsFunc(s.Ledger, func(is jobsheet.Row) bool { return is.Key == was.Key }) {
			r.t.Errorf("%s: row %s is gone", stage, was.Key)
		}
	}
	r.rows = s.Ledger
	return s
}

// take puts down what was found or done at one cylinder.
func (r *roundOf) take(i int, fields ...string) {
	for _, f := range fields {
		cylinderOf(r.job, i)[f] = cylinderOf(r.whole, i)[f]
	}
}

// newRound returns a job of which nothing has been read yet.
func newRound(t *testing.T, h honest) *roundOf {
	drawn := func() honest { h := h; h.r = rand.New(rand.NewPCG(5, 7)); return h }
	r := &roundOf{t: t, job: drawn().tree(false), whole: drawn().tree(true)}
	put(t, r.job, "tools.trial_pass", "15s")
	put(t, r.job, "tools.longest_pass", "30s")
	put(t, r.job, "engine.oversizes.0.pistons", nil)
	for i := range h.cylinders {
		c := cylinderOf(r.job, i)
		for _, f := range []string{"readings", "piston", "piston_for", "wear_share"} {
			delete(c, f)
		}
	}
	return r
}

// TestWholeRound: one file from the barrel on the bench to the engine that goes together, in millimetres and in
// inches, bored and kept. The second cylinder lags behind the first, and the engine waits for it.
func TestWholeRound(t *testing.T) {
	for _, h := range []honest{
		{bore: 80, stroke: 76, cylinders: 2},
		{bore: 95, stroke: 101, cylinders: 2, inches: true},
	} {
		for _, bored := range []bool{true, false} {
			h.bored = bored
			t.Run(fmt.Sprintf("inches %v, bored %v", h.inches, bored), func(t *testing.T) {
				r := newRound(t, h)
				s := r.says("nothing read", jobsheet.StepMeasure, jobsheet.StepMeasure, jobsheet.StepMeasure)
				if len(s.ToRead) < 12 || len(s.Choice.Cylinders) > 0 {
					t.Errorf("%d places to read, and a choice of %d out of nothing", len(s.ToRead), len(s.Choice.Cylinders))
				}
				r.take(0, "readings", "wear_share")
				r.says("one read", jobsheet.StepMeasure, jobsheet.StepWaitForOthers, jobsheet.StepMeasure)
				r.take(1, "readings")
				r.says("both read", jobsheet.StepTell, jobsheet.StepTell, jobsheet.StepTell)
				r.take(1, "wear_share")
				if bored {
					r.bore(h)
				} else {
					r.keep()
				}
			})
		}
	}
}

// bore carries on from readings of bores that go to the next oversize.
func (r *roundOf) bore(h honest) {
	t := r.t
	r.says("all said", jobsheet.StepGetPistons, jobsheet.StepGetPistons, jobsheet.StepGetPistons)
	put(t, r.job, "engine.oversizes.0.pistons", r.whole["engine"].(tree)["oversizes"].([]any)[0].(tree)["pistons"])
	s := r.says("pistons got", jobsheet.StepBore, jobsheet.StepBore, jobsheet.StepBore)
	// The pistons are 0.45 of the clearance window below 0.01 mm over the size: the middle of the finish window lies
	// 0.05 of that window higher.
	least, most := 0.0007*h.bore+0.005, 0.0012*h.bore+0.025
	aim := h.bore + 0.5 + 0.01 + 0.05*(most-least)
	millimetres(t, "the size to hone to", s.Choice.Cylinders[0].Aim, aim, 1e-4)
	step := 0.01 // that a boring tool is set to
	if h.inches {
		step = 0.0005 * 25.4
	}
	millimetres(t, "the size to bore to", s.Choice.Cylinders[0].Bored, step*math.Floor((aim-0.05)/step), 1e-4)

	at := func(x float64) tree { return tree{"diameter": h.mm(x), "at": "22 °C"} }
	pass := func(lasts string, after float64) tree {
		return tree{"lasts": lasts, "diameter": h.mm(after), "at": "22 °C"}
	}
	for i := range 2 {
		other := []jobsheet.Step{jobsheet.StepBore, jobsheet.StepWashAndProve}[i] // the cylinder that is not at work
		each := func(step jobsheet.Step) []jobsheet.Step {
			if i == 0 {
				return []jobsheet.Step{step, other}
			}
			return []jobsheet.Step{other, step}
		}
		engine := func(step jobsheet.Step) jobsheet.Step { return min(step, other) }
		honed := func(passes ...any) { cylinderOf(r.job, i)["honing"] = append([]any{at(aim - 0.05)}, passes...) }
		honed()
		s = r.says("bored", engine(jobsheet.StepHone), each(jobsheet.StepHone)...)
		if next := s.Cylinders[i].Pass; next.Lasts.Seconds() != 15 {
			t.Errorf("the first pass is not the trial: %v", next.Lasts)
		}
		honed(pass("10s", aim-0.044))
		r.says("the trial pass", engine(jobsheet.StepHone), each(jobsheet.StepHone)...)
		honed(pass("10s", aim-0.044), pass("15s", aim-0.036))
		r.says("two passes", engine(jobsheet.StepHone), each(jobsheet.StepHone)...)
		honed(pass("10s", aim-0.044), pass("15s", aim-0.036), pass("60s", aim))
		r.says("at its size", engine(jobsheet.StepWashAndProve), each(jobsheet.StepWashAndProve)...)
	}
	was := cylinderOf(r.job, 1)["honing"]
	cylinderOf(r.job, 1)["honing"] = []any{at(aim - 0.05), pass("10s", aim-0.044), pass("15s", aim-0.036), pass("90s", aim+0.05)}
	r.says("one run past", jobsheet.StepOversized, jobsheet.StepWaitForOthers, jobsheet.StepOversized)
	cylinderOf(r.job, 1)["honing"] = was
	r.prove(jobsheet.StepWashAndProve)
}

// keep carries on from readings of bores that stay.
func (r *roundOf) keep() {
	r.says("all said", jobsheet.StepGetPistons, jobsheet.StepGetPistons, jobsheet.StepGetPistons)
	for i := range 2 {
		r.take(i, "piston", "piston_for")
	}
	r.says("pistons measured", jobsheet.StepDeglaze, jobsheet.StepDeglaze, jobsheet.StepDeglaze)
	r.prove(jobsheet.StepDeglaze)
}

// prove carries on from bores that are done; until step is what the other cylinder still waits for.
func (r *roundOf) prove(until jobsheet.Step) {
	t := r.t
	put(t, r.job, "proof", r.whole["proof"])
	delete(r.job["proof"].(tree), "washed")
	r.take(0, "proof", "crosshatch", "ridge_gone")
	r.says("one proven, not washed", min(until, jobsheet.StepWashAndProve), jobsheet.StepWashAndProve, until)
	put(t, r.job, "proof.washed", true)
	r.says("one proven", until, jobsheet.StepSetRingGaps, until)
	r.take(1, "proof")
	r.says("a crosshatch not looked at", jobsheet.StepWashAndProve, jobsheet.StepSetRingGaps, jobsheet.StepWashAndProve)
	r.take(1, "crosshatch", "ridge_gone")
	r.says("both proven", jobsheet.StepSetRingGaps, jobsheet.StepSetRingGaps, jobsheet.StepSetRingGaps)
	r.take(0, "rings")
	r.says("one with its rings", jobsheet.StepSetRingGaps, jobsheet.StepWaitForOthers, jobsheet.StepSetRingGaps)
	r.take(1, "rings")
	s := r.says("all done", jobsheet.StepReassemble, jobsheet.StepReassemble, jobsheet.StepReassemble)
	for _, row := range s.Ledger {
		if row.State != jobsheet.StateProven && row.State != jobsheet.StateNotAsked {
			t.Errorf("at the end %s: %s", row.Key, row.Stands)
		}
	}
}
