// SPDX-License-Identifier: BSD-3-Clause

package simulate

import (
	"errors"
	"fmt"
	"math"
	"strconv"

	"borewright.example/units/uncertainty"
	"gonum.org/v1/gonum/num/hyperdual"
)

// ErrTrials: a number of trials, digits or values outside its range. Test with [errors.Is].
var ErrTrials = errors.New("trials out of range")

// ErrUnstable comes with a result whose digits were not yet steady when the trials were used up.
var ErrUnstable = errors.New("not yet steady")

// ChunkSize is how many trials a chunk has (JCGM 101:2008 7.9.4: blocks of 10,000).
const ChunkSize = 10_000

// mostTrials is some gigabytes and minutes.
const mostTrials = 100_000_000

// A Simulation is a model, the distributions of its inputs and a seed: with the same seed it
// draws the same inputs for ever, on every machine. The model is the one of
// [uncertainty.Propagate], and must not keep or change the slice that it is called with.
type Simulation struct {
	Model  uncertainty.Model // of the inputs in their order
	Inputs []Input           // one at least
	// Correlations are of pairs of inputs by name, whose Shape is Normal and whose DoF is 0; drawn as a
	// joint normal distribution (6.4.8).
	Correlations []uncertainty.Correlation
	Seed         uint64
	Coverage     float64 // fraction of values in the intervals, above 0 and below 1; 0 = 0.95
}

// Chunk fills values, at most [ChunkSize] of them, with the model's values, in its unit, in the trials of chunk
// number i, counted from 0. A chunk depends on the seed and its number alone, so that a caller may
// work chunks out side by side, and [Summarise] them all: [Simulation.Run] does it one after the other.
//
// A value that is not finite is uncertainty.ErrModel, naming the trial's inputs. No model or input, or
// bad ones, are the errors that [uncertainty.Propagate] has for them. Correlations of inputs that are
// not normal are uncertainty.ErrCorrelation. A number below 0, or too many values, is ErrTrials.
func (s Simulation) Chunk(i int, values []float64) error {
	r, err := s.prepare()
	if err != nil {
		return err
	}
	if i < 0 || len(values) > ChunkSize {
		return fmt.Errorf("simulate: %d values of chunk %d: %w (up to %d, of 0 or above)", len(values), i, ErrTrials, ChunkSize)
	}
	return r.chunk(i, values)
}

// Run simulates so many trials, one for each value of the result that is drawn, at least 1,000 and at most
// a hundred million (8 bytes each). A million often give a 95 % interval to one or two digits (7.2).
// Errors are those of [Simulation.Chunk], of [Summarise], and ErrTrials for their number.
func (s Simulation) Run(trials int) (Result, error) {
	r, err := s.prepare()
	if err != nil {
		return Result{}, err
	}
	if trials < 1000 || trials > mostTrials {
		return Result{}, fmt.Errorf("simulate: %d trials: %w (1,000 to %d)", trials, ErrTrials, mostTrials)
	}
	values := make([]float64, trials)
	for from := 0; from < trials; from += ChunkSize {
		if err := r.chunk(from/ChunkSize, values[from:min(from+ChunkSize, trials)]); err != nil {
			return Result{}, err
		}
	}
	return Summarise(values, r.coverage)
}

