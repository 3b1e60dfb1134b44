// SPDX-License-Identifier: BSD-3-Clause

package photo

import "math"

// Directions are counted by the lean of the lines that make them: bin 0 is −90°.
const (
	bins    = 240
	binSize = 180.0 / bins // degrees
)

func leanOf(bin float64) float64 { return -90 + float64(bin*binSize) }
func binOf(lean float64) int     { return (int(math.Round((lean+90)/binSize))%bins + bins) % bins }

// A profile says of each direction how far it stands out of the others.
type profile [bins]float64

func (p *profile) add(o *profile, factor float64) {
	for b, x := range o {
		p[b] += float64(factor * x)
	}
}

// smooth returns the profile smoothed by a Gaussian of that standard deviation in degrees.
func (p *profile) smooth(degrees float64) (out profile) {
	reach := int(math.Ceil(3 * degrees / binSize))
	var kernel [bins]float64
	var sum float64
	for i := range 2*reach + 1 {
		x := float64(i-reach) * binSize / degrees
		kernel[i] = math.Exp(-x * x / 2)
		sum += kernel[i]
	}
	for b := range out {
		var v float64
		at := (b - reach + bins) % bins
		for _, f := range kernel[:2*reach+1] {
			v += float64(f * p[at])
			if at++; at == bins {
				at = 0
			}
		}
		out[b] = v / sum
	}
	return out
}

// How wide a profile is smoothed for a family of lines, and for the ground that families stand on.
const (
	fine  = 2.0
	broad = 20.0
)

// standing is the smoothed profile above its ground: what to find families in. The ground leans towards its
// peaks, so where a family lies is read without.
func (p *profile) standing() profile {
	out, ground := p.smooth(fine), p.smooth(broad)
	out.add(&ground, -1)
	return out
}

// A rose is a profile for each ring of frequencies, and how many tiles it is the sum of.
type rose struct {
	rings []profile
	tiles int
}

// The rings used, in periods to a tile: below the first lies the light, beyond the last what reading
// between pixels has smoothed.
const leastRing = 4

func lastRing(side int) int { return side*2/5 - 1 }
func ringsOf(side int) int  { return lastRing(side) - leastRing + 1 }

// A cell says where a place of a rose is read in a spectrum: between four numbers, at and at+1, next and
// next+1.
type cell struct {
	at, next int32
	u, v     float32
}

// A compass reads spectra by direction. Lines with a lean are waves square to it.
type compass struct {
	cells []cell // ring after ring
	row   profile
}

func newCompass(side int) *compass {
	c := &compass{cells: make([]cell, 0, ringsOf(side)*bins)}
	half := side/2 + 1
	for k := range ringsOf(side) {
		radius := float64(leastRing + k)
		for b := range bins {
			sin, cos := math.Sincos(leanOf(float64(b)) * math.Pi / 180)
			x, y := -float64(radius*sin), float64(radius*cos)
			if x < 0 {
				x, y = -x, -y
			}
			i, j := int(x), int(math.Floor(y))
			c.cells = append(c.cells, cell{
				int32((j+side)%side*half + i), int32((j+1+side)%side*half + i), float32(x - float64(i)), float32(y - float64(j)),
			})
		}
	}
	return c
}

// add adds the amplitudes of a spectrum to a rose, each over the mean of its ring: so a tile with one deep
// scratch counts no more than another.
func (c *compass) add(power []float64, r *rose) {
	r.tiles++
	for k := range r.rings {
		var mean float64
		for b, at := range c.cells[k*bins : (k+1)*bins] {
			i, j, u, v := at.at, at.next, float64(at.u), float64(at.v)
			low := power[i] + float64((power[i+1]-power[i])*u)
			high := power[j] + float64((power[j+1]-power[j])*u)
			x := math.Sqrt(low + float64((high-low)*v))
			c.row[b] = x
			mean += x
		}
		if mean /= bins; mean > 0 {
			for b, x := range c.row {
				r.rings[k][b] += x/mean - 1
			}
		}
	}
}

// trust returns what each ring counts: how much of its profile two halves of the wall have in common.
func trust(halves [2]rose) []float64 {
	raw := make([]float64, len(halves[0].rings))
	for k := range raw {
		a, b := halves[0].rings[k].standing(), halves[1].rings[k].standing()
		for i := range bins {
			raw[k] += float64(a[i] * b[i])
		}
	}
	out := make([]float64, len(raw))
	var sum float64
	for k := range raw {
		lo, hi := max(0, k-2), min(len(raw), k+3)
		for _, x := range raw[lo:hi] {
			out[k] += max(0, x) / float64(hi-lo)
		}
		sum += out[k]
	}
	for k := range out {
		if sum > 0 {
			out[k] /= sum
		} else {
			out[k] = 1 / float64(len(out))
		}
	}
	return out
}

// joined is the profile of all rings by what they count.
func (r *rose) joined(trust []float64) (p profile) {
	for k := range r.rings {
		p.add(&r.rings[k], trust[k])
	}
	return p
}

func newRose(side int) rose { return rose{rings: make([]profile, ringsOf(side))} }

func (r *rose) add(o *rose) {
	r.tiles += o.tiles
	for k := range r.rings {
		r.rings[k].add(&o.rings[k], 1)
	}
}
