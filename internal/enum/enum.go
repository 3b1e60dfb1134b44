// SPDX-License-Identifier: BSD-3-Clause

// Package enum gives the enumerations of this module their text, both ways, written once.
package enum

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/units"
)

// named reports whether v has a name. An empty one counts for zero alone, which is often
// "not given".
func named[E ~int8](v E, names []string) bool {
	return v >= 0 && int(v) < len(names) && (v == 0 || names[v] != "")
}

// Name returns the name of v, or "pkg.Type(7)" where it has none.
func Name[E ~int8](v E, names []string) string {
	if !named(v, names) {
		return fmt.Sprintf("%T(%d)", v, int8(v))
	}
	return names[v]
}

// Marshal returns the name of v as text. A value that has none is [units.ErrUnknownName].
func Marshal[E ~int8](v E, names []string) ([]byte, error) {
	if !named(v, names) {
		return nil, fmt.Errorf("%s(%d): %w", typeOf(v), int8(v), units.ErrUnknownName)
	}
	return []byte(names[v]), nil
}

// Unmarshal sets *v to the value whose name is text. Any other text is
// [units.ErrUnknownName], and *v keeps its value.
func Unmarshal[E ~int8](v *E, text []byte, names []string) error {
	for i, name := range names {
		if name == string(text) {
			*v = E(i)
			return nil
		}
	}
	return &NameError{Type: typeOf(*v), Text: string(text), Names: slices.DeleteFunc(slices.Clone(names), func(s string) bool { return s == "" })}
}

// A NameError is a text that names no value. It matches [units.ErrUnknownName].
type NameError struct {
	Type  string   // "pkg: Type"
	Text  string   // that was read
	Names []string // that there are
}

// Error names the text and what was allowed.
func (e *NameError) Error() string {
	return fmt.Sprintf("%s %.40q: %v (one of %q)", e.Type, e.Text, units.ErrUnknownName, e.Names)
}

// Unwrap returns [units.ErrUnknownName].
func (e *NameError) Unwrap() error { return units.ErrUnknownName }

// typeOf returns "pkg: Type", the way errors of this module begin.
func typeOf(v any) string { return strings.Replace(fmt.Sprintf("%T", v), ".", ": ", 1) }
