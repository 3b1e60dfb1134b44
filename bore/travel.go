// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"cmp"
	"slices"

	"borewright.example/units"
)

// A RingTravel is how far the rings run along a bore, and between which depths of it readings were
// taken: over that part alone does a taper or a shape hold.
type RingTravel struct {
	// Ring travel: the depth of its upper and of its lower end. Bottom zero: not known.
	Top    units.Length `json:"top,omitzero"`
	Bottom units.Length `json:"bottom,omitzero"`
	// Assumed says that the layout did not give it, and it was taken to be one and a half strokes
	// from 10 mm below the deck. Readings outside an assumed travel count as if they were inside.
	Assumed bool         `json:"assumed,omitzero"`
	From    units.Length `json:"from"` // the uppermost depth read within it
	To      units.Length `json:"to"`   // and the lowest
}

// assumedTop is where the top ring is taken to turn round where nothing is known of it: the pistons
// of small engines carry it 5 to 15 mm below their crown (common practice).
const assumedTop = 10 * units.Millimetre

// String says it in words: "12 mm to 90 mm, of a ring travel from 8 mm to 106 mm".
func (t RingTravel) String() string {
	s := t.From.String() + " to " + t.To.String()
	if !t.known() {
		return s + ", of a ring travel not known"
	}
	s += ", of a ring travel from " + t.Top.String() + " to " + t.Bottom.String()
	if t.Assumed {
		s += ", taken as one and a half strokes from 10 mm below the deck"
	}
	return s
}

func (t RingTravel) known() bool { return t.Bottom > 0 }

// holds reports whether rings reach the depth, as far as that is known for certain.
func (t RingTravel) holds(depth units.Length) bool {
	return !t.known() || t.Assumed || t.Top <= depth && depth <= t.Bottom
}

// topReach is how far below the upper end of a ring travel of such a length a plane may lie and
// still show what is worn there.
func topReach(travel units.Length) units.Length { return min(travel/10, 10*units.Millimetre) }

// nearTop reports whether a plane at the depth shows the upper end of ring travel: it lies within a
// tenth of the travel and 10 mm of it, for wear is greatest just below where the top ring turns
// round and falls off fast.
func (t RingTravel) nearTop(depth units.Length) bool {
	return t.known() && t.Top <= depth && depth <= t.Top+topReach(t.Bottom-t.Top)
}

// nearBottom reports whether a plane at the depth shows the lower end: its last fifth. Below a travel
// that is only assumed a plane shows it too: a bore as
// it was makes a taper larger, not smaller.
func (t RingTravel) nearBottom(depth units.Length) bool {
	return t.known() && t.Bottom-(t.Bottom-t.Top)/5 <= depth && (depth <= t.Bottom || t.Assumed)
}

// nearMiddle reports whether the depth lies in the middle two fifths.
func (t RingTravel) nearMiddle(depth units.Length) bool {
	at, travel := 10*(depth-t.Top), t.Bottom-t.Top
	return t.known() && 3*travel <= at && at <= 7*travel
}

// travel returns the ring travel of the layout, or the one assumed for its stroke, without what was
// read of it. Rings run along one stroke and their own height, from the upper edge of the top one to the lower
// edge of the lowest. Where nobody knows that height it is taken to be half a stroke, which is more than such
// engines have (common practice): were it less than theirs, not knowing would ask for less reading than knowing.
func (l Layout) travel() RingTravel {
	switch {
	case l.RingBottom > 0:
		return RingTravel{Top: l.RingTop, Bottom: l.RingBottom}
	case l.Stroke > 0:
		if bottom := min(assumedTop+l.Stroke+l.Stroke/2, l.end()); bottom > assumedTop {
			return RingTravel{Top: assumedTop, Bottom: bottom, Assumed: true}
		}
	}
	return RingTravel{}
}

// A profile is all that was read along one axis within ring travel, downwards.
type profile struct {
	axis   Axis
	places []Place
}

// profiles returns the axes that were read within ring travel, on planes and on bridges, by axis: a
// place that has wall under the anvils counts along its axis, whatever a port takes of others.
func (g *Geometry) profiles() []profile {
	all := g.places()
	if !g.Travel.Assumed && g.Travel.known() {
		all = slices.DeleteFunc(all, func(p Place) bool { return !g.Travel.holds(p.Depth) })
	}
	slices.SortStableFunc(all, func(a, b Place) int { return cmp.Or(cmp.Compare(a.Axis, b.Axis), cmp.Compare(a.Depth, b.Depth)) })
	n := 0
	for i := range all {
		if i == 0 || all[i].Axis != all[i-1].Axis {
			n++
		}
	}
	cs := make([]profile, 0, n)
	for from := 0; from < len(all); {
		to := from + 1
		for to < len(all) && all[to].Axis == all[from].Axis {
			to++
		}
		cs = append(cs, profile{all[from].Axis, all[from:to:to]})
		from = to
	}
	return cs
}

// whole reports whether the readings along the axis reach near enough to both ends of ring travel.
func (c profile) whole(t RingTravel) bool {
	return slices.ContainsFunc(c.places, func(p Place) bool { return t.nearTop(p.Depth) }) &&
		slices.ContainsFunc(c.places, func(p Place) bool { return t.nearBottom(p.Depth) })
}

// taper compares the ends of what was read along the axis.
func (c profile) taper(t RingTravel) Taper {
	return c.between(0, len(c.places)-1, t)
}

// between compares two places of the axis.
func (c profile) between(i, j int, t RingTravel) Taper {
	a, b := c.places[i], c.places[j]
	return Taper{Axis: c.axis, From: a.Depth, To: b.Depth, Size: a.Minus(b), Whole: c.whole(t)}
}
