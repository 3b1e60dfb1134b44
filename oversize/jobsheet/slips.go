// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/sleeve"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
)

// A slip is a field that holds what such an engine can hardly have: a point moved by a place, one unit taken
// for another. It wants to be confirmed.
type slip struct {
	path, value, says string
}

// What no room owns, since it is about the bench and not about a part: each band is common practice.
var (
	usualDoubts = struct{ size, gap, wall units.Limits }{ // expanded
		size: units.Limits{Min: 500 * units.Nanometre, Max: 30 * units.Micrometre},
		gap:  units.Limits{Min: 5 * units.Micrometre, Max: 120 * units.Micrometre},
		wall: units.Limits{Min: 50 * units.Micrometre, Max: 1500 * units.Micrometre},
	}
	usualAllowance = units.Limits{Min: units.Micrometre, Max: 50 * units.Micrometre} // of a boring bar, radial
	usualPlay      = units.Limits{Min: 50 * units.Micrometre, Max: 1500 * units.Micrometre}
	usualSpindle   = units.Limits{Min: 100 * units.Nanometre, Max: 30 * units.Micrometre} // error of a radius; a tenth of the most in scatter
	usualHotGap    = units.Limits{Min: 20 * units.Micrometre, Max: 200 * units.Micrometre}
)

const (
	leastCrosshatch, mostCrosshatch = 15 * units.Degree, 120 * units.Degree // included
	leastTolerance, mostTolerance   = 1 * units.Degree, 15 * units.Degree
	leastPort, mostPort             = 10 * units.Degree, 110 * units.Degree // a narrow transfer port, a whole exhaust
	warmest                         = 90                                    // °C of a cylinder that is being honed
	leastWithin, mostWithin         = 0.1, 15                               // half-width of a temperature, K
	mostRunning                     = 60                                    // and of one in work
	mostRisk                        = 0.2                                   // that a workshop accepts
	steps                           = 10                                    // of a scale, that scatter and dial are off by at most
	resolutionFrom, resolutionTo    = 400 * units.Nanometre, units.Millimetre / 50
)

// A slipper collects slips that are not confirmed.
type slipper struct {
	job  Job
	list []slip
}

func (s *slipper) say(path, value string, usual bool, says string, args ...any) {
	if usual || slices.Contains(s.job.Confirmed, Confirmation{path, value}) {
		return
	}
	s.list = append(s.list, slip{path, value, path + " " + value + ": " + fmt.Sprintf(says, args...)})
}

// length holds a length that may be left out against a band.
func (s *slipper) length(path string, l units.Length, band units.Limits) {
	s.say(path, l.String(), l == 0 || band.Contains(l), "%v is usual", band)
}

func (s *slipper) window(path string, w, band units.Limits) {
	s.say(path, w.String(), w.IsZero() || band.Contains(w.Min) && band.Contains(w.Max), "%v is usual", band)
}

func (s *slipper) doubt(path string, m Measured, band units.Limits) {
	s.say(path, m.String(), m.Expanded == 0 || band.Contains(m.Expanded), "a doubt of %v is usual", band)
}

func (s *slipper) temperature(path string, t bore.Temperature, least, most units.Temperature, within float64) {
	w := float64(t.Within)
	s.say(path, t.String(), t == (bore.Temperature{}) || t.Value >= least && t.Value <= most && (w == 0 || w >= leastWithin && w <= within),
		"%v to %v is usual, known to ± %v to %v K", least, most, leastWithin, within)
}

// slips returns the fields of the job that look like a slip and are not confirmed.
func (g given) slips(read []readBore) []slip {
	s := &slipper{job: g.Job}
	s.engine(g.Engine)
	s.limits(g.Engine)
	s.gauge("gauge", g.Gauge, g.Job)
	if g.proven() {
		s.gauge("proof", g.proofGauge(), g.Job)
	}
	for i, c := range g.Cylinders {
		s.cylinder(fmt.Sprintf("cylinders[%d]", i), c, g.Engine, read[i])
		for k, other := range g.Cylinders[:i] {
			s.copies(fmt.Sprintf("cylinders[%d].readings", i), c.Readings, g.Gauge, fmt.Sprintf("cylinders[%d]", k), other.Readings)
			s.copies(fmt.Sprintf("cylinders[%d].proof", i), c.Proof, g.proofGauge(), fmt.Sprintf("cylinders[%d]", k), other.Proof)
		}
	}
	s.tools(g.Tools, g.Cuts)
	s.say("risk.accept", fmt.Sprint(g.Job.Risk.Accept), g.Job.Risk.Accept <= mostRisk, "at most %v is usual", mostRisk)
	s.say("risk.reject", fmt.Sprint(g.Job.Risk.Reject), g.Job.Risk.Reject <= mostRisk, "at most %v is usual", mostRisk)
	return s.list
}

