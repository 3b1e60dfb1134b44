// SPDX-License-Identifier: BSD-3-Clause

package simulate

import (
	"fmt"
	"math"

	"borewright.example/internal/enum"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Shape is the distribution of an input about its Value (JCGM 101:2008 6.4): "normal", "rectangular", "triangular", "arcsine" or "inexact".
type Shape int8

// Shapes. Each has the input's Std as its standard deviation, but for Student's t.
const (
	// Normal is the normal distribution where DoF is 0 (6.4.7). With degrees of freedom it is the scaled
	// t that repeats give, Value + Std·T (6.4.9), whose standard deviation is √(ν/(ν − 2)) times
	// as large; ν must be above 2.
	Normal      Shape = iota
	Rectangular       // anywhere within ±√3·Std alike (6.4.2)
	Triangular        // within ±√6·Std, likelier near the middle (6.4.5)
	Arcsine           // within ±√2·Std, likelier near the ends (6.4.6)
	// Inexact is rectangular within ends that are themselves only known to ±Ends, about a middle that
	// stays: the curvilinear trapezoid (6.4.3). For ends at ±w its Std is √(w²/3 + Ends²/9).
	Inexact
)

var shapeNames = [...]string{"normal", "rectangular", "triangular", "arcsine", "inexact"}

// String returns the name.
func (s Shape) String() string { return enum.Name(s, shapeNames[:]) }

// MarshalText returns the name; a value without one is [units.ErrUnknownName].
func (s Shape) MarshalText() ([]byte, error) { return enum.Marshal(s, shapeNames[:]) }

// UnmarshalText reads a name; any other text is [units.ErrUnknownName] and changes nothing.
func (s *Shape) UnmarshalText(text []byte) error { return enum.Unmarshal(s, text, shapeNames[:]) }

// An Input is an input of a model with the shape of its doubt. The zero Shape takes an
// [uncertainty.Input] for what it says: known, or from repeats.
type Input struct {
	uncertainty.Input
	Shape Shape   `json:"shape,omitzero"` // of the distribution about Value
	Ends  float64 `json:"ends,omitzero"`  // of Inexact: how far each end may be off, in the unit of Value; at most half the width
}

// half returns the half-width of a shape with ends; of Inexact, of its middle ends: Std² = w²/3 + d²/9.
func (in *Input) half() float64 {
	switch in.Shape {
	case Rectangular:
		return math.Sqrt(3) * in.Std
	case Triangular:
		return math.Sqrt(6) * in.Std
	case Arcsine:
		return math.Sqrt2 * in.Std
	case Inexact:
		return math.Sqrt(max(0, float64(3*in.Std*in.Std)-float64(in.Ends*in.Ends)/3))
	}
	return 0
}

func (in *Input) check() error {
	if _, err := in.Shape.MarshalText(); err != nil {
		return fmt.Errorf("simulate: input %q: %w", in.Name, err)
	}
	if math.IsNaN(in.Value) || math.IsInf(in.Value, 0) {
		return fmt.Errorf("simulate: input %q: value %v: %w", in.Name, in.Value, units.ErrNotFinite)
	}
	if !(in.Std >= 0) || math.IsInf(in.Std*in.Std, 0) {
		return fmt.Errorf("simulate: input %q: std %v: %w", in.Name, in.Std, uncertainty.ErrStd)
	}
	if in.Shape == Normal && in.DoF != 0 && !(in.DoF > 2 && in.DoF <= 1e9) {
		return fmt.Errorf("simulate: input %q: %v degrees of freedom: %w (0, or above 2 up to 1e9: with fewer, t has no standard deviation)", in.Name, in.DoF, uncertainty.ErrStd)
	}
	if !(in.Ends >= 0) || in.Shape != Inexact && in.Ends != 0 || in.Ends > in.half()*(1+1e-12) {
		return fmt.Errorf("simulate: input %q: ends of a %v shape known to %v: %w (of an inexact one alone, at most half the width)", in.Name, in.Shape, in.Ends, uncertainty.ErrStd)
	}
	return nil
}

// draw sets each of xs to a value of the input.
func (in *Input) draw(s *stream, xs []float64) {
	value, std, half := in.Value, in.Std, in.half()
	switch {
	case std == 0:
		for i := range xs {
			xs[i] = value
		}
	case in.Shape == Rectangular:
		t := *s // in a register
		for i := range xs {
			xs[i] = value + float64(half*sided(t.next()))
		}
		*s = t
	case in.Shape == Triangular:
		for i := range xs {
			xs[i] = value + float64(half*(sided(s.next())+sided(s.next()))/2)
		}
	case in.Shape == Arcsine:
		for i := range xs {
			xs[i] = value + float64(half*s.arcsine())
		}
	case in.Shape == Inexact:
		for i := range xs {
			h := half + float64(in.Ends*sided(s.next()))
			xs[i] = value + float64(h*sided(s.next()))
		}
	case in.DoF != 0:
		for i := range xs {
			xs[i] = value + float64(std*s.student(in.DoF))
		}
	default:
		s.fill(xs, value, std)
	}
}
