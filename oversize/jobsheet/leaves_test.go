// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"encoding"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// leaves lists every field of a type that holds a value of its own, by its path in JSON without places in lists.
func leaves(t reflect.Type, path string) (list []string) {
	text := reflect.TypeFor[encoding.TextMarshaler]()
	switch {
	case t.Implements(text) || reflect.PointerTo(t).Implements(text):
		return []string{path}
	case t.Kind() == reflect.Pointer, t.Kind() == reflect.Slice:
		return leaves(t.Elem(), path)
	case t.Kind() != reflect.Struct:
		return []string{path}
	}
	for i := range t.NumField() {
		f := t.Field(i)
		name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
		switch {
		case !f.IsExported() || name == "-":
		case f.Anonymous && name == "":
			list = append(list, leaves(f.Type, path)...)
		default:
			list = append(list, leaves(f.Type, strings.TrimPrefix(path+"."+name, "."))...)
		}
	}
	return list
}

// notAttacked are the fields that stand in no job that is attacked, all those below a path together, and why.
var notAttacked = map[string]string{
	"risk":                              "stated by the workshop: excepted",
	"engine.chamber.gasket_hole":        "refused: engine.gasket_hole is read instead",
	"cylinders.traces.radii":            "as of the finished bore, where radii are attacked",
	"cylinders.proof_traces.deviations": "as of the worn bore, where deviations are attacked",
	"cylinders.profiles.points":         "instead of heights, which are attacked: TestProfileRefused",
}

// TestEveryFieldIsAttacked: every field of a job stands in one of the jobs that are attacked, or in a list with the
// reason. Whoever adds a field puts it into a demo, or says here why not.
func TestEveryFieldIsAttacked(t *testing.T) {
	place := regexp.MustCompile(`\[\d+\]`)
	stands := map[string]bool{}
	for _, j := range attacked(t) {
		spots("", j, func(s spot) { stands[place.ReplaceAllString(s.path, "")] = true })
	}
	used := map[string]bool{}
	for _, leaf := range leaves(reflect.TypeFor[jobsheet.Job](), "") {
		if stands[leaf] {
			continue
		}
		listed := false
		for path := range notAttacked {
			if leaf == path || strings.HasPrefix(leaf, path+".") {
				listed, used[path] = true, true
			}
		}
		if !listed {
			t.Errorf("%s stands in no job that is attacked", leaf)
		}
	}
	for path := range notAttacked {
		if !used[path] {
			t.Errorf("%s is no field of a job, or stands in one that is attacked: take it off the list", path)
		}
	}
}
