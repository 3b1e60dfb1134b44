// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Gap is a ring's end gap, measured with the ring square in a bore of known size. Both are
// sizes at 20 °C.
type Gap struct {
	Measured uncertainty.Estimate `json:"measured"` // the end gap; positive
	Bore     uncertainty.Estimate `json:"bore"`     // diameter of the bore where it was measured
}

// widest is the greatest end gap, as a part of the bore, that is taken for one. A ring's gap
// lying free is some 0.12 of its bore; a tenth in the bore is a slip of unit or a wrong ring.
const widest = 0.1

// Validate returns ErrOverlap where the gap is not positive, ErrSize where the bore is not, and
// ErrGap where the gap is more than a tenth of the bore.
func (g Gap) Validate() error {
	if err := g.Measured.Validate(); err != nil {
		return fmt.Errorf("rings: end gap: %w", err)
	}
	if err := checkBore(g.Bore); err != nil {
		return err
	}
	switch {
	case g.Measured.Value <= 0:
		return fmt.Errorf("rings: end gap %v: %w (a gap is more than 0)", g.Measured.Value, ErrOverlap)
	case g.Measured.Value > units.Length(widest*float64(g.Bore.Value)):
		return fmt.Errorf("rings: end gap %v in a bore of %v: %w (up to a tenth of the bore)", g.Measured.Value, g.Bore.Value, ErrGap)
	}
	return nil
}

func checkBore(bore uncertainty.Estimate) error {
	if err := bore.Validate(); err != nil {
		return fmt.Errorf("rings: bore: %w", err)
	}
	if bore.Value <= 0 {
		return fmt.Errorf("rings: bore %v: %w (more than 0)", bore.Value, ErrSize)
	}
	return nil
}

// In returns the end gap that the same ring has in another bore, given by its diameter at
// 20 °C: the gap changes by π times the change of diameter. The three uncertainties are taken as
// independent. A negative gap means that the ends would overlap by as much.
//
// The diameter of a bore that is not round is that of the round bore with the same
// circumference; see [Oval].
func (g Gap) In(bore uncertainty.Estimate) (uncertainty.Estimate, error) {
	if err := g.Validate(); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkBore(bore); err != nil {
		return uncertainty.Estimate{}, err
	}
	return linear(term{1, g.Measured}, term{math.Pi, bore}, term{-math.Pi, g.Bore})
}

// DiameterChange returns how much larger in diameter the bore is where the same ring's end gap
// is `to`, than where it was `from`: the growth of the gap divided by π. From two heights it is
// taper; from before and after honing, what came off the diameter.
func DiameterChange(from, to uncertainty.Estimate) (uncertainty.Estimate, error) {
	for _, g := range []uncertainty.Estimate{from, to} {
		if err := g.Validate(); err != nil {
			return uncertainty.Estimate{}, fmt.Errorf("rings: end gap: %w", err)
		}
		if g.Value <= 0 {
			return uncertainty.Estimate{}, fmt.Errorf("rings: end gap %v: %w (a gap is more than 0)", g.Value, ErrOverlap)
		}
	}
	return linear(term{1 / math.Pi, to}, term{-1 / math.Pi, from})
}
