// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/rings"
	"borewright.example/units/uncertainty"
)

func (s Sheet) rings(p *page) {
	if len(s.Job.Engine.Rings) == 0 {
		return
	}
	p.title("RING GAPS")
	s.checks(p, FittingRings)
	for i, c := range s.Cylinders {
		p.line("  Cylinder %s", c.Name)
		for _, ring := range s.Job.Engine.Rings {
			if !slices.ContainsFunc(c.Rings, func(r RingSheet) bool { return r.Ring == ring.Name }) {
				p.line("  ring %s, wanted %s, to be measured: %s", ring.Name, p.show.limits(ring.Gap), blank)
			}
		}
		if len(c.Rings) == 0 {
			continue
		}
		rows := [][]string{{"ring", "gap in its bore", "new", "in service", "to do", "hot"}}
		for _, r := range c.Rings {
			fresh, worn, hot := p.show.limits(s.Job.Engine.ring(r.Ring).Gap), "–", "–"
			if f := r.Service; f.Subject != "" {
				worn = p.show.limits(f.Limits) + ": " + f.Verdict.String()
			}
			if e := r.Hot; e.Value != 0 {
				hot = p.show.estimate(e)
				if e.Value < 0 {
					hot += ": THE ENDS BUTT"
				}
			}
			rows = append(rows, []string{r.Ring, p.show.estimate(r.Gap), fresh, worn, s.ringWork(p, r, i), hot})
		}
		p.table(rows)
	}
	if w := s.UsualGap; !w.IsZero() {
		p.line("  Rules of thumb for a new ring in a bore of %s: %s, whatever the duty. The maker's window comes first.", p.show.length(s.Job.Engine.Bore), p.show.limits(w))
	}
	for _, c := range s.Cylinders {
		if len(c.Rings) > 0 && c.Rings[0].SetAt != 0 {
			p.line("  Cylinder %s: set each gap at %s, where the bore is smallest in ring travel: %s.", c.Name, p.show.plain(c.Rings[0].SetAt), p.show.estimate(c.Rings[0].Bore))
		}
		for _, r := range c.Rings {
			if e := r.Least; e.Value != 0 && r.HotEnough.Subject != "" {
				p.wrapped("  ", fmt.Sprintf("Cylinder %s, ring %s: cold, at 20 °C, it wants %s at the least, so that %s are left in work; it has %s cold.",
					c.Name, r.Ring, p.show.estimate(e), p.show.length(r.HotEnough.Limits.Min), p.show.estimate(r.filed())))
			}
			for _, room := range r.Ports {
				text := fmt.Sprintf("Cylinder %s, ring %s: %s between its ends and port %s", c.Name, r.Ring, p.show.length(room.Room), s.Job.Engine.portName(room.Port))
				if room.Crosses {
					text += ". AN END CROSSES IT, where it springs out and breaks: see whether the peg and the piston's direction are as written"
				}
				p.wrapped("  ", text+".")
			}
			if f := r.Follows; f != nil {
				p.wrapped("  ", fmt.Sprintf("Cylinder %s, ring %s: the form that was read asks for %.0f %% of what the ring can follow "+
					"by its own spring (by another rule %.0f %%): %v.%s", c.Name, r.Ring, 100*f.Derived.Used, 100*f.Empirical.Used, f.Verdict, unseenOrders(f.Unseen)))
			}
		}
	}
}

