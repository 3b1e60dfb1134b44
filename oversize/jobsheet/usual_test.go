// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// TestUsualAtTheBench: what no room owns is asked about where it lies beyond what is usual at a bench (common practice), and not at
// either end of that.
func TestUsualAtTheBench(t *testing.T) {
	for field, c := range map[string]struct{ beyond, usual []string }{
		"engine.rings[0].side":              {[]string{"0.009 to 0.10 mm", "0.02 to 0.251 mm"}, []string{"0.010 to 0.250 mm"}},
		"engine.rings[0].hot_gap":           {[]string{"0.019 mm", "0.201 mm"}, []string{"0.020 mm", "0.200 mm"}},
		"engine.may_shift":                  {[]string{"0.0009 mm", "0.157 mm"}, []string{"0.001 mm", "0.156 mm"}}, // a 500th of 78 mm
		"cylinders[0].piston.size":          {[]string{"78.000 ± 0.0004 mm", "78.000 ± 0.031 mm"}, []string{"78.000 ± 0.0005 mm", "78.000 ± 0.030 mm"}},
		"cylinders[0].piston.coating":       {[]string{"0.002 mm", "0.041 mm"}, []string{"0.003 mm", "0.040 mm"}},
		"cylinders[0].rings[0].gap":         {[]string{"0.21 ± 0.004 mm", "0.21 ± 0.121 mm"}, []string{"0.21 ± 0.005 mm", "0.21 ± 0.120 mm"}},
		"cylinders[0].thinnest_wall":        {[]string{"5.6 ± 0.04 mm", "5.6 ± 1.6 mm"}, []string{"5.6 ± 0.05 mm", "5.6 ± 1.5 mm"}},
		"cylinders[0].crosshatch_doubt":     {[]string{"0.1°", "11°"}, []string{"0.2°", "10°"}},
		"gauge.repeatability":               {[]string{"0.0003 mm", "0.021 mm"}, []string{"0.0004 mm", "0.020 mm"}}, // of a scale of 0.002 mm
		"gauge.dial_error":                  {[]string{"0.0003 mm", "0.009 mm"}, []string{"0.0004 mm", "0.008 mm"}},
		"gauge.spindle.error":               {[]string{"0.00009 mm", "0.031 mm"}, []string{"0.0001 mm", "0.030 mm"}},
		"gauge.spindle.repeatability":       {[]string{"0.00009 mm", "0.0031 mm"}, []string{"0.0001 mm", "0.0030 mm"}},
		"gauge.temperatures.cylinder":       {[]string{"24 ± 0.05 °C", "24 ± 16 °C"}, []string{"24 ± 0.1 °C", "24 ± 15 °C"}},
		"gauge.temperatures.place_to_place": {[]string{"0.05 K", "5.1 K"}, []string{"0.1 K", "5 K"}},
		"tools.tolerance":                   {[]string{"0.9°", "16°"}, []string{"1°", "15°"}},
		"tools.crosshatch":                  {[]string{"14° included", "121° included"}, []string{"15° included", "120° included"}},
		"cuts.locating":                     {[]string{"0.0009 mm", "0.051 mm"}, []string{"0.001 mm", "0.050 mm"}},
		"cuts.surface":                      {[]string{"0.0009 mm", "0.021 mm"}, []string{"0.001 mm", "0.020 mm"}},
		"cuts.warm":                         {[]string{"111 °C"}, []string{"110 °C"}},
	} {
		asked := func(value string) bool {
			j := demoTrees(t)["pump-finished"]
			put(t, j, "cylinders.0.piston_for", "0 mm")
			put(t, j, "cylinders.0.piston.size", "78.000 ± 0.004 mm")
			put(t, j, strings.NewReplacer("[", ".", "]", "").Replace(field), value)
			return slices.ContainsFunc(mustPlan(t, j).Ledger, func(r jobsheet.Row) bool {
				return strings.HasPrefix(r.Says, field+" ") && strings.Contains(r.Says, "is usual")
			})
		}
		for _, v := range c.beyond {
			if !asked(v) {
				t.Errorf("%s of %s is not asked about", field, v)
			}
		}
		for _, v := range c.usual {
			if asked(v) {
				t.Errorf("%s of %s is asked about", field, v)
			}
		}
	}
}
