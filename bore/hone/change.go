// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

// A Lever is a field of a [Setting] that can be moved to change the crosshatch.
type Lever int8

// The levers. The zero value is none of them.
const (
	NoLever Lever = iota
	SpindleLever
	StrokingLever
	StrokeLever
)

var leverNames = []string{"none", "spindle", "stroking", "stroke"}

// String returns "spindle", "stroking", "stroke" or "none".
func (l Lever) String() string { return enum.Name(l, leverNames) }

// MarshalText returns the text of [Lever.String]. A value that is no lever is [units.ErrUnknownName].
func (l Lever) MarshalText() ([]byte, error) { return enum.Marshal(l, leverNames) }

// UnmarshalText reads the text of [Lever.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (l *Lever) UnmarshalText(text []byte) error { return enum.Unmarshal(l, text, leverNames) }

// A Change is one lever moved, the others left, so that the wanted crosshatch is met exactly.
// Where Against is not [NoCaution] the change is told for its size only and is not advised.
type Change struct {
	Lever   Lever   `json:"lever,omitzero"`   // what is moved
	Setting Setting `json:"setting,omitzero"` // with the lever moved
	Against Caution `json:"against,omitzero"`
}

// String returns "spindle 110.1 rev/min instead", and why not where it is not advised.
func (c Change) String() string {
	var to string
	switch c.Lever {
	case SpindleLever:
		to = rateText(c.Setting.Spindle, "rev/min")
	case StrokingLever:
		to = c.Setting.Stroking.short()
	case StrokeLever:
		to = c.Setting.Stroke.Format(units.Millimetre, 1)
	}
	s := fmt.Sprintf("%v %s instead", c.Lever, to)
	if c.Against != NoCaution {
		s += " (not advised: " + c.Against.String() + ")"
	}
	return s
}

// changes returns what would leave w, moving one lever of s at a time. A lever that would have
// to go beyond what a workshop can have is left out.
func (h OnHand) changes(s Setting, w Crosshatch) []Change {
	var cs []Change
	if n, err := s.SpindleFor(w); err == nil {
		c := Change{Lever: SpindleLever, Setting: s}
		c.Setting.Spindle = n
		cs = append(cs, c)
	}
	if k, err := s.StrokingFor(w); err == nil {
		c := Change{Lever: StrokingLever, Setting: s}
		c.Setting.Stroking = s.Stroking.like(k.Cycles())
		if tooFast(k, h.Drive) {
			c.Against = HandTooFast
		}
		cs = append(cs, c)
	}
	if l, err := s.StrokeFor(w); err == nil {
		c := Change{Lever: StrokeLever, Setting: s, Against: StrokeIsSet}
		c.Setting.Stroke = l
		cs = append(cs, c)
	}
	return cs
}
