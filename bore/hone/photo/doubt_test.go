// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"image"
	"image/color"
	paint "image/draw"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
)

// part is one part of the doubt of an angle, by its name.
func part(t *testing.T, m photo.Measured, name string) float64 {
	t.Helper()
	for _, c := range m.Budget.Components {
		if c.Name == name {
			return c.Std
		}
	}
	t.Fatalf("no part %q", name)
	return 0
}

// rms is the root mean square about the mean.
func rms(xs []float64) float64 {
	var sum, square float64
	for _, x := range xs {
		sum += x
		square += x * x
	}
	n := float64(len(xs))
	return math.Sqrt((square - sum*sum/n) / (n - 1))
}

// The part of the corners is how far the angle scatters when they are marked again and again. Of 20 repeats a
// standard deviation is good to 16 %, three times which is allowed.
func TestPartOfCorners(t *testing.T) {
	s := plain()
	shot := s.shot()
	shot.Focal, shot.Marking = s.focal*float64(s.width), 1
	want := part(t, measured(t, shot), "corners of the label")
	r := rand.New(rand.NewPCG(3, 4))
	var angles []float64
	for range 20 {
		other := shot
		for i := range other.Corners {
			other.Corners[i].X += r.NormFloat64()
			other.Corners[i].Y += r.NormFloat64()
		}
		angles = append(angles, included(measured(t, other)))
	}
	if got := rms(angles); got < want/1.5 || got > want*1.5 {
		t.Errorf("angles scatter by %.3f°, the part says %.3f°", got, want)
	}
}

// The part of the focal length is how far the angle goes with a lens that is one standard deviation longer.
func TestPartOfFocal(t *testing.T) {
	s := plain()
	shot := s.shot()
	shot.Focal = s.focal * float64(s.width)
	m := measured(t, shot)
	longer := shot
	longer.Focal *= 1.03
	near(t, "focal length", math.Abs(included(measured(t, longer))-included(m)), part(t, m, "focal length"), 0.01)
}

// From afar a label looks alike at two tilts: both take part in the doubt. Near to, only one of them fits.
func TestPartOfTilt(t *testing.T) {
	for _, widths := range []float64{1, 8} {
		s := plain()
		s.focal, s.tilt, s.to, s.bore = widths, 10, 130, 80
		shot := s.shot()
		shot.Focal = s.focal * float64(s.width)
		m := measured(t, shot)
		near(t, "included", included(m), 50, expanded(m))
		if p := part(t, m, "tilt seen two ways"); widths == 1 && p != 0 || widths == 8 && !(p > 0.01 && p < 0.3) {
			t.Errorf("seen from %v widths of the picture away: %.3f°", widths, p)
		}
	}
}

// beside is the shot with so much more of nothing before and behind its columns and rows.
func beside(s photo.Shot, before, behind image.Point) photo.Shot {
	box := s.Picture.Bounds().Add(before)
	to := image.NewGray(image.Rectangle{Max: box.Max.Add(behind)})
	paint.Draw(to, box, s.Picture, image.Point{}, paint.Src)
	s.Picture = to
	for i := range s.Corners {
		s.Corners[i].X += float64(before.X)
		s.Corners[i].Y += float64(before.Y)
	}
	return s
}

// The part of the axis of the lens is how far the angle goes where that lies one standard deviation, 2 % of the longer
// side, aside of the middle, and above or below it.
func TestPartOfAxis(t *testing.T) {
	s := plain()
	shot := s.shot()
	shot.Focal = s.focal * float64(s.width)
	square := 0.0
	for _, more := range []image.Point{{20, 0}, {0, 20}} {
		const half = 20. / 2 / (0.02 * 480) // by so many standard deviations that moves the middle
		d := (included(measured(t, beside(shot, image.Point{}, more))) - included(measured(t, beside(shot, more, image.Point{})))) / (2 * half)
		square += d * d
	}
	near(t, "axis of the lens", math.Sqrt(square), part(t, measured(t, shot), "axis of the lens"), 0.01)
}

