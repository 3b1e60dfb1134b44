// SPDX-License-Identifier: BSD-3-Clause

package surface

import "math"

// The Gaussian filter of ISO 16610-21: the weight of a neighbour u away is
//
//	s(u) = exp(−π·(u/(α·λ))²)/(α·λ),   α = √(ln 2/π)
//
// a normal curve of standard deviation α·λ/√(2π), by which a wave as long as the cut-off λ passes by half.
var alpha = math.Sqrt(math.Ln2 / math.Pi)

// deviation returns the standard deviation of the weights in steps, for a cut-off in steps.
func deviation(cutOff float64) float64 { return alpha * cutOff / math.Sqrt(2*math.Pi) }

// What is left out, each some 1e-8 of the sum of the weights: weights further off than reach standard
// deviations, and what a sum over nodes of that density has beside an integral, 2·exp(−π²·density²).
const (
	reach   = 5.6
	density = 1.4 // nodes to a standard deviation
)

// A gaussian is the filter of one cut-off, for profiles of any length.
//
// A Gaussian is a Gaussian twice, each of half the variance. So heights are first gathered at nodes some
// way h apart, each weighed with the narrower curve, and what the nodes hold is spread by it again:
//
//	exp(−(x−y)²/2σ²) ≈ (h·√(2/π)/σ)·Σ exp(−(x−X)²/σ²)·exp(−(y−X)²/σ²)   over nodes X, h apart
//
// which takes some thirty terms a point, whatever the cut-off.
type gaussian struct {
	far int // steps, as far as weights reach
	// Sums of weights, of their first and of their second moments from the middle to so many steps
	// off, the middle by half: the two sides then add up.
	sums [][3]float64

	h     int       // steps from node to node; 0 where the curve is too narrow for nodes
	span  int       // steps, as far as the narrower curve reaches; the wider where there are no nodes
	curve []float64 // that curve, from one end to the other
	taps  int       // nodes on either side of a place that it reaches
	// For each of the h places between two nodes, the weights of the nodes around it, scaled, and the
	// moments of these weights.
	phases, moments []float64
}

// newGaussian returns the filter of weights with a standard deviation of so many steps.
func newGaussian(sigma float64) *gaussian {
	g := &gaussian{far: int(reach*sigma) + 1}
	g.sums = make([][3]float64, g.far+1)
	g.sums[0][0] = 0.5
	bell := func(x float64) float64 { return math.Exp(-x * x / 2) }
	for u := 1; u <= g.far; u++ {
		w, b := bell(float64(u)/sigma), g.sums[u-1]
		g.sums[u] = [3]float64{b[0] + w, b[1] + float64(w*float64(u)), b[2] + float64(w*float64(u)*float64(u))}
	}
	narrow := sigma / math.Sqrt2
	if g.h = int(narrow / density); g.h < 2 {
		g.h, narrow = 0, sigma
	}
	g.span = int(reach*narrow) + 1
	g.curve = make([]float64, 2*g.span+1)
	for k := range g.span + 1 {
		g.curve[g.span-k] = bell(float64(k) / narrow)
		g.curve[g.span+k] = g.curve[g.span-k]
	}
	if g.h == 0 {
		return g
	}
	g.taps = g.span/g.h + 1
	g.phases, g.moments = make([]float64, g.h*2*g.taps), make([]float64, g.h*2*g.taps)
	scale := float64(g.h) * math.Sqrt(2/math.Pi) / sigma
	for i := range g.phases {
		// A height is as far on, in the mean, as twice the way to the node.
		away := g.node(i%(2*g.taps)) - i/(2*g.taps)
		if k := g.span + away; k >= 0 && k < len(g.curve) {
			g.phases[i] = scale * g.curve[k]
			g.moments[i] = 2 * float64(away) * g.phases[i]
		}
	}
	return g
}

// node returns where the t-th of the nodes around a stretch between two of them stands, in steps from its
// start.
func (g *gaussian) node(t int) int { return (t - g.taps + 1) * g.h }

// meanLine returns the mean line of z.
//
// Near an end, where a part of the weights falls outside, the mean line is the value there of the straight
// line that fits best by the weights that are left. So the line keeps the first two moments, a straight
// profile passes whole up to its ends, and a constant too (end effects: ISO 16610-28, moment criterion).
// In the middle the two are the same.
func (g *gaussian) meanLine(z []float64) []float64 {
	n := len(z)
	// The straight part goes through whole; without it least is lost to the weights left out.
	middle, slope := straight(z)
	part := func(i int) float64 { return middle + float64(slope*(float64(i)-float64(n-1)/2)) }
	level := make([]float64, n)
	for i, v := range z {
		level[i] = v - part(i)
	}
	mean, moment := g.weigh(level)
	all := 1 / (2 * g.sums[g.far][0])
	for i, sum := range mean {
		if i >= g.far && i < n-g.far {
			mean[i] = part(i) + float64(sum*all)
			continue
		}
		left, right := g.sums[min(i, g.far)], g.sums[min(n-1-i, g.far)]
		m0, m1, m2 := left[0]+right[0], right[1]-left[1], left[2]+right[2]
		mean[i] = part(i) + (float64(m2*sum)-float64(m1*moment(i)))/(float64(m0*m2)-float64(m1*m1))
	}
	return mean
}

// weigh returns the sum of w·z about each place, w being exp(−u²/2σ²) and u how many steps further on z is;
// and a function for the sum of w·u·z. It may take z for the sums.
func (g *gaussian) weigh(z []float64) (sums []float64, moment func(i int) float64) {
	if g.h == 0 {
		sums = make([]float64, len(z))
		for i := range sums {
			sums[i] = g.about(z, i)
		}
		return sums, func(i int) float64 {
			s := 0.0
			for j := max(0, i-g.span); j <= min(len(z)-1, i+g.span); j++ {
				s += float64(g.curve[g.span+j-i] * z[j] * float64(j-i))
			}
			return s
		}
	}
	held := make([]float64, (len(z)-1)/g.h+2*g.taps) // by the nodes that reach a height
	for m := range held {
		held[m] = g.about(z, g.node(m))
	}
	sums = z
	around := 2 * g.taps
	for from := 0; from < len(sums); from += g.h {
		nodes := held[from/g.h:][:around]
		for at := range min(g.h, len(sums)-from) {
			sums[from+at] = dot(nodes, g.phases[at*around:])
		}
	}
	return sums, func(i int) float64 { return dot(held[i/g.h:][:around], g.moments[i%g.h*around:]) }
}

// about returns the sum of the curve times z about a place.
func (g *gaussian) about(z []float64, at int) float64 {
	from, to := max(at-g.span, 0), min(at+g.span+1, len(z))
	if from >= to {
		return 0
	}
	return dot(z[from:to], g.curve[g.span+from-at:])
}

// dot returns the sum of the products of a with as many of b, in four sums at once.
func dot(a, b []float64) float64 {
	b = b[:len(a)]
	var s0, s1, s2, s3 float64
	for len(a) >= 4 && len(b) >= 4 {
		s0 += float64(a[0] * b[0])
		s1 += float64(a[1] * b[1])
		s2 += float64(a[2] * b[2])
		s3 += float64(a[3] * b[3])
		a, b = a[4:], b[4:]
	}
	for i, v := range a {
		s0 += float64(v * b[i])
	}
	return (s0 + s1) + (s2 + s3)
}
