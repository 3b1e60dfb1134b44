// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"borewright.example/units"
	"github.com/shopspring/decimal"
)

// These benchmarks set a Length beside the same work in strconv, float64 and decimal: 256 sizes from 60 to 100 mm in
// steps of 0.1 µm, each as text with and without its unit. The aims:
//
//	parse          at most 1.5 × strconv.ParseFloat of the same digits, no allocation
//	add, compare   as int64
//	text           at most 1.5 × strconv.FormatFloat, one allocation
//	sum of 256     100 × faster than decimal's
type sample struct {
	text, digits []string
	lengths      []units.Length
	floats       []float64
	ints         []int64
	decimals     []decimal.Decimal
}

const many = 256 // a power of two

func samples(b *testing.B) sample {
	var s sample
	for i := range many {
		l := 60*units.Millimetre + units.Length(i*7919%400_000)*100*units.Nanometre
		text := l.Format(units.Millimetre, 4)
		digits := strings.TrimSuffix(text, " mm")
		x, err := strconv.ParseFloat(digits, 64)
		if err != nil {
			b.Fatal(err)
		}
		s.text, s.digits = append(s.text, text), append(s.digits, digits)
		s.lengths, s.floats, s.ints = append(s.lengths, l), append(s.floats, x), append(s.ints, int64(l))
		s.decimals = append(s.decimals, decimal.RequireFromString(digits))
	}
	return s
}

func BenchmarkParse(b *testing.B) {
	s := samples(b)
	run(b, "Length", func(i int) error { _, err := units.ParseLength(s.text[i]); return err })
	run(b, "strconv", func(i int) error { _, err := strconv.ParseFloat(s.digits[i], 64); return err })
	run(b, "decimal", func(i int) error { _, err := decimal.NewFromString(s.digits[i]); return err })
	run(b, "Length fraction", func(int) error { _, err := units.ParseLength("2-41/64 in"); return err })
	run(b, "Limits", func(int) error { _, err := units.ParseLimits("72.000 to 72.020 mm"); return err })
	run(b, "Frequency", func(int) error { _, err := units.ParseFrequency("136.82 rev/min"); return err })
	run(b, "Temperature", func(int) error { _, err := units.ParseTemperature("31.5 °C"); return err })
	run(b, "Angle", func(int) error { _, err := units.ParseAngle("44°30'15\""); return err })
	run(b, "refusal", func(int) error {
		if _, err := units.ParseLength("67,02 mm"); err == nil {
			return units.ErrSyntax
		}
		return nil
	})
}

// run times f over the indices of the samples.
func run(b *testing.B, name string, f func(i int) error) {
	b.Run(name, func(b *testing.B) {
		b.ReportAllocs()
		i := 0
		for b.Loop() {
			if err := f(i % many); err != nil {
				b.Fatal(err)
			}
			i++
		}
	})
}

func BenchmarkText(b *testing.B) {
	s := samples(b)
	run(b, "Length mm, 4 places", func(i int) error { _ = s.lengths[i].Format(units.Millimetre, 4); return nil })
	run(b, "Length in, 4 places", func(i int) error { _ = s.lengths[i].Format(units.Inch, 4); return nil })
	run(b, "Length shortest", func(i int) error { _ = s.lengths[i].String(); return nil })
	run(b, "strconv, 4 places", func(i int) error { _ = strconv.FormatFloat(s.floats[i], 'f', 4, 64); return nil })
	run(b, "strconv shortest", func(i int) error { _ = strconv.FormatFloat(s.floats[i], 'f', -1, 64); return nil })
	run(b, "decimal, 4 places", func(i int) error { _ = s.decimals[i].StringFixed(4); return nil })
	run(b, "Speed", func(i int) error { _, err := units.Speed(s.floats[i]).MarshalText(); return err })
	run(b, "fraction", func(i int) error { _, _, err := s.lengths[i].FormatFraction(64); return err })
}

// Additions and comparisons are timed 256 at once, or the loop would be all there is to see.
func BenchmarkAdd(b *testing.B) {
	s := samples(b)
	b.Run("Length", func(b *testing.B) {
		for b.Loop() {
			add(s.lengths, units.Thou)
		}
	})
	b.Run("int64", func(b *testing.B) {
		for b.Loop() {
			add(s.ints, 25_400_000)
		}
	})
	b.Run("float64", func(b *testing.B) {
		for b.Loop() {
			add(s.floats, 0.0254)
		}
	})
	b.Run("decimal", func(b *testing.B) {
		thou, into := decimal.RequireFromString("0.0254"), make([]decimal.Decimal, many)
		b.ReportAllocs()
		for b.Loop() {
			for i, d := range s.decimals {
				into[i] = d.Add(thou)
			}
		}
	})
}

func add[T units.Length | int64 | float64](xs []T, by T) {
	for i := range xs {
		xs[i] += by
	}
}

func BenchmarkLargest(b *testing.B) {
	s := samples(b)
	b.Run("Length", func(b *testing.B) {
		for b.Loop() {
			largest(s.lengths)
		}
	})
	b.Run("int64", func(b *testing.B) {
		for b.Loop() {
			largest(s.ints)
		}
	})
	b.Run("float64", func(b *testing.B) {
		for b.Loop() {
			largest(s.floats)
		}
	})
	b.Run("slices.Max", func(b *testing.B) {
		for b.Loop() {
			_ = slices.Max(s.lengths)
		}
	})
	b.Run("decimal", func(b *testing.B) {
		for b.Loop() {
			_ = slices.MaxFunc(s.decimals, decimal.Decimal.Cmp)
		}
	})
}

//go:noinline
func largest[T units.Length | int64 | float64](xs []T) T {
	m := xs[0]
	for _, x := range xs {
		if x > m {
			m = x
		}
	}
	return m
}

func BenchmarkSum256(b *testing.B) {
	s := samples(b)
	b.Run("Length mean", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := units.Mean(s.lengths...); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("float64", func(b *testing.B) {
		for b.Loop() {
			total := 0.0
			for _, x := range s.floats {
				total += x
			}
			if total == 0 {
				b.Fatal(total)
			}
		}
	})
	b.Run("decimal Add", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			total := decimal.Zero
			for _, d := range s.decimals {
				total = total.Add(d)
			}
		}
	})
	b.Run("decimal Sum", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			decimal.Sum(decimal.Zero, s.decimals...)
		}
	})
}

func BenchmarkConvert(b *testing.B) {
	s := samples(b)
	per := decimal.RequireFromString("25.4")
	run(b, "Length In", func(i int) error { return positive(s.lengths[i].In(units.Inch)) })
	run(b, "float64", func(i int) error { return positive(s.floats[i] / 25.4) })
	run(b, "Length Of", func(i int) error { _, err := units.Of(s.floats[i], units.Millimetre); return err })
	run(b, "Length MulDiv", func(i int) error { _, err := s.lengths[i].MulDiv(10, 254); return err })
	run(b, "Length Decimal", func(i int) error { _ = s.lengths[i].Decimal(units.Inch); return nil })
	run(b, "decimal", func(i int) error { _ = s.decimals[i].DivRound(per, 16); return nil })
	run(b, "Round", func(i int) error { _ = s.lengths[i].Round(units.Tenth); return nil })
}

func positive(x float64) error {
	if x <= 0 {
		return fmt.Errorf("%v", x)
	}
	return nil
}
