// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"errors"
	"flag"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"sync/atomic"
	"testing"
)

// A file is one of an archive.
type file struct{ name, text string }

// split takes an archive apart; the text before the first file is prog.go, as the playground has it.
func split(archive string) []file {
	files := []file{{name: "prog.go"}}
	for line := range strings.Lines(archive) {
		if name, ok := strings.CutPrefix(line, "-- "); ok && strings.HasSuffix(name, " --\n") {
			files = append(files, file{name: strings.TrimSuffix(name, " --\n")})
			continue
		}
		files[len(files)-1].text += line
	}
	return files
}

func needGo(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("go"); err != nil || runtime.GOOS == "js" || runtime.GOOS == "wasip1" {
		t.Skip("no go command here")
	}
}

// leaveOutWhenShort skips what takes ten seconds and more.
func leaveOutWhenShort(t *testing.T) {
	if testing.Short() {
		t.Skip("bundles every program, or builds what it bundled")
	}
}

// TestBundles: every program beside this one makes an archive with the program as it stands, and
// packages without comments, tests or test libraries. That of a lesson the playground takes.
func TestBundles(t *testing.T) {
	leaveOutWhenShort(t)
	needGo(t)
	mains, err := filepath.Glob("../*/main.go")
	if err != nil || len(mains) < 15 {
		t.Fatalf("%d programs: %v", len(mains), err)
	}
	var lessons atomic.Int32
	t.Cleanup(func() {
		if n := lessons.Load(); n < 24 && flag.Lookup("test.run").Value.String() == "" {
			t.Errorf("%d lessons", n)
		}
	})
	for _, m := range mains {
		folder := filepath.Dir(m)
		if filepath.Base(folder) == "bundle" {
			continue
		}
		t.Run(filepath.Base(folder), func(t *testing.T) {
			t.Parallel()
			text, note, err := bundle(folder)
			if err != nil {
				t.Fatal(err)
			}
			t.Log(note)
			if over := len(text) > 64<<10; over != strings.Contains(note, "bytes that it shares") {
				t.Errorf("%d bytes, and it is said: %s", len(text), note)
			}
			src, err := os.ReadFile(m)
			if err != nil {
				t.Fatal(err)
			}
			files, lesson := split(text), bytes.Contains(src, []byte(" is a lesson: "))
			if over := len(files) > 20; over != strings.Contains(note, "files that the playground runs") || over && lesson {
				t.Errorf("%d files, and it is said: %s", len(files), note)
			}
			if lesson {
				lessons.Add(1)
				if len(text) > 65536 {
					t.Errorf("a lesson of %d bytes, want at most 65,536", len(text))
				}
			}
			if files[0].text != string(src) {
				t.Error("the program is not as it stands")
			}
			for _, f := range files[1:] {
				if f.name == "go.mod" && (!strings.HasPrefix(f.text, "module borewright.example\n\ngo 1.") || strings.Contains(f.text, "rapid")) {
					t.Errorf("go.mod: %s", f.text)
				}
				if !strings.Contains(f.name, "/") || !strings.HasSuffix(f.name, ".go") {
					continue
				}
				parsed, err := parser.ParseFile(token.NewFileSet(), f.name, f.text, parser.ParseComments|parser.SkipObjectResolution)
				if err != nil {
					t.Fatal(err)
				}
				if len(parsed.Comments) > 0 {
					t.Errorf("%s has a comment: %s", f.name, parsed.Comments[0].Text())
				}
				for _, d := range parsed.Decls {
					if f, ok := d.(*ast.FuncDecl); ok && strings.HasPrefix(f.Name.Name, "Test") {
						t.Errorf("a test, %s", f.Name.Name)
					}
				}
			}
		})
	}
}

