// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"
	"math"

	"borewright.example/bore/form"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// Trace draws a trace about the centre of its least-squares circle, what departs from that circle magnified, with the four
// reference circles of ISO 12181-1, each about its own centre, drawn as it is seen from that one. A trace without points is [ErrNothing]; what has no reference circle is the error of the room.
func Trace(t form.Trace, unit units.Length) (page.Picture, error) {
	const round, room = 26.0, 12.0
	if t.Len() == 0 {
		return page.Picture{}, fmt.Errorf("picture: %w: a trace without points", ErrNothing)
	}
	var circles []form.Circle
	for _, find := range []func() (form.Circle, error){t.LeastSquares, t.MinimumZone, t.MinimumCircumscribed, t.MaximumInscribed} {
		c, err := find()
		if err != nil {
			return page.Picture{}, fmt.Errorf("picture: %w", err)
		}
		circles = append(circles, c)
	}
	ls := circles[0]
	d := newDrawing("A trace and its four circles", unit)
	d.Height = 2*(round+room) + 2*row
	beyond := max(mm(ls.Outer-ls.Radius), mm(ls.Radius-ls.Inner))
	f := min(factor(beyond, room), factor(beyond, round-4))
	at := polar{centre: page.Point{X: across / 2, Y: d.Height / 2}, radius: round, zero: mm(ls.Radius), factor: f}

	wall := page.Line{Closed: true}
	for _, p := range extremes(t, ls) {
		wall.Points = append(wall.Points, at.of(p.angle, p.radius))
	}
	d.add(wall)
	circle := func(c form.Circle, radius units.Length, s page.Stroke) {
		curve := page.Line{Closed: true, Stroke: s}
		ex, ey, r := mm(c.Centre.X-ls.Centre.X), mm(c.Centre.Y-ls.Centre.Y), mm(radius)
		for i := range 180 { // as it is seen from the centre of the drawing
			a := float64(i) * math.Pi / 90
			along := float64(ex*math.Cos(a)) + float64(ey*math.Sin(a))
			beside := float64(ex*math.Sin(a)) - float64(ey*math.Cos(a))
			curve.Points = append(curve.Points, at.of(a, along+math.Sqrt(max(0, float64(r*r)-float64(beside*beside)))))
		}
		d.add(curve)
	}
	zone, around, inside := circles[1], circles[2], circles[3]
	circle(ls, ls.Radius, page.Thin)
	circle(zone, zone.Inner, page.Dashed)
	circle(zone, zone.Outer, page.Dashed)
	circle(around, around.Radius, page.Thick)
	circle(inside, inside.Radius, page.Dotted)
	d.label("thrust", page.End, page.Point{X: across, Y: at.centre.Y + 1})
	names := []string{"thin: least squares", "dashed: minimum zone", "thick: circumscribed", "dotted: inscribed"}
	for i, c := range circles {
		d.note("%s, RONt %s.", names[i], d.size(c.RONt))
		d.say("%v: radius %s, RONt %s.", c.Reference, d.size(c.Radius), d.size(c.RONt))
	}
	d.note("%d points; departure from the least-squares circle of radius %s magnified %s.", t.Len(), d.size(ls.Radius), ratio(f))
	return d.Picture, nil
}

type polarPoint struct{ angle, radius float64 }

// extremes returns the points of a trace as seen from a circle's centre, in their order; of a long one, the nearest and the
// farthest of each few.
func extremes(t form.Trace, c form.Circle) []polarPoint {
	x, y := mm(c.Centre.X), mm(c.Centre.Y)
	var all []polarPoint
	for _, p := range t.Radial(0) {
		r := mm(p.Radius)
		dx, dy := float64(r*math.Cos(float64(p.Angle)))-x, float64(r*math.Sin(float64(p.Angle)))-y
		all = append(all, polarPoint{math.Atan2(dy, dx), math.Hypot(dx, dy)})
	}
	return extreme(all, func(p polarPoint) float64 { return p.radius })
}
