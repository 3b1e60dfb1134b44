// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"slices"

	"borewright.example/units"
)

// A bore is read in millimetres, its limits stand in a manual in inches; both meet on one grid, and nothing is lost.
func Example() {
	reading, err := units.ParseLength("67.027 mm")
	if err != nil {
		fmt.Println(err)
		return
	}
	limits, err := units.ParseLimits("2.6378 to 2.6386 in")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("reading:", reading.Format(units.Inch, 5))
	fmt.Println("limits: ", limits)
	fmt.Println("over by:", (reading-limits.Max).Format(units.Micrometre, 1))
	// Output:
	// reading: 2.63886 in
	// limits:  67.00012 mm to 67.02044 mm
	// over by: 6.6 µm
}

// 25.4 is exact and 0.03937 is not: what a rounded factor costs on the way to inches and back.
func Example_whyNot003937() {
	bore := units.MustParseLength("87.5 mm")
	// 0.03937 in for a millimetre, as old tables have it: 87.5 × 0.03937 = 3.444875.
	back := units.MustParseLength("3.444875 in")
	fmt.Println("by 0.03937:", back, "off by", (bore-back).Format(units.Nanometre, 0))
	// Divided by 25.4, to as many places as you like, and back to the nearest.
	back, err := units.ParseLength(bore.Format(units.Inch, 12))
	fmt.Println("by 25.4:   ", back, errors.Is(err, units.ErrInexact))
	// Output:
	// by 0.03937: 87.499825 mm off by 175 nm
	// by 25.4:    87.5 mm true
}

// Mistakes that no type can catch.
func Example_mistakes() {
	x := 67.02
	truncated := units.Length(x * units.PerMillimetre) // on a variable
	rounded, err := units.Of(x, units.Millimetre)
	fmt.Println(truncated, rounded, err)

	//lint:ignore SA4025 the mistake is the point
	divided := 41 / 64 * units.Inch // Go divides 41 by 64 first
	fmt.Println(divided, 41*units.Inch/64)

	fmt.Println(10*units.Thou == 250*units.Micrometre, 10*units.Thou) // 0.010 in is no quarter of a millimetre
	// Output:
	// 67.019999999 mm 67.02 mm <nil>
	// 0 mm 16.271875 mm
	// false 0.254 mm
}

func ExampleLength() {
	const bore = units.Length(2.640625 * units.PerInch) // exact, or it would not compile
	const overBore = 20 * units.Thou
	fmt.Println(bore, bore+overBore)
	fmt.Println("whole thou:", int64(bore/units.Thou), "of", bore.In(units.Thou))

	readings := []units.Length{bore + 30*units.Micrometre, bore, bore + units.Tenth}
	slices.Sort(readings)
	fmt.Println("spread:", readings[2]-readings[0])
	// Output:
	// 67.071875 mm 67.579875 mm
	// whole thou: 2640 of 2640.625
	// spread: 0.03 mm
}

func ExampleParseLength() {
	for _, s := range []string{"67.071875 mm", "2-41/64 in", "2.640625 in", "2640.625 thou", `2 41/64"`} {
		l, err := units.ParseLength(s)
		fmt.Println(l, err)
	}
	for _, s := range []string{"67.02", "67,02 mm", "2-65/64 in", "2.5 mil", "1e3 mm"} {
		_, err := units.ParseLength(s)
		fmt.Println(err)
	}
	// Output:
	// 67.071875 mm <nil>
	// 67.071875 mm <nil>
	// 67.071875 mm <nil>
	// 67.071875 mm <nil>
	// 67.071875 mm <nil>
	// units: length "67.02": missing unit at byte 5 (a bare number has no unit: write 67.02 mm or 67.02 in)
	// units: length "67,02 mm": not a quantity at byte 2 (write a decimal point, and nothing between thousands)
	// units: length "2-65/64 in": not a quantity at byte 4 (a mixed number is written as 2-41/64, the fraction below 1)
	// units: length "2.5 mil": unknown unit at byte 4 (mil is said for a thousandth of an inch and for a millimetre: write thou or mm)
	// units: length "1e3 mm": not a quantity at byte 1 (write the number without an exponent)
}

// Some spreadsheets store 67.105 as a binary fraction and print its tail. The nearest length comes with the error, for a
// caller who knows where the text is from.
func ExampleParseLength_inexact() {
	l, err := units.ParseLength("67.10499999999999 mm")
	if errors.Is(err, units.ErrInexact) {
		fmt.Println("taken for", l)
	}
	// Output: taken for 67.105 mm
}

