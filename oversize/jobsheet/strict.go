// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"encoding"
	"errors"
	"slices"
	"strings"

	"borewright.example/internal/enum"
	"borewright.example/oversize/jobsheet/internal/strictjson"
	"borewright.example/units"
)

// maxBytes is the largest job file that is read. It is data from a stranger.
const maxBytes = 1 << 20

// strict says how a job is read, and finds the words for what its quantities and choices refuse.
func strict() strictjson.Reader {
	return strictjson.Reader{MostBytes: maxBytes, MostDepth: 32, MostText: 200, Example: example, Explain: explain}
}

// explain says what an error of a quantity or a choice asks for; the value and its place stand beside it.
func explain(err error) string {
	var p *units.ParseError
	var name *enum.NameError
	switch {
	case errors.As(err, &p):
		want := p.Err.Error()
		if p.Mend != "" {
			want += ": " + p.Mend
		}
		return want
	case errors.As(err, &name):
		given := slices.DeleteFunc(name.Names, func(s string) bool { return s == "not given" || s == "none" })
		return "want one of " + strings.Join(given, ", ")
	}
	return err.Error()
}

// example returns a text that u reads.
func example(u encoding.TextUnmarshaler) string {
	switch u.(type) {
	case *units.Length:
		return `"72.031 mm" or "2.8360 in"`
	case *units.Volume:
		return `"38 cm³"`
	case *units.Frequency:
		return `"120 rev/min"`
	case *units.Limits:
		return `"72.000 to 72.020 mm"`
	}
	return "the examples in the documentation show"
}

// ErrJob is what every [Faults] matches with [errors.Is].
var ErrJob = errors.New("job cannot be used")

// A Fault is one thing wrong with a job.
type Fault struct {
	Path         string // where in the job: "cylinders[1].readings[3].diameter"; "" is the whole of it
	Value        string // what stands there as it was typed, cut short where it is long; "" where nothing does
	Want         string // what is wrong with it and what was allowed
	Err          error  // what lies beneath it, such as the error of a room, if anything does
	Line, Column int    // in the file, from 1; 0 where it does not stand there
}

// String returns the fault in one line: path, value and what was allowed.
func (f Fault) String() string {
	text := strictjson.Fault(f).String()
	if f.Path == "" {
		text = "job: " + text
	}
	return text
}

// Faults is every fault of a job, in the order of the file. It is an error that matches ErrJob, and
// whatever lies beneath a fault.
type Faults []Fault

// Error returns the faults, one a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns [ErrJob], and what lies beneath the faults.
func (fs Faults) Unwrap() []error {
	errs := []error{ErrJob}
	for _, f := range fs {
		if f.Err != nil {
			errs = append(errs, f.Err)
		}
	}
	return errs
}

// faults returns what is wrong with a document as an error, or nil where nothing is.
func faults(d *strictjson.Document) error {
	var fs Faults
	for _, f := range d.Faults() {
		fs = append(fs, Fault(f))
	}
	if fs == nil {
		return nil
	}
	return fs
}

// fault returns what a room refused as a fault of the job.
func fault(path string, err error) error {
	return Faults{{Path: path, Want: err.Error(), Err: err}}
}
