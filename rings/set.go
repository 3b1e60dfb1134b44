// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math/bits"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Pairing puts one ring of a set into one bore, both counted from 0.
type Pairing struct {
	Ring   int    `json:"ring"`   // in the list of gaps
	Bore   int    `json:"bore"`   // in the list of bores
	Filing Filing `json:"filing"` // of this ring for this bore
}

// A Set is a ring for each bore of an engine.
type Set struct {
	Pairings []Pairing    `json:"pairings"` // in the order of the bores
	TakeOff  units.Length `json:"take_off"` // what comes off all of them together
	Unfit    int          `json:"unfit"`    // how many pairings are TooWide or Undecided
}

// mostRings is the greatest set that [Assign] searches: 2¹⁶ sets of rings used.
const mostRings = 16

// Assign says which ring goes into which bore: of all ways to give every bore a ring of its own
// the one that leaves the fewest unfit, and of those the one in which least is filed off; of
// equals that which gives the first bores the first rings. The rings are of one kind, for the
// same groove; there may be spare ones. The search is exact, over the sets of rings already
// used: 2ⁿ·n steps for n rings.
//
// No bore, more bores than rings or more than 16 rings is ErrCount. Other errors are those of
// [Gap.In] and [File]; ErrDoubt for any one pairing is one for the set.
func Assign(gaps []Gap, bores []uncertainty.Estimate, window units.Limits, risk uncertainty.Risk) (Set, error) {
	if len(bores) == 0 || len(bores) > len(gaps) || len(gaps) > mostRings {
		return Set{}, fmt.Errorf("rings: %d rings for %d bores: %w (at least 1 bore, a ring for each, up to %d rings)", len(gaps), len(bores), ErrCount, mostRings)
	}
	filings := make([][]Filing, len(bores))
	for b, bore := range bores {
		filings[b] = make([]Filing, len(gaps))
		for r, gap := range gaps {
			there, err := gap.In(bore)
			if err != nil {
				return Set{}, fmt.Errorf("%w, with ring %d and bore %d", err, r, b)
			}
			if filings[b][r], err = File(there, window, risk); err != nil {
				return Set{}, fmt.Errorf("%w, with ring %d and bore %d", err, r, b)
			}
		}
	}
	// best[used] is what it costs at least to fill the bores from the one after the first
	// popcount(used) on, with the rings that are not used.
	best := make([]cost, 1<<len(gaps))
	for used := len(best) - 1; used >= 0; used-- {
		if b := bits.OnesCount(uint(used)); b < len(bores) {
			best[used], _ = cheapest(filings[b], best, used)
		}
	}
	set := Set{TakeOff: best[0].takeOff, Unfit: best[0].unfit}
	for b, used := 0, 0; b < len(bores); b++ {
		_, r := cheapest(filings[b], best, used)
		set.Pairings = append(set.Pairings, Pairing{Ring: r, Bore: b, Filing: filings[b][r]})
		used |= 1 << r
	}
	return set, nil
}

type cost struct {
	unfit   int
	takeOff units.Length
}

// cheapest returns the least cost of one bore and those after it, and the ring to begin with.
func cheapest(filings []Filing, best []cost, used int) (least cost, ring int) {
	ring = -1
	for r := range filings {
		if used>>r&1 != 0 {
			continue
		}
		c := best[used|1<<r]
		switch filings[r].Action {
		case TooWide, Undecided:
			c.unfit++
		case FileEnds:
			c.takeOff += filings[r].TakeOff
		}
		if ring < 0 || c.unfit < least.unfit || c.unfit == least.unfit && c.takeOff < least.takeOff {
			least, ring = c, r
		}
	}
	return least, ring
}
