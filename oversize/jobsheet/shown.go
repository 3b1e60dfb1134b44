// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"iter"
	"strings"

	"borewright.example/bore"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Shown is the units that a sheet prints lengths in.
type Shown int8

// Units to print in. A job that does not say gets what it is written in: both where it mixes.
const (
	ShownAsWritten Shown = iota
	ShownMillimetres
	ShownInches
	ShownBoth
)

var shownNames = []string{"", "mm", "in", "both"}

// String returns "mm", "in", "both" or "".
func (s Shown) String() string { return enum.Name(s, shownNames) }

// MarshalText returns the text of [Shown.String].
func (s Shown) MarshalText() ([]byte, error) { return enum.Marshal(s, shownNames) }

// UnmarshalText reads "mm", "in" or "both". On error the receiver keeps its value.
func (s *Shown) UnmarshalText(text []byte) error {
	return enum.Unmarshal(s, text, shownNames)
}

// units returns the units to print in, the first of them first.
func (s Shown) units() []units.Length {
	switch s {
	case ShownInches:
		return []units.Length{units.Inch}
	case ShownBoth:
		return []units.Length{units.Millimetre, units.Inch}
	}
	return []units.Length{units.Millimetre}
}

// written returns the units in which the lengths among the texts of a job are written.
func written(texts iter.Seq[string]) Shown {
	metric, inch := false, false
	for text := range texts {
		l, err := units.ParseLength(text)
		_, errs := units.ParseLimits(text)
		if err != nil && errs != nil || err == nil && l == 0 {
			continue // no length, or one that is the same in any unit
		}
		inches := strings.HasSuffix(text, "in") || strings.HasSuffix(text, "thou") || strings.HasSuffix(text, `"`) || strings.HasSuffix(text, "″")
		inch = inch || inches
		metric = metric || !inches && strings.HasSuffix(text, "m")
	}
	switch {
	case metric && inch:
		return ShownBoth
	case inch:
		return ShownInches
	}
	return ShownMillimetres
}

// placesFor is how many decimals of a size a machinist works to: a micrometre, or a tenth of a thou.
func placesFor(unit units.Length) int {
	if unit == units.Inch {
		return 4
	}
	return 3
}

// boringStep is what a boring tool is set to: 0.01 mm, or 0.0005 in, and the decimals of that.
func boringStep(unit units.Length) (step units.Length, places int) {
	if unit == units.Inch {
		return units.Inch / 2000, 4
	}
	return units.Millimetre / 100, 2
}

// boringStop returns a size to bore to as a boring tool is set, the rest being left to the hone; a size that would then fall
// below the least stays as it is.
func (s Shown) boringStop(size, least units.Length) units.Length {
	step, _ := boringStep(s.units()[0])
	if stop := size.Floor(step); stop >= least {
		return stop
	}
	return size
}

// stop returns a size to bore to as boringStop has it, with the zeros of its step.
func (s Shown) stop(l units.Length) string {
	return s.each(func(u units.Length) string {
		if step, places := boringStep(u); l%step == 0 {
			return l.Format(u, places)
		}
		return plainIn(l, u)
	})
}

// stepOf is the step that a length is printed in with so many decimals of a unit.
func stepOf(unit units.Length, places int) units.Length {
	for range places {
		unit /= 10
	}
	return unit
}

// each returns what is said of one unit for every unit shown, "78.502 mm = 3.09063 in".
func (s Shown) each(say func(unit units.Length) string) string {
	var parts []string
	for _, u := range s.units() {
		parts = append(parts, say(u))
	}
	return strings.Join(parts, " = ")
}

// either returns a text for what goes with millimetres and another for what goes with inches, where they are shown.
func (s Shown) either(metric, inch string) string {
	return s.each(func(u units.Length) string {
		if u == units.Inch {
			return inch
		}
		return metric
	})
}

// to returns l in every unit shown, with so many decimals more than sizes are worked to.
func (s Shown) to(more int, l units.Length) string {
	return s.each(func(u units.Length) string { return l.Format(u, placesFor(u)+more) })
}

