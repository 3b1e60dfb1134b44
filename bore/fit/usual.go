// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

// A Duty is what a piston is made of and how its engine is cooled, as rules of thumb sort them.
type Duty int8

// Duties. The zero Duty is not said and has no rule.
const (
	DutyNotSaid  Duty = iota
	CastWater         // cast aluminium, water-cooled four-stroke
	CastAir           // cast aluminium, air-cooled four-stroke
	ForgedWater       // forged aluminium, water-cooled four-stroke
	ForgedAir         // forged aluminium, air-cooled four-stroke
	TwoStrokeAir      // air-cooled two-stroke
)

var dutyNames = [...]string{
	"", "cast, water-cooled", "cast, air-cooled", "forged, water-cooled", "forged, air-cooled", "two-stroke, air-cooled",
}

// String returns the duty in words, "cast, air-cooled", or "" where it was not said.
func (d Duty) String() string { return enum.Name(d, dutyNames[:]) }

// MarshalText returns the text of [Duty.String].
func (d Duty) MarshalText() ([]byte, error) { return enum.Marshal(d, dutyNames[:]) }

// UnmarshalText reads the text of [Duty.String]. Anything else is [units.ErrUnknownName], and the
// receiver keeps its value.
func (d *Duty) UnmarshalText(text []byte) error {
	return enum.Unmarshal(d, text, dutyNames[:])
}

// perBore is the clearance a unit of bore, in millionths, from and to.
var perBore = [...][2]int64{
	CastWater:    {500, 1000},
	CastAir:      {1000, 1500},
	ForgedWater:  {1000, 2000}, // cast, and 500 to 1000 more
	ForgedAir:    {1500, 2500},
	TwoStrokeAir: {1000, 1500},
}

// Usual returns the diametral clearance that rules of thumb give a piston of that duty in a bore, at 20 °C:
// common practice, the whole width in which the rules differ.
//
//	cast, water-cooled        0.0005 to 0.0010 of the bore
//	cast, air-cooled          0.0010 to 0.0015
//	forged, water-cooled      0.0010 to 0.0020
//	forged, air-cooled        0.0015 to 0.0025
//	two-stroke, air-cooled    0.0010 to 0.0015
//
// The piston supplier's figure comes first, the engine maker's second; these rules only say
// whether a figure is unusual. A manual for a water-cooled engine with cast pistons prints
// 0.0009 to 0.0011 (US Army TM 9-2320-289-34, Table 3-1), one with 4.25 in liners 0.0011 to 0.0020
// and up to 0.0028 worn (US Army TM 9-2815-202-34); small cast pistons run at 0.00025 (common practice).
//
// A duty without a rule, and a bore that is not positive or beyond [units.MaxLength], are
// [units.ErrRange].
func Usual(d Duty, bore units.Length) (units.Limits, error) {
	if d <= DutyNotSaid || int(d) >= len(perBore) {
		return units.Limits{}, fmt.Errorf("fit: usual clearance of duty %q: %w", d, units.ErrRange)
	}
	if bore <= 0 || bore > units.MaxLength {
		return units.Limits{}, fmt.Errorf("fit: bore %v: %w (above 0, up to %v)", bore, units.ErrRange, units.MaxLength)
	}
	least, err := bore.MulDiv(perBore[d][0], 1e6)
	if err != nil {
		return units.Limits{}, err
	}
	greatest, err := bore.MulDiv(perBore[d][1], 1e6)
	return units.Limits{Min: least, Max: greatest}, err
}
