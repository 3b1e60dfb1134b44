// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"image"
	"image/color"

	"borewright.example/units"
)

// A picture is read at no more than mostSide pixels a side, each the mean of a square of the given ones, of
// which it takes mostTaken rows and columns: what a picture costs does not grow with what it claims to be.
const (
	mostSide  = 1500
	mostTaken = 2
	mostGiven = 1 << 16
	leastSide = 200
)

// Brightness at and beyond which a pixel says nothing, of 255.
const (
	glare = 250
	black = 3
)

// A grey is a picture as brightness, 0 to 255, a row after the other.
type grey struct {
	w, h int
	step float64 // given pixels to one of these
	pix  []float32
}

// readGrey reads the picture.
func readGrey(img image.Image) (*grey, error) {
	if img == nil {
		return nil, fmt.Errorf("photo: picture: %w", units.ErrNotGiven)
	}
	box := img.Bounds()
	w, h := box.Dx(), box.Dy()
	if box.Empty() || w <= 0 || h <= 0 || w > mostGiven || h > mostGiven {
		return nil, fmt.Errorf("photo: picture of %d by %d pixels: %w: want up to %d a side", w, h, units.ErrRange, mostGiven)
	}
	if min(w, h) < leastSide {
		return nil, fmt.Errorf("photo: picture of %d by %d pixels: %w: want %d or more a side", w, h, ErrSmall, leastSide)
	}
	k := (max(w, h) + mostSide - 1) / mostSide
	g := &grey{w: w / k, h: h / k, step: float64(k)}
	if min(g.w, g.h) < leastSide/2 {
		return nil, fmt.Errorf("photo: picture of %d by %d pixels: %w: it is too long for its width", w, h, ErrSmall)
	}
	g.pix = make([]float32, g.w*g.h)
	take := min(k, mostTaken)
	sample, err := sampler(img)
	if err != nil {
		return nil, err
	}
	for y := range g.h {
		for x := range g.w {
			var sum float32
			for j := range take {
				v := box.Min.Y + y*k + j*k/take
				for i := range take {
					sum += sample(box.Min.X+x*k+i*k/take, v)
				}
			}
			g.pix[y*g.w+x] = sum / float32(take*take)
		}
	}
	return g, nil
}

// sampler returns how to read the brightness of one pixel, and refuses a picture whose pixels do not fill its
// bounds.
func sampler(img image.Image) (func(x, y int) float32, error) {
	box := img.Bounds()
	// Offsets grow evenly along rows and columns: if those of the corners hold, all do.
	short := func(offset func(x, y int) int, length int) bool {
		for _, x := range [2]int{box.Min.X, box.Max.X - 1} {
			for _, y := range [2]int{box.Min.Y, box.Max.Y - 1} {
				if i := offset(x, y); i < 0 || i >= length {
					return true
				}
			}
		}
		return false
	}
	var bad bool
	switch p := img.(type) {
	case *image.YCbCr:
		bad = short(p.YOffset, len(p.Y))
	case *image.Gray:
		bad = short(p.PixOffset, len(p.Pix))
	case *image.RGBA:
		bad = short(p.PixOffset, len(p.Pix)-3)
	case *image.NRGBA:
		bad = short(p.PixOffset, len(p.Pix)-3)
	}
	if bad {
		return nil, fmt.Errorf("photo: picture: %w: its pixels do not fill its bounds of %v", units.ErrRange, box)
	}
	return reader(img), nil
}

// reader reads without an allocation the types that pictures come in.
func reader(img image.Image) func(x, y int) float32 {
	switch p := img.(type) {
	case *image.YCbCr:
		return func(x, y int) float32 { return float32(p.Y[p.YOffset(x, y)]) }
	case *image.Gray:
		return func(x, y int) float32 { return float32(p.Pix[p.PixOffset(x, y)]) }
	case *image.RGBA:
		return func(x, y int) float32 {
			c := p.Pix[p.PixOffset(x, y):][:3:3]
			return luma(uint32(c[0]), uint32(c[1]), uint32(c[2]))
		}
	case *image.NRGBA:
		return func(x, y int) float32 {
			c := p.Pix[p.PixOffset(x, y):][:4:4]
			if c[3] == 0 {
				return 0
			}
			return luma(uint32(c[0]), uint32(c[1]), uint32(c[2]))
		}
	}
	return func(x, y int) float32 {
		c := img.At(x, y)
		if c == nil {
			return 0
		}
		if g, ok := c.(color.Gray); ok {
			return float32(g.Y)
		}
		r, gr, b, _ := c.RGBA()
		return min(255, luma(min(r, 0xffff), min(gr, 0xffff), min(b, 0xffff))/257)
	}
}

