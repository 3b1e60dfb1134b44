// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"errors"
	"image"
	"image/color"
	imagedraw "image/draw"
	"math"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
)

// plain is a clear wall of 50° included, seen at 20°.
func plain() *scene {
	s := draw(crosshatched, 42, 480, 480)
	s.width, s.height = 480, 360
	s.bore, s.field, s.focal, s.tilt, s.to, s.roll = 67, 20, 1.2, 20, 130, 12
	s.labelRound, s.labelAlong, s.offX, s.offY = 8, 5, 0.03, -0.04
	s.up, s.down, s.jitter, s.spacing, s.thickness, s.depth, s.weaker = 26, -24, 0.3, 0.25, 0.05, 30, 0.8
	s.length, s.strays, s.noise, s.blur, s.uneven, s.glare, s.quality, s.marking = 20, 0.1, 2, 0.6, 0.3, false, 0, 0.1
	return s
}

func measured(t *testing.T, s photo.Shot) photo.Measured {
	t.Helper()
	m, err := s.Crosshatch()
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func included(m photo.Measured) float64 { return m.Crosshatch.Included().In(units.Degree) }

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.4f, want %.4f ± %g", what, got, want, tolerance)
	}
}

// The angle, each lean, the tilt of the camera and the parts of the doubt of one clear wall.
func TestPlainWall(t *testing.T) {
	s := plain()
	shot := s.shot()
	m := measured(t, shot)
	u := expanded(m)
	near(t, "included", included(m), 50, u)
	near(t, "up", m.Leans[0].In(units.Degree), 26, u)
	near(t, "down", m.Leans[1].In(units.Degree), -24, u)
	near(t, "tilt", m.Tilt.In(units.Degree), 20, 2)
	if u > 1.2 || !m.Min.IsZero() {
		t.Errorf("± %.2f°, range %v to %v", u, m.Min, m.Max)
	}
	std, dof, err := m.Budget.Combined()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "std", m.Std.In(units.Degree), std, 1e-6)
	near(t, "degrees of freedom", m.DoF, dof, 1e-9)
	if len(m.Budget.Components) != 8 {
		t.Errorf("%d parts", len(m.Budget.Components))
	}
	// Of a small flat thing two tilts look nearly alike: one pose or two fit, from however many starts they were found.
	if n := photo.Poses(m); n < 1 || n > 2 {
		t.Errorf("%d poses", n)
	}
	if b := m.Picture().Bounds(); b.Dx() != s.width || b.Dy() != s.height {
		t.Errorf("picture %v", b)
	}
	if (photo.Measured{}).Picture() != nil {
		t.Error("a picture of nothing")
	}
}

// The picture of what was seen shows the label in red with a green outline, and lines along those of the wall: two
// pixels of a colour, 5 to 9 columns apart with a third between them, lie as the camera sees a line of that family.
// Rounding to pixels turns such a pair by up to 6°, and by less than 4° on the mean.
func TestPictureOfWhatWasSeen(t *testing.T) {
	s := plain()
	shot := s.shot()
	img, c := measured(t, shot).Picture(), s.camera()
	x, y := c.see(0, 0)
	if r, g, _, _ := img.At(int(x), int(y)).RGBA(); r < 2*g {
		t.Errorf("the label is %v, want red", img.At(int(x), int(y)))
	}
	for _, q := range shot.Corners {
		if got := img.At(int(q.X), int(q.Y)); got != (color.RGBA{0, 200, 0, 255}) {
			t.Errorf("a corner is %v, want green", got)
		}
	}
	// What is neither left out nor a line is the photograph, grey for grey.
	grey, off := 0, 0
	for y := range s.height {
		for x := range s.width {
			if c := img.At(x, y).(color.RGBA); c.R == c.G && c.G == c.B {
				was := color.GrayModel.Convert(shot.Picture.At(x, y)).(color.Gray)
				grey++
				off = max(off, int(c.R)-int(was.Y), int(was.Y)-int(c.R))
			}
		}
	}
	if grey < s.width*s.height/2 || off > 2 {
		t.Errorf("%d grey pixels of %d, off by %d", grey, s.width*s.height, off)
	}
	for want, lean := range map[color.RGBA]float64{{0, 230, 255, 255}: s.up, {255, 220, 0, 255}: s.down} {
		sin, cos := math.Sincos(rad(lean))
		pairs, off := 0, 0.0
		for y := range s.height {
			for x := range s.width {
				if img.At(x, y) != want {
					continue
				}
				round, along := c.place(float64(x)+0.5, float64(y)+0.5)
				u, v := c.see(round+0.1*cos, along+0.1*sin)
				line := math.Atan2(v-float64(y)-0.5, u-float64(x)-0.5)
				for i := 5; i <= 9; i++ {
					for j := -12; j <= 12; j++ {
						if img.At(x+i, y+j) == want && img.At(x+(i+1)/2, y+j/2) == want {
							off += math.Abs(math.Remainder(math.Atan2(float64(j), float64(i))-line, math.Pi)) / rad(1)
							pairs++
						}
					}
				}
			}
		}
		if off /= float64(pairs); pairs < 300 || !(off < 4) {
			t.Errorf("%d pairs of %v, off by %.1f° on the mean", pairs, want, off)
		}
	}
}

