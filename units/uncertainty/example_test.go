// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"gonum.org/v1/gonum/num/hyperdual"
)

// A pump engine's cylinder, invented: the limit for its bore is 72.034 mm, and the gauge says
// 72.031 mm. May it run on?
func Example() {
	repeats := []float64{0.031, 0.033, 0.030, 0.032, 0.029} // dial readings at one place, mm over 72
	s, err := uncertainty.Describe(repeats...)
	if err != nil {
		fmt.Println(err)
		return
	}
	budget := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "repeats", Std: s.OfMean().Std * 1000, Sensitivity: 1, DoF: s.OfMean().DoF, Unit: "µm"},
		{Name: "dial", Std: uncertainty.Resolution(1), Sensitivity: 1, Unit: "µm"},
		{Name: "ring", Std: uncertainty.FromCertificate(1.2, 2), Sensitivity: 1, Unit: "µm"},
		{Name: "bore temperature", Std: uncertainty.Rectangular(1), Sensitivity: 72 * 0.0114, Unit: "°C"},
	}}
	rows, err := budget.Rows()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range rows {
		fmt.Printf("%-17s %.4f %s, %.4f µm, %.1f %%\n", r.Name, r.Std, r.Unit, r.Contribution, 100*r.Share)
	}
	bore, err := budget.Estimate(units.MustParseLength("72.031 mm"), units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	finding, err := uncertainty.Judge(bore, units.Limits{Max: units.MustParseLength("72.034 mm")}, uncertainty.Risk{})
	if err != nil {
		fmt.Println(err)
		return
	}
	finding.Subject = "bore"
	fmt.Println(finding)
	// Output:
	// repeats           0.7071 µm, 0.7071 µm, 42.8 %
	// dial              0.2887 µm, 0.2887 µm, 7.1 %
	// ring              0.6000 µm, 0.6000 µm, 30.8 %
	// bore temperature  0.5774 °C, 0.4739 µm, 19.2 %
	// bore: 72.0310 ± 0.0022 mm, max 72.034 mm: within (conformity 99.4 %); risk 5 %, 5 % per value
}

