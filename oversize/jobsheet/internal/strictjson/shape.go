// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import (
	"encoding"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// A shape is what the tags of a struct say, looked up once for each type.
type shape struct {
	members  []member
	quantity bool // a text of its own, not an object
}

// A member is a field of a struct.
type member struct {
	name         string   // in JSON; "" for what JSON does not hold
	path         []int    // where it is, of an embedded struct too
	omits        bool     // its zero is not written: a zero that stands there is no answer
	deep         bool     // it may hold a text, or a field with a tag
	looked       bool     // it is deep, a text, or has a tag
	needs        string   // what is wanted, of a field that must be there
	most         int      // of a list, or a whole number; 0: any
	rules, usual []string // by name
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
	s.members = slices.Grow(s.members, t.NumField())
	for i := range t.NumField() {
		field := t.Field(i)
		at := append(slices.Clip(path), i)
		named := field.Tag.Get("json")
		if field.Anonymous && named == "" && field.Type.Kind() == reflect.Struct && !s.quantity {
			d.fill(s, field.Type, at)
			continue
		}
		name, options, _ := strings.Cut(named, ",")
		m := member{path: at, deep: deep(field.Type)}
		if name != "-" {
			m.name = name
		}
		if tag := field.Tag; len(tag) > len(`json:""`)+len(named) { // as it mostly is not
			m.needs, m.rules, m.usual = tag.Get("needs"), split(tag.Get("want")), split(tag.Get("usual"))
			m.most, _ = strconv.Atoi(tag.Get("most"))
		}
		switch field.Type.Kind() {
		case reflect.Int, reflect.Int64, reflect.Float64, reflect.Struct: // the zero of a choice is a choice
			m.omits = options == "omitzero"
		}
		m.looked = m.deep || field.Type.Kind() == reflect.String || m.needs != "" || m.most != 0 || m.rules != nil || m.usual != nil
		s.members = append(s.members, m)
	}
}

// member returns the field of a name, or nil.
func (s *shape) member(name string) *member {
	for i := range s.members {
		if s.members[i].name == name && name != "" {
			return &s.members[i]
		}
	}
	return nil
}

// split returns the names that a tag lists.
func split(tag string) []string {
	if tag == "" {
		return nil
	}
	return strings.Split(tag, ",")
}

// deep reports whether a value of a type may hold fields, or is a list of texts.
func deep(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Pointer:
		return deep(t.Elem())
	case reflect.Slice:
		return t.Elem().Kind() == reflect.String || deep(t.Elem())
	case reflect.Struct:
		return !t.Implements(reflect.TypeFor[encoding.TextMarshaler]())
	}
	return false
}

// unknown names the field that was probably meant by a name, or all that are known.
func (s *shape) unknown(name string) string {
	best, least := "", farOff
	var all []string
	for _, m := range s.members {
		if m.name == "" {
			continue
		}
		all = append(all, m.name)
		if d := distance(strings.ToLower(name), m.name); d < least {
			best, least = m.name, d
		}
	}
	if best != "" {
		return "unknown field: is " + best + " meant?"
	}
	return "unknown field: want one of " + strings.Join(all, ", ")
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
