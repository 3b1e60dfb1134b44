// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Reading is a texture at a place of the wall. Readings of one place are its repeats; a trace moved aside
// by a few millimetres is one, as two traces in one groove see the same grooves.
type Reading struct {
	Place   string  `json:"place"` // any name: "12 mm, thrust"
	Texture Texture `json:"texture"`
}

// An Instrument is what is known of the doubt of an instrument, for one reading. Its zero value is not
// known, and not "exact".
type Instrument struct {
	// Relative is the standard uncertainty as a share of the value, 0 to 1: of a certificate's ±5 % with
	// k = 2, 0.025. All readings share it, so that more of them do not help.
	Relative float64 `json:"relative,omitzero"`
	// Resolution is the last digit of a length that the instrument shows, and DigitOfShare that of Mr1 and Mr2, as a
	// share: 0.001 for 0.1 %.
	Resolution   units.Length `json:"resolution,omitzero"`
	DigitOfShare float64      `json:"digit_of_share,omitzero"`
}

// A Share is a measured share, such as a material ratio, with its standard uncertainty.
type Share struct {
	Value float64 `json:"value"`        // a fraction, 0 to 1
	Std   float64 `json:"std,omitzero"` // standard uncertainty, a fraction
	DoF   float64 `json:"dof,omitzero"` // degrees of freedom of Std; 0 = infinitely many
}

// String returns the share and its expanded uncertainty of 95 % coverage in percent, or the value alone
// where there is none: "83.6 ± 2.1 %".
func (s Share) String() string {
	k, err := uncertainty.Coverage(0.95, s.DoF)
	if err != nil || s.Std == 0 {
		return percent(s.Value)
	}
	return fmt.Sprintf("%.1f ± %.1f %%", 100*s.Value, 100*k*s.Std)
}

// A Value is a parameter of a wall: the mean of its places.
type Value struct {
	Parameter string               `json:"parameter"`       // its symbol: "Ra", "Rq", "Rz", "Rt", "Rpk", "Rk", "Rvk", "oil", "Mr1" or "Mr2"
	Length    uncertainty.Estimate `json:"length,omitzero"` // of all but Mr1 and Mr2
	Share     Share                `json:"share,omitzero"`  // of Mr1 and Mr2
	// Repeats and Places are the standard deviations of readings about their place, 0 where no place was
	// read twice, and of places about the wall: of a length in µm, of Mr1 and Mr2 as a share. They say whether
	// more repeats or more places pay.
	Repeats uncertainty.Spread `json:"repeats,omitzero"`
	Places  uncertainty.Spread `json:"places,omitzero"`

	means []float64 // of the places, in µm or as a share
}

// String returns the parameter with its doubt: "Rpk 0.231 ± 0.042 µm".
func (v Value) String() string {
	if v.isShare() {
		return v.Parameter + " " + v.Share.String()
	}
	return v.Parameter + " " + v.Length.Format(units.Micrometre)
}

func (v Value) isShare() bool { return v.Parameter == symbolMr1 || v.Parameter == symbolMr2 }

// A Wall is what readings at several places say of the texture of a wall.
type Wall struct {
	Values []Value `json:"values"` // those that every reading gives, in the order of the parameters
	Places int     `json:"places"` // how many places were read
}

