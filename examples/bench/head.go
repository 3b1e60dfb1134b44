// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"slices"
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
		w.rows()
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

// red writes what is at fault.
func (w *writer) red() {
	if len(w.faults)+len(w.adrift) == 0 {
		return
	}
	w.raw(`<h2>%s</h2><ul>`, text(wordFaults))
	seen := map[string]bool{}
	for _, at := range w.anchor {
		if list := w.faults[at]; len(list) > 0 && !seen[at] {
			seen[at] = true
			w.raw(`<li><a href="#%s">%s</a>: %s</li>`, idOf(at), text(w.where(at)), text(strings.Join(list, "; ")))
		}
	}
	for _, f := range w.adrift {
		w.raw(`<li>%s `, text(wordOutside+" "+f.String()))
		if w.job.at(f.Path) != nil && f.Path != "" {
			w.button("drop", f.Path, wordTakeOut)
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
		w.raw(`<li><a href="#%s">%s</a></li>`, idOf(a), text(w.where(a)))
	}
	w.raw(`</ul>`)
}

// rows writes the rows of the ledger that call for the next step.
func (w *writer) rows() {
	rows := w.pressing()
	if said := slices.DeleteFunc(slices.Clone(rows), func(r jobsheet.Row) bool { return len(r.Give) == 0 }); len(said) > 0 {
		rows = said // the others follow from these
	}
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
	const most = 6
	for i, group := range groups {
		if i == most {
			w.raw(`<li>%s</li>`, text(fmt.Sprintf(wordMoreRows, len(groups)-most)))
			break
		}
		w.raw(`<li>`)
		for k, r := range group {
			w.raw("%s", when(k > 0, "; ")+text(rowWords(r)))
			if slices.Contains(r.Give, "confirmed") {
				_, rest, _ := strings.Cut(r.Says, r.Of+" ")
				value, _, _ := strings.Cut(rest, ": ")
				w.button("confirm", r.Of, wordRight, value)
			}
		}
		if len(links[i]) > 0 {
			w.links(links[i])
		}
		w.raw(`</li>`)
	}
	w.raw(`</ul>`)
}

// rowWords says a row in a few words.
func rowWords(r jobsheet.Row) string {
	says := r.Reason.String()
	if r.Says != "" {
		says = r.Says
	}
	return when(r.Cylinder != "", r.Cylinder+": ") + r.Demand.String() + when(r.Of != "", ", "+r.Of) + ": " + says
}

// where names a box or a group, and the cylinder it belongs to.
func (w *writer) where(at string) string {
	words := label(at)
	if p, ok := lists[pattern(at)+"[]"]; ok {
		words = partWords[p.key][0]
	} else if p, ok := lists[pattern(at)]; ok {
		words = partWords[p.key][0] + " " + strings.Trim(at[strings.LastIndexByte(at, '['):], "[]")
	}
	if list, err := steps(at); err == nil && len(list) > 2 && list[0].name == "cylinders" {
		words = partWords["each"][0] + " " + w.job.textAt(fmt.Sprintf("cylinders[%d].name", list[1].item)) + ": " + words
	}
	return words
}

// step names what the page asks for, so that another part is unfolded when that changes.
func (w *writer) step() string {
	if w.plan.sheet != nil {
		return w.plan.sheet.Next.String()
	}
	if len(w.asked) > 0 {
		return w.asked[0]
	}
	return ""
}

// brokenHead says that the library broke.
func brokenHead(why string) string {
	return `<p class="fault">` + text(wordBroken+why+wordBrokenMore) + `</p>`
}
