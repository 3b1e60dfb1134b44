// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import "reflect"

// Copy returns v, a struct such as is read, with lists of its own, in whatever it holds: what is written into the one's does
// not show in the other's. What a pointer leads to is shared.
func Copy[T any](v T) T {
	own(reflect.ValueOf(&v).Elem())
	return v
}

// own gives a value lists of its own.
func own(v reflect.Value) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if field := v.Field(i); field.CanSet() {
				own(field)
			}
		}
	case reflect.Slice:
		if v.IsNil() {
			return
		}
		list := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(list, v)
		v.Set(list)
		if lists(v.Type().Elem()) {
			for i := range v.Len() {
				own(v.Index(i))
			}
		}
	}
}

// lists reports whether a value of a type may hold a list.
func lists(t reflect.Type) bool {
	switch t.Kind() {
	case reflect.Slice:
		return true
	case reflect.Struct:
		for i := range t.NumField() {
			if lists(t.Field(i).Type) {
				return true
			}
		}
	}
	return false
}
