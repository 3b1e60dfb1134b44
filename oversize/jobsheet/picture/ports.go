// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// A RingEnd is where the gap of a ring runs, as a peg holds it.
type RingEnd struct {
	Name string      // of the ring
	At   units.Angle // once round, as ports are counted
}

// Ports draws the wall of a two-stroke unrolled, once round from left to right and from the deck down: its ports, hatched,
// and the lines along which the ends of pegged rings run. No ports are [ErrNothing].
func Ports(l bore.Layout, diameter units.Length, ends []RingEnd, unit units.Length) (page.Picture, error) {
	const left, wide, top = 12.0, 77.0, 3 * row
	d := newDrawing("The ports, unrolled", unit)
	if len(l.Ports) == 0 || diameter <= 0 {
		return page.Picture{}, fmt.Errorf("picture: %w: %d ports in a bore of %v", ErrNothing, len(l.Ports), diameter)
	}
	deepest := max(l.Length, l.RingBottom)
	for _, p := range l.Ports {
		deepest = max(deepest, p.To)
	}
	f := wide / float64(math.Pi*mm(diameter))
	tall := min(100, float64(mm(deepest)*f)) // of a bore much longer than it is wide the depth shrinks
	y := scale{at: top, factor: tall / mm(deepest)}
	d.Height = top + tall + 3*row
	round := func(a float64) float64 { // along the circumference, from 0 to once round
		a = math.Mod(a, 2*math.Pi)
		if a < 0 {
			a += 2 * math.Pi
		}
		return left + float64(a*wide/(2*math.Pi))
	}
	d.add(page.Line{Points: rectangle(page.Point{X: left, Y: top}, page.Point{X: left + wide, Y: top + tall}), Closed: true})
	for i := range 5 {
		x := left + float64(i)*wide/4
		d.line(page.Thin, page.Point{X: x, Y: top + tall}, page.Point{X: x, Y: top + tall + 1})
		d.label(fmt.Sprintf("%d°", i*90), page.Middle, page.Point{X: x, Y: top + tall + 1 + page.LetterHeight})
	}
	if l.RingBottom != 0 {
		for _, depth := range []units.Length{l.RingTop, l.RingBottom} {
			d.line(page.Dashed, page.Point{X: left, Y: y.of(mm(depth))}, page.Point{X: left + wide, Y: y.of(mm(depth))})
			d.label(d.plain(depth), page.Start, stacked(page.Point{X: 0, Y: y.of(mm(depth)) + 1}, 1)...)
		}
		d.note("Dashed: ring travel.")
	}
	for i, p := range l.Ports {
		name := portName(p, i)
		half := min(float64(p.Width), 2*math.Pi) / 2
		from, to := round(float64(p.At)-half), round(float64(p.At)+half)
		parts := [][2]float64{{from, to}}
		switch {
		case half >= math.Pi*(1-1e-12):
			parts = [][2]float64{{left, left + wide}}
		case to <= from: // over the edge of the paper
			parts = [][2]float64{{from, left + wide}, {left, to}}
		}
		for _, part := range parts {
			b := rectangle(page.Point{X: part[0], Y: y.of(mm(p.From))}, page.Point{X: part[1], Y: y.of(mm(p.To))})
			d.add(page.Area{Points: b, Hatched: true}, page.Line{Points: b, Closed: true, Stroke: page.Thick})
		}
		d.label(name, page.Middle, stacked(page.Point{X: round(float64(p.At)), Y: y.of(mm(p.From)) - 1}, -2)...)
		d.say("Port %s: from %s to %s deep, %s wide, its middle at %s.", name, d.plain(p.From), d.plain(p.To), angle(p.Width), angle(p.At))
	}
	from, to := top, top+tall
	if l.RingBottom != 0 {
		from, to = y.of(mm(l.RingTop)), y.of(mm(l.RingBottom))
	}
	for _, e := range ends {
		x := round(float64(e.At))
		d.line(page.Thick, page.Point{X: x, Y: from}, page.Point{X: x, Y: to})
		d.label(e.Name, page.Middle, stacked(page.Point{X: x, Y: top - 1}, -2)...)
		d.say("The ends of ring %s at %s.", e.Name, angle(e.At))
	}
	if len(ends) > 0 {
		d.note("Thick lines down the wall: where the ends of the rings run.")
	}
	d.note("Hatched: open. Round the wall %s, down it %s. 0° is the end of the thrust axis that the job counts from.", ratio(f), ratio(y.factor))
	return d.Picture, nil
}

// portName is what a port is called: by its place in the list where it has no name.
func portName(p bore.Port, i int) string {
	if p.Name != "" {
		return p.Name
	}
	return fmt.Sprint(i + 1)
}
