// SPDX-License-Identifier: BSD-3-Clause

package study

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"gonum.org/v1/gonum/integrate/quad"
)

// A Process is where many like parts come from: how their true sizes are spread.
type Process struct {
	Mean  units.Length `json:"mean"`           // of the true sizes
	Std   units.Length `json:"std"`            // standard deviation, above 0
	Gamma bool         `json:"gamma,omitzero"` // gamma, not normal: above zero and leaning to the left, as a roundness or a runout
}

// Risks are what becomes of the parts of a process that are measured and sorted: fractions of all parts,
// to 1e-9 (JCGM 106:2012 9.4 and 9.5: the global risks).
type Risks struct {
	Outside  float64 `json:"outside"`  // fraction beyond the tolerance, before they are sorted
	Accepted float64 `json:"accepted"` // fraction measured within the acceptance limits
	Consumer float64 `json:"consumer"` // fraction beyond the tolerance, and accepted
	Producer float64 `json:"producer"` // fraction within the tolerance, and rejected
}

// Delivered returns the fraction of bad parts among those accepted, 0 to 1; 0 where none is.
func (r Risks) Delivered() float64 {
	if r.Accepted <= 0 {
		return 0
	}
	return r.Consumer / r.Accepted
}

// Risks returns the risks of sorting the parts of a process by readings with normal errors of
// standard uncertainty std, 0 for a perfect gauge:
//
//	consumer = ∫ f(x)·P(accepted | x) dx  over x beyond the tolerance
//	producer = ∫ f(x)·(1 − P(accepted | x)) dx  over x within it
//
// They are averages over many parts, before any is read. The risk of one part that was read is
// another matter: 1 − Conform of [uncertainty.Judge], with what is known of the process by
// [Process.Given]. At a limit without a guard band it is one half, while the average may be 1 %.
//
// A process without a spread, or one of gamma whose mean is below its standard deviation or above a thousand of
// them, where it is as good as normal, is units.ErrRange; a negative std is uncertainty.ErrStd; limits that are not given are
// uncertainty.ErrLimits, crossed ones units.ErrCrossed.
func (p Process) Risks(std units.Length, tolerance, acceptance units.Limits) (Risks, error) {
	if err := p.check(std, tolerance); err != nil {
		return Risks{}, err
	}
	if err := acceptance.Validate(); err != nil {
		return Risks{}, fmt.Errorf("study: acceptance %v: %w", acceptance, err)
	}
	return p.risks(std, zone(tolerance), zone(acceptance)), nil
}

// GuardBand returns the least guard band, rounded up to 1 nm, that keeps the consumer's risk of [Process.Risks] at
// or below consumer, above 0 up to 0.5: acceptance limits that much inside the tolerance, at each limit
// that is given (JCGM 106:2012 8.3). Errors are those of Risks, and units.ErrRange for
// another risk, NaN among them.
func (p Process) GuardBand(std units.Length, tolerance units.Limits, consumer float64) (units.Length, error) {
	if !(consumer > 0 && consumer <= 0.5) {
		return 0, fmt.Errorf("study: guard band for a risk of %v: %w (above 0 up to 0.5)", consumer, units.ErrRange)
	}
	if err := p.check(std, tolerance); err != nil {
		return 0, err
	}
	low, high := zone(tolerance).low, zone(tolerance).high
	kept := func(w units.Length) bool {
		g := w.In(units.Picometre)
		return p.risks(std, interval{low, high}, interval{low + g, high - g}).Consumer <= consumer
	}
	if kept(0) {
		return 0, nil
	}
	// Within half the width, or beyond any reading where a limit is open, nothing is accepted.
	bad, good := units.Length(0), units.MaxLength
	if width, both := tolerance.Width(); both {
		good = (width/2 + units.Picometre).Ceil(units.Nanometre)
	}
	for good-bad > units.Nanometre {
		middle := (bad + (good-bad)/2).Ceil(units.Nanometre)
		if middle == good {
			break
		}
		if kept(middle) {
			good = middle
		} else {
			bad = middle
		}
	}
	return good, nil
}

// Given returns what is known of one part's size by its reading and by the normal process it comes
// from, both weighed by their variances (JCGM 106:2012 clause 6 and Annex A):
//
//	1/u² = 1/σ² + 1/s²,   size = u²·(mean/σ² + reading/s²)
//
// The result goes to [uncertainty.Judge], whose Conform is then the probability for this part. A
// process judged from its own readings, or a part that is not of it, makes this bolder than it
// should be. A process that is not normal is units.ErrRange; its other errors are those of Risks and of
// [uncertainty.Estimate.Validate].
func (p Process) Given(e uncertainty.Estimate) (uncertainty.Estimate, error) {
	if err := p.check(e.Std, units.Limits{Max: 1}); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := e.Validate(); err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("study: %w", err)
	}
	if p.Gamma {
		return uncertainty.Estimate{}, fmt.Errorf("study: a gamma process and a reading: %w (normal alone)", units.ErrRange)
	}
	if e.Std == 0 {
		return e, nil
	}
	s, u := p.Std.In(units.Picometre), e.Std.In(units.Picometre)
	h := math.Hypot(s, u)
	weight := float64(s/h) * float64(s/h) // of the reading
	shift, err := units.Of(weight*(e.Value-p.Mean).In(units.Picometre), units.Picometre)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("study: %w", err)
	}
	std, err := units.Of(s/h*u, units.Picometre)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("study: %w", err)
	}
	return uncertainty.Estimate{Value: p.Mean + shift, Std: max(std, units.Picometre), DoF: e.DoF}, nil
}

