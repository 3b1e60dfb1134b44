// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore/surface"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// textureLimits is of how many parameters there are limits: those of one row share its risk, given or not.
const textureLimits = 10

// textures holds the texture of every finished wall against what the rings want; nil where nothing is wanted or
// read.
func textures(g given) ([][]surface.Finding, error) {
	all := make([][]surface.Finding, len(g.Cylinders))
	if g.Engine.Texture == (surface.Limits{}) {
		return all, nil
	}
	for i, c := range g.Cylinders {
		readings := slices.Concat(c.Texture, g.profiled[i])
		if len(readings) == 0 {
			continue
		}
		for k := range readings {
			readings[k].Place = plainName(readings[k].Place)
		}
		path := fmt.Sprintf("cylinders[%d].texture", i)
		wall, err := surface.Analyse(readings, g.stylus)
		if err != nil {
			return nil, fault(path, err)
		}
		if all[i], err = wall.Judge(g.Engine.Texture, g.risk.row.Share(textureLimits)); err != nil {
			return nil, fault(path, err)
		}
	}
	return all, nil
}

// stylus holds what is stated of the instrument that read the texture against what such instruments have; common practice.
func (s *slipper) stylus(p surface.Instrument) {
	for _, q := range [...]struct {
		field       string
		is          float64
		least, most float64
	}{{"relative", p.Relative, 0.005, 0.15}, {"digit_of_share", p.DigitOfShare, 0.0001, 0.02}} {
		s.say("gauge.profiler."+q.field, q.is, q.is == 0 || q.is >= q.least && q.is <= q.most, "%v to %v is usual", q.least, q.most)
	}
	steps := units.Limits{Min: units.Nanometre, Max: 200 * units.Nanometre}
	s.say("gauge.profiler.resolution", p.Resolution, p.Resolution == 0 || steps.Contains(p.Resolution), "%v is usual", steps)
}

// texture writes whether the finished wall has the texture that the rings want, where anybody asks.
func (b *book) texture() {
	found := b.textures[b.at]
	switch {
	case b.Engine.Texture == (surface.Limits{}):
		b.put(notAsked(demandTexture, ""))
		return
	case len(found) == 0:
		b.put(open(demandTexture, "", notMeasured, b.later(StepWashAndProve), b.path+"texture"))
		return
	}
	r := provenBy(demandTexture, "", noReason)
	for _, f := range found {
		switch {
		case f.Verdict == uncertainty.Within:
			continue
		case f.Verdict == uncertainty.Beyond:
			r.State, r.Reason, r.Step, r.Says = StateFailed, beyondLimit, StepRework, list(r.Says, f.String())
		case r.State != StateFailed:
			r.State, r.Reason, r.Step, r.Says = StateOpen, doubtful, StepMeasureBetter, list(r.Says, f.String())
		}
		r.Give = []string{b.path + "texture"}
	}
	if _, there := b.finished(); !there && r.State == StateProven {
		r = open(demandTexture, "", toCome, b.workStep())
	}
	b.put(r)
}
