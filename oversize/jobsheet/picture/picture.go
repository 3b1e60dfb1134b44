// SPDX-License-Identifier: BSD-3-Clause

// Package picture draws to scale what the rooms of this module compute. That is wear down the wall, a section, the
// sizes on offer, the crosshatch, a ring's gap, ports, speeds, removal, a trace, a texture and its profile. Each drawing is a [page.Picture],
// made of the room's own values alone, so that whoever imports this has it as SVG in one call and without a job:
//
//	p, err := picture.Wear(geometry, layout, picture.Marks{Service: limit}, units.Millimetre)
//	err = p.WriteSVG(w)
//
// Drawings are to scale. Where a departure is magnified, the factor is printed, and is one of 1, 2 and 5 times a
// power of ten: a distance on the paper divided by it is the distance in the bore, on the diameter where the
// axis says so. A dot is what was read, between the ends of its expanded uncertainty, 95 %; no curve goes
// through places that nobody read. Angles are true.
//
// Lengths are printed in millimetres, or in inches where that is the unit asked for.
package picture

import (
	"errors"
	"fmt"
	"math"

	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// ErrNothing: the values hold nothing that could be drawn.
var ErrNothing = errors.New("nothing to draw")

// across is the width of a picture, in millimetres of paper: what a telephone shows with letters that can be read.
const across = 90

// row is the distance from one line of letters to the next.
const row = 1.3 * page.LetterHeight

// A drawing is a picture in the making.
type drawing struct {
	page.Picture
	unit  units.Length
	taken []box // by labels
}

type box struct{ from, to page.Point }

func newDrawing(title string, unit units.Length) *drawing {
	if unit != units.Inch {
		unit = units.Millimetre
	}
	return &drawing{Picture: page.Picture{Title: title, Width: across}, unit: unit}
}

func (d *drawing) add(shapes ...page.Shape) { d.Shapes = append(d.Shapes, shapes...) }

func (d *drawing) line(s page.Stroke, points ...page.Point) {
	d.add(page.Line{Points: points, Stroke: s})
}

func (d *drawing) note(format string, args ...any) {
	d.Notes = append(d.Notes, fmt.Sprintf(format, args...))
}

// say adds a sentence to the description.
func (d *drawing) say(format string, args ...any) {
	if d.Description != "" {
		d.Description += " "
	}
	d.Description += fmt.Sprintf(format, args...)
}

// label puts a text at the first of the places where it stands clear of every other, moved in from the edge where it
// would run over; nowhere, if there is no such place. The height of the picture has to be known.
func (d *drawing) label(text string, anchor page.Anchor, places ...page.Point) {
	for _, at := range places {
		l := page.Label{At: at, Text: text, Anchor: anchor}
		from, to := l.Box()
		if to.X-from.X > d.Width {
			return
		}
		l.At.X += max(0, -from.X) - max(0, to.X-d.Width)
		from, to = l.Box()
		if from.Y < 0 || to.Y > d.Height || d.covered(from, to) {
			continue
		}
		d.taken = append(d.taken, box{from, to})
		d.add(l)
		return
	}
}

func (d *drawing) covered(from, to page.Point) bool {
	const air = 0.5 // between one label and another
	for _, b := range d.taken {
		if from.X < b.to.X+air && to.X > b.from.X-air && from.Y < b.to.Y && to.Y > b.from.Y {
			return true
		}
	}
	return false
}

// stacked returns a place and those so many lines below it, or above where lines are negative.
func stacked(at page.Point, lines int) []page.Point {
	places := []page.Point{at}
	step := row
	if lines < 0 {
		step, lines = -row, -lines
	}
	for i := 1; i <= lines; i++ {
		places = append(places, page.Point{X: at.X, Y: at.Y + float64(step*float64(i))})
	}
	return places
}

// mm returns a length in millimetres.
func mm(l units.Length) float64 { return l.In(units.Millimetre) }

// size returns a size as it is printed.
func (d *drawing) size(l units.Length) string {
	if d.unit == units.Inch {
		return l.Format(units.Inch, 5)
	}
	return l.Format(units.Millimetre, 3)
}

// plain returns a length that was given, without zeros.
func (d *drawing) plain(l units.Length) string {
	if d.unit == units.Inch {
		return l.Decimal(units.Inch).Round(5).String() + " in"
	}
	return l.Decimal(units.Millimetre).Round(3).String() + " mm"
}

// half returns the expanded uncertainty of an estimate, 95 %, in millimetres.
func half(e uncertainty.Estimate) (float64, error) {
	u, err := e.Expanded(0.95)
	return mm(u), err
}

// A scale goes from millimetres in the bore to millimetres of paper.
type scale struct {
	zero, at float64 // what lies where on the paper
	factor   float64
}

func (s scale) of(x float64) float64 { return s.at + float64((x-s.zero)*s.factor) }

// factor returns the largest of 1, 2 and 5 times a power of ten with which a span has room, at most a hundred thousand.
func factor(span, room float64) float64 {
	best := 1e-3
	for power := 1e-3; power < 1e6; power *= 10 {
		for _, x := range []float64{1, 2, 5} {
			if f := float64(x * power); float64(span*f) <= room && f <= 1e5 {
				best = max(best, f)
			}
		}
	}
	return best
}

// ratio prints a factor, "200 : 1".
func ratio(f float64) string {
	if f >= 1 {
		return fmt.Sprintf("%.0f : 1", f)
	}
	return fmt.Sprintf("1 : %.0f", 1/f)
}

// step returns the least of 1, 2 and 5 times a power of ten that is no less than x, which is above 0, and the decimals it
// takes to write multiples of it.
func step(x float64) (float64, int) {
	power := math.Floor(math.Log10(x))
	for {
		for _, k := range []float64{1, 2, 5} {
			if s := float64(k * math.Pow(10, power)); s >= x*(1-1e-12) {
				return s, int(max(0, -power))
			}
		}
		power++
	}
}

// ruler draws what a scale of sizes means: a line at y with ticks, and below it their sizes and the unit.
func (d *drawing) ruler(s scale, from, to, y float64) {
	unit, name := d.named()
	_, room := page.Label{Text: "123456789"}.Box() // from one tick to the next
	by, places := step(room.X / s.factor / unit)
	foot := y + 1 + page.LetterHeight
	d.line(page.Thin, page.Point{X: from, Y: y}, page.Point{X: to, Y: y})
	low, high := (s.zero+(from-s.at)/s.factor)/unit, (s.zero+(to-s.at)/s.factor)/unit
	first := math.Ceil(low / by)
	for k := first; k <= high/by && k < first+across; k++ {
		x := s.of(float64(k*by) * unit)
		d.line(page.Thin, page.Point{X: x, Y: y}, page.Point{X: x, Y: y + 1})
		d.label(fmt.Sprintf("%.*f", places, float64(k*by)), page.Middle, page.Point{X: x, Y: foot})
	}
	d.label(name, page.End, page.Point{X: to, Y: foot}, page.Point{X: to, Y: foot + row})
}

// bar draws a length of a round number as long as it is on the paper, with what it is.
func (d *drawing) bar(s scale, at page.Point) {
	unit, name := d.named()
	const least = 8 // on the paper
	by, places := step(least / s.factor / unit)
	end := page.Point{X: at.X + float64(float64(by*unit)*s.factor), Y: at.Y}
	d.line(page.Thick, at, end)
	d.label(fmt.Sprintf("%.*f %s", places, by, name), page.Start, page.Point{X: end.X + 1.5, Y: at.Y + 1})
}

// named returns the unit of the picture in millimetres, and its name.
func (d *drawing) named() (float64, string) {
	if d.unit == units.Inch {
		return mm(units.Inch), "in"
	}
	return 1, "mm"
}

// extreme returns points of a line in their order; of a long one, of each few that with the least and that with the greatest
// value, so that no peak is lost.
func extreme[T any](all []T, value func(T) float64) []T {
	const most = 720
	if len(all) <= most {
		return all
	}
	var few []T
	size := (2*len(all) + most - 1) / most
	for i := 0; i < len(all); i += size {
		chunk := all[i:min(i+size, len(all))]
		least, greatest := 0, 0
		for j, p := range chunk {
			if value(p) < value(chunk[least]) {
				least = j
			}
			if value(p) > value(chunk[greatest]) {
				greatest = j
			}
		}
		few = append(few, chunk[min(least, greatest)])
		if least != greatest {
			few = append(few, chunk[max(least, greatest)])
		}
	}
	return few
}

// rectangle returns the corners of a rectangle in turn.
func rectangle(upperLeft, lowerRight page.Point) []page.Point {
	return []page.Point{upperLeft, {X: lowerRight.X, Y: upperLeft.Y}, lowerRight, {X: upperLeft.X, Y: lowerRight.Y}}
}
