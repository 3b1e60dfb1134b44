// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"time"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

// A Fate is what becomes of the lines of a phase under the phases after it. The zero value is the
// one that must be reckoned with when nothing is known.
type Fate int8

// The fates.
const (
	AssumedToStay Fate = iota // depth of the grooves not given: taken as deeper than all later stock
	Stays                     // later stock does not reach down to the ground of the grooves
	Replaced                  // later stock reaches it
)

var fateNames = []string{"assumed to stay", "stays", "replaced"}

// String returns "assumed to stay", "stays" or "replaced".
func (f Fate) String() string { return enum.Name(f, fateNames) }

// MarshalText returns the text of [Fate.String]. A value that is no fate is [units.ErrUnknownName].
func (f Fate) MarshalText() ([]byte, error) { return enum.Marshal(f, fateNames) }

// UnmarshalText reads the text of [Fate.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (f *Fate) UnmarshalText(text []byte) error { return enum.Unmarshal(f, text, fateNames) }

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
	Left       units.Length `json:"left,omitzero"`       // depth left of its grooves; 0 where replaced or not known
	Fate       Fate         `json:"fate,omitzero"`
}

// Traces returns what is left of each phase, in order. Lines of an earlier phase are gone only
// where the later stock, off the radius, reaches their depth; else both crosshatches stand on
// the wall, whatever the last setting was. The lines of the last phase stay.
//
// No phases, a negative stock or groove, and stock beyond 10 m in all are errors.
func Traces(phases []Phase) ([]Trace, error) {
	if len(phases) == 0 {
		return nil, fmt.Errorf("hone: phases: %w", ErrNotGiven)
	}
	ts := make([]Trace, len(phases))
	var later units.Length
	for i := len(phases) - 1; i >= 0; i-- {
		p := phases[i]
		c, err := p.Setting.Crosshatch()
		if err != nil {
			return nil, fmt.Errorf("hone: phase %d: %w", i+1, err)
		}
		t := Trace{Crosshatch: c, Later: later, Left: max(0, p.Groove-later), Fate: Stays}
		switch {
		case p.Stock < 0 || p.Stock > units.MaxLength-later:
			return nil, fmt.Errorf("hone: phase %d: stock %v: %w: want 0 or more, up to %v in all", i+1, p.Stock, units.ErrRange, units.MaxLength)
		case p.Groove < 0 || p.Groove > units.MaxLength:
			return nil, fmt.Errorf("hone: phase %d: groove %v: %w: want 0 or more, up to %v", i+1, p.Groove, units.ErrRange, units.MaxLength)
		case i == len(phases)-1:
		case p.Groove == 0:
			t.Fate = AssumedToStay
		case later >= p.Groove:
			t.Fate = Replaced
		}
		ts[i] = t
		later += p.Stock
	}
	return ts, nil
}

// Takes returns how long so many strokes, one way each, take. A stroking that does not validate, a
// negative number and more than a day of strokes are errors.
func (k Stroking) Takes(strokes int) (time.Duration, error) {
	if err := k.Validate(); err != nil {
		return 0, err
	}
	seconds := float64(strokes) / float64(k.Strokes())
	if strokes < 0 || seconds > maxSeconds {
		return 0, fmt.Errorf("hone: %d strokes at %v: %w: want 0 or more, up to a day of them", strokes, k, units.ErrRange)
	}
	return time.Duration(seconds*float64(time.Second) + 0.5), nil
}

const maxSeconds = 24 * 60 * 60
