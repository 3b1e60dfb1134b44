// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"io"
	"math"
)

// A sheet is a wall of known crosshatch to print: lengths in mm, the angle in degrees.
type sheet struct {
	included     float64 // between the two families
	bore         float64 // of the tube it is rolled into
	round, along float64 // of the label in its middle
}

// Of a sheet, in mm.
const (
	sheetHeight = 170.0
	overlap     = 8.0 // to glue
	pitch       = 0.6 // between lines, square to them, on the mean
	stroke      = 0.18
	frame       = 0.4 // about the label
	margin      = 8.0
	ruler       = 100.0 // to see whether the printer kept the scale
)

// A segment is a ruled line on the sheet, x round the bore and y along it, downwards.
type segment struct{ x1, y1, x2, y2 float64 }

// width is that of the ruled field: once round the bore.
func (s sheet) width() float64 { return math.Pi * s.bore }

// segments returns the lines of one family, cut to the field; those of the other are mirrored.
func (s sheet) segments(lean float64) []segment {
	sin, cos := math.Sincos(lean * math.Pi / 180)
	w, h := s.width(), sheetHeight
	var out []segment
	reach := w + h
	for i := -int(reach / pitch); i <= int(reach/pitch); i++ {
		// The line through the middle, moved square to itself; t runs along it.
		// Lines are not evenly spaced, as on no wall they are: the golden section spreads them.
		_, part := math.Modf(float64(i+1<<20) * 0.6180339887498949)
		off := (float64(i) + 0.7*part) * pitch
		px, py := w/2-off*sin, h/2+off*cos
		lo, hi := -2*reach, 2*reach
		for _, side := range [2][3]float64{{px, cos, w}, {py, sin, h}} {
			at, by, end := side[0], side[1], side[2]
			if math.Abs(by) < 1e-12 {
				if at < 0 || at > end {
					hi = lo
				}
				continue
			}
			a, b := -at/by, (end-at)/by
			lo, hi = max(lo, min(a, b)), min(hi, max(a, b))
		}
		if hi-lo > 1 {
			out = append(out, segment{px + lo*cos, py + lo*sin, px + hi*cos, py + hi*sin})
		}
	}
	return out
}

// write writes the sheet as SVG, a user unit to a millimetre.
func (s sheet) write(w io.Writer) error {
	width, height := s.width()+overlap+2*margin, sheetHeight+2*margin+14
	var err error
	put := func(format string, a ...any) {
		if err == nil {
			_, err = fmt.Fprintf(w, format+"\n", a...)
		}
	}
	put(`<svg xmlns="http://www.w3.org/2000/svg" width="%.3fmm" height="%.3fmm" viewBox="%.3f %.3f %.3f %.3f">`,
		width, height, -margin, -margin, width, height)
	put(`<title>crosshatch of %g° included for a tube of %g mm</title>`, s.included, s.bore)
	// Black and white alone: a printer makes grey of dots in rows at 45°, as plain as lines.
	put(`<g stroke="#000" stroke-width="%g">`, stroke)
	for _, lean := range [2]float64{s.included / 2, -s.included / 2} {
		for _, l := range s.segments(lean) {
			put(`<line x1="%.4f" y1="%.4f" x2="%.4f" y2="%.4f"/>`, l.x1, l.y1, l.x2, l.y2)
		}
	}
	put(`</g>`)
	put(`<rect id="frame" x="%.4f" y="%.4f" width="%.4f" height="%.4f"/>`,
		(s.width()-s.round)/2-frame, (sheetHeight-s.along)/2-frame, s.round+2*frame, s.along+2*frame)
	put(`<rect id="label" x="%.4f" y="%.4f" width="%.4f" height="%.4f" fill="#fff"/>`,
		(s.width()-s.round)/2, (sheetHeight-s.along)/2, s.round, s.along)
	put(`<path d="M0 %.3fh%g" stroke="#000" stroke-width="0.3"/>`, sheetHeight+5, ruler)
	put(`<text x="0" y="%.3f" font-size="4" font-family="sans-serif">The line above is %g mm long if the printer kept the scale. `+
		`%g° included. Label %g by %g mm inside its frame.</text>`, sheetHeight+10, ruler, s.included, s.round, s.along)
	put(`<text x="0" y="%.3f" font-size="4" font-family="sans-serif">Cut at the right edge of the field or glue the strip of %g mm under it. `+
		`Roll it with the print inside, into a tube of %g mm.</text>`, sheetHeight+15, overlap, s.bore)
	put(`</svg>`)
	return err
}
