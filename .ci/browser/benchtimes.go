// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"
)

// times says how long it takes until the first sheet, and until the next. The second number is the time for which the page itself
// was at work, which others on the machine do not make longer.
func (w *workshop) times(pump, eight string) error {
	for _, rate := range []float64{1, 4} {
		if err := w.show(w.file, views[0]); err != nil {
			return err
		}
		w.open(pump) // which the browser keeps for the next time
		if err := w.throttle(rate); err != nil {
			return err
		}
		if err := chromedp.Do(w.ctx, chromedp.Navigate("about:blank"), chromedp.Navigate(w.file)); err != nil {
			return err
		}
		js[bool](w, settled)
		fmt.Printf("processor throttled %v ×: first sheet after %.0f ms\n", rate, js[float64](w, `performance.now()`))
		if err := w.throttle(1); err != nil {
			return err
		}
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

// throttle makes the page's processor so many times as slow.
func (w *workshop) throttle(rate float64) error {
	return w.call(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: rate})
		return err
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
