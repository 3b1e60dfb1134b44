// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Limits are the windows that the rings' maker or the engine's sets to the mean texture of a wall, each
// optional, with one end or both.
type Limits struct {
	// Of the parameters of these names, as [Heights] and [Plateau] define them.
	Ra  units.Limits `json:"ra,omitzero"`
	Rq  units.Limits `json:"rq,omitzero"`
	Rz  units.Limits `json:"rz,omitzero"`
	Rt  units.Limits `json:"rt,omitzero"`
	Rpk units.Limits `json:"rpk,omitzero"`
	Rk  units.Limits `json:"rk,omitzero"`
	Rvk units.Limits `json:"rvk,omitzero"`
	Oil units.Limits `json:"oil,omitzero"` // as a depth: 1 µm is 0.1 mm³/cm²
	Mr1 Shares       `json:"mr1,omitzero"`
	Mr2 Shares       `json:"mr2,omitzero"`
}

// Shares are limits of a share, 0 to 1; an end of zero is not given.
type Shares struct {
	Min float64 `json:"min,omitzero"` // a fraction
	Max float64 `json:"max,omitzero"` // a fraction
}

// String returns the limits in percent: "60.0 to 85.0 %", "min 60.0 %".
func (s Shares) String() string {
	switch {
	case s == Shares{}:
		return ""
	case s.Max == 0:
		return "min " + percent(s.Min)
	case s.Min == 0:
		return "max " + percent(s.Max)
	}
	return fmt.Sprintf("%.1f to %s", 100*s.Min, percent(s.Max))
}

// Why nothing could be decided whatever the values.
const (
	notRead  = "not read"          // some reading does not give the parameter
	onePlace = "read at one place" // how the wall differs from place to place is not known
	noDoubt  = "doubt not known"   // all readings alike, and nothing known of the instrument: no doubt to decide by
)

// A Finding is a parameter of a wall held against its window.
type Finding struct {
	Value   Value               `json:"value"`            // its Length or Share is what was measured
	Limits  units.Limits        `json:"limits,omitzero"`  // of all but Mr1 and Mr2
	Shares  Shares              `json:"shares,omitzero"`  // of Mr1 and Mr2
	Verdict uncertainty.Verdict `json:"verdict"`          // of the wall
	Conform float64             `json:"conform,omitzero"` // probability that the mean of the wall conforms, 0 where something is lacking
	Outside int                 `json:"outside,omitzero"` // places whose own mean lies outside the window
	Lack    string              `json:"lack,omitzero"`    // why nothing could be decided: "not read", "read at one place", "doubt not known"
	Risk    uncertainty.Risk    `json:"risk"`             // that was kept to, per parameter
}

// window returns the text of the limits.
func (f Finding) window() string {
	text := func(l units.Length) string { return l.Decimal(units.Micrometre).String() }
	switch w := f.Limits; {
	case f.Value.isShare():
		return f.Shares.String()
	case !w.HasMin():
		return "max " + text(w.Max) + " µm"
	case !w.HasMax():
		return "min " + text(w.Min) + " µm"
	default:
		return text(w.Min) + " to " + text(w.Max) + " µm"
	}
}

// String returns the finding in a line: "Rpk 0.231 ± 0.042 µm, max 0.3 µm: within".
func (f Finding) String() string {
	window := f.window()
	text := fmt.Sprintf("%v, %s: %v", f.Value, window, f.Verdict)
	switch {
	case f.Lack == notRead:
		text = fmt.Sprintf("%v, %s: %v", f.Value.Parameter, window, f.Verdict)
		fallthrough
	case f.Lack != "":
		return text + ", " + f.Lack
	case f.Outside > 0:
		return fmt.Sprintf("%s, %d of %d places outside", text, f.Outside, int(f.Value.Places.DoF)+1) // which JSON keeps
	}
	return text
}

// Judge holds the wall against every window that is given, in the order of the parameters. The risk is
// per window. No window gives no finding, which says nothing for the wall.
//
// What is judged is the mean of the wall, by [uncertainty.Judge] with the doubt of that mean. Standards
// have other rules: that no place may be beyond, or that 16 % of them may (ISO 21920-3 and ISO 4288, from
// memory). So that none of them is broken by an average, a wall of which any place has a mean outside the
// window is never found within.
//
// Undecided whatever the values is a parameter that was not read, a wall read at one place, and one of
// readings all alike from an instrument of which nothing is known: the finding's Lack says so.
//
// A wall of no values is ErrReadings; windows and risks that cannot be are errors of package uncertainty.
func (w Wall) Judge(l Limits, r uncertainty.Risk) ([]Finding, error) {
	if len(w.Values) == 0 {
		return nil, fmt.Errorf("surface: judge a wall of no values: %w", ErrReadings)
	}
	var findings []Finding
	for _, q := range [...]struct {
		parameter string
		limits    units.Limits
		shares    Shares
	}{
		{symbolRa, l.Ra, Shares{}}, {symbolRq, l.Rq, Shares{}}, {symbolRz, l.Rz, Shares{}}, {symbolRt, l.Rt, Shares{}},
		{symbolRpk, l.Rpk, Shares{}}, {symbolRk, l.Rk, Shares{}}, {symbolRvk, l.Rvk, Shares{}}, {symbolOil, l.Oil, Shares{}},
		{symbolMr1, units.Limits{}, l.Mr1}, {symbolMr2, units.Limits{}, l.Mr2},
	} {
		if q.limits.IsZero() && q.shares == (Shares{}) {
			continue
		}
		f := Finding{Value: Value{Parameter: q.parameter}, Limits: q.limits, Shares: q.shares, Risk: r.OrDefault()}
		for _, v := range w.Values {
			if v.Parameter == q.parameter {
				f.Value = v
			}
		}
		if err := f.decide(w.Places, r); err != nil {
			return nil, fmt.Errorf("surface: judge %s: %w", q.parameter, err)
		}
		findings = append(findings, f)
	}
	return findings, nil
}

// hundred is the length that a share of 1 is judged as: the rule knows no units, and lengths alone.
const hundred = units.Metre

// decide fills in the verdict and what it rests on.
func (f *Finding) decide(places int, r uncertainty.Risk) error {
	measured, window := f.Value.Length, f.Limits
	least, most := f.Limits.Min.In(units.Micrometre), f.Limits.Max.In(units.Micrometre)
	if f.Value.isShare() {
		least, most = f.Shares.Min, f.Shares.Max
		for _, end := range [...]float64{least, most} {
			if !(end >= 0 && end <= 1) {
				return fmt.Errorf("limits %v to %v: want shares of 0 to 1: %w", least, most, uncertainty.ErrLimits)
			}
		}
		window = units.Limits{Min: rounded(least, hundred), Max: rounded(most, hundred)}
		s := f.Value.Share
		measured = uncertainty.Estimate{Value: rounded(s.Value, hundred), Std: rounded(s.Std, hundred), DoF: s.DoF}
	}
	judged, err := uncertainty.Judge(measured, window, r)
	if err != nil {
		return err
	}
	if !window.HasMin() {
		least = noEnd
	}
	if !window.HasMax() {
		most = noEnd
	}
	f.Outside = f.Value.outside(least, most)
	switch {
	case len(f.Value.means) == 0:
		f.Lack = notRead
	case places < 2:
		f.Lack = onePlace
	case measured.Std == 0:
		f.Lack = noDoubt
	default:
		f.Verdict, f.Conform = judged.Verdict, judged.Conform
		if f.Outside > 0 && f.Verdict == uncertainty.Within {
			f.Verdict = uncertainty.Undecided
		}
	}
	return nil
}
