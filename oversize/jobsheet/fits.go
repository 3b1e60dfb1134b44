// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// ClearanceAt is where a clearance is.
type ClearanceAt int8

// Places of a clearance.
const (
	LargestNow  ClearanceAt = iota // where the bore is largest, as it is
	SmallestNow                    // where it is smallest
	AtAim                          // at the size to work to
)

var clearanceNames = []string{"greatest now", "least now", "finished"}

// String returns "greatest now", "least now" or "finished".
func (c ClearanceAt) String() string { return enum.Name(c, clearanceNames) }

// MarshalText returns the text of [ClearanceAt.String].
func (c ClearanceAt) MarshalText() ([]byte, error) { return enum.Marshal(c, clearanceNames) }

// UnmarshalText reads the text of [ClearanceAt.String]. On error the receiver keeps its value.
func (c *ClearanceAt) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, clearanceNames)
}

// A fitting is the piston of one cylinder and its clearances.
type fitting struct {
	piston   Piston // that it is going to have; zero: not known
	measured bool   // rather than stated by a supplier
	// Of the bore as it is, and of the one to come; for the sheet.
	clearances []Clearance
	// Held against the maker's window in the bore that goes together: as proven, or as it stays. Zero where
	// there is no such bore, no piston or no window yet. tight and loose are the clearances themselves.
	least, greatest uncertainty.Finding
	tight, loose    uncertainty.Estimate
	running         uncertainty.Finding // the least running clearance against not touching
}

// match finds the piston for each finished bore, where those that came for its size were measured one by
// one and every bore has been read.
func match(g given, choice oversize.Choice, proofs []*ProofSheet) (*fit.Matched, []Omission, error) {
	i := slices.IndexFunc(g.Engine.Oversizes, func(o Oversize) bool { return o.Over == choice.Over && len(o.Pistons) > 0 })
	if i < 0 || choice.Route != oversize.BoreOversize {
		return nil, nil, nil
	}
	path := fmt.Sprintf("engine.oversizes[%d].pistons", i)
	m := fit.Matching{Window: g.Engine.Limits.PistonClearance}
	for _, p := range proofs {
		if p == nil {
			return nil, omit(nil, "matching of pistons", "read every finished bore"), nil
		}
		m.Bores = append(m.Bores, p.Bore.Smallest.Size.Value)
	}
	for _, p := range g.Engine.Oversizes[i].Pistons {
		piston, err := g.fitPiston(p)
		if err != nil {
			return nil, nil, fault(path, err)
		}
		skirt, err := piston.Skirt()
		if err != nil {
			return nil, nil, fault(path, err)
		}
		m.Pistons = append(m.Pistons, skirt.Value)
	}
	matched, err := m.Match()
	if err != nil {
		return nil, omit(nil, "matching of pistons", "%v", err), nil
	}
	return &matched, nil, nil
}

// fitted works out the clearances of every piston.
func fitted(g given, read []readBore, choice oversize.Choice, proofs []*ProofSheet, matched *fit.Matched) ([]fitting, error) {
	all := make([]fitting, len(read))
	for i := range choice.Cylinders {
		var err error
		if all[i], err = g.fitted(i, read[i], choice.Cylinders[i], proofs[i], matched); err != nil {
			return nil, fault(fmt.Sprintf("cylinders[%d].piston", i), err)
		}
	}
	return all, nil
}

func (g given) fitted(i int, read readBore, choice oversize.CylinderChoice, proof *ProofSheet, matched *fit.Matched) (f fitting, err error) {
	c := g.Cylinders[i]
	f.piston = g.pistonFor(i, choice.Over, matched)
	f.measured = f.piston.has() && g.measuredPiston(i, choice.Over)
	if c.Piston.has() && length(c.PistonFor) == c.over() && choice.Route != oversize.Sleeve {
		for _, at := range []struct {
			where ClearanceAt
			size  uncertainty.Estimate
		}{{LargestNow, read.bore.Largest.Size}, {SmallestNow, read.bore.Smallest.Size}} {
			k, err := g.clearance(at.where, at.size, c.Piston)
			if err != nil {
				return f, err
			}
			f.clearances = append(f.clearances, k)
		}
	}
	if choice.Aim != 0 && f.piston.has() {
		size := read.bore.Mean // with the doubt that the gauge will prove the finished bore with
		size.Value = choice.Aim
		k, err := g.clearance(AtAim, size, f.piston)
		if err != nil {
			return f, err
		}
		f.clearances = append(f.clearances, k)
	}
	if !f.piston.has() || proof == nil && !stays(choice) {
		return f, nil // the bore that goes together is still to come
	}
	readings, by, gauge, finished := c.Readings, g.Gauge, g.survey, read.bore
	if proof != nil {
		readings, by, gauge, finished = c.Proof, g.proofGauge(), g.proof, proof.Bore
	}
	if f.piston.WithStandard {
		gauge.Standard.Std = 0 // what that micrometer is off is in both sizes alike
		if finished, err = g.measure(readings, by, gauge); err != nil {
			return f, err
		}
	}
	err = g.judgeClearances(&f, finished, stays(choice))
	return f, err
}

