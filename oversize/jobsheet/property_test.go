// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// decided is what a sheet decides: its steps, its sizes and where each row stands.
func decided(s jobsheet.Sheet) string {
	// An inch job's sizes are whole millionths of an inch.
	lines := []string{fmt.Sprint(s.Next, s.Choice.Route, s.Choice.Over.Round(units.Micrometre))}
	for i, c := range s.Choice.Cylinders {
		lines = append(lines, fmt.Sprint(c.Name, s.Cylinders[i].Next, c.Route, c.Work, c.Over.Round(units.Micrometre)))
	}
	for _, r := range s.Ledger {
		lines = append(lines, fmt.Sprint(r.Key, r.State, r.Reason, r.Step))
	}
	slices.Sort(lines) // facts about rings stand in the order in which they were written
	return strings.Join(lines, "\n")
}

// firstDifference returns the first line in which two texts differ.
func firstDifference(a, b string) string {
	as, bs := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(as), len(bs)) {
		if as[i] != bs[i] {
			return as[i] + " | " + bs[i]
		}
	}
	return fmt.Sprintf("%d lines | %d lines", len(as), len(bs))
}

// seeded returns an honest job drawn again with the same chances.
func seeded(h honest) honest {
	h.r = rand.New(rand.NewPCG(uint64(h.bore), 9))
	return h
}

// TestOrderDecidesNothing: places may be read, and rings and pits be written, in any order.
func TestOrderDecidesNothing(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for _, h := range honestJobs(8, 3) {
		want := decided(mustPlan(t, seeded(h).tree(true)))
		j := seeded(h).tree(true)
		for _, c := range j["cylinders"].([]any) {
			for _, field := range []string{"readings", "proof", "rings"} {
				list := c.(tree)[field].([]any)
				r.Shuffle(len(list), func(a, b int) { list[a], list[b] = list[b], list[a] })
			}
		}
		if got := decided(mustPlan(t, j)); got != want {
			t.Errorf("%g mm: %s", h.bore, firstDifference(got, want))
		}
	}
}

// TestUnitDecidesNothing: the same engine in inches and in millimetres.
func TestUnitDecidesNothing(t *testing.T) {
	for _, h := range honestJobs(8, 3) {
		for _, finished := range []bool{false, true} {
			h.inches = false
			want := decided(mustPlan(t, seeded(h).tree(finished)))
			h.inches = true
			got := decided(mustPlan(t, seeded(h).tree(finished)))
			if got != want {
				t.Errorf("%g mm, finished %v: %s", h.bore, finished, firstDifference(got, want))
			}
		}
	}
}

// TestWiderLimitsNeverHurt: a maker who allows a little more of wear and form leaves no row worse.
func TestWiderLimitsNeverHurt(t *testing.T) {
	for _, h := range honestJobs(8, 3) {
		h.inches = false
		before := mustPlan(t, seeded(h).tree(true))
		for _, limit := range []string{"service", "ovality", "taper", "greatest_less_least", "worn_clearance", "finish_ovality", "finish_taper"} {
			j := seeded(h).tree(true)
			limits := j["engine"].(tree)["limits"].(tree)
			mm := numberOf(t, limits[limit])
			limits[limit] = h.mm(mm + 0.001)
			after := mustPlan(t, j)
			for _, r := range before.Ledger {
				if now := rowOf(t, after, r.Key); settled(r.State) && !settled(now.State) {
					t.Errorf("%g mm, %s by 1 µm more: %s is %v: %s", h.bore, limit, r.Key, now.State, now.Stands)
				}
			}
		}
	}
}

// TestCoatedWallsAreNeverCut: whatever is worn, a plated or bare aluminium-silicon wall is the maker's.
func TestCoatedWallsAreNeverCut(t *testing.T) {
	for _, h := range honestJobs(8, 3) {
		for _, wall := range []string{"plated", "bare Al-Si"} {
			j := seeded(h).tree(false)
			put(t, j, "engine.wall", wall)
			put(t, j, "engine.material", nil)
			put(t, j, "cuts", nil)
			s := mustPlan(t, j)
			for i, c := range s.Choice.Cylinders {
				if c.Route != oversize.MakersProcess && c.Route != oversize.Undecided || s.Cylinders[i].Next == jobsheet.StepBore {
					t.Errorf("%g mm, %s: %v, %v", h.bore, wall, c.Route, s.Cylinders[i].Next)
				}
			}
		}
	}
}

// TestSheetSurvivesJSON: a sheet that was stored and comes back prints as it did.
func TestSheetSurvivesJSON(t *testing.T) {
	for name, j := range attacked(t) {
		s := mustPlan(t, j)
		data, err := json.Marshal(s)
		if err != nil {
			t.Fatal(err)
		}
		var back jobsheet.Sheet
		if err := json.Unmarshal(data, &back); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		var was, is strings.Builder
		if err := errors.Join(s.WriteText(&was), back.WriteText(&is)); err != nil {
			t.Fatal(err)
		}
		if was.String() != is.String() {
			t.Errorf("%s: %s", name, firstDifference(is.String(), was.String()))
		}
	}
}
