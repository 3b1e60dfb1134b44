// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"context"
	_ "embed"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// A stop is where the focus is, as somebody at the keyboard sees it, and what stands on the page then.
type stop struct {
	Lost bool // nothing has the focus
	Ring bool // a ring is drawn round what has it
	Seen bool // that is in view
	// What has it: its id, the name of its element, what it reads and what is chosen or typed in it.
	ID, What, Words, Value string
	Folded                 bool // it is the head of something folded,
	Part                   bool // of a part of the form,
	Asked                  bool // of one that is marked as asked for
	Deed                   deed
	Below                  []deed    // what the folded part holds, or a link leads to
	Controls               []control // of its field
	Control                int       // which of them has the focus; -1 for none
	Step, Job              string    // of the page
	Sheet                  bool      // there is one, and it is valid
	Faults                 []string  // that stand in the form
}

// A deed is a field that can be filled in, or a button: the path it is about, what it does there, "" for a field, and
// which of several.
type deed struct{ At, Do, Part string }

// A control is one of the boxes, choices and ticks of a field.
type control struct {
	What    string // its type, "select-one"
	Value   string // what stands in it; "" of a tick that is off
	Means   string // what a tick stands for when it is on
	Options []option
}

type option struct{ Value string }

//go:embed stop.js
var stopScript string

// press presses keys one after the other, as a keyboard does: where the page keeps one that goes down to itself, no letter
// follows.
func (w *workshop) press(keys string) {
	err := w.call(func(ctx context.Context, t *chromedp.Target) error {
		for _, r := range keys {
			for _, k := range kb.Encode(r) {
				if k.Type == kb.KeyDown {
					k.Type = kb.KeyRawDown
				}
				if _, err := cdp.Call(ctx, t, input.DispatchKeyEvent, *k); err != nil {
					return err
				}
			}
		}
		return nil
	})
	if err != nil {
		w.fault("%q: %w", keys, err)
	}
	js[bool](w, settled)
}

// A clerk types a job from paper with the keyboard alone, and writes down no more than what is known at the step that is next.
type clerk struct {
	*workshop
	onPaper  object // the whole job
	accepts  string // the row that goes on a word in the end
	program  string // that prints a sheet
	folder   string
	steps    []string // that were next, in their order
	done     int      // things typed, ticked, chosen and pressed
	idle     int      // times round the page since the last of them
	compared int      // sheets held to those of the command line
	at       string   // the step at which the last of them was
	pressed  string   // the keys before this stop
}

// byKeys makes a whole job with the keyboard alone, from an empty page to the record that is handed back.
func (w *workshop) byKeys(finished, program, folder string) error {
	if err := w.show(w.file, views[2]); err != nil {
		return err
	}
	data, err := os.ReadFile(finished)
	if err != nil {
		return err
	}
	c := &clerk{workshop: w, program: program, folder: folder, accepts: "cylinders[1].crosshatch"}
	if c.onPaper, err = readObject(string(data)); err != nil {
		return err
	}
	delete(c.onPaper.at("cylinders[1]").(map[string]any), "crosshatch") // which nobody measured
	for range 20000 {
		var s stop
		if err := json.Unmarshal([]byte(js[string](w, stopScript)), &s); err != nil {
			return err
		}
		if c.idle > 3 || len(w.faults) > 20 {
			w.fault("by keys: nothing more to type at %q, after %v: %s", s.Step, c.steps, js[string](w, `$("head").innerText`))
			return nil
		}
		if err := c.look(s); err != nil {
			return err
		}
		job, err := readObject(s.Job)
		if err != nil {
			return err
		}
		if c.next() == "reassemble" && s.Sheet && c.written(job) {
			return c.finish(s)
		}
		if s.ID == "next" {
			c.idle++
		}
		keys := c.keys(s, job)
		if keys == "" {
			keys = "\t"
		}
		w.press(keys)
		c.pressed = keys
	}
	w.fault("by keys: the round has no end: %v", c.steps)
	return nil
}

func (c *clerk) next() string {
	if len(c.steps) == 0 {
		return ""
	}
	return c.steps[len(c.steps)-1]
}

// look holds a stop to what must be true of each. At the end of the page the focus is nowhere, for one key.
func (c *clerk) look(s stop) error {
	switch {
	case s.Lost && c.pressed != "" && c.pressed != "\t":
		c.fault("by keys: the focus is lost after %q at %v", c.pressed, c.steps)
	case s.Lost:
	case !s.Ring:
		c.fault("by keys: no ring round the focus: %s %s %q", s.What, s.ID, s.Words)
	case !s.Seen:
		c.fault("by keys: the focus is not in view: %s %s %q", s.What, s.ID, s.Words)
	}
	if len(s.Faults) > 0 && s.Sheet {
		c.fault("by keys: a sheet that is valid beside faults: %q", s.Faults)
	}
	if _, next, ok := strings.Cut(s.Step, ": "); ok && c.next() != next {
		c.steps = append(c.steps, next)
	}
	if s.Sheet && s.Step != c.at {
		c.at = s.Step
		return c.compare(s.Job)
	}
	return nil
}

