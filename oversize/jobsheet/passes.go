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

// A Pass is a stretch of honing without stopping, and the size after it. Read it at one depth and along one axis,
// the gauge set as for the survey.
type Pass struct {
	Lasts    Duration          `json:"lasts,omitzero"`                                    // "20s", "1m30s"; left out where it is the size before the first
	Diameter units.Length      `json:"diameter" needs:"what the gauge shows" want:"near"` // as the gauge shows it, as in the survey
	At       units.Temperature `json:"at" needs:"the cylinder's temperature then, \"27 °C\"" usual:"honing"`
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

// A passing is how far the honing of one bore to a size has got; zero where none was written down.
type passing struct {
	recorded bool
	next     hone.Next
	broken   Reason // what is wrong with the record; noReason where nothing is
	says     string // about broken, in words
	skirts   units.Limits
}

// passed says, for each cylinder that is being honed to a size, what the next pass may be.
func passed(g given, read []readBore, choice oversize.Choice) []passing {
	all := make([]passing, len(read))
	for i, c := range choice.Cylinders {
		h := g.Cylinders[i].Honing
		if len(h) == 0 {
			continue
		}
		all[i].recorded = true
		all[i].broken, all[i].says = all[i].follow(g, h, read[i].bore.Largest.Size, c, waiting(g.Job, choice))
	}
	return all
}

// follow goes through the record of a bore to the pass that is next; where it cannot, it says why.
func (p *passing) follow(g given, h []Pass, worn uncertainty.Estimate, c oversize.CylinderChoice, waits bool) (broken Reason, says string) {
	sizes, err := g.sizes(h)
	switch {
	case err != nil:
		return recordBroken, err.Error()
	case c.Aim == 0 || waits:
		return recordUnasked, "there is no size to hone to"
	case c.Route == oversize.BoreOversize && sizes[0] < worn.Value:
		return recordBroken, fmt.Sprintf("it starts at %v, smaller than the worn bore, %v", sizes[0], worn)
	}
	if over, other := g.otherSize(sizes[0]+g.Engine.HoningAllowance, c.Aim, c.Over); c.Route == oversize.BoreOversize && other {
		return recordBroken, saysOther("it starts at", sizes[0], over, c.Over)
	}
	p.next, err = g.nextPass(h, sizes, worn, c.Finish)
	switch {
	case err != nil:
		return recordBroken, err.Error()
	case len(h) == 1 && g.Tools.TrialPass.Duration == 0:
		return recordBroken, "it has no trial pass: give tools.trial_pass"
	case p.next.Decision == hone.MeasureAgain:
		return recordDoubtful, "what the passes took cannot be told from the doubt of the gauge"
	case p.next.Decision == hone.PastSize:
		p.skirts = g.skirts(units.Limits{Min: p.next.Size.Value, Max: p.next.Size.Value})
	}
	if n := fallsBack(sizes, worn); n > 0 {
		return recordBroken, fmt.Sprintf("it falls back in pass %d, from %v to %v", n, sizes[n-1], sizes[n])
	}
	return noReason, ""
}

// fallsBack returns the first pass after which a bore was read smaller than before it; 0 where none is.
func fallsBack(sizes []units.Length, doubt uncertainty.Estimate) int {
	for n := 1; n < len(sizes); n++ {
		was, is := doubt, doubt
		was.Value, is.Value = sizes[n-1], sizes[n]
		if cannot(bore.Place{Own: is}.Minus(bore.Place{Own: was}), notBack) {
			return n
		}
	}
	return 0
}

// sizes returns what was read before the first pass and after each, at 20 °C, with the gauge as it was set for the survey.
func (g given) sizes(h []Pass) ([]units.Length, error) {
	sizes := make([]units.Length, len(h))
	for i, p := range h {
		gauge := g.survey.gauge
		gauge.PartAt.Value = p.At
		read, err := bore.Analyse([]bore.Reading{{Diameter: p.Diameter}}, gauge)
		if err != nil {
			return nil, err
		}
		sizes[i] = read.Largest.Size.Value
	}
	return sizes, nil
}

// nextPass returns what the next pass may be. The doubt of one size by this gauge is that of the survey.
func (g given) nextPass(h []Pass, sizes []units.Length, doubt uncertainty.Estimate, finish units.Limits) (hone.Next, error) {
	z := hone.Sizing{
		Metal: g.survey.gauge.Part, Finish: finish, Risk: g.risk.hone,
		Trial: g.Tools.TrialPass.Duration, Longest: g.Tools.LongestPass.Duration,
	}
	for i, size := range sizes {
		doubt.Value = size
		after := hone.Reading{Diameter: doubt, At: units.ReferenceTemperature}
		if i == 0 {
			z.Start = after
		} else {
			z.Passes = append(z.Passes, hone.Pass{Lasts: h[i].Lasts.Duration, After: after})
		}
	}
	return z.Next()
}
