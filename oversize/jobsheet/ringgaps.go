// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"errors"
	"fmt"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A ringBore is the bore that the rings of a cylinder go into.
type ringBore struct {
	size  uncertainty.Estimate // where it is smallest in ring travel
	depth units.Length         // of that place; 0 where the bore is still to come
	known bool
	there bool // rather than still to be cut
}

// ringBores returns the bore that the rings of each cylinder go into. One still to be cut has the size to
// work to, with the doubt that the gauge will prove it with.
func ringBores(g given, read []readBore, choice oversize.Choice, proofs []*ProofSheet) []ringBore {
	all := make([]ringBore, len(read))
	for i, c := range choice.Cylinders {
		b := &all[i]
		switch {
		case proofs[i] != nil:
			*b = g.narrowest(proofs[i].Bore)
		case c.Aim != 0:
			b.size, b.known = read[i].bore.Mean, true
			b.size.Value = c.Aim
		case c.Route == oversize.HoneAndKeep, c.Route == oversize.MakersProcess:
			*b = g.narrowest(read[i].bore)
		}
		b.there = proofs[i] != nil || c.Route == oversize.MakersProcess
	}
	return all
}

// narrowest returns where a bore is smallest in ring travel: there a ring must not butt. Where travel is not
// known it is the smallest place of all.
func (g given) narrowest(b bore.Geometry) ringBore {
	layout := g.layout()
	at, err := rings.Narrowest(b.Planes, bore.RingTravel{Top: layout.RingTop, Bottom: layout.RingBottom})
	if err != nil {
		return ringBore{size: b.Smallest.Size, depth: b.Smallest.Depth, known: true}
	}
	return ringBore{size: at.Mean, depth: at.Depth, known: true}
}

// ringGaps works out each measured ring in the bore it goes into, and what to file.
func ringGaps(g given, read []readBore, choice oversize.Choice, proofs []*ProofSheet, bores []ringBore) (all [][]RingSheet, out []Remark, err error) {
	all = make([][]RingSheet, len(read))
	for i := range choice.Cylinders {
		c := g.Cylinders[i]
		if len(c.Rings) == 0 {
			continue
		}
		if !bores[i].known {
			out = omit(out, "ring gaps of cylinder "+c.Name, "the finished size is not known yet")
			continue
		}
		forms, formKnown := formsOf(read[i].bore, read[i].form()), stays(choice.Cylinders[i])
		if proofs[i] != nil {
			forms, formKnown = formsOf(proofs[i].Bore, proofs[i].Form), true
		}
		all[i] = make([]RingSheet, 0, len(c.Rings))
		for n, measured := range c.Rings {
			w := ringWork{given: g, ring: g.Engine.ring(measured.Ring), measured: measured, bore: bores[i], stays: stays(choice.Cylinders[i])}
			r, err := w.sheet()
			if err != nil {
				return nil, nil, fault(fmt.Sprintf("cylinders[%d].rings[%d]", i, n), err)
			}
			if formKnown {
				if r.Follows, err = w.follows(r.Gap, forms); err != nil {
					out = failed(out, "whether ring "+r.Ring+" follows the bore", err)
				}
			}
			all[i] = append(all[i], r)
		}
	}
	return all, out, nil
}

// A ringWork is one ring with all that is known of it and its bore.
type ringWork struct {
	given
	ring     Ring
	measured RingGap
	bore     ringBore
	stays    bool // a used ring may stay in a bore that stays
}

// sheet works out one ring in its bore: from the gap as measured there, or else as the first reading
// foretells it.
func (w ringWork) sheet() (r RingSheet, err error) {
	r = RingSheet{Ring: w.measured.Ring, Bore: w.bore.size, SetAt: w.bore.depth}
	first := w.measured.Gap.estimate(byFeeler)
	if r.Gap, err = (rings.Gap{Measured: first, Bore: uncertainty.Estimate{Value: w.measured.Bore}}).In(r.Bore); err != nil {
		return r, err
	}
	if !w.measured.Finished.isZero() && w.bore.there {
		r.Foretold, r.Gap = r.Gap, w.measured.Finished.estimate(byFeeler)
		if r.Grown, err = rings.DiameterChange(first, r.Gap); err != nil {
			return r, err
		}
	}
	window := w.ring.Gap
	heat, warm := w.heat()
	if warm && w.ring.HotGap != 0 && !window.IsZero() {
		switch cut, err := heat.Window(window, r.Bore.Value, w.ring.HotGap); {
		case errors.Is(err, rings.ErrButts):
			r.unfit = true
		case err != nil:
			return r, err
		default:
			window = cut
		}
	}
	if err := w.judge(&r, window); err != nil {
		return r, err
	}
	if r.Ports, err = w.ports(r); err != nil {
		return r, err
	}
	if warm {
		err = w.hot(&r, heat)
	}
	return r, err
}

