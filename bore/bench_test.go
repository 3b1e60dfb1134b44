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
				Axis:     units.Angle(180*a/axes) * units.Degree,
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

func findings(b *testing.B, rs []bore.Reading, g bore.Gauge) {
	geo, err := bore.Measure(rs, g)
	if err != nil {
		b.Fatal(err)
	}
	if fs, err := geo.Judge(everyLimit, noRisk); err != nil || len(fs) != 6 {
		b.Fatal(fs, err)
	}
}

func BenchmarkMeasure(b *testing.B) {
	for _, size := range []struct{ axes, depths int }{{2, 3}, {4, 5}, {12, 20}, {360, 1}} {
		b.Run(fmt.Sprintf("%dx%d", size.axes, size.depths), func(b *testing.B) {
			rs, g := wornReadings(size.axes, size.depths), shopGauge()
			b.ReportAllocs()
			for b.Loop() {
				if _, err := bore.Measure(rs, g); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// From readings to findings, the whole way of a job.
func BenchmarkFindings(b *testing.B) {
	for _, bores := range []int{1, 1000} {
		b.Run(fmt.Sprintf("4x5/bores=%d", bores), func(b *testing.B) {
			rs, g := wornReadings(4, 5), shopGauge()
			b.ReportAllocs()
			for b.Loop() {
				for range bores {
					findings(b, rs, g)
				}
			}
		})
	}
}

func BenchmarkReadCSV(b *testing.B) {
	text := "depth (mm),axis,diameter (mm)\n" + strings.Repeat("10,thrust,67.105\n10,pin,67.070\n", 20)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := (bore.CSV{}).Read(strings.NewReader(text)); err != nil {
			b.Fatal(err)
		}
	}
}
