// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"
	"strconv"

	"borewright.example/units"
)

// A Finding is a quantity held against its limits, with all that the verdict rests on. It
// reads back from its JSON as it was.
type Finding struct {
	Subject string `json:"subject,omitzero"` // what was judged; for the caller to fill in
	Kind    Kind   `json:"kind"`
	N       int    `json:"n,omitzero"` // how many places or readings, where there are several

	// Measured is the estimate judged: of several places the one that decides; of a difference
	// the signed one; of a range the observed range, with the standard uncertainty of the
	// difference of two readings.
	Measured Estimate     `json:"measured"`
	Limits   units.Limits `json:"limits"`
	Verdict  Verdict      `json:"verdict"`

	// Conform is the probability, to 1e-9, that the true value lies within the limits, with
	// no prior knowledge (JCGM 106 7.1); 1 − Conform is held against Risk.Accept. Of several
	// places it is that of the one that decides, of a range the confidence of "within".
	Conform float64 `json:"conform"`
	Edge    Edge    `json:"edge,omitzero"` // the end of the window in doubt or overstepped
	Risk    Risk    `json:"risk"`          // that was kept to
	Per     string  `json:"per"`           // what the risk is per: "value", "6 places"; a caller who shared it says so here
}

// String returns the finding in a line:
//
//	bore 2: 72.0310 ± 0.0041 mm, max 72.034 mm: undecided (conformity 92.3 %), upper limit in doubt; risk 5 %, 5 % per value
func (f Finding) String() string {
	s := fmt.Sprintf("%v, %v: %v (conformity %.1f %%)", f.Measured, f.Limits, f.Verdict, 100*f.Conform)
	if f.Subject != "" {
		s = f.Subject + ": " + s
	}
	switch {
	case f.Edge != 0 && f.Verdict == Beyond:
		s += fmt.Sprintf(", %v limit overstepped", f.Edge)
	case f.Edge != 0:
		s += fmt.Sprintf(", %v limit in doubt", f.Edge)
	}
	return s + fmt.Sprintf("; risk %s %%, %s %% per %s", number(100*f.Risk.Accept), number(100*f.Risk.Reject), f.Per)
}

// number returns x to four significant digits, without trailing zeros.
func number(x float64) string { return strconv.FormatFloat(x, 'g', 4, 64) }

// check refuses what cannot be judged.
func (f *Finding) check() error {
	if err := f.Measured.Validate(); err != nil {
		return err
	}
	w := f.Limits
	if err := w.Validate(); err != nil {
		return fmt.Errorf("uncertainty: %w", err)
	}
	if w.Min.Abs() > units.MaxLength || w.Max.Abs() > units.MaxLength {
		return fmt.Errorf("uncertainty: limits %v: %w (±%v)", w, units.ErrRange, units.MaxLength)
	}
	if w.IsZero() {
		return fmt.Errorf("uncertainty: a %v of %v: %w: %w", f.Kind, f.Measured.Value, ErrLimits, units.ErrNotGiven)
	}
	if (f.Kind == OneDifference || f.Kind == RangeOf) && (w.HasMin() || w.Max < 0) {
		return fmt.Errorf("uncertainty: a %v against %v: %w (an upper limit alone, above 0)", f.Kind, w, ErrLimits)
	}
	switch f.Kind {
	case OneValue, OneDifference:
	case GreatestOf:
		if f.N < 1 {
			return fmt.Errorf("uncertainty: the greatest of %d places: %w", f.N, ErrNoData)
		}
	case RangeOf:
		if err := checkReadings(f.N); err != nil {
			return err
		}
	default:
		return fmt.Errorf("uncertainty: a finding of %v: %w", f.Kind, units.ErrUnknownName)
	}
	return f.Risk.check()
}

// tails is what an estimate says of a window: the probabilities, with no prior, that the true
// value lies below and above it, and the p-value of a true value inside, which is the greatest
// chance that a measurement of any such value falls as far outside as this one.
type tails struct{ below, above, p float64 }

