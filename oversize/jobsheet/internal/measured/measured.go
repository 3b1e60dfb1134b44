// SPDX-License-Identifier: BSD-3-Clause

// Package measured reads a value with its doubt from one text, as sheets print it.
//
// "78.194 ± 0.004 mm" has a doubt of ± 0.004 mm, expanded to 95 %, "78.194 ± 0.004 mm (9 readings)" one that was worked out from
// nine readings, so that its coverage factor is Student's t of eight degrees of freedom (JCGM 100, G.3); "78.194 mm" is a
// value of which nobody said how sure it is. The coverage factor of a doubt without readings is 2, since certificates state it
// for about 95 %.
package measured

import (
	"cmp"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Value is a length with its doubt.
type Value struct {
	Value    units.Length // as measured
	Expanded units.Length // half-width that holds 95 %; 0: not said
	Readings int          // that the doubt was worked out from, 2 or more; 0: a certificate, or experience
}

// MostReadings is how many readings may stand behind a doubt.
const MostReadings = 1000

// String returns the text of a value, in millimetres.
func (v Value) String() string {
	if v.Expanded == 0 {
		return v.Value.String()
	}
	text := strings.TrimSuffix(v.Value.String(), " mm") + " ± " + v.Expanded.String()
	if v.Readings > 0 {
		text += fmt.Sprintf(" (%d readings)", v.Readings)
	}
	return text
}

// Parse reads a length, or one with its doubt. The unit behind the doubt serves both where the value has none.
func Parse(text string) (v Value, err error) {
	s, readings, counted := strings.Cut(text, "(")
	if counted {
		n, ok := strings.CutSuffix(strings.TrimSpace(readings), " readings)")
		v.Readings, err = strconv.Atoi(n)
		if !ok || err != nil || v.Readings < 2 || v.Readings > MostReadings {
			return Value{}, fmt.Errorf("want the readings behind the doubt as \"(9 readings)\", from 2 to %d", MostReadings)
		}
	}
	value, doubt, both := strings.Cut(s, "±")
	value, doubt = strings.TrimSpace(value), strings.TrimSpace(doubt)
	if both {
		if v.Expanded, err = units.ParseLength(doubt); err != nil {
			return Value{}, err
		}
		if c := value[max(len(value)-1, 0):]; c >= "0" && c <= "9" { // the unit stands behind the doubt
			value += " " + strings.TrimSpace(doubt[strings.LastIndexAny(doubt, "0123456789")+1:])
		}
	}
	if v.Value, err = units.ParseLength(value); err != nil {
		return Value{}, err
	}
	switch {
	case counted && !both:
		return Value{}, fmt.Errorf("want the doubt too: \"78.194 ± 0.004 mm (%d readings)\"", v.Readings)
	case both && v.Expanded <= 0:
		return Value{}, errors.New("want a doubt above 0, or none")
	}
	return v, nil
}

// Estimate returns the value with its standard uncertainty; where no doubt came with it, the one that is usual for such a
// value. What was not measured is the zero Estimate. A doubt out of range, which no job has, is none.
func (v Value) Estimate(usual units.Length) uncertainty.Estimate {
	if v == (Value{}) {
		return uncertainty.Estimate{}
	}
	k, dof := 2.0, 0.0
	if v.Readings > 0 {
		dof = float64(v.Readings - 1)
		k, _ = uncertainty.Coverage(0.95, dof)
	}
	std, _ := units.Of(uncertainty.FromCertificate(cmp.Or(v.Expanded, usual).In(units.Millimetre), k), units.Millimetre)
	return uncertainty.Estimate{Value: v.Value, Std: std, DoF: dof}
}