func (s *slipper) engine(e Engine) {
	s.length("engine.stroke", e.Stroke, oversize.UsualStroke(e.Bore))
	least, most := oversize.UsualRatio()
	s.say("engine.compression_ratio", fmt.Sprint(e.CompressionRatio), e.CompressionRatio == 0 || e.CompressionRatio >= least && e.CompressionRatio <= most,
		"%v to %v is usual", least, most)
	if l := e.Layout; l.RingBottom != 0 {
		travel := units.Limits{Min: e.Stroke, Max: 2 * e.Stroke}
		s.say("engine.layout", (l.RingBottom - l.RingTop).String(), travel.Contains(l.RingBottom-l.RingTop) && l.RingTop <= e.Stroke/2,
			"ring travel is one stroke and the height of the ring pack, and begins near the deck")
	}
	pegged := slices.ContainsFunc(e.Rings, func(r Ring) bool { return r.Peg != nil || r.Play != nil })
	switch n := len(e.Layout.Ports); e.Cycle {
	case TwoStroke:
		s.say("engine.cycle", e.Cycle.String(), n > 0, "a two-stroke breathes through ports in the wall, and none is given")
	case FourStroke:
		s.say("engine.cycle", e.Cycle.String(), n == 0 && !pegged, "ports in the wall and pegged rings are a two-stroke's")
	}
	for i, p := range e.Layout.Ports {
		s.say(fmt.Sprintf("engine.layout.ports[%d].width", i), p.Width.String(), p.Width >= leastPort && p.Width <= mostPort,
			"%v to %v of the circumference is usual", leastPort, mostPort)
	}
	s.length("engine.layout.length", e.Layout.Length, units.Limits{Min: e.Stroke, Max: 5 * e.Stroke})
	for i, o := range e.Oversizes {
		s.length(fmt.Sprintf("engine.oversizes[%d].over", i), o.Over, oversize.UsualOver())
		s.piston(fmt.Sprintf("engine.oversizes[%d].piston", i), o.Piston)
		for k, p := range o.Pistons {
			s.piston(fmt.Sprintf("engine.oversizes[%d].pistons[%d]", i, k), p)
		}
	}
	if least, most := rings.UsualCount(); len(e.Rings) > 0 {
		s.say("engine.rings", fmt.Sprint(len(e.Rings)), len(e.Rings) >= least && len(e.Rings) <= most, "%d to %d rings are usual", least, most)
	}
	for i, r := range e.Rings {
		path := fmt.Sprintf("engine.rings[%d].", i)
		window, limit := rings.UsualGap(e.Bore)
		s.window(path+"gap", r.Gap, window)
		s.length(path+"gap_limit", r.GapLimit, limit)
		s.length(path+"hot_gap", r.HotGap, usualHotGap)
		s.length(path+"play", length(r.Play), usualPlay)
	}
	cool, hot := material.UsualRunning()
	s.temperature("engine.running.ring", e.Running.Ring, cool, hot, mostRunning)
	s.temperature("engine.running.bore", e.Running.Bore, cool, hot, mostRunning)
	s.temperature("engine.running.piston", e.Running.Piston, cool, hot, mostRunning)
	s.length("engine.honing_allowance", e.HoningAllowance, oversize.UsualHoning())
	s.length("engine.may_shift", length(e.MayShift), units.Limits{Min: units.Micrometre, Max: e.Bore / 500})
	if v := e.Sleeve; v != (Sleeve{}) {
		s.window("engine.sleeve.interference", v.Interference, sleeve.UsualInterference(v.Seat))
		wall := sleeve.UsualWall(e.Bore)
		s.say("engine.sleeve.seat", v.Seat.String(), wall.Contains((v.Seat-v.Bore)/2), "a wall of the sleeve of %v is usual", wall)
		around := oversize.UsualWall(e.Bore)
		s.say("engine.sleeve.outer", v.Outer.String(), around.Contains((v.Outer.Min-v.Seat)/2) && (v.Outer.Max-v.Seat)/2 <= 2*around.Max,
			"%v of barrel round the seat is usual", around)
		s.length("engine.sleeve.slip", v.Slip, units.Limits{Min: 20 * units.Micrometre, Max: 200 * units.Micrometre})
	}
}

