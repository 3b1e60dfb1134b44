// SPDX-License-Identifier: BSD-3-Clause

// Package sense says what a figure of an engine can be at all, and what is usual.
//
// What cannot be is an error: a length below nothing or longer than any bore, a size more than 10 % from the nominal bore,
// for then a unit or a digit has slipped, a difference of sizes beyond 5 % of it. What such an engine can hardly have is
// asked about: the bands are those of the room that owns the quantity; what no room owns, since it is about the bench and
// not about a part, is common practice. None of it is a limit of any maker's. A figure of nothing is one that was not
// given, and never wrong.
package sense

import (
	"cmp"
	"encoding"
	"errors"
	"fmt"
	"math"

	"borewright.example/units"
)

// How far figures may lie apart before a slip of the pen is likelier than the engine.
const (
	LargestBore  = 1 * units.Metre      // an inch taken for a millimetre, or the reverse, is caught by Near
	LargestDepth = 5 * units.Metre      // of anything along the bore
	Coarsest     = units.Millimetre / 2 // no gauge that decides on a bore reads coarser
	nearBore     = 10                   // sizes lie within this many per cent of the nominal bore
	smallShare   = 5                    // ovality, clearance and the like are below this many per cent of it
)

// Rules says, by a rule's name, what is wrong with a value beside a nominal bore; nil where nothing is: a length along the
// bore ("far") or across it ("wide"), a step of a gauge ("fine"), a size near the nominal bore, a difference small against
// it, a part inside it, a window with both ends, whatever has a text that can be ("valid"), and numbers. A value of another
// kind than its rule's panics.
func Rules(nominal units.Length) map[string]func(v any) error {
	along := func(most units.Length) func(v any) error {
		return func(v any) error { return UpTo(length(v), most) }
	}
	return map[string]func(v any) error{
		"far": along(LargestDepth), "wide": along(LargestBore), "fine": along(Coarsest), "inside": along(max(nominal, 0)),
		"near": func(v any) error {
			if w, ok := v.(units.Limits); ok {
				return cmp.Or(Near(w.Min, nominal), Near(w.Max, nominal))
			}
			return Near(length(v), nominal)
		},
		"small":     func(v any) error { return Small(length(v), nominal) },
		"window":    func(v any) error { return window(v.(units.Limits)) },
		"valid":     func(v any) error { _, err := v.(encoding.TextMarshaler).MarshalText(); return err },
		"turning":   func(v any) error { return Turning(v.(units.Frequency)) },
		"apart":     func(v any) error { return InRange(v.(units.TemperatureChange), 0, 100, "want 0 to 100 K") },
		"tolerance": func(v any) error { return InRange(v.(units.Angle), 0, 90*units.Degree, "want 0 to 90°") },
		"volume":    func(v any) error { return InRange(v.(units.Volume), 0, 1, "want above 0, up to 1 m³") },
		"ratio": func(v any) error {
			return InRange(v.(float64), math.Nextafter(1, 2), 100, "want above 1, up to 100")
		},
		"share": func(v any) error {
			return InRange(v.(float64), 0.5, 1, "want 0.5, as much on one side as on the other, to 1, all on one")
		},
	}
}

// length returns the length that a value is, of a window its upper end.
func length(v any) units.Length {
	switch v := v.(type) {
	case *units.Length:
		if v == nil {
			return 0
		}
		return *v
	case units.Limits:
		return v.Max
	}
	return v.(units.Length)
}

// UpTo says what is wrong with a length that may be left out.
func UpTo(l, most units.Length) error {
	if l < 0 || l > most {
		return fmt.Errorf("want above 0, up to %v", most)
	}
	return nil
}

// Near says what is wrong with a size that may be left out, against the nominal bore; nothing where that is a fault itself.
func Near(l, nominal units.Length) error {
	if l == 0 || nominal <= 0 || nominal > LargestBore || (l-nominal).Abs() <= nominal/100*nearBore {
		return nil
	}
	return fmt.Errorf("more than %d %% from the nominal bore %v: is the unit right?", nearBore, nominal)
}

// Small says what is wrong with a difference of sizes that may be left out, against the nominal bore.
func Small(l, nominal units.Length) error {
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

// Turning holds a speed of turning that may be left out to what turns.
func Turning(f units.Frequency) error {
	const most = 100_000 * units.PerMinute
	return InRange(f, 0, most, fmt.Sprintf("want above 0, up to %v", most))
}

// InRange says what is wanted of a number that is not from least to most; NaN never is.
func InRange[T ~float64](x, least, most T, want string) error {
	if !(x >= least && x <= most) {
		return errors.New(want)
	}
	return nil
}
