// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"errors"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// judge holds an estimate against limits under a name.
func judge(subject string, x uncertainty.Estimate, w units.Limits, r uncertainty.Risk) (uncertainty.Finding, error) {
	f, err := uncertainty.Judge(x, w, r)
	f.Subject = subject
	return f, err
}

// limitReason returns why a finding of that verdict speaks against keeping, if it does.
func limitReason(v uncertainty.Verdict) Reason {
	switch v {
	case uncertainty.Within:
		return NoReason
	case uncertainty.Beyond:
		return BeyondLimit
	}
	return LimitUndecided
}

// refuse adds a refusal to the trial.
func (t *trial) refuse(x Refusal) {
	t.refused = append(t.refused, x)
	switch {
	case !x.Reason.Open():
		t.verdict = uncertainty.Beyond
	case t.verdict == uncertainty.Within:
		t.verdict = uncertainty.Undecided
	}
}

// keep tries the size at which the cylinder stands: first to deglaze it, then to correct it.
func (e *Engine) keep(c *Cylinder, r uncertainty.Risk) (trial, error) {
	t := trial{verdict: uncertainty.Within, kept: true}
	refuse := func(why Reason, f uncertainty.Finding) {
		t.refuse(Refusal{Route: HoneAndKeep, Work: Deglaze, Over: c.Over, Reason: why, Finding: f})
	}
	for _, f := range c.Findings {
		if why := limitReason(f.Verdict); why != NoReason {
			refuse(why, f)
		}
	}
	if len(c.Findings) == 0 && e.Clearance.IsZero() {
		refuse(NothingJudged, uncertainty.Finding{})
	}
	piston := e.pistonFor(c, c.Over)
	window, err := e.keepWindow(c, piston)
	if err != nil {
		return trial{}, err
	}
	if !e.Clearance.IsZero() {
		if err := e.judgeClearance(c, piston, r, refuse); err != nil {
			return trial{}, err
		}
	}
	t.choice = CylinderChoice{Route: HoneAndKeep, Work: Deglaze, Finish: window, WallLeft: c.ThinnestWall}
	wallStands, err := e.wallStands(c, r, refuse)
	if err != nil {
		return trial{}, err
	}
	if t.proven() || !wallStands || !window.HasMax() {
		return t, nil
	}
	// Rigid stones can still bring it into the window, if they take all worn wall with them.
	f, err := judge("clean-up on the worn centre", c.CleanUp.Worn.Greatest, units.Limits{Max: window.Max}, r)
	if err != nil {
		return trial{}, err
	}
	why := NoRigidHone
	switch {
	case f.Verdict == uncertainty.Beyond:
		why = NoCleanUp
	case f.Verdict == uncertainty.Undecided:
		why = CleanUpNotProven
	case e.RigidHone:
		t.choice.Refused, t.refused, t.verdict = t.refused, nil, uncertainty.Within
		return t, e.correct(&t.choice, c, piston, r)
	}
	t.refused = append(t.refused, Refusal{Route: HoneAndKeep, Work: Correct, Over: c.Over, Reason: why, Finding: f})
	return t, nil
}

// wallStands asks whether the wall is thick enough as it is, where it was measured and a least
// is given.
func (e *Engine) wallStands(c *Cylinder, r uncertainty.Risk, refuse func(Reason, uncertainty.Finding)) (bool, error) {
	if e.LeastWall == 0 || c.ThinnestWall.Value == 0 {
		return true, nil
	}
	f, err := judge("thinnest wall", c.ThinnestWall, units.Limits{Min: e.LeastWall}, r)
	if err != nil || f.Verdict == uncertainty.Within {
		return true, err
	}
	refuse(wallReason(f.Verdict), f)
	return false, nil
}

// wallReason returns why a wall that is not Within its limit is refused.
func wallReason(v uncertainty.Verdict) Reason {
	if v == uncertainty.Beyond {
		return WallThin
	}
	return WallNotProven
}