// judgeClearances holds the piston in a finished bore against the window: for a bore that stays, up to what a
// worn one may have.
func (g given) judgeClearances(f *fitting, b bore.Geometry, stays bool) error {
	piston, err := g.fitPiston(f.piston)
	if err != nil {
		return err
	}
	if f.tight, err = fit.Clearance(b.Smallest.Size, piston); err != nil {
		return err
	}
	if f.loose, err = fit.Clearance(b.Largest.Size, piston); err != nil {
		return err
	}
	window := g.Engine.Limits.PistonClearance
	if stays {
		window.Max = max(window.Max, g.Engine.Limits.WornClearance)
	}
	r := g.risk.row
	r.Reject = r.Share(len(places(b))).Reject // any place may have become the extreme by chance
	if !window.IsZero() {
		if f.least, err = uncertainty.Judge(f.tight, units.Limits{Min: window.Min}, r); err != nil {
			return err
		}
		if f.greatest, err = uncertainty.Judge(f.loose, units.Limits{Max: window.Max}, r); err != nil {
			return err
		}
		f.least.Subject, f.greatest.Subject = "least clearance", "greatest clearance"
	}
	if hot, known, err := g.running(b.Smallest.Size, piston); err != nil || !known {
		return err
	} else if f.running, err = uncertainty.Judge(hot, units.Limits{Min: units.Picometre}, r); err != nil {
		return err
	}
	f.running.Subject = "running clearance"
	return nil
}

// running returns the clearance at the running temperatures, and whether the job gives them.
func (g given) running(size uncertainty.Estimate, p fit.Piston) (hot uncertainty.Estimate, known bool, err error) {
	t := g.Engine.Running
	if t.Bore == (bore.Temperature{}) || t.Piston == (bore.Temperature{}) {
		return hot, false, nil
	}
	warm := fit.Warm{Bore: t.Bore.Value, Piston: t.Piston.Value, BoreMaterial: g.wall, PistonMaterial: g.piston}
	hot, err = warm.Clearance(size, p)
	return hot, true, err
}

// clearance returns the clearance of a piston in a bore, cold and running.
func (g given) clearance(at ClearanceAt, size uncertainty.Estimate, p Piston) (k Clearance, err error) {
	k.At = at
	piston, err := g.fitPiston(p)
	if err != nil {
		return k, err
	}
	if k.Size, err = fit.Clearance(size, piston); err != nil {
		return k, err
	}
	k.Hot, _, err = g.running(size, piston)
	return k, err
}

// fitPiston returns a piston as package fit wants it.
func (j Job) fitPiston(p Piston) (fit.Piston, error) {
	if !p.has() {
		return fit.Piston{}, nil
	}
	size, err := p.Size.estimate(uncertified)
	return fit.Piston{Size: size, Axis: p.Axis, Height: p.Height, MakerHeight: p.MakerHeight, Coating: length(p.Coating)}, err
}

// pistonFor returns the piston that cylinder i is going to have at a size: the one matched to it, the one in
// hand where it is for that size, else the one on offer.
func (j Job) pistonFor(i int, over units.Length, matched *fit.Matched) Piston {
	c := j.Cylinders[i]
	if c.Piston.has() && length(c.PistonFor) == over {
		return c.Piston
	}
	for _, o := range j.Engine.Oversizes {
		switch {
		case o.Over != over:
		case matched != nil:
			return o.Pistons[matched.Pairs[i].Piston]
		default:
			return o.piston()
		}
	}
	return Piston{}
}

// measuredPiston reports whether the piston of cylinder i at a size was measured, and not only offered.
func (j Job) measuredPiston(i int, over units.Length) bool {
	c := j.Cylinders[i]
	return c.Piston.has() && length(c.PistonFor) == over ||
		slices.ContainsFunc(j.Engine.Oversizes, func(o Oversize) bool { return o.Over == over && len(o.Pistons) > 0 })
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
