// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"encoding"
	"encoding/json"
	"errors"
	"reflect"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/internal/enum"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
	"borewright.example/units/material"
)

// A kind is how a field of a job is asked for. It follows from the field's type alone.
type kind struct {
	of      reflect.Type // of the field
	boxes   int          // 0: one to tick; 1: a box; 2: two of a window, or of a value and its doubt
	units   []string     // with the space that stands before them, the usual one first
	joins   []string     // what stands between two boxes, the usual one first
	choices []string     // the only answers there are
	known   []string     // answers that are proposed
	several bool         // any number of the choices
	many    bool         // a list of values
	words   bool         // letters are typed here, or a sign that no keypad of numbers has
	literal bool         // a bare number in the file
}

var (
	lengths  = []string{" mm", " in", " thou", " µm"}
	angles   = []string{"°", " rad"}
	strokes  = []string{" cycles/min", " strokes/min"}
	degrees  = []string{" °C", " °F"}
	turnings = []string{" rev/min"}
)

// quantities says how what has a unit is written.
var quantities = map[reflect.Type]kind{
	reflect.TypeFor[units.Length]():            {boxes: 1, units: lengths},
	reflect.TypeFor[units.Limits]():            {boxes: 2, units: lengths, joins: []string{" to ", " ± "}},
	reflect.TypeFor[jobsheet.Measured]():       {boxes: 2, units: lengths, joins: []string{" ± "}},
	reflect.TypeFor[bore.Temperature]():        {boxes: 2, units: degrees, joins: []string{" ± ", " to "}},
	reflect.TypeFor[units.Temperature]():       {boxes: 1, units: degrees},
	reflect.TypeFor[units.TemperatureChange](): {boxes: 1, units: []string{" K", " °F"}},
	reflect.TypeFor[units.Angle]():             {boxes: 1, units: angles},
	reflect.TypeFor[units.Frequency]():         {boxes: 1, units: turnings},
	reflect.TypeFor[hone.SpindleRange]():       {boxes: 2, units: turnings, joins: []string{" to "}},
	reflect.TypeFor[hone.Stroking]():           {boxes: 1, units: strokes},
	reflect.TypeFor[hone.StrokingRange]():      {boxes: 2, units: strokes, joins: []string{" to "}},
	reflect.TypeFor[hone.Crosshatch]():         {boxes: 1, units: []string{"° included", "° from square", "° from axis", "° across axis"}},
	reflect.TypeFor[units.Volume]():            {boxes: 1, units: []string{" cm³", " in³"}},
	reflect.TypeFor[jobsheet.Duration]():       {boxes: 1, units: []string{"s", "m"}},
	reflect.TypeFor[jobsheet.Metal]():          {boxes: 1, words: true, known: material.Names()},
	reflect.TypeFor[bore.Axis]():               {boxes: 1, words: true, known: []string{"thrust", "pin", "45°", "135°"}},
}

// notKnown is what may be said to be known to nobody.
var notKnown = []string{"ring travel", "wear share", "least wall"}

// leaves lists the fields of a job that hold a value of their own, by their path, "[]" standing for the place in a
// list, each with its type.
func leaves() (paths []string, kinds map[string]kind) {
	kinds = map[string]kind{}
	var walk func(t reflect.Type, path string)
	walk = func(t reflect.Type, path string) {
		text := reflect.TypeFor[encoding.TextUnmarshaler]()
		switch {
		case reflect.PointerTo(t).Implements(text), !slices.Contains([]reflect.Kind{reflect.Struct, reflect.Slice, reflect.Pointer}, t.Kind()):
			paths, kinds[path] = append(paths, path), kindFor(t)
		case t.Kind() == reflect.Pointer && t.Elem().Kind() == reflect.Bool: // left out it is neither
			paths, kinds[path] = append(paths, path), kind{of: t, boxes: 1, literal: true, choices: []string{"true", "false"}}
		case t.Kind() == reflect.Pointer:
			walk(t.Elem(), path)
		case t.Kind() == reflect.Slice && t.Elem().Kind() == reflect.String:
			paths, kinds[path] = append(paths, path), kind{of: t, several: true, choices: notKnown}
		case t == reflect.TypeFor[[]units.Length]():
			paths, kinds[path] = append(paths, path), kind{of: t, boxes: 1, units: lengths, many: true}
		case t.Kind() == reflect.Slice:
			walk(t.Elem(), path+"[]")
		default:
			for i := range t.NumField() {
				f := t.Field(i)
				name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
				switch {
				case !f.IsExported() || name == "-":
				case f.Anonymous && name == "":
					walk(f.Type, path)
				default:
					walk(f.Type, strings.TrimPrefix(path+"."+name, "."))
				}
			}
		}
	}
	walk(reflect.TypeFor[jobsheet.Job](), "")
	return paths, kinds
}

func kindFor(t reflect.Type) kind {
	k, ok := quantities[t]
	switch {
	case ok:
	case choicesOf(t) != nil:
		k = kind{boxes: 1, choices: choicesOf(t)}
	case t.Kind() == reflect.Bool:
		k = kind{}
	case t.Kind() == reflect.Int, t.Kind() == reflect.Float64:
		k = kind{boxes: 1, literal: true}
	default:
		k = kind{boxes: 1, words: true}
	}
	k.of = t
	return k
}

