// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Judge holds the bore against each limit that is given, in the order of the constants of [Limit].
// No limit gives no finding: an empty list says that nothing was held against anything, not that the bore is good.
// What the readings cannot show, such as ovality from one axis, is undecided and NotMeasured.
//
// The risk r is per limit. Within one limit many places take part: "within" wants every one of
// them within; "beyond" wants one of them beyond at its share of the risk (Bonferroni's
// inequality). The finding names the worst, with the share that was kept to in its Risk and what
// that is per in its Per. It is about the quantity along the axes and depths that were read, as
// manuals define it, and says nothing of what the readings cannot see.
//
// A taper is within, and a choke anything at all, only where an axis was read near both ends of ring
// travel ([UnseenTop], [UnseenBottom]), so that it wants a layout with ring travel or a stroke; else it
// is NotMeasured, unless what was read is beyond by itself. A belly or waist hides behind ends that are
// alike: where Spread is not given, which covers it, any two depths of an axis are held against the
// limit on taper, and the finding says [Finding].Between.
//
// True ovality is another matter. What was read cannot be more than what is there, so it is
// beyond where the readings are. It is within only where five axes or more fix the lobes of two and of
// four, and these are within as well: if they are all the wall has. From fewer axes it is never
// within, since a form of four lobes that they miss, or take for one of two, may carry it beyond;
// Conform is then that of the axes read, the most it can be.
//
// Errors: ErrNoReadings; [units.ErrRange] or [units.ErrCrossed] for limits that cannot be; ErrReading for a place
// along no axis, and those of [uncertainty.Judge] for an impossible risk.
func (g Geometry) Judge(l Limits, r uncertainty.Risk) ([]Finding, error) {
	all := g.places()
	if len(all) == 0 {
		return nil, fmt.Errorf("bore: judge: %w", ErrNoReadings)
	}
	for _, p := range all {
		if !validAngle(p.Axis.angle()) {
			return nil, fmt.Errorf("bore: judge: axis of %v rad at %v: want a finite angle: %w", float64(p.Axis), p.Depth, ErrReading)
		}
	}
	if err := l.validate(); err != nil {
		return nil, err
	}
	findings := make([]Finding, 0, 7)
	for _, q := range l.windows() {
		if q.window.IsZero() {
			continue
		}
		j := jury{limit: q.limit, window: q.window, risk: r}
		var err error
		switch q.limit {
		case LimitNew, LimitService:
			err = j.sizes(all)
		case LimitOvality, LimitTrueOvality:
			err = j.ovality(g.Planes)
		case LimitTaper:
			err = j.taper(g.profiles(), g.Travel, l)
		case LimitChoke:
			err = j.choke(g.Tapers)
		case LimitSpread:
			err = j.spread(all)
		}
		if err != nil {
			return nil, fmt.Errorf("bore: judge %v: %w", q.limit, err)
		}
		f, err := j.verdict()
		if err != nil {
			return nil, fmt.Errorf("bore: judge %v: %w", q.limit, err)
		}
		findings = append(findings, f)
	}
	return findings, nil
}

// sizes hears all places: the greatest against an upper limit, the least against a lower one.
func (j *jury) sizes(places []Place) error {
	cs := make([]candidate, len(places))
	for i := range places {
		cs[i] = candidate{e: places[i].Size, i: i}
	}
	for _, c := range j.decisive(cs) {
		f, err := uncertainty.Judge(c.e, j.window, j.shared(len(places)))
		if err != nil {
			return err
		}
		j.hear(f)
	}
	j.worst.Kind, j.worst.N, j.worst.Risk = uncertainty.GreatestOf, len(places), j.risk.OrDefault()
	j.worst.Per = fmt.Sprintf("%d places", len(places))
	return nil
}

func (j *jury) spread(places []Place) error {
	if len(places) < 2 {
		return nil
	}
	f, err := rangeOf(places, j.window, j.risk)
	j.hear(f)
	return err
}

// taper hears the ends of each axis or, where no limit on the spread covers what lies between, every
// two depths of it. Where no axis reaches both ends of ring travel nothing is within: there may be more.
func (j *jury) taper(profiles []profile, travel RingTravel, l Limits) error {
	j.worst.AtDeck = l.TaperAtDeck
	var ends, between []Taper
	whole := false
	for _, c := range profiles {
		whole = whole || c.whole(travel)
		last := len(c.places) - 1
		for a := range last {
			for b := a + 1; b <= last; b++ {
				switch {
				case a == 0 && b == last:
					ends = append(ends, c.between(a, b, travel))
				case l.Spread == 0:
					between = append(between, c.between(a, b, travel))
				}
			}
		}
	}
	r := j.shared(max(len(ends), 1))
	if len(between) > 0 {
		r.Reject -= r.Reject / betweenShare
	}
	if err := j.differences(ends, r, Finding{AtDeck: l.TaperAtDeck, Finding: uncertainty.Finding{Per: fmt.Sprintf("one of %d axes", len(ends))}}); err != nil {
		return err
	}
	r = j.shared(betweenShare * max(len(between), 1))
	if err := j.differences(between, r, Finding{AtDeck: l.TaperAtDeck, Between: true, Finding: uncertainty.Finding{Per: fmt.Sprintf("one of %d differences", len(between))}}); err != nil {
		return err
	}
	if j.heard && !whole && j.worst.Verdict != uncertainty.Beyond {
		j.worst, j.heard = Finding{AtDeck: l.TaperAtDeck}, false
	}
	return nil
}

