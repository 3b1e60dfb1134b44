// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/chromedp/chromedp"
)

// everyJob opens each job: its sheet is that of the command line, and saved it is the file that it was.
func (w *workshop) everyJob(address string) error {
	if err := w.show(address, views[2]); err != nil {
		return err
	}
	for _, name := range w.jobs {
		base := strings.TrimSuffix(filepath.Base(name), ".json")
		sheet, err := os.ReadFile(filepath.Join(w.sheets, base+".html"))
		if err != nil {
			return err
		}
		file, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		w.open(name)
		if !w.shows(string(sheet)) {
			w.fault("%s at %.7s: another sheet than that of the command line", base, address)
		}
		var was, is any
		if json.Unmarshal(file, &was) != nil || json.Unmarshal([]byte(js[string](w, "job")), &is) != nil || fmt.Sprint(was) != fmt.Sprint(is) {
			w.fault("%s at %.7s: saved otherwise than opened", base, address)
		}
		if w.short {
			break
		}
	}
	return nil
}

// shows reports whether the page shows a sheet that the command line printed.
func (w *workshop) shows(sheet string) bool {
	text, _ := json.Marshal(sheet)
	return js[bool](w, fmt.Sprintf(`new DOMParser().parseFromString(%s, "text/html").querySelector("main.sheet").innerHTML === document.querySelector("#sheet > .sheet").innerHTML`, text))
}

// traps types and reads as somebody does who is in the middle of it.
func (w *workshop) traps(pump string) error {
	if err := w.show(w.file, views[2]); err != nil {
		return err
	}
	if js[bool](w, `document.querySelector(".fault") !== null || $("banner").textContent !== ""`) {
		w.fault("an empty page begins with faults")
	}
	w.open(pump)
	verdict := `(document.querySelector("#sheet header").checkVisibility() ? "visible" : "hidden") + ($("banner").textContent && " marked")`
	if got := js[string](w, verdict); got != "visible" {
		w.fault("the head of a sheet is %q", got)
	}
	js[bool](w, `$("part-survey").open = true; $("cylinders-0-readings-0-diameter-0").focus(); $("cylinders-0-readings-0-diameter-0").select(), true`)
	before := js[string](w, "job")
	if err := chromedp.Do(w.ctx, chromedp.KeyEvent("78.0")); err != nil {
		return err
	}
	js[bool](w, settled)
	if got := js[string](w, verdict); got != "hidden marked" || js[string](w, "job") != before {
		w.fault("a box that is being typed in: the head of the sheet is %q, or the job has changed", got)
	}
	if err := chromedp.Do(w.ctx, chromedp.KeyEvent("66\r")); err != nil {
		return err
	}
	js[bool](w, settled)
	if got := js[string](w, verdict); got != "visible" || !strings.Contains(js[string](w, "job"), `"78.066 mm"`) {
		w.fault("a box that has been typed in: the head of the sheet is %q, or the job has not changed", got)
	}
	if got := js[string](w, `document.activeElement.id`); got != "cylinders-0-readings-1-diameter-0" {
		w.fault("after a reading comes the next, not %q", got)
	}
	js[bool](w, `$("cylinders-0-readings-0-diameter-0").focus(); $("cylinders-0-readings-0-diameter-0").select(), true`)
	if err := chromedp.Do(w.ctx, chromedp.KeyEvent("7.8\r")); err != nil {
		return err
	}
	js[bool](w, settled)
	if got := js[string](w, verdict); got != "hidden marked" || js[bool](w, `document.querySelector("#cylinders-0-readings-0-diameter .fault") === null`) {
		w.fault("a fault: the head of the sheet is %q, or nothing stands at its box", got)
	}
	if err := views[4].set(w.ctx); err != nil {
		return err
	}
	if got := js[string](w, `getComputedStyle(document.querySelector("#sheet header")).display + " " + getComputedStyle($("banner")).display + " " + getComputedStyle(document.querySelector("#sheet section"), "::before").content`); !strings.HasPrefix(got, "none block") || !strings.Contains(got, "NOT VALID") {
		w.fault("printed with a fault: %q", got)
	}
	if err := chromedp.Do(w.ctx, chromedp.Navigate("about:blank"), chromedp.Navigate(w.file)); err != nil {
		return err
	}
	js[bool](w, settled)
	if !strings.Contains(js[string](w, "job"), `"7.8 mm"`) {
		w.fault("what was typed does not survive reading the page again")
	}
	return nil
}

// targets is what is too small to be hit or read on a telephone.
const targets = `[...document.querySelectorAll("button, select, input:not([type=hidden]), summary, .links a, .button")].filter(e => e.offsetParent && !e.closest(".sheet")).map(e => {
	const box = (e.matches("[type=checkbox], [type=radio]") ? e.closest("label") : e.matches("[type=file]") ? e.parentElement : e).getBoundingClientRect();
	return box.height < 43.5 || box.width < 43.5 ? "too small: " + e.outerHTML.slice(0, 90) + " " + box.width + " x " + box.height : "";
}).concat([...document.querySelectorAll("svg text")].filter(t => t.closest("svg").getBoundingClientRect().width > 0).map(t => {
	const height = parseFloat(t.getAttribute("font-size")) * t.getScreenCTM().a;
	return height < 11 ? "letters of " + height + " pixels: " + t.textContent : "";
})).filter(Boolean).slice(0, 5)`

// looks shows the page empty, full and with a long fault, in every view of a screen.
func (w *workshop) looks(full string) error {
	source, err := os.ReadFile(w.axe)
	if err != nil {
		return err
	}
	for _, state := range []string{"empty", "full", "faults"} {
		for _, v := range views[:4] {
			if err := w.show(w.file, v); err != nil {
				return err
			}
			if state != "empty" {
				w.open(full)
				js[bool](w, `document.querySelectorAll("details").forEach(d => d.open = true), true`)
			}
			if state == "faults" {
				js[bool](w, `undone.push({do: "set", at: "engine.bore", parts: ["`+strings.Repeat("x", 150)+`", " mm"]}, {do: "set", at: "cylinders[0].readings[0].depth", parts: ["7", ""]}); turn(), true`)
				js[bool](w, settled)
			}
			shot, err := chromedp.Run(w.ctx, chromedp.FullScreenshot(100))
			if err != nil {
				return err
			}
			if err := os.WriteFile(filepath.Join(w.shots, "bench-"+state+"-"+v.name+".png"), shot, 0o644); err != nil {
				return err
			}
			found := js[[]string](w, look)
			found = append(found[:min(len(found), 5)], js[[]string](w, targets)...)
			js[bool](w, string(source)+"\n;true")
			for _, f := range append(found, js[[]string](w, ask)...) {
				w.fault("bench, %s, %s: %s", state, v.name, f)
			}
		}
	}
	return nil
}

// paper counts the pages of A4 that a sheet takes.
func (w *workshop) paper(pump string) error {
	if err := w.show(w.file, views[4]); err != nil {
		return err
	}
	w.open(pump)
	printed, err := printed(w.ctx)
	if err != nil {
		return err
	}
	pages := bytes.Count(printed, []byte("/Type /Page\n"))
	fmt.Printf("pump on A4: %d pages\n", pages)
	if pages > 7 {
		w.fault("pump takes %d pages of A4, more than 7", pages)
	}
	return os.WriteFile(filepath.Join(w.shots, "bench-pump.pdf"), printed, 0o644)
}
