// SPDX-License-Identifier: BSD-3-Clause

package study_test

import (
	"math/rand/v2"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty/study"
)

func BenchmarkAnalyse(b *testing.B) {
	rng := rand.New(rand.NewPCG(1, 1))
	for name, drop := range map[string]int{"10x3x3": 0, "10x3x3 unbalanced": 6} {
		b.Run(name, func(b *testing.B) {
			plan := make([][]int, 10)
			for i := range plan {
				plan[i] = []int{3, 3, 3}
			}
			all := readings(plan, func(i, j, k int) units.Length { return units.Length(1e6*rng.NormFloat64() + 5e6*float64(i)) })
			all = all[drop:]
			b.ReportAllocs()
			for b.Loop() {
				if _, err := study.Analyse(all); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkInterval(b *testing.B) {
	plan := [][]int{{3, 3, 3}, {3, 3, 3}, {3, 3, 3}, {3, 3, 3}}
	s, err := study.Analyse(readings(plan, func(i, j, k int) units.Length { return units.Length(5e6*i + 1e6*j*(k%2) + 3e5*k) }))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Reproducibility.Interval(); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRisks(b *testing.B) {
	p := study.Process{Mean: 67 * units.Millimetre, Std: 5 * units.Micrometre}
	w := units.Limits{Min: 67*units.Millimetre - 10*units.Micrometre, Max: 67*units.Millimetre + 10*units.Micrometre}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Risks(units.Micrometre, w, w); err != nil {
			b.Fatal(err)
		}
	}
}
