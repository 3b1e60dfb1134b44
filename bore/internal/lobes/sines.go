// SPDX-License-Identifier: BSD-3-Clause

package lobes

import "math"

// Sines gives the sines and cosines of angles one after the other. Those of an angle next to one that it knows it turns
// from there, which for thousands of angles round a bore takes little more than half the time. They are within 4e-16 of the true ones.
type Sines struct {
	known    bool
	at       float64 // an angle,
	sin, cos float64 // of it
}

// nextTo is up to which difference of angles, in radians, the series of Of leave less than 3e-17.
const nextTo = 1. / 32

// Of returns the sine and cosine of an angle in radians.
func (s *Sines) Of(angle float64) (sin, cos float64) {
	d := angle - s.at
	if !(s.known && math.Abs(d) <= nextTo) {
		s.known, s.at = true, angle
		s.sin, s.cos = math.Sincos(angle)
		return s.sin, s.cos
	}
	z := float64(d * d)
	turn := float64(d * (1 - float64(z*(1./6-float64(z*(1./120-float64(z*(1./5040)))))))) // its sine,
	short := float64(z * (1./2 - float64(z*(1./24-float64(z*(1./720))))))                 // and by how much its cosine is below 1
	sin = s.sin + (float64(s.cos*turn) - float64(s.sin*short))
	cos = s.cos - (float64(s.sin*turn) + float64(s.cos*short))
	return sin, cos
}
