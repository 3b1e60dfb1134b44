// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"
	"sort"
	"time"

	"borewright.example/units"
)

// A Motion is how the speed of the tool along the bore is spread over one stroke. All motions of
// one setting have the same mean speed; they differ in how they come to rest at the ends, where
// the lines curve flat. The zero Motion is [Steady].
type Motion struct {
	shape shape
	ramp  time.Duration
	speed func(t float64) float64
}

type shape int8

const (
	steady shape = iota
	crank
	trapezoid
	shaped
)

// Steady keeps one speed all along the stroke and turns round in no time. No machine does it;
// it is what the simple formula of a crosshatch takes for granted.
func Steady() Motion { return Motion{} }

// Crank is the motion of a crank with a very long rod, and near that of a hand that swings: the
// speed is a sine over the stroke, nought at both ends and π/2 times the mean at mid-stroke.
func Crank() Motion { return Motion{shape: crank} }

// Trapezoid speeds up evenly for the ramp, keeps its speed, and slows down evenly for the ramp.
// A ramp of 0 is [Steady]; one of more than half the time of a stroke is refused, with
// [units.ErrRange], where the motion meets a stroking.
func Trapezoid(ramp time.Duration) Motion { return Motion{shape: trapezoid, ramp: ramp} }

// Shaped is a motion of the caller's own. Speed is given the share of the time of the stroke that
// has gone by, 0 to 1, and returns the speed there in any unit: only its shape matters, since the
// mean follows from the setting. A speed that is negative or not finite, or nowhere above 0, is
// [units.ErrRange] where the motion is used.
//
// Speed is read at the ends and at four points within each of 128 equal cells; what
// happens in between them is not seen. A function that always returns the same for the same t
// makes the answers repeatable.
func Shaped(speed func(t float64) float64) Motion { return Motion{shape: shaped, speed: speed} }

// shapedCells is into how many equal cells a [Shaped] motion is cut for reading.
const shapedCells = 128

// String returns "steady", "crank", "trapezoid, ramp 100ms" or "shaped".
func (m Motion) String() string {
	switch m.shape {
	case crank:
		return "crank"
	case trapezoid:
		return fmt.Sprintf("trapezoid, ramp %v", m.ramp)
	case shaped:
		return "shaped"
	}
	return "steady"
}

// peakAxial returns the greatest speed of the tool along the bore when it moves by m. A motion that does
// not go with the stroking is [units.ErrRange]; other errors are those of every [Setting].
func (s Setting) peakAxial(m Motion) (units.Speed, error) {
	if err := s.checkStroking(); err != nil {
		return 0, err
	}
	st, err := m.over(s.Stroking)
	if err != nil {
		return 0, err
	}
	return units.Speed(s.axial() * st.peak), nil
}

// Steepest returns the crosshatch where the tool is fastest along the bore when it moves by m:
// at mid-stroke for a [Crank]. A motion that does
// not go with the stroking is [units.ErrRange]; other errors are those of [Setting.Crosshatch].
func (s Setting) Steepest(m Motion) (Crosshatch, error) {
	if err := s.check(); err != nil {
		return Crosshatch{}, err
	}
	v, err := s.peakAxial(m)
	if err != nil {
		return Crosshatch{}, err
	}
	return fromSlope(float64(v) / s.peripheral())
}

// A stroke is one stroke of a motion, with time and travel both from 0 to 1 and a mean speed of
// 1, cut into cells on which the speed is smooth.
type stroke struct {
	motion Motion
	ramp   float64   // share of the stroke's time
	scale  float64   // makes the mean speed 1
	peak   float64   // greatest speed
	ends   []float64 // cell ends in time, 0 to 1
	at     []float64 // speed at the cell ends
	gone   []float64 // travel at the cell ends
}

// over lays the motion over a stroke of the stroking, which must be valid.
func (m Motion) over(k Stroking) (*stroke, error) {
	st := &stroke{motion: m, scale: 1}
	corners := []float64{0, 1}
	switch m.shape {
	case trapezoid:
		st.ramp = m.ramp.Seconds() * float64(k.Strokes())
		if !(st.ramp >= 0 && st.ramp <= 0.5+1e-12) {
			half := time.Duration(float64(time.Second) / (2 * float64(k.Strokes())))
			return nil, fmt.Errorf("hone: ramp %v at %v: %w: want 0 to %v, half a stroke", m.ramp, k, units.ErrRange, half)
		}
		st.ramp = min(st.ramp, 0.5)
		if st.ramp == 0 {
			st.motion = Steady()
		}
		corners = []float64{0, st.ramp, 1 - st.ramp, 1}
	case shaped:
		if m.speed == nil {
			return nil, fmt.Errorf("hone: speed of the shaped motion: %w", units.ErrNotGiven)
		}
	}
	st.cut(corners)
	return st, st.measure()
}

