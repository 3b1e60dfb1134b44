// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"errors"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// guardCoverage is the coverage of the doubt that keeps an aim off the tight end.
const guardCoverage = 0.95

// aim completes the choice of a size that serves: the size to work to, the bored size, the stock
// and the cautions.
func (t *trial) aim() error {
	cc := &t.choice
	rule := t.engine.Aim
	if slices.Contains(t.c.CleanUp.Unseen, bore.UnseenOvality) {
		cc.Cautions = append(cc.Cautions, ovalityUnseen)
	}
	if cc.Route == BoreOversize {
		if cc.Shift > 0 {
			cc.Cautions = append(cc.Cautions, axisMoves)
		}
		if t.engine.LeastWall == 0 || t.c.ThinnestWall.Value == 0 {
			cc.Cautions = append(cc.Cautions, wallUnknown)
		}
		if cc.Finish.IsZero() {
			cc.Cautions = append(cc.Cautions, pistonToCome)
			return nil
		}
	} else {
		if cc.Work != CorrectForm {
			return nil // deglazing works to no size
		}
		// As little as is sure to take all worn wall away.
		clean := t.c.CleanUp.Worn.Max
		guard, err := clean.Expanded(1 - 2*t.risk.Accept) // one side
		if err != nil {
			return err
		}
		cc.Finish.Min = min(max(cc.Finish.Min, clean.Value+guard), cc.Finish.Max)
		rule = fit.Tight
	}
	size, caution, err := SizeToWorkTo(cc.Finish, t.c.Largest, t.piston, rule)
	if err != nil {
		return err
	}
	if caution != "" {
		cc.Cautions = append(cc.Cautions, caution)
	}
	cc.Aim = size
	if cc.Route == HoneAndKeep && !t.piston.IsZero() && t.engine.Clearance.HasMax() {
		fresh, err := fit.FinishWindow(t.piston, t.engine.Clearance)
		if err != nil {
			return err
		}
		if size > fresh.Max {
			cc.Cautions = append(cc.Cautions, lifeUsed)
		}
	}
	cc.Stock = units.Limits{Min: size - t.c.Largest.Value, Max: size - t.c.Smallest.Value}
	if cc.Route == BoreOversize {
		cc.Bored = size - t.engine.Honing
	}
	return nil
}

// SizeToWorkTo returns the size that a rule aims at in a finish window, off its tight end by the expanded doubt of the
// clearance: that of the piston, where there is one, and of the gauge, which will measure the finished bore as it
// measured the worn one. Where the doubt leaves no size as far off both ends none can be proven: the caution says so,
// and the size is the middle, from which a better gauge may still ask for more; else the caution is "".
//
// A window with an end missing is [units.ErrNotGiven]; errors of a piston are those of package fit.
func SizeToWorkTo(window units.Limits, worn uncertainty.Estimate, p fit.Piston, rule fit.Aim) (size units.Length, caution string, err error) {
	doubt := worn
	if !p.IsZero() {
		clearance, err := fit.Clearance(worn, p)
		if err != nil {
			return 0, "", err
		}
		doubt.Std, doubt.DoF = clearance.Std, clearance.DoF
	}
	middle, ok := window.Middle()
	if ok && rule == fit.Centre {
		// Where the middle is far enough off, its chance says so for less than the quantile.
		doubt.Value = middle
		f, err := uncertainty.Judge(doubt, units.Limits{Min: window.Min}, uncertainty.Risk{Accept: (1 - guardCoverage) / 2})
		if err != nil || f.Verdict == uncertainty.Within {
			return middle, "", err
		}
	}
	guard, err := doubt.Expanded(guardCoverage)
	if err != nil {
		return 0, "", err
	}
	size, err = fit.AimIn(window, guard, rule)
	if errors.Is(err, fit.ErrNarrow) || err == nil && window.Max-size < guard {
		return middle, gaugeTooCoarse, nil
	}
	return size, "", err
}
