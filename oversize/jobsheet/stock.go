// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/oversize"
	"borewright.example/units/material"
)

// stock divides what is to be bored and honed off, where the job says how.
func (s *Sheet) stock() error {
	b := s.Job.Cuts
	if b.MostDepth == 0 || s.waiting() {
		return nil
	}
	shop := oversize.Shop{
		MostDepth: b.MostDepth, FinishBore: b.FinishBore, FinishHone: b.FinishHone, Plateau: b.Plateau,
		BothEnds: b.BothEnds, Length: b.Length, Feed: b.Feed, Spindle: b.Spindle,
	}
	for i := range s.Cylinders {
		c, choice := &s.Cylinders[i], s.Choice.Cylinders[i]
		if choice.Bored == 0 {
			continue
		}
		var err error
		if c.Stock, err = shop.Plan(c.Bore.Smallest.Size.Value, choice.Bored, choice.Aim); err != nil {
			s.omit("stock of cylinder "+c.Name, "%v", err)
			continue
		}
		if err := s.warm(c); err != nil {
			return err
		}
	}
	return nil
}

// warm adds what the gauge shows at the end of each operation while the cylinder is still warm.
func (s *Sheet) warm(c *CylinderSheet) error {
	at := s.Job.Cuts.Warm
	if at.IsZero() || s.Job.Gauge.Standard.Size == 0 {
		return nil
	}
	g, _, err := s.Job.gauge(s.Job.Gauge)
	if err != nil {
		return err
	}
	now := material.Comparison{
		Standard: g.Standard.Size, StandardAt: g.Standard.At.Value, GaugeSetAt: g.SetAt.Value, GaugeUseAt: g.UsedAt.Value, PartAt: at,
		StandardExpansion: g.Standard.Material.Expansion, GaugeExpansion: g.Material.Expansion, PartExpansion: g.Part.Expansion,
	}
	for _, o := range c.Stock {
		if o.Stock == 0 {
			continue // a chamfer has no size
		}
		shows, err := oversize.Shows(o.After, now)
		if err != nil {
			return err
		}
		c.Warm = append(c.Warm, WarmSize{o.Kind, o.After, shows})
	}
	return nil
}