// Adapt simulates as many trials as are wanted for a standard uncertainty of so many steady digits, 1 or
// 2 (7.9): block after block, until twice the standard deviation of the blocks' averages is no more
// than half a unit of the last digit, for the mean, the standard uncertainty and the ends of both
// intervals. The result is of all trials together.
//
// Where most trials, a hundred million at most, do not do, ErrUnstable comes with the result of all
// of them, and so it does for a distribution that has no standard deviation. Other errors are those of
// [Simulation.Run].
func (s Simulation) Adapt(digits, most int) (Result, error) {
	r, err := s.prepare()
	if err != nil {
		return Result{}, err
	}
	block := blockSize(r.coverage)
	if digits < 1 || digits > 2 || most < 2*block || most > mostTrials {
		return Result{}, fmt.Errorf("simulate: %d digits from up to %d trials: %w (1 or 2; %d to %d)", digits, most, ErrTrials, 2*block, mostTrials)
	}
	var values []float64
	var blocks [][6]float64
	for len(values)+block <= most {
		for range block / ChunkSize {
			n := len(values)
			values = append(values, make([]float64, ChunkSize)...)
			if err := r.chunk(n/ChunkSize, values[n:]); err != nil {
				return Result{}, err
			}
		}
		one, err := Summarise(values[len(values)-block:], r.coverage)
		if err != nil {
			return Result{}, err
		}
		blocks = append(blocks, one.six())
		// The whole is summarised as often as its length grows by an eighth, so that this is no more than
		// the drawing.
		if n := len(blocks); n < 2 || n > 16 && n%(n/8) != 0 {
			continue
		}
		all, err := Summarise(values, r.coverage)
		if err != nil {
			return Result{}, err
		}
		if steady(blocks, tolerance(all.Std, digits)) {
			return all, nil
		}
	}
	all, err := Summarise(values, r.coverage)
	if err != nil {
		return Result{}, err
	}
	return all, fmt.Errorf("simulate: %d trials for %d digits: %w", len(values), digits, ErrUnstable)
}

// blockSize returns the least number of trials, in whole chunks, whose tails have a hundred values:
// 100/(1 − p) (7.9.4).
func blockSize(p float64) int {
	n := math.Ceil(100/(1-p) - 1e-6) // 1 − 0.9 is not quite a tenth
	return ChunkSize * int(min(math.Ceil(n/ChunkSize), mostTrials))
}

// steady reports whether the blocks' averages are known to within so much (7.9.4 e to h).
func steady(blocks [][6]float64, within float64) bool {
	h := float64(len(blocks))
	for k := range blocks[0] {
		var mean, square float64
		for _, b := range blocks {
			mean += (b[k] - blocks[0][k]) / h
		}
		for _, b := range blocks {
			d := b[k] - blocks[0][k] - mean
			square += float64(d * d)
		}
		if 2*math.Sqrt(square/(h*(h-1))) > within {
			return false
		}
	}
	return true
}

// tolerance returns half a unit in the last of so many significant digits of a standard uncertainty, as
// JCGM 101:2008 7.9.2 has it: of 0.00035 with two digits 0.000005. It is 0 for a std that is not above 0,
// and for one that is not finite.
func tolerance(std float64, digits int) float64 {
	if !(std > 0) || math.IsInf(std, 0) {
		return 0
	}
	text := strconv.FormatFloat(std, 'e', max(1, digits)-1, 64)
	for i := range text {
		if text[i] == 'e' {
			unit, err := strconv.ParseFloat("5e"+text[i+1:], 64)
			if err == nil {
				return unit / math.Pow10(max(1, digits))
			}
		}
	}
	return 0
}

// A run is a simulation that was checked, with room for its work.
type run struct {
	*Simulation
	coverage float64
	columns  []float64          // a stretch of draws of each input
	factor   []float64          // rows of the Cholesky factor for correlated inputs, n×n; nil without
	x        []hyperdual.Number // of one trial
}

// stretch is how many draws of an input are made at a time, for the columns to stay in the cache. It is part
// of what a seed means.
const stretch = 500

