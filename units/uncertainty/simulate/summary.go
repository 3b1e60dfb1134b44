// SPDX-License-Identifier: BSD-3-Clause

package simulate

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// An Interval holds the result with the coverage of its [Result].
type Interval struct {
	Min float64 `json:"min"` // in the model's unit
	Max float64 `json:"max"` // in the model's unit
}

// A Result is what the values of trials come to, numbers of the model's unit.
type Result struct {
	Trials    int      `json:"trials"`    // how many values
	Mean      float64  `json:"mean"`      // of all, in the model's unit
	Std       float64  `json:"std"`       // standard uncertainty: the values' standard deviation, in the same
	Coverage  float64  `json:"coverage"`  // fraction of the values in the intervals
	Symmetric Interval `json:"symmetric"` // as many values below as above (7.7.2)
	Shortest  Interval `json:"shortest"`  // of all that hold as many, the shortest (7.7.4); the same where the distribution is symmetric
}

func (r Result) six() [6]float64 {
	return [6]float64{r.Mean, r.Std, r.Symmetric.Min, r.Symmetric.Max, r.Shortest.Min, r.Shortest.Max}
}

func checkCoverage(p float64) error {
	if !(p > 0 && p < 1) {
		return fmt.Errorf("simulate: coverage %v: %w (between 0 and 1)", p, units.ErrRange)
	}
	return nil
}

// Summarise returns the mean, the standard deviation and the intervals of coverage p of the values of
// trials, such as [Simulation.Chunk] fills in, which it leaves as they are (JCGM 101:2008 7.6, 7.7).
//
// There must be values enough for the intervals to have ends, 2/(1 − p) and at least 100, else it is ErrTrials. A value that is
// not finite, or so large that squares are not, is units.ErrNotFinite; a p not between 0 and 1 is
// units.ErrRange.
func Summarise(values []float64, p float64) (Result, error) {
	if err := checkCoverage(p); err != nil {
		return Result{}, err
	}
	n := len(values)
	q := int(math.Floor(float64(p*float64(n)) + 0.5)) // how many values an interval spans
	tail := n - q
	if n < 100 || tail < 2 || q < 1 {
		return Result{}, fmt.Errorf("simulate: %d values for a coverage of %v: %w (2/(1 − p), and 100 at least)", n, p, ErrTrials)
	}
	// Counted from a middle, which is never further from the mean than a standard deviation, sums of
	// squares keep their digits in one pass.
	low, origin, high := cuts(values, tail)
	left, right := make([]float64, 0, tail+tail/2), make([]float64, 0, tail+tail/2)
	var sum, square float64
	for _, v := range values {
		d := v - origin
		sum += d
		square += float64(d * d)
		if v <= low {
			left = append(left, v)
		}
		if v >= high {
			right = append(right, v)
		}
	}
	shift := sum / float64(n)
	square -= float64(sum * shift)
	if square-square != 0 {
		return Result{}, fmt.Errorf("simulate: values about %v: %w", origin, units.ErrNotFinite)
	}
	if len(left) < tail || len(right) < tail { // the sample misled; all are sorted
		left = slices.Clone(values)
		right = left
	}
	scratch := make([]float64, max(len(left), len(right)))
	sortFloats(left, scratch)
	if &left[0] != &right[0] {
		sortFloats(right, scratch)
	}
	right = right[len(right)-tail:]
	// Of the values in order, left[i] and right[i] are q places apart.
	middle := tail / 2
	if tail%2 == 0 {
		middle-- // (n − q)/2 counts from 1
	}
	best := 0
	for i := range tail {
		if right[i]-left[i] < right[best]-left[best] {
			best = i
		}
	}
	return Result{
		Trials: n, Mean: origin + shift, Std: math.Sqrt(max(0, square) / float64(n-1)), Coverage: p,
		Symmetric: Interval{left[middle], right[middle]}, Shortest: Interval{left[best], right[best]},
	}, nil
}

