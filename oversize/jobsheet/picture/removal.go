// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"

	"borewright.example/bore/hone"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// Removal draws what a setting takes off the diameter, to the right, along the wall, from the top face down. It is computed,
// not read. A removal of no points is [ErrNothing].
func Removal(r hone.Removal, unit units.Length) (page.Picture, error) {
	const left, right, top, tall = 18.0, 87.0, 4.0, 70.0
	if len(r.Points) < 2 || r.Max <= 0 {
		return page.Picture{}, fmt.Errorf("picture: %w: nothing is taken off", ErrNothing)
	}
	d := newDrawing("What honing takes off along the wall", unit)
	deepest := r.Points[len(r.Points)-1].Depth
	f, fy := factor(mm(r.Max), right-left), factor(mm(deepest), tall)
	x, y := scale{at: left, factor: f}, scale{at: top, factor: fy}
	bottom := y.of(mm(deepest))
	d.Height = bottom + 4*row
	d.line(page.Thin, page.Point{X: left, Y: bottom}, page.Point{X: left, Y: top}, page.Point{X: right, Y: top})
	curve := page.Line{Stroke: page.Thick}
	area := page.Area{Points: []page.Point{{X: left, Y: top}}}
	for _, p := range r.Points {
		curve.Points = append(curve.Points, page.Point{X: x.of(mm(p.Diameter)), Y: y.of(mm(p.Depth))})
	}
	area.Points = append(append(area.Points, curve.Points...), page.Point{X: left, Y: bottom})
	d.add(area, curve)
	for _, depth := range []units.Length{0, deepest / 2, deepest} {
		d.label(d.plain(depth), page.Start, page.Point{X: 0, Y: y.of(mm(depth)) + 1})
	}
	d.ruler(x, left, right, bottom+2)
	d.say("%s at the top face, %s half-way down, %s at the bottom; from %s to %s in all.", d.size(r.Top), d.size(r.Middle), d.size(r.Bottom), d.size(r.Min), d.size(r.Max))
	d.note("Off the diameter, magnified %s; depths %s. Computed: the wall is straight to %s afterwards if it was straight before.", ratio(f), ratio(fy), d.size(r.Straightness))
	return d.Picture, nil
}
