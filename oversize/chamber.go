// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Chamber is the space above the piston of one cylinder at top dead centre, part by part.
// Only the parts that are a cylinder of the bore grow with it: the deck, and a gasket whose
// hole is bored with the cylinder.
type Chamber struct {
	Head       units.Volume `json:"head"`                 // of the head down to its face, spark plug or nozzle in place
	Crown      units.Volume `json:"crown,omitzero"`       // what stands above the rim of the piston's crown: positive for a dome, negative for a dish
	Deck       units.Length `json:"deck,omitzero"`        // from the rim up to the deck; negative where the rim stands out
	Gasket     units.Length `json:"gasket,omitzero"`      // thickness when tightened
	GasketHole units.Length `json:"gasket_hole,omitzero"` // its diameter; zero: bored with the cylinder

	// PortTop is the depth of the upper edge of a two-stroke's exhaust port below the deck, when
	// the compression that does work begins; zero in a four-stroke.
	PortTop units.Length `json:"port_top,omitzero"`
}

// volume returns the space above the piston at top dead centre in a bore of that diameter:
// Head − Crown + π/4·bore²·Deck + π/4·hole²·Gasket.
func (c Chamber) volume(bore units.Length) (units.Volume, error) {
	fixed, scaling, err := c.parts(bore)
	if err != nil {
		return 0, err
	}
	v := c.Head - c.Crown + fixed + scaling // (2)
	if !(v > 0) {
		return 0, fmt.Errorf("oversize: chamber of %v in all: %w", v, ErrNoSpace)
	}
	return v, nil
}

// parts returns the volume of deck and gasket: what does not change with the bore, and what does.
func (c Chamber) parts(bore units.Length) (fixed, scaling units.Volume, err error) {
	if err := checkSize("bore", bore); err != nil {
		return 0, 0, err
	}
	for _, v := range []units.Volume{c.Head, c.Crown} {
		if !(math.Abs(float64(v)) <= float64(units.CubicMetre)) {
			return 0, 0, fmt.Errorf("oversize: head or crown of %v: %w (up to %v)", v, units.ErrRange, units.Volume(units.CubicMetre))
		}
	}
	if c.Head < 0 {
		return 0, 0, fmt.Errorf("oversize: head of %v: %w (0 or more)", c.Head, units.ErrRange)
	}
	for _, l := range []struct {
		what      string
		value     units.Length
		least, up units.Length
	}{
		{"deck", c.Deck, -most, most}, {"gasket", c.Gasket, 0, most}, {"gasket hole", c.GasketHole, 0, units.MaxLength}, {"depth of the port", c.PortTop, 0, most},
	} {
		if l.value < l.least || l.value > l.up {
			return 0, 0, fmt.Errorf("oversize: %s %v: %w (%v to %v)", l.what, l.value, units.ErrRange, l.least, l.up)
		}
	}
	scaling = discVolume(bore, c.Deck)
	switch {
	case c.GasketHole == 0:
		scaling += discVolume(bore, c.Gasket)
	case c.GasketHole < bore:
		return 0, 0, fmt.Errorf("oversize: gasket hole %v smaller than the bore of %v: %w", c.GasketHole, bore, units.ErrRange)
	default:
		fixed = discVolume(c.GasketHole, c.Gasket)
	}
	return fixed, scaling, nil
}

// HeadFor returns the volume that the head must have for a wanted compression ratio, the
// other parts as they are: counted over the whole stroke, or from exhaust closing where
// PortTop is given. Errors are those of [Chamber.Compression] and [ClearanceVolume]; a head of
// zero or less is ErrNoSpace.
func (c Chamber) HeadFor(bore, stroke units.Length, ratio float64) (units.Volume, error) {
	c.Head = 0
	fixed, scaling, err := c.parts(bore)
	if err != nil {
		return 0, err
	}
	travel := stroke
	if c.PortTop != 0 {
		if travel, err = c.trapped(stroke); err != nil {
			return 0, err
		}
	}
	swept, err := Displacement(bore, travel, 1)
	if err != nil {
		return 0, err
	}
	whole, err := ClearanceVolume(swept, ratio)
	if err != nil {
		return 0, err
	}
	head := whole + c.Crown - fixed - scaling
	if !(head > 0) {
		return 0, fmt.Errorf("oversize: a ratio of %v would want a head of %v: %w", ratio, head, ErrNoSpace)
	}
	return head, nil
}

