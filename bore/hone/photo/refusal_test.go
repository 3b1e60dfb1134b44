// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"errors"
	"image"
	"image/color"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
)

// drawn is a wall by rule: families of those leans and depths, seen square from afar so that pixels are flat,
// 20 to a millimetre, beside a label of 8 by 4 mm.
func drawn(leans, depths []float64) photo.Shot {
	img := image.NewGray(image.Rect(0, 0, 480, 360))
	noise := rand.New(rand.NewPCG(1, 2))
	for y := range 360 {
		for x := range 480 {
			g := 150.0
			for i, lean := range leans {
				sin, cos := math.Sincos(lean * math.Pi / 180)
				at := (float64(x)*sin + float64(y)*cos) / 4
				g -= depths[i] * math.Pow(math.Sin(at+math.Sin(0.37*at+float64(i))), 8)
			}
			if x >= 160 && x < 320 && y >= 140 && y < 220 {
				g = 230
			}
			img.SetGray(x, y, color.Gray{uint8(g + 2*noise.Float64())})
		}
	}
	return photo.Shot{
		Picture: img, Bore: 400 * units.Millimetre, Focal: 40000, Whole: true,
		Label:   photo.Label{Round: 8 * units.Millimetre, Along: 4 * units.Millimetre},
		Corners: [4]photo.Pixel{{X: 160, Y: 140}, {X: 320, Y: 140}, {X: 320, Y: 220}, {X: 160, Y: 220}},
	}
}

// Every refusal by its name, each of a wall that has that and nothing else.
func TestRefusalsByName(t *testing.T) {
	rows := map[string]struct {
		shot photo.Shot
		want error
	}{
		"a crosshatch":        {drawn([]float64{30, -25}, []float64{30, 20}), nil},
		"nothing":             {drawn(nil, nil), photo.ErrFaint},
		"one family":          {drawn([]float64{25}, []float64{30}), photo.ErrFamilies},
		"a second too weak":   {drawn([]float64{30, -25}, []float64{30, 0.4}), photo.ErrFamilies},
		"both to one side":    {drawn([]float64{50, 20}, []float64{30, 30}), photo.ErrFamilies},
		"lopsided":            {drawn([]float64{50, -20}, []float64{30, 30}), photo.ErrFamilies},
		"too steep":           {drawn([]float64{75, -75}, []float64{30, 30}), photo.ErrFamilies},
		"turning":             {drawn([]float64{1}, []float64{30}), photo.ErrTurning},
		"turning, and one":    {drawn([]float64{40, -2}, []float64{30, 25}), photo.ErrTurning},
		"a third":             {drawn([]float64{30, -30, 60}, []float64{30, 25, 22}), photo.ErrFamilies},
		"a weak third passes": {drawn([]float64{30, -30, 60}, []float64{30, 25, 4}), nil},
	}
	// A second family in one corner alone: a scratch or two.
	corner := drawn([]float64{25}, []float64{30})
	both := drawn([]float64{25, -25}, []float64{30, 60}).Picture.(*image.Gray)
	for y := 240; y < 360; y++ {
		for x := 340; x < 480; x++ {
			corner.Picture.(*image.Gray).SetGray(x, y, both.GrayAt(x, y))
		}
	}
	rows["a family in one corner"] = struct {
		shot photo.Shot
		want error
	}{corner, photo.ErrFamilies}
	doubtful := drawn([]float64{30, -25}, []float64{30, 20})
	doubtful.Marking = 8
	rows["doubt"] = struct {
		shot photo.Shot
		want error
	}{doubtful, photo.ErrDoubt}
	for name, row := range rows {
		m, err := row.shot.Crosshatch()
		if !errors.Is(err, row.want) || (err != nil) != m.Crosshatch.IsZero() {
			t.Errorf("%s: %v, %v; want %v", name, m.Crosshatch, err, row.want)
		}
	}
}

// The rows and columns of a picture are a crosshatch of 90° to a label that stands at 45° in it: whatever lies
// along both is refused, whether the grid made it or a hone.
func TestGridOfPicture(t *testing.T) {
	for seed := range uint64(4) {
		s := plain()
		s.kind, s.roll, s.quality, s.noise = blank, 45, 30, 4+float64(seed)
		if m, err := s.shot().Crosshatch(); err == nil {
			t.Errorf("noise: %v", m.Crosshatch)
		}
	}
	s := plain()
	s.up, s.down, s.tilt, s.roll = 45, -45, 0, 45
	if m, err := s.shot().Crosshatch(); !errors.Is(err, photo.ErrFaint) {
		t.Errorf("lines along rows and columns: %v, %v", m.Crosshatch, err)
	}
	s = plain()
	s.up, s.down, s.tilt, s.roll = 45, -45, 0, 20
	m, err := s.shot().Crosshatch()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "the same, with the camera turned", included(m), 90, expanded(m))
}

// A hand that turns round within the picture leaves no one angle, and is told so, or gets a range.
func TestSwingByName(t *testing.T) {
	s := plain()
	s.kind, s.up, s.down, s.stroke, s.mid, s.tool = swinging, 40, -40, 60, 0.6, 30
	m, err := s.shot().Crosshatch()
	if err == nil && m.Min.IsZero() {
		lo, _, hi := s.span()
		t.Errorf("%v ± %.1f° of a wall that has %.0f° to %.0f°", m.Crosshatch, expanded(m), lo, hi)
	}
	t.Log(m.Min, m.Max, err)
}

// A label that leaves no wall to see.
func TestNoWall(t *testing.T) {
	shot := drawn([]float64{30, -25}, []float64{30, 20})
	shot.Corners = [4]photo.Pixel{{X: 10, Y: 60}, {X: 470, Y: 60}, {X: 470, Y: 290}, {X: 10, Y: 290}}
	if m, err := shot.Crosshatch(); !errors.Is(err, photo.ErrSmall) {
		t.Errorf("%v, %v", m.Crosshatch, err)
	}
}
