// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// agreements writes, for facts of the job that determine each other, whether they can both be true. Each is
// judged alone at the usual risk: a contradiction asks for a second look and costs no metal.
func (b *book) agreements() {
	b.repeats()
	b.readingsAndTraces()
	b.feelerAndBore()
	b.surveyAndProof()
	b.proofAndSize()
	b.passesAndProof()
	b.gapsInTwoBores()
	b.sleeveAndWindow()
}

// cannot reports whether a difference is surely outside what it can be.
func cannot(e uncertainty.Estimate, w units.Limits) bool {
	f, err := uncertainty.Judge(e, w, uncertainty.Risk{})
	return err != nil || f.Verdict == uncertainty.Beyond
}

// Metal does not come back, and nothing is taken from a wall that is not worked on.
var (
	notBack = units.Limits{Min: -units.Picometre}
	notGone = units.Limits{Max: units.Picometre}
)

func (b *book) agree(of string, cannotBe bool, says string, give ...string) {
	r := provenBy(demandAgreement, of, byOwnRecord)
	if cannotBe {
		r = open(demandAgreement, of, contradicts, StepMeasureBetter, give...)
		r.Says = says
	}
	r.Key = of
	b.put(r)
}

// repeats writes whether places that were read more than once agree with how well the gauge is said to repeat.
func (b *book) repeats() {
	says := ""
	for _, at := range b.sittings() {
		for _, c := range at.bore.Contradictions {
			says = list(says, c.String())
		}
	}
	b.agree("repeats", says != "", says, b.path+"readings", b.path+"proof", "gauge.repeatability")
}

// readingsAndTraces compares diameters that were both read and traced, the two instruments being set on one standard.
func (b *book) readingsAndTraces() {
	if !b.spindle.OnStandard {
		return
	}
	for n, at := range b.sittings() {
		if len(at.readings) == 0 || at.traced == nil {
			continue
		}
		names := [...][3]string{{"readings and traces", "readings", "traces"}, {"proof and its traces", "proof", "proof_traces"}}[n]
		worst, says := false, ""
		traced := places(at.traced.bore)
		for _, p := range places(at.bore) {
			i := slices.IndexFunc(traced, func(t bore.Place) bool { return t.Depth == p.Depth && t.Axis == p.Axis })
			if i < 0 || worst {
				continue
			}
			apart := p.Minus(traced[i])
			worst = cannot(apart, notBack) || cannot(apart, notGone)
			says = fmt.Sprintf("at %v, %s the gauge read %v and the trace has %v", p.Depth, p.Axis.String(), p.Size, traced[i].Size)
		}
		b.agree(names[0], worst, says, b.path+names[1], b.path+names[2])
	}
}

// feelerAndBore compares by how much a ring and a feeler gauge find the worn bore larger at the upper of two depths with
// the mean diameters there. Where three axes or more were not read at both, there is nothing to compare it with.
func (b *book) feelerAndBore() {
	upper, lower, both := b.read[b.at].atFeeler(b.Cylinders[b.at].FeelerTest)
	if !both {
		return
	}
	// What the gauge shares between two depths is small beside what two feelers are in doubt by.
	read := bore.Place{Own: upper}.Minus(bore.Place{Own: lower})
	felt := b.read[b.at].feeler
	apart := bore.Place{Own: felt}.Minus(bore.Place{Own: read})
	says := fmt.Sprintf("by the ring and feeler gauge the bore is %v larger above than below, by its diameters %v", felt, read)
	b.agree("feeler test and bore", cannot(apart, notBack) || cannot(apart, notGone), says, b.path+"feeler_test", b.path+"readings")
}

// atFeeler returns the mean diameters at the two depths of a feeler test, by readings or by traces, and whether both were
// read along enough axes.
func (r readBore) atFeeler(test []FeelerGap) (upper, lower uncertainty.Estimate, both bool) {
	if len(test) != 2 {
		return upper, lower, false
	}
	bores := []bore.Geometry{r.bore}
	if r.traced != nil {
		bores = append(bores, r.traced.bore)
	}
	for _, g := range bores {
		above, _ := g.At(test[0].Depth)
		below, _ := g.At(test[1].Depth)
		if upper, lower = above.TwoLobe.Mean, below.TwoLobe.Mean; above.TwoLobe != (bore.Lobes{}) && below.TwoLobe != (bore.Lobes{}) {
			return upper, lower, true
		}
	}
	return upper, lower, false
}

