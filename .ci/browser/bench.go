// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bufio"
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/network"
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

func (w *workshop) call(do func(context.Context, *chromedp.Target) error) error {
	return chromedp.Do(w.ctx, func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
		return chromedp.Void{}, do(ctx, t)
	})
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
func benchChecks(program, refresh, sheets, axe, shots string, short bool, jobs []string) error {
	ctx, cancel := browser(20 * time.Minute)
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
		steps = append(steps,
			func() error { return w.byKeys(named("pump-finished"), refresh, folder) },
			func() error { return w.anyKeys(named("pump")) },
			func() error { return w.paper(named("pump")) },
			func() error { return w.times(named("pump"), eight) },
			func() error { return w.looks(named("pump-finished")) },
			func() error { return w.photograph(program, folder) })
	}
	for _, step := range steps {
		if err := step(); err != nil {
			return err
		}
	}
	return errors.Join(w.faults...)
}
