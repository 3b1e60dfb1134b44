// SPDX-License-Identifier: BSD-3-Clause

package show

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// mostAxes is along how many axes sizes are printed: of a trace there are more, of which four are.
const mostAxes = 6

// Axes returns the axes of readings, in the order of their angles.
func Axes(rs []bore.Reading) []bore.Axis {
	axes := make([]bore.Axis, len(rs))
	for i, r := range rs {
		axes[i] = r.Axis
	}
	slices.Sort(axes)
	return slices.Compact(axes)
}

// axesRead returns the axes that a bore was read along.
func axesRead(g bore.Geometry) []bore.Axis {
	axes := make([]bore.Axis, 0, 64)
	for _, planes := range [...][]bore.Plane{g.Planes, g.Bridges} {
		for i := range planes {
			for k := range planes[i].Places {
				axes = append(axes, planes[i].Places[k].Axis)
			}
		}
	}
	slices.Sort(axes)
	return slices.Compact(axes)
}

// printed returns those of the axes that are printed: of many, the four that are nearest to eighths of a turn.
func printed(axes []bore.Axis) []bore.Axis {
	if len(axes) <= mostAxes {
		return axes
	}
	var few []bore.Axis
	for i := range 4 {
		eighth := bore.Axis(45*units.Degree) * bore.Axis(i)
		few = append(few, slices.MinFunc(axes, func(a, b bore.Axis) int {
			return cmp.Compare(max(a-eighth, eighth-a), max(b-eighth, eighth-b))
		}))
	}
	return slices.Compact(few)
}

// Printed returns the places along those axes that are printed.
func Printed(rs []bore.Reading) []bore.Reading {
	axes := printed(Axes(rs))
	return slices.DeleteFunc(rs, func(r bore.Reading) bool { return !slices.Contains(axes, r.Axis) })
}

// Few returns a bore with the places along the axes that are printed alone, and the largest and the smallest of each depth;
// fewer says whether any is left out.
func Few(g bore.Geometry) (few bore.Geometry, fewer bool) {
	read := axesRead(g)
	if len(read) <= mostAxes {
		return g, false
	}
	axes := printed(read)
	g.Planes = slices.Clone(g.Planes)
	for i, p := range g.Planes {
		most, least := p.Largest().Axis, p.Smallest().Axis
		g.Planes[i].Places = slices.DeleteFunc(slices.Clone(p.Places), func(q bore.Place) bool {
			return !slices.Contains(axes, q.Axis) && q.Axis != most && q.Axis != least
		})
	}
	return g, true
}

// Sizes is a table with a row for each depth and a column for each axis, in the first unit; each says the doubt that all
// sizes have, or all ovalities, in a sentence below it.
func (s In) Sizes(g bore.Geometry) (rows [][]string, each string) {
	in := In{s.First()}
	planes := slices.Concat(g.Planes, g.Bridges)
	slices.SortStableFunc(planes, func(a, b bore.Plane) int { return cmp.Compare(a.Depth, b.Depth) })
	read := axesRead(g)
	axes := printed(read)
	rows = [][]string{append(depthHead(axes), "ovality")}
	for _, plane := range planes {
		row := make([]string, 0, len(axes)+2)
		row = append(row, in.Plain(plane.Depth))
		for _, a := range axes {
			cell := "–"
			for _, q := range plane.Places {
				if q.Axis == a {
					cell = in.Estimate(q.Size)
				}
			}
			row = append(row, cell)
		}
		cell := "–"
		if plane.HasOvality {
			cell = in.Estimate(plane.Ovality)
		}
		if slices.ContainsFunc(g.Bridges, func(b bore.Plane) bool { return b.Depth == plane.Depth }) {
			cell = "between ports"
		}
		rows = append(rows, append(row, cell))
	}
	last := len(axes) + 1
	for _, of := range [...]struct {
		what     string
		from, to int
	}{{"size", 1, last}, {"ovality", last, last + 1}} {
		doubt := alikeDoubt(rows[1:], of.from, of.to)
		switch {
		case doubt == "":
		case each == "":
			each = "Each " + of.what + " ± " + doubt
		default:
			each += ", each " + of.what + " ± " + doubt
		}
	}
	if each != "" {
		each += "."
	}
	return rows, each
}

