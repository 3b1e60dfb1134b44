// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

var theBench = bench{jobsheet.Plan}

// demos are the demo jobs, as their files have them.
func demos(t testing.TB) map[string]string {
	t.Helper()
	names, err := filepath.Glob("../refresh/jobs/*.json")
	if err != nil || len(names) < 9 {
		t.Fatalf("%d jobs: %v", len(names), err)
	}
	jobs := map[string]string{}
	for _, name := range names {
		b, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		jobs[strings.TrimSuffix(filepath.Base(name), ".json")] = string(b)
	}
	return jobs
}

// tree is a file as any reader of JSON has it.
func tree(t testing.TB, data string) (v any) {
	t.Helper()
	d := json.NewDecoder(strings.NewReader(data))
	d.UseNumber()
	if err := d.Decode(&v); err != nil {
		t.Fatal(err)
	}
	return v
}

// boxed is a field of the form as a browser has it.
type boxed struct {
	at    string
	parts []string
}

var (
	fieldTag   = regexp.MustCompile(`<(input|option|select|div|label|textarea)\b([^>]*)>\n?([^<]*)`)
	attributes = regexp.MustCompile(`([a-z-]+)(?:="([^"]*)")?`)
)

// boxesOf reads the fields out of a form, each with what its boxes hold, in the way of the page's script.
func boxesOf(t testing.TB, a Answer) (list []boxed) {
	t.Helper()
	var b strings.Builder
	for _, p := range a.Form {
		b.WriteString(p.HTML)
	}
	unescape := strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&lt;", "<", "&gt;", ">", "&amp;", "&")
	selected := -1 // of the select that is being read
	inBox := false
	for _, m := range fieldTag.FindAllStringSubmatch(b.String(), -1) {
		set := map[string]string{}
		has := map[string]bool{}
		for _, a := range attributes.FindAllStringSubmatch(m[2], -1) {
			set[a[1]], has[a[1]] = unescape.Replace(a[2]), true
		}
		var last *boxed
		if len(list) > 0 {
			last = &list[len(list)-1]
		}
		switch m[1] {
		case "div":
			inBox = has["data-at"]
			if inBox {
				list = append(list, boxed{at: set["data-at"]})
			}
		case "textarea":
			last.parts = append(last.parts, unescape.Replace(m[3]))
		case "select":
			selected = -1
			if inBox && !has["data-parts"] {
				last.parts = append(last.parts, "")
				selected = len(last.parts) - 1
			}
		case "option":
			if inBox && selected >= 0 && has["selected"] {
				last.parts[selected] = set["value"]
			}
		case "input":
			switch {
			case !inBox || has["data-do"]:
			case set["type"] == "checkbox" && !has["checked"]:
				last.parts = append(last.parts, "")
			default:
				last.parts = append(last.parts, set["value"])
			}
		}
	}
	return list
}

// TestOpenAndSave: a job that is opened and saved is the job that it was, and so it is where every box is handed over as
// it stands; the sheet is that of the command line.
func TestOpenAndSave(t *testing.T) {
	for name, job := range demos(t) {
		t.Run(name, func(t *testing.T) {
			a := theBench.turn(Request{Open: &job})
			if !reflect.DeepEqual(tree(t, a.Job), tree(t, job)) {
				t.Fatal("saved otherwise than opened")
			}
			boxes := boxesOf(t, a)
			var entries []Entry
			for _, b := range boxes {
				entries = append(entries, Entry{"set", b.at, b.parts})
			}
			again := theBench.turn(Request{Job: a.Job, Entries: entries})
			if again.Job != a.Job {
				t.Errorf("%d boxes handed over as they stand change the job:\n%s", len(boxes), firstDifference(a.Job, again.Job))
			}
			j, err := jobsheet.ReadJob(strings.NewReader(job))
			if err != nil {
				t.Fatal(err)
			}
			s, err := jobsheet.Plan(j)
			if err != nil {
				t.Fatal(err)
			}
			var want bytes.Buffer
			if err := s.WriteHTML(&want); err != nil {
				t.Fatal(err)
			}
			inside := strings.TrimSuffix(strings.TrimPrefix(a.Sheet, `<div class="sheet">`), `</div>`)
			if len(inside) < 1000 || !strings.Contains(want.String(), `<main class="sheet">`+inside+"</main>") {
				t.Error("another sheet than that of the command line")
			}
		})
	}
}

func firstDifference(a, b string) string {
	x, y := strings.Split(a, "\n"), strings.Split(b, "\n")
	for i := range min(len(x), len(y)) {
		if x[i] != y[i] {
			return "was " + x[i] + "\nis  " + y[i]
		}
	}
	return "one is longer"
}
