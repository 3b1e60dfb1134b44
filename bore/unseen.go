// SPDX-License-Identifier: BSD-3-Clause

package bore

// Unseen is something that a set of readings cannot show, whatever the numbers.
type Unseen int8

// What readings can be blind to.
const (
	// UnseenOvality: one axis alone, or a three-point gauge, tells nothing of ovality.
	UnseenOvality Unseen = iota
	// UnseenBetweenAxes: two axes miss an ovality whose long axis lies midway between them.
	UnseenBetweenAxes
	// UnseenFolded: with three axes a four-lobed form looks like a two-lobed one.
	UnseenFolded
	// UnseenFourLobes: with four evenly spaced axes the size of a four-lobed form depends on
	// how it lies to them; five axes fix it.
	UnseenFourLobes
	// UnseenOddLobes: no gauge with two opposed anvils sees three, five or seven lobes: a
	// Reuleaux triangle has one diameter all round.
	UnseenOddLobes
	// UnseenTaper: one depth alone tells nothing of taper.
	UnseenTaper
	// UnseenShape: two depths cannot tell a taper from a bell-mouth, nor see a barrel or waist.
	UnseenShape
	// UnseenCentre: diameters hold no centre: which side is worn, and whether the axis is bent.
	UnseenCentre
	// UnseenScores: anvils bridge a score or pit; its depth is measured by itself.
	UnseenScores
	// UnseenElsewhere: what lies between the places read.
	UnseenElsewhere
)

var unseenNames = [...]string{
	"ovality", "ovality between the axes", "four lobes taken for two", "four lobes", "odd lobes",
	"taper", "shape", "centre", "scores", "elsewhere",
}

var unseenSentences = [...]string{
	"ovality: one axis, or a three-point gauge, cannot show it",
	"an ovality whose long axis lies midway between the two axes read",
	"whether a form of two lobes is not one of four: three axes cannot tell them apart",
	"the size of a form with four lobes: five axes would fix it",
	"three, five or seven lobes: two opposed anvils read the same diameter all round",
	"taper: one depth cannot show it",
	"bell-mouth, barrel or waist: two depths cannot show them",
	"which side is worn, and whether the axis is straight: diameters hold no centre",
	"the depth of scores and pits: the anvils bridge them",
	"anything between the places read",
}

// String says it in a sentence without its beginning: "these readings cannot show …".
func (u Unseen) String() string { return enumName(unseenSentences[:], int(u)) }

// MarshalText returns a short name, "odd lobes".
func (u Unseen) MarshalText() ([]byte, error) { return []byte(enumName(unseenNames[:], int(u))), nil }

// UnmarshalText reads the short name.
func (u *Unseen) UnmarshalText(text []byte) error { return unmarshalEnum(u, unseenNames[:], text) }

// unseen lists what the readings of g cannot show, by the plane with the fewest axes.
func unseen(g Geometry) []Unseen {
	fewest := len(g.Planes[0].Places)
	for _, p := range g.Planes[1:] {
		fewest = min(fewest, len(p.Places))
	}
	var us []Unseen
	switch {
	case g.Kind == ThreePoint || fewest == 1:
		us = append(us, UnseenOvality)
	case fewest == 2:
		us = append(us, UnseenBetweenAxes)
	case fewest == 3:
		us = append(us, UnseenFolded)
	case fewest == 4:
		us = append(us, UnseenFourLobes)
	}
	us = append(us, UnseenOddLobes)
	switch {
	case len(g.Planes) == 1:
		us = append(us, UnseenTaper)
	case len(g.Planes) == 2:
		us = append(us, UnseenShape)
	}
	return append(us, UnseenCentre, UnseenScores, UnseenElsewhere)
}
