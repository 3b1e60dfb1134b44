// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Coarse is a caution that a gauge, as it was used, is too coarse for a limit it judges: common
// practice wants the doubt to be at most a quarter of what is allowed, better a tenth. Findings
// stand all the same; more of them are undecided.
type Coarse struct {
	Limit    Limit        `json:"limit"`    // that it is too coarse for
	Expanded units.Length `json:"expanded"` // ±, of 95 % coverage
	Allowed  units.Length `json:"allowed"`  // half the width of a window, or the greatest difference allowed
}

// coarseShare is how many times the doubt should go into what is allowed.
const coarseShare = 4

// Coarse returns a caution for each limit that the gauge is too coarse for, in the order of
// [Geometry.Judge]. A window open at one end sets no scale and gives none. Errors: ErrNoReadings,
// those of limits that cannot be, [units.ErrRange] or [units.ErrCrossed].
func (g Geometry) Coarse(l Limits) ([]Coarse, error) {
	if err := l.validate(); err != nil {
		return nil, err
	}
	all := g.places()
	if len(all) == 0 {
		return nil, fmt.Errorf("bore: cautions: %w", ErrNoReadings)
	}
	size, own := all[0].Size, all[0].Own // of the most doubtful place
	for _, p := range all {
		if p.Size.Std > size.Std {
			size = p.Size
		}
		if p.Own.Std > own.Std {
			own = p.Own
		}
	}
	between := difference(own, own)
	var cautions []Coarse
	for _, c := range [...]struct {
		limit   Limit
		allowed units.Length
		doubt   uncertainty.Estimate
	}{
		{LimitNew, half(l.New), size},
		{LimitService, half(l.Service), size},
		{LimitOvality, l.Ovality, between},
		{LimitTaper, l.Taper, between},
		{LimitSpread, l.Spread, between},
		{LimitTrueOvality, l.TrueOvality, between},
		{LimitChoke, half(l.Choke), between},
	} {
		if c.allowed == 0 {
			continue
		}
		u, err := c.doubt.Expanded(0.95)
		if err != nil {
			return nil, fmt.Errorf("bore: cautions: %v: %w", c.limit, err)
		}
		if coarseShare*u > c.allowed {
			cautions = append(cautions, Coarse{c.limit, u, c.allowed})
		}
	}
	return cautions, nil
}

// half returns half the width of a window, 0 where it is open.
func half(w units.Limits) units.Length {
	width, _ := w.Width()
	return width / 2
}
