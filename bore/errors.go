// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"errors"
	"fmt"
	"slices"

	"borewright.example/units"
)

// Why readings, or a question about them, were refused. Test with [errors.Is].
var (
	// ErrNoReadings: nothing was measured, or nothing at the place asked about.
	ErrNoReadings = errors.New("no readings")
	// ErrReading: a reading that no bore can have.
	ErrReading = errors.New("impossible reading")
	// ErrSlippedDigit: a reading so far from its fellows that a digit has probably slipped.
	ErrSlippedDigit = errors.New("far from its fellows")
	// ErrPort: a reading with an anvil in a port.
	ErrPort = errors.New("anvil in a port")
	// ErrGauge: the description of the gauge does not hang together.
	ErrGauge = errors.New("gauge")
	// ErrLayout: a length, ring travel or port that no bore can have.
	ErrLayout = errors.New("layout of the bore")
	// ErrLimits: limits or allowances that no bore could be judged by.
	ErrLimits = errors.New("limits")
	// ErrAxes: too few axes, or axes too close together, for the form asked for.
	ErrAxes = errors.New("axes cannot carry this form")
	// ErrSurveys: surveys from which no rate of wear follows.
	ErrSurveys = errors.New("no rate of wear")
	// ErrCSV: a table that is not laid out as readings.
	ErrCSV = errors.New("table of readings")
)

// enumName returns the name of an enumeration's value, or the number where it has none.
func enumName[E ~int8](e E, names []string) string {
	if i := int(e); i >= 0 && i < len(names) {
		return names[i]
	}
	return fmt.Sprintf("value %d", e)
}

// marshalEnum returns the name of an enumeration's value; a value without one is an error.
func marshalEnum[E ~int8](e E, names []string) ([]byte, error) {
	if i := int(e); i < 0 || i >= len(names) {
		return nil, fmt.Errorf("bore: value %d: want one of %q: %w", e, names, units.ErrRange)
	}
	return []byte(names[e]), nil
}

// unmarshalEnum sets *e to the value whose name is text, or leaves it alone.
func unmarshalEnum[E ~int8](e *E, names []string, text []byte) error {
	i := slices.Index(names, string(text))
	if i < 0 {
		return fmt.Errorf("bore: %q: want one of %q: %w", text, names, units.ErrSyntax)
	}
	*e = E(i)
	return nil
}