// TestBundleRuns: what is left out is not missed, and what has another name does what it did. The largest bundle, which leans on
// another module and needs short names, builds by itself and prints what the program prints; .ci/run has all of them do so.
func TestBundleRuns(t *testing.T) {
	leaveOutWhenShort(t)
	needGo(t)
	if _, err := os.Stat("../testdata"); errors.Is(err, fs.ErrNotExist) {
		t.Skip("golden files are no part of the module's archive")
	}
	const name = "wholewall"
	text, _, err := bundle("../" + name)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	for _, f := range split(text) {
		path := filepath.Join(dir, filepath.FromSlash(f.name))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(f.text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	sums, err := os.ReadFile("../../go.sum") // so that nothing is asked of the network
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, "go.sum"), sums, 0o644); err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command("go", "run", "-mod=mod", ".")
	cmd.Dir = dir
	cmd.Env = append(os.Environ(), "GOFLAGS=", "GOWORK=off", "PWD="+dir)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	got, err := cmd.Output()
	if err != nil {
		t.Fatalf("%s: %v\n%s", name, err, &stderr)
	}
	want, err := os.ReadFile("../testdata/" + name + ".txt")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Errorf("the bundle of %s prints\n%s", name, got)
	}
}

// TestReached: a bundle that is cut holds what the program calls, what that calls, and the methods that
// fmt and errors look for; and no more.
func TestReached(t *testing.T) {
	needGo(t)
	text, _, err := bundle("../ringfollow")
	if err != nil {
		t.Fatal(err)
	}
	for want, in := range map[string]bool{
		"func (o Oval) Harmonic(":        true,  // called by the program
		"func (s Section) Tension(":      true,  // called by what it calls
		"func (l Length) String()":       true,  // called by fmt
		"func FileTo(":                   false, // called by nobody
		"func (l *Length) UnmarshalText": false,
		"json:":                          false,
		"func Feeler(":                   false,
	} {
		if strings.Contains(text, want) != in {
			t.Errorf("%q in the bundle: %t, want %t", want, !in, in)
		}
	}
	if text, _, err := bundle("../refresh"); err != nil || !strings.Contains(text, "UnmarshalText") || !strings.Contains(text, "-- jobs/pump.json --") {
		t.Errorf("what encodes lost its methods or its data: %v", err)
	}
}

// TestShortNames: a bundle that needs them fits, has the program as it stands, and of the packages what the
// program mentions and what fmt looks for by their names.
func TestShortNames(t *testing.T) {
	needGo(t)
	text, note, err := bundle("../measure")
	if err != nil || len(text) > maxShare || !strings.Contains(note, "short names") {
		t.Fatalf("%d bytes, %s: %v", len(text), note, err)
	}
	for want, in := range map[string]bool{
		"Geometry":       true, // mentioned by the program
		"String()string": true, // asked for by fmt
		"checkSlips":     false,
		"float64(":       false,
		" := ":           false,
	} {
		_, packages, _ := strings.Cut(text, "\n-- go.mod --\n")
		if strings.Contains(packages, want) != in {
			t.Errorf("%q in the packages: %t, want %t", want, !in, in)
		}
	}
}

// TestSqueeze: no space remains that is not needed, and what remains means the same.
func TestSqueeze(t *testing.T) {
	for src, want := range map[string]string{
		"func f(a, b int) int {\n\tx := a - -b\n\n\treturn x\n}":  "func f(a,b int)int{x:=a- -b\nreturn x}",
		"if a < -b && c {\n\tg(\n\t\t1,\n\t)\n} else {\n\th()\n}": "if a< -b&&c{g(1,)}else{h()}",
		"for ; ; i++ {\n}\nx = `a\n  b`\ny = &z":                  "for;;i++{}\nx=`a\n  b`\ny= &z",
		"switch x {\ncase 1:\n\tf()\ncase 2:\n}":                  "switch x{case 1:f()\ncase 2:}",
	} {
		if got := string(squeeze([]byte(src))); got != want {
			t.Errorf("%q becomes %q, want %q", src, got, want)
		}
	}
}

// TestLetters: no two names are the same.
func TestLetters(t *testing.T) {
	seen := map[string]bool{}
	for n := range 26 + 26*26 + 100 {
		name := letters('a', n)
		if seen[name] || len(name) > 3 {
			t.Errorf("%d: %s", n, name)
		}
		seen[name] = true
	}
}

// TestBundleRefuses: what is no program of the module is an error.
func TestBundleRefuses(t *testing.T) {
	needGo(t)
	for _, folder := range []string{"../../units", "../nowhere", "fmt"} {
		if text, _, err := bundle(folder); err == nil {
			t.Errorf("%s: %d bytes", folder, len(text))
		}
	}
}
