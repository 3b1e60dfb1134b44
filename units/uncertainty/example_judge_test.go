// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func ExampleRisk() {
	job := uncertainty.Risk{Accept: 0.02, Reject: 0.10}
	fmt.Println(job, uncertainty.Risk{}.OrDefault())
	// Output: {0.02 0.1} {0.05 0.05}
}

// Four bores, each with three limits, judged before and after the work.
func ExampleRisk_Share() {
	job := uncertainty.Risk{Accept: 0.048, Reject: 0.12}
	fmt.Printf("%.3f\n", job.Share(4*3*2))
	// Output: {0.002 0.005}
}

func ExampleJudge() {
	limits := units.Limits{Min: 72 * units.Millimetre, Max: 72_020 * units.Micrometre}
	for _, y := range []string{"72.010 mm", "72.018 mm", "72.020 mm", "72.022 mm", "72.026 mm"} {
		f, err := uncertainty.Judge(uncertainty.Estimate{Value: units.MustParseLength(y), Std: 2 * units.Micrometre}, limits, uncertainty.Risk{})
		fmt.Printf("%s: %-9v %.3f %v %v\n", y, f.Verdict, f.Conform, f.Edge, err)
	}
	// Output:
	// 72.010 mm: within    1.000 none <nil>
	// 72.018 mm: undecided 0.841 upper <nil>
	// 72.020 mm: undecided 0.500 upper <nil>
	// 72.022 mm: undecided 0.159 upper <nil>
	// 72.026 mm: beyond    0.001 upper <nil>
}

// A window narrower than what the gauge can see is never proved right, and not proved wrong
// either by a value close by, though its probability of conformity is small.
func ExampleJudge_narrow() {
	limits := units.Limits{Min: 72 * units.Millimetre, Max: 72_001 * units.Micrometre}
	for _, y := range []string{"72.0005 mm", "72.009 mm", "72.012 mm"} {
		f, err := uncertainty.Judge(uncertainty.Estimate{Value: units.MustParseLength(y), Std: 5 * units.Micrometre}, limits, uncertainty.Risk{})
		fmt.Printf("%s: %v %.3f %v\n", y, f.Verdict, f.Conform, err)
	}
	// Output:
	// 72.0005 mm: undecided 0.080 <nil>
	// 72.009 mm: undecided 0.019 <nil>
	// 72.012 mm: beyond 0.006 <nil>
}

// Ovality from two axes: 72.031 and 72.019 mm, repeatability 1.5 µm each.
func ExampleJudgeDifference() {
	e := uncertainty.Estimate{Value: 12 * units.Micrometre, Std: units.Length(math.Round(1.5 * math.Sqrt2 * 1e6)), DoF: 9}
	f, err := uncertainty.JudgeDifference(e, units.Limits{Max: 20 * units.Micrometre}, uncertainty.Risk{})
	fmt.Println(f, err)
	// Output: 0.0120 ± 0.0048 mm, max 0.02 mm: within (conformity 99.8 %); risk 5 %, 5 % per difference <nil>
}

// Six axes of a round bore, read with a repeatability of 3 µm: the range looks like an ovality
// of 9 µm, but is what noise does.
func ExampleJudgeRange() {
	var sizes []units.Length
	for _, dial := range []units.Length{4, 0, 5, -4, 1, -2} {
		sizes = append(sizes, 72*units.Millimetre+dial*units.Micrometre)
	}
	limit := units.Limits{Max: 5 * units.Micrometre}
	f, err := uncertainty.JudgeRange(sizes, 2*units.Micrometre, 0, limit, uncertainty.Risk{})
	fmt.Println(f.Measured.Value, f.Verdict, err)
	plain, err := uncertainty.JudgeExpanded(f.Measured, limit, 0)
	fmt.Println(plain.Measured.Value, plain.Verdict, err)
	// Output:
	// 0.009 mm undecided <nil>
	// 0.009 mm beyond <nil>
}

func ExampleJudgeExpanded() {
	limits := units.Limits{Min: units.MustParseLength("87.490 mm"), Max: units.MustParseLength("87.510 mm")}
	for _, y := range []string{"87.494 mm", "87.492 mm", "87.4855 mm"} {
		f, err := uncertainty.JudgeExpanded(uncertainty.Estimate{Value: units.MustParseLength(y), Std: 2 * units.Micrometre}, limits, 2)
		fmt.Printf("%s: %v, risk %.3f, %v\n", y, f.Verdict, f.Risk.Accept, err)
	}
	// Whatever the uncertainty: simple acceptance.
	f, err := uncertainty.JudgeExpanded(uncertainty.Estimate{Value: limits.Max, Std: 2 * units.Micrometre}, limits, 0)
	fmt.Printf("%v, risk %.1f, %v\n", f.Verdict, f.Risk.Accept, err)
	// Output:
	// 87.494 mm: within, risk 0.023, <nil>
	// 87.492 mm: undecided, risk 0.023, <nil>
	// 87.4855 mm: beyond, risk 0.023, <nil>
	// within, risk 0.5, <nil>
}

