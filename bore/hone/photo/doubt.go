// SPDX-License-Identifier: BSD-3-Clause

package photo

import "math"

// blocksStd is the standard uncertainty of the angle between two families by leaving out one block of the
// wall at a time (the jackknife), and its degrees of freedom.
func (c *chart) blocksStd(up, down float64) (std, dof float64) {
	var angles []float64
	var mean float64
	for out := range c.blocks {
		if c.roses[out].tiles == 0 {
			continue
		}
		p, _ := c.mean(func(i int) bool { return i != out })
		angles = append(angles, p.climb(up, astray)-p.climb(down, astray))
		mean += angles[len(angles)-1]
	}
	n := float64(len(angles))
	mean /= n
	var sum float64
	for _, a := range angles {
		sum += float64((a - mean) * (a - mean))
	}
	return math.Sqrt(sum * (n - 1) / n), n - 1
}

// astray is how far, in degrees, a part of the wall is followed from where the whole has a family.
const astray = 12.0

// shapeStd is the standard uncertainty from the shape of the peaks: how far the angle goes when they are
// smoothed half as much again.
func (c *chart) shapeStd(up, down float64) float64 {
	p := c.all.smooth(fine * 1.5)
	return math.Abs(p.climb(up, astray) - p.climb(down, astray) - (up - down))
}

// A strand is the two families at one place of the picture, by their directions there.
type strand struct{ at, up, down Pixel }

// strands follows families of those leans, in radians, into the picture.
func strands(p *pose, ts []tile, up, down float64) []strand {
	var out []strand
	for i := range ts {
		f, ok := p.frame(ts[i].s, ts[i].y)
		if q, seen := p.project(ts[i].s, ts[i].y); ok && seen {
			out = append(out, strand{q, f.direction(up), f.direction(down)})
		}
	}
	return out
}

// leans are the mean leans, in radians, that a pose makes of what the picture shows.
func (p *pose) leans(ss []strand) (up, down float64) {
	n := 0.0
	for _, one := range ss {
		s, y, ok := p.wall(one.at)
		if !ok {
			continue
		}
		if f, ok := p.frame(s, y); ok {
			up += f.lean(one.up)
			down += f.lean(one.down)
			n++
		}
	}
	return up / n, down / n
}

// angle is the angle between the mean leans in degrees.
func (p *pose) angle(ss []strand) float64 {
	up, down := p.leans(ss)
	return (up - down) * 180 / math.Pi
}

// lensStd returns the standard uncertainties of the angle, in degrees, from the corners, the focal length, where
// the axis of the lens meets the picture, and its distortion.
func (g *sight) lensStd(f *fitted, ss []strand) (corners, focal, middle, bend float64, err error) {
	moves, err := f.parts()
	if err != nil {
		return 0, 0, 0, 0, err
	}
	const part = 0.1 // of each: over a whole one the pose bends
	var square [residuals]float64
	for n, m := range moves {
		up, down := f.moved(m.times(part)), f.moved(m.times(-part))
		d := (up.angle(ss) - down.angle(ss)) / (2 * part)
		square[n] = float64(d * d)
	}
	for _, x := range square[:8] {
		corners += x
	}
	d := (g.bent(f, moves, ss, part*bendDoubt) - g.bent(f, moves, ss, -part*bendDoubt)) / (2 * part)
	return math.Sqrt(corners), math.Sqrt(square[8]), math.Sqrt(square[9] + square[10]), math.Abs(d), nil
}

// bent is the angle, in degrees, if the lens had that distortion: the pose follows the corners to where a lens
// without it would show them, and the strands go there too.
func (g *sight) bent(f *fitted, moves [residuals]vector, ss []strand, bend float64) float64 {
	straight := func(q Pixel) Pixel {
		x, y := q.X-f.mid.X, q.Y-f.mid.Y
		k := bend * (float64(x*x) + float64(y*y)) / float64(g.corner*g.corner)
		return Pixel{q.X + float64(k*x), q.Y + float64(k*y)}
	}
	var to vector
	for i, q := range g.corners {
		s := straight(q)
		to.add(moves[2*i].times((s.X - q.X) / g.marking))
		to.add(moves[2*i+1].times((s.Y - q.Y) / g.marking))
	}
	there := make([]strand, len(ss))
	for i, one := range ss {
		along := func(d Pixel) Pixel {
			const h = 0.01
			a, b := straight(Pixel{one.at.X - float64(h*d.X), one.at.Y - float64(h*d.Y)}), straight(Pixel{one.at.X + float64(h*d.X), one.at.Y + float64(h*d.Y)})
			return Pixel{b.X - a.X, b.Y - a.Y}
		}
		there[i] = strand{straight(one.at), along(one.up), along(one.down)}
	}
	moved := f.moved(to)
	return moved.angle(there)
}

// twice returns the mean of the angle over the poses that fit, each by how likely it is, and its standard
// deviation.
func twice(fs []fitted, ss []strand) (mean, std float64) {
	var total, sum, square float64
	for i := range fs {
		weight := math.Exp((fs[0].misfit - fs[i].misfit) / 2)
		a := fs[i].angle(ss)
		total += weight
		sum += float64(weight * a)
		square += float64(weight * a * a)
	}
	mean = sum / total
	return mean, math.Sqrt(max(0, square/total-float64(mean*mean)))
}
