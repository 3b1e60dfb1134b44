// SPDX-License-Identifier: BSD-3-Clause

package study_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty/study"
)

// A truth is what a simulated study is drawn from: standard deviations in micrometres.
type truth struct {
	name                              string
	parts, persons, repeats           int
	repeat, interaction, person, part float64
	missing                           int // readings struck out
}

func truths() []truth {
	return []truth{
		{"ordinary", 10, 3, 3, 1, 0.7, 1, 7, 0},
		{"persons alone", 10, 3, 2, 0.5, 0, 2, 3, 0},
		{"two persons", 5, 2, 3, 1, 0.5, 0.5, 4, 0},
		{"no persons", 10, 3, 3, 1, 0, 0, 2, 0},
		{"unbalanced", 10, 3, 3, 1, 0.7, 1, 7, 12},
	}
}

// cover draws n studies and returns, for each component and method, how often the interval holds the truth,
// and how often it lies below it.
func cover(t *testing.T, x truth, n int, seed uint64) map[string][2]float64 {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 1))
	draw := func(s float64, n int) []float64 {
		v := make([]float64, n)
		for i := range v {
			v[i] = s * rng.NormFloat64()
		}
		return v
	}
	got := map[string][2]float64{}
	for range n {
		part, person, both := draw(x.part, x.parts), draw(x.person, x.persons), draw(x.interaction, x.parts*x.persons)
		var all []study.Trial
		for i := range x.parts {
			for j := range x.persons {
				for range x.repeats {
					v := part[i] + person[j] + both[i*x.persons+j] + x.repeat*rng.NormFloat64()
					all = append(all, study.Trial{Part: string(rune('A' + i)), Person: string(rune('a' + j)), Reading: units.Length(v * 1e6)})
				}
			}
		}
		for range x.missing {
			i := rng.IntN(len(all))
			all = append(all[:i], all[i+1:]...)
		}
		s := must[study.Study](t)(study.Analyse(all))
		square := func(xs ...float64) float64 {
			v := 0.0
			for _, x := range xs {
				v += x * x
			}
			return math.Sqrt(v)
		}
		for _, c := range []struct {
			name string
			of   study.Component
			true float64
		}{
			{"repeatability", s.Repeatability, x.repeat}, {"interaction", s.Interaction, x.interaction}, {"person", s.Person, x.person},
			{"part", s.Part, x.part}, {"reproducibility", s.Reproducibility, square(x.person, x.interaction)},
			{"gauge", s.Gauge, square(x.repeat, x.person, x.interaction)}, {"total", s.Total, square(x.repeat, x.person, x.interaction, x.part)},
		} {
			i := must[units.Limits](t)(c.of.Interval())
			low, high := satterthwaite(c.of, units.Micrometre)
			for m, ends := range map[string][2]float64{
				"modified large sample": {i.Min.In(units.Micrometre), i.Max.In(units.Micrometre)},
				"Satterthwaite":         {math.Sqrt(low), math.Sqrt(high)},
			} {
				if m == "Satterthwaite" && c.of.Std == 0 {
					continue
				}
				k := c.name + " " + m
				v := got[k]
				if ends[1] < c.true-1e-6 {
					v[1] += 1 / float64(n)
				} else if ends[0] <= c.true {
					v[0] += 1 / float64(n)
				}
				got[k] = v
			}
		}
	}
	return got
}

// checkCover holds the modified large sample intervals to their 95 % and to at most 2.5 % below the truth, with
// what the components that are cut at zero cost, and four standard errors.
func checkCover(t *testing.T, x truth, n int) {
	t.Helper()
	got := cover(t, x, n, 7)
	for k, v := range got {
		t.Logf("%-14s %-40s holds %.3f, too low %.3f", x.name, k, v[0], v[1])
	}
	for _, name := range []string{"repeatability", "interaction", "person", "part", "reproducibility", "gauge", "total"} {
		v := got[name+" modified large sample"]
		se := math.Sqrt(0.05 * 0.95 / float64(n))
		if v[0] < 0.94-4*se || v[1] > 0.03+4*se {
			t.Errorf("%s, %s: holds %.4f, too low %.4f", x.name, name, v[0], v[1])
		}
	}
}

func TestCoverage(t *testing.T) {
	for _, x := range truths() {
		checkCover(t, x, 200)
	}
}
