// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/units"
)

// OnHand is a bore, a stroke, and what the drive can do: every spindle speed of one range and
// every stroking of another. Of a lathe or a drill press that has steps, ask for each speed by itself, Min and Max of
// Spindle alike; [Setting.StrokingRateFor] says what each step would want.
//
// What a hand can hold is for its owner to say, stroking in earnest for half a minute and
// counting. Above two cycles a second this library adds a caution and looks no further: it never advises
// more than that to a hand.
type OnHand struct {
	Bore     units.Length  `json:"bore,omitzero"`     // diameter of the bore
	Stroke   units.Length  `json:"stroke,omitzero"`   // travel of the tool one way
	Spindle  SpindleRange  `json:"spindle,omitzero"`  // speeds the drive can turn
	Stroking StrokingRange `json:"stroking,omitzero"` // strokings that can be held
	Drive    Drive         `json:"drive,omitzero"`    // what strokes the tool; not given counts as by hand
}

// handLimit is the fastest stroking this library advises to a hand: two full cycles a second.
// It is this library's own judgement; no published source was found.
const handLimit = 2 * units.Hertz

// tooFast reports whether k is above handLimit, to a part in 10⁹, and no machine strokes.
func tooFast(k Stroking, d Drive) bool { return d != ByMachine && k.Cycles() > handLimit*(1+slack) }

// A Found is what can be done on hand about a wanted crosshatch.
type Found struct {
	Hand OnHand `json:"hand,omitzero"` // as it was given
	Want Want   `json:"want,omitzero"` // as it was given
	Met  bool   `json:"met,omitzero"`  // whether some setting on hand leaves it, within the tolerance

	// The parts of the two ranges that can take part in meeting it, zero where it is not met.
	// Not every pair out of them will do: see SpindlesAt and StrokingsAt.
	Spindle  SpindleRange  `json:"spindle,omitzero"`
	Stroking StrokingRange `json:"stroking,omitzero"`

	// Best is the most comfortable setting that meets it, or else the one that misses it least.
	// Leaves is the crosshatch that Best leaves.
	Best   Setting    `json:"best,omitzero"`
	Leaves Crosshatch `json:"leaves,omitzero"`

	Changes  []Change  `json:"changes,omitzero"`  // where it is not met: what would have to change from Best, one thing at a time
	Cautions []Caution `json:"cautions,omitzero"` // about Best
}

// SettingFor answers which settings on hand leave the wanted crosshatch.
//
// The lines of one crosshatch are those of one ratio of stroking to spindle speed, so the
// settings that meet a tolerance fill the part of the rectangle of both ranges between two rays
// from standstill. Best is chosen by this rule: first the least departure from the wanted angle;
// of several that meet it exactly, the one whose stroking is nearest the middle of the range
// on hand. Where no setting will do, Best is the corner of the rectangle that misses least.
//
// What is missing is [units.ErrNotGiven], what is out of range [units.ErrRange], a range the wrong way round
// [units.ErrCrossed], a want whose ends are no angles [units.ErrRange].
func (h OnHand) SettingFor(want Want) (Found, error) {
	flat, steep, err := want.ends()
	if err := firstError(err, checkLength("bore", h.Bore), checkLength("stroke", h.Stroke), h.Spindle.validate(), h.Stroking.validate()); err != nil {
		return Found{}, err
	}
	r := Found{Hand: h, Want: want}
	if h, err = h.held(); err != nil {
		return Found{}, err
	}
	flattest, steepest := h.at(h.Spindle.Max, h.Stroking.Min.Cycles()), h.at(h.Spindle.Min, h.Stroking.Max.Cycles())
	cFlat, err1 := flattest.Crosshatch()
	cSteep, err2 := steepest.Crosshatch()
	if err := firstError(err1, err2); err != nil {
		return Found{}, err
	}
	switch w := want.Crosshatch; {
	case cSteep.half <= w.half:
		r.Best, r.Leaves = steepest, cSteep
	case cFlat.half >= w.half:
		r.Best, r.Leaves = flattest, cFlat
	default:
		r.Best = h.comfortable(w)
		if r.Leaves, err = r.Best.Crosshatch(); err != nil {
			return Found{}, err
		}
	}
	if r.Met = cSteep.half >= flat.half && cFlat.half <= steep.half; r.Met {
		r.Spindle = h.spindles(h.Stroking.Min.Cycles(), h.Stroking.Max.Cycles(), flat, steep)
		r.Stroking = h.strokings(r.Spindle.Min, r.Spindle.Max, flat, steep)
	} else {
		r.Changes = h.changes(r.Best, want.Crosshatch)
	}
	if r.Cautions, err = r.Best.Cautions(h.Drive); err != nil {
		return Found{}, err
	}
	if h.Stroking != r.Hand.Stroking {
		r.Cautions = append(r.Cautions, handTooFast)
	}
	return r, nil
}

