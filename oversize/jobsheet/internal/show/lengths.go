// SPDX-License-Identifier: BSD-3-Clause

package show

import (
	"fmt"
	"strings"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

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

// BoringStop returns a size to bore to as a boring tool is set, the rest being left to the hone; a size that would then fall
// below the least stays as it is.
func (s In) BoringStop(size, least units.Length) units.Length {
	step, _ := boringStep(s.First())
	if stop := size.Floor(step); stop >= least {
		return stop
	}
	return size
}

// Stop returns a size to bore to as BoringStop has it, with the zeros of its step.
func (s In) Stop(l units.Length) string {
	return s.Each(func(u units.Length) string {
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

// Each returns what is said of one unit for every unit shown, "78.502 mm = 3.09063 in".
func (s In) Each(say func(unit units.Length) string) string {
	text := say(s[0])
	if s[1] != 0 {
		text += " = " + say(s[1])
	}
	return text
}

// Either returns a text for what goes with millimetres and another for what goes with inches, where they are shown.
func (s In) Either(metric, inch string) string {
	return s.Each(func(u units.Length) string {
		if u == units.Inch {
			return inch
		}
		return metric
	})
}

// to returns l in every unit shown, with so many decimals more than sizes are worked to.
func (s In) to(more int, l units.Length) string {
	return s.Each(func(u units.Length) string { return l.Format(u, placesFor(u)+more) })
}

// Length is as sizes are worked to: to a micrometre, or a tenth of a thou.
func (s In) Length(l units.Length) string { return s.to(0, l) }

// Finer is for what is smaller than the doubt of a size, by one place.
func (s In) Finer(l units.Length) string { return s.to(1, l) }

// Gap is as feeler gauges have it: to 0.01 mm, or a thou.
func (s In) Gap(l units.Length) string { return s.to(-1, l) }

// Room is round the bore: to 0.1 mm, or 0.01 in.
func (s In) Room(l units.Length) string { return s.to(-2, l) }

// rough returns a window of roughness.
func (s In) rough(w units.Limits) string {
	return s.Either(fmt.Sprintf("%.2f to %.2f µm", w.Min.In(units.Micrometre), w.Max.In(units.Micrometre)),
		fmt.Sprintf("%.0f to %.0f µin", w.Min.In(units.Microinch), w.Max.In(units.Microinch)))
}

// Stock returns the difference of two sizes as they are printed, so that whoever adds it up finds them again.
func (s In) Stock(before, after units.Length) string {
	return s.Each(func(u units.Length) string {
		step := stepOf(u, placesFor(u))
		return (after.Round(step) - before.Round(step)).Format(u, placesFor(u))
	})
}

// Along returns a length along the bore, such as a stroke: to 1 mm, or 0.01 in.
func (s In) Along(l units.Length) string {
	return s.Either(l.Format(units.Millimetre, 0), l.Format(units.Inch, 2))
}

// Plain returns a length that was given, such as a depth, in every unit shown, without zeros.
func (s In) Plain(l units.Length) string {
	return s.Each(func(u units.Length) string { return plainIn(l, u) })
}

// Over returns how much a size is over nominal, as it is called at a bench: "+0.5 mm", or in whole thou "+0.020 in".
func (s In) Over(l units.Length) string {
	return "+" + s.Each(func(u units.Length) string { return overIn(l, u) })
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

// Estimate returns e in every unit shown, with its expanded uncertainty for 95 %.
func (s In) Estimate(e uncertainty.Estimate) string {
	return s.Each(func(u units.Length) string { return estimateIn(e, u, placesFor(u), 3) })
}

// GapEstimate is Estimate of a gap.
func (s In) GapEstimate(e uncertainty.Estimate) string {
	return s.Each(func(u units.Length) string { return estimateIn(e, u, placesFor(u)-1, 1) })
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

// Limits returns a window in every unit shown, as sizes are worked to.
func (s In) Limits(w units.Limits) string { return s.window(w, 0) }

// GapLimits is Limits of a gap.
func (s In) GapLimits(w units.Limits) string { return s.window(w, 1) }

// Thumb returns a rule of thumb as sizes are worked to: no more digits than it means.
func (s In) Thumb(w units.Limits) string { return s.inward(w, 0) }

// GapThumb is Thumb of a gap.
func (s In) GapThumb(w units.Limits) string { return s.inward(w, 1) }

func (s In) inward(w units.Limits, less int) string {
	return s.Each(func(u units.Length) string {
		places := placesFor(u) - less
		step := stepOf(u, places)
		lo, _, _ := strings.Cut(w.Min.Ceil(step).Format(u, places), " ")
		return lo + " to " + w.Max.Floor(step).Format(u, places)
	})
}

// window returns a window with some decimals less than a size has, or with as many more as it takes, to a micrometre
// or a hundredth of a thou: rounded inward, so that what is printed never allows more than what is meant; a dash
// where there is none.
func (s In) window(w units.Limits, less int) string {
	if w.IsZero() {
		return "–"
	}
	return s.Each(func(u units.Length) string {
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

// Known is Estimate, a dash where there is none.
func (s In) Known(e uncertainty.Estimate) string {
	if e == (uncertainty.Estimate{}) {
		return "–"
	}
	return s.Estimate(e)
}

// Bare returns a text of lengths without their unit, and in the first unit alone.
func (s In) Bare(text string) string {
	text, _, _ = strings.Cut(text, " = ")
	return strings.ReplaceAll(text, strings.TrimPrefix(s.First().Format(s.First(), 0), "1"), "")
}

// Signed puts a plus before what has no sign.
func Signed(text string) string {
	if strings.HasPrefix(text, "-") {
		return text
	}
	return "+" + text
}
