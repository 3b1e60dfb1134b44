// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/units"
)

// A Phase is one stretch of honing with one setting: a main phase, say, and a last one that
// strokes faster.
type Phase struct {
	Setting Setting      `json:"setting,omitzero"` // all of it is used
	Stock   units.Length `json:"stock,omitzero"`   // what it takes off the radius: half of what the diameter grows
	Groove  units.Length `json:"groove,omitzero"`  // how deep its lines are; 0 where it is not known
}

// A Trace is what is left of the lines of a phase when all phases are done.
type Trace struct {
	Crosshatch Crosshatch   `json:"crosshatch,omitzero"` // that the phase draws
	Later      units.Length `json:"later,omitzero"`      // radial stock that the phases after it take
	Left       units.Length `json:"left,omitzero"`       // depth left of its grooves; 0 where they are gone or it is not known
	// Gone says that later stock reaches down to the ground of the grooves. Assumed says that they are only taken
	// to stay: their depth is not given.
	Gone    bool `json:"gone,omitzero"`
	Assumed bool `json:"assumed,omitzero"`
}

// Traces returns what is left of each phase, in order. Lines of an earlier phase are gone only
// where the later stock, off the radius, reaches their depth; else both crosshatches stand on
// the wall, whatever the last setting was. The lines of the last phase stay.
//
// No phases, a negative stock or groove, and stock beyond 10 m in all are errors.
func Traces(phases []Phase) ([]Trace, error) {
	if len(phases) == 0 {
		return nil, fmt.Errorf("hone: phases: %w", units.ErrNotGiven)
	}
	ts := make([]Trace, len(phases))
	var later units.Length
	for i := len(phases) - 1; i >= 0; i-- {
		p := phases[i]
		c, err := p.Setting.Crosshatch()
		if err != nil {
			return nil, fmt.Errorf("hone: phase %d: %w", i+1, err)
		}
		t := Trace{Crosshatch: c, Later: later, Left: max(0, p.Groove-later)}
		switch {
		case p.Stock < 0 || p.Stock > units.MaxLength-later:
			return nil, fmt.Errorf("hone: phase %d: stock %v: %w: want 0 or more, up to %v in all", i+1, p.Stock, units.ErrRange, units.MaxLength)
		case p.Groove < 0 || p.Groove > units.MaxLength:
			return nil, fmt.Errorf("hone: phase %d: groove %v: %w: want 0 or more, up to %v", i+1, p.Groove, units.ErrRange, units.MaxLength)
		case i == len(phases)-1:
		case p.Groove == 0:
			t.Assumed = true
		case later >= p.Groove:
			t.Gone = true
		}
		ts[i] = t
		later += p.Stock
	}
	return ts, nil
}

const maxSeconds = 24 * 60 * 60
