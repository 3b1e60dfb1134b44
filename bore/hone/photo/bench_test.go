// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"fmt"
	"math"
	"testing"
)

func BenchmarkCrosshatch(b *testing.B) {
	for _, megapixels := range []float64{0.25, 1, 9} {
		w := math.Ceil(math.Sqrt(megapixels*1e6*4/3)) + 0.5
		s := draw(crosshatched, 7, w, w)
		shot := s.shot()
		b.Run(fmt.Sprintf("megapixels=%v", megapixels), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := shot.Crosshatch(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
