// SPDX-License-Identifier: BSD-3-Clause

package study

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Ranges is a study by averages and ranges, as older sheets work it out. It is here so that such a sheet
// can be checked, and its bias be seen: where persons differ on one part more than on another, no
// range shows it, and the gauge looks better than it is. [Analyse] leaves nothing out.
type Ranges struct {
	Repeatability   units.Length `json:"repeatability"`   // mean range of repeats/d₂
	Reproducibility units.Length `json:"reproducibility"` // from the range of the persons' means; 0 where the repeatability explains that
	Gauge           units.Length `json:"gauge"`           // both
	Part            units.Length `json:"part"`            // from the range of the parts' means, noise of the gauge included
	Total           units.Length `json:"total"`           // gauge and parts
	// By how much, relatively, one range of so few misses the standard deviation on average:
	// d₂/√(d₂² + d₃²) − 1, −11 % for three persons.
	PersonBias float64 `json:"person_bias"`
	PartBias   float64 `json:"part_bias"`
}

// ByRanges works out a balanced study of two or more parts, persons and readings each:
//
//	repeatability   = R̄/d₂(n)
//	reproducibility = √((Rₚₑᵣₛₒₙₛ/d₂*(b))² − repeatability²/(a·n))
//	part            = Rₚₐᵣₜₛ/d₂*(a)                  d₂* = √(d₂² + d₃²)
//
// for a parts, b persons and n repeats, with the constants of [uncertainty.MeanRange]. Common
// practice of the older manuals. A study that is not balanced is ErrTrials, and so is what [Analyse] refuses.
func ByRanges(trials []Trial) (Ranges, error) {
	d, err := arrange(trials)
	if err != nil {
		return Ranges{}, err
	}
	a, b := len(d.parts), len(d.persons)
	n := int(d.cells[0].n)
	if !d.balanced || a < 2 || b < 2 || n < 2 {
		return Ranges{}, fmt.Errorf("study: ranges of %d parts, %d persons: %w (each person reads each part equally often, two of everything at least)", a, b, ErrTrials)
	}
	type ends struct{ low, high units.Length }
	of := map[[2]string]ends{}
	for _, t := range trials {
		k := [2]string{t.Part, t.Person}
		e, ok := of[k]
		if !ok {
			e = ends{t.Reading, t.Reading}
		}
		of[k] = ends{min(e.low, t.Reading), max(e.high, t.Reading)}
	}
	var total units.Length
	for _, e := range of {
		total += e.high - e.low
	}
	parts, persons := make([]float64, a), make([]float64, b)
	for _, c := range d.cells {
		parts[c.part] += c.mean / float64(b)
		persons[c.person] += c.mean / float64(a)
	}
	d2, _, err := uncertainty.MeanRange(n)
	if err != nil {
		return Ranges{}, err
	}
	repeat := total.In(units.Picometre) / float64(len(of)) / d2
	person, personBias, err := single(persons)
	if err != nil {
		return Ranges{}, err
	}
	part, partBias, err := single(parts)
	if err != nil {
		return Ranges{}, err
	}
	between := squared(person) - squared(repeat)/float64(a*n)
	r := Ranges{PersonBias: personBias, PartBias: partBias}
	for _, x := range [...]struct {
		to       *units.Length
		variance float64
	}{
		{&r.Repeatability, squared(repeat)}, {&r.Reproducibility, between}, {&r.Gauge, squared(repeat) + max(0, between)},
		{&r.Part, squared(part)}, {&r.Total, squared(repeat) + max(0, between) + squared(part)},
	} {
		if *x.to, err = root(x.variance); err != nil {
			return Ranges{}, err
		}
	}
	return r, nil
}

// single returns the standard deviation that one range shows, and the relative bias of that.
func single(means []float64) (std, bias float64, err error) {
	low, high := means[0], means[0]
	for _, m := range means {
		low, high = min(low, m), max(high, m)
	}
	d2, d3, err := uncertainty.MeanRange(len(means))
	if err != nil {
		return 0, 0, err
	}
	star := math.Sqrt(float64(d2*d2) + float64(d3*d3))
	return (high - low) / star, d2/star - 1, nil
}
