// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
)

// A wallKind is what stands on a rendered wall.
type wallKind int

const (
	crosshatched wallKind = iota
	blank                 // noise alone
	oneFamily
	turned   // marks square to the axis
	swinging // a hand that slows towards the ends of its stroke
)

// A scene is a wall and its photograph, all of it known. Lengths are in mm, angles in degrees.
type scene struct {
	kind   wallKind
	rng    *rand.Rand
	width  int // of the picture in pixels; its height is three quarters of that
	height int

	bore, field float64 // field is how much of the wall the width of the picture holds, about
	focal       float64 // in widths of the picture
	tilt, to    float64 // of the camera, and to which side
	roll        float64
	labelRound  float64
	labelAlong  float64
	offX, offY  float64 // of the label from the middle of the picture, in parts of its width

	up, down  float64 // leans of the two families
	jitter    float64 // standard deviation of single lines about them
	spacing   float64 // of the lines of a family, square to them
	thickness float64 // of a groove, as the standard deviation of its profile
	depth     float64 // darkness of a mean groove, grey levels
	weaker    float64 // depth and number of the second family, in parts of the first
	length    float64 // of a line
	strays    float64 // share of lines that run anywhere
	noise     float64 // grey levels
	blur      float64 // pixels
	uneven    float64 // of the light, in parts
	glare     bool
	quality   int     // of JPEG; 0 is none
	marking   float64 // standard deviation of a corner's coordinate, pixels

	stroke, mid, tool float64 // of a swinging hand: where the picture lies in it, and how long the tool is
}

// draw returns an everyday scene of the kind, all by chance.
func draw(kind wallKind, seed uint64, least, most float64) *scene {
	r := rand.New(rand.NewPCG(seed, 0x9e3779b97f4a7c15))
	span := func(a, b float64) float64 { return a + r.Float64()*(b-a) }
	ratio := func(a, b float64) float64 { return a * math.Pow(b/a, r.Float64()) }
	s := &scene{kind: kind, rng: r}
	s.width = int(ratio(least, most))
	s.height = s.width * 3 / 4
	s.bore, s.field, s.focal = span(50, 120), span(10, 30), span(0.7, 2)
	s.tilt, s.to, s.roll = span(0, 30), span(0, 360), span(-20, 20)
	long := s.field * span(0.34, 0.45)
	short := long / span(1.6, 2.2)
	s.labelRound, s.labelAlong = long, short
	if r.IntN(2) == 0 {
		s.labelRound, s.labelAlong = short, long
	}
	s.offX, s.offY = span(-0.1, 0.1), span(-0.1, 0.1)
	half := span(20, 120) / 2
	skew := span(-1.5, 1.5)
	s.up, s.down = half+skew, -half+skew
	s.jitter = span(0, 1)
	perPixel := s.field / float64(s.width)
	s.spacing = max(ratio(0.05, 0.4), perPixel*span(4, 8))
	s.thickness = max(s.spacing*span(0.1, 0.25), 0.6*perPixel)
	s.depth, s.weaker, s.length = ratio(8, 40), span(0.5, 1), s.field*span(0.3, 1.5)
	s.strays, s.noise, s.blur, s.uneven = span(0, 0.3), span(1, 6), span(0.4, 1.3), span(0, 0.5)
	s.glare = r.IntN(3) == 0
	s.quality, s.marking = 50+r.IntN(46), 0.5
	s.stroke, s.mid, s.tool = span(60, 90), span(-0.8, 0.8), span(5, 40)
	return s
}

// included is the angle that is to be found.
func (s *scene) included() float64 { return s.up - s.down }

type triple [3]float64