// keys are the keys for what is to be done at a stop; none where the clerk goes on. Links are followed, and parts unfolded, where
// the page asks for something that is on the paper; once it asks for nothing of that, whatever else is on it is looked for.
func (c *clerk) keys(s stop, job object) string {
	switch {
	case s.Folded && (!s.Part || s.Asked || c.idle > 1) && c.wantsAny(job, s.Below):
		return " "
	case s.What == "a" && c.idle <= 1 && c.wantsAny(job, s.Below):
		return "\r"
	case s.ID == proposed+"-axes" && s.Value != threeAxes:
		return threeAxes
	case s.What == "button" && s.Deed.Do != "" && c.wants(job, s.Deed):
		c.done, c.idle = c.done+1, 0
		return "\r"
	case s.Control >= 0 && c.wants(job, s.Deed):
		keys := typing(s.Controls, s.Control, c.text(job, s.Deed.At))
		if keys != "" {
			c.done, c.idle = c.done+1, 0
		}
		return keys
	}
	return ""
}

// The places of the second cylinder are proposed, on so many axes, and mended to those on the paper.
const proposed, threeAxes = "cylinders-1-readings", "3"

// typing are the keys that make one control of a field what it is where the field holds a text.
func typing(controls []control, at int, text string) string {
	want := text
	switch last := controls[len(controls)-1]; {
	case controls[at].What == "checkbox":
		if slices.Contains(strings.Split(text, "; "), controls[at].Means) != (controls[at].Value != "") || text == "true" && controls[at].Value == "" {
			return " "
		}
		return ""
	case len(controls) > 1:
		unit := ""
		for _, o := range last.Options {
			if strings.HasSuffix(text, o.Value) && len(o.Value) > len(unit) {
				unit = o.Value
			}
		}
		parts := []string{strings.TrimSuffix(text, unit), unit}
		if len(controls) == 4 {
			joins := []string{controls[1].Value}
			for _, o := range controls[1].Options {
				joins = append(joins, o.Value)
			}
			for _, join := range joins {
				if a, b, ok := strings.Cut(parts[0], join); ok {
					parts = []string{a, join, b, unit}
					break
				}
			}
			if len(parts) == 2 {
				parts = []string{parts[0], controls[1].Value, "", unit}
			}
		}
		want = parts[at]
	}
	if controls[at].Value == want {
		return ""
	}
	if controls[at].What != "select-one" {
		return strings.Repeat("\b", len([]rune(controls[at].Value))) + want
	}
	is := func(value string) int {
		return slices.IndexFunc(controls[at].Options, func(o option) bool { return o.Value == value })
	}
	if is(want) > is(controls[at].Value) { // a step, after which the clerk looks again
		return kb.ArrowDown
	}
	return kb.ArrowUp
}

// compare holds the sheet to the one that the command line prints for the job as it is saved, which takes none with places that
// are not read yet.
func (c *clerk) compare(job string) error {
	name := filepath.Join(c.folder, "round.json")
	if err := os.WriteFile(name, []byte(job), 0o644); err != nil {
		return err
	}
	sheet, err := exec.CommandContext(c.ctx, c.program, "-job", name, "-format", "html").Output()
	if err != nil {
		if !strings.Contains(job, "{}") && !unread.MatchString(job) {
			c.fault("by keys: a sheet for a job that the command line refuses: %s", job)
		}
		return nil
	}
	if !c.shows(string(sheet)) {
		c.fault("by keys: another sheet than that of the command line, at %v", c.steps)
	}
	c.compared++
	return nil
}

// unread is a place of which nothing but depth and axis is written down.
var unread = regexp.MustCompile(`\{\s*("depth": "[^"]*",?\s*)?("axis": "[^"]*"\s*)?\}`)

// finish holds what was made to a round of work.
func (c *clerk) finish(s stop) error {
	if err := c.compare(s.Job); err != nil {
		return err
	}
	if text := js[string](c.workshop, `$("sheet").innerText`); !strings.Contains(strings.ToLower(text), "record to hand back with the engine") {
		c.fault("by keys: no record to hand back")
	}
	steps := strings.Join(c.steps, ", ")
	for _, want := range []string{"measure", "say what is missing", "bore", "reassemble"} {
		if !strings.Contains(steps, want) {
			c.fault("by keys: never %q, but %s", want, steps)
		}
	}
	if c.compared < 8 {
		c.fault("by keys: %d sheets compared", c.compared)
	}
	fmt.Printf("by keys: %d things typed, chosen, ticked and pressed, %d sheets those of the command line: %s\n", c.done, c.compared, steps)
	return nil
}
