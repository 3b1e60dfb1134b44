// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"errors"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

var update = flag.Bool("update", false, "write the golden sheets anew")

// TestGolden holds the sheet of every demo job to the letter, as text and as JSON, and of some as HTML.
func TestGolden(t *testing.T) {
	if _, err := os.Stat("testdata"); errors.Is(err, fs.ErrNotExist) {
		t.Skip("golden files are no part of the module's archive")
	}
	names, err := filepath.Glob("jobs/*.json")
	if err != nil || len(names) == 0 {
		t.Fatalf("no jobs: %v", err)
	}
	for _, name := range names {
		formats := []string{"text", "json"}
		if slices.Contains([]string{"inch.json", "pump.json", "sleeve.json", "two-stroke.json"}, filepath.Base(name)) {
			formats = append(formats, "html")
		}
		for _, format := range formats {
			t.Run(filepath.Base(name)+" "+format, func(t *testing.T) {
				var out, errs bytes.Buffer
				if code := run([]string{"-job", name, "-format", format}, nil, &out, &errs); code != 0 || errs.Len() > 0 {
					t.Fatalf("exit %d: %s", code, &errs)
				}
				golden := filepath.Join("testdata", strings.TrimSuffix(filepath.Base(name), ".json")+"."+format)
				if *update {
					if err := os.WriteFile(golden, out.Bytes(), 0o644); err != nil {
						t.Fatal(err)
					}
				}
				want, err := os.ReadFile(golden)
				if err != nil {
					t.Fatal(err)
				}
				if !bytes.Equal(out.Bytes(), want) {
					t.Errorf("sheet differs from %s:\n%s", golden, firstDifference(out.String(), string(want)))
				}
				if format == "json" {
					if _, err := jobsheet.ReadSheet(&out); err != nil {
						t.Error(err)
					}
				}
			})
		}
	}
}

func firstDifference(got, want string) string {
	g, w := strings.Split(got, "\n"), strings.Split(want, "\n")
	for i := range g {
		if i >= len(w) || g[i] != w[i] {
			return "got  " + g[i] + "\nwant " + strings.Join(w[min(i, len(w)):min(i+1, len(w))], "")
		}
	}
	return "the golden one goes on"
}

// TestDemoIsTheDefault: without -job the embedded demo is worked out.
func TestDemoIsTheDefault(t *testing.T) {
	var one, two, errs bytes.Buffer
	if code := run(nil, nil, &one, &errs); code != 0 {
		t.Fatalf("exit %d: %s", code, &errs)
	}
	if code := run([]string{"-job", demo}, nil, &two, &errs); code != 0 {
		t.Fatalf("exit %d: %s", code, &errs)
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("the demo differs from its file")
	}
}

// TestHelp: -h exits with 0 and its example is a job that works, read from standard input.
func TestHelp(t *testing.T) {
	var out, errs bytes.Buffer
	if code := run([]string{"-h"}, nil, &out, &errs); code != 0 || out.Len() > 0 {
		t.Fatalf("exit %d, standard output %q", code, &out)
	}
	help := errs.String()
	begin, end := strings.Index(help, "\n{"), strings.Index(help, "\n}\n")
	if begin < 0 || end < 0 {
		t.Fatal("no example in the help")
	}
	errs.Reset()
	if code := run([]string{"-job", "-"}, strings.NewReader(help[begin:end+2]), &out, &errs); code != 0 {
		t.Fatalf("exit %d: %s", code, &errs)
	}
	if !strings.HasPrefix(out.String(), "JOB SHEET\n") {
		t.Errorf("no sheet: %.200s", &out)
	}
}

// TestNothingHalfPrinted: whatever is wrong, standard output stays empty and the exit code is 2.
func TestNothingHalfPrinted(t *testing.T) {
	for _, c := range []struct {
		name  string
		args  []string
		stdin string
		want  string
	}{
		{"bad job", []string{"-job", "-"}, `{"engine":{"bore":67}}`, "engine.bore: 67: a bare number has no unit"},
		{"no such file", []string{"-job", "no/such/file"}, "", "no/such/file"},
		{"a folder", []string{"-job", "jobs"}, "", "jobs"},
		{"unknown format", []string{"-format", "xml"}, "", `-format "xml": want text, html or json`},
		{"unknown flag", []string{"-jobs", "x"}, "", "-jobs"},
		{"argument", []string{"job.json"}, "", `"job.json": want no argument`},
		{"unknown unit", []string{"-units", "cubit"}, "", `-units: jobsheet: Shown "cubit"`},
		{"short page", []string{"-lines", "5"}, "", "5 lines: page too short: want 20 or more"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var out, errs bytes.Buffer
			if code := run(c.args, strings.NewReader(c.stdin), &out, &errs); code != 2 {
				t.Errorf("exit %d, want 2", code)
			}
			if out.Len() > 0 {
				t.Errorf("printed %q", &out)
			}
			if !strings.Contains(errs.String(), c.want) {
				t.Errorf("said %q, want something with %q", &errs, c.want)
			}
		})
	}
}

// TestForms: the units, the pages and the characters asked for.
func TestForms(t *testing.T) {
	var out, errs bytes.Buffer
	if code := run([]string{"-units", "in", "-lines", "60", "-ascii"}, nil, &out, &errs); code != 0 {
		t.Fatalf("exit %d: %s", code, &errs)
	}
	text := out.String()
	if strings.Contains(text, " mm") || strings.Count(text, "\f") < 3 {
		t.Errorf("millimetres, or no pages:\n%s", text)
	}
	for i, r := range text {
		if r > 126 {
			t.Fatalf("%q at byte %d", r, i)
		}
	}
}
