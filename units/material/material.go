// SPDX-License-Identifier: BSD-3-Clause

// Package material has the properties of workshop materials and the sizes of parts that are
// not at 20 °C.
package material

import "borewright.example/units"

// A Material is what the sums need to know of a metal. A user's own is one struct literal;
// the maker's figure always outranks the typical ones of this package.
type Material struct {
	Name      string
	Expansion units.Expansion // mean, near room temperature
	Within    units.Expansion // half-width of the spread of Expansion
}