func (s *Simulation) prepare() (*run, error) {
	n := len(s.Inputs)
	components := make([]uncertainty.Component, n)
	correlated := map[string]bool{}
	for _, c := range s.Correlations {
		correlated[c.A], correlated[c.B] = true, true
	}
	for i := range s.Inputs {
		in := &s.Inputs[i]
		if err := in.check(); err != nil {
			return nil, err
		}
		if correlated[in.Name] && (in.Shape != Normal || in.DoF != 0) {
			return nil, fmt.Errorf("simulate: input %q, %v with %v degrees of freedom, is correlated: %w (normal ones alone)", in.Name, in.Shape, in.DoF, uncertainty.ErrCorrelation)
		}
		components[i] = uncertainty.Component{Name: in.Name, Std: 1, Sensitivity: 1}
	}
	if s.Model == nil {
		return nil, fmt.Errorf("simulate: no model: %w", uncertainty.ErrModel)
	}
	if _, _, err := (uncertainty.Budget{Components: components, Correlations: s.Correlations}).Combined(); err != nil {
		return nil, fmt.Errorf("simulate: %w", err)
	}
	r := &run{Simulation: s, coverage: s.Coverage, columns: make([]float64, n*stretch), x: make([]hyperdual.Number, n)}
	if r.coverage == 0 {
		r.coverage = 0.95
	}
	if err := checkCoverage(r.coverage); err != nil {
		return nil, err
	}
	if len(s.Correlations) > 0 {
		r.factorize()
	}
	return r, nil
}

// factorize finds L with L·Lᵀ the correlations, which have been found to be possible ones.
func (r *run) factorize() {
	n := len(r.Inputs)
	at := map[string]int{}
	l := make([]float64, n*n)
	for i, in := range r.Inputs {
		at[in.Name] = i
		l[i*n+i] = 1
	}
	for _, c := range r.Correlations {
		i, j := at[c.A], at[c.B]
		l[max(i, j)*n+min(i, j)] = c.R
	}
	for j := range n {
		for i := j; i < n; i++ {
			s := l[i*n+j]
			for k := range j {
				s -= float64(l[i*n+k] * l[j*n+k])
			}
			switch {
			case i == j && s > 1e-9:
				l[i*n+j] = math.Sqrt(s)
			case i > j && l[j*n+j] > 0:
				l[i*n+j] = s / l[j*n+j]
			default: // wholly given by those before
				l[i*n+j] = 0
			}
		}
	}
	r.factor = l
}

// chunk fills values with the first trials of chunk i.
func (r *run) chunk(i int, values []float64) error {
	s := start(r.Seed, i)
	for len(values) > 0 {
		for k := range r.Inputs {
			if column := r.columns[k*stretch : (k+1)*stretch]; r.joined(k) {
				s.fill(column, 0, 1)
			} else {
				r.Inputs[k].draw(&s, column)
			}
		}
		if r.factor != nil {
			r.join()
		}
		part := values[:min(stretch, len(values))]
		values = values[len(part):]
		x, columns := r.x, r.columns // the derivatives in x stay 0
		for t := range part {
			for k := range x {
				x[k].Real = columns[k*stretch+t]
			}
			y := r.Model(x).Real
			if y-y != 0 {
				return r.fault(t, y)
			}
			part[t] = y
		}
	}
	return nil
}

// fault names the inputs of a trial that has no value.
func (r *run) fault(t int, y float64) error {
	text := ""
	for k, in := range r.Inputs {
		text += fmt.Sprintf(" %q = %v,", in.Name, r.columns[k*stretch+t])
	}
	return fmt.Errorf("simulate: model at%s value %v: %w", text, y, uncertainty.ErrModel)
}

// join makes values of the standard normal numbers in the columns of normal inputs, correlated as they are
// to be; last first, so that those before still stand there.
func (r *run) join() {
	n := len(r.Inputs)
	for i := n - 1; i >= 0; i-- {
		if !r.joined(i) {
			continue
		}
		in := &r.Inputs[i]
		own := r.columns[i*stretch : (i+1)*stretch]
		for t, z := range own {
			own[t] = float64(r.factor[i*n+i] * z)
		}
		for k, l := range r.factor[i*n : i*n+i] {
			for t, z := range r.columns[k*stretch : (k+1)*stretch] {
				own[t] += float64(l * z)
			}
		}
		for t, z := range own {
			own[t] = in.Value + float64(in.Std*z)
		}
	}
}

// joined reports whether input i is drawn as a standard normal number first.
func (r *run) joined(i int) bool {
	return r.factor != nil && r.Inputs[i].Shape == Normal && r.Inputs[i].DoF == 0
}
