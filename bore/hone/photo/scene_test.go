// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"
	"testing"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// judges is where the seeds begin that judge: those below were used to choose the thresholds.
const judges = 2_000_000

// A verdict is what became of one scene, in degrees: u is the expanded uncertainty of the angle, off how far it
// is from the true one; from and to are what the answer holds possible on the wall seen. It does not keep the
// Measured, which keeps its picture.
type verdict struct {
	scene         *scene
	err           error
	angle, off, u float64
	from, to      float64
}

// among measures n scenes drawn by make, on as many processors as there are.
func among(t *testing.T, n int, make func(seed uint64) *scene) []verdict {
	t.Helper()
	out := slices.Repeat([]verdict{{}}, n)
	var wg sync.WaitGroup
	next := int64(-1)
	var lock sync.Mutex
	for range runtime.GOMAXPROCS(0) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for {
				lock.Lock()
				next++
				i := next
				lock.Unlock()
				if i >= int64(n) {
					return
				}
				s := make(judges + uint64(i))
				out[i] = judge(s)
			}
		}()
	}
	wg.Wait()
	return out
}

func judge(s *scene) verdict {
	m, err := s.shot().Crosshatch()
	if err != nil {
		return verdict{scene: s, err: err}
	}
	v := verdict{scene: s, angle: included(m), u: expanded(m)}
	v.off = v.angle - s.included()
	v.from, v.to = v.angle-v.u, v.angle+v.u
	if !m.Min.IsZero() {
		v.from, v.to = m.Min.Included().In(units.Degree), m.Max.Included().In(units.Degree)
	}
	return v
}

func expanded(m photo.Measured) float64 {
	k, err := uncertainty.Coverage(0.95, m.DoF)
	if err != nil {
		panic(err)
	}
	return k * m.Std.In(units.Degree)
}

// A tally sums verdicts up.
type tally struct {
	answered, covered, wild int // wild: off by more than 3°
	median, p95, worst, u   float64
}

func sumUp(vs []verdict) (r tally) {
	var offs, us []float64
	for _, v := range vs {
		if v.err != nil {
			continue
		}
		r.answered++
		off := math.Abs(v.off)
		if off <= v.u {
			r.covered++
		}
		if off > 3 {
			r.wild++
		}
		offs, us = append(offs, off), append(us, v.u)
	}
	if r.answered > 0 {
		slices.Sort(offs)
		slices.Sort(us)
		n := r.answered
		r.median, r.p95, r.worst, r.u = offs[n/2], offs[n*95/100], offs[n-1], us[n/2]
	}
	return r
}

// share is a in parts of b.
func share(a, b int) float64 { return float64(a) / float64(max(b, 1)) }

func (r tally) String() string {
	return fmt.Sprintf("%d answered, median off %.2f°, 95 %% %.2f°, worst %.2f°, U %.2f°, covered %.1f %%, off by over 3°: %d",
		r.answered, r.median, r.p95, r.worst, r.u, 100*share(r.covered, r.answered), r.wild)
}

// refusals counts the reasons.
func refusals(vs []verdict) map[string]int {
	out := map[string]int{}
	for _, v := range vs {
		if v.err == nil {
			continue
		}
		name := "another"
		for _, e := range []error{units.ErrNotGiven, photo.ErrCorners, photo.ErrSmall, photo.ErrFaint, photo.ErrFamilies,
			photo.ErrTurning, photo.ErrSpread, photo.ErrDoubt} {
			if errors.Is(v.err, e) {
				name = e.Error()
			}
		}
		out[name]++
	}
	return out
}

// The scenes of the table in the package comment.
func everyday(least, most float64) func(uint64) *scene {
	return func(seed uint64) *scene { return draw(crosshatched, seed, least, most) }
}

func deepInBore(least, most float64) func(uint64) *scene {
	return func(seed uint64) *scene {
		s := draw(crosshatched, seed, least, most)
		s.tilt = 45 + 5*s.rng.Float64()
		s.to = 90 + 180*float64(s.rng.IntN(2))
		return s
	}
}

func faint(least, most float64) func(uint64) *scene {
	return func(seed uint64) *scene {
		s := draw(crosshatched, seed, least, most)
		s.depth = 0.2 + 1.8*s.rng.Float64()
		return s
	}
}

// rolled is a wall of the kind at any roll and any JPEG from 30 to 95.
func rolled(kind wallKind, least, most float64) func(uint64) *scene {
	return func(seed uint64) *scene {
		s := draw(kind, seed, least, most)
		s.roll = 360 * s.rng.Float64()
		s.quality = 30 + s.rng.IntN(66)
		return s
	}
}

func swung(least, most float64) func(uint64) *scene {
	return func(seed uint64) *scene { return draw(swinging, seed, least, most) }
}

// span is the middle 80 % of the included angle over the wall seen, and its mean.
func (s *scene) span() (lo, mean, hi float64) {
	c := s.camera()
	var all []float64
	const n = 15
	for i := range n {
		for j := range n {
			_, y := c.place(float64(s.width)*(float64(i)+0.5)/n, float64(s.height)*(float64(j)+0.5)/n)
			for k := range n {
				off := ((float64(k)+0.5)/n - 0.5) * s.tool
				x := s.leanAt(y, off, s.up) - s.leanAt(y, off, s.down)
				all = append(all, x)
				mean += x
			}
		}
	}
	slices.Sort(all)
	return all[len(all)/10], mean / float64(len(all)), all[len(all)*9/10]
}

// spanned reports whether the range given, or the angle with its doubt, holds the middle 80 % of the angles on
// a wall honed by a swinging hand; where these lie within 5°, their mean.
func (v verdict) spanned() bool {
	lo, mean, hi := v.scene.span()
	if hi-lo < 5 {
		lo, hi = mean, mean
	}
	return v.from <= lo && hi <= v.to
}
