// SPDX-License-Identifier: BSD-3-Clause

package picture

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

// Marks are sizes to see a bore against; those left at zero are left out.
type Marks struct {
	New     units.Limits // of a new bore, whose greatest is drawn
	Service units.Length // limit
	Bored   units.Length // to bore to, which leaves the honing
	Finish  units.Limits // window of the finished bore
}

// A mark is one size, or the two ends of a window.
type mark struct {
	name  string
	sizes []units.Length
	drawn bool
}

// lines returns the marks that are given, the most wanted first.
func (m Marks) lines() []mark {
	var list []mark
	one := func(name string, size units.Length) {
		if size != 0 {
			list = append(list, mark{name: name, sizes: []units.Length{size}})
		}
	}
	one("limit", m.Service)
	one("new", m.New.Max)
	one("bore to", m.Bored)
	if m.Finish.HasMin() && m.Finish.HasMax() && m.Finish.Min < m.Finish.Max {
		list = append(list, mark{name: "finish", sizes: []units.Length{m.Finish.Min, m.Finish.Max}})
	} else {
		one("finish", max(m.Finish.Min, m.Finish.Max))
	}
	return list
}

// Wear draws a bore along its wall: depth to scale from the deck down, diameter across and magnified. There is a dot at
// each place read, and no line between them; the largest and the least at each depth have their axis beside them. A
// strip at the side is hatched where nothing was read, with ring travel beside it, and ports are bands. A mark so
// far off that the readings would shrink to a point is said and not drawn. What holds no reading is [ErrNothing].
func Wear(g bore.Geometry, l bore.Layout, m Marks, unit units.Length) (page.Picture, error) {
	const (
		strip, stripTo = 15.0, 19.0 // the wall, seen from the side
		travel         = 21.5
		left, right    = 26.0, 87.0 // the diameters
		top            = 3 * row    // below what the marks are called
		tall           = 100.0
	)
	planes := slices.Concat(g.Planes, g.Bridges)
	slices.SortStableFunc(planes, func(a, b bore.Plane) int { return cmp.Compare(a.Depth, b.Depth) })
	d := newDrawing("Wear down the wall", unit)
	span, err := readSpan(planes)
	if err != nil {
		return page.Picture{}, err
	}
	readings := max(span.to-span.from, 0.02)
	drawn := func(marks ...units.Length) bool { // makes room for marks that are near enough, all or none
		wider := span
		for _, s := range marks {
			wider.cover(mm(s), mm(s))
		}
		if wider.to-wider.from > 2*readings {
			return false
		}
		span = wider
		return true
	}
	lines := m.lines()
	for i := range lines {
		lines[i].drawn = drawn(lines[i].sizes...)
	}
	f := factor(span.to-span.from, right-left-4)
	middle := (span.from + span.to) / 2
	x := scale{zero: middle, at: (left + right) / 2, factor: f}

	deepest := max(l.Length, l.RingBottom, planes[len(planes)-1].Depth, 1*units.Millimetre)
	fy := factor(mm(deepest), tall)
	y := scale{at: top, factor: fy}
	bottom := y.of(mm(deepest))
	d.Height = bottom + 3.3*row

	// What there is down the wall.
	at := func(xx float64, depth units.Length) page.Point { return page.Point{X: xx, Y: y.of(mm(depth))} }
	d.label("deck", page.Start, page.Point{X: 0, Y: top - 1})
	d.line(page.Thin, at(strip, 0), at(right, 0))
	d.add(page.Line{Points: rectangle(at(strip, 0), at(stripTo, deepest)), Closed: true})
	unread(d, planes, deepest, strip, stripTo, y)
	if l.RingBottom != 0 {
		d.line(page.Thick, at(travel, l.RingTop), at(travel, l.RingBottom))
		d.note("The thick line at the side is ring travel, from %s to %s.", d.plain(l.RingTop), d.plain(l.RingBottom))
	}
	for i, p := range l.Ports {
		d.say("Port %s from %s to %s.", portName(p, i), d.plain(p.From), d.plain(p.To))
		d.add(page.Area{Points: rectangle(at(strip, p.From), at(right, p.To))})
		d.line(page.Dashed, at(stripTo, p.From), at(right, p.From))
		d.line(page.Dashed, at(stripTo, p.To), at(right, p.To))
	}

	// The marks, each with its name above.
	for _, k := range lines {
		text := k.name + " " + d.size(k.sizes[0])
		if len(k.sizes) > 1 {
			text += " to " + d.size(k.sizes[1])
		}
		d.say("%s.", text)
		if !k.drawn {
			d.note("Beyond the paper: %s.", text)
			continue
		}
		for _, s := range k.sizes {
			d.line(page.Dashed, page.Point{X: x.of(mm(s)), Y: top}, page.Point{X: x.of(mm(s)), Y: bottom})
		}
		if len(k.sizes) > 1 {
			d.add(page.Area{Points: rectangle(page.Point{X: x.of(mm(k.sizes[0])), Y: top}, page.Point{X: x.of(mm(k.sizes[1])), Y: bottom})})
		}
		d.label(k.name, page.Middle, stacked(page.Point{X: x.of(mm(k.sizes[0])), Y: top - 1}, -2)...)
	}

	// What was read.
	for _, p := range planes {
		d.label(d.plain(p.Depth), page.Start, page.Point{X: 0, Y: y.of(mm(p.Depth)) + 1})
		for _, q := range p.Places {
			u, err := half(q.Size)
			if err != nil {
				return page.Picture{}, err
			}
			s := mm(q.Size.Value)
			dot := at(x.of(s), p.Depth)
			name := q.Axis.String()
			text := fmt.Sprintf("%s at %s: %s", name, d.plain(p.Depth), q.Size.Format(d.unit))
			d.add(page.Dot{At: dot, From: at(x.of(s-u), p.Depth), To: at(x.of(s+u), p.Depth), Text: text})
			switch q {
			case p.Largest():
				d.label(name, page.Middle, stacked(page.Point{X: dot.X, Y: dot.Y - 1.5}, -1)...)
			case p.Smallest():
				d.label(name, page.Middle, stacked(page.Point{X: dot.X, Y: dot.Y + page.LetterHeight + 1}, 1)...)
			}
			d.say("%s.", text)
		}
	}
	d.ruler(x, left, right, bottom+2)
	d.bar(x, page.Point{X: left, Y: bottom + 2 + 1 + page.LetterHeight + row})
	d.note("Diameters at 20 °C, magnified %s; depths %s. Bars: ± expanded uncertainty, 95 %%.", ratio(f), ratio(fy))
	d.note("Hatched at the side: nothing read there.")
	if len(l.Ports) > 0 {
		d.note("Bands across: ports.")
	}
	return d.Picture, nil
}

