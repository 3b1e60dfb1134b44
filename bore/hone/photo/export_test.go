// SPDX-License-Identifier: BSD-3-Clause

package photo

// SquareSums are the sums of a plane of w by h over the squares up to reach away, a row after the other.
func SquareSums(plane []float32, w, h, reach int) []float64 {
	var out []float64
	s := newSquare(plane, w, h, reach)
	for range h {
		out = append(out, s.next()...)
	}
	return out
}
