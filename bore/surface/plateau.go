// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Plateau is what the material ratio curve says of a wall that bears on plateaus and keeps oil in
// valleys: the parameters of ISO 13565-2 (ISO 21920-2, 4.5.3, where Mr1 and Mr2 are Rmrk1 and Rmrk2).
type Plateau struct {
	Rpk units.Length `json:"rpk,omitzero"` // reduced peak height: what is run in
	Rk  units.Length `json:"rk,omitzero"`  // core height: what bears
	Rvk units.Length `json:"rvk,omitzero"` // reduced valley depth: what holds oil
	Mr1 float64      `json:"mr1,omitzero"` // material ratio where the peaks end, 0 to 1
	Mr2 float64      `json:"mr2,omitzero"` // material ratio where the valleys begin, 0 to 1

	// Oil is what the valleys hold of oil over the area of the wall: Rvk·(1 − Mr2)/2, as a depth. Common
	// practice writes it in mm³/cm², of which 0.1 are a micrometre (V0, or Vo).
	Oil units.Length `json:"oil,omitzero"`

	// Top and Bottom are the ends of the equivalent straight line, at the ratios 0 and 1, from the mean
	// line: Top − Bottom is Rk.
	Top    units.Length `json:"top,omitzero"`
	Bottom units.Length `json:"bottom,omitzero"`
	From   float64      `json:"from,omitzero"` // the flattest 40 % of the curve: its lesser ratio
	// Core says where the five numbers mean little; nothing, where they are sound. A "flat core" has 40 % of the length
	// or more at one height: Rk is 0 by geometry, whatever the finish. "no core" is a curve that is steeper in its middle
	// than at both ends, as that of a sine.
	Core string `json:"core,omitzero"`
}

// What can be the matter with a core.
const (
	flatCore = "flat core"
	noCore   = "no core"
)

// String returns the five numbers in a line:
//
//	Rpk 0.23 µm, Rk 0.65 µm, Rvk 1.70 µm, Mr1 9.5 %, Mr2 83.6 %
func (p Plateau) String() string {
	text := fmt.Sprintf("Rpk %s, Rk %s, Rvk %s, Mr1 %s, Mr2 %s", fine(p.Rpk), fine(p.Rk), fine(p.Rvk), percent(p.Mr1), percent(p.Mr2))
	if p.Core != "" {
		text += " (" + p.Core + ")"
	}
	return text
}

func fine(l units.Length) string { return l.Format(units.Micrometre, 2) }

func percent(share float64) string { return fmt.Sprintf("%.1f %%", 100*share) }

const (
	coreShare = 0.40 // of the curve, that the equivalent line is laid through
	// steeper is how much steeper than either end the middle of a curve has to be to have no core, so
	// that a straight curve has one.
	steeper = 1.01
)

// Plateau returns the five numbers. The equivalent straight line is the least-squares line, in the
// direction of the heights, through the points of that 40 % of the curve over which it falls least, the
// first such where there are several; the triangles of Rpk and Rvk have the areas of the curve beyond the
// ends of that line (ISO 13565-2, from memory). Others take the chord of the 40 % for the line: of normally
// distributed heights of deviation 1 the first gives an Rk of 2.574, the second 2.622.
//
// A curve of one height, or of none, has zeros and a flat core.
func (c Curve) Plateau() Plateau {
	n := len(c.z)
	if n == 0 {
		return Plateau{Core: flatCore}
	}
	wide := max(1, int(math.Round(coreShare*float64(n))))
	fall := func(i int) float64 { return c.z[i] - c.z[min(i+wide, n-1)] }
	first, least := 0, fall(0)
	for i := 1; i+wide < n; i++ {
		if f := fall(i); f < least {
			first, least = i, f
		}
	}
	last := min(first+wide, n-1)
	middle := float64(first+last) / 2
	var mean, moment, square float64
	for i := first; i <= last; i++ {
		d := float64(i) - middle
		mean += c.z[i] / float64(last-first+1)
		moment += float64(d * c.z[i])
		square += float64(d * d)
	}
	slope := 0.0
	if square > 0 {
		slope = moment / square
	}
	p := Plateau{
		Top:    um(mean + float64(slope*(-0.5-middle))),
		Bottom: um(mean + float64(slope*(float64(n)-0.5-middle))),
		From:   (float64(first) + 0.5) / float64(n),
	}
	p.Rk = p.Top - p.Bottom
	half := min(max(0, (n-wide)/2), n-1)
	switch {
	case p.Rk == 0:
		p.Core = flatCore
	case fall(half) > steeper*max(fall(0), fall(max(0, n-1-wide))):
		p.Core = noCore
	}
	p.Mr1, p.Rpk = c.peaks(p.Top.In(units.Micrometre))
	p.Mr2, p.Rvk = c.valleys(p.Bottom.In(units.Micrometre))
	p.Oil = um(p.Rvk.In(units.Micrometre) * (1 - p.Mr2) / 2)
	return p
}

// peaks returns the ratio where the curve comes down to the top of the core, and the height of the triangle
// on it with the area of the curve above.
func (c Curve) peaks(top float64) (ratio float64, height units.Length) {
	n := float64(len(c.z))
	k := 0
	var area float64
	for ; k < len(c.z) && c.z[k] > top; k++ {
		area += c.z[k] - top
	}
	if k == 0 {
		return 0, 0
	}
	if k == len(c.z) {
		return 1, um(2 * area / n)
	}
	last := c.z[k-1] - top
	part := last / (c.z[k-1] - c.z[k])
	area -= float64(last*(1-part)) / 2
	width := float64(k) - 0.5 + part
	return roundShare(width / n), um(2 * area / width)
}

// valleys does the same at the other end.
func (c Curve) valleys(bottom float64) (ratio float64, depth units.Length) {
	n := float64(len(c.z))
	k := len(c.z)
	var area float64
	for ; k > 0 && c.z[k-1] < bottom; k-- {
		area += bottom - c.z[k-1]
	}
	if k == len(c.z) {
		return 1, 0
	}
	if k == 0 {
		return 0, um(2 * area / n)
	}
	last := bottom - c.z[k]
	part := last / (c.z[k-1] - c.z[k])
	area -= float64(last*(1-part)) / 2
	width := n - float64(k) - 0.5 + part
	return roundShare(1 - width/n), um(2 * area / width)
}

// roundShare rounds to 1e-9, so that every machine says the same.
func roundShare(x float64) float64 { return math.Round(x*1e9) / 1e9 }
