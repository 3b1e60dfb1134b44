// SPDX-License-Identifier: BSD-3-Clause

package lobes

import "math"

// factor replaces the lower triangle of a, row by row, by L of a = L·Lᵀ (Cholesky). It reports false where
// a pivot is not above floor.
func factor(a []float64, n int, floor float64) bool {
	for r := range n {
		row := a[r*n : r*n+n]
		for c := range r + 1 {
			s, other := row[c], a[c*n:c*n+c+1]
			for k := range c {
				s -= float64(row[k] * other[k])
			}
			if c < r {
				row[c] = s / other[c]
				continue
			}
			if !(s > floor) {
				return false
			}
			row[r] = math.Sqrt(s)
		}
	}
	return true
}

// solve replaces x by the solution of L·Lᵀ·y = x.
func solve(l, x []float64) {
	n := len(x)
	for r := range n {
		row := l[r*n : r*n+n]
		s := x[r]
		for k := range r {
			s -= float64(row[k] * x[k])
		}
		x[r] = s / row[r]
	}
	for r := n - 1; r >= 0; r-- {
		s := x[r]
		for k := r + 1; k < n; k++ {
			s -= float64(l[k*n+r] * x[k])
		}
		x[r] = s / l[r*n+r]
	}
}
