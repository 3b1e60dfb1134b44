// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"encoding"
	"testing"

	"borewright.example/oversize/jobsheet"
)

const (
	open     = jobsheet.StateOpen
	proven   = jobsheet.StateProven
	failed   = jobsheet.StateFailed
	notAsked = jobsheet.StateNotAsked
)

// states are those that each demand is to be seen in. Accepted is asked in TestAcceptance; a texture in TestTexture,
// where somebody wants one.
var states = map[string][]jobsheet.State{
	"told":                 {open, proven},
	"counted":              {open, proven},
	"usual":                {open},
	"agreement":            {open, proven},
	"read":                 {open, proven},
	"route":                {open, proven, failed},
	"pistons":              {open, proven},
	"work":                 {open, proven, notAsked},
	"honing record":        {open, proven, notAsked},
	"sleeve":               {open, proven, failed},
	"washed":               {open, proven, notAsked},
	"rest":                 {open, proven},
	"clamping":             {open, proven, notAsked},
	"travel":               {open, proven},
	"size":                 {open, proven, failed},
	"ovality":              {open, proven, failed},
	"taper":                {open, proven, failed},
	"greatest minus least": {open, proven},
	"pits":                 {open, proven},
	"ridge":                {open, proven, failed, notAsked},
	"wall":                 {open, proven, notAsked},
	"crosshatch":           {open, proven, failed, notAsked},
	"texture":              {notAsked},
	"least clearance":      {open, proven, failed},
	"greatest clearance":   {open, proven, failed},
	"running clearance":    {open, proven, failed},
	"gap":                  {open, proven, failed},
	"gap in service":       {open, proven, failed},
	"running gap":          {open, proven, failed},
	"hot gap":              {open, proven, failed, notAsked},
	"side clearance":       {open, proven, failed, notAsked},
	"ring ends":            {open, proven, failed},
	"others":               {open, proven, notAsked},
}

// name is the short name of a demand or a reason, as JSON has it.
func name(v encoding.TextMarshaler) string {
	text, err := v.MarshalText()
	if err != nil {
		return err.Error()
	}
	return string(text)
}

// TestEveryStateIsReached: over the demo jobs, the honest ones and single changes of them each demand stands in
// the states that are listed for it.
func TestEveryStateIsReached(t *testing.T) {
	seen := map[string]map[jobsheet.State]bool{}
	look := func(j tree) {
		s, err := planned(t, j)
		if err != nil {
			return
		}
		for _, r := range s.Ledger {
			if seen[name(r.Demand)] == nil {
				seen[name(r.Demand)] = map[jobsheet.State]bool{}
			}
			seen[name(r.Demand)][r.State] = true
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
		{true, map[string]any{"cylinders.0.honing": []any{tree{"diameter": "80.100 mm", "at": "22 °C"}}}},
		{true, map[string]any{"cylinders.0.crosshatch": "20° included"}},
		{true, map[string]any{"cylinders.0.rings.1.finished": "0.006 ± 0.005 mm"}},
		{true, map[string]any{"cylinders.0.rings.1.finished": "1.4 ± 0.015 mm"}},
		{true, map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "320 °C", "bore": "90 °C"}}},
		{true, map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "150 °C", "bore": "110 °C"}, "engine.rings.0.hot_gap": "0.05 mm"}},
		{true, map[string]any{"engine.running": tree{"piston_by_window": true, "ring": "150 °C", "bore": "110 °C"}, "engine.rings.0.hot_gap": "0.5 mm"}},
		{true, map[string]any{"engine.rings.0.side": "0.02 to 0.10 mm"}},
		{true, map[string]any{"engine.rings.0.side": "0.02 to 0.10 mm", "cylinders.0.rings.0.side": "0.06 ± 0.01 mm"}},
		{true, map[string]any{"engine.rings.0.side": "0.02 to 0.10 mm", "cylinders.0.rings.0.side": "0.14 ± 0.01 mm"}},
		{true, map[string]any{"engine.running": tree{"rings_by_window": true, "piston": "100 °C", "bore": "100 °C"}}},
		{true, map[string]any{"engine.limits.least_wall": "6.3 mm", "engine.oversizes.0.makers_list": nil}},
		{false, map[string]any{"cylinders.0.piston.size": "79.850 ± 0.002 mm"}},
		{false, map[string]any{"cylinders.0.piston.size": "80.020 ± 0.002 mm"}},
		{false, map[string]any{"cylinders.0.pits": []any{tree{"below": "0.04 mm", "depth": "30 mm", "at": "10°"}}, "counted.pits": 1}},
		{false, map[string]any{"cylinders.0.ridge_gone": false}},
		{false, map[string]any{"engine.wall": "plated", "engine.material": "aluminium block", "cylinders.0.plating_whole": true, "cuts": nil}},
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
	for d := range states {
		for _, s := range states[d] {
			if !seen[d][s] {
				t.Errorf("%q never stood %v", d, s)
			}
		}
	}
}
