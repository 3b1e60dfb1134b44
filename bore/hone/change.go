// SPDX-License-Identifier: BSD-3-Clause

package hone

import "borewright.example/units"

// A Change is a setting that meets the wanted crosshatch exactly by one of its spindle, stroking and stroke,
// which alone differs from what can be had. Where Against warns of something the change is told for its
// size only and is not advised.
type Change struct {
	Setting Setting `json:"setting,omitzero"` // with the one changed
	Against Caution `json:"against,omitzero"`
}

// toldFrom returns "110.1 rev/min instead", and that it is not advised.
func (c Change) toldFrom(best Setting) string {
	var to string
	switch s := c.Setting; {
	case s.Spindle != best.Spindle:
		to = rateText(s.Spindle, "rev/min")
	case s.Stroking != best.Stroking:
		to = s.Stroking.short()
	default:
		to = "a stroke of " + s.Stroke.Format(units.Millimetre, 1)
	}
	if to += " instead"; c.Against != (Caution{}) {
		to += ", not advised"
	}
	return to
}

// changes returns what would leave w, moving one of spindle, stroking and stroke of s at a time.
// One that would have to go beyond what a workshop can have is left out.
func (h OnHand) changes(s Setting, w Crosshatch) []Change {
	var cs []Change
	if n, err := s.SpindleSpeedFor(w); err == nil {
		c := Change{Setting: s}
		c.Setting.Spindle = n
		cs = append(cs, c)
	}
	if k, err := s.StrokingRateFor(w); err == nil {
		c := Change{Setting: s}
		c.Setting.Stroking = s.Stroking.like(k.Cycles())
		if tooFast(k, h.Drive) {
			c.Against = handTooFast
		}
		cs = append(cs, c)
	}
	if l, err := s.StrokeLengthFor(w); err == nil {
		c := Change{Setting: s, Against: strokeIsSet}
		c.Setting.Stroke = l
		cs = append(cs, c)
	}
	return cs
}
