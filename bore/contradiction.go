// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"cmp"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/mathext"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// contradiction is the chance below which repeats are held to contradict the repeatability that
// the gauge is said to have.
const contradiction = 0.01

// A Contradiction is a place whose repeats scatter more than the gauge's stated repeatability allows, at
// a chance of 1 in 100 over all places that were read more than once, or that scatters most where only all
// together do.
type Contradiction struct {
	Depth   units.Length `json:"depth,omitzero"` // from the deck
	Axis    Axis         `json:"axis,omitzero"`  // 0 up to 180°
	Shown   units.Length `json:"shown"`          // standard deviation of its repeats
	Stated  units.Length `json:"stated"`         // repeatability that the gauge is said to have
	Repeats int          `json:"repeats"`        // how many there are
}

// String says it in a line: "12 mm, thrust: 3 repeats scatter by 0.0120 mm, the gauge is said to repeat within
// 0.002 mm".
func (c Contradiction) String() string {
	return fmt.Sprintf("%v, %s: %d repeats scatter by %s, the gauge is said to repeat within %v",
		c.Depth, c.Axis, c.Repeats, c.Shown.Format(units.Millimetre, 4), c.Stated)
}

// exceeds reports whether a spread is more than a known scatter allows at a chance.
func exceeds(s uncertainty.Spread, known scatter, chance float64) bool {
	ratio := s.Std / known.std
	excess := s.DoF * float64(ratio*ratio)
	if known.dof > 0 {
		return mathext.RegIncBeta(known.dof/2, s.DoF/2, known.dof/(known.dof+excess)) < chance // of F
	}
	return mathext.GammaIncRegComp(s.DoF/2, excess/2) < chance // of chi-squared
}

// contradictions returns the places whose spread alone contradicts a repeatability, the worst first; where
// none does and all together do, the worst of them.
func contradictions(all []Contradiction, spreads []uncertainty.Spread, known scatter, together bool) ([]Contradiction, error) {
	var list []Contradiction
	var worst Contradiction
	stated, err := units.Of(known.std, units.Micrometre)
	if err != nil {
		return nil, err
	}
	for i, s := range spreads {
		c := all[i]
		c.Stated = stated
		if c.Shown, err = units.Of(s.Std, units.Micrometre); err != nil {
			return nil, err
		}
		if i == 0 || c.Shown > worst.Shown {
			worst = c
		}
		if exceeds(s, known, contradiction/float64(len(spreads))) {
			list = append(list, c)
		}
	}
	if list == nil && together {
		list = append(list, worst)
	}
	slices.SortStableFunc(list, func(a, b Contradiction) int { return cmp.Compare(b.Shown, a.Shown) })
	return list, nil
}
