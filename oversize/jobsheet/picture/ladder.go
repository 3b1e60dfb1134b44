// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// A Rung is one size on offer.
type Rung struct {
	Name   string       // "+0.50 mm"
	Bored  units.Length // to bore to for it: the least of its finish window less the honing allowance; zero where not known
	Finish units.Limits // window of the finished bore
}

// A Column is one cylinder beside the sizes on offer.
type Column struct {
	Name     string        // of the cylinder
	Geometry bore.Geometry // as read
	CleanUp  bore.Interval // the smallest true cylinder that leaves no worn wall
	Rung     int           // the size chosen, as the rungs are counted; below 0 is none
}

// Ladder draws cylinders beside the sizes on offer, larger sizes higher. Of each cylinder there is the range that was
// read, toned, and above it, hatched, how far its clean-up may reach. A size serves where its line, which is what is
// bored to, lies above all of the hatching. What holds no column or rung is [ErrNothing].
func Ladder(columns []Column, rungs []Rung, unit units.Length) (page.Picture, error) {
	const left, right, top, tall = 24.0, 89.0, 4.0, 100.0
	d := newDrawing("The sizes on offer, and what each cylinder needs", unit)
	if len(columns) == 0 || len(rungs) == 0 {
		return page.Picture{}, fmt.Errorf("picture: %w: %d cylinders, %d sizes", ErrNothing, len(columns), len(rungs))
	}
	var s span
	sure := make([]float64, len(columns)) // that no worn wall is left
	for i, c := range columns {
		read, err := readSpan(append(c.Geometry.Planes, c.Geometry.Bridges...))
		if err != nil {
			return page.Picture{}, err
		}
		u, err := half(c.CleanUp.Max)
		if err != nil {
			return page.Picture{}, err
		}
		sure[i] = max(mm(c.CleanUp.Max.Value)+u, mm(c.Geometry.Largest.Size.Value))
		s.cover(read.from, max(read.to, sure[i]))
	}
	for _, r := range rungs {
		for _, x := range []units.Length{r.Bored, r.Finish.Min, r.Finish.Max} {
			if x != 0 {
				s.cover(mm(x), mm(x))
			}
		}
	}
	f := factor(s.to-s.from, tall)
	height := float64((s.to - s.from) * f)
	y := scale{zero: s.to, at: top, factor: -f}
	d.Height = top + height + 4 + 3*row
	for _, r := range rungs {
		if r.Finish.HasMin() && r.Finish.HasMax() {
			d.add(page.Area{Points: rectangle(page.Point{X: left, Y: y.of(mm(r.Finish.Max))}, page.Point{X: right, Y: y.of(mm(r.Finish.Min))})})
		}
		if r.Bored != 0 {
			d.line(page.Dashed, page.Point{X: left - 2, Y: y.of(mm(r.Bored))}, page.Point{X: right, Y: y.of(mm(r.Bored))})
			d.label(r.Name, page.End, stacked(page.Point{X: left - 3, Y: y.of(mm(r.Bored)) + 1}, -1)...)
			d.say("%s: bore to %s.", r.Name, d.size(r.Bored))
		}
	}
	wide := (right - left) / float64(len(columns))
	for i, c := range columns {
		from, to := left+float64((float64(i)+0.15)*wide), left+float64((float64(i)+0.85)*wide)
		middle := (from + to) / 2
		g := c.Geometry
		largest := mm(g.Largest.Size.Value)
		d.add(page.Area{Points: rectangle(page.Point{X: from, Y: y.of(largest)}, page.Point{X: to, Y: y.of(mm(g.Smallest.Size.Value))})})
		d.add(page.Area{Points: rectangle(page.Point{X: from, Y: y.of(sure[i])}, page.Point{X: to, Y: y.of(mm(c.CleanUp.Min.Value))}), Hatched: true})
		d.add(page.Line{Points: rectangle(page.Point{X: from, Y: y.of(sure[i])}, page.Point{X: to, Y: y.of(mm(g.Smallest.Size.Value))}), Closed: true})
		u, err := half(g.Largest.Size)
		if err != nil {
			return page.Picture{}, err
		}
		d.add(page.Dot{At: page.Point{X: middle, Y: y.of(largest)}, From: page.Point{X: middle, Y: y.of(largest - u)}, To: page.Point{X: middle, Y: y.of(largest + u)},
			Text: fmt.Sprintf("%s, largest read: %s", c.Name, g.Largest.Size.Format(d.unit))})
		d.say("Cylinder %s: read from %s to %s; cleans up at %s to %s.", c.Name, d.size(g.Smallest.Size.Value), d.size(g.Largest.Size.Value), d.size(c.CleanUp.Min.Value), c.CleanUp.Max.Format(d.unit))
		if c.Rung >= 0 && c.Rung < len(rungs) {
			if w := rungs[c.Rung].Finish; w.HasMin() && w.HasMax() {
				d.add(page.Line{Points: rectangle(page.Point{X: from, Y: y.of(mm(w.Max))}, page.Point{X: to, Y: y.of(mm(w.Min))}), Closed: true, Stroke: page.Thick})
			}
			d.say("Chosen: %s.", rungs[c.Rung].Name)
		}
		d.label(c.Name, page.Middle, stacked(page.Point{X: middle, Y: top + height + 2 + page.LetterHeight}, 1)...)
	}
	d.bar(scale{factor: f}, page.Point{X: 1, Y: d.Height - 2})
	d.note("Sizes at 20 °C, %s, upward. Toned: from the least read to the largest; hatched: where the clean-up may lie. A size serves where its dashed line, to bore to, is above the hatching; above the line is its finish window, thick where it is chosen.", ratio(f))
	return d.Picture, nil
}
