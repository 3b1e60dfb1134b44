// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"html"
	"math"
	"slices"
	"strconv"
	"strings"

	"borewright.example/bore"
	"borewright.example/units"
)

// A grid is a list of readings set out by depth and axis, both as they were typed.
type grid struct {
	depths, axes []string // in the order in which they come first
	cells        map[readingPlace][]int
}

func gridOf(job *node, path string) grid {
	g := grid{cells: map[readingPlace][]int{}}
	l := job.at(path)
	if l == nil {
		return g
	}
	for i := range l.items {
		p := placeOf(job, path, i)
		if !slices.Contains(g.depths, p.depth) {
			g.depths = append(g.depths, p.depth)
		}
		if !slices.Contains(g.axes, p.axis) {
			g.axes = append(g.axes, p.axis)
		}
		g.cells[p] = append(g.cells[p], i)
	}
	return g
}

// all returns the items of a row or a column, as a path has them.
func (g grid) all(in func(readingPlace) bool) string {
	var items []int
	for p, cell := range g.cells {
		if in(p) {
			items = append(items, cell...)
		}
	}
	slices.Sort(items)
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(items), " ", ","), "[]")
}

// places is how many the grid has.
func (g grid) places() (n int) {
	for _, cell := range g.cells {
		n += len(cell)
	}
	return n
}

// head is the path of the box at the head of a row or a column.
func (g grid) head(path, field string, in func(readingPlace) bool) string {
	return fmt.Sprintf("%s[%s].%s", path, g.all(in), field)
}

// added is the path of the head of a row or a column that is added, with so many places, at least one.
func (g grid) added(path, field string, places int) string {
	items := make([]string, max(places, 1))
	for i := range items {
		items[i] = fmt.Sprint(g.places() + i)
	}
	return fmt.Sprintf("%s[%s].%s", path, strings.Join(items, ","), field)
}

// grid writes the readings of one cylinder.
func (w *writer) grid(p part, path string) {
	g := gridOf(w.job, path)
	w.raw(`<div class="group grid" id="%s">`, idOf(path))
	w.raw(`<h3>%s</h3>`, text(partWords[p.key][0]))
	w.faultsAt(path)
	if len(g.depths) > 0 {
		w.places(g, path)
		w.raw(`<div class="row"><b>%s</b><div class="cells">`, text(wordAxisHead))
		for i, axis := range g.axes {
			w.raw(`<div data-column="%d">`, i)
			w.header(g.head(path, "axis", func(p readingPlace) bool { return p.axis == axis }), path+"[].axis", axis, fmt.Sprint(wordAxisHead, " ", i+1))
			w.raw(`</div>`)
		}
		w.raw(`</div></div>`)
		for i, depth := range g.depths {
			w.row(g, path, i, depth)
		}
	}
	w.raw(`<p class="deeds">`)
	if p.key == "proofReadings" {
		w.button("repeat", path, path, wordPlaces)
	} else {
		id := idOf(path) + "-axes"
		w.raw(`<label for="%s">%s</label> <select id="%s" data-parts aria-describedby="%s-hint">`, id, text(wordAxes), id, id)
		for n := 1; n <= 6; n++ {
			w.raw(`<option%s>%d</option>`, when(n == 5, " selected"), n)
		}
		w.raw(`</select>`)
		w.button("propose", path, path, wordPropose)
		w.raw(`<small id="%s-hint">%s</small>`, id, text(wordAxesHint))
		if from := repeated(w.job, path); from != path && len(g.depths) == 0 {
			w.button("repeat", path, path, wordPlacesOf+w.job.textAt(strings.TrimSuffix(from, "readings")+"name"))
		}
	}
	w.button("depth", path, g.added(path, "depth", len(g.axes)), wordDepth)
	w.button("axis", path, g.added(path, "axis", len(g.depths)), wordAxis)
	w.raw(`</p>`)
	w.far(path)
	w.raw(`</div>`)
}

// row writes the readings at one depth.
func (w *writer) row(g grid, path string, i int, depth string) {
	in := func(p readingPlace) bool { return p.depth == depth }
	w.raw(`<div class="row" data-row="%d"><div class="at"><b>%s</b>`, i, text(wordDepthHead))
	w.header(g.head(path, "depth", in), path+"[].depth", depth, fmt.Sprint(wordDepthHead, " ", i+1))
	w.raw(`</div><div class="cells">`)
	for k, axis := range g.axes {
		cell := g.cells[readingPlace{depth, axis}]
		if len(cell) == 0 {
			continue
		}
		w.raw(`<div data-row="%d" data-column="%d"><span class="axis">%s</span>`, i, k, text(axis))
		for n, item := range cell {
			at := fmt.Sprintf("%s[%d]", path, item)
			w.named(w.readAt(at), strings.TrimSpace(depth+" "+axis)+when(n > 0, wordOnceMore))
			w.faultsAt(at)
		}
		w.raw(`</div>`)
	}
	w.raw(`</div><p class="deeds">`)
	w.button("again", path, fmt.Sprintf("%s[%d].%s", path, g.places(), w.reads()), wordAgain, depth)
	w.button("drop", fmt.Sprintf("%s[%s]", path, g.all(in)), path, wordDropDepth)
	w.raw(`</p></div>`)
}