// judge sets Verdict, Conform and Edge from the rest.
func (f *Finding) judge() {
	t := f.tails(tTail)
	f.Conform = round(1 - round(t.below+t.above))
	decides := t
	if max(f.Risk.Accept, f.Risk.Reject) > normalIsWorst {
		decides = f.tails(anyTail)
	}
	reject := f.Risk.Reject
	if f.Kind == GreatestOf {
		reject /= float64(f.N)
	}
	switch {
	case round(decides.below+decides.above) <= round(f.Risk.Accept):
		f.Verdict = Within
	case round(decides.p) <= round(reject):
		f.Verdict = Beyond
	default:
		f.Verdict = Undecided
	}
	f.setEdge(t)
}

func (f *Finding) setEdge(t tails) {
	below, above := round(t.below), round(t.above)
	switch {
	case f.Verdict == Within || below == above:
		f.Edge = 0
	case above > below:
		f.Edge = Upper
	default:
		f.Edge = Lower
	}
}

func (f *Finding) tails(shape tailer) tails {
	e, w := shaped{f.Measured, shape}, f.Limits
	switch f.Kind {
	case OneDifference:
		return e.folded(w.Max)
	case RangeOf:
		// The p-value of the two extreme readings alone is never above that of all, and that
		// times the number of pairs never below it (Bonferroni): mostly they decide, and the
		// integrals are spared.
		t := e.folded(w.Max)
		if round(t.p) <= round(f.Risk.Reject) {
			if t.p *= float64(f.N) * float64(f.N-1) / 2; round(t.p) > round(f.Risk.Reject) {
				t.p = max(rangeP(f.N, e.Estimate, w.Max), e.folded(w.Max).p)
			}
		}
		return t
	}
	var t tails
	switch {
	case w.HasMin() && w.HasMax():
		t.below, t.above = e.tail(e.Value-w.Min), e.tail(w.Max-e.Value)
		t.p = e.outside(max(e.Value-w.Max, w.Min-e.Value))
		if t.p < 1 {
			t.p += e.tail(max(e.Value-w.Min, w.Max-e.Value))
		}
	case w.HasMax():
		t.above, t.p = e.tail(w.Max-e.Value), e.outside(e.Value-w.Max)
	default:
		t.below, t.p = e.tail(e.Value-w.Min), e.outside(w.Min-e.Value)
	}
	return t
}

// A tailer is the chance that an error in standard uncertainties exceeds x.
type tailer func(x, dof float64) float64

// normalIsWorst is the risk up to which a normal error is worse than any other single one that budgets are
// made of: at 6.67 % and 1.501 standard uncertainties the tail of a rectangular one crosses it, at 8.66 %
// that of a U-shaped one.
const normalIsWorst = 0.066

// anyTail is [tTail], or that of a rectangular or a U-shaped error of the same standard uncertainty, as one
// dominating component has it, where that is larger.
func anyTail(x, dof float64) float64 {
	p := tTail(x, dof)
	if x > 0 && x < math.Sqrt(3) {
		p = max(p, 0.5-x/(2*math.Sqrt(3)))
	}
	if x > 0 && x < math.Sqrt2 {
		p = max(p, 0.5-math.Asin(x/math.Sqrt2)/math.Pi)
	}
	return p
}

// shaped is an estimate with the shape of its error.
type shaped struct {
	Estimate
	shape tailer
}

// folded are the tails of an absolute value against an upper limit: the window from −limit to
// limit about the signed value, both of whose outsides are above the limit.
func (e shaped) folded(limit units.Length) tails {
	far := e.tail(e.Value.Abs() + limit)
	t := tails{above: e.tail(limit-e.Value.Abs()) + far, p: e.outside(e.Value.Abs() - limit)}
	if t.p < 1 {
		t.p += far
	}
	return t
}

// outside returns the p-value of a true value at a limit for a value measured over beyond it;
// 1 where it is not beyond.
func (e shaped) outside(over units.Length) float64 {
	if over <= 0 {
		return 1
	}
	return e.tail(over)
}

// tail returns the probability that the error of e exceeds d. Of an exact value, it is whether
// 0 does, so that a limit belongs to its window.
func (e shaped) tail(d units.Length) float64 {
	if e.Std == 0 {
		if d >= 0 {
			return 0
		}
		return 1
	}
	return e.shape(d.In(e.Std), e.DoF)
}

// round rounds a probability to 1e-9, so that a decision does not hang on the last bits, which
// differ between machines.
func round(p float64) float64 { return math.Round(p*1e9) / 1e9 }
