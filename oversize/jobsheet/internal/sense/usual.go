// SPDX-License-Identifier: BSD-3-Clause

package sense

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/sleeve"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
)

// An Engine is what the bands of a figure hang on.
type Engine struct {
	Bore, Stroke units.Length // nominal
	Length       units.Length // of the bore; 0 is not known
	Seat         units.Length // of a sleeve
	Step         units.Length // of the gauge's scale
}

const (
	steps                   = 10      // of a scale, that scatter and dial are off by at most
	leastWithin, mostWithin = 0.1, 15 // half-width of a temperature in the workshop, K
)

// Usual says, by a band's name, why a value looks like a slip; "" where it does not. A value of another kind than its band's
// panics.
func (e Engine) Usual() map[string]func(v any) string {
	b, um := e.Bore, units.Micrometre
	gap, gapLimit := rings.UsualGap(b)
	leastRatio, mostRatio := oversize.UsualRatio()
	cool, hot := material.UsualWorkshop()
	coolest, hottest := material.UsualRunning()
	form, finish := bore.UsualForm(b), bore.UsualFinishForm(b)
	scale := units.Limits{Min: e.Step / steps * 2, Max: steps * e.Step}
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
		"interference":    inBand(sleeve.UsualInterference(e.Seat)),
		"slip":            inBand(units.Limits{Min: 20 * um, Max: 200 * um}),
		"gap":             inBand(gap),
		"gap limit":       inBand(gapLimit),
		"hot gap":         inBand(units.Limits{Min: 20 * um, Max: 200 * um}),
		"side":            inBand(units.Limits{Min: 10 * um, Max: 250 * um}),
		"play":            inBand(units.Limits{Min: 50 * um, Max: 1500 * um}),
		"coating":         inBand(units.Limits{Min: 3 * um, Max: 40 * um}),
		"resolution":      inBand(units.Limits{Min: 400 * units.Nanometre, Max: units.Millimetre / 50}),
		"scatter":         inBand(scale),
		"dial":            inBand(units.Limits{Min: scale.Min, Max: 4 * e.Step}),
		"spindle":         inBand(spindle),
		"spindle scatter": inBand(units.Limits{Min: spindle.Min, Max: spindle.Max / steps}),
		"bar":             inBand(units.Limits{Min: um, Max: 50 * um}), // a boring bar, radial
		"skin":            inBand(units.Limits{Min: um, Max: 20 * um}),
		"doubt":           doubted(units.Limits{Min: um / 2, Max: 30 * um}), // expanded
		"gap doubt":       doubted(units.Limits{Min: 5 * um, Max: 120 * um}),
		"wall doubt":      doubted(units.Limits{Min: 50 * um, Max: 1500 * um}),
		"workshop":        warmAs(cool, hot, mostWithin),
		"running":         warmAs(coolest, hottest, 60),
		"place to place":  between[units.TemperatureChange](leastWithin, mostWithin/3),
		"honing":          between(cool, units.ReferenceTemperature+90),
		"tolerance":       between(1*units.Degree, 15*units.Degree),
		"angle doubt":     between(units.Degree/5, 10*units.Degree),
		"depth": func(v any) string {
			if e.Length == 0 && length(v) > 2*e.Stroke {
				return "a bore ends within two strokes"
			}
			return ""
		},
		"crosshatch": func(v any) string {
			return between(15*units.Degree, 120*units.Degree)(v.(hone.Crosshatch).Included())
		},
	}
}

// inBand holds lengths against a band, both ends of a window; a length of nothing says nothing.
func inBand(band units.Limits) func(v any) string {
	return func(v any) string {
		if w, ok := v.(units.Limits); ok && band.Contains(w.Min) && band.Contains(w.Max) {
			return ""
		} else if l := length(v); !ok && (l == 0 || band.Contains(l)) {
			return ""
		}
		if band.Min < 10*units.Micrometre { // of such a step even a micrometre is much
			return fmt.Sprintf("%v is usual", band)
		}
		return show.In{units.Millimetre}.Thumb(band) + " is usual"
	}
}

// doubted holds the doubt of a value, where it came with one.
func doubted(band units.Limits) func(v any) string {
	return func(v any) string {
		if u := length(v); u != 0 && !band.Contains(u) {
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
