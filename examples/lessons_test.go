// SPDX-License-Identifier: BSD-3-Clause

// Package examples_test holds the lessons to their form. What they say is held by a test beside each.
package examples_test

import (
	"bytes"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "borewright.example/"

// lessons returns the names of the lessons: of every folder here whose program says that it is one.
func lessons(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("*/main.go")
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, f := range files {
		src, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Contains(src, []byte(" is a lesson: ")) {
			names = append(names, filepath.Dir(f))
		}
	}
	if len(names) < 13 {
		t.Fatalf("%d lessons: %v", len(names), names)
	}
	return names
}

// TestLessonsForm: a lesson is one short file and its test, takes no flags and reads nothing, and of the
// module it imports units, what lies below that, and one room.
func TestLessonsForm(t *testing.T) {
	const most = 200 // of code: some 150 is meant
	plain := []string{"bytes", "cmp", "encoding/base64", "errors", "fmt", "image", "image/color", "image/png", "io", "log", "math", "os", "slices", "strings", "time", "gonum.org/v1/gonum/num/hyperdual"}
	base := []string{"units", "units/uncertainty", "units/material"}
	list, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	readme, err := os.ReadFile("../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range lessons(t) {
		if !bytes.Contains(list, []byte("\n//   - "+name+": ")) {
			t.Errorf("doc.go does not list %s", name)
		}
		if !bytes.Contains(readme, []byte("| [`"+name+"`](examples/"+name+"/main.go) | ")) {
			t.Errorf("README.md does not list %s", name)
		}
		files, err := filepath.Glob(name + "/*")
		if err != nil || len(files) != 2 || filepath.Base(files[0]) != "lesson_test.go" || filepath.Base(files[1]) != "main.go" {
			t.Errorf("%s: %v, want main.go and lesson_test.go", name, files)
			continue
		}
		src, err := os.ReadFile(files[1])
		if err != nil {
			t.Fatal(err)
		}
		code := 0
		for line := range bytes.Lines(src) {
			if line = bytes.TrimSpace(line); len(line) > 0 && !bytes.HasPrefix(line, []byte("//")) {
				code++
			}
		}
		if code > most {
			t.Errorf("%s: %d lines of code, want at most %d", name, code, most)
		}
		for _, want := range []string{"\n// Change these. ", "\nvar shipped = data{", "\nfunc lesson(w io.Writer, ", "lesson(os.Stdout, shipped)", "\tdefer refuse(w)\n"} {
			if !bytes.Contains(src, []byte(want)) {
				t.Errorf("%s has no %q", name, want)
			}
		}
		f, err := parser.ParseFile(token.NewFileSet(), files[1], src, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		var rooms []string
		for _, i := range f.Imports {
			path, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			own, ok := strings.CutPrefix(path, module)
			switch {
			case !ok && !slices.Contains(plain, path):
				t.Errorf("%s imports %s", name, path)
			case ok && !slices.Contains(base, own):
				rooms = append(rooms, own)
			}
		}
		if len(rooms) > 1 || slices.Contains(rooms, "oversize/jobsheet") {
			t.Errorf("%s imports %v, want one room", name, rooms)
		}
	}
}
