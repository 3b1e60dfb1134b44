// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/bore/surface"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty/study"
)

// given is a job with what every step of the plan needs of it. No step writes into it.
type given struct {
	Job
	risk    budget
	wall    material.Material // what a bore grows with
	piston  material.Material
	survey  session
	proof   session
	spindle Spindle // with what is taken where the job does not say, as the two below
	stylus  surface.Instrument
	atWork  Running
	study   *study.Study // of the gauge; nil where there is none
	assumed []Remark

	profiled [][]surface.Reading // of each cylinder, what its profiles show
}

// given looks up what the job names, and what is taken where it names nothing.
func (j Job) given() (given, error) {
	g := given{Job: j, risk: j.budget()}
	g.wall = g.wallMaterial()
	g.piston = g.metal(j.Engine.PistonMaterial, material.EutecticAluminium(), "engine.piston_material", "a piston")
	if len(j.Gauge.Study) > 0 {
		found, err := study.Analyse(j.Gauge.Study)
		if err != nil {
			return g, fault("gauge.study", err)
		}
		g.study = &found
	}
	g.spindled()
	g.stylus = g.profiler()
	g.survey = g.session(j.Gauge, "gauge", false)
	for i, c := range j.Cylinders {
		shown, err := profiled(fmt.Sprintf("cylinders[%d]", i), c.Profiles)
		if err != nil {
			return g, err
		}
		g.profiled = append(g.profiled, shown)
	}
	g.atWork = j.Engine.Running
	g.degrees(&g.atWork.Ring, "engine.running.ring", inWork)
	g.degrees(&g.atWork.Bore, "engine.running.bore", inWork)
	g.degrees(&g.atWork.Piston, "engine.running.piston", inWork)
	for i, c := range j.Cylinders {
		if !c.Crosshatch.IsZero() && c.CrosshatchDoubt == 0 {
			g.assume(fmt.Sprintf("cylinders[%d].crosshatch_doubt", i), "the crosshatch is what was measured to ± %v", byProtractor)
		}
	}
	g.proof = g.session(j.proofGauge(), "proof", true)
	return g, nil
}

// wallMaterial returns the material that a bore grows with.
func (g *given) wallMaterial() material.Material {
	e, usual := g.Engine, material.GreyIron()
	if e.Wall == oversize.Plated || e.Wall == oversize.BareAlSi {
		usual = material.AluminiumBlock()
	}
	inside := g.metal(e.Material, usual, "engine.material", "the cylinder wall")
	if e.Wall != oversize.IronSleeve {
		return inside
	}
	return material.Between(inside, g.metal(e.Barrel, material.AluminiumBlock(), "engine.barrel", "the barrel around the sleeve"))
}

// metal returns the named metal, or the usual one with the assumption said.
func (g *given) metal(m Metal, usual material.Material, field, what string) material.Material {
	if m == "" {
		g.assume(field, "%s is %s", what, usual.Name)
	} else if _, err := material.ByName(string(m)); err != nil && !strings.Contains(string(m), " ± ") {
		g.assume(field, "the coefficient is what the job says to ± %v", ofExpansion)
	}
	return m.or(usual)
}

// degrees takes the usual half-width of a temperature that came with none: nothing is known exactly.
func (g *given) degrees(t *bore.Temperature, field string, usual units.TemperatureChange) {
	if !t.IsZero() && t.Within == 0 {
		t.Within = usual
		g.assume(field, "the temperature is what the job says to ± %v", usual)
	}
}

// session returns the instruments as they were set for the survey, or for the proof.
func (g *given) session(by Gauge, path string, finished bool) (s session) {
	s.by = by
	rod := g.metal(by.Material, material.PlainSteel(), "gauge.material", "the gauge's rod")
	read, once, traced := g.taken(finished)
	if !read && !traced {
		return s
	}
	t := by.Temperatures
	g.degrees(&t.Standard, path+".temperatures.standard", thermometer)
	g.degrees(&t.GaugeSet, path+".temperatures.gauge_set", thermometer)
	g.degrees(&t.GaugeUsed, path+".temperatures.gauge_used", thermometer)
	g.degrees(&t.Cylinder, path+".temperatures.cylinder", thermometer)
	s.gauge = bore.Gauge{
		Kind: by.kind(), Dial: by.Dial, Resolution: by.Resolution, Repeatability: by.Repeatability, DialError: by.DialError,
		Material: rod, SetAt: t.GaugeSet, UsedAt: t.GaugeUsed, Part: g.wall, PartAt: t.Cylinder, PlaceSpread: t.PlaceToPlace,
	}
	out := &s.gauge
	if by.DialError == 0 && read {
		out.DialError = dialSteps * by.Resolution
		g.assume("gauge.dial_error", "the dial is off by %s at most", g.Units.in().Plain(out.DialError))
	}
	if g.study != nil && g.study.Repeatability.Std > 0 {
		out.Repeatability, out.RepeatabilityDoF = g.study.Repeatability.Std, g.study.Repeatability.DoF
	}
	if out.Repeatability == 0 && once {
		g.assume("gauge.repeatability", "one reading scatters by %s, one standard deviation", g.Units.in().Plain(repeatSteps*by.Resolution))
	}
	if t.PlaceToPlace == 0 {
		out.PlaceSpread = placeToPlace
		g.assume(path+".temperatures.place_to_place", "places along the wall differ by %v at most either way", placeToPlace)
	}
	if by.Standard != (Standard{}) {
		metal := g.metal(by.Standard.Material, material.GaugeSteel(), path+".standard.material", "the setting standard")
		if by.Standard.Size.Expanded == 0 {
			g.assume(path+".standard.size", "the setting standard, without a certificate, is its size to ± %v", uncertified)
		}
		size := by.Standard.Size.estimate(uncertified)
		out.Standard = bore.Standard{Size: size.Value, Std: size.Std, Material: metal, At: t.Standard}
	}
	if traced {
		s.spindle = g.turning().Gauge(s.gauge)
	}
	return s
}

