// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	_ "embed"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"

	"github.com/chromedp/chromedp"
)

//go:embed wall.js
var drawnWall string

// photograph has a wall that is drawn with lines at 40° measured by the page of photographs, with the network off: the first
// corner marked by a touch and by arrow keys, the others typed.
func (w *workshop) photograph(program, folder string) error {
	name := filepath.Join(folder, "photo.html")
	build := exec.CommandContext(w.ctx, program, "-photo", "-o", name)
	build.Dir = ".."
	if out, err := build.CombinedOutput(); err != nil {
		return fmt.Errorf("%w: %s", err, out)
	}
	file, err := os.Stat(name)
	if err != nil {
		return err
	}
	fmt.Printf("the file of photographs: %d bytes\n", file.Size())
	axe, err := os.ReadFile(w.axe)
	if err != nil {
		return err
	}
	for _, v := range views[:4] {
		if err := v.set(w.ctx); err != nil {
			return err
		}
		if err := chromedp.Do(w.ctx, chromedp.Navigate("about:blank"), chromedp.Navigate("file://"+name)); err != nil {
			return err
		}
		corners := js[[]float64](w, drawnWall)
		if len(corners) != 8 {
			return fmt.Errorf("%d corners", len(corners))
		}
		js[bool](w, fmt.Sprintf(`(() => { const box = $("whole-picture").getBoundingClientRect(), scale = box.width / 640;
			$("whole-picture").dispatchEvent(new PointerEvent("pointerdown", { clientX: box.left + %f * scale, clientY: box.top + %f * scale }));
			$("near").focus(); return true; })()`, corners[0]+1, corners[1]))
		if err := chromedp.Do(w.ctx, chromedp.KeyEvent("\u0302\u0302")); err != nil { // two to the left
			return err
		}
		if got := js[float64](w, `parseFloat(boxes[0].value)`); math.Abs(got-corners[0]) > 0.11 {
			w.fault("photograph, %s: a corner at %.2f is marked at %.2f", v.name, corners[0], got)
		}
		js[bool](w, fmt.Sprintf(`%v.split(",").forEach((c, i) => { if (i > 1) boxes[i].value = c; });
			[$("bore").value, $("round").value, $("along").value, $("whole").checked] = ["67", "8", "4,0", true];
			$("measure").click(); document.querySelector("details").open = true; true`, quotedList(corners)))
		js[bool](w, `running.then(() => true)`)
		found := js[string](w, `$("answer").querySelector("h2")?.textContent ?? $("answer").textContent`)
		var angle, doubt float64
		if _, err := fmt.Sscanf(found, "%f° included ± %f°", &angle, &doubt); err != nil || math.Abs(angle-40) > doubt || doubt > 3 {
			w.fault("photograph, %s: 40° came out as %q", v.name, found)
		}
		shot, err := chromedp.Run(w.ctx, chromedp.FullScreenshot(100))
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(w.shots, "photo-"+v.name+".png"), shot, 0o644); err != nil {
			return err
		}
		faults := append(js[[]string](w, look), js[[]string](w, targets)...)
		js[bool](w, string(axe)+"\n;true")
		for _, f := range append(faults, js[[]string](w, ask)...) {
			w.fault("photograph, %s: %s", v.name, f)
		}
	}
	return nil
}

// quotedList returns numbers as a script has a text of them.
func quotedList(numbers []float64) string {
	text := `"`
	for i, n := range numbers {
		if i > 0 {
			text += ","
		}
		text += fmt.Sprintf("%.1f", n)
	}
	return text + `"`
}
