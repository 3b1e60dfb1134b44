// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"pgregory.net/rapid"
)

// budgets draws a budget of n components with ordinary numbers.
func budgets(t *rapid.T, label string, n int) uncertainty.Budget {
	var b uncertainty.Budget
	for i := range n {
		b.Components = append(b.Components, uncertainty.Component{
			Name:        label + strconv.Itoa(i),
			Std:         rapid.Float64Range(1e-3, 1e3).Draw(t, "std"),
			Sensitivity: rapid.OneOf(rapid.Float64Range(-1e3, -1e-3), rapid.Float64Range(1e-3, 1e3), rapid.Just(0.0)).Draw(t, "sensitivity"),
			DoF:         rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1, 500)).Draw(t, "dof"),
		})
	}
	return b
}

func combined(t *rapid.T, b uncertainty.Budget) (std, dof float64) {
	std, dof, err := b.Combined()
	if err != nil {
		t.Fatal(err)
	}
	return std, dof
}

func same(t *rapid.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-12*math.Max(math.Abs(got), math.Abs(want))) {
		t.Fatalf("%s: %v, want %v", what, got, want)
	}
}

func TestBudgetProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := budgets(t, "a", rapid.IntRange(1, 9).Draw(t, "n"))
		std, dof := combined(t, b)

		// by definition
		variance, fourth, least, total := 0.0, 0.0, math.Inf(1), 0.0
		for _, c := range b.Components {
			v := math.Pow(c.Std*c.Sensitivity, 2)
			variance += v
			if c.DoF > 0 {
				fourth += v * v / c.DoF
				least = min(least, c.DoF)
			}
			total += c.DoF
			if c.DoF == 0 && v > 0 {
				total = math.Inf(1)
			}
		}
		same(t, "std", std, math.Sqrt(variance))
		if fourth > 0 {
			same(t, "dof", dof, variance*variance/fourth)
			if dof < least || dof > total*(1+1e-12) {
				t.Fatalf("dof %v not between %v and %v", dof, least, total)
			}
		} else if dof != 0 {
			t.Fatalf("dof %v, want infinitely many", dof)
		}

		// order, unit, and a component of nothing
		o := uncertainty.Budget{Components: rapid.Permutation(b.Components).Draw(t, "order")}
		scale := rapid.Float64Range(1e-6, 1e6).Draw(t, "scale")
		for i := range o.Components {
			o.Components[i].Sensitivity *= scale
		}
		o.Components = append(o.Components, uncertainty.Component{Name: "zero", Std: rapid.Float64Range(0, 1).Draw(t, "z"), DoF: 1})
		s, d := combined(t, o)
		same(t, "scaled std", s, std*scale)
		same(t, "scaled dof", d, dof)

		// a part put into one component
		k := rapid.IntRange(0, len(b.Components)-1).Draw(t, "split")
		whole := uncertainty.Budget{Components: slices.Clone(b.Components[k:])}
		if k > 0 {
			s, d := combined(t, uncertainty.Budget{Components: b.Components[:k]})
			whole.Components = append(whole.Components, uncertainty.Component{Name: "part", Std: s, Sensitivity: 1, DoF: d})
		}
		s, d = combined(t, whole)
		same(t, "split std", s, std)
		same(t, "split dof", d, dof)
	})
}

// correlated draws correlations that quantities can have: those of random mixtures of causes.
func correlated(t *rapid.T, b *uncertainty.Budget) [][]float64 {
	n := len(b.Components)
	loads := make([][]float64, n)
	for i := range loads {
		loads[i] = rapid.SliceOfN(rapid.Float64Range(-1, 1), 3, 3).Draw(t, "load")
		loads[i][0] += 1e-3
		norm := math.Sqrt(loads[i][0]*loads[i][0] + loads[i][1]*loads[i][1] + loads[i][2]*loads[i][2])
		for k := range loads[i] {
			loads[i][k] /= norm
		}
	}
	m := make([][]float64, n)
	for i := range m {
		m[i] = make([]float64, n)
		m[i][i] = 1
		for j := range i {
			r := max(-1, min(1, loads[i][0]*loads[j][0]+loads[i][1]*loads[j][1]+loads[i][2]*loads[j][2]))
			m[i][j], m[j][i] = r, r
			b.Correlations = append(b.Correlations, uncertainty.Correlation{A: b.Components[i].Name, B: b.Components[j].Name, R: r})
		}
	}
	return m
}

func TestCorrelationProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := budgets(t, "a", rapid.IntRange(2, 6).Draw(t, "n"))
		m := correlated(t, &b)
		std, dof := combined(t, b)
		variance, scale, least := 0.0, 0.0, math.Inf(1)
		for i, c := range b.Components {
			scale += math.Abs(c.Std * c.Sensitivity)
			if c.DoF != 0 && c.Sensitivity != 0 {
				least = min(least, c.DoF)
			}
			for j, o := range b.Components {
				variance += c.Std * c.Sensitivity * o.Std * o.Sensitivity * m[i][j]
			}
		}
		if math.Abs(std*std-variance) > 1e-12*scale*scale {
			t.Fatalf("variance %v, want %v", std*std, variance)
		}
		if std > 1e-6*scale {
			if !math.IsInf(least, 1) {
				same(t, "dof of one group", dof, least)
			}
			rows, err := b.Rows()
			if err != nil {
				t.Fatal(err)
			}
			shares := 0.0
			for _, r := range rows {
				shares += r.Share
			}
			if math.Abs(shares-1) > 1e-12*scale*scale/(std*std) {
				t.Fatalf("shares add up to %v", shares)
			}
		}
		// a group beside independent components is one component among them
		o := budgets(t, "b", 2)
		part := uncertainty.Budget{Components: append(slices.Clone(o.Components), uncertainty.Component{Name: "group", Std: std, Sensitivity: 1, DoF: dof})}
		s1, d1 := combined(t, part)
		o.Components = append(o.Components, b.Components...)
		o.Correlations = b.Correlations
		s2, d2 := combined(t, o)
		if std > 1e-3*scale {
			same(t, "with others", s2, s1)
			if math.Abs(d2-d1) > 1e-9*d1 {
				t.Fatalf("dof %v, want %v", d2, d1)
			}
		}
	})
}

func TestCoverageProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(1e-3, 0.999999).Draw(t, "p")
		dof := math.Exp(rapid.Float64Range(0, 40).Draw(t, "log dof"))
		get := func(p, dof float64) float64 {
			k, err := uncertainty.Coverage(p, dof)
			if err != nil {
				t.Fatal(err)
			}
			return k
		}
		k := get(p, dof)
		if more := get(p, dof*1.1); more > k*(1+1e-13) {
			t.Fatalf("k grows with the degrees of freedom: %v, %v", k, more)
		}
		if k < get(p, 0)*(1-1e-13) {
			t.Fatalf("k %v below the normal one", k)
		}
		if q := p + 0.1*(1-p); get(q, dof) <= k {
			t.Fatalf("k does not grow with p")
		}
		// closed forms for one and two degrees of freedom (computed)
		same(t, "Cauchy", get(p, 1)*math.Tan(math.Pi*(1-p)/2), 1)
		same(t, "two", get(p, 2)/(p*math.Sqrt(2/((1-p)*(1+p)))), 1)
	})
}

func TestSampleProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// whole numbers, so that the exact answer is one of integers
		ns := rapid.SliceOfN(rapid.Int64Range(-1000, 1000), 2, 12).Draw(t, "xs")
		shift := rapid.Int64Range(-1e12, 1e12).Draw(t, "shift")
		var sum, squares int64
		xs := make([]float64, len(ns))
		ls := make([]units.Length, len(ns))
		for i, x := range ns {
			sum += x
			squares += x * x
			xs[i] = float64(x + shift)
			ls[i] = units.Length(x + shift)
		}
		n := int64(len(ns))
		s, err := uncertainty.Describe(xs...)
		if err != nil {
			t.Fatal(err)
		}
		want := math.Sqrt(float64(n*squares-sum*sum) / float64(n*(n-1)))
		if math.Abs(s.Std-want) > 1e-12*want || math.Abs(s.Mean-(float64(shift)+float64(sum)/float64(n))) > 1e-12*(math.Abs(float64(shift))+1) {
			t.Fatalf("%v, want std %v", s, want)
		}
		e, err := uncertainty.FromRepeats(ls...)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(e.Std.In(units.Picometre)-want/math.Sqrt(float64(n))) > 1 || want > 0 && e.DoF != float64(n-1) {
			t.Fatalf("%v", e)
		}
		// pooled with itself a spread stays, with twice the degrees of freedom
		p, err := uncertainty.Pool(s.Spread(), s.Spread())
		if err != nil {
			t.Fatal(err)
		}
		same(t, "pooled", p.Std, s.Std)
		same(t, "pooled dof", p.DoF, float64(2*(n-1)))
	})
}

// TestPoolOfEqualReadings: a group without scatter counts with its degrees of freedom, and groups without any pool to none.
func TestPoolOfEqualReadings(t *testing.T) {
	if s, err := uncertainty.Pool(uncertainty.Spread{DoF: 3}, uncertainty.Spread{DoF: 5}); err != nil || s != (uncertainty.Spread{DoF: 8}) {
		t.Error(s, err)
	}
	// √((0·6² + 2·3²)/(6+2)) = 1.5
	if s, err := uncertainty.Pool(uncertainty.Spread{DoF: 6}, uncertainty.Spread{Std: 3, DoF: 2}); err != nil || math.Abs(s.Std-1.5) > 1e-15 || s.DoF != 8 {
		t.Error(s, err)
	}
}
