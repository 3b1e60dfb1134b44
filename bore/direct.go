// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"borewright.example/units"
	"borewright.example/units/material"
)

// A DirectReading is an instrument that shows the diameter itself, such as an inside micrometer: it
// was set to nothing, so that there is no setting standard and no temperature of one.
type DirectReading struct {
	Kind          Kind         `json:"kind,omitzero"`          // how it touches the wall
	Resolution    units.Length `json:"resolution,omitzero"`    // smallest step that is read
	Repeatability units.Length `json:"repeatability,omitzero"` // standard deviation of one reading; zero: repeats give it
	// Std is the standard uncertainty of what it shows, from its certificate or a trial on a ring: all
	// readings share it, and it cancels in a difference. Error is what its scale may be off from one size
	// to another, a half-width, and does not.
	Std   units.Length `json:"std,omitzero"`
	Error units.Length `json:"error,omitzero"`

	Material material.Material `json:"material,omitzero"` // of the instrument, which is right at 20 °C and grows
	At       Temperature       `json:"at,omitzero"`       // of the instrument in use
	Part     material.Material `json:"part,omitzero"`     // of the cylinder
	PartAt   Temperature       `json:"part_at,omitzero"`  // of the cylinder while it was measured
}

// Gauge returns the instrument as a gauge for [Measure]: with s its reading, the size at 20 °C is
// s·(1 + αg·ΔTg)/(1 + αp·ΔTp).
func (d DirectReading) Gauge() Gauge {
	return Gauge{
		Kind: d.Kind, Resolution: d.Resolution, Repeatability: d.Repeatability, DialError: d.Error,
		Standard: Standard{Std: d.Std},
		Material: d.Material, UsedAt: d.At, Part: d.Part, PartAt: d.PartAt,
	}
}
