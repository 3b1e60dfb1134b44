// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import "fmt"

// A Verdict is one of the three answers to whether a quantity lies within its limits.
type Verdict int8

// The zero value is the safe one.
const (
	Undecided Verdict = iota // neither can be said at the risk asked for
	Within
	Beyond
)

// An Edge is the end of a window that a finding turns on.
type Edge int8

// The ends of a window.
const (
	NoEdge Edge = iota
	Lower
	Upper
)

var errText = fmt.Errorf("unknown text")

func (v Verdict) String() string { return name(v, "undecided", "within", "beyond") }

// MarshalText returns the text of [Verdict.String]; a value that is none of the three is an error.
func (v Verdict) MarshalText() ([]byte, error) { return marshal(v, "undecided", "within", "beyond") }

// UnmarshalText reads the text of [Verdict.String]. On error the receiver keeps its value.
func (v *Verdict) UnmarshalText(text []byte) error {
	return unmarshal(v, text, "undecided", "within", "beyond")
}

func (e Edge) String() string { return name(e, "none", "lower", "upper") }

// MarshalText returns the text of [Edge.String]; a value that is none of the three is an error.
func (e Edge) MarshalText() ([]byte, error) { return marshal(e, "none", "lower", "upper") }

// UnmarshalText reads the text of [Edge.String]. On error the receiver keeps its value.
func (e *Edge) UnmarshalText(text []byte) error {
	return unmarshal(e, text, "none", "lower", "upper")
}

func name[T ~int8](v T, names ...string) string {
	if v < 0 || int(v) >= len(names) {
		return fmt.Sprintf("%T(%d)", v, int8(v))
	}
	return names[v]
}

func marshal[T ~int8](v T, names ...string) ([]byte, error) {
	if v < 0 || int(v) >= len(names) {
		return nil, fmt.Errorf("uncertainty: %T(%d): %w", v, int8(v), errText)
	}
	return []byte(names[v]), nil
}

func unmarshal[T ~int8](v *T, text []byte, names ...string) error {
	for i, n := range names {
		if n == string(text) {
			*v = T(i)
			return nil
		}
	}
	return fmt.Errorf("uncertainty: %q: %w", text, errText)
}
