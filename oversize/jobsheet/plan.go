// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Plan works a job out through every room: it measures, judges, chooses the route and says what
// follows for hone, rings and displacement. The error for a job that [ReadJob] would refuse
// is [Faults].
//
// Plan reads no clock: the same job gives the same sheet.
func Plan(j Job) (Sheet, error) {
	if err := j.check(strict().Made()); err != nil {
		return Sheet{}, err
	}
	return j.sheet()
}

// sheet works out a job that stands up to [Job.check].
func (j Job) sheet() (Sheet, error) {
	s := Sheet{Version: Version, Job: j.clone()}
	_, assumed, err := j.gauge(j.Gauge)
	if err != nil {
		return Sheet{}, refused("gauge", err)
	}
	if slices.ContainsFunc(j.Cylinders, func(c Cylinder) bool { return len(c.Readings) > 0 }) {
		s.Assumed = assumed
	}
	if j.Engine.Layout.RingBottom != 0 {
		if s.ToRead, err = j.Engine.Layout.Plan(planAxes, j.Gauge.Kind); err != nil {
			return Sheet{}, refused("engine.layout", err)
		}
	}
	read := true
	for i, c := range j.Cylinders {
		cs := CylinderSheet{Name: c.Name}
		if len(c.Readings) > 0 {
			if cs, err = j.cylinder(c); err != nil {
				return Sheet{}, refused(fmt.Sprintf("cylinders[%d]", i), err)
			}
		}
		read = read && len(c.Readings) > 0
		s.Cylinders = append(s.Cylinders, cs)
	}
	if read {
		if err := s.work(); err != nil {
			return Sheet{}, err
		}
	} else {
		s.omit("everything that follows from the readings", "read every cylinder")
	}
	s.steps()
	s.Checklist = checklist(s)
	s.Cautions = cautions(s)
	return s, nil
}

// work goes on from readings of every cylinder through the other rooms, in the order of the work.
func (s *Sheet) work() error {
	j := s.Job
	var err error
	if s.Choice, err = j.choose(s.Cylinders); err != nil {
		return refused("", err)
	}
	for _, part := range []struct {
		path string
		do   func() error
	}{
		{"cuts", s.stock},
		{"proof", s.proof},
		{"engine", s.pistons}, // which the proof may have matched
		{"engine", s.capacities},
		{"cylinders", s.ringGaps},
		{"tools", s.hone},
		{"engine.sleeve", s.sleeves},
		{"engine", s.nextPasses},
	} {
		if err := part.do(); err != nil {
			return refused(part.path, err)
		}
	}
	return nil
}

// planAxes is along how many axes the sheet asks for readings: five carry lobes of two and of four.
const planAxes = 5

// refused returns what a room refused as a fault of the job.
func refused(path string, err error) error {
	return Faults{{Path: path, Want: strings.ReplaceAll(err.Error(), "\n", "; "), Err: err}}
}

func (s *Sheet) omit(part, why string, args ...any) {
	s.Omitted = append(s.Omitted, Omission{part, fmt.Sprintf(why, args...)})
}

// at returns the nominal bore at a size.
func (e Engine) at(over units.Length) units.Length { return oversize.Size{Over: over}.Bore(e.Bore) }

// limits returns the maker's limits as package bore wants them, for a cylinder that stands at
// a size over nominal.
func (j Job) limits(over units.Length) (bore.Limits, error) {
	l := j.Engine.Limits
	b := bore.Limits{Ovality: l.Ovality, Taper: l.Taper, Spread: l.GreatestLessLeast}
	for _, w := range []struct {
		to   *units.Limits
		from units.Limits
	}{{&b.New, l.NewBore}, {&b.Service, units.Limits{Max: l.Service}}} {
		if w.from.IsZero() {
			continue
		}
		var err error
		if *w.to, err = w.from.Shift(over); err != nil {
			return b, err
		}
	}
	return b, nil
}

// count returns how many limits are given.
func count(l bore.Limits) int {
	n := 0
	for _, given := range []bool{!l.New.IsZero(), !l.Service.IsZero(), l.Ovality != 0, l.Taper != 0, l.Spread != 0} {
		if given {
			n++
		}
	}
	return n
}

func (j Job) risk() uncertainty.Risk {
	return uncertainty.Risk{Accept: j.Risk.Accept, Reject: j.Risk.Reject}
}

// cylinder measures and judges one bore. The risk of the engine is shared over its cylinders
// and their limits.
func (j Job) cylinder(c Cylinder) (CylinderSheet, error) {
	cs := CylinderSheet{Name: c.Name}
	var err error
	if cs.Bore, err = j.measure(c.Readings, j.Gauge); err != nil {
		return cs, err
	}
	limits, err := j.limits(c.Over)
	if err != nil {
		return cs, err
	}
	deciding := limits // that a worn bore is no longer a new one decides nothing, unless there is no other limit
	deciding.New = units.Limits{}
	each := j.risk().Share(len(j.Cylinders) * max(count(deciding), 1))
	if cs.Findings, err = cs.Bore.Judge(limits, each); err != nil {
		return cs, err
	}
	if len(oversize.Deciding(cs.Findings)) < len(cs.Findings) {
		limits.New = units.Limits{} // decides nothing, so that it does not matter how well it is judged
	}
	if cs.Coarse, err = cs.Bore.Coarse(limits); err != nil {
		return cs, err
	}
	if cs.Remedies, err = remedies(cs.Bore, cs.Findings); err != nil {
		return cs, err
	}
	if cs.CleanUp, err = cs.Bore.CleanUp(j.wear(c, cs.Bore)); err != nil {
		return cs, err
	}
	if t := c.FeelerTest; t != (FeelerTest{}) {
		upper, err := certified(t.Upper.Gap, t.Uncertainty)
		if err != nil {
			return cs, err
		}
		lower, err := certified(t.Lower.Gap, t.Uncertainty)
		if err != nil {
			return cs, err
		}
		cs.FeelerTaper, err = rings.DiameterChange(lower, upper)
		if err != nil {
			return cs, err
		}
	}
	return cs, nil
}