// Known to the camera alone: with corners marked well and a known focal length the tilt comes back.
func TestTilt(t *testing.T) {
	for _, tilt := range []float64{5, 25, 45} {
		for _, to := range []float64{90, 200} {
			s := plain()
			s.tilt, s.to, s.marking = tilt, to, 0.001
			shot := s.shot()
			shot.Focal, shot.Marking = s.focal*float64(s.width), 0.01
			m, err := shot.Crosshatch()
			if errors.Is(err, photo.ErrSmall) || errors.Is(err, photo.ErrSpread) {
				continue // little wall is seen so
			}
			if err != nil {
				t.Errorf("tilt %v to %v: %v", tilt, to, err)
				continue
			}
			// The label stands a little beside the middle of the picture, where the ray is another.
			near(t, "tilt", m.Tilt.In(units.Degree), tilt, 3.5)
			near(t, "included", included(m), 50, 1)
		}
	}
}

// A picture that is brighter, of another type, padded or turned round gives the same angle.
func TestSamePicture(t *testing.T) {
	shot := plain().shot()
	grey := shot.Picture.(*image.Gray)
	want := included(measured(t, shot))
	b := grey.Bounds()
	types := map[string]imagedraw.Image{
		"RGBA": image.NewRGBA(b), "NRGBA": image.NewNRGBA(b), "Gray16": image.NewGray16(b), "RGBA64": image.NewRGBA64(b), "CMYK": image.NewCMYK(b),
	}
	for name, img := range types {
		imagedraw.Draw(img, b, grey, image.Point{}, imagedraw.Src)
		other := shot
		other.Picture = img
		near(t, name, included(measured(t, other)), want, 0.02)
	}
	ycc := image.NewYCbCr(b, image.YCbCrSubsampleRatio420)
	for y := range b.Dy() {
		for x := range b.Dx() {
			ycc.Y[ycc.YOffset(x, y)] = grey.GrayAt(x, y).Y
		}
	}
	other := shot
	other.Picture = ycc
	near(t, "YCbCr", included(measured(t, other)), want, 1e-6)

	// A window of a larger picture, whose bounds do not begin at the origin.
	large := image.NewGray(image.Rect(0, 0, b.Dx()+70, b.Dy()+50))
	imagedraw.Draw(large, b.Add(image.Pt(40, 30)), grey, image.Point{}, imagedraw.Src)
	other.Picture = large.SubImage(b.Add(image.Pt(40, 30)))
	near(t, "window", included(measured(t, other)), want, 1e-6)

	// Half a turn of the camera, and half a turn of the label.
	turned := image.NewGray(b)
	for y := range b.Dy() {
		for x := range b.Dx() {
			turned.SetGray(b.Dx()-1-x, b.Dy()-1-y, grey.GrayAt(x, y))
		}
	}
	other.Picture = turned
	for i, q := range shot.Corners {
		other.Corners[i] = photo.Pixel{X: float64(b.Dx()) - q.X, Y: float64(b.Dy()) - q.Y}
	}
	near(t, "half a turn", included(measured(t, other)), want, 0.1)
	other = shot
	c := shot.Corners
	other.Corners = [4]photo.Pixel{c[2], c[3], c[0], c[1]}
	near(t, "label upside down", included(measured(t, other)), want, 0.1)

	// Seen in a mirror that is known: the leans change places.
	for y := range b.Dy() {
		for x := range b.Dx() {
			turned.SetGray(b.Dx()-1-x, y, grey.GrayAt(x, y))
		}
	}
	other.Picture = turned
	for i, k := range [4]int{1, 0, 3, 2} {
		other.Corners[i] = photo.Pixel{X: float64(b.Dx()) - c[k].X, Y: c[k].Y}
	}
	m, old := measured(t, other), measured(t, shot)
	near(t, "mirror", included(m), want, 0.1)
	near(t, "mirror up", float64(m.Leans[0]), -float64(old.Leans[1]), 0.002)

	// Twice the light and twice the depth of grooves.
	dim := image.NewGray(b)
	for i, v := range grey.Pix {
		dim.Pix[i] = v / 2
	}
	other = shot
	other.Picture = dim
	near(t, "half the light", included(measured(t, other)), want, 0.1)
}