func (p Process) check(std units.Length, tolerance units.Limits) error {
	if p.Std <= 0 || p.Std > units.MaxLength || p.Mean.Abs() > units.MaxLength || p.Gamma && (p.Mean < p.Std || (p.Mean-1)/p.Std >= mostOfGamma) {
		return fmt.Errorf("study: a process of mean %v and standard deviation %v: %w", p.Mean, p.Std, units.ErrRange)
	}
	if std < 0 || std > units.MaxLength {
		return fmt.Errorf("study: std %v of a reading: %w", std, uncertainty.ErrStd)
	}
	if err := tolerance.Validate(); err != nil {
		return fmt.Errorf("study: tolerance %v: %w", tolerance, err)
	}
	if tolerance.IsZero() {
		return fmt.Errorf("study: tolerance: %w: %w", uncertainty.ErrLimits, units.ErrNotGiven)
	}
	return nil
}

// mostOfGamma is the mean of a gamma process in standard deviations up to which its density keeps eight digits.
const mostOfGamma = 1000

// An interval is a window in picometres; open ends are infinite.
type interval struct{ low, high float64 }

func zone(w units.Limits) interval {
	i := interval{math.Inf(-1), math.Inf(1)}
	if w.HasMin() {
		i.low = w.Min.In(units.Picometre)
	}
	if w.HasMax() {
		i.high = w.Max.In(units.Picometre)
	}
	return i
}

// risks integrates by Gauss's rule between places where the integrand turns: a few standard
// deviations apart, and at the limits, so that each piece is smooth. Errors are below 1e-12, 1e-8 for the narrowest of
// gamma.
func (p Process) risks(std units.Length, tolerance, acceptance interval) Risks {
	mean, s, u := p.Mean.In(units.Picometre), p.Std.In(units.Picometre), std.In(units.Picometre)
	density := func(x float64) float64 {
		z := (x - mean) / s
		return math.Exp(-z*z/2) / (s * math.Sqrt(2*math.Pi))
	}
	from, to := mean-float64(9*s), mean+float64(9*s)
	if p.Gamma {
		k, scale := float64(mean/s)*float64(mean/s), s/mean*s
		g, _ := math.Lgamma(k)
		density = func(x float64) float64 {
			if x <= 0 {
				return 0
			}
			return math.Exp(float64((k-1)*math.Log(x/scale))-x/scale-g) / scale
		}
		from, to = max(from, 0), mean+float64(40*s)
	}
	accept := func(x float64) float64 {
		if u == 0 {
			if x < acceptance.low || x > acceptance.high {
				return 0
			}
			return 1
		}
		if acceptance.low > acceptance.high {
			return 0
		}
		return between((acceptance.low-x)/u, (acceptance.high-x)/u)
	}
	ends := []float64{from, to, tolerance.low, tolerance.high}
	for k := -9.0; k <= 40; k += 2 {
		ends = append(ends, mean+float64(k*s))
	}
	for k := -9.0; k <= 9; k += 2 {
		ends = append(ends, acceptance.low+float64(k*u), acceptance.high+float64(k*u))
	}
	ends = slices.DeleteFunc(ends, func(x float64) bool { return !(x >= from && x <= to) })
	slices.Sort(ends)
	var places, weights [24]float64 // of Gauss's rule from 0 to 1
	quad.Legendre{}.FixedLocations(places[:], weights[:], 0, 1)
	var r Risks
	for i := 1; i < len(ends); i++ {
		a, width := ends[i-1], ends[i]-ends[i-1]
		var whole, good float64
		for k, place := range places {
			x := a + float64(width*place)
			f := float64(width * weights[k] * density(x))
			whole += f
			good += float64(f * accept(x))
		}
		r.Accepted += good
		if middle := a + width/2; middle < tolerance.low || middle > tolerance.high {
			r.Outside += whole
			r.Consumer += good
		} else {
			r.Producer += whole - good
		}
	}
	for _, x := range [...]*float64{&r.Outside, &r.Accepted, &r.Consumer, &r.Producer} {
		*x = min(1, max(0, round(*x)))
	}
	return r
}

// between returns the probability that a standard normal value lies between a and b, a ≤ b.
func between(a, b float64) float64 {
	return 0.5 * (math.Erfc(-b/math.Sqrt2) - math.Erfc(-a/math.Sqrt2))
}
