// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"borewright.example/internal/enum"
)

// A Verdict is one of the three answers to whether a quantity lies within its limits. Its text
// is "undecided", "within" or "beyond".
type Verdict int8

// The three answers. The zero value is the safe one.
const (
	Undecided Verdict = iota // neither can be said at the risk asked for
	Within                   // inside the limits, or on one
	Beyond                   // outside
)

// An Edge is the end of a window that a finding turns on. Its text is "none", "lower" or
// "upper".
type Edge int8

// The ends of a window.
const (
	_ Edge = iota // none, or both alike
	Lower
	Upper
)

// A Kind is what a finding holds against the limits. Its text is "value", "difference",
// "greatest" or "range".
type Kind int8

// What is held against limits.
const (
	OneValue      Kind = iota // the measured value, by [Judge]
	OneDifference             // the absolute value of a signed difference, by [JudgeDifference]
	GreatestOf                // the greatest or least of N values, of which this one decides: Beyond at Reject/N
	RangeOf                   // the greatest less the least of several, by [JudgeRange]
)

func verdictNames() []string { return []string{"undecided", "within", "beyond"} }
func edgeNames() []string    { return []string{"none", "lower", "upper"} }
func kindNames() []string    { return []string{"value", "difference", "greatest", "range"} }

// String returns the name.
func (v Verdict) String() string { return enum.Name(v, verdictNames()) }

// MarshalText returns the name; a value without one is [units.ErrUnknownName].
func (v Verdict) MarshalText() ([]byte, error) { return enum.Marshal(v, verdictNames()) }

// UnmarshalText reads a name; any other text is [units.ErrUnknownName] and changes nothing.
func (v *Verdict) UnmarshalText(text []byte) error {
	return enum.Unmarshal(v, text, verdictNames())
}

// String returns the name.
func (e Edge) String() string { return enum.Name(e, edgeNames()) }

// MarshalText returns the name; a value without one is [units.ErrUnknownName].
func (e Edge) MarshalText() ([]byte, error) { return enum.Marshal(e, edgeNames()) }

// UnmarshalText reads a name; any other text is [units.ErrUnknownName] and changes nothing.
func (e *Edge) UnmarshalText(text []byte) error { return enum.Unmarshal(e, text, edgeNames()) }

// String returns the name.
func (k Kind) String() string { return enum.Name(k, kindNames()) }

// MarshalText returns the name; a value without one is [units.ErrUnknownName].
func (k Kind) MarshalText() ([]byte, error) { return enum.Marshal(k, kindNames()) }

// UnmarshalText reads a name; any other text is [units.ErrUnknownName] and changes nothing.
func (k *Kind) UnmarshalText(text []byte) error { return enum.Unmarshal(k, text, kindNames()) }
