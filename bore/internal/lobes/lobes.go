// SPDX-License-Identifier: BSD-3-Clause

// Package lobes fits the even harmonics of a bore to diameters read along axes.
package lobes

import "math"

// MaxOrders is how many even orders Fit can separate: 2 and 4.
const MaxOrders = 2

// A Fit is the least-squares D(θ) = Mean + Σ (Cos[k]·cos 2(k+1)θ + Sin[k]·sin 2(k+1)θ).
type Fit struct {
	Mean     float64
	Cos, Sin [MaxOrders]float64
	// Cov is the covariance of (Mean, Cos[0], Sin[0], Cos[1], Sin[1]) for unit variance of
	// one diameter.
	Cov [2*MaxOrders + 1][2*MaxOrders + 1]float64
}

// rankFloor is the smallest pivot, relative to the number of axes, that still counts: below it
// the axes lie so close together that the doubt of the fit is above 1000 times that of a reading.
const rankFloor = 1e-6

// Solve fits the first `orders` even orders (0, 1 or 2) to diameters d along axes theta, in
// radians. It reports false where the axes cannot separate them. theta and d have one length.
func Solve(theta, d []float64, orders int) (Fit, bool) {
	var f Fit
	n := 2*orders + 1
	if len(theta) < n || orders > MaxOrders {
		return f, false
	}
	// The mean of d goes in by itself: what is fitted is micrometres, not the bore.
	var base float64
	for _, v := range d {
		base += v
	}
	base /= float64(len(d))
	var a [2*MaxOrders + 1][2*MaxOrders + 2]float64 // normal equations, right side last
	for i, t := range theta {
		row := [2*MaxOrders + 2]float64{0: 1}
		for k := range orders {
			row[2*k+1] = math.Cos(float64(2*(k+1)) * t)
			row[2*k+2] = math.Sin(float64(2*(k+1)) * t)
		}
		row[2*MaxOrders+1] = d[i] - base
		for r := range n {
			for c := r; c < n; c++ {
				a[r][c] += float64(row[r] * row[c])
			}
			a[r][2*MaxOrders+1] += float64(row[r] * row[2*MaxOrders+1])
		}
	}
	// Cholesky, a = L·Lᵀ; L over the lower triangle.
	var l [2*MaxOrders + 1][2*MaxOrders + 1]float64
	for r := range n {
		for c := range r + 1 {
			s := a[c][r]
			for k := range c {
				s -= float64(l[r][k] * l[c][k])
			}
			if r == c {
				if s < rankFloor*float64(len(theta)) {
					return f, false
				}
				l[r][r] = math.Sqrt(s)
			} else {
				l[r][c] = s / l[c][c]
			}
		}
	}
	solve := func(rhs [2*MaxOrders + 1]float64) (x [2*MaxOrders + 1]float64) {
		for r := range n {
			s := rhs[r]
			for k := range r {
				s -= float64(l[r][k] * x[k])
			}
			x[r] = s / l[r][r]
		}
		for r := n - 1; r >= 0; r-- {
			s := x[r]
			for k := r + 1; k < n; k++ {
				s -= float64(l[k][r] * x[k])
			}
			x[r] = s / l[r][r]
		}
		return x
	}
	var rhs [2*MaxOrders + 1]float64
	for r := range n {
		rhs[r] = a[r][2*MaxOrders+1]
	}
	x := solve(rhs)
	f.Mean = base + x[0]
	for k := range orders {
		f.Cos[k], f.Sin[k] = x[2*k+1], x[2*k+2]
	}
	for c := range n {
		var e [2*MaxOrders + 1]float64
		e[c] = 1
		col := solve(e)
		for r := range n {
			f.Cov[r][c] = col[r]
		}
	}
	return f, true
}

// Amplitude returns the amplitude and phase (of θ, in radians, 0 ≤ phase < π/order') of the
// k-th even order: A·cos 2(k+1)(θ − φ).
func (f Fit) Amplitude(k int) (amplitude, phase float64) {
	m := float64(2 * (k + 1))
	amplitude = math.Hypot(f.Cos[k], f.Sin[k])
	phase = math.Atan2(f.Sin[k], f.Cos[k]) / m
	if phase < 0 {
		phase += 2 * math.Pi / m
	}
	return amplitude, phase
}

// Variance returns the variance of the amplitude of the k-th order to first order, for unit
// variance of one diameter. An amplitude of zero has no direction: the larger of the two
// variances then stands.
func (f Fit) Variance(k int) float64 {
	i, j := 2*k+1, 2*k+2
	a := math.Hypot(f.Cos[k], f.Sin[k])
	if a == 0 {
		return math.Max(f.Cov[i][i], f.Cov[j][j])
	}
	c, s := f.Cos[k]/a, f.Sin[k]/a
	return float64(c*c*f.Cov[i][i]) + float64(2*c*s*f.Cov[i][j]) + float64(s*s*f.Cov[j][j])
}
