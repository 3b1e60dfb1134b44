// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// polar is a section seen from above: the thrust axis to the right, angles as the axes count them, against the clock.
// What lies beyond a radius is magnified.
type polar struct {
	centre page.Point
	radius float64 // on the paper, of the reference
	zero   float64 // the reference, in millimetres
	factor float64
}

func (p polar) of(angle, radius float64) page.Point {
	r := p.radius + float64((radius-p.zero)*p.factor)
	return page.Point{X: p.centre.X + float64(r*math.Cos(angle)), Y: p.centre.Y - float64(r*math.Sin(angle))}
}

// Section draws one plane of a bore from above, its departure from the least size read magnified. There are dots at both
// ends of each axis read, and a dotted line where three axes or more carry a form of two lobes, or five one of
// four. What holds no reading is [ErrNothing].
func Section(p bore.Plane, unit units.Length) (page.Picture, error) {
	const round, room = 22.0, 12.0
	d := newDrawing(fmt.Sprintf("Section at %s, from above", newDrawing("", unit).plain(p.Depth)), unit)
	s, err := readSpan([]bore.Plane{p})
	if err != nil {
		return page.Picture{}, err
	}
	two, four := p.TwoLobe, p.FourLobe
	for _, a := range []units.Angle{two.Axis, four.Axis} {
		if !(a.In(units.Degree) >= -360 && a.In(units.Degree) <= 360) {
			return page.Picture{}, fmt.Errorf("picture: %w: lobes of no direction", ErrNothing)
		}
	}
	fit := func(angle float64) float64 {
		x := mm(two.Mean.Value) + float64(mm(two.Amplitude.Value)*math.Cos(2*(angle-float64(two.Axis))))
		return x + float64(mm(four.Amplitude.Value)*math.Cos(4*(angle-float64(four.Axis))))
	}
	if two != (bore.Lobes{}) {
		for i := range 360 {
			x := fit(float64(i) * math.Pi / 180)
			s.cover(x, x)
		}
	}
	least := p.Smallest().Size.Value
	f := factor((s.to-mm(least))/2, room)
	f = min(f, factor((mm(least)-s.from)/2, round-4))
	rim := round + max(0, float64((s.to-mm(least))/2*f)) + 2 // where the names of the axes begin
	d.Height = 2 * (rim + 2*row)
	at := polar{centre: page.Point{X: across / 2, Y: d.Height / 2}, radius: round, zero: mm(least) / 2, factor: f}

	d.add(page.Circle{Centre: at.centre, Radius: round, Stroke: page.Thin})
	d.line(page.Thin, page.Point{X: at.centre.X - 1.5, Y: at.centre.Y}, page.Point{X: at.centre.X + 1.5, Y: at.centre.Y})
	d.line(page.Thin, page.Point{X: at.centre.X, Y: at.centre.Y - 1.5}, page.Point{X: at.centre.X, Y: at.centre.Y + 1.5})
	if two != (bore.Lobes{}) {
		curve := page.Line{Closed: true, Stroke: page.Dotted}
		for i := 0; i < 360; i += 3 {
			a := float64(i) * math.Pi / 180
			curve.Points = append(curve.Points, at.of(a, fit(a)/2))
		}
		d.add(curve)
		lobes := "two lobes"
		if four != (bore.Lobes{}) {
			lobes = "two and of four lobes"
		}
		d.note("Dotted: a form of %s, fitted; nobody read it between the dots.", lobes)
	} else {
		d.note("Fewer than three axes fix no form: there is none drawn.")
	}
	for _, q := range p.Places {
		u, err := half(q.Size)
		if err != nil {
			return page.Picture{}, err
		}
		name, x, a := q.Axis.String(), mm(q.Size.Value), float64(q.Axis)
		text := fmt.Sprintf("%s: %s", name, q.Size.Format(d.unit))
		for _, end := range []float64{a, a + math.Pi} {
			d.add(page.Dot{At: at.of(end, x/2), From: at.of(end, (x-u)/2), To: at.of(end, (x+u)/2), Text: text})
		}
		d.around(at.centre, rim, a, name)
		d.say("%s.", text)
	}
	d.note("The thin circle is %s, the least read; what is over it is magnified %s, on the radius. Bars: ± expanded uncertainty, 95 %%.", d.size(least), ratio(f))
	d.note("Not seen: the centre, and three, five or seven lobes.")
	return d.Picture, nil
}

// around puts a label outside a circle, at an angle.
func (d *drawing) around(centre page.Point, radius, angle float64, text string) {
	anchor := page.Middle
	switch c := math.Cos(angle); {
	case c > 0.3:
		anchor = page.Start
	case c < -0.3:
		anchor = page.End
	}
	foot := 0.5 * page.LetterHeight * (1 - math.Sin(angle)) // beside the middle of the letters, below them at the top
	at := page.Point{X: centre.X + float64(radius*math.Cos(angle)), Y: centre.Y - float64(radius*math.Sin(angle)) + foot}
	d.label(text, anchor, append(stacked(at, -1), stacked(at, 1)[1:]...)...)
}
