// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"fmt"

	"borewright.example/bore/surface"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// MaterialRatio draws what five numbers say of a material ratio curve: the share of the wall that stands as high or higher, to
// the right, over its height. It is straight in peaks, core and valleys, the triangles of Rpk and Rvk having the areas
// that they stand for (ISO 13565-2); what runs in is filled, what holds oil hatched, and the equivalent straight line
// dashed. The curve of a profile bends where this one has corners. Numbers that are not all given, or that no curve
// has, are [ErrNothing].
func MaterialRatio(p surface.Plateau) (page.Picture, error) {
	const left, right, top, tall = 4.0, 86.0, row, 56.0
	if !(p.Rk > 0 && p.Rpk > 0 && p.Rvk > 0 && p.Mr1 > 0 && p.Mr1 < p.Mr2 && p.Mr2 < 1) { // NaN too
		return page.Picture{}, fmt.Errorf("picture: %w: no curve of %v", ErrNothing, p)
	}
	d := newDrawing("The material ratio curve", 0)
	peak, core, valley := mm(p.Rpk), mm(p.Rk), mm(p.Rvk)
	f := factor(peak+core+valley, tall)
	y := scale{zero: core + peak, at: top, factor: -f}
	at := func(ratio, height float64) page.Point {
		return page.Point{X: left + float64(ratio*(right-left)), Y: y.of(height)}
	}
	bottom := y.of(-valley)
	d.Height = bottom + 2*row

	d.line(page.Thin, at(0, core+peak), at(0, -valley), at(1, -valley))
	d.line(page.Thin, at(0, core), at(1, core))
	d.line(page.Thin, at(0, 0), at(1, 0))
	d.add(page.Area{Points: []page.Point{at(0, core+peak), at(p.Mr1, core), at(0, core)}},
		page.Area{Points: []page.Point{at(p.Mr2, 0), at(1, -valley), at(1, 0)}, Hatched: true})
	d.line(page.Dashed, at(0, core), at(1, 0))
	d.line(page.Thick, at(0, core+peak), at(p.Mr1, core), at(p.Mr2, 0), at(1, -valley))
	for _, m := range []struct {
		name   string
		ratio  float64
		height float64
		anchor page.Anchor
	}{{"Mr1", p.Mr1, core, page.Start}, {"Mr2", p.Mr2, 0, page.End}} {
		d.line(page.Thin, at(m.ratio, m.height), at(m.ratio, -valley))
		d.label(fmt.Sprintf("%s %.1f %%", m.name, 100*m.ratio), m.anchor, page.Point{X: at(m.ratio, 0).X, Y: bottom + row})
	}
	middle := func(from, to float64) float64 { return y.of((from+to)/2) + page.LetterHeight/2 }
	d.label("Rpk "+fine(p.Rpk), page.End, page.Point{X: right, Y: middle(core, core+peak)}, page.Point{X: right, Y: top})
	d.label("Rk "+fine(p.Rk), page.End, page.Point{X: right, Y: middle(core/2, core)})
	d.label("Rvk "+fine(p.Rvk), page.Start, page.Point{X: at(p.Mr1, 0).X + 2, Y: middle(-valley, 0)})
	d.say("%v.", p)
	d.note("By the five numbers, not a profile: the share of the wall that stands as high or higher, 0 to 100 %%; heights %s.", ratio(f))
	d.note("Filled: peaks that run in. Hatched: valleys that hold oil. Dashed: the equivalent straight line, which falls by Rk.")
	return d.Picture, nil
}

// fine returns a height of a texture as it is printed.
func fine(l units.Length) string { return l.Format(units.Micrometre, 2) }
