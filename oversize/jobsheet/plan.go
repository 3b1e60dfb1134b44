// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"strings"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Plan works a job out through every room: it measures, judges, chooses the route and says what
// follows for hone, rings and displacement. The error for a job that [ReadJob] would refuse
// is [Faults].
// Plan reads no clock: the same job gives the same sheet.
func Plan(j Job) (Sheet, error) {
	if err := j.check(nil); err != nil {
		return Sheet{}, err
	}
	return j.sheet()
}

// sheet works out a job that stands up to [Job.check].
func (j Job) sheet() (Sheet, error) {
	s := Sheet{Version: Version, Job: j.clone()}
	_, assumed, err := j.gauge()
	if err != nil {
		return Sheet{}, refused("gauge", err)
	}
	s.Assumed = assumed
	for i, c := range j.Cylinders {
		cs, err := j.cylinder(c)
		if err != nil {
			return Sheet{}, refused(fmt.Sprintf("cylinders[%d]", i), err)
		}
		s.Cylinders = append(s.Cylinders, cs)
	}
	if s.Choice, err = j.choose(s.Cylinders); err != nil {
		return Sheet{}, refused("", err)
	}
	s.stock()
	if err := s.capacities(); err != nil {
		return Sheet{}, refused("engine", err)
	}
	for i := range s.Cylinders {
		if err := s.ringGaps(i); err != nil {
			return Sheet{}, refused(fmt.Sprintf("cylinders[%d].rings", i), err)
		}
	}
	if err := s.hone(); err != nil {
		return Sheet{}, refused("tools", err)
	}
	s.sleeves()
	s.removal()
	if err := s.nextPasses(); err != nil {
		return Sheet{}, refused("engine", err)
	}
	s.Checklist = checklist(s)
	s.Cautions = cautions(s)
	return s, nil
}

// refused returns what a room refused as a fault of the job.
func refused(path string, err error) error {
	return Faults{{Path: path, Want: strings.ReplaceAll(err.Error(), "\n", "; ")}}
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

// count returns how many limits decide. That a worn bore is no longer a new one decides nothing,
// unless there is no other limit.
func count(l bore.Limits) int {
	n := 0
	for _, given := range []bool{!l.Service.IsZero(), l.Ovality != 0, l.Taper != 0, l.Spread != 0} {
		if given {
			n++
		}
	}
	return max(n, 1)
}

func (j Job) risk() uncertainty.Risk {
	return uncertainty.Risk{Accept: j.Risk.Accept, Reject: j.Risk.Reject}
}

// cylinder measures and judges one bore. The risk of the engine is shared over its cylinders
// and their limits.
func (j Job) cylinder(c Cylinder) (CylinderSheet, error) {
	cs := CylinderSheet{Name: c.Name}
	var err error
	if cs.Bore, err = j.measure(c); err != nil {
		return cs, err
	}
	limits, err := j.limits(c.Over)
	if err != nil {
		return cs, err
	}
	each := j.risk().Share(len(j.Cylinders) * count(limits))
	if cs.Findings, err = cs.Bore.Judge(limits, each); err != nil {
		return cs, err
	}
	if cs.Clearances, err = j.clearances(c, cs.Bore); err != nil {
		return cs, err
	}
	for _, f := range cs.Findings {
		if f.Verdict != uncertainty.Undecided || f.NotMeasured {
			continue
		}
		// More readings average out what a place has to itself, and no more.
		r, err := f.Settle(min(cs.Bore.Largest.Own.Std, f.Measured.Std))
		if err != nil {
			return cs, err
		}
		cs.Remedies = append(cs.Remedies, Remedy{f.Subject, r})
	}
	unworn := j.Engine.at(c.Over)
	if limits.New.HasMin() {
		unworn = limits.New.Min
	}
	// A bore cannot have been larger when new than where it is smallest now.
	unworn = min(unworn, cs.Bore.Smallest.Size.Value)
	cs.CleanUp, err = cs.Bore.CleanUp(bore.Wear{
		Unworn:     uncertainty.Estimate{Value: unworn},
		Allowances: bore.Allowances{Pit: c.Pit},
	})
	return cs, err
}

// clearances returns the piston's greatest and least clearance in the bore as it is.
func (j Job) clearances(c Cylinder, g bore.Geometry) ([]Clearance, error) {
	if c.Piston == (Piston{}) || cmp.Or(c.PistonFor, c.Over) != c.Over {
		return nil, nil
	}
	p, err := c.Piston.fit()
	if err != nil {
		return nil, err
	}
	var list []Clearance
	for _, at := range []struct {
		what string
		size uncertainty.Estimate
	}{{"greatest", g.Largest.Size}, {"least", g.Smallest.Size}} {
		e, err := fit.Clearance(at.size, p)
		if err != nil {
			return nil, err
		}
		list = append(list, Clearance{What: at.what, Size: e})
	}
	return list, nil
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
		GasketHole: e.GasketHole, Honing: e.HoningAllowance,
		RigidHone: j.Tools.Hone == hone.RigidStone, OwnSizes: e.OwnSizes,
	}
	for _, o := range e.Oversizes {
		p, err := o.Piston.fit()
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
		cylinders[i] = oversize.Cylinder{
			Name: c.Name, Over: given.Over,
			Largest: c.Bore.Largest.Size, Smallest: c.Bore.Smallest.Size, Places: places(c.Bore),
			CleanUp: c.CleanUp, Findings: c.Findings,
			Piston: p, PistonFor: cmp.Or(given.PistonFor, given.Over), Pit: given.Pit,
			ThinnestWall: wall, Peeling: given.Peeling,
		}
	}
	return oversize.Choose(engine, cylinders, j.risk())
}