// held returns what is on hand without the strokings above handLimit that only a machine holds.
func (h OnHand) held() (OnHand, error) {
	if !tooFast(h.Stroking.Max, h.Drive) {
		return h, nil
	}
	if tooFast(h.Stroking.Min, h.Drive) {
		return OnHand{}, fmt.Errorf("hone: stroking %v by hand: %w: want some of it at or below %v",
			h.Stroking, units.ErrRange, h.Stroking.Min.like(handLimit))
	}
	h.Stroking.Max = h.Stroking.Max.like(handLimit)
	return h, nil
}

// SpindlesAt returns the spindle speeds on hand that meet the wanted crosshatch with the
// stroking k, and whether there are any.
func (r Found) SpindlesAt(k Stroking) (SpindleRange, bool) {
	flat, steep, err := r.Want.ends()
	if err != nil || !r.Met || r.Hand.Bore <= 0 || r.Hand.Stroke <= 0 || !r.Stroking.contains(k) {
		return SpindleRange{}, false
	}
	return r.Hand.spindles(k.Cycles(), k.Cycles(), flat, steep), true
}

// StrokingsAt returns the strokings on hand that meet the wanted crosshatch with the spindle
// speed n, and whether there are any.
func (r Found) StrokingsAt(n units.Frequency) (StrokingRange, bool) {
	flat, steep, err := r.Want.ends()
	h, heldErr := r.Hand.held()
	if firstError(err, heldErr) != nil || !r.Met || h.Bore <= 0 || h.Stroke <= 0 || !r.Spindle.contains(n) {
		return StrokingRange{}, false
	}
	return h.strokings(n, n, flat, steep), true
}

// String returns the answer in a sentence, rounded for reading.
func (r Found) String() string {
	at := fmt.Sprintf("%s with %s leaves %s", rateText(r.Best.Spindle, "rev/min"), r.Best.Stroking.short(), r.Leaves.Format(1))
	if r.Met {
		return fmt.Sprintf("%v: can be had; most comfortably %s", r.Want, at)
	}
	s := fmt.Sprintf("%v: out of reach; nearest, %s", r.Want, at)
	for _, c := range r.Changes {
		s += "; " + c.toldFrom(r.Best)
	}
	return s
}

func (h OnHand) at(n, cycles units.Frequency) Setting {
	return Setting{Bore: h.Bore, Stroke: h.Stroke, Spindle: n, Stroking: h.Stroking.Min.like(cycles)}
}

// gear is the slope of the lines a setting leaves, over its cycles a turn: 2·stroke/(π·bore).
func (h OnHand) gear() float64 {
	return Setting{h.Bore, h.Stroke, 1 * units.Hertz, Cycles(1 * units.Hertz)}.slope()
}

// comfortable returns the setting that leaves w with a stroking nearest the middle of its range.
// It needs w to lie between what the corners of the rectangle leave.
func (h OnHand) comfortable(w Crosshatch) Setting {
	k := h.strokings(h.Spindle.Min, h.Spindle.Max, w, w)
	lo, hi := k.Min.Cycles(), k.Max.Cycles()
	f := min(max((h.Stroking.Min.Cycles()+h.Stroking.Max.Cycles())/2, lo), hi)
	n := units.Frequency(h.gear() / w.slope() * float64(f))
	return h.at(min(max(n, h.Spindle.Min), h.Spindle.Max), f)
}

// spindles returns the speeds on hand at which some stroking of lo to hi leaves a crosshatch of
// flat to steep; strokings the other way round. Both need that there is one.
func (h OnHand) spindles(lo, hi units.Frequency, flat, steep Crosshatch) SpindleRange {
	return SpindleRange{
		Min: min(max(h.Spindle.Min, units.Frequency(h.gear()/steep.slope()*float64(lo))), h.Spindle.Max),
		Max: max(min(h.Spindle.Max, units.Frequency(h.gear()/flat.slope()*float64(hi))), h.Spindle.Min),
	}
}

func (h OnHand) strokings(lo, hi units.Frequency, flat, steep Crosshatch) StrokingRange {
	least, most := h.Stroking.Min.Cycles(), h.Stroking.Max.Cycles()
	return StrokingRange{
		Min: h.Stroking.Min.like(min(max(least, units.Frequency(flat.slope()/h.gear()*float64(lo))), most)),
		Max: h.Stroking.Min.like(max(min(most, units.Frequency(steep.slope()/h.gear()*float64(hi))), least)),
	}
}

// rateText and short print a rate to a tenth a minute.
func rateText(f units.Frequency, per string) string {
	return fmt.Sprintf("%.1f %s", f.In(units.PerMinute), per)
}

func (k Stroking) short() string { return rateText(k.rate, k.unit()) }
