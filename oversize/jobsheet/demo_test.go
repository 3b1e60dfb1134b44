// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// job reads a demo job of the refresh program.
func job(t testing.TB, name string) jobsheet.Job {
	t.Helper()
	f, err := os.Open("../../examples/refresh/jobs/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	j, err := jobsheet.ReadJob(f)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func plan(t interface{ Fatal(...any) }, j jobsheet.Job) jobsheet.Sheet {
	s, err := jobsheet.Plan(j)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func asJSON(t interface{ Fatal(...any) }, v any) string {
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// demoJobs lists the demo jobs of the refresh program.
func demoJobs(t testing.TB) []string {
	t.Helper()
	names, err := filepath.Glob("../../examples/refresh/jobs/*.json")
	if err != nil || len(names) < 6 {
		t.Fatalf("%d demo jobs, %v", len(names), err)
	}
	return names
}

// demoSheet returns the sheet of a demo job and its JSON.
func demoSheet(t testing.TB, file string) (jobsheet.Sheet, []byte) {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return planData(t, data)
}

// planData returns the sheet of a job and its JSON.
func planData(t testing.TB, data []byte) (jobsheet.Sheet, []byte) {
	t.Helper()
	job, err := jobsheet.ReadJob(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	s := plan(t, job)
	var b bytes.Buffer
	if err := s.WriteJSON(&b); err != nil {
		t.Fatal(err)
	}
	return s, b.Bytes()
}
