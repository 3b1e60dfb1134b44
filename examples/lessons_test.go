// SPDX-License-Identifier: BSD-3-Clause

// Package examples_test holds the lessons to their form and to the letter of what they print.
package examples_test

import (
	"bytes"
	"encoding/base64"
	"flag"
	"fmt"
	"go/parser"
	"go/token"
	"hash/crc32"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"testing"
)

var update = flag.Bool("update", false, "write the golden texts anew")

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

// TestLessonsPrint runs every lesson that has no test of its own twice and holds it to its golden text.
func TestLessonsPrint(t *testing.T) {
	if _, err := exec.LookPath("go"); err != nil || runtime.GOOS == "js" || runtime.GOOS == "wasip1" {
		t.Skip("no go command here")
	}
	dir := t.TempDir()
	names := slices.DeleteFunc(lessons(t), func(name string) bool {
		_, err := os.Stat(filepath.Join(name, "lesson_test.go"))
		return err == nil
	})
	build := []string{"build", "-o", dir + string(filepath.Separator)}
	for _, name := range names {
		build = append(build, "./"+name)
	}
	if out, err := exec.Command("go", build...).CombinedOutput(); err != nil {
		t.Fatalf("go build: %v\n%s", err, out)
	}
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			program := filepath.Join(dir, name)
			if runtime.GOOS == "windows" {
				program += ".exe"
			}
			got := output(t, program)
			if again := output(t, program); !bytes.Equal(got, again) {
				t.Error("two runs differ")
			}
			text := named(t, got)
			golden := filepath.Join("testdata", name+".txt")
			if *update {
				if err := os.WriteFile(golden, text, 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(golden)
			if err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(text, want) {
				t.Errorf("differs from %s; after a look at the difference: go test ./examples -update\n%s", golden, text)
			}
			for _, part := range []string{"\nThe question: ", "\n1  ", "\nA SECOND WAY", "\nWHAT USUALLY GOES WRONG\n", "\nCAUTION: "} {
				if !bytes.Contains(text, []byte(part)) {
					t.Errorf("no %q", part)
				}
			}
			if bytes.Contains(text, []byte("NaN")) || bytes.Contains(text, []byte("%!")) {
				t.Error("prints what is no number, or a bad verb")
			}
		})
	}
}

func output(t *testing.T, program string) []byte {
	t.Helper()
	cmd := exec.Command(program)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil || stderr.Len() > 0 {
		t.Fatalf("%v\n%s", err, &stderr)
	}
	return out
}

// named puts in place of each picture its size and a checksum of its dots, for how a PNG is packed
// may change with the standard library.
func named(t *testing.T, out []byte) []byte {
	t.Helper()
	var text bytes.Buffer
	for line := range bytes.Lines(out) {
		code, ok := bytes.CutPrefix(line, []byte("IMAGE:"))
		if !ok {
			text.Write(line)
			continue
		}
		b, err := base64.StdEncoding.DecodeString(strings.TrimSpace(string(code)))
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(b))
		if err != nil {
			t.Fatal(err)
		}
		p, ok := img.(*image.Paletted)
		if !ok {
			t.Fatalf("a picture of %T", img)
		}
		fmt.Fprintf(&text, "IMAGE: %d by %d dots, %08x\n", p.Rect.Dx(), p.Rect.Dy(), crc32.ChecksumIEEE(p.Pix))
	}
	return text.Bytes()
}

// TestLessonsForm: a lesson is one short file that takes no flags and reads nothing, and of the module
// it imports units, what lies below that, and one room.
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
		files = slices.DeleteFunc(files, func(f string) bool { return strings.HasSuffix(f, "_test.go") })
		if err != nil || len(files) != 1 {
			t.Errorf("%s: %v, want one file and its test", name, files)
			continue
		}
		src, err := os.ReadFile(files[0])
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
		if !bytes.Contains(src, []byte("\n// Change these. ")) {
			t.Errorf("%s does not say what to change", name)
		}
		f, err := parser.ParseFile(token.NewFileSet(), files[0], src, parser.ImportsOnly)
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