// luma is the brightness of a colour, by the weights of JFIF.
func luma(r, g, b uint32) float32 {
	return float32(0.299*float32(r)) + float32(0.587*float32(g)) + float32(0.114*float32(b))
}

// besideBad is how far from a pixel that says nothing another is not trusted either.
const besideBad = 3

// flatten turns brightness into what stands out of its surroundings, in parts of them, and gives every pixel
// a weight: none under the label, in glare, in the black, and just beside them. Surroundings reach the given
// number of pixels each way. The light falls out, and with it whatever is wider than that.
func (g *grey) flatten(reach int, label [4]Pixel) (out, weight []float32) {
	w, h := g.w, g.h
	plane := make([]float32, w*h) // first of what says nothing, then of the light of the rest
	for i, v := range g.pix {
		if v <= black || v >= glare {
			plane[i] = 1
		}
	}
	low, high := label[0], label[0]
	for _, q := range label[1:] {
		low = Pixel{min(low.X, q.X), min(low.Y, q.Y)}
		high = Pixel{max(high.X, q.X), max(high.Y, q.Y)}
	}
	for y := max(0, int(low.Y)); y < min(h, int(high.Y)+1); y++ {
		for x := max(0, int(low.X)); x < min(w, int(high.X)+1); x++ {
			if inside(label, Pixel{float64(x) + 0.5, float64(y) + 0.5}) {
				plane[y*w+x] = 1
			}
		}
	}
	weight = make([]float32, w*h)
	bad := newSquare(plane, w, h, besideBad)
	for y := range h {
		for x, n := range bad.next() {
			if n == 0 {
				weight[y*w+x] = 1
			}
		}
	}
	for i, v := range g.pix {
		plane[i] = float32(weight[i] * v)
	}
	out = make([]float32, w*h)
	count, light := newSquare(weight, w, h, reach), newSquare(plane, w, h, reach)
	for y := range h {
		n, sum := count.next(), light.next()
		for x := range w {
			if i := y*w + x; weight[i] > 0 {
				out[i] = float32(max(-0.5, min(0.5, float64(float64(g.pix[i])*n[x])/sum[x]-1)))
			}
		}
	}
	return out, weight
}

// A square slides down a picture: for each pixel of a row, the sum of a plane over the square of pixels up to
// reach away. The plane must not change meanwhile. Sums of so few numbers of 24 digits are exact.
type square struct {
	plane       []float32
	w, h, reach int
	y           int       // the row that comes next
	columns     []float64 // sums of each column over the rows within reach
	sums        []float64
}

func newSquare(plane []float32, w, h, reach int) *square {
	s := &square{plane: plane, w: w, h: h, reach: reach, columns: make([]float64, w), sums: make([]float64, w)}
	for y := range min(reach, h) {
		s.count(y, 1)
	}
	return s
}

// count counts a row of the plane in, or out; rows outside the picture are nothing.
func (s *square) count(y int, sign float64) {
	if y < 0 || y >= s.h {
		return
	}
	for x, v := range s.plane[y*s.w : (y+1)*s.w] {
		s.columns[x] += float64(sign * float64(v))
	}
}

// next returns the sums of the next row, which the next call overwrites.
func (s *square) next() []float64 {
	s.count(s.y+s.reach, 1)
	s.count(s.y-s.reach-1, -1)
	s.y++
	var sum float64
	for _, v := range s.columns[:min(s.reach, s.w)] {
		sum += v
	}
	for x := range s.sums {
		if in := x + s.reach; in < s.w {
			sum += s.columns[in]
		}
		if out := x - s.reach - 1; out >= 0 {
			sum -= s.columns[out]
		}
		s.sums[x] = sum
	}
	return s.sums
}
