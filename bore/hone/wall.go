// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// A Profile is what a setting leaves along the wall of a bore. All angles are included angles:
// twice the lean of a line, which its twin of the return stroke closes; 0 is flat, square to
// the axis. Angles are rounded to 10⁻¹²°, shares to 10⁻⁹.
type Profile struct {
	Points []Level `json:"points,omitzero"` // from the top face to the bottom, equally spaced

	Min    units.Angle `json:"min,omitzero"`    // of all points
	Max    units.Angle `json:"max,omitzero"`    // of all points
	Mean   units.Angle `json:"mean,omitzero"`   // of all lines, by their length
	Within float64     `json:"within,omitzero"` // fraction of the length of the lines that is within the tolerance, 0 to 1

	// How far into the bore the marks of the tool's turning round reach, from either end. With
	// every motion but Steady the lines curve flat there.
	ReversalTop    units.Length `json:"reversal_top,omitzero"`
	ReversalBottom units.Length `json:"reversal_bottom,omitzero"`
}

// A Level is one depth of the wall and the lines that cross it. Angles and share are as in
// [Profile].
type Level struct {
	Depth  units.Length `json:"depth,omitzero"`  // from the top face
	Min    units.Angle  `json:"min,omitzero"`    // of the lines here
	Mean   units.Angle  `json:"mean,omitzero"`   // by their length
	Max    units.Angle  `json:"max,omitzero"`    // of the lines here
	Within float64      `json:"within,omitzero"` // fraction, 0 to 1
}

// maxPoints bounds the work and the memory of a profile.
const maxPoints = 1_000_000

// Profile returns the lines that the setting leaves along the wall at so many points, 2 to a
// million, when the tool moves by m on the travel t.
//
// Abrasive lies along the whole tool, so a point of the wall is crossed while the tool goes
// through every position at which it covers the point, at as many speeds. Lines are weighed by
// their length on the wall, as dots of a picture add up: the lines drawn in a time dt weigh the
// resultant speed times dt. By their number see [Setting.CountLines]. The return stroke is taken
// as the same stroke backwards.
//
// The stroke of the setting must be that of the travel, else it is [ErrRoom]; a zero one is
// taken from it.
func (s Setting) Profile(m Motion, t Travel, want Want, points int) (Profile, error) {
	s, err := s.on(t)
	if err != nil {
		return Profile{}, err
	}
	length := s.Stroke
	flat, steep, err := want.ends()
	if err != nil {
		return Profile{}, err
	}
	if points < 2 || points > maxPoints {
		return Profile{}, fmt.Errorf("hone: %d points of a profile: %w: want 2 to %d", points, units.ErrRange, maxPoints)
	}
	st, err := m.over(s.Stroking)
	if err != nil {
		return Profile{}, err
	}
	w := newWeave(st, s.slope(), flat, steep)

	p := Profile{
		Points:         make([]Level, points),
		ReversalTop:    min(t.Tool-t.Top, t.Depth),
		ReversalBottom: min(t.Tool-t.Bottom, t.Depth),
	}
	all := lines{least: math.Pi}
	for i := range p.Points {
		pt := &p.Points[i]
		if pt.Depth, err = t.Depth.MulDiv(int64(i), int64(points-1)); err != nil {
			return Profile{}, err
		}
		z := pt.Depth + t.Top // from the top of the tool's travel
		l := w.between(max(0, z-t.Tool).In(length), min(length, z).In(length))
		pt.Min, pt.Mean, pt.Max, pt.Within = l.told()
		share := 1.0
		if i == 0 || i == points-1 {
			share = 0.5 // the end points stand for half a step
		}
		all.add(l, share)
	}
	p.Min, p.Mean, p.Max, p.Within = all.told()
	return p, nil
}

// on returns the setting with the stroke of a travel, checked as a whole.
func (s Setting) on(t Travel) (Setting, error) {
	length, err := t.Stroke()
	if err != nil {
		return Setting{}, err
	}
	if s.Stroke == 0 {
		s.Stroke = length
	}
	if err := s.check(); err != nil {
		return Setting{}, err
	}
	if s.Stroke != length {
		return Setting{}, fmt.Errorf("hone: stroke %v: %w: the travel of the tool makes it %v", s.Stroke, ErrRoom, length)
	}
	return s, nil
}

// lines sums up lines: their length, the included angle weighted by it, and the length that is
// within the tolerance; and the least and greatest included angle.
type lines struct {
	length, angle, within float64
	least, greatest       float64
}

func (l *lines) add(o lines, share float64) {
	l.length += float64(o.length * share)
	l.angle += float64(o.angle * share)
	l.within += float64(o.within * share)
	l.least, l.greatest = min(l.least, o.least), max(l.greatest, o.greatest)
}

