// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"slices"
	"strings"
)

// showsMany returns what the box of a list of values shows, a line each, and the unit that stands behind all of them; "" where
// they have no unit in common.
func (k kind) showsMany(n *node) (lines, unit string) {
	if n == nil || n.kind != '[' {
		if n != nil { // what is no list, as it stands
			lines = n.shown()
		}
		return lines, ""
	}
	var values []string
	for _, item := range n.items {
		values = append(values, item.shown())
	}
	for _, u := range k.units {
		if len(values) > 0 && !slices.ContainsFunc(values, func(v string) bool { return !strings.HasSuffix(v, u) || strings.TrimSuffix(v, u) == "" }) {
			for i := range values {
				values[i] = strings.TrimSuffix(values[i], u)
			}
			unit = u
			break
		}
	}
	return strings.Join(values, "\n"), unit
}

// valuesIn takes apart what was typed into the box of a list: a value on each line, or numbers with spaces between them, as
// instruments write them, or with commas, as people do.
func (k kind) valuesIn(text, unit string) (values []string) {
	for _, line := range strings.FieldsFunc(text, func(r rune) bool { return r == '\n' || r == '\r' || r == ';' || r == '\t' }) {
		words := strings.Fields(line)
		if slices.ContainsFunc(words, func(w string) bool { return strings.Trim(w, "0123456789+-.,") != "" }) { // "3 1/8", "0.02 mm"
			words = []string{strings.Join(words, " ")}
		}
		for i, w := range words {
			if i < len(words)-1 {
				w = strings.TrimSuffix(w, ",")
			}
			for _, w := range apart(w) {
				values = append(values, k.point(w, unit))
			}
		}
	}
	return values
}

// apart takes numbers apart that commas part, which is so where each of them has its point: "80.145,80.110", and not "1,234.5".
func apart(word string) []string {
	words := strings.Split(word, ",")
	if slices.ContainsFunc(words, func(w string) bool { return strings.Count(w, ".") != 1 }) {
		return []string{word}
	}
	return words
}

// setMany writes a list of values. What is as it was changes nothing.
func setMany(job *node, path string, k kind, now *node, parts []string) string {
	text, unit := "", ""
	if len(parts) > 0 {
		text = strings.ReplaceAll(parts[0], "\r\n", "\n") // as a form hands lines over
	}
	if len(parts) > 1 && slices.Contains(k.units, parts[1]) {
		unit = parts[1]
	}
	lines, was := k.showsMany(now)
	if text == lines && (unit == was || lines == "") {
		return ""
	}
	l := list()
	for _, v := range k.valuesIn(text, unit) {
		if slices.ContainsFunc(k.units, func(u string) bool { return strings.HasSuffix(v, strings.TrimSpace(u)) }) {
			l.items = append(l.items, textNode(v)) // the unit that was typed is meant
		} else {
			l.items = append(l.items, textNode(v+unit))
		}
	}
	if len(l.items) == 0 {
		job.drop(path)
		return ""
	}
	return put(job, path, l)
}

// many writes the box of a list of values.
func (w *writer) many(k kind, path, words, about string) {
	id := idOf(path)
	lines, unit := k.showsMany(w.job.at(path))
	if lines == "" {
		unit = w.usualUnit(k, path)
	}
	w.raw(`<label for="%s-0">%s</label><span class="parts"><textarea id="%s-0" rows="8" autocomplete="off" spellcheck="false"%s>`+"\n%s</textarea>", id, text(words), id, about, text(lines))
	w.choose(id+"-unit", ` class="unit" aria-label="`+text(wordUnit+words)+`"`, slices.Concat(k.units, []string{""}), unit, wordAsTyped)
	w.raw(`</span>`)
}
