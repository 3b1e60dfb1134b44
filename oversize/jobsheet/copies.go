// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/oversize/jobsheet/internal/slips"
	"borewright.example/units"
)

// looks are readings as package slips has them, in the order in which they were written.
func (g Gauge) looks(rs []Reading) []slips.Look {
	ls := make([]slips.Look, len(rs))
	for i, r := range rs {
		ls[i] = slips.Look{Depth: r.depth(), At: float64(r.axis()), Shown: g.shown(r)}
	}
	return ls
}

// looks are the radii of traces, each at its number.
func (j Job) looks(by Gauge, ts []Trace) slips.Looks {
	var ls []slips.Look
	for _, t := range ts {
		for i, r := range t.shown(j.zero(by)) {
			ls = append(ls, slips.Look{Depth: length(t.Depth), At: float64(i), Shown: r})
		}
	}
	return slips.InOrder(ls)
}

// byHand is how far a reading scatters by hand, whatever the scale it is read on (common practice): a step of a coarse one
// would have it that an honest second look hardly ever shows the first again.
const byHand = 2 * units.Micrometre

// scatter is the standard deviation of one reading in steps of the scale: as stated or studied, as repeats that differ show it,
// else the lesser of what is taken and what a hand has.
func (s session) scatter(ls slips.Looks) float64 {
	step := s.by.Resolution
	if s.gauge.Repeatability != 0 {
		return float64(s.gauge.Repeatability) / float64(step)
	}
	if shown, ok := ls.Scatter(step); ok {
		return shown
	}
	return min(repeatSteps, float64(byHand)/float64(step))
}

// second asks, of a list of readings, about what was written down and not read: repeats that show the first reading of their
// place too often, whose doubt would be averaged out; the same everywhere; and readings of a cylinder before, from which a bore
// differs by more than two steps of the scale, unless the gauge is too coarse to tell its own places apart.
func (s *slipper) second(path string, by session, written []slips.Look, read slips.Looks, before []slips.Looks) {
	shown, scatter := read.Shown(), by.scatter(read)
	if same, all, tooMany := slips.Rewritten(written, scatter); tooMany {
		s.ask(path, among(all, "repeats", shown), "%d of them show the first reading of their place to the last digit: was each of them read, or written down again?", same)
	}
	if read.Stuck(scatter) {
		s.ask(path, among(len(read), "readings", shown), "the same everywhere: does the gauge move?")
	}
	if slips.Range(shown) <= 2*by.by.Resolution {
		return
	}
	n := len(s.job.Cylinders)
	for k, of := range before {
		if read.CopyOf(of, scatter, n*(n-1)/2) {
			s.ask(path, among(len(read), "readings", shown), "those of cylinders[%d] once more, or nearly: written down for the wrong cylinder?", k)
		}
	}
}

// again holds what was read of a finished bore against the survey.
func (s *slipper) again(path, what string, worn, finished slips.Looks, scatter float64) {
	by, copied := finished.ShiftOf(worn, scatter)
	if !copied {
		return
	}
	says := "the survey's once more, or nearly: was it read again?"
	if by != 0 {
		says = fmt.Sprintf("the survey's with %v added to each, or nearly: was it read again?", by)
	}
	s.ask(path, among(len(finished), what, finished.Shown()), "%s", says)
}

// among is a list as it is confirmed: how many, and from where to where they go, so that the word lapses with either.
func among(n int, what string, list []units.Length) string {
	return fmt.Sprintf("%d %s, %v to %v", n, what, slices.Min(list), slices.Max(list))
}

// before finds the first of what stands in a list of the cylinders, up to item m of cylinder i, that is the same as that item.
func (s *slipper) before(i, m int, many func(Cylinder) int, same func(k, l int) bool) (k, l int, found bool) {
	for k, c := range s.job.Cylinders[:i+1] {
		n := many(c)
		if k == i {
			n = m
		}
		for l := range n {
			if same(k, l) {
				return k, l, true
			}
		}
	}
	return 0, 0, false
}
