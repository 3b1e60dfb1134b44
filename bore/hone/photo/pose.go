// SPDX-License-Identifier: BSD-3-Clause

package photo

import "math"

// A pose is where a camera without distortion stands to the wall of a bore. The wall is unrolled: s runs
// round the bore and y along it, in millimetres from the middle of the label. In space the middle of the
// label is the origin, x along s there, z towards the axis:
//
//	x = R·sin(s/R)   y = y   z = R − R·cos(s/R)
//
// and the camera sees rot·(x, y, z) + shift, its own axes pointing to the right, down and ahead.
type pose struct {
	rot    [3]space
	shift  space
	focal  float64 // length, in pixels
	mid    Pixel   // where the axis of the lens meets the picture
	radius float64 // of the bore
}

// A space is a point or a direction in space.
type space [3]float64

func dot(a, b space) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

// onWall returns the point of space at the place (s, y) of the wall of a bore.
func onWall(radius, s, y float64) space {
	sin, cos := math.Sincos(s / radius)
	return space{radius * sin, y, radius - float64(radius*cos)}
}

// project returns where the place (s, y) of the wall stands in the picture; false where it is not ahead.
func (p *pose) project(s, y float64) (Pixel, bool) { return p.see(onWall(p.radius, s, y)) }

// see returns where a point of space stands in the picture; false where it is not ahead.
func (p *pose) see(at space) (Pixel, bool) {
	depth := dot(p.rot[2], at) + p.shift[2]
	if !(depth > 1e-6*p.radius) {
		return Pixel{}, false
	}
	f := p.focal / depth
	return Pixel{
		p.mid.X + float64(f*(dot(p.rot[0], at)+p.shift[0])),
		p.mid.Y + float64(f*(dot(p.rot[1], at)+p.shift[1])),
	}, true
}

// wall returns the place of the wall that stands at q: where the ray leaves the bore. It is false where the
// ray misses the bore or leaves it behind the camera.
func (p *pose) wall(q Pixel) (s, y float64, ok bool) {
	ray := space{(q.X - p.mid.X) / p.focal, (q.Y - p.mid.Y) / p.focal, 1}
	var from, to space // of the camera and the ray, in the space of the wall
	for i := range 3 {
		column := space{p.rot[0][i], p.rot[1][i], p.rot[2][i]}
		from[i], to[i] = -dot(column, p.shift), dot(column, ray)
	}
	from[2] -= p.radius // from the axis of the bore
	a := float64(to[0]*to[0]) + float64(to[2]*to[2])
	b := float64(from[0]*to[0]) + float64(from[2]*to[2])
	c := float64(from[0]*from[0]) + float64(from[2]*from[2]) - float64(p.radius*p.radius)
	root := float64(b*b) - float64(a*c)
	t := (math.Sqrt(root) - b) / a
	if !(t > 0) { // nor where the ray misses the wall, or runs along it: t is no number then
		return 0, 0, false
	}
	x, z := from[0]+float64(t*to[0]), from[2]+float64(t*to[2])
	return p.radius * math.Atan2(x, -z), from[1] + float64(t*to[1]), true
}

// A frame is how the picture moves with the wall: pixels to a millimetre round, and along.
type frame struct{ round, along Pixel }

// frame returns the frame at (s, y), by differences over a hundredth of a millimetre.
func (p *pose) frame(s, y float64) (frame, bool) {
	const h = 0.005
	r1, ok1 := p.project(s+h, y)
	r0, ok2 := p.project(s-h, y)
	a1, ok3 := p.project(s, y+h)
	a0, ok4 := p.project(s, y-h)
	return frame{
		Pixel{(r1.X - r0.X) / (2 * h), (r1.Y - r0.Y) / (2 * h)},
		Pixel{(a1.X - a0.X) / (2 * h), (a1.Y - a0.Y) / (2 * h)},
	}, ok1 && ok2 && ok3 && ok4
}

// area is that of a square millimetre, in square pixels; below 0 where the picture is mirrored.
func (f frame) area() float64 { return f.along.X*f.round.Y - f.round.X*f.along.Y }

// lean returns the lean on the wall of a line that runs in the picture along d, from −90° to 90°.
func (f frame) lean(d Pixel) float64 {
	det := float64(f.round.X*f.along.Y) - float64(f.along.X*f.round.Y)
	s := (float64(f.along.Y*d.X) - float64(f.along.X*d.Y)) / det
	y := (float64(f.round.X*d.Y) - float64(f.round.Y*d.X)) / det
	return math.Atan(y / s)
}

// direction returns the direction in the picture of a line on the wall with that lean.
func (f frame) direction(lean float64) Pixel {
	sin, cos := math.Sincos(lean)
	return Pixel{float64(f.round.X*cos) + float64(f.along.X*sin), float64(f.round.Y*cos) + float64(f.along.Y*sin)}
}

// tilt is the angle at the middle of the label between the ray that sees it and the square to the wall.
func (p *pose) tilt() float64 {
	towards := dot(space{p.rot[0][2], p.rot[1][2], p.rot[2][2]}, p.shift)
	return math.Acos(min(1, max(-1, -towards/math.Sqrt(dot(p.shift, p.shift)))))
}

// moved returns the pose after a small step: a turn about the camera's axes, a shift in parts of the
// distance, then the lens.
func (p pose) moved(d vector) pose {
	p.rot = turned(p.rot, space{d[0], d[1], d[2]})
	scale := math.Sqrt(dot(p.shift, p.shift))
	for i := range 3 {
		p.shift[i] += float64(d[3+i] * scale)
	}
	p.focal *= math.Exp(d[6])
	p.mid.X += d[7]
	p.mid.Y += d[8]
	return p
}

// turned returns rot turned by the vector v, by Rodrigues' formula.
func turned(rot [3]space, v space) [3]space {
	angle := math.Sqrt(dot(v, v))
	if angle == 0 {
		return rot
	}
	for i := range v {
		v[i] /= angle
	}
	sin, cos := math.Sincos(angle)
	var out [3]space
	for c := range 3 {
		x := space{rot[0][c], rot[1][c], rot[2][c]}
		cross := space{
			float64(v[1]*x[2]) - float64(v[2]*x[1]),
			float64(v[2]*x[0]) - float64(v[0]*x[2]),
			float64(v[0]*x[1]) - float64(v[1]*x[0]),
		}
		along := dot(v, x) * (1 - cos)
		for i := range 3 {
			out[i][c] = float64(x[i]*cos) + float64(cross[i]*sin) + float64(v[i]*along)
		}
	}
	return out
}
