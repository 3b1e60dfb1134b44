// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import "fmt"

var (
	basisNames    = [...]string{NoBasis: "not known", ByYield: "yield", ByTensile: "tensile"}
	positionNames = [...]string{NoPosition: "", HoleH: "H", ShaftF: "f", ShaftG: "g", ShaftH: "h", ShaftK: "k", ShaftM: "m", ShaftN: "n", ShaftP: "p", ShaftR: "r", ShaftS: "s"}
	gradeNames    = [...]string{0: "", IT5: "IT5", IT6: "IT6", IT7: "IT7", IT8: "IT8", IT9: "IT9", IT10: "IT10", IT11: "IT11"}
)

// String returns "yield", "tensile" or "not known".
func (b Basis) String() string { return nameOf(b, basisNames[:]) }

// MarshalText returns the text of [Basis.String]; a value that is none of the three is ErrText.
func (b Basis) MarshalText() ([]byte, error) { return marshalName(b, basisNames[:]) }

// UnmarshalText reads the text of [Basis.String]; any other is ErrText. On error the receiver
// keeps its value.
func (b *Basis) UnmarshalText(text []byte) error { return unmarshalName(b, text, basisNames[:]) }

// String returns the letter, "H" for the hole and "f" to "s" for shafts; "" for NoPosition.
func (p Position) String() string { return nameOf(p, positionNames[:]) }

// MarshalText returns the text of [Position.String]; a value that is none of them is ErrText.
func (p Position) MarshalText() ([]byte, error) { return marshalName(p, positionNames[:]) }

// UnmarshalText reads the text of [Position.String]; any other is ErrText. On error the receiver
// keeps its value.
func (p *Position) UnmarshalText(text []byte) error { return unmarshalName(p, text, positionNames[:]) }

// String returns "IT5" to "IT11"; "" for the zero Grade.
func (g Grade) String() string { return nameOf(g, gradeNames[:]) }

// MarshalText returns the text of [Grade.String]; a value that is none of them is ErrText.
func (g Grade) MarshalText() ([]byte, error) { return marshalName(g, gradeNames[:]) }

// UnmarshalText reads the text of [Grade.String]; any other is ErrText. On error the receiver
// keeps its value.
func (g *Grade) UnmarshalText(text []byte) error { return unmarshalName(g, text, gradeNames[:]) }

// named reports whether e has a name: below IT5 there are gaps.
func named[E ~int8](e E, names []string) bool {
	return e >= 0 && int(e) < len(names) && (names[e] != "" || e == 0)
}

func nameOf[E ~int8](e E, names []string) string {
	if !named(e, names) {
		return fmt.Sprintf("%T(%d)", e, int8(e))
	}
	return names[e]
}

func marshalName[E ~int8](e E, names []string) ([]byte, error) {
	if !named(e, names) {
		return nil, fmt.Errorf("sleeve: %T(%d): %w", e, int8(e), ErrText)
	}
	return []byte(names[e]), nil
}

func unmarshalName[E ~int8](e *E, text []byte, names []string) error {
	for i, n := range names {
		if n == string(text) {
			*e = E(i)
			return nil
		}
	}
	return fmt.Errorf("sleeve: %T %.80q: %w", *e, text, ErrText)
}
