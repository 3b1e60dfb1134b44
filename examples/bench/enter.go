// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"borewright.example/oversize/jobsheet"
)

// An Entry is one thing that was done on the page.
type Entry struct {
	Do    string   `json:"do"`              // one of deeds
	At    string   `json:"at"`              // the path of what it was done to; "[0,3]" stands for several items
	Parts []string `json:"parts,omitempty"` // what stands in the boxes there
}

// deeds are what can be done to a job. Each says why it could not be done, or "".
var deeds = map[string]func(b bench, job *node, e Entry) string{
	"set": func(_ bench, job *node, e Entry) string { return set(job, e.At, e.Parts) },
	"add": func(_ bench, job *node, e Entry) string { return add(job, e.At, object()) },
	"drop": func(_ bench, job *node, e Entry) string {
		job.drop(e.At)
		return ""
	},
	"none":    none,
	"propose": propose,
	"repeat":  repeat,
	"rings":   ringRows,
	"depth":   func(_ bench, job *node, e Entry) string { return widen(job, e.At, "axis") },
	"axis":    func(_ bench, job *node, e Entry) string { return widen(job, e.At, "depth") },
	"again":   again,
	"accept":  bench.accept,
	"confirm": confirm,
}

// enter does one entry, at each of its places, the last first so that those before it stay where they are.
func (b bench) enter(job *node, e Entry) (why string) {
	deed, ok := deeds[e.Do]
	if !ok {
		return fmt.Sprintf("%.40q: no such deed", e.Do)
	}
	e.Parts = slices.Clone(e.Parts)
	for i, part := range e.Parts { // as JSON would write it
		e.Parts[i] = strings.ToValidUTF8(part, "\uFFFD")
	}
	comma := strings.IndexByte(e.At, ',')
	from, to := strings.LastIndexByte(e.At[:max(comma, 0)], '['), max(comma, 0)+strings.IndexByte(e.At[max(comma, 0):], ']')
	if comma < 0 || from < 0 || to < comma {
		return deed(b, job, e)
	}
	var items []int
	for _, text := range strings.Split(e.At[from+1:to], ",") {
		item, err := strconv.Atoi(text)
		if err != nil {
			return deed(b, job, e) // a comma in a name
		}
		items = append(items, item)
	}
	slices.Sort(items)
	for _, item := range slices.Backward(slices.Compact(items)) {
		one := e
		one.At = e.At[:from+1] + strconv.Itoa(item) + e.At[to:]
		if w := deed(b, job, one); w != "" {
			why = w
		}
	}
	return why
}

var _, kinds = leaves()

// pattern returns a path without the places in lists: "cylinders[].readings[].depth".
func pattern(path string) string {
	var b strings.Builder
	for rest := path; ; {
		before, after, ok := strings.Cut(rest, "[")
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		_, rest, _ = strings.Cut(after, "]")
		b.WriteString("[]")
	}
}

// set writes what stands in the boxes of a field. What is as it was changes nothing.
func set(job *node, path string, parts []string) string {
	k, ok := kinds[pattern(path)]
	if !ok {
		return fmt.Sprintf("%.80q: no such field", path)
	}
	now := job.at(path)
	switch {
	case k.several:
		return setSeveral(job, path, k, now, parts)
	case k.many:
		return setMany(job, path, k, now, parts)
	case k.boxes == 0:
		ticked := len(parts) > 0 && parts[0] != ""
		if ticked {
			return put(job, path, literalNode("true"))
		}
		if now != nil && now.text != "false" {
			job.drop(path)
		}
		return ""
	}
	if spread(job, path, k, parts) {
		return ""
	}
	text := k.typed(parts)
	switch {
	case now != nil && (text == now.shown() || slices.Equal(parts, k.shows(now.shown()))):
		return ""
	case text == "":
		if now != nil {
			job.drop(path)
		}
		return ""
	}
	if why := put(job, path, k.asJSON(text)); why != "" {
		return why
	}
	if path == "engine.cylinders" {
		listCylinders(job, text)
	}
	return ""
}

func put(job *node, path string, v *node) string {
	if err := job.put(path, v); err != nil {
		return err.Error()
	}
	return ""
}

// shows returns what the boxes of a field show of a text, as a page hands them back.
func (k kind) shows(text string) []string {
	e := k.split(text)
	parts := []string{e.parts[0]}
	if k.boxes == 2 {
		if e.join == "" {
			e.join = k.joins[0]
		}
		parts = append(parts, e.join, e.parts[1])
	}
	if k.units != nil {
		parts = append(parts, e.unit)
	}
	return parts
}

