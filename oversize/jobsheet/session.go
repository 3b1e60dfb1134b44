// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A session is one round of reading, of the worn bores or of the finished ones, with the instruments as they were set for
// it.
type session struct {
	by      Gauge      // as the job has it
	gauge   bore.Gauge // as package bore has it
	spindle bore.Gauge // the spindle, as a gauge that reads diameters
}

// A sitting is one bore as a session found it; zero where it was neither read nor traced.
type sitting struct {
	session
	readings []Reading
	bore     bore.Geometry
	traced   *tracedBore // nil where it was not traced
	findings []bore.Finding
	remedies map[int]uncertainty.Remedy // what would settle each finding that is undecided, by its place
}

// sit works out a bore from its readings, or from its traces where there are none; from both what they cannot show.
func (g given) sit(s session, readings []Reading, traces []Trace) (at sitting, err error) {
	at = sitting{session: s, readings: readings}
	if at.traced, err = g.trace(traces, s.by, s.spindle); err != nil {
		return at, err
	}
	if len(readings) > 0 {
		at.bore, err = g.measure(s, readings)
	} else if at.traced != nil {
		at.bore = at.traced.bore
	}
	at.bore.Unseen = at.traced.unseen(at.bore.Unseen)
	return at, err
}

// measure returns the geometry that readings come to. Where nothing says how they scatter, and no place was read twice and
// unalike, they scatter by as much as is usual.
func (g given) measure(s session, readings []Reading) (bore.Geometry, error) {
	rs := make([]bore.Reading, len(readings))
	for i, r := range readings {
		rs[i] = bore.Reading{Depth: r.depth(), Axis: r.axis(), Diameter: s.by.shown(r), Confirmed: r.Confirmed}
	}
	if s.gauge.Repeatability == 0 && !s.by.scatters(readings) {
		s.gauge.Repeatability = repeatSteps * s.by.Resolution
	}
	return g.layout().Analyse(rs, s.gauge)
}

// scatters reports whether any place was read more than once and not alike: one reading written down twice shows no scatter, nor
// how small that is.
func (g Gauge) scatters(rs []Reading) bool {
	for i, r := range rs {
		if slices.ContainsFunc(rs[:i], func(q Reading) bool {
			return q.place() == r.place() && g.shown(q) != g.shown(r)
		}) {
			return true
		}
	}
	return false
}

// judge holds a bore against limits, by its readings and by traces beside them, of which either may say beyond.
func (g given) judge(at *sitting, l bore.Limits, r uncertainty.Risk) (err error) {
	beside := at.traced != nil && len(at.readings) > 0
	if beside {
		r.Reject = r.Share(2).Reject
	}
	if at.findings, err = at.bore.Judge(l, r); err != nil {
		return err
	}
	if beside {
		if at.findings, err = at.traced.judge(at.findings, l, g.spindle.OnStandard, r); err != nil {
			return err
		}
	}
	at.remedies = map[int]uncertainty.Remedy{}
	for i, f := range at.findings {
		if f.Verdict == uncertainty.Undecided && !f.NotMeasured {
			// More readings average out what a place has to itself, and no more.
			if at.remedies[i], err = f.Settle(min(at.bore.Largest.Own.Std, f.Measured.Std)); err != nil {
				return err
			}
		}
	}
	return nil
}

// finding holds a value against limits, under a name. What cannot be judged is undecided, as what is in doubt.
func finding(subject string, e uncertainty.Estimate, w units.Limits, r uncertainty.Risk) uncertainty.Finding {
	f, err := uncertainty.Judge(e, w, r)
	if err != nil {
		f = uncertainty.Finding{Measured: e, Limits: w}
	}
	f.Subject = subject
	return f
}

// form is what the traces show; nil where there are none.
func (at sitting) form() *WallForm {
	if at.traced == nil {
		return nil
	}
	return &at.traced.form
}

// standard is what the instrument was set on that the sizes are of: the spindle's indicator, where there are no readings
// and traces stand for them, may have been set on nothing.
func (at sitting) standard() Standard {
	if len(at.readings) == 0 && !at.by.Spindle.OnStandard {
		return Standard{}
	}
	return at.by.Standard
}

// places returns the places that were read, plane by plane, those between ports last.
func places(g bore.Geometry) []bore.Place {
	n := 0
	for _, planes := range [...][]bore.Plane{g.Planes, g.Bridges} {
		for i := range planes {
			n += len(planes[i].Places)
		}
	}
	list := make([]bore.Place, 0, n)
	for _, planes := range [...][]bore.Plane{g.Planes, g.Bridges} {
		for i := range planes {
			list = append(list, planes[i].Places...)
		}
	}
	return list
}