func (s *slipper) limits(e Engine) {
	l, path := e.Limits, "engine.limits."
	s.window(path+"new_bore", l.NewBore, bore.UsualNew(e.Bore))
	if width, ok := l.NewBore.Width(); ok && !l.NewBore.IsZero() {
		s.say(path+"new_bore", l.NewBore.String(), bore.UsualWindow().Contains(width), "a width of %v is usual", bore.UsualWindow())
	}
	s.length(path+"service", l.Service, bore.UsualService(e.Bore))
	s.length(path+"ovality", l.Ovality, bore.UsualForm(e.Bore))
	s.length(path+"taper", l.Taper, bore.UsualForm(e.Bore))
	s.say(path+"choke", l.Choke.String(), l.Choke.IsZero() || bore.UsualForm(e.Bore).Contains(l.Choke.Max) && l.Choke.Min >= 0, "%v at the most is usual", bore.UsualForm(e.Bore))
	s.length(path+"greatest_less_least", l.GreatestLessLeast, bore.UsualForm(e.Bore))
	s.length(path+"roundness", l.Roundness, units.Limits{Min: bore.UsualFinishForm(e.Bore).Min / 2, Max: bore.UsualForm(e.Bore).Max})
	s.length(path+"cylindricity", l.Cylindricity, units.Limits{Min: bore.UsualFinishForm(e.Bore).Min / 2, Max: bore.UsualForm(e.Bore).Max})
	// An ellipse is out of round by half its ovality: a limit on roundness beyond that on ovality asks for nothing.
	s.say(path+"roundness", l.Roundness.String(), l.FinishOvality == 0 || l.Roundness <= l.FinishOvality, "no more than finish_ovality is usual")
	s.say(path+"cylindricity", l.Cylindricity.String(), l.FinishOvality == 0 || l.FinishTaper == 0 || l.Cylindricity <= l.FinishOvality+l.FinishTaper,
		"no more than finish_ovality and finish_taper together is usual")
	s.length(path+"finish_ovality", l.FinishOvality, bore.UsualFinishForm(e.Bore))
	s.length(path+"finish_taper", l.FinishTaper, bore.UsualFinishForm(e.Bore))
	s.window(path+"piston_clearance", l.PistonClearance, fit.UsualClearance(e.Bore))
	s.length(path+"worn_clearance", l.WornClearance, fit.UsualWornClearance(e.Bore))
	s.length(path+"greatest_overbore", l.GreatestOverbore, oversize.UsualOver())
	s.length(path+"least_wall", l.LeastWall, oversize.UsualWall(e.Bore))
}

func (s *slipper) piston(path string, p Piston) {
	s.doubt(path+".size", p.Size, usualDoubts.size)
	s.length(path+".coating", length(p.Coating), units.Limits{Min: 3 * units.Micrometre, Max: 40 * units.Micrometre})
}

func (s *slipper) gauge(path string, by Gauge, j Job) {
	s.length("gauge.resolution", by.Resolution, units.Limits{Min: resolutionFrom, Max: resolutionTo})
	scale := units.Limits{Min: by.Resolution / steps * 2, Max: steps * by.Resolution}
	s.length("gauge.repeatability", by.Repeatability, scale)
	s.length("gauge.spindle.repeatability", by.Spindle.Repeatability, units.Limits{Min: usualSpindle.Min, Max: usualSpindle.Max / steps})
	s.length("gauge.spindle.error", by.Spindle.Error, usualSpindle)
	s.length("gauge.spindle.out_of_square", by.Spindle.OutOfSquare, usualAllowance)
	s.length("gauge.dial_error", by.DialError, units.Limits{Min: scale.Min, Max: 4 * by.Resolution})
	if by.Standard != (Standard{}) {
		s.doubt(path+".standard.size", by.Standard.Size, usualDoubts.size)
		size := j.Engine.Bore
		for _, c := range j.Cylinders { // one standard serves the sizes that stand there
			if band := bore.UsualStandard(size + c.over()); !band.Contains(by.Standard.Size.Value) && !bore.UsualStandard(size).Contains(by.Standard.Size.Value) {
				s.length(path+".standard.size", by.Standard.Size.Value, band)
				break
			}
		}
	}
	cool, hot := material.UsualWorkshop()
	t := by.Temperatures
	s.temperature(path+".temperatures.standard", t.Standard, cool, hot, mostWithin)
	s.temperature(path+".temperatures.gauge_set", t.GaugeSet, cool, hot, mostWithin)
	s.temperature(path+".temperatures.gauge_used", t.GaugeUsed, cool, hot, mostWithin)
	s.temperature(path+".temperatures.cylinder", t.Cylinder, cool, hot, mostWithin)
	k := float64(t.PlaceToPlace)
	s.say(path+".temperatures.place_to_place", t.PlaceToPlace.String(), k == 0 || k >= leastWithin && k <= mostWithin/3, "%v to %v K is usual", leastWithin, mostWithin/3)
}

