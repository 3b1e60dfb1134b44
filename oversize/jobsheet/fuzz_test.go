// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"errors"
	"io"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/oversize/jobsheet/page"
)

// FuzzReadJob: any bytes give a job or faults, and a job written and read again is the same.
func FuzzReadJob(f *testing.F) {
	f.Add([]byte(small))
	f.Add(demo(f))
	f.Add([]byte(`{"engine":{"cylinders":1e9}}`))         // a number no int holds
	f.Add([]byte(`{"engine":{"bore":"9223372.1 m"}}`))    // the ends of a length
	f.Add([]byte(`[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[1]`)) // deep and broken
	f.Add([]byte("{\"title\":\"\xff\"}"))                 // not UTF-8
	f.Add([]byte(`{"a":1,"a":2}`))                        // doubled
	f.Fuzz(func(t *testing.T, data []byte) {
		j, err := jobsheet.ReadJob(bytes.NewReader(data))
		if err != nil {
			var fs jobsheet.Faults
			if !errors.As(err, &fs) || len(fs) == 0 {
				t.Fatalf("%v is not Faults", err)
			}
			return
		}
		var b bytes.Buffer
		if err := j.WriteJSON(&b); err != nil {
			t.Fatal(err)
		}
		first := b.String()
		again, err := jobsheet.ReadJob(&b)
		if err != nil {
			t.Fatalf("read back: %v\n%s", err, first)
		}
		var c bytes.Buffer
		if err := again.WriteJSON(&c); err != nil {
			t.Fatal(err)
		}
		if c.String() != first {
			t.Fatalf("changed:\n%s\n%s", first, c.String())
		}
		var fs jobsheet.Faults
		if s, err := jobsheet.Plan(j); err != nil && !errors.As(err, &fs) {
			t.Fatalf("%v is not Faults\n%s", err, first)
		} else if err == nil && s.WriteText(io.Discard) != nil {
			t.Fatal("a sheet that cannot be printed")
		}
	})
}

// FuzzReadSheet: any bytes give a sheet or an error, and a sheet that is read can be printed, on screen and on
// paper, and written again.
func FuzzReadSheet(f *testing.F) {
	for _, name := range demoJobs(f) {
		_, sheet := demoSheet(f, name)
		f.Add(sheet)
	}
	f.Add([]byte(`{"version":1,"job":{},"cylinders":null}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := jobsheet.ReadSheet(bytes.NewReader(data))
		if err != nil && !errors.Is(err, jobsheet.ErrChanged) {
			return
		}
		for _, p := range []page.Text{{}, {Lines: 40, ASCII: true}} {
			if err := s.Print(io.Discard, p); err != nil {
				t.Fatal(err)
			}
		}
		if err := s.WriteJSON(io.Discard); err != nil {
			t.Fatal(err)
		}
	})
}