// unread hatches the strip wherever no plane is near.
func unread(d *drawing, planes []bore.Plane, deepest units.Length, from, to float64, y scale) {
	const near = 1.0 // on the paper, either side of a plane
	above := y.of(0)
	hatch := func(below float64) {
		if below > above {
			d.add(page.Area{Points: rectangle(page.Point{X: from, Y: above}, page.Point{X: to, Y: below}), Hatched: true})
		}
	}
	for _, p := range planes {
		hatch(y.of(mm(p.Depth)) - near)
		above = y.of(mm(p.Depth)) + near
	}
	hatch(y.of(mm(deepest)))
}

// A span goes from the least to the greatest of what it has covered, in millimetres.
type span struct {
	from, to float64
	any      bool
}

func (s *span) cover(from, to float64) {
	if !s.any {
		s.from, s.to, s.any = from, to, true
	}
	s.from, s.to = min(s.from, from), max(s.to, to)
}

// readSpan returns what the places of the planes cover, with their doubts.
func readSpan(planes []bore.Plane) (span, error) {
	var s span
	for _, p := range planes {
		for _, q := range p.Places {
			u, err := half(q.Size)
			if err != nil {
				return span{}, err
			}
			s.cover(mm(q.Size.Value)-u, mm(q.Size.Value)+u)
		}
	}
	if !s.any {
		return span{}, fmt.Errorf("picture: %w: no place was read", ErrNothing)
	}
	return s, nil
}
