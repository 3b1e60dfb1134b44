// SPDX-License-Identifier: BSD-3-Clause

package simulate_test

import (
	"fmt"
	"sync"
	"testing"

	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/simulate"
	"gonum.org/v1/gonum/num/hyperdual"
)

// bench is a bore at 20 °C: a dial's reading, the ring's error, the repeatability, and the warmth.
func bench() simulate.Simulation {
	in := func(name string, value, std float64, shape simulate.Shape) simulate.Input {
		return simulate.Input{Input: uncertainty.Input{Name: name, Value: value, Std: std}, Shape: shape}
	}
	return simulate.Simulation{
		Model: func(x []hyperdual.Number) hyperdual.Number {
			growth := hyperdual.Mul(x[3], hyperdual.Sub(x[4], hyperdual.Number{Real: 20}))
			return hyperdual.Mul(hyperdual.Add(hyperdual.Add(x[0], x[1]), x[2]), hyperdual.Sub(hyperdual.Number{Real: 1}, growth))
		},
		Inputs: []simulate.Input{
			in("D", 67.0123, 0.0008, simulate.Normal), in("ring", 0, uncertainty.Rectangular(0.0005), simulate.Rectangular),
			in("repeat", 0, 0.0006, simulate.Normal), in("α", 11.5e-6, uncertainty.Rectangular(1e-6), simulate.Rectangular), in("T", 22, 0.5, simulate.Normal),
		},
		Seed: 1,
	}
}

func BenchmarkRun(b *testing.B) {
	const trials = 1_000_000
	for _, cores := range []int{1, 2} {
		b.Run(fmt.Sprint("cores=", cores), func(b *testing.B) {
			b.ReportAllocs()
			s := bench()
			for b.Loop() {
				if cores == 1 {
					if _, err := s.Run(trials); err != nil {
						b.Fatal(err)
					}
					continue
				}
				values := make([]float64, trials)
				var wait sync.WaitGroup
				for c := range cores {
					wait.Add(1)
					go func() {
						defer wait.Done()
						for i := c; i < trials/simulate.ChunkSize; i += cores {
							if err := s.Chunk(i, values[i*simulate.ChunkSize:(i+1)*simulate.ChunkSize]); err != nil {
								panic(err)
							}
						}
					}()
				}
				wait.Wait()
				if _, err := simulate.Summarise(values, 0.95); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkSummarise(b *testing.B) {
	s := bench()
	values := make([]float64, 1_000_000)
	for i := range 100 {
		if err := s.Chunk(i, values[i*simulate.ChunkSize:(i+1)*simulate.ChunkSize]); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := simulate.Summarise(values, 0.95); err != nil {
			b.Fatal(err)
		}
	}
}
