// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"errors"
	"fmt"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/internal/strictjson"
	"borewright.example/units"
)

// rules are what a field is held to by its tag `want`, where it is given: a length along the bore ("far") or across
// it ("wide"), a step of a gauge ("fine"), a size near the nominal bore or a difference small against it, a window with
// both ends, a value with its doubt, a temperature, a speed of turning, a moment.
func rules(nominal units.Length) map[string]strictjson.Rule {
	along := func(most units.Length) strictjson.Rule {
		return func(v any) error { return upTo(lengthOf(v), most) }
	}
	return map[string]strictjson.Rule{
		"far": along(largestDepth), "wide": along(largestBore), "fine": along(coarsest),
		"near": func(v any) error {
			if w, ok := v.(units.Limits); ok {
				return cmp.Or(near(w.Min, nominal), near(w.Max, nominal))
			}
			return near(lengthOf(v), nominal)
		},
		"small": func(v any) error { return small(lengthOf(v), nominal) },
		"window": func(v any) error {
			if w, ok := v.(units.Limits); ok {
				return window(w)
			}
			return errNoWindow
		},
		"measured": func(v any) error {
			m, ok := v.(Measured)
			if !ok || !m.isZero() && (m.Value <= 0 || m.Value > largestBore || m.Expanded < 0 || m.Expanded >= m.Value) {
				return fmt.Errorf("want above 0, up to %v, and a doubt that is smaller", largestBore)
			}
			return nil
		},
		"warm": func(v any) error {
			t, ok := v.(bore.Temperature)
			if !ok {
				return errors.New(missingTemperature)
			}
			return t.Validate()
		},
		"turning": turning, "moment": moment,
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
func turning(v any) error {
	const most = 100_000 * units.PerMinute
	if f, ok := v.(units.Frequency); !ok || f != 0 && !(f > 0 && f <= most) { // NaN too
		return fmt.Errorf("want above 0, up to %v", most)
	}
	return nil
}
