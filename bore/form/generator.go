// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Pair is two generators of a wall opposite each other, and their least-squares lines.
type Pair struct {
	At       Line `json:"at"`       // of the one at the angle asked for
	Opposite Line `json:"opposite"` // of that half a turn further
	// Taper is the diameter between the two lines at the least depth less that at the greatest: positive
	// is larger at the deck. It is how far the two are from parallel; the local taper that standards
	// speak of is half of it.
	Taper units.Length `json:"taper"`
}

// Generator returns the line of the wall along an axis at an angle, from section to section:
// deviations from the first, positive towards the axis, as [StraightMinimumZone] takes them. Between
// neighbouring points of a section the radius runs evenly with the angle.
//
// ErrPoints where the wall is not made from sections; ErrAngles for an angle that is not finite, or
// where neighbouring points are more than 90° apart as seen from the axis; units.ErrRange for an axis without
// length along the depth.
func (w Wall) Generator(about Axis, at units.Angle) ([]LinePoint, error) {
	if len(w.sections) == 0 {
		return nil, fmt.Errorf("form: generator of %d points: %w", w.len(), ErrPoints)
	}
	if !(math.Abs(float64(at)) <= 1000*2*math.Pi) {
		return nil, fmt.Errorf("form: generator at %v rad: want a finite angle within a thousand turns: %w", float64(at), ErrAngles)
	}
	line := make([]LinePoint, len(w.sections))
	var first units.Length
	for i, s := range w.sections {
		centre, err := about.At(s.Depth)
		if err != nil {
			return nil, err
		}
		p, err := s.Trace.profile(centre)
		if err != nil {
			return nil, fmt.Errorf("form: generator at a depth of %v: %w", s.Depth, err)
		}
		r, err := units.Of(p.radius(float64(at)), units.Millimetre)
		if err != nil {
			return nil, fmt.Errorf("form: generator at a depth of %v: %w", s.Depth, err)
		}
		if i == 0 {
			first = r
		}
		line[i] = LinePoint{s.Depth, first - r}
	}
	return line, nil
}

// Pair returns the generators at an angle and opposite it, for straightness and parallelism. Errors are
// those of [Wall.Generator].
func (w Wall) Pair(about Axis, at units.Angle) (p Pair, err error) {
	for k, line := range [...]*Line{&p.At, &p.Opposite} {
		points, err := w.Generator(about, at+units.Angle(float64(k)*math.Pi))
		if err != nil {
			return Pair{}, err
		}
		if *line, err = StraightLeastSquares(points); err != nil {
			return Pair{}, err
		}
	}
	// What comes nearer to the axis with the depth makes the diameter less.
	length := (w.sections[len(w.sections)-1].Depth - w.sections[0].Depth).In(units.Millimetre)
	p.Taper, err = units.Of((p.At.Slope+p.Opposite.Slope)*length, units.Millimetre)
	return p, err
}
