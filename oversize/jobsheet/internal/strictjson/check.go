// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import (
	"errors"
	"fmt"
	"reflect"
)

// A Rule returns what is wrong with the value of a field, or nil.
type Rule func(v any) error

// Check walks v, a struct, and whatever it holds. Every text must be one that can be printed. A field whose tag is
// `needs:"WHAT"` must be there, and the tag says what is wanted; of a list, or of a whole number, `most:"N"` allows no
// more than that; and a field with `want:"NAME"` is handed to the rule of that name, one with `want:"ONE,TWO"` to two.
// Nobody looks into what is left out, by omitzero or as a nil pointer. A name without a rule panics.
func (d *Document) Check(v any, rules map[string]Rule) {
	d.walk(reflect.ValueOf(v), nil, func(m *member, v reflect.Value, at *place) { d.hold(m, v, rules, at) })
}

// Walk hands look every field of v that is not left out and has a tag `usual:"ONE,TWO"`, with its path, which is to be asked for at once, and the
// names.
func (d *Document) Walk(v any, look func(path fmt.Stringer, v any, usual []string)) {
	d.walk(reflect.ValueOf(v), nil, func(m *member, v reflect.Value, at *place) {
		if m.usual != nil {
			look(at, v.Interface(), m.usual)
		}
	})
}

// walk goes through the fields of a struct, and of whatever it holds, that are not left out, or may not be.
func (d *Document) walk(v reflect.Value, at *place, look func(*member, reflect.Value, *place)) {
	switch v.Kind() {
	case reflect.Slice:
		if v.Len() == 0 {
			return
		}
		list := &place{up: at, list: true} // one for all, as the next, since a path is made at once
		in := &place{up: list}
		for i := range v.Len() {
			list.item = i
			switch v.Type().Elem().Kind() {
			case reflect.String:
				look(&member{}, v.Index(i), list)
			case reflect.Struct:
				d.members(v.Index(i), in, look)
			default:
				d.walk(v.Index(i), list, look)
			}
		}
	case reflect.Pointer:
		d.walk(v.Elem(), at, look) // of nil: nothing
	case reflect.Struct:
		d.members(v, &place{up: at}, look)
	}
}

// members goes through the fields of a struct, each of which at is made the place of.
func (d *Document) members(v reflect.Value, at *place, look func(*member, reflect.Value, *place)) {
	s := d.shape(v.Type())
	if s.quantity {
		return // whose text is its own
	}
	for i := range s.members {
		m := &s.members[i]
		in := v.FieldByIndex(m.path)
		if m.name == "" || !m.looked || m.needs == "" && m.omits && in.IsZero() {
			continue
		}
		at.name = m.name
		look(m, in, at)
		if m.deep {
			d.walk(in, at, look)
		}
	}
}

// hold holds a field to its tags.
func (d *Document) hold(m *member, v reflect.Value, rules map[string]Rule, at *place) {
	if m.needs != "" && v.IsZero() {
		path, what := at.String(), "want "
		if d.find(path) == nil {
			what = "missing: want "
		}
		d.Fault(path, nil, errors.New(what+m.needs))
		return
	}
	if v.Kind() == reflect.String {
		if why := d.reader.plain(v.String()); why != "" {
			d.Fault(at.String(), v.Interface(), errors.New(why))
		}
	}
	if m.most > 0 {
		n, want := 0, "want at most %d"
		if v.Kind() == reflect.Slice {
			n = v.Len()
		} else if n = int(v.Int()); n < 0 {
			want = "want 0 to %d"
		}
		if n < 0 || n > m.most {
			d.Fault(at.String(), n, fmt.Errorf(want, m.most))
			return
		}
	}
	for _, name := range m.rules {
		rule, ok := rules[name]
		if !ok {
			panic("strictjson: no rule " + name)
		}
		if err := rule(v.Interface()); err != nil {
			var shown any
			if !v.IsZero() {
				shown = v.Interface()
			}
			d.Fault(at.String(), shown, err)
			return
		}
	}
}
