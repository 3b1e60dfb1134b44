// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"encoding/json"
	"fmt"

	"borewright.example/units"
)

// A Contact is a point of the trace that carries a circle, or of the wall that carries a cylinder.
type Contact struct {
	Index  int     `json:"index"`          // of the point in the trace or wall, from 0
	Outer  bool    `json:"outer,omitzero"` // the point lies on the outer of two, or the circumscribed one; otherwise on the inner or inscribed one
	Weight float64 `json:"weight"`         // share without unit, not negative, with which it takes part in the balance
}

// mostContacts is the greatest number of contacts: those of the zone of a cylinder.
const mostContacts = 6

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
//
// Of a cylinder (LSCY has none) a contact has, besides its direction n square to the axis, a height h,
// from 0 at the one end of the wall to 1 at the other. Its pull is the pair ((1 − h)·n, h·n), four
// numbers, that of an inner contact with its sign turned: by so much for each length that the ends of the
// axis move, the point comes nearer. Then
//
//	Σ w = 1 over the outer contacts (MZCY, MCCY), and over the inner ones (MZCY, MICY), and Σ w·pull = 0
//
// proves that no small move of first order is better. A move of size m, both ends taken together by
// their squares, changes a distance beyond that by s²/2d − d·a²/2, and what is of third order: s how far
// the axis moves across n there, a how far it tilts along n. With r and R the distances of the contacts,
// or of the nearest and the farthest point, and L the length of the wall, that is m²/2r at most, and
// −R·m²/L² at least. So the contacts exclude anything better as far as the pulls grow faster: by γ·m, γ the least of weight
// times height of a pull over the flat that the other contacts span. Six contacts of a zone, five of the others, hold the
// axis so in every direction; where there are fewer, the weighed sum of s²/2d − d·a²/2 has to be above zero in the
// directions left over. On a bore that is some micrometres mostly, and none where the contacts hardly hold the axis.
//
// Farther away the points at both ends exclude the rest. Let the points within a share k of the length
// from either end leave no gap wider than 2·acos(c) as seen from the axis, and let C = c − 2k. When the
// end that moves more moves by t ≤ r/2, a point there comes nearer than R − C·t + (1 − C²)·t²/r, and one
// gets farther than r + C·t − (r + C·t)·2t²/L². On a bore that excludes all from some hundredths of a
// millimetre away to half its radius at either end, which is a cone of directions of r/L to every side.
//
// Where the two do not meet, the moves between them are gone through in parts. About the axis in the middle of a part let
// points lie d away, with pulls p. After a further move m let x = d − p·m. Then they are no farther than x + s²/2x, and no
// nearer than x − b²/2x − b⁴/2x³, s the greatest of the part, b = d·a + e·t the greatest too, e how far the axis moves there
// and t how far it tilts in all. A better zone would have any two of them less than R − r apart, a
// better circumscribed cylinder each nearer than R, an inscribed one each farther than r: that excludes moves m by a plane
// for each point or pair. What is left of a part is halved, and by the balance of the contacts about the new middle, its
// second order included, no cylinder in it may be better by more than Bound in the end. On a bore a few parts do, up to a
// hundred, and nothing is left.
type Certificate struct {
	contacts [mostContacts]Contact
	n        int

	// Reach is how far from the centre the contacts alone prove that no circle is better;
	// [units.MaxLength] for all the plane. Of a cylinder it is how far the axis may pass from this one,
	// at both ends of the wall, with contacts and points together excluding anything better than by Bound.
	Reach units.Length
	// Bound is how much better any other circle of the kind might be, wherever its centre: in
	// radius, or for a minimum zone in width. It is zero, to the picometre, unless the search ended
	// before it had excluded all else, which takes wild points or hundreds of thousands of them. Of a
	// cylinder it is how much better any whose axis passes within Reach might be; where the points do
	// not close up all round it is CYLt for a zone, since nothing is narrower than nothing, and
	// [units.MaxLength], which is no bound, for the others.
	Bound units.Length
	// Searched says that Reach was not enough, as on an arc, on a wild form, or for an inscribed
	// circle on two contacts nearly opposite, as in an oval bore; and that the rest was excluded by
	// halving boxes of centres. Check does not repeat that, so the certificate proves no more than
	// Reach. Of a cylinder it says that Bound is not zero, and that axes left open were tried.
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

// UnmarshalJSON reads what [Certificate.MarshalJSON] writes; more than six contacts are
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
