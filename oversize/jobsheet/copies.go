// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
	"gonum.org/v1/gonum/mathext"
)

// A look is what an instrument showed at one place.
type look struct {
	depth units.Length
	at    float64 // of a reading its axis, of a trace the number of the radius
	shown units.Length
}

func (l look) comparePlace(o look) int {
	return cmp.Or(cmp.Compare(l.depth, o.depth), cmp.Compare(l.at, o.at))
}

func byPlace(a, b look) int { return cmp.Or(a.comparePlace(b), cmp.Compare(a.shown, b.shown)) }

// looks returns readings in the order of their places.
func (g Gauge) looks(rs []Reading) []look {
	ls := make([]look, len(rs))
	for i, r := range rs {
		ls[i] = look{r.depth(), float64(r.axis()), g.shown(r)}
	}
	slices.SortFunc(ls, byPlace)
	return ls
}

// traceLooks returns the radii of traces in the order of their places.
func traceLooks(zero units.Length, ts []Trace) (ls []look) {
	for _, t := range ts {
		for i, r := range t.shown(zero) {
			ls = append(ls, look{length(t.Depth), float64(i), r})
		}
	}
	slices.SortFunc(ls, byPlace)
	return ls
}

// shownBy is what looks show, without their places.
func shownBy(ls []look) []units.Length {
	shown := make([]units.Length, len(ls))
	for i, l := range ls {
		shown[i] = l.shown
	}
	return shown
}

// byHand is how far a reading scatters by hand, whatever the scale it is read on (common practice): a step of a coarse one
// would have it that an honest second look hardly ever shows the first again.
const byHand = 2 * units.Micrometre

// scatter is the standard deviation of one reading in steps of the scale: as stated or studied, as repeats that differ show it,
// else the lesser of what is taken and what a hand has.
func (s session) scatter(ls []look) float64 {
	if s.gauge.Repeatability != 0 {
		return float64(s.gauge.Repeatability) / float64(s.by.Resolution)
	}
	squares, freedom := 0.0, 0
	for n := 0; len(ls) > 0; ls = ls[n:] {
		sum, square := 0.0, 0.0
		for n = 0; n < len(ls) && ls[n].comparePlace(ls[0]) == 0; n++ {
			d := float64(ls[n].shown-ls[0].shown) / float64(s.by.Resolution)
			sum, square = sum+d, square+float64(d*d)
		}
		squares += square - float64(sum*sum)/float64(n)
		freedom += n - 1
	}
	if squares <= 0 {
		return min(repeatSteps, float64(byHand)/float64(s.by.Resolution))
	}
	return math.Sqrt(squares / float64(freedom))
}

// onOneStep is the chance that two readings of one place show the same, one standard deviation being so many steps of the scale:
// the sum over its steps of the square of the share that falls on each, at its greatest where the true size lies on a step.
func onOneStep(scatter float64) float64 {
	scatter = min(scatter, 100) // a finer scale makes it less likely still
	chance := 0.0
	for k, from := 0, 0.0; from < 1; k++ {
		to := math.Erf((float64(k) + 0.5) / (scatter * math.Sqrt2))
		if k == 0 {
			chance += to * to
		} else {
			chance += (to - from) * (to - from) / 2 // half of it on either side
		}
		from = to
	}
	return chance
}

// onMark is the greatest chance that a reading shows a mark, whatever it is: that of the mark on which the true size lies.
func onMark(scatter float64) float64 { return math.Erf(0.5 / (scatter * math.Sqrt2)) }

// repeated counts the readings of places that were read before, and those of them that show what the first one there does.
func repeated(by Gauge, rs []Reading) (same, all int) {
	first := map[place]units.Length{}
	for _, r := range rs {
		at := r.place()
		was, again := first[at]
		if !again {
			first[at] = by.shown(r)
			continue
		}
		if all++; was == by.shown(r) {
			same++
		}
	}
	return same, all
}

// leastChance is how rarely a second look may come to so many of the readings of the first before it is asked whether it was one.
const leastChance = 1. / 1000

