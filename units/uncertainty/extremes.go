// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
	"gonum.org/v1/gonum/integrate/quad"
)

// MeanRange returns the mean and the standard deviation of the range, greatest less least, of
// n readings of one thing, in units of the standard deviation of one reading: the constants d₂
// and d₃ of control charts and of gauge studies by average and range, to 1e-9. Six readings of a
// perfectly round bore show a range of 2.53 standard deviations on average.
//
// An n below 2 is ErrNoData, one above a million units.ErrRange.
func MeanRange(n int) (mean, std float64, err error) {
	if err := checkReadings(n); err != nil {
		return 0, 0, err
	}
	mean = quad.Fixed(func(w float64) float64 { return rangeTail(n, w, 0) }, 0, 20, 100, nil, 0)
	square := quad.Fixed(func(w float64) float64 { return float64(2 * w * rangeTail(n, w, 0)) }, 0, 20, 100, nil, 0)
	return mean, math.Sqrt(square - float64(mean*mean)), nil
}

// mostReadings is what the integrals below are good for.
const mostReadings = 1_000_000

func checkReadings(n int) error {
	switch {
	case n < 2:
		return fmt.Errorf("uncertainty: range of %d readings: %w (two at least)", n, ErrNoData)
	case n > mostReadings:
		return fmt.Errorf("uncertainty: range of %d readings: %w (a million at most)", n, units.ErrRange)
	}
	return nil
}

// rangeP returns the greatest probability with which n readings of true values with a range of
// at most limit show a range of at least e.Value, e.Std being the standard uncertainty of the
// difference of two readings. An observed range at or below the limit, of which it is above
// one half, gives 1.
//
// With few degrees of freedom it is averaged over the standard deviations that s may stand
// for, σ = s/w, w² being χ²/ν: for two readings that is Student's t. The average is a sum over
// y = log w, whose density goes as exp(ν(y − e²ʸ/2)).
func rangeP(n int, e Estimate, limit units.Length) float64 {
	if e.Value <= limit {
		return 1
	}
	if e.Std == 0 {
		return 0
	}
	s := e.Std.In(units.Picometre) / math.Sqrt2
	r, l := e.Value.In(units.Picometre)/s, limit.In(units.Picometre)/s
	nu := e.DoF
	if normal(nu) {
		return rangeTail(n, r, l)
	}
	step := min(0.2, 0.7/math.Sqrt(2*nu))
	total, weights := rangeTail(n, r, l), 1.0
	for _, h := range [...]float64{-step, step} {
		tail := 0.0
		for i := 1.0; ; i++ {
			y := float64(i * h)
			weight := math.Exp(nu * (y - math.Expm1(2*y)/2))
			if weight < 1e-12 {
				break
			}
			// Towards smaller multiples of the deviation ever more ranges exceed them, until
			// all do and nothing is left to find out.
			if h > 0 || tail < 1-1e-12 {
				w := math.Exp(y)
				tail = rangeTail(n, float64(r*w), float64(l*w))
			}
			total += float64(weight * tail)
			weights += weight
		}
	}
	return total / weights
}

// rangeTail returns the probability that n normal readings with unit standard deviation, half
// of them of a true value 0 and the rest of l, have a range of at least r.
//
// Given the least reading, at x, the others must lie between x and x + r for the range to stay
// below r; the sum is over x, once for a least reading from either half, by the trapezoidal
// rule, whose error for such bell-shaped integrands is below 1e-11 at these steps.
func rangeTail(n int, r, l float64) float64 {
	step := min(0.25, 0.75/math.Log(float64(n)))
	k := n / 2
	inside := 0.0
	for i := -math.Floor(8.5 / step); i <= 8.5/step; i++ {
		x := float64(step * i)
		phi := math.Exp(-x*x/2) / math.Sqrt(2*math.Pi)
		own := between(x, x+r)
		low := power(own, n-k-1) * power(between(x-l, x-l+r), k)
		high := power(own, k-1) * power(between(x+l, x+l+r), n-k)
		inside += float64(phi * (float64(float64(n-k)*low) + float64(float64(k)*high)))
	}
	return min(1, max(0, 1-float64(step*inside)))
}

// power returns xⁿ, n ≥ 0; math.Pow took most of the time of the sums above.
func power(x float64, n int) float64 {
	y := 1.0
	for ; n > 0; n /= 2 {
		if n%2 == 1 {
			y *= x
		}
		x *= x
	}
	return y
}

// between returns the probability that a standard normal value lies between a and b, a ≤ b.
func between(a, b float64) float64 {
	if a > 0 { // the tails keep their digits on the other side
		a, b = -b, -a
	}
	return 0.5 * (math.Erfc(-b/math.Sqrt2) - math.Erfc(-a/math.Sqrt2))
}
