// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
)

// A cutting is what comes off one cylinder, operation by operation; zero where nothing is bored.
type cutting struct {
	seat  []oversize.Operation // out of the barrel, for a sleeve that is not in yet
	stock []oversize.Operation
	warm  []GaugeSize
	dial  []GaugeSize
}

// cut divides what is to be bored and honed off, where the job says how; of a bore that is being honed, what is left.
func cut(g given, read []readBore, choice oversize.Choice, fit *SleeveSheet, passes []passing) (all []cutting, out []Remark, err error) {
	all = make([]cutting, len(read))
	b := g.Cuts
	if waiting(g.Job, choice) {
		return all, nil, nil
	}
	for i, c := range choice.Cylinders {
		from, bored, sleeved := read[i].bore.Smallest.Size.Value, c.Bored, c.Route == oversize.Sleeve && fit != nil
		if sleeved {
			from, bored = fit.Hone.Fitted.Min, fit.Bored
		}
		if all[i].dial, err = g.dial(bored, c.Aim); err != nil {
			return nil, nil, fault("gauge.standard", err)
		}
		if bored == 0 && !sleeved {
			continue
		}
		if b.MostDepth == 0 {
			out = omit(out, "the stock of each operation", "give cuts.most_depth")
			continue
		}
		if sleeved && g.Cylinders[i].SleeveFitted == (SleeveFitted{}) {
			seat := b.Shop // which is not honed
			seat.FinishHone, seat.Plateau = 0, 0
			all[i].seat, err = seat.Cuts(read[i].bore.Smallest.Size.Value, fit.Joint.Seat, fit.Joint.Seat)
			out = failed(out, "the seat's cuts, cylinder "+c.Name, err)
		}
		if all[i].stock, err = b.Shop.Cuts(from, bored, c.Aim); err != nil {
			out = omit(out, "stock of cylinder "+c.Name, "%v", err)
			continue
		}
		now := passes[i].next.Size.Value
		all[i].stock = left(all[i].stock, now)
		if len(g.Engine.Layout.Ports) > 0 {
			all[i].stock = dressed(all[i].stock, c.Aim, now != 0 && g.Cylinders[i].passes() > 0)
		}
		if all[i].warm, err = g.warm(all[i].stock); err != nil {
			return nil, nil, fault("cuts.warm", err)
		}
	}
	return all, out, nil
}

// left returns the honing that is still to be done at a size that the hone has come to; all operations where that is zero.
func left(stock []oversize.Operation, now units.Length) (list []oversize.Operation) {
	if now == 0 {
		return stock
	}
	for _, o := range stock {
		if o.Passes == 0 && o.After > now && o.Stock > 0 { // what is cut in passes, and the chamfers, come before the hone
			o.Before = max(o.Before, now)
			o.Stock = o.After - o.Before
			list = append(list, o)
		}
	}
	return list
}

// dressed adds the edges of the ports: after boring, before a stone can catch in them, unless one has passed them, and
// lightly after honing.
func dressed(stock []oversize.Operation, end units.Length, passed bool) []oversize.Operation {
	hone := slices.IndexFunc(stock, func(o oversize.Operation) bool { return o.Stock > 0 && o.Passes == 0 })
	if hone >= 0 && !passed {
		at := stock[hone].Before
		stock = slices.Insert(stock, hone, oversize.Operation{Kind: "port edges", Before: at, After: at})
	}
	return append(stock, oversize.Operation{Kind: "port edges, lightly", Before: end, After: end})
}

// warm returns what the gauge shows at the end of each operation while the cylinder is still warm.
func (g given) warm(stock []oversize.Operation) ([]GaugeSize, error) {
	at, by := g.Cuts.Warm, g.survey.gauge
	if at.IsZero() || by.Standard.Size == 0 {
		return nil, nil
	}
	var list []GaugeSize
	for _, o := range stock {
		if o.Stock != 0 { // a chamfer has no size
			list = append(list, GaugeSize{Operation: o.Kind, Size: o.After})
		}
	}
	by.PartAt = bore.Temperature{Value: at}
	return list, shows(list, by)
}

// dial returns what the gauge shows at the sizes to stop at when all has come to one temperature.
func (g given) dial(bored, aim units.Length) (list []GaugeSize, err error) {
	if g.survey.gauge.Standard.Size == 0 || aim == 0 {
		return nil, nil
	}
	if bored != 0 {
		list = append(list, GaugeSize{Operation: oversize.FinishBore, Size: bored})
	}
	list = append(list, GaugeSize{Operation: oversize.FinishHone, Size: aim})
	by, cold := g.survey.gauge, bore.Temperature{Value: units.ReferenceTemperature}
	by.Standard.At, by.SetAt, by.UsedAt, by.PartAt = cold, cold, cold, cold
	return list, shows(list, by)
}

// shows fills in what the dial shows at each size: plus for larger where nobody says which way it runs, which the front
// page tells.
func shows(list []GaugeSize, by bore.Gauge) (err error) {
	by.Dial = cmp.Or(by.Dial, bore.PlusIsLarger)
	for i := range list {
		if list[i].Shows, err = by.DialReading(list[i].Size); err != nil {
			return err
		}
	}
	return nil
}

// waiting reports whether no cylinder may be cut yet, because all share a size that is not decided.
func waiting(j Job, c oversize.Choice) bool {
	return c.Route == oversize.Undecided && !j.Engine.ownSizes()
}
