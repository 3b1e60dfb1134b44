// SPDX-License-Identifier: BSD-3-Clause

// Browser shows pages in a real browser, Debian's chromium, as on a telephone, on a desk and on A4, light and
// dark, and holds each to this: it does not scroll sideways, no text is cut off, and axe-core, whose file it is
// given, finds nothing that would keep somebody from reading it. Its pictures are to be looked at by eye.
//
//	go run -C .ci ./browser -axe axe.min.js -shots FOLDER FILE.html ...
//
// With -bench it drives the page of that program instead, served and as a file with the network off: each JOB.json, whose sheet
// as the command line prints it is JOB.html in the folder -sheets; with -short the first alone, and no pictures. A whole job is
// typed by keys, and its sheets are held to those that -refresh prints.
//
//	go run -C .ci ./browser -bench PROGRAM -refresh PROGRAM -sheets FOLDER -axe axe.min.js -shots FOLDER JOB.json ...
//	go run -C .ci ./browser -firefox -bench PROGRAM -sheets FOLDER JOB.json ...
package main

import (
	"context"
	_ "embed"
	"errors"
	"flag"
	"fmt"
	"log"
	"os"
	"path/filepath"
	"strings"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// A view is how somebody looks at a page.
type view struct {
	name          string
	width, height int64
	media, scheme string
}

// Print is laid out in the room that the margins of the style leave of A4, 190 mm at 96 pixels an inch.
var views = []view{
	{"phone-light", 360, 740, "screen", "light"},
	{"phone-dark", 360, 740, "screen", "dark"},
	{"desk-light", 1280, 900, "screen", "light"},
	{"desk-dark", 1280, 900, "screen", "dark"},
	{"print-light", 718, 1032, "print", "light"},
	{"print-dark", 718, 1032, "print", "dark"},
}

//go:embed look.js
var look string

// ask is for what axe-core finds, a line each.
const ask = `axe.run().then(found => {
	if (found.passes.length === 0) throw new Error("axe-core looked at nothing");
	return found.violations.map(v => "axe-core: " + v.id + ": " + v.help + ": " + v.nodes.slice(0, 3).map(n => n.html.slice(0, 160)).join(" | "));
})`

func main() {
	log.SetFlags(0)
	log.SetPrefix("browser: ")
	axe := flag.String("axe", "", "`file` of axe-core")
	shots := flag.String("shots", "", "`folder` for the pictures")
	program := flag.String("bench", "", "the `program` whose page is driven")
	refresh := flag.String("refresh", "", "the `program` that prints the sheet of a job")
	sheets := flag.String("sheets", "", "`folder` of the sheets that it is to show")
	firefox := flag.Bool("firefox", false, "in firefox instead, where the page as a file plans each job")
	short := flag.Bool("short", false, "the first job alone, and no pictures")
	flag.Parse()
	if *firefox {
		if err := firefoxChecks(*program, *sheets, flag.Args()); err != nil {
			log.Fatal(err)
		}
		fmt.Printf("firefox: %d sheets as the command line prints them\n", flag.NArg())
		return
	}
	if *program != "" {
		if err := benchChecks(*program, *refresh, *sheets, *axe, *shots, *short, flag.Args()); err != nil {
			log.Fatal(err)
		}
		fmt.Println("the bench: every sheet that of the command line, traps shut")
		return
	}
	if *axe == "" || *shots == "" || flag.NArg() == 0 {
		log.Fatal("usage: go run -C .ci ./browser -axe FILE.js -shots FOLDER FILE.html ...")
	}
	if err := showAll(*axe, *shots, flag.Args()); err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%d pages in %d views: no sideways scroll, no text cut off, nothing found by axe-core\n", flag.NArg(), len(views))
}

// browser starts one, which ends with the time or when it is cancelled.
func browser(most time.Duration) (context.Context, context.CancelFunc) {
	timed, stop := context.WithTimeout(context.Background(), most)
	var options []chromedp.ExecAllocatorOption
	if os.Getuid() == 0 { // as which chromium has no sandbox
		options = append(options, chromedp.NoSandbox)
	}
	ctx, cancel := chromedp.NewContext(timed, chromedp.WithAllocatorOptions(options...))
	return ctx, func() { cancel(); stop() }
}

// printed returns the page that is shown as PDF, in the size of paper that it asks for.
func printed(ctx context.Context) ([]byte, error) {
	r, err := chromedp.Run(ctx, func(ctx context.Context, t *chromedp.Target) (page.PrintToPDFResult, error) {
		style := true
		return cdp.Call(ctx, t, page.PrintToPDF, page.PrintToPDFParams{PreferCSSPageSize: &style})
	})
	return r.Data, err
}

func showAll(axe, shots string, names []string) error {
	source, err := os.ReadFile(axe)
	if err != nil {
		return err
	}
	ctx, cancel := browser(10 * time.Minute)
	defer cancel()
	var faults []error
	for _, name := range names {
		path, err := filepath.Abs(name)
		if err != nil {
			return err
		}
		base := strings.TrimSuffix(filepath.Base(name), ".html")
		for _, v := range views {
			found, shot, err := show(ctx, path, string(source), v)
			if err != nil {
				return fmt.Errorf("%s, %s: %w", base, v.name, err)
			}
			for _, f := range found {
				faults = append(faults, fmt.Errorf("%s, %s: %s", base, v.name, f))
			}
			if err := os.WriteFile(filepath.Join(shots, base+"-"+v.name+".png"), shot, 0o644); err != nil {
				return err
			}
		}
		printed, err := printed(ctx)
		if err != nil {
			return fmt.Errorf("%s, printed: %w", base, err)
		}
		if err := os.WriteFile(filepath.Join(shots, base+".pdf"), printed, 0o644); err != nil {
			return err
		}
	}
	return errors.Join(faults...)
}

// set has the browser show pages in this way.
func (v view) set(ctx context.Context) error {
	return chromedp.Do(ctx,
		chromedp.EmulateViewport(v.width, v.height),
		func(ctx context.Context, t *chromedp.Target) (chromedp.Void, error) {
			_, err := cdp.Call(ctx, t, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
				Media: v.media, Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: v.scheme}},
			})
			return chromedp.Void{}, err
		})
}

// show opens a page and returns what is wrong with it, and a picture of all of it.
func show(ctx context.Context, path, axe string, v view) (faults []string, shot []byte, err error) {
	if err := v.set(ctx); err != nil {
		return nil, nil, err
	}
	if err := chromedp.Do(ctx, chromedp.Navigate("file://"+path)); err != nil {
		return nil, nil, err
	}
	if shot, err = chromedp.Run(ctx, chromedp.FullScreenshot(100)); err != nil {
		return nil, nil, err
	}
	seen, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](look))
	if err != nil {
		return nil, nil, err
	}
	if err := chromedp.Do(ctx, chromedp.Evaluate[chromedp.Void](axe)); err != nil {
		return nil, nil, err
	}
	found, err := chromedp.Run(ctx, chromedp.Evaluate[[]string](ask, chromedp.EvalAwaitPromise))
	return append(seen, found...), shot, err
}
