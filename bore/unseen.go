// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"slices"

	"borewright.example/internal/enum"
)

// Unseen is something that a set of readings cannot show, whatever the numbers.
type Unseen int8

// What readings can be blind to. What programs do not ask about is told by its text alone.
const (
	// UnseenOvality: one axis alone, or a three-point gauge, tells nothing of ovality.
	UnseenOvality Unseen = iota
	// UnseenBetweenAxes: two axes, or several close together, miss an ovality whose long axis
	// lies midway between them.
	UnseenBetweenAxes
	// UnseenFolded: with three axes a four-lobed form looks like a two-lobed one.
	UnseenFolded
	// UnseenFourLobes: with four evenly spaced axes the size of a four-lobed form depends on
	// how it lies to them; five axes fix it.
	UnseenFourLobes
	// UnseenHigherLobes: with five axes or more lobes of two and four are fitted, and no others.
	UnseenHigherLobes
	// UnseenOddLobes: no gauge with two opposed anvils sees three, five or seven lobes: a
	// Reuleaux triangle has one diameter all round.
	UnseenOddLobes
	// UnseenLobesInSize: a three-point gauge reads three lobes as size.
	UnseenLobesInSize
	// unseenTaper: no axis was read at two depths, or, where ring travel is known or assumed, near
	// both its ends. What lies between two other depths may be beyond a limit on taper, and never
	// within.
	unseenTaper
	// unseenShape: two depths along an axis cannot tell a taper from a bell-mouth, nor see a barrel or
	// waist.
	unseenShape
	// UnseenTravel: ring travel is not known, nor a stroke to take it from, so that nothing says
	// whether the readings reach its ends.
	UnseenTravel
	// UnseenTop, UnseenMiddle and UnseenBottom: no plane within a tenth of ring travel, and at most
	// 10 mm, of its upper end, just below which wear is greatest; in its middle two fifths; or within
	// a fifth of its lower end.
	UnseenTop
	UnseenMiddle
	UnseenBottom
	// unseenUnworn: no plane outside ring travel, so that wear is held against nominal alone.
	unseenUnworn
	// UnseenCentre: diameters hold no centre: which side is worn, and whether the axis is bent.
	UnseenCentre
	// unseenScores: anvils bridge a score or pit; its depth is measured by itself.
	unseenScores
	// unseenScatter: no place was read twice, and the gauge's repeatability is not known: it is
	// missing from every doubt.
	unseenScatter
	// UnseenElsewhere: what lies between the places read.
	UnseenElsewhere
)

var unseenNames = [...]string{
	"ovality", "ovality between the axes", "four lobes taken for two", "four lobes", "six lobes and more",
	"odd lobes", "lobes in the size", "taper", "shape", "ring travel", "top", "middle", "bottom", "unworn size",
	"centre", "scores", "scatter", "elsewhere",
}

var unseenSentences = [...]string{
	"ovality: one axis, or a three-point gauge, cannot show it",
	"an ovality whose long axis lies midway between the axes read",
	"whether a form of two lobes is not one of four: three axes cannot tell them apart",
	"the size of a form with four lobes: five axes would fix it",
	"six lobes and more: those of two and four are all that is fitted",
	"three, five or seven lobes: two opposed anvils read the same diameter all round",
	"three lobes: a three-point gauge reads them as size",
	"taper: no axis was read near both ends of ring travel, or none at two depths",
	"bell-mouth, barrel or waist: they want three depths along an axis, from end to end of ring travel",
	"how much of the wall the rings run on: ring travel is neither given nor taken from a stroke",
	"the top of ring travel, where wear is usually greatest",
	"the middle of ring travel",
	"the bottom of ring travel",
	"the unworn size: no plane outside ring travel",
	"which side is worn, and whether the axis is straight: diameters hold no centre",
	"the depth of scores and pits: the anvils bridge them",
	"the gauge's own scatter: no place was read twice",
	"anything between the places read",
}

// String says it in a sentence without its beginning: "these readings cannot show …".
func (u Unseen) String() string { return enum.Name(u, unseenSentences[:]) }

// MarshalText returns a short name, "odd lobes"; a value that has none is an error.
func (u Unseen) MarshalText() ([]byte, error) { return enum.Marshal(u, unseenNames[:]) }

// UnmarshalText reads the short name. On error the receiver keeps its value.
func (u *Unseen) UnmarshalText(text []byte) error { return enum.Unmarshal(u, text, unseenNames[:]) }

// unseen lists what the readings of g cannot show, in the order of the constants.
func unseen(g *Geometry, scatterKnown bool) []Unseen {
	us := make([]Unseen, 0, len(unseenNames))
	add := func(missing bool, u Unseen) {
		if missing {
			us = append(us, u)
		}
	}
	two, four, fewest := true, true, 0 // what every plane has; the axes of the plane with the fewest
	for i, p := range g.Planes {
		two, four = two && p.TwoLobe != (Lobes{}), four && p.FourLobe != (Lobes{})
		if i == 0 || len(p.Places) < fewest {
			fewest = len(p.Places)
		}
	}
	switch {
	case g.Kind == ThreePoint || fewest < 2:
		us = append(us, UnseenOvality)
	case !two:
		us = append(us, UnseenBetweenAxes)
	case fewest == 3:
		us = append(us, UnseenFolded)
	case !four:
		us = append(us, UnseenFourLobes)
	default:
		us = append(us, UnseenHigherLobes)
	}
	add(g.Kind != ThreePoint, UnseenOddLobes)
	add(g.Kind == ThreePoint, UnseenLobesInSize)
	t := g.Travel
	whole := slices.ContainsFunc(g.Tapers, func(x Taper) bool { return x.Whole })
	add(len(g.Tapers) == 0 || t.known() && !whole, unseenTaper)
	add(len(g.Tapers) > 0 && g.Shape == "", unseenShape)
	add(!t.known(), UnseenTravel)
	if t.known() {
		var top, middle, bottom, outside bool
		for _, planes := range [...][]Plane{g.Planes, g.Bridges} {
			for _, p := range planes {
				top, middle, bottom = top || t.nearTop(p.Depth), middle || t.nearMiddle(p.Depth), bottom || t.nearBottom(p.Depth)
			}
		}
		for _, p := range g.Planes {
			outside = outside || !t.holds(p.Depth)
		}
		add(!top, UnseenTop)
		add(!middle, UnseenMiddle)
		add(!bottom, UnseenBottom)
		add(!outside, unseenUnworn)
	}
	add(true, UnseenCentre)
	add(true, unseenScores)
	add(!scatterKnown, unseenScatter)
	add(true, UnseenElsewhere)
	return us
}
