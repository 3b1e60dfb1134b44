// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// A Port is an opening in the wall, as two-strokes have: a band of depths and of directions in
// which nothing can be measured. Its edges belong to it.
type Port struct {
	Name string       `json:"name,omitzero"` // what an error calls it
	From units.Length `json:"from"`          // depth of its upper edge
	To   units.Length `json:"to"`            // and of its lower one
	// At is the direction of its middle, from one end of the thrust axis, once round; which end
	// is the user's choice, as long as readings keep to it.
	At    units.Angle `json:"at"`
	Width units.Angle `json:"width"` // what it takes of the circumference, above 0 up to 360°
}

// String returns the port with its name and place.
func (p Port) String() string {
	return fmt.Sprintf("port %q (%v to %v, %v wide at %v)", p.Name, p.From, p.To, p.Width, p.At)
}

// check refuses a port whose upper edge is not above the lower one, both within 0 to [units.MaxLength], or whose
// width is not above 0 up to 360°.
func (p Port) check() error {
	if p.From < 0 || p.To <= p.From || p.To > units.MaxLength || !validAngle(p.At) || !(p.Width > 0 && p.Width <= 360*units.Degree) {
		return fmt.Errorf("%v: want the upper edge first, within 0 to %v, and a width above 0 up to 360°: %w", p, units.MaxLength, units.ErrRange)
	}
	return nil
}

// covers reports whether the depth is cut by the port.
func (p Port) covers(depth units.Length) bool { return p.From <= depth && depth <= p.To }

// holds reports whether a direction lies in the port, to a millionth of a degree.
func (p Port) holds(direction units.Angle) bool {
	off := foldAngle(direction-p.At, 360).In(units.Degree)
	off = min(off, 360-off)
	return math.Round(off*angleSteps) <= math.Round(p.Width.In(units.Degree)/2*angleSteps)
}

// A Layout is where things lie along a bore. The zero Layout says nothing: then no reading is
// outside the bore, no plane lies outside ring travel and nothing is cut by ports.
type Layout struct {
	Length units.Length `json:"length,omitzero"` // of the bore, from the deck; zero: not known
	// Ring travel: the depth of the top ring's upper edge at its highest, and of the lowest
	// ring's lower edge at its lowest. RingBottom zero: not known.
	RingTop    units.Length `json:"ring_top,omitzero"`
	RingBottom units.Length `json:"ring_bottom,omitzero"`
	// Stroke serves where ring travel is not known: it is then taken to be one and a half strokes
	// from 10 mm below the deck, to see whether readings reach its ends, and no reading is outside it. It has
	// no place in a layout's text, since it belongs to the engine.
	Stroke units.Length `json:"-"`
	Ports  []Port       `json:"ports,omitzero"`
}

// anvilMargin is how far a plan keeps the middle of an anvil from the edges of ports, from the ridge and from
// the ends of the bore: an anvil and its foot are some 2 mm wide, and edges are chamfered (common practice).
// Round the bore it is taken as marginAngle, which is 2 mm in a bore of 46 mm and more in larger ones.
const (
	anvilMargin = 2 * units.Millimetre
	marginAngle = 5 * units.Degree
)

// margin returns the port with the room that an anvil wants round it.
func (p Port) margin() Port {
	p.From, p.To, p.Width = max(0, p.From-anvilMargin), p.To+anvilMargin, min(p.Width+2*marginAngle, 360*units.Degree)
	return p
}

// Validate returns [units.ErrRange] where the length, the ring travel or a port cannot be, or they do not
// go together.
func (l Layout) Validate() error {
	switch {
	case l.Length < 0 || l.Length > units.MaxLength:
		return fmt.Errorf("bore: length %v: want 0 (not known) to %v: %w", l.Length, units.MaxLength, units.ErrRange)
	case l.Stroke < 0 || l.Stroke > (units.MaxLength-assumedTop)/2:
		return fmt.Errorf("bore: stroke %v: want 0 (not known) to %v: %w", l.Stroke, (units.MaxLength-assumedTop)/2, units.ErrRange)
	case l.RingBottom == 0 && l.RingTop == 0:
	case l.RingTop < 0 || l.RingBottom <= l.RingTop || l.RingBottom > l.end():
		return fmt.Errorf("bore: ring travel from %v to %v: want the upper end first, within 0 to %v: %w", l.RingTop, l.RingBottom, l.end(), units.ErrRange)
	}
	for i, p := range l.Ports {
		if err := p.check(); err != nil {
			return fmt.Errorf("bore: port %d: %w", i, err)
		}
		if p.To > l.end() {
			return fmt.Errorf("bore: %v: the bore ends at %v: %w", p, l.end(), units.ErrRange)
		}
	}
	return nil
}

