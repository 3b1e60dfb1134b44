// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode"

	"borewright.example/units"
)

// What a table may be at most.
const (
	mostCSVBytes = 1 << 20
	mostCSVRows  = 10_000
)

// ReadCSV reads a table of readings, separated by commas (RFC 4180), whose first row names the
// columns, in any order and case:
//
//	depth       from the deck
//	axis        thrust, pin, or an angle from the thrust axis
//	diameter    as the gauge showed it; or instead:
//	deviation   as the dial showed it
//	confirmed   yes where a reading far from its fellows was taken again (the column may be absent)
//
// A column's unit may stand behind its name, "depth (mm)", "depth [mm]" or "depth mm", and then
// serves its bare numbers; a cell with a unit of its own keeps it. A number with no unit at all is
// refused. A length that is no whole number of picometres, such as the binary tail that spreadsheets print
// (67.10499999999999999), is the nearest one. Rows with nothing in them and lines that begin with # are passed over.
//
// The gauge gives the setting size and the way the dial runs; it is wanted where a column holds deviations.
//
// All that is wrong with the cells is reported at once, each with its line and column.
// A table without its columns, with one twice or unknown, of more than 10,000 rows or beyond
// 1 MiB is ErrCSV; one without rows is ErrNoReadings.
func ReadCSV(r io.Reader, g Gauge) ([]Reading, error) {
	limited := &io.LimitedReader{R: r, N: mostCSVBytes + 1}
	in := bufio.NewReader(limited)
	if mark, _ := in.Peek(len(byteOrderMark)); string(mark) == byteOrderMark {
		_, _ = in.Discard(len(byteOrderMark)) // as spreadsheets write; it was peeked at, so it is there
	}
	table := csv.NewReader(in)
	table.Comment, table.TrimLeadingSpace, table.FieldsPerRecord, table.ReuseRecord = '#', true, -1, true
	var rs []Reading
	var faults []error
	var cs []column
	for rows := 0; ; rows++ {
		row, err := table.Read()
		switch {
		case limited.N == 0:
			return nil, fmt.Errorf("bore: %w: more than %d bytes", ErrCSV, mostCSVBytes)
		case errors.Is(err, io.EOF) && rows == 0:
			return nil, fmt.Errorf("bore: %w: no row that names the columns", ErrCSV)
		case errors.Is(err, io.EOF) && faults != nil:
			return nil, errors.Join(faults...)
		case errors.Is(err, io.EOF) && rs == nil:
			return nil, fmt.Errorf("bore: table of readings: %w", ErrNoReadings)
		case errors.Is(err, io.EOF):
			return rs, nil
		case rows > mostCSVRows:
			return nil, fmt.Errorf("bore: %w: more than %d rows", ErrCSV, mostCSVRows)
		case err != nil:
			return nil, fmt.Errorf("bore: %w: %w", ErrCSV, err)
		case rows == 0:
			if cs, err = columns(row); err != nil {
				return nil, err
			}
			continue
		case empty(row):
			continue
		}
		line, _ := table.FieldPos(0)
		reading, errs := g.reading(row, cs)
		for _, err := range errs {
			faults = append(faults, fmt.Errorf("bore: line %d: %w", line, err))
		}
		rs = append(rs, reading)
	}
}

const byteOrderMark = "\ufeff"

func empty(row []string) bool {
	return !slices.ContainsFunc(row, func(cell string) bool { return strings.TrimSpace(cell) != "" })
}

// A column is what a column holds and the unit of its bare numbers, empty where the cells have
// their own.
type column struct{ name, unit string }

const (
	depthColumn     = "depth"
	axisColumn      = "axis"
	diameterColumn  = "diameter"
	deviationColumn = "deviation"
	confirmedColumn = "confirmed"
)

// columns reads the row that names the columns.
func columns(row []string) ([]column, error) {
	if len(row) == 1 {
		return nil, fmt.Errorf("bore: %w: one column, %.40q: want several, separated by commas", ErrCSV, row[0])
	}
	cs := make([]column, len(row))
	seen := map[string]bool{}
	for i, cell := range row {
		text := strings.TrimSpace(cell)
		n := strings.IndexFunc(text, func(r rune) bool { return !unicode.IsLetter(r) })
		if n < 0 {
			n = len(text)
		}
		c := column{strings.ToLower(text[:n]), strings.Trim(text[n:], " ()[]/")}
		var err error
		switch c.name {
		case depthColumn, diameterColumn, deviationColumn:
			if c.unit != "" {
				_, err = units.ParseLength("1 " + c.unit)
			}
		case axisColumn:
			if c.unit != "" {
				_, err = units.ParseAngle("1 " + c.unit)
			}
		case confirmedColumn:
		default:
			err = units.ErrSyntax
		}
		if err != nil {
			return nil, fmt.Errorf("bore: %w: column %q: want depth, axis, diameter or deviation, confirmed, with a unit: %w", ErrCSV, text, err)
		}
		if seen[c.name] {
			return nil, fmt.Errorf("bore: %w: column %q twice", ErrCSV, c.name)
		}
		seen[c.name], cs[i] = true, c
	}
	if !seen[depthColumn] || !seen[axisColumn] || seen[diameterColumn] == seen[deviationColumn] {
		return nil, fmt.Errorf("bore: %w: want the columns depth, axis, and either diameter or deviation", ErrCSV)
	}
	return cs, nil
}

// reading reads a row.
func (g Gauge) reading(row []string, cs []column) (r Reading, faults []error) {
	if len(row) != len(cs) {
		return r, []error{fmt.Errorf("%d cells for %d columns: %w", len(row), len(cs), ErrCSV)}
	}
	for i, col := range cs {
		cell := strings.TrimSpace(row[i])
		var err error
		switch col.name {
		case depthColumn:
			r.Depth, err = nearest(cell, col.unit)
		case diameterColumn:
			r.Diameter, err = nearest(cell, col.unit)
		case deviationColumn:
			var d units.Length
			if d, err = nearest(cell, col.unit); err == nil {
				r.Diameter, err = g.Diameter(d)
			}
		case axisColumn:
			err = r.Axis.UnmarshalText([]byte(withUnit(cell, col.unit)))
		case confirmedColumn:
			switch strings.ToLower(cell) {
			case "yes":
				r.Confirmed = true
			case "", "no":
			default:
				err = fmt.Errorf("%q: want yes, no or nothing: %w", cell, ErrCSV)
			}
		}
		if err != nil {
			faults = append(faults, fmt.Errorf("%s: %w", col.name, err))
		}
	}
	if faults == nil {
		if err := r.validate(); err != nil {
			faults = append(faults, err)
		}
	}
	return r, faults
}

// nearest reads a length, to the nearest picometre, from a cell that may borrow the unit of its column.
func nearest(cell, unit string) (units.Length, error) {
	l, err := units.ParseLength(withUnit(cell, unit))
	if errors.Is(err, units.ErrInexact) {
		err = nil
	}
	return l, err
}