// unread reports whether no place was.
func unread(g bore.Geometry) bool { return len(g.Planes)+len(g.Bridges) == 0 }

// toRead returns where the places were read: readings without their diameters.
func toRead(places []bore.Place) []bore.Reading {
	list := make([]bore.Reading, len(places))
	for i, q := range places {
		list[i] = bore.Reading{Depth: q.Depth, Axis: q.Axis}
	}
	return list
}

// perCylinder runs a step for each cylinder. What a room refuses there becomes a fault of that part of it.
func perCylinder[T any](g given, part string, step func(i int, c Cylinder) (T, error)) ([]T, error) {
	all := make([]T, len(g.Cylinders))
	for i, c := range g.Cylinders {
		var err error
		if all[i], err = step(i, c); err != nil {
			return nil, fault(fmt.Sprintf("cylinders[%d].%s", i, c.from(part)), err)
		}
	}
	return all, nil
}

// from is the field that a bore is known by: that of its traces where there are no readings.
func (c Cylinder) from(part string) string {
	switch {
	case part == "readings" && len(c.Readings) == 0:
		return "traces"
	case part == "proof" && len(c.Proof) == 0:
		return "proof_traces"
	}
	return part
}

// length returns a length that is a pointer in the job, so that none and zero are two things.
func length(l *units.Length) units.Length {
	if l == nil {
		return 0
	}
	return *l
}

// A read bore is what the survey of one cylinder says; zero where it was not read.
type readBore struct {
	sitting
	coarse  []bore.Coarse
	cleanUp bore.CleanUp
	feeler  uncertainty.Estimate
}

func (g given) readBore(c Cylinder) (r readBore, err error) {
	if !c.surveyed() {
		return r, nil
	}
	if r.sitting, err = g.sit(g.survey, c.Readings, c.Traces); err != nil {
		return r, err
	}
	if fresh := g.Engine.Limits.NewBore; fresh.HasMin() && cannot(r.bore.Largest.Size, units.Limits{Min: fresh.Min + c.over()}) {
		return r, fmt.Errorf("the largest, %v at 20 °C, is smaller than a new bore, %v: does the dial run the other way, or does the cylinder stand at another size?",
			r.bore.Largest.Size, fresh.Min+c.over())
	}
	limits := g.limits(c.over())
	if err = g.judge(&r.sitting, limits, g.risk.survey); err != nil {
		return r, err
	}
	if len(oversize.Deciding(r.findings)) < len(r.findings) {
		limits.New = units.Limits{} // decides nothing, so that it does not matter how well it is judged
	}
	if r.coarse, err = r.bore.Coarse(limits); err != nil {
		return r, err
	}
	if r.cleanUp, err = g.cleanUp(g.wear(c, r.bore), r.sitting); err != nil {
		return r, err
	}
	if t := c.FeelerTest; len(t) == 2 {
		r.feeler, err = rings.DiameterChange(t[1].Gap.estimate(byFeeler), t[0].Gap.estimate(byFeeler))
	}
	return r, err
}

// limits returns the maker's limits as package bore wants them, for a cylinder that stands at a size over
// nominal; none that a job may have is shifted out of range.
func (j Job) limits(over units.Length) bore.Limits {
	l := j.Engine.Limits
	b := bore.Limits{Ovality: l.Ovality, Taper: l.Taper, TaperAtDeck: l.TaperAtDeck, Choke: l.Choke, Spread: l.GreatestLessLeast}
	b.New, _ = l.NewBore.Shift(over)
	b.Service, _ = units.Limits{Max: l.Service}.Shift(over)
	return b
}

// wear says what is known of the metal that is gone, besides the readings: the unworn size from below ring
// travel where it was read there, else the least of the maker's.
func (j Job) wear(c Cylinder, g bore.Geometry) bore.Wear {
	w := bore.Wear{
		Share: c.WearShare,
		Allowances: bore.Allowances{
			Locating: length(j.Cuts.Locating), OutOfSquare: length(j.Cuts.OutOfSquare), Surface: length(j.Cuts.Surface),
		},
		Pits: c.Pits,
	}
	if low := j.Engine.Layout.RingBottom; low != 0 {
		for _, p := range g.Planes {
			if p.Depth > low {
				w.UnwornAt = p.Depth
				return w
			}
		}
	}
	unworn := j.Engine.at(c.over())
	if fresh := j.Engine.Limits.NewBore; fresh.HasMin() {
		unworn = fresh.Min + c.over()
	}
	// A bore cannot have been larger when new than where it is smallest now.
	w.Unworn = uncertainty.Estimate{Value: min(unworn, g.Smallest.Size.Value)}
	return w
}
