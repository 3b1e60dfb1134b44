// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func (s Sheet) crosshatch(p *page) {
	h := s.Honing
	if h.Stroke == 0 {
		return
	}
	p.title("CROSSHATCH")
	p.line("  Bore %s, stroke %s.", p.show.length(h.Bore), p.show.length(h.Stroke))
	if t := h.Travel; t.Tool != 0 {
		p.line("  The tool of %s stands out by %s at the top and %s at the bottom.", p.show.plain(t.Tool), p.show.length(t.Top), p.show.length(t.Bottom))
	}
	if r := h.Removal; r.Middle != 0 {
		p.wrapped("  ", fmt.Sprintf("With steady strokes %s on the diameter at the middle of the wall is %s at the top and %s at the bottom: straight to %s.",
			p.show.length(r.Middle), p.show.length(r.Top), p.show.length(r.Bottom), p.show.length(r.Straightness)))
	}
	for _, c := range s.Cylinders {
		if c.Next.Size.Value != 0 {
			p.wrapped("  ", fmt.Sprintf("Cylinder %s, honed so far: %v.", c.Name, c.Next))
		}
	}
	if !h.Leaves.IsZero() {
		p.wrapped("  ", fmt.Sprintf("As meant to be set, %s with %s leaves %s.", turns(h.Now.Spindle), cycles(h.Now.Stroking), h.Leaves.Format(1)))
		for _, c := range h.Cautions {
			p.wrapped("    ! ", c.Text())
		}
	}
	if r := h.Reach; r != nil {
		reach(p, *r)
		if n, ok := r.SpindlesAt(r.Best.Stroking); ok {
			p.line("  With %s, %s to %s will do.", cycles(r.Best.Stroking), turns(n.Min), turns(n.Max))
		}
		if n := h.Now.Spindle; n != 0 {
			if k, ok := r.StrokingsAt(n); ok {
				p.line("  At %s, %s to %s will do.", turns(n), cycles(k.Min), cycles(k.Max))
			} else {
				p.line("  At %s no stroking on hand will do.", turns(n))
			}
		}
		for _, c := range r.Cautions {
			p.wrapped("    ! ", c.Text())
		}
	}
}

// reach says whether the wanted crosshatch can be had and what would have to change, in the units
// shown.
func reach(p *page, r hone.Reach) {
	at := fmt.Sprintf("%s with %s leaves %s", turns(r.Best.Spindle), cycles(r.Best.Stroking), r.Leaves.Format(1))
	if r.Met {
		p.wrapped("  ", fmt.Sprintf("On hand: %v can be had: %s.", r.Want, at))
		return
	}
	p.wrapped("  ", fmt.Sprintf("On hand: %v is out of reach; nearest, %s. It would take one of these:", r.Want, at))
	for _, c := range r.Changes {
		var to string
		switch c.Lever {
		case hone.SpindleLever:
			to = turns(c.Setting.Spindle)
		case hone.StrokingLever:
			to = cycles(c.Setting.Stroking)
		case hone.StrokeLever:
			to = "a stroke of " + p.show.length(c.Setting.Stroke)
		}
		if c.Against != hone.NoCaution {
			to += ", not advised: " + c.Against.Text()
		}
		p.wrapped("    - ", to)
	}
}

func turns(f units.Frequency) string { return fmt.Sprintf("%.0f rev/min", f.In(units.PerMinute)) }

// cycles says a stroking both ways, since the trade counts either.
func cycles(k hone.Stroking) string {
	return fmt.Sprintf("%.0f cycles/min (%.0f strokes)", k.Cycles().In(units.PerMinute), k.Strokes().In(units.PerMinute))
}

func (s Sheet) rings(p *page) {
	rows := [][]string{{"cylinder", "ring", "gap in the finished bore", "new", "in service", "to do", "hot"}}
	for i, c := range s.Cylinders {
		kept := s.Choice.Cylinders[i].Route == oversize.HoneAndKeep
		for _, r := range c.Rings {
			fresh, worn := "–", "–"
			if w := r.Filing.Now.Limits; !w.IsZero() {
				fresh = p.show.limits(w)
			}
			if f := r.Service; f.Subject != "" {
				worn = p.show.limits(f.Limits) + ": " + f.Verdict.String()
			}
			hot := "–"
			if e := r.Hot; e.Value != 0 {
				hot = p.show.estimate(e)
				if e.Value < 0 {
					hot += ": THE ENDS BUTT"
				}
			}
			rows = append(rows, []string{c.Name, r.Ring, p.show.estimate(r.Gap), fresh, worn, ringWork(p, r, kept), hot})
		}
	}
	if len(rows) == 1 {
		return
	}
	p.title("RING GAPS")
	p.table(rows)
	for _, c := range s.Cylinders {
		for _, r := range c.Rings {
			if f := r.Follows; f != nil {
				p.wrapped("  ", fmt.Sprintf("Cylinder %s, ring %s: the form that was read asks for %.0f %% of what the ring can follow "+
					"by its own spring (by another rule %.0f %%): %v.", c.Name, r.Ring, 100*f.Derived.Used, 100*f.Empirical.Used, f.Verdict))
			}
		}
	}
}

func ringWork(p *page, r RingSheet, kept bool) string {
	switch {
	case r.Doubtful:
		return "cannot be proven: measure the gap better"
	case r.Filing.Now.Subject == "":
		return "no window given"
	}
	switch f := r.Filing; f.Action {
	case rings.FileEnds:
		return fmt.Sprintf("file %s off, to %s", p.show.length(f.TakeOff), p.show.length(f.Target))
	case rings.AsIs:
		return "fits as it is"
	case rings.TooWide:
		if kept && r.Service.Subject != "" && r.Service.Verdict == uncertainty.Within {
			return "too wide for a new ring; a used one may stay"
		}
		return "already too wide: another ring, for this size"
	}
	return doNotReassemble
}
