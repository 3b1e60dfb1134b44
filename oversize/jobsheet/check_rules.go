// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"encoding"
	"errors"
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/internal/strictjson"
	"borewright.example/oversize/sleeve"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
)

// rules are what a field is held to by its tag `want`, where it is given: a length along the bore ("far") or across
// it ("wide"), a step of a gauge ("fine"), a size near the nominal bore, a difference small against it, a part inside it,
// a window with both ends, a value with its doubt, a standard that is known, whatever has a text that can be, and numbers.
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
		"valid":     func(v any) error { _, err := v.(encoding.TextMarshaler).MarshalText(); return err },
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

const (
	steps                   = 10      // of a scale, that scatter and dial are off by at most
	leastWithin, mostWithin = 0.1, 15 // half-width of a temperature in the workshop, K
)

// usual says, for the names in the tags `usual`, why a field looks like a slip; "" where it does not. The bands are those of
// the room that owns the quantity; what no room owns, since it is about the bench and not about a part, is common practice.
func usual(j Job) map[string]func(v any) string {
	b, um := j.Engine.Bore, units.Micrometre
	gap, gapLimit := rings.UsualGap(b)
	leastRatio, mostRatio := oversize.UsualRatio()
	cool, hot := material.UsualWorkshop()
	coolest, hottest := material.UsualRunning()
	form, finish := bore.UsualForm(b), bore.UsualFinishForm(b)
	scale := units.Limits{Min: j.Gauge.Resolution / steps * 2, Max: steps * j.Gauge.Resolution}
	spindle := units.Limits{Min: um / 10, Max: 30 * um} // error of a radius; a tenth of the most in scatter
	return map[string]func(v any) string{
		"stroke":          inBand(oversize.UsualStroke(b)),
		"over":            inBand(oversize.UsualOver()),
		"allowance":       inBand(oversize.UsualHoning()),
		"shift":           inBand(units.Limits{Min: um, Max: b / 500}),
		"ratio":           between(leastRatio, mostRatio),
		"new":             inBand(bore.UsualNew(b)),
		"service":         inBand(bore.UsualService(b)),
		"form":            inBand(form),
		"finish":          inBand(finish),
		"round":           inBand(units.Limits{Min: finish.Min / 2, Max: form.Max}),
		"clearance":       inBand(fit.UsualClearance(b)),
		"worn":            inBand(fit.UsualWornClearance(b)),
		"wall":            inBand(oversize.UsualWall(b)),
		"interference":    inBand(sleeve.UsualInterference(j.Engine.Sleeve.Seat)),
		"slip":            inBand(units.Limits{Min: 20 * um, Max: 200 * um}),
		"gap":             inBand(gap),
		"gap limit":       inBand(gapLimit),
		"hot gap":         inBand(units.Limits{Min: 20 * um, Max: 200 * um}),
		"side":            inBand(units.Limits{Min: 10 * um, Max: 250 * um}),
		"play":            inBand(units.Limits{Min: 50 * um, Max: 1500 * um}),
		"coating":         inBand(units.Limits{Min: 3 * um, Max: 40 * um}),
		"resolution":      inBand(units.Limits{Min: 400 * units.Nanometre, Max: units.Millimetre / 50}),
		"scatter":         inBand(scale),
		"dial":            inBand(units.Limits{Min: scale.Min, Max: 4 * j.Gauge.Resolution}),
		"spindle":         inBand(spindle),
		"spindle scatter": inBand(units.Limits{Min: spindle.Min, Max: spindle.Max / steps}),
		"bar":             inBand(units.Limits{Min: um, Max: 50 * um}), // a boring bar, radial
		"skin":            inBand(units.Limits{Min: um, Max: 20 * um}),
		"doubt":           inDoubt(units.Limits{Min: um / 2, Max: 30 * um}), // expanded
		"gap doubt":       inDoubt(units.Limits{Min: 5 * um, Max: 120 * um}),
		"wall doubt":      inDoubt(units.Limits{Min: 50 * um, Max: 1500 * um}),
		"workshop":        warmAs(cool, hot, mostWithin),
		"running":         warmAs(coolest, hottest, 60),
		"place to place":  between[units.TemperatureChange](leastWithin, mostWithin/3),
		"honing":          between(cool, units.ReferenceTemperature+90),
		"tolerance":       between(1*units.Degree, 15*units.Degree),
		"angle doubt":     between(units.Degree/5, 10*units.Degree),
		"depth": func(v any) string {
			if j.Engine.Layout.Length == 0 && lengthOf(v) > 2*j.Engine.Stroke {
				return "a bore ends within two strokes"
			}
			return ""
		},
		"crosshatch": func(v any) string {
			return between(15*units.Degree, 120*units.Degree)(v.(hone.Crosshatch).Included())
		},
	}
}

// shownAs is a value as it is confirmed.
func shownAs(v any) any {
	switch v := v.(type) {
	case *units.Length:
		return *v
	case hone.Crosshatch:
		return show.Crosshatch(v)
	}
	return v
}

// inBand holds lengths against a band, both ends of a window; a length of nothing says nothing.
func inBand(band units.Limits) func(v any) string {
	return func(v any) string {
		if w, ok := v.(units.Limits); ok && band.Contains(w.Min) && band.Contains(w.Max) {
			return ""
		} else if l := lengthOf(v); !ok && (l == 0 || band.Contains(l)) {
			return ""
		}
		if band.Min < 10*units.Micrometre { // of such a step even a micrometre is much
			return fmt.Sprintf("%v is usual", band)
		}
		return ShownMillimetres.in().Thumb(band) + " is usual"
	}
}

// inDoubt holds the doubt of a value, where it came with one.
func inDoubt(band units.Limits) func(v any) string {
	return func(v any) string {
		if m := v.(Measured); m.Expanded != 0 && !band.Contains(m.Expanded) {
			return fmt.Sprintf("a doubt of %v is usual", band)
		}
		return ""
	}
}

// between holds a number of whatever unit.
func between[T ~float64](least, most T) func(v any) string {
	return func(v any) string {
		if x := v.(T); x != 0 && !(x >= least && x <= most) {
			return fmt.Sprintf("%v to %v is usual", least, most)
		}
		return ""
	}
}

// warmAs holds a temperature, and how well it is known, in kelvins.
func warmAs(least, most units.Temperature, within float64) func(v any) string {
	return func(v any) string {
		t := v.(bore.Temperature)
		if w := float64(t.Within); t.Value >= least && t.Value <= most && (w == 0 || w >= leastWithin && w <= within) {
			return ""
		}
		return fmt.Sprintf("%v to %v is usual, known to ± %v to %v K", least, most, leastWithin, within)
	}
}
