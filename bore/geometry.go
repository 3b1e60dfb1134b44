// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Place is where a diameter was read, and the size there at 20 °C.
type Place struct {
	Depth units.Length `json:"depth,omitzero"`
	Axis  units.Angle  `json:"axis,omitzero"` // 0 up to 180°, from the thrust axis
	// Size is the mean of the repeats at 20 °C with its whole doubt.
	Size uncertainty.Estimate `json:"size,omitzero"`
	// Own is the same size with only the doubt that this place does not share with the others:
	// for differences, in which the setting of the gauge and the temperatures cancel.
	Own uncertainty.Estimate `json:"own,omitzero"`
}

// A TwoLobe is the least-squares D(θ) = Mean + Amplitude·cos 2(θ − Axis) through the diameters
// of a plane. It is exact for a purely two-lobed wall. The zero TwoLobe is none: fewer than
// three axes.
type TwoLobe struct {
	Mean      uncertainty.Estimate `json:"mean,omitzero"`
	Amplitude uncertainty.Estimate `json:"amplitude,omitzero"` // of the diameter: half of greatest minus least
	Axis      units.Angle          `json:"axis,omitzero"`      // of the greatest diameter, 0 up to 180°
}

// IsZero reports whether there is no fit.
func (t TwoLobe) IsZero() bool { return t == TwoLobe{} }

// Harmonic returns the fit as a harmonic of the wall, its amplitude radial: half of that of
// the diameter.
func (t TwoLobe) Harmonic() Harmonic {
	return Harmonic{Order: 2, Amplitude: t.Amplitude.Value / 2, Phase: t.Axis}
}

// A Plane is all that was read at one depth.
type Plane struct {
	Depth    units.Length         `json:"depth,omitzero"`
	Places   []Place              `json:"places,omitzero"` // by axis
	Largest  Place                `json:"largest,omitzero"`
	Smallest Place                `json:"smallest,omitzero"`
	Mean     uncertainty.Estimate `json:"mean,omitzero"` // of the places: of the bore's mean size only as far as the axes represent it
	// Ovality is the greatest minus the least diameter along the axes read: never more than the
	// true one but for the doubt. It is zero without doubt where HasOvality is false.
	Ovality    uncertainty.Estimate `json:"ovality,omitzero"`
	HasOvality bool                 `json:"has_ovality,omitzero"`
	TwoLobe    TwoLobe              `json:"two_lobe,omitzero"`
}

// A Taper is the difference of the sizes at the uppermost and the lowest plane along one axis.
type Taper struct {
	Axis units.Angle          `json:"axis,omitzero"`
	From units.Length         `json:"from"` // the two depths, From the smaller
	To   units.Length         `json:"to"`
	Size uncertainty.Estimate `json:"size,omitzero"` // at From minus at To: positive is larger at the deck
}

// A Geometry is what the readings of one bore say, at 20 °C, and what they cannot say.
type Geometry struct {
	Kind     Kind                 `json:"kind,omitzero"`
	Planes   []Plane              `json:"planes,omitzero"` // by depth
	Largest  Place                `json:"largest,omitzero"`
	Smallest Place                `json:"smallest,omitzero"`
	Mean     uncertainty.Estimate `json:"mean,omitzero"` // of all places
	// Ovality is the largest among the planes, at OvalityAt.
	Ovality    uncertainty.Estimate `json:"ovality,omitzero"`
	OvalityAt  units.Length         `json:"ovality_at,omitzero"`
	HasOvality bool                 `json:"has_ovality,omitzero"`
	// Tapers has one entry for each axis that was read at both the uppermost and the lowest
	// plane; Taper is the one largest in size, its sign kept.
	Tapers []Taper `json:"tapers,omitzero"`
	Taper  Taper   `json:"taper,omitzero"`
	// Spread is the greatest minus the least of all diameters, which some manuals call wear.
	Spread uncertainty.Estimate `json:"spread,omitzero"`
	Shape  Shape                `json:"shape,omitzero"`
	Unseen []Unseen             `json:"unseen,omitzero"`
	// Budget is the doubt of the largest size, component by component, in micrometres.
	Budget uncertainty.Budget `json:"budget,omitzero"`
}

// HasTaper reports whether any axis was read at two depths.
func (g Geometry) HasTaper() bool { return len(g.Tapers) > 0 }

// places returns every place, by depth and axis.
func (g Geometry) places() []Place {
	var all []Place
	for _, p := range g.Planes {
		all = append(all, p.Places...)
	}
	return all
}

// minus returns a − b of places of one bore: only what each has to itself takes part.
func (p Place) minus(b Place) uncertainty.Estimate { return difference(p.Own, b.Own) }
