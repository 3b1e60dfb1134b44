// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore/surface"
	"borewright.example/oversize/jobsheet/internal/slips"
	"borewright.example/oversize/jobsheet/internal/texture"
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
		for i, r := range t.round().Shown(j.zero(by)) {
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

// copied asks about each item of a list of a cylinder that is the same as one before it, of any cylinder.
func copied[T any](s *slipper, cylinder int, field, says string, of func(Cylinder) []T, same func(a, b *T, inOne bool) bool, shown func(*T) any) {
	list := of(s.job.Cylinders[cylinder])
	path := func(k, l int) string { return fmt.Sprintf("cylinders[%d].%s[%d]", k, field, l) }
	first := func(m int) string {
		for k, c := range s.job.Cylinders[:cylinder+1] {
			before := of(c)
			if k == cylinder {
				before = before[:m]
			}
			for l := range before {
				if same(&before[l], &list[m], k == cylinder) {
					return path(k, l)
				}
			}
		}
		return ""
	}
	for m := range list {
		if at := first(m); at != "" {
			s.ask(path(cylinder, m), shown(&list[m]), says, at)
		}
	}
}

// copies asks about traces, textures and profiles of a cylinder that are those of another place too.
func (s *slipper) copies(i int) {
	const those = "they are those of %s too: written down for the wrong place?"
	tells := 2 * s.job.Gauge.Resolution // what tells two places apart
	sameRadii := func(a, b *Trace, _ bool) bool {
		was, _ := a.round().Written()
		is, _ := b.round().Written()
		return slips.Range(is) > tells && slices.Equal(was, is)
	}
	radii := func(t *Trace) any {
		list, _ := t.round().Written()
		return among(len(list), "radii", list)
	}
	copied(s, i, "traces", those, func(c Cylinder) []Trace { return c.Traces }, sameRadii, radii)
	copied(s, i, "proof_traces", those, func(c Cylinder) []Trace { return c.ProofTraces }, sameRadii, radii)
	copied(s, i, "texture", "it is %s too: written down for the wrong place?", func(c Cylinder) []surface.Reading { return c.Texture },
		func(a, b *surface.Reading, inOne bool) bool {
			return texture.Same(&a.Texture, &b.Texture) && !(inOne && plainName(a.Place) == plainName(b.Place))
		}, func(r *surface.Reading) any { return r.Texture })
	copied(s, i, "profiles", "they are those of %s too: copied for the wrong place?", func(c Cylinder) []Profile { return c.Profiles },
		func(a, b *Profile, inOne bool) bool {
			if inOne && plainName(a.Place) == plainName(b.Place) { // where a line may be traced twice, not read alike
				return slices.Equal(a.line().All(), b.line().All())
			}
			return slips.OneLine(a.line().All(), b.line().All())
		}, func(p *Profile) any { zs := p.line().All(); return among(len(zs), "heights", zs) })
}
