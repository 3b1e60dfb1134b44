// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"cmp"
	"math"
	"slices"
)

// hull returns the corners of the convex hull of the points, anticlockwise, as indices; those on
// its sides are left out. Of equal points one is taken.
func hull(x, y []float64) []int {
	order := make([]int, len(x))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(x[a], x[b]), cmp.Compare(y[a], y[b]), cmp.Compare(a, b))
	})
	turn := func(a, b, c int) float64 { return cross(x[b]-x[a], y[b]-y[a], x[c]-x[a], y[c]-y[a]) }
	h := make([]int, 0, len(x)+1)
	for pass := range 2 {
		base := len(h)
		for _, p := range order {
			for len(h)-base >= 2 && turn(h[len(h)-2], h[len(h)-1], p) <= 0 {
				h = h[:len(h)-1]
			}
			h = append(h, p)
		}
		h = h[:len(h)-1]
		if pass == 0 {
			slices.Reverse(order)
		}
	}
	return h
}

// stripWidth returns the width of the narrowest straight strip that holds all points.
func stripWidth(x, y []float64) float64 {
	h := hull(x, y)
	if len(h) < 3 {
		return 0
	}
	width := math.Inf(1)
	for i, p := range h {
		q := h[(i+1)%len(h)]
		ex, ey := x[q]-x[p], y[q]-y[p]
		most := 0.0
		for _, o := range h {
			most = max(most, cross(ex, ey, x[o]-x[p], y[o]-y[p]))
		}
		width = min(width, most/norm(ex, ey))
	}
	return width
}
