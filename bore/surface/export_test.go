// SPDX-License-Identifier: BSD-3-Clause

package surface

// The kernels, in steps and in µm.
var (
	Deviation = deviation
	SortDown  = sortDown
)

// MeanLine is the mean line by weights with a standard deviation of sigma steps, in a room that another profile has used.
func MeanLine(z []float64, sigma float64) []float64 {
	mean := make([]float64, len(z))
	for i := range mean {
		mean[i] = 1000 * float64(i*i)
	}
	var r room
	g := newGaussian(sigma)
	g.meanLine(mean, mean, &r)
	g.meanLine(mean, z, &r)
	return mean
}

// CurveOf is the curve of heights in µm, not rounded to picometres, the highest first.
func CurveOf(z []float64) Curve { return Curve{z: z} }

// Z are the heights of a profile in µm.
func (p Profile) Z() []float64 { return p.z }

// Z are the heights in µm, the highest first.
func (c Curve) Z() []float64 { return c.z }
