// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
)

func TestLesson(t *testing.T) {
	spare, none := shipped, shipped
	spare.pistons = append(slices.Clone(shipped.pistons), mm("78.465 mm"), mm("78.4605 mm"))
	none.window = units.Limits{Min: mm("0.055 mm"), Max: mm("0.060 mm")}
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "spare": spare, "none": none},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	size := func(least, spread int64) units.Length { return units.Length(least+r.Int64N(spread)) * units.Micrometre }
	d := data{window: units.Limits{Min: size(20, 30)}}
	d.window.Max = d.window.Min + size(1, 40)
	spread := []int64{2, 20, 300}[r.IntN(3)]
	n := 1 + r.IntN(5)
	for range n {
		d.bores = append(d.bores, size(78500, spread))
		d.pistons = append(d.pistons, size(78455, spread))
	}
	for range r.IntN(2) {
		d.pistons = append(d.pistons, size(78455, spread))
	}
	switch r.IntN(20) {
	case 0:
		d.pistons = d.pistons[:n-1]
	case 1:
		d.window.Min = 0
	case 2:
		d.bores[0] = -d.bores[0]
	case 3:
		slices.Sort(d.bores)
		slices.Sort(d.pistons)
		d.pistons = d.pistons[:n]
	case 4:
		d.pistons = slices.Repeat(d.pistons, 9)
	case 5:
		d.pistons[0] += 300 * units.Nanometre
	}
	return d
}

// claims sorts, and where pistons are to spare leaves each choice out by turns.
func claims(d data) map[string]bool {
	n := len(d.bores)
	if len(d.pistons) < n || n == 0 || d.window.Min == 0 || d.bores[0] < 0 || len(d.pistons) > 8 {
		return map[string]bool{lessontest.Refused: true}
	}
	bores := slices.Sorted(slices.Values(d.bores))
	cost := func(bores, pistons []units.Length) (sum float64, all bool) {
		all = true
		for i, b := range bores {
			c := b - pistons[i]
			off := (2*c - d.window.Min - d.window.Max).In(units.Micrometre) / 2
			sum, all = sum+off*off, all && c >= d.window.Min && c <= d.window.Max
		}
		return sum, all
	}
	best, some := -1.0, false
	var choose func(from int, taken []units.Length)
	pistons := slices.Sorted(slices.Values(d.pistons))
	choose = func(from int, taken []units.Length) {
		if len(taken) == n {
			sum, all := cost(bores, taken)
			if best < 0 || sum < best {
				best = sum
			}
			some = some || all
			return
		}
		for i := from; i < len(pistons); i++ {
			choose(i+1, append(slices.Clone(taken), pistons[i]))
		}
	}
	choose(0, nil)
	number, _ := cost(d.bores, d.pistons)
	return map[string]bool{
		lessontest.Refused:              false,
		"No way of pairing":             !some,
		"they are matched already":      some && number-best < 1e-9,
		"Why sorting wins":              len(d.pistons) == n,
		"With pistons to spare sorting": len(d.pistons) > n,
		"; 0 keep every clearance":      !some,
	}
}
