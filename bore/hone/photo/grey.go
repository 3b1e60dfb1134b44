// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"image"
	"image/color"
	"math"

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
	sample := sampler(img)
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

// sampler returns how to read the brightness of one pixel, without an allocation for the types that
// pictures come in.
func sampler(img image.Image) func(x, y int) float32 {
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

// flatten turns brightness into what stands out of its surroundings, in parts of them, and gives every pixel
// a weight: none under the label, in glare, in the black, and just beside them. Surroundings reach the given
// number of pixels each way. The light falls out, and with it whatever is wider than that.
func (g *grey) flatten(reach int, label [4]Pixel) (out, weight []float32) {
	w, h := g.w, g.h
	weight = make([]float32, w*h)
	for i, v := range g.pix {
		if v > black && v < glare {
			weight[i] = 1
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
				weight[y*w+x] = 0
			}
		}
	}
	bad := newSums(w, h, func(i int) float64 { return float64(1 - weight[i]) })
	for y := range h {
		for x := range w {
			if bad.around(x, y, 3) > 0 {
				weight[y*w+x] = 0
			}
		}
	}
	count := newSums(w, h, func(i int) float64 { return float64(weight[i]) })
	light := newSums(w, h, func(i int) float64 { return float64(weight[i] * g.pix[i]) })
	out = make([]float32, w*h)
	for y := range h {
		for x := range w {
			i := y*w + x
			if weight[i] == 0 {
				continue
			}
			n := count.around(x, y, reach)
			mean := light.around(x, y, reach) / n
			out[i] = float32(math.Max(-0.5, math.Min(0.5, float64(g.pix[i])/mean-1)))
		}
	}
	return out, weight
}

// sums is a table of what lies above and to the left of each pixel.
type sums struct {
	w, h  int
	total []float64
}

func newSums(w, h int, value func(i int) float64) *sums {
	s := &sums{w, h, make([]float64, (w+1)*(h+1))}
	for y := range h {
		var row float64
		for x := range w {
			row += value(y*w + x)
			s.total[(y+1)*(w+1)+x+1] = s.total[y*(w+1)+x+1] + row
		}
	}
	return s
}

// around is the sum over the square of pixels up to reach away.
func (s *sums) around(x, y, reach int) float64 {
	x0, x1 := max(0, x-reach), min(s.w, x+reach+1)
	y0, y1 := max(0, y-reach), min(s.h, y+reach+1)
	n := s.w + 1
	return s.total[y1*n+x1] - s.total[y0*n+x1] - s.total[y1*n+x0] + s.total[y0*n+x0]
}