func (s Shown) length(l units.Length) string { return s.to(0, l) }  // as sizes are worked to: to a micrometre, or a tenth of a thou
func (s Shown) finer(l units.Length) string  { return s.to(1, l) }  // for what is smaller than the doubt of a size
func (s Shown) gap(l units.Length) string    { return s.to(-1, l) } // as feeler gauges have it: to 0.01 mm, or a thou
func (s Shown) room(l units.Length) string   { return s.to(-2, l) } // round the bore: to 0.1 mm, or 0.01 in

// rough returns a window of roughness.
func (s Shown) rough(w units.Limits) string {
	return s.either(fmt.Sprintf("%.2f to %.2f µm", w.Min.In(units.Micrometre), w.Max.In(units.Micrometre)),
		fmt.Sprintf("%.0f to %.0f µin", w.Min.In(units.Microinch), w.Max.In(units.Microinch)))
}

// stock returns the difference of two sizes as they are printed, so that whoever adds it up finds them again.
func (s Shown) stock(before, after units.Length) string {
	return s.each(func(u units.Length) string {
		step := stepOf(u, placesFor(u))
		return (after.Round(step) - before.Round(step)).Format(u, placesFor(u))
	})
}

// along returns a length along the bore, such as a stroke: to 1 mm, or 0.01 in.
func (s Shown) along(l units.Length) string {
	return s.either(l.Format(units.Millimetre, 0), l.Format(units.Inch, 2))
}

// plain returns a length that was given, such as a depth, in every unit shown, without zeros.
func (s Shown) plain(l units.Length) string {
	return s.each(func(u units.Length) string { return plainIn(l, u) })
}

// over returns how much a size is over nominal, as it is called at a bench: "+0.5 mm", or in whole thou "+0.020 in".
func (s Shown) over(l units.Length) string {
	return "+" + s.each(func(u units.Length) string { return overIn(l, u) })
}

func overIn(l, unit units.Length) string {
	if unit == units.Inch && l%units.Thou == 0 {
		return l.Format(unit, 3)
	}
	return plainIn(l, unit)
}

// plainIn keeps what was given to a tenth of a micrometre, or a hundredth of a thou; what that is not was given in
// the other unit.
func plainIn(l, unit units.Length) string {
	places := placesFor(unit) + 1
	if l%stepOf(unit, places) != 0 {
		places--
	}
	text, name, _ := strings.Cut(l.Format(unit, places), " ")
	return strings.TrimRight(strings.TrimRight(text, "0"), ".") + " " + name
}

// estimate returns e in every unit shown, with its expanded uncertainty for 95 %, gapEstimate that of a gap.
func (s Shown) estimate(e uncertainty.Estimate) string {
	return s.each(func(u units.Length) string { return estimateIn(e, u, placesFor(u), 3) })
}

func (s Shown) gapEstimate(e uncertainty.Estimate) string {
	return s.each(func(u units.Length) string { return estimateIn(e, u, placesFor(u)-1, 1) })
}

// estimateIn returns e to some decimals, its doubt rounded up there; where the doubt is fewer steps of that than the
// fewest wanted or more than ten, to the two digits of [uncertainty.Estimate.Format].
func estimateIn(e uncertainty.Estimate, unit units.Length, places, fewest int) string {
	step := stepOf(unit, places)
	u, err := e.Expanded(0.95)
	if err != nil || u < units.Length(fewest)*step || u > 10*step || e.Validate() != nil {
		return e.Format(unit)
	}
	up := u.Ceil(step)
	value, _, _ := strings.Cut(e.Value.Format(unit, places), " ")
	return value + " ± " + up.Format(unit, places)
}

// limits returns a window in every unit shown, as sizes are worked to, gapLimits that of a gap.
func (s Shown) limits(w units.Limits) string    { return s.window(w, 0) }
func (s Shown) gapLimits(w units.Limits) string { return s.window(w, 1) }

// thumb returns a rule of thumb as sizes are worked to, gapThumb as gaps are: no more digits than it means.
func (s Shown) thumb(w units.Limits) string    { return s.inward(w, 0) }
func (s Shown) gapThumb(w units.Limits) string { return s.inward(w, 1) }

