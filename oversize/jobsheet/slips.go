// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/slips"
	"borewright.example/oversize/jobsheet/internal/strictjson"
	"borewright.example/oversize/sleeve"
	"borewright.example/rings"
	"borewright.example/units"
)

// A slip is a field that holds what such an engine can hardly have: a point moved by a place, one unit taken
// for another. It wants to be confirmed.
type slip struct {
	path, value, says string
}

// A slipper collects slips that are not confirmed.
type slipper struct {
	job  given
	list []slip
}

// say asks about the value of a field that is not usual.
func (s *slipper) say(path string, value any, usual bool, says string, args ...any) {
	if !usual {
		s.ask(path, value, says, args...)
	}
}

// ask notes that a field looks like a slip, unless it is confirmed.
func (s *slipper) ask(path string, value any, says string, args ...any) {
	text := fmt.Sprint(value)
	if !slices.Contains(s.job.Confirmed, Confirmation{path, text}) {
		s.list = append(s.list, slip{path, text, path + " " + text + ": " + fmt.Sprintf(says, args...)})
	}
}

// slips returns the fields of the job that look like a slip and are not confirmed: by their tags, and of those that hang
// on others.
func (g given) slipped(doc *strictjson.Document, read []readBore, choice oversize.Choice) []slip {
	s := &slipper{job: g}
	usual := usual(g.Job)
	doc.Walk(g.Job, func(path fmt.Stringer, v any, names []string) {
		for _, name := range names {
			if says := usual(name, v); says != "" && (g.proven() || !strings.HasPrefix(path.String(), "proof.")) {
				s.ask(path.String(), shownAs(v), "%s", says)
			}
		}
	})
	s.engine(g.Engine)
	s.standard("gauge.standard.size", g.Gauge.Standard)
	s.stylus(g.Gauge.Profiler)
	if g.proven() {
		s.standard("proof.standard.size", g.Proof.Standard)
	}
	worn, finished := make([]slips.Looks, len(g.Cylinders)), make([]slips.Looks, len(g.Cylinders))
	for i, c := range g.Cylinders {
		path := fmt.Sprintf("cylinders[%d]", i)
		s.cylinder(path, c, read[i])
		s.profiles(i)
		s.copies(i)
		before, after := g.survey.by.looks(c.Readings), g.proof.by.looks(c.Proof)
		worn[i], finished[i] = slips.InOrder(before), slips.InOrder(after)
		s.second(path+".readings", g.survey, before, worn[i], worn[:i])
		s.second(path+".proof", g.proof, after, finished[i], finished[:i])
		s.again(path+".proof", "readings", worn[i], finished[i], g.survey.scatter(worn[i]))
		s.again(path+".proof_traces", "radii", g.looks(g.survey.by, c.Traces), g.looks(g.proof.by, c.ProofTraces),
			float64(g.spindle.Repeatability)/float64(g.Gauge.Resolution))
	}
	s.alone(read, choice)
	const mostRisk = 0.2 // that a workshop accepts
	s.say("risk.accept", g.Job.Risk.Accept, g.Job.Risk.Accept <= mostRisk, "at most %v is usual", mostRisk)
	s.say("risk.reject", g.Job.Risk.Reject, g.Job.Risk.Reject <= mostRisk, "at most %v is usual", mostRisk)
	return s.list
}

