// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"html"
	"image"
	"strconv"
	"strings"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Request is what stands in the boxes of the page, as typed.
type Request struct {
	Bore    string    `json:"bore"`
	Round   string    `json:"round"` // side of the label round the bore
	Along   string    `json:"along"`
	Corners [8]string `json:"corners"` // x and y of each, in pixels
	Marking string    `json:"marking"`
	Arrowed bool      `json:"arrowed"`
	Whole   bool      `json:"whole"`
}

// An Answer is the angle or why there is none, as HTML, and a picture of what was seen.
type Answer struct {
	HTML string
	Seen *image.NRGBA // nil where there is no angle
}

// turn measures a picture. It keeps nothing.
func turn(picture image.Image, r Request) (a Answer) {
	defer func() {
		if p := recover(); p != nil {
			a = refused("The library broke on this picture, which is our fault and not yours: " + fmt.Sprint(p))
		}
	}()
	shot, err := r.shot()
	if err != nil {
		return refused(err.Error())
	}
	shot.Picture = picture
	m, err := shot.Crosshatch()
	if err != nil {
		return refused(err.Error())
	}
	return answer(m, shot)
}

func refused(why string) Answer {
	return Answer{HTML: `<h2>No angle</h2><p class="fault">` + html.EscapeString(why) + `</p>`}
}

// shot reads the boxes.
func (r Request) shot() (s photo.Shot, err error) {
	for _, f := range []struct {
		name, typed string
		to          *units.Length
	}{{"Diameter of the bore", r.Bore, &s.Bore}, {"Side of the label round the bore", r.Round, &s.Label.Round}, {"Side of the label along the bore", r.Along, &s.Label.Along}} {
		text := point(f.typed)
		if _, err := strconv.ParseFloat(text, 64); err == nil {
			text += " mm"
		}
		if *f.to, err = units.ParseLength(text); err != nil {
			return s, fmt.Errorf("%s: %w", f.name, err)
		}
	}
	if r.Marking != "" {
		if s.Marking, err = number("How well the corners are marked", r.Marking); err != nil {
			return s, err
		}
	}
	for i := range s.Corners {
		if s.Corners[i].X, err = number(fmt.Sprintf("Corner %d, to the right", i+1), r.Corners[2*i]); err != nil {
			return s, err
		}
		if s.Corners[i].Y, err = number(fmt.Sprintf("Corner %d, down", i+1), r.Corners[2*i+1]); err != nil {
			return s, err
		}
	}
	s.Label.Arrowed, s.Whole = r.Arrowed, r.Whole
	return s, nil
}

func number(name, typed string) (float64, error) {
	x, err := strconv.ParseFloat(point(typed), 64)
	if err != nil {
		return 0, fmt.Errorf("%s: %.40q: want a number of pixels", name, typed)
	}
	return x, nil
}

// point takes a decimal comma for a point.
func point(typed string) string {
	return strings.Replace(strings.TrimSpace(typed), ",", ".", 1)
}

// answer writes the angle, its doubt and what that is made of, and the lines for the job.
func answer(m photo.Measured, s photo.Shot) Answer {
	k, err := uncertainty.Coverage(0.95, m.DoF)
	if err != nil {
		return refused(err.Error())
	}
	rows, err := m.Budget.Rows()
	if err != nil {
		return refused(err.Error())
	}
	var b strings.Builder
	raw := func(format string, args ...any) { fmt.Fprintf(&b, format, args...) }
	doubt := k * m.Std.In(units.Degree)
	raw(`<h2>%s ± %.1f° (95 %%)</h2>`, html.EscapeString(m.Crosshatch.Format(1)), doubt)
	if !m.Min.IsZero() {
		raw(`<p>Over the wall seen it may run from %s to %s: the lines are not of one lean.</p>`, html.EscapeString(m.Min.Format(0)), html.EscapeString(m.Max.Format(0)))
	}
	raw(`<p>Lines lean by %.1f° and %.1f° from square to the axis; the camera was tilted by %.0f°.</p>`, m.Leans[0].In(units.Degree), m.Leans[1].In(units.Degree), m.Tilt.In(units.Degree))
	raw(`<table><caption>Parts of the doubt, as standard uncertainties</caption><thead><tr><th scope="col">Part</th><th scope="col">Degrees</th><th scope="col">Share</th></tr></thead><tbody>`)
	for _, r := range rows {
		raw(`<tr><th scope="row">%s</th><td>%.2f°</td><td>%.0f %%</td></tr>`, html.EscapeString(r.Name), r.Contribution, 100*r.Share)
	}
	raw(`</tbody></table>`)
	if !s.Whole {
		raw(`<p>If the picture is all that the lens saw, say so: the doubt allows for a crop.</p>`)
	}
	raw(`<h3>For the proof of this cylinder on the bench</h3><p>Crosshatch, as measured: <b>%s</b><br/>Its doubt: <b>%.1f°</b></p>`, html.EscapeString(m.Crosshatch.Format(1)), doubt)
	raw(`<p>Only the wall seen is measured. A label and its glue are dirt: wash again. The maker's manual outranks this.</p>`)
	return Answer{HTML: b.String(), Seen: plain(m.Picture())}
}

// plain returns a picture as a page draws it.
func plain(from image.Image) *image.NRGBA {
	if from == nil {
		return nil
	}
	to := image.NewNRGBA(image.Rect(0, 0, from.Bounds().Dx(), from.Bounds().Dy()))
	for y := range to.Rect.Dy() {
		for x := range to.Rect.Dx() {
			to.Set(x, y, from.At(from.Bounds().Min.X+x, from.Bounds().Min.Y+y))
		}
	}
	return to
}
