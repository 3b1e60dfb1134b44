// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"
)

// A workshop drives the bench page in a browser.
type workshop struct {
	ctx         context.Context
	jobs        []string // files
	sheets      string   // folder with the sheet of each, as the command line prints it
	axe, shots  string
	short       bool // the first jobs alone, and no pictures
	faults      []error
	file        string // address of the page as one file
	served      string // of the page as it is served
	fileSize    int
	stopServing func()
}

func (w *workshop) fault(format string, args ...any) {
	w.faults = append(w.faults, fmt.Errorf(format, args...))
}

// set builds the page as a file, twice, and serves it.
func (w *workshop) set(program, folder string) error {
	var builds [][]byte
	for _, name := range []string{"bench.html", "again.html"} {
		build := exec.CommandContext(w.ctx, program, "-o", filepath.Join(folder, name))
		build.Dir = ".."
		if out, err := build.CombinedOutput(); err != nil {
			return fmt.Errorf("%w: %s", err, out)
		}
		data, err := os.ReadFile(filepath.Join(folder, name))
		if err != nil {
			return err
		}
		builds = append(builds, data)
		if w.short {
			break
		}
	}
	w.fileSize, w.file = len(builds[0]), "file://"+filepath.Join(folder, "bench.html")
	if len(builds) == 2 && !bytes.Equal(builds[0], builds[1]) {
		w.fault("built again, the page has other bytes")
	}
	if w.fileSize > 2_600_000 {
		w.fault("the page has %d bytes, more than 2.6 MB", w.fileSize)
	}
	serve := exec.CommandContext(w.ctx, program, "-at", "127.0.0.1:0")
	out, err := serve.StdoutPipe()
	if err != nil {
		return err
	}
	if err := serve.Start(); err != nil {
		return err
	}
	w.stopServing = func() { serve.Process.Kill(); serve.Wait() }
	address, err := bufio.NewReader(out).ReadString('\n')
	w.served = strings.TrimSpace(address)
	return err
}

