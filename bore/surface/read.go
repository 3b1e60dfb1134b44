// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"bufio"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"

	"borewright.example/units"
)

// mostBytes bounds the text of a profile: a million rows of two numbers.
const mostBytes = 64 << 20

// Read reads a profile from a table of two columns separated by commas (RFC 4180), whose first row names
// them with their units: x, along the trace, and z, the height out of the material.
//
//	x mm,z µm
//	0.0000,1.42
//	0.0005,1.37
//
// Numbers are exact to a picometre, or rounded to the nearest. What is no such table is ErrTable, with its
// line; the points are then taken as by [FromPoints].
func Read(r io.Reader) (Profile, error) {
	table := csv.NewReader(bufio.NewReader(io.LimitReader(r, mostBytes)))
	table.FieldsPerRecord = 2
	table.ReuseRecord = true
	table.TrimLeadingSpace = true
	head, err := table.Read()
	if errors.Is(err, io.EOF) || errors.Is(err, csv.ErrFieldCount) {
		return Profile{}, fmt.Errorf("surface: %w: want a first row of two columns separated by commas, such as x mm,z µm", ErrTable)
	}
	if err != nil {
		return Profile{}, fmt.Errorf("surface: %w: %w", ErrTable, err)
	}
	var unit [2]string
	for i, name := range [...]string{"x", "z"} {
		cell := strings.TrimPrefix(strings.TrimSpace(head[i]), "\ufeff")
		if !strings.EqualFold(cell[:min(1, len(cell))], name) {
			return Profile{}, fmt.Errorf("surface: %w: column %.20q: want %s and its unit", ErrTable, cell, name)
		}
		unit[i] = strings.Trim(cell[1:], " ()[]/")
		if _, err := units.ParseLength("1 " + unit[i]); err != nil {
			return Profile{}, fmt.Errorf("surface: %w: column %.20q: want %s and its unit: %w", ErrTable, cell, name, err)
		}
	}
	var points []Point
	for {
		row, err := table.Read()
		switch {
		case errors.Is(err, io.EOF):
			return FromPoints(points)
		case err != nil:
			return Profile{}, fmt.Errorf("surface: %w: %w", ErrTable, err)
		case len(points) == mostPoints:
			return Profile{}, fmt.Errorf("surface: more than %d rows: %w", mostPoints, ErrPoints)
		}
		var at [2]units.Length
		for i, cell := range row {
			at[i], err = units.ParseLength(strings.TrimSpace(cell) + " " + unit[i])
			if err != nil && !errors.Is(err, units.ErrInexact) {
				line, _ := table.FieldPos(i)
				return Profile{}, fmt.Errorf("surface: line %d: %w: %w", line, ErrTable, err)
			}
		}
		points = append(points, Point{at[0], at[1]})
	}
}