// remedies returns what would settle each undecided finding.
func remedies(g bore.Geometry, fs []bore.Finding) ([]Remedy, error) {
	var list []Remedy
	for i, f := range fs {
		if f.Verdict != uncertainty.Undecided || f.NotMeasured {
			continue
		}
		// More readings average out what a place has to itself, and no more.
		r, err := f.Settle(min(g.Largest.Own.Std, f.Measured.Std))
		if err != nil {
			return nil, err
		}
		list = append(list, Remedy{i, r})
	}
	return list, nil
}

// wear says what is known of the metal that is gone, besides the readings: the unworn size from
// below ring travel where it was read there, else the least of the maker's.
func (j Job) wear(c Cylinder, g bore.Geometry) bore.Wear {
	w := bore.Wear{
		Share: c.WearShare,
		Allowances: bore.Allowances{
			Locating: j.Cuts.Locating, OutOfSquare: j.Cuts.OutOfSquare, Surface: j.Cuts.Surface,
		},
	}
	if c.Pit != 0 { // wherever it is
		w.Pits = []bore.Pit{{Below: c.Pit, Length: units.MaxLength, Around: true}}
	}
	if low := j.Engine.Layout.RingBottom; low != 0 {
		for _, p := range g.Planes {
			if p.Depth > low {
				w.UnwornAt = p.Depth
				return w
			}
		}
	}
	unworn := j.Engine.at(c.Over)
	if fresh := j.Engine.Limits.NewBore; fresh.HasMin() {
		unworn = fresh.Min + c.Over
	}
	// A bore cannot have been larger when new than where it is smallest now.
	w.Unworn = uncertainty.Estimate{Value: min(unworn, g.Smallest.Size.Value)}
	return w
}

// piston returns a piston as package fit wants it.
func (p Piston) fit() (fit.Piston, error) {
	if p == (Piston{}) {
		return fit.Piston{}, nil
	}
	size, err := certified(p.Size, p.Uncertainty)
	return fit.Piston{Size: size, Axis: p.Axis, Height: p.Height, MakerHeight: p.MakerHeight, Coating: p.Coating}, err
}

// choose hands the whole engine to package oversize.
func (j Job) choose(cs []CylinderSheet) (oversize.Choice, error) {
	e := j.Engine
	engine := oversize.Engine{
		Wall: e.Wall, Nominal: e.Bore,
		NewBore: e.Limits.NewBore, Service: e.Limits.Service,
		Clearance: e.Limits.PistonClearance, WornClearance: e.Limits.WornClearance,
		MostOver: e.Limits.GreatestOverbore, LeastWall: e.Limits.LeastWall,
		GasketHole: e.GasketHole, MayShift: e.MayShift, Honing: e.HoningAllowance,
		RigidHone: j.Tools.Hone == hone.RigidStone, OwnSizes: e.OwnSizes,
	}
	for _, o := range e.Oversizes {
		p, err := o.piston().fit()
		if err != nil {
			return oversize.Choice{}, err
		}
		engine.Sizes = append(engine.Sizes, oversize.Size{Over: o.Over, Piston: p})
	}
	cylinders := make([]oversize.Cylinder, len(cs))
	for i, c := range cs {
		given := j.Cylinders[i]
		p, err := given.Piston.fit()
		if err != nil {
			return oversize.Choice{}, err
		}
		wall, err := certified(given.ThinnestWall, given.WallUncertainty)
		if err != nil {
			return oversize.Choice{}, err
		}
		cylinders[i] = oversize.NewCylinder(c.Name, c.Bore, c.CleanUp, c.Findings)
		cylinders[i].Over, cylinders[i].Piston, cylinders[i].PistonFor = given.Over, p, cmp.Or(given.PistonFor, given.Over)
		cylinders[i].ThinnestWall, cylinders[i].Peeling = wall, given.Peeling
	}
	return oversize.Choose(engine, cylinders, j.risk())
}

// places returns the places that were read, plane by plane, those between ports last.
func places(g bore.Geometry) []bore.Place {
	var list []bore.Place
	for _, p := range slices.Concat(g.Planes, g.Bridges) {
		list = append(list, p.Places...)
	}
	return list
}

// toRead returns where the places were read: readings without their diameters.
func toRead(places []bore.Place) []bore.Reading {
	var list []bore.Reading
	for _, q := range places {
		list = append(list, bore.Reading{Depth: q.Depth, Axis: q.Axis})
	}
	return list
}

// axesOf returns the axes of readings, in the order of their angles.
func axesOf(rs []bore.Reading) []units.Angle {
	var axes []units.Angle
	for _, r := range rs {
		axes = append(axes, r.Axis)
	}
	slices.Sort(axes)
	return slices.Compact(axes)
}