func ExampleMustParseLength() {
	stone := units.MustParseLength("1-3/4 in")
	fmt.Println(stone)
	// Output: 44.45 mm
}

func ExampleParseError() {
	const text = "67,02 mm"
	_, err := units.ParseLength(text)
	var e *units.ParseError
	if errors.As(err, &e) {
		fmt.Printf("%s\n%*s %s\n", text, e.Pos+1, "^", e.Mend)
	}
	// Output:
	// 67,02 mm
	//   ^ write a decimal point, and nothing between thousands
}

func ExampleOf() {
	l, err := units.Of(2.7/3, units.Inch) // 0.9 in, but for the last bit
	fmt.Println(l, err)
	_, err = units.Of(67_020_000, units.Millimetre)
	fmt.Println(err)
	// Output:
	// 22.86 mm <nil>
	// units: length of 6.702e+07 × 1 mm: out of range (±10000 mm)
}

func ExampleLength_Decimal() {
	l := units.MustParseLength("2-41/64 in")
	fmt.Println(l.Decimal(units.Inch), l.Decimal(units.Millimetre))
	fmt.Println(units.Millimetre.Decimal(units.Inch)) // never ends: 16 places of it
	// Output:
	// 2.640625 67.071875
	// 0.0393700787401575
}

func ExampleLength_Format() {
	l := units.MustParseLength("67.071875 mm")
	fmt.Println(l.Format(units.Millimetre, 3))
	fmt.Println(l.Format(units.Inch, 4))
	fmt.Println((l - 67*units.Millimetre).Format(units.Micrometre, 1))
	// Output:
	// 67.072 mm
	// 2.6406 in
	// 71.9 µm
}

// To the nearest fraction of the rule, and what the fraction leaves out.
func ExampleLength_FormatFraction() {
	for _, den := range []int{64, 32, 16, 8} {
		text, rest, err := units.MustParseLength("67 mm").FormatFraction(den)
		fmt.Println(text, rest, err)
	}
	_, _, err := units.Inch.FormatFraction(3)
	fmt.Println(err)
	// Output:
	// 2-41/64 in -0.071875 mm <nil>
	// 2-5/8 in 0.325 mm <nil>
	// 2-5/8 in 0.325 mm <nil>
	// 2-5/8 in 0.325 mm <nil>
	// units: fraction of an inch with denominator 3: not a whole number of picometres
}

func ExampleLength_Round() {
	const step = 10 * units.Micrometre
	fmt.Println("              Round     Floor      Ceil")
	for _, s := range []string{"67.044 mm", "67.045 mm", "67.055 mm", "67.056 mm"} {
		l := units.MustParseLength(s)
		fmt.Printf("%s: %9s %9s %9s\n", s, l.Round(step), l.Floor(step), l.Ceil(step))
	}
	// Output:
	//               Round     Floor      Ceil
	// 67.044 mm:  67.04 mm  67.04 mm  67.05 mm
	// 67.045 mm:  67.05 mm  67.04 mm  67.05 mm
	// 67.055 mm:  67.06 mm  67.05 mm  67.06 mm
	// 67.056 mm:  67.06 mm  67.05 mm  67.06 mm
}

func ExampleLength_MulDiv() {
	bore := units.MustParseLength("67 mm")
	gap, err := bore.MulDiv(4, 1000) // four thousandths of the bore
	fmt.Println(gap, err)
	// Output: 0.268 mm <nil>
}

// JSON, XML, flags, logs and templates all go by the text, which has its unit. A bare JSON number is refused.
func ExampleLength_UnmarshalText() {
	var job struct {
		Bore   units.Length
		Limits units.Limits
	}
	err := json.Unmarshal([]byte(`{"Bore": "2-41/64 in", "Limits": "67.000 to 67.019 mm"}`), &job)
	fmt.Println(job.Bore, job.Limits, err)

	err = json.Unmarshal([]byte(`{"Bore": "67.02"}`), &job)
	fmt.Println(job.Bore, errors.Is(err, units.ErrMissingUnit))

	flags := flag.NewFlagSet("job", flag.ContinueOnError)
	flags.SetOutput(io.Discard)
	var stroke units.Length
	flags.TextVar(&stroke, "stroke", 80*units.Millimetre, "stroke of the hone")
	err = flags.Parse([]string{"-stroke", "3.5 in"})
	fmt.Println(stroke, err)
	// Output:
	// 67.071875 mm 67 mm to 67.019 mm <nil>
	// 67.071875 mm true
	// 88.9 mm <nil>
}

