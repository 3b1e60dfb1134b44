// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"cmp"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A jury hears the findings on one limit and keeps the worst.
type jury struct {
	limit  Limit
	window units.Limits
	risk   uncertainty.Risk
	worst  Finding
	heard  bool
}

// shared returns the risk for each of n quantities of which the worst is reported. A wrong
// "beyond" is shared among them; a wrong "within" needs no sharing, since it wants every one of
// them to pass.
func (j *jury) shared(n int) uncertainty.Risk {
	r := j.risk.OrDefault()
	return uncertainty.Risk{Accept: r.Accept, Reject: r.Share(n).Reject}
}

// hear takes a finding and reports whether it is the worst so far: beyond is worse than
// undecided, and that worse than within; of equals, the less likely to conform is the worse, and
// then the one with less room left.
func (j *jury) hear(f uncertainty.Finding) bool {
	if j.heard && !worse(f, j.worst.Finding) {
		return false
	}
	j.worst, j.heard = Finding{Finding: f}, true
	return true
}

func worse(f, than uncertainty.Finding) bool {
	if a, b := rank(f.Verdict), rank(than.Verdict); a != b {
		return a > b
	}
	if f.Conform != than.Conform {
		return f.Conform < than.Conform
	}
	return room(f) < room(than)
}

func rank(v uncertainty.Verdict) int {
	switch v {
	case uncertainty.Within:
		return 0
	case uncertainty.Beyond:
		return 2
	}
	return 1
}

// room is how far the measured value lies inside its window, a difference either way.
func room(f uncertainty.Finding) units.Length {
	left := units.MaxLength
	if f.Kind == uncertainty.OneDifference {
		f.Measured.Value = f.Measured.Value.Abs()
	}
	if f.Limits.HasMin() {
		left = f.Measured.Value - f.Limits.Min
	}
	if f.Limits.HasMax() {
		left = min(left, f.Limits.Max-f.Measured.Value)
	}
	return left
}

// verdict returns the worst finding as that of the limit.
func (j *jury) verdict() (Finding, error) {
	if !j.heard {
		// Any estimate will do to have the risk checked and filled in.
		f, err := uncertainty.Judge(uncertainty.Estimate{}, j.window, j.risk)
		j.worst.Finding = uncertainty.Finding{Limits: j.window, Risk: f.Risk, Per: f.Per}
		j.worst.NotMeasured = true
		if err != nil {
			return Finding{}, err
		}
	}
	j.worst.Limit = j.limit
	j.worst.Subject = j.worst.subject()
	return j.worst, nil
}

// A candidate is one of several quantities held against one limit.
type candidate struct {
	e uncertainty.Estimate // a difference or a range without its sign
	n int                  // how many readings a range is of
	i int                  // the quantity it stands for
}

// decisive returns the candidates that can be the worst: of those whose doubt is the same, the
// first of the largest and the first of the smallest, as far as the window looks at either. The
// others are nearer to its middle and cannot differ in anything else. The slice is sorted.
func (j *jury) decisive(cs []candidate) []candidate {
	slices.SortStableFunc(cs, func(a, b candidate) int {
		return cmp.Or(cmp.Compare(a.n, b.n), cmp.Compare(a.e.Std, b.e.Std), cmp.Compare(a.e.DoF, b.e.DoF),
			cmp.Compare(a.e.Value, b.e.Value), cmp.Compare(a.i, b.i))
	})
	same := func(a, b candidate) bool { return a.n == b.n && a.e.Std == b.e.Std && a.e.DoF == b.e.DoF }
	kept := cs[:0]
	for from := 0; from < len(cs); {
		to := from + 1
		for to < len(cs) && same(cs[to], cs[from]) {
			to++
		}
		largest := to - 1
		for largest > from && cs[largest-1].e.Value == cs[to-1].e.Value {
			largest--
		}
		a, b := cs[from], cs[largest]
		if j.window.HasMin() {
			kept = append(kept, a)
		}
		if j.window.HasMax() && (largest != from || !j.window.HasMin()) {
			kept = append(kept, b)
		}
		from = to
	}
	return kept
}
