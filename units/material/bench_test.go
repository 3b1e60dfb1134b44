// SPDX-License-Identifier: BSD-3-Clause

package material_test

import (
	"testing"

	"borewright.example/units/material"
)

func BenchmarkSizeAt20(b *testing.B) {
	iron, warm := material.GreyIron(), celsius(b, 35)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := iron.SizeAt20(67*mm, warm); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkComparison(b *testing.B) {
	c := comparisons[1].c
	c.StandardAt, c.GaugeSetAt, c.GaugeUseAt, c.PartAt = celsius(b, 23), celsius(b, 23.5), celsius(b, 28), celsius(b, 31)
	b.Run("SizeAt20", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := c.SizeAt20(); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("Sensitivities", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := c.Sensitivities(); err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkByName(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := material.ByName("bronze"); err != nil {
			b.Fatal(err)
		}
	}
}
