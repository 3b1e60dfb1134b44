// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Finding is a quantity held against its limits.
type Finding struct {
	Subject  string       `json:"subject,omitzero"` // what was judged; for the caller to fill
	Measured Estimate     `json:"measured"`
	Limits   units.Limits `json:"limits"`
	Verdict  Verdict      `json:"verdict"`
	Conform  float64      `json:"conform"`       // probability of conformity, to 1e-9
	Edge     Edge         `json:"edge,omitzero"` // the end of the window that the verdict turns on
	Risk     Risk         `json:"risk"`
	Per      string       `json:"per"` // what the risk is per
}

// tails holds what is known of an estimate against a window: the chance of lying below and
// above it, and the p-value of "within".
type tails struct{ below, above, p float64 }

// Judge holds an estimate against its limits.
func Judge(e Estimate, w units.Limits, r Risk) (Finding, error) {
	if w.IsZero() {
		return Finding{}, fmt.Errorf("uncertainty: judge %v: %w", e, ErrNoLimits)
	}
	r, err := check(e, w, r)
	if err != nil {
		return Finding{}, err
	}
	f := Finding{Measured: e, Limits: w, Risk: r, Per: "value"}
	f.decide(against(e, w), r.Reject)
	return f, nil
}

// JudgeDifference holds the absolute value of a signed difference against an upper limit.
func JudgeDifference(e Estimate, w units.Limits, r Risk) (Finding, error) {
	if !w.HasMax() || w.HasMin() || w.Max < 0 {
		return Finding{}, fmt.Errorf("uncertainty: judge the difference %v against %v: %w (an upper one above zero, alone)", e, w, ErrNoLimits)
	}
	r, err := check(e, w, r)
	if err != nil {
		return Finding{}, err
	}
	f := Finding{Measured: e, Limits: w, Risk: r, Per: "difference"}
	t := against(e, units.Limits{Min: -w.Max, Max: w.Max})
	f.decide(tails{above: t.below + t.above, p: t.p}, r.Reject)
	return f, nil
}

// JudgeGreatest holds the greatest, and for a lower limit the least, of several true values
// against the limits.
func JudgeGreatest(es []Estimate, w units.Limits, r Risk) (Finding, error) {
	if len(es) == 0 {
		return Finding{}, fmt.Errorf("uncertainty: judge the greatest of none: %w", ErrNoData)
	}
	var worst Finding
	for i, e := range es {
		f, err := Judge(e, w, r)
		if err != nil {
			return Finding{}, err
		}
		f.Per = "all places"
		f.decide(against(e, w), f.Risk.Reject/float64(len(es)))
		if i == 0 || f.Verdict == Beyond && worst.Verdict != Beyond ||
			f.Conform < worst.Conform && (f.Verdict == Beyond) == (worst.Verdict == Beyond) {
			worst = f
		}
	}
	return worst, nil
}

// JudgeRange holds the greatest less the least of several true values against an upper limit.
// Each value is one reading; std is the standard uncertainty of one reading against another
// and dof its degrees of freedom.
func JudgeRange(values []units.Length, std units.Length, dof float64, w units.Limits, r Risk) (Finding, error) {
	n := len(values)
	if n < 2 {
		return Finding{}, fmt.Errorf("uncertainty: judge the range of %d values: %w", n, ErrNoData)
	}
	if !w.HasMax() || w.HasMin() || w.Max < 0 {
		return Finding{}, fmt.Errorf("uncertainty: judge a range against %v: %w (an upper one above zero, alone)", w, ErrNoLimits)
	}
	lo, hi := values[0], values[0]
	for _, v := range values {
		lo, hi = min(lo, v), max(hi, v)
		if err := (Estimate{Value: v, Std: std, DoF: dof}).Validate(); err != nil {
			return Finding{}, err
		}
	}
	u, err := units.Of(math.Sqrt2*std.In(units.Picometre), units.Picometre)
	if err != nil {
		return Finding{}, err
	}
	e := Estimate{Value: hi - lo, Std: u, DoF: dof}
	f, err := JudgeDifference(e, w, r)
	if err != nil {
		return Finding{}, err
	}
	f.Per = "range"
	t := against(e, units.Limits{Min: -w.Max, Max: w.Max})
	t.p *= float64(n*(n-1)) / 2 // any of the pairs may be the extremes
	f.decide(tails{above: t.below + t.above, p: t.p}, f.Risk.Reject)
	return f, nil
}

// check refuses bad estimates, windows and risks, and fills the risk's defaults.
func check(e Estimate, w units.Limits, r Risk) (Risk, error) {
	if err := e.Validate(); err != nil {
		return Risk{}, err
	}
	if err := w.Validate(); err != nil {
		return Risk{}, fmt.Errorf("uncertainty: %w", err)
	}
	return r.orDefault()
}

// against returns the tails of an estimate at a window.
func against(e Estimate, w units.Limits) tails {
	u := e.Std.In(units.Picometre)
	tail := func(d units.Length) float64 { // P(T > d/u)
		if u == 0 {
			if d >= 0 {
				return 0
			}
			return 1
		}
		return tTail(d.In(units.Picometre)/u, e.DoF)
	}
	var t tails
	switch {
	case w.HasMin() && w.HasMax():
		t.below, t.above = tail(e.Value-w.Min), tail(w.Max-e.Value)
		over := max(e.Value-w.Max, w.Min-e.Value) // |y − m| − h
		t.p = tail(over) + tail(over+w.Max-w.Min)
	case w.HasMax():
		t.above = tail(w.Max - e.Value)
		t.p = 1 - t.above
	default:
		t.below = tail(e.Value - w.Min)
		t.p = 1 - t.below
	}
	return t
}

// decide sets Conform, Verdict and Edge.
func (f *Finding) decide(t tails, reject float64) {
	out := round(t.below + t.above)
	f.Conform = round(1 - out)
	switch {
	case out <= round(f.Risk.Accept):
		f.Verdict = Within
	case round(t.p) <= round(reject):
		f.Verdict = Beyond
	default:
		f.Verdict = Undecided
	}
	f.Edge = NoEdge
	if b, a := round(t.below), round(t.above); f.Verdict == Within || a == b {
	} else if a > b {
		f.Edge = Upper
	} else {
		f.Edge = Lower
	}
}

// round rounds a probability to 1e-9.
func round(p float64) float64 { return math.Round(p*1e9) / 1e9 }