// places is how many places the extremes are of.
func places(g bore.Geometry) int {
	n := 0
	for _, planes := range [...][]bore.Plane{g.Planes, g.Bridges} {
		for _, p := range planes {
			n += len(p.Places)
		}
	}
	return n
}

// stock divides what is to be bored and honed off, where the job says how.
func (s *Sheet) stock() {
	b := s.Job.Cuts
	if b == (Cuts{}) {
		return
	}
	if s.waiting() {
		return
	}
	shop := oversize.Shop{
		MostDepth: b.MostDepth, FinishBore: b.FinishBore, FinishHone: b.FinishHone, Plateau: b.Plateau,
		BothEnds: b.BothEnds, Length: b.Length, Feed: b.Feed, Spindle: b.Spindle,
	}
	for i := range s.Cylinders {
		c, choice := &s.Cylinders[i], s.Choice.Cylinders[i]
		if choice.Bored == 0 {
			continue
		}
		var err error
		if c.Stock, err = shop.Plan(c.Bore.Smallest.Size.Value, choice.Bored, choice.Aim); err != nil {
			s.omit("stock of cylinder "+c.Name, "%v", err)
		}
	}
}

// capacities adds displacement and compression ratio, before and after.
func (s *Sheet) capacities() error {
	e := s.Job.Engine
	clearance := e.ClearanceVolume
	if e.CompressionRatio != 0 {
		swept, err := oversize.Swept(e.Bore, e.Stroke)
		if err != nil {
			return err
		}
		if clearance, err = oversize.ClearanceVolume(swept, e.CompressionRatio); err != nil {
			return err
		}
	}
	capacity := func(d units.Length) (Capacity, error) {
		swept, err := oversize.Swept(d, e.Stroke)
		if err != nil {
			return Capacity{}, err
		}
		c := Capacity{Bore: d, Swept: swept}
		if clearance != 0 {
			c.Ratio, err = oversize.Ratio(swept, clearance)
		}
		return c, err
	}
	for i := range s.Cylinders {
		c, choice := &s.Cylinders[i], s.Choice.Cylinders[i]
		before, after := e.at(s.Job.Cylinders[i].Over), e.at(choice.Over)
		if choice.Aim != 0 {
			after = choice.Aim
		}
		var err error
		if c.Before, err = capacity(before); err != nil {
			return err
		}
		s.Before.Swept = oversize.Total(s.Before.Swept, c.Before.Swept)
		if choice.Route != oversize.HoneAndKeep && choice.Route != oversize.BoreOversize {
			continue
		}
		if c.After, err = capacity(after); err != nil {
			return err
		}
	}
	if s.Choice.Route == oversize.HoneAndKeep || s.Choice.Route == oversize.BoreOversize {
		for _, c := range s.Cylinders {
			s.After.Swept = oversize.Total(s.After.Swept, c.After.Swept)
		}
	}
	if clearance == 0 {
		s.omit("compression ratio", "give engine.clearance_volume or engine.compression_ratio")
	}
	return nil
}

// usualTolerance is taken where the job wants a crosshatch and names no tolerance.
const usualTolerance = 5 * units.Degree

// hone adds the crosshatch of the setting in the job and of what is on hand.
func (s *Sheet) hone() error {
	t := s.Job.Tools
	if s.Choice.Route == oversize.MakersProcess {
		s.omit("honing", "this wall is never honed")
		return nil
	}
	h := HoneSheet{Stroke: t.Stroke}
	for i := range s.Cylinders {
		if size, known := s.finished(i); known && h.Bore == 0 {
			h.Bore = size.Value
		}
	}
	if h.Bore == 0 {
		h.Bore = s.Job.Engine.Bore
	}
	if h.Stroke == 0 && t.BoreLength != 0 && t.ToolLength != 0 {
		run := hone.Run{Kind: t.Hone, Depth: t.BoreLength, Tool: t.ToolLength, RoomTop: t.RoomTop, RoomBottom: t.RoomBottom}
		travel, err := hone.UsualTravel(run)
		if t.OvertravelTop != 0 || t.OvertravelBottom != 0 {
			travel, err = run.Travel(t.OvertravelTop, t.OvertravelBottom)
		}
		if err == nil {
			h.Travel = travel
			h.Stroke, err = travel.Stroke()
		}
		if err != nil {
			s.omit("honing", "%v", err)
			return nil
		}
	}
	if h.Stroke == 0 {
		s.omit("honing", "give tools.stroke, or tools.bore_length and tools.tool_length")
		return nil
	}
	var err error
	if t.SpindleNow != 0 && !t.StrokingNow.IsZero() {
		h.Now = hone.Setting{Bore: h.Bore, Stroke: h.Stroke, Spindle: t.SpindleNow, Stroking: t.StrokingNow}
		if h.Leaves, err = h.Now.Crosshatch(); err != nil {
			return err
		}
		if h.Cautions, err = h.Now.Cautions(t.Drive); err != nil {
			return err
		}
	}
	if t.Crosshatch.IsZero() || t.Spindle.IsZero() || t.Stroking.IsZero() {
		s.omit("the crosshatch on hand", "give tools.crosshatch, tools.spindle and tools.stroking")
	} else {
		want := hone.Want{Crosshatch: t.Crosshatch, Tolerance: t.Tolerance}
		if want.Tolerance == 0 {
			want.Tolerance = usualTolerance
		}
		on := hone.OnHand{Bore: h.Bore, Stroke: h.Stroke, Spindle: t.Spindle, Stroking: t.Stroking, Drive: t.Drive}
		reach, err := on.Reach(want)
		if err != nil {
			s.omit("the crosshatch on hand", "%v", err)
		} else {
			h.Reach = &reach
		}
	}
	s.Honing = h
	return nil
}
