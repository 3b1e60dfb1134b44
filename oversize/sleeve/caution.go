// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/units"
)

// A caution is something that can hurt a person or spoil the work. The zero value warns of nothing.
type caution int8

const (
	_ caution = iota
	evenHeat
	nothingTrapped
	hotParts
	noFlame
	temperLost
	coldParts
	ventilate
	stopsHalfWay
	coefficientRange
	judgedAsBrittle
	canComeLoose
)

// The cautions that a call by itself asks for; the others come with a result, in [Cautions].
const (
	CautionEvenHeat = "Heat the bare barrel slowly and right through in a closed oven, with a thermometer on the part. No " +
		"torch: it warps the casting, softens spots of it and heats nothing evenly."
	CautionHotParts = "Heat-proof gloves, long sleeves, eye protection; a clear way from oven to bench and a dry stand to set the " +
		"part on; mark it hot until it is cold."
	CautionPress = "Support the barrel square right round its seat, keep the press guarded and everyone clear of the line of " +
		"thrust: cast iron breaks without warning and flies."
)

// A cautionRow is what a caution is called for short and what it warns of.
type cautionRow struct{ name, text string }

// cautionRows have a short name and the warning in full: all common practice, but where a source stands beside one.
var cautionRows = [...]cautionRow{
	evenHeat: {"even heat", CautionEvenHeat},
	nothingTrapped: {"nothing trapped", "Plugs, studs, seals and bearings out, every passage and blind hole open, washed and dried first: " +
		"trapped water or oil turns to vapour and bursts the part or throws scalding liquid."},
	hotParts: {"hot parts", CautionHotParts}, // from memory
	noFlame: {"no flame", "No flame or spark near oil, solvent or their vapour; a part with oil on it smokes and can catch fire in " +
		"the oven."}, // from memory
	temperLost: {"temper lost", "A hardened and aged aluminium casting loses strength for good when it is too hot or hot for too long; " +
		"the maker's greatest temperature and time win over any figure here."},
	coldParts: {"cold parts", "Dry ice and liquid gas burn skin and eyes and make metal brittle: dry insulated gloves, face shield, tongs; " +
		"keep the part dry, frost takes up the clearance."}, // from memory
	ventilate: {"ventilate", "Gas from dry ice or liquid nitrogen drives out the air and gives no warning: work in the open or with doors " +
		"wide open, never in a pit or a closed car; never seal it in a vessel, which bursts."}, // from memory
	stopsHalfWay: {"stops half way", "Rehearse it, then push the sleeve home in one stroke and hold it down until it grips. A sleeve that " +
		"stops half way is pressed out and begun again; it is not hammered."},
	// The spread between handbooks of one steel: 11.5e-6/K over 20 to 100 °C, 13.5e-6/K over 25 to 200 °C (NIST Engineering
	// Metrology Toolbox).
	coefficientRange: {"coefficient range", "A temperature lies outside the range that a coefficient of expansion is the mean over (or, where " +
		"that is not known, outside 0 to 100 °C): metals grow more for each degree when hot and less when cold."},
	judgedAsBrittle: {"judged as brittle", "A part has no yield strength given and is judged by its tensile strength, which is right for grey iron " +
		"alone: a ductile metal gives way well below it."},
	canComeLoose: {"can come loose", "The sleeve can be loose here. A loose sleeve turns, drops, leaks and seizes the piston: do not run it."},
}

// Cautions is a set of cautions, each in it once. The zero value is none.
type Cautions uint32

func setOf(cs ...caution) Cautions {
	var s Cautions
	for _, c := range cs {
		s |= 1 << c
	}
	return s
}

// Texts returns the warnings of the set in full, a sentence or two each.
//
// A caution never replaces the maker's instructions, local rules, or somebody who has done the work.
func (s Cautions) Texts() []string {
	var texts []string
	for _, row := range s.rows() {
		texts = append(texts, row.text)
	}
	return texts
}

// rows returns the rows of the set, in order.
func (s Cautions) rows() (rows []cautionRow) {
	for c := evenHeat; c <= canComeLoose; c++ {
		if s&(1<<c) != 0 {
			rows = append(rows, cautionRows[c])
		}
	}
	return rows
}

const cautionSeparator = "; "

// MarshalText returns the short names in order, "even heat; hot parts". A set with a value that is no caution is
// [units.ErrUnknownName].
func (s Cautions) MarshalText() ([]byte, error) {
	const all = Cautions(1<<(canComeLoose+1) - 1<<evenHeat)
	if s&^all != 0 {
		return nil, fmt.Errorf("sleeve: cautions %b: %w", uint32(s), units.ErrUnknownName)
	}
	var names []string
	for _, row := range s.rows() {
		names = append(names, row.name)
	}
	return []byte(strings.Join(names, cautionSeparator)), nil
}

// UnmarshalText reads the text of [Cautions.MarshalText] back, in any order; "" is none. Any other is
// [units.ErrUnknownName]. On error the receiver keeps its value.
func (s *Cautions) UnmarshalText(text []byte) error {
	var set Cautions
	rest := string(text)
	for more := rest != ""; more; {
		var name string
		name, rest, more = strings.Cut(rest, cautionSeparator)
		c := slices.IndexFunc(cautionRows[:], func(row cautionRow) bool { return row.name == name })
		if c < int(evenHeat) { // none, or the row without a name
			return fmt.Errorf("sleeve: cautions %.80q: %w", text, units.ErrUnknownName)
		}
		set |= setOf(caution(c))
	}
	*s = set
	return nil
}
