// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"math"
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/oversize/jobsheet/internal/sense"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/internal/strictjson"
	"borewright.example/units"
)

// rules are what a field is held to by its tag `want`, where it is given: those of package sense, of a measured value too,
// and of the job's own types: a value with its doubt, a standard that is known, a metal, a moment, a time.
func rules(nominal units.Length) map[string]strictjson.Rule {
	all := map[string]strictjson.Rule{
		"measured": func(v any) error {
			if m := v.(Measured); !m.isZero() && (m.Value <= 0 || m.Value > sense.LargestBore || m.Expanded < 0 || m.Expanded >= m.Value) {
				return fmt.Errorf("want above 0, up to %v, and a doubt that is smaller", sense.LargestBore)
			}
			return nil
		},
		"known": func(v any) error {
			if v.(Measured).Expanded > sense.Coarsest {
				return fmt.Errorf("want a doubt up to %v", sense.Coarsest)
			}
			return nil
		},
		"metal":   func(v any) error { return v.(Metal).check() },
		"moment":  moment,
		"lasting": func(v any) error { return sense.InRange(v.(Duration).Seconds(), 0, math.Inf(1), "want above 0") },
	}
	for name, rule := range sense.Rules(nominal) {
		all[name] = func(v any) error {
			if m, ok := v.(Measured); ok {
				v = m.Value
			}
			return rule(v)
		}
	}
	return all
}

// usual returns the bands that a field is held to by its tag `usual`: of a measured value, or of its doubt.
func usual(j Job) func(name string, v any) string {
	bands := sense.Engine{
		Bore: j.Engine.Bore, Stroke: j.Engine.Stroke, Length: j.Engine.Layout.Length, Seat: j.Engine.Sleeve.Seat, Step: j.Gauge.Resolution,
	}.Usual()
	return func(name string, v any) string {
		if m, ok := v.(Measured); ok {
			if v = m.Value; strings.HasSuffix(name, "doubt") {
				v = m.Expanded
			}
		}
		return bands[name](v)
	}
}

// shownAs is a value as it is confirmed.
func shownAs(v any) any {
	switch v := v.(type) {
	case *units.Length:
		return *v
	case hone.Crosshatch:
		return show.Crosshatch(v)
	}
	return v
}
