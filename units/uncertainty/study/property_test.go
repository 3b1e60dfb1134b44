// SPDX-License-Identifier: BSD-3-Clause

package study_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty/study"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// plans draws a crossed plan, so many readings of each cell, every person and part with one at least.
func plans(t *rapid.T, balanced bool) [][]int {
	a, b := rapid.IntRange(2, 5).Draw(t, "parts"), rapid.IntRange(2, 4).Draw(t, "persons")
	n := rapid.IntRange(2, 3).Draw(t, "n")
	plan := make([][]int, a)
	for i := range plan {
		plan[i] = make([]int, b)
		for j := range plan[i] {
			if plan[i][j] = n; !balanced {
				plan[i][j] = rapid.IntRange(0, 3).Draw(t, "n")
				if i == 0 || j == 0 { // the first person reads all, and everybody the first part
					plan[i][j] = max(1, plan[i][j])
				}
			}
		}
	}
	plan[0][0] = max(2, plan[0][0]) // a repeat at least
	return plan
}

// readings makes trials of a plan, with a value for each.
func readings(plan [][]int, value func(part, person, k int) units.Length) []study.Trial {
	var all []study.Trial
	for i, row := range plan {
		for j, n := range row {
			for k := range n {
				all = append(all, study.Trial{Part: strconv.Itoa(i), Person: string(rune('a' + j)), Reading: value(i, j, k)})
			}
		}
	}
	return all
}

func analyse(t *rapid.T, trials []study.Trial) study.Study {
	t.Helper()
	s, err := study.Analyse(trials)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// raw is a component's variance before it is cut at zero, in mm².
func raw(c study.Component) float64 {
	v := 0.0
	for _, term := range c.Terms {
		r := term.Root.In(units.Millimetre)
		v += term.Coefficient * r * r
	}
	return v
}

// An estimate of a variance is a square form of the readings, so what it is on average is the sum of
// what it makes of the indicators of everything random: it must find one for those of its own source,
// and nothing for the others', whatever the plan.
func TestUnbiased(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := plans(t, false)
		const one = units.Metre
		totals := map[string]map[string]float64{} // what each component makes of each source
		add := func(of string, in func(i, j, k int) bool) {
			s := analyse(t, readings(plan, func(i, j, k int) units.Length {
				if in(i, j, k) {
					return one
				}
				return 0
			}))
			if totals[of] == nil {
				totals[of] = map[string]float64{}
			}
			for c, v := range map[string]study.Component{"repeatability": s.Repeatability, "interaction": s.Interaction, "person": s.Person, "part": s.Part} {
				totals[of][c] += raw(v) / 1e6
			}
		}
		seen := true
		for i := range plan {
			add("part", func(x, _, _ int) bool { return x == i })
			for j, n := range plan[i] {
				if n > 0 {
					add("interaction", func(x, y, _ int) bool { return x == i && y == j })
				}
				for k := range n {
					add("repeatability", func(x, y, z int) bool { return x == i && y == j && z == k })
				}
			}
		}
		for j := range plan[0] {
			add("person", func(_, y, _ int) bool { return y == j })
		}
		seen = len(analyse(t, readings(plan, func(i, j, k int) units.Length { return units.Length(i*j + k) })).Unseen) == 0
		for of, sums := range totals {
			for c, got := range sums {
				want := 0.0
				if c == of {
					want = 1
				}
				if !seen && (of == "interaction" || c == "interaction") {
					continue // persons and parts take it over
				}
				if math.Abs(got-want) > 1e-9 {
					t.Fatalf("%v of indicators of %v: %v, want %v; plan %v", c, of, got, want, plan)
				}
			}
		}
	})
}