func (s Shown) inward(w units.Limits, less int) string {
	return s.each(func(u units.Length) string {
		places := placesFor(u) - less
		step := stepOf(u, places)
		lo, _, _ := strings.Cut(w.Min.Ceil(step).Format(u, places), " ")
		return lo + " to " + w.Max.Floor(step).Format(u, places)
	})
}

// window returns a window with some decimals less than a size has, or with as many more as it takes, to a micrometre
// or a hundredth of a thou: rounded inward, so that what is printed never allows more than what is meant; a dash
// where there is none.
func (s Shown) window(w units.Limits, less int) string {
	if w.IsZero() {
		return "–"
	}
	return s.each(func(u units.Length) string {
		places, most := placesFor(u)-less, 3
		if u == units.Inch {
			most = 5
		}
		grid := stepOf(u, places)
		for places < most && (w.HasMin() && w.Min%grid != 0 || w.HasMax() && w.Max%grid != 0) {
			places, grid = places+1, grid/10
		}
		in, err := w.Inward(grid)
		if err != nil { // narrower than the grid: exactly, then
			return w.String()
		}
		lo, hi := in.Min.Format(u, places), in.Max.Format(u, places)
		switch {
		case !in.HasMin():
			return "max " + hi
		case !in.HasMax():
			return "min " + lo
		}
		return lo[:strings.LastIndexByte(lo, ' ')] + " to " + hi
	})
}

// route names a route, with the size that it goes to.
func (s Shown) route(r oversize.Route, over units.Length) string {
	if r == oversize.BoreOversize && over != 0 { // of a wall that forbids boring every size is refused
		return r.String() + " to " + s.over(over)
	}
	return r.String()
}

// temperature returns t in the degrees that go with the units shown, to a whole one.
func (s Shown) temperature(t units.Temperature) string {
	return s.either(fmt.Sprintf("%.0f °C", t.Celsius()), fmt.Sprintf("%.0f °F", t.Fahrenheit()))
}

// within returns a temperature with its half-width, to a tenth of a degree.
func (s Shown) within(t bore.Temperature) string {
	if t.Within == 0 {
		return s.either(fmt.Sprintf("%.1f °C", t.Value.Celsius()), fmt.Sprintf("%.1f °F", t.Value.Fahrenheit()))
	}
	return s.either(fmt.Sprintf("%.1f ± %.1f °C", t.Value.Celsius(), t.Within.In(units.Kelvin)),
		fmt.Sprintf("%.1f ± %.1f °F", t.Value.Fahrenheit(), t.Within.In(units.DegreeFahrenheit)))
}

// pressures returns a range of pressures in the units that go with those shown.
func (s Shown) pressures(least, greatest units.Pressure) string {
	const psi = units.PoundPerSquareInch
	return s.either(fmt.Sprintf("%.1f to %.1f MPa", least.In(units.Megapascal), greatest.In(units.Megapascal)),
		fmt.Sprintf("%.0f to %.0f psi", least.In(psi), greatest.In(psi)))
}

// forces returns a range of forces in the units that go with those shown.
func (s Shown) forces(least, greatest units.Force) string {
	const kilonewton = 1000 * units.Newton
	return s.either(fmt.Sprintf("%.1f to %.1f kN", least.In(kilonewton), greatest.In(kilonewton)),
		fmt.Sprintf("%.0f to %.0f lbf", least.In(units.PoundForce), greatest.In(units.PoundForce)))
}

// capacity returns a swept volume in every unit shown, and the ratio where it is known.
func (s Shown) capacity(c oversize.Compression) string {
	text := s.either(fmt.Sprintf("%.1f cm³", c.Swept.In(units.CubicCentimetre)), fmt.Sprintf("%.2f in³", c.Swept.In(units.CubicInch)))
	if c.Ratio != 0 {
		text += fmt.Sprintf(", %.2f : 1", c.Ratio)
	}
	if c.FromPort != 0 {
		text += fmt.Sprintf(", %.2f : 1 from where the port closes", c.FromPort)
	}
	return text
}
