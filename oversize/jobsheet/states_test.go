// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"testing"

	"borewright.example/oversize/jobsheet"
)

const (
	open     = jobsheet.Open
	proven   = jobsheet.Proven
	failed   = jobsheet.Failed
	notAsked = jobsheet.NotAsked
)

// states are those that each demand is to be seen in. Accepted is asked in TestAcceptance; a texture in TestTexture,
// where somebody wants one.
var states = map[jobsheet.Demand][]jobsheet.State{
	jobsheet.DemandTold:              {open, proven},
	jobsheet.DemandCounted:           {open, proven},
	jobsheet.DemandUsual:             {open},
	jobsheet.DemandAgreement:         {open, proven},
	jobsheet.DemandRead:              {open, proven},
	jobsheet.DemandRoute:             {open, proven, failed},
	jobsheet.DemandPistons:           {open, proven},
	jobsheet.DemandWork:              {open, proven, notAsked},
	jobsheet.DemandRecord:            {open, proven, notAsked},
	jobsheet.DemandSleeve:            {open, proven, failed},
	jobsheet.DemandWashed:            {open, proven, notAsked},
	jobsheet.DemandRest:              {open, proven},
	jobsheet.DemandClamping:          {open, proven, notAsked},
	jobsheet.DemandTravel:            {open, proven},
	jobsheet.DemandSize:              {open, proven, failed},
	jobsheet.DemandOvality:           {open, proven, failed},
	jobsheet.DemandTaper:             {open, proven, failed},
	jobsheet.DemandSpread:            {open, proven},
	jobsheet.DemandPits:              {open, proven},
	jobsheet.DemandWall:              {open, proven, notAsked},
	jobsheet.DemandCrosshatch:        {open, proven, failed, notAsked},
	jobsheet.DemandTexture:           {notAsked},
	jobsheet.DemandLeastClearance:    {open, proven, failed},
	jobsheet.DemandGreatestClearance: {open, proven, failed},
	jobsheet.DemandRunningClearance:  {open, proven, failed},
	jobsheet.DemandGap:               {open, proven, failed},
	jobsheet.DemandServiceGap:        {open, proven, failed},
	jobsheet.DemandRunningGap:        {open, proven, failed},
	jobsheet.DemandHotGap:            {open, proven, failed, notAsked},
	jobsheet.DemandEnds:              {open, proven, failed},
	jobsheet.DemandOthers:            {open, proven, notAsked},
}

// TestEveryStateIsReached: over the demo jobs, the honest ones and single changes of them each demand stands in
// the states that are listed for it.
func TestEveryStateIsReached(t *testing.T) {
	seen := map[jobsheet.Demand]map[jobsheet.State]bool{}
	look := func(j tree) {
		s, err := planned(t, j)
		if err != nil {
			return
		}
		for _, r := range s.Ledger {
			if seen[r.Demand] == nil {
				seen[r.Demand] = map[jobsheet.State]bool{}
			}
			seen[r.Demand][r.State] = true
		}
	}
	all := attacked(t)
	all["kept"], all["bored"], all["ported"] = finished(false, false), finished(true, false), finished(true, true)
	for _, j := range all {
		look(j)
		turn := 0
		spots("", j, func(p spot) {
			if turn++; turn%stride != 0 || p.item {
				return
			}
			undo := p.remove()
			look(j)
			undo()
		})
	}
	for _, c := range []struct {
		bored  bool
		change map[string]any
	}{
		{true, map[string]any{"cylinders.0.proof.0.diameter": "80.600 mm", "cylinders.0.proof.0.confirmed": true}},
		{true, map[string]any{"counted.proof": nil}},
		{true, map[string]any{"cylinders.0.honing": tree{"start": tree{"diameter": "80.100 mm", "at": "22 °C"}, "passes": []any{}}}},
		{true, map[string]any{"cylinders.0.crosshatch": "20° included"}},
		{true, map[string]any{"cylinders.0.rings.1.finished": "0.006 ± 0.005 mm"}},
		{true, map[string]any{"cylinders.0.rings.1.finished": "1.4 ± 0.015 mm"}},
		{true, map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "320 °C", "bore": "90 °C"}}},
		{true, map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "150 °C", "bore": "110 °C"}, "engine.rings.0.hot_gap": "0.05 mm"}},
		{true, map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "150 °C", "bore": "110 °C"}, "engine.rings.0.hot_gap": "0.5 mm"}},
		{true, map[string]any{"engine.running": tree{"rings_by_window": true, "piston": "100 °C", "bore": "100 °C"}}},
		{true, map[string]any{"engine.limits.least_wall": "6.3 mm", "engine.oversizes.0.makers_list": nil}},
		{false, map[string]any{"cylinders.0.piston.size": "79.850 ± 0.002 mm"}},
		{false, map[string]any{"cylinders.0.piston.size": "80.020 ± 0.002 mm"}},
		{false, map[string]any{"cylinders.0.pits": []any{tree{"below": "0.04 mm", "depth": "30 mm", "at": "10°"}}, "counted.pits": 1}},
		{false, map[string]any{"engine.wall": "plated", "engine.material": "aluminium block", "cylinders.0.plating": "whole", "cuts": nil}},
	} {
		j := finished(c.bored, false)
		for path, v := range c.change {
			put(t, j, path, v)
		}
		look(j)
	}
	crossing := finished(true, true)
	put(t, crossing, "engine.rings.0.peg", "28°")
	look(crossing)
	for d := jobsheet.DemandTold; d <= jobsheet.DemandOthers; d++ {
		for _, s := range states[d] {
			if !seen[d][s] {
				t.Errorf("%q never stood %v", d, s)
			}
		}
	}
}
