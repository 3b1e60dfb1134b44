// SPDX-License-Identifier: BSD-3-Clause

package show

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// Crosshatch says a crosshatch both ways.
func Crosshatch(c hone.Crosshatch) string {
	return fmt.Sprintf("%s (%.1f° from square)", c.Format(1), c.FromSquare().In(units.Degree))
}

// Turns says a speed of turning.
func Turns(f units.Frequency) string { return perMinute(f) + " rev/min" }

// Cycles says a stroking both ways, since the trade counts either.
func Cycles(k hone.Stroking) string {
	return fmt.Sprintf("%s cycles/min (%s strokes)", perMinute(k.Cycles()), perMinute(k.Strokes()))
}

// perMinute says a rate to a tenth, for to a whole one it would leave another angle than is said.
func perMinute(f units.Frequency) string {
	return strconv.FormatFloat(math.Round(f.In(units.PerMinute)*10)/10, 'f', -1, 64)
}

// whole returns a rate as a machine or a hand can be set: by whole ones a minute, or by tenths where it is slow.
func whole(f units.Frequency, round func(float64) float64) units.Frequency {
	const slow = 20
	n := f.In(units.PerMinute)
	if n < slow {
		return units.Frequency(round(10*n) / 10 * float64(units.PerMinute))
	}
	return units.Frequency(round(n) * float64(units.PerMinute))
}

// Setting says how to set a hone for the crosshatch that can be had: where a range of speeds will do, by whole ones of it.
func Setting(r hone.Found) string {
	if k := hone.Cycles(whole(r.Best.Stroking.Cycles(), math.Round)); r.Met {
		if n, ok := r.SpindlesAt(k); ok {
			least, most := whole(n.Min, math.Ceil), whole(n.Max, math.Floor)
			if best := min(max(whole(r.Best.Spindle, math.Round), least), most); least <= most {
				return fmt.Sprintf("%s (%s to %s will do), %s: about %s", Turns(best), Turns(least), Turns(most), Cycles(k), r.Leaves.Format(0))
			}
		}
	}
	return fmt.Sprintf("%s, %s: %s", Turns(r.Best.Spindle), Cycles(r.Best.Stroking), Crosshatch(r.Leaves))
}

// Grit says what sources name for the last honing before rings of a facing, "" for any, and how many of them name the grit
// on hand, 0 where none is.
func (s In) Grit(facing string, on int) string {
	var names []string
	all, by := 0, 0
	for _, g := range hone.Grits() {
		if g.Stage != "last honing" || g.Facing != "" && facing != "" && g.Facing != facing {
			continue
		}
		all++
		if g.Coarse <= on && on <= g.Fine {
			by++
		}
		name := fmt.Sprint(g.Coarse)
		if g.Fine != g.Coarse {
			name += " to " + fmt.Sprint(g.Fine)
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	of := "any facing of the top ring"
	if facing != "" {
		of = "a top ring of " + facing
	}
	text := "Grit of the last honing: for " + of + " sources name " + strings.Join(names, ", ")
	if on != 0 {
		text += fmt.Sprintf("; yours, %d, is named by %d of %d", on, by, all)
	}
	var rough units.Limits
	for _, f := range hone.Finishes() {
		if f.Measure == "Ra" {
			rough.Min, rough.Max = min(cmp.Or(rough.Min, f.Roughness.Min), f.Roughness.Min), max(rough.Max, f.Roughness.Max)
		}
	}
	return text + ". They disagree, and the supplier of the rings comes before them all. Of bores and liners sources print Ra " + s.rough(rough) + ", and none by facing: a band, and no limit of this engine."
}
