// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Retrace tells how a tool comes back to its own tracks. The zero Retrace says that nothing can be foretold:
// by hand, or by a tool that is not rigid, speeds wander more than tracks are wide.
type Retrace struct {
	// Meets says that the tool comes back into its own tracks, so that the pattern is coarse and the lines deep.
	Meets bool         `json:"meets,omitzero"`
	After int          `json:"after,omitzero"` // cycles after which a track is met again, or else nearest; 0 where nothing is foretold
	Slip  units.Length `json:"slip,omitzero"`  // by how much it is missed then, along the circumference

	// Avoid is the nearest spindle speed, to 10⁻⁸ of a space in a cycle, that keeps every track
	// clear of the ones within the cycles looked at; zero where none is met, or where no speed does because
	// the tracks are too wide for so many of them.
	Avoid units.Frequency `json:"avoid,omitzero"`
}

const maxLook = 1000

// Retrace returns whether the tool runs again in its own tracks. Only a rigid-stone hone on a
// machine that holds its speeds lays tracks that can be foretold; of every other [Rig] the answer is
// the zero Retrace, and nothing is computed. It looks so many cycles ahead, 1 to 1,000.
//
// In one cycle the tool turns q = lines·spindle/cycles spaces between lines. After k cycles it
// misses its tracks by the distance from k·q to the nearest whole number, times the space. Records
// of nearness fall on the convergents of the continued fraction of q (A. Ya. Khinchin, Continued
// Fractions, theorems 16 and 17), so only those are looked at.
//
// What is missing is [units.ErrNotGiven], what is out of range [units.ErrRange].
func (s Setting) Retrace(r Rig, cycles int) (Retrace, error) {
	if r.Kind != RigidStone || r.Drive != ByMachine {
		return Retrace{}, nil
	}
	err := firstError(checkLength("bore", s.Bore), checkRate("spindle", s.Spindle, "rev/min"), s.Stroking.validate(),
		checkLines(r.Lines), checkLength("track", r.Track))
	switch {
	case err != nil:
		return Retrace{}, err
	case cycles == 0:
		return Retrace{}, fmt.Errorf("hone: cycles to look ahead: %w", units.ErrNotGiven)
	case cycles < 0 || cycles > maxLook:
		return Retrace{}, fmt.Errorf("hone: %d cycles to look ahead: %w: want 1 to %d", cycles, units.ErrRange, maxLook)
	}
	q, err := s.pitches(r.Lines)
	if err != nil {
		return Retrace{}, err
	}
	_, part := math.Modf(q) // whole spaces change nothing
	space := math.Pi * s.Bore.In(units.Metre) / float64(r.Lines)
	width := r.Track.In(units.Metre) / space
	k := nearest(part, cycles, width)
	out := Retrace{After: k}
	miss := missed(part, k)
	if out.Slip, err = units.Of(miss*space, units.Metre); err != nil {
		return Retrace{}, err
	}
	if miss < width {
		out.Meets = true
		if move, ok := avoiding(part, q, cycles, width); ok {
			out.Avoid = units.Frequency((q + move) * float64(s.Stroking.Cycles()) / float64(r.Lines))
		}
	}
	return out, nil
}

// missed is by how much k cycles of q miss the nearest whole number; what is nearer than rounding
// can tell is 0.
func missed(q float64, k int) float64 {
	turned := float64(float64(k) * q)
	m := math.Abs(turned - math.Round(turned))
	if m < sameStart {
		return 0
	}
	return m
}

// nearest returns the first k up to most for which k·q comes within width of a whole number;
// where there is none, the k that comes nearest.
func nearest(q float64, most int, width float64) int {
	// Denominators of the convergents of q, each from the two before it.
	k0, k1 := 0, 1
	for rest := q - math.Floor(q); ; {
		if miss := missed(q, k1); miss < width || miss == 0 {
			return k1
		}
		term := math.Floor(1 / rest)
		if !(term <= float64(most)) || int(term)*k1+k0 > most {
			return k1
		}
		rest = 1/rest - term
		k0, k1 = k1, int(term)*k1+k0
	}
}

// avoiding returns the smallest change, either way, of the spaces turned in a cycle after which
// the first cycles all miss by width or more. What is met depends on their fraction alone, so
// one whole space either way is enough to search.
func avoiding(part, q float64, most int, width float64) (move float64, ok bool) {
	const clearance = 2 * sameStart // past the edge, so that rounding cannot fall back
	escape := func(side float64) (float64, bool) {
		x := part
		for x-part+q > 0 && math.Abs(x-part) <= 1 {
			k := nearest(x, most, width)
			if missed(x, k) >= width {
				return x - part, true
			}
			x = (math.Round(float64(k)*x) + float64(side*(width+clearance))) / float64(k)
		}
		return 0, false
	}
	up, canUp := escape(1)
	down, canDown := escape(-1)
	if canDown && (!canUp || -down < up) {
		return down, true
	}
	return up, canUp
}