// setSeveral writes which of the choices are ticked, in the order in which they stood.
func setSeveral(job *node, path string, k kind, now *node, parts []string) string {
	var items []*node
	if now != nil {
		for _, item := range now.items {
			if !slices.Contains(k.choices, item.text) || slices.Contains(parts, item.text) {
				items = append(items, item)
			}
		}
	}
	for _, p := range parts {
		if slices.Contains(k.choices, p) && !slices.ContainsFunc(items, func(n *node) bool { return n.text == p }) {
			items = append(items, textNode(p))
		}
	}
	switch {
	case now != nil && slices.Equal(items, now.items): // nothing ticked, nothing taken out
		return ""
	case len(items) == 0:
		if now != nil {
			job.drop(path)
		}
		return ""
	}
	return put(job, path, &node{kind: '[', items: items})
}

// mostCylinders are those that a page lists.
const mostCylinders = 64

// listCylinders has the job list as many cylinders as there are said to be, with a number for a name; one that holds
// more than that is never taken out.
func listCylinders(job *node, count string) {
	n, err := strconv.Atoi(count)
	if err != nil || n < 1 || n > mostCylinders {
		return
	}
	listed := job.at("cylinders")
	if listed == nil || listed.kind != '[' {
		listed = list()
		job.setMember("cylinders", listed)
	}
	for i := len(listed.items); i < n; i++ {
		cylinder := object()
		cylinder.setMember("name", textNode(strconv.Itoa(i+1)))
		listed.items = append(listed.items, cylinder)
	}
	for i := len(listed.items); i > n && waits(listed.items[i-1], []string{"name"}); i-- {
		listed.items = listed.items[:i-1]
	}
}

// mostItems keeps a page that is asked for more and more from growing without end.
const mostItems = 2000

func add(job *node, path string, item *node) string {
	if _, ok := lists[pattern(path)+"[]"]; !ok {
		return fmt.Sprintf("%.80q: no such list", path)
	}
	n := 0
	if l := job.at(path); l != nil && l.kind == '[' {
		n = len(l.items)
	}
	if n >= mostItems {
		return fmt.Sprintf("%s: at most %d", path, mostItems)
	}
	return put(job, fmt.Sprintf("%s[%d]", path, n), item)
}

// none writes that a list is empty, which is an answer, or takes that back.
func none(_ bench, job *node, e Entry) string {
	if p, ok := lists[pattern(e.At)+"[]"]; !ok || !p.empty {
		return fmt.Sprintf("%.80q: no such list", e.At)
	}
	if now := job.at(e.At); now != nil && len(now.items) > 0 {
		return ""
	}
	if len(e.Parts) > 0 && e.Parts[0] != "" {
		return put(job, e.At, list())
	}
	job.drop(e.At)
	return ""
}

// ringRows adds a row for each ring of the engine that a cylinder has none for.
func ringRows(_ bench, job *node, e Entry) string {
	rings := job.at("engine.rings")
	if rings == nil {
		return ""
	}
	have := map[string]bool{}
	if l := job.at(e.At); l != nil {
		for i := range l.items {
			have[job.textAt(fmt.Sprintf("%s[%d].ring", e.At, i))] = true
		}
	}
	for i := range rings.items {
		name := job.textAt(fmt.Sprintf("engine.rings[%d].name", i))
		if name == "" || have[name] {
			continue
		}
		row := object()
		row.setMember("ring", textNode(name))
		if why := add(job, e.At, row); why != "" {
			return why
		}
	}
	return ""
}

// accept has a row of the ledger go on somebody's word, which is still to be given, if a word serves at all.
func (b bench) accept(job *node, e Entry) string {
	p := b.planned(job)
	if p.sheet == nil {
		return wordNoSheet
	}
	i := slices.IndexFunc(p.sheet.Ledger, func(r jobsheet.Row) bool { return r.Key == e.At })
	if i < 0 {
		return fmt.Sprintf("%.80q: no such row", e.At)
	}
	word := object()
	word.setMember("row", textNode(e.At))
	word.setMember("stood", textNode(p.sheet.Ledger[i].Stands))
	tried := job.clone()
	given := word.clone()
	given.setMember("by", textNode("-"))
	given.setMember("why", textNode("-"))
	if why := add(tried, "accepted", given); why != "" {
		return why
	}
	if t := b.planned(tried); t.sheet == nil || t.sheet.Ledger[i].State != jobsheet.StateAccepted {
		return wordNobody + p.sheet.Ledger[i].Stands
	}
	return add(job, "accepted", word)
}

// confirm says that what looks like a slip is right as it stands.
func confirm(_ bench, job *node, e Entry) string {
	if len(e.Parts) == 0 {
		return fmt.Sprintf("%.80q: no value", e.At)
	}
	word := object()
	word.setMember("field", textNode(e.At))
	word.setMember("value", textNode(e.Parts[0]))
	return add(job, "confirmed", word)
}
