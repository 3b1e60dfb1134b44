// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// limitReason returns why a finding of that verdict speaks against keeping, if it does.
func limitReason(v uncertainty.Verdict) Reason {
	switch v {
	case uncertainty.Within:
		return noReason
	case uncertainty.Beyond:
		return beyondLimit
	}
	return limitUndecided
}

// A trial asks whether one size serves one cylinder.
type trial struct {
	engine *Engine
	c      *Cylinder
	over   units.Length
	piston fit.Piston // for the size; zero: none
	risk   uncertainty.Risk

	verdict uncertainty.Verdict // so far
	choice  CylinderChoice      // what would be done
	refused []Refusal
}

// try tries a size: the one at which the cylinder stands, or a larger one. Refusals are
// appended to those given.
func (e *Engine) try(c *Cylinder, over units.Length, r uncertainty.Risk, refused []Refusal) (trial, error) {
	t := trial{engine: e, c: c, over: over, piston: e.pistonFor(c, over), risk: r, verdict: uncertainty.Within, refused: refused}
	var err error
	if over == c.Over {
		t.choice.Route = HoneAndKeep
		err = t.keep()
	} else {
		t.choice.Route = BoreOversize
		err = t.bore()
	}
	if err != nil {
		err = fmt.Errorf("oversize: cylinder %q: %w", c.Name, err)
	}
	return t, err
}

// refuse notes why the size does not serve.
func (t *trial) refuse(why Reason, f uncertainty.Finding) {
	t.refused = append(t.refused, Refusal{Route: t.choice.Route, Work: t.choice.Work, Over: t.over, Reason: why, Finding: f})
	switch {
	case !why.Open():
		t.verdict = uncertainty.Beyond
	case t.verdict == uncertainty.Within:
		t.verdict = uncertainty.Undecided
	}
}

// judge holds an estimate against limits under a name.
func (t *trial) judge(subject string, x uncertainty.Estimate, w units.Limits) (uncertainty.Finding, error) {
	f, err := uncertainty.Judge(x, w, t.risk)
	f.Subject = subject
	return f, err
}

// keep tries the size at which the cylinder stands: first to deglaze it, then to correct it.
func (t *trial) keep() error {
	e, c := t.engine, t.c
	t.choice.Work, t.choice.WallLeft = Deglaze, c.ThinnestWall
	for _, f := range Deciding(c.Findings) {
		if why := limitReason(f.Verdict); why != noReason {
			t.refuse(why, f.Finding)
		}
	}
	if why := e.pitLeft(c); why != noReason {
		t.refuse(why, uncertainty.Finding{})
	}
	if len(c.Findings) == 0 && e.Clearance.IsZero() {
		t.refuse(nothingJudged, uncertainty.Finding{})
	}
	if err := t.keepWindow(); err != nil {
		return err
	}
	if err := t.judgeClearance(); err != nil {
		return err
	}
	stands, err := t.wallStands()
	if err != nil || t.verdict == uncertainty.Within || !stands || !t.choice.Finish.HasMax() {
		return err
	}
	// What nobody measured is measured first: correcting takes metal, perhaps for nothing.
	notMeasured := func(f bore.Finding) bool { return f.NotMeasured }
	if t.verdict == uncertainty.Undecided && slices.ContainsFunc(Deciding(c.Findings), notMeasured) {
		return nil
	}
	return t.correct()
}

// mostDeglaze is more than deglazing ever takes, on the diameter: 0.0005 in (common practice).
const mostDeglaze = units.Thou / 2

// pitLeft returns why a pit in ring travel is against deglazing alone, if any is.
func (e *Engine) pitLeft(c *Cylinder) Reason {
	var deepest units.Length // on the diameter
	for _, p := range c.CleanUp.Pits {
		if p.InTravel {
			deepest = max(deepest, 2*p.Below)
		}
	}
	switch {
	case deepest <= e.Deglaze:
		return noReason
	case e.Deglaze == 0 && deepest <= mostDeglaze:
		return scoreNotJudged
	}
	return scoreLeft
}

// keepWindow sets the sizes that a kept bore may have: with its piston inside the clearance
// window, opened to the worn clearance where one is given, and up to the service limit.
func (t *trial) keepWindow() error {
	e, w := t.engine, &t.choice.Finish
	if !e.Clearance.IsZero() && !t.piston.IsZero() {
		clearance := e.Clearance
		clearance.Max = max(clearance.Max, e.WornClearance)
		var err error
		if *w, err = fit.FinishWindow(t.piston, clearance); err != nil {
			return err
		}
	}
	if e.Service != 0 && (w.Max == 0 || e.Service+t.over < w.Max) {
		w.Max = max(w.Min, e.Service+t.over)
	}
	return nil
}

// judgeClearance holds the piston's clearance in the bore as it would be kept: at its largest
// against the greatest, at its smallest against the least.
func (t *trial) judgeClearance() error {
	e, c := t.engine, t.c
	if e.Clearance.IsZero() {
		return nil
	}
	if t.piston.IsZero() {
		t.refuse(PistonNotMeasured, uncertainty.Finding{})
		return nil
	}
	loose, err := fit.Clearance(c.Largest, t.piston)
	if err != nil {
		return err
	}
	tight, err := fit.Clearance(c.Smallest, t.piston)
	if err != nil {
		return err
	}
	loose.Value += e.Deglaze
	tight.Value += e.Deglaze
	r := t.risk
	r.Reject = r.Share(max(c.Places, 1)).Reject // any place may have become the extreme by chance
	f, err := uncertainty.Judge(loose, units.Limits{Max: max(e.Clearance.Max, e.WornClearance)}, r)
	if err != nil {
		return err
	}
	f.Subject = "greatest clearance"
	switch f.Verdict {
	case uncertainty.Beyond:
		t.refuse(clearanceBeyond, f)
	case uncertainty.Undecided:
		t.refuse(clearanceUndecided, f)
	}
	f, err = t.judge("least clearance", tight, units.Limits{Min: e.Clearance.Min})
	if err == nil && f.Verdict != uncertainty.Within {
		t.refuse(pistonTight, f)
	}
	return err
}

