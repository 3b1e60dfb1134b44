// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A passing is how far the honing of one bore to a size has got; zero where none was written down.
type passing struct {
	recorded bool
	next     hone.Next
	broken   Reason // what is wrong with the record; NoReason where nothing is
	says     string // about broken, in words
	skirts   units.Limits
}

// passed says, for each cylinder that is being honed to a size, what the next pass may be.
func passed(g given, read []readBore, choice oversize.Choice) ([]passing, error) {
	all := make([]passing, len(read))
	for i, c := range choice.Cylinders {
		h := g.Cylinders[i].Honing
		if len(h) == 0 {
			continue
		}
		p := &all[i]
		p.recorded = true
		start, err := h[0].at20(g.survey.gauge)
		switch {
		case err != nil:
			p.broken, p.says = recordBroken, err.Error()
			continue
		case c.Aim == 0 || waiting(g.Job, choice):
			p.broken, p.says = recordUnasked, "there is no size to hone to"
			continue
		case c.Route == oversize.BoreOversize && start < read[i].bore.Largest.Size.Value:
			p.broken, p.says = recordBroken, fmt.Sprintf("it starts at %v, smaller than the worn bore, %v", start, read[i].bore.Largest.Size)
			continue
		}
		if over, other := g.otherSize(start+g.Engine.HoningAllowance, c.Aim, c.Over); c.Route == oversize.BoreOversize && other {
			p.broken, p.says = recordBroken, saysOther("it starts at", start, over, c.Over)
			continue
		}
		if p.next, err = g.nextPass(h, read[i].bore.Largest.Size, c.Finish); err != nil {
			p.broken, p.says = recordBroken, err.Error()
			continue
		}
		switch {
		case len(h) == 1 && g.Tools.TrialPass.Duration == 0:
			p.broken, p.says = recordBroken, "it has no trial pass: give tools.trial_pass"
		case p.next.Decision == hone.MeasureAgain:
			p.broken, p.says = recordDoubtful, "what the passes took cannot be told from the doubt of the gauge"
		case p.next.Decision == hone.PastSize:
			p.skirts = g.skirts(units.Limits{Min: p.next.Size.Value, Max: p.next.Size.Value})
		}
		if p.broken == noReason {
			if p.says, err = g.fallsBack(h, read[i].bore.Largest.Size); err != nil {
				return nil, fault(fmt.Sprintf("cylinders[%d].honing", i), err)
			}
			if p.says != "" {
				p.broken = recordBroken
			}
		}
	}
	return all, nil
}

// fallsBack says where a bore was read smaller after a pass than before it; "" where it never was.
func (g given) fallsBack(h []Pass, doubt uncertainty.Estimate) (string, error) {
	for n := 1; n < len(h); n++ {
		a, err := h[n-1].at20(g.survey.gauge)
		if err != nil {
			return "", err
		}
		b, err := h[n].at20(g.survey.gauge)
		if err != nil {
			return "", err
		}
		was, is := doubt, doubt
		was.Value, is.Value = a, b
		f, err := uncertainty.Judge(bore.Place{Own: is}.Minus(bore.Place{Own: was}), units.Limits{Min: -units.Picometre}, uncertainty.Risk{})
		if err != nil {
			return "", err
		}
		if f.Verdict == uncertainty.Beyond {
			return fmt.Sprintf("it falls back in pass %d, from %v to %v", n, a, b), nil
		}
	}
	return "", nil
}

// at20 returns the size at 20 °C, read with the gauge as it was set for the survey.
func (p Pass) at20(gauge bore.Gauge) (units.Length, error) {
	gauge.PartAt.Value = p.At
	g, err := bore.Measure([]bore.Reading{{Diameter: p.Diameter}}, gauge)
	return g.Largest.Size.Value, err
}

// nextPass returns what the next pass may be. The doubt of one size by this gauge is that of the survey.
func (g given) nextPass(h []Pass, doubt uncertainty.Estimate, finish units.Limits) (hone.Next, error) {
	read := func(p Pass) (hone.Reading, error) {
		size, err := p.at20(g.survey.gauge)
		doubt.Value = size
		return hone.Reading{Diameter: doubt, At: units.ReferenceTemperature}, err
	}
	z := hone.Sizing{
		Metal: g.survey.gauge.Part, Finish: finish, Risk: g.risk.hone,
		Trial: g.Tools.TrialPass.Duration, Longest: g.Tools.LongestPass.Duration,
	}
	var err error
	if z.Start, err = read(h[0]); err != nil {
		return hone.Next{}, err
	}
	for _, p := range h[1:] {
		after, err := read(p)
		if err != nil {
			return hone.Next{}, err
		}
		z.Passes = append(z.Passes, hone.Pass{Lasts: p.Lasts.Duration, After: after})
	}
	return z.Next()
}