// correct sets the window and the aim for honing to a true cylinder inside cc.Finish: as little
// as takes all worn wall away.
func (e *Engine) correct(cc *CylinderChoice, c *Cylinder, p fit.Piston, r uncertainty.Risk) error {
	cc.Work = Correct
	clean := c.CleanUp.Worn.Greatest
	guard, err := clean.Expanded(1 - 2*r.Accept) // one side
	if err != nil {
		return err
	}
	cc.Finish.Min = min(max(cc.Finish.Min, clean.Value+guard), cc.Finish.Max)
	return e.aim(cc, c, p, fit.Tight)
}

// keepWindow returns the sizes that a kept bore may have: with its piston inside the clearance
// window, opened to the worn clearance where one is given, and up to the service limit.
func (e *Engine) keepWindow(c *Cylinder, p fit.Piston) (units.Limits, error) {
	var w units.Limits
	if !e.Clearance.IsZero() && !p.IsZero() {
		clearance := e.Clearance
		clearance.Max = max(clearance.Max, e.WornClearance)
		var err error
		if w, err = fit.FinishWindow(p, clearance); err != nil {
			return w, err
		}
	}
	if e.Service != 0 && (w.Max == 0 || e.Service+c.Over < w.Max) {
		w.Max = max(w.Min, e.Service+c.Over)
	}
	return w, nil
}

// judgeClearance holds the piston's clearance in the bore as it would be kept: at its largest
// against the greatest, at its smallest against the least.
func (e *Engine) judgeClearance(c *Cylinder, p fit.Piston, r uncertainty.Risk, refuse func(Reason, uncertainty.Finding)) error {
	if p.IsZero() {
		refuse(PistonNotMeasured, uncertainty.Finding{})
		return nil
	}
	loose, err := fit.Clearance(c.Largest, p)
	if err != nil {
		return err
	}
	tight, err := fit.Clearance(c.Smallest, p)
	if err != nil {
		return err
	}
	loose.Value += e.Deglaze
	tight.Value += e.Deglaze
	r.Reject = r.Share(max(c.Places, 1)).Reject // any place may have become the extreme by chance
	f, err := judge("greatest clearance", loose, units.Limits{Max: max(e.Clearance.Max, e.WornClearance)}, r)
	if err != nil {
		return err
	}
	switch f.Verdict {
	case uncertainty.Beyond:
		refuse(ClearanceBeyond, f)
	case uncertainty.Undecided:
		refuse(ClearanceUndecided, f)
	}
	if f, err = judge("least clearance", tight, units.Limits{Min: e.Clearance.Min}, r); err != nil {
		return err
	}
	if f.Verdict != uncertainty.Within {
		refuse(PistonTight, f)
	}
	return nil
}

// bore tries to bore the cylinder to a size above the one at which it stands.
func (e *Engine) bore(c *Cylinder, over units.Length, r uncertainty.Risk) (trial, error) {
	t := trial{verdict: uncertainty.Within}
	refuse := func(why Reason, f uncertainty.Finding) {
		t.refuse(Refusal{Route: BoreOversize, Over: over, Reason: why, Finding: f})
	}
	cc := CylinderChoice{Route: BoreOversize, Over: over}
	piston := e.pistonFor(c, over)
	finish, err := e.boreWindow(&cc, piston)
	if err != nil {
		return trial{}, err
	}
	if e.MostOver != 0 && over > e.MostOver {
		refuse(BeyondGreatest, uncertainty.Finding{})
	}
	if e.GasketHole != 0 && finish.Max > e.GasketHole {
		refuse(GasketHole, uncertainty.Finding{})
	}
	if err := e.judgeCleanUp(c, &cc, finish.Min-e.Honing, r, refuse); err != nil {
		return trial{}, err
	}
	if err := e.judgeWall(c, &cc, finish.Max, r, refuse); err != nil {
		return trial{}, err
	}
	if !t.proven() {
		return t, nil
	}
	if err := e.aim(&cc, c, piston, e.Aim); err != nil {
		return trial{}, err
	}
	if cc.Aim == 0 {
		cc.Cautions = append(cc.Cautions, PistonToCome)
	} else {
		cc.Bored = cc.Aim - e.Honing
	}
	t.choice = cc
	return t, nil
}

