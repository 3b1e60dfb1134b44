// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import (
	"encoding"
	"reflect"
	"slices"
	"strings"
)

// A shape is what the tags of a struct say, looked up once for each type.
type shape struct {
	names    []string   // in JSON, by field; "" for what JSON does not hold
	paths    [][]int    // where each field is, those of embedded structs among them
	rules    [][]string // that a field is held to
	deep     []bool     // that may hold a text, or a rule
	omits    []bool     // whose zero is not written: a zero that stands there is no answer
	quantity bool       // a text of its own, not an object
}

func (d *Document) shape(t reflect.Type) *shape {
	s, ok := d.shapes[t]
	if ok {
		return s
	}
	s = &shape{quantity: t.Implements(reflect.TypeFor[encoding.TextMarshaler]())}
	d.fill(s, t, nil)
	d.shapes[t] = s
	return s
}

// fill adds the fields of a struct, which is reached by a path; those of one that is embedded stand beside its own, as
// encoding/json has them.
func (d *Document) fill(s *shape, t reflect.Type, path []int) {
	for i := range t.NumField() {
		field := t.Field(i)
		at := append(slices.Clip(path), i)
		if field.Anonymous && field.Tag.Get("json") == "" && field.Type.Kind() == reflect.Struct && !s.quantity {
			d.fill(s, field.Type, at)
			continue
		}
		name, options, _ := strings.Cut(field.Tag.Get("json"), ",")
		if name == "-" {
			name = ""
		}
		omits := false
		switch field.Type.Kind() {
		case reflect.Int, reflect.Int64, reflect.Float64, reflect.Struct: // the zero of a choice is a choice
			omits = options == "omitzero"
		}
		var rules []string
		if want := field.Tag.Get("want"); want != "" {
			rules = strings.Split(want, ",")
		}
		s.names, s.paths, s.omits, s.rules = append(s.names, name), append(s.paths, at), append(s.omits, omits), append(s.rules, rules)
		s.deep = append(s.deep, deep(field.Type))
	}
}

// deep reports whether a value of a type may hold a text, or a field with a rule.
func deep(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Pointer:
		return deep(t.Elem())
	case reflect.String, reflect.Slice, reflect.Struct:
		return true
	}
	return false
}

// unknown names the field that was probably meant by a name, or all that are known.
func (s *shape) unknown(name string) string {
	best, least := "", farOff
	for _, known := range s.names {
		if d := distance(strings.ToLower(name), known); known != "" && d < least {
			best, least = known, d
		}
	}
	if best != "" {
		return "unknown field: is " + best + " meant?"
	}
	return "unknown field: want one of " + strings.Join(slices.DeleteFunc(slices.Clone(s.names), func(n string) bool { return n == "" }), ", ")
}

// farOff is the distance from which on two names have nothing to do with each other.
const farOff = 3

// distance counts the bytes to change, add or drop to turn a into b, up to farOff.
func distance(a, b string) int {
	if len(a) > len(b)+farOff || len(b) > len(a)+farOff {
		return farOff
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			diagonal, row[j+1] = row[j+1], min(row[j+1]+1, row[j]+1, diagonal+cost)
		}
	}
	return min(row[len(b)], farOff)
}
