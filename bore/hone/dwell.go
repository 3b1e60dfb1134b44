// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// A Place is a depth of the wall and the diameter there, at 20 °C, or what it grows by.
type Place struct {
	Depth    units.Length `json:"depth,omitzero"`    // from the top face, 0 or more
	Diameter units.Length `json:"diameter,omitzero"` // above 0
}

// A Correction is a bore that is not straight, and the size it is to come to.
type Correction struct {
	Run      Run          `json:"run,omitzero"`    // of rigid stones; it goes on its usual travel
	Measured []Place      `json:"measured"`        // 2 to 1,000 places, from the top down; straight lines between them
	Size     units.Length `json:"size,omitzero"`   // no place is taken beyond
	Finish   units.Length `json:"finish,omitzero"` // the least on the diameter, on the mean, that full strokes take at the end; 0 or more
}

// A Dwell is short strokes about one depth.
type Dwell struct {
	Middle units.Length `json:"middle,omitzero"` // depth of the middle of the stones at mid-stroke
	Takes  units.Length `json:"takes,omitzero"`  // off the diameter there
	Time   float64      `json:"time,omitzero"`   // fraction of the time of all honing, 0 to 1
}

// A DwellPlan is where to dwell, and what should come of it. Shares are rounded to 10⁻⁹.
type DwellPlan struct {
	Dwells []Dwell      `json:"dwells,omitempty"` // from the top down, those that take something
	Stroke units.Length `json:"stroke,omitzero"`  // of the short strokes

	Full     units.Length `json:"full,omitzero"`      // what full strokes then take off the diameter, on the mean
	FullTime float64      `json:"full_time,omitzero"` // fraction of the time, 0 to 1

	Places []Place      `json:"places,omitempty"` // foretold, at equal steps from the first measured depth to the last
	After  units.Length `json:"after,omitzero"`   // greatest less least diameter then
}

const (
	shortStrokes = 4 // a short stroke is the stones over this
	mostPlaces   = 1000
	mostDwells   = 64
	foretold     = 61 // places
	divisions    = 8  // of what full strokes may take, tried one by one
)

// Correct returns where to dwell, with short strokes of a quarter of the stones, so that a bore that
// is measured to be tapered, barrelled or waisted comes out as straight as it can: by the law of
// [Setting.Removal], in the same motion and at the same rates as the full strokes. Short strokes are to take
// what full strokes are to leave, at the ends too: at stations a quarter of the stones apart or closer, none
// negative, by least squares. Full strokes then go on until the first place has come to Size: no place
// goes beyond. Of nine divisions between the two, from full strokes alone to no more of them than
// Finish, the straightest counts; full strokes alone, where short ones make nothing better.
// Nothing is said of the wall above the first place measured and below the last.
//
// Full strokes come last and take Finish at least: short strokes after them would spoil the crosshatch and
// the shape (NMWR 9-2815-220, WP 0012, has ridges taken off first with short strokes, and no short strokes
// after the full ones). Measure on the way: stones tilt, wear and load, and the plan knows nothing of it.
//
// Only rigid stones correct shape; another kind, a place beyond the bore, or too
// large to leave Finish, or anything, for the full strokes, is [units.ErrRange]; places out of order are [units.ErrCrossed]; stones
// too long for short strokes are [ErrRoom].
func (s Setting) Correct(m Motion, law Pressing, c Correction) (DwellPlan, error) {
	if k := c.Run.Kind; k != RigidStone && k != 0 {
		return DwellPlan{}, fmt.Errorf("hone: shape by a %v: %w: want rigid stones", k, units.ErrRange)
	}
	travel, err := UsualTravel(c.Run)
	if err != nil {
		return DwellPlan{}, err
	}
	s.Stroke = 0
	full, err := s.worked(m, travel, law)
	if err != nil {
		return DwellPlan{}, err
	}
	if err := c.check(); err != nil {
		return DwellPlan{}, err
	}
	p := DwellPlan{Stroke: c.Run.Tool / shortStrokes}
	before, err := c.between()
	if err != nil {
		return DwellPlan{}, err
	}
	stations, err := s.stations(m, law, travel, full.length, p.Stroke)
	if err != nil {
		return DwellPlan{}, err
	}
	left := make([]float64, len(before)) // to the size
	shares := make([]float64, len(before))
	for i, at := range before {
		left[i], shares[i] = (c.Size - at.Diameter).In(units.Metre), full.share(at.Depth)
		if left[i] < 0 {
			return DwellPlan{}, fmt.Errorf("hone: diameter %v at the depth %v: %w: want up to the size to come to, %v", at.Diameter, at.Depth, units.ErrRange, c.Size)
		}
	}
	most := fullUntil(left, shares)
	if most < c.Finish.In(units.Metre) || most == 0 {
		return DwellPlan{}, fmt.Errorf("hone: size to come to %v: %w: full strokes could take %.3g mm, want above 0 and %v at least", c.Size, units.ErrRange, most*1e3, c.Finish)
	}
	least := c.Finish.In(units.Metre)
	columns := make([][]float64, len(stations))
	for j, w := range stations {
		columns[j] = make([]float64, len(before))
		for i, at := range before {
			columns[j][i] = w.loses(at.Depth)
		}
	}
	best := rest{strokes: make([]float64, len(stations)), left: left}.finish(shares) // full strokes alone
	for i := range divisions + 1 {
		aim := most - float64((most-least)*float64(i))/divisions
		if r := dwell(columns, left, shares, aim, least).finish(shares); r.differs() < best.differs()-1e-9 { // by a nanometre
			best = r
		}
	}
	if p.Full, err = units.Of(best.full, units.Metre); err != nil {
		return DwellPlan{}, err
	}
	if err := p.tell(stations, best.strokes, float64(p.Full.In(units.Metre)*full.scale)); err != nil {
		return DwellPlan{}, err
	}
	p.Places = make([]Place, len(before))
	for i, at := range before {
		short, err := units.Of(best.left[i], units.Metre)
		if err != nil {
			return DwellPlan{}, err
		}
		p.Places[i] = Place{at.Depth, c.Size - max(0, short)}
	}
	p.After = differ(p.Places)
	return p, nil
}