func (a triple) plus(b triple, k float64) triple {
	return triple{a[0] + k*b[0], a[1] + k*b[1], a[2] + k*b[2]}
}
func (a triple) in(b triple) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func (a triple) cross(b triple) triple {
	return triple{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}
func (a triple) unit() triple { return triple{}.plus(a, 1/math.Sqrt(a.in(a))) }

// A camera looks from a point of space in which the axis of the bore is the third axis and the middle of
// the label is (R, 0, 0).
type camera struct {
	at, right, down, ahead triple
	f, cx, cy, radius      float64
}

func rad(deg float64) float64 { return deg * math.Pi / 180 }

// camera places the camera so that it looks at the label.
func (s *scene) camera() *camera {
	c := &camera{radius: s.bore / 2, f: s.focal * float64(s.width), cx: float64(s.width) / 2, cy: float64(s.height) / 2}
	away := s.focal * s.field
	middle := triple{c.radius, 0, 0}
	// Seen from inside, −x is out of the wall; tilt to the side "to".
	out := triple{-1, 0, 0}
	side := triple{0, math.Cos(rad(s.to)), math.Sin(rad(s.to))}
	dir := triple{}.plus(out, math.Cos(rad(s.tilt))).plus(side, math.Sin(rad(s.tilt)))
	c.at = middle.plus(dir, away)
	c.ahead = triple{}.plus(dir, -1)
	up := triple{0, 0, 1}
	c.right = c.ahead.cross(up).unit()
	c.down = c.ahead.cross(c.right)
	sin, cos := math.Sincos(rad(s.roll))
	c.right, c.down = triple{}.plus(c.right, cos).plus(c.down, sin), triple{}.plus(c.down, cos).plus(c.right, -sin)
	// Aim a little beside the label.
	shift := func(axis, with triple, d float64) (triple, triple) {
		sin, cos := math.Sincos(d)
		return triple{}.plus(axis, cos).plus(with, sin), triple{}.plus(with, cos).plus(axis, -sin)
	}
	c.ahead, c.right = shift(c.ahead, c.right, s.offX/s.focal)
	c.ahead, c.down = shift(c.ahead, c.down, s.offY/s.focal)
	return c
}

// see returns where a place on the wall stands in the picture: round counts to the right for one who looks
// at the wall with the deck, the third axis, up.
func (c *camera) see(round, along float64) (x, y float64) {
	a := -round / c.radius
	p := triple{c.radius * math.Cos(a), c.radius * math.Sin(a), along}.plus(c.at, -1)
	z := p.in(c.ahead)
	return c.cx + c.f*p.in(c.right)/z, c.cy + c.f*p.in(c.down)/z
}

// place returns which place of the wall a pixel sees.
func (c *camera) place(x, y float64) (round, along float64) {
	d := c.ahead.plus(c.right, (x-c.cx)/c.f).plus(c.down, (y-c.cy)/c.f)
	qa := d[0]*d[0] + d[1]*d[1]
	qb := c.at[0]*d[0] + c.at[1]*d[1]
	qc := c.at[0]*c.at[0] + c.at[1]*c.at[1] - c.radius*c.radius
	root := qb*qb - qa*qc
	if root < 0 {
		return math.NaN(), math.NaN()
	}
	t := (-qb + math.Sqrt(root)) / qa
	if t < 0 {
		return math.NaN(), math.NaN()
	}
	p := c.at.plus(d, t)
	return -c.radius * math.Atan2(p[1], p[0]), p[2]
}

// A texture is the wall unrolled, each cell how dark its grooves make it.
type texture struct {
	x0, y0, pitch float64
	w, h          int
	dark          []float32
}

// stretch darkens the stretch of a groove from (x, y), in mm, with that lean and length.
func (t *texture) stretch(x, y, lean, length, thick, dark float64) {
	sin, cos := math.Sincos(lean)
	x, y = (x-t.x0)/t.pitch, (y-t.y0)/t.pitch
	length, thick = length/t.pitch, max(thick/t.pitch, 0.4)
	steep := math.Abs(sin) > math.Abs(cos)
	if steep {
		x, y, sin, cos = y, x, cos, sin
	}
	if cos < 0 {
		x, y, sin, cos = x+length*cos, y+length*sin, -sin, -cos
	}
	w, h := t.w, t.h
	if steep {
		w, h = h, w
	}
	k := -0.5 * cos * cos / (thick * thick)
	reach, bend := 3*thick/cos, math.Exp(2*k)
	for i := max(0, int(math.Ceil(x))); i < min(w, int(math.Ceil(x+length*cos))); i++ {
		mid := y + (float64(i)-x)*sin/cos
		from := max(0, int(math.Ceil(mid-reach)))
		d := float64(from) - mid
		v, ratio := dark*math.Exp(k*d*d), math.Exp(k*(2*d+1)) // the next of a Gaussian by the last
		for j := from; j <= min(h-1, int(mid+reach)); j++ {
			if steep {
				t.dark[i*t.w+j] += float32(v)
			} else {
				t.dark[j*t.w+i] += float32(v)
			}
			v *= ratio
			ratio *= bend
		}
	}
}

// lines draws a family over the whole texture.
func (s *scene) lines(t *texture, lean, share float64) {
	r := s.rng
	w, h := float64(t.w)*t.pitch, float64(t.h)*t.pitch
	length := min(s.length, math.Hypot(w, h))
	n := int(share * (w + length) * (h + length) / (s.spacing * length))
	for range n {
		a := rad(lean + s.jitter*r.NormFloat64())
		if r.Float64() < s.strays {
			a = math.Pi * r.Float64()
		}
		x, y := t.x0-length/2+r.Float64()*(w+length), t.y0-length/2+r.Float64()*(h+length)
		dark := s.depth * share * min(3, r.ExpFloat64()+0.3) / 1.3 / 160
		t.stretch(x-length/2*math.Cos(a), y-length/2*math.Sin(a), a, length, s.thickness, dark)
	}
}

// swing draws the lines of a hand whose speed along is as the sine of its phase, in short stretches. The
// lean of one place follows from where it lies in the stroke of each part of the tool.
func (s *scene) swing(t *texture) {
	r := s.rng
	w, h := float64(t.w)*t.pitch, float64(t.h)*t.pitch
	length := min(s.length, math.Hypot(w, h))
	n := int((w + length) * (h + length) / (s.spacing * length))
	const step = 0.4
	for side, steepest := range []float64{s.up, s.down} {
		share := 1.0
		if side == 1 {
			share = s.weaker
		}
		for range int(float64(n) * share) {
			x, y := t.x0-length/2+r.Float64()*(w+length), t.y0-length/2+r.Float64()*(h+length)
			off := (r.Float64() - 0.5) * s.tool
			dark := s.depth * share * min(3, r.ExpFloat64()+0.3) / 1.3 / 160
			stray, any := r.Float64() < s.strays, math.Pi*r.Float64()
			for at := 0.0; at < length; at += step {
				a := rad(s.leanAt(y, off, steepest))
				if stray {
					a = any
				}
				t.stretch(x, y, a, step, s.thickness, dark)
				x, y = x+step*math.Cos(a), y+step*math.Sin(a)
			}
		}
	}
}

// leanAt is the lean at the place y of a line that the part off of the tool leaves.
func (s *scene) leanAt(y, off, steepest float64) float64 {
	where := min(0.98, math.Abs(s.mid+(y+off)/(s.stroke/2)))
	return math.Atan(math.Tan(rad(steepest))*math.Sqrt(1-where*where)) * 180 / math.Pi
}

// render returns the photograph and the corners as a person would mark them.
func (s *scene) render() (image.Image, [4]photo.Pixel) {
	c, r := s.camera(), s.rng
	lo, hi := [2]float64{math.Inf(1), math.Inf(1)}, [2]float64{math.Inf(-1), math.Inf(-1)}
	for i := range 21 {
		for j := range 21 {
			a, b := c.place(float64(s.width*i)/20, float64(s.height*j)/20)
			if math.IsNaN(a) {
				continue
			}
			for k, v := range [2]float64{a, b} {
				v = max(-2.5*s.field, min(2.5*s.field, v))
				lo[k], hi[k] = min(lo[k], v), max(hi[k], v)
			}
		}
	}
	t := &texture{x0: lo[0], y0: lo[1], pitch: s.field / float64(s.width)}
	t.w, t.h = int((hi[0]-lo[0])/t.pitch)+2, int((hi[1]-lo[1])/t.pitch)+2
	t.dark = make([]float32, t.w*t.h)
	switch s.kind {
	case crosshatched:
		s.lines(t, s.up, 1)
		s.lines(t, s.down, s.weaker)
	case oneFamily:
		s.lines(t, s.up, 1)
	case turned:
		s.lines(t, 0, 1)
	case swinging:
		s.swing(t)
	}
	sharp := make([]float32, s.width*s.height)
	gx, gy := s.uneven*(r.Float64()-0.5)*2, s.uneven*(r.Float64()-0.5)*2
	px, py := r.Float64(), r.Float64()
	const stride = 4 // over so few pixels the wall moves evenly, to some thousandths of one
	for y := range s.height {
		nextA, nextB := c.place(0.5, float64(y)+0.5)
		var a, b, da, db float64
		for x := range s.width {
			u, v := (float64(x)+0.5)/float64(s.width)-0.5, (float64(y)+0.5)/float64(s.height)-0.5
			light := 150 * (1 + gx*u + gy*v)
			if s.glare {
				if d := (u-px+0.5)*(u-px+0.5) + (v-py+0.5)*(v-py+0.5); d < 0.06 {
					light += 400 * math.Exp(-d/(2*0.05*0.05))
				}
			}
			if x%stride == 0 {
				a, b = nextA, nextB
				nextA, nextB = c.place(float64(x)+0.5+stride, float64(y)+0.5)
				da, db = (nextA-a)/stride, (nextB-b)/stride
			} else {
				a, b = a+da, b+db
			}
			g := 0.0
			switch {
			case math.IsNaN(a):
			case math.Abs(a) <= s.labelRound/2 && math.Abs(b) <= s.labelAlong/2:
				g = light * 1.5
			default:
				g = light * (1 - min(0.85, t.sample(a, b)))
			}
			sharp[y*s.width+x] = float32(g)
		}
	}
	soft := blurred(sharp, s.width, s.height, s.blur)
	img := image.NewGray(image.Rect(0, 0, s.width, s.height))
	for i, v := range soft {
		img.Pix[i] = uint8(max(0, min(255, math.Round(float64(v)+s.noise*r.NormFloat64()))))
	}
	var corners [4]photo.Pixel
	for i, k := range [4][2]float64{{-1, 1}, {1, 1}, {1, -1}, {-1, -1}} {
		x, y := c.see(k[0]*s.labelRound/2, k[1]*s.labelAlong/2)
		corners[i] = photo.Pixel{X: x + s.marking*r.NormFloat64(), Y: y + s.marking*r.NormFloat64()}
	}
	if s.quality == 0 {
		return img, corners
	}
	var b bytes.Buffer
	if err := jpeg.Encode(&b, img, &jpeg.Options{Quality: s.quality}); err != nil {
		panic(err)
	}
	back, err := jpeg.Decode(&b)
	if err != nil {
		panic(err)
	}
	return back, corners
}

// sample reads the texture between its cells.
func (t *texture) sample(x, y float64) float64 {
	x, y = (x-t.x0)/t.pitch, (y-t.y0)/t.pitch
	i, j := int(x), int(y)
	if x < 0 || y < 0 || i+1 >= t.w || j+1 >= t.h {
		return 0
	}
	u, v := float32(x-float64(i)), float32(y-float64(j))
	p := t.dark[j*t.w+i:]
	q := t.dark[(j+1)*t.w+i:]
	return float64((p[0]*(1-u)+p[1]*u)*(1-v) + (q[0]*(1-u)+q[1]*u)*v)
}

// blurred smooths by a Gaussian.
func blurred(p []float32, w, h int, sigma float64) []float32 {
	reach := int(math.Ceil(3 * sigma))
	k := make([]float32, 2*reach+1)
	var sum float32
	for i := range k {
		k[i] = float32(math.Exp(-0.5 * math.Pow(float64(i-reach)/sigma, 2)))
		sum += k[i]
	}
	mid, out := make([]float32, w*h), make([]float32, w*h)
	for y := range h {
		row := p[y*w : (y+1)*w]
		for i, f := range k {
			f /= sum
			for x := range reach {
				mid[y*w+x] += f * row[max(0, x+i-reach)]
				mid[y*w+w-1-x] += f * row[min(w-1, w-1-x+i-reach)]
			}
			out, in := mid[y*w+reach:(y+1)*w-reach], row[i:w-2*reach+i]
			for x, v := range in {
				out[x] += f * v
			}
		}
	}
	for y := range h {
		for i, f := range k {
			row := mid[max(0, min(h-1, y+i-reach))*w:]
			for x := range w {
				out[y*w+x] += f / sum * row[x]
			}
		}
	}
	return out
}

// shot is the picture with all that a person would say of it.
func (s *scene) shot() photo.Shot {
	img, corners := s.render()
	mm := func(x float64) units.Length {
		l, err := units.Of(x, units.Millimetre)
		if err != nil {
			panic(err)
		}
		return l
	}
	return photo.Shot{
		Picture: img, Bore: mm(s.bore), Whole: true, Corners: corners,
		Label: photo.Label{Round: mm(s.labelRound), Along: mm(s.labelAlong)},
	}
}