func ExampleFinding() {
	f, err := uncertainty.Judge(uncertainty.Estimate{Value: units.MustParseLength("72.031 mm"), Std: 2 * units.Micrometre},
		units.Limits{Max: units.MustParseLength("72.034 mm")}, uncertainty.Risk{}.Share(4))
	if err != nil {
		fmt.Println(err)
		return
	}
	f.Subject, f.Per = "bore 2", "bore, 5 % per job of 4"
	fmt.Println(f)
	text, err := json.Marshal(f)
	fmt.Println(string(text), err)
	// Output:
	// bore 2: 72.0310 ± 0.0039 mm, max 72.034 mm: undecided (conformity 93.3 %), upper limit in doubt; risk 1.25 %, 1.25 % per bore, 5 % per job of 4
	// {"subject":"bore 2","kind":"value","measured":{"value":"72.031 mm","std":"0.002 mm"},"limits":"max 72.034 mm","verdict":"undecided","conform":0.933192799,"edge":"upper","risk":{"accept":0.0125,"reject":0.0125},"per":"bore, 5 % per job of 4"} <nil>
}

func ExampleFinding_Settle() {
	limits := units.Limits{Max: units.MustParseLength("72.034 mm")}
	for _, y := range []string{"72.031 mm", "72.034 mm", "72.036 mm", "72.020 mm"} {
		f, err := uncertainty.Judge(uncertainty.Estimate{Value: units.MustParseLength(y), Std: 2 * units.Micrometre}, limits, uncertainty.Risk{})
		if err != nil {
			fmt.Println(err)
			return
		}
		remedy, err := f.Settle(1500 * units.Nanometre) // the part of Std that repeats average out
		fmt.Println(y, "-", remedy.Format(units.Millimetre), err)
	}
	// Output:
	// 72.031 mm - within, were the standard uncertainty 0.0018 mm or less, or with 2 times the readings <nil>
	// 72.034 mm - nothing would settle it: the value stands on the limit <nil>
	// 72.036 mm - beyond, were the standard uncertainty 0.0012 mm or less; more readings alone would not do <nil>
	// 72.020 mm - settled: within <nil>
}

func ExampleRemedy_Format() {
	fmt.Println(uncertainty.Remedy{Toward: uncertainty.Beyond, Std: 3 * units.Microinch}.Format(units.Inch))
	// Output:
	// beyond, were the standard uncertainty 0.0000030 in or less; more readings alone would not do
}

func ExampleRemedy() {
	settled := uncertainty.Remedy{Toward: uncertainty.Within, Std: 1234 * units.Nanometre, Repeats: 4}
	fmt.Println(settled.Format(units.Millimetre))
	fmt.Println(uncertainty.Remedy{}.Format(units.Millimetre))
	// Output:
	// within, were the standard uncertainty 0.0012 mm or less, or with 4 times the readings
	// nothing would settle it: the value stands on the limit
}

func ExampleVerdict() {
	var v uncertainty.Verdict // the zero value is the safe one
	fmt.Println(v, uncertainty.Within, uncertainty.Beyond)
	err := v.UnmarshalText([]byte("perhaps"))
	fmt.Println(v, errors.Is(err, units.ErrUnknownName))
	// Output:
	// undecided within beyond
	// undecided true
}

func ExampleEdge() {
	fmt.Println(uncertainty.Edge(0), uncertainty.Lower, uncertainty.Upper)
	// Output: none lower upper
}

func ExampleKind() {
	fmt.Println(uncertainty.OneValue, uncertainty.OneDifference, uncertainty.GreatestOf, uncertainty.RangeOf)
	// Output: value difference greatest range
}

// How much ovality six or twenty readings of a perfectly round bore show, in standard
// deviations of one reading.
func ExampleMeanRange() {
	for _, n := range []int{2, 6, 20} {
		mean, std, err := uncertainty.MeanRange(n)
		fmt.Printf("%2d  %.2f ± %.2f  %v\n", n, mean, std, err)
	}
	// Output:
	//  2  1.13 ± 0.85  <nil>
	//  6  2.53 ± 0.85  <nil>
	// 20  3.73 ± 0.73  <nil>
}
