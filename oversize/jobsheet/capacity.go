// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/oversize"
	"borewright.example/units"
)

// capacities adds displacement and compression ratio, before and after.
func (s *Sheet) capacities() error {
	for i := range s.Cylinders {
		c, choice := &s.Cylinders[i], s.Choice.Cylinders[i]
		before, after := s.Job.Engine.at(s.Job.Cylinders[i].Over), s.Job.Engine.at(choice.Over)
		switch {
		case c.Proof != nil:
			after = c.Proof.Bore.Mean.Value
		case choice.Aim != 0:
			after = choice.Aim
		}
		var err error
		if c.Before, err = s.Job.Engine.capacity(before); err != nil {
			return err
		}
		s.Before.Swept = oversize.Total(s.Before.Swept, c.Before.Swept)
		if choice.Route == oversize.Undecided || choice.Route == oversize.MakersProcess {
			continue
		}
		if c.After, err = s.Job.Engine.capacity(after); err != nil {
			return err
		}
	}
	if s.Choice.Route != oversize.Undecided && s.Choice.Route != oversize.MakersProcess {
		for _, c := range s.Cylinders {
			s.After.Swept = oversize.Total(s.After.Swept, c.After.Swept)
		}
	}
	if s.Cylinders[0].Before.Ratio == 0 {
		s.omit("compression ratio", "give engine.chamber, engine.clearance_volume or engine.compression_ratio")
	}
	return nil
}

// capacity returns what one cylinder of a bore sweeps, and how far it compresses that.
func (e Engine) capacity(d units.Length) (Capacity, error) {
	if e.Chamber != (Chamber{}) {
		c := oversize.Chamber{
			Head: e.Chamber.Head, Crown: e.Chamber.Crown, Deck: e.Chamber.Deck, Gasket: e.Chamber.Gasket,
			GasketHole: e.GasketHole, PortTop: e.Chamber.PortTop,
		}
		got, err := c.Compression(d, e.Stroke)
		return Capacity{Bore: d, Swept: got.Swept, Ratio: got.Ratio, FromPort: got.FromPort}, err
	}
	swept, err := oversize.Swept(d, e.Stroke)
	if err != nil {
		return Capacity{}, err
	}
	c := Capacity{Bore: d, Swept: swept}
	clearance := e.ClearanceVolume
	if e.CompressionRatio != 0 {
		nominal, err := oversize.Swept(e.Bore, e.Stroke)
		if err != nil {
			return Capacity{}, err
		}
		if clearance, err = oversize.ClearanceVolume(nominal, e.CompressionRatio); err != nil {
			return Capacity{}, err
		}
	}
	if clearance != 0 {
		c.Ratio, err = oversize.Ratio(swept, clearance)
	}
	return c, err
}