// JCGM 100:2008 H.1, end-gauge calibration, from the inputs to U: a 50 mm gauge block is compared
// with a known one. Lengths in nanometres, temperatures in degrees Celsius.
func Example_gumH1() {
	show := func(text string, x float64, places int) { fmt.Printf("%-34s %.*f\n", text, places, x) }

	// H.1.3.1 the standard's certificate: 50 000 623 nm, U = 75 nm, k = 3, 18 degrees of freedom
	ls := uncertainty.Input{Name: "ls", Value: 50_000_623, Std: uncertainty.FromCertificate(75, 3), DoF: 18}
	show("u(ls)", ls.Std, 0)

	// H.1.3.2 the difference: five repeats with a pooled 13 nm, and the comparator's certificate
	repeats := uncertainty.Spread{Std: 13, DoF: 24}.OfMean(5)
	d, dof, err := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "repeats", Std: repeats.Std, Sensitivity: 1, DoF: repeats.DoF},
		{Name: "random", Std: 3.9, Sensitivity: 1, DoF: 5},
		{Name: "systematic", Std: 6.7, Sensitivity: 1, DoF: 8},
	}}.Combined()
	if err != nil {
		fmt.Println(err)
		return
	}
	show("u(d)", d, 1)
	show("ν(d)", dof, 1) // the guide prints 25.6, from the rounded 9.7

	// H.1.3.3 to H.1.3.6 expansion coefficients and temperatures
	θ, _, err := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "mean of the bath", Std: 0.2, Sensitivity: 1},
		{Name: "its cycle", Std: uncertainty.UShaped(0.5), Sensitivity: 1},
	}}.Combined()
	if err != nil {
		fmt.Println(err)
		return
	}
	show("u(θ)", θ, 2)
	inputs := []uncertainty.Input{
		ls,
		{Name: "d", Value: 215, Std: d, DoF: dof},
		{Name: "δα", Std: uncertainty.Rectangular(1e-6), DoF: 50},
		{Name: "θ", Value: -0.1, Std: θ},
		{Name: "αs", Value: 11.5e-6, Std: uncertainty.Rectangular(2e-6)},
		{Name: "δθ", Std: uncertainty.Rectangular(0.05), DoF: 2},
	}

	// H.1.2 the model: l = ls + d − ls(δα·θ + αs·δθ)
	model := func(x []hyperdual.Number) hyperdual.Number {
		growth := hyperdual.Add(hyperdual.Mul(x[2], x[3]), hyperdual.Mul(x[4], x[5]))
		return hyperdual.Sub(hyperdual.Add(x[0], x[1]), hyperdual.Mul(x[0], growth))
	}
	l, err := uncertainty.Propagate(model, inputs)
	if err != nil {
		fmt.Println(err)
		return
	}
	rows, err := l.Budget.Rows()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range rows {
		show("contribution of "+r.Name, r.Contribution, 1)
	}

	// H.1.4, H.1.5 combined; H.1.6 degrees of freedom and U for 99 %
	show("l", l.Value, 0)
	u, dof, err := l.Budget.Combined()
	if err != nil {
		fmt.Println(err)
		return
	}
	show("u(l)", u, 1)
	show("ν(l)", dof, 1)
	k, err := uncertainty.Coverage(0.99, math.Floor(dof))
	if err != nil {
		fmt.Println(err)
		return
	}
	show("k for 99 % and 16", k, 2)
	show("U from u(l) rounded to 32", k*math.Round(u), 0)

	// H.1.7 second order
	_, second, err := uncertainty.SecondOrder(model, inputs)
	if err != nil {
		fmt.Println(err)
		return
	}
	show("u(l) with second order", second, 0)
	// Output:
	// u(ls)                              25
	// u(d)                               9.7
	// ν(d)                               25.5
	// u(θ)                               0.41
	// contribution of ls                 25.0
	// contribution of d                  9.7
	// contribution of δα                 2.9
	// contribution of θ                  0.0
	// contribution of αs                 0.0
	// contribution of δθ                 16.6
	// l                                  50000838
	// u(l)                               31.7
	// ν(l)                               16.8
	// k for 99 % and 16                  2.92
	// U from u(l) rounded to 32          93
	// u(l) with second order             34
}

func ExampleEstimate() {
	e := uncertainty.Estimate{Value: units.MustParseLength("72.031 mm"), Std: units.MustParseLength("0.0021 mm"), DoF: 8}
	fmt.Println(e)
	e.DoF = 0 // the same, known without doubt
	fmt.Println(e)
	e.Std = 0 // exact
	fmt.Println(e)
	text, err := json.Marshal(uncertainty.Estimate{Value: 72 * units.Millimetre, Std: 2 * units.Micrometre, DoF: 8})
	fmt.Println(string(text), err)
	// Output:
	// 72.0310 ± 0.0048 mm
	// 72.0310 ± 0.0041 mm
	// 72.031 mm
	// {"value":"72 mm","std":"0.002 mm","dof":8} <nil>
}

func ExampleEstimate_Format() {
	e := uncertainty.Estimate{Value: units.MustParseLength("2.8358 in"), Std: 50 * units.Microinch}
	for _, unit := range []units.Length{units.Millimetre, units.Micrometre, units.Inch, units.Thou} {
		fmt.Println(e.Format(unit))
	}
	// Output:
	// 72.0293 ± 0.0025 mm
	// 72029.3 ± 2.5 µm
	// 2.835800 ± 0.000098 in
	// 2835.800 ± 0.098 thou
}

func ExampleEstimate_Expanded() {
	e := uncertainty.Estimate{Std: 2 * units.Micrometre, DoF: 4}
	for _, p := range []float64{0.68, 0.95, 0.99} {
		u, err := e.Expanded(p)
		fmt.Println(p, u.Format(units.Micrometre, 2), err)
	}
	// Output:
	// 0.68 2.27 µm <nil>
	// 0.95 5.55 µm <nil>
	// 0.99 9.21 µm <nil>
}