// ringWork says what is to be done about a ring. Its row says where it stands; here are the figures to file to,
// expected ones while the bore is still to come.
func (s Sheet) ringWork(p *page, r RingSheet, i int) string {
	row := s.row(fmt.Sprintf("cylinders[%d].rings[%d].gap", i, s.Job.Engine.ringIndex(r.Ring)))
	switch f := r.Filing; {
	case row.State == Proven:
		return "fits, measured"
	case row.State == Accepted:
		return "accepted by " + row.By
	case row.State == Failed, row.Reason == NoLimit:
		if f.Action != rings.FileEnds {
			return row.Reason.String()
		}
	case r.Doubtful:
		return "cannot be proven: measure the gap better"
	}
	switch f := r.Filing; f.Action {
	case rings.FileEnds:
		text := fmt.Sprintf("file %s off, to %s", p.show.length(f.TakeOff), p.show.length(f.Target))
		if !s.Cylinders[i].there() {
			text = "expected: " + text + "; file only in the finished, washed bore"
		}
		if r.Gap.Value < 0 {
			text = "its ends overlap: is it for this bore? Else " + text
		}
		return text
	case rings.AsIs:
		return "should fit; measure it in this bore: " + blank
	case rings.TooWide:
		if stays(s.Choice.Cylinders[i]) {
			return "too wide for a new ring; a used one may stay"
		}
		return "already too wide: another ring, for this size"
	}
	return "undecided: measure the gap better"
}

// row returns the row of a key; a row that nothing is shown of where there is none.
func (s Sheet) row(key string) Row {
	for _, r := range s.Ledger {
		if r.Key == key {
			return r
		}
	}
	return Row{}
}

// there reports whether the finished bore has been read.
func (c CylinderSheet) there() bool { return c.Proof != nil }

// ringIndex returns where a ring stands among the engine's.
func (e Engine) ringIndex(name string) int {
	return slices.IndexFunc(e.Rings, func(r Ring) bool { return r.Name == name })
}

// portName is what a port is called on the sheet.
func (e Engine) portName(i int) string {
	if name := e.Layout.Ports[i].Name; name != "" {
		return name
	}
	return fmt.Sprint(i + 1)
}

// unseenOrders says of which lobes the form that a ring was held against tells nothing.
func unseenOrders(orders []int) string {
	if len(orders) == 0 {
		return ""
	}
	var list []string
	for _, o := range orders {
		list = append(list, fmt.Sprint(o))
	}
	return " Nothing was seen of " + strings.Join(list, ", ") + " lobes."
}

// clearances has the pistons: clearances, what is usual, and the matching.
func (s Sheet) clearances(p *page) {
	rows := [][]string{{"cylinder", "piston clearance", "at 20 °C", "running"}}
	for _, c := range s.Cylinders {
		for _, k := range c.Clearances {
			hot := "–"
			if k.Hot != (uncertainty.Estimate{}) {
				hot = p.show.estimate(k.Hot)
				if k.Hot.Value < 0 {
					hot += ": the piston is the larger, by these temperatures"
				}
			}
			rows = append(rows, []string{c.Name, k.At.String(), p.show.estimate(k.Size), hot})
		}
	}
	window := s.Job.Engine.Limits.PistonClearance
	if len(rows) == 1 && s.Matched == nil && s.UsualClearance.IsZero() {
		return
	}
	p.title("PISTONS (clearance is on the diameter)")
	if len(rows) > 1 {
		p.table(rows)
	}
	if !window.IsZero() {
		p.line("  The maker allows %s at 20 °C in a fresh bore.", p.show.limits(window))
	}
	if w := s.UsualClearance; !w.IsZero() {
		p.line("  Rules of thumb for %v pistons: %s. The piston supplier's figure comes first.", s.Job.Engine.Duty, p.show.limits(w))
	}
	if s.Job.Engine.Running.Piston != (bore.Temperature{}) {
		p.wrapped("  ", "The running clearance is an indicator, not a limit: a skirt is oval, tapered and gives way. Where the piston is the larger, ask its supplier.")
	}
	if m := s.Matched; m != nil {
		p.line("  Pistons matched to the finished bores, in the order in which the job lists them:")
		rows := [][]string{{"cylinder", "piston", "clearance", "window"}}
		for _, pair := range m.Pairs {
			in := "inside"
			if !pair.Inside {
				in = "OUTSIDE"
			}
			rows = append(rows, []string{s.Cylinders[pair.Bore].Name, fmt.Sprint(pair.Piston + 1), p.show.length(pair.Clearance), in})
		}
		p.table(rows)
		p.line("  They lie off the middle of the window by %s (root mean square); by number, by %s.", p.show.length(m.Off), p.show.length(m.OffByNumber))
	}
}
