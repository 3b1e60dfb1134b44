// SPDX-License-Identifier: BSD-3-Clause

// Package lobes fits the even harmonics of a bore to diameters read along axes.
package lobes

import "math"

// MaxOrders is how many even orders Solve can separate: 2 and 4.
const MaxOrders = 2

const size = 2*MaxOrders + 1

// A Fit is the least-squares D(θ) = Mean + Σ (Cos[k]·cos 2(k+1)θ + Sin[k]·sin 2(k+1)θ).
type Fit struct {
	Mean     float64
	Cos, Sin [MaxOrders]float64
	// Cov is the covariance of (Mean, Cos[0], Sin[0], Cos[1], Sin[1]) for unit variance of
	// one diameter.
	Cov [size][size]float64
}

// rankFloor is the smallest pivot, relative to the number of axes, that still counts: below it
// the axes lie so close together that the doubt of the fit is above 1000/√n times that of a
// reading.
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
	// The normal matrix holds sums of products of cosines and sines of 2θ and 4θ, which are sums
	// of cosines and sines of 2θ, 4θ, 6θ and 8θ.
	var rhs, c, s [size]float64
	var sines Sines
	for i, t := range theta {
		s1, c1 := sines.Of(2 * t)
		c2, s2 := float64(c1*c1)-float64(s1*s1), float64(2*s1*c1)
		y := d[i] - base
		rhs[0] += y
		rhs[1] += float64(c1 * y)
		rhs[2] += float64(s1 * y)
		rhs[3] += float64(c2 * y)
		rhs[4] += float64(s2 * y)
		c[1], s[1] = c[1]+c1, s[1]+s1
		c[2], s[2] = c[2]+c2, s[2]+s2
		c[3], s[3] = c[3]+(float64(c2*c1)-float64(s2*s1)), s[3]+(float64(s2*c1)+float64(c2*s1))
		c[4], s[4] = c[4]+(float64(c2*c2)-float64(s2*s2)), s[4]+float64(2*s2*c2)
	}
	m := float64(len(theta))
	full := [size][size]float64{ // lower triangle
		{m},
		{c[1], (m + c[2]) / 2},
		{s[1], s[2] / 2, (m - c[2]) / 2},
		{c[2], (c[1] + c[3]) / 2, (s[3] - s[1]) / 2, (m + c[4]) / 2},
		{s[2], (s[3] + s[1]) / 2, (c[1] - c[3]) / 2, s[4] / 2, (m - c[4]) / 2},
	}
	var room [size * size]float64
	a := room[:n*n]
	for r := range n {
		copy(a[r*n:], full[r][:n])
	}
	if !factor(a, n, rankFloor*m) {
		return f, false
	}
	solve(a, rhs[:n])
	f.Mean = base + rhs[0]
	for k := range orders {
		f.Cos[k], f.Sin[k] = rhs[2*k+1], rhs[2*k+2]
	}
	for c := range n {
		var column [size]float64
		column[c] = 1
		solve(a, column[:n])
		for r := range n {
			f.Cov[r][c] = column[r]
		}
	}
	return f, true
}

// Amplitude returns the amplitude A ≥ 0 and phase φ of the k-th even order, A·cos m(θ − φ) with
// m = 2(k+1); φ in radians from 0 up to 2π/m.
func (f *Fit) Amplitude(k int) (amplitude, phase float64) {
	m := float64(2 * (k + 1))
	amplitude = math.Sqrt(float64(f.Cos[k]*f.Cos[k]) + float64(f.Sin[k]*f.Sin[k]))
	phase = math.Atan2(f.Sin[k], f.Cos[k]) / m
	if phase < 0 {
		phase += 2 * math.Pi / m
	}
	return amplitude, phase
}

// Variance returns the variance of the amplitude of the k-th order, for unit variance of one
// diameter, in the direction where it is greatest: the larger eigenvalue of the covariance of
// Cos[k] and Sin[k]. For evenly spaced axes it is 2/n in all directions.
func (f *Fit) Variance(k int) float64 {
	i, j := 2*k+1, 2*k+2
	half, diff, c := (f.Cov[i][i]+f.Cov[j][j])/2, (f.Cov[i][i]-f.Cov[j][j])/2, f.Cov[i][j]
	return half + math.Sqrt(float64(diff*diff)+float64(c*c))
}
