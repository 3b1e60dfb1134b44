// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"image"
	"image/color"
	"math"
)

// Picture returns the photograph as it was measured, with what was left out in red, the label outlined, and
// short lines of the two families as they were found, up to the right in light blue and down in yellow: they should
// lie along those of the wall. It is nil for a zero Measured.
func (m Measured) Picture() image.Image {
	if m.view == nil {
		return nil
	}
	v := m.view
	out := image.NewRGBA(image.Rect(0, 0, v.grey.w, v.grey.h))
	for i, b := range v.grey.pix {
		c := color.RGBA{uint8(b), uint8(b), uint8(b), 255}
		if v.weight[i] == 0 {
			c = color.RGBA{uint8(128 + b/2), uint8(b / 2), uint8(b / 2), 255}
		}
		out.SetRGBA(i%v.grey.w, i/v.grey.w, c)
	}
	line := func(a, b Pixel, c color.RGBA) {
		n := int(math.Ceil(max(math.Abs(b.X-a.X), math.Abs(b.Y-a.Y), 1)))
		for i := range n + 1 {
			t := float64(i) / float64(n)
			out.SetRGBA(int(a.X+float64((b.X-a.X)*t)), int(a.Y+float64((b.Y-a.Y)*t)), c)
		}
	}
	for i, q := range v.sight.corners {
		line(q, v.sight.corners[(i+1)%4], color.RGBA{0, 200, 0, 255})
	}
	up, down := float64(m.Leans[0]), float64(m.Leans[1])
	for _, s := range strands(v.pose(), v.used, up, down) {
		for k, d := range [2]Pixel{s.up, s.down} {
			half := 0.02 * float64(v.grey.w) / math.Hypot(d.X, d.Y)
			c := [2]color.RGBA{{0, 230, 255, 255}, {255, 220, 0, 255}}[k]
			line(Pixel{s.at.X - float64(half*d.X), s.at.Y - float64(half*d.Y)}, Pixel{s.at.X + float64(half*d.X), s.at.Y + float64(half*d.Y)}, c)
		}
	}
	return out
}
