// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
)

// Any bytes give readings that Analyse takes, or one of the errors that are documented.
func FuzzReadCSV(f *testing.F) {
	for _, s := range []string{
		"depth (mm),axis,diameter (mm)\n10,thrust,67.105\n10,pin,67.07\n", // as documented
		"\ufeffdepth,axis,deviation,confirmed\n10 mm,45°,-12 µm,yes\n",    // mark, deviations
		"depth/in,axis rad,diameter [thou]\n\"1-3/8\",0.5,2640.6\n",       // every way to write a unit
		"# comment\n\n,,\n", // nothing
		"depth (mm),axis,diameter (mm)\n10,pin,67.10499999999999999\n",         // a binary tail
		"depth (mm),axis,diameter (mm)\n1e3,pin,67\n,thrust,\n10,pin,67,67\n",  // wrong rows
		"depth (mm),axis,diameter (mm)\n10,99999999°,67\n-1,pin,-67\n",         // impossible readings
		"depth (mm),axis,diameter (mm)\n9999999999999999999999,pin,67\n",       // out of range
		"depth (),axis (),diameter ()\n0,0,0\n",                                // no units
		"depth (mm)\x00,axis,diameter (mm)\r\n\xff,pin,67\r\n\"10\nmm\",pin,6", // no text at all
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		g := bore.Gauge{Standard: bore.Standard{Size: 67 * mm}, Dial: bore.PlusIsLarger}
		rs, err := bore.ReadCSV(strings.NewReader(s), g)
		if err != nil {
			if rs != nil {
				t.Fatalf("readings beside %v", err)
			}
			known := []error{
				bore.ErrCSV, bore.ErrNoReadings, bore.ErrReading, units.ErrSyntax, units.ErrMissingUnit,
				units.ErrUnknownUnit, units.ErrRange,
			}
			for _, k := range known {
				if errors.Is(err, k) {
					return
				}
			}
			t.Fatal(err)
		}
		if _, err := bore.Analyse(rs, bore.Gauge{}); err != nil && !errors.Is(err, bore.ErrSlippedDigit) {
			t.Fatalf("%v: %v", rs, err)
		}
	})
}

// Any text is a temperature that writes and reads back to the same text, or an error.
func FuzzParseTemperature(f *testing.F) {
	for _, s := range []string{"31 °C", "31 ± 1 °C", "15 to 25 °C", "59 to 77 °F", "20 +/- 0.5 K", "-5 to 5 °C", " to ", "° ± °", "1e9 °C", "31 °C ± 2 °F"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		a, err := bore.ParseTemperature(s)
		if err != nil {
			return
		}
		b, err := bore.ParseTemperature(a.String())
		if err != nil || b.String() != a.String() {
			t.Fatalf("%q is %v, read back as %v, %v", s, a, b, err)
		}
	})
}

func FuzzAxis(f *testing.F) {
	for _, s := range []string{"thrust", "pin", "45°", "-30 deg", "0.5 rad", "0", "Thrust", "NaN°", "1e400°"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		var a, b, same bore.Axis
		if a.UnmarshalText([]byte(s)) != nil {
			return
		}
		if err := b.UnmarshalText([]byte(a.String())); err != nil || axisApart(units.Angle(a), units.Angle(b), 180) > 0.06 {
			t.Fatalf("%q is %v, read back as %v, %v", s, a, b, err)
		}
		text, err := a.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		if err := same.UnmarshalText(text); err != nil || math.Abs(float64(same-a)) > 1e-11*math.Abs(float64(a)) {
			t.Fatalf("%q is %v, as %s read back as %v, %v", s, a, text, same, err)
		}
	})
}