// spindled adds what is taken of the spindle where the job does not say.
func (g *given) spindled() {
	g.spindle = g.Gauge.Spindle
	if !slices.ContainsFunc(g.Cylinders, func(c Cylinder) bool { return len(c.Traces)+len(c.ProofTraces) > 0 }) {
		return
	}
	if g.spindle.Repeatability == 0 {
		g.spindle.Repeatability = repeatSteps * g.Gauge.Resolution
		g.assume("gauge.spindle.repeatability", "one radius of a trace scatters by %v, one standard deviation", g.spindle.Repeatability)
	}
	if g.spindle.Error == 0 {
		g.spindle.Error = spindleError
		g.assume("gauge.spindle.error", "a radius of a trace is off by %v at most, beside its scatter", g.spindle.Error)
	}
}

// taken reports, of the worn bores or of the finished ones, whether any was read, any without a scatter to see, any traced.
func (j Job) taken(finished bool) (read, once, traced bool) {
	by := j.Gauge
	if finished {
		by = j.proofGauge()
	}
	for _, c := range j.Cylinders {
		readings, traces := c.Readings, c.Traces
		if finished {
			readings, traces = c.Proof, c.ProofTraces
		}
		read, traced = read || len(readings) > 0, traced || len(traces) > 0
		once = once || len(readings) > 0 && !by.scatters(readings)
	}
	return read, once, traced
}

// proven reports whether any finished bore has been read.
func (j Job) proven() bool { return slices.ContainsFunc(j.Cylinders, Cylinder.reread) }

// depth and axis of a reading; a job without them is refused.
func (r Reading) depth() units.Length { return length(r.Depth) }

func (r Reading) axis() bore.Axis {
	if r.Axis == nil {
		return 0
	}
	return r.Axis.Fold() // by whichever of its ends it is called
}

// A place is where a gauge is held.
type place struct {
	depth units.Length
	axis  bore.Axis
}

func (r Reading) place() place { return place{r.depth(), r.axis()} }

// diameter returns the diameter of a reading, whichever way the job gives it.
func (g Gauge) diameter(r Reading) (units.Length, error) {
	if r.Deviation == nil {
		return r.Diameter, nil
	}
	return bore.Gauge{Dial: g.Dial, Standard: bore.Standard{Size: g.Standard.Size.Value}}.Diameter(*r.Deviation)
}

// shown is the diameter of a reading; that it has none is a fault of the job.
func (g Gauge) shown(r Reading) units.Length {
	d, _ := g.diameter(r)
	return d
}

// proofGauge returns the gauge as it was set for the proof.
func (j Job) proofGauge() Gauge {
	g := j.Gauge
	g.Standard, g.Temperatures, g.SetOn = j.Proof.Standard, j.Proof.Temperatures, j.Proof.SetOn
	return g
}

// layout is where things lie along the bore. Only where ring travel is said to be not known is it taken from
// the stroke.
func (j Job) layout() bore.Layout {
	l := j.Engine.Layout
	if j.unknown(ringTravel) {
		l.Stroke = j.Engine.Stroke
	}
	return l
}

// sizes are those that a cylinder may stand at: the nominal one, and those on offer.
func (e Engine) sizes() []Oversize { return append([]Oversize{{}}, e.Oversizes...) }

// at returns the nominal bore at a size. Neither is looked at yet where it is called first: nothing wraps around.
func (e Engine) at(over units.Length) units.Length {
	const most = units.MaxLength
	return min(max(e.Bore, -most), most) + min(max(over, -most), most)
}

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
