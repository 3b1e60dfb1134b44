// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"fmt"
	"io"
	"slices"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
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
			c.Readings = slices.Clone(c.Readings)
			for k := range c.Readings { // no two bores read alike
				c.Readings[k].Diameter += units.Length(i/2) * 2 * units.Micrometre
			}
			job.Cylinders = append(job.Cylinders, c)
		}
		readings, passes := 0, 0
		for _, c := range job.Cylinders {
			readings, passes = readings+len(c.Readings), passes+max(len(c.Honing)-1, 0)
		}
		job.Counted.Readings, job.Counted.Passes = &readings, &passes
		for i := range job.Engine.Oversizes {
			if o := &job.Engine.Oversizes[i]; len(o.Pistons) > 0 {
				o.Pistons = slices.Repeat(o.Pistons[:1], n)
			}
		}
		if s, err := jobsheet.Plan(job); err != nil || s.Next != jobsheet.StepBore && s.Next != jobsheet.StepHone {
			b.Fatal(s.Next, err)
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
