// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A workshop honing job after job, all of it invented: bores short of their size by 30 to 60 µm, a
// rate that nobody knows, a gauge that errs.
type workshop struct {
	gauge   float64 // standard uncertainty of a reading, µm
	repeats int     // readings behind the gauge's standard uncertainty, 0 = it is known
	window  float64 // finish limits are so far apart, µm
	scatter float64 // of the rate from pass to pass
	fade    float64 // seconds of honing in which the rate halves; 0 = never
	risk    float64
	longest float64 // pass, s
}

func (w workshop) String() string {
	return fmt.Sprintf("gauge %v µm, %d repeats, window %v µm, scatter %v, fade %v s, risk %v, longest pass %v s",
		w.gauge, w.repeats, w.window, w.scatter, w.fade, w.risk, w.longest)
}

const unfinished = 100 // passes or repeats after which a job counts as stuck

// job hones one bore from start, and returns how far past the stop size it ended, the passes it took, and
// the passes of one who knows the rate.
func (w workshop) job(t tester, r *rand.Rand) (past float64, passes, knower int) {
	rate := 0.5 * math.Exp2(r.Float64()*2-1) // µm/s
	short := 30 + 30*r.Float64()
	finish := units.Limits{Min: 67*mm + 20*um, Max: 67*mm + 20*um + must[units.Length](t)(units.Of(w.window, um))}
	start := 20 - short // of the true size, above 67 mm
	z := hone.Sizing{Metal: material.GreyIron(), Finish: finish, Risk: w.risk, Scatter: w.scatter, Trial: 5 * time.Second, Longest: time.Duration(w.longest) * time.Second}
	read := func(size float64, times int) hone.Reading {
		u := w.gauge / math.Sqrt(float64(times))
		e := uncertainty.Estimate{Value: 67*mm + must[units.Length](t)(units.Of(size+u*r.NormFloat64(), um)), Std: must[units.Length](t)(units.Of(u, um))}
		if w.repeats > 0 { // the uncertainty itself is estimated
			chi := 0.0
			for range w.repeats - 1 {
				g := r.NormFloat64()
				chi += g * g
			}
			e.DoF = float64(w.repeats - 1)
			e.Std = must[units.Length](t)(units.Of(u*math.Sqrt(chi/e.DoF), um))
		}
		return hone.Reading{Diameter: e, At: units.ReferenceTemperature}
	}
	honed := 0.0
	takes := func(seconds float64) float64 {
		mid := honed + seconds/2
		honed += seconds
		fade := 1.0
		if w.fade > 0 {
			fade = math.Exp2(-mid / w.fade)
		}
		return max(0.02, 1+w.scatter*r.NormFloat64()) * rate * fade * seconds
	}

	size := start
	z.Start = read(size, 1)
	for again := 1; ; {
		n, err := z.Next()
		shrunk := errors.Is(err, hone.ErrShrunk) // one pass of hundreds, where next to nothing was taken
		if err != nil && !shrunk {
			t.Fatal(err)
		}
		if shrunk || n.Decision == hone.MeasureAgain {
			if again *= 2; again > unfinished {
				passes += unfinished
				break
			}
			z.Passes[len(z.Passes)-1].After = read(size, again)
			continue
		}
		if n.Decision != hone.GoOn || passes > unfinished {
			break
		}
		again = 1
		size += takes(n.Lasts.Seconds())
		z.Passes = append(z.Passes, hone.Pass{Lasts: n.Lasts, After: read(size, 1)})
		passes++
	}
	past = size - (20 + w.window)

	honed, size = 0, start
	for seconds := 5.0; size < 20 && knower < unfinished; knower++ {
		size += takes(seconds)
		now := rate
		if w.fade > 0 {
			now *= math.Exp2(-honed / w.fade)
		}
		seconds = min(w.longest, max(1, (20+w.window/2-size)/now))
	}
	return past, passes, knower
}

// run hones so many bores and holds the promise of Next against them: jobs that run past the stop size
// stay at or below the risk, and the passes within twice those of one who knows the rate.
func (w workshop) run(t *testing.T, jobs int) {
	t.Helper()
	r := rand.New(rand.NewPCG(2026, 11))
	over, stuck := 0, 0
	var ours, theirs []int
	for range jobs {
		past, passes, knower := w.job(t, r)
		if past > 0 {
			over++
		}
		if passes >= unfinished {
			stuck++
		}
		ours, theirs = append(ours, passes), append(theirs, knower)
	}
	slices.Sort(ours)
	slices.Sort(theirs)
	t.Logf("%v: %d of %d past, %d stuck, median passes %d against %d", w, over, jobs, stuck, ours[jobs/2], theirs[jobs/2])
	// The promise is an upper bound; four standard deviations of chance lie above it.
	if n := float64(jobs); float64(over) > n*w.risk+4*math.Sqrt(n*w.risk*(1-w.risk)) {
		t.Errorf("%v: %d of %d ran past the stop size", w, over, jobs)
	}
	if ours[jobs/2] > 2*theirs[jobs/2] {
		t.Errorf("%v: median %d passes, %d by one who knows the rate", w, ours[jobs/2], theirs[jobs/2])
	}
	if stuck*100 > jobs {
		t.Errorf("%v: %d of %d jobs came to no end", w, stuck, jobs)
	}
}

func TestSizingKeepsToTheRisk(t *testing.T) {
	for _, w := range workshops() {
		w.run(t, 400)
	}
}

func workshops() []workshop {
	return []workshop{
		{gauge: 0.5, window: 10, scatter: 0.2, risk: 0.05, longest: 20},
		{gauge: 1, window: 10, scatter: 0.2, risk: 0.05, longest: 20},
		{gauge: 2, window: 15, scatter: 0.2, risk: 0.05, longest: 20},
		{gauge: 1, window: 10, scatter: 0.2, fade: 240, risk: 0.05, longest: 20},
		// Passes long enough for the risk to bind.
		{gauge: 0.5, window: 8, scatter: 0.2, risk: 0.05, longest: 300},
		{gauge: 1, window: 8, scatter: 0.2, risk: 0.05, longest: 300},
		{gauge: 1, window: 10, scatter: 0.2, fade: 240, risk: 0.2, longest: 300},
		{gauge: 2, window: 10, scatter: 0.2, risk: 0.2, longest: 300},
		{gauge: 1, repeats: 5, window: 15, scatter: 0.2, risk: 0.1, longest: 300},
	}
}
