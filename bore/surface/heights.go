// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"math"

	"borewright.example/units"
)

// Heights are the parameters of the roughness profile about its Gaussian mean line. All are of the whole
// length evaluated but Rz, Rp and Rv, which are means over its sections.
type Heights struct {
	Ra  units.Length `json:"ra,omitzero"`  // mean of |z| (ISO 21920-2, 4.2.2)
	Rq  units.Length `json:"rq,omitzero"`  // root of the mean of z² (4.2.3)
	Rz  units.Length `json:"rz,omitzero"`  // highest to lowest of a section, mean of all (4.2.7)
	Rt  units.Length `json:"rt,omitzero"`  // highest to lowest of all (4.2.6)
	Rp  units.Length `json:"rp,omitzero"`  // highest of a section above the mean line, mean of all (5.1)
	Rv  units.Length `json:"rv,omitzero"`  // lowest of a section below it, mean of all, positive (5.1)
	RSm units.Length `json:"rsm,omitzero"` // mean width of profile elements (ISO 4287, 4.3.1); 0 where there are no two
	Rsk float64      `json:"rsk,omitzero"` // skewness, a ratio: mean of z³ over Rq³ (4.2.4); negative for plateaus with valleys
	Rku float64      `json:"rku,omitzero"` // kurtosis, a ratio: mean of z⁴ over Rq⁴ (4.2.5); 3 for a normal distribution
	Rdq float64      `json:"rdq,omitzero"` // root mean square slope, a ratio (4.4)
}

// heights computes them, z being counted from the mean line.
func (r Roughness) heights() Heights {
	n := float64(len(r.z))
	var abs, squares, cubes, fourths, peaks, valleys float64
	highest, lowest := r.z[0], r.z[0]
	for s := range r.sections {
		section := r.z[s*len(r.z)/r.sections : (s+1)*len(r.z)/r.sections]
		peak, valley := section[0], section[0]
		for _, z := range section {
			if z > peak {
				peak = z
			} else if z < valley {
				valley = z
			}
			square := float64(z * z)
			abs, squares = abs+math.Abs(z), squares+square
			cubes, fourths = cubes+float64(square*z), fourths+float64(square*square)
		}
		peaks, valleys = peaks+peak, valleys-valley
		highest, lowest = max(highest, peak), min(lowest, valley)
	}
	q := math.Sqrt(squares / n)
	h := Heights{Ra: um(abs / n), Rq: um(q)}
	h.Rp, h.Rv = um(peaks/float64(r.sections)), um(valleys/float64(r.sections))
	h.Rz, h.Rt = um((peaks+valleys)/float64(r.sections)), um(highest-lowest)
	if h.Rq > 0 {
		h.Rsk, h.Rku = cubes/n/(q*q*q), fourths/n/(q*q*q*q)
	}
	h.Rdq = r.slope()
	h.RSm = r.spacing((peaks + valleys) / float64(r.sections))
	return h
}

func um(x float64) units.Length { return rounded(x, units.Micrometre) }

// slope returns the root mean square of slopes that are each fitted through seven points (ISO 4287, 3.2.9,
// note; from memory).
func (r Roughness) slope() float64 {
	var squares float64
	z := r.z
	for i := 3; i < len(z)-3; i++ {
		d := slopeAt(z, i)
		squares += float64(d * d)
	}
	const perMillimetre = 1000
	return math.Sqrt(squares/float64(len(z)-6)) / (r.step * perMillimetre)
}

// slopeAt returns the slope by the step at the fourth point or a later one, fitted through three points on either
// side.
func slopeAt(z []float64, i int) float64 {
	near := z[i-3:][:7]
	return (float64(45*(near[4]-near[2])) - float64(9*(near[5]-near[1])) + (near[6] - near[0])) / 60
}

// What is too small to be a profile element: a tenth of Rz in height, a hundredth of a section in width
// (ISO 4287, 4.3.1; from memory).
const (
	leastHeight = 0.10
	leastWidth  = 0.01
)

// spacing returns the mean distance of the places where the profile rises through the mean line from a
// valley to a peak that both count.
func (r Roughness) spacing(rz float64) units.Length {
	threshold := leastHeight * rz
	narrowest := leastWidth * float64(len(r.z)) / float64(r.sections)
	var first, last, through float64
	elements, low := -1, false
	for i := 1; i < len(r.z); i++ {
		a, b := r.z[i-1], r.z[i]
		if a < 0 && b >= 0 {
			through = float64(i-1) + a/(a-b)
		}
		switch {
		case b < -threshold:
			low = true
		case b > threshold && low:
			low = false
			if elements < 0 {
				first, last, elements = through, through, 0
			} else if through-last >= narrowest {
				last = through
				elements++
			}
		}
	}
	if elements < 1 {
		return 0
	}
	return rounded((last-first)/float64(elements)*r.step, units.Millimetre)
}
