// SPDX-License-Identifier: BSD-3-Clause

package study_test

import (
	"fmt"
	"log"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/study"
)

// One setting ring, read ten times by one person. Invented data, thousandths over 67 mm.
func ExampleAnalyse() {
	var trials []study.Trial
	for _, d := range []units.Length{1, 3, 2, 0, 2, 4, 1, 2, 3, 1} {
		trials = append(trials, study.Trial{Reading: 67*units.Millimetre + d*units.Micrometre})
	}
	s, err := study.Analyse(trials)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("one reading scatters %s, %v degrees of freedom\n", s.Repeatability.Std.Format(units.Millimetre, 4), s.Repeatability.DoF)
	i, err := s.Repeatability.Interval()
	fmt.Println("between", i.Min.Format(units.Millimetre, 4), "and", i.Max.Format(units.Millimetre, 4), err)
	e, err := s.Doubt(study.Differences, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	u, err := e.Expanded(0.95)
	fmt.Println("tells apart from", u.Format(units.Millimetre, 4), err)
	n, err := s.Repeats(study.Sizes, units.MustParseLength("0.0015 mm"))
	fmt.Println("readings of a place for ±0.0015 mm:", n, err)
	fmt.Println("not seen:", s.Unseen)
	// Output:
	// one reading scatters 0.0012 mm, 9 degrees of freedom
	// between 0.0008 mm and 0.0022 mm <nil>
	// tells apart from 0.0038 mm <nil>
	// readings of a place for ±0.0015 mm: 4 <nil>
	// not seen: [interaction person part]
}

// Two persons, three rings, two readings each. Invented data.
func ExampleStudy() {
	var trials []study.Trial
	for person, readings := range [][]int{{0, 1, 10, 12, 21, 20}, {3, 3, 14, 12, 24, 25}} {
		for i, r := range readings {
			trials = append(trials, study.Trial{Part: fmt.Sprint("ring ", i/2), Person: fmt.Sprint("person ", person), Reading: units.Length(r) * units.Micrometre})
		}
	}
	s, err := study.Analyse(trials)
	if err != nil {
		fmt.Println(err)
		return
	}
	show := func(what string, c study.Component) {
		fmt.Printf("%-15s %s, ν %.1f, below zero: %t\n", what, c.Std.Format(units.Millimetre, 4), c.DoF, c.Negative)
	}
	show("repeatability", s.Repeatability)
	show("interaction", s.Interaction)
	show("person", s.Person)
	show("gauge", s.Gauge)
	show("part", s.Part)
	fmt.Println("groups it tells apart:", s.Categories())
	i, err := s.Gauge.Interval()
	fmt.Println("gauge up to", i.Max.Format(units.Millimetre, 3), err)
	// Output:
	// repeatability   0.0010 mm, ν 6.0, below zero: false
	// interaction     0.0003 mm, ν 1.0, below zero: false
	// person          0.0020 mm, ν 1.0, below zero: false
	// gauge           0.0022 mm, ν 1.4, below zero: false
	// part            0.0104 mm, ν 2.0, below zero: false
	// groups it tells apart: 6
	// gauge up to 0.064 mm <nil>
}

// The older way, which does not see where persons differ on one part more than on another.
func ExampleByRanges() {
	var trials []study.Trial
	for i, r := range []int{0, 1, 10, 12, 3, 3, 14, 12} {
		trials = append(trials, study.Trial{Part: fmt.Sprint(i / 2 % 2), Person: fmt.Sprint(i / 4), Reading: units.Length(r) * units.Micrometre})
	}
	r, err := study.ByRanges(trials)
	fmt.Println(r.Gauge.Format(units.Millimetre, 4), err)
	fmt.Printf("a range of two persons is off by %.0f %% on average\n", 100*r.PersonBias)
	// Output:
	// 0.0019 mm <nil>
	// a range of two persons is off by -20 % on average
}

// Ten readings of one ring that climb.
func ExampleDriftOf() {
	var readings []units.Length
	for _, d := range []units.Length{0, 1, 0, 2, 2, 3, 2, 4, 4, 5} {
		readings = append(readings, d*units.Micrometre)
	}
	d, err := study.DriftOf(readings...)
	fmt.Printf("%d runs (P %.3f), lag 1 %.2f, %s a reading (P %.4f): creeps: %t, %v\n",
		d.Runs, d.RunsP, d.Lag1, d.Creep.Value.Format(units.Millimetre, 4), d.CreepP, d.Creeps(0.05), err)
	// Output: 2 runs (P 0.057), lag 1 0.51, 0.0005 mm a reading (P 0.0001): creeps: true, <nil>
}

// A dial on three rings, two readings of each.
func ExampleLinear() {
	check := func(ring, reading string) study.Check {
		return study.Check{Standard: units.MustParseLength(ring), Std: units.Micrometre / 2, Reading: units.MustParseLength(reading)}
	}
	l, err := study.Linear(check("66.5 mm", "66.499 mm"), check("66.5 mm", "66.500 mm"), check("67 mm", "67.001 mm"),
		check("67 mm", "67.000 mm"), check("67.5 mm", "67.503 mm"), check("67.5 mm", "67.502 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := l.At(units.MustParseLength("67.3 mm"))
	fmt.Println("error at 67.3 mm:", e, err)
	g, err := l.Greatest()
	fmt.Println("at most, uncorrected:", g.Format(units.Millimetre, 4), err)
	// Output:
	// error at 67.3 mm: 0.0017 ± 0.0011 mm <nil>
	// at most, uncorrected: 0.0037 mm <nil>
}

// One ring, however often it is read, says nothing of other sizes.
func ExampleCheck() {
	ring := study.Check{Standard: units.MustParseLength("67 mm"), Std: units.Micrometre / 2, Reading: units.MustParseLength("67.001 mm")}
	_, err := study.Linear(ring, ring, ring)
	fmt.Println(err)
	// Output: study: linearity from 1 sizes of ring: these readings make no study (three at least)
}

// A workshop that hones many liners, and a gauge of 0.002 mm.
func ExampleProcess() {
	p := study.Process{Mean: units.MustParseLength("67.010 mm"), Std: units.MustParseLength("0.005 mm")}
	limits := units.Limits{Min: units.MustParseLength("67.000 mm"), Max: units.MustParseLength("67.020 mm")}
	std := units.MustParseLength("0.002 mm")
	r, err := p.Risks(std, limits, limits)
	fmt.Printf("bad ones passed %.2f %%, good ones turned away %.2f %%, %v\n", 100*r.Consumer, 100*r.Producer, err)
	fmt.Printf("%.2f %% of those delivered are bad, before sorting %.2f %%\n", 100*r.Delivered(), 100*r.Outside)
	g, err := p.GuardBand(std, limits, 0.001)
	fmt.Println("guard band for 0.1 %:", g, err)
	e, err := p.Given(uncertainty.Estimate{Value: units.MustParseLength("67.019 mm"), Std: std})
	fmt.Println("a liner read 67.019 mm:", e, err)
	// Output:
	// bad ones passed 1.09 %, good ones turned away 2.87 %, <nil>
	// 1.17 % of those delivered are bad, before sorting 4.55 %
	// guard band for 0.1 %: 0.00295 mm <nil>
	// a liner read 67.019 mm: 67.0178 ± 0.0036 mm <nil>
}

// A limit drawn in by two standard uncertainties: fewer bad liners go out, and more good ones are turned away.
func ExampleRisks_Delivered() {
	p := study.Process{Mean: units.MustParseLength("67.010 mm"), Std: units.MustParseLength("0.005 mm")}
	limits := units.Limits{Min: units.MustParseLength("67.000 mm"), Max: units.MustParseLength("67.020 mm")}
	drawnIn := units.Limits{Min: units.MustParseLength("67.004 mm"), Max: units.MustParseLength("67.016 mm")}
	for _, accept := range []units.Limits{limits, drawnIn} {
		r, err := p.Risks(units.MustParseLength("0.002 mm"), limits, accept)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("of those delivered %.3f %% are bad; %.1f %% of all are good, and turned away\n", 100*r.Delivered(), 100*r.Producer)
	}
	// Output:
	// of those delivered 1.167 % are bad; 2.9 % of all are good, and turned away
	// of those delivered 0.039 % are bad; 22.0 % of all are good, and turned away
}

// threeRings is a study of three rings, each read twice by one person. Invented data.
func threeRings() study.Study {
	var trials []study.Trial
	for i, r := range []units.Length{0, 1, 10, 12, 21, 20} {
		trials = append(trials, study.Trial{Part: fmt.Sprint("ring ", i/2), Reading: r * units.Micrometre})
	}
	s, err := study.Analyse(trials)
	if err != nil {
		log.Fatal(err)
	}
	return s
}

// Where the readings of a study differ: between parts far more than between repeats.
func ExampleRow() {
	for _, r := range threeRings().Table {
		if r.F == 0 { // the repeats are what the others are held against
			continue
		}
		fmt.Printf("%v: F = %.0f, which chance alone exceeds in %.2f %%\n", r.Source, r.F, 100*r.P)
	}
	// Output:
	// part: F = 200, which chance alone exceeds in 0.06 %
}

// What a study could not tell apart: here one person read alone.
func ExampleStudy_unseen() {
	for _, source := range threeRings().Unseen {
		fmt.Println("not seen:", source)
	}
	// Output:
	// not seen: interaction
	// not seen: person
}

// Two mean squares in one ratio: parts differ by far more than repeats of one part.
func ExampleMeanSquare() {
	table := threeRings().Table
	part, repeats := table[0].MeanSquare, table[len(table)-1].MeanSquare
	f := part.Root.In(units.Micrometre) / repeats.Root.In(units.Micrometre)
	fmt.Printf("%v over %v: F = %.0f with %v and %v degrees of freedom\n", part.Source, repeats.Source, f*f, part.DoF, repeats.DoF)
	// Output: part over repeatability: F = 200 with 2 and 3 degrees of freedom
}

// A component is a sum of mean squares: here that of how parts differ, less what the repeats explain.
func ExampleComponent() {
	s := threeRings()
	for _, t := range s.Part.Terms {
		fmt.Printf("%+.1f × (%s)² of %v\n", t.Coefficient, t.Root.Format(units.Millimetre, 4), t.Source)
	}
	i, err := s.Part.Interval()
	fmt.Println("from", i.Min.Format(units.Millimetre, 3), "to", i.Max.Format(units.Millimetre, 3), err)
	// Output:
	// +0.5 × (0.0141 mm)² of part
	// -0.5 × (0.0010 mm)² of repeatability
	// from 0.005 mm to 0.063 mm <nil>
}

// One person, one ring, on three days: where nobody else reads, days may stand for the persons, and show
// what a gauge set anew each morning does. Invented data.
func ExampleTrial() {
	var trials []study.Trial
	for i, r := range []units.Length{0, 1, 1, 4, 3, 4, 2, 1, 2} {
		trials = append(trials, study.Trial{
			Part: "ring", Person: fmt.Sprint("day ", 1+i/3), Reading: 67*units.Millimetre + r*units.Micrometre,
		})
	}
	s, err := study.Analyse(trials)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("within a day", s.Repeatability.Std.Format(units.Millimetre, 4), "and from day to day", s.Person.Std.Format(units.Millimetre, 4))
	fmt.Println("not seen:", s.Unseen)
	// Output:
	// within a day 0.0006 mm and from day to day 0.0015 mm
	// not seen: [interaction part]
}

// A variance is the sum of its terms, so that a sheet can be worked out again by hand.
func ExampleTerm() {
	s := threeRings()
	variance := 0.0
	for _, t := range s.Part.Terms {
		root := t.Root.In(units.Micrometre)
		variance += t.Coefficient * root * root
		fmt.Printf("%+.1f × %.1f µm² of %v\n", t.Coefficient, root*root, t.Source)
	}
	std := s.Part.Std.In(units.Micrometre)
	fmt.Printf("make %.1f µm², which is (%.2f µm)²\n", variance, std)
	// Output:
	// +0.5 × 200.2 µm² of part
	// -0.5 × 1.0 µm² of repeatability
	// make 99.6 µm², which is (9.98 µm)²
}

// What persons add counts in a size, and not in a difference that one person reads, such as an ovality; what
// repeats add counts twice there. Invented data.
func ExampleUse() {
	var trials []study.Trial
	for person, readings := range [][]units.Length{{0, 1, 10, 12, 21, 20}, {3, 3, 14, 12, 24, 25}} {
		for i, r := range readings {
			trials = append(trials, study.Trial{Part: fmt.Sprint("ring ", i/2), Person: fmt.Sprint("person ", person), Reading: r * units.Micrometre})
		}
	}
	s, err := study.Analyse(trials)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, u := range []study.Use{study.Sizes, study.Differences} {
		e, err := s.Doubt(u, 1)
		fmt.Printf("%v: a standard uncertainty of %s, %.1f degrees of freedom, %v\n", u, e.Std.Format(units.Millimetre, 4), e.DoF, err)
	}
	// Output:
	// sizes: a standard uncertainty of 0.0022 mm, 1.6 degrees of freedom, <nil>
	// differences: a standard uncertainty of 0.0014 mm, 6.8 degrees of freedom, <nil>
}
