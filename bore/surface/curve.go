// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"math"
	"slices"
	"sort"

	"borewright.example/units"
)

// A Curve is the material ratio curve of a roughness profile (ISO 13565-2, ISO 21920-2, 4.5.1): the heights
// from the highest down, over the share of the length that lies as high or higher. Of n heights the i-th
// stands at the share (i − ½)/n; between them the curve is straight.
type Curve struct {
	z []float64 // µm, whole picometres, highest first
}

// Curve returns the material ratio curve of a roughness profile.
func (r Roughness) Curve() Curve {
	keys := make([]int64, len(r.z))
	for i, z := range r.z {
		keys[i] = int64(um(z))
	}
	sortDown(keys)
	c := Curve{z: make([]float64, len(keys))}
	for i, k := range keys {
		c.z[i] = units.Length(k).In(units.Micrometre)
	}
	return c
}

// sortDown sorts the greatest first, a digit at a time from the least (radix sort): four times as fast as
// comparing, on the some thousand heights of a profile.
func sortDown(keys []int64) {
	if len(keys) == 0 {
		return
	}
	most := slices.Max(keys)
	span := uint64(most - slices.Min(keys))
	const bits = 11
	other := make([]int64, len(keys))
	a, b := keys, other
	for shift := 0; shift < 64 && span>>shift > 0; shift += bits {
		var starts [1 << bits]int
		digit := func(k int64) uint64 { return uint64(most-k) >> shift & (1<<bits - 1) }
		for _, k := range a {
			starts[digit(k)]++
		}
		at := 0
		for i, count := range starts {
			starts[i], at = at, at+count
		}
		for _, k := range a {
			d := digit(k)
			b[starts[d]] = k
			starts[d]++
		}
		a, b = b, a
	}
	if len(a) > 0 && &a[0] != &keys[0] {
		copy(keys, a)
	}
}

// Ratio returns the material ratio Rmr(c) at a level counted from the mean line, up positive: the share of
// the length, 0 to 1, that is as high or higher (ISO 21920-2, 4.5.2). To count from a reference line at a
// share of 5 %, as drawings do, ask for c.Ratio(c.Height(0.05) − depth). An empty curve has 0.
func (c Curve) Ratio(level units.Length) float64 {
	return c.share(level.In(units.Micrometre))
}

// above returns how many heights are at a level or higher, and of the step down to the next how much lies
// above the level.
func (c Curve) above(level float64) (k int, part float64) {
	k = sort.Search(len(c.z), func(i int) bool { return c.z[i] < level })
	if k > 0 && k < len(c.z) {
		part = (c.z[k-1] - level) / (c.z[k-1] - c.z[k])
	}
	return k, part
}

func (c Curve) share(level float64) float64 {
	switch k, part := c.above(level); k {
	case 0:
		return 0
	case len(c.z):
		return 1
	default:
		return (float64(k) - 0.5 + part) / float64(len(c.z))
	}
}

// Height returns the height over the mean line at a share of 0 to 1: the inverse of [Curve.Ratio]. A share
// beyond is taken for the nearest end, one that is no number for 0. An empty curve has 0.
func (c Curve) Height(share float64) units.Length {
	if len(c.z) == 0 {
		return 0
	}
	return um(c.at(share))
}

func (c Curve) at(share float64) float64 {
	n := len(c.z)
	t := float64(share*float64(n)) - 0.5
	if !(t > 0) {
		return c.z[0]
	}
	if t >= float64(n-1) {
		return c.z[n-1]
	}
	i := int(math.Floor(t))
	part := t - float64(i)
	return float64((1-part)*c.z[i]) + float64(part*c.z[i+1])
}
