// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// ErrJob is what every [Faults] matches with [errors.Is].
var ErrJob = errors.New("job cannot be used")

// A Fault is one thing wrong with a job.
type Fault struct {
	Path  string // where in the job: "cylinders[1].readings[3].diameter"; "" is the whole of it
	Value string // what stands there, as JSON, cut short where it is long
	Want  string // what is wrong with it and what was allowed
}

// String returns the fault in one line: path, value and what was allowed.
func (f Fault) String() string {
	path := f.Path
	if path == "" {
		path = "job"
	}
	if f.Value == "" {
		return path + ": " + f.Want
	}
	return path + ": " + f.Value + ": " + f.Want
}

// Faults is every fault of a job, in the order of the file. It is an error that matches ErrJob.
type Faults []Fault

// Error returns the faults, one a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.String()
	}
	return strings.Join(lines, "\n")
}

// Is reports whether target is ErrJob.
func (fs Faults) Is(target error) bool { return target == ErrJob }

// add notes a fault.
func (fs *Faults) add(path, value, want string, args ...any) {
	*fs = append(*fs, Fault{Path: path, Value: shorten(value), Want: fmt.Sprintf(want, args...)})
}

// err returns the faults as an error, or nil where there is none.
func (fs Faults) err() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}

// shorten cuts a value to what fits a line.
func shorten(s string) string {
	const most = 60
	if len(s) <= most {
		return s
	}
	cut := most
	for cut > 0 && s[cut]&0xC0 == 0x80 { // not inside a rune
		cut--
	}
	return s[:cut] + "…"
}

// quote writes a string of the job so that nothing in it can move the cursor or hide.
func quote(s string) string { return strconv.QuoteToGraphic(s) }