// One part in betweenShare of the risk of a wrong "beyond" goes to what lies between the ends of the
// axes, so that to look there costs the ends, which the limit is on, next to nothing.
const betweenShare = 10

// differences hears differences along an axis. The finding says what they are and what their risk is per.
func (j *jury) differences(ts []Taper, r uncertainty.Risk, as Finding) error {
	cs := make([]candidate, len(ts))
	for i, t := range ts {
		cs[i] = candidate{e: t.Size, i: i}
		if !as.AtDeck {
			cs[i].e.Value = t.Size.Value.Abs()
		}
	}
	judge := uncertainty.JudgeDifference
	if as.AtDeck {
		judge = uncertainty.Judge
	}
	for _, c := range j.decisive(cs) {
		t := ts[c.i]
		f, err := judge(t.Size, j.window, r)
		if err != nil {
			return err
		}
		if j.hear(f) {
			j.worst.Axis, j.worst.From, j.worst.To = t.Axis, t.From, t.To
			j.worst.AtDeck, j.worst.Between, j.worst.Per = as.AtDeck, as.Between, as.Per
		}
	}
	return nil
}

// choke hears the axes that reach both ends of ring travel, size below less size above.
func (j *jury) choke(ts []Taper) error {
	ts = slices.DeleteFunc(slices.Clone(ts), func(t Taper) bool { return !t.Whole })
	// A window from zero up has no lower end of its own, so that all is judged a metre higher.
	const up = units.Metre
	window := units.Limits{Min: j.window.Min + up}
	if j.window.HasMax() {
		window.Max = j.window.Max + up
	}
	for _, t := range ts {
		choke := t.choke()
		choke.Value += up
		f, err := uncertainty.Judge(choke, window, j.shared(len(ts)))
		if err != nil {
			return err
		}
		f.Measured, f.Limits = t.choke(), j.window
		if j.hear(f) {
			j.worst.Axis, j.worst.From, j.worst.To = t.Axis, t.From, t.To
			j.worst.Per = fmt.Sprintf("one of %d axes", len(ts))
		}
	}
	return nil
}

// ovality hears each plane, along the axes read or for the wall itself.
func (j *jury) ovality(planes []Plane) error {
	wall := j.limit == LimitTrueOvality
	cs := make([]candidate, 0, len(planes))
	for i := range planes {
		if p := &planes[i]; p.HasOvality {
			e := each(p.Places)
			e.Value = p.Ovality.Value
			cs = append(cs, candidate{e, len(p.Places), i})
		}
	}
	n := len(cs)
	r := j.shared(n)
	if !wall { // each wall has its own lobes, which may differ where the ranges do not
		cs = j.decisive(cs)
	}
	for _, c := range cs {
		p := &planes[c.i]
		f, err := rangeOf(p.Places, j.window, r)
		if err == nil && wall && f.Verdict != uncertainty.Beyond {
			f, err = p.lobed(f, r)
		}
		if err != nil {
			return err
		}
		if j.hear(f) {
			j.worst.Depth = p.Depth
			j.worst.Per = fmt.Sprintf("one of %d planes", n)
		}
	}
	return nil
}

// lobed returns the finding on the wall of a plane whose readings are not beyond. Scatter makes
// lobes look larger than they are, so that they can be trusted when they are within but not when
// they are beyond.
func (p *Plane) lobed(read uncertainty.Finding, r uncertainty.Risk) (uncertainty.Finding, error) {
	if p.FourLobe == (Lobes{}) {
		read.Verdict = uncertainty.Undecided
		return read, nil
	}
	// The most that lobes of two and of four, and what readings there depart from them by, can
	// come to together.
	two, four := p.TwoLobe.Amplitude, p.FourLobe.Amplitude
	f, err := uncertainty.JudgeDifference(uncertainty.Estimate{
		Value: 2 * (two.Value + four.Value + p.departure()), Std: 2 * (two.Std + four.Std), DoF: fewer(two.DoF, four.DoF),
	}, read.Limits, r)
	if err != nil {
		return f, err
	}
	if f.Verdict == uncertainty.Beyond {
		f.Verdict = uncertainty.Undecided
	}
	if worse(read, f) {
		return read, nil
	}
	return f, nil
}

// rangeOf holds the greatest less the least of the places against w.
func rangeOf(ps []Place, w units.Limits, r uncertainty.Risk) (uncertainty.Finding, error) {
	sizes := make([]units.Length, len(ps))
	for i := range ps {
		sizes[i] = ps[i].Own.Value
	}
	e := each(ps)
	return uncertainty.JudgeRange(sizes, e.Std, e.DoF, w, r)
}

// each returns the largest doubt that any of the places has to itself, with the fewest degrees of
// freedom.
func each(ps []Place) uncertainty.Estimate {
	var e uncertainty.Estimate
	for i := range ps {
		e.Std, e.DoF = max(e.Std, ps[i].Own.Std), fewer(e.DoF, ps[i].Own.DoF)
	}
	return e
}
