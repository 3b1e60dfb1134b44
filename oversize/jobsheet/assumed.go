// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/surface"
	"borewright.example/units"
)

// Doubts that are taken where none is stated: wide, common practice, so that a statement narrows them.
const (
	uncertified  = 10 * units.Micrometre  // of a micrometer, ring or blocks without a certificate, and of what was measured with one
	byFeeler     = 30 * units.Micrometre  // of an end gap by feeler gauge
	byCalliper   = 500 * units.Micrometre // of a wall
	dialSteps    = 2                      // error of a dial over its travel, in steps of its scale
	repeatSteps  = 1                      // standard deviation of a reading that nobody repeated, in steps
	turningRoom  = 500 * units.Micrometre // of a pegged ring about its peg, along the wall
	placeToPlace = units.Kelvin           // half-width of differences along the wall
	spindleError = 10 * units.Micrometre  // greatest of a radius, either way
	stylusStep   = 50 * units.Nanometre   // last digit of a texture instrument
	stylusShare  = 0.05                   // standard uncertainty of what it shows, as a share
	stylusDigit  = 0.01                   // last digit of Mr1 and Mr2, as a share
	byProtractor = 2 * units.Degree       // of a crosshatch measured by hand
	thermometer  = 2 * units.Kelvin       // half-width of a temperature in the workshop
	inWork       = 20 * units.Kelvin      // and of one in work, which is seldom measured
	ofExpansion  = 1e-6 * units.PerKelvin // half-width of a coefficient, as tables have it
)

// within returns a temperature with the half-width that is usual where the job says none: nothing is known exactly.
func within(t bore.Temperature, usual units.TemperatureChange) bore.Temperature {
	if !t.IsZero() && t.Within == 0 {
		t.Within = usual
	}
	return t
}

// within returns the temperatures in the workshop with a half-width each.
func (t Temperatures) within() Temperatures {
	t.Standard, t.GaugeSet = within(t.Standard, thermometer), within(t.GaugeSet, thermometer)
	t.GaugeUsed, t.Cylinder = within(t.GaugeUsed, thermometer), within(t.Cylinder, thermometer)
	return t
}

// within returns the temperatures in work with a half-width each.
func (r Running) within() Running {
	r.Ring, r.Bore, r.Piston = within(r.Ring, inWork), within(r.Bore, inWork), within(r.Piston, inWork)
	return r
}

// profiler returns what is known of the instrument that read the texture, with what is taken where the job does not say.
func (g *given) profiler() surface.Instrument {
	p := g.Gauge.Profiler
	if g.Engine.Texture == (surface.Limits{}) || !slices.ContainsFunc(g.Cylinders, func(c Cylinder) bool { return len(c.Texture)+len(c.Profiles) > 0 }) {
		return p
	}
	if p.Relative == 0 {
		p.Relative = stylusShare
		g.assume("gauge.profiler.relative", "the texture instrument is off by a share of %v of what it shows, one standard deviation", p.Relative)
	}
	if p.Resolution == 0 {
		p.Resolution = stylusStep
		g.assume("gauge.profiler.resolution", "the texture instrument shows steps of %s", p.Resolution.Format(units.Micrometre, 2))
	}
	if p.DigitOfShare == 0 && (g.Engine.Texture.Mr1 != surface.Shares{} || g.Engine.Texture.Mr2 != surface.Shares{}) {
		p.DigitOfShare = stylusDigit
		g.assume("gauge.profiler.digit_of_share", "the texture instrument shows Mr1 and Mr2 in steps of a share of %v", p.DigitOfShare)
	}
	return p
}

// assume notes once what was taken for a field of the job.
func (g *given) assume(field, took string, args ...any) {
	if !slices.ContainsFunc(g.assumed, func(r Remark) bool { return r.On == field }) {
		g.assumed = append(g.assumed, Remark{field, fmt.Sprintf(took, args...)})
	}
}
