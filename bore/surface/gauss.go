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

const (
	// reach is how many standard deviations off weights are left out: 2e-8 of their sum.
	reach = 5.6
	// wide is the standard deviation in steps from which on every other point is enough. Of a wave that the
	// half of the points would show as another, and of a longer one that the stand-in for the curve passes
	// otherwise than the curve, it leaves 1e-8.
	wide = 16
	// furthest is how many points a curve reaches at most, the next whole number after reach·wide.
	furthest = 90
	// beside is for how many points beside a profile heights are gathered and sums made: as many as seven weights
	// reach to either side. No height is gathered further off, as (3 + 3)/2 is 3.
	beside = 3
	edge   = furthest + beside // zeros before and behind the points of a profile
)

// A gaussian is the filter of one cut-off, for profiles of any length.
//
// Weights that are many points wide need not be taken point by point. Heights are gathered to every other point
// with the weights 1 6 15 20 15 6 1, of 64, again and again until the rest of the curve is narrow; weighed
// with that; and spread over the points between by the same numbers. These are as good as normal: of a
// variance of 1.5, and a fourth cumulant of −0.75, which the curve in the middle makes good, together with
//
//	σ² = 2·1.5·(1 + 4 + 16 + ...) + 4^L·σ'²    after L times, so  σ'² = (σ² + 1)/4^L − 1
//
// So of weights over some thousand points a point takes twenty terms or so.
type gaussian struct {
	far int // steps, as far as weights reach
	// Sums of weights of 1 in the middle, of their first and of their second moments from there to so many
	// steps off, the middle by half: the two sides then add up.
	sums     [][3]float64
	variance float64   // of the weights, in steps²
	halvings int       // L
	span     int       // points of the halved profile, as far as the curve in the middle reaches
	curve    []float64 // that curve, from one end to the other
}

// newGaussian returns the filter of weights with a standard deviation of so many steps.
func newGaussian(sigma float64) *gaussian {
	g := &gaussian{far: int(reach*sigma) + 1, variance: sigma * sigma}
	g.sums = make([][3]float64, g.far+1)
	g.sums[0][0] = 0.5
	for u := 1; u <= g.far; u++ {
		x, b := float64(u), &g.sums[u-1]
		w := bell(x / sigma)
		wx := float64(w * x)
		g.sums[u] = [3]float64{b[0] + w, b[1] + wx, b[2] + float64(wx*x)}
	}

	rest, share := sigma*sigma, 1.0 // the variance in points of the halved profile, and 4^−L
	for ; rest >= wide*wide; g.halvings++ {
		share /= 4
		rest = (sigma*sigma+1)*share - 1
	}
	narrow := math.Sqrt(rest)
	g.span = int(reach*narrow) + 1
	g.curve = make([]float64, 2*g.span+1)
	cumulant := (1 - share*share) / 10 // 2·0.75·(1 + 16 + ...)/16^L
	sum := 0.0
	for k := range g.span + 1 {
		x := float64(k) / narrow
		hermite := float64(x*x*(x*x-6)) + 3 // of the fourth order
		w := bell(x) * (1 + float64(cumulant/24/(rest*rest)*hermite))
		g.curve[g.span-k], g.curve[g.span+k] = w, w
		sum += w + w
	}
	sum -= g.curve[g.span]
	for k := range g.curve {
		g.curve[k] /= sum
	}
	return g
}

func bell(x float64) float64 { return math.Exp(-x * x / 2) }

// A room is where filters work on profiles of one length: heights of the profile and of each halving, with zeros
// before and behind.
type room [][]float64

// level returns the room for a profile of n points, halved so many times.
func (r *room) level(halvings, n int) []float64 {
	for l := len(*r); l <= halvings; l++ {
		*r = append(*r, make([]float64, (n-1)>>l+1+2*edge))
	}
	return (*r)[halvings]
}