// Sums of squares are differences of residual sums of nested models, fitted here by QR.
func TestReductions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := plans(t, rapid.Bool().Draw(t, "balanced"))
		all := readings(plan, func(i, j, k int) units.Length {
			return units.Length(rapid.Int64Range(-1000, 1000).Draw(t, "x")) * units.Millimetre
		})
		s := analyse(t, all)
		residual := func(parts, persons, cells bool) float64 {
			a, b := len(plan), len(plan[0])
			columns := 1
			if parts {
				columns += a - 1
			}
			if persons {
				columns += b - 1
			}
			at := map[[2]int]int{}
			if cells {
				for i, row := range plan {
					for j, n := range row {
						if n > 0 {
							at[[2]int{i, j}] = len(at)
						}
					}
				}
				columns = len(at)
			}
			if columns >= len(all) {
				return 0
			}
			m, y := mat.NewDense(len(all), columns, nil), mat.NewDense(len(all), 1, nil)
			for k, trial := range all {
				i, _ := strconv.Atoi(trial.Part)
				j := int(trial.Person[0] - 'a')
				y.Set(k, 0, trial.Reading.In(units.Metre))
				if cells {
					m.Set(k, at[[2]int{i, j}], 1)
					continue
				}
				m.Set(k, 0, 1)
				if parts && i > 0 {
					m.Set(k, i, 1)
				}
				if persons && j > 0 {
					m.Set(k, columns-b+j, 1)
				}
			}
			var fit, left mat.Dense
			if err := fit.Solve(m, y); err != nil {
				t.Fatal(err)
			}
			left.Mul(m, &fit)
			left.Sub(y, &left)
			return mat.Norm(&left, 2) * mat.Norm(&left, 2)
		}
		additive, cells := residual(true, true, false), residual(false, false, true)
		for _, r := range s.Table {
			want := map[string]float64{
				"part": residual(false, true, false) - additive, "person": residual(true, false, false) - additive,
				"interaction": additive - cells, "repeatability": cells,
			}[r.Source]
			x := r.Root.In(units.Metre)
			if math.Abs(x*x*r.DoF-want) > 1e-8 {
				t.Fatalf("%v: %v, want %v", r.Source, x*x*r.DoF, want)
			}
		}
	})
}

// The textbook's formulas for a balanced design, and what leaves a study as it is.
func TestBalanced(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := plans(t, true)
		a, b, n := float64(len(plan)), float64(len(plan[0])), float64(plan[0][0])
		all := readings(plan, func(i, j, k int) units.Length {
			return units.Length(rapid.Int64Range(-1000, 1000).Draw(t, "x")) * units.Micrometre
		})
		s := analyse(t, all)
		ms := map[string]float64{}
		for _, r := range s.Table {
			ms[r.Source] = r.Root.In(units.Millimetre) * r.Root.In(units.Millimetre)
		}
		for _, c := range []struct {
			of   study.Component
			want float64
		}{
			{s.Repeatability, ms["repeatability"]},
			{s.Interaction, (ms["interaction"] - ms["repeatability"]) / n},
			{s.Person, (ms["person"] - ms["interaction"]) / (a * n)},
			{s.Part, (ms["part"] - ms["interaction"]) / (b * n)},
		} {
			if math.Abs(raw(c.of)-c.want) > 1e-12 {
				t.Fatalf("%v, want %v", raw(c.of), c.want)
			}
			// Two mean squares that are equal differ by what rounding leaves, which is another where sums are fused.
			if math.Abs(c.want) > 1e-12 && ((c.of.Std == 0) != (c.want <= 0) || c.of.Negative != (c.want < 0)) {
				t.Fatalf("%+v, want %v", c.of, c.want)
			}
		}
		gauge := max(0, raw(s.Repeatability)) + max(0, raw(s.Interaction)) + max(0, raw(s.Person))
		if math.Abs(raw(s.Gauge)-gauge) > 1e-12 || math.Abs(raw(s.Total)-gauge-max(0, raw(s.Part))) > 1e-12 {
			t.Fatalf("gauge %v, total %v", raw(s.Gauge), raw(s.Total))
		}
		// other names, another order, another zero
		other := slices.Clone(all)
		slices.Reverse(other)
		shift := units.Length(rapid.Int64Range(-1e9, 1e9).Draw(t, "shift")) * units.Nanometre
		for i := range other {
			other[i].Part, other[i].Person = "x"+other[i].Part, other[i].Person+"y"
			other[i].Reading += shift
		}
		same := analyse(t, other)
		for i, c := range []study.Component{same.Repeatability, same.Interaction, same.Person, same.Part, same.Gauge, same.Total} {
			w := []study.Component{s.Repeatability, s.Interaction, s.Person, s.Part, s.Gauge, s.Total}[i]
			if (c.Std-w.Std).Abs() > 2*units.Picometre && raw(w) > 1e-12 {
				t.Fatalf("%+v, want %+v", c, w)
			}
		}
		if (same.Mean - s.Mean - shift).Abs() > units.Picometre {
			t.Fatal(same.Mean, s.Mean, shift)
		}
	})
}

// An interval holds its estimate.
func TestIntervals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := analyse(t, readings(plans(t, rapid.Bool().Draw(t, "balanced")), func(i, j, k int) units.Length {
			return units.Length(rapid.Int64Range(-1000, 1000).Draw(t, "x")) * units.Micrometre
		}))
		for _, c := range []study.Component{s.Repeatability, s.Interaction, s.Person, s.Part, s.Reproducibility, s.Gauge, s.Total} {
			if len(c.Terms) == 0 {
				continue
			}
			i, err := c.Interval()
			if err != nil {
				t.Fatal(err)
			}
			if i.Min < 0 || i.Min > c.Std || i.Max < c.Std {
				t.Fatalf("%v of %v", i, c)
			}
		}
	})
}
