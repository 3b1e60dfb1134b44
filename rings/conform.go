// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Bound is how far a ring follows one order of a bore's form by its own spring: the greatest
// RADIAL amplitude, by each of two rules. Of order 2 the ovality, a difference of diameters,
// is four times as large; see [Oval.Harmonic].
type Bound struct {
	Derived   units.Length `json:"derived"`   // k·r/(i² − 1)², from the bending of the ring
	Empirical units.Length `json:"empirical"` // k·r/(20·(i² − 1)), stricter up to order 4, wider from 5
}

// mostOrder is the highest order that is looked at: no ring follows more than 1 pm of it.
const mostOrder = 1000

// Bound returns how far the ring follows an order i, from 2 to 1000: order 0 is size and order 1 a
// shift of the axis, for which no ring has to bend. Any other order, and a parameter that no ring of its
// section can have, is [units.ErrRange].
func (t Tension) Bound(order int) (Bound, error) {
	kr, err := t.kr()
	if err != nil {
		return Bound{}, err
	}
	if order < 2 || order > mostOrder {
		return Bound{}, fmt.Errorf("rings: order %d: %w (2 to %d)", order, units.ErrRange, mostOrder)
	}
	n := lobes(order)
	var b Bound
	if b.Derived, err = units.Of(kr/float64(n*n), units.Picometre); err != nil { // (5)
		return Bound{}, err
	}
	b.Empirical, err = units.Of(kr/float64(20*n), units.Picometre) // (6)
	return b, err
}

// lobes returns i² − 1.
func lobes(order int) float64 { return float64(order)*float64(order) - 1 }

// kr returns k·r in picometres. It is m/(3π), and m is at most half the bore.
func (t Tension) kr() (float64, error) {
	if err := t.Section.validate(); err != nil {
		return 0, err
	}
	kr := t.Parameter * float64(t.Section.Bore-t.Section.Thickness) / 2
	if !(kr >= 1 && kr <= float64(t.Section.Bore)/(6*math.Pi)+1) { // and 1 pm for rounding
		return 0, fmt.Errorf("rings: parameter k of %v: %w", t.Parameter, units.ErrRange)
	}
	return kr, nil
}

// A Demand is what a bore's form asks of a ring, by one rule.
type Demand struct {
	Used   float64 `json:"used"`    // Σ amplitude/bound; 1 is all that the ring can follow, and what is left to 1 the margin
	Most   int     `json:"most"`    // the order that asks for the largest part; 0 where there is no form
	ByMost float64 `json:"by_most"` // that order's own part, as a fraction of its bound
}

// A Conformity is whether a ring follows a bore's form by its own spring, without help from gas
// pressure.
type Conformity struct {
	Verdict   uncertainty.Verdict `json:"verdict"`          // on the orders seen
	Derived   Demand              `json:"derived"`          // by the rule k·r/(i² − 1)²
	Empirical Demand              `json:"empirical"`        // by the rule k·r/(20·(i² − 1))
	Unseen    []int               `json:"unseen,omitempty"` // orders of which the form given says nothing
}

// watched is the highest order that is missed where it is not given: the pattern of up to six
// bolts round a cylinder, the usual cause of form above order 2.
const watched = 6

// Follow holds a form against the ring. Every amplitude is radial, as [bore.Harmonic] has it; a
// measured difference of diameters goes through [Oval.Harmonic] first. Orders 0 and 1 ask nothing of a
// ring and are passed over.
//
// Verdict is Within where, by the derived and by the empirical rule, all orders together use no
// more than the ring has: a ring can lose the wall although each order is inside its bound, and
// the parts are added as if all orders had their crests in one place, which is on the safe side.
// It is Beyond where by both rules an order alone is beyond its bound, and otherwise Undecided:
// the rules disagree, or it hangs on where the crests lie. Every order from 2 to 6, and from
// there to the highest given, that the form does not hold is named in Unseen, and Verdict says
// nothing of it: a two-point gauge sees no odd order at all. An order that was looked for and
// not found belongs into the form with amplitude 0.
//
// A parameter that no ring of its section can have, and orders that do not ascend, or beyond 1000, are
// [units.ErrRange], and so is a negative amplitude, or one beyond [units.MaxLength].
func (t Tension) Follow(form []bore.Harmonic) (Conformity, error) {
	kr, err := t.kr()
	if err != nil {
		return Conformity{}, err
	}
	var c Conformity
	last := 1
	for i, h := range form {
		switch {
		case h.Order < 0 || h.Order > mostOrder || i > 0 && h.Order <= form[i-1].Order:
			return Conformity{}, fmt.Errorf("rings: order %d: %w (0 to %d, each once, in ascending order)", h.Order, units.ErrRange, mostOrder)
		case h.Amplitude < 0 || h.Amplitude > units.MaxLength:
			return Conformity{}, fmt.Errorf("rings: amplitude %v of order %d: %w (0 to %v)", h.Amplitude, h.Order, units.ErrRange, units.MaxLength)
		case h.Order < 2:
			continue
		}
		for ; last+1 < h.Order; last++ {
			c.Unseen = append(c.Unseen, last+1)
		}
		last = h.Order
		n, part := lobes(h.Order), float64(h.Amplitude)/kr
		c.Derived.ask(h.Order, float64(part*float64(n*n)))    // (5)
		c.Empirical.ask(h.Order, float64(part*float64(20*n))) // (6)
	}
	for ; last < watched; last++ {
		c.Unseen = append(c.Unseen, last+1)
	}
	c.Derived.round()
	c.Empirical.round()
	switch {
	case c.Derived.Used <= 1 && c.Empirical.Used <= 1:
		c.Verdict = uncertainty.Within
	case c.Derived.ByMost > 1 && c.Empirical.ByMost > 1:
		c.Verdict = uncertainty.Beyond
	}
	return c, nil
}

func (d *Demand) ask(order int, part float64) {
	d.Used += part
	if part > d.ByMost {
		d.Most, d.ByMost = order, part
	}
}

// round rounds the parts to 1e-9, since decisions hang on them.
func (d *Demand) round() {
	d.Used = math.Round(d.Used*1e9) / 1e9
	d.ByMost = math.Round(d.ByMost*1e9) / 1e9
}