// js runs a script and returns what it gives.
func js[T any](w *workshop, script string) (v T) {
	v, err := chromedp.Run(w.ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil && !errors.Is(err, chromedp.ErrJSUndefined) && !errors.Is(err, chromedp.ErrJSNull) {
		w.fault("%.80s: %w", script, err)
	}
	return v
}

// show opens an address with an empty page, and waits for the library.
func (w *workshop) show(address string, v view) error {
	if err := v.set(w.ctx); err != nil {
		return err
	}
	if err := chromedp.Do(w.ctx, chromedp.Navigate(address)); err != nil {
		return err
	}
	js[bool](w, settled)
	js[bool](w, `localStorage.clear(), true`)
	if err := chromedp.Do(w.ctx, chromedp.Navigate("about:blank"), chromedp.Navigate(address)); err != nil {
		return err
	}
	js[bool](w, settled)
	return nil
}

// settled waits until all turns are answered.
const settled = `(async () => { let seen; do { seen = queue; await seen; } while (seen !== queue); return true; })()`

// open has a file taken as somebody chooses it.
func (w *workshop) open(name string) {
	path, err := filepath.Abs(name)
	if err == nil {
		err = chromedp.Do(w.ctx, chromedp.SetUploadFiles("#open", []string{path}))
	}
	if err != nil {
		w.fault("%w", err)
	}
	js[bool](w, `new Promise(done => { const wait = () => $("open").value ? setTimeout(wait, 10) : done(true); wait(); })`)
	js[bool](w, settled)
}

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
		text, _ := json.Marshal(string(sheet))
		if !js[bool](w, fmt.Sprintf(`new DOMParser().parseFromString(%s, "text/html").querySelector("main.sheet").innerHTML === document.querySelector("#sheet > .sheet").innerHTML`, text)) {
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

// traps types and reads as somebody does who is in the middle of it.
func (w *workshop) traps(pump string) error {
	if err := w.show(w.file, views[2]); err != nil {
		return err
	}
	if js[bool](w, `document.querySelector(".fault") !== null || $("banner").textContent !== ""`) {
		w.fault("an empty page begins with faults")
	}
	w.open(pump)
	verdict := `getComputedStyle(document.querySelector("#sheet header")).visibility + ($("banner").textContent && " marked")`
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

// byKeys makes the beginning of a job with the keyboard alone: from the first box on, as it comes.
func (w *workshop) byKeys() error {
	if err := w.show(w.file, views[2]); err != nil {
		return err
	}
	want := map[string]string{"engine.cylinders": "1", "engine.cycle": "four", "engine.wall": "bare i", "engine.bore": "67", "engine.stroke": "58",
		"engine.layout.ring_top": "8", "engine.layout.ring_bottom": "92", "cylinders[0].over": "0", "gauge.kind": "two", "gauge.resolution": "0.01",
		"gauge.temperatures.gauge_used": "21", "gauge.temperatures.cylinder": "21"}
	for range 400 {
		at := js[string](w, `document.activeElement.closest("[data-at]")?.dataset.at ?? ""`)
		keys := "\t"
		if v, ok := want[at]; ok && js[bool](w, `!document.activeElement.matches(".unit")`) {
			keys = v + "\t"
			delete(want, at)
		} else if js[bool](w, `document.activeElement.matches("summary") && document.activeElement.parentElement.id === "part-gauge" && !document.activeElement.parentElement.open`) {
			keys = " "
		}
		if err := chromedp.Do(w.ctx, chromedp.KeyEvent(keys)); err != nil {
			return err
		}
		js[bool](w, settled)
		if len(want) == 0 {
			break
		}
	}
	if err := chromedp.Do(w.ctx, chromedp.KeyEvent("\t\t\t\t")); err != nil { // out of the last window
		return err
	}
	js[bool](w, settled)
	if js[string](w, "step") != "measure" {
		w.fault("by keys: still wanted %v, next is %q: %s", want, js[string](w, "step"), js[string](w, `$("head").innerText`))
	}
	return nil
}

// targets is what is too small to be hit or read on a telephone.
const targets = `[...document.querySelectorAll("button, select, input:not([type=hidden]), summary, .links a, .button")].filter(e => e.offsetParent && !e.closest(".sheet")).map(e => {
	const box = (e.matches("[type=checkbox]") ? e.closest("label") : e.matches("[type=file]") ? e.parentElement : e).getBoundingClientRect();
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
	printed, err := chromedp.Run(w.ctx, func(ctx context.Context, t *chromedp.Target) (page.PrintToPDFResult, error) {
		style := true
		return cdp.Call(ctx, t, page.PrintToPDF, page.PrintToPDFParams{PreferCSSPageSize: &style})
	})
	if err != nil {
		return err
	}
	pages := bytes.Count(printed.Data, []byte("/Type /Page\n"))
	fmt.Printf("pump on A4: %d pages\n", pages)
	return os.WriteFile(filepath.Join(w.shots, "bench-pump.pdf"), printed.Data, 0o644)
}

// times says how long it takes until the first sheet, and until the next. The second number is the time for which the page itself
// was at work, which others on the machine do not make longer.
func (w *workshop) times(pump, eight string) error {
	for _, rate := range []float64{1, 4} {
		if err := w.show(w.file, views[0]); err != nil {
			return err
		}
		w.open(pump) // which the browser keeps for the next time
		if err := w.call(func(ctx context.Context, t *chromedp.Target) error {
			_, err := cdp.Call(ctx, t, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: rate})
			return err
		}); err != nil {
			return err
		}
		if err := chromedp.Do(w.ctx, chromedp.Navigate("about:blank"), chromedp.Navigate(w.file)); err != nil {
			return err
		}
		js[bool](w, settled)
		fmt.Printf("processor throttled %v ×: first sheet after %.0f ms\n", rate, js[float64](w, `performance.now()`))
		w.call(func(ctx context.Context, t *chromedp.Target) error {
			_, err := cdp.Call(ctx, t, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 1})
			return err
		})
	}
	for _, name := range []string{pump, eight} {
		if name == "" {
			continue
		}
		if w.open(name); js[bool](w, `$("banner").textContent !== ""`) {
			w.fault("%s has no sheet: %s", filepath.Base(name), js[string](w, `$("head").innerText`))
		}
		var worked []float64
		for range 8 {
			before, err := w.worked()
			if err != nil {
				return err
			}
			wall := js[float64](w, `(async () => { const from = performance.now(); turn(); await queue; document.body.offsetHeight; return performance.now() - from; })()`)
			after, err := w.worked()
			if err != nil {
				return err
			}
			worked = append(worked, after-before, wall)
		}
		fmt.Printf("%s planned again, ms at work and by the clock in turn: %.0f\n", filepath.Base(name), worked)
	}
	return nil
}

func (w *workshop) call(do func(context.Context, *chromedp.Target) error) error {
	return chromedp.Do(w.ctx, func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
		return chromedp.Void{}, do(ctx, t)
	})
}

// worked returns for how many milliseconds of the processor's time the page has been at work.
func (w *workshop) worked() (ms float64, err error) {
	err = w.call(func(ctx context.Context, t *chromedp.Target) error {
		if _, err := cdp.Call(ctx, t, performance.Enable, performance.EnableParams{TimeDomain: performance.EnableTimeDomainThreadTicks}); err != nil {
			return err
		}
		found, err := cdp.Call(ctx, t, performance.GetMetrics, cdp.Empty{})
		for _, m := range found.Metrics {
			if m.Name == "TaskDuration" {
				ms = 1000 * m.Value
			}
		}
		return err
	})
	return ms, err
}

// What the protocol of Debian's chromium calls the network's state; newer ones have another call.
type conditions struct {
	Offline            bool    `json:"offline"`
	Latency            float64 `json:"latency"`
	DownloadThroughput float64 `json:"downloadThroughput"`
	UploadThroughput   float64 `json:"uploadThroughput"`
}

var cut = cdp.Command[conditions, cdp.Empty]{Method: "Network.emulateNetworkConditions"}

// offline takes the network away.
func (w *workshop) offline() error {
	return w.call(func(ctx context.Context, t *chromedp.Target) error {
		if _, err := cdp.Call(ctx, t, network.Enable, network.EnableParams{}); err != nil {
			return err
		}
		_, err := cdp.Call(ctx, t, cut, conditions{Offline: true, DownloadThroughput: -1, UploadThroughput: -1})
		return err
	})
}

// benchChecks drives the page of a program that is built already.
func benchChecks(program, sheets, axe, shots string, short bool, jobs []string) error {
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Minute)
	defer cancel()
	var options []chromedp.ExecAllocatorOption
	if os.Getuid() == 0 {
		options = append(options, chromedp.NoSandbox)
	}
	ctx, cancel = chromedp.NewContext(ctx, chromedp.WithAllocatorOptions(options...))
	defer cancel()
	folder, err := os.MkdirTemp("", "bench")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	w := &workshop{ctx: ctx, jobs: jobs, sheets: sheets, axe: axe, shots: shots, short: short}
	if err := w.set(program, folder); err != nil {
		return err
	}
	defer w.stopServing()
	fmt.Printf("the file: %d bytes\n", w.fileSize)
	named := func(base string) string {
		for _, j := range jobs {
			if filepath.Base(j) == base+".json" {
				return j
			}
		}
		return jobs[0]
	}
	steps := []func() error{
		func() error { return w.everyJob(w.served) },
		w.offline,
		func() error { return w.everyJob(w.file) },
		func() error { return w.traps(named("pump")) },
	}
	if !short {
		eight, err := eightCylinders(named("pump"), folder)
		if err != nil {
			return err
		}
		steps = append(steps, w.byKeys, func() error { return w.paper(named("pump")) }, func() error { return w.times(named("pump"), eight) },
			func() error { return w.looks(named("pump-finished")) })
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return err
		}
	}
	return errors.Join(w.faults...)
}

// eightCylinders writes a job of eight cylinders with 60 readings each, made of the first cylinder of another.
func eightCylinders(from, folder string) (name string, err error) {
	data, err := os.ReadFile(from)
	if err != nil {
		return "", err
	}
	var job map[string]any
	if err := json.Unmarshal(data, &job); err != nil {
		return "", err
	}
	var cylinders []any
	for i := range 8 {
		var readings []any
		for d := range 12 {
			for a := range 5 {
				readings = append(readings, map[string]any{"depth": fmt.Sprintf("%d mm", 10+8*d), "axis": fmt.Sprintf("%d°", 36*a),
					"diameter": fmt.Sprintf("%.3f mm", 78.030+0.001*float64(3*(12-d)+a+i))})
			}
		}
		cylinders = append(cylinders, map[string]any{"name": fmt.Sprint(i + 1), "over": "0 mm", "readings": readings, "thinnest_wall": "5.6 ± 0.2 mm"})
	}
	job["cylinders"] = cylinders
	engine := job["engine"].(map[string]any)
	engine["cylinders"] = 8
	for _, size := range engine["oversizes"].([]any) {
		delete(size.(map[string]any), "pistons") // too few for eight
	}
	job["counted"] = map[string]any{"readings": 480, "passes": 0, "rings": 3, "pits": 0}
	if data, err = json.MarshalIndent(job, "", "  "); err != nil {
		return "", err
	}
	name = filepath.Join(folder, "eight.json")
	return name, os.WriteFile(name, data, 0o644)
}
