// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

// A Pressing is how the abrasive is pressed against the wall while a part of the tool stands out of
// the bore. Where the metal goes depends on it, so the zero value, not given, gives no answer.
type Pressing int8

// The laws of pressure.
const (
	_                Pressing = iota // not given
	ConstantPressure                 // each piece presses for itself, as balls and filaments do: what stands out carries nothing
	ConstantForce                    // a spring or a weight presses the whole tool: the rest of the tool takes over the force of what stands out
)

var pressingNames = []string{"not given", "constant pressure", "constant force"}

// String returns "constant pressure", "constant force" or "not given".
func (p Pressing) String() string { return enum.Name(p, pressingNames) }

// MarshalText returns the text of [Pressing.String]. A value that is no law is [units.ErrUnknownName].
func (p Pressing) MarshalText() ([]byte, error) { return enum.Marshal(p, pressingNames) }

// UnmarshalText reads the text of [Pressing.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (p *Pressing) UnmarshalText(text []byte) error { return enum.Unmarshal(p, text, pressingNames) }

func (p Pressing) check() error {
	switch p {
	case ConstantPressure, ConstantForce:
		return nil
	case 0:
		return fmt.Errorf("hone: law of pressure: %w", units.ErrNotGiven)
	}
	return fmt.Errorf("hone: law of pressure %v: %w", p, units.ErrRange)
}

// A Removal is where the metal goes along the wall. All sizes are on the diameter, 0 or more.
type Removal struct {
	Points []Place `json:"points,omitzero"` // from the top face to the bottom, equally spaced; Diameter is what it grows by

	Top    units.Length `json:"top,omitzero"`    // taken at the top face
	Middle units.Length `json:"middle,omitzero"` // half-way down
	Bottom units.Length `json:"bottom,omitzero"` // at the bottom; 0 at the closed end of a blind bore, which stays as tight as it was

	Min units.Length `json:"min,omitzero"` // 0 or more
	Max units.Length `json:"max,omitzero"` // of all points and the three above

	// Straightness is by how much the wall departs from a line along the axis when all is done, if
	// it was straight before: half of Max less Min, since a wall is a radius.
	Straightness units.Length `json:"straightness,omitzero"`
}

// Removal returns what the setting takes along the wall at so many points, 2 to a million, while the
// diameter grows by the stock on the mean over the depth, when the tool moves by m on the travel t.
//
// Metal goes as pressure times resultant speed times time (F. W. Preston, The theory and design of
// plate glass polishing machines, J. Soc. Glass Technology 11, 1927, from memory). A point of the wall
// is worked while the tool covers it. At the ends that is shorter; with a steady stroke and a tool
// of length l, of which o stands out, the end gets of what the middle gets
//
//	constant pressure   o/l             1/2 for half the tool out, 1/3 for a third
//	constant force      ln(l/(l − o))   0.69 for half,             0.41 for a third
//
// so that the ends stay tight: the middle is met at o/l = 1 − 1/e = 0.63 only, past what is safe, or
// with a motion that slows down at the ends. Worn-in stones that have taken the shape of the wall, a tool
// that tilts and a wall that gives way are not in this law.
//
// Of the setting the bore, the spindle speed and the stroking are used; a stroke of zero is taken
// from the travel, another than the travel's is [ErrRoom]. No law of pressure is [units.ErrNotGiven].
func (s Setting) Removal(m Motion, t Travel, law Pressing, stock units.Length, points int) (Removal, error) {
	w, err := s.worked(m, t, law)
	if err := firstError(err, checkLength("stock on the diameter", stock)); err != nil {
		return Removal{}, err
	}
	if points < 2 || points > maxPoints {
		return Removal{}, fmt.Errorf("hone: %d points of a removal: %w: want 2 to %d", points, units.ErrRange, maxPoints)
	}
	r := Removal{Points: make([]Place, points), Min: math.MaxInt64}
	take := func(depth units.Length) units.Length {
		d, e := units.Of(float64(w.share(depth)*stock.In(units.Metre)), units.Metre)
		if e != nil {
			err = fmt.Errorf("hone: stock %v: %w: the wall would lose more than %v in places", stock, units.ErrRange, units.MaxLength)
		}
		r.Min, r.Max = min(r.Min, d), max(r.Max, d)
		return d
	}
	for i := range r.Points {
		depth, e := t.Depth.MulDiv(int64(i), int64(points-1))
		if e != nil {
			return Removal{}, e
		}
		r.Points[i] = Place{depth, take(depth)}
	}
	r.Top, r.Middle, r.Bottom = take(0), take(t.Depth/2), take(t.Depth)
	if err != nil {
		return Removal{}, err
	}
	r.Straightness = (r.Max - r.Min) / 2
	return r, nil
}

