// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/bore/internal/lobes"
	"borewright.example/units"
)

// A Point is a place in the plane of a trace, square to the axis of the bore.
type Point struct {
	X units.Length `json:"x"` // along the thrust axis, where there is one
	Y units.Length `json:"y"` // a quarter turn further, counted as angles are
}

// A Trace is the wall of a bore in one plane, as points: what a roundness instrument, a rotary
// table or a measuring machine gives. It holds its own copy of them and never changes, so that any
// number of goroutines may ask about one trace. The zero Trace has no points.
type Trace struct {
	x, y   []float64 // mm, from origin
	origin Point
	equal  bool // radii about the origin, at equal angles once round
}

// mostRadius is the largest radius or coordinate taken, half of [units.MaxLength]: the diameter
// then stays within it.
const mostRadius = units.MaxLength / 2

// FromRadii returns the trace of radii at equal angles once round, radius i at i/n of a turn, about
// the axis of the spindle. Three at least (else ErrPoints), each above 0, up to 5 m (else
// [units.ErrRange]). Where the instrument goes round against the angles, the trace is a mirror image, of
// the same roundness: to have it the right way, reverse the radii but for the first.
func FromRadii(radii []units.Length) (Trace, error) {
	n := len(radii)
	if err := enough(n, 3); err != nil {
		return Trace{}, err
	}
	t := newTrace(n)
	t.equal = true
	for i, r := range radii {
		if err := checkRadius(i, r); err != nil {
			return Trace{}, err
		}
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		r := r.In(units.Millimetre)
		t.x[i], t.y[i] = float64(r*c), float64(r*s)
	}
	return t, nil
}

// equalAngle is how far angles may be from even steps and still be taken as such: it displaces a
// point of a bore of 100 mm by half a nanometre.
const equalAngle = 1e-8

// FromPolar returns the trace of radii at given angles, which have to increase and to end within
// one turn of the first, about the axis of the spindle. Three points at least (else ErrPoints),
// radii above 0, up to 5 m (else [units.ErrRange]); angles that do not increase once round, or are not
// finite, are ErrAngles. Where the instrument goes round against the angles they decrease: reverse
// the points. Depths are not looked at.
func FromPolar(points []bore.Point) (Trace, error) {
	n := len(points)
	if err := enough(n, 3); err != nil {
		return Trace{}, err
	}
	t := newTrace(n)
	t.equal = true
	first, last := float64(points[0].Angle), math.Inf(-1)
	var sines lobes.Sines
	for i, p := range points {
		if err := checkRadius(i, p.Radius); err != nil {
			return Trace{}, err
		}
		a := float64(p.Angle)
		if !(math.Abs(a) <= 1000*2*math.Pi) {
			return Trace{}, fmt.Errorf("form: angle %d, %v rad: want a finite one within a thousand turns: %w", i, a, ErrAngles)
		}
		if a <= last || a >= first+2*math.Pi {
			return Trace{}, fmt.Errorf("form: angle %d, %v, after %v: want them to increase, and to end within a turn of the first (reverse points that go the other way round): %w",
				i, p.Angle, points[max(i-1, 0)].Angle, ErrAngles)
		}
		last = a
		t.equal = t.equal && math.Abs(a-first-2*math.Pi*float64(i)/float64(n)) <= equalAngle
		s, c := sines.Of(a)
		r := p.Radius.In(units.Millimetre)
		t.x[i], t.y[i] = float64(r*c), float64(r*s)
	}
	return t, nil
}

// FromPoints returns the trace of points of a plane in any order. Three at least (else ErrPoints),
// each coordinate within ±5 m (else [units.ErrRange]).
func FromPoints(points []Point) (Trace, error) {
	n := len(points)
	if err := enough(n, 3); err != nil {
		return Trace{}, err
	}
	least, most := points[0], points[0]
	for i, p := range points {
		if max(p.X, p.Y) > mostRadius || min(p.X, p.Y) < -mostRadius {
			return Trace{}, fmt.Errorf("form: point %d at %v, %v: want within ±%v: %w", i, p.X, p.Y, mostRadius, units.ErrRange)
		}
		least = Point{min(least.X, p.X), min(least.Y, p.Y)}
		most = Point{max(most.X, p.X), max(most.Y, p.Y)}
	}
	// The middle of the points goes out exactly, before anything is rounded.
	t := newTrace(n)
	t.origin = Point{(least.X + most.X) / 2, (least.Y + most.Y) / 2}
	for i, p := range points {
		t.x[i], t.y[i] = (p.X - t.origin.X).In(units.Millimetre), (p.Y - t.origin.Y).In(units.Millimetre)
	}
	return t, nil
}

// newTrace returns a trace with room for n points.
func newTrace(n int) Trace {
	room := make([]float64, 2*n)
	return Trace{x: room[:n:n], y: room[n:]}
}

func enough(n, want int) error {
	if n < want {
		return fmt.Errorf("form: %d points: want at least %d: %w", n, want, ErrPoints)
	}
	return nil
}

func checkRadius(i int, r units.Length) error {
	if r > 0 && r <= mostRadius {
		return nil
	}
	err := units.ErrRange
	if r == 0 { // package given would be one more file in the playground
		err = units.ErrNotGiven
	}
	return fmt.Errorf("form: radius %d, %v: want above 0, up to %v: %w", i, r, mostRadius, err)
}

// Len returns the number of points.
func (t Trace) Len() int { return len(t.x) }

// point returns a place given in mm from the origin.
func (t Trace) point(x, y float64) (Point, error) {
	px, err := units.Of(x, units.Millimetre)
	if err != nil {
		return Point{}, err
	}
	py, err := units.Of(y, units.Millimetre)
	return Point{t.origin.X + px, t.origin.Y + py}, err
}

// from returns a place in mm from the origin.
func (t Trace) from(p Point) (x, y float64) {
	return (p.X - t.origin.X).In(units.Millimetre), (p.Y - t.origin.Y).In(units.Millimetre)
}
