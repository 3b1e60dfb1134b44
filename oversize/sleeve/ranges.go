// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Range is a quantity between two ends, both of which belong to it, with the sign of the
// quantity: of compressive stresses Min is the most compressive. An end of zero is a value as
// any other, but for temperatures, where it stands for "never".
type Range[T ~int64 | ~float64] struct {
	Min T `json:"min,omitzero"` // with its sign
	Max T `json:"max,omitzero"` // with its sign
}

// A Diametral is a DIAMETRAL interference, from its least to its greatest: the outside diameter of
// the sleeve less the bore of the barrel, both at 20 °C with the parts apart. It is twice the
// radial interference that textbooks print. Negative is a clearance. Where it is known exactly,
// both ends are the same.
type Diametral struct {
	Min units.Length `json:"min"` // DIAMETRAL
	Max units.Length `json:"max"` // DIAMETRAL
}

// measuredCoverage is the coverage probability of the ends that DiametralFromMeasured returns.
const measuredCoverage = 0.95

// DiametralFromMeasured returns the DIAMETRAL interference of two measured parts: the sleeve's
// outside diameter less the diameter of the seat in the barrel, both at 20 °C, with the expanded
// uncertainty of the difference (95 %, JCGM 100:2008 clause 6 and G.4.1) taken off for Min and
// added for Max. The two measurements are taken as independent; a setting error that both
// share cancels and may be left out of both.
//
// A size of zero is [units.ErrNotGiven], one below that or beyond [units.MaxLength] [units.ErrRange]; the errors
// of [uncertainty.Estimate.Validate] come through. A negative answer is a clearance, not an error.
func DiametralFromMeasured(outside, seat uncertainty.Estimate) (Diametral, error) {
	if err := checkLength("sleeve's outside diameter", outside.Value); err != nil {
		return Diametral{}, err
	}
	if err := checkLength("seat", seat.Value); err != nil {
		return Diametral{}, err
	}
	components := [...]uncertainty.Component{
		{Std: outside.Std.In(units.Picometre), Sensitivity: 1, DoF: outside.DoF},
		{Std: seat.Std.In(units.Picometre), Sensitivity: 1, DoF: seat.DoF},
	}
	budget := uncertainty.Budget{Components: components[:]}
	e, err := budget.Estimate(outside.Value-seat.Value, units.Picometre)
	if err != nil {
		return Diametral{}, fmt.Errorf("sleeve: measured interference: %w", err)
	}
	u, err := e.Expanded(measuredCoverage)
	if err != nil {
		return Diametral{}, fmt.Errorf("sleeve: measured interference: %w", err)
	}
	return Diametral{Min: e.Value - u, Max: e.Value + u}, nil
}

// A Trade is an interference that the trade quotes.
type Trade struct {
	Barrel       string       `json:"barrel"`        // what it is quoted for
	Bore         units.Limits `json:"bore,omitzero"` // bores it is quoted for; zero: not said
	Interference Diametral    `json:"diametral"`     // DIAMETRAL
	Source       string       `json:"source"`        // "common practice"
}

// TradeInterference returns what suppliers of sleeves quote, all of it common practice without a
// source that could be named. They disagree: for aluminium one says 0.0015 to 0.003 in, another
// 0.003 to 0.004 in. They are a place to start from; [Joint.Fit] and [Joint.LooseAt] say what
// each does to the parts in hand, and the maker's figure wins.
func TradeInterference() [3]Trade {
	const practice = "common practice"
	return [3]Trade{
		{"block, metal not said", units.Limits{Min: 2 * units.Inch, Max: 5125 * units.Thou}, Diametral{3 * units.Thou, 3 * units.Thou}, practice},
		{"aluminium block", units.Limits{}, Diametral{15 * units.Tenth, 30 * units.Tenth}, practice},
		{"aluminium block", units.Limits{}, Diametral{30 * units.Tenth, 40 * units.Tenth}, practice},
	}
}

// A span collects the least and the greatest of the numbers it is shown.
type span struct{ lo, hi float64 }

// nothing returns the span of no numbers.
func nothing() span { return span{math.Inf(1), math.Inf(-1)} }

func (s *span) add(x float64) {
	if x < s.lo {
		s.lo = x
	}
	if x > s.hi {
		s.hi = x
	}
}

// lengths returns a span of metres as lengths, rounded once.
func (s span) lengths() (Range[units.Length], error) {
	lo, err := units.Of(s.lo, units.Metre)
	if err != nil {
		return Range[units.Length]{}, err
	}
	hi, err := units.Of(s.hi, units.Metre)
	return Range[units.Length]{lo, hi}, err
}

func (s span) pressures() Range[units.Pressure] {
	return Range[units.Pressure]{units.Pressure(s.lo), units.Pressure(s.hi)}
}

// verdict returns Within where pass holds at the worst end, Beyond where it fails at the mildest.
func verdict(worst, mildest bool) uncertainty.Verdict {
	switch {
	case worst:
		return uncertainty.Within
	case !mildest:
		return uncertainty.Beyond
	}
	return uncertainty.Undecided
}