// meanLine puts the mean line of z into mean, which may be z.
//
// Near an end, where a part of the weights falls outside, the mean line is the value there of the straight
// line that fits best by the weights that are left. So the line keeps the first two moments, a straight
// profile passes whole up to its ends, and a constant too (end effects: ISO 16610-28, moment criterion).
// In the middle the two are the same.
func (g *gaussian) meanLine(mean, z []float64, r *room) {
	n := len(z)
	r.level(g.halvings, n)
	held := r.level(0, n)
	// The straight part goes through whole; without it least is lost to the weights left out.
	start, slope := straight(z)
	start -= float64(slope * float64(n-1) / 2)
	at := func(i int) float64 { return start + float64(slope*float64(i)) }
	clear(held[edge-beside : edge])
	clear(held[n+edge : n+edge+beside])
	level := held[edge:][:n]
	for i, v := range z {
		level[i] = v - at(i)
	}
	sums := g.weigh(mean, *r)
	all := 2 * g.sums[g.far][0]
	ends := min(g.far, (n+1)/2)
	for i := range ends {
		j := n - 1 - i // as far from the other end
		left, right := &g.sums[i], &g.sums[min(j, g.far)]
		m0, m1, m2 := left[0]+right[0], right[1]-left[1], left[2]+right[2]
		scale := all / (float64(m0*m2) - float64(m1*m1))
		m1, m2 = float64(m1*scale), float64(m2*scale)
		first, last := sums[i], sums[j]
		mean[i] = at(i) + float64(m2*first) - float64(m1*g.moment(held[i:]))
		mean[j] = at(j) + float64(m2*last) + float64(m1*g.moment(held[j:]))
	}
	for i := ends; i < n-ends; i++ {
		mean[i] = at(i) + sums[i]
	}
}

// weigh returns the sum of w·z about each place of the profile in the room, w being the weight of z. Where there
// are no halvings it puts them into sums, else over the heights.
func (g *gaussian) weigh(sums []float64, r room) []float64 {
	if g.halvings == 0 {
		correlate(sums, r[0][edge-g.span:], g.curve)
		return sums
	}
	all := func(l int) []float64 { return r[l][edge-beside : len(r[l])-edge+beside] }
	for l := range g.halvings {
		gather(all(l+1), r[l][edge-3*beside:])
	}
	from := make([]float64, len(all(g.halvings)))
	correlate(from, r[g.halvings][furthest-g.span:], g.curve)
	for l := g.halvings - 1; l >= 0; l-- {
		spread(all(l), from)
		from = all(l)
	}
	return r[0][edge:]
}

// gather weighs seven points around every other one, the first of them the fourth.
func gather(to, from []float64) {
	z0, z1, z2, z3, z4 := from[0], from[1], from[2], from[3], from[4]
	from = from[5:]
	for i := range to {
		next := from[2*i:][:2]
		z5, z6 := next[0], next[1]
		to[i] = (z0 + z6 + float64(6*(z1+z5)) + float64(15*(z2+z4)) + float64(20*z3)) / 64
		z0, z1, z2, z3, z4 = z2, z3, z4, z5, z6
	}
}

// spread weighs with the same numbers the other way: from points to those that they were gathered from.
func spread(to, from []float64) {
	z0, z1, z2 := from[0], from[1], from[2]
	from = from[3:]
	for i := range len(to) / 2 {
		z3 := from[i]
		pair := to[2*i:][:2]
		pair[0] = (z0 + z3 + float64(15*(z1+z2))) / 32
		pair[1] = (float64(6*(z1+z3)) + float64(20*z2)) / 32
		z0, z1, z2 = z1, z2, z3
	}
	if i := len(to) / 2; len(to)%2 == 1 {
		to[2*i] = (z0 + from[i] + float64(15*(z1+z2))) / 32
	}
}

// correlate weighs points with a curve laid beside each, four at once.
func correlate(to, from, curve []float64) {
	i := 0
	for ; i+4 <= len(to); i += 4 {
		z := from[i:][:len(curve)+3]
		z0, z1, z2 := z[0], z[1], z[2]
		z = z[3:]
		var s0, s1, s2, s3 float64
		for k, w := range curve {
			z3 := z[k]
			s0 += float64(w * z0)
			s1 += float64(w * z1)
			s2 += float64(w * z2)
			s3 += float64(w * z3)
			z0, z1, z2 = z1, z2, z3
		}
		to[i], to[i+1], to[i+2], to[i+3] = s0, s1, s2, s3
	}
	for ; i < len(to); i++ {
		s := 0.0
		for k, w := range curve {
			s += float64(w * from[i+k])
		}
		to[i] = s
	}
}

// moment returns the sum of w·u·z about a place edge points on in what is held, u being how many steps further on z
// is. Of weights of many points it is σ² times the slope of their sums, as the slope of w is −u·w/σ².
func (g *gaussian) moment(held []float64) float64 {
	if g.halvings > 0 {
		return g.variance * slopeAt(held, edge)
	}
	m := 0.0
	for k, w := range g.curve {
		u := k - g.span
		m += float64(w * float64(u) * held[edge+u])
	}
	return m
}
