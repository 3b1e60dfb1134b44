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
