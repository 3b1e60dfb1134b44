// SPDX-License-Identifier: BSD-3-Clause

package page

import (
	"fmt"
	"html"
	"io"
	"math"
	"strconv"
	"strings"
)

// WriteSVG writes the picture as a drawing of its own, its title and notes below it. An error is the writer's.
func (p Picture) WriteSVG(w io.Writer) error {
	columns := max(20, int(p.Width/letterWidth)-1)
	for _, text := range append([]string{p.Title}, p.Notes...) {
		for _, line := range fold(clean(text), columns, "") {
			p.Height += 1.3 * LetterHeight
			p.Shapes = append(p.Shapes, Label{At: Point{0, p.Height - 0.4*LetterHeight}, Text: line})
		}
	}
	_, err := io.WriteString(w, `<?xml version="1.0" encoding="UTF-8"?>`+"\n"+p.svg("picture", ` xmlns="http://www.w3.org/2000/svg"`))
	return err
}

// svg returns the drawing, with the ids of its parts beginning with id, and the address of its language where it stands
// alone.
func (p Picture) svg(id, address string) string {
	var b strings.Builder
	w, h := number(p.Width), number(p.Height)
	fmt.Fprintf(&b, `<svg%s id="%s" role="img" aria-labelledby="%s-title %s-description" width="%smm" height="%smm" viewBox="0 0 %s %s">`+"\n",
		address, id, id, id, w, h, w, h)
	fmt.Fprintf(&b, "<title id=\"%s-title\">%s</title>\n<desc id=\"%s-description\">%s</desc>\n", id, escaped(p.Title), id, escaped(p.Description))
	fmt.Fprintf(&b, `<defs><pattern id="%s-hatch" width="1.6" height="1.6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">`+
		`<path d="M0 0V1.6" stroke="currentColor" stroke-width="0.3"/></pattern></defs>`+"\n", id)
	b.WriteString(`<g fill="none" stroke="currentColor" stroke-width="0.25" stroke-linecap="round" stroke-linejoin="round">` + "\n")
	for _, s := range p.Shapes {
		switch s := s.(type) {
		case Line:
			way := path
			if s.Closed {
				way = round
			}
			fmt.Fprintf(&b, `<path d="%s"%s/>`, way(s.Points), stroke(s.Stroke))
		case Circle:
			fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="%s"%s/>`, number(s.Centre.X), number(s.Centre.Y), number(max(0, s.Radius)), stroke(s.Stroke))
		case Area:
			fill := `fill="currentColor" fill-opacity="0.14"`
			if s.Hatched {
				fill = fmt.Sprintf(`fill="url(#%s-hatch)"`, id)
			}
			fmt.Fprintf(&b, `<path d="%s" stroke="none" %s/>`, round(s.Points), fill)
		case Dot:
			b.WriteString(dot(s))
		case Label:
			b.WriteString(label(s))
		}
		b.WriteByte('\n')
	}
	b.WriteString("</g></svg>\n")
	return b.String()
}

// escaped returns a text as it stands in markup.
func escaped(s string) string { return html.EscapeString(clean(s)) }

// stroke returns the attributes of a line; a thin one has those of the drawing.
func stroke(s Stroke) string {
	switch s {
	case Thick:
		return ` stroke-width="0.7"`
	case Dashed:
		return ` stroke-width="0.35" stroke-dasharray="2 1.4"`
	case Dotted:
		return ` stroke-width="0.5" stroke-dasharray="0.01 1.2"`
	}
	return ""
}

// path returns the way through points.
func path(points []Point) string {
	var b strings.Builder
	for i, q := range points {
		command := "L"
		if i == 0 {
			command = "M"
		}
		b.WriteString(command + number(q.X) + " " + number(q.Y))
	}
	return b.String()
}

// round returns the way through points and back to the first.
func round(points []Point) string {
	if len(points) == 0 {
		return ""
	}
	return path(points) + "Z"
}

// dot draws a dot, and its bar with a stop at each end across it.
func dot(d Dot) string {
	var b strings.Builder
	b.WriteString("<g>")
	if d.Text != "" {
		b.WriteString("<title>" + escaped(d.Text) + "</title>")
	}
	if dx, dy := d.To.X-d.From.X, d.To.Y-d.From.Y; dx != 0 || dy != 0 {
		const half = 0.8 // of a stop
		long := math.Hypot(dx, dy)
		x, y := -dy/long*half, dx/long*half
		stop := func(q Point) string { return path([]Point{{q.X - x, q.Y - y}, {q.X + x, q.Y + y}}) }
		fmt.Fprintf(&b, `<path d="%s%s%s"/>`, path([]Point{d.From, d.To}), stop(d.From), stop(d.To))
	}
	fmt.Fprintf(&b, `<circle cx="%s" cy="%s" r="0.7" fill="currentColor" stroke="none"/></g>`, number(d.At.X), number(d.At.Y))
	return b.String()
}

// label writes a text, as wide as its box whatever the type.
func label(l Label) string {
	from, to := l.Box()
	if to.X == from.X {
		return ""
	}
	anchor := [...]string{Start: "start", Middle: "middle", End: "end"}[max(Start, min(l.Anchor, End))]
	return fmt.Sprintf(`<text x="%s" y="%s" text-anchor="%s" textLength="%s" lengthAdjust="spacingAndGlyphs" fill="currentColor" stroke="none" font-size="%v" font-family="ui-monospace, monospace">%s</text>`,
		number(l.At.X), number(l.At.Y), anchor, number(to.X-from.X), LetterHeight, escaped(l.Text))
}

// number returns a length in thousandths of a millimetre at the finest; what is no number, or beyond any paper, is 0.
func number(x float64) string {
	if !(math.Abs(x) < 1e6) {
		x = 0
	}
	x = math.Round(x*1000) / 1000
	return strconv.FormatFloat(x+0, 'f', -1, 64)
}
