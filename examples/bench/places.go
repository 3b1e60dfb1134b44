// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"borewright.example/bore"
	"borewright.example/units"
)

// isGrid reports whether a path is that of a list of readings.
func isGrid(path string) bool { return lists[pattern(path)+"[]"].grid }

// propose adds the places that the layout of the bore wants read, along so many axes, and takes out those proposed
// before that nobody has read.
func propose(_ bench, job *node, e Entry) string {
	if !isGrid(e.At) || len(e.Parts) == 0 {
		return fmt.Sprintf("%.80q: no readings", e.At)
	}
	axes, err := strconv.Atoi(e.Parts[0])
	if err != nil {
		return fmt.Sprintf("%.20q: want a number of axes", e.Parts[0])
	}
	var l bore.Layout
	if given := job.at("engine.layout"); given != nil {
		if err := json.Unmarshal([]byte(given.String()), &l); err != nil {
			return err.Error()
		}
	}
	if l.RingBottom == 0 && strings.Contains(job.textAt("not_known"), notKnown[0]) {
		l.Stroke, _ = units.ParseLength(job.textAt("engine.stroke")) // zero where it is none, which is asked for below
	}
	if l.RingBottom == 0 && l.Stroke == 0 {
		return wordNoLayout
	}
	touches := bore.ThreePoint // the one that shows least, which it stays where no kind can be read
	_ = touches.UnmarshalText([]byte(job.textAt("gauge.kind")))
	plan, err := l.ToRead(axes, touches)
	if err != nil {
		return err.Error()
	}
	unit, places := units.Millimetre, 0
	if inInches(job) {
		unit, places = units.Inch, 2
	}
	var at []readingPlace
	for _, r := range plan {
		at = append(at, readingPlace{r.Depth.Format(unit, places), r.Axis.String()})
	}
	return addPlaces(job, e.At, at)
}

// repeat adds the places of the first readings to those of the finished bore, or to those of another cylinder.
func repeat(_ bench, job *node, e Entry) string {
	from := repeated(job, e.At)
	if !isGrid(e.At) || !isGrid(from) {
		return fmt.Sprintf("%.80q: no readings", e.At)
	}
	var at []readingPlace
	if l := job.at(from); l != nil {
		for i := range l.items {
			at = append(at, placeOf(job, from, i))
		}
	}
	return addPlaces(job, e.At, at)
}

// repeated is the list whose places another has again: of a finished bore its first readings, of these the first that are laid out.
func repeated(job *node, path string) string {
	if bore, ok := strings.CutSuffix(path, "proof"); ok {
		return bore + "readings"
	}
	if l := job.at("cylinders"); l != nil {
		for i := range l.items {
			if from := fmt.Sprintf("cylinders[%d].readings", i); job.at(from) != nil {
				return from
			}
		}
	}
	return path
}

// A readingPlace is where a reading is taken, as typed.
type readingPlace struct{ depth, axis string }

func placeOf(job *node, path string, i int) readingPlace {
	at := fmt.Sprintf("%s[%d].", path, i)
	return readingPlace{job.textAt(at + "depth"), job.textAt(at + "axis")}
}

func (p readingPlace) node() *node {
	n := object()
	for _, f := range []struct{ name, text string }{{"depth", p.depth}, {"axis", p.axis}} {
		if f.text != "" {
			n.setMember(f.name, textNode(f.text))
		}
	}
	return n
}

// addPlaces adds places that are not in a list yet, for those that were in it and are not read.
func addPlaces(job *node, path string, at []readingPlace) string {
	var stands []readingPlace
	if l := job.at(path); l != nil {
		seeds := lists[pattern(path)+"[]"].seeds
		l.items = slices.DeleteFunc(l.items, func(n *node) bool { return waits(n, seeds) })
		for i := range l.items {
			stands = append(stands, placeOf(job, path, i))
		}
	}
	for _, p := range at {
		if slices.Contains(stands, p) {
			continue
		}
		stands = append(stands, p)
		if why := add(job, path, p.node()); why != "" {
			return why
		}
	}
	return ""
}

// widen adds a row to a grid, or a column: a place for each of the axes, or depths, that it has.
func widen(job *node, path, along string) string {
	if !isGrid(path) {
		return fmt.Sprintf("%.80q: no readings", path)
	}
	g := gridOf(job, path)
	have := g.depths
	if along == "axis" {
		have = g.axes
	}
	if len(have) == 0 {
		have = []string{""}
	}
	for _, text := range have {
		p := readingPlace{depth: text}
		if along == "axis" {
			p = readingPlace{axis: text}
		}
		if why := add(job, path, p.node()); why != "" {
			return why
		}
	}
	return ""
}

// again adds a place to be read once more for each axis of a depth.
func again(_ bench, job *node, e Entry) string {
	if !isGrid(e.At) || len(e.Parts) == 0 {
		return fmt.Sprintf("%.80q: no readings", e.At)
	}
	g := gridOf(job, e.At)
	for _, axis := range g.axes {
		p := readingPlace{e.Parts[0], axis}
		if len(g.cells[p]) > 0 {
			if why := add(job, e.At, p.node()); why != "" {
				return why
			}
		}
	}
	return ""
}
