// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"errors"
	"fmt"
	"math"

	"borewright.example/oversize/jobsheet/internal/strictjson"
	"borewright.example/units"
)

// rules are what a field is held to by its tag `want`, where it is given: a length along the bore ("far") or across
// it ("wide"), a step of a gauge ("fine"), a size near the nominal bore, a difference small against it, a part inside it,
// a window with both ends, a value with its doubt, a standard that is known, whatever has a Validate, and numbers.
func rules(nominal units.Length) map[string]strictjson.Rule {
	along := func(most units.Length) strictjson.Rule {
		return func(v any) error { return upTo(lengthOf(v), most) }
	}
	return map[string]strictjson.Rule{
		"far": along(largestDepth), "wide": along(largestBore), "fine": along(coarsest), "inside": along(max(nominal, 0)),
		"near": func(v any) error {
			if w, ok := v.(units.Limits); ok {
				return cmp.Or(near(w.Min, nominal), near(w.Max, nominal))
			}
			return near(lengthOf(v), nominal)
		},
		"small":  func(v any) error { return small(lengthOf(v), nominal) },
		"window": func(v any) error { return window(v.(units.Limits)) },
		"measured": func(v any) error {
			if m := v.(Measured); !m.isZero() && (m.Value <= 0 || m.Value > largestBore || m.Expanded < 0 || m.Expanded >= m.Value) {
				return fmt.Errorf("want above 0, up to %v, and a doubt that is smaller", largestBore)
			}
			return nil
		},
		"known": func(v any) error {
			if v.(Measured).Expanded > coarsest {
				return fmt.Errorf("want a doubt up to %v", coarsest)
			}
			return nil
		},
		"metal":     func(v any) error { return v.(Metal).check() },
		"valid":     func(v any) error { return v.(interface{ Validate() error }).Validate() },
		"turning":   func(v any) error { return turning(v.(units.Frequency)) },
		"moment":    moment,
		"lasting":   func(v any) error { return inRange(v.(Duration).Seconds(), 0, math.Inf(1), "want above 0") },
		"apart":     func(v any) error { return inRange(v.(units.TemperatureChange), 0, 100, "want 0 to 100 K") },
		"tolerance": func(v any) error { return inRange(v.(units.Angle), 0, 90*units.Degree, "want 0 to 90°") },
		"volume":    func(v any) error { return inRange(v.(units.Volume), 0, 1, "want above 0, up to 1 m³") },
		"ratio": func(v any) error {
			return inRange(v.(float64), math.Nextafter(1, 2), 100, "want above 1, up to 100")
		},
		"share": func(v any) error {
			return inRange(v.(float64), 0.5, 1, "want 0.5, as much on one side as on the other, to 1, all on one")
		},
	}
}

// lengthOf returns the length that a field is, of a window its upper end.
func lengthOf(v any) units.Length {
	switch v := v.(type) {
	case units.Length:
		return v
	case *units.Length:
		return length(v)
	case units.Limits:
		return v.Max
	case Measured:
		return v.Value
	}
	return -1
}

// upTo says what is wrong with a length that may be left out.
func upTo(l, most units.Length) error {
	if l < 0 || l > most {
		return fmt.Errorf("want above 0, up to %v", most)
	}
	return nil
}

// near says what is wrong with a size that may be left out, against the nominal bore; nothing where that is a fault itself.
func near(l, nominal units.Length) error {
	if l == 0 || nominal <= 0 || nominal > largestBore || (l-nominal).Abs() <= nominal/100*nearBore {
		return nil
	}
	return fmt.Errorf("more than %d %% from the nominal bore %v: is the unit right?", nearBore, nominal)
}

// small says what is wrong with a difference of sizes that may be left out, against the nominal bore.
func small(l, nominal units.Length) error {
	if most := nominal / 100 * smallShare; nominal > 0 && (l < 0 || l > most) {
		return fmt.Errorf("want 0 to %v, %d %% of the nominal bore", most, smallShare)
	}
	return nil
}

// errNoWindow is what is wrong with limits of which an end is missing or out of order.
var errNoWindow = errors.New(`want both ends, the smaller first, such as "0.040 to 0.065 mm"`)

// window says what is wrong with limits that may be left out.
func window(w units.Limits) error {
	if !w.IsZero() && (!w.HasMin() || !w.HasMax() || w.Min < 0 || w.Max < w.Min) {
		return errNoWindow
	}
	return nil
}

// turning holds a speed of turning that may be left out to what turns.
func turning(f units.Frequency) error {
	const most = 100_000 * units.PerMinute
	return inRange(f, 0, most, fmt.Sprintf("want above 0, up to %v", most))
}

// inRange says what is wanted of a number that is not from least to most; NaN never is.
func inRange[T ~float64](x, least, most T, want string) error {
	if !(x >= least && x <= most) {
		return errors.New(want)
	}
	return nil
}