// fullUntil returns what full strokes take on the mean until the first place has nothing left.
func fullUntil(left, shares []float64) float64 {
	most := 10.0 // metres
	for i, l := range left {
		if shares[i] > 0 {
			most = min(most, l/shares[i])
		}
	}
	return most
}

// A rest is what is left at each place after so much of each station, and of full strokes.
type rest struct {
	strokes, left []float64
	full          float64
}

// finish adds full strokes until the first place has nothing left.
func (r rest) finish(shares []float64) rest {
	r.full = fullUntil(r.left, shares)
	after := make([]float64, len(r.left))
	for i, l := range r.left {
		after[i] = max(0, l-float64(shares[i]*r.full))
	}
	r.left = after
	return r
}

func (r rest) differs() float64 { return slices.Max(r.left) - slices.Min(r.left) }

// dwell returns how much of each station fills up what full strokes of aim leave, by least squares; all of it
// by the same part less where least would not be left for full strokes.
func dwell(columns [][]float64, left, shares []float64, aim, least float64) rest {
	need := make([]float64, len(left))
	for i := range need {
		need[i] = max(0, left[i]-float64(shares[i]*aim))
	}
	r := rest{strokes: leastSquares(columns, need), left: make([]float64, len(left))}
	takes, keep := make([]float64, len(left)), 1.0
	for i := range takes {
		for j, c := range columns {
			takes[i] += float64(c[i] * r.strokes[j])
		}
		if most := left[i] - float64(shares[i]*least); takes[i] > most {
			keep = min(keep, max(0, most/takes[i]))
		}
	}
	for j := range r.strokes {
		r.strokes[j] *= keep
	}
	for i := range left {
		r.left[i] = max(0, left[i]-float64(keep*takes[i]))
	}
	return r
}

// check looks at all but the run.
func (c Correction) check() error {
	if err := checkLength("size to come to", c.Size); err != nil {
		return err
	}
	if c.Finish < 0 || c.Finish > units.MaxLength {
		return fmt.Errorf("hone: stock of the full strokes %v: %w: want 0 or more, up to %v", c.Finish, units.ErrRange, units.MaxLength)
	}
	if n := len(c.Measured); n < 2 || n > mostPlaces {
		return fmt.Errorf("hone: %d measured places: %w: want 2 to %d", n, units.ErrRange, mostPlaces)
	}
	for i, p := range c.Measured {
		if p.Depth < 0 || p.Depth > c.Run.Depth {
			return fmt.Errorf("hone: place at the depth %v: %w: want 0 to %v", p.Depth, units.ErrRange, c.Run.Depth)
		}
		if i > 0 && p.Depth <= c.Measured[i-1].Depth {
			return fmt.Errorf("hone: place at the depth %v after one at %v: %w: want them from the top down", p.Depth, c.Measured[i-1].Depth, units.ErrCrossed)
		}
		if err := checkLength("diameter at the depth "+p.Depth.String(), p.Diameter); err != nil {
			return err
		}
	}
	return nil
}

