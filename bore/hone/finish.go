// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"borewright.example/units"
)

// A Finish is the roughness that a source asks of a bore, or finds in it.
type Finish struct {
	Of        string       `json:"of"`        // the surface
	Roughness units.Limits `json:"roughness"` // as printed, both ends
	Measure   string       `json:"measure"`   // "Ra"; "rms", which reads the same surface higher; "Rz"; empty where the source does not say
	Source    string       `json:"source"`    // a manual or handbook, or "common practice"
}

// Finishes returns roughness as sources print it: bands, and no limits of any engine. No public source was
// found that gives Rk, Rpk and Rvk by the facing of the rings. A trade page prints one plateau, and no
// band: Rpk 0.25, Rk 1.12, Rvk 1.83 µm.
func Finishes() []Finish {
	const um, microinch = units.Micrometre, units.Microinch
	return []Finish{
		{"liners, from the first honing to the finished wall", units.Limits{Min: 65 * um / 100, Max: 4 * um}, "Ra", "US Army TM 5-3895-382-24, liner hone specifications"},
		{"bores honed with 180 to 220 grit", units.Limits{Min: 18 * microinch, Max: 38 * microinch}, "", makers},
		{"bores from one maker's production, the unit taken for microinches", units.Limits{Min: 15 * microinch, Max: 38 * microinch}, "Ra", makers + ", another"},
		{"honed surfaces, most common range", units.Limits{Min: 3 * microinch, Max: 50 * microinch}, "rms", "Machinery's Handbook, 31st ed., p. 1338"},
		{"bare aluminium-silicon bores after the silicon is laid open by lapping, no work for stones", units.Limits{Min: 1 * um, Max: 3 * um}, "Rz", makers + ", a third"},
	}
}
