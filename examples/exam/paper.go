// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/rand/v2"

	"borewright.example/units"
)

// A paper is ten questions drawn from a seed.
type paper struct {
	Seed      uint64
	Questions []question
}

// A question is what is asked, and how it is worked.
type question struct {
	Title   string
	Text    string
	Working []string
	Answers []answer
}

// An answer is a number by the library, and by a second way.
type answer struct {
	What          string
	First, Second float64
	Places        int
	Unit          string
}

// Text is the answer of the library with its unit.
func (a answer) Text() string { return a.text(a.First) }

func (a answer) text(x float64) string { return fmt.Sprintf("%.*f %s", a.Places, x, a.Unit) }

// A dice draws numbers that are easy to copy: whole multiples of a step.
type dice struct{ *rand.Rand }

// between returns a whole number from least to most.
func (d dice) between(least, most int64) int64 { return least + d.Int64N(most-least+1) }

// um returns a length of so many micrometres, least to most, in steps.
func (d dice) um(least, most, step int64) units.Length {
	return units.Length(least+step*d.Int64N((most-least)/step+1)) * units.Micrometre
}

// draw returns the paper of a seed.
func draw(seed uint64) (paper, error) {
	p, d := paper{Seed: seed}, dice{rand.New(rand.NewPCG(seed, 0))}
	for _, ask := range []func(dice) (question, error){twoAxes, drill, wear, repeats, warm, oversized, loose, zone, lobes, rebore} {
		q, err := ask(d)
		if err != nil {
			return paper{}, err
		}
		p.Questions = append(p.Questions, q)
	}
	return p, nil
}

func mm(l units.Length) string { return l.Format(units.Millimetre, 3) }

func um(l units.Length) float64 { return l.In(units.Micrometre) }

// cos is that of an angle in degrees.
func cos(degrees float64) float64 { return math.Cos(degrees * math.Pi / 180) }