// told rounds the sum for its reader. Sums are differences of larger ones: what rounding has
// pushed out of bounds is put back.
func (l *lines) told() (least, mean, greatest units.Angle, within float64) {
	within = math.Round(min(max(l.within/l.length, 0), 1)*1e9) / 1e9
	return roundAngle(l.least), roundAngle(min(max(l.angle/l.length, l.least), l.greatest)), roundAngle(l.greatest), within
}

// roundAngle rounds an angle in radians to the grain of a [Crosshatch].
func roundAngle(radians float64) units.Angle {
	return degrees(int64(math.Round(units.Angle(radians).In(units.Degree) * picodegrees)))
}

// A weave is a stroke with the lines it draws. Slope is that of the mean speed.
type weave struct {
	*stroke
	slope  float64
	sum    []lines // from the start to each cell end, without least and greatest
	lo, hi float64 // speeds that draw lines within the tolerance
	band   []span  // when they are drawn, in order
}

// A span is a stretch of time with the length of line drawn up to its ends.
type span struct{ from, to, before, after float64 }

func newWeave(st *stroke, slope float64, flat, steep Crosshatch) *weave {
	w := &weave{stroke: st, slope: slope, sum: make([]lines, len(st.ends))}
	for i := 1; i < len(st.ends); i++ {
		w.sum[i] = w.drawn(i-1, st.ends[i])
	}
	// An edge that a motion runs along exactly belongs to the tolerance.
	const edge = 1e-12
	w.lo, w.hi = flat.slope()/slope*(1-edge), steep.slope()/slope*(1+edge)
	for i := 1; i < len(st.ends); i++ {
		var room [4]float64
		cuts := append(room[:0], st.ends[i-1])
		for _, edge := range [2]float64{w.lo, w.hi} {
			if (st.at[i-1] < edge) != (st.at[i] < edge) {
				cuts = append(cuts, w.crossing(i, edge))
			}
		}
		cuts = append(cuts, st.ends[i])
		slices.Sort(cuts)
		for j := 1; j < len(cuts); j++ {
			if v := st.speed((cuts[j-1] + cuts[j]) / 2); w.lo <= v && v <= w.hi {
				w.enter(i-1, cuts[j-1], cuts[j])
			}
		}
	}
	return w
}

// enter adds a stretch of one cell to the band, joined to the one before where they touch.
func (w *weave) enter(cell int, from, to float64) {
	after := w.drawn(cell, to).length
	if n := len(w.band); n > 0 && w.band[n-1].to == from {
		w.band[n-1].to, w.band[n-1].after = to, after
		return
	}
	w.band = append(w.band, span{from, to, w.drawn(cell, from).length, after})
}

// drawn sums the lines from the start of the stroke to the time t, which lies in the cell.
func (w *weave) drawn(cell int, t float64) lines {
	l := w.sum[cell]
	mid, half := (w.ends[cell]+t)/2, (t-w.ends[cell])/2
	for _, p := range gaussPoints {
		for _, x := range [2]float64{-p.x, p.x} {
			slope := w.slope * w.speed(mid+float64(half*x))
			speed := math.Sqrt(1 + float64(slope*slope))
			l.length += float64(half * p.w * speed)
			l.angle += float64(half * p.w * speed * 2 * math.Atan(slope))
		}
	}
	return l
}

// tinyLine is the length of a line too short to count, as a share of a stroke's.
const tinyLine = 1e-30

// between sums the lines drawn while the tool travels between two shares of the stroke.
func (w *weave) between(from, to float64) lines {
	i, j, t1, t2 := w.stay(from, to)
	a, b := w.drawn(i, t1), w.drawn(j, t2)
	l := lines{length: b.length - a.length, angle: b.angle - a.angle}
	for _, s := range w.band {
		if s.to <= t1 || s.from >= t2 {
			continue
		}
		before, after := s.before, s.after
		if s.from < t1 {
			before = a.length
		}
		if s.to > t2 {
			after = b.length
		}
		l.within += after - before
	}
	v1, v2 := w.speed(t1), w.speed(t2)
	least, greatest := min(v1, v2), max(v1, v2)
	for k := i + 1; k <= j; k++ {
		least, greatest = min(least, w.at[k]), max(greatest, w.at[k])
	}
	l.least, l.greatest = 2*math.Atan(w.slope*least), 2*math.Atan(w.slope*greatest)
	if l.length <= 0 { // the tool turns round just as it touches: one line, weighing nothing
		l = lines{length: tinyLine, angle: tinyLine * l.least, least: l.least, greatest: l.greatest}
		if w.lo <= least && least <= w.hi {
			l.within = tinyLine
		}
	}
	return l
}
