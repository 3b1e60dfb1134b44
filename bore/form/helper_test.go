// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"encoding/csv"
	"errors"
	"math"
	"os"
	"strconv"
	"testing"

	"borewright.example/bore/form"
	"borewright.example/units"
)

const (
	pm = units.Picometre
	nm = units.Nanometre
	um = units.Micrometre
	mm = units.Millimetre
)

type failer interface {
	Helper()
	Fatal(...any)
}

// must returns v and fails on an error.
func must[T any](t failer, v T, err error) T {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func degrees(x float64) units.Angle { return units.Angle(x * float64(units.Degree)) }

// length rounds millimetres to a picometre.
func length(x float64) units.Length { return units.Length(math.Round(x * units.PerMillimetre)) }

// table reads a file of test data: its rows by column name.
func table(t failer, name string) []map[string]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment, r.FieldsPerRecord = '#', -1 // columns at the end may be left out
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, row := range rows[1:] {
		m := map[string]string{}
		for i, v := range row {
			m[rows[0][i]] = v
		}
		out = append(out, m)
	}
	return out
}

func number(t failer, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	return must(t, x, err)
}

// points reads columns x and y.
func points(t failer, name string) (x, y []float64) {
	t.Helper()
	for _, row := range table(t, name) {
		x, y = append(x, number(t, row["x"])), append(y, number(t, row["y"]))
	}
	return x, y
}

// traceOf makes a trace of points in mm, through the public door.
func traceOf(t failer, x, y []float64) form.Trace {
	t.Helper()
	ps := make([]form.Point, len(x))
	for i := range x {
		ps[i] = form.Point{X: length(x[i]), Y: length(y[i])}
	}
	tr, err := form.FromPoints(ps)
	return must(t, tr, err)
}

func near(t *testing.T, what string, got, want units.Length, tolerance float64) {
	t.Helper()
	if d := math.Abs(float64(got - want)); d > tolerance*units.PerMillimetre+1 {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// solvers are the three minimax circles.
var solvers = map[form.Reference]func(form.Trace) (form.Circle, error){
	form.MZCI: form.Trace.MinimumZone,
	form.MCCI: form.Trace.MinimumCircumscribed,
	form.MICI: form.Trace.MaximumInscribed,
}

// faults returns what [form.Circle.Check] finds wrong: that a circle which had to be searched for is
// not proved by its contacts is right.
func faults(c form.Circle, tr form.Trace) error {
	err := c.Check(tr)
	if c.Certificate.Searched && errors.Is(err, form.ErrUnproved) {
		return nil
	}
	return err
}