// cuts returns values that will do as ends of the tails, and a middle: of a sample, the ends somewhat further in than
// the tails go, by four standard deviations of where they end.
func cuts(values []float64, tail int) (low, middle, high float64) {
	const most = 4096
	sample := make([]float64, 0, most)
	step := len(values)/most + 1
	for i := 0; i < len(values); i += step {
		sample = append(sample, values[i])
	}
	slices.Sort(sample)
	m := float64(len(sample))
	f := float64(tail) / float64(len(values))
	k := int(float64(m*f) + 4*math.Sqrt(float64(m*f)*(1-f)) + 4)
	middle = sample[len(sample)/2]
	if k >= len(sample) {
		return math.Inf(1), middle, math.Inf(-1)
	}
	return sample[k], middle, sample[len(sample)-1-k]
}

// sortFloats sorts xs, none of which is NaN, by their bits, eleven at a time from the lowest; digits that all have
// in common are passed over. scratch is as long as xs at least.
func sortFloats(xs, scratch []float64) {
	const digit, mask = 11, 1<<11 - 1
	if len(xs) < 1000 {
		slices.Sort(xs)
		return
	}
	key := func(x float64) uint64 { // in the order of x
		b := math.Float64bits(x)
		return b ^ (uint64(int64(b)>>63) | 1<<63)
	}
	var counts [6][mask + 1]int32
	for _, x := range xs {
		k := key(x)
		for d := range counts {
			counts[d][k>>(digit*d)&mask]++
		}
	}
	from, to := xs, scratch[:len(xs)]
	for d := range counts {
		count := &counts[d]
		shift := digit * d
		if int(count[key(xs[0])>>shift&mask]) == len(xs) {
			continue
		}
		at := int32(0)
		for i, n := range count {
			count[i] = at
			at += n
		}
		for _, x := range from {
			k := key(x) >> shift & mask
			to[count[k]] = x
			count[k]++
		}
		from, to = to, from
	}
	if &from[0] != &xs[0] {
		copy(xs, from)
	}
}

// A Validation holds the interval of the law of propagation against a simulated one (JCGM 101:2008
// clause 8).
type Validation struct {
	Tolerance float64  `json:"tolerance"` // half a unit of the last digit of the standard uncertainty, in the model's unit
	First     Interval `json:"first"`     // y ± k·u of the first order
	Low       float64  `json:"low"`       // how far First.Min is from Symmetric.Min, in the model's unit
	High      float64  `json:"high"`      // and First.Max from Symmetric.Max, in the same
	Sound     bool     `json:"sound"`     // both within the tolerance
}

// Validate reports whether the first order does for this measurement: whether the ends of its interval, of
// the result's coverage with Student's t for its degrees of freedom, are those of the symmetric interval to so
// many digits, 1 or 2, of its standard uncertainty. The simulation should be good to about a fifth of
// the tolerance for that (8.2): [Simulation.Adapt] with one more digit.
//
// It speaks for these inputs alone: other best estimates may end otherwise. Errors are ErrTrials for other
// digits, [units.ErrRange] for ends that are no numbers, and those of [uncertainty.Budget.Combined] and
// [uncertainty.Coverage].
func (r Result) Validate(p uncertainty.Propagation, digits int) (Validation, error) {
	if digits < 1 || digits > 2 {
		return Validation{}, fmt.Errorf("simulate: validation to %d digits: %w (1 or 2)", digits, ErrTrials)
	}
	u, dof, err := p.Budget.Combined()
	if err != nil {
		return Validation{}, fmt.Errorf("simulate: validation: %w", err)
	}
	k, err := uncertainty.Coverage(r.Coverage, dof)
	if err != nil {
		return Validation{}, fmt.Errorf("simulate: validation: %w", err)
	}
	v := Validation{Tolerance: tolerance(u, digits), First: Interval{p.Value - float64(k*u), p.Value + float64(k*u)}}
	v.Low, v.High = math.Abs(v.First.Min-r.Symmetric.Min), math.Abs(v.First.Max-r.Symmetric.Max)
	for _, x := range []float64{v.Tolerance, v.First.Min, v.First.Max, v.Low, v.High} {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			return Validation{}, fmt.Errorf("simulate: validation of %v against %v: %w", r.Symmetric, v.First, units.ErrRange)
		}
	}
	v.Sound = v.Low <= v.Tolerance && v.High <= v.Tolerance
	return v, nil
}
