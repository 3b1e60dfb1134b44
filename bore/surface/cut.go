// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"fmt"

	"borewright.example/units"
)

// A Cut is a wall whose peaks have been taken off at one height, as plateau strokes aim to.
type Cut struct {
	// Stock is how far below the highest peak the cut is: what the phase of the strokes takes off the radius,
	// as package hone counts it, for a gauge rests on the peaks.
	Stock units.Length `json:"stock"`
	// Metal is the mean thickness that the strokes took, over the whole wall: the volume over the area. It
	// is what goes with pressure and time, and at first far less than the stock.
	Metal   units.Length `json:"metal"`
	Level   units.Length `json:"level"`   // height of the cut over the mean line that the uncut heights count from
	Ratio   float64      `json:"ratio"`   // of the wall, 0 to 1, that bears on plateaus now: the material ratio at the cut
	Plateau Plateau      `json:"plateau"` // what the five numbers become

	curve Curve
}

// Curve returns the material ratio curve of the wall as cut, its heights counted from where they were.
func (k Cut) Curve() Curve { return k.curve }

// Truncate cuts a wall so far below its highest peak. A stock below 0, or that leaves no valley, is
// [units.ErrRange], and an empty curve ErrPoints; so are they for the other cuts.
func (c Curve) Truncate(stock units.Length) (Cut, error) {
	if err := c.checkCut("stock", stock); err != nil {
		return Cut{}, err
	}
	return c.cut(c.z[0] - stock.In(units.Micrometre)), nil
}

// Remove cuts a wall by so much metal, as a mean thickness over the whole wall. Under the same pressure, speed
// and stones each stroke takes about the same metal (Preston's law, as package hone has it), and less stock
// than the one before, as more of the wall bears. More metal than stands above the lowest valley is
// [units.ErrRange]; other errors are those of [Curve.Truncate].
func (c Curve) Remove(metal units.Length) (Cut, error) {
	if err := c.checkCut("metal", metal); err != nil {
		return Cut{}, err
	}
	// Down to the k-th height the metal is the sum of what the heights before stand above it.
	want := metal.In(units.Micrometre) * float64(len(c.z))
	var above float64
	for k := 1; k < len(c.z); k++ {
		next := above + float64(float64(k)*(c.z[k-1]-c.z[k]))
		if next >= want {
			return c.cut(c.z[k-1] - (want-above)/float64(k)), nil
		}
		above = next
	}
	return Cut{}, fmt.Errorf("surface: metal %v: want less than stands above the lowest valley, %v: %w", metal, um(above/float64(len(c.z))), units.ErrRange)
}

// cutSteps is how many depths are looked at for a wanted Rpk before the first that reaches it is narrowed
// down.
const cutSteps = 256

// Reach returns the least cut that brings Rpk down to what is wanted: to the picometre, unless Rpk falls
// below it and rises again within 1/256 of the whole height. Where it is there already that is a cut of no
// stock. A wanted Rpk below 0 is [units.ErrRange].
func (c Curve) Reach(rpk units.Length) (Cut, error) {
	if err := c.checkCut("Rpk", 0); err != nil {
		return Cut{}, err
	}
	if rpk < 0 || rpk > units.MaxLength {
		return Cut{}, fmt.Errorf("surface: wanted Rpk %v: want 0 or more, up to %v: %w", rpk, units.MaxLength, units.ErrRange)
	}
	n := len(c.z)
	whole := um(c.z[0] - c.z[n-1])
	var over, reached units.Length // stocks between which Rpk comes down to what is wanted
	best := c.cut(c.z[0])
	for i := int64(1); best.Plateau.Rpk > rpk && i <= cutSteps; i++ {
		next, err := whole.MulDiv(i, cutSteps)
		if err != nil {
			return Cut{}, err
		}
		over, reached = reached, next
		best = c.cut(c.z[0] - reached.In(units.Micrometre))
	}
	for reached-over > 1 {
		middle := over + (reached-over)/2
		if k := c.cut(c.z[0] - middle.In(units.Micrometre)); k.Plateau.Rpk <= rpk {
			reached, best = middle, k
		} else {
			over = middle
		}
	}
	return best, nil
}

func (c Curve) checkCut(what string, l units.Length) error {
	if len(c.z) == 0 {
		return fmt.Errorf("surface: cut of a curve of no heights: %w", ErrPoints)
	}
	if whole := um(c.z[0] - c.z[len(c.z)-1]); l < 0 || l > whole {
		return fmt.Errorf("surface: %s %v: want 0 or more, up to the whole height, %v: %w", what, l, whole, units.ErrRange)
	}
	return nil
}

// cut lowers all above a level to it.
func (c Curve) cut(level float64) Cut {
	level = max(um(level).In(units.Micrometre), c.z[len(c.z)-1]) // as whole as the heights
	n := float64(len(c.z))
	left := Curve{z: make([]float64, len(c.z))}
	var metal float64
	for i, z := range c.z {
		left.z[i] = min(z, level)
		metal += z - left.z[i]
	}
	return Cut{
		Stock:   um(c.z[0] - level),
		Metal:   um(metal / n),
		Level:   um(level),
		Ratio:   roundShare(c.share(level)),
		Plateau: left.Plateau(),
		curve:   left,
	}
}
