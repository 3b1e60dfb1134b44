// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/internal/notes"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/rings"
	"borewright.example/units/uncertainty"
)

func (s *draft) rings() {
	if len(s.Job.Engine.Rings) == 0 {
		return
	}
	s.checks(notes.FittingRings)
	for i, c := range s.Cylinders {
		s.heading("Cylinder %s", c.Name)
		for _, ring := range s.Job.Engine.Rings {
			if !slices.ContainsFunc(c.Rings, func(r RingSheet) bool { return r.Ring == ring.Name }) {
				s.say("ring %s, wanted %s, to be measured: %s", ring.Name, s.show.GapLimits(ring.Gap), page.Blank)
			}
		}
		if len(c.Rings) == 0 {
			continue
		}
		rows := [][]string{{"ring", "gap in its bore", "new", "in service", "hot", "in its groove", "to do"}}
		for _, r := range c.Rings {
			fresh, worn, hot, side := s.show.GapLimits(s.Job.Engine.ring(r.Ring).Gap), "–", "–", "–"
			if f := r.Service; f.Subject != "" {
				worn = s.show.GapLimits(f.Limits) + ": " + f.Verdict.String()
			}
			if f := r.Side; f.Subject != "" {
				side = s.show.Estimate(f.Measured) + ": " + f.Verdict.String()
			}
			if e := r.Hot.Measured; r.Hot.Subject != "" {
				hot = s.show.GapEstimate(e)
				if r.Filing.Action == rings.FileEnds {
					hot += ", once filed"
				}
				if e.Value < 0 {
					hot += ": THE ENDS BUTT"
				}
			}
			rows = append(rows, []string{r.Ring, s.show.GapEstimate(r.Gap), fresh, worn, hot, side, s.ringWork(r, i)})
		}
		if !slices.ContainsFunc(c.Rings, func(r RingSheet) bool { return r.Side.Subject != "" }) {
			for i, row := range rows {
				rows[i] = slices.Delete(row, 5, 6)
			}
		}
		s.table(rows)
		s.drawRings(c)
	}
	if w := s.UsualGap; !w.IsZero() {
		s.say("Rules of thumb for a new ring in a bore of %s: %s, whatever the duty. The maker's window comes first.", s.show.Plain(s.Job.Engine.Bore), s.show.GapThumb(w))
	}
	for _, c := range s.Cylinders {
		if len(c.Rings) > 0 && c.Rings[0].SetAt != 0 {
			s.say("Cylinder %s: set each gap at %s, where the bore is smallest in ring travel: %s.", c.Name, s.show.Plain(c.Rings[0].SetAt), s.show.Estimate(c.Rings[0].Bore))
		}
		for _, r := range c.Rings {
			if e := r.Least; e.Value != 0 && r.HotEnough.Subject != "" {
				s.say("Cylinder %s, ring %s: cold, at 20 °C, it wants %s at the least, so that %s are left in work; it has %s cold.",
					c.Name, r.Ring, s.show.GapEstimate(e), s.show.Gap(r.HotEnough.Limits.Min), s.show.GapEstimate(r.filed()))
			}
			for _, room := range r.Ports {
				text := fmt.Sprintf("Cylinder %s, ring %s: %s between its ends and port %s", c.Name, r.Ring, s.show.Room(room.Room), s.Job.Engine.portName(room.Port))
				if room.Room <= 0 {
					text += ". AN END CROSSES IT, where it springs out and breaks: see whether the peg and the piston's direction are as written"
				}
				s.add(page.Sentence(text + "."))
			}
			if f := r.Follows; f != nil {
				s.say("Cylinder %s, ring %s: the form that was read asks for %.0f %% of what the ring can follow "+
					"by its own spring (by another rule %.0f %%): %v.%s", c.Name, r.Ring, 100*f.Derived.Used, 100*f.Empirical.Used, f.Verdict, unseenOrders(f.Unseen))
			}
		}
	}
	s.drawPorts()
}

// ringWork says what is to be done about a ring. Its row says where it stands; here are the figures to file to,
// expected ones while the bore is still to come.
func (s *draft) ringWork(r RingSheet, i int) string {
	row := s.gapRow(r, i)
	switch f := r.Filing; {
	case row.State == StateProven:
		return "fits, measured"
	case row.State == StateAccepted:
		return "accepted by " + row.By
	case row.State == StateFailed, row.Reason == noLimit:
		if f.Action != rings.FileEnds {
			return row.Reason.String()
		}
	case r.Filing.Now.Subject == "" && !s.Job.Engine.ring(r.Ring).Gap.IsZero():
		return "cannot be proven: measure the gap better"
	}
	switch f := r.Filing; f.Action {
	case rings.FileEnds:
		text := fmt.Sprintf("file %s off, to %s", s.show.Gap(f.TakeOff), s.show.Gap(f.Target))
		if !s.Cylinders[i].there() {
			text = "expected: " + text + "; file only in the finished, washed bore"
		}
		if r.Gap.Value < 0 {
			text = "its ends overlap: is it for this bore? Else " + text
		}
		return text
	case rings.AsIs:
		return "should fit; measure it in this bore: " + page.Blank
	case rings.TooWide:
		if s.tooWide(r, i) {
			return "already too wide: another ring, for this size"
		}
		return "too wide for a new ring; a used one may stay"
	}
	return "undecided: measure the gap better"
}

