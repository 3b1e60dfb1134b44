// SPDX-License-Identifier: BSD-3-Clause

package study

import (
	"errors"
	"fmt"
	"math"

	"borewright.example/internal/enum"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// ErrTrials: trials or readings that make no study. Test with [errors.Is].
var ErrTrials = errors.New("these readings make no study")

// mostTrials is more than any study by hand has, and bounds the work of analysing one.
const mostTrials = 1000

// A Trial is one reading of a part by a person. Names are free; a part may be a place of a bore or
// a setting ring, and where one person does it all, the persons may be days.
type Trial struct {
	Part    string       `json:"part,omitzero"`   // what was read
	Person  string       `json:"person,omitzero"` // who read it
	Reading units.Length `json:"reading"`         // a size or a deviation; all of one study are the same
}

// Where readings differ from each other, from the gauge outwards.
const (
	repeatability = "repeatability" // the same person reads the same part again
	interaction   = "interaction"   // persons differ on one part more than on another
	person        = "person"        // persons differ on all parts alike
	part          = "part"          // parts differ
)

// A Study is what trials say of a gauge, of those who read it and of the parts.
type Study struct {
	Trials   int          `json:"trials"`   // how many readings
	Balanced bool         `json:"balanced"` // every person read every part equally often
	Mean     units.Length `json:"mean"`     // of all readings
	Table    []Row        `json:"table"`    // analysis of variance, part first

	Repeatability Component `json:"repeatability"` // of one reading; goes into bore.Gauge
	Interaction   Component `json:"interaction,omitzero"`
	Person        Component `json:"person,omitzero"` // without the interaction
	Part          Component `json:"part,omitzero"`
	// Sums: person and interaction; that and repeatability; that and the parts. What came out below
	// zero counts for nothing in them.
	Reproducibility Component `json:"reproducibility,omitzero"`
	Gauge           Component `json:"gauge"`
	Total           Component `json:"total"`

	// Unseen is what the trials cannot show, however they come out: "person", where one read; "part", where one was
	// read; "interaction", where nobody read a part again (it is then in the repeatability). Absent is not zero.
	Unseen []string `json:"unseen,omitzero"`
}

// A Row is a line of the analysis of variance.
type Row struct {
	MeanSquare
	F float64 `json:"f,omitzero"` // ratio against what it would be without this source; 0 where there is nothing to hold it against
	P float64 `json:"p,omitzero"` // probability from 0 to 1, good to 1e-9, of an F as large or larger if the source were nil
}

// Analyse works out a study by analysis of variance, all sources random: from one ring read ten times
// up to parts × persons × repeats, crossed. Not every person needs to have read every part
// equally often, nor at all, as long as persons are tied together by parts that they share.
//
// Unequal numbers are treated by Henderson's third method: the parts' mean square is adjusted for
// persons, the persons' for parts, the interaction's for both, and each is set equal to what it
// would be on average. Equal numbers then give the textbook's formulas. The order of trials does
// not matter here: for that ask [DriftOf].
//
// Trials without a repeat of any kind, persons without a part in common, or more than 1,000 trials
// are ErrTrials; a reading beyond ±units.MaxLength is units.ErrRange.
func Analyse(trials []Trial) (Study, error) {
	d, err := arrange(trials)
	if err != nil {
		return Study{}, err
	}
	squares, err := d.meanSquares()
	if err != nil {
		return Study{}, err
	}
	s := Study{Trials: d.n, Balanced: d.balanced}
	if s.Mean, err = units.Of(d.mean, units.Picometre); err != nil {
		return Study{}, fmt.Errorf("study: mean: %w", err)
	}
	s.Mean += d.origin
	for _, c := range [...]struct {
		of       string
		to       *Component
		variance combination
	}{
		{repeatability, &s.Repeatability, squares.repeatability},
		{interaction, &s.Interaction, squares.interaction},
		{person, &s.Person, squares.person},
		{part, &s.Part, squares.part},
		{"", &s.Reproducibility, sum(squares.interaction, squares.person)},
		{"", &s.Gauge, sum(squares.repeatability, squares.interaction, squares.person)},
		{"", &s.Total, sum(squares.repeatability, squares.interaction, squares.person, squares.part)},
	} {
		if c.variance != nil {
			if *c.to, err = c.variance.component(); err != nil {
				return Study{}, err
			}
		} else if c.of != "" { // sums have no name
			s.Unseen = append(s.Unseen, c.of)
		}
	}
	s.Table, err = squares.table()
	return s, err
}

// sum adds variances, those below zero counting for nothing unless there are no others.
func sum(variances ...combination) combination {
	var all, kept combination
	for _, q := range variances {
		if v, _ := q.variance(); v >= 0 {
			kept = kept.plus(q)
		}
		all = all.plus(q)
	}
	if len(kept) > 0 {
		return kept
	}
	return all
}

// Use is what a gauge is used for, which decides what of its doubt counts.
type Use int8

// Uses. A size has the persons in it; a difference of two readings by one person, such as ovality
// or taper, has not, and has everything else twice.
const (
	Sizes Use = iota
	Differences
)

var useNames = [...]string{"sizes", "differences"}

// String returns the name.
func (u Use) String() string { return enum.Name(u, useNames[:]) }

// Doubt returns the standard uncertainty that the study finds in the mean of n readings of one place,
// or in the difference of two such means; n below 1 is taken as 1. Its expanded uncertainty, for
// differences, is the least that the gauge tells apart. Repeats lessen the repeatability alone.
//
// It holds what the study has seen: the setting ring, temperatures and the dial's scale come on
// top, and so does what stands in Unseen. The zero Study has seen nothing, and is ErrTrials, not
// exact; other errors are those of [uncertainty.Budget.Estimate].
func (s Study) Doubt(u Use, n int) (uncertainty.Estimate, error) {
	if _, err := enum.Marshal(u, useNames[:]); err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("study: doubt: %w", err)
	}
	if s.Trials == 0 && s.Repeatability.Std == 0 {
		return uncertainty.Estimate{}, fmt.Errorf("study: doubt of no study: %w", ErrTrials)
	}
	component := func(of string, c Component, sensitivity float64) uncertainty.Component {
		return uncertainty.Component{Name: of, Std: c.Std.In(units.Micrometre), DoF: c.DoF, Sensitivity: sensitivity, Unit: "µm"}
	}
	own, persons := 1.0, 1.0
	if u == Differences {
		own, persons = math.Sqrt2, 0
	}
	b := uncertainty.Budget{Components: []uncertainty.Component{
		component(repeatability, s.Repeatability, own/math.Sqrt(float64(max(n, 1)))),
		component(interaction, s.Interaction, own),
		component(person, s.Person, persons),
	}}
	return b.Estimate(0, units.Micrometre)
}

// Repeats returns how many readings of each place would do for an expanded uncertainty, of 95 %
// coverage, of at most most: of sizes or of differences. 0 stands for none up to 100: what
// repeats do not lessen, such as the persons, is too much by itself. Common practice wants most to
// be a quarter of what is allowed, half the width of a window or the greatest difference.
//
// Errors are those of [Study.Doubt].
func (s Study) Repeats(u Use, most units.Length) (int, error) {
	for n := 1; n <= 100; n++ {
		e, err := s.Doubt(u, n)
		if err != nil {
			return 0, err
		}
		expanded, err := e.Expanded(0.95)
		if err != nil {
			return 0, err
		}
		if expanded <= most {
			return n, nil
		}
	}
	return 0, nil
}

// Categories returns into how many groups the gauge can sort parts like those of the study: 1.41
// times the parts' standard deviation over the gauge's, cut to a whole number, by convention of
// such studies. 2 tells large from small, 5 is commonly wanted of a gauge that watches a process. It
// is 0 where parts do not differ more than the gauge, and where the study cannot tell: no part
// but one was read, or the gauge's deviation came out as zero.
func (s Study) Categories() int {
	return int(min(max(0, 1.41*s.Part.Std.In(s.Gauge.Std)), math.MaxInt32))
}