func ExampleMean() {
	m, err := units.Mean(units.MustParseLength("67.021 mm"), units.MustParseLength("67.024 mm"))
	fmt.Println(m, err)
	_, err = units.Mean()
	fmt.Println(err)
	// Output:
	// 67.0225 mm <nil>
	// units: mean of no lengths: not given
}

func ExampleLimits() {
	w := units.Limits{Min: units.MustParseLength("67.000 mm"), Max: units.MustParseLength("67.019 mm")}
	wear := units.Limits{Max: 150 * units.Micrometre} // one end alone
	width, both := w.Width()
	fmt.Println(w, width, both)
	fmt.Println(w.Contains(67*units.Millimetre), wear.Contains(93*units.Micrometre), wear.HasMin())
	over, err := w.Shift(500 * units.Micrometre)
	fmt.Println(over, err)
	fmt.Println(units.Limits{Min: over.Min, Max: w.Max}.Validate())
	// Output:
	// 67 mm to 67.019 mm 0.019 mm true
	// true true false
	// 67.5 mm to 67.519 mm <nil>
	// units: limits 67.5 mm above 67.019 mm: limits crossed
}

func ExampleParseLimits() {
	for _, s := range []string{
		"72.000 to 72.020 mm", "72.000 - 72.020 mm", "72.010 ± 0.010 mm", "72 +0.020/-0 mm", "max 0.05 mm", "2.8346 to 2.8354 in",
	} {
		w, err := units.ParseLimits(s)
		fmt.Println(w, err)
	}
	// Output:
	// 72 mm to 72.02 mm <nil>
	// 72 mm to 72.02 mm <nil>
	// 72 mm to 72.02 mm <nil>
	// 72 mm to 72.02 mm <nil>
	// max 0.05 mm <nil>
	// 71.99884 mm to 72.01916 mm <nil>
}

// Converted to three decimals of an inch the ordinary way, both ends of 11 ± 0.3 mm overstep the maker's window (a worked
// conversion after ANSI/IEEE 268). Inward they never do, and where nothing fits it says so.
func ExampleLimits_Inward() {
	w, err := units.ParseLimits("11 ± 0.3 mm")
	if err != nil {
		fmt.Println(err)
		return
	}
	show := func(how string, w units.Limits) {
		fmt.Printf("%-8s %s to %s\n", how, w.Min.Format(units.Inch, 4), w.Max.Format(units.Inch, 4))
	}
	show("exact", w)
	show("nearest", units.Limits{Min: w.Min.Round(units.Thou), Max: w.Max.Round(units.Thou)})
	in, err := w.Inward(units.Thou)
	show("inward", in)
	fmt.Println(err)

	_, err = units.Limits{Min: 101 * units.Micrometre, Max: 109 * units.Micrometre}.Inward(10 * units.Micrometre)
	fmt.Println(err)
	// Output:
	// exact    0.4213 in to 0.4449 in
	// nearest  0.4210 in to 0.4450 in
	// inward   0.4220 in to 0.4440 in
	// <nil>
	// units: no multiple of 0.01 mm inside limits 0.101 mm to 0.109 mm: out of range
}

func ExampleTemperature() {
	bench, err := units.ParseTemperature("77 °F")
	fmt.Println(bench, bench.AboveReference(), err)
	var none units.Temperature
	fmt.Println(none, none.IsZero())
	// Output:
	// 25 °C 5 K <nil>
	// not given true
}

func ExampleCelsius() {
	t, err := units.Celsius(31)
	fmt.Printf("%s is %.1f °F, %v\n", t, t.Fahrenheit(), err)
	_, err = units.Celsius(-300)
	fmt.Println(err)
	// Output:
	// 31 °C is 87.8 °F, <nil>
	// units: temperature of -300 °C: out of range (above −273.15 °C)
}

func ExampleFahrenheit() {
	t, err := units.Fahrenheit(68)
	fmt.Println(t == units.ReferenceTemperature, err)
	// Output: true <nil>
}

func ExampleParseTemperature() {
	for _, s := range []string{"20 °C", "68 °F", "293.15 K", "20"} {
		t, err := units.ParseTemperature(s)
		fmt.Println(t, err)
	}
	// Output:
	// 20 °C <nil>
	// 20 °C <nil>
	// 20 °C <nil>
	// not given units: temperature "20": missing unit at byte 2 (a bare number has no unit: write 20 °C or 20 °F)
}