// reads is the field that a new reading is written in.
func (w *writer) reads() string {
	if w.job.at("gauge.dial") != nil {
		return "deviation"
	}
	return "diameter"
}

// readAt is the field that the reading at a place is written in.
func (w *writer) readAt(place string) string {
	for _, name := range []string{".diameter", ".deviation"} {
		if w.job.at(place+name) != nil {
			return place + name
		}
	}
	return place + "." + w.reads()
}

// boxAt is the path of the box in which what a path names is written: of a grid, the reading of a place, and the head of a row
// or a column for all that stands in it.
func (w *writer) boxAt(path string) string {
	from, to := strings.LastIndexByte(path, '['), strings.LastIndexByte(path, ']')
	if from < 0 || !isGrid(path[:from]) {
		return path
	}
	i, _ := strconv.Atoi(path[from+1 : to])
	list, place, g := path[:from], placeOf(w.job, path[:from], i), gridOf(w.job, path[:from])
	switch path[to+1:] {
	case "":
		return w.readAt(path)
	case ".depth":
		return g.head(list, "depth", func(p readingPlace) bool { return p.depth == place.depth })
	case ".axis":
		return g.head(list, "axis", func(p readingPlace) bool { return p.axis == place.axis })
	}
	return path
}

// far writes a box to tick for each reading, where the library finds one far from the others, or one was confirmed.
func (w *writer) far(path string) {
	l := w.job.at(path)
	if l == nil || len(w.faults[path]) == 0 && !slices.ContainsFunc(l.items, func(n *node) bool { return n.child(step{"confirmed", -1}) != nil }) {
		return
	}
	w.raw(`<details class="more" id="%s-far"><summary>%s</summary>`, idOf(path), text(wordFar))
	for i := range l.items {
		p := placeOf(w.job, path, i)
		w.named(fmt.Sprintf("%s[%d].confirmed", path, i), strings.TrimSpace(p.depth+" "+p.axis))
	}
	w.raw(`</details>`)
}

// places draws where the gauge is to be held: the wall cut open with a line at each depth, and the axes from above.
// Letters of 4 units are 13 pixels high on a telephone.
func (w *writer) places(g grid, path string) {
	const wide, high, top, left, right = 100.0, 66.0, 8.0, 20.0, 50.0
	type mark struct {
		at   float64
		row  int
		name string
	}
	var marks []mark
	deepest := 0.0
	reach := func(field string) float64 {
		l, err := units.ParseLength(w.job.textAt(field))
		if err != nil || l < 0 {
			return 0
		}
		return l.In(units.Millimetre)
	}
	for i, depth := range g.depths {
		if l, err := units.ParseLength(depth); err == nil && l >= 0 && l <= units.MaxLength {
			marks = append(marks, mark{l.In(units.Millimetre), i, depth})
			deepest = max(deepest, l.In(units.Millimetre))
		}
	}
	deepest = max(deepest, reach("engine.layout.length"), reach("engine.layout.ring_bottom"))
	if len(marks) == 0 || deepest == 0 {
		return
	}
	slices.SortFunc(marks, func(a, b mark) int { return int(1000 * (a.at - b.at)) })
	y := func(depth float64) float64 { return top + depth/deepest*(high-top-4) }
	id := idOf(path)
	w.raw(`<figure class="places"><svg viewBox="0 0 %v %v" role="img" aria-labelledby="%s-where"><g fill="none" stroke="currentColor" stroke-width=".4">`, wide, high, id)
	w.raw(`<path d="M%.1f %vV%.1fM%.1f %vV%.1f" stroke-width="1"/><path d="M%v %vH%v" stroke-dasharray="2 1.4"/>`, left, top, y(deepest), right, top, y(deepest), left-4, top, right+4)
	if from, to := reach("engine.layout.ring_top"), reach("engine.layout.ring_bottom"); to > from {
		w.raw(`<path d="M%.1f %.1fH%.1fV%.1fH%.1f" stroke-width=".3"/>`, left-1, y(from), left-4, y(to), left-1)
	}
	last := -100.0
	for _, m := range marks {
		at := max(y(m.at), last+4.6)
		last = at
		w.raw(`<path d="M%.1f %.1fH%.1f" data-row="%d"/>`, left, y(m.at), right, m.row)
		w.raw(`<text x="%.1f" y="%.1f" font-size="4" fill="currentColor" stroke="none">%s</text>`, right+2, min(at+1.3, high-.5), text(m.name))
	}
	const cx, cy, r = 82.0, 24.0, 11.0
	w.raw(`<circle cx="%v" cy="%v" r="%v" stroke-width="1"/>`, cx, cy, r)
	for i, name := range g.axes {
		var a bore.Axis
		if a.UnmarshalText([]byte(name)) != nil {
			continue
		}
		sin, cos := math.Sincos(float64(a))
		w.raw(`<path d="M%.1f %.1fL%.1f %.1f" data-column="%d"/>`, cx-r*cos, cy+r*sin, cx+r*cos, cy-r*sin, i)
	}
	w.raw(`<text x="%v" y="%v" font-size="4" fill="currentColor" stroke="none" text-anchor="end">%s</text>`, wide, cy+r+6, text(wordThrust+" ↔"))
	w.raw(`</g></svg><figcaption id="%s-where">%s</figcaption></figure>`, id, text(wordWhere))
}

// text returns a text as HTML.
func text(s string) string { return html.EscapeString(s) }
