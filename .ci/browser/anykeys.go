// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	_ "embed"
	"fmt"
	"math/rand/v2"
	"slices"

	"github.com/chromedp/chromedp/kb"
)

// honestScript says what must be true of the page after any key: no sheet stands as valid beside a box that is being typed in, and one
// that does is that of the job as it would be saved, as is the form.
//
//go:embed honest.js
var honestScript string

// anyKeys presses keys at random on a job that has a verdict.
func (w *workshop) anyKeys(job string) error {
	keys := []string{"0", "1", "2", "3", "5", "7", "8", "9", ".", ",", "-", "x", "y", "t", "b", " ", "\b",
		kb.ArrowDown, kb.ArrowUp, "\t", "\t", "\t", "\r", "\r"}
	if err := w.show(w.file, views[2]); err != nil {
		return err
	}
	r, valid, strokes := rand.New(rand.NewPCG(3, 11)), 0, 0
	for range 30 {
		w.open(job)
		js[bool](w, `document.querySelectorAll("#form .part").forEach(part => part.open = true), true`)
		js[bool](w, fmt.Sprintf(`(boxes => boxes[Math.floor(%v * boxes.length)].focus())(boxesIn(form, fields)), true`, r.Float64()))
		for range 20 {
			key := keys[r.IntN(len(keys))]
			at := js[string](w, `document.activeElement.id`)
			if slices.Contains([]string{"new", "print", "save", "open"}, at) { // which lead out of the page
				key = "\t"
			}
			w.press(key)
			strokes++
			switch said := js[string](w, honestScript); said {
			case "":
			case "valid":
				valid++
			default:
				w.fault("keys at random: after %d, at %s, %q: %s", strokes, at, key, said)
				return nil
			}
		}
	}
	fmt.Printf("%d keys at random: after %d of them a sheet that is valid, each that of the job, none beside half a number\n", strokes, valid)
	if valid < strokes/20 || valid == strokes {
		w.fault("keys at random: a sheet after %d of %d", valid, strokes)
	}
	return nil
}