// sittings are the worn bore and, where it was read, the finished one.
func (b *book) sittings() []sitting {
	if p := b.proofs[b.at]; p != nil {
		return []sitting{b.read[b.at].sitting, p.as}
	}
	return []sitting{b.read[b.at].sitting}
}

// surveyAndProof compares the two with what was taken off between them.
func (b *book) surveyAndProof() {
	p := b.proofs[b.at]
	if p == nil || p.Changed == nil {
		return
	}
	c := p.Changed
	says := fmt.Sprintf("survey and proof: %v came off on the mean diameter, %v at the least place", c.Stock, c.Least.Stock)
	b.agree("survey and proof", cannot(c.Stock, notBack) || cannot(c.Least.Stock, notBack) ||
		b.chosen().Route == oversize.MakersProcess && cannot(c.Stock, notGone), says, b.path+"readings", b.path+"proof")
}

// proofAndSize holds the finished bore against the sizes on offer: one that is nearer to another than to what was meant
// was finished to a choice that has changed since, and is not cut on to the new one unseen.
func (b *book) proofAndSize() {
	p, c := b.proofs[b.at], b.chosen()
	const of = "proof and size"
	switch {
	case p == nil:
		return
	case c.Route == oversize.Undecided:
		r := open(demandAgreement, of, toCome, b.workStep())
		r.Key = of
		b.put(r)
		return
	}
	meant := c.Aim
	if stays(c) {
		meant = b.read[b.at].bore.Smallest.Size.Value
	}
	is := p.Bore.Smallest.Size.Value
	over, other := b.otherSize(is, meant, c.Over)
	b.agree(of, other, saysOther("the proof found", is, over, c.Over), b.path+"proof", b.path+"readings")
}

// otherSize returns the size on offer that a bore is nearer to than to the one it goes to, or to what is meant to become
// of it, and whether there is any.
func (j Job) otherSize(is, meant, chosen units.Length) (over units.Length, other bool) {
	off := min((is - meant).Abs(), (is - j.Engine.at(chosen)).Abs())
	for _, o := range j.Engine.sizes() {
		if d := (is - j.Engine.at(o.Over)).Abs(); o.Over != chosen && d < off {
			over, off, other = o.Over, d, true
		}
	}
	return over, other
}

func saysOther(what string, is, over, chosen units.Length) string {
	return fmt.Sprintf("%s %v, nearer to the size %v over than to the %v that the job goes to now: has the choice changed since it was cut?",
		what, is.Round(units.Micrometre), over, chosen)
}

// passesAndProof compares the last pass that was written down with the proof: the proof lies round it.
func (b *book) passesAndProof() {
	p, pass := b.proofs[b.at], b.passes[b.at]
	if p == nil || !pass.recorded || pass.next.Size.Value == 0 {
		return
	}
	last := bore.Place{Size: pass.next.Size, Own: pass.next.Size}
	says := fmt.Sprintf("the last pass left %v, the proof found %v to %v", last.Size, p.Bore.Smallest.Size, p.Bore.Largest.Size)
	b.agree("passes and proof", cannot(p.Bore.Largest.Minus(last), notBack) || cannot(last.Minus(p.Bore.Smallest), notBack), says,
		b.path+"honing", b.path+"proof")
}

// gapsInTwoBores compares a ring's gap in two bores: unless it was filed it follows from the bores.
func (b *book) gapsInTwoBores() {
	for n, r := range b.rings[b.at] {
		if !r.inBore() {
			continue
		}
		filed := b.Cylinders[b.at].Rings[n].Filed
		grown, err := rings.DiameterChange(r.Foretold, r.Gap)
		says := fmt.Sprintf("ring %s: its first gap makes %v in this bore, and %v was measured", r.Ring, r.Foretold, r.Gap)
		b.agree("gaps of ring "+r.Ring, err != nil || cannot(grown, notBack) || !filed && cannot(grown, notGone), says,
			fmt.Sprintf("%srings[%d].finished", b.path, n), fmt.Sprintf("%srings[%d].filed", b.path, n))
	}
}

// sleeveAndWindow compares the size that a sleeve is to be finished to with the window that its piston leaves.
func (b *book) sleeveAndWindow() {
	c := b.chosen()
	if c.Route != oversize.Sleeve || c.Finish.IsZero() {
		return
	}
	says := fmt.Sprintf("the sleeve is to be finished to %v, its piston wants %v", c.Aim, c.Finish)
	b.agree("sleeve and piston", !c.Finish.Contains(c.Aim), says, "engine.sleeve.finish", "engine.limits.piston_clearance")
}
