// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"borewright.example/oversize/jobsheet"
)

// head writes what is next, needed or at fault, with a way to the boxes that would settle it.
func (w *writer) head(note string) string {
	w.Reset()
	if note != "" {
		w.raw(`<p class="fault">%s</p>`, text(note))
	}
	if w.plan.broken != "" {
		w.raw(`%s`, brokenHead(w.plan.broken))
		return w.String()
	}
	if s := w.plan.sheet; s != nil {
		w.raw(`<h2>%s</h2>`, text(wordNext+s.Next.String()))
		switch s.Next {
		case jobsheet.StepFitSleeve, jobsheet.StepBore, jobsheet.StepHone, jobsheet.StepDeglaze, jobsheet.StepRework:
			w.raw(`<p>%s</p>`, text(wordSizes))
		}
		w.rows()
		w.taken()
		return w.String()
	}
	w.red()
	if len(w.asked) > 0 {
		words := wordNeeded
		if blank(w.job) {
			words = wordStart
		}
		w.raw(`<p>%s</p>`, text(words))
		w.links(w.asked)
	}
	return w.String()
}

// now says what is next, needed or at fault in a few words.
func (w *writer) now() Lead {
	switch {
	case w.plan.sheet != nil:
		return Lead{"head", wordNext + w.plan.sheet.Next.String()}
	case len(w.adrift) > 0:
	case len(w.faults) > 0:
		at := w.anchor[slices.IndexFunc(w.anchor, func(at string) bool { return len(w.faults[at]) > 0 })]
		return Lead{idOf(w.boxAt(at)), wordFault + w.where(at)}
	case len(w.asked) > 0:
		return Lead{idOf(w.boxAt(w.asked[0])), wordAsked + w.where(w.asked[0])}
	}
	return Lead{"head", wordNothing}
}

// red writes what is at fault.
func (w *writer) red() {
	if len(w.faults)+len(w.adrift) == 0 {
		return
	}
	w.raw(`<h2>%s</h2><ul>`, text(wordFaults))
	seen := map[string]bool{}
	for _, at := range w.anchor {
		if list := w.faults[at]; len(list) > 0 && !seen[w.boxAt(at)] {
			seen[w.boxAt(at)] = true
			w.raw(`<li><a href="#%s">%s</a>: %s</li>`, idOf(w.boxAt(at)), text(w.where(at)), text(strings.Join(list, "; ")))
		}
	}
	for _, f := range w.adrift {
		w.raw(`<li>%s `, text(wordOutside+" "+f.String()))
		if w.job.at(f.Path) != nil && f.Path != "" {
			w.button("drop", f.Path, "head", wordTakeOut)
		}
		w.raw(`</li>`)
	}
	w.raw(`</ul>`)
}

// blank reports whether nothing has been filled in yet.
func blank(job *node) bool {
	return len(job.members) == 0 || len(job.members) == 1 && job.at("version") != nil
}

// links writes the ways to boxes.
func (w *writer) links(at []string) {
	w.raw(`<ul class="links">`)
	for _, a := range at {
		w.raw(`<li><a href="#%s">%s</a></li>`, idOf(w.boxAt(a)), text(w.where(a)))
	}
	w.raw(`</ul>`)
}

// rows writes the rows of the ledger that call for the next step.
func (w *writer) rows() {
	rows := w.pressing()
	// What the same boxes would settle stands together.
	var groups [][]jobsheet.Row
	var links [][]string
	for _, r := range rows {
		at := w.boxesOf(r)
		i := slices.IndexFunc(links, func(other []string) bool { return slices.Equal(at, other) })
		if i < 0 || len(at) == 0 {
			groups, links = append(groups, nil), append(links, at)
			i = len(groups) - 1
		}
		groups[i] = append(groups[i], r)
	}
	w.raw(`<ul>`)
	const most, mostSaid = 6, 3 // of so many boxes their names say enough
	for i, group := range groups {
		if i == most {
			w.raw(`<li>%s</li>`, text(fmt.Sprintf(wordMoreRows, len(groups)-most)))
			break
		}
		w.raw(`<li>`)
		for k, r := range group {
			if k > 0 && alike(r, group[k-1]) {
				w.raw(", ")
			} else {
				w.raw("%s%s", when(k > 0, "; "), text(when(r.Cylinder != "", partWords["each"][0]+" "+r.Cylinder+": ")))
			}
			if of := w.slipped(r); of != "" {
				value, why, _ := strings.Cut(strings.TrimPrefix(r.Says, r.Of+" "), ": ")
				w.raw("%s", text(fmt.Sprintf(wordSlip, w.where(of), value)+w.plain(why)))
				w.raw(" ")
				w.button("confirm", w.plan.moved.back(r.Of), "head", wordRight, value)
				continue
			}
			w.raw("%s", text(r.Demand.String()+when(r.Of != "", ", "+r.Of)))
			if k+1 == len(group) || !alike(r, group[k+1]) {
				w.raw(":%s", when(len(links[i]) <= mostSaid, " "+text(saysOf(r))))
			}
		}
		if len(links[i]) > 0 {
			w.links(links[i])
		}
		w.raw(`</li>`)
	}
	w.raw(`</ul>`)
}

// alike reports whether the same is said of two rows of one cylinder.
func alike(a, b jobsheet.Row) bool { return a.Cylinder == b.Cylinder && saysOf(a) == saysOf(b) }

func saysOf(r jobsheet.Row) string { return cmp.Or(r.Says, r.Reason.String()) }

// where names a box or a group, and before it the items that it belongs to.
func (w *writer) where(at string) string {
	words := label(at)
	if p, ok := lists[pattern(at)+"[]"]; ok {
		words = partWords[p.key][0]
	} else if strings.HasSuffix(at, "]") {
		words = ""
	}
	if strings.HasPrefix(at, "proof.") { // the survey has the like
		words = partWords["proof"][0] + ": " + words
	}
	for i := strings.LastIndexByte(at, ']'); i > 0; i = strings.LastIndexByte(at[:i], ']') {
		if item := w.item(at[:i+1]); item != "" { // a reading may have no place yet
			words = item + when(words != "", ": ") + words
		}
	}
	return words
}

// item names an item of a list: a cylinder by its name, a reading by its place.
func (w *writer) item(at string) string {
	from := strings.LastIndexByte(at, '[')
	path, key := at[:from], lists[pattern(at)].key
	i, _ := strconv.Atoi(strings.Trim(at[from:], "[]"))
	switch {
	case isGrid(path):
		p := placeOf(w.job, path, i)
		return strings.TrimSpace(p.depth + " " + p.axis)
	case path == "cylinders":
		return partWords["each"][0] + " " + cmp.Or(w.job.textAt(at+".name"), strconv.Itoa(i+1))
	}
	return fmt.Sprint(partWords[key][0], " ", i+1)
}

// plain returns what the library says with the names of the page for paths.
func (w *writer) plain(says string) string {
	words := strings.Split(says, " ")
	for i, word := range words {
		if path := strings.TrimRight(word, ":;,."); strings.HasPrefix(path, "cylinders[") {
			words[i] = w.where(w.plan.moved.back(path)) + word[len(path):]
		}
	}
	return strings.Join(words, " ")
}

// step names what is next and the parts of the form that are open for it, so that others are unfolded when that changes.
func (w *writer) step() string {
	step := strings.Join(w.opened, " ")
	if w.plan.sheet != nil {
		step += ": " + w.plan.sheet.Next.String()
	}
	return step
}

// brokenHead says that the library broke.
func brokenHead(why string) string {
	return `<p class="fault">` + text(wordBroken+why+wordBrokenMore) + `</p>`
}
