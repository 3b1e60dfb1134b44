// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"fmt"
	"math"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// A Point is a point of a profile.
type Point struct {
	X units.Length `json:"x"` // along the trace
	Z units.Length `json:"z"` // height, positive out of the material: in a bore, towards its axis
}

// A Profile is a line across the texture of a wall, as heights at equal spacing: what a stylus or an
// optical instrument gives, before any filter or after. It holds its own copy and never changes. The zero
// Profile has no points, and every question about it is refused.
type Profile struct {
	z    []float64 // µm, above the first height given
	step float64   // mm
}

// What a profile may be.
const (
	leastPoints = 10
	mostPoints  = 1_000_000
)

// FromHeights returns the profile of heights at equal spacing, positive out of the material. From ten to a
// million heights (else ErrPoints); the spacing above 0, and no length beyond ±10 m (else
// [units.ErrRange], for no spacing [units.ErrNotGiven]).
func FromHeights(spacing units.Length, heights []units.Length) (Profile, error) {
	n := len(heights)
	if err := checkCount(n); err != nil {
		return Profile{}, err
	}
	if spacing <= 0 || spacing > units.MaxLength/units.Length(n) {
		return Profile{}, fmt.Errorf("surface: spacing %v of %d heights: want above 0, and a profile of up to %v: %w", spacing, n, units.MaxLength, given.Err(spacing))
	}
	p := Profile{z: make([]float64, n), step: spacing.In(units.Millimetre)}
	for i, h := range heights {
		if err := checkPlace("height", i, h); err != nil {
			return Profile{}, err
		}
		p.z[i] = (h - heights[0]).In(units.Micrometre)
	}
	return p, nil
}

// evenly is how far places may be from equal steps, in steps, and still be taken as such: most files round
// them. At the steepest flank of a honing groove, one in one, a hundredth of a step of 0.5 µm is 5 nm.
const evenly = 0.01

// FromPoints returns the profile of points whose places increase. Where they stand at equal steps to a
// hundredth of a step, the heights are taken as they are; else the profile is drawn straight from point to
// point, and read off at as many equal steps, which cuts off peaks and valleys that stood between them.
//
// From ten to a million points, in order of X, at places that differ (else ErrPoints); no length beyond
// ±10 m (else [units.ErrRange]).
func FromPoints(points []Point) (Profile, error) {
	n := len(points)
	if err := checkCount(n); err != nil {
		return Profile{}, err
	}
	x, z := make([]float64, n), make([]float64, n)
	for i, q := range points {
		if err := checkPlace("place", i, q.X); err != nil {
			return Profile{}, err
		}
		if err := checkPlace("height", i, q.Z); err != nil {
			return Profile{}, err
		}
		if i > 0 && q.X <= points[i-1].X {
			return Profile{}, fmt.Errorf("surface: point %d at %v, after %v: want places that increase: %w", i, q.X, points[i-1].X, ErrPoints)
		}
		x[i], z[i] = (q.X - points[0].X).In(units.Millimetre), (q.Z - points[0].Z).In(units.Micrometre)
	}
	p := Profile{z: z, step: x[n-1] / float64(n-1)}
	for i := range x {
		if math.Abs(x[i]-float64(float64(i)*p.step)) > evenly*p.step {
			p.z = resample(x, z, p.step)
			break
		}
	}
	return p, nil
}

// resample reads a line through points off at steps from 0 on, as many as there are points.
func resample(x, z []float64, step float64) []float64 {
	out := make([]float64, len(z))
	j := 1
	for i := range out {
		at := float64(float64(i) * step)
		for j < len(x)-1 && x[j] < at {
			j++
		}
		share := min(max((at-x[j-1])/(x[j]-x[j-1]), 0), 1)
		out[i] = float64((1-share)*z[j-1]) + float64(share*z[j])
	}
	return out
}

func checkCount(n int) error {
	if n < leastPoints || n > mostPoints {
		return fmt.Errorf("surface: %d points: want %d to %d: %w", n, leastPoints, mostPoints, ErrPoints)
	}
	return nil
}

func checkPlace(what string, i int, l units.Length) error {
	if l.Abs() > units.MaxLength || l < -units.MaxLength {
		return fmt.Errorf("surface: %s %d, %v: want within ±%v: %w", what, i, l, units.MaxLength, units.ErrRange)
	}
	return nil
}

// Level returns the profile less its least-squares line: what tilt of the set-up put in. The filters of
// this package let a straight line through whole, so that only a profile that is not to be filtered
// needs it. A profile of no points is ErrPoints.
func (p Profile) Level() (Profile, error) {
	if err := checkCount(len(p.z)); err != nil {
		return Profile{}, err
	}
	mean, slope := straight(p.z)
	middle := float64(len(p.z)-1) / 2
	out := Profile{z: make([]float64, len(p.z)), step: p.step}
	for i, z := range p.z {
		out.z[i] = z - mean - float64(slope*(float64(i)-middle))
	}
	return out, nil
}

// straight returns the least-squares line of heights: its height in the middle and its slope by the step.
func straight(z []float64) (mean, slope float64) {
	n := float64(len(z))
	middle := (n - 1) / 2
	var moment float64
	for i, v := range z {
		mean += v
		moment += float64((float64(i) - middle) * v)
	}
	return mean / n, moment / (n * (n*n - 1) / 12)
}
