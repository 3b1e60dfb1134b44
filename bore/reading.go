// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// Why readings or a gauge were refused. Test with [errors.Is].
var (
	// ErrNoReadings: nothing was measured.
	ErrNoReadings = errors.New("no readings")
	// ErrReading: a reading that no bore can have.
	ErrReading = errors.New("impossible reading")
	// ErrSlippedDigit: a reading so far from its fellows that a digit has probably slipped.
	ErrSlippedDigit = errors.New("far from its fellows")
	// ErrGauge: the description of the gauge does not hang together.
	ErrGauge = errors.New("gauge")
	// ErrLimits: limits that no bore could be judged by.
	ErrLimits = errors.New("limits")
)

// A Reading is one diameter, as the gauge showed it: how far below the deck, along which axis,
// and how large. Readings at the same depth and axis are repeats of one place.
type Reading struct {
	Depth    units.Length // from the deck, positive downwards
	Axis     units.Angle  // from the thrust axis; 180° apart is the same axis
	Diameter units.Length // as shown, not yet brought to 20 °C
	// Confirmed says that a reading far from its fellows was taken again and is right.
	Confirmed bool
}

// The two axes that every manual names. The thrust axis stands square to the piston pin; wear
// is usually greatest along it.
const (
	ThrustAxis units.Angle = 0
	PinAxis                = 90 * units.Degree
)

// ParseAxis reads an axis: "thrust", "pin", or an angle from the thrust axis, "45°".
func ParseAxis(s string) (units.Angle, error) {
	switch s {
	case "thrust":
		return ThrustAxis, nil
	case "pin":
		return PinAxis, nil
	}
	a, err := units.ParseAngle(s)
	if err != nil {
		return 0, fmt.Errorf("bore: axis: want thrust, pin or an angle from the thrust axis: %w", err)
	}
	return a, nil
}

// FormatAxis returns "thrust", "pin" or the angle to a tenth of a degree, "45°".
func FormatAxis(a units.Angle) string {
	switch deg := math.Round(foldAxis(a).In(units.Degree)*10) / 10; deg {
	case 0, 180:
		return "thrust"
	case 90:
		return "pin"
	default:
		return units.Angle(deg * float64(units.Degree)).String()
	}
}

// axisSteps to a degree: how close two axes may lie and still be one. A millionth of a degree
// is far below any setting by hand and far above what half turns cost in rounding.
const axisSteps = 1e6

// foldAxis returns the axis from 0 up to 180°, to a millionth of a degree.
func foldAxis(a units.Angle) units.Angle {
	deg := math.Mod(a.In(units.Degree), 180)
	if deg < 0 {
		deg += 180
	}
	deg = math.Round(deg*axisSteps) / axisSteps
	if deg == 180 {
		deg = 0
	}
	return units.Angle(deg * float64(units.Degree))
}

// mostAxis is the largest angle taken as an axis, either sign: beyond a thousand turns it is a
// slip of the pen and floating point no longer holds the fraction of a turn.
const mostAxis = 1000 * 360 * units.Degree

func (r Reading) validate() error {
	switch a := float64(r.Axis); {
	case math.IsNaN(a) || math.Abs(a) > float64(mostAxis):
		return fmt.Errorf("bore: reading at %v: axis %v: want a finite angle: %w", r.Depth, a, ErrReading)
	case r.Depth < 0 || r.Depth > units.MaxLength:
		return fmt.Errorf("bore: reading at depth %v: want 0 to %v below the deck: %w", r.Depth, units.MaxLength, ErrReading)
	case r.Diameter <= 0 || r.Diameter > units.MaxLength:
		return fmt.Errorf("bore: reading at %v, %s: diameter %v: want above 0, up to %v: %w",
			r.Depth, FormatAxis(r.Axis), r.Diameter, units.MaxLength, ErrReading)
	}
	return nil
}

// slipShare is the share of the median beyond which a reading is taken for a slip: a cylinder
// worn by a fiftieth of its bore would long have stopped running.
const slipShare = 50

// checkSlips refuses unconfirmed readings far from the median.
func checkSlips(rs []Reading) error {
	ds := make([]units.Length, len(rs))
	for i, r := range rs {
		ds[i] = r.Diameter
	}
	slices.Sort(ds)
	median := ds[len(ds)/2]
	var errs []error
	for _, r := range rs {
		if (r.Diameter-median).Abs() > median/slipShare && !r.Confirmed {
			errs = append(errs, fmt.Errorf("bore: reading %v at %v, %s: more than 1/%d from the median %v; read it again, or confirm it: %w",
				r.Diameter, r.Depth, FormatAxis(r.Axis), slipShare, median, ErrSlippedDigit))
		}
	}
	return errors.Join(errs...)
}