// wallStands asks whether the wall is thick enough as it is, where it was measured and a least
// is given.
func (t *trial) wallStands() (bool, error) {
	least, wall := t.engine.LeastWall, t.c.ThinnestWall
	if least == 0 || wall.Value == 0 {
		return true, nil
	}
	f, err := t.judge("thinnest wall", wall, units.Limits{Min: least})
	if err != nil || f.Verdict == uncertainty.Within {
		return true, err
	}
	t.refuse(wallReason(f.Verdict), f)
	return false, nil
}

// wallReason returns why a wall that is not Within its limit is refused.
func wallReason(v uncertainty.Verdict) Reason {
	if v == uncertainty.Beyond {
		return wallThin
	}
	return wallNotProven
}

// correct asks whether rigid stones can still bring the bore into the window, taking all worn
// wall with them.
func (t *trial) correct() error {
	limit, clean := units.Limits{Max: t.choice.Finish.Max}, t.c.CleanUp.Worn
	f, err := t.judge("clean-up on the worn centre", clean.Max, limit)
	if err != nil {
		return err
	}
	sure := f
	if f.Verdict == uncertainty.Beyond && clean.Min != clean.Max {
		if sure, err = t.judge(f.Subject, clean.Min, limit); err != nil {
			return err
		}
	}
	t.choice.Work = CorrectForm
	before := t.verdict
	switch {
	case sure.Verdict == uncertainty.Beyond:
		t.refuse(NoCleanUp, sure)
	case f.Verdict != uncertainty.Within:
		t.refuse(CleanUpNotProven, f)
	case !t.engine.RigidHone:
		t.refuse(noRigidHone, f)
	default:
		t.verdict = uncertainty.Within
		return nil
	}
	t.verdict = before // what is against deglazing decides
	return nil
}

// bore tries to bore the cylinder to a size above the one at which it stands.
func (t *trial) bore() error {
	e := t.engine
	finish, err := t.boreWindow()
	if err != nil {
		return err
	}
	if e.MostOver != 0 && t.over > e.MostOver {
		t.refuse(beyondGreatest, uncertainty.Finding{})
	}
	if e.GasketHole != 0 && finish.Max > e.GasketHole {
		t.refuse(gasketHole, uncertainty.Finding{})
	}
	if err := t.judgeCleanUp(finish.Min - e.Honing); err != nil || t.verdict == uncertainty.Beyond {
		return err // no need to ask for the wall as well
	}
	return t.judgeWall(finish.Max)
}

// boreWindow returns the sizes that the finished bore may have, and sets them in the choice where
// they are known well enough to work to: from the piston and its clearance, else from the
// maker's window for a new bore. With neither it is the nominal size alone, for the choice.
func (t *trial) boreWindow() (units.Limits, error) {
	e, w := t.engine, &t.choice.Finish
	var err error
	switch {
	case !t.piston.IsZero() && !e.Clearance.IsZero():
		*w, err = fit.FinishWindow(t.piston, e.Clearance)
	case !e.NewBore.IsZero():
		*w, err = e.NewBore.Shift(t.over)
	default:
		return units.Limits{Min: e.Nominal + t.over, Max: e.Nominal + t.over}, nil
	}
	return *w, err
}

// judgeCleanUp asks whether the bored size leaves no worn wall, on the original centre or, where
// the axis may move so far, on the worn one.
func (t *trial) judgeCleanUp(bored units.Length) error {
	limit, clean := units.Limits{Max: bored}, &t.c.CleanUp
	f, err := t.judge("clean-up on the original centre", clean.Original.Max, limit)
	if err != nil || f.Verdict == uncertainty.Within {
		return err
	}
	span := clean.Original
	if t.engine.MayShift > 0 && clean.Shift <= t.engine.MayShift {
		if f, err = t.judge("clean-up on the worn centre", clean.Worn.Max, limit); err != nil {
			return err
		}
		if f.Verdict == uncertainty.Within {
			t.choice.Shift = clean.Shift
			return nil
		}
		span = clean.Worn
	}
	sure := f
	if f.Verdict == uncertainty.Beyond && span.Min != span.Max {
		if sure, err = t.judge(f.Subject, span.Min, limit); err != nil {
			return err
		}
	}
	if sure.Verdict == uncertainty.Beyond {
		t.refuse(NoCleanUp, sure)
	} else {
		t.refuse(CleanUpNotProven, f)
	}
	return nil
}

// judgeWall asks whether enough wall is left where it was measured thinnest. The wall is taken to
// stand where the bore is smallest, which takes most from it; a bore on the worn centre may
// take its shift as well.
func (t *trial) judgeWall(finished units.Length) error {
	least, wall := t.engine.LeastWall, t.c.ThinnestWall
	if wall.Value == 0 {
		if least != 0 {
			t.refuse(WallNotMeasured, uncertainty.Finding{})
		}
		return nil
	}
	left, err := WallLeft(wall, t.c.Smallest, finished, t.choice.Shift)
	if err != nil {
		return err
	}
	t.choice.WallLeft = left
	f, err := t.judge("wall left", left, units.Limits{Min: max(least, units.Picometre)})
	if err == nil && f.Verdict != uncertainty.Within {
		t.refuse(wallReason(f.Verdict), f)
	}
	return err
}
