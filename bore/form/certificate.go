// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"encoding/json"
	"fmt"

	"borewright.example/units"
)

// A Contact is a point of the trace that carries a circle.
type Contact struct {
	Index  int     `json:"index"`          // of the point in the trace, from 0
	Outer  bool    `json:"outer,omitzero"` // the point lies on the outer circle of two, or the circumscribed one; otherwise on the inner or inscribed one
	Weight float64 `json:"weight"`         // share without unit, not negative, with which it takes part in the balance
}

// A Certificate says why a circle is the best of its kind. Unless it was Searched for, it holds all
// that is needed to prove that by hand, and [Circle.Check] does. With n the direction of a contact
// from the centre and w its weight:
//
//	MCCI   Σ w = 1 and Σ w·n = 0: two contacts opposite each other, or three that no half circle holds.
//	       About any other centre Σ w·d² grows by the square of the distance moved, so some contact
//	       gets farther.
//	MICI   Σ w = 1 and Σ w·n = 0, three contacts. About a centre moved by t some contact gets nearer, if
//	       t < 2·r·γ, γ being the distance of zero from the nearest side of the triangle of the three n.
//	MZCI   Σ w = 1 over the two outer contacts, and over the two inner ones, and the sums Σ w·n of both are
//	       the same: outer and inner contacts alternate round the circle. About a centre moved by t the
//	       zone gets wider, if t < 2·γ·r/(1 + 2γ), r the inner radius and γ the distance of zero from
//	       the nearest side of the parallelogram whose corners are n(inner) − n(outer).
//
// How far the last two reach is Reach. Farther away the points all round exclude the rest. Seen
// from the centre let no gap between neighbouring points be wider than 2·acos(c), c > 0, let all of
// them lie from r to R away, and s = R + r. When the centre moves by t, there is a point nearly
// ahead that comes at least as near as the larger of √(R² + t² − 2cRt) and √(r² + t² − 2crt), and
// one nearly behind that gets at least as far as √(r² + t² + 2crt). So the zone is no narrower
// where s·(2ct − w)/(s + 2t) and 2crt/(r + t) reach w = R − r, both of which grow with t; and the
// inscribed circle is no larger where both of the nearer distances are at most r, which holds
// between two t if it holds at them. On a bore that begins some micrometres away, and Reach is some
// millimetres.
type Certificate struct {
	contacts [4]Contact
	n        int

	// Reach is how far from the centre the contacts alone prove that no circle is better;
	// [units.MaxLength] for all the plane.
	Reach units.Length
	// Bound is how much better any other circle of the kind might be, wherever its centre: in
	// radius, or for a minimum zone in width. It is zero, to the picometre, unless the search ended
	// before it had excluded all else, which takes wild points or hundreds of thousands of them.
	Bound units.Length
	// Searched says that Reach was not enough, as on an arc, on a wild form, or for an inscribed
	// circle on two contacts nearly opposite, as in an oval bore; and that the rest was excluded by
	// halving boxes of centres. Check does not repeat that, so the certificate proves no more than
	// Reach.
	Searched bool
}

// Contacts returns the contacts: first outer, then inner ones. There are none of a minimum zone as
// thin as rounding, some picometres, which only the search proves.
func (c Certificate) Contacts() []Contact { return append([]Contact(nil), c.contacts[:c.n]...) }

// written is a certificate as JSON has it.
type written struct {
	Contacts []Contact    `json:"contacts,omitempty"`
	Reach    units.Length `json:"reach"`
	Bound    units.Length `json:"bound"`
	Searched bool         `json:"searched,omitzero"`
}

// MarshalJSON writes the certificate with its contacts.
func (c Certificate) MarshalJSON() ([]byte, error) {
	return json.Marshal(written{c.contacts[:c.n], c.Reach, c.Bound, c.Searched})
}

// UnmarshalJSON reads what [Certificate.MarshalJSON] writes; more than four contacts are
// ErrCertificate. On error the receiver keeps its value. What was read is not proved: ask
// [Circle.Check].
func (c *Certificate) UnmarshalJSON(text []byte) error {
	var w written
	if err := json.Unmarshal(text, &w); err != nil {
		return fmt.Errorf("form: certificate: %w", err)
	}
	if len(w.Contacts) > len(c.contacts) {
		return fmt.Errorf("form: certificate of %d contacts: want at most %d: %w", len(w.Contacts), len(c.contacts), ErrCertificate)
	}
	*c = Certificate{n: len(w.Contacts), Reach: w.Reach, Bound: w.Bound, Searched: w.Searched}
	copy(c.contacts[:], w.Contacts)
	return nil
}