func ExampleMustParseTemperature() {
	warm, cold := units.MustParseTemperature("35 °C"), units.MustParseTemperature("8 °C")
	fmt.Println(warm.Sub(cold), cold.Add(10*units.Kelvin))
	// Output: 27 K 18 °C
}

// A difference of 10 °F is not a temperature of 10 °F.
func ExampleTemperatureChange() {
	t, err := units.ParseTemperature("10 °F")
	fmt.Printf("%.1f °C, %v\n", t.Celsius(), err)
	var d units.TemperatureChange
	err = d.UnmarshalText([]byte("10 °F"))
	fmt.Printf("%.2f K, %v\n", d.In(units.Kelvin), err)
	// Output:
	// -12.2 °C, <nil>
	// 5.56 K, <nil>
}

// The same coefficient as a handbook in inches prints it.
func ExampleExpansion() {
	const greyIron = 11.4e-6 * units.PerKelvin
	fmt.Printf("%s is %.1fe-6/°F\n", greyIron, greyIron.In(1e-6*units.PerFahrenheit))
	// Output: 11.4e-6/K is 6.3e-6/°F
}

func ExampleAngle() {
	lean := 22.5 * units.Degree
	fmt.Printf("%s, %.4f rad\n", lean, lean.In(units.Radian))
	// Output: 22.5°, 0.3927 rad
}

func ExampleParseAngle() {
	for _, s := range []string{"44.5°", "44°30'", "44° 30′ 00″", "44.5 deg", "45"} {
		a, err := units.ParseAngle(s)
		fmt.Println(a, err)
	}
	// Output:
	// 44.5° <nil>
	// 44.5° <nil>
	// 44.5° <nil>
	// 44.5° <nil>
	// 0° units: angle "45": missing unit at byte 2 (a bare number has no unit: write 45 ° or 45 rad)
}

func ExampleFrequency() {
	const spindle = 600 * units.PerMinute
	fmt.Println(spindle, spindle.In(units.Hertz), "a second")
	// Output: 600 rev/min 10 a second
}

func ExampleParseFrequency() {
	f, err := units.ParseFrequency("650 rev/min")
	fmt.Println(f, err)
	_, err = units.ParseFrequency("60 strokes/min")
	fmt.Println(err)
	// Output:
	// 650 rev/min <nil>
	// units: frequency "60 strokes/min": unknown unit at byte 3 (units of frequency: rev/min, Hz, rpm)
}

func ExampleSpeed() {
	const v = 100 * units.FootPerMinute
	fmt.Printf("%s, %.3f m/s\n", v, v.In(units.MetrePerSecond))
	// Output: 30.48 m/min, 0.508 m/s
}

func ExampleVolume() {
	fmt.Println(units.CubicInch, 16*units.CubicCentimetre)
	// Output: 16.387064 cm³ 16 cm³
}

// Compressed air for cleaning at no more than 30 psi (US Army TM 5-4320-304-14).
func ExamplePressure() {
	const air = 30 * units.PoundPerSquareInch
	fmt.Printf("%.2f bar, %.3f MPa\n", air.In(units.Bar), air.In(units.Megapascal))
	// Output: 2.07 bar, 0.207 MPa
}

// The pull of a feeler gauge by spring scale, 6 lb (US Army TM 9-2815-202-34 p. 6-36).
func ExampleForce() {
	const pull = 6 * units.PoundForce
	var read units.Force
	err := read.UnmarshalText([]byte("6 lbf")) // quantities without a Parse are read so
	fmt.Printf("%.1f N, %v, %v\n", pull.In(units.Newton), read == pull, err)
	// Output: 26.7 N, true, <nil>
}

// N = 1000 V/(π D), in any units.
func ExampleFrequencyFor() {
	f, err := units.FrequencyFor(67*units.Millimetre, 100*units.MetrePerMinute)
	fmt.Printf("%.1f rev/min, %v\n", f.In(units.PerMinute), err)
	f, err = units.FrequencyFor(units.MustParseLength("2.638 in"), 300*units.FootPerMinute)
	fmt.Printf("%.1f rev/min, %v\n", f.In(units.PerMinute), err)
	// Output:
	// 475.1 rev/min, <nil>
	// 434.4 rev/min, <nil>
}
