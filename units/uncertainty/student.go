// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
	"gonum.org/v1/gonum/mathext"
)

// Coverage returns the coverage factor k for which ±k standard uncertainties hold the value
// with probability p: the two-sided quantile of Student's t for the degrees of freedom, of the
// normal distribution for 0 degrees (JCGM 100:2008 G.3, Table G.2). Degrees of freedom need
// not be whole; JCGM 100 G.4.1 lets a table's user cut them to a whole number.
//
// A p that is not above 0 and below 1 is units.ErrRange, degrees of freedom other than 0 or at
// least 1 are ErrStd.
//
// Student's t is summed here rather than taken from a general incomplete beta function, which
// loses digits as the degrees of freedom grow (of [mathext.RegIncBeta] nine remain at 10⁵ and
// three at 10¹²). Tail probabilities and factors are good to 1e-13 of themselves.
func Coverage(p, dof float64) (float64, error) {
	if !(p > 0 && p < 1) {
		return 0, fmt.Errorf("uncertainty: coverage probability %v: %w (between 0 and 1)", p, units.ErrRange)
	}
	if err := checkDoF(dof); err != nil {
		return 0, err
	}
	return tUpper((1-p)/2, dof), nil
}

// tTail returns the probability that Student's t exceeds x; dof 0 is the normal distribution.
func tTail(x, dof float64) float64 {
	switch {
	case normal(dof):
		return 0.5 * math.Erfc(x/math.Sqrt2)
	case x < 0:
		return 1 - tTail(-x, dof)
	case x*x < min(4, dof):
		return 0.5 - float64(x*tDensity(x, dof)*tSeries(x, dof))
	case x > 1e150: // x² would overflow; what is left is below 1e-150
		return 0
	default:
		return tDensity(x, dof) * float64(1/x+x/dof) * tFraction(x, dof)
	}
}

// normal reports whether Student's t for the degrees of freedom is the normal distribution to
// all digits: 0 by convention, and what is beyond 10¹⁶.
func normal(dof float64) bool { return dof == 0 || dof > 1e16 }

// tDensity returns Student's density, of the normal distribution for dof 0, with Γ(a + 1/2)/Γ(a), a = dof/2, from its series in
// (a − 1/4)⁻², once a has been stepped up by Γ(a + 1) = a·Γ(a) to where the next term of the
// series is below 3e-17.
func tDensity(x, dof float64) float64 {
	if normal(dof) {
		return math.Exp(-x*x/2) / math.Sqrt(2*math.Pi)
	}
	a, ratio := dof/2, 1.0
	for ; a < 16; a++ {
		ratio *= a / (a + 0.5)
	}
	n := a - 0.25
	i := 1 / float64(n*n)
	s := float64(i * (20491783.0 / (1 << 33)))
	s = float64(i * (631.0/(1<<19) + float64(i*(-174317.0/(1<<27)+s))))
	s = 1 + float64(i*(1.0/64+float64(i*(-19.0/(1<<13)+s))))
	ratio *= math.Sqrt(n) * s
	return ratio / math.Sqrt(dof*math.Pi) * math.Exp(-(dof+1)/2*math.Log1p(float64(x*x)/dof))
}

// tSeries returns 2F1(1, (ν+1)/2; 3/2; y), y = x²/(ν+x²), all of whose terms are positive;
// x·density·tSeries is the probability between 0 and x. For x² below 4 and ν it ends within 60
// terms.
func tSeries(x, dof float64) float64 {
	y := float64(x*x) / (dof + float64(x*x))
	sum, term := 1.0, 1.0
	for k := 0.0; term > 1e-17*sum; k++ {
		term *= ((dof+1)/2 + k) / (1.5 + k) * y
		sum += term
	}
	return sum
}

// tFraction returns 2F1(1, 1/2; ν/2+1; −ν/x²) by Gauss's continued fraction, all of whose
// coefficients are positive here; density·(1/x + x/ν)·tFraction is the probability beyond x.
// As ν grows it becomes Laplace's fraction for the normal tail. For x² of at least 4 or ν it is
// started where the terms left out are below 1e-16, counted out with many digits: after two
// coefficients for each k.
func tFraction(x, dof float64) float64 {
	c, w := dof/2+1, dof/float64(x*x)
	f := 1.0
	for k := math.Ceil(min(5+6.5*math.Sqrt(dof)/x, 8+175/float64(x*x))); k >= 1; k-- {
		// coefficients 2k+1 and 2k
		f = 1 + float64((k+0.5)*(c+k-1)/((c+2*k-1)*(c+2*k))*w)/f
		f = 1 + float64(k*(c+k-1.5)/((c+2*k-2)*(c+2*k-1))*w)/f
	}
	return 1 / (1 + float64(0.5/c*w)/f)
}

// tUpper returns the x that Student's t exceeds with probability q, 0 < q ≤ 1/2.
//
// Newton's method on log tail against log x, which is concave, so that it cannot miss; the start
// is the first term of the Cornish–Fisher expansion about the normal quantile. A step below 1e-8
// leaves an error of its square.
func tUpper(q, dof float64) float64 {
	x := -mathext.NormalQuantile(q)
	if !(x > 0) {
		return 0
	}
	if !normal(dof) {
		x += float64(x*(x*x+1)) / (4 * dof)
	}
	for range 50 {
		p := tTail(x, dof)
		step := p * math.Log(p/q) / float64(x*tDensity(x, dof))
		x *= math.Exp(step)
		if math.Abs(step) < 1e-8 {
			break
		}
	}
	return x
}
