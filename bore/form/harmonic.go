// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/bore/internal/lobes"
	"borewright.example/units"
)

// mostOrder is the highest order fitted: the finest that roundness instruments print, 500 UPR.
const mostOrder = 500

// phaseSteps to a degree: phases go through arc tangents, which differ in the last bit from machine
// to machine.
const phaseSteps = 1e6

// Harmonics returns the mean radius of the trace as seen from a centre and its harmonics, one for
// each order from 1 to most, by least squares; the angles need not be equal. Order 1 is how far the
// trace lies off that centre (about the centre of [Trace.LeastSquares] it all but vanishes), 2 is
// ovality, 3 three lobes; the amplitudes are radial, as those of [bore.Harmonic] are, and what
// [borewright.example/rings.Tension.Follow] asks for. Of equal angles, n of them, order n − k is taken for
// order k; of unequal ones all orders above most, if the wall has them, are partly taken for lower
// ones.
//
// units.ErrRange for a most below 1, above 500 or above what the points can tell apart, which takes
// 2·most + 1 directions at least; [units.ErrRange] where a point lies at the centre.
func (t Trace) Harmonics(centre Point, most int) (mean units.Length, hs []bore.Harmonic, err error) {
	if most < 1 || most > mostOrder || 2*most+1 > t.Len() {
		return 0, nil, fmt.Errorf("form: harmonics up to order %d of %d points: want 1 to %d, and 2·order + 1 points: %w", most, t.Len(), mostOrder, units.ErrRange)
	}
	cx, cy := t.from(centre)
	f, ok := lobes.Around(t.x, t.y, cx, cy, most)
	if !ok {
		if _, _, in2, _ := span(t.x, t.y, cx, cy); in2 == 0 {
			return 0, nil, fmt.Errorf("form: harmonics about %v, %v: a point lies there: %w", centre.X, centre.Y, units.ErrRange)
		}
		return 0, nil, fmt.Errorf("form: harmonics up to order %d about %v, %v: the directions cannot tell them apart: %w", most, centre.X, centre.Y, units.ErrRange)
	}
	if mean, err = units.Of(f.Mean, units.Millimetre); err != nil {
		return 0, nil, fmt.Errorf("form: harmonics: %w: %w", err, units.ErrRange)
	}
	hs = make([]bore.Harmonic, most)
	for k := range hs {
		h := bore.Harmonic{Order: k + 1}
		if h.Amplitude, err = units.Of(norm(f.Cos[k], f.Sin[k]), units.Millimetre); err != nil {
			return 0, nil, fmt.Errorf("form: harmonics: %w: %w", err, units.ErrRange)
		}
		if h.Amplitude > 0 {
			h.Phase = phase(math.Atan2(f.Sin[k], f.Cos[k]), k+1)
		}
		hs[k] = h
	}
	return mean, hs, nil
}

// phase returns the angle of the first crest, from 0 up to 360°/order, to a millionth of a degree.
func phase(a float64, order int) units.Angle {
	period := 360 / float64(order)
	deg := a / float64(order) / float64(units.Degree)
	if deg < 0 {
		deg += period
	}
	deg = math.Round(deg*phaseSteps) / phaseSteps
	if deg >= period {
		deg = 0
	}
	return units.Angle(deg * float64(units.Degree))
}