// bent is the shot as a lens takes it that shows what lies k nearer to the middle, at the corners of the picture.
func bent(s photo.Shot, k float64) photo.Shot {
	from := s.Picture.(*image.Gray)
	w, h := from.Rect.Dx(), from.Rect.Dy()
	middle := photo.Pixel{X: float64(w) / 2, Y: float64(h) / 2}
	straight := func(q photo.Pixel) photo.Pixel {
		x, y := q.X-middle.X, q.Y-middle.Y
		by := 1 + k*(x*x+y*y)/(middle.X*middle.X+middle.Y*middle.Y)
		return photo.Pixel{X: middle.X + by*x, Y: middle.Y + by*y}
	}
	to := image.NewGray(from.Rect)
	at := func(x, y int) float64 { return float64(from.GrayAt(max(0, min(w-1, x)), max(0, min(h-1, y))).Y) }
	for y := range h {
		for x := range w {
			q := straight(photo.Pixel{X: float64(x) + 0.5, Y: float64(y) + 0.5})
			i, j := int(math.Floor(q.X-0.5)), int(math.Floor(q.Y-0.5))
			u, v := q.X-0.5-float64(i), q.Y-0.5-float64(j)
			g := (1-v)*((1-u)*at(i, j)+u*at(i+1, j)) + v*((1-u)*at(i, j+1)+u*at(i+1, j+1))
			to.SetGray(x, y, color.Gray{Y: uint8(math.Round(g))})
		}
	}
	s.Picture = to
	for i, c := range s.Corners {
		q := c
		for range 20 { // each a thousandth of the one before
			p := straight(q)
			q = photo.Pixel{X: q.X + c.X - p.X, Y: q.Y + c.Y - p.Y}
		}
		s.Corners[i] = q
	}
	return s
}

// The part of the bend is how far the angle goes with a lens that bends by one standard deviation, out or in: within a
// factor of two, since it takes all of the wall alike, where the angle is taken more from what shows its lines better.
func TestPartOfBend(t *testing.T) {
	const bend = 0.015
	for _, off := range [][2]float64{{0.03, -0.04}, {0.2, 0.15}} { // of the label, which in the second lies where the lens bends
		s := plain()
		s.offX, s.offY, s.tilt, s.noise, s.jitter = off[0], off[1], 25, 0.5, 0
		shot := s.shot()
		shot.Focal = s.focal * float64(s.width)
		want := part(t, measured(t, shot), "bend of the lens")
		got := math.Abs(included(measured(t, bent(shot, 2*bend)))-included(measured(t, bent(shot, -2*bend)))) / 4
		if got < want/2 || got > want*2 {
			t.Errorf("label at %v: the angle goes by %.3f°, the part says %.3f°", off, got, want)
		}
	}
}

// The parts of the wall say how far other lines of the same hone would put the angle: over walls whose lines
// scatter, photographed alike, the root mean square error is about that part.
func TestPartOfWall(t *testing.T) {
	var off, parts float64
	const n = 10
	for i := range uint64(n) {
		s := plain()
		s.rng = rand.New(rand.NewPCG(i, 5))
		s.width, s.height, s.jitter, s.spacing, s.strays, s.marking = 360, 270, 2, 0.5, 0.2, 0.001
		shot := s.shot()
		shot.Focal = s.focal * float64(s.width)
		m, err := shot.Crosshatch()
		if err != nil {
			continue
		}
		p := part(t, m, "parts of the wall")
		off += (included(m) - 50) * (included(m) - 50)
		parts += p * p
	}
	if ratio := math.Sqrt(off / parts); ratio < 0.5 || ratio > 2 {
		t.Errorf("errors are %.2f of what the part says", ratio)
	}
}

// A wall whose leans change gets a range that holds them, the angle inside; one whose leans do not gets none.
func TestRange(t *testing.T) {
	s := plain()
	s.kind, s.up, s.down, s.stroke, s.mid, s.tool, s.strays, s.jitter = swinging, 30, -30, 90, 0.45, 4, 0, 0
	m := measured(t, s.shot())
	lo, mean, hi := s.span()
	t.Logf("%v, %v to %v; true %.1f to %.1f, mean %.1f", m.Crosshatch.Format(1), m.Min.Format(1), m.Max.Format(1), lo, hi, mean)
	least, greatest := m.Min.Included().In(units.Degree), m.Max.Included().In(units.Degree)
	if !(least < lo && lo < included(m) && included(m) < hi && hi < greatest) {
		t.Errorf("%.1f° to %.1f° about %.1f°, of %.1f° to %.1f°", least, greatest, included(m), lo, hi)
	}
	if greatest-least > 3*(hi-lo)+4*expanded(m) {
		t.Errorf("%.1f° to %.1f° is no answer for %.1f° to %.1f°", least, greatest, lo, hi)
	}
}
