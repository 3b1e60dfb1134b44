// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"
	"slices"

	"borewright.example/bore/surface"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// Texture draws a roughness profile, a length of it to the right, and beside it its material ratio curve on the same scale
// of heights: the share of that length which stands as high or higher, with the equivalent straight line dashed, whose ends
// run through both as the top and the ground of the core (ISO 13565-2). What stands above the core runs in, what lies below
// holds oil; of the curve the one is filled and the other hatched. A roughness without points, or all of one height, is
// [ErrNothing].
func Texture(title string, r surface.Roughness) (page.Picture, error) {
	const left, right, from, to, top, tall = 1.0, 43.0, 47.0, 89.0, row, 40.0
	points, curve := r.Points(), r.Curve()
	highest, lowest := curve.Height(0), curve.Height(1)
	if len(points) == 0 || highest == lowest {
		return page.Picture{}, fmt.Errorf("picture: %w: a texture of no height", ErrNothing)
	}
	p := curve.Plateau()
	d := newDrawing(title, 0)
	// The ends of the equivalent line may lie beyond every height.
	y := scale{zero: mm(max(highest, p.Top)), at: top}
	y.factor = -factor(y.zero-mm(min(lowest, p.Bottom)), tall)
	x := scale{zero: mm(points[0].X), at: left}
	x.factor = factor(mm(points[len(points)-1].X)-x.zero, right-left)
	bottom := y.of(mm(min(lowest, p.Bottom)))
	d.Height = bottom + 2*row

	for _, level := range [...]units.Length{p.Top, p.Bottom} {
		d.line(page.Thin, page.Point{X: left, Y: y.of(mm(level))}, page.Point{X: to, Y: y.of(mm(level))})
	}
	profile := page.Line{}
	for _, q := range extreme(points, func(p surface.Point) float64 { return mm(p.Z) }) {
		profile.Points = append(profile.Points, page.Point{X: x.of(mm(q.X)), Y: y.of(mm(q.Z))})
	}
	d.add(profile)

	d.line(page.Thin, page.Point{X: from, Y: top}, page.Point{X: from, Y: bottom}, page.Point{X: to, Y: bottom})
	at := func(share float64, height units.Length) page.Point {
		return page.Point{X: from + float64(share*(to-from)), Y: y.of(mm(height))}
	}
	stretch := func(from, to float64) (points []page.Point) { // of the curve
		const steps = 60
		for i := range steps + 1 {
			share := from + float64((to-from)*float64(i))/steps
			points = append(points, at(share, curve.Height(share)))
		}
		return points
	}
	peaks, core, valleys := stretch(0, p.Mr1), stretch(p.Mr1, p.Mr2), stretch(p.Mr2, 1)
	d.add(page.Area{Points: append(slices.Clone(peaks), at(0, p.Top))}, page.Area{Points: append(slices.Clone(valleys), at(1, p.Bottom)), Hatched: true})
	d.line(page.Dashed, at(0, p.Top), at(1, p.Bottom))
	d.line(page.Thick, slices.Concat(peaks, core, valleys)...)

	foot := bottom + row
	d.bar(x, page.Point{X: left, Y: foot})
	d.label(fmt.Sprintf("%.1f %%", 100*p.Mr1), page.Start, page.Point{X: from, Y: foot})
	d.label(fmt.Sprintf("%.1f %%", 100*p.Mr2), page.End, page.Point{X: to, Y: foot})
	d.label("Rpk "+fine(p.Rpk), page.End, page.Point{X: to, Y: top + page.LetterHeight})
	d.label("Rvk "+fine(p.Rvk), page.Start, page.Point{X: from + 1, Y: bottom - 1})
	d.say("%v.", p)
	d.note("Between the lines the core, Rk %s. Heights %s, along the wall %s.", fine(p.Rk), ratio(-y.factor), ratio(x.factor))
	d.note("Right: the share of the wall that stands as high or higher, 0 to 100 %%, with Mr1 and Mr2. Filled: peaks that run in. Hatched: valleys that hold oil. Dashed: the equivalent straight line, which falls by Rk.")
	if p.Core != "" {
		d.note("The five numbers mean little here: %v.", p.Core)
	}
	return d.Picture, nil
}
