// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"math"
)

// cross is twice the area of the triangle a, b, c, above 0 where they go clockwise in the picture.
func cross(a, b, c Pixel) float64 {
	return float64((b.X-a.X)*(c.Y-a.Y)) - float64((b.Y-a.Y)*(c.X-a.X))
}

// inside reports whether q lies in the four-sided figure, its corners clockwise.
func inside(c [4]Pixel, q Pixel) bool {
	for i := range 4 {
		if cross(c[i], c[(i+1)%4], q) < 0 {
			return false
		}
	}
	return true
}

// grown returns the figure with every corner moved away from its middle.
func grown(c [4]Pixel, factor, more float64) [4]Pixel {
	var mid Pixel
	for _, q := range c {
		mid.X += q.X / 4
		mid.Y += q.Y / 4
	}
	for i, q := range c {
		dx, dy := q.X-mid.X, q.Y-mid.Y
		k := factor + more/math.Hypot(dx, dy)
		c[i] = Pixel{mid.X + float64(dx*k), mid.Y + float64(dy*k)}
	}
	return c
}

// leastLabel is the shortest side of a label in the picture, in pixels.
const leastLabel = 20

// checkCorners refuses corners that no label seen from within a bore can have in a picture of w by h.
func checkCorners(c [4]Pixel, w, h float64) error {
	for i, q := range c {
		if !(q.X >= 0 && q.Y >= 0 && q.X <= w && q.Y <= h) {
			return fmt.Errorf("photo: corner %d at (%.4g, %.4g): %w: want it in the picture of %v by %v pixels",
				i+1, q.X, q.Y, ErrCorners, w, h)
		}
	}
	turns := 0
	for i := range 4 {
		switch x := cross(c[i], c[(i+1)%4], c[(i+2)%4]); {
		case x > 0:
			turns++
		case x < 0:
			turns--
		}
	}
	switch {
	case turns == -4:
		return fmt.Errorf("photo: %w: they go round anticlockwise: mark them clockwise, or the picture is mirrored", ErrCorners)
	case turns != 4:
		return fmt.Errorf("photo: %w: they are crossed, or one lies within the others: mark them in their order round the label", ErrCorners)
	}
	for i := range 4 {
		a, b := c[i], c[(i+1)%4]
		if d := math.Hypot(b.X-a.X, b.Y-a.Y); d < leastLabel {
			return fmt.Errorf("photo: side %d of the label is %.3g pixels: %w: want %d or more", i+1, d, ErrSmall, leastLabel)
		}
	}
	return nil
}