// More that is known leaves less doubt; and absence of it is never taken for a proof.
func TestDoubtFollowsWhatIsKnown(t *testing.T) {
	s := plain()
	s.tilt = 8
	shot := s.shot()
	std := func(change func(*photo.Shot)) float64 {
		other := shot
		change(&other)
		return measured(t, other).Std.In(units.Degree)
	}
	base := std(func(*photo.Shot) {})
	if cropped := std(func(o *photo.Shot) { o.Whole = false }); !(cropped > base) {
		t.Errorf("not said to be whole ± %v, whole ± %v", cropped, base)
	}
	if sure := std(func(o *photo.Shot) { o.Focal = s.focal * float64(s.width) }); !(sure < base) {
		t.Errorf("with focal length ± %v, without ± %v", sure, base)
	}
	if loose := std(func(o *photo.Shot) { o.Marking = 1 }); !(loose > base) {
		t.Errorf("marked to a pixel ± %v, to half a one ± %v", loose, base)
	}
	if same := std(func(o *photo.Shot) { o.Marking = 0.5 }); same != base {
		t.Errorf("marked to half a pixel ± %v, not said ± %v", same, base)
	}
}

// What is not given, out of range, or marked wrongly.
func TestRefusedInput(t *testing.T) {
	good := plain().shot()
	rows := map[string]struct {
		change func(*photo.Shot)
		want   error
	}{
		"no picture":     {func(s *photo.Shot) { s.Picture = nil }, units.ErrNotGiven},
		"no bore":        {func(s *photo.Shot) { s.Bore = 0 }, units.ErrNotGiven},
		"no label":       {func(s *photo.Shot) { s.Label.Round = 0 }, units.ErrNotGiven},
		"half a label":   {func(s *photo.Shot) { s.Label.Along = 0 }, units.ErrNotGiven},
		"negative bore":  {func(s *photo.Shot) { s.Bore = -s.Bore }, units.ErrRange},
		"huge bore":      {func(s *photo.Shot) { s.Bore = units.MaxLength + 1 }, units.ErrRange},
		"label too wide": {func(s *photo.Shot) { s.Label.Round = s.Bore + 1 }, units.ErrRange},
		"bad marking":    {func(s *photo.Shot) { s.Marking = math.NaN() }, units.ErrRange},
		"no marking":     {func(s *photo.Shot) { s.Marking = 100 }, units.ErrRange},
		"bad focal":      {func(s *photo.Shot) { s.Focal = math.Inf(1) }, units.ErrRange},
		"negative focal": {func(s *photo.Shot) { s.Focal = -1 }, units.ErrRange},
		"mirrored":       {func(s *photo.Shot) { slices.Reverse(s.Corners[:]) }, photo.ErrCorners},
		"crossed":        {func(s *photo.Shot) { s.Corners[0], s.Corners[1] = s.Corners[1], s.Corners[0] }, photo.ErrCorners},
		"outside":        {func(s *photo.Shot) { s.Corners[2].X = 481 }, photo.ErrCorners},
		"not a number":   {func(s *photo.Shot) { s.Corners[3].Y = math.NaN() }, photo.ErrCorners},
		"all one": {func(s *photo.Shot) {
			s.Corners = [4]photo.Pixel{{X: 9, Y: 9}, {X: 9, Y: 9}, {X: 9, Y: 9}, {X: 9, Y: 9}}
		}, photo.ErrCorners},
		"quarter turn":   {func(s *photo.Shot) { s.Label.Round, s.Label.Along = s.Label.Along, s.Label.Round }, photo.ErrCorners},
		"corner by eye":  {func(s *photo.Shot) { s.Corners[1].X += 25 }, photo.ErrCorners},
		"square, unsaid": {func(s *photo.Shot) { s.Label.Along = s.Label.Round * 97 / 100 }, photo.ErrCorners},
		"tiny label": {func(s *photo.Shot) {
			s.Corners = [4]photo.Pixel{{X: 90, Y: 90}, {X: 108, Y: 90}, {X: 108, Y: 100}, {X: 90, Y: 100}}
		}, photo.ErrSmall},
		"one pixel":       {func(s *photo.Shot) { s.Picture = image.NewGray(image.Rect(0, 0, 1, 1)) }, photo.ErrSmall},
		"empty":           {func(s *photo.Shot) { s.Picture = image.NewGray(image.Rectangle{}) }, units.ErrRange},
		"a ribbon":        {func(s *photo.Shot) { s.Picture = colours{image.Rect(0, 0, 60000, 250), color.White} }, photo.ErrSmall},
		"short of pixels": {func(s *photo.Shot) { s.Picture = &image.Gray{Stride: 480, Rect: image.Rect(0, 0, 480, 360)} }, units.ErrRange},
		"a bad stride": {func(s *photo.Shot) {
			s.Picture = &image.RGBA{Pix: make([]byte, 480*360*4), Stride: -480 * 4, Rect: image.Rect(0, 0, 480, 360)}
		}, units.ErrRange},
		"beyond counting": {func(s *photo.Shot) { s.Picture = colours{image.Rect(math.MinInt, 0, math.MaxInt, 9), color.White} }, units.ErrRange},
	}
	for name, row := range rows {
		s := good
		row.change(&s)
		m, err := s.Crosshatch()
		if !errors.Is(err, row.want) || !m.Crosshatch.IsZero() || m.Std != 0 {
			t.Errorf("%s: %v, %v; want %v", name, m.Crosshatch, err, row.want)
		}
		if name == "mirrored" && !strings.Contains(err.Error(), "anticlockwise") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A square label with an arrow does as well as an oblong.
func TestArrowed(t *testing.T) {
	s := plain()
	s.labelRound, s.labelAlong = 7, 7
	shot := s.shot()
	if _, err := shot.Crosshatch(); !errors.Is(err, photo.ErrCorners) {
		t.Errorf("a square: %v", err)
	}
	shot.Label.Arrowed = true
	m := measured(t, shot)
	near(t, "included", included(m), 50, expanded(m))
}

// colours is an image of one colour, or none, without a dot of memory.
type colours struct {
	box image.Rectangle
	c   color.Color
}

func (c colours) Bounds() image.Rectangle { return c.box }
func (c colours) ColorModel() color.Model { return color.RGBAModel }
func (c colours) At(_, _ int) color.Color { return c.c }

// wrong is a colour beyond what colours may be.
type wrong struct{}

func (wrong) RGBA() (r, g, b, a uint32) { return math.MaxUint32, 7, math.MaxUint32, 0 }

// Hostile pictures end soon, in a refusal.
func TestHostile(t *testing.T) {
	shot := plain().shot()
	for name, img := range map[string]image.Image{
		"huge":      colours{image.Rect(0, 0, 20000, 20000), color.Gray{128}},
		"no colour": colours{image.Rect(0, 0, 800, 600), nil},
		"wrong":     colours{image.Rect(0, 0, 800, 600), wrong{}},
		"glare":     colours{image.Rect(0, 0, 800, 600), color.White},
		"clear":     image.NewNRGBA(image.Rect(0, 0, 800, 600)),
	} {
		s := shot
		s.Picture = img
		for i, q := range shot.Corners {
			k := float64(img.Bounds().Dx()) / 480
			s.Corners[i] = photo.Pixel{X: q.X * k, Y: q.Y * k}
		}
		m, err := s.Crosshatch()
		if err == nil || !m.Crosshatch.IsZero() {
			t.Errorf("%s: %v", name, m.Crosshatch)
		}
	}
}

// A picture costs few allocations, whatever its size.
func TestAllocations(t *testing.T) {
	shot := plain().shot()
	if n := testing.AllocsPerRun(2, func() { measured(t, shot) }); n > 200 {
		t.Errorf("%v allocations, want up to 200", n)
	}
}