func ExampleEstimate_Validate() {
	err := uncertainty.Estimate{Value: units.Millimetre, Std: -units.Micrometre}.Validate()
	fmt.Println(err, errors.Is(err, uncertainty.ErrStd))
	err = uncertainty.Estimate{Value: units.Millimetre, DoF: 0.5}.Validate()
	fmt.Println(err, errors.Is(err, uncertainty.ErrStd))
	// Output:
	// uncertainty: std -0.001 mm: no standard uncertainty: want at least 0, with 0 (infinitely many) or at least 1 degrees of freedom true
	// uncertainty: 0.5 degrees of freedom: no standard uncertainty: want at least 0, with 0 (infinitely many) or at least 1 degrees of freedom true
}

// A column of the table in JCGM 100:2008 G.2.
func ExampleCoverage() {
	for _, dof := range []float64{1, 2, 5, 10, 50, 0} {
		k, err := uncertainty.Coverage(0.95, dof)
		fmt.Printf("%2v  %.2f  %v\n", dof, k, err)
	}
	// Output:
	//  1  12.71  <nil>
	//  2  4.30  <nil>
	//  5  2.57  <nil>
	// 10  2.23  <nil>
	// 50  2.01  <nil>
	//  0  1.96  <nil>
}

func ExampleDescribe() {
	s, err := uncertainty.Describe(10000001, 10000003, 10000002) // NIST StRD, NumAcc1
	fmt.Println(s.N, s.Mean, s.Std, err)
	fmt.Printf("%.3f with %v degrees of freedom\n", s.OfMean().Std, s.OfMean().DoF)
	// Output:
	// 3 1.0000002e+07 1 <nil>
	// 0.577 with 2 degrees of freedom
}

func ExampleSample() {
	s := uncertainty.Sample{N: 4, Mean: 31, Std: 2}
	fmt.Println(s.Spread(), s.OfMean())
	// Output:
	// {2 3} {1 3}
}

// What one reading scatters is known from earlier work; today's mean of three is surer than
// today's three readings alone could say.
func ExampleSpread() {
	known := uncertainty.Spread{Std: 1.3, DoF: 24}
	fmt.Printf("%.2f with %v degrees of freedom\n", known.OfMean(3).Std, known.OfMean(3).DoF)
	// Output:
	// 0.75 with 24 degrees of freedom
}

func ExampleFromRepeats() {
	e, err := uncertainty.FromRepeats(
		units.MustParseLength("72.031 mm"), units.MustParseLength("72.033 mm"), units.MustParseLength("72.030 mm"))
	fmt.Println(e, e.DoF, err)
	// Output:
	// 72.0313 ± 0.0038 mm 2 <nil>
}

// Five groups of a gauge study (NIST/SEMATECH e-Handbook mpc444), sums of squares over 60
// degrees of freedom each.
func ExamplePool() {
	var groups []uncertainty.Spread
	for _, squares := range []float64{0.48115, 0.69209, 0.48483, 1.21752, 0.30076} {
		groups = append(groups, uncertainty.Spread{Std: math.Sqrt(squares / 60), DoF: 60})
	}
	p, err := uncertainty.Pool(groups...)
	fmt.Printf("%.5f with %v degrees of freedom, %v\n", p.Std, p.DoF, err)
	// Output:
	// 0.10290 with 300 degrees of freedom, <nil>
}

func ExampleRectangular() {
	fmt.Printf("rectangular ±2   %.3f\n", uncertainty.Rectangular(2))
	fmt.Printf("triangular ±2    %.3f\n", uncertainty.Triangular(2))
	fmt.Printf("U-shaped ±2      %.3f\n", uncertainty.UShaped(2))
	fmt.Printf("U = 2, k = 2     %.3f\n", uncertainty.FromCertificate(2, 2))
	fmt.Printf("steps of 2       %.3f\n", uncertainty.Resolution(2))
	fmt.Printf("nonsense         %v\n", uncertainty.Rectangular(-2))
	// Output:
	// rectangular ±2   1.155
	// triangular ±2    0.816
	// U-shaped ±2      1.414
	// U = 2, k = 2     1.000
	// steps of 2       0.577
	// nonsense         -1
}

