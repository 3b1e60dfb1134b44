// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"errors"
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Place is where a diameter was read, and the size there at 20 °C.
type Place struct {
	Depth units.Length `json:"depth,omitzero"` // from the deck
	Axis  Axis         `json:"axis,omitzero"`  // 0 up to 180°
	// Size is the mean of the repeats at 20 °C with its whole doubt.
	Size uncertainty.Estimate `json:"size,omitzero"`
	// Own is the same size with only the doubt that this place does not share with the others:
	// for differences, in which the setting of the gauge and the temperatures cancel.
	Own uncertainty.Estimate `json:"own,omitzero"`
}

// Minus returns the size of p less that of q, both measured with one setting of one gauge: only
// what each place has to itself takes part in the doubt.
func (p Place) Minus(q Place) uncertainty.Estimate { return difference(p.Own, q.Own) }

// Over returns by how much the place is larger than a nominal size, which is exact: its wear
// against nominal, with the whole doubt of the size.
func (p Place) Over(nominal units.Length) uncertainty.Estimate {
	e := p.Size
	e.Value = less(e.Value, nominal)
	return e
}

// A Plane is all that was read at one depth.
type Plane struct {
	Depth  units.Length `json:"depth,omitzero"`  // from the deck
	Places []Place      `json:"places,omitzero"` // by axis
	// Mean is that of the places: the bore's mean size only as far as the axes represent it. Of
	// its doubt, repeatability alone averages out over the places.
	Mean uncertainty.Estimate `json:"mean,omitzero"`
	// Ovality is the greatest minus the least diameter along the axes read, with the doubt of
	// those two. It is zero where HasOvality is false.
	//
	// Without doubt it could never be more than the true ovality. With it, scatter adds: on a
	// round bore the greatest less the least of n readings is on average 1.13 (n = 2), 1.69 (3),
	// 2.06 (4) or 2.53 (6) standard deviations of one. [Geometry.Judge] allows for that.
	Ovality    uncertainty.Estimate `json:"ovality,omitzero"`
	HasOvality bool                 `json:"has_ovality,omitzero"`
	TwoLobe    Lobes                `json:"two_lobe,omitzero"`
	FourLobe   Lobes                `json:"four_lobe,omitzero"`
}

// Largest returns the place with the largest size, of equals the first; the zero Place where
// there is none.
func (p Plane) Largest() Place { largest, _ := extremes(p.Places); return largest }

// Smallest returns the place with the smallest size, of equals the first; the zero Place where
// there is none.
func (p Plane) Smallest() Place { _, smallest := extremes(p.Places); return smallest }

// own returns the mean with what the places do not share with those of other planes.
func (p Plane) own() uncertainty.Estimate {
	e := each(p.Places)
	e.Value = p.Mean.Value
	return e
}

// A Taper is the difference of the sizes at two depths along one axis. It holds between those
// depths and says nothing of the wall above and below them.
type Taper struct {
	Axis Axis                 `json:"axis,omitzero"` // 0 up to 180°
	From units.Length         `json:"from"`          // the two depths, From the smaller
	To   units.Length         `json:"to"`
	Size uncertainty.Estimate `json:"size,omitzero"` // at From minus at To: positive is larger at the deck
	// Whole says that the readings along the axis reach near enough to both ends of ring travel for
	// this to be the taper of the bore: see [UnseenTop] and [UnseenBottom].
	Whole bool `json:"whole,omitzero"`
}

// choke returns the size at To minus that at From: positive where the bore is smaller at the
// deck. Some air-cooled barrels are made so when cold, to run straight when hot (US Army TM
// 9-2815-200-35 p. 6-55); one that is larger at the deck when cold is worn out.
func (t Taper) choke() uncertainty.Estimate {
	e := t.Size
	e.Value = less(0, e.Value)
	return e
}

// Per returns the taper over a length of the bore, with its sign: t.Per(100*units.Millimetre).
// A length below zero or beyond [units.MaxLength], a taper without length of its own, or one
// that would come out beyond [units.MaxLength], is [units.ErrRange].
func (t Taper) Per(length units.Length) (uncertainty.Estimate, error) {
	e := t.Size
	var err, err2 error
	e.Value, err = e.Value.MulDiv(int64(length), int64(t.To-t.From))
	e.Std, err2 = e.Std.MulDiv(int64(length), int64(t.To-t.From))
	if err = errors.Join(err, err2, e.Validate()); err != nil || length < 0 || length > units.MaxLength || t.To <= t.From {
		return uncertainty.Estimate{}, fmt.Errorf("bore: taper from %v to %v over a length of %v: %w", t.From, t.To, length, units.ErrRange)
	}
	return e, nil
}

