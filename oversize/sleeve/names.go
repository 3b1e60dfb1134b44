// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"borewright.example/internal/enum"
)

var (
	basisNames    = [...]string{NoBasis: "not known", ByYield: "yield", ByTensile: "tensile"}
	positionNames = [...]string{NoPosition: "", HoleH: "H", ShaftF: "f", ShaftG: "g", ShaftH: "h", ShaftK: "k", ShaftM: "m", ShaftN: "n", ShaftP: "p", ShaftR: "r", ShaftS: "s"}
	gradeNames    = [...]string{0: "", IT5: "IT5", IT6: "IT6", IT7: "IT7", IT8: "IT8", IT9: "IT9", IT10: "IT10", IT11: "IT11"}
)

// String returns "yield", "tensile" or "not known".
func (b Basis) String() string { return enum.Name(b, basisNames[:]) }

// MarshalText returns the text of [Basis.String]; a value that is none of the three is [units.ErrUnknownName].
func (b Basis) MarshalText() ([]byte, error) { return enum.Marshal(b, basisNames[:]) }

// UnmarshalText reads the text of [Basis.String]; any other is [units.ErrUnknownName]. On error the receiver
// keeps its value.
func (b *Basis) UnmarshalText(text []byte) error { return enum.Unmarshal(b, text, basisNames[:]) }

// String returns the letter, "H" for the hole and "f" to "s" for shafts; "" for NoPosition.
func (p Position) String() string { return enum.Name(p, positionNames[:]) }

// MarshalText returns the text of [Position.String]; a value that is none of them is [units.ErrUnknownName].
func (p Position) MarshalText() ([]byte, error) { return enum.Marshal(p, positionNames[:]) }

// UnmarshalText reads the text of [Position.String]; any other is [units.ErrUnknownName]. On error the receiver
// keeps its value.
func (p *Position) UnmarshalText(text []byte) error { return enum.Unmarshal(p, text, positionNames[:]) }

// String returns "IT5" to "IT11"; "" for the zero Grade.
func (g Grade) String() string { return enum.Name(g, gradeNames[:]) }

// MarshalText returns the text of [Grade.String]; a value that is none of them is [units.ErrUnknownName].
func (g Grade) MarshalText() ([]byte, error) { return enum.Marshal(g, gradeNames[:]) }

// UnmarshalText reads the text of [Grade.String]; any other is [units.ErrUnknownName]. On error the receiver
// keeps its value.
func (g *Grade) UnmarshalText(text []byte) error { return enum.Unmarshal(g, text, gradeNames[:]) }