func (s *slipper) cylinder(path string, c Cylinder, e Engine, read readBore) {
	if c.over() != 0 {
		s.length(path+".over", c.over(), oversize.UsualOver())
	}
	s.stands(path, c, e, read)
	s.spikes(path+".traces", c.Traces)
	s.spikes(path+".proof_traces", c.ProofTraces)
	s.repeated(path+".traces", c.Traces)
	s.repeated(path+".proof_traces", c.ProofTraces)
	s.scatter(path+".readings", c.Readings, s.job.Gauge)
	s.scatter(path+".proof", c.Proof, s.job.proofGauge())
	s.length(path+".thinnest_wall", c.ThinnestWall.Value, oversize.UsualWall(e.Bore))
	s.doubt(path+".thinnest_wall", c.ThinnestWall, usualDoubts.wall)
	s.piston(path+".piston", c.Piston)
	for i, p := range c.Pits {
		s.say(fmt.Sprintf("%s.pits[%d].depth", path, i), p.Depth.String(), i >= len(read.cleanUp.Pits) || read.cleanUp.Pits[i].InTravel,
			"no ring passes over it, so that it decides nothing: is it noted where it lies?")
	}
	for i, r := range c.Rings {
		s.doubt(fmt.Sprintf("%s.rings[%d].gap", path, i), r.Gap, usualDoubts.gap)
		s.doubt(fmt.Sprintf("%s.rings[%d].finished", path, i), r.Finished, usualDoubts.gap)
	}
	if e.Layout.Length == 0 {
		for i, r := range slices.Concat(c.Readings, c.Proof) {
			s.say(fmt.Sprintf("%s.readings[%d].depth", path, i), r.depth().String(), r.depth() <= 2*e.Stroke, "a bore ends within two strokes")
		}
	}
	for _, t := range slices.Concat(c.Traces, c.ProofTraces) {
		s.say(path+".traces.depth", length(t.Depth).String(), e.Layout.Length != 0 || length(t.Depth) <= 2*e.Stroke, "a bore ends within two strokes")
	}
	if !c.Crosshatch.IsZero() {
		s.crosshatch(path+".crosshatch", c.Crosshatch)
	}
	s.say(path+".crosshatch_doubt", c.CrosshatchDoubt.String(), c.CrosshatchDoubt == 0 || c.CrosshatchDoubt >= units.Degree/5 && c.CrosshatchDoubt <= 10*units.Degree,
		"0.2 to 10° is usual")
	cool, _ := material.UsualWorkshop()
	for i, p := range c.Honing {
		s.say(fmt.Sprintf("%s.honing[%d].at", path, i), p.At.String(), p.At >= cool && p.At <= units.ReferenceTemperature+warmest,
			"%v to %v is usual", cool, units.ReferenceTemperature+warmest)
	}
}

// apart is how many steps of the scale two readings of one place may lie apart where nobody says how well the
// gauge repeats: with more, leaving one of them out would help.
const apart = 6

// scatter holds the repeats of each place against each other, where no repeatability is stated. Readings that are
// confirmed are left alone.
func (s *slipper) scatter(path string, rs []Reading, by Gauge) {
	if by.Repeatability != 0 || len(by.Study) > 0 {
		return
	}
	type place struct{ depth, axis string }
	least, most, count := map[place]units.Length{}, map[place]units.Length{}, map[place]int{}
	for _, r := range rs {
		count[place{r.depth().String(), r.axis().String()}]++
	}
	for i, r := range rs {
		at := place{r.depth().String(), r.axis().String()}
		d, err := by.shown(r)
		if err != nil {
			continue // a fault of the readings
		}
		if _, again := least[at]; !again {
			least[at], most[at] = d, d
		}
		least[at], most[at] = min(least[at], d), max(most[at], d)
		s.say(fmt.Sprintf("%s[%d]", path, i), d.String(), most[at]-least[at] <= apart*by.Resolution || r.Confirmed && count[at] > 2,
			"at %s, %s it lies more than %d steps of the scale from another reading of the same place: read it a third time and confirm it", at.depth, at.axis, apart)
	}
}

