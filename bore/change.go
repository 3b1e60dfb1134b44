// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A PlaceChange is what was taken off at one place.
type PlaceChange struct {
	Depth units.Length         `json:"depth,omitzero"` // from the deck
	Axis  Axis                 `json:"axis,omitzero"`  // 0 up to 180°
	Stock uncertainty.Estimate `json:"stock"`          // on the diameter
}

// A Change is what an operation did to a bore. Stock is on the diameter. Form gained is positive
// where the bore became better; it is zero where either geometry does not have it.
type Change struct {
	Places []PlaceChange        `json:"places"` // read both before and after, by depth and axis
	Stock  uncertainty.Estimate `json:"stock"`  // mean of the places
	Most   PlaceChange          `json:"most"`   // where most was taken off
	Least  PlaceChange          `json:"least"`
	// Spread is most minus least: what the operation did unevenly, or was asked to.
	Spread uncertainty.Estimate `json:"spread"`
	// Form gained: ovality, taper and greatest minus least before, less those after.
	OvalityGained uncertainty.Estimate `json:"ovality_gained,omitzero"`
	TaperGained   uncertainty.Estimate `json:"taper_gained,omitzero"` // of its size, whichever end is larger
	SpreadGained  uncertainty.Estimate `json:"spread_gained,omitzero"`
}

// Compare returns what lies between two geometries of one bore, over the places read both times:
// at the same depth and along the same axis. The doubt of the two settings of the gauge counts in
// full both times, which is on the safe side where one ring and one gauge served for both; of
// one survey nothing averages out.
//
// No place in common is ErrNoReadings.
func Compare(before, after Geometry) (Change, error) {
	var c Change
	var stock units.Length
	var oldest, newest Place // those of the largest doubt
	var most, least [2]Place // before and after
	for _, o := range before.places() {
		plane, _ := after.At(o.Depth)
		n, ok := along(plane.Places, o.Axis)
		if !ok {
			continue
		}
		e, err := independent(n.Size.Value-o.Size.Value, n.Size, 1, o.Size, 1)
		if err != nil {
			return Change{}, fmt.Errorf("bore: compare: %w", err)
		}
		p := PlaceChange{o.Depth, o.Axis, e}
		if len(c.Places) == 0 || e.Value > c.Most.Stock.Value {
			c.Most, most = p, [2]Place{o, n}
		}
		if len(c.Places) == 0 || e.Value < c.Least.Stock.Value {
			c.Least, least = p, [2]Place{o, n}
		}
		if o.Size.Std >= oldest.Size.Std {
			oldest = o
		}
		if n.Size.Std >= newest.Size.Std {
			newest = n
		}
		c.Places = append(c.Places, p)
		stock += e.Value
	}
	if len(c.Places) == 0 {
		return Change{}, fmt.Errorf("bore: compare: no place was read both before and after: %w", ErrNoReadings)
	}
	mean, err := stock.MulDiv(1, int64(len(c.Places)))
	if err != nil {
		return Change{}, err
	}
	if c.Stock, err = independent(mean, newest.Size, 1, oldest.Size, 1); err != nil {
		return Change{}, fmt.Errorf("bore: compare: %w", err)
	}
	if len(c.Places) > 1 {
		spread := c.Most.Stock.Value - c.Least.Stock.Value
		if c.Spread, err = independent(spread, most[0].Minus(least[0]), 1, most[1].Minus(least[1]), 1); err != nil {
			return Change{}, fmt.Errorf("bore: compare: %w", err)
		}
	}
	for _, f := range [...]struct {
		to          *uncertainty.Estimate
		known       bool
		before, now uncertainty.Estimate
	}{
		{&c.OvalityGained, before.HasOvality && after.HasOvality, before.Ovality, after.Ovality},
		{&c.TaperGained, len(before.Tapers) > 0 && len(after.Tapers) > 0, before.Taper.Size, after.Taper.Size},
		{&c.SpreadGained, true, before.Spread, after.Spread},
	} {
		if !f.known {
			continue
		}
		if *f.to, err = independent(f.before.Value.Abs()-f.now.Value.Abs(), f.before, 1, f.now, 1); err != nil {
			return Change{}, fmt.Errorf("bore: compare: %w", err)
		}
	}
	return c, nil
}
