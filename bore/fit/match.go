// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// A Pair is a piston in a bore, both by their place in the lists, from 0, with its clearance.
type Pair struct {
	Bore      int          `json:"bore"`      // its place, from 0
	Piston    int          `json:"piston"`    // its place, from 0
	Clearance units.Length `json:"clearance"` // diametral, negative where the piston is the larger
	Inside    bool         `json:"inside"`    // the clearance window
}

// A Matched is which piston goes into which bore: one pair for each bore, in the order of the bores.
type Matched struct {
	Pairs    []Pair `json:"pairs"`     // the best
	ByNumber []Pair `json:"by_number"` // bore 0 with piston 0 and so on, for comparison

	// Root mean square of how far the clearances lie from the middle of the window.
	Off         units.Length `json:"off"`
	OffByNumber units.Length `json:"off_by_number"`
}

// maxMatch bounds the sizes of a matching: more than any engine has, with spare pistons.
const maxMatch = 128

// Match returns the pairs whose clearances lie closest to the middle of the window: their squared
// distances have the least sum. If any matching has every clearance inside the window, so has
// this one. Sizes are at 20 °C, skirts as [Piston.Skirt] gives them; there are as many pistons as bores, or
// more, up to 128.
//
// Where there are as many pistons as bores, the smallest piston goes into
// the smallest bore and so on upwards: that is best for every cost that is convex in the clearance, so
// for the squares, for the greatest distance, and for staying inside a window. With
// spare pistons it is not, and the assignment is solved exactly.
//
// No bores, fewer pistons than bores, more than 128 of either, and sizes below zero are
// [units.ErrRange]. A size of zero and a window with an end missing are [units.ErrNotGiven].
func Match(bores, pistons []units.Length, window units.Limits) (Matched, error) {
	if err := checkMatching(bores, pistons, window); err != nil {
		return Matched{}, err
	}
	middle, _ := window.Middle()
	var to []int // piston of each bore
	if len(pistons) == len(bores) {
		to = make([]int, len(bores))
		byBore, byPiston := order(bores), order(pistons)
		for k, b := range byBore {
			to[b] = byPiston[k]
		}
	} else {
		anywhere := func(b, p int) float64 {
			d := (bores[b] - pistons[p] - middle).In(units.Nanometre)
			return float64(d * d)
		}
		inside := func(b, p int) float64 {
			if !window.Contains(bores[b] - pistons[p]) {
				return math.Inf(1)
			}
			return anywhere(b, p)
		}
		var ok bool
		if to, ok = assign(len(bores), len(pistons), inside); !ok {
			to, _ = assign(len(bores), len(pistons), anywhere)
		}
	}
	var r Matched
	var off, byNumber float64
	pair := func(b, p int, sum *float64) Pair {
		c := bores[b] - pistons[p] // (2)
		d := (c - middle).In(units.Nanometre)
		*sum += float64(d * d)
		return Pair{b, p, c, window.Contains(c)}
	}
	for b, p := range to {
		r.Pairs = append(r.Pairs, pair(b, p, &off))
		r.ByNumber = append(r.ByNumber, pair(b, b, &byNumber))
	}
	n := float64(len(bores))
	var err error
	if r.Off, err = units.Of(math.Sqrt(off/n), units.Nanometre); err == nil {
		r.OffByNumber, err = units.Of(math.Sqrt(byNumber/n), units.Nanometre)
	}
	return r, err
}

func checkMatching(bores, pistons []units.Length, window units.Limits) error {
	if len(bores) == 0 || len(bores) > maxMatch || len(pistons) < len(bores) || len(pistons) > maxMatch {
		return fmt.Errorf("fit: %d bores and %d pistons: %w (1 to %d bores, as many pistons or more)", len(bores), len(pistons), units.ErrRange, maxMatch)
	}
	for _, sizes := range [][]units.Length{bores, pistons} {
		for i, l := range sizes {
			if l <= 0 || l > units.MaxLength {
				return fmt.Errorf("fit: size %v, number %d of a matching: %w (above 0, up to %v)", l, i, given.Err(l), units.MaxLength)
			}
		}
	}
	return checkClearance(window)
}

// order returns the places of the sizes, the smallest first; equal ones as they stand.
func order(sizes []units.Length) []int {
	places := make([]int, len(sizes))
	for i := range places {
		places[i] = i
	}
	slices.SortStableFunc(places, func(a, b int) int { return cmp.Compare(sizes[a], sizes[b]) })
	return places
}

// assign returns the column of each of n rows, all different, with the least sum of costs, and
// whether there is one without an infinite cost. n is at most m.
//
// Rows are added one by one along the shortest augmenting path in reduced costs (Jonker and
// Volgenant 1987; the potentials are those of Kuhn's Hungarian method), n²·m steps at most.
func assign(n, m int, cost func(row, column int) float64) ([]int, bool) {
	rowPot, colPot := make([]float64, n), make([]float64, m)
	rowOf := make([]int, m) // row that holds the column, −1 for none
	for j := range rowOf {
		rowOf[j] = -1
	}
	dist, from, done := make([]float64, m), make([]int, m), make([]bool, m)
	for start := range n {
		for j := range m {
			dist[j], from[j], done[j] = math.Inf(1), -1, false
		}
		row, last, reached := start, -1, 0.0
		for {
			best := -1
			for j := range m {
				if done[j] {
					continue
				}
				if d := reached + (cost(row, j) - rowPot[row] - colPot[j]); d < dist[j] {
					dist[j], from[j] = d, last
				}
				if best < 0 || dist[j] < dist[best] {
					best = j
				}
			}
			if best < 0 || math.IsInf(dist[best], 1) {
				return nil, false
			}
			last, reached = best, dist[best]
			done[last] = true
			if rowOf[last] < 0 {
				break
			}
			row = rowOf[last]
		}
		rowPot[start] += reached
		for j := range m {
			if done[j] && rowOf[j] >= 0 {
				rowPot[rowOf[j]] += reached - dist[j]
			}
			if done[j] {
				colPot[j] -= reached - dist[j]
			}
		}
		for j := last; j >= 0; {
			prev := from[j]
			if prev < 0 {
				rowOf[j] = start
			} else {
				rowOf[j] = rowOf[prev]
			}
			j = prev
		}
	}
	to := make([]int, n)
	for j, i := range rowOf {
		if i >= 0 {
			to[i] = j
		}
	}
	return to, true
}
