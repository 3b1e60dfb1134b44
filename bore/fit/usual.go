// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"

	"borewright.example/internal/enum"
	"borewright.example/internal/given"
	"borewright.example/units"
)

// A Duty is what a piston is made of and how its engine is cooled, as rules of thumb sort them.
type Duty int8

// Duties. The zero Duty is not given and has no rule.
const (
	_            Duty = iota // not given
	CastWater                // cast aluminium, water-cooled four-stroke
	CastAir                  // cast aluminium, air-cooled four-stroke
	ForgedWater              // forged aluminium, water-cooled four-stroke
	ForgedAir                // forged aluminium, air-cooled four-stroke
	TwoStrokeAir             // air-cooled two-stroke
)

var dutyNames = [...]string{
	"", "cast, water-cooled", "cast, air-cooled", "forged, water-cooled", "forged, air-cooled", "two-stroke, air-cooled",
}

// String returns the duty in words, "cast, air-cooled", or "" where it is not given.
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
// A duty that is not given and a bore of zero are [units.ErrNotGiven]; a duty without a rule, and a bore below zero or
// beyond [units.MaxLength], are [units.ErrRange].
func Usual(d Duty, bore units.Length) (units.Limits, error) {
	if d == 0 {
		return units.Limits{}, fmt.Errorf("fit: usual clearance: duty: %w", units.ErrNotGiven)
	}
	if d < 0 || int(d) >= len(perBore) {
		return units.Limits{}, fmt.Errorf("fit: usual clearance of duty %q: %w", d, units.ErrRange)
	}
	if bore <= 0 || bore > units.MaxLength {
		return units.Limits{}, fmt.Errorf("fit: bore %v: %w (above 0, up to %v)", bore, given.Err(bore), units.MaxLength)
	}
	least, err := bore.MulDiv(perBore[d][0], 1e6)
	if err != nil {
		return units.Limits{}, err
	}
	greatest, err := bore.MulDiv(perBore[d][1], 1e6)
	return units.Limits{Min: least, Max: greatest}, err
}

// UsualClearance returns where both ends of a window of piston clearance usually lie, whatever the
// duty: 0.0002 to 0.0040 of the bore, diametral at 20 °C. It catches slips, a point moved by a
// place or millimetres for inches, and is narrower than a factor of ten about what is printed: in US
// Army manuals 0.025 to 0.045 mm on some 90 mm (TM 10-3930-653-14&P), 0.0035 to 0.0045 in on 3.979 in (TM
// 9-2320-289-34, Table 3-1) and 0.0045 to 0.0083 in on 4.25 in (TM 9-2815-202-34); else the rules of [Usual].
// What lies outside wants a second look and is not wrong: coated pistons are now and then fitted at
// 0.00013 of the bore (common practice). Where the duty is known, [Usual] is narrower.
//
// A bore below 1 mm counts as 1 mm, one beyond [units.MaxLength] as that.
func UsualClearance(bore units.Length) units.Limits {
	bore = min(max(bore, units.Millimetre), units.MaxLength)
	return units.Limits{Min: bore * 2 / 10_000, Max: bore * 40 / 10_000}
}

// UsualWornClearance returns where the greatest clearance that a worn bore may have usually lies:
// 0.0006 to 0.0080 of the bore, as [UsualClearance] (US Army TM 9-2815-202-34: 0.0120 in on 4.25 in).
func UsualWornClearance(bore units.Length) units.Limits {
	bore = min(max(bore, units.Millimetre), units.MaxLength)
	return units.Limits{Min: bore * 6 / 10_000, Max: bore * 80 / 10_000}
}
