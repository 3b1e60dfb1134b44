// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"

	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Gap is an end gap at one time: as it is, filed, hot.
type Gap struct {
	Name string // "cold, now"
	Size uncertainty.Estimate
}

// RingGap draws the two ends of a ring, ten times as large as they are, once for each gap, the bar of its doubt at the end on
// the right; and the window for the gap when it is cold. A gap below zero is ends that overlap, hatched. A gap
// that has no room at ten times is drawn smaller, and the scale says so. No gaps are [ErrNothing].
func RingGap(ring string, gaps []Gap, window units.Limits, unit units.Length) (page.Picture, error) {
	const block, room, beside, tall, every = 8.0, 22.0, 44.0, 6.0, 3 * row
	d := newDrawing("The gap of ring "+ring, unit)
	if len(gaps) == 0 {
		return page.Picture{}, fmt.Errorf("picture: %w: no gap", ErrNothing)
	}
	var s span
	s.cover(0, mm(max(window.Min, window.Max)))
	for _, g := range gaps {
		u, err := half(g.Size)
		if err != nil {
			return page.Picture{}, err
		}
		s.cover(mm(g.Size.Value)-u, mm(g.Size.Value)+u)
	}
	f := min(10, factor(s.to-s.from, room))
	bottom := row + float64(len(gaps))*every
	d.Height = bottom + row
	x := scale{at: 1 + block - float64(min(0, s.from)*f), factor: f}
	for i, end := range []units.Length{window.Min, window.Max} {
		if end == 0 {
			continue
		}
		d.line(page.Dashed, page.Point{X: x.of(mm(end)), Y: row}, page.Point{X: x.of(mm(end)), Y: bottom})
		name := []string{"least ", "most "}[i] + d.size(end)
		d.label(name, page.Start, page.Point{X: beside, Y: []float64{row - 1, bottom + page.LetterHeight}[i]})
		d.say("Window: %s.", name)
	}
	for i, g := range gaps {
		u, err := half(g.Size)
		if err != nil {
			return page.Picture{}, err
		}
		y, v := row+float64(float64(i)*every)+row/2, mm(g.Size.Value)
		end := func(from, to float64) {
			points := rectangle(page.Point{X: from, Y: y}, page.Point{X: to, Y: y + tall})
			d.add(page.Area{Points: points}, page.Line{Points: points, Closed: true})
		}
		end(x.of(0)-block, x.of(0))
		end(x.of(v), x.of(v)+block)
		if v < 0 {
			d.add(page.Area{Points: rectangle(page.Point{X: x.of(v), Y: y}, page.Point{X: x.of(0), Y: y + tall}), Hatched: true})
		}
		middle := y + tall/2
		text := g.Name + ": " + g.Size.Format(d.unit)
		d.add(page.Dot{At: page.Point{X: x.of(v), Y: middle}, From: page.Point{X: x.of(v - u), Y: middle}, To: page.Point{X: x.of(v + u), Y: middle}, Text: text})
		d.label(g.Name, page.Start, page.Point{X: beside, Y: middle - 0.5})
		d.label(g.Size.Format(d.unit), page.Start, page.Point{X: beside, Y: middle - 0.5 + row})
		d.say("%s.", text)
	}
	if !window.IsZero() {
		d.note("Dashed: the window for the gap, cold.")
	}
	d.note("%s. Bars: ± expanded uncertainty, 95 %%.", ratio(f))
	return d.Picture, nil
}
