// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"strings"
	"testing"
)

// eight is a job of eight cylinders with 60 readings each, made of the demo of two.
func eight(t testing.TB) string {
	t.Helper()
	job, err := parse(demos(t)["pump"])
	if err != nil {
		t.Fatal(err)
	}
	var cylinders []string
	for i := range 8 {
		var readings []string
		for d := range 12 {
			for a := range 5 {
				readings = append(readings, fmt.Sprintf(`{"depth": "%d mm", "axis": "%d°", "diameter": "%.3f mm"}`, 10+8*d, 36*a, 78.030+0.001*float64(3*(12-d)+a+i)))
			}
		}
		cylinders = append(cylinders, fmt.Sprintf(`{"name": "%d", "over": "0 mm", "thinnest_wall": "5.6 ± 0.2 mm", "readings": [%s]}`, i+1, strings.Join(readings, ",")))
	}
	all, err := parse(`{"cylinders": [` + strings.Join(cylinders, ",") + `]}`)
	if err != nil {
		t.Fatal(err)
	}
	job.setMember("cylinders", all.at("cylinders"))
	job.drop("engine.oversizes[1].pistons") // too few for eight
	job.put("engine.cylinders", literalNode("8"))
	job.put("counted.readings", literalNode("480"))
	job.put("counted.passes", literalNode("0"))
	return job.String()
}

// BenchmarkTurn is what a change costs without a browser.
func BenchmarkTurn(b *testing.B) {
	for name, job := range map[string]string{"2 cylinders": demos(b)["pump"], "8 x 60 readings": eight(b)} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if a := theBench.turn(Request{Job: job}); a.Sheet == "" {
					b.Fatal(a.Head)
				}
			}
		})
	}
}
