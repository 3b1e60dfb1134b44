// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"math"
	"time"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Next returns what to do after the passes made so far: stop, go on with the longest pass that keeps
// to the risk, or measure again; or that the bore is past its size.
//
// Every reading is brought to 20 °C first. The rate is what the passes took over how long they lasted,
// each pass counting twice as much as the one before it, so that it follows a rate that fades. The
// size D to expect after t more seconds, and its variance, are
//
//	D = y + r·t
//	V = u²(1 + t/S)² + Q·t²/S² + c²(r² + u(r)²)·t² + c²·r²·t²·P/S²
//
// with y the last reading and u its uncertainty, r the rate and u(r) its own from the gauge, S and P the
// weighted sums of the times and of their squares, Q the part of the readings before, and c the
// scatter, of the pass to come and of those made. The last reading is in y and in r: if it is too
// small both are, hence the first term. The pass ends, at the latest, where D + k·√V meets the stop
// size, with what is left up to it in place of r·t in the last term, since r may be too low; k is
// the one-sided normal quantile for this pass's part of the risk, and Student's in the terms of the
// gauge where a reading has degrees of freedom. It is no longer than Longest, nor than what should
// bring the middle of the finish limits.
//
// After n passes, trial included, 1/n of the risk is left for however many are still to come, and the
// next may take 1/(n + 1) of that: ½, 1/6, 1/12, … of the whole, which sum to no more than the whole.
// The promise holds as long as readings are as good as they say, and the rate scatters by no more
// than is stated and does not rise. It does not cover the trial pass: choose that short enough to
// be harmless with the fastest tool. Readings are taken as independent, which is safe: an error that
// all share counts once in the size and cancels in the rate.
//
// Where the answer is [MeasureAgain], put the mean of several readings in place of the last one.
//
// A pass that lasted no time is [units.ErrNotGiven], one after which the bore was smaller by more than three
// standard uncertainties [ErrShrunk]; a reading without temperature and a metal without expansion
// are [units.ErrNotGiven].
func (z Sizing) Next() (Next, error) {
	c, err := z.check()
	if err != nil {
		return Next{}, err
	}
	s := newState(&c)
	now := Next{Size: estimate(s.size, s.std, c.dof)}
	now.Fades, now.Rises = c.trend()
	if s.passes > 0 {
		now.Growth = estimate(s.rate()*60, s.rateStd(c.scatter)*60, c.dof)
	}
	if c.settled(&now, s) {
		return now, nil
	}
	if s.passes == 0 {
		now.Decision, now.Lasts = GoOn, min(z.Trial, z.Longest)
		return now, nil
	}
	student, err := c.student(s)
	if err != nil {
		return Next{}, err
	}
	t, err := c.longest(s, student)
	if err != nil || t < 1 {
		return now, err
	}
	now.Decision, now.Lasts, now.Risk = GoOn, seconds(t), c.share(s)
	now.Then = estimate(s.size+float64(s.rate()*t), math.Sqrt(s.variance(t, c.scatter)), c.dof)
	now.Passes, now.Time, err = c.ahead(s, student)
	return now, err
}

// settled fills in a decision that needs no pass.
func (c *checked) settled(now *Next, s state) bool {
	switch {
	case s.size > c.max:
		now.Decision = PastSize
	case s.size >= c.min:
		now.Decision = StopHere
	default:
		return false
	}
	return true
}

// A state is all that the next pass depends on: the size, and weighted sums over the passes. Sizes
// are in picometres, times in seconds.
type state struct {
	passes    int
	size, std float64
	lasts     float64 // S, of the times
	took      float64 // of what each took
	squares   float64 // P, of the times squared
	before    float64 // Q, of what the doubts of all readings but the last weigh in took, squared
}

func newState(c *checked) state {
	s := state{size: c.size[0], std: c.std[0]}
	for i, t := range c.lasts {
		s = s.after(t, c.size[i+1], c.std[i+1])
	}
	return s
}

// older is what a pass weighs against the one after it.
const older = 0.5

// after returns the state after one more pass.
func (s state) after(t, size, std float64) state {
	keep := 1 - older // of the last reading: it ends the pass before and begins the new one
	if s.passes == 0 {
		keep = 1
	}
	return state{
		passes: s.passes + 1, size: size, std: std,
		lasts:   float64(older*s.lasts) + t,
		took:    float64(older*s.took) + size - s.size,
		squares: float64(older*older*s.squares) + float64(t*t),
		before:  float64(older*older*s.before) + float64(keep*keep*s.std*s.std),
	}
}

// rate is the growth of the diameter in a second, not below 0.
func (s state) rate() float64 { return max(0, s.took/s.lasts) }

// gaugeVariance is that of the rate from the readings alone.
func (s state) gaugeVariance() float64 {
	return (float64(s.std*s.std) + s.before) / float64(s.lasts*s.lasts)
}

// rateStd is the standard uncertainty of the rate.
func (s state) rateStd(scatter float64) float64 {
	own := scatter * s.rate()
	return math.Sqrt(s.gaugeVariance() + float64(own*own*s.squares)/float64(s.lasts*s.lasts))
}

// A spread is the variance of the size after t more seconds: a + b·t + c·t² from the gauge, next·t² from
// the scatter of the pass to come, made·(what it takes)² from that of the passes made.
type spread struct{ a, b, c, next, made float64 }

