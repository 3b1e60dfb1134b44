// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/dsp/fourier"
)

// A tile is a square of the unrolled wall that the spectrum is taken of.
type tile struct {
	s, y float64 // its middle, mm
	node [nodes + 1][nodes + 1]Pixel
}

// nodes is into how many parts a side of a tile is cut: within one the picture moves evenly with the wall.
const nodes = 4

// Tiles are the tiles of a picture: side pixels of pitch millimetres each way.
type tiles struct {
	side  int
	pitch float64
	all   []tile
	low   [2]float64 // least s and y
	high  [2]float64 // greatest
}

// part returns which block of the wall a tile lies in.
func (t *tiles) part(one *tile) int {
	strip := func(x float64, k int) int {
		return min(across-1, int(across*(x-t.low[k])/max(t.high[k]-t.low[k], 1e-9)))
	}
	return strip(one.y, 1)*across + strip(one.s, 0)
}

// leastShare is how much of a tile has to be seen and be neither label nor glare.
const leastShare = 0.7

// tileSide is the side of a tile for a picture with that shorter side: a smaller one would blur the
// directions, a larger one find no room beside the label.
func tileSide(shorter int) int {
	switch {
	case shorter < 400:
		return 64
	case shorter < 700:
		return 96
	}
	return 128
}

// layTiles lays tiles over the wall that the picture shows, each half over the next.
func layTiles(p *pose, w, h int) (tiles, error) {
	f, ok := p.frame(0, 0)
	if !ok || f.area() <= 0 {
		return tiles{}, fmt.Errorf("photo: %w: the label is not seen from within the bore", ErrCorners)
	}
	t := tiles{side: tileSide(min(w, h)), pitch: 1 / math.Sqrt(f.area()),
		low: [2]float64{math.Inf(1), math.Inf(1)}, high: [2]float64{math.Inf(-1), math.Inf(-1)}}
	const border = 16
	reach := 1.3 * p.radius // how far round is still seen at all
	lo, hi := [2]float64{reach, math.Inf(1)}, [2]float64{-reach, math.Inf(-1)}
	for i := range border + 1 {
		for _, q := range [4]Pixel{
			{float64(w) * float64(i) / border, 0}, {float64(w) * float64(i) / border, float64(h)},
			{0, float64(h) * float64(i) / border}, {float64(w), float64(h) * float64(i) / border},
		} {
			if s, y, ok := p.wall(q); ok {
				lo = [2]float64{min(lo[0], max(s, -reach)), min(lo[1], y)}
				hi = [2]float64{max(hi[0], min(s, reach)), max(hi[1], y)}
			}
		}
	}
	size := float64(t.side) * t.pitch
	const most = 40 // tiles a side: a wall seen at a grazing angle is cut there
	for i := -most; i <= most; i++ {
		for j := -most; j <= most; j++ {
			one := tile{s: float64(i) * size / 2, y: float64(j) * size / 2}
			if one.s-size/2 < lo[0] || one.s+size/2 > hi[0] || one.y-size/2 < lo[1] || one.y+size/2 > hi[1] {
				continue
			}
			if one.place(p, size, w, h, f.area()) {
				t.all = append(t.all, one)
				t.low = [2]float64{min(t.low[0], one.s), min(t.low[1], one.y)}
				t.high = [2]float64{max(t.high[0], one.s), max(t.high[1], one.y)}
			}
		}
	}
	return t, nil
}

// place finds where the tile stands in the picture; false where it is not whole there, or much nearer or
// farther than the label.
func (t *tile) place(p *pose, size float64, w, h int, area float64) bool {
	for j := range nodes + 1 {
		for i := range nodes + 1 {
			q, ok := p.project(t.s+float64(size*(float64(i)/nodes-0.5)), t.y+float64(size*(float64(j)/nodes-0.5)))
			if !ok || q.X < 1 || q.Y < 1 || q.X > float64(w)-2 || q.Y > float64(h)-2 {
				return false
			}
			t.node[j][i] = q
		}
	}
	f, ok := p.frame(t.s, t.y)
	return ok && f.area() > area/4 && f.area() < 4*area
}

// A transform takes the spectra of tiles.
type transform struct {
	side   int
	window []float64
	real   *fourier.FFT
	whole  *fourier.CmplxFFT
	cells  []float64
	rows   []complex128
	column []complex128
}

func newTransform(side int) *transform {
	t := &transform{side: side, real: fourier.NewFFT(side), whole: fourier.NewCmplxFFT(side)}
	t.window = make([]float64, side)
	for i := range t.window {
		t.window[i] = 1 - math.Cos(2*math.Pi*(float64(i)+0.5)/float64(side)) // Hann
	}
	t.cells, t.rows = make([]float64, side*side), make([]complex128, side*(side/2+1))
	t.column = make([]complex128, side)
	return t
}

// read samples the picture over a tile, and returns how much of it says something.
func (t *transform) read(one *tile, flat, weight []float32, w int) (share float64) {
	n := t.side / nodes
	var seen float32
	for j := range t.side {
		row := t.cells[j*t.side:]
		a, v := j/n, (float64(j%n)+0.5)/float64(n)
		for b := range nodes {
			p, q := one.node[a][b], one.node[a+1][b]
			x0, y0 := p.X+float64((q.X-p.X)*v), p.Y+float64((q.Y-p.Y)*v)
			p, q = one.node[a][b+1], one.node[a+1][b+1]
			x1, y1 := p.X+float64((q.X-p.X)*v), p.Y+float64((q.Y-p.Y)*v)
			dx, dy := (x1-x0)/float64(n), (y1-y0)/float64(n)
			x, y := x0+dx/2-0.5, y0+dy/2-0.5
			for i := b * n; i < (b+1)*n; i++ {
				at := int(y)*w + int(x)
				fx, fy := float32(x-float64(int(x))), float32(y-float64(int(y)))
				top := float32(flat[at]*(1-fx)) + float32(flat[at+1]*fx)
				low := float32(flat[at+w]*(1-fx)) + float32(flat[at+w+1]*fx)
				row[i] = float64(float32(top*(1-fy)) + float32(low*fy))
				seen += weight[at]
				x += dx
				y += dy
			}
		}
	}
	return float64(seen) / float64(t.side*t.side)
}

// power writes the power spectrum of the cells, side rows of side/2+1.
func (t *transform) power(power []float64) {
	half := t.side/2 + 1
	for j := range t.side {
		for i := range t.side {
			c := &t.cells[j*t.side+i]
			*c *= float64(t.window[j] * t.window[i])
		}
	}
	for j := range t.side {
		t.real.Coefficients(t.rows[j*half:(j+1)*half], t.cells[j*t.side:(j+1)*t.side])
	}
	for i := range lastRing(t.side) + 2 { // beyond, no ring reads
		for j := range t.side {
			t.column[j] = t.rows[j*half+i]
		}
		t.whole.Coefficients(t.column, t.column)
		for j, c := range t.column {
			power[j*half+i] = float64(real(c)*real(c)) + float64(imag(c)*imag(c))
		}
	}
}
