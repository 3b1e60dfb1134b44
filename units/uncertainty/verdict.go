// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import "fmt"

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
	NoEdge Edge = iota // none, or both alike
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
	GreatestOf                // the greatest or least of several values, by [JudgeGreatest]
	RangeOf                   // the greatest less the least of several, by [JudgeRange]
)

func verdictNames() []string { return []string{"undecided", "within", "beyond"} }
func edgeNames() []string    { return []string{"none", "lower", "upper"} }
func kindNames() []string    { return []string{"value", "difference", "greatest", "range"} }

// String returns the text of the verdict; a value that is none of the three is "Verdict(n)".
func (v Verdict) String() string { return nameOf(v, "Verdict", verdictNames()) }

// MarshalText returns the text of [Verdict.String]; a value that is none of the three is ErrText.
func (v Verdict) MarshalText() ([]byte, error) { return marshalName(v, "verdict", verdictNames()) }

// UnmarshalText reads the text of [Verdict.String]; another text is ErrText and leaves the
// receiver as it was.
func (v *Verdict) UnmarshalText(text []byte) error {
	return unmarshalName(v, text, "verdict", verdictNames())
}

// String returns the text of the edge; a value that is none of the three is "Edge(n)".
func (e Edge) String() string { return nameOf(e, "Edge", edgeNames()) }

// MarshalText returns the text of [Edge.String]; a value that is none of the three is ErrText.
func (e Edge) MarshalText() ([]byte, error) { return marshalName(e, "edge", edgeNames()) }

// UnmarshalText reads the text of [Edge.String]; another text is ErrText and leaves the
// receiver as it was.
func (e *Edge) UnmarshalText(text []byte) error { return unmarshalName(e, text, "edge", edgeNames()) }

// String returns the text of the kind; a value that is none of the four is "Kind(n)".
func (k Kind) String() string { return nameOf(k, "Kind", kindNames()) }

// MarshalText returns the text of [Kind.String]; a value that is none of the four is ErrText.
func (k Kind) MarshalText() ([]byte, error) { return marshalName(k, "kind", kindNames()) }

// UnmarshalText reads the text of [Kind.String]; another text is ErrText and leaves the
// receiver as it was.
func (k *Kind) UnmarshalText(text []byte) error { return unmarshalName(k, text, "kind", kindNames()) }

func nameOf[T ~int8](v T, kind string, names []string) string {
	if v < 0 || int(v) >= len(names) {
		return fmt.Sprintf("%s(%d)", kind, int8(v))
	}
	return names[v]
}

func marshalName[T ~int8](v T, kind string, names []string) ([]byte, error) {
	if v < 0 || int(v) >= len(names) {
		return nil, fmt.Errorf("uncertainty: %s %d: %w (one of %q)", kind, int8(v), ErrText, names)
	}
	return []byte(names[v]), nil
}

func unmarshalName[T ~int8](v *T, text []byte, kind string, names []string) error {
	for i, n := range names {
		if n == string(text) {
			*v = T(i)
			return nil
		}
	}
	return fmt.Errorf("uncertainty: %s %.40q: %w (one of %q)", kind, text, ErrText, names)
}
