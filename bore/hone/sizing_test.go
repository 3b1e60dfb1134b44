// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// read is a reading at 20 °C of so many micrometres above 67 mm, ± one.
func read(above float64, std, dof float64) hone.Reading {
	return hone.Reading{At: units.ReferenceTemperature, Diameter: uncertainty.Estimate{
		Value: 67*mm + units.Length(above*float64(um)), Std: units.Length(std * float64(um)), DoF: dof,
	}}
}

// sizing is a job after so many passes of 10 s that took 4 µm each, with 50 µm still to go to its
// finish limits, 67.020 to 67.030 mm.
func sizing(passes int, dof float64) hone.Sizing {
	z := hone.Sizing{
		Metal: material.GreyIron(), Finish: units.Limits{Min: 67*mm + 20*um, Max: 67*mm + 30*um},
		Trial: 5 * time.Second, Longest: 20 * time.Second,
	}
	start := -30 - 4*float64(passes)
	z.Start = read(start, 1, dof)
	for i := range passes {
		z.Passes = append(z.Passes, hone.Pass{Lasts: 10 * time.Second, After: read(start+4*float64(i+1), 1, dof)})
	}
	return z
}
