// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/hone/photo"
)

// The sums over squares, cut off by the edges of the picture, number by number.
func TestSquareSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, h := rapid.IntRange(1, 12).Draw(t, "w"), rapid.IntRange(1, 12).Draw(t, "h")
		reach := rapid.IntRange(0, 15).Draw(t, "reach")
		plane := rapid.SliceOfN(rapid.Map(rapid.IntRange(0, 255), func(v int) float32 { return float32(v) }), w*h, w*h).Draw(t, "plane")
		got := photo.SquareSums(plane, w, h, reach)
		for i := range plane {
			want := 0.0
			for j, v := range plane {
				if dx, dy := i%w-j%w, i/w-j/w; max(dx, -dx, dy, -dy) <= reach {
					want += float64(v)
				}
			}
			if got[i] != want {
				t.Fatalf("at %d of %d by %d: %v, want %v", i, w, h, got[i], want)
			}
		}
	})
}
