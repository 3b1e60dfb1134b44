// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/material"
)

// A cutting is what comes off one cylinder, operation by operation; zero where nothing is bored.
type cutting struct {
	stock []oversize.Operation
	warm  []GaugeSize
	dial  []GaugeSize
}

// cut divides what is to be bored and honed off, where the job says how; of a bore that is being honed, what is left.
func cut(g given, read []readBore, choice oversize.Choice, passes []passing) (all []cutting, out []Remark, err error) {
	all = make([]cutting, len(read))
	b := g.Cuts
	if waiting(g.Job, choice) {
		return all, nil, nil
	}
	for i, c := range choice.Cylinders {
		if all[i].dial, err = g.dial(c); err != nil {
			return nil, nil, fault("gauge.standard", err)
		}
		if c.Bored == 0 {
			continue
		}
		if b.MostDepth == 0 {
			out = omit(out, "the stock of each operation", "give cuts.most_depth")
			continue
		}
		if all[i].stock, err = b.Shop.Cuts(read[i].bore.Smallest.Size.Value, c.Bored, c.Aim); err != nil {
			out = omit(out, "stock of cylinder "+c.Name, "%v", err)
			continue
		}
		all[i].stock = left(all[i].stock, passes[i].next.Size.Value)
		if all[i].warm, err = g.warm(all[i].stock); err != nil {
			return nil, nil, fault("cuts.warm", err)
		}
	}
	return all, out, nil
}

// left returns what is still to be done at a size that the hone has come to; all of it where that is zero.
func left(stock []oversize.Operation, now units.Length) (list []oversize.Operation) {
	for _, o := range stock {
		switch {
		case now == 0 || o.Before > now || o.Before == now && o.Stock > 0:
		case o.After <= now:
			continue // a chamfer too
		case o.Passes == 0:
			o.Before, o.Stock = now, o.After-now
		}
		list = append(list, o)
	}
	return list
}

// warm returns what the gauge shows at the end of each operation while the cylinder is still warm.
func (g given) warm(stock []oversize.Operation) ([]GaugeSize, error) {
	at, by := g.Cuts.Warm, g.survey
	if at.IsZero() || by.Standard.Size == 0 {
		return nil, nil
	}
	now := material.Comparison{
		Standard: by.Standard.Size, StandardAt: by.Standard.At.Value, GaugeSetAt: by.SetAt.Value, GaugeUseAt: by.UsedAt.Value, PartAt: at,
		StandardExpansion: by.Standard.Material.Expansion, GaugeExpansion: by.Material.Expansion, PartExpansion: by.Part.Expansion,
	}
	var list []GaugeSize
	for _, o := range stock {
		if o.Stock == 0 {
			continue // a chamfer has no size
		}
		shows, err := now.DialFor(o.After)
		if err != nil {
			return nil, err
		}
		list = append(list, GaugeSize{o.Kind, o.After, shows})
	}
	return list, nil
}

// dial returns what the gauge shows at the sizes to stop at when all has come to one temperature.
func (g given) dial(c oversize.CylinderChoice) (list []GaugeSize, err error) {
	if g.survey.Standard.Size == 0 || c.Aim == 0 {
		return nil, nil
	}
	cold := material.Comparison{
		Standard: g.survey.Standard.Size, StandardAt: units.ReferenceTemperature, GaugeSetAt: units.ReferenceTemperature,
		GaugeUseAt: units.ReferenceTemperature, PartAt: units.ReferenceTemperature,
		StandardExpansion: g.survey.Standard.Material.Expansion, GaugeExpansion: g.survey.Material.Expansion, PartExpansion: g.wall.Expansion,
	}
	for _, at := range []GaugeSize{{Operation: oversize.FinishBore, Size: c.Bored}, {Operation: oversize.FinishHone, Size: c.Aim}} {
		if at.Size == 0 {
			continue
		}
		if at.Shows, err = cold.DialFor(at.Size); err != nil {
			return nil, err
		}
		if g.Gauge.Dial == bore.PlusIsSmaller {
			at.Shows = -at.Shows
		}
		list = append(list, at)
	}
	return list, nil
}

// waiting reports whether no cylinder may be cut yet, because all share a size that is not decided.
func waiting(j Job, c oversize.Choice) bool {
	return c.Route == oversize.Undecided && !j.Engine.ownSizes()
}
