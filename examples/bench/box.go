// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// label returns the words for a field.
func label(path string) string {
	for at := pattern(path); ; {
		if words, ok := boxWords[at]; ok {
			return words
		}
		_, rest, ok := strings.Cut(at, ".")
		if !ok {
			return at
		}
		at = rest
	}
}

// box writes what asks for one field.
func (w *writer) box(path string) { w.boxFor(path, label(path), false) }

// named writes a box that is labelled by where it stands.
func (w *writer) named(path, where string) {
	w.boxFor(path, label(path)+", "+where, !strings.HasSuffix(path, ".confirmed"))
}

// boxFor writes the box of a field. In a cell of a grid its label is heard, and not seen.
func (w *writer) boxFor(path, words string, cell bool) {
	k, now, id := kinds[pattern(path)], w.job.textAt(path), idOf(path)
	w.raw(`<div class="box%s%s%s" id="%s" data-at="%s">`, when(cell, " cell"), when(w.wanted[path], " wanted"), when(k.boxes == 2, " two"), id, text(path))
	about := w.about(path)
	switch {
	case k.several:
		w.raw(`<fieldset><legend>%s</legend>`, text(words))
		l := w.job.at(path)
		for _, c := range k.choices {
			ticked := l != nil && slices.ContainsFunc(l.items, func(n *node) bool { return n.text == c })
			w.raw(`<label class="tick"><input type="checkbox" value="%s"%s/> %s</label>`, text(c), when(ticked, " checked"), text(c))
		}
		w.raw(`</fieldset>`)
	case k.many:
		w.many(k, path, words, about)
	case k.boxes == 0:
		w.raw(`<label class="tick"><input type="checkbox" id="%s-0" value="on"%s%s/> %s</label>`, id, when(now == "true", " checked"), about, text(words))
	case k.choices != nil:
		w.raw(`<label for="%s-0">%s</label>`, id, text(words))
		choices := slices.Concat([]string{""}, k.choices)
		if !slices.Contains(choices, now) { // a text that is none, from a file
			choices = append(choices, now)
		}
		w.choose(id+"-0", about, choices, now, wordNotSaid)
	default:
		if !cell {
			w.raw(`<label for="%s-0">%s</label>`, id, text(words))
		}
		w.inputs(k, path, words, now, about, cell)
	}
	w.faultsAt(path)
	w.raw(`</div>`)
}

// about says of the boxes at a path that they are at fault, and where the words for it are.
func (w *writer) about(path string) string {
	return when(len(w.faults[path]) > 0, ` aria-invalid="true" aria-describedby="`+idOf(path)+`-fault"`)
}

// inputs writes the boxes of a field and what stands between and behind them.
func (w *writer) inputs(k kind, path, words, now, about string, cell bool) {
	id, e := idOf(path), k.split(now)
	if of := pattern(path); now == "" && k.units != nil {
		e.unit = cmp.Or(w.units[of], w.usualUnit(k, path))
	} else if e.unit != "" {
		w.units[of] = e.unit
	}
	if e.join == "" && k.joins != nil {
		e.join = k.joins[0]
	}
	mode := ` inputmode="decimal"`
	if k.words || k.units != nil && e.unit == "" || strings.HasSuffix(path, ".deviation") { // a keypad of numbers may have no minus
		mode = ""
	}
	w.raw(`<span class="parts">`)
	for i := range k.boxes {
		if i == 1 {
			w.joint(k, id, words, e.join)
		}
		w.raw(`<input id="%s-%d" value="%s" autocomplete="off" spellcheck="false"%s%s`, id, i, text(e.parts[i]), mode, about)
		switch {
		case i == 1:
			w.raw(` aria-label="%s"`, text(words+wordSecond))
		case cell:
			w.raw(` aria-label="%s"`, text(words))
		}
		if k.known != nil {
			w.raw(` list="%s-known"`, id)
		}
		w.raw(`/>`)
	}
	if k.units != nil {
		w.choose(id+"-unit", ` class="unit" aria-label="`+text(wordUnit+words)+`"`, slices.Concat(k.units, []string{""}), e.unit, wordAsTyped)
	}
	w.raw(`</span>`)
	if k.known != nil {
		w.raw(`<datalist id="%s-known">`, id)
		for _, v := range k.known {
			w.raw(`<option value="%s"></option>`, text(v))
		}
		w.raw(`</datalist>`)
	}
	if strings.HasSuffix(path, ".lasts") {
		w.raw(`<button type="button" data-clock="%s-0" data-stop="%s">%s</button>`, id, text(wordClockStop), text(wordClock))
	}
}

// joint writes what stands between two boxes: a choice where there are several.
func (w *writer) joint(k kind, id, words, join string) {
	if len(k.joins) > 1 {
		w.choose(id+"-join", ` class="unit" aria-label="`+text(wordJoin+words)+`"`, k.joins, join, "")
		return
	}
	w.raw(`<input type="hidden" value="%s"/><span>%s</span>`, text(join), text(strings.TrimSpace(join)))
}

// usualUnit is the unit that stands beside an empty box, where none of the kind before it has another.
func (w *writer) usualUnit(k kind, path string) string {
	switch {
	case !slices.Equal(k.units, lengths):
		return k.units[0]
	case strings.Contains(path, "texture"):
		return " µm"
	case strings.HasSuffix(path, ".deviation") && w.units["gauge.resolution"] != "":
		return w.units["gauge.resolution"]
	case w.inch:
		return " in"
	}
	return k.units[0]
}

// choose writes a choice of one.
func (w *writer) choose(id, attributes string, choices []string, now, none string) {
	key := strings.Join(choices, "|") + "=" + now + "=" + none
	options, ok := w.options[key] // a grid has the same for every reading
	if !ok {
		options = optionsOf(choices, now, none)
		w.options[key] = options
	}
	w.raw(`<select id="%s"%s>%s</select>`, id, attributes, options)
}

func optionsOf(choices []string, now, none string) string {
	var b strings.Builder
	for _, c := range choices {
		words := strings.TrimSpace(c)
		switch c {
		case "":
			words = none
		case "true":
			words = wordYes
		case "false":
			words = wordNo
		}
		fmt.Fprintf(&b, `<option value="%s"%s>%s</option>`, text(c), when(c == now, " selected"), text(words))
	}
	return b.String()
}

// header writes the box at the head of a row or a column, for all that stands in it.
func (w *writer) header(path, of, now, words string) {
	k, id := kinds[pattern(of)], idOf(path)
	w.raw(`<div class="box cell%s" id="%s" data-at="%s">`, when(w.wanted[path], " wanted"), id, text(path))
	w.inputs(k, path, words, now, w.about(path), true)
	w.faultsAt(path)
	w.raw(`</div>`)
}