// copies holds the readings of a cylinder against those of another. Two bores are not alike to every step of a scale that
// tells their places apart; where all read the same the gauge may be too coarse to.
func (s *slipper) copies(path string, rs []Reading, by Gauge, other string, of []Reading) {
	var shown []units.Length
	for _, r := range rs {
		if d, err := by.shown(r); err == nil {
			shown = append(shown, d)
		}
	}
	told := len(shown) > 0 && slices.Max(shown)-slices.Min(shown) > 2*by.Resolution
	s.say(path, fmt.Sprintf("%d readings", len(rs)), !told || !readingCopies(by, of, by, rs), "each is a reading of %s too: written down for the wrong cylinder?", other)
}

// repeated holds the traces of a wall against each other: no two depths have the same radii, to every step of a scale that
// tells them apart.
func (s *slipper) repeated(path string, ts []Trace) {
	for i, t := range ts {
		rs := t.shown(0)
		if len(rs) == 0 || slices.Max(rs)-slices.Min(rs) <= 2*s.job.Gauge.Resolution {
			continue
		}
		for _, other := range ts[:i] {
			s.say(fmt.Sprintf("%s[%d]", path, i), fmt.Sprintf("%d radii", len(rs)), !slices.Equal(rs, other.shown(0)),
				"they are those at %v too: written down for the wrong depth?", length(other.Depth))
		}
	}
}

// leastSpike is how far a radius may stand out of its neighbours where the spindle is better than any wall.
const leastSpike = 5 * units.Micrometre

// spikes holds each radius of a trace against its neighbours: a wall that is worn or honed runs on from one to the next,
// a slip of the pen does not, nor a score.
func (s *slipper) spikes(path string, ts []Trace) {
	scatter := cmp.Or(s.job.Gauge.Spindle.Repeatability, repeatSteps*s.job.Gauge.Resolution)
	most := max(apart*scatter, leastSpike)
	for i, t := range ts {
		rs, list := t.Radii, "radii"
		if len(t.Deviations) > 0 {
			rs, list = t.Deviations, "deviations"
		}
		at := func(k int) units.Length { return rs[(k+len(rs))%len(rs)] }
		off := func(k int) units.Length { // a cubic through two on either side
			return (at(k) - (4*(at(k-1)+at(k+1))-at(k-2)-at(k+2))/6).Abs()
		}
		for k, r := range rs {
			if off(k) >= max(off(k-1), off(k+1)) { // else it is the neighbour that stands out
				s.say(fmt.Sprintf("%s[%d].%s[%d]", path, i, list, k), r.String(), off(k) <= most,
					"it stands out of its neighbours by %v: a score, or a slip?", off(k).Round(units.Micrometre))
			}
		}
	}
}

// stands holds the size at which a bore is said to stand against its readings: where it is least worn, no size
// on offer is nearer to it.
func (s *slipper) stands(path string, c Cylinder, e Engine, read readBore) {
	least := read.bore.Smallest.Size.Value
	if least == 0 {
		return
	}
	off := func(over units.Length) units.Length { return (least - e.at(over)).Abs() }
	for _, o := range append([]Oversize{{}}, e.Oversizes...) {
		s.say(path+".over", c.over().String(), off(o.Over) >= off(c.over()), "its smallest reading, %v, is nearer to the size %v over", least, o.Over)
	}
}

func (s *slipper) crosshatch(path string, c hone.Crosshatch) {
	a := c.Included()
	s.say(path, angle(c), a >= leastCrosshatch && a <= mostCrosshatch, "%v to %v included is usual", leastCrosshatch, mostCrosshatch)
}

func (s *slipper) tools(t Tools, b Cuts) {
	if !t.Crosshatch.IsZero() {
		s.crosshatch("tools.crosshatch", t.Crosshatch)
	}
	s.say("tools.tolerance", t.Tolerance.String(), t.Tolerance == 0 || t.Tolerance >= leastTolerance && t.Tolerance <= mostTolerance,
		"%v to %v is usual", leastTolerance, mostTolerance)
	s.length("cuts.locating", length(b.Locating), usualAllowance)
	s.length("cuts.out_of_square", length(b.OutOfSquare), usualAllowance)
	s.length("cuts.surface", length(b.Surface), units.Limits{Min: usualAllowance.Min, Max: 20 * units.Micrometre})
}
