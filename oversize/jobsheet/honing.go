// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"time"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
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
	Diameter units.Length      `json:"diameter"` // as the gauge shows it, as in the survey
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

// grewBack notes that a bore was read smaller in the proof than after the last pass: one of the two is
// wrong.
func (c *CylinderSheet) grewBack() error {
	if c.Proof == nil || c.Pass.Size.Value == 0 {
		return nil
	}
	last := bore.Place{Size: c.Pass.Size, Own: c.Pass.Size}
	f, err := uncertainty.Judge(last.Minus(c.Proof.Bore.Largest), units.Limits{Max: units.Picometre}, uncertainty.Risk{})
	if f.Verdict == uncertainty.Beyond {
		c.Proof.Shrunk = true
	}
	return err
}

// nextPasses adds, for each cylinder that is being honed to a size, what the next pass may be.
func (s *Sheet) nextPasses() error {
	gauge, _, err := s.Job.gauge(s.Job.Gauge)
	if err != nil {
		return err
	}
	for i := range s.Cylinders {
		c, h, choice := &s.Cylinders[i], s.Job.Cylinders[i].Honing, s.Choice.Cylinders[i]
		if h.Start == (HonedSize{}) {
			continue
		}
		part := "the next pass of cylinder " + c.Name
		switch {
		case choice.Aim == 0 || s.waiting():
			s.omit(part, "there is no size to hone to yet")
			continue
		case s.Job.Tools.Hone.FollowsWall():
			s.omit(part, "a %v follows the wall and takes no size: hone to size with rigid stones", s.Job.Tools.Hone)
			continue
		}
		start, err := h.Start.at20(gauge)
		switch {
		case err != nil:
			s.omit(part, "%v", err)
			continue
		case choice.Route == oversize.BoreOversize && start < c.Bore.Largest.Size.Value:
			s.omit(part, "it starts at %s, smaller than the worn bore: bore it first", s.Job.Units.length(start))
			continue
		}
		if c.Pass, err = s.Job.nextPass(h, gauge, c.Bore.Largest.Size, choice.Finish); err != nil {
			s.omit(part, "%v", err)
		}
		if err := c.grewBack(); err != nil {
			return err
		}
		if c.Pass.Decision == hone.PastSize {
			c.Skirts = s.Job.skirts(units.Limits{Min: c.Pass.Size.Value, Max: c.Pass.Size.Value})
		}
	}
	return nil
}

// at20 returns the size at 20 °C, read with the gauge as it was set for the survey.
func (r HonedSize) at20(gauge bore.Gauge) (units.Length, error) {
	gauge.PartAt.Value = r.At
	g, err := bore.Measure([]bore.Reading{{Diameter: r.Diameter}}, gauge)
	return g.Largest.Size.Value, err
}

// nextPass returns what the next pass may be. The doubt of one size by this gauge is that of the survey.
func (j Job) nextPass(h Honed, gauge bore.Gauge, doubt uncertainty.Estimate, finish units.Limits) (hone.Next, error) {
	read := func(r HonedSize) (hone.Reading, error) {
		size, err := r.at20(gauge)
		doubt.Value = size
		return hone.Reading{Diameter: doubt, At: units.ReferenceTemperature}, err
	}
	z := hone.Sizing{
		Metal: gauge.Part, Finish: finish, Risk: max(hone.LeastRisk, j.risk().Share(len(j.Cylinders)).OrDefault().Accept),
		Trial: j.Tools.TrialPass.Duration, Longest: j.Tools.LongestPass.Duration,
	}
	var err error
	if z.Start, err = read(h.Start); err != nil {
		return hone.Next{}, err
	}
	for _, p := range h.Passes {
		after, err := read(p.After)
		if err != nil {
			return hone.Next{}, err
		}
		z.Passes = append(z.Passes, hone.Pass{Lasts: p.Lasts.Duration, After: after})
	}
	return z.Next()
}