// judge holds the gap against its windows, and plans the filing.
func (w ringWork) judge(r *RingSheet, window units.Limits) (err error) {
	if !w.ring.Side.IsZero() && !w.measured.Side.isZero() {
		r.Side = finding("side clearance", w.measured.Side.estimate(byFeeler), w.ring.Side, w.risk.row)
	}
	if !window.IsZero() && !r.unfit {
		r.Filing, err = rings.FileTo(r.Gap, window, w.risk.row)
		if err != nil && !errors.Is(err, rings.ErrDoubt) { // the window too narrow for the doubt of the gap: no reading would prove anything
			return err
		}
	}
	if w.ring.GapLimit != 0 {
		r.Service = finding("end gap in service", r.Gap, units.Limits{Max: w.ring.GapLimit}, w.risk.row)
	}
	if w.stays && w.ring.GapLimit != 0 && !w.measured.Filed { // one that was filed is fitted as a new one
		window.Max = w.ring.GapLimit
	}
	switch {
	case window.IsZero():
	case r.inBore():
		r.Measured = finding("end gap as measured", r.Gap, window, w.risk.row)
	default:
		r.expected = finding("end gap to expect", r.Gap, window, w.risk.row)
	}
	return nil
}

// ports returns how far the ends of a pegged ring stay from the ports.
func (w ringWork) ports(r RingSheet) ([]rings.Room, error) {
	layout := w.layout()
	gap := r.filed()
	if w.ring.Peg == nil || w.ring.Play == nil || len(layout.Ports) == 0 || layout.RingBottom == 0 || gap.Value <= 0 {
		return nil, nil // not known, or it does not go in at all
	}
	ends := rings.Ends{Peg: *w.ring.Peg, Gap: gap.Value, Play: *w.ring.Play, Bore: r.Bore.Value}
	return ends.Clear(layout.Ports, bore.RingTravel{Top: layout.RingTop, Bottom: layout.RingBottom})
}

// heat is a ring and its bore in work, and whether the job says how warm they are.
func (w ringWork) heat() (h rings.Warm, known bool) {
	t := w.atWork
	if t.Ring == (bore.Temperature{}) || t.Bore == (bore.Temperature{}) {
		return h, false
	}
	return rings.Warm{
		Ring: w.ring.Material.or(material.GreyIron()), Bore: w.wall, RingAt: t.Ring.Value, BoreAt: t.Bore.Value,
		RingWithin: t.Ring.Within, BoreWithin: t.Bore.Within,
	}, true
}

// hot adds the end gap at the running temperatures, whether its ends touch, and whether it is what is wanted:
// ends that butt are a negative gap, and never are.
func (w ringWork) hot(r *RingSheet, h rings.Warm) error {
	cold := r.filed()
	if cold.Value <= 0 {
		return nil // it overlaps cold already
	}
	hot, err := h.HotGap(cold, r.Bore)
	if err != nil && !errors.Is(err, rings.ErrButts) {
		return err
	}
	if r.Least, err = h.Least(r.Bore.Value, w.ring.HotGap); err != nil {
		return err
	}
	r.Hot = finding("end gap when hot", hot, notTouching, w.risk.row)
	if w.ring.HotGap != 0 {
		r.HotEnough = finding("end gap when hot", hot, units.Limits{Min: w.ring.HotGap}, w.risk.row)
	}
	return nil
}

// formsOf returns the form of a bore as a ring meets it: that of each trace, or of the plane that was read most oval.
func formsOf(g bore.Geometry, traced *WallForm) (forms [][]bore.Harmonic) {
	if traced != nil {
		for _, t := range traced.Traces {
			forms = append(forms, t.Lobes)
		}
		return forms
	}
	for _, p := range g.Planes {
		if p.Depth == g.OvalityAt {
			forms = append(forms, p.Harmonics())
		}
	}
	return forms
}

// follows returns whether a ring follows a bore, where that asks most of it; nil where the ring's section is not given
// or no form was seen.
func (w ringWork) follows(gap uncertainty.Estimate, forms [][]bore.Harmonic) (most *rings.Conformity, err error) {
	if w.ring.Thickness == 0 || w.ring.Height == 0 || w.ring.FreeGap == 0 {
		return nil, nil
	}
	section := rings.Section{Bore: w.Engine.Bore, Thickness: w.ring.Thickness, Height: w.ring.Height, Young: w.ring.Material.or(material.GreyIron()).Young}
	tension, err := section.Tension(w.ring.FreeGap, gap.Value)
	if err != nil {
		return nil, err
	}
	for _, form := range forms {
		if len(form) == 0 {
			continue
		}
		c, err := tension.Follow(form)
		if err != nil {
			return nil, err
		}
		if most == nil || c.Derived.Used > most.Derived.Used {
			most = &c
		}
	}
	return most, nil
}

// filed is the gap once what is to be filed is off.
func (r RingSheet) filed() uncertainty.Estimate {
	if r.Filing.Now.Subject == "" {
		return r.Gap // nothing was planned
	}
	return r.Filing.After()
}
