// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/oversize"
	"borewright.example/units"
)

// A capacitySheet is displacement and compression, of each cylinder and of the engine.
type capacitySheet struct {
	before, after []oversize.Compression
	all, then     units.Volume
}

// capacities works out displacement and compression ratio, before and after.
func capacities(g given, choice oversize.Choice, proofs []*ProofSheet) (c capacitySheet, out []Remark, err error) {
	n := len(choice.Cylinders)
	c.before, c.after = make([]oversize.Compression, n), make([]oversize.Compression, n)
	cut := choice.Route != oversize.Undecided && choice.Route != oversize.MakersProcess
	for i, cc := range choice.Cylinders {
		before, after := g.Engine.at(g.Cylinders[i].over()), g.Engine.at(cc.Over)
		switch {
		case proofs[i] != nil:
			after = proofs[i].Bore.Mean.Value
		case cc.Aim != 0:
			after = cc.Aim
		}
		c.before[i], err = g.Engine.capacity(before)
		if err == nil && cc.Route != oversize.Undecided && cc.Route != oversize.MakersProcess {
			c.after[i], err = g.Engine.capacity(after)
		}
		if err != nil {
			return c, nil, fault("engine.chamber", err)
		}
		if c.all += c.before[i].Swept; cut {
			c.then += c.after[i].Swept
		}
	}
	if n > 0 && c.before[0].Ratio == 0 {
		out = omit(out, "compression ratio", "give engine.chamber, engine.clearance_volume or engine.compression_ratio")
	}
	return c, out, nil
}

// capacity returns what one cylinder of a bore sweeps, and how far it compresses that.
func (e Engine) capacity(d units.Length) (c oversize.Compression, err error) {
	if chamber := e.Chamber; chamber != (oversize.Chamber{}) {
		chamber.GasketHole = e.GasketHole
		return chamber.Compression(d, e.Stroke)
	}
	c.Swept, err = oversize.Displacement(d, e.Stroke, 1)
	c.Clearance = e.ClearanceVolume
	if err == nil && e.CompressionRatio != 0 {
		var nominal units.Volume
		if nominal, err = oversize.Displacement(e.Bore, e.Stroke, 1); err == nil {
			c.Clearance, err = oversize.ClearanceVolume(nominal, e.CompressionRatio)
		}
	}
	if err == nil && c.Clearance != 0 {
		c.Ratio, err = oversize.Ratio(c.Swept, c.Clearance)
	}
	return c, err
}