// trapped returns how far the piston still has to go when the exhaust port is closed.
func (c Chamber) trapped(stroke units.Length) (units.Length, error) {
	left := c.PortTop - c.Deck
	if left <= 0 || left > stroke {
		return 0, fmt.Errorf("oversize: exhaust port from %v below the deck leaves %v of a stroke of %v: %w", c.PortTop, left, stroke, units.ErrRange)
	}
	return left, nil
}

// A Compression is what a bore, a stroke and a chamber give.
type Compression struct {
	Swept     units.Volume `json:"swept"`              // of one cylinder
	Clearance units.Volume `json:"clearance,omitzero"` // above its piston at top dead centre
	Ratio     float64      `json:"ratio,omitzero"`     // over the whole stroke
	// FromPort is the ratio counted from exhaust closing, which a two-stroke really compresses
	// by; zero where PortTop is not given.
	FromPort float64 `json:"from_port,omitzero"`
}

// Compression returns the swept volume and the compression ratio in a bore and stroke, with the space above the piston
//
//	Head − Crown + π/4·bore²·Deck + π/4·hole²·Gasket
//
// Call it with the old bore and the new one to see what an overbore does.
//
// Parts that are not finite, or beyond a cubic metre, and lengths beyond a tenth of
// [units.MaxLength], a negative head, gasket or hole, and a hole smaller than the bore are
// [units.ErrRange]; a space of zero or less is ErrNoSpace.
// A port that the piston never closes or never opens is [units.ErrRange]; the other errors are those of [Displacement].
func (c Chamber) Compression(bore, stroke units.Length) (Compression, error) {
	var r Compression
	var err error
	if r.Swept, err = Displacement(bore, stroke, 1); err != nil {
		return Compression{}, err
	}
	if r.Clearance, err = c.volume(bore); err != nil {
		return Compression{}, err
	}
	if r.Ratio, err = Ratio(r.Swept, r.Clearance); err != nil {
		return Compression{}, err
	}
	if c.PortTop == 0 {
		return r, nil
	}
	left, err := c.trapped(stroke)
	if err != nil {
		return Compression{}, err
	}
	r.FromPort, err = Ratio(discVolume(bore, left), r.Clearance)
	if err != nil {
		return Compression{}, err
	}
	return r, nil
}

// PistonTravel returns how far below top dead centre the piston stands when the crank is turned by the angle,
// either way: r(1 − cos θ) + L − √(L² − r² sin² θ) with r half the stroke and L the rod between
// its eyes. It turns a port timing in degrees into the depth that [Chamber] wants, less the
// deck. A rod not longer than half the stroke is [units.ErrRange], an angle that is not finite
// [units.ErrNotFinite].
func PistonTravel(stroke, rod units.Length, crank units.Angle) (units.Length, error) {
	if err := checkSize("stroke", stroke); err != nil {
		return 0, err
	}
	if err := checkSize("rod", rod); err != nil {
		return 0, err
	}
	if rod <= stroke/2 {
		return 0, fmt.Errorf("oversize: rod of %v for a stroke of %v: %w (more than half of it)", rod, stroke, units.ErrRange)
	}
	a := float64(crank)
	if math.IsNaN(a) || math.IsInf(a, 0) {
		return 0, fmt.Errorf("oversize: crank angle %v: %w", a, units.ErrNotFinite)
	}
	r, l := float64(stroke)/2, float64(rod)
	sin, cos := math.Sincos(a)
	across := r * sin
	return units.Of(float64(r*(1-cos))+float64(across*across)/(l+math.Sqrt(float64(l*l)-float64(across*across))), units.Picometre)
}