func ExampleTriangular() {
	fmt.Printf("%.4f\n", uncertainty.Triangular(1))
	// Output: 0.4082
}

func ExampleUShaped() {
	fmt.Printf("%.2f °C\n", uncertainty.UShaped(0.5)) // JCGM 100:2008 H.1.3.4
	// Output: 0.35 °C
}

func ExampleResolution() {
	fmt.Printf("%.2f of a step\n", uncertainty.Resolution(1)) // JCGM 100:2008 F.2.2.1
	// Output: 0.29 of a step
}

func ExampleFromCertificate() {
	fmt.Println(uncertainty.FromCertificate(75, 3), "nm") // JCGM 100:2008 H.1.3.1
	// Output: 25 nm
}

func ExampleBudget() {
	b := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "repeats", Std: 3, Sensitivity: 1, DoF: 4},
		{Name: "ring", Std: 4, Sensitivity: 1},
	}}
	std, dof, err := b.Combined()
	fmt.Printf("%.1f, %.2f degrees of freedom, %v\n", std, dof, err)
	e, err := b.Estimate(72*units.Millimetre, units.Micrometre)
	fmt.Println(e, err)
	// Output:
	// 5.0, 30.86 degrees of freedom, <nil>
	// 72.000 ± 0.010 mm <nil>
}

func ExampleBudget_Combined() {
	_, _, err := uncertainty.Budget{Components: []uncertainty.Component{{Name: "ring", Std: uncertainty.Rectangular(-2), Sensitivity: 1}}}.Combined()
	fmt.Println(err)
	fmt.Println(errors.Is(err, uncertainty.ErrStd))
	// Output:
	// uncertainty: component "ring": std -1 with sensitivity 1: no standard uncertainty: want at least 0, with 0 (infinitely many) or at least 1 degrees of freedom
	// true
}

func ExampleComponent() {
	// 72 mm of grey iron grow by 0.82 µm per °C
	c := uncertainty.Component{Name: "bore temperature", Std: 0.5, Sensitivity: 0.82, Unit: "°C"}
	std, _, err := uncertainty.Budget{Components: []uncertainty.Component{c}}.Combined()
	fmt.Println(std, "µm", err)
	// Output: 0.41 µm <nil>
}

// Two readings share the setting ring: in their difference it cancels.
func ExampleCorrelation() {
	b := uncertainty.Budget{
		Components:   []uncertainty.Component{{Name: "first", Std: 2, Sensitivity: 1}, {Name: "second", Std: 2, Sensitivity: -1}},
		Correlations: []uncertainty.Correlation{{A: "first", B: "second", R: 0.75}},
	}
	std, _, err := b.Combined()
	fmt.Printf("%.3f %v\n", std, err)
	b.Correlations[0].R = 0
	std, _, err = b.Combined()
	fmt.Printf("%.3f %v\n", std, err)
	// Output:
	// 1.414 <nil>
	// 2.828 <nil>
}

func ExampleRow() {
	b := uncertainty.Budget{Components: []uncertainty.Component{{Name: "repeats", Std: 3, Sensitivity: 1}, {Name: "ring", Std: 4, Sensitivity: 1}}}
	rows, err := b.Rows()
	for _, r := range rows {
		fmt.Printf("%s: %.0f %% of the variance\n", r.Name, 100*r.Share)
	}
	fmt.Println(err)
	// Output:
	// repeats: 36 % of the variance
	// ring: 64 % of the variance
	// <nil>
}

