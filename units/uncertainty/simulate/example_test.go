// SPDX-License-Identifier: BSD-3-Clause

package simulate_test

import (
	"fmt"

	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/simulate"
	"gonum.org/v1/gonum/num/hyperdual"
)

// A gauge that stands askew in the bore reads d/cos of its tilt: always too much. Its tilt is zero
// at best, so that the first order sees nothing of it.
func ExampleSimulation() {
	tilt := simulate.Simulation{
		Model: func(x []hyperdual.Number) hyperdual.Number { // in µm over 67 mm
			return hyperdual.Scale(67000, hyperdual.Sub(hyperdual.Inv(hyperdual.Cos(x[0])), hyperdual.Number{Real: 1}))
		},
		Inputs: []simulate.Input{{Input: uncertainty.Input{Name: "tilt", Std: 0.01}}}, // radians
		Seed:   1,
	}
	p, err := uncertainty.Propagate(tilt.Model, []uncertainty.Input{tilt.Inputs[0].Input})
	if err != nil {
		fmt.Println(err)
		return
	}
	u, _, err := p.Budget.Combined()
	fmt.Printf("first order: %.1f µm, u %.1f µm, %v\n", p.Value, u, err)
	r, err := tilt.Run(1_000_000)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("simulated: %.2f µm, u %.1f µm; shortest 95 %% interval %.1f to %.0f µm\n", r.Mean, r.Std, r.Shortest.Min, r.Shortest.Max)
	v, err := r.Validate(p, 1)
	fmt.Println("the first order would do:", v.Sound, err)
	// Output:
	// first order: 0.0 µm, u 0.0 µm, <nil>
	// simulated: 3.35 µm, u 4.7 µm; shortest 95 % interval 0.0 to 13 µm
	// the first order would do: false <nil>
}

// As many trials as one steady digit wants.
func ExampleSimulation_Adapt() {
	s := simulate.Simulation{
		Model:  func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Add(x[0], x[1]) },
		Inputs: []simulate.Input{{Input: uncertainty.Input{Name: "ring", Value: 67, Std: 0.001}}, {Input: uncertainty.Input{Name: "division", Std: uncertainty.Resolution(0.01)}, Shape: simulate.Rectangular}},
	}
	r, err := s.Adapt(1, 1_000_000)
	fmt.Printf("u %.3f, 95 %% between %.3f and %.3f, from %d trials, %v\n", r.Std, r.Symmetric.Min, r.Symmetric.Max, r.Trials, err)
	// Output:
	// u 0.003, 95 % between 66.995 and 67.005, from 20000 trials, <nil>
}

// Chunks side by side give what Run gives: here by two goroutines of the caller.
func ExampleSummarise() {
	s := bench()
	values := make([]float64, 20*simulate.ChunkSize)
	done := make(chan error)
	for half := range 2 {
		go func() {
			var err error
			for i := 10 * half; i < 10*half+10 && err == nil; i++ {
				err = s.Chunk(i, values[i*simulate.ChunkSize:(i+1)*simulate.ChunkSize])
			}
			done <- err
		}()
	}
	fmt.Println(<-done, <-done)
	r, err := simulate.Summarise(values, 0.95)
	if err != nil {
		fmt.Println(err)
		return
	}
	alone, err := s.Run(len(values))
	fmt.Printf("%.5f, u %.5f, the same: %t, %v\n", r.Mean, r.Std, r == alone, err)
	// Output:
	// <nil> <nil>
	// 67.01076, u 0.00111, the same: true, <nil>
}

// What the shapes make of one standard uncertainty.
func ExampleInput() {
	for _, shape := range []simulate.Shape{simulate.Normal, simulate.Rectangular, simulate.Triangular, simulate.Arcsine} {
		s := simulate.Simulation{
			Model:  func(x []hyperdual.Number) hyperdual.Number { return x[0] },
			Inputs: []simulate.Input{{Input: uncertainty.Input{Name: "x", Std: 1}, Shape: shape}},
		}
		r, err := s.Run(200_000)
		fmt.Printf("%-11v u %.2f, 95 %% within ±%.1f, %v\n", shape, r.Std, r.Symmetric.Max, err)
	}
	// Output:
	// normal      u 1.00, 95 % within ±2.0, <nil>
	// rectangular u 1.00, 95 % within ±1.6, <nil>
	// triangular  u 1.00, 95 % within ±1.9, <nil>
	// arcsine     u 1.00, 95 % within ±1.4, <nil>
}
