// SPDX-License-Identifier: BSD-3-Clause

package simulate

import "math"

// A stream is a source of random bits: SplitMix64 (Steele, Lea and Flood, Proceedings of OOPSLA 2014,
// 453), whose draws are a counter stirred by [mix]. Nothing here rounds differently on another
// machine: what is not whole numbers is +, −, ×, ÷ and √, with no product fused into a sum.
type stream uint64

// start returns the stream of a chunk: of the seed, 2⁴⁰ draws from that of the chunk before, which is
// more than a chunk ever takes.
func start(seed uint64, chunk int) stream {
	return stream(mix(seed+gamma) + uint64(chunk)<<40*gamma)
}

// gamma is the step of the counter, 2⁶⁴ over the golden ratio, odd.
const gamma = 0x9e3779b97f4a7c15

func mix(z uint64) uint64 {
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// next returns 64 bits.
func (s *stream) next() uint64 {
	*s += gamma
	return mix(uint64(*s))
}

// sided turns 64 bits into a number from −1 to below 1, each of 2⁵³ steps alike.
func sided(u uint64) float64 { return float64(int64(u)>>11) * (1.0 / (1 << 52)) }

// unit returns a number between 0 and 1, neither of them.
func (s *stream) unit() float64 { return (float64(s.next()>>12) + 0.5) * (1.0 / (1 << 52)) }

// fill sets each of xs to a normal number, mean + std·z, by the ziggurat of Marsaglia and Tsang (Journal
// of Statistical Software 5 (2000) 8) with 256 layers of one area under exp(−z²/2): the low bits of
// a draw pick a layer, the high ones a place in its width. Inside the next layer's width it is under
// the curve; this is so in 98.8 % of draws.
func (s *stream) fill(xs []float64, mean, std float64) {
	t := *s // in a register
	for i := range xs {
		u := t.next()
		layer := u & 0xff
		z := float64(sided(u) * widths[layer])
		if math.Abs(z) >= widths[layer+1] {
			*s = t
			z = s.rest(layer, z)
			t = *s
		}
		xs[i] = mean + float64(std*z)
	}
	*s = t
}

// normal returns a standard normal number.
func (s *stream) normal() float64 {
	var x [1]float64
	s.fill(x[:], 0, 1)
	return x[0]
}

// rest decides about a place outside the next layer's width, and draws again where it is not under the
// curve.
func (s *stream) rest(layer uint64, x float64) float64 {
	for {
		if layer == 0 { // the tail beyond the last layer, after Marsaglia (1964)
			r := widths[1]
			for {
				over := -logarithm(s.unit()) / r
				if -2*logarithm(s.unit()) > float64(over*over) {
					return math.Copysign(r+over, x)
				}
			}
		}
		low, high := heights[layer], heights[layer+1]
		if low+float64(s.unit()*(high-low)) < bell(x) {
			return x
		}
		u := s.next()
		layer = u & 0xff
		if x = float64(sided(u) * widths[layer]); math.Abs(x) < widths[layer+1] {
			return x
		}
	}
}

// student returns Student's t for more than 2 degrees of freedom: a normal number over the root of a
// chi-squared one by its degrees, that by Marsaglia and Tsang (ACM Transactions on Mathematical
// Software 26 (2000) 363).
func (s *stream) student(dof float64) float64 {
	d := dof/2 - 1.0/3
	c := 1 / math.Sqrt(9*d)
	for {
		x := s.normal()
		v := 1 + float64(c*x)
		if v <= 0 {
			continue
		}
		v *= float64(v * v)
		if logarithm(s.unit()) < float64(x*x)/2+d-float64(d*v)+float64(d*logarithm(v)) {
			return s.normal() / math.Sqrt(2*d*v/dof)
		}
	}
}

// arcsine returns the sine of an angle of which all are alike: of twice the angle of a point in a disc.
func (s *stream) arcsine() float64 {
	for {
		x, y := sided(s.next()), sided(s.next())
		if r := float64(x*x) + float64(y*y); r <= 1 && r > 0 {
			return 2 * float64(x*y) / r
		}
	}
}

// bell returns exp(−x²/2) for |x| < 4, to 1e-13: the exponential of a 64th part by its series, squared
// six times. The standard library's differs in the last bits from machine to machine.
func bell(x float64) float64 {
	t := float64(x*x) / -128
	sum := 1.0 / 362880
	for _, c := range [...]float64{1.0 / 40320, 1.0 / 5040, 1.0 / 720, 1.0 / 120, 1.0 / 24, 1.0 / 6, 1.0 / 2, 1, 1} {
		sum = c + float64(t*sum)
	}
	for range 6 {
		sum *= sum
	}
	return sum
}

// logarithm returns log x for x > 0, to 1e-15: of the power of two, and of the rest by the series of
// log((1+s)/(1−s)).
func logarithm(x float64) float64 {
	m, e := math.Frexp(x)
	if m < math.Sqrt2/2 {
		m, e = 2*m, e-1
	}
	s := (m - 1) / (m + 1)
	square := float64(s * s)
	sum := 0.0
	for k := 23.0; k >= 1; k -= 2 {
		sum = 1/k + float64(square*sum)
	}
	return 2*float64(s*sum) + float64(float64(e)*math.Ln2)
}
