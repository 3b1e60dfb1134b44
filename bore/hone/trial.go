// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"time"

	"borewright.example/units"
)

// A Trial is a stretch of honing whose stock was measured, to reckon others by.
type Trial struct {
	Setting Setting       `json:"setting,omitzero"` // all of it is used
	Lasts   time.Duration `json:"time_ns,omitzero"` // in nanoseconds, above 0, up to a day
	Took    units.Length  `json:"took,omitzero"`    // off the radius: half of what the diameter grew
}

// Stock returns what a phase at another setting takes off the radius in so long, for [Phase.Stock]: by Preston's
// law metal goes with pressure, speed and time, so that it is
//
//	Took · (resultant speed · time of the phase)/(resultant speed · time of the trial)
//
// It holds for the same wall and tool, stones as sharp, as much oil, and the same pressure or load; strokes longer
// or shorter than those of the trial spread the metal otherwise along the wall ([Setting.Removal]), and stones that
// glaze take less from minute to minute. Another grit wants a trial of its own.
//
// No stock or time is [units.ErrNotGiven], a time below 0 or of more than a day, or a stock beyond 10 m,
// [units.ErrRange]; other errors are those of every [Setting].
func (t Trial) Stock(s Setting, lasts time.Duration) (units.Length, error) {
	was, err := t.Setting.resultant()
	if err != nil {
		return 0, fmt.Errorf("hone: trial: %w", err)
	}
	will, err := s.resultant()
	if err := firstError(err, checkLength("stock of the trial", t.Took), checkTime("trial", t.Lasts), checkTime("phase", lasts)); err != nil {
		return 0, err
	}
	took := t.Took.In(units.Metre) * (float64(will) * lasts.Seconds()) / (float64(was) * t.Lasts.Seconds())
	return units.Of(took, units.Metre)
}