func (s state) spread(scatter float64) spread {
	a, g, r, own := float64(s.std*s.std), s.gaugeVariance(), s.rate(), float64(scatter*scatter)
	return spread{
		a: a, b: 2 * a / s.lasts, c: g,
		next: own * (float64(r*r) + g), made: float64(own*s.squares) / float64(s.lasts*s.lasts),
	}
}

// variance is that of the size to expect after t more seconds.
func (s state) variance(t, scatter float64) float64 {
	v, takes := s.spread(scatter), s.rate()*t
	return v.a + float64(v.b*t) + float64((v.c+v.next)*t*t) + float64(v.made*takes*takes)
}

// share is the part of the risk that the next pass may take.
func (c *checked) share(s state) float64 {
	n := float64(s.passes)
	return c.risk / float64(n*(n+1))
}

// student is Student's coverage factor over the normal one for the next pass.
func (c *checked) student(s state) (float64, error) {
	if c.dof == 0 {
		return 1, nil
	}
	p := 1 - 2*c.share(s)
	few, err1 := uncertainty.Coverage(p, c.dof)
	known, err2 := uncertainty.Coverage(p, 0)
	return few / known, firstError(err1, err2)
}

// longest returns the longest next pass in whole seconds, below 1 where none keeps to the risk.
func (c *checked) longest(s state, student float64) (float64, error) {
	k, err := uncertainty.Coverage(1-2*c.share(s), 0)
	if err != nil {
		return 0, err
	}
	known := float64(k * k)
	return math.Floor(min(c.most, max(1, c.toMiddle(s)), c.toRisk(s, known*float64(student*student), known))), nil
}

// toMiddle is how long it should take to the middle of the finish limits.
func (c *checked) toMiddle(s state) float64 {
	return ((c.min+c.max)/2 - s.size) / s.rate()
}

// toRisk is when the size to expect, and as many standard uncertainties more as the risk asks for, meet
// the stop size: the least positive root of
//
//	(gap − rate·t)² = gauge·(a + b·t + c·t²) + known·(next·t² + made·gap²)
//
// with the squares of the coverage factors for the doubt of the gauge, which may have few degrees of
// freedom, and of the scatter. The passes made may have been slow ones. Then the rate is too low, and
// so is what it scatters by if that is taken from it; but what would bring the bore to the stop
// size takes all of the gap.
func (c *checked) toRisk(s state, gauge, known float64) float64 {
	v, r := s.spread(c.scatter), s.rate()
	gap := c.max - s.size
	left := float64(gap*gap) - float64(gauge*v.a) - float64(known*v.made*gap*gap)
	if left <= 0 {
		return 0
	}
	half := float64(gap*r) + float64(gauge*v.b)/2
	square := float64(r*r) - float64(gauge*v.c) - float64(known*v.next)
	return left / (half + math.Sqrt(max(0, float64(half*half)-float64(square*left))))
}

// ahead returns how many passes are still to come if each takes what it should, and their time. Student's
// factor is left in the proportion it has for the next pass.
func (c *checked) ahead(s state, student float64) (int, time.Duration, error) {
	all := 0.0
	for n := 0; n < maxPasses; n++ {
		if s.size >= c.min {
			return n, seconds(all), nil
		}
		t, err := c.longest(s, student)
		if err != nil || t < 1 {
			return 0, 0, err
		}
		all += t
		s = s.after(t, s.size+float64(s.rate()*t), s.std)
	}
	return 0, 0, nil
}

// trendSeen is how many standard uncertainties a trend must show: 5 % by chance, either way.
const trendSeen = 1.645

// trend returns whether the rate falls or rises along the time honed: the straight line through the
// rates of the passes, weighted by their times, held against the doubt of its slope.
func (c *checked) trend() (fades, rises bool) {
	n := len(c.lasts)
	if n < 2 {
		return false, false
	}
	var all, mean float64
	for _, t := range c.lasts {
		mean += float64(t * (all + t/2))
		all += t
	}
	mean /= all
	rate := (c.size[n] - c.size[0]) / all // not the later passes' rate: a slow last one would scatter less
	// The slope is Σ w·rate with w = t·(middle − mean), over a constant: Σ (middle − mean)·took.
	var slope, variance, end, last float64
	for i, t := range c.lasts {
		w := end + t/2 - mean
		end += t
		slope += float64(w * (c.size[i+1] - c.size[i]))
		u := (last - w) * c.std[i] // the reading before this pass ends the pass before
		own := c.scatter * w * t * rate
		variance += float64(u*u) + float64(own*own)
		last = w
	}
	u := last * c.std[n]
	seen := trendSeen * math.Sqrt(variance+float64(u*u))
	return slope < -seen, slope > seen
}

func seconds(t float64) time.Duration { return time.Duration(t) * time.Second }

// estimate returns a size in picometres as an estimate, its uncertainty no smaller than it is.
func estimate(size, std, dof float64) uncertainty.Estimate {
	const most = float64(units.MaxLength)
	return uncertainty.Estimate{
		Value: units.Length(math.Round(min(max(size, -most), most))),
		Std:   units.Length(math.Ceil(min(std, most))), DoF: dof,
	}
}
