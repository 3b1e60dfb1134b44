// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"slices"
	"strings"

	"borewright.example/oversize/jobsheet"
)

// A Request is the job as the page holds it, and what was done to it since.
type Request struct {
	Job     string  `json:"job"`               // its file; "" is a new one
	Open    *string `json:"open,omitempty"`    // a file that was chosen to take its place
	Entries []Entry `json:"entries,omitempty"` // in the order in which they were made
}

// An Answer is the job after that, the form to go on with, and the sheet.
type Answer struct {
	Job   string  `json:"job"`   // its file, to be saved and kept
	Name  string  `json:"name"`  // to save it under
	Form  []Piece `json:"form"`  // in the order of the work
	Head  string  `json:"head"`  // what is next, needed or at fault, as HTML
	Now   Lead    `json:"now"`   // the same in a few words
	Sheet string  `json:"sheet"` // as HTML; "" where there is none, and an older one is void
	Step  string  `json:"step"`  // changes when another part of the form is asked for
}

// A Lead is a few words on what is next, and the id of what they lead to.
type Lead struct {
	At    string `json:"at"`
	Words string `json:"words"`
}

// write writes the answer as JSON. It is never part of a page as it stands, so that HTML need not be hidden in it.
func (a Answer) write(w io.Writer) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	return e.Encode(a)
}

// A Piece is a part of the form as HTML.
type Piece struct {
	ID    string `json:"id"`
	Title string `json:"title"`
	Mark  string `json:"mark"` // beside the title: asked for, at fault
	HTML  string `json:"html"`
	Open  bool   `json:"open"` // this step of the work needs it
}

// A bench takes turns. It keeps nothing between them.
type bench struct {
	plan func(jobsheet.Job) (jobsheet.Sheet, error)
}

// A planned is what the library makes of a job.
type planned struct {
	sheet  *jobsheet.Sheet // nil where there are faults
	html   string          // of the sheet
	faults jobsheet.Faults // with the paths of the job as the page holds it
	broken string          // what the library panicked with
	moved  moving          // which items it did not see
}

// turn does what was asked and plans the job anew.
func (b bench) turn(r Request) (a Answer) {
	job, note := start(r)
	defer func() { // of the page itself; that of the library is caught where it is called
		if p := recover(); p != nil {
			a = Answer{Job: job.String(), Name: fileName(job), Head: brokenHead(fmt.Sprint(p)), Now: Lead{"head", wordNothing}}
		}
	}()
	for _, e := range r.Entries {
		if why := b.enter(job, e); why != "" {
			note = why
		}
	}
	p := b.planned(job)
	w := newWriter(job, p)
	a = Answer{Job: job.String(), Name: fileName(job), Form: w.form(), Head: w.head(note), Now: w.now(), Step: w.step(), Sheet: p.html}
	return a
}

// start returns the job that a turn begins with; where another was to be opened and cannot be, why.
func start(r Request) (job *node, note string) {
	if r.Open != nil {
		job, err := open(*r.Open)
		if err == nil {
			return job, ""
		}
		note = wordNotOpened + err.Error()
	}
	job, err := parse(r.Job)
	switch {
	case err == nil:
		return job, note
	case r.Job != "":
		note = wordNotRead + err.Error()
	}
	job = object()
	job.setMember("version", literalNode(fmt.Sprint(jobsheet.Version)))
	return job, note
}

// open reads a file. What cannot be read as a job at all is an error; other faults are shown where they stand.
func open(data string) (*node, error) {
	_, err := jobsheet.ReadJob(strings.NewReader(data))
	var fs jobsheet.Faults
	if errors.As(err, &fs) {
		for _, f := range fs {
			if f.Path == "" {
				return nil, errors.New(f.String())
			}
		}
	}
	return parse(strings.TrimPrefix(data, "\ufeff"))
}

// planned plans a job without what is still to be filled in.
func (b bench) planned(job *node) (p planned) {
	filled, moved := prune(job)
	defer func() {
		if r := recover(); r != nil {
			p = planned{broken: fmt.Sprint(r) + " " + place(string(debug.Stack()))}
		}
	}()
	j, err := jobsheet.ReadJob(strings.NewReader(filled.String()))
	if err == nil {
		var s jobsheet.Sheet
		if s, err = b.plan(j); err == nil {
			p.html = sheetHTML(s)
			for i := range s.Ledger {
				for k, give := range s.Ledger[i].Give {
					s.Ledger[i].Give[k] = moved.back(give)
				}
			}
			p.sheet, p.moved = &s, moved
			return p
		}
	}
	if !errors.As(err, &p.faults) {
		p.faults = jobsheet.Faults{{Want: err.Error(), Err: err}}
	}
	for i := range p.faults {
		p.faults[i].Path = moved.back(p.faults[i].Path)
	}
	return p
}

