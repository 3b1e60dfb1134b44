// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"math"

	"borewright.example/bore/internal/circle"
)

// circumscribed returns the smallest circle around all points.
func circumscribed(x, y []float64) ring {
	c := circle.Enclosing(x, y)
	_, _, in2, _ := span(x, y, c.X, c.Y)
	z := ring{x: c.X, y: c.Y, in: math.Sqrt(in2), out: c.R}
	for k, w := range c.Weights {
		if w > 0 {
			z.contacts[z.n] = Contact{Index: c.Contacts[k], Outer: true, Weight: w}
			z.n++
		}
	}
	return z
}
