// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Honing is what the fitted bore measures, and what must come out of it.
type Honing struct {
	Fitted Range[units.Length] `json:"fitted"` // diameter of the bore after fitting, at 20 °C
	Stock  Range[units.Length] `json:"stock"`  // to take off the DIAMETER; negative: already too large
	// CleansUp is Within where even the least stock is above 0: some metal comes off everywhere.
	// The stock that round and straight work needs is another matter.
	CleansUp uncertainty.Verdict `json:"cleans_up"`
	// Joint is the joint as it runs: its Bore is the finish size while the sleeve is in, and is given
	// as what it would spring back to were the sleeve taken out.
	Joint Joint `json:"joint"`
}

// Hone returns what must be honed out of the sleeve once it is fitted and cold, for its bore to be
// finish, the diameter at 20 °C. The bore closes in by a range, so what is left to hone is a range;
// measure it again before the last pass.
//
// A finish that is missing is units.ErrNotGiven; one that is no larger than the smallest the fitted bore
// can be, or leaves the sleeve no wall to speak of, is units.ErrRange; the other errors are those of [Joint.Fit].
func (j Joint) Hone(finish units.Length) (Honing, error) {
	if err := j.check(); err != nil {
		return Honing{}, err
	}
	if err := checkLength("finish size", finish); err != nil {
		return Honing{}, err
	}
	closes, err := j.boreCloses()
	if err != nil {
		return Honing{}, err
	}
	h := Honing{Fitted: Range[units.Length]{j.Bore - closes.Max, j.Bore - closes.Min}}
	h.Stock = Range[units.Length]{finish - h.Fitted.Max, finish - h.Fitted.Min}
	switch {
	case h.Stock.Max <= 0:
		return Honing{}, fmt.Errorf("sleeve: finish size %v of a fitted bore of %v to %v: %w", finish, h.Fitted.Min, h.Fitted.Max, units.ErrRange)
	case finish >= j.Seat:
		return Honing{}, fmt.Errorf("sleeve: finish size %v in a seat of %v: %w (below the seat)", finish, j.Seat, units.ErrRange)
	}
	h.CleansUp = verdict(h.Stock.Min > 0, true)
	// The thinner sleeve closes in by its own measure; its free bore is looked for from its fitted
	// one, which differs from it by a thousandth at most.
	h.Joint = j
	h.Joint.Bore = finish
	if closes, err = h.Joint.boreCloses(); err != nil {
		return Honing{}, err
	}
	h.Joint.Bore = finish + closes.Min + (closes.Max-closes.Min)/2
	if err := h.Joint.check(); err != nil { // thinner than its own interference
		return Honing{}, err
	}
	return h, nil
}

// boreCloses returns by how much the diameter of the bore closes in at 20 °C with no gas.
func (j *Joint) boreCloses() (Range[units.Length], error) {
	thin, thick := j.tubes(j.Outer.Min), j.tubes(j.Outer.Max)
	least := float64(thin.closing() * max(0, j.Interference.Min.In(units.Metre)))
	greatest := float64(thick.closing() * j.Interference.Max.In(units.Metre))
	return span{least, greatest}.lengths()
}
