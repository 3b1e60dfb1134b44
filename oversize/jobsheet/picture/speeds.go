// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"

	"borewright.example/bore/hone"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// Speeds draws spindle speed, to the right, against stroking, upward, both from zero: lines of equal angle, with the wanted
// one between its tolerances toned; the box of what is on hand; the best setting, and the present one where it
// is given. What has no range on hand is [ErrNothing].
func Speeds(r hone.Found, now hone.Setting) (page.Picture, error) {
	const left, right, top, tall = 12.0, 84.0, row, 60.0
	h := r.Hand
	d := newDrawing("Turning against stroking", units.Millimetre)
	if h.Spindle == (hone.SpindleRange{}) || h.Stroking == (hone.StrokingRange{}) || r.Want.Crosshatch.IsZero() {
		return page.Picture{}, fmt.Errorf("picture: %w: no range on hand, or no crosshatch wanted", ErrNothing)
	}
	perMinute := func(f units.Frequency) float64 { return f.In(units.PerMinute) }
	most := max(perMinute(h.Spindle.Max), perMinute(r.Best.Spindle), perMinute(now.Spindle))
	quick := max(perMinute(h.Stroking.Max.Cycles()), perMinute(r.Best.Stroking.Cycles()), perMinute(now.Stroking.Cycles()))
	const slowest, fastest = 1e-3, 1e6 // a minute
	for _, f := range []float64{most, quick} {
		if !(f >= slowest && f <= fastest) {
			return page.Picture{}, fmt.Errorf("picture: %w: %v a minute is beyond what a picture shows", ErrNothing, f)
		}
	}
	d.Height = top + tall + 3*row
	x := scale{at: left, factor: (right - left) / most}
	y := scale{at: top + tall, factor: -tall / quick}
	frame := box{page.Point{X: left, Y: top}, page.Point{X: right, Y: top + tall}}
	d.line(page.Thin, frame.from, page.Point{X: left, Y: top + tall}, frame.to)
	d.axis(x, most, func(at float64, text string) {
		d.line(page.Thin, page.Point{X: at, Y: top + tall}, page.Point{X: at, Y: top + tall + 1})
		d.label(text, page.Middle, page.Point{X: at, Y: top + tall + 1 + page.LetterHeight})
	})
	d.axis(y, quick, func(at float64, text string) {
		d.line(page.Thin, page.Point{X: left - 1, Y: at}, page.Point{X: left, Y: at})
		d.label(text, page.End, page.Point{X: left - 1.5, Y: at + 1})
	})
	d.label("rev/min", page.End, page.Point{X: right, Y: top + tall + 1 + page.LetterHeight + row})
	d.label("cycles/min", page.Start, page.Point{X: 0, Y: page.LetterHeight - 0.6})

	// Lines of equal angle go through zero: at most revolutions a minute each has its stroking.
	ray := func(c hone.Crosshatch) (page.Point, error) {
		k, err := hone.Setting{Bore: h.Bore, Stroke: h.Stroke, Spindle: units.Frequency(most) * units.PerMinute}.StrokingRateFor(c)
		if err != nil {
			return page.Point{}, err
		}
		f := perMinute(k.Cycles())
		if f > quick {
			return page.Point{X: x.of(most * quick / f), Y: y.of(quick)}, nil
		}
		return page.Point{X: x.of(most), Y: y.of(f)}, nil
	}
	zero := page.Point{X: left, Y: top + tall}
	wedge := page.Area{Points: []page.Point{zero}}
	for i, a := range []units.Angle{r.Want.Crosshatch.Included() - r.Want.Tolerance, r.Want.Crosshatch.Included(), r.Want.Crosshatch.Included() + r.Want.Tolerance} {
		c, err := hone.Included(a)
		if err != nil {
			continue // flatter than flat: no line
		}
		end, err := ray(c)
		if err != nil {
			return page.Picture{}, fmt.Errorf("picture: %w", err)
		}
		stroke := page.Thin
		if i == 1 {
			stroke = page.Dashed
			places := append(stacked(page.Point{X: end.X, Y: end.Y - 1}, -1), stacked(page.Point{X: end.X, Y: end.Y + page.LetterHeight}, 3)...)
			d.label(c.Format(0), page.Middle, places...)
		}
		d.line(stroke, zero, end)
		if n := len(wedge.Points); n == 2 && wedge.Points[1].X > end.X && wedge.Points[1].Y > end.Y {
			wedge.Points = append(wedge.Points, page.Point{X: right, Y: top}) // round the corner
		}
		wedge.Points = append(wedge.Points, end)
	}
	d.add(wedge)
	d.add(page.Line{Points: rectangle(page.Point{X: x.of(perMinute(h.Spindle.Min)), Y: y.of(perMinute(h.Stroking.Max.Cycles()))},
		page.Point{X: x.of(perMinute(h.Spindle.Max)), Y: y.of(perMinute(h.Stroking.Min.Cycles()))}), Closed: true, Stroke: page.Thick})
	for _, s := range []struct {
		name string
		hone.Setting
	}{{"best", r.Best}, {"now", now}} {
		if s.Spindle == 0 || s.Stroking == (hone.Stroking{}) {
			continue
		}
		c, err := s.Crosshatch()
		if err != nil {
			return page.Picture{}, fmt.Errorf("picture: %w", err)
		}
		at := page.Point{X: x.of(perMinute(s.Spindle)), Y: y.of(perMinute(s.Stroking.Cycles()))}
		text := fmt.Sprintf("%s: %.1f rev/min with %.1f cycles/min leaves %s", s.name, perMinute(s.Spindle), perMinute(s.Stroking.Cycles()), c.Format(1))
		d.add(page.Dot{At: at, From: at, To: at, Text: text})
		d.label(s.name+" "+angle(c.Included()), page.Start, append(stacked(page.Point{X: at.X + 1.5, Y: at.Y - 1}, -2), stacked(page.Point{X: at.X + 1.5, Y: at.Y + page.LetterHeight + 1}, 2)...)...)
		d.say("%s.", text)
	}
	d.say("On hand: %v, %v. Wanted: %v.", h.Spindle, h.Stroking, r.Want)
	d.note("Along a line through zero the angle is the same; toned is what the tolerance allows, the thick box is on hand. Cycles are there and back.")
	return d.Picture, nil
}

// axis calls mark with the place and the text of round numbers from 0 to most.
func (d *drawing) axis(s scale, most float64, mark func(at float64, text string)) {
	const room = 16 // between one and the next, on the paper
	by, places := step(room / max(s.factor, -s.factor))
	for k := 0.0; k <= most/by; k++ {
		mark(s.of(float64(k*by)), fmt.Sprintf("%.*f", places, float64(k*by)))
	}
}
