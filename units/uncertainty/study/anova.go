// SPDX-License-Identifier: BSD-3-Clause

package study

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A cell is what one person read of one part.
type cell struct {
	part, person int
	n            float64 // how many readings
	mean         float64 // of them
}

// A design is the trials in order of part and person. Lengths are picometres from the origin, the
// first reading, which is exact, and then from their mean.
type design struct {
	n        int
	origin   units.Length
	mean     float64 // of all readings, from the origin
	cells    []cell
	parts    []float64 // how many readings of each
	persons  []float64
	balanced bool
	within   float64   // sum of squares about the cells' means
	factor   []float64 // lower triangle of the Cholesky factor for persons adjusted for parts
}

func arrange(trials []Trial) (*design, error) {
	if len(trials) < 2 || len(trials) > mostTrials {
		return nil, fmt.Errorf("study: %d trials: %w (2 to %d)", len(trials), ErrTrials, mostTrials)
	}
	d := &design{n: len(trials), origin: trials[0].Reading}
	partAt, personAt := map[string]int{}, map[string]int{}
	number := func(at map[string]int, counts *[]float64, name string) int {
		i, ok := at[name]
		if !ok {
			i = len(at)
			at[name] = i
			*counts = append(*counts, 0)
		}
		(*counts)[i]++
		return i
	}
	type place struct{ part, person int }
	places := make([]place, len(trials))
	for k, t := range trials {
		if t.Reading.Abs() > units.MaxLength {
			return nil, fmt.Errorf("study: reading %v of %q by %q: %w (±%v)", t.Reading, t.Part, t.Person, units.ErrRange, units.MaxLength)
		}
		places[k] = place{number(partAt, &d.parts, t.Part), number(personAt, &d.persons, t.Person)}
		d.mean += (t.Reading - d.origin).In(units.Picometre)
	}
	d.mean /= float64(d.n)
	at := make([]int, len(d.parts)*len(d.persons)) // 1 + the cell's number
	from := func(k int) float64 { return (trials[k].Reading - d.origin).In(units.Picometre) - d.mean }
	for k, p := range places {
		i := p.part*len(d.persons) + p.person
		if at[i] == 0 {
			d.cells = append(d.cells, cell{part: p.part, person: p.person})
			at[i] = len(d.cells)
		}
		c := &d.cells[at[i]-1]
		c.n++
		c.mean += from(k)
	}
	d.balanced = len(d.cells) == len(at)
	for i := range d.cells {
		d.cells[i].mean /= d.cells[i].n
		d.balanced = d.balanced && d.cells[i].n == d.cells[0].n
	}
	for k, p := range places {
		r := from(k) - d.cells[at[p.part*len(d.persons)+p.person]-1].mean
		d.within += float64(r * r)
	}
	return d, d.factorize()
}

// factorize prepares the fit of persons to what parts leave: the counts of persons less those that
// the parts account for, last person left out, as L·Lᵀ.
func (d *design) factorize() error {
	b := len(d.persons) - 1
	if b < 1 || len(d.parts) < 2 {
		return nil
	}
	m := make([]float64, (b+1)*(b+1))
	for i, n := range d.persons {
		m[i*(b+1)+i] = n
	}
	row := make([]float64, len(d.parts)*(b+1))
	for _, c := range d.cells {
		row[c.part*(b+1)+c.person] = c.n
	}
	for i, n := range d.parts {
		r := row[i*(b+1) : (i+1)*(b+1)]
		for j, x := range r {
			if x == 0 {
				continue
			}
			for k, y := range r[:j+1] {
				m[j*(b+1)+k] -= float64(x*y) / n
			}
		}
	}
	l := make([]float64, b*b)
	for j := range b {
		for k := range j + 1 {
			s := m[j*(b+1)+k]
			for i := range k {
				s -= float64(l[j*b+i] * l[k*b+i])
			}
			if j != k {
				l[j*b+k] = s / l[k*b+k]
			} else if s > 1e-9*d.persons[j] {
				l[j*b+j] = math.Sqrt(s)
			} else {
				return fmt.Errorf("study: persons who share no part, directly or through others: %w", ErrTrials)
			}
		}
	}
	d.factor = l
	return nil
}

// Reductions are sums of squares: of parts, of persons adjusted for parts, and of what is left between
// the cells; and the parts' adjusted for persons.
type reductions struct{ parts, personsGivenParts, rest, partsGivenPersons float64 }

// reduce works out the sums of squares of values, one for each cell.
func (d *design) reduce(value func(i int) float64) reductions {
	a, b := len(d.parts), len(d.persons)
	scratch := make([]float64, a+2*b)
	parts, persons, left := scratch[:a], scratch[a:a+b], scratch[a+b:]
	grand := 0.0
	for i, c := range d.cells {
		x := float64(c.n * value(i))
		grand += x
		parts[c.part] += x
		persons[c.person] += x
	}
	grand /= float64(d.n)
	var r reductions
	onPersons := 0.0
	for i, n := range d.parts {
		parts[i] /= n
		r.parts += float64(n * squared(parts[i]-grand))
	}
	for j, n := range d.persons {
		persons[j] /= n
		onPersons += float64(n * squared(persons[j]-grand))
	}
	if d.balanced {
		r.personsGivenParts, r.partsGivenPersons = onPersons, r.parts
		for i, c := range d.cells {
			r.rest += float64(c.n * squared(value(i)-parts[c.part]-persons[c.person]+grand))
		}
		return r
	}
	between := 0.0
	for i, c := range d.cells {
		between += float64(c.n * squared(value(i)-grand))
		left[c.person] += float64(c.n * (value(i) - parts[c.part]))
	}
	switch n := b - 1; {
	case d.factor != nil:
		for j := range n { // L·z = left, and |z|² is the sum of squares
			for k := range j {
				left[j] -= float64(d.factor[j*n+k] * left[k])
			}
			left[j] /= d.factor[j*n+j]
			r.personsGivenParts += squared(left[j])
		}
	default: // one part, or one person, whose sum is then 0
		r.personsGivenParts = onPersons
	}
	r.rest = max(0, between-r.parts-r.personsGivenParts)
	r.partsGivenPersons = max(0, r.parts+r.personsGivenParts-onPersons)
	return r
}