// A wall left between two cylinders: centre distance less half of each bore.
func ExamplePropagate() {
	half := func(x hyperdual.Number) hyperdual.Number { return hyperdual.Scale(0.5, x) }
	wall, err := uncertainty.Propagate(func(x []hyperdual.Number) hyperdual.Number {
		return hyperdual.Sub(x[0], hyperdual.Add(half(x[1]), half(x[2])))
	}, []uncertainty.Input{
		{Name: "centres", Value: 84, Std: 0.03},
		{Name: "left bore", Value: 76.25, Std: 0.004, DoF: 9},
		{Name: "right bore", Value: 76.26, Std: 0.004, DoF: 9},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := wall.Estimate(units.Millimetre)
	fmt.Println(e, err)
	// Output: 7.745 ± 0.059 mm <nil>
}

func ExampleModel() {
	// πd²/4·s, a swept volume in mm³
	var model uncertainty.Model = func(x []hyperdual.Number) hyperdual.Number {
		return hyperdual.Scale(math.Pi/4, hyperdual.Mul(hyperdual.Mul(x[0], x[0]), x[1]))
	}
	p, err := uncertainty.Propagate(model, []uncertainty.Input{{Name: "d", Value: 72, Std: 0.01}, {Name: "s", Value: 62, Std: 0.05}})
	fmt.Printf("%.0f, by the bore %.0f per mm, by the stroke %.0f per mm, %v\n", p.Value, p.Budget.Components[0].Sensitivity, p.Budget.Components[1].Sensitivity, err)
	// Output: 252433, by the bore 7012 per mm, by the stroke 4072 per mm, <nil>
}

func ExampleInput() {
	in := uncertainty.Input{Name: "room", Value: 24, Std: uncertainty.Rectangular(2), Unit: "°C"}
	fmt.Printf("%s %v %s, u = %.2f %s\n", in.Name, in.Value, in.Unit, in.Std, in.Unit)
	// Output: room 24 °C, u = 1.15 °C
}

func ExamplePropagation() {
	p, err := uncertainty.Propagate(func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Scale(2, x[0]) },
		[]uncertainty.Input{{Name: "radius", Value: 36, Std: 0.002}})
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := p.Estimate(units.Millimetre)
	fmt.Println(p.Value, e, err)
	// Output: 72 72.0000 ± 0.0078 mm <nil>
}

// A product of two quantities that are both expected to be zero has no first order.
func ExampleSecondOrder() {
	product := func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Mul(x[0], x[1]) }
	inputs := []uncertainty.Input{{Name: "a", Std: 0.3}, {Name: "b", Std: 0.2}}
	p, err := uncertainty.Propagate(product, inputs)
	if err != nil {
		fmt.Println(err)
		return
	}
	first, _, err := p.Budget.Combined()
	fmt.Println(first, err)
	shift, second, err := uncertainty.SecondOrder(product, inputs)
	fmt.Printf("%.2f, shifted by %v, %v\n", second, shift, err)
	// Output:
	// 0 <nil>
	// 0.06, shifted by 0, <nil>
}

// A dial read on three rings: how far it is out between them, and how far one reading scatters.
func ExampleFitLine() {
	l, err := uncertainty.FitLine( // x: ring less 67 mm, in mm; y: reading less ring, in µm
		uncertainty.Observation{X: 0, Y: 0.4}, uncertainty.Observation{X: 0, Y: -0.6}, uncertainty.Observation{X: 0.25, Y: 0.9},
		uncertainty.Observation{X: 0.25, Y: 1.6}, uncertainty.Observation{X: 0.5, Y: 3.0}, uncertainty.Observation{X: 0.5, Y: 2.4})
	fmt.Printf("%.2f µm per mm, ± %.2f: %v\n", l.Slope, l.Tilt.Std, err)
	y, s := l.At(0.4)
	fmt.Printf("at 0.4 mm %.2f µm, known to %.2f µm; one reading scatters %.2f µm\n", y, s.Std, l.Scatter.Std)
	// Output:
	// 5.60 µm per mm, ± 0.96: <nil>
	// at 0.4 mm 2.12 µm, known to 0.24 µm; one reading scatters 0.48 µm
}
