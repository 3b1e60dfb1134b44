// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math"

	"borewright.example/internal/given"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Gap is a ring's end gap, measured with the ring square in a bore of known size. Both are
// lengths at 20 °C: from a gap read in a cold or a hot workshop take off [Warm.Change] at the temperatures of ring and
// bore, which in an aluminium barrel of 72 mm at 5 °C is −0.035 mm. Where ring and bore are of one metal there is
// nothing to take off.
type Gap struct {
	Measured uncertainty.Estimate `json:"measured"` // the end gap, more than 0
	Bore     uncertainty.Estimate `json:"bore"`     // diameter of the bore in which it was measured
}

// validate returns [units.ErrNotGiven] where gap or bore is zero, [units.ErrRange] where it is below that, or
// where the gap is more than a tenth of the bore. A ring's gap is some 0.12 of its bore
// when it lies free; a tenth and more in the bore is a slip of unit or another engine's ring.
func (g Gap) validate() error {
	if err := checkGap(g.Measured); err != nil {
		return err
	}
	if err := checkBore(g.Bore); err != nil {
		return err
	}
	if g.Measured.Value > g.Bore.Value/10 {
		return fmt.Errorf("rings: end gap %v in a bore of %v: %w (up to a tenth of the bore)", g.Measured.Value, g.Bore.Value, units.ErrRange)
	}
	return nil
}

func checkGap(gap uncertainty.Estimate) error {
	if err := gap.Validate(); err != nil {
		return fmt.Errorf("rings: end gap: %w", err)
	}
	if gap.Value <= 0 {
		return fmt.Errorf("rings: end gap %v: %w (a gap is more than 0)", gap.Value, given.Err(gap.Value))
	}
	return nil
}

func checkBore(bore uncertainty.Estimate) error {
	if err := bore.Validate(); err != nil {
		return fmt.Errorf("rings: bore: %w", err)
	}
	if bore.Value <= 0 {
		return fmt.Errorf("rings: bore %v: %w (more than 0)", bore.Value, given.Err(bore.Value))
	}
	return nil
}

// In returns the end gap that the same ring has in another bore, given by its diameter: the gap
// changes by π times the difference of the diameters. A negative gap means that the ends would
// overlap by as much.
//
// The uncertainties of the gap and of the two bores are taken as independent. Of two bores
// measured with one setting of one gauge that says too much, since the setting error cancels; in
// the bore where the gap was measured it is g.Measured, with no bore's uncertainty added. The
// diameter of a bore that is not round is that of [Oval.Round].
//
// A gap or bore of zero is [units.ErrNotGiven]; one below that, and a gap of more than a tenth of its bore, which
// is a slip of unit or another engine's ring, [units.ErrRange].
func (g Gap) In(bore uncertainty.Estimate) (uncertainty.Estimate, error) {
	if err := g.validate(); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkBore(bore); err != nil {
		return uncertainty.Estimate{}, err
	}
	var s sum
	s.add(1, g.Measured)
	s.add(math.Pi, bore)
	s.add(-math.Pi, g.Bore)
	return s.estimate()
}

// DiameterChange returns by how much the bore is larger in diameter where the end gap of a ring
// is to, than where the end gap of the same ring is from: the growth of the gap, divided by π.
// Between two heights that is taper, its sign kept; from before to after honing, what came off
// the diameter.
//
// The two uncertainties are taken as independent; what both gaps share cancels. A gap of zero is
// [units.ErrNotGiven], below that [units.ErrRange].
func DiameterChange(from, to uncertainty.Estimate) (uncertainty.Estimate, error) {
	for _, gap := range []uncertainty.Estimate{from, to} {
		if err := checkGap(gap); err != nil {
			return uncertainty.Estimate{}, err
		}
	}
	var s sum
	s.add(1/math.Pi, to)
	s.add(-1/math.Pi, from)
	return s.estimate()
}

// leafStep is from one leaf of a usual feeler gauge to the next.
const leafStep = 50 * units.Micrometre

// Feeler returns the gap between the thickest leaf that goes in and the thinnest that does not:
// the middle of the two, anywhere between them with equal probability (JCGM 100:2008 4.3.7).
// Refuses zero is one leaf alone, the thickest that goes in with a drag: what refuses is then taken to be the
// next of a usual set, 0.05 mm (0.002 in) thicker (common practice). Leaves that are not positive or not in
// this order are [units.ErrRange], no leaf that goes in [units.ErrNotGiven].
func Feeler(goes, refuses units.Length) (uncertainty.Estimate, error) {
	if refuses == 0 && goes <= units.MaxLength {
		refuses = goes + leafStep
	}
	if goes <= 0 || refuses <= goes || refuses > units.MaxLength {
		return uncertainty.Estimate{}, fmt.Errorf("rings: feeler leaves %v, which goes in, and %v, which does not: %w (0 < goes in < does not)", goes, refuses, given.Err(goes))
	}
	half := float64(refuses-goes) / 2
	s := sum{value: float64(goes) + half}
	s.doubt(uncertainty.Rectangular(half))
	return s.estimate()
}
