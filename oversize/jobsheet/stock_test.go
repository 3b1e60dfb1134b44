// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"testing"
	"time"

	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// TestStockLeft: once the hone is at work, what comes before it is done; the hone that has begun has the rest, and the edges of
// ports are dressed before its first pass and after its last.
func TestStockLeft(t *testing.T) {
	const boring, edges, rough, finish, lightly = "rough bore, finish bore, mouth chamfer, bottom chamfer, ", "port edges, ", "rough hone, ", "finish hone, ", "port edges, lightly, "
	for name, c := range map[string]struct {
		honed []units.Length // sizes, the first before any pass
		want  string
	}{
		"nothing":                  {nil, boring + edges + rough + finish + lightly},
		"bored, and no pass yet":   {[]units.Length{60_456}, edges + rough + finish + lightly},
		"bored small, and no pass": {[]units.Length{60_440}, edges + rough + finish + lightly},
		"a pass":                   {[]units.Length{60_456, 60_474}, rough + finish + lightly},
		"two":                      {[]units.Length{60_456, 60_474, 60_498}, finish + lightly},
		"honed":                    {[]units.Length{60_456, 60_480, 60_506}, lightly},
	} {
		j := job(t, "two-stroke")
		j.Tools.TrialPass.Duration, j.Tools.LongestPass.Duration = 15*time.Second, time.Minute
		for i, size := range c.honed {
			j.Cylinders[0].Honing = append(j.Cylinders[0].Honing, jobsheet.Pass{
				Diameter: size * units.Micrometre, At: j.Gauge.Temperatures.Cylinder.Value,
				Lasts: jobsheet.Duration{Duration: time.Duration(min(i, 1)) * 20 * time.Second},
			})
		}
		passes := max(len(c.honed)-1, 0)
		j.Counted.Passes = &passes
		cylinder, got := plan(t, j).Cylinders[0], ""
		now := cylinder.Pass.Size.Value
		for _, o := range cylinder.Stock {
			got += o.Kind + ", "
			if o.Stock != o.After-o.Before || now != 0 && o.Stock > 0 && o.Before < now {
				t.Errorf("%s: at %v, %+v", name, now, o)
			}
		}
		if got != c.want || (now == 0) != (len(c.honed) == 0) {
			t.Errorf("%s, at %v: %s", name, now, got)
		}
	}
}