// alikeDoubt returns the doubt that every cell of some columns prints, with its unit, and takes it off them; "" where
// they differ, or there are none.
func alikeDoubt(rows [][]string, from, to int) (doubt string) {
	for _, row := range rows {
		for _, cell := range row[from:to] {
			_, after, ok := strings.Cut(cell, " ± ")
			if ok && after != cmp.Or(doubt, after) {
				return ""
			}
			doubt = cmp.Or(doubt, after)
		}
	}
	for _, row := range rows {
		for i := from; i < to; i++ {
			row[i], _, _ = strings.Cut(row[i], " ± ")
		}
	}
	return doubt
}

// Figures are the rows of what a bore comes to: its largest, ovality, taper, spread, ridge and shape. of says which axes
// the table of sizes has, where it has not all of them.
func (s In) Figures(g bore.Geometry) (rows [][]string, of string) {
	if axes := axesRead(g); len(axes) > mostAxes {
		of = fmt.Sprintf("Four of %d axes are printed; the figures below are of all.", len(axes))
	}
	rows = [][]string{{"largest", s.Estimate(g.Largest.Size), fmt.Sprintf("at %s, %s", s.Plain(g.Largest.Depth), g.Largest.Axis.String())}}
	if g.HasOvality {
		where := "at " + s.Plain(g.OvalityAt)
		for _, plane := range g.Planes {
			if plane.Depth == g.OvalityAt && plane.TwoLobe != (bore.Lobes{}) && StandsOut(g.Ovality) {
				where += fmt.Sprintf("; as two lobes through all axes, largest about %s from thrust", Degrees(plane.TwoLobe.Axis))
			}
		}
		rows = append(rows, []string{"ovality", s.Estimate(g.Ovality), where})
	}
	if len(g.Tapers) > 0 {
		rows = append(rows, []string{"taper", s.Estimate(g.Taper.Size), s.taper(g.Taper)})
	}
	rows = append(rows, []string{"greatest minus least", s.Estimate(g.Spread), ""})
	if g.Ridge != (uncertainty.Estimate{}) {
		words := "at the top of ring travel, lost in the doubt"
		if g.HasRidge {
			words = "at the top of ring travel, on the diameter"
		}
		rows = append(rows, []string{"ridge", s.Estimate(g.Ridge), words})
	}
	if g.Shape != "" {
		rows = append(rows, []string{"shape", g.Shape, ""})
	}
	return rows, of
}

func (s In) taper(t bore.Taper) string {
	end := "larger at the deck"
	if !StandsOut(t.Size) {
		end = "none that stands out of the doubt"
	} else if t.Size.Value < 0 {
		end = "smaller at the deck: worn the other way, or choked on purpose"
	}
	return fmt.Sprintf("%s axis, %s to %s, %s", t.Axis.String(), s.Plain(t.From), s.Plain(t.To), end)
}

// Degrees is an angle to a whole one.
func Degrees(a units.Angle) string { return fmt.Sprintf("%.0f°", a.In(units.Degree)) }

// StandsOut reports whether a difference is larger than its expanded uncertainty.
func StandsOut(e uncertainty.Estimate) bool {
	u, err := e.Expanded(0.95)
	return err != nil || e.Value.Abs() > u
}

// Blanks is a table with a row for each depth of the places, as depth says it, a column for each axis, and room to write:
// blank where there is a place.
func Blanks(depth func(units.Length) string, places []bore.Reading, blank string) [][]string {
	axes := printed(Axes(places))
	rows := [][]string{depthHead(axes)}
	for n, r := range places {
		if n > 0 && places[n-1].Depth == r.Depth {
			continue
		}
		if d := depth(r.Depth); rows[len(rows)-1][0] != d {
			row := make([]string, len(axes)+1)
			row[0] = d
			for i, a := range axes {
				row[i+1] = "–"
				if slices.ContainsFunc(places, func(q bore.Reading) bool { return q.Depth == r.Depth && q.Axis == a }) {
					row[i+1] = blank
				}
			}
			rows = append(rows, row)
		}
	}
	return rows
}

// depthHead is the head of a table with a row for each depth and a column for each axis.
func depthHead(axes []bore.Axis) []string {
	head := make([]string, 1, len(axes)+2)
	head[0] = "depth"
	for _, a := range axes {
		head = append(head, a.String())
	}
	return head
}
