// SPDX-License-Identifier: BSD-3-Clause

package material

import "borewright.example/units"

// Between returns what is known of the expansion of a part that is made of both: an iron sleeve
// held in an aluminium barrel grows with neither coefficient but somewhere between. The
// expansion is the middle of the two, spreads included, and Within reaches both ends. Nothing
// else of the part is known.
func Between(a, b Material) Material {
	least := min(a.Expansion-a.Within, b.Expansion-b.Within)
	most := max(a.Expansion+a.Within, b.Expansion+b.Within)
	return Material{
		Name:      a.Name + " in " + b.Name,
		Expansion: least + (most-least)/2,
		Within:    (most - least) / 2,
		From:      max(a.From, b.From), To: narrower(a.To, b.To),
		Source: "between its two materials",
	}
}

// narrower returns the smaller of two temperatures, of which zero is not given.
func narrower(a, b units.Temperature) units.Temperature {
	if a.IsZero() || !b.IsZero() && b < a {
		return b
	}
	return a
}
