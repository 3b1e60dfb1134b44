// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/form"
)

func BenchmarkCylinder(b *testing.B) {
	for _, kind := range []form.Reference{form.LSCY, form.MZCY, form.MCCY, form.MICY} {
		for _, size := range []struct{ levels, around int }{{3, 8}, {10, 24}, {20, 100}, {50, 400}} {
			n := size.levels * size.around
			w := wallOf(b, boreWall(rand.New(rand.NewPCG(uint64(n), 2)), size.levels, size.around, 33.5, 80, 0.004))
			b.Run(fmt.Sprintf("%v/%d", kind, n), func(b *testing.B) {
				b.ReportAllocs()
				var space form.Workspace
				for b.Loop() {
					if _, err := space.Cylinder(kind, w); err != nil {
						b.Fatal(err)
					}
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/point")
			})
		}
	}
}