// end is the greatest depth that a reading can have.
func (l Layout) end() units.Length {
	if l.Length == 0 {
		return units.MaxLength
	}
	return l.Length
}

// check refuses a reading below the bore, or with an anvil in a port.
func (l Layout) check(r Reading, k Kind) error {
	if r.Depth > l.end() {
		return fmt.Errorf("bore: reading at depth %v: the bore ends at %v: %w", r.Depth, l.end(), ErrReading)
	}
	for _, p := range l.Ports {
		if p.takes(r, k) {
			return fmt.Errorf("bore: reading %v at %v, %s: an anvil falls in %v: %w", r.Diameter, r.Depth, r.Axis, p, ErrReading)
		}
	}
	return nil
}

// takes reports whether an anvil of the reading would fall in the port.
func (p Port) takes(r Reading, k Kind) bool {
	n := k.anvils()
	for i := range n {
		if p.covers(r.Depth) && p.holds(r.Axis.angle()+units.Angle(i)*360*units.Degree/units.Angle(n)) {
			return true
		}
	}
	return false
}

// isBridge reports whether a port cuts the depth, so that only bridges between ports are left.
func (l Layout) isBridge(depth units.Length) bool {
	for _, p := range l.Ports {
		if p.covers(depth) {
			return true
		}
	}
	return false
}

// mostAxes is how many axes a plan may have: more is a matter for a machine, not for a hand.
const mostAxes = 36

// ToRead returns where to measure, as readings without a diameter: along so many evenly spaced axes
// from the thrust axis, just below the highest ring position, in the middle and just above the
// lowest (the levels of Navy training manual 14076, 3-5; "just" is taken as a twentieth of ring
// travel, at the top at most 5 mm), and below ring travel, where the bore is as it was, if the bore's
// length is known and leaves room. Anvils are kept 2 mm along the bore and 5° round it clear of the edges of
// ports, and 2 mm of the ridge and of the ends of the bore: places that are not are left out. Each is best read twice or more, for
// the gauge's own scatter.
//
// One axis gives size alone; two give what most manuals call ovality, and miss one that lies
// between them; three give a two-lobed form exactly, if it is nothing else; five give a
// four-lobed one too. A three-point gauge needs one.
//
// Neither ring travel nor stroke is [units.ErrNotGiven], an impossible layout and a number of axes outside 1 to 36 are
// [units.ErrRange].
func (l Layout) ToRead(axes int, k Kind) ([]Reading, error) {
	if err := l.Validate(); err != nil {
		return nil, err
	}
	t := l.travel()
	if axes < 1 || axes > mostAxes {
		return nil, fmt.Errorf("bore: places to read along %d axes: want 1 to %d: %w", axes, mostAxes, units.ErrRange)
	}
	if !t.known() {
		return nil, fmt.Errorf("bore: places to read: ring travel, or the stroke: %w", units.ErrNotGiven)
	}
	travel := t.Bottom - t.Top
	reach := topReach(travel)
	depths := []units.Length{t.Top + min(max(reach/2, anvilMargin), reach), t.Top + travel/2, min(t.Bottom-travel/20, l.end()-anvilMargin)}
	if below := l.Length - t.Bottom; l.Length > 0 && below >= 2*anvilMargin && !t.Assumed {
		depths = append(depths, t.Bottom+below/2)
	}
	var plan []Reading
	for _, depth := range depths {
		for i := range axes {
			r := Reading{Depth: depth, Axis: Axis(units.Angle(i) * 180 * units.Degree / units.Angle(axes)).Fold()}
			if !slices.ContainsFunc(l.Ports, func(p Port) bool { return p.margin().takes(r, k) }) {
				plan = append(plan, r)
			}
		}
	}
	return plan, nil
}