func (s *slipper) engine(e Engine) {
	l := e.Layout
	if travel := (units.Limits{Min: e.Stroke, Max: 2 * e.Stroke}); l.RingBottom != 0 {
		s.say("engine.layout", l.RingBottom-l.RingTop, travel.Contains(l.RingBottom-l.RingTop) && l.RingTop <= e.Stroke/2,
			"ring travel is one stroke and the height of the ring pack, and begins near the deck")
	}
	s.say("engine.layout.length", l.Length, l.Length == 0 || l.Length >= e.Stroke && l.Length <= 5*e.Stroke, "%v to %v is usual", e.Stroke, 5*e.Stroke)
	pegged := slices.ContainsFunc(e.Rings, func(r Ring) bool { return r.Peg != nil || r.Play != nil })
	switch n := len(l.Ports); e.Cycle {
	case TwoStroke:
		s.say("engine.cycle", e.Cycle, n > 0, "a two-stroke breathes through ports in the wall, and none is given")
	case FourStroke:
		s.say("engine.cycle", e.Cycle, n == 0 && !pegged, "ports in the wall and pegged rings are a two-stroke's")
	}
	const leastPort, mostPort = 10 * units.Degree, 110 * units.Degree // a narrow transfer port, a whole exhaust
	for i, p := range l.Ports {
		s.say(fmt.Sprintf("engine.layout.ports[%d].width", i), p.Width, p.Width >= leastPort && p.Width <= mostPort,
			"%v to %v of the circumference is usual", leastPort, mostPort)
	}
	if least, most := rings.UsualCount(); len(e.Rings) > 0 {
		s.say("engine.rings", len(e.Rings), len(e.Rings) >= least && len(e.Rings) <= most, "%d to %d rings are usual", least, most)
	}
	if v := e.Sleeve; v != (Sleeve{}) {
		wall, around := sleeve.UsualWall(e.Bore), oversize.UsualWall(e.Bore)
		s.say("engine.sleeve.seat", v.Seat, wall.Contains((v.Seat-v.Bore)/2), "a wall of the sleeve of %v is usual", s.job.Units.in().Thumb(wall))
		s.say("engine.sleeve.outer", v.Outer, around.Contains((v.Outer.Min-v.Seat)/2) && (v.Outer.Max-v.Seat)/2 <= 2*around.Max,
			"%v of barrel round the seat is usual", s.job.Units.in().Thumb(around))
		for i, c := range s.job.Cylinders {
			is := c.SleeveFitted.Seat.Value
			s.say(fmt.Sprintf("cylinders[%d].sleeve_fitted.seat", i), is, is == 0 || (is-v.Seat).Abs() <= v.Seat/1000, "engine.sleeve.seat is %v", v.Seat)
		}
	}
	f := e.Limits
	if width, ok := f.NewBore.Width(); ok && !f.NewBore.IsZero() {
		s.say("engine.limits.new_bore", f.NewBore, bore.UsualWindow().Contains(width), "a width of %v is usual", s.job.Units.in().Thumb(bore.UsualWindow()))
	}
	form := bore.UsualForm(e.Bore)
	s.say("engine.limits.choke", f.Choke, f.Choke.IsZero() || form.Contains(f.Choke.Max) && f.Choke.Min >= 0, "%v at the most is usual", s.job.Units.in().Thumb(form))
	// An ellipse is out of round by half its ovality: a limit on roundness beyond that on ovality asks for nothing.
	s.say("engine.limits.roundness", f.Roundness, f.FinishOvality == 0 || f.Roundness <= f.FinishOvality, "no more than finish_ovality is usual")
	s.say("engine.limits.cylindricity", f.Cylindricity, f.FinishOvality == 0 || f.FinishTaper == 0 || f.Cylindricity <= f.FinishOvality+f.FinishTaper,
		"no more than finish_ovality and finish_taper together is usual")
}

// standard holds a standard against the sizes that stand there: one serves all of them.
func (s *slipper) standard(path string, by Standard) {
	size, nominal := by.Size.Value, bore.UsualStandard(s.job.Engine.Bore)
	for _, c := range s.job.Cylinders {
		if band := bore.UsualStandard(s.job.Engine.Bore + c.over()); size != 0 && !band.Contains(size) && !nominal.Contains(size) {
			s.ask(path, size, "%v is usual", s.job.Units.in().Thumb(band))
			return
		}
	}
}

func (s *slipper) cylinder(path string, c Cylinder, read readBore) {
	s.stands(path, c, read)
	s.spikes(path+".traces", c.Traces)
	s.spikes(path+".proof_traces", c.ProofTraces)
	s.scatter(path+".readings", c.Readings, s.job.survey.by)
	s.scatter(path+".proof", c.Proof, s.job.proof.by)
	for i, p := range c.Pits {
		s.say(fmt.Sprintf("%s.pits[%d].depth", path, i), p.Depth, i >= len(read.cleanUp.Pits) || read.cleanUp.Pits[i].InTravel,
			"no ring passes over it, so that it decides nothing: is it noted where it lies?")
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
	least, most, count := map[place]units.Length{}, map[place]units.Length{}, map[place]int{}
	for _, r := range rs {
		count[r.place()]++
	}
	for i, r := range rs {
		at, d := r.place(), by.shown(r)
		if _, again := least[at]; !again {
			least[at], most[at] = d, d
		}
		least[at], most[at] = min(least[at], d), max(most[at], d)
		if most[at]-least[at] <= apart*by.Resolution || r.Confirmed && count[at] > 2 {
			continue
		}
		s.ask(fmt.Sprintf("%s[%d]", path, i), d, "at %s, %s it lies more than %d steps of the scale from another reading of the same place: read it a third time and confirm it", at.depth, at.axis.String(), apart)
	}
}

// leastSpike is how far a radius may stand out of its neighbours where the spindle is better than any wall.
const leastSpike = 5 * units.Micrometre

// spikes asks about each radius of a trace that stands out of its neighbours.
func (s *slipper) spikes(path string, ts []Trace) {
	most := max(apart*s.job.spindle.Repeatability, leastSpike)
	for i, t := range ts {
		rs, list := t.round().Written()
		for _, k := range slips.Spikes(rs, most) {
			s.ask(fmt.Sprintf("%s[%d].%s[%d]", path, i, list, k.At), rs[k.At],
				"it stands out of its neighbours by %v: a score, or a slip?", k.Off.Round(units.Micrometre))
		}
	}
}

// stands holds the size at which a bore is said to stand against its readings: where it is least worn, no size
// on offer is nearer to it.
func (s *slipper) stands(path string, c Cylinder, read readBore) {
	e, least := s.job.Engine, read.bore.Smallest.Size.Value
	if least == 0 {
		return
	}
	off := func(over units.Length) units.Length { return (least - e.at(over)).Abs() }
	for _, o := range e.sizes() {
		s.say(path+".over", c.over(), off(o.Over) >= off(c.over()), "its smallest reading, %v, is nearer to the size %v over", least, o.Over)
	}
}
