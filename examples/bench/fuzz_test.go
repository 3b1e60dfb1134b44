// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
)

// checkTurn holds an answer to what is true of every one: nothing broke; the job is one that can be parsed and is written
// as it was; there is a sheet or a word of what is needed.
func checkTurn(t *testing.T, r Request) Answer {
	t.Helper()
	a := theBench.turn(r)
	if strings.Contains(a.Head, text(wordBroken)) {
		t.Fatalf("broke: %.300s\n%+v", a.Head, r.Entries)
	}
	job, err := parse(a.Job)
	if err != nil || job.String() != a.Job {
		t.Fatalf("the job does not stand: %v\n%.300s", err, a.Job)
	}
	if a.Sheet == "" && a.Head == "" || len(a.Form) != len(form) {
		t.Fatalf("neither a sheet nor what is needed: %.200s", a.Job)
	}
	return a
}

// FuzzTurn: whatever comes in, nothing breaks.
func FuzzTurn(f *testing.F) {
	jobs := demos(f)
	f.Add(jobs["unread"], "propose", "cylinders[0].readings", "3", "")
	f.Add(jobs["plated"], "accept", "cylinders[0].size", "", "")
	f.Add(jobs["sleeve-loose"], "drop", "cylinders[0]", "", "")
	f.Add(jobs["unread"], "set", "engine.bore", "78,1", " mm")
	f.Add(`{"cylinders":[{"readings":[{"depth":[]}]}]}`, "axis", "cylinders[0].readings", "", "")
	f.Add("", "add", "cylinders[9].rings", "", "")
	f.Add(`{"":{"":1}}`, "set", "cylinders[0,3,1].readings[0].depth", "1", " mm")
	f.Fuzz(func(t *testing.T, job, do, at, one, two string) {
		e := []Entry{{do, at, []string{one, two}}}
		opened := checkTurn(t, Request{Open: &job})
		checkTurn(t, Request{Job: opened.Job, Entries: e})
		checkTurn(t, Request{Job: job, Entries: e})
	})
}

// TestWalk: a page on which anything is pressed and anything typed goes on working.
func TestWalk(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	typed := []string{"", "0", "1", "3", "78", "0.5", "-1", "78.1", "1,234", "x", "1/0", "45", " mm", " in", " to ", "on", "two-stroke", "thrust", "true", "<b>"}
	names := []string{"add", "again", "axis", "confirm", "depth", "drop", "none", "propose", "repeat", "rings"} // accept plans three times
	jobs := demos(t)
	for _, name := range []string{"unread", "two-stroke", "sleeve"} {
		job := jobs[name]
		a := checkTurn(t, Request{Open: &job})
		for range 12 {
			root, err := parse(a.Job)
			if err != nil {
				t.Fatal(err)
			}
			paths := newWriter(root, planned{}).anchor
			var entries []Entry
			for range 4 {
				e := Entry{Do: "set", At: paths[r.IntN(len(paths))]}
				if r.IntN(3) == 0 {
					e.Do = names[r.IntN(len(names))]
				}
				for range 4 {
					e.Parts = append(e.Parts, typed[r.IntN(len(typed))])
				}
				entries = append(entries, e)
			}
			a = checkTurn(t, Request{Job: a.Job, Entries: entries})
		}
	}
	for do := range deeds {
		if do != "set" && do != "accept" && !slices.Contains(names, do) {
			t.Errorf("%s is not tried", do)
		}
	}
}
