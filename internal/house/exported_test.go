// SPDX-License-Identifier: BSD-3-Clause

package house_test

import (
	"go/types"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// notStored are structs that no file holds, and enumerations that no stored struct has, and why.
var notStored = map[string]string{
	"jobsheet.Fault":      "one of an error's",
	"simulate.Simulation": "holds a model, which is a function",
	"study.Use":           "an argument of a question",
	"page.Anchor":         "of a drawing",
	"page.Stroke":         "of a drawing",
}

// notAnInterval are structs with the extremes of something that are not the ends of an interval, and why.
var notAnInterval = map[string]string{
	"bore.Change":         "two places",
	"bore.Geometry":       "two places",
	"oversize.Cylinder":   "the sizes of two places",
	"simulate.Validation": "how far either end is off",
}

// TestExportedTypes holds what importers see to three rules. A struct that they may store has a JSON name for every
// field, or writes itself as text. An enumeration is an int8 with text both ways. The ends of an interval are Min and
// Max, of whatever they are; Least, Greatest, Largest and the like are one of several things that were found.
func TestExportedTypes(t *testing.T) {
	_, own, imports := load(t)
	extremes := regexp.MustCompile(`^(Least|Greatest|Most|Fewest|Low|High|Lower|Upper|Smallest|Largest|Minimum|Maximum)$`)
	structs, enumerations := 0, 0
	for _, p := range own {
		path := strings.TrimPrefix(p.ImportPath, module+"/")
		if below(path, "examples") || strings.Contains(path+"/", "internal/") || path == module {
			continue
		}
		drawn := path == "oversize/jobsheet/page" || path == "oversize/jobsheet/picture" // and not stored
		pkg, err := imports.Import(p.ImportPath)
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range pkg.Scope().Names() {
			object, ok := pkg.Scope().Lookup(name).(*types.TypeName)
			if !ok || !object.Exported() {
				continue
			}
			called := pkg.Name() + "." + name
			has := func(method string) bool {
				return types.NewMethodSet(types.NewPointer(object.Type())).Lookup(pkg, method) != nil
			}
			switch under := object.Type().Underlying().(type) {
			case *types.Basic:
				if under.Kind() != types.Int8 || notStored[called] != "" {
					continue
				}
				enumerations++
				for _, method := range []string{"String", "MarshalText", "UnmarshalText"} {
					if !has(method) {
						t.Errorf("%s is an enumeration without %s", called, method)
					}
				}
			case *types.Struct:
				structs++
				text := drawn || has("MarshalText") || has("MarshalJSON") || has("Error") || notStored[called] != ""
				var ends []string
				for i := range under.NumFields() {
					f := under.Field(i)
					if !f.Exported() {
						continue
					}
					tag, _, _ := strings.Cut(reflect.StructTag(under.Tag(i)).Get("json"), ",")
					if !text && tag == "" && !f.Embedded() {
						t.Errorf("%s.%s has no JSON name", called, f.Name())
					}
					if extremes.MatchString(f.Name()) {
						ends = append(ends, f.Name())
					}
				}
				if len(ends) > 1 && notAnInterval[called] == "" {
					t.Errorf("%s has %v: the ends of an interval are Min and Max", called, ends)
				}
			}
		}
	}
	if structs < 150 || enumerations < 15 {
		t.Errorf("%d structs and %d enumerations, want more", structs, enumerations)
	}
}

var (
	numbered = regexp.MustCompile(`(?m)^//\s+(?:\((\d+)\) |[^\n]*\s\((\d+)\)$)`)
	marked   = regexp.MustCompile(`(?m)^\s*[^/\s][^\n]*// \((\d+)\)`)
)

// TestFormulasAreMarked: where comments of a package number its formulas, each number stands beside the line that
// computes it, so that a learner finds the line from the formula, and the other way round.
func TestFormulasAreMarked(t *testing.T) {
	for _, path := range []string{"units/material", "bore/fit", "bore/hone", "rings", "oversize", "oversize/sleeve"} {
		files, err := filepath.Glob(filepath.Join(root, path, "*.go"))
		if err != nil {
			t.Fatal(err)
		}
		in := map[string]bool{} // the comments; whether the code has it too
		marks := map[string]bool{}
		for _, name := range files {
			if strings.HasSuffix(name, "_test.go") {
				continue
			}
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			for _, m := range numbered.FindAllSubmatch(text, -1) {
				in[string(m[1])+string(m[2])] = true
			}
			for _, m := range marked.FindAllSubmatch(text, -1) {
				marks[string(m[1])] = true
			}
		}
		if got, want := slices.Sorted(maps.Keys(marks)), slices.Sorted(maps.Keys(in)); len(want) < 3 || !slices.Equal(got, want) {
			t.Errorf("%s: formulas %v, marked in the code %v", path, want, got)
		}
	}
}
