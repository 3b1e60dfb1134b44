// SPDX-License-Identifier: BSD-3-Clause

package bore

import "borewright.example/units"

// A Harmonic is one order of the form of a bore's wall: the radius at angle θ departs from the
// mean by Amplitude·cos(Order·(θ − Phase)).
//
// The amplitude is radial. An ovality (greatest minus least diameter) of 0.03 mm is order 2
// with a radial amplitude of a quarter of it, 0.0075 mm.
type Harmonic struct {
	Order     int          `json:"order"`          // lobes once round
	Amplitude units.Length `json:"amplitude"`      // radial, at least 0
	Phase     units.Angle  `json:"phase,omitzero"` // of a crest, from the thrust axis
}
