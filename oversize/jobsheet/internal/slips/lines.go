// SPDX-License-Identifier: BSD-3-Clause

package slips

import (
	"math"
	"slices"

	"borewright.example/units"
)

// A Spike is a value that stands out.
type Spike struct {
	At  int          // its place in the list, from 0
	Off units.Length // how far it is from where the others would have it, or all others are apart
}

// Spikes returns what stands out of its neighbours by more than most, in radii once round: a wall runs on from one to the
// next, and a cubic through two on either side finds it; a slip does not, nor a score.
func Spikes(round []units.Length, most units.Length) (list []Spike) {
	n := len(round)
	at := func(k int) units.Length { return round[(k+n)%n] }
	off := func(k int) units.Length {
		return (at(k) - (4*(at(k-1)+at(k+1))-at(k-2)-at(k+2))/6).Abs()
	}
	for k := range round {
		if off(k) > most && off(k) >= max(off(k-1), off(k+1)) { // else it is the neighbour that stands out
			list = append(list, Spike{k, off(k)})
		}
	}
	return list
}

// Lone returns the least and the greatest of two or more values, either where it stands further out than all others are apart.
func Lone(values []units.Length) (list []Spike) {
	up := slices.Sorted(slices.Values(values))
	n := len(up)
	for _, out := range [...]struct{ value, by, apart units.Length }{
		{up[0], up[1] - up[0], up[n-1] - up[1]}, {up[n-1], up[n-1] - up[n-2], up[n-2] - up[0]},
	} {
		if out.by > out.apart {
			list = append(list, Spike{slices.Index(values, out.value), out.apart})
		}
	}
	return list
}

// OneLine reports whether two profiles are of one line, however the instrument was set, levelled or scaled for each: their steps
// from height to height go together, those of two lines on a wall do not.
func OneLine(a, b []units.Length) bool {
	if slices.Equal(a, b) {
		return true
	}
	var aa, bb, ab float64
	for i := 1; i < min(len(a), len(b)); i++ {
		x, y := (a[i] - a[i-1]).In(units.Micrometre), (b[i] - b[i-1]).In(units.Micrometre)
		aa, bb, ab = aa+float64(x*x), bb+float64(y*y), ab+float64(x*y)
	}
	const together = 0.9 // of the correlation
	return ab > together*math.Sqrt(aa)*math.Sqrt(bb)
}
