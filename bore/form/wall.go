// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"

	"borewright.example/units"
)

// A WallPoint is a place in space: a point of a wall, or one on its axis.
type WallPoint struct {
	X     units.Length `json:"x"` // along the thrust axis, where there is one
	Y     units.Length `json:"y"` // a quarter turn further, counted as angles are
	Depth units.Length `json:"depth"`
}

// A Section is the trace of a wall at one depth, taken square to the direction that depths count in.
type Section struct {
	Depth units.Length `json:"depth"` // from the deck
	Trace Trace        `json:"-"`
}

// A Wall is the wall of a bore, as points: what traces at several depths, or a measuring machine,
// give. Like a [Trace] it holds its own copy and never changes. Depths count along the bore: its
// axis may lean, by less than 45°. The zero Wall has no points.
type Wall struct {
	x, y, z   []float64 // mm, from origin
	low, high float64   // the least and the greatest z
	origin    WallPoint
	sections  []Section
}

// FromSections returns the wall of traces at increasing depths, two at least (else ErrPoints), all
// within 5 m of the deck and about one point 0, 0 (else [units.ErrRange]). Points count through, those of
// the first section first.
func FromSections(sections []Section) (Wall, error) {
	if len(sections) < 2 {
		return Wall{}, fmt.Errorf("form: wall of %d sections: want at least 2: %w", len(sections), ErrPoints)
	}
	n := 0
	for i, s := range sections {
		if s.Trace.Len() == 0 {
			return Wall{}, fmt.Errorf("form: section %d at %v has no points: %w", i, s.Depth, ErrPoints)
		}
		if s.Depth.Abs() > mostRadius || i > 0 && s.Depth <= sections[i-1].Depth {
			return Wall{}, fmt.Errorf("form: section %d at %v: want increasing depths within ±%v: %w", i, s.Depth, mostRadius, units.ErrRange)
		}
		n += s.Trace.Len()
	}
	first, last := sections[0], sections[len(sections)-1]
	w := newWall(n)
	w.origin = WallPoint{first.Trace.origin.X, first.Trace.origin.Y, (first.Depth + last.Depth) / 2}
	w.low, w.high = (first.Depth - w.origin.Depth).In(units.Millimetre), (last.Depth - w.origin.Depth).In(units.Millimetre)
	w.sections = append([]Section(nil), sections...)
	i := 0
	for _, s := range sections {
		dx := (s.Trace.origin.X - w.origin.X).In(units.Millimetre)
		dy := (s.Trace.origin.Y - w.origin.Y).In(units.Millimetre)
		z := (s.Depth - w.origin.Depth).In(units.Millimetre)
		for k := range s.Trace.x {
			w.x[i], w.y[i], w.z[i] = s.Trace.x[k]+dx, s.Trace.y[k]+dy, z
			i++
		}
	}
	return w, nil
}

// FromWallPoints returns the wall of points in any order. Six at least (else ErrPoints), each
// coordinate within ±5 m (else [units.ErrRange]).
func FromWallPoints(points []WallPoint) (Wall, error) {
	n := len(points)
	if err := enough(n, wallPoints); err != nil {
		return Wall{}, err
	}
	least, most := points[0], points[0]
	for i, p := range points {
		if max(p.X, p.Y, p.Depth) > mostRadius || min(p.X, p.Y, p.Depth) < -mostRadius {
			return Wall{}, fmt.Errorf("form: point %d at %v, %v, depth %v: want within ±%v: %w", i, p.X, p.Y, p.Depth, mostRadius, units.ErrRange)
		}
		least = WallPoint{min(least.X, p.X), min(least.Y, p.Y), min(least.Depth, p.Depth)}
		most = WallPoint{max(most.X, p.X), max(most.Y, p.Y), max(most.Depth, p.Depth)}
	}
	w := newWall(n)
	w.origin = WallPoint{(least.X + most.X) / 2, (least.Y + most.Y) / 2, (least.Depth + most.Depth) / 2}
	w.low, w.high = (least.Depth - w.origin.Depth).In(units.Millimetre), (most.Depth - w.origin.Depth).In(units.Millimetre)
	for i, p := range points {
		w.x[i], w.y[i] = (p.X - w.origin.X).In(units.Millimetre), (p.Y - w.origin.Y).In(units.Millimetre)
		w.z[i] = (p.Depth - w.origin.Depth).In(units.Millimetre)
	}
	return w, nil
}

// wallPoints is the least number of points of a cylinder: one more than it has sizes.
const wallPoints = 6

// newWall returns a wall with room for n points.
func newWall(n int) Wall {
	room := make([]float64, 3*n)
	return Wall{x: room[:n:n], y: room[n : 2*n : 2*n], z: room[2*n:]}
}

// len returns the number of points.
func (w Wall) len() int { return len(w.x) }

// Along returns the wall as seen along an axis, all of it in one plane, as a trace about that axis: for
// what is to have the direction of the axis and nothing else. Along [Square], which a boring bar keeps,
//
//	t.MinimumCircumscribed()                      the clean-up with the centre free, and where that is
//	bore.CleanUpRadial(t.Radial(0), …)            the same and that about the axis, with allowances
//
// and along the axis of a cylinder what the four circles make of it. units.ErrRange where the axis has no length.
func (w Wall) Along(a Axis) (Trace, error) {
	from, to := w.from(a.From), w.from(a.To)
	along := to.plus(-1, from)
	if !(along.dot(along) > 0) {
		return Trace{}, fmt.Errorf("form: wall along an axis without length at %v, %v: %w", a.From.X, a.From.Y, units.ErrRange)
	}
	p := lookingAlong(from, along)
	t := newTrace(w.len())
	for i := range w.x {
		t.x[i], t.y[i], _ = p.seen(w.x[i], w.y[i], w.z[i])
	}
	return t, nil
}

// lookingAlong returns the pose along a direction, whichever it is, looking the way that depths count.
func lookingAlong(from, along vector) pose {
	if along[2] < 0 {
		along = vector{}.plus(-1, along)
	}
	p := pose{c: from, u: vector{1, 0, 0}, w: along.unit(), half: 1}
	if float64(along[0]*along[0]) > float64(0.9*along.dot(along)) {
		p.u = vector{0, 0, -1}
	}
	return p.square()
}

// place returns a place given in mm from the origin.
func (w Wall) place(v vector) (WallPoint, error) {
	var l [3]units.Length
	for k := range l {
		var err error
		if l[k], err = units.Of(v[k], units.Millimetre); err != nil {
			return WallPoint{}, err
		}
	}
	return WallPoint{w.origin.X + l[0], w.origin.Y + l[1], w.origin.Depth + l[2]}, nil
}

// from returns a place in mm from the origin.
func (w Wall) from(p WallPoint) vector {
	return vector{(p.X - w.origin.X).In(units.Millimetre), (p.Y - w.origin.Y).In(units.Millimetre), (p.Depth - w.origin.Depth).In(units.Millimetre)}
}
