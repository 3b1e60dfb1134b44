// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// ErrNoMatch: the barred pairs leave some bore without a piston.
var ErrNoMatch = errors.New("no piston left for every bore")

// A Matching asks which piston goes into which bore. Sizes are at 20 °C, skirts as
// [Piston.Skirt] gives them.
type Matching struct {
	Bores   []units.Length // up to 128
	Pistons []units.Length // as many as bores, or more, up to 128
	Window  units.Limits   // clearance window
	Barred  []Pair         // pairs that must not be, whatever their sizes
}

// A Pair is a piston in a bore, both by their place in the lists, from 0.
type Pair struct {
	Bore   int `json:"bore"`   // its place in Bores
	Piston int `json:"piston"` // its place in Pistons
}

// A Fitted is a pair with its clearance.
type Fitted struct {
	Pair
	Clearance units.Length `json:"clearance"` // diametral, negative where the piston is the larger
	Inside    bool         `json:"inside"`    // the clearance window
}

// A Matched is the answer to a [Matching]: one pair for each bore, in the order of the bores.
type Matched struct {
	Pairs    []Fitted `json:"pairs"`     // the best
	ByNumber []Fitted `json:"by_number"` // bore 0 with piston 0 and so on, for comparison

	// Root mean square of how far the clearances lie from the middle of the window.
	Off         units.Length `json:"off"`
	OffByNumber units.Length `json:"off_by_number"`
}

// maxMatch bounds the sizes of a matching: more than any engine has, with spare pistons.
const maxMatch = 128

// Match returns the pairs whose clearances lie closest to the middle of the window: their squared
// distances have the least sum. If any matching has every clearance inside the window, so has
// this one.
//
// Where there are as many pistons as bores and none is barred, the smallest piston goes into
// the smallest bore and so on upwards: that is best for every cost that is convex in the clearance, so
// for the squares, for the greatest distance, and for staying inside a window. With barred
// pairs or spare pistons it is not, and the assignment is solved exactly.
//
// No bores, fewer pistons than bores, more than 128 of either, and sizes that are not positive are
// [units.ErrRange]; so is a barred pair that does not exist. A window with an end missing is
// ErrNoWindow. Bars that leave no matching are ErrNoMatch.
func (m Matching) Match() (Matched, error) {
	if err := m.validate(); err != nil {
		return Matched{}, err
	}
	middle, _ := m.Window.Middle()
	var to []int // piston of each bore
	if len(m.Pistons) == len(m.Bores) && len(m.Barred) == 0 {
		to = make([]int, len(m.Bores))
		bores, pistons := order(m.Bores), order(m.Pistons)
		for k, b := range bores {
			to[b] = pistons[k]
		}
	} else {
		barred := make(map[Pair]bool, len(m.Barred))
		for _, p := range m.Barred {
			barred[p] = true
		}
		cost := func(inside bool) func(b, p int) float64 {
			return func(b, p int) float64 {
				c := m.Bores[b] - m.Pistons[p]
				if barred[Pair{b, p}] || inside && !m.Window.Contains(c) {
					return math.Inf(1)
				}
				d := (c - middle).In(units.Nanometre)
				return float64(d * d)
			}
		}
		var ok bool
		if to, ok = assign(len(m.Bores), len(m.Pistons), cost(true)); !ok {
			if to, ok = assign(len(m.Bores), len(m.Pistons), cost(false)); !ok {
				return Matched{}, fmt.Errorf("fit: %d bores, %d pistons, %d pairs barred: %w", len(m.Bores), len(m.Pistons), len(m.Barred), ErrNoMatch)
			}
		}
	}
	var r Matched
	var off, byNumber float64
	for b, p := range to {
		r.Pairs = append(r.Pairs, m.fitted(b, p, middle, &off))
		r.ByNumber = append(r.ByNumber, m.fitted(b, b, middle, &byNumber))
	}
	var err error
	if r.Off, err = m.rms(off); err == nil {
		r.OffByNumber, err = m.rms(byNumber)
	}
	return r, err
}

func (m Matching) validate() error {
	if len(m.Bores) == 0 || len(m.Bores) > maxMatch || len(m.Pistons) < len(m.Bores) || len(m.Pistons) > maxMatch {
		return fmt.Errorf("fit: %d bores and %d pistons: %w (1 to %d bores, as many pistons or more)", len(m.Bores), len(m.Pistons), units.ErrRange, maxMatch)
	}
	for _, sizes := range [][]units.Length{m.Bores, m.Pistons} {
		for i, l := range sizes {
			if l <= 0 || l > units.MaxLength {
				return fmt.Errorf("fit: size %v, number %d of a matching: %w (above 0, up to %v)", l, i, units.ErrRange, units.MaxLength)
			}
		}
	}
	for _, p := range m.Barred {
		if p.Bore < 0 || p.Bore >= len(m.Bores) || p.Piston < 0 || p.Piston >= len(m.Pistons) {
			return fmt.Errorf("fit: barred pair of bore %d and piston %d: %w", p.Bore, p.Piston, units.ErrRange)
		}
	}
	return checkClearance(m.Window)
}

// fitted returns a pair and adds its squared distance from the middle, in nm², to sum.
func (m Matching) fitted(b, p int, middle units.Length, sum *float64) Fitted {
	c := m.Bores[b] - m.Pistons[p]
	d := (c - middle).In(units.Nanometre)
	*sum += float64(d * d)
	return Fitted{Pair: Pair{b, p}, Clearance: c, Inside: m.Window.Contains(c)}
}

func (m Matching) rms(sum float64) (units.Length, error) {
	return units.Of(math.Sqrt(sum/float64(len(m.Bores))), units.Nanometre)
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
