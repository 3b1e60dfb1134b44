// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import (
	"errors"
	"reflect"
)

// A Rule returns what is wrong with the value of a field, or nil.
type Rule func(v any) error

// Check walks v, a struct, and whatever it holds: every text must be one that can be printed, and every field
// whose tag is `want:"NAME"` is handed to the rule of that name; `want:"ONE,TWO"` is for two. A field that is left
// out is its zero value, and the rule says whether it may be. A name without a rule panics.
func (d *Document) Check(v any, rules map[string]Rule) { d.check(reflect.ValueOf(v), rules, nil) }

func (d *Document) check(v reflect.Value, rules map[string]Rule, at *place) {
	switch v.Kind() {
	case reflect.String:
		if why := d.reader.plain(v.String()); why != "" {
			d.Fault(at.String(), v.Interface(), errors.New(why))
		}
	case reflect.Slice:
		for i := range v.Len() {
			d.check(v.Index(i), rules, &place{up: at, item: i, list: true})
		}
	case reflect.Pointer:
		if !v.IsNil() {
			d.check(v.Elem(), rules, at)
		}
	case reflect.Struct:
		s := d.shape(v.Type())
		if s.quantity {
			return // whose text is its own
		}
		for i, name := range s.names {
			if name != "" && (s.deep[i] || s.rules[i] != nil) {
				in := &place{up: at, name: name}
				d.hold(v.FieldByIndex(s.paths[i]), s.rules[i], rules, in)
				d.check(v.FieldByIndex(s.paths[i]), rules, in)
			}
		}
	}
}

// hold holds a field to its rules, in the order of the tag.
func (d *Document) hold(v reflect.Value, names []string, rules map[string]Rule, at *place) {
	for _, name := range names {
		rule, ok := rules[name]
		if !ok {
			panic("strictjson: no rule " + name)
		}
		err := rule(v.Interface())
		if err == nil {
			continue
		}
		var shown any
		if !v.IsZero() {
			shown = v.Interface()
		}
		d.Fault(at.String(), shown, err)
		return
	}
}
