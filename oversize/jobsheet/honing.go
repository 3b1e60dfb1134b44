// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Honed is how far the honing of one cylinder has got. Read it at one depth and along one axis, the
// gauge set as for the survey.
type Honed struct {
	Start  HonedSize `json:"start"`           // before the first pass
	Passes []Pass    `json:"passes,omitzero"` // made so far
}

// A HonedSize is a diameter read while the cylinder was at a temperature.
type HonedSize struct {
	Diameter units.Length      `json:"diameter"` // as read, not yet brought to 20 °C
	At       units.Temperature `json:"at"`       // of the cylinder then
}

// A Pass is a stretch of honing without stopping, and the size after it.
type Pass struct {
	Lasts Duration  `json:"lasts"` // "20s", "1m30s"
	After HonedSize `json:"after"` // once it has stopped
}

// A Duration is a time with its unit in the text: "20s", "1m30s".
type Duration struct{ time.Duration }

// MarshalText returns the text of [time.Duration.String].
func (d Duration) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads a text as [time.ParseDuration] does. On error the receiver keeps its value.
func (d *Duration) UnmarshalText(text []byte) error {
	v, err := time.ParseDuration(string(text))
	if err != nil {
		return fmt.Errorf("want a time such as \"20s\" or \"1m30s\"")
	}
	d.Duration = v
	return nil
}

// nextPasses adds, for each cylinder that is being honed to a size, what the next pass may be.
func (s *Sheet) nextPasses() error {
	metal, _, err := s.Job.Engine.part()
	if err != nil {
		return err
	}
	t := s.Job.Tools
	for i := range s.Cylinders {
		c, h, choice := &s.Cylinders[i], s.Job.Cylinders[i].Honing, s.Choice.Cylinders[i]
		if h.Start == (HonedSize{}) {
			continue
		}
		if choice.Aim == 0 || s.waiting() {
			s.omit("the next pass of cylinder "+c.Name, "there is no size to hone to yet")
			continue
		}
		read := func(r HonedSize) hone.Reading {
			// The doubt of one size by this gauge is that of the survey.
			return hone.Reading{Diameter: uncertainty.Estimate{Value: r.Diameter, Std: c.Bore.Largest.Size.Std, DoF: c.Bore.Largest.Size.DoF}, At: r.At}
		}
		z := hone.Sizing{
			Metal: metal, Finish: choice.Finish, Risk: s.Job.Risk.Accept,
			Trial: t.TrialPass.Duration, Longest: t.LongestPass.Duration, Start: read(h.Start),
		}
		for _, p := range h.Passes {
			z.Passes = append(z.Passes, hone.Pass{Lasts: p.Lasts.Duration, After: read(p.After)})
		}
		if c.Pass, err = z.Next(); err != nil {
			s.omit("the next pass of cylinder "+c.Name, "%v", err)
		}
	}
	return nil
}
