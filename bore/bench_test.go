// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"fmt"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/material"
)

// shopGauge is a gauge with a doubt of every kind.
func shopGauge() bore.Gauge {
	within := func(c, half float64) bore.Temperature {
		t, err := units.Celsius(c)
		if err != nil {
			panic(err)
		}
		return bore.Temperature{Value: t, Within: units.TemperatureChange(half)}
	}
	return bore.Gauge{
		Dial: bore.PlusIsSmaller, Resolution: 2 * units.Micrometre,
		Standard: bore.Standard{Size: 67 * units.Millimetre, Std: units.Micrometre, Material: material.GaugeSteel(), At: within(24, 1)},
		Material: material.PlainSteel(), SetAt: within(24, 1), UsedAt: within(25, 1),
		Part: material.GreyIron(), PartAt: within(26, 1),
		DialError: 2 * units.Micrometre, Drift: units.Micrometre, PlaceSpread: 0.3 * units.Kelvin,
	}
}

// wornReadings are of an invented bore, so many axes at so many depths, each twice.
func wornReadings(axes, depths int) []bore.Reading {
	var rs []bore.Reading
	for d := range depths {
		for a := range axes {
			r := bore.Reading{
				Depth:    units.Length(10+80*d/max(depths-1, 1)) * units.Millimetre,
				Axis:     bore.Axis(units.Angle(180*a/axes) * units.Degree),
				Diameter: 67*units.Millimetre + units.Length((depths-d)*20+10*(a%2))*units.Micrometre,
			}
			rs = append(rs, r)
			r.Diameter += 2 * units.Micrometre
			rs = append(rs, r)
		}
	}
	return rs
}

var everyLimit = bore.Limits{
	New:     units.Limits{Min: 67 * units.Millimetre, Max: 67*units.Millimetre + 19*units.Micrometre},
	Service: units.Limits{Max: 67*units.Millimetre + 150*units.Micrometre},
	Ovality: 50 * units.Micrometre, Taper: 50 * units.Micrometre, Spread: 150 * units.Micrometre, TrueOvality: 50 * units.Micrometre,
}

func BenchmarkMeasure(b *testing.B) {
	for _, size := range []struct{ axes, depths int }{{2, 3}, {4, 5}, {12, 20}, {360, 1}} {
		b.Run(fmt.Sprintf("%dx%d", size.axes, size.depths), func(b *testing.B) {
			rs, g := wornReadings(size.axes, size.depths), shopGauge()
			b.ReportAllocs()
			for b.Loop() {
				if _, err := bore.Analyse(rs, g); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// From readings to findings, the whole way of a job: one reading a place with a known
// repeatability, and two with none, where Student's t takes its time.
func BenchmarkFindings(b *testing.B) {
	limits := everyLimit
	limits.TrueOvality = 0
	twice, known := wornReadings(4, 5), shopGauge()
	known.Repeatability = 2 * units.Micrometre
	var once []bore.Reading
	for i := 0; i < len(twice); i += 2 {
		once = append(once, twice[i])
	}
	for _, c := range []struct {
		name   string
		rs     []bore.Reading
		g      bore.Gauge
		limits bore.Limits
		bores  int
	}{
		{"4x5", once, known, limits, 1},
		{"4x5/bores=1000", once, known, limits, 1000},
		{"4x5/repeats", twice, shopGauge(), limits, 1},
		{"4x5/repeats/wall", twice, shopGauge(), everyLimit, 1},
	} {
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				for range c.bores {
					geo, err := bore.Analyse(c.rs, c.g)
					if err != nil {
						b.Fatal(err)
					}
					if fs, err := geo.Judge(c.limits, noRisk); err != nil || len(fs) < 5 {
						b.Fatal(fs, err)
					}
				}
			}
		})
	}
}

func BenchmarkCleanUp(b *testing.B) {
	geo, err := bore.Analyse(wornReadings(4, 5), shopGauge())
	if err != nil {
		b.Fatal(err)
	}
	b.Run("diameters", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := geo.CleanUp(bore.Wear{UnwornAt: 90 * units.Millimetre}); err != nil {
				b.Fatal(err)
			}
		}
	})
	for _, n := range []int{36, 3600} {
		points := make([]bore.Point, n)
		for i := range points {
			points[i] = bore.Point{Angle: units.Angle(i) * 360 * units.Degree / units.Angle(n), Radius: 33_500*units.Micrometre + units.Length(i*7919%n)*100*units.Micrometre/units.Length(n)}
		}
		b.Run(fmt.Sprintf("points=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := bore.CleanUpRadial(points, 0, bore.Allowances{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkCompare(b *testing.B) {
	geo, err := bore.Analyse(wornReadings(4, 5), shopGauge())
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := bore.Compare(geo, geo); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkReadCSV(b *testing.B) {
	text := "depth (mm),axis,diameter (mm)\n" + strings.Repeat("10,thrust,67.105\n10,pin,67.070\n", 20)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := bore.ReadCSV(strings.NewReader(text), bore.Gauge{}); err != nil {
			b.Fatal(err)
		}
	}
}
