// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"errors"
	"fmt"
)

// ErrUnknownName: a text that is none of an enumeration's.
var ErrUnknownName = errors.New("unknown name")

func nameOf[E ~int8](e E, names []string) string {
	if e < 0 || int(e) >= len(names) {
		return fmt.Sprintf("%T(%d)", e, int8(e))
	}
	return names[e]
}

func marshalName[E ~int8](e E, names []string) ([]byte, error) {
	if e < 0 || int(e) >= len(names) {
		return nil, fmt.Errorf("oversize: %T(%d): %w", e, int8(e), ErrUnknownName)
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
	return fmt.Errorf("oversize: %.40q: %w (one of %q)", text, ErrUnknownName, names)
}
