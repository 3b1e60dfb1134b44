// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Where a clearance is.
const (
	largestNow  = "greatest now"
	smallestNow = "least now"
	atAim       = "at the size to work to"
)

// A fitting is the piston of one cylinder and its clearances.
type fitting struct {
	piston Piston // that it is going to have; zero: not known
	got    bool   // it is there and measured, though perhaps not told apart from others of its size
	own    bool   // it is in hand for this cylinder, or matched to it
	// Of the bore as it is, and of the one to come; for the sheet.
	clearances []Clearance
	// Held against the maker's window in the bore that goes together: as proven, or as it stays. Zero where
	// there is no such bore, no piston or no window yet. tight is the least clearance itself.
	least, greatest uncertainty.Finding
	tight           uncertainty.Estimate
	running         uncertainty.Finding // the least running clearance against not touching
}

// A pairing is which of the pistons that came for its size each cylinder gets: -1 while it has none.
type pairing struct {
	of      []int
	matched []fit.Matched // for each size, its bores by their cylinders
}

// match finds the piston for each finished bore, size by size, where those that came for the size were measured one
// by one and every bore of that size has been read. Until then no bore has a piston of its own.
func match(g given, choice oversize.Choice, proofs []*ProofSheet) (p pairing, out []Remark, err error) {
	p.of = make([]int, len(g.Cylinders))
	for i := range p.of {
		p.of[i] = -1
	}
	for n, o := range g.Engine.Oversizes {
		path := fmt.Sprintf("engine.oversizes[%d].pistons", n)
		var bores, pistons []units.Length
		var cylinders []int
		read := true
		for i, c := range choice.Cylinders {
			if c.Over != o.Over || c.Route == oversize.Undecided || g.inHand(i, c.Over) {
				continue
			}
			if read = read && proofs[i] != nil; read {
				cylinders, bores = append(cylinders, i), append(bores, proofs[i].Bore.Smallest.Size.Value)
			}
		}
		if len(o.Pistons) == 0 || !read || len(cylinders) == 0 {
			if len(o.Pistons) > 0 && !read {
				out = omit(out, "matching of pistons", "read every finished bore")
			}
			continue
		}
		for _, q := range o.Pistons {
			skirt, err := q.fit().Skirt()
			if err != nil {
				return p, nil, fault(path, err)
			}
			pistons = append(pistons, skirt.Value)
		}
		matched, err := fit.Match(bores, pistons, g.Engine.Limits.PistonClearance)
		if err != nil {
			out = omit(out, "matching of pistons", "%v", err)
			continue
		}
		for k := range matched.Pairs {
			pair := &matched.Pairs[k]
			pair.Bore = cylinders[pair.Bore]
			p.of[pair.Bore] = pair.Piston
		}
		p.matched = append(p.matched, matched)
	}
	return p, out, nil
}

// inHand reports whether a cylinder has a piston in hand for a size.
func (j Job) inHand(i int, over units.Length) bool {
	c := j.Cylinders[i]
	return c.Piston.has() && length(c.PistonFor) == over
}

// fitted works out the clearances of the piston of a cylinder.
func (g given) fitted(i int, read readBore, all oversize.Choice, proof *ProofSheet, own int) (f fitting, err error) {
	if len(all.Cylinders) == 0 {
		return f, nil
	}
	c, choice := g.Cylinders[i], all.Cylinders[i]
	f.piston = g.pistonFor(i, choice.Over, own)
	f.own = f.piston.has() && (g.inHand(i, choice.Over) || own >= 0)
	f.got = f.own || g.got(choice, all)
	if c.Piston.has() && length(c.PistonFor) == c.over() && choice.Route != oversize.Sleeve {
		f.clearances, err = g.clearance(f.clearances, largestNow, read.bore.Largest.Size, c.Piston)
		if err == nil {
			f.clearances, err = g.clearance(f.clearances, smallestNow, read.bore.Smallest.Size, c.Piston)
		}
	}
	if err == nil && choice.Aim != 0 && f.piston.has() {
		size := read.bore.Mean // with the doubt that the gauge will prove the finished bore with
		size.Value = choice.Aim
		f.clearances, err = g.clearance(f.clearances, atAim, size, f.piston)
	}
	if err != nil {
		return f, err
	}
	if !f.own || proof == nil && !stays(choice) {
		return f, nil // the bore that goes together is still to come
	}
	at := read.sitting
	if proof != nil {
		at = proof.as
	}
	if f.piston.WithStandard && len(at.readings) > 0 {
		at.gauge.Standard.Std = 0 // what that micrometer is off is in both sizes alike
		if at.bore, err = g.measure(at.session, at.readings); err != nil {
			return f, err
		}
	}
	err = g.judgeClearances(&f, at.bore, stays(choice))
	return f, err
}