// String returns the taper in words: "thrust: 0.085 mm larger at 10 mm than at 90 mm".
func (t Taper) String() string {
	e, word := t.Size, "larger"
	if e.Value < 0 {
		e, word = t.choke(), "smaller"
	}
	return t.Axis.String() + ": " + e.String() + " " + word + " at " + t.From.String() + " than at " + t.To.String()
}

// A Geometry is what the readings of one bore say, at 20 °C, and what they cannot say.
type Geometry struct {
	Kind   Kind    `json:"kind,omitzero"`   // of the gauge
	Planes []Plane `json:"planes,omitzero"` // by depth
	// Bridges are the planes at depths that ports cut: their sizes count, and take part in taper and
	// shape along the axes that have wall there; ovality and mean would be those of the bridges
	// between the ports and take no part.
	Bridges  []Plane              `json:"bridges,omitzero"`
	Largest  Place                `json:"largest,omitzero"`
	Smallest Place                `json:"smallest,omitzero"`
	Mean     uncertainty.Estimate `json:"mean,omitzero"` // of all places on planes; where there are none, on bridges
	// Ovality is the largest among the planes, at OvalityAt.
	Ovality    uncertainty.Estimate `json:"ovality,omitzero"`
	OvalityAt  units.Length         `json:"ovality_at,omitzero"`
	HasOvality bool                 `json:"has_ovality,omitzero"`
	// Travel is ring travel, and the depths read within it.
	Travel RingTravel `json:"travel,omitzero"`
	// Tapers has one entry for each axis that was read at two depths or more, within ring travel
	// where that is known: the uppermost against the lowest. Taper is the one largest in size, its
	// sign kept.
	Tapers []Taper `json:"tapers,omitzero"`
	Taper  Taper   `json:"taper,omitzero"`
	// Spread is the greatest minus the least of all diameters, which some manuals call wear.
	Spread uncertainty.Estimate `json:"spread,omitzero"`
	// Shape is how the size runs from the deck to the skirt, as far as it stands out of the doubt, in the words
	// of the trade: "straight within the doubt", "tapered", "bell-mouthed", "barrelled", "waisted", "irregular"
	// (barrelled and waisted at once) or "belly at the ports". It is that of the axes read near both ends of
	// ring travel where that is known, else of all, and then between the depths read alone. It is empty where no axis
	// was read at three depths, from end to end of ring travel; [Geometry.Unseen] says so.
	Shape string `json:"shape,omitzero"`
	// Ridge is the mean size, along the axes they share, of the uppermost plane within ring
	// travel minus that of the plane above it: the step that the top ring has left, on the
	// diameter. It is zero where ring travel is not known or no plane lies above it. HasRidge
	// says that it stands out of the doubt, at a chance of 5 %.
	Ridge    uncertainty.Estimate `json:"ridge,omitzero"`
	HasRidge bool                 `json:"has_ridge,omitzero"`
	Unseen   []Unseen             `json:"unseen,omitzero"`
	// Contradictions are places whose repeats scatter more than the gauge is said to, the worst first:
	// read them again before their scatter is taken for the gauge's, which widens every doubt.
	Contradictions []Contradiction `json:"contradictions,omitzero"`
	// Budget is the doubt of the largest size, component by component, in micrometres.
	Budget uncertainty.Budget `json:"budget,omitzero"`
}

// At returns the plane at a depth, bridges too, and whether there is one.
func (g Geometry) At(depth units.Length) (Plane, bool) {
	for _, planes := range [...][]Plane{g.Planes, g.Bridges} {
		for _, p := range planes {
			if p.Depth == depth {
				return p, true
			}
		}
	}
	return Plane{}, false
}

// places returns every place: those on planes by depth and axis, then those on bridges.
func (g Geometry) places() []Place {
	n := 0
	for _, planes := range [...][]Plane{g.Planes, g.Bridges} {
		for _, p := range planes {
			n += len(p.Places)
		}
	}
	all := make([]Place, 0, n)
	for _, planes := range [...][]Plane{g.Planes, g.Bridges} {
		for _, p := range planes {
			all = append(all, p.Places...)
		}
	}
	return all
}
