// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/units/material"
)

// A finishedEngine is a bored cylinder of 80 mm whose truth is known, in millimetres at 20 °C. Invented.
type finishedEngine struct {
	piston     float64
	bore       [4][5]float64 // by depth and axis, as an honest job reads it
	gaps       [2]float64
	crosshatch float64 // °
}

// What the maker of the honest job of 80 mm allows.
const (
	simBore, simOver           = 80, 0.5
	simLeast, simMost          = 0.0007*simBore + 0.005, 0.0012*simBore + 0.025
	simOvality, simTaper       = 0.012 + 0.00005*simBore, 0.014 + 0.00005*simBore
	simFlattest, simSteepest   = 39, 51
	simFirstLeast, simFirstTop = 0.003 * simBore, 0.0075*simBore + 0.08
)

// temptations are what may be just past its limit; the last is nothing.
var temptations = []string{"clearance small", "clearance large", "ovality", "taper", "gap small", "gap large", "crosshatch flat", "crosshatch steep", "nothing"}

// tempted draws an engine that is well inside all limits but one, and just past that.
func tempted(r *rand.Rand, by string) finishedEngine {
	past := 0.0002 * math.Abs(r.NormFloat64()) // small against the doubt
	e := finishedEngine{piston: simBore + simOver + 0.01 - (simLeast + 0.45*(simMost-simLeast)), gaps: [2]float64{0.45, 0.46}, crosshatch: 45}
	oval, taper, clear := 0.003, 0.003, (simLeast+simMost)/2-0.002
	switch by {
	case "clearance small":
		clear = simLeast - past
	case "clearance large":
		oval, taper = 0.001, 0.001
		clear = simMost - oval - taper + past
	case "ovality":
		oval, clear = simOvality+past, clear-0.004
	case "taper":
		taper, clear = simTaper+past, clear-0.004
	case "gap small":
		e.gaps[0] = simFirstLeast - 10*past
	case "gap large":
		e.gaps[0] = simFirstTop + 10*past
	case "crosshatch flat":
		e.crosshatch = simFlattest - 1000*past
	case "crosshatch steep":
		e.crosshatch = simSteepest + 1000*past
	}
	part := [5]float64{1, 0.7, 0, 0.1, 0.8} // of the ovality, from 0 to 1
	for k, fade := range []float64{1, 0.5, 0, 0} {
		for a := range part {
			e.bore[k][a] = e.piston + clear + oval*part[a] + taper*fade
		}
	}
	return e
}

// measured writes down what a workshop reads of it, with all that its gauge, micrometer, feelers and thermometers
// are off by, each as the job states it.
func (e finishedEngine) measured(r *rand.Rand) tree {
	h := honest{bore: simBore, stroke: 76, cylinders: 1, bored: true, r: r}
	j := h.tree(true)
	within := func(half float64) float64 { return half * (2*r.Float64() - 1) }
	spread := func(m material.Material) float64 { return float64(m.Expansion) + within(float64(m.Within)) }
	const says = simBore + simOver
	standard := says + 0.001*r.NormFloat64() // ± 0.002 mm
	set := standard * (1 + spread(material.GaugeSteel())*(0.5+within(0.4))) * (1 + spread(material.PlainSteel())*(within(0.4)-within(0.4)))
	grows, at := spread(material.GreyIron()), 0.7+within(0.4)

	c := j["cylinders"].([]any)[0].(tree)
	for i, p := range c["proof"].([]any) {
		d := e.bore[i/5][i%5] * (1 + grows*(at+within(0.3)))
		shown := says + d - set + within(0.0012) + 0.0008*r.NormFloat64()
		p.(tree)["diameter"] = h.mm(math.Round(shown*1000) / 1000)
	}
	j["engine"].(tree)["oversizes"].([]any)[0].(tree)["pistons"].([]any)[0].(tree)["size"] = h.doubtful(e.piston+0.001*r.NormFloat64(), 0.002)
	for i, gap := range e.gaps {
		c["rings"].([]any)[i].(tree)["finished"] = h.doubtful(gap+0.0075*r.NormFloat64(), 0.015)
	}
	c["crosshatch"] = fmt.Sprintf("%.1f° included", e.crosshatch+r.NormFloat64())
	c["crosshatch_doubt"] = "2°"
	return j
}

// false reports whether anything is truly past its limit.
func (e finishedEngine) false() bool {
	var all []float64
	wrong := e.gaps[0] < simFirstLeast || e.gaps[0] > simFirstTop || e.crosshatch < simFlattest || e.crosshatch > simSteepest
	for k := range e.bore {
		row := e.bore[k][:]
		all = append(all, row...)
		wrong = wrong || slices.Max(row)-slices.Min(row) > simOvality
		for a := range row {
			wrong = wrong || math.Abs(e.bore[0][a]-e.bore[k][a]) > simTaper
		}
	}
	return wrong || slices.Min(all)-e.piston < simLeast || slices.Max(all)-e.piston > simMost
}

// TestReadyIsTrue: of engines with something just past its limit no more than the risk accepted are said to be ready,
// not even where something is left out of the job; and sound ones are said to be.
func TestReadyIsTrue(t *testing.T) { readyIsTrue(t, 180, 1) }

func readyIsTrue(t *testing.T, engines int, seed uint64) {
	const promised = 0.05
	r := rand.New(rand.NewPCG(seed, 5))
	ready := map[string]int{}
	could, wrong, without := 0, 0, 0
	for n := range engines {
		by := temptations[n%len(temptations)]
		e := tempted(r, by)
		if e.false() != (by != "nothing") {
			t.Fatalf("%s: the truth is drawn wrongly: %v", by, e)
		}
		j := e.measured(r)
		s := mustPlan(t, j)
		is := s.Next == jobsheet.StepReassemble
		if is {
			ready[by]++
		}
		var all []spot
		spots("", j, func(x spot) {
			if !excepted.MatchString(x.path) {
				all = append(all, x)
			}
		})
		gone := all[r.IntN(len(all))]
		gone.remove()
		if less, err := planned(t, j); err == nil && less.Next == jobsheet.StepReassemble {
			without++
			if !is {
				t.Errorf("%s: ready without %s alone", by, gone.path)
			}
		}
		if e.false() {
			could++
			if is {
				wrong++
			}
		}
	}
	t.Logf("%d of %d ready though something is past its limit (%.2f %%, promised %.0f %%), by temptation %v; ready with something left out %d",
		wrong, could, 100*float64(wrong)/float64(could), 100*promised, ready, without)
	mean := promised * float64(could)
	if float64(wrong) > mean+4*math.Sqrt(mean) {
		t.Errorf("%d of %d, promised %.0f %%", wrong, could, 100*promised)
	}
	if sound := engines / len(temptations); 2*ready["nothing"] < sound {
		t.Errorf("only %d of %d sound engines are ready", ready["nothing"], sound)
	}
}
