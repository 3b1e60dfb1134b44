// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"fmt"
	"io"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// BenchmarkWholeJob goes from the bytes of a job to the text of its sheet.
func BenchmarkWholeJob(b *testing.B) {
	job, err := jobsheet.ReadJob(bytes.NewReader(demo(b)))
	if err != nil {
		b.Fatal(err)
	}
	two := job.Cylinders
	for _, n := range []int{2, 4, 8, 12} {
		job.Engine.Cylinders = n
		job.Cylinders = nil
		for i := range n {
			c := two[i%2]
			c.Name = fmt.Sprint(i)
			job.Cylinders = append(job.Cylinders, c)
		}
		var file bytes.Buffer
		if err := job.WriteJSON(&file); err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprintf("%d cylinders", n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				j, err := jobsheet.ReadJob(bytes.NewReader(file.Bytes()))
				if err != nil {
					b.Fatal(err)
				}
				s, err := jobsheet.Plan(j)
				if err != nil {
					b.Fatal(err)
				}
				if err := s.WriteText(io.Discard); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
