// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"borewright.example/bore/hone"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// Crosshatch draws the lines on the wall, unrolled, at their true angle: those that are wanted beside those that are
// left, at the mean speed. Where the profile along the wall is given, the lines left are those of its mean at each depth,
// flat where the tool turns round. Below stand the wedge of the tolerance, and the lean of a line that is left. What has
// neither a wanted nor a left angle, or a profile that does not go down a wall, is [ErrNothing].
func Crosshatch(want hone.Want, leaves hone.Crosshatch, wall hone.Profile) (page.Picture, error) {
	const (
		wide, middle = 42.0, 48.0 // a panel, and where the second begins
		top          = row + 1
		wedgeTall    = 27.0
	)
	if want.Crosshatch.IsZero() && leaves.IsZero() {
		return page.Picture{}, fmt.Errorf("picture: %w: no crosshatch", ErrNothing)
	}
	if points := wall.Points; !slices.IsSortedFunc(points, func(a, b hone.Level) int { return cmp.Compare(a.Depth, b.Depth) }) ||
		slices.ContainsFunc(points, func(p hone.Level) bool { return p.Depth.Abs() > units.MaxLength || !(p.Mean >= 0 && p.Mean <= math.Pi) }) {
		return page.Picture{}, fmt.Errorf("picture: %w: the crosshatch along the wall does not go down a wall", ErrNothing)
	}
	d := newDrawing("The crosshatch, unrolled, at its true angle", units.Millimetre)
	tall := wide
	points := wall.Points
	var f float64
	if len(points) > 1 {
		depth := mm(points[len(points)-1].Depth)
		f = factor(depth, 60)
		tall = float64(depth * f)
	}
	d.Height = top + tall + wedgeTall + 2*row
	panel := func(x float64, name string) box {
		d.label(name, page.Start, page.Point{X: x, Y: row - 1})
		b := box{page.Point{X: x, Y: top}, page.Point{X: x + wide, Y: top + tall}}
		d.add(page.Line{Points: rectangle(b.from, b.to), Closed: true})
		return b
	}
	foot := top + tall + wedgeTall
	if !want.Crosshatch.IsZero() {
		b := panel(0, "wanted")
		d.straight(b, want.Crosshatch)
		d.wedge(page.Point{X: 0, Y: foot}, want.Crosshatch, want.Tolerance)
		d.say("Wanted: %v.", want)
		d.label(want.String(), page.Start, page.Point{X: 0, Y: foot + row})
	}
	if !leaves.IsZero() {
		b := panel(middle, "left")
		if len(points) > 1 {
			d.along(b, wall, f)
			d.say("Along the wall from %s to %s included.", angle(wall.Min), angle(wall.Max))
			d.note("Down the wall, %s; what is left is the mean at each depth: it lies flat where the tool turns round.", ratio(f))
		} else {
			d.straight(b, leaves)
		}
		d.wedge(page.Point{X: middle, Y: foot}, leaves, 0)
		d.say("Left: %s at the mean speed.", leaves.Format(1))
		d.label(leaves.Format(1), page.Start, page.Point{X: middle, Y: foot + row})
	}
	d.note("A crosshatch is counted between its lines, included; a line leans half of that from square. Below: a line, between the least and the greatest that its tolerance allows.")
	return d.Picture, nil
}

func angle(a units.Angle) string { return fmt.Sprintf("%.1f°", a.In(units.Degree)) }

// apart is how far lines lie from each other on the paper.
const apart = 5.0

// straight fills a panel with both families of lines.
func (d *drawing) straight(b box, c hone.Crosshatch) {
	lean := float64(c.FromSquare())
	for _, a := range []float64{-lean, lean} { // y counts down
		sin, cos := math.Sin(a), math.Cos(a)
		// Lines are where −x·sin + y·cos is a multiple of their distance.
		low, high := math.Inf(1), math.Inf(-1)
		for _, q := range rectangle(b.from, b.to) {
			n := float64(-q.X*sin) + float64(q.Y*cos)
			low, high = min(low, n), max(high, n)
		}
		for n := math.Ceil(low/apart) * apart; n < high; n += apart {
			foot := page.Point{X: float64(-n * sin), Y: float64(n * cos)}
			const far = 1000
			d.clipped(b, page.Point{X: foot.X - far*cos, Y: foot.Y - far*sin}, page.Point{X: foot.X + far*cos, Y: foot.Y + far*sin})
		}
	}
}

// along fills a panel with lines that lean at each depth as the profile says.
func (d *drawing) along(b box, wall hone.Profile, f float64) {
	points := wall.Points
	// How far a line goes along the circumference from the top to each depth.
	walk := make([]float64, len(points))
	for i := 1; i < len(points); i++ {
		lean := float64(points[i].Mean+points[i-1].Mean) / 4
		down := float64(mm(points[i].Depth-points[i-1].Depth) * f)
		walk[i] = walk[i-1] + min(down/max(math.Tan(lean), 1e-3), 10*across)
	}
	half := walk[len(walk)/2]
	gap := apart / max(math.Sin(float64(points[len(points)/2].Mean)/2), apart/across)
	reach := walk[len(walk)-1] + b.to.X - b.from.X
	for _, hand := range []float64{-1, 1} {
		for start := -math.Floor(reach/gap) * gap; start < reach; start += gap {
			at := func(i int) page.Point {
				return page.Point{X: (b.from.X+b.to.X)/2 + start + float64(hand*(walk[i]-half)), Y: b.from.Y + float64(mm(points[i].Depth)*f)}
			}
			for i := 1; i < len(points); i++ {
				d.clipped(b, at(i-1), at(i))
			}
		}
	}
}

// clipped draws what of a line lies in a box: Liang and Barsky's method.
func (d *drawing) clipped(b box, p, q page.Point) {
	t0, t1 := 0.0, 1.0
	dx, dy := q.X-p.X, q.Y-p.Y
	for _, side := range [][2]float64{{-dx, p.X - b.from.X}, {dx, b.to.X - p.X}, {-dy, p.Y - b.from.Y}, {dy, b.to.Y - p.Y}} {
		switch {
		case side[0] == 0 && side[1] < 0:
			return
		case side[0] < 0:
			t0 = max(t0, side[1]/side[0])
		case side[0] > 0:
			t1 = min(t1, side[1]/side[0])
		}
	}
	if t0 < t1 {
		d.line(page.Thin, page.Point{X: p.X + float64(t0*dx), Y: p.Y + float64(t0*dy)}, page.Point{X: p.X + float64(t1*dx), Y: p.Y + float64(t1*dy)})
	}
}

// wedge draws one line at its lean over a level one, and toned the leans of angles up to so far off, where that is
// not zero.
func (d *drawing) wedge(at page.Point, c hone.Crosshatch, off units.Angle) {
	const long, tall = 38.0, 25.0
	end := func(a float64) page.Point { // as far as the room is, across or up
		r := long
		if s := math.Sin(a); s*r > tall {
			r = tall / s
		}
		return page.Point{X: at.X + float64(r*math.Cos(a)), Y: at.Y - float64(r*math.Sin(a))}
	}
	if off != 0 {
		least, most := max(0, float64(c.Included()-off)/2), min(float64(c.Included()+off)/2, math.Pi/2)
		area := page.Area{Points: []page.Point{at}}
		for i := range 9 {
			area.Points = append(area.Points, end(least+float64((most-least)*float64(i)/8)))
		}
		d.add(area)
	}
	d.line(page.Thin, at, end(0))
	d.line(page.Thick, at, end(float64(c.FromSquare())))
}