// Squares are the mean squares of a study, of no degrees of freedom where they do not exist, and the
// variances that they make up, nil where the source cannot be seen.
type squares struct {
	within, rest, ofPersons, ofParts         square
	repeatability, interaction, person, part combination
	underInteraction, underPerson, underPart combination // what each mean square would be without its source
}

// meanSquares sets the mean squares equal to what they are on average (Searle, Casella and
// McCulloch, Variance Components, 1992, sections 5.3 and 5.4; from memory). With s², i, o, p for the
// variances of repeatability, interaction, persons and parts,
//
//	E(MS within) = s²
//	E(MS rest)   = s² + c₁i
//	E(MS person) = s² + c₂i + c₃o        E(MS part) = s² + c₄i + c₅p
//
// where each c is the sum of what the same mean square makes of the source's indicators: 1 for
// one part or cell, 0 for the others.
func (d *design) meanSquares() (squares, error) {
	a, b, n := float64(len(d.parts)), float64(len(d.persons)), float64(d.n)
	cells := float64(len(d.cells))
	r := d.reduce(func(i int) float64 { return d.cells[i].mean })
	mean := func(of string, sum, dof float64) square {
		if dof < 1 {
			return square{source: of}
		}
		return square{of, sum / dof, dof}
	}
	q := squares{
		within:    mean(repeatability, d.within, n-cells),
		rest:      mean(interaction, r.rest, cells-a-b+1),
		ofPersons: mean(person, r.personsGivenParts, b-1),
		ofParts:   mean(part, r.partsGivenPersons, a-1),
	}
	c := d.expected()
	each := c.rest / (cells - a - b + 1) // c₁, where there is a rest
	if q.within.dof == 0 {
		// Nobody read a part again: what is left between the cells is taken for repeatability.
		if q.rest.dof == 0 {
			return squares{}, fmt.Errorf("study: %d trials without a repeat of any kind: %w", d.n, ErrTrials)
		}
		q.within, q.rest = q.rest, square{}
		q.within.source = repeatability
	}
	q.repeatability = combination{{1, q.within}}
	under := func(cellsIn, dof float64) combination { // s² + c·i, with i from the rest
		if q.rest.dof == 0 {
			return q.repeatability
		}
		share := cellsIn / dof / each // 1 where all cells are alike
		return q.repeatability.times(1 - share).plus(combination{{share, q.rest}})
	}
	variance := func(of square, under combination, c float64) combination {
		return combination{{1, of}}.plus(under.times(-1)).times(1 / c)
	}
	if q.rest.dof > 0 {
		q.underInteraction = q.repeatability
		q.interaction = variance(q.rest, q.repeatability, each)
	}
	if b > 1 {
		q.underPerson = under(c.cellsInPersons, b-1)
		q.person = variance(q.ofPersons, q.underPerson, c.persons/(b-1))
	}
	if a > 1 {
		q.underPart = under(c.cellsInParts, a-1)
		q.part = variance(q.ofParts, q.underPart, c.parts/(a-1))
	}
	return q, nil
}

// coefficients are the sums of what the sums of squares make of indicators.
type coefficients struct{ rest, persons, parts, cellsInPersons, cellsInParts float64 }

func (d *design) expected() coefficients {
	a, b, n := float64(len(d.parts)), float64(len(d.persons)), d.cells[0].n
	if d.balanced {
		return coefficients{n * (a - 1) * (b - 1), a * n * (b - 1), b * n * (a - 1), n * (b - 1), n * (a - 1)}
	}
	var c coefficients
	indicate := func(in func(x cell) bool) reductions {
		return d.reduce(func(i int) float64 {
			if in(d.cells[i]) {
				return 1
			}
			return 0
		})
	}
	for i := range d.parts {
		c.parts += indicate(func(x cell) bool { return x.part == i }).partsGivenPersons
	}
	for j := range d.persons {
		c.persons += indicate(func(x cell) bool { return x.person == j }).personsGivenParts
	}
	for _, y := range d.cells {
		r := indicate(func(x cell) bool { return x.part == y.part && x.person == y.person })
		c.rest += r.rest
		c.cellsInPersons += r.personsGivenParts
		c.cellsInParts += r.partsGivenPersons
	}
	return c
}

// table returns the analysis of variance, part first.
func (q squares) table() ([]Row, error) {
	var rows []Row
	for _, x := range [...]struct {
		of    square
		under combination
	}{{q.ofParts, q.underPart}, {q.ofPersons, q.underPerson}, {q.rest, q.underInteraction}, {q.within, nil}} {
		if x.of.dof == 0 {
			continue
		}
		m, err := x.of.meanSquare()
		if err != nil {
			return nil, err
		}
		r := Row{MeanSquare: m}
		if v, dof := x.under.variance(); v > 0 {
			r.F = x.of.value / v
			r.P = fTail(r.F, r.DoF, dof)
		}
		rows = append(rows, r)
	}
	return rows, nil
}