// gapRow returns the row of a ring's gap.
func (s *draft) gapRow(r RingSheet, cylinder int) *Row {
	return s.row(cylinder, fmt.Sprintf("rings[%d].gap", s.Job.Engine.ringIndex(r.Ring)))
}

// tooWide reports whether a ring is to be replaced, since its row says that nothing can be filed on.
func (s *draft) tooWide(r RingSheet, cylinder int) bool {
	row := s.gapRow(r, cylinder)
	return row.Reason == wideRing && !row.State.settled() || row.State == StateFailed && r.Filing.Action == rings.TooWide
}

// of returns the rows of a cylinder, of the engine for -1.
func (s *draft) of(cylinder int) []*Row { return s.rows[cylinder+1] }

// row returns a row of a cylinder by the rest of its key; one that nothing is shown of where there is none.
func (s *draft) row(cylinder int, key string) *Row {
	key = fmt.Sprintf("cylinders[%d].%s", cylinder, key)
	for _, r := range s.of(cylinder) {
		if r.Key == key {
			return r
		}
	}
	return &Row{}
}

// there reports whether the finished bore has been read.
func (c CylinderSheet) there() bool { return c.Proof != nil }

// ringIndex returns where a ring stands among the engine's.
func (e Engine) ringIndex(name string) int {
	return slices.IndexFunc(e.Rings, func(r Ring) bool { return r.Name == name })
}

// portName is what a port is called on the sheet.
func (e Engine) portName(i int) string {
	if i >= 0 && i < len(e.Layout.Ports) && e.Layout.Ports[i].Name != "" {
		return e.Layout.Ports[i].Name
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
func (s *draft) clearances() {
	rows := [][]string{{"cylinder", "piston clearance", "at 20 °C", "running"}}
	for i, c := range s.Cylinders {
		for _, k := range c.Clearances {
			hot := "–"
			if k.Hot != (uncertainty.Estimate{}) {
				hot = s.show.Estimate(k.Hot)
				if k.Hot.Value < 0 {
					hot += ": the piston is the larger, by these temperatures"
				}
			}
			rows = append(rows, []string{c.Name, k.At, s.show.Estimate(k.Size), hot})
		}
		if c.there() {
			for _, which := range []Demand{demandLeastClearance, demandGreatestClearance} {
				if k := s.clearance(i, which); k != "–" {
					rows = append(rows, []string{c.Name, strings.TrimSuffix(which.String(), " clearance") + ", in the finished bore", k, "–"})
				}
			}
		}
	}
	window := s.Job.Engine.Limits.PistonClearance
	if len(rows) == 1 && len(s.Matched) == 0 && s.UsualClearance.IsZero() {
		return
	}
	s.table(rows)
	if !window.IsZero() {
		s.say("The maker allows %s at 20 °C in a fresh bore.", s.show.Limits(window))
	}
	if w := s.UsualClearance; !w.IsZero() {
		s.say("Rules of thumb for %v pistons: %s. The piston supplier's figure comes first.", s.Job.Engine.Duty, s.show.Thumb(w))
	}
	if s.Job.Engine.Running.Piston != (bore.Temperature{}) {
		s.add(page.Sentence("The running clearance is an indicator, not a limit: a skirt is oval, tapered and gives way. Where the piston is the larger, ask its supplier."))
	}
	for _, m := range s.Matched {
		s.add(page.Sentence("Pistons matched to the finished bores, in the order in which the job lists them:"))
		rows := [][]string{{"cylinder", "piston", "clearance", "window"}}
		for _, pair := range m.Pairs {
			if pair.Bore < 0 || pair.Bore >= len(s.Cylinders) {
				continue // no sheet that was planned
			}
			in := "inside"
			if !pair.Inside {
				in = "OUTSIDE"
			}
			rows = append(rows, []string{s.Cylinders[pair.Bore].Name, fmt.Sprint(pair.Piston + 1), s.show.Length(pair.Clearance), in})
		}
		s.table(rows)
		s.say("They lie off the middle of the window by %s (root mean square); by number, by %s.", s.show.Length(m.Off), s.show.Length(m.OffByNumber))
	}
}
