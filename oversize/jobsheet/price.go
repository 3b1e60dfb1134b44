// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Price is what doubt costs: a cheaper route that less of it might allow.
type Price struct {
	Route oversize.Route `json:"route"` // that could be kept to
	Over  units.Length   `json:"over"`  // its size, over nominal
	Now   units.Length   `json:"now"`   // the doubt that stands against it, expanded to 95 %
	Would units.Length   `json:"would"` // the doubt that would let it through, if the value stayed
}

// price returns the cheapest route that was refused for doubt alone, and what doubt would spare it; nil where
// there is none.
func (b *book) price(c oversize.CylinderChoice) *Price {
	for n, r := range c.Refused {
		alone := true
		for m, other := range c.Refused {
			if m != n && other.Route == r.Route && other.Over == r.Over && other.Work == r.Work {
				alone = false
			}
		}
		f := r.Finding
		if !alone || !r.Reason.Open() || f.Limits.IsZero() || f.Measured.Std == 0 {
			continue
		}
		remedy, err := f.Settle(f.Measured.Std)
		if err != nil || remedy.Std == 0 {
			continue
		}
		now, err := f.Measured.Expanded(0.95)
		if err != nil {
			continue
		}
		settled := f.Measured
		settled.Std = remedy.Std
		would, err := settled.Expanded(0.95)
		if err != nil || would == 0 || remedy.Toward != uncertainty.Within {
			continue
		}
		return &Price{Route: r.Route, Over: r.Over, Now: now, Would: would}
	}
	return nil
}
