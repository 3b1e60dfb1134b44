// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"image"
	"image/color"
	"math"

	"borewright.example/bore/hone/photo"
)

// A camera looks at the middle of the label on a sheet in a tube, by arithmetic of its own: lengths in mm,
// angles in degrees. Its lens bends: what an ideal lens would see at (1 + bend·r²) times the distance from the
// middle of the picture it sees at r, 1 at the corners of the picture.
type camera struct {
	bore, away, tilt, roll float64 // tilted down along the bore
	round, along           float64 // sides of the label
	w, h                   int
	f                      float64 // focal length in pixels
	bend                   float64

	shade   float64 // how much darker the corners are, in parts
	flicker float64 // how far the light of a lamp rolls from row to row, in parts
	noise   func() float64
}

// place returns which place of the wall a point of the picture sees, round and downwards from the middle of
// the label.
func (c *camera) place(x, y float64) (s, along float64) {
	sin, cos := math.Sincos(c.tilt * math.Pi / 180)
	turn, across := math.Sincos(c.roll * math.Pi / 180)
	u, v := x-float64(c.w)/2, y-float64(c.h)/2
	k := 1 + c.bend*c.out(x, y)
	u, v = k*u, k*v
	u, v = u*across+v*turn, v*across-u*turn
	// The wall is at z = R − √(R² − x²) before the camera's plane.
	rx, ry, rz := u/c.f, v/c.f, 1.0
	ry, rz = ry*cos-rz*sin, rz*cos+ry*sin
	oy, oz := c.away*sin, c.bore/2-c.away*cos // the axis of the tube at z = 0
	qa, qb, qc := rx*rx+rz*rz, oz*rz, oz*oz-c.bore*c.bore/4
	t := (-qb + math.Sqrt(qb*qb-qa*qc)) / qa
	return c.bore / 2 * math.Atan2(t*rx, oz+t*rz), oy + t*ry
}

// out is r² of a point of the picture.
func (c *camera) out(x, y float64) float64 {
	u, v := 2*x/float64(c.w)-1, 2*y/float64(c.h)-1
	w, h := float64(c.w), float64(c.h)
	return (u*u*w*w + v*v*h*h) / (w*w + h*h)
}

// corners returns where the corners of the label are seen: searched, not computed.
func (c *camera) corners() (out [4]photo.Pixel) {
	turn, across := math.Sincos(c.roll * math.Pi / 180)
	for i, at := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
		x, y := float64(c.w)/2, float64(c.h)/2
		for range 100 {
			s, along := c.place(x, y)
			du, dv := (at[0]*c.round/2-s)*c.f/c.away*0.8, (at[1]*c.along/2-along)*c.f/c.away*0.8
			x, y = x+du*across-dv*turn, y+dv*across+du*turn
		}
		out[i] = photo.Pixel{X: x, Y: y}
	}
	return out
}

// photograph takes the picture of a wall that is as dark as that, 0 to 1.
func (c *camera) photograph(dark func(x, y float64) float64) *image.Gray {
	img := image.NewGray(image.Rect(0, 0, c.w, c.h))
	for j := range c.h {
		for i := range c.w {
			g := 0.0
			for _, sub := range [4][2]float64{{0.25, 0.25}, {0.75, 0.25}, {0.25, 0.75}, {0.75, 0.75}} {
				s, y := c.place(float64(i)+sub[0], float64(j)+sub[1])
				g += 240.0 / 4
				if math.Abs(s) >= c.round/2 || math.Abs(y) >= c.along/2 {
					g -= 200 * dark(s, y) / 4
				}
			}
			x, y := float64(i)+0.5, float64(j)+0.5
			g *= (1 - c.shade*c.out(x, y)) * (1 + c.flicker*math.Sin(y/37))
			if c.noise != nil {
				g += c.noise()
			}
			img.SetGray(i, j, color.Gray{Y: uint8(max(0, min(255, g)))})
		}
	}
	return img
}
