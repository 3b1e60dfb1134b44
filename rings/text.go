// SPDX-License-Identifier: BSD-3-Clause

package rings

import "fmt"

// String returns "undecided", "as is", "file" or "too wide".
func (a Action) String() string { return name(a, "undecided", "as is", "file", "too wide") }

// MarshalText returns the text of [Action.String]; a value that is none of the four is ErrText.
func (a Action) MarshalText() ([]byte, error) {
	return marshal(a, "undecided", "as is", "file", "too wide")
}

// UnmarshalText reads the text of [Action.String]; any other is ErrText. On error the receiver
// keeps its value.
func (a *Action) UnmarshalText(text []byte) error {
	return unmarshal(a, text, "undecided", "as is", "file", "too wide")
}

func name[T ~int8](v T, names ...string) string {
	if v < 0 || int(v) >= len(names) {
		return fmt.Sprintf("%T(%d)", v, int8(v))
	}
	return names[v]
}

func marshal[T ~int8](v T, names ...string) ([]byte, error) {
	if v < 0 || int(v) >= len(names) {
		return nil, fmt.Errorf("rings: %T(%d): %w", v, int8(v), ErrText)
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
	return fmt.Errorf("rings: %.80q: %w", text, ErrText)
}
