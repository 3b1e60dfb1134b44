// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/oversize/jobsheet"
)

// A writer writes the form of one job as HTML.
type writer struct {
	strings.Builder
	job     *node
	plan    planned
	anchor  []string            // the paths of all boxes and groups, in the order of the form
	faults  map[string][]string // in words, by the box or group that they stand at
	wanted  map[string]bool     // boxes and groups that the step which is on asks for
	asked   []string            // those, in their order
	adrift  []jobsheet.Fault    // of no box
	opened  []string            // the parts of the form that are open for it
	inch    bool
	options map[string]string // of choices, as HTML
	units   map[string]string // the last that stood beside a number, by the pattern of its path
}

func newWriter(job *node, p planned) *writer {
	w := &writer{job: job, plan: p, faults: map[string][]string{}, wanted: map[string]bool{}, inch: inInches(job), options: map[string]string{}, units: map[string]string{}}
	for _, section := range form {
		w.anchors(section, "")
	}
	w.anchor = slices.Compact(w.anchor)
	for _, f := range p.faults {
		at := w.nearest(f.Path)
		switch {
		case at == "":
			w.adrift = append(w.adrift, f)
		case job.at(f.Path) == nil:
			w.wanted[at], w.wanted[w.boxAt(at)] = true, true
		default:
			words := lineWords(at, f.Path) + faultWords(f)
			w.faults[at] = append(w.faults[at], words)
			if head := w.boxAt(at); head != at && !strings.HasSuffix(at, "]") && !slices.Contains(w.faults[head], words) { // of a whole row or column
				w.faults[head] = append(w.faults[head], words)
			}
		}
	}
	for _, r := range w.pressing() {
		for _, at := range w.boxesOf(r) {
			w.wanted[at] = true
		}
	}
	for _, at := range w.anchor {
		if w.wanted[at] && !slices.Contains(w.asked, at) { // cylinders stand in many parts
			w.asked = append(w.asked, at)
		}
	}
	return w
}

// lineWords says which value of a list is meant.
func lineWords(at, path string) string {
	var i int
	if _, err := fmt.Sscanf(strings.TrimPrefix(path, at), "[%d]", &i); err != nil || !kinds[pattern(at)].many {
		return ""
	}
	return fmt.Sprintf(wordValue, i+1)
}

// faultWords says what is wrong with a value, and of a comma what to type.
func faultWords(f jobsheet.Fault) string {
	words := f.Want
	if f.Value != "" {
		words = f.Value + ": " + words
	}
	if number := strings.Trim(f.Value, `"`); partsThousands(number) {
		words += wordComma + strings.Replace(number, ",", ".", 1) + " / " + strings.Replace(number, ",", "", 1)
	}
	return words
}

// inInches reports whether the engine's bore is in inches: what a box without a unit is then taken for.
func inInches(job *node) bool {
	b := job.textAt("engine.bore")
	return strings.HasSuffix(b, "in") || strings.HasSuffix(b, `"`) || strings.HasSuffix(b, "″")
}

// anchors lists the paths that something can stand at.
func (w *writer) anchors(p part, base string) {
	if p.list == "" {
		w.anchorsIn(p, base)
		return
	}
	path := join(base, p.list)
	w.anchor = append(w.anchor, path)
	if l := w.job.at(path); l != nil {
		for i := range l.items {
			item := fmt.Sprintf("%s[%d]", path, i)
			w.anchor = append(w.anchor, item)
			w.anchorsIn(p, item)
		}
	}
}

func (w *writer) anchorsIn(p part, base string) {
	for _, name := range slices.Concat(p.boxes, p.more) {
		w.anchor = append(w.anchor, join(base, name))
	}
	for _, below := range p.parts {
		w.anchors(below, base)
	}
}

// nearest returns the box or group for a path: its own, the first of what it holds, or the list that it is a value of; ""
// where the form has nothing of the kind.
func (w *writer) nearest(path string) string {
	for path != "" {
		if slices.Contains(w.anchor, path) {
			return path
		}
		for _, a := range w.anchor {
			if rest, ok := strings.CutPrefix(a, path); ok && strings.HasPrefix(rest, ".") {
				return a
			}
		}
		i := strings.LastIndexByte(path, '[')
		if i < 0 || !strings.HasSuffix(path, "]") {
			return ""
		}
		path = path[:i]
	}
	return ""
}

func (w *writer) raw(format string, args ...any) { fmt.Fprintf(w, format, args...) }

func when(yes bool, s string) string {
	if yes {
		return s
	}
	return ""
}

// idOf returns the id of what stands at a path.
func idOf(path string) string {
	return strings.Trim(strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r == '_' {
			return r
		}
		return '-'
	}, strings.ReplaceAll(path, "]", "")), "-")
}

// form writes the form, a piece for each step of the work. Of those that are asked for the first is open.
func (w *writer) form() (pieces []Piece) {
	opened := false
	for _, section := range form {
		w.Reset()
		words := partWords[section.key]
		if words[1] != "" {
			w.raw(`<p class="about">%s</p>`, text(words[1]))
		}
		w.body(section, "")
		if section.key == "word" {
			w.openRows()
		}
		piece := Piece{ID: "part-" + section.key, Title: words[0], HTML: w.String()}
		asked, fault := w.holds(section)
		switch {
		case fault:
			piece.Mark = wordMarkFault
		case asked:
			piece.Mark = wordMarkAsked
		}
		piece.Open = fault || asked && !opened
		opened = opened || asked
		if piece.Open {
			w.opened = append(w.opened, section.key)
		}
		pieces = append(pieces, piece)
	}
	return pieces
}