// Analyse returns the texture of a wall from readings at its places. Each parameter is the mean of the
// places, each place the mean of its repeats. Its standard uncertainty holds the scatter of the places over
// the root of their number, with one degree of freedom less than places, in which that of the repeats is
// contained, and the instrument's:
//
//	u² = s²(places)/k + (relative·mean)² + (digit/√12)²
//
// From one place nothing is known of the wall's own scatter: the values then carry the doubt of the repeats
// and the instrument alone, and [Wall.Judge] leaves everything undecided.
//
// A parameter that is zero in any reading is not given, and is left out. No reading, none that all give, or
// a value that no surface has, negative or of a share above 1, is ErrReadings; an instrument that cannot be
// is [uncertainty.ErrStd].
func Analyse(readings []Reading, instrument Instrument) (Wall, error) {
	if len(readings) == 0 || len(readings) > mostReadings {
		return Wall{}, fmt.Errorf("surface: %d readings: want 1 to %d: %w", len(readings), mostReadings, ErrReadings)
	}
	for _, share := range [...]float64{instrument.Relative, instrument.DigitOfShare} {
		if !(share >= 0 && share <= 1) {
			return Wall{}, fmt.Errorf("surface: doubt of the instrument, %v: want a share of 0 to 1: %w", share, uncertainty.ErrStd)
		}
	}
	if instrument.Resolution < 0 || instrument.Resolution > units.MaxLength {
		return Wall{}, fmt.Errorf("surface: resolution %v: want 0 to %v: %w", instrument.Resolution, units.MaxLength, uncertainty.ErrStd)
	}
	index := map[string]int{}
	for _, r := range readings {
		if _, ok := index[r.Place]; !ok {
			index[r.Place] = len(index)
		}
	}
	w := Wall{Places: len(index)}
	for _, p := range symbols() {
		v := Value{Parameter: p}
		groups := make([][]float64, len(index))
		given := true
		for i, r := range readings {
			x, limit := r.Texture.length(p).In(units.Micrometre), units.MaxLength.In(units.Micrometre)
			if v.isShare() {
				x, limit = r.Texture.share(p), 1
			}
			if !(x >= 0 && x <= limit) {
				return Wall{}, fmt.Errorf("surface: reading %d at %.40q: %v is %v: want 0 to %v: %w", i+1, r.Place, p, x, limit, ErrReadings)
			}
			given = given && x > 0
			groups[index[r.Place]] = append(groups[index[r.Place]], x)
		}
		if !given {
			continue
		}
		if err := v.fill(groups, instrument); err != nil {
			return Wall{}, fmt.Errorf("surface: %v: %w", p, err)
		}
		w.Values = append(w.Values, v)
	}
	if w.Values == nil {
		return Wall{}, fmt.Errorf("surface: no parameter that all %d readings give: %w", len(readings), ErrReadings)
	}
	return w, nil
}

// mostReadings bounds the work.
const mostReadings = 10_000

// fill computes the mean of groups of repeats, one of each place, and its doubt.
func (v *Value) fill(groups [][]float64, instrument Instrument) error {
	var repeats []uncertainty.Spread
	for _, g := range groups {
		if len(g) < 2 {
			v.means = append(v.means, g[0])
			continue
		}
		s, err := uncertainty.Describe(g...)
		if err != nil {
			return err
		}
		v.means = append(v.means, s.Mean)
		repeats = append(repeats, s.Spread())
	}
	var err error
	if len(repeats) > 0 {
		if v.Repeats, err = uncertainty.Pool(repeats...); err != nil {
			return err
		}
	}
	mean, scatter := v.means[0], v.Repeats.OfMean(len(groups[0]))
	if len(v.means) > 1 {
		s, err := uncertainty.Describe(v.means...)
		if err != nil {
			return err
		}
		mean, scatter, v.Places = s.Mean, s.OfMean(), s.Spread()
	}
	digit := instrument.Resolution.In(units.Micrometre)
	if v.isShare() {
		digit = instrument.DigitOfShare
	}
	budget := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "scatter", Std: scatter.Std, Sensitivity: 1, DoF: scatter.DoF},
		{Name: "instrument", Std: instrument.Relative, Sensitivity: mean},
		{Name: "last digit", Std: uncertainty.Resolution(digit), Sensitivity: 1},
	}}
	if !v.isShare() {
		v.Length, err = budget.Estimate(um(mean), units.Micrometre)
		return err
	}
	std, dof, err := budget.Combined()
	v.Share = Share{Value: mean, Std: std, DoF: dof}
	return err
}

// outside counts the places whose mean lies outside a window, its ends in µm or as shares; NaN is no end.
func (v Value) outside(least, most float64) (n int) {
	for _, m := range v.means {
		if m < least || m > most {
			n++
		}
	}
	return n
}

var noEnd = math.NaN()
