// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"encoding/json"
	"image"
	"syscall/js"
)

// In a browser the program gives the page one function: pixels, their width and height, and a request as JSON; then HTML, and
// the pixels of what was seen with their width and height.
func main() {
	js.Global().Set("photoTurn", js.FuncOf(func(_ js.Value, args []js.Value) any {
		var r Request
		if err := json.Unmarshal([]byte(args[3].String()), &r); err != nil {
			return js.Global().Get("Error").New(err.Error())
		}
		picture := image.NewNRGBA(image.Rect(0, 0, args[1].Int(), args[2].Int()))
		js.CopyBytesToGo(picture.Pix, args[0])
		a := turn(picture, r)
		back := map[string]any{"html": a.HTML, "width": 0, "height": 0}
		if a.Seen != nil {
			pixels := js.Global().Get("Uint8ClampedArray").New(len(a.Seen.Pix))
			js.CopyBytesToJS(pixels, a.Seen.Pix)
			back["seen"], back["width"], back["height"] = pixels, a.Seen.Rect.Dx(), a.Seen.Rect.Dy()
		}
		return back
	}))
	select {}
}
