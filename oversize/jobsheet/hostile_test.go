// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"io"
	"reflect"
	"regexp"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/oversize/jobsheet/page"
)

// written lists every way out of a sheet.
func written(s jobsheet.Sheet) map[string]func() error {
	return map[string]func() error{
		"text":  func() error { return s.WriteText(io.Discard) },
		"paper": func() error { return s.Print(io.Discard, page.Text{Lines: 40, ASCII: true}) },
		"html":  func() error { return s.WriteHTML(io.Discard) },
		"json":  func() error { return s.WriteJSON(io.Discard) },
	}
}

func survives(t *testing.T, what string, s jobsheet.Sheet) {
	t.Helper()
	for way, write := range written(s) {
		func() {
			defer func() {
				if p := recover(); p != nil {
					t.Errorf("%s: %s panics: %v", what, way, p)
				}
			}()
			if err := write(); err != nil && way != "json" {
				t.Errorf("%s: %s: %v", what, way, err)
			}
		}()
	}
}

// hurt calls visit with a value spoilt at one place after another: each list cut to none, to all but its last and
// left without a place; each pointer nil; each number or word beyond its range; each struct zero.
func hurt(v reflect.Value, path string, visit func(string)) {
	change := func(how string, to reflect.Value) {
		was := reflect.New(v.Type()).Elem()
		was.Set(v)
		v.Set(to)
		visit(path + " " + how)
		v.Set(was)
	}
	if !v.CanSet() {
		return
	}
	switch v.Kind() {
	case reflect.Slice:
		if v.Len() == 0 {
			return
		}
		change("none", reflect.Zero(v.Type()))
		change("one less", v.Slice(0, v.Len()-1))
		clone := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		reflect.Copy(clone, v)
		was := reflect.New(v.Type()).Elem()
		was.Set(v)
		v.Set(clone)
		hurt(v.Index(0), path+"[0]", visit)
		hurt(v.Index(v.Len()-1), fmt.Sprintf("%s[%d]", path, v.Len()-1), visit)
		v.Set(was)
	case reflect.Pointer:
		if v.IsNil() {
			return
		}
		change("nil", reflect.Zero(v.Type()))
		clone := reflect.New(v.Type().Elem())
		clone.Elem().Set(v.Elem())
		was := reflect.New(v.Type()).Elem()
		was.Set(v)
		v.Set(clone)
		hurt(clone.Elem(), path, visit)
		v.Set(was)
	case reflect.Struct:
		change("zero", reflect.Zero(v.Type()))
		for i := range v.NumField() {
			hurt(v.Field(i), path+"."+v.Type().Field(i).Name, visit)
		}
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		for _, x := range []int64{-1, 0, 99} {
			change(fmt.Sprint(x), reflect.ValueOf(x).Convert(v.Type()))
		}
	case reflect.String:
		change("hostile", reflect.ValueOf("\x1b[2J<script>\x00").Convert(v.Type()))
	}
}

// cylinders are the lists that run side by side: each is cut in every run.
var cylinders = regexp.MustCompile(`(Job|Choice|^[a-z-]+)\.Cylinders (none|one less)$|^[a-z-]+ zero$`)

// TestAnySheetIsWritten: no value of a sheet makes a way out of it panic: one that nobody planned, and one of which a
// part was taken away or spoilt.
func TestAnySheetIsWritten(t *testing.T) {
	survives(t, "zero", jobsheet.Sheet{})
	turn := 0
	for _, name := range []string{"pump", "keep", "two-stroke", "sleeve", "pump-finished", "traced"} {
		s := plan(t, job(t, name))
		hurt(reflect.ValueOf(&s).Elem(), name, func(what string) {
			if turn++; turn%hostileStride == 0 || cylinders.MatchString(what) {
				survives(t, what, s)
			}
		})
	}
}