// A worked stroke sums up pressure times speed times time from the start of a stroke.
type worked struct {
	*stroke
	law    Pressing
	slope  float64 // axial over peripheral speed
	travel Travel
	length units.Length // of the stroke
	// The same in strokes.
	tool, top, bottom float64

	sum   []float64 // up to each cell end, with pressure 1 where all of the tool is inside and peripheral speed 1
	scale float64   // makes the mean over the depth 1
}

// worked lays the setting over the travel, once both are good.
func (s Setting) worked(m Motion, t Travel, law Pressing) (*worked, error) {
	s, err := s.on(t)
	if err := firstError(err, law.check()); err != nil {
		return nil, err
	}
	return s.lay(m, t, law)
}

// lay lays a setting over the travel that makes its stroke. Top or bottom may be negative: so far the tool
// stays inside.
func (s Setting) lay(m Motion, t Travel, law Pressing) (*worked, error) {
	st, err := m.over(s.Stroking)
	if err != nil {
		return nil, err
	}
	length := s.Stroke
	w := &worked{stroke: st, law: law, slope: s.slope(), travel: t, length: length,
		tool: t.Tool.In(length), top: t.Top.In(length), bottom: t.Bottom.In(length)}
	w.cutOut()
	w.sum = make([]float64, len(w.ends))
	all := 0.0 // the whole work done on the wall
	for i := 1; i < len(w.ends); i++ {
		w.sum[i] = w.sum[i-1] + w.effort(i-1, w.ends[i])
		all += w.done(i - 1)
	}
	w.scale = t.Depth.In(length) / all
	return w, nil
}

// cutOut cuts the cells where the tool begins to stand out, and again and again as less is left inside.
func (w *worked) cutOut() {
	const ratio = 1.25 // of what is inside, from one cut to the next
	for _, out := range [2]float64{w.top, w.bottom} {
		for inside := w.tool; inside > w.tool-out; inside /= ratio {
			at := out - (w.tool - inside) // from the end of the travel
			if out == w.bottom {
				w.split(1 - at)
			}
			if out == w.top {
				w.split(at)
			}
		}
	}
}

// split adds a cell end where the tool has gone so far.
func (w *worked) split(gone float64) {
	if !(gone > 0 && gone < 1) {
		return
	}
	i := max(sort.SearchFloat64s(w.gone, gone)-1, 0)
	t := w.when(i, gone)
	if t <= w.ends[i] || t >= w.ends[i+1] {
		return
	}
	w.ends = slices.Insert(w.ends, i+1, t)
	w.at = slices.Insert(w.at, i+1, w.speed(t))
	w.gone = slices.Insert(w.gone, i+1, gone)
}

// inside is how much of the tool is inside the bore at the time t, in strokes.
func (w *worked) inside(cell int, t float64) float64 {
	if w.gone[cell] >= w.top && w.gone[cell+1] <= 1-w.bottom {
		return w.tool
	}
	gone := w.gone[cell] + gauss(w.ends[cell], t, w.speed)
	return w.tool - max(0, w.top-gone) - max(0, w.bottom-(1-gone))
}

// effort integrates pressure times speed from the start of the cell to the time t, which lies in it.
func (w *worked) effort(cell int, t float64) float64 {
	return gauss(w.ends[cell], t, func(t float64) float64 {
		if w.law == ConstantForce {
			return w.along(t) * w.tool / w.inside(cell, t) // (6), once summed up
		}
		return w.along(t) // (5)
	})
}

// done integrates over all of a cell what [worked.effort] does to the wall at one point over all the
// wall that the tool covers.
func (w *worked) done(cell int) float64 {
	return gauss(w.ends[cell], w.ends[cell+1], func(t float64) float64 {
		if w.law == ConstantForce {
			return w.along(t) * w.tool
		}
		return w.along(t) * w.inside(cell, t)
	})
}

// along is the speed of the abrasive along its line, where the peripheral speed is 1.
func (w *worked) along(t float64) float64 {
	v := w.slope * w.speed(t)
	return math.Sqrt(1 + float64(v*v))
}

// share is what the wall loses at the depth, over what it loses on the mean.
func (w *worked) share(depth units.Length) float64 { return w.loses(depth) * w.scale }

// loses is what the wall loses at the depth in a stroke, in pressure times speed times strokes.
func (w *worked) loses(depth units.Length) float64 {
	z := depth + w.travel.Top // from the top of the tool's travel
	from, to := max(0, z-w.travel.Tool), min(w.length, z)
	if from >= to {
		return 0 // the tool only comes up to it
	}
	i, j, t1, t2 := w.stay(from.In(w.length), to.In(w.length))
	a, b := w.sum[i]+w.effort(i, t1), w.sum[j]+w.effort(j, t2)
	return max(0, b-a)
}