// boreWindow returns the sizes that the finished bore may have, and sets them in cc where they
// are known well enough to work to: from the piston and its clearance, else from the maker's
// window for a new bore. With neither it is the nominal size alone, for the choice.
func (e *Engine) boreWindow(cc *CylinderChoice, p fit.Piston) (units.Limits, error) {
	var err error
	switch {
	case !p.IsZero() && !e.Clearance.IsZero():
		cc.Finish, err = fit.FinishWindow(p, e.Clearance)
	case !e.NewBore.IsZero():
		cc.Finish, err = e.NewBore.Shift(cc.Over)
	default:
		return units.Limits{Min: e.Nominal + cc.Over, Max: e.Nominal + cc.Over}, nil
	}
	return cc.Finish, err
}

// judgeCleanUp asks whether the bored size leaves no worn wall, on the original centre or, where
// the axis may move so far, on the worn one.
func (e *Engine) judgeCleanUp(c *Cylinder, cc *CylinderChoice, bored units.Length, r uncertainty.Risk, refuse func(Reason, uncertainty.Finding)) error {
	limit := units.Limits{Max: bored}
	f, err := judge("clean-up on the original centre", c.CleanUp.Original.Greatest, limit, r)
	if err != nil || f.Verdict == uncertainty.Within {
		return err
	}
	least := c.CleanUp.Original.Least
	if e.MayShift > 0 && c.CleanUp.Shift <= e.MayShift {
		f, err = judge("clean-up on the worn centre", c.CleanUp.Worn.Greatest, limit, r)
		if err != nil {
			return err
		}
		if f.Verdict == uncertainty.Within {
			cc.Centre, cc.Shift = WornCentre, c.CleanUp.Shift
			if cc.Shift > 0 {
				cc.Cautions = append(cc.Cautions, AxisMoves)
			}
			return nil
		}
		least = c.CleanUp.Worn.Least
	}
	sure, err := judge(f.Subject, least, limit, r)
	if err != nil {
		return err
	}
	if sure.Verdict == uncertainty.Beyond {
		refuse(NoCleanUp, sure)
	} else {
		refuse(CleanUpNotProven, f)
	}
	return nil
}

// judgeWall asks whether enough wall is left where it was measured thinnest. The wall is taken to
// stand where the bore is smallest, which takes most from it; a bore on the worn centre may
// take its shift as well.
func (e *Engine) judgeWall(c *Cylinder, cc *CylinderChoice, finished units.Length, r uncertainty.Risk, refuse func(Reason, uncertainty.Finding)) error {
	if c.ThinnestWall.Value == 0 {
		if e.LeastWall != 0 {
			refuse(WallNotMeasured, uncertainty.Finding{})
		} else {
			cc.Cautions = append(cc.Cautions, WallUnknown)
		}
		return nil
	}
	if e.LeastWall == 0 {
		cc.Cautions = append(cc.Cautions, WallUnknown)
	}
	left, err := WallLeft(c.ThinnestWall, c.Smallest, finished, cc.Shift)
	if err != nil {
		return err
	}
	cc.WallLeft = left
	f, err := judge("wall left", left, units.Limits{Min: max(e.LeastWall, units.Picometre)}, r)
	if err == nil && f.Verdict != uncertainty.Within {
		refuse(wallReason(f.Verdict), f)
	}
	return err
}

// aim sets the size to work to and the stock, where the finish window is known.
func (e *Engine) aim(cc *CylinderChoice, c *Cylinder, p fit.Piston, a fit.Aim) error {
	if !cc.Finish.HasMin() || !cc.Finish.HasMax() {
		return nil
	}
	doubt := c.Largest
	if !p.IsZero() {
		clearance, err := fit.Clearance(c.Largest, p)
		if err != nil {
			return err
		}
		doubt = clearance
	}
	guard, err := doubt.Expanded(guardCoverage)
	if err != nil {
		return err
	}
	cc.Aim, err = a.Size(cc.Finish, guard)
	if errors.Is(err, fit.ErrNarrow) {
		cc.Cautions = append(cc.Cautions, GaugeTooCoarse)
		cc.Aim, _ = cc.Finish.Middle()
	} else if err != nil {
		return err
	}
	cc.LeastStock, cc.MostStock = cc.Aim-c.Largest.Value, cc.Aim-c.Smallest.Value
	return nil
}

// guardCoverage is the coverage of the doubt that keeps an aim off the tight end.
const guardCoverage = 0.95
