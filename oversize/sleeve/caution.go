// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"iter"
	"strings"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

// A Caution is something that can hurt a person or spoil the work. [Caution.Text] is the warning
// in full, [Caution.Source] where it comes from.
//
// A caution never replaces the maker's instructions, local rules, or somebody who has done the
// work.
type Caution int8

// The cautions. The zero value warns of nothing.
const (
	NoCaution Caution = iota
	EvenHeat
	NothingTrapped
	HotParts
	NoFlame
	TemperLost
	ColdParts
	Ventilate
	StopsHalfWay
	PressGuard
	CoefficientRange
	JudgedAsBrittle
	CanComeLoose
)

const (
	commonPractice = "common practice"
	fromMemory     = "common practice, from memory"
)

var cautionRows = [...]enum.Row{
	NoCaution: {"none", "", ""},
	EvenHeat: {"even heat", "Heat the bare barrel slowly and right through in a closed oven, with a thermometer on the part. No " +
		"torch: it warps the casting, softens spots of it and heats nothing evenly.", commonPractice},
	NothingTrapped: {"nothing trapped", "Plugs, studs, seals and bearings out, every passage and blind hole open, washed and dried first: " +
		"trapped water or oil turns to vapour and bursts the part or throws scalding liquid.", commonPractice},
	HotParts: {"hot parts", "Heat-proof gloves, long sleeves, eye protection; a clear way from oven to bench and a dry stand to set the " +
		"part on; mark it hot until it is cold.", fromMemory},
	NoFlame: {"no flame", "No flame or spark near oil, solvent or their vapour; a part with oil on it smokes and can catch fire in " +
		"the oven.", fromMemory},
	TemperLost: {"temper lost", "A hardened and aged aluminium casting loses strength for good when it is too hot or hot for too long; " +
		"the maker's greatest temperature and time win over any figure here.", commonPractice},
	ColdParts: {"cold parts", "Dry ice and liquid gas burn skin and eyes and make metal brittle: dry insulated gloves, face shield, tongs; " +
		"keep the part dry, frost takes up the clearance.", fromMemory},
	Ventilate: {"ventilate", "Gas from dry ice or liquid nitrogen drives out the air and gives no warning: work in the open or with doors " +
		"wide open, never in a pit or a closed car; never seal it in a vessel, which bursts.", fromMemory},
	StopsHalfWay: {"stops half way", "Rehearse it, then push the sleeve home in one stroke and hold it down until it grips. A sleeve that " +
		"stops half way is pressed out and begun again; it is not hammered.", commonPractice},
	PressGuard: {"press guard", "Support the barrel square right round its seat, keep the press guarded and everyone clear of the line of " +
		"thrust: cast iron breaks without warning and flies.", commonPractice},
	CoefficientRange: {"coefficient range", "A temperature lies outside the range that a coefficient of expansion is the mean over (or, where " +
		"that is not known, outside 0 to 100 °C): metals grow more for each degree when hot and less when cold.", "the spread between handbooks of one steel: 11.5e-6/K over 20 to 100 °C, 13.5e-6/K over 25 to 200 °C (NIST Engineering Metrology Toolbox)"},
	JudgedAsBrittle: {"judged as brittle", "A part has no yield strength given and is judged by its tensile strength, which is right for grey iron " +
		"alone: a ductile metal gives way well below it.", commonPractice},
	CanComeLoose: {"can come loose", "The sleeve can be loose here. A loose sleeve turns, drops, leaks and seizes the piston: do not run it.", commonPractice},
}

// String returns a short name, "even heat"; "none" for no caution.
func (c Caution) String() string { return enum.Name(c, enum.Names(cautionRows[:])) }

// Text returns the warning in full, in a sentence or two; "" for a value that warns of nothing.
func (c Caution) Text() string { return enum.Sentence(c, cautionRows[:]) }

// Source returns where the warning comes from, or "" for a value that is no caution.
func (c Caution) Source() string { return enum.Source(c, cautionRows[:]) }

// MarshalText returns the text of [Caution.String]. A value that is none of the cautions is [units.ErrUnknownName].
func (c Caution) MarshalText() ([]byte, error) { return enum.Marshal(c, enum.Names(cautionRows[:])) }

// UnmarshalText reads the text of [Caution.String]; any other is [units.ErrUnknownName]. On error the receiver keeps
// its value.
func (c *Caution) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, enum.Names(cautionRows[:]))
}

// Cautions is a set of cautions, each in it once. The zero value is none.
type Cautions uint32

func setOf(cs ...Caution) Cautions {
	var s Cautions
	for _, c := range cs {
		s |= 1 << c
	}
	return s
}

// Has reports whether c is in the set. [NoCaution] and what is no caution never are.
func (s Cautions) Has(c Caution) bool {
	return c > NoCaution && c <= CanComeLoose && s&(1<<c) != 0
}

// All returns the cautions of the set, in the order of the constants.
func (s Cautions) All() iter.Seq[Caution] {
	return func(yield func(Caution) bool) {
		for c := EvenHeat; c <= CanComeLoose; c++ {
			if s.Has(c) && !yield(c) {
				return
			}
		}
	}
}

const cautionSeparator = "; "

// String returns the short names in order, "even heat; hot parts"; "" for none.
func (s Cautions) String() string {
	var b strings.Builder
	for c := range s.All() {
		if b.Len() > 0 {
			b.WriteString(cautionSeparator)
		}
		b.WriteString(cautionRows[c][0])
	}
	return b.String()
}

// MarshalText returns the text of [Cautions.String]. A set with a value that is no caution is
// [units.ErrUnknownName].
func (s Cautions) MarshalText() ([]byte, error) {
	if s&^(1<<(CanComeLoose+1)-2) != 0 {
		return nil, fmt.Errorf("sleeve: cautions %#x: %w", uint32(s), units.ErrUnknownName)
	}
	return []byte(s.String()), nil
}

// UnmarshalText reads the text of [Cautions.String] back, in any order; "" is none. Any other is
// [units.ErrUnknownName]. On error the receiver keeps its value.
func (s *Cautions) UnmarshalText(text []byte) error {
	var set Cautions
	for rest, more := string(text), len(text) > 0; more; {
		var name string
		name, rest, more = strings.Cut(rest, cautionSeparator)
		var c Caution
		if err := c.UnmarshalText([]byte(name)); err != nil {
			return err
		}
		if c == NoCaution {
			return fmt.Errorf("sleeve: cautions %.80q: %w", text, units.ErrUnknownName)
		}
		set |= setOf(c)
	}
	*s = set
	return nil
}