// holds reports whether something is asked for, or at fault, in a part.
func (w *writer) holds(p part) (asked, fault bool) {
	sub := writer{job: w.job}
	sub.anchors(p, "")
	for _, a := range sub.anchor {
		if !slices.Contains(p.fixedLists(), a) {
			asked, fault = asked || w.wanted[a], fault || len(w.faults[a]) > 0
		}
	}
	return asked, fault
}

// fixedLists are the lists that many parts have items of, and so belong to none.
func (p part) fixedLists() []string {
	if p.key == "engine" {
		return nil
	}
	return []string{"cylinders"}
}

// body writes what stands in a part.
func (w *writer) body(p part, base string) {
	w.raw(`<div class="boxes">`)
	for _, name := range p.boxes {
		w.box(join(base, name))
	}
	w.raw(`</div>`)
	for _, below := range p.parts {
		switch {
		case below.grid:
			w.grid(below, join(base, below.list))
		case below.list != "":
			w.list(below, base)
		default:
			w.group(below, base)
		}
	}
	if len(p.more) > 0 {
		w.more(p, base)
	}
}

// group writes a part under a head of its own.
func (w *writer) group(p part, base string) {
	w.raw(`<fieldset class="group"><legend>%s</legend>`, text(partWords[p.key][0]))
	if about := partWords[p.key][1]; about != "" {
		w.raw(`<p class="about">%s</p>`, text(about))
	}
	w.body(p, base)
	w.raw(`</fieldset>`)
}

// more writes the fields that most jobs leave out, unfolded where one is asked for or at fault.
func (w *writer) more(p part, base string) {
	open, filled := false, 0
	for _, name := range p.more {
		at := join(base, name)
		open = open || w.wanted[at] || len(w.faults[at]) > 0
		if w.job.at(at) != nil {
			filled++
		}
	}
	w.raw(`<details class="more" id="more-%s-%s"%s><summary>%s%s</summary><div class="boxes">`, p.key, idOf(base), when(open, " open"), text(wordMore), when(filled > 0, fmt.Sprintf(" (%d)", filled)))
	for _, name := range p.more {
		w.box(join(base, name))
	}
	w.raw(`</div></details>`)
}

// list writes the items of a list, and what adds one.
func (w *writer) list(p part, base string) {
	path := join(base, p.list)
	words := partWords[p.key]
	shared := p.fixed && p.key != "each" // else its items stand in many parts, and have their id in the first
	w.raw(`<div class="group"%s>`, when(!shared, ` id="`+idOf(path)+`"`))
	if words[1] != "" {
		w.raw(`<p class="about">%s</p>`, text(words[1]))
	}
	if !shared {
		w.faultsAt(path)
	}
	n := 0
	if l := w.job.at(path); l != nil && l.kind == '[' {
		n = len(l.items)
	}
	for i := range n {
		item := fmt.Sprintf("%s[%d]", path, i)
		name := fmt.Sprint(i + 1)
		if p.fixed {
			name = cmp.Or(w.job.textAt(item+".name"), name)
		}
		w.raw(`<fieldset class="item"%s><legend>%s</legend>`, when(!shared, ` id="`+idOf(item)+`"`), text(words[0]+" "+name))
		if !shared {
			w.faultsAt(item)
		}
		w.body(p, item)
		if !p.fixed {
			w.button("drop", item, path, wordRemove)
		}
		w.raw(`</fieldset>`)
	}
	w.raw(`<p class="deeds">`)
	if !p.fixed {
		w.button("add", path, fmt.Sprintf("%s[%d]", path, n), wordAdd+words[0])
	}
	if p.key == "gaps" {
		w.button("rings", path, path, wordRowsRings)
	}
	if p.empty && n == 0 {
		w.raw(`<label class="tick"><input type="checkbox" id="%s-none" data-do="none" data-at="%s"%s/> %s</label>`, idOf(path), text(path), when(w.job.at(path) != nil, " checked"), text(wordNone))
	}
	w.raw(`</p></div>`)
}

// button writes a button that does something to what stands at a path, and then leads to what stands at another.
func (w *writer) button(do, at, then, words string, parts ...string) {
	w.raw(`<button type="button" data-do="%s" data-at="%s" data-then="%s"`, do, text(at), idOf(then))
	for _, p := range parts {
		w.raw(` data-part="%s"`, text(p))
	}
	w.raw(`>%s</button>`, text(words))
}

// faultsAt writes what is wrong with what stands at a path.
func (w *writer) faultsAt(path string) {
	if list := w.faults[path]; len(list) > 0 {
		w.raw(`<p class="fault" id="%s-fault">%s</p>`, idOf(path), text(strings.Join(list, "; ")))
	}
}

// openRows offers to have what is open go on somebody's word.
func (w *writer) openRows() {
	if w.plan.sheet == nil {
		return
	}
	next := "accepted[0]"
	if l := w.job.at("accepted"); l != nil {
		next = fmt.Sprintf("accepted[%d]", len(l.items))
	}
	w.raw(`<details class="more" id="open-rows"><summary>%s</summary><ul class="rows">`, text(wordOpenRows))
	for _, r := range w.plan.sheet.Ledger {
		if r.State == jobsheet.StateOpen || r.State == jobsheet.StateFailed {
			w.raw(`<li>%s`, text(r.Demand.String()+when(r.Of != "", ", "+r.Of)+": "+r.Stands))
			w.button("accept", r.Key, next, wordWordOn)
			w.raw(`</li>`)
		}
	}
	w.raw(`</ul></details>`)
}