// judgeClearances holds the piston in a finished bore against the window: for a bore that stays, up to what a
// worn one may have.
func (g given) judgeClearances(f *fitting, b bore.Geometry, stays bool) error {
	piston := f.piston.fit()
	tight, err := fit.Clearance(b.Smallest.Size, piston)
	loose, wide := fit.Clearance(b.Largest.Size, piston)
	if err = cmp.Or(err, wide); err != nil {
		return err
	}
	f.tight = tight
	window := g.Engine.Limits.PistonClearance
	if stays {
		window.Max = max(window.Max, g.Engine.Limits.WornClearance)
	}
	r := g.risk.row
	r.Reject = r.Share(len(places(b))).Reject // any place may have become the extreme by chance
	if !window.IsZero() {
		f.least = finding("least clearance", f.tight, units.Limits{Min: window.Min}, r)
		f.greatest = finding("greatest clearance", loose, units.Limits{Max: window.Max}, r)
	}
	hot, known, err := g.running(b.Smallest.Size, piston)
	if known && err == nil {
		f.running = finding("running clearance", hot, notTouching, r)
	}
	return err
}

// running returns the least clearance at the running temperatures, and whether the job gives them.
func (g given) running(size uncertainty.Estimate, p fit.Piston) (hot uncertainty.Estimate, known bool, err error) {
	t := g.atWork
	if t.Bore == (bore.Temperature{}) || t.Piston == (bore.Temperature{}) {
		return hot, false, nil
	}
	// At the ends of what the temperatures may be that leave the least.
	warm := fit.Warm{
		Bore: g.wall, Piston: g.piston, BoreAt: t.Bore.Value.Add(-t.Bore.Within), PistonAt: t.Piston.Value.Add(t.Piston.Within),
	}
	hot, err = warm.HotClearance(size, p)
	return hot, true, err
}

// clearance adds the clearance of a piston in a bore, cold and running.
func (g given) clearance(to []Clearance, at string, size uncertainty.Estimate, p Piston) ([]Clearance, error) {
	k := Clearance{At: at}
	var cold, hot error
	k.Size, cold = fit.Clearance(size, p.fit())
	k.Hot, _, hot = g.running(size, p.fit())
	return append(to, k), cmp.Or(cold, hot)
}

// fit returns a piston as package fit wants it.
func (p Piston) fit() fit.Piston {
	if !p.has() {
		return fit.Piston{}
	}
	return fit.Piston{Size: p.Size.estimate(uncertified), Axis: p.Axis, Height: p.Height, MakerHeight: p.MakerHeight, Coating: length(p.Coating)}
}

// pistonFor returns the piston that cylinder i is going to have at a size: the one in hand where it is for that
// size, its own of those that came, else one to plan by.
func (j Job) pistonFor(i int, over units.Length, own int) Piston {
	if j.inHand(i, over) {
		return j.Cylinders[i].Piston
	}
	for _, o := range j.Engine.Oversizes {
		switch {
		case o.Over != over:
		case own >= 0:
			return o.Pistons[own]
		default:
			return o.piston()
		}
	}
	return Piston{}
}

// got reports whether there are pistons, measured, for every cylinder that goes to the size of this one.
func (g given) got(c oversize.CylinderChoice, all oversize.Choice) bool {
	n := 0
	for k, other := range all.Cylinders {
		if other.Over == c.Over && !g.inHand(k, c.Over) {
			n++
		}
	}
	return slices.ContainsFunc(g.Engine.Oversizes, func(o Oversize) bool { return o.Over == c.Over && len(o.Pistons) >= max(n, 1) })
}

// piston returns the piston that the bores of a size are cut for: of those that came one by one the middle
// one in size, else the one on offer.
func (o Oversize) piston() Piston {
	if len(o.Pistons) == 0 {
		return o.Piston
	}
	bySize := slices.Clone(o.Pistons)
	slices.SortFunc(bySize, func(a, b Piston) int { return cmp.Compare(a.Size.Value, b.Size.Value) })
	return bySize[len(bySize)/2]
}

// skirts returns the skirts that fit a bore as it is; zero where none does, or no clearance is given.
func (j Job) skirts(bore units.Limits) units.Limits {
	w, err := fit.PistonWindow(bore, j.Engine.Limits.PistonClearance)
	if err != nil {
		return units.Limits{}
	}
	return w
}
