// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"errors"
	"fmt"
	"image"
	"image/color"
	"math"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
)

// A wall drawn by rule: lines that lean by 22.5° up and down, seen from so far that the picture is flat, with a
// label of 8 by 4 mm, 20 pixels to a millimetre.
func ExampleShot_Crosshatch() {
	img := image.NewGray(image.Rect(0, 0, 480, 360))
	sin, cos := math.Sincos(22.5 * math.Pi / 180)
	for y := range 360 {
		for x := range 480 {
			g := 150.0
			for i, side := range [2]float64{sin, -sin} {
				// How far the pixel is along the square to the lines, whose distances vary.
				at := (float64(x)*side + float64(y)*cos) / 5
				g -= 25 * math.Pow(math.Sin(at+math.Sin(0.37*at+float64(i))), 8)
			}
			if x >= 160 && x < 320 && y >= 140 && y < 220 {
				g = 230
			}
			img.SetGray(x, y, color.Gray{uint8(g)})
		}
	}
	shot := photo.Shot{
		Picture: img, Bore: 400 * units.Millimetre, Focal: 40000, Whole: true,
		Label:   photo.Label{Round: 8 * units.Millimetre, Along: 4 * units.Millimetre},
		Corners: [4]photo.Pixel{{X: 160, Y: 140}, {X: 320, Y: 140}, {X: 320, Y: 220}, {X: 160, Y: 220}},
	}
	m, err := shot.Crosshatch()
	fmt.Println(m.Crosshatch.Format(0), err)

	// The same lines leaning one way only.
	for y := range 360 {
		for x := range 480 {
			if y >= 140 && y < 220 && x >= 160 && x < 320 {
				continue
			}
			at := (float64(x)*sin + float64(y)*cos) / 5
			img.SetGray(x, y, color.Gray{uint8(150 - 25*math.Pow(math.Sin(at+math.Sin(0.37*at)), 8))})
		}
	}
	_, err = shot.Crosshatch()
	fmt.Println(errors.Is(err, photo.ErrFamilies), err)
	// Output:
	// 45° included <nil>
	// true photo: not two families of lines: lines lean by 22°, and none enough the other way
}
