// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"iter"
	"strings"

	"borewright.example/bore"
	"borewright.example/internal/enum"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Shown is the units that a sheet prints lengths in.
type Shown int8

// Units to print in. A job that does not say gets what it is written in: both where it mixes.
const (
	ShownAsWritten Shown = iota
	Millimetres
	Inches
	BothUnits
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
	case Inches:
		return []units.Length{units.Inch}
	case BothUnits:
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
		return BothUnits
	case inch:
		return Inches
	}
	return Millimetres
}

// placesFor is how many decimals a length without a doubt of its own is printed with: a
// micrometre, or a tenth of that of a thou.
func placesFor(unit units.Length) int {
	if unit == units.Inch {
		return 5
	}
	return 3
}

// each returns what is said of one unit for every unit shown, "78.502 mm = 3.09063 in".
func (s Shown) each(say func(unit units.Length) string) string {
	var parts []string
	for _, u := range s.units() {
		parts = append(parts, say(u))
	}
	return strings.Join(parts, " = ")
}

// length returns l in every unit shown; one decimal more where that is half a micrometre, as the
// middle of a window may be.
func (s Shown) length(l units.Length) string {
	return s.each(func(u units.Length) string {
		places := placesFor(u)
		if u == units.Millimetre && l%units.Micrometre == units.Micrometre/2 {
			places++
		}
		return l.Format(u, places)
	})
}

// plain returns a length that was given, such as a depth, in every unit shown, without zeros.
func (s Shown) plain(l units.Length) string {
	return s.each(func(u units.Length) string { return plainIn(l, u) })
}

func plainIn(l, unit units.Length) string {
	name := " mm"
	if unit == units.Inch {
		name = " in"
	}
	return l.Decimal(unit).Round(int32(placesFor(unit))).String() + name
}

// estimate returns e in every unit shown, with its expanded uncertainty for 95 %.
func (s Shown) estimate(e uncertainty.Estimate) string {
	return s.each(func(u units.Length) string { return e.Format(u) })
}

// limits returns a window in every unit shown, rounded inward so that what is printed never
// allows more than what is meant; a dash where there is none.
func (s Shown) limits(w units.Limits) string {
	if w.IsZero() {
		return "–"
	}
	return s.each(func(u units.Length) string {
		grid := units.Micrometre
		if u == units.Inch {
			grid = units.Thou / 100
		}
		in, err := w.Inward(grid)
		if err != nil { // narrower than the grid: exactly, then
			return w.String()
		}
		lo, hi := in.Min.Format(u, placesFor(u)), in.Max.Format(u, placesFor(u))
		switch {
		case !in.HasMin():
			return "max " + hi
		case !in.HasMax():
			return "min " + lo
		}
		return lo[:strings.LastIndexByte(lo, ' ')] + " to " + hi
	})
}

// temperature returns t in the degrees that go with the units shown, to a whole one.
func (s Shown) temperature(t units.Temperature) string {
	return s.each(func(u units.Length) string {
		x := t.Celsius()
		if u == units.Inch {
			x = t.Fahrenheit()
		}
		return fmt.Sprintf("%.0f %s", x, degree(u))
	})
}

// within returns a temperature with its half-width, to a tenth of a degree.
func (s Shown) within(t bore.Temperature) string {
	return s.each(func(u units.Length) string {
		x, half := t.Value.Celsius(), t.Within.In(units.Kelvin)
		if u == units.Inch {
			x, half = t.Value.Fahrenheit(), t.Within.In(units.DegreeFahrenheit)
		}
		if half == 0 {
			return fmt.Sprintf("%.1f %s", x, degree(u))
		}
		return fmt.Sprintf("%.1f ± %.1f %s", x, half, degree(u))
	})
}

// degree names the degree that goes with a unit of length.
func degree(unit units.Length) string {
	if unit == units.Inch {
		return "°F"
	}
	return "°C"
}

// pressures returns a range of pressures in the units that go with those shown.
func (s Shown) pressures(least, greatest units.Pressure) string {
	return s.each(func(u units.Length) string {
		if u == units.Inch {
			return fmt.Sprintf("%.0f to %.0f psi", least.In(units.PoundPerSquareInch), greatest.In(units.PoundPerSquareInch))
		}
		return fmt.Sprintf("%.1f to %.1f MPa", least.In(units.Megapascal), greatest.In(units.Megapascal))
	})
}

// capacity returns a swept volume in every unit shown, and the ratio where it is known.
func (s Shown) capacity(c Capacity) string {
	text := s.each(func(u units.Length) string {
		if u == units.Inch {
			return fmt.Sprintf("%.2f in³", c.Swept.In(units.CubicInch))
		}
		return fmt.Sprintf("%.1f cm³", c.Swept.In(units.CubicCentimetre))
	})
	if c.Ratio != 0 {
		text += fmt.Sprintf(", %.2f : 1", c.Ratio)
	}
	if c.FromPort != 0 {
		text += fmt.Sprintf(", %.2f : 1 from where the port closes", c.FromPort)
	}
	return text
}
