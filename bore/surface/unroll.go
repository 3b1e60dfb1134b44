// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"fmt"
	"math"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// Unroll returns the profile of a trace along the circumference of a bore less the bore's own circle: the
// heights above the circle of that diameter that lies closest by least squares, counted towards its
// centre. Tilt goes with it. Places stay those of the chord, which at the ends of the longest trace
// taken, a quarter of the diameter, are 3 % closer than those of the arc.
//
// A diameter of zero is [units.ErrNotGiven], below that or beyond 10 m [units.ErrRange]; a trace longer than a
// quarter of it, or one that the circle cannot lie along, ErrPoints.
func (p Profile) Unroll(diameter units.Length) (Profile, error) {
	n := len(p.z)
	if err := checkCount(n); err != nil {
		return Profile{}, err
	}
	if diameter <= 0 || diameter > units.MaxLength {
		return Profile{}, fmt.Errorf("surface: circle of %v: want above 0, up to %v: %w", diameter, units.MaxLength, given.Err(diameter))
	}
	r, half := diameter.In(units.Millimetre)/2, p.step*float64(n-1)/2
	if half > r/4 {
		return Profile{}, fmt.Errorf("surface: a trace of %.4g mm on a circle of %v: want a quarter of it at most: %w", 2*half, diameter, ErrPoints)
	}
	// The centre lies at a, b in mm from the middle of the trace and the first height: first where the
	// slope of the trace puts it, then by Gauss and Newton's steps on the distances r − d, which are
	// heights towards the centre.
	const perMillimetre = 1000
	mean, slope := straight(p.z)
	a := -slope / (perMillimetre * p.step) * r
	if math.Abs(a) > r/2 {
		return Profile{}, fmt.Errorf("surface: a trace tilted by %.2g of its length: %w", math.Abs(a)/r, ErrPoints)
	}
	b := mean/perMillimetre + math.Sqrt(float64(r*r)-float64(a*a))
	out := Profile{z: make([]float64, n), step: p.step}
	for range 50 {
		var saa, sab, sbb, sa, sb float64
		for i := range p.z {
			dx, dz := float64(float64(i)*p.step)-half-a, p.z[i]/perMillimetre-b
			d := math.Sqrt(float64(dx*dx) + float64(dz*dz))
			if !(d > 0) {
				return Profile{}, fmt.Errorf("surface: point %d lies at the centre of the circle of %v: %w", i, diameter, ErrPoints)
			}
			out.z[i] = (r - d) * perMillimetre
			// Derivatives of the height by a and by b.
			ga, gb := dx/d, dz/d
			saa, sab, sbb = saa+float64(ga*ga), sab+float64(ga*gb), sbb+float64(gb*gb)
			sa, sb = sa+float64(ga*(r-d)), sb+float64(gb*(r-d))
		}
		det := float64(saa*sbb) - float64(sab*sab)
		da, db := (float64(sab*sb)-float64(sbb*sa))/det, (float64(sab*sa)-float64(saa*sb))/det
		if !(math.Abs(da)+math.Abs(db) <= r) {
			break
		}
		if math.Abs(da)+math.Abs(db) < 1e-13*r {
			return out, nil
		}
		a, b = a+da, b+db
	}
	return Profile{}, fmt.Errorf("surface: a circle of %v: %w", diameter, ErrPoints)
}
