// SPDX-License-Identifier: BSD-3-Clause

// Package slips finds what a pen leaves in lists of lengths, and an instrument hardly.
//
// That is a second look that is the first one written down again, a gauge that sticks, a value that stands out of the rest.
//
// An instrument that scatters by s steps of its scale, one standard deviation (normal), shows on a second look what it
// showed on the first in a share of at most
//
//	p = erf(0.5 / (s √2))² + ½ Σ (erf((k + 0.5) / (s √2)) - erf((k - 0.5) / (s √2)))², k = 1, 2, ...
//
// of the places: the sum over the steps of the square of the share that falls on each, greatest where the true size lies on
// a step. So k of n places, or more, are alike by chance in at most I_p(k, n - k + 1), the regularised incomplete beta
// function; what chance brings more rarely than once in a thousand is asked about. All of it is this library's own.
package slips

import (
	"cmp"
	"math"
	"slices"

	"borewright.example/units"
	"gonum.org/v1/gonum/mathext"
)

// rarely is how rarely chance may bring a likeness before it is asked whether it was chance.
const rarely = 1. / 1000

// A Look is what an instrument showed at one place.
type Look struct {
	Depth units.Length
	At    float64 // which way it looked there, in any unit
	Shown units.Length
}

func (l Look) compare(o Look) int {
	return cmp.Or(cmp.Compare(l.Depth, o.Depth), cmp.Compare(l.At, o.At))
}

// Looks are in the order of their places, and at each of what they show.
type Looks []Look

// InOrder returns looks in their order.
func InOrder(list []Look) Looks {
	ls := slices.Clone(list)
	slices.SortFunc(ls, func(a, b Look) int { return cmp.Or(a.compare(b), cmp.Compare(a.Shown, b.Shown)) })
	return ls
}

// Shown is what looks show, without their places.
func (ls Looks) Shown() []units.Length {
	shown := make([]units.Length, len(ls))
	for i, l := range ls {
		shown[i] = l.Shown
	}
	return shown
}

// Range is how far apart the least and the greatest are; 0 of nothing.
func Range(list []units.Length) units.Length {
	if len(list) == 0 {
		return 0
	}
	return slices.Max(list) - slices.Min(list)
}

// Scatter is the standard deviation of one look in steps of the scale, by the places that were looked at more than once;
// ok is false where none was, or where each showed the same.
func (ls Looks) Scatter(step units.Length) (steps float64, ok bool) {
	squares, freedom := 0.0, 0
	for n := 0; len(ls) > 0; ls = ls[n:] {
		sum, square := 0.0, 0.0
		for n = 0; n < len(ls) && ls[n].compare(ls[0]) == 0; n++ {
			d := float64(ls[n].Shown-ls[0].Shown) / float64(step)
			sum, square = sum+d, square+float64(d*d)
		}
		squares += square - float64(sum*sum)/float64(n)
		freedom += n - 1
	}
	if squares <= 0 {
		return 0, false
	}
	return math.Sqrt(squares / float64(freedom)), true
}

// onOneStep is the chance that two looks at one place show the same.
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

// onMark is the greatest chance that a look shows a mark, whatever it is: that of the mark on which the true size lies.
func onMark(scatter float64) float64 { return math.Erf(0.5 / (scatter * math.Sqrt2)) }

// Stuck reports whether all looks show the same more often than a gauge that moves would on a wall without any form.
func (ls Looks) Stuck(scatter float64) bool {
	return len(ls) > 1 && Range(ls.Shown()) == 0 && math.Pow(onMark(scatter), float64(len(ls)-1)) < rarely
}

// Rewritten counts, of looks as they were written, those at places that were looked at before, and how many of these show
// what the first there did; too many is more than chance brings: each was looked at once and written down again.
func Rewritten(list []Look, scatter float64) (same, all int, tooMany bool) {
	first := map[Look]units.Length{}
	for _, l := range list {
		at := Look{Depth: l.Depth, At: l.At}
		was, again := first[at]
		if !again {
			first[at] = l.Shown
			continue
		}
		if all++; was == l.Shown {
			same++
		}
	}
	return same, all, same > 0 && mathext.RegIncBeta(float64(same), float64(all-same+1), onMark(scatter)) < rarely
}

// CopyOf reports whether looks are others once more, or nearly, each of so many pairs of lists being as likely to be found alike.
func (ls Looks) CopyOf(of Looks, scatter float64, pairs int) bool {
	all, chance := ls.likeness(of, scatter)
	return all || chance*float64(pairs) < rarely
}

// ShiftOf reports whether looks are no second look but the first with the same added to each, and how much that is: what is
// most often between the two. Honest differences scatter over some ten standard deviations, any of which might have been the
// most frequent.
func (ls Looks) ShiftOf(of Looks, scatter float64) (by units.Length, yes bool) {
	often := map[units.Length]int{}
	for i, k := 0, 0; i < len(of) && k < len(ls); {
		switch c := of[i].compare(ls[k]); {
		case c < 0:
			i++
		case c > 0:
			k++
		default:
			d := ls[k].Shown - of[i].Shown
			if often[d]++; often[d] > often[by] {
				by = d
			}
			i, k = i+of[i:].here(of[i]), k+ls[k:].here(ls[k])
		}
	}
	shifted := slices.Clone(of)
	for i := range shifted {
		shifted[i].Shown += by
	}
	all, chance := ls.likeness(shifted, scatter)
	if by == 0 {
		return 0, all || chance < rarely
	}
	return by, chance*(1+math.Ceil(10*scatter)) < rarely
}

// likeness reports whether each look stands among others, and how rarely chance would bring all of them to do so at as many of the
// places that both have.
func (ls Looks) likeness(of Looks, scatter float64) (all bool, chance float64) {
	each := onOneStep(scatter)
	all, same, both, most := true, 0, 0, 0.0
	for len(ls) > 0 {
		for len(of) > 0 && of[0].compare(ls[0]) < 0 {
			of = of[1:]
		}
		n, m := ls.here(ls[0]), of.here(ls[0])
		if ls[:n].among(of[:m]) {
			same++
		} else {
			all = false
		}
		if m > 0 {
			both++
			// So many of the looks here would have to meet one each of so many others.
			here, least := 1., 1.
			for k := range min(n, m) {
				here *= float64(m-k) * each
				least = min(least, here)
			}
			most = max(most, least)
		}
		ls, of = ls[n:], of[m:]
	}
	if same == 0 || most >= 1 {
		return all && same > 0, 1
	}
	return all, mathext.RegIncBeta(float64(same), float64(both-same+1), most)
}

// here is how many looks, from the first on, are of one place.
func (ls Looks) here(at Look) (n int) {
	for n < len(ls) && ls[n].compare(at) == 0 {
		n++
	}
	return n
}

// among reports whether each look is one of others, all being of one place.
func (ls Looks) among(of Looks) bool {
	for _, l := range ls {
		for len(of) > 0 && of[0].Shown < l.Shown {
			of = of[1:]
		}
		if len(of) == 0 || of[0] != l {
			return false
		}
		of = of[1:]
	}
	return true
}