// cut lays shapedCells equal cells into all of the stroke, or a part of them into each piece
// between corners.
func (st *stroke) cut(corners []float64) {
	cells := shapedCells
	if len(corners) > 2 {
		cells /= 2
	}
	st.ends = append(make([]float64, 0, len(corners)*cells), 0)
	for i := 1; i < len(corners); i++ {
		from, to := corners[i-1], corners[i]
		if to <= from {
			continue
		}
		for j := 1; j <= cells; j++ {
			st.ends = append(st.ends, from+float64((to-from)*float64(j))/float64(cells))
		}
		st.ends[len(st.ends)-1] = to
	}
}

// measure fills in the speeds and the travel, and sets the scale that makes the mean speed 1.
func (st *stroke) measure() error {
	st.at, st.gone = make([]float64, len(st.ends)), make([]float64, len(st.ends))
	worst := 0.0 // a speed that no tool has, if any
	see := func(v float64) float64 {
		if !(v >= 0) || math.IsInf(v, 0) {
			worst = v
		}
		return v
	}
	for i, t := range st.ends {
		st.at[i] = see(st.speed(t))
		if i > 0 {
			st.gone[i] = st.gone[i-1] + gauss(st.ends[i-1], t, func(t float64) float64 { return see(st.speed(t)) })
		}
	}
	total := st.gone[len(st.gone)-1]
	if worst != 0 || !(total > 0) || math.IsInf(total, 0) {
		return fmt.Errorf("hone: %v motion: %w: want speeds that are finite, not negative, and not all 0", st.motion, units.ErrRange)
	}
	st.scale = 1 / total
	for i := range st.ends {
		st.at[i] /= total
		st.gone[i] /= total
		st.peak = max(st.peak, st.at[i])
	}
	return nil
}

// speed is the speed at a share t of the stroke's time.
func (st *stroke) speed(t float64) float64 {
	switch st.motion.shape {
	case crank:
		return math.Sin(math.Pi*min(t, 1-t)) * st.scale
	case trapezoid:
		return min(1, t/st.ramp, (1-t)/st.ramp) * st.scale
	case shaped:
		return st.motion.speed(t) * st.scale
	}
	return st.scale
}

// stay returns when the tool comes to one share of the stroke and when it leaves another, with the cells
// of both times. Where it dwells the first moment at from and the last one at to are wanted.
func (st *stroke) stay(from, to float64) (i, j int, t1, t2 float64) {
	i = max(sort.SearchFloat64s(st.gone, from)-1, 0)
	j = max(min(sort.Search(len(st.gone), func(k int) bool { return st.gone[k] > to }), len(st.gone)-1)-1, 0)
	t1, t2 = st.when(i, from), st.when(j, to)
	if to >= 1 {
		t2 = 1
	}
	if from <= 0 {
		t1 = 0
	}
	return i, j, t1, t2
}

// when returns the time at which the tool has gone so far, in the cell.
func (st *stroke) when(cell int, gone float64) float64 {
	start, width := st.ends[cell], st.ends[cell+1]-st.ends[cell]
	u0, u1 := st.at[cell], st.at[cell+1]
	rest := gone - st.gone[cell]
	if rest <= 0 {
		return start
	}
	// As if the speed changed evenly over the cell: u0·x + (u1 − u0)·x²/(2·width) = rest.
	x := width
	if d := float64(u0*u0) + 2*float64((u1-u0)*rest)/width; u0+math.Sqrt(max(d, 0)) > 0 {
		x = 2 * rest / (u0 + math.Sqrt(max(d, 0)))
	}
	for range 3 { // then Newton's way, which squares the error each time
		x = min(max(x, 0), width)
		u := st.speed(start + x)
		if u <= 0 {
			break
		}
		step := (gauss(start, start+x, st.speed) - rest) / u
		if x -= step; math.Abs(step) <= 1e-8*width {
			break // the error left is about the square of that
		}
	}
	return start + min(max(x, 0), width)
}

// crossing returns when, in the cell that ends at i, the speed passes the edge.
func (st *stroke) crossing(i int, edge float64) float64 {
	a, b := st.ends[i-1], st.ends[i]
	rising := st.at[i-1] < edge
	for range 60 {
		if mid := (a + b) / 2; (st.speed(mid) < edge) == rising {
			a = mid
		} else {
			b = mid
		}
	}
	return (a + b) / 2
}

// Gauss and Legendre's four points on (−1, 1) and their weights: Abramowitz and Stegun, Handbook
// of Mathematical Functions, table 25.4.
var gaussPoints = [2]struct{ x, w float64 }{
	{0.3399810435848563, 0.6521451548625461}, {0.8611363115940526, 0.3478548451374538},
}

// gauss integrates f from a to b.
func gauss(a, b float64, f func(float64) float64) float64 {
	mid, half := (a+b)/2, (b-a)/2
	sum := 0.0
	for _, p := range gaussPoints {
		sum += float64(p.w * (f(mid-float64(half*p.x)) + f(mid+float64(half*p.x))))
	}
	return sum * half
}
