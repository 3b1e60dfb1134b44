// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

package main

import (
	_ "embed"
	"fmt"
	"strings"
)

var (
	//go:embed photo/page.js
	photoScript string
	//go:embed photo/page.css
	photoStyle string
)

// howToPhotograph is what makes a picture one that can be measured.
var howToPhotograph = []string{
	"Stop the drive before a hand or a lens goes near.",
	"Stick an oblong label of known size on the wall, square to the bore, clean-edged and flat: a third of the picture's width or more. Measure its sides, and know which one runs round the bore.",
	"The whole picture sharp, 1,000 pixels or more over 10 to 30 mm of wall, at mid-stroke.",
	"Soft light, and a second picture lit from the other side: a groove that light runs along does not show.",
	"Turn the camera some 10° to 20° about its line of sight, so that no lines run along the rows of the picture. No crop, no filter, no digital zoom.",
	"Before the final wash, or wash again: a label and its glue are dirt.",
}

// photoHTML returns the page that measures a photograph, as a file of its own.
func photoHTML(d document) string {
	d.own, d.look = photoScript, photoStyle
	var b strings.Builder
	raw := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	raw(`<!DOCTYPE html>
<html lang="en-GB"><head><meta charset="%s"/><meta name="viewport" content="width=device-width, initial-scale=1"/>
<meta http-equiv="Content-Security-Policy" content="%s"/>
<title>The crosshatch in a photograph</title><style>%s</style></head>
<body><main><h1>The crosshatch in a photograph</h1>
<p>A label of known size on the wall, one picture, four corners marked: the angle that the lines really make, with its doubt. Nothing leaves this page.</p>
<details><summary>How to photograph</summary><ul>`, d.charset(), text(d.policy()), d.styles())
	for _, how := range howToPhotograph {
		raw(`<li>%s</li>`, text(how))
	}
	raw(`</ul></details><p><label class="button">Choose a picture<input type="file" id="picture" accept="image/*"/></label> <span id="size"></span></p><div class="boxes">`)
	for _, box := range [][2]string{{"bore", "Diameter of the bore, mm"}, {"round", "Label: side round the bore, mm"}, {"along", "Label: side along the bore, mm"}, {"marking", "Corners marked to, pixels; nothing is half a pixel"}} {
		raw(`<div><label for="%s">%s</label><input id="%s" inputmode="decimal" autocomplete="off"/></div>`, box[0], text(box[1]), box[0])
	}
	raw(`</div><label class="tick"><input type="checkbox" id="arrowed"/> The label says which side is which, so that it may be square</label>
<label class="tick"><input type="checkbox" id="whole"/> The picture is all that the lens saw, not cropped</label>
<h2>Four corners of the label</h2>
<p>Clockwise as seen in the picture, the first two on a side that runs round the bore. Touch the picture near a corner, then the large view to half a pixel, or move there with the arrow keys; or type the pixels.</p>
<div class="corners">`)
	for i := range 4 {
		raw(`<fieldset><legend>Corner %d</legend><label class="tick"><input type="radio" name="corner" id="corner-%d"/> mark this one</label>`, i+1, i)
		for k, way := range []string{"to the right", "down"} {
			raw(`<label for="at-%d-%d">Pixels %s</label><input data-corner="%d" id="at-%d-%d" inputmode="decimal" autocomplete="off"/>`, i, k, way, i, i, k)
		}
		raw(`</fieldset>`)
	}
	raw(`</div>
<canvas id="near" width="640" height="640" tabindex="0" role="img" aria-label="Large view of the corner that is marked; arrow keys move it by half a pixel"></canvas>
<figure><canvas id="whole-picture" width="640" height="20" role="img" aria-label="The picture with the corners marked"></canvas></figure>
<p><button type="button" id="measure">Measure</button></p>
<div id="answer" role="status"></div>
<figure id="seen-figure" hidden><canvas id="seen" role="img" aria-label="What was seen"></canvas><figcaption>What was seen: the lines found, up to the right in light blue and down in yellow, should lie along those of the wall; red is left out.</figcaption></figure>
</main><script type="application/json" id="words">%s</script>
<script type="text/plain" id="engine" data-size="%d">%s</script>
<script>%s</script>
</body></html>
`, scriptWords(map[string]string{
		"waiting": "The picture is being measured.", "noPicture": "Choose a picture first.",
		"notOpened": "This picture was not opened: ", "failed": "Nothing came back: ",
	}), d.size, d.packed, d.script())
	return b.String()
}
