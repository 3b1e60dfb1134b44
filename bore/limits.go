// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"

	"borewright.example/units"
)

// Limits are what a maker allows of a bore, each optional. Manuals define wear differently, so
// each limit holds for the quantity named here and no other.
type Limits struct {
	New     units.Limits `json:"new,omitzero"`     // of every diameter, as for a new bore
	Service units.Limits `json:"service,omitzero"` // of every diameter, worn
	// The greatest allowed:
	Ovality units.Length `json:"ovality,omitzero"` // greatest minus least diameter in one plane, along the axes read
	Taper   units.Length `json:"taper,omitzero"`   // difference along one axis from end to end of ring travel
	Spread  units.Length `json:"spread,omitzero"`  // greatest minus least of all diameters read
	// TrueOvality is the greatest minus least diameter in one plane of the wall itself, whether
	// or not an axis met them.
	TrueOvality units.Length `json:"true_ovality,omitzero"`
	// TaperAtDeck says that the limit on taper is on a bore larger at the deck alone; one that is smaller there may be
	// choked on purpose. Where it does not, either way counts.
	TaperAtDeck bool `json:"taper_at_deck,omitzero"`
	// Choke is the window of a choke that is wanted: size at the lower end of ring travel less that at
	// the upper, along every axis, cold. Without a Min a bore larger at the deck is beyond it (US Army
	// TM 9-2815-200-35 p. 6-55 rejects such a barrel).
	Choke units.Limits `json:"choke,omitzero"`
}

// A limited is a limit with its window.
type limited struct {
	limit  Limit
	window units.Limits
}

// windows returns every limit, in the order in which they are judged.
func (l Limits) windows() [7]limited {
	return [...]limited{
		{LimitNew, l.New},
		{LimitService, l.Service},
		{LimitOvality, units.Limits{Max: l.Ovality}},
		{LimitTaper, units.Limits{Max: l.Taper}},
		{LimitSpread, units.Limits{Max: l.Spread}},
		{LimitTrueOvality, units.Limits{Max: l.TrueOvality}},
		{LimitChoke, l.Choke},
	}
}

func (l Limits) validate() error {
	for _, w := range l.windows() {
		if err := w.window.Validate(); err != nil {
			return fmt.Errorf("bore: limits on %v: %w", w.limit, err)
		}
		if w.window.Min < 0 || w.window.Max < 0 || max(w.window.Min, w.window.Max) > units.MaxLength {
			return fmt.Errorf("bore: limits on %v, %v: want 0 (not given) to %v: %w", w.limit, w.window, units.MaxLength, units.ErrRange)
		}
	}
	if l.Taper != 0 && !l.TaperAtDeck && l.Choke.Min > l.Taper {
		return fmt.Errorf("bore: a choke of %v is wanted and a taper of more than %v forbidden either way: say that the limit is on a bore larger at the deck: %w", l.Choke, l.Taper, units.ErrRange)
	}
	return nil
}