// place returns where in the library a panic came from, of a stack.
func place(stack string) string {
	_, below, _ := strings.Cut(stack, "\npanic(")
	for line := range strings.Lines(below) {
		if strings.HasPrefix(line, "borewright.example/") && !strings.Contains(line, "/examples/bench") {
			name, _, _ := strings.Cut(strings.TrimPrefix(line, "borewright.example/"), "(0x")
			return "(" + strings.TrimSpace(strings.TrimSuffix(name, "(...)")) + ")"
		}
	}
	return ""
}

// A moving says which items of its lists a job lost, by the path of the list as the page holds it: of each that is
// left, where it stood.
type moving map[string][]int

// prune returns the job without items that are still to be filled in: blank ones, and those that hold nothing but
// what a proposal wrote.
func prune(job *node) (*node, moving) {
	out, moved := job.clone(), moving{}
	var walk func(n *node, path, pattern string)
	walk = func(n *node, path, pattern string) {
		n.members = slices.DeleteFunc(n.members, func(m field) bool {
			if m.value.kind == '{' {
				walk(m.value, join(path, m.name), join(pattern, m.name))
			}
			if m.value.kind != '[' {
				return false
			}
			at, items := join(path, m.name), join(pattern, m.name)+"[]"
			var kept []*node
			var stood []int
			for i, item := range m.value.items {
				if item.kind == '{' {
					walk(item, fmt.Sprintf("%s[%d]", at, i), items)
				}
				if p, ok := lists[items]; ok && !p.fixed && waits(item, p.seeds) {
					continue
				}
				kept, stood = append(kept, item), append(stood, i)
			}
			gone := len(kept) < len(m.value.items)
			if gone {
				m.value.items, moved[at] = kept, stood
			}
			return gone && len(kept) == 0
		})
	}
	walk(out, "", "")
	if c := out.at("confirmed"); c != nil {
		for _, item := range c.items {
			if f := item.child(step{"field", -1}); f != nil && f.kind == '"' {
				f.text = moved.ahead(f.text)
			}
		}
	}
	return out, moved
}

// waits reports whether an item holds nothing but what a proposal wrote.
func waits(item *node, seeds []string) bool {
	return item.kind == '{' && !slices.ContainsFunc(item.members, func(m field) bool { return !slices.Contains(seeds, m.name) })
}

// back returns the path in the job as the page holds it of a path in the pruned one.
func (m moving) back(path string) string {
	return m.translate(path, func(stood []int, i int) int {
		if i < len(stood) {
			return stood[i]
		}
		return i
	}, true)
}

// ahead returns the path in the pruned job of a path in the one that the page holds.
func (m moving) ahead(path string) string {
	return m.translate(path, func(stood []int, i int) int {
		if k := slices.Index(stood, i); k >= 0 {
			return k
		}
		return i
	}, false)
}

// translate renumbers the items on a path. The lists that moving knows are named by where they stand on the page, so on the
// way back they are looked up by what has been translated already.
func (m moving) translate(path string, number func(stood []int, i int) int, back bool) string {
	list, err := steps(path)
	if err != nil || len(m) == 0 {
		return path
	}
	from, to := "", ""
	for _, s := range list {
		if s.item < 0 {
			from, to = join(from, pathName(s.name)), join(to, pathName(s.name))
			continue
		}
		key, i := from, s.item
		if back {
			key = to
		}
		if stood, ok := m[key]; ok {
			i = number(stood, i)
		}
		from, to = fmt.Sprintf("%s[%d]", from, s.item), fmt.Sprintf("%s[%d]", to, i)
	}
	return to
}

// pathName returns a name as it stands in a path.
func pathName(name string) string {
	if list, err := steps(name); err == nil && len(list) == 1 && list[0].name == name {
		return name
	}
	return fmt.Sprintf("%q", name)
}

// fileName is what a job is saved under.
func fileName(job *node) string {
	name := strings.Join(strings.FieldsFunc(strings.ToLower(job.textAt("title")), func(r rune) bool { return r < 'a' || r > 'z' && r < 128 }), "-")
	if len(name) > 40 {
		name = strings.TrimRight(strings.ToValidUTF8(name[:40], ""), "-")
	}
	if name == "" {
		name = "job"
	}
	return name + ".json"
}

// sheetHTML returns the sheet to stand beside the form.
func sheetHTML(s jobsheet.Sheet) string {
	var b strings.Builder
	if err := s.WriteHTML(&b); err != nil {
		return ""
	}
	const from, to = `<main class="sheet">`, `</main>`
	_, rest, _ := strings.Cut(b.String(), from)
	inside, _, _ := strings.Cut(rest, to)
	return `<div class="sheet">` + inside + `</div>`
}
