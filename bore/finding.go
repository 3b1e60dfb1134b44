// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"

	"borewright.example/internal/enum"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Limit is one of the [Limits].
type Limit int8

// The limits, in the order in which they are judged.
const (
	LimitNew Limit = iota
	LimitService
	LimitOvality
	LimitTaper
	LimitSpread
	LimitTrueOvality
	LimitChoke
)

var limitNames = []string{"new bore", "service limit", "ovality", "taper", "greatest minus least", "true ovality", "choke"}

// String returns the name of the limit, "service limit".
func (l Limit) String() string { return enum.Name(l, limitNames) }

// MarshalText returns the text of [Limit.String]; a value that has none is [units.ErrUnknownName].
func (l Limit) MarshalText() ([]byte, error) { return enum.Marshal(l, limitNames) }

// UnmarshalText reads the text of [Limit.String]. On error, [units.ErrUnknownName], the receiver keeps
// its value.
func (l *Limit) UnmarshalText(text []byte) error { return enum.Unmarshal(l, text, limitNames) }

// A Finding is the bore held against one limit. Its Subject says which and where, in millimetres:
// "ovality at 12 mm".
type Finding struct {
	uncertainty.Finding
	Limit Limit        `json:"limit"`          // what was judged
	Depth units.Length `json:"depth,omitzero"` // of the plane with the ovality that decides
	Axis  Axis         `json:"axis,omitzero"`  // along which lies the taper or choke that decides
	// From and To are the depths between which it lies. Between says that it is no taper from end to
	// end but the greatest difference of two depths along the axis, a belly or waist, which is held
	// against the limit on taper where none on greatest minus least covers it.
	From    units.Length `json:"from,omitzero"`
	To      units.Length `json:"to,omitzero"`
	Between bool         `json:"between,omitzero"`
	AtDeck  bool         `json:"at_deck,omitzero"` // the limit is on a taper larger at the deck alone
	// NotMeasured says that the readings cannot show it: Measured is the zero Estimate, the
	// verdict Undecided. No number of repeats would settle it; other readings would.
	NotMeasured bool `json:"not_measured,omitzero"`
}

func (f Finding) subject() string {
	name := f.Limit.String()
	if f.Limit == LimitTaper && f.AtDeck {
		name += " larger at the deck"
	}
	switch {
	case f.NotMeasured:
		return name + ", not measured"
	case f.Limit == LimitOvality || f.Limit == LimitTrueOvality:
		return name + " at " + f.Depth.String()
	case f.Between:
		return fmt.Sprintf("%s, as a difference from %v to %v, %s axis", name, f.From, f.To, f.Axis)
	case f.Limit == LimitTaper || f.Limit == LimitChoke:
		return name + ", " + f.Axis.String() + " axis"
	}
	return name
}
