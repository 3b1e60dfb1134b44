// SPDX-License-Identifier: BSD-3-Clause

package study

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Drift is what the order of readings of one thing shows: a dial that creeps, or a reader who
// follows the last reading. Where the order matters, readings are not independent, and their
// spread says less than it seems.
type Drift struct {
	// Lag1 is the autocorrelation of each reading with the one before, −1 to 1: Σ(xᵢ−x̄)(xᵢ₋₁−x̄)/Σ(xᵢ−x̄)².
	// Readings in no order show about −1/n of n; 0 stands for readings that are all alike.
	Lag1 float64 `json:"lag1"`
	// Runs is how many stretches above or below the median there are, readings on it left out.
	Runs  int                  `json:"runs"`
	RunsP float64              `json:"runs_p"` // probability, to 1e-9, of so few or fewer in random order
	Creep uncertainty.Estimate `json:"creep"`  // from one reading to the next, by a straight line
	// CreepP is the probability, to 1e-9, of so steep a line or a steeper one, up or down, in random order.
	CreepP float64 `json:"creep_p"`
}

// DriftOf looks for drift in three or more readings of one thing, given in the order in which they were
// taken (runs: Wald and Wolfowitz, exact; line: [uncertainty.FitLine]; NIST/SEMATECH e-Handbook
// 1.3.5.12 and 1.3.5.13). Fewer than three or more than 1,000 are ErrTrials, one beyond
// ±units.MaxLength is units.ErrRange.
func DriftOf(readings ...units.Length) (Drift, error) {
	n := len(readings)
	if n < 3 || n > mostTrials {
		return Drift{}, fmt.Errorf("study: drift of %d readings: %w (3 to %d)", n, ErrTrials, mostTrials)
	}
	xs := make([]float64, n)
	points := make([]uncertainty.Observation, n)
	for i, r := range readings {
		if r.Abs() > units.MaxLength {
			return Drift{}, fmt.Errorf("study: drift: reading %v: %w (±%v)", r, units.ErrRange, units.MaxLength)
		}
		xs[i] = (r - readings[0]).In(units.Picometre)
		points[i] = uncertainty.Observation{X: float64(i), Y: xs[i]}
	}
	d := Drift{RunsP: 1, CreepP: 1}
	d.lag(xs)
	d.count(xs)
	line, err := uncertainty.FitLine(points...)
	if err != nil {
		return Drift{}, fmt.Errorf("study: drift: %w", err)
	}
	if d.Creep.Value, err = units.Of(line.Slope, units.Picometre); err != nil {
		return Drift{}, fmt.Errorf("study: drift: %w", err)
	}
	if d.Creep.Std, err = units.Of(line.Tilt.Std, units.Picometre); err != nil {
		return Drift{}, fmt.Errorf("study: drift: %w", err)
	}
	d.Creep.DoF = float64(n - 2)
	switch {
	case line.Tilt.Std > 0:
		d.CreepP = tTails(line.Slope/line.Tilt.Std, d.Creep.DoF)
	case line.Slope != 0:
		d.CreepP = 0 // a straight line without scatter
	}
	return d, nil
}

// Creeps reports whether the order of the readings matters, with a probability of at most risk, 0 to 1, to say so
// of readings in random order: half of it for the line, half for the runs. It does at no risk that is NaN.
func (d Drift) Creeps(risk float64) bool { return min(d.CreepP, d.RunsP) <= risk/2 }

func (d *Drift) lag(xs []float64) {
	mean := 0.0
	for _, x := range xs {
		mean += x / float64(len(xs))
	}
	var both, square float64
	for i, x := range xs {
		square += float64((x - mean) * (x - mean))
		if i > 0 {
			both += float64((x - mean) * (xs[i-1] - mean))
		}
	}
	if square > 0 {
		d.Lag1 = both / square
	}
}

// count counts the runs; of n₁ readings above and n₂ below, in random order, the chance of r runs is
//
//	2·C(n₁−1, k−1)·C(n₂−1, k−1)/C(n₁+n₂, n₁)                               r = 2k
//	(C(n₁−1, k)·C(n₂−1, k−1) + C(n₁−1, k−1)·C(n₂−1, k))/C(n₁+n₂, n₁)       r = 2k + 1
func (d *Drift) count(xs []float64) {
	sorted := slices.Sorted(slices.Values(xs))
	n := len(sorted)
	median := (sorted[(n-1)/2] + sorted[n/2]) / 2
	var of [2]float64 // how many below and above
	last := -1
	for _, x := range xs {
		side := 0
		if x == median {
			continue
		} else if x > median {
			side = 1
		}
		of[side]++
		if side != last {
			d.Runs++
			last = side
		}
	}
	if of[0] == 0 || of[1] == 0 {
		return
	}
	choose := func(n, k float64) float64 {
		if k < 0 || k > n {
			return 0
		}
		a, _ := math.Lgamma(n + 1)
		b, _ := math.Lgamma(k + 1)
		c, _ := math.Lgamma(n - k + 1)
		all, _ := math.Lgamma(of[0] + of[1] + 1)
		x, _ := math.Lgamma(of[0] + 1)
		y, _ := math.Lgamma(of[1] + 1)
		return math.Exp(a - b - c - (all-x-y)/2) // two of them make a share of C(n₁+n₂, n₁)
	}
	p := 0.0
	for r := 2; r <= d.Runs; r++ {
		k := float64(r / 2)
		same := float64(choose(of[0]-1, k-1) * choose(of[1]-1, k-1))
		if r%2 == 0 {
			p += 2 * same
		} else {
			p += float64(choose(of[0]-1, k)*choose(of[1]-1, k-1)) + float64(choose(of[0]-1, k-1)*choose(of[1]-1, k))
		}
	}
	d.RunsP = round(min(1, p))
}
