// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// A Filter says what of a profile is roughness, and how much of it is evaluated. Usual for honed walls are
// a cut-off of 0.8 mm and 2.5 µm with five sections; for coarser ones 2.5 mm and 8 µm (ISO 21920-3, ISO
// 13565-1; from memory).
type Filter struct {
	// CutOff is λc: waves as long pass by half, longer ones are waviness. Zero stands for a profile that
	// the instrument has filtered: all of it is evaluated, about its mean.
	CutOff units.Length `json:"cut_off,omitzero"`
	// Short is λs, below which waves are noise. Zero: none is taken off.
	Short units.Length `json:"short,omitzero"`
	// Sections is how many sampling lengths, each as long as the cut-off, are evaluated in the middle of
	// the profile: 0 stands for five. What is over at the ends is run-in and run-out.
	Sections int `json:"sections,omitzero"`
}

// What a filter may be, in steps of the profile, so that the points still show the weights.
const (
	leastCutOff  = 10
	leastShort   = 2
	usual        = 5
	mostSections = 1000
)

// A Roughness is a roughness profile: heights from its mean line over the length evaluated.
type Roughness struct {
	z        []float64 // µm
	step     float64   // mm
	start    int       // points of the profile before the first
	sections int
}

// A split is a profile less what is shorter than λs, with the mean line by λc.
type split struct {
	z, mean  []float64
	from, to int // the points evaluated
	sections int
	long     *gaussian // nil where there is no λc
	room     room
}

// split prepares a profile for either way to its roughness.
func (p Profile) split(f Filter) (split, error) {
	s := split{z: p.z, to: len(p.z), sections: f.Sections}
	if err := checkCount(len(p.z)); err != nil {
		return split{}, err
	}
	if s.sections == 0 {
		s.sections = usual
	}
	steps := func(l units.Length) float64 { return l.In(units.Millimetre) / p.step }
	switch {
	case s.sections < 0 || s.sections > mostSections:
		return split{}, fmt.Errorf("surface: %d sections: want 1 to %d, or 0 for %d: %w", f.Sections, mostSections, usual, units.ErrRange)
	case f.Short < 0 || f.Short > 0 && !(steps(f.Short) >= leastShort && steps(f.Short) <= float64(len(p.z))):
		return split{}, fmt.Errorf("surface: λs %v of points %.4g mm apart: want 0, or from %d steps up to the length of the profile: %w", f.Short, p.step, leastShort, units.ErrRange)
	case f.CutOff < 0 || f.CutOff > 0 && steps(f.CutOff) < leastCutOff:
		return split{}, fmt.Errorf("surface: λc %v of points %.4g mm apart: want 0, or %d steps or more: %w", f.CutOff, p.step, leastCutOff, units.ErrRange)
	case f.CutOff > 0 && f.Short >= f.CutOff:
		return split{}, fmt.Errorf("surface: λs %v: want it below λc, %v: %w", f.Short, f.CutOff, units.ErrRange)
	}
	if f.Short > 0 {
		s.z = make([]float64, len(p.z))
		newGaussian(deviation(steps(f.Short))).meanLine(s.z, p.z, &s.room)
	}
	s.mean = make([]float64, len(s.z))
	if f.CutOff == 0 {
		mean := 0.0
		for _, v := range s.z {
			mean += v / float64(len(s.z))
		}
		for i := range s.mean {
			s.mean[i] = mean
		}
	} else {
		length := math.Round(float64(s.sections) * steps(f.CutOff))
		if length > float64(len(p.z)) {
			return split{}, fmt.Errorf("surface: a profile of %.4g mm: want %d sections of %v: %w", p.step*float64(len(p.z)), s.sections, f.CutOff, ErrPoints)
		}
		s.from = (len(p.z) - int(length)) / 2
		s.to = s.from + int(length)
		s.long = newGaussian(deviation(steps(f.CutOff)))
		s.long.meanLine(s.mean, s.z, &s.room)
	}
	if s.to-s.from < s.sections*2 {
		return split{}, fmt.Errorf("surface: %d points for %d sections: %w", s.to-s.from, s.sections, ErrPoints)
	}
	return s, nil
}

// less returns the heights evaluated above a mean line, in the place of it.
func (s split) less(p Profile, mean []float64) Roughness {
	r := Roughness{z: mean[s.from:s.to:s.to], step: p.step, start: s.from, sections: s.sections}
	for i, m := range r.z {
		r.z[i] = s.z[s.from+i] - m
	}
	return r
}

// twoStep returns the mean line that deep valleys do not drag down: that of the profile with all below
// its first mean line filled up to it.
func (s split) twoStep() []float64 {
	if s.long == nil {
		return slices.Clone(s.mean)
	}
	filled := make([]float64, len(s.z))
	for i := range filled {
		filled[i] = max(s.z[i], s.mean[i])
	}
	s.long.meanLine(filled, filled, &s.room)
	return filled
}

// Gaussian returns the roughness profile about the mean line of ISO 16610-21, from which Ra and its kin are
// defined. Beside a deep groove that line dips, and the plateau there looks like a shoulder that is
// not there: see [Profile.TwoStep].
//
// Cut-offs that cannot be, or that the points are too far apart for, and a number of sections beyond 1 to
// 1000 are units.ErrRange; a profile shorter than its sections is ErrPoints; one with fewer than two points to
// a section, and one of no points, ErrPoints.
func (p Profile) Gaussian(f Filter) (Roughness, error) {
	s, err := p.split(f)
	if err != nil {
		return Roughness{}, err
	}
	return s.less(p, s.mean), nil
}

// TwoStep returns the roughness profile by the two steps of ISO 13565-1, for walls of plateaus and deep
// valleys: a Gaussian mean line; the profile with all below it filled up to it; the Gaussian mean line of
// that. The profile itself, its valleys whole, is counted from the second line. It is the profile for
// [Roughness.Curve]. Errors are those of [Profile.Gaussian].
//
// The second line stands above the mean of the heights, so that the mean of this roughness is below 0.
func (p Profile) TwoStep(f Filter) (Roughness, error) {
	s, err := p.split(f)
	if err != nil {
		return Roughness{}, err
	}
	return s.less(p, s.twoStep()), nil
}

// Points returns the roughness profile as points to draw, X from the start of the profile it is of.
func (r Roughness) Points() []Point {
	points := make([]Point, len(r.z))
	for i, z := range r.z {
		points[i] = Point{rounded(float64(r.start+i)*r.step, units.Millimetre), rounded(z, units.Micrometre)}
	}
	return points
}

// rounded returns a number that the checks of a profile keep within what a length can be.
func rounded(x float64, unit units.Length) units.Length {
	return units.Length(math.Round(x * float64(unit)))
}