// choicesOf returns the texts of an enumeration, or nil where the type is none.
func choicesOf(t reflect.Type) []string {
	u, ok := reflect.New(t).Interface().(encoding.TextUnmarshaler)
	if !ok || t.Kind() != reflect.Int8 {
		return nil
	}
	var names *enum.NameError
	if !errors.As(u.UnmarshalText([]byte("?")), &names) {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(names.Names), func(s string) bool { return s == "not given" || s == "none" })
}

// An entered is what stands in the boxes of a field.
type entered struct {
	parts [2]string
	join  string // between two
	unit  string // "": it stands in the box with the number
}

// split parts a text of a job among the boxes of its field, so that joined gives that very text again.
func (k kind) split(text string) entered {
	whole := entered{parts: [2]string{text}}
	for _, u := range k.units {
		body, ok := strings.CutSuffix(text, u)
		if !ok || body == "" {
			continue
		}
		e := entered{parts: [2]string{body}, unit: u}
		if k.boxes == 2 {
			e = k.splitTwo(body, u)
		}
		if k.joined(e) == text {
			return e
		}
	}
	return whole
}

func (k kind) splitTwo(body, unit string) entered {
	for _, join := range k.joins {
		if a, b, ok := strings.Cut(body, join); ok {
			return entered{[2]string{a, b}, join, unit}
		}
	}
	if k.of == reflect.TypeFor[units.Limits]() {
		if most, ok := strings.CutPrefix(body, "max "); ok {
			return entered{[2]string{"", most}, " to ", unit}
		}
		if least, ok := strings.CutPrefix(body, "min "); ok {
			return entered{[2]string{least, ""}, " to ", unit}
		}
	}
	return entered{parts: [2]string{body}, join: k.joins[0], unit: unit}
}

// joined returns the text of what stands in the boxes; "" where nothing does.
func (k kind) joined(e entered) string {
	a, b := e.parts[0], e.parts[1]
	if a == "" && b == "" {
		return ""
	}
	body := a
	switch {
	case k.boxes < 2 || b == "" && k.of != reflect.TypeFor[units.Limits]():
	case b == "" && e.unit != "":
		body = "min " + a
	case b == "":
	case a == "" && k.of == reflect.TypeFor[units.Limits]():
		body = "max " + b
	default:
		body = a + e.join + b
	}
	return body + e.unit
}

// typed returns what was typed into the boxes of a field as the text of a job: without spaces around it, a decimal
// comma written as a point where it can be nothing else, and a unit that was typed with the number taken for the one
// that is meant.
func (k kind) typed(parts []string) string {
	var e entered
	get := func(i int) string {
		if i < len(parts) {
			return parts[i]
		}
		return ""
	}
	next := 0
	for i := range max(k.boxes, 1) {
		if i == 1 { // what joins the two stands between them
			next++
			if e.join = get(next - 1); !slices.Contains(k.joins, e.join) {
				e.join = k.joins[0]
			}
		}
		e.parts[i] = strings.Join(strings.Fields(get(next)), " ")
		next++
	}
	if u := get(next); slices.Contains(k.units, u) {
		e.unit = u
	}
	if last := e.parts[max(k.boxes, 1)-1]; last != "" || e.parts[0] != "" {
		if last == "" {
			last = e.parts[0]
		}
		for _, u := range k.units {
			if body, ok := strings.CutSuffix(last, strings.TrimSpace(u)); ok && body != "" && e.unit != "" && strings.ContainsAny(body[len(body)-1:], " 0123456789.") {
				e.unit = ""
			}
		}
	}
	if !k.words || k.units != nil {
		for i := range e.parts {
			e.parts[i] = k.point(e.parts[i], e.unit)
		}
	}
	return k.joined(e)
}

// point returns a number with its decimal comma written as a point. A comma that may part thousands stays, to be
// asked about, unless no part of an engine is so large.
func (k kind) point(number, unit string) string {
	whole, fraction, ok := commaIn(number)
	if !ok {
		return number
	}
	if partsThousands(number) {
		l, err := units.ParseLength(whole + fraction + unit)
		if err != nil || !slices.Equal(k.units, lengths) || l.Abs() <= units.MaxLength {
			return number
		}
	}
	return whole + "." + fraction
}

// commaIn cuts a number at its comma, if it is one that has a comma and no point, perhaps with a unit behind it.
func commaIn(number string) (whole, fraction string, ok bool) {
	whole, fraction, _ = strings.Cut(number, ",")
	figures := strings.TrimLeft(fraction, "0123456789")
	ok = strings.Trim(strings.TrimLeft(whole, "+-"), "0123456789") == "" && len(figures) < len(fraction) &&
		!strings.ContainsAny(figures, "0123456789.,")
	return whole, fraction, ok
}

// partsThousands reports whether the comma of a number may part its thousands, as in 1,234.
func partsThousands(number string) bool {
	whole, fraction, ok := commaIn(number)
	whole = strings.TrimLeft(whole, "+-")
	figures := strings.TrimLeft(fraction, "0123456789")
	return ok && len(fraction)-len(figures) == 3 && len(whole) >= 1 && len(whole) <= 3 && whole[0] != '0'
}

// asJSON returns a text as its field wants it in the file: a bare number, or a yes or no, where that is one.
func (k kind) asJSON(text string) *node {
	if k.literal && json.Valid([]byte(text)) && (slices.Contains(k.choices, text) || strings.Trim(text, "0123456789+-.eE") == "") {
		return literalNode(text)
	}
	return textNode(text)
}