// between returns the places to look at, on straight lines between those measured.
func (c Correction) between() ([]Place, error) {
	first, last := c.Measured[0], c.Measured[len(c.Measured)-1]
	ps := make([]Place, foretold)
	k := 1
	for i := range ps {
		down, err := (last.Depth - first.Depth).MulDiv(int64(i), foretold-1)
		if err != nil {
			return nil, err
		}
		depth := first.Depth + down
		for c.Measured[k].Depth < depth {
			k++
		}
		a, b := c.Measured[k-1], c.Measured[k]
		more, err := (b.Diameter - a.Diameter).MulDiv(int64(depth-a.Depth), int64(b.Depth-a.Depth))
		if err != nil {
			return nil, err
		}
		ps[i] = Place{depth, a.Diameter + more}
	}
	return ps, nil
}

// stations lays short strokes along the travel, from its top to its bottom.
func (s Setting) stations(m Motion, law Pressing, t Travel, length, short units.Length) ([]*worked, error) {
	span := length - short
	if span < 0 || short == 0 {
		return nil, fmt.Errorf("hone: stones of %v: %w: want a full stroke, %v, no shorter than a short one, a quarter of the stones", t.Tool, ErrRoom, length)
	}
	n := int(min(span/short, mostDwells-2)) + 2
	s.Stroke = short
	ws := make([]*worked, n)
	for i := range ws {
		down, err := span.MulDiv(int64(i), int64(n-1))
		if err != nil {
			return nil, err
		}
		if ws[i], err = s.lay(m, Travel{Depth: t.Depth, Tool: t.Tool, Top: t.Top - down, Bottom: t.Bottom - (span - down)}, law); err != nil {
			return nil, err
		}
	}
	return ws, nil
}

// tell writes the dwells down; strokes are how much of each station, and full of full strokes, in metres
// over what a stroke loses. Less than a nanometre is none.
func (p *DwellPlan) tell(stations []*worked, strokes []float64, full float64) error {
	time := full
	for j, w := range stations {
		middle := p.Stroke/2 - w.travel.Top + w.travel.Tool/2
		takes, err := units.Of(float64(strokes[j]*w.loses(min(max(middle, 0), w.travel.Depth))), units.Metre)
		if err != nil {
			return err
		}
		if takes >= units.Nanometre {
			p.Dwells = append(p.Dwells, Dwell{middle, takes, strokes[j]})
			time += strokes[j]
		}
	}
	if time == 0 {
		return nil
	}
	for j := range p.Dwells {
		p.Dwells[j].Time = math.Round(p.Dwells[j].Time/time*1e9) / 1e9
	}
	p.FullTime = math.Round(full/time*1e9) / 1e9
	return nil
}

// differ returns the greatest less the least diameter.
func differ(ps []Place) units.Length {
	least, greatest := ps[0].Diameter, ps[0].Diameter
	for _, p := range ps {
		least, greatest = min(least, p.Diameter), max(greatest, p.Diameter)
	}
	return greatest - least
}

// leastSquares returns the amounts, none negative, of the columns whose sum comes nearest to need, found by
// moving one amount at a time.
func leastSquares(columns [][]float64, need []float64) []float64 {
	n := len(columns)
	products, aims := make([][]float64, n), make([]float64, n) // columns with one another, and with need
	for j := range products {
		products[j] = make([]float64, n)
		for i, v := range need {
			aims[j] += float64(columns[j][i] * v)
			for k := range products[j] {
				products[j][k] += float64(columns[j][i] * columns[k][i])
			}
		}
	}
	x := make([]float64, n)
	for range 2000 {
		moved, size := 0.0, 0.0
		for j, p := range products {
			if p[j] == 0 {
				continue // nothing measured there
			}
			slope := aims[j]
			for k, v := range x {
				slope -= float64(p[k] * v)
			}
			to := max(0, x[j]+slope/p[j])
			moved, size = max(moved, math.Abs(to-x[j])), max(size, to)
			x[j] = to
		}
		if moved <= 1e-9*size {
			break
		}
	}
	return x
}