// likeness reports whether each look stands among others, and how rarely chance would bring all of them to do so at as many of the
// places that both have.
func likeness(of, again []look, scatter float64) (all bool, rarely float64) {
	each := onOneStep(scatter)
	all, same, both, chance := true, 0, 0, 0.0
	for len(again) > 0 {
		for len(of) > 0 && of[0].comparePlace(again[0]) < 0 {
			of = of[1:]
		}
		n, m := there(again[0], again), there(again[0], of)
		if stand(again[:n], of[:m]) {
			same++
		} else {
			all = false
		}
		if m > 0 {
			both++
			// So many of the readings here would have to meet one each of so many others.
			here, least := 1., 1.
			for k := range min(n, m) {
				here *= float64(m-k) * each
				least = min(least, here)
			}
			chance = max(chance, least)
		}
		again, of = again[n:], of[m:]
	}
	if same == 0 || chance >= 1 {
		return all && same > 0, 1
	}
	return all, mathext.RegIncBeta(float64(same), float64(both-same+1), chance)
}

// areShifted reports whether looks are no second look but the first with the same added to each, and how much that is: what is most
// often between the two. Honest differences scatter over some ten standard deviations, any of which might have been the most frequent.
func areShifted(of, again []look, scatter float64) (by units.Length, yes bool) {
	often := map[units.Length]int{}
	for i, k := 0, 0; i < len(of) && k < len(again); {
		switch c := of[i].comparePlace(again[k]); {
		case c < 0:
			i++
		case c > 0:
			k++
		default:
			d := again[k].shown - of[i].shown
			if often[d]++; often[d] > often[by] {
				by = d
			}
			i, k = i+there(of[i], of[i:]), k+there(again[k], again[k:])
		}
	}
	shifted := slices.Clone(of)
	for i := range shifted {
		shifted[i].shown += by
	}
	all, rarely := likeness(shifted, again, scatter)
	if by == 0 {
		return 0, all || rarely < leastChance
	}
	return by, rarely*(1+math.Ceil(10*scatter)) < leastChance
}

// there is how many looks, from the first on, are of one place.
func there(at look, ls []look) (n int) {
	for n < len(ls) && ls[n].comparePlace(at) == 0 {
		n++
	}
	return n
}

// stand reports whether each look is one of others, all being of one place and in the order of what they show.
func stand(ls, of []look) bool {
	for _, l := range ls {
		for len(of) > 0 && of[0].shown < l.shown {
			of = of[1:]
		}
		if len(of) == 0 || of[0] != l {
			return false
		}
		of = of[1:]
	}
	return true
}

// repeats asks about repeats that show the first reading of their place too often for what they scatter: a reading written down
// again and again has its doubt averaged out, and was looked at once.
func (s *slipper) repeats(path string, by session, rs []Reading, read []look) {
	same, all := repeated(by.by, rs)
	if same == 0 || mathext.RegIncBeta(float64(same), float64(all-same+1), onMark(by.scatter(read))) >= leastChance {
		return
	}
	s.say(path, among(all, "repeats", shownBy(read)), false,
		"%d of them show the first reading of their place to the last digit: was each of them read, or written down again?", same)
}

// stuck asks about a gauge that shows the same everywhere, more often than one that moves would on a wall without any form.
func (s *slipper) stuck(path string, ls []look, scatter float64) {
	if n := len(ls); n > 1 && slices.Min(shownBy(ls)) == slices.Max(shownBy(ls)) && math.Pow(onMark(scatter), float64(n-1)) < leastChance {
		s.say(path, among(n, "readings", shownBy(ls)), false, "the same everywhere: does the gauge move?")
	}
}

// copies holds the readings of a cylinder against those of the ones before. Two bores are not alike to every step of a scale that
// tells their places apart; where all read the same the gauge may be too coarse to.
func (s *slipper) copies(path string, by session, read []look, before [][]look) {
	shown := shownBy(read)
	if len(shown) == 0 || slices.Max(shown)-slices.Min(shown) <= 2*by.by.Resolution {
		return
	}
	scatter, n := by.scatter(read), len(s.job.Cylinders)
	for k, of := range before {
		if all, rarely := likeness(of, read, scatter); all || rarely*float64(n*(n-1)/2) < leastChance {
			s.say(path, among(len(read), "readings", shown), false,
				"those of cylinders[%d] once more, or nearly: written down for the wrong cylinder?", k)
		}
	}
}

// secondLook holds the readings of a finished bore against the survey's.
func (s *slipper) secondLook(path, what string, first, second []look, scatter float64) {
	by, copied := areShifted(first, second, scatter)
	if !copied {
		return
	}
	says := "the survey's once more, or nearly: was it read again?"
	if by != 0 {
		says = fmt.Sprintf("the survey's with %v added to each, or nearly: was it read again?", by)
	}
	s.say(path, among(len(second), what, shownBy(second)), false, "%s", says)
}
