// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// read is a reading at 20 °C of so many micrometres above 67 mm.
func read(above, std, dof float64) hone.Reading {
	return hone.Reading{At: units.ReferenceTemperature, Diameter: uncertainty.Estimate{
		Value: 67*mm + units.Length(above*float64(um)), Std: units.Length(std * float64(um)), DoF: dof,
	}}
}

// sizing is a job after so many passes of 10 s that took 4 µm each, with 50 µm still to go to its
// finish limits, 67.020 to 67.030 mm.
func sizing(passes int, dof float64) hone.Sizing {
	z := hone.Sizing{
		Metal: material.GreyIron(), Finish: units.Limits{Min: 67*mm + 20*um, Max: 67*mm + 30*um},
		Trial: 5 * time.Second, Longest: 20 * time.Second,
	}
	start := -30 - 4*float64(passes)
	z.Start = read(start, 1, dof)
	for i := range passes {
		z.Passes = append(z.Passes, hone.Pass{Lasts: 10 * time.Second, After: read(start+4*float64(i+1), 1, dof)})
	}
	return z
}

func TestSizingDecides(t *testing.T) {
	rows := []struct {
		name   string
		passes int
		last   float64 // µm above 67 mm
		std    float64
		want   hone.Decision
		lasts  time.Duration
	}{
		{"no pass yet", 0, -30, 1, hone.GoOn, 5 * time.Second},
		{"within from the start", 0, 20, 1, hone.StopHere, 0},
		{"past from the start", 0, 30.001, 1, hone.PastSize, 0},
		{"far away", 3, -30, 1, hone.GoOn, 20 * time.Second},
		{"just short", 3, 19.999, 1, hone.GoOn, 1 * time.Second},
		{"at the least size", 3, 20, 1, hone.StopHere, 0},
		{"at the stop size", 3, 30, 1, hone.StopHere, 0},
		{"past it", 3, 30.001, 1, hone.PastSize, 0},
		{"gauge too coarse", 3, 10, 9, hone.MeasureAgain, 0},
	}
	for _, row := range rows {
		z := sizing(row.passes, 0)
		if row.passes == 0 {
			z.Start = read(row.last, row.std, 0)
		} else {
			z.Passes[row.passes-1].After = read(row.last, row.std, 0)
		}
		n := must[hone.Next](t)(z.Next())
		if n.Decision != row.want || n.Lasts != row.lasts {
			t.Errorf("%s: %v %v, want %v %v", row.name, n.Decision, n.Lasts, row.want, row.lasts)
		}
		if n.Decision != hone.GoOn && (n.Risk != 0 || n.Passes != 0 || n.Time != 0 || n.Then != (uncertainty.Estimate{})) {
			t.Errorf("%s: tells of a next pass: %+v", row.name, n)
		}
	}
}

// Readings are compared at 20 °C: a hot aluminium barrel read as 67.030 mm at 45 °C is 66.994 mm
// (computed with the 21.5e-6/K of material.AluminiumBlock).
func TestSizingAt20(t *testing.T) {
	z := sizing(1, 0)
	z.Metal = material.AluminiumBlock()
	z.Finish = units.Limits{Min: 67 * mm, Max: 67*mm + 20*um}
	z.Start = read(-20, 1, 0)
	z.Passes[0].After = hone.Reading{Diameter: uncertainty.Estimate{Value: 67*mm + 30*um, Std: 1 * um}, At: units.MustParseTemperature("45 °C")}
	n := must[hone.Next](t)(z.Next())
	if got := n.Size.Value.Format(mm, 3); got != "66.994 mm" || n.Decision != hone.GoOn {
		t.Errorf("%v at %s, want to go on at 66.994 mm", n.Decision, got)
	}
	near(t, "growth in a minute, µm", n.Growth.Value.In(um), 6*(n.Size.Value-67*mm+20*um).In(um), 1e-6)
}

// weighed is what Next rests on, by weights and sums over all readings at once instead of step by step.
type weighed struct{ size, rate, rateStd, lasts, squares, std float64 }

func weigh(z hone.Sizing, scatter float64) (w weighed, bound func(t, risk float64) (need, gap float64)) {
	n := len(z.Passes)
	y, u, ts := []float64{z.Start.Diameter.Value.In(um)}, []float64{z.Start.Diameter.Std.In(um)}, []float64{}
	for _, p := range z.Passes {
		y, u, ts = append(y, p.After.Diameter.Value.In(um)), append(u, p.After.Diameter.Std.In(um)), append(ts, p.Lasts.Seconds())
	}
	weight := func(i int) float64 { return math.Exp2(float64(i - n + 1)) } // of pass i, from 0
	sum, squares := 0.0, 0.0
	for i, t := range ts {
		sum += weight(i) * t
		squares += weight(i) * weight(i) * t * t
	}
	coeffs := make([]float64, n+1) // of the readings in the rate
	for i := range ts {
		coeffs[i+1] += weight(i) / sum
		coeffs[i] -= weight(i) / sum
	}
	rate, gauge := 0.0, 0.0
	for i, c := range coeffs {
		rate += c * y[i]
		gauge += c * c * u[i] * u[i]
	}
	rate = max(0, rate)
	w = weighed{size: y[n], rate: rate, std: u[n], lasts: sum, squares: squares,
		rateStd: math.Sqrt(gauge + scatter*scatter*rate*rate*squares/sum/sum)}
	return w, func(t, risk float64) (need, gap float64) {
		gap = z.Finish.Max.In(um) - y[n]
		v := 0.0
		for i, c := range coeffs {
			if i == n {
				c += 1 / t // the size itself, over t
			}
			v += c * c * u[i] * u[i] * t * t
		}
		v += scatter * scatter * ((rate*rate+gauge)*t*t + squares/sum/sum*gap*gap)
		return rate*t + distuv.UnitNormal.Quantile(1-risk)*math.Sqrt(v), gap
	}
}

// The pass is the longest in whole seconds that keeps to the risk, to the longest pass and to the middle
// of the limits: one second more breaks one of the three. By an independent sum over all readings.
func TestSizingLongestPass(t *testing.T) {
	binds := 0
	rapid.Check(t, func(t *rapid.T) {
		z, scatter := drawSizing(t)
		n, err := z.Next()
		if err != nil || n.Decision != hone.GoOn || len(z.Passes) == 0 {
			return
		}
		k := float64(len(z.Passes))
		near(t, "risk", n.Risk, z.Risk/(k*(k+1)), 1e-15)
		w, bound := weigh(z, scatter)
		near(t, "growth", n.Growth.Value.In(um), 60*w.rate, 1e-6+1e-9*w.rate)
		near(t, "its uncertainty", n.Growth.Std.In(um), 60*w.rateStd, 1e-5+1e-9*w.rateStd)
		s := n.Lasts.Seconds()
		near(t, "size to expect", n.Then.Value.In(um), w.size+w.rate*s, 1e-5+1e-9*w.rate*s)
		if need, gap := bound(s, n.Risk); need > gap+1e-6 {
			t.Errorf("%v needs %v µm of %v", n.Lasts, need, gap)
		}
		middle := (z.Finish.Min + z.Finish.Max).In(um) / 2
		more := s + 1
		need, gap := bound(more, n.Risk)
		if need > gap-1e-6 {
			binds++
		} else if more <= z.Longest.Seconds() && w.size+w.rate*more < middle-1e-6 {
			t.Errorf("%v could be a second longer: %v µm of %v", n.Lasts, need, gap)
		}
		if s > 1 && w.size+w.rate*s > middle+1e-6 {
			t.Errorf("%v should bring %v µm, past the middle %v", n.Lasts, w.size+w.rate*s, middle)
		}
		if n.Lasts > z.Longest {
			t.Errorf("%v is longer than %v", n.Lasts, z.Longest)
		}
	})
	if binds == 0 {
		t.Error("the risk never bound")
	}
}

// drawSizing draws a job of one to six passes on its way, and its scatter.
func drawSizing(t *rapid.T) (hone.Sizing, float64) {
	z := sizing(0, 0)
	z.Risk = rapid.Float64Range(0.01, 0.5).Draw(t, "risk")
	z.Scatter = rapid.Float64Range(0.01, 0.3).Draw(t, "scatter")
	z.Longest = time.Duration(rapid.IntRange(1, 200).Draw(t, "longest")) * time.Second
	std := rapid.Float64Range(0, 2).Draw(t, "std")
	size := rapid.Float64Range(-60, 0).Draw(t, "start")
	z.Start = read(size, std, 0)
	for range rapid.IntRange(1, 6).Draw(t, "passes") {
		size += rapid.Float64Range(0, 15).Draw(t, "took")
		z.Passes = append(z.Passes, hone.Pass{
			Lasts: time.Duration(rapid.IntRange(1, 30).Draw(t, "lasts")) * time.Second,
			After: read(size, std, 0),
		})
	}
	return z, z.Scatter
}

// More risk, a finer gauge, less scatter or a later stop size never shorten the next pass.
func TestSizingMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z, _ := drawSizing(t)
		n, err := z.Next()
		if err != nil || n.Decision == hone.StopHere || n.Decision == hone.PastSize {
			return
		}
		easier := z
		easier.Passes = append([]hone.Pass(nil), z.Passes...)
		switch rapid.IntRange(0, 3).Draw(t, "what") {
		case 0:
			easier.Risk = rapid.Float64Range(z.Risk, 0.5).Draw(t, "more risk")
		case 1:
			share := rapid.Float64Range(0, 1).Draw(t, "of the doubt")
			finer := func(r *hone.Reading) { r.Diameter.Std = units.Length(share * float64(r.Diameter.Std)) }
			finer(&easier.Start)
			for i := range easier.Passes {
				finer(&easier.Passes[i].After)
			}
		case 2:
			easier.Scatter = rapid.Float64Range(0.01, z.Scatter).Draw(t, "less scatter")
		case 3:
			easier.Finish.Max += units.Length(rapid.Float64Range(0, 50).Draw(t, "later") * float64(um))
		}
		if m, err := easier.Next(); err == nil && m.Lasts < n.Lasts {
			t.Errorf("an easier job has a shorter pass: %v, from %v", m, n)
		}
	})
}

// What is to come is what comes if every pass takes what it should.
func TestSizingAhead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z, _ := drawSizing(t)
		first, err := z.Next()
		if err != nil || first.Decision != hone.GoOn || first.Passes == 0 {
			return
		}
		z.Passes = append([]hone.Pass(nil), z.Passes...)
		var passes int
		var time time.Duration
		for n := first; n.Decision == hone.GoOn; passes++ {
			time += n.Lasts
			std := z.Passes[len(z.Passes)-1].After.Diameter.Std
			z.Passes = append(z.Passes, hone.Pass{Lasts: n.Lasts, After: hone.Reading{
				Diameter: uncertainty.Estimate{Value: n.Then.Value, Std: std}, At: units.ReferenceTemperature,
			}})
			if n, err = z.Next(); err != nil {
				t.Fatal(err)
			}
			if passes > 2000 {
				t.Fatal("no end")
			}
		}
		// A size that falls on a limit or a time on a whole second may fall either way by rounding.
		if d := passes - first.Passes; d < -1 || d > 1 {
			t.Errorf("%d passes of %v came, %d of %v were told", passes, time, first.Passes, first.Time)
		}
	})
}

func TestSizingTrend(t *testing.T) {
	job := func(took ...float64) hone.Sizing {
		z := sizing(0, 0)
		size := -90.0
		z.Start = read(size, 0.5, 0)
		for _, t := range took {
			size += t
			z.Passes = append(z.Passes, hone.Pass{Lasts: 10 * time.Second, After: read(size, 0.5, 0)})
		}
		return z
	}
	for _, row := range []struct {
		took         []float64
		fades, rises bool
	}{
		{[]float64{10}, false, false},
		{[]float64{10, 4}, true, false},
		{[]float64{10, 10, 10, 10}, false, false},
		{[]float64{12, 10, 7, 5, 4, 3}, true, false},
		{[]float64{3, 4, 5, 7, 10, 12}, false, true},
		{[]float64{10, 12, 9, 11, 10}, false, false},
	} {
		if n := must[hone.Next](t)(job(row.took...).Next()); n.Fades != row.fades || n.Rises != row.rises {
			t.Errorf("%v: fades %v, rises %v; want %v, %v", row.took, n.Fades, n.Rises, row.fades, row.rises)
		}
	}
	// With a steady rate, a trend is told by chance in 5 % of jobs, either way; four standard
	// deviations of chance lie above that, and a little for the scatter's being one of the rate measured.
	r := rand.New(rand.NewPCG(7, 7))
	const jobs = 2000
	fades, rises := 0, 0
	for range jobs {
		z := job()
		size := -90.0
		z.Start = read(size+0.5*r.NormFloat64(), 0.5, 0)
		for range 5 {
			size += 8 * (1 + 0.2*r.NormFloat64())
			z.Passes = append(z.Passes, hone.Pass{Lasts: 10 * time.Second, After: read(size+0.5*r.NormFloat64(), 0.5, 0)})
		}
		n := must[hone.Next](t)(z.Next())
		if n.Fades {
			fades++
		}
		if n.Rises {
			rises++
		}
	}
	for word, n := range map[string]int{"fades": fades, "rises": rises} {
		if share := float64(n) / jobs; share < 0.02 || share > 0.08 {
			t.Errorf("a steady rate %s in %.3f of jobs", word, share)
		}
	}
}

func TestSizingRefuses(t *testing.T) {
	for name, row := range map[string]struct {
		change func(z *hone.Sizing)
		want   error
	}{
		"good":                  {func(*hone.Sizing) {}, nil},
		"no metal":              {func(z *hone.Sizing) { z.Metal = material.Material{} }, units.ErrNotGiven},
		"no limits":             {func(z *hone.Sizing) { z.Finish = units.Limits{} }, units.ErrNotGiven},
		"no least size":         {func(z *hone.Sizing) { z.Finish.Min = 0 }, units.ErrNotGiven},
		"no stop size":          {func(z *hone.Sizing) { z.Finish.Max = 0 }, units.ErrNotGiven},
		"limits crossed":        {func(z *hone.Sizing) { z.Finish.Min = z.Finish.Max }, units.ErrCrossed},
		"least risk":            {func(z *hone.Sizing) { z.Risk = 0.01 }, nil},
		"risk too small":        {func(z *hone.Sizing) { z.Risk = 0.0099 }, units.ErrRange},
		"risk too great":        {func(z *hone.Sizing) { z.Risk = 0.51 }, units.ErrRange},
		"risk no number":        {func(z *hone.Sizing) { z.Risk = math.NaN() }, units.ErrRange},
		"scatter below nothing": {func(z *hone.Sizing) { z.Scatter = -0.1 }, units.ErrRange},
		"scatter too great":     {func(z *hone.Sizing) { z.Scatter = 0.31 }, units.ErrRange},
		"scatter no number":     {func(z *hone.Sizing) { z.Scatter = math.NaN() }, units.ErrRange},
		"no trial":              {func(z *hone.Sizing) { z.Trial = 0 }, units.ErrNotGiven},
		"trial below nothing":   {func(z *hone.Sizing) { z.Trial = -1 }, units.ErrRange},
		"no longest":            {func(z *hone.Sizing) { z.Longest = 0 }, units.ErrNotGiven},
		"longest too short":     {func(z *hone.Sizing) { z.Longest = time.Second - 1 }, units.ErrRange},
		"longest beyond a day":  {func(z *hone.Sizing) { z.Longest = 24*time.Hour + 1 }, units.ErrRange},
		"no time":               {func(z *hone.Sizing) { z.Passes[1].Lasts = 0 }, units.ErrNotGiven},
		"time below nothing":    {func(z *hone.Sizing) { z.Passes[1].Lasts = -1 }, units.ErrRange},
		"no temperature":        {func(z *hone.Sizing) { z.Passes[1].After.At = 0 }, units.ErrNotGiven},
		"no first temperature":  {func(z *hone.Sizing) { z.Start.At = 0 }, units.ErrNotGiven},
		"absurd temperature":    {func(z *hone.Sizing) { z.Start.At = units.Temperature(math.Inf(1)) }, units.ErrNotFinite},
		"no size":               {func(z *hone.Sizing) { z.Start.Diameter.Value = 0 }, units.ErrNotGiven},
		"bad uncertainty":       {func(z *hone.Sizing) { z.Start.Diameter.Std = -1 }, uncertainty.ErrStd},
		"bad freedom":           {func(z *hone.Sizing) { z.Start.Diameter.DoF = 0.5 }, uncertainty.ErrStd},
		"shrinks":               {func(z *hone.Sizing) { z.Passes[1].After = read(-34-4.3, 1, 0) }, hone.ErrShrunk}, // 4.3 is over 3·√2
		"shrinks in doubt":      {func(z *hone.Sizing) { z.Passes[1].After = read(-34-4.2, 1, 0) }, nil},
		"too many passes":       {func(z *hone.Sizing) { z.Passes = make([]hone.Pass, 1001) }, units.ErrRange},
	} {
		z := sizing(2, 0)
		row.change(&z)
		if _, err := z.Next(); !errors.Is(err, row.want) {
			t.Errorf("%s: %v, want %v", name, err, row.want)
		}
	}
}

// Few degrees of freedom make the pass shorter; a reading's matter, not where it stands.
func TestSizingFewDegrees(t *testing.T) {
	z := sizing(2, 0)
	z.Longest, z.Risk = time.Minute*10, 0.1
	known := must[hone.Next](t)(z.Next())
	for i := range 3 {
		few := z
		few.Passes = append([]hone.Pass(nil), z.Passes...)
		if i == 0 {
			few.Start.Diameter.DoF = 2
		} else {
			few.Passes[i-1].After.Diameter.DoF = 2
		}
		n := must[hone.Next](t)(few.Next())
		if n.Lasts >= known.Lasts || n.Size.DoF != 2 {
			t.Errorf("reading %d with 2 degrees of freedom: %v, with known doubt %v", i, n, known)
		}
		for k, d := range []*float64{&few.Start.Diameter.DoF, &few.Passes[0].After.Diameter.DoF, &few.Passes[1].After.Diameter.DoF} {
			if *d == 0 {
				*d = float64(5 + k) // the fewest count, among others too
			}
		}
		if n := must[hone.Next](t)(few.Next()); n.Size.DoF != 2 {
			t.Errorf("reading %d with 2 degrees of freedom, the others with more: %v", i, n)
		}
	}
}

// Whatever the numbers: an error, or an answer that can be used and printed.
func TestSizingHostile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := rapid.OneOf(rapid.Int64(), rapid.Int64Range(0, 10e12), rapid.Int64Range(67e9, 67.1e9))
		reading := func() hone.Reading {
			return hone.Reading{
				Diameter: uncertainty.Estimate{
					Value: units.Length(length.Draw(t, "size")),
					Std:   units.Length(rapid.OneOf(rapid.Int64Range(0, 1e7), rapid.Int64()).Draw(t, "std")),
					DoF:   rapid.SampledFrom([]float64{0, 1, 4, math.NaN(), 1e300}).Draw(t, "dof"),
				},
				At: rapid.SampledFrom([]units.Temperature{0, 293.15, 320, 1e-300, units.Temperature(math.NaN())}).Draw(t, "at"),
			}
		}
		z := hone.Sizing{
			Metal:  material.GreyIron(),
			Finish: units.Limits{Min: units.Length(length.Draw(t, "min")), Max: units.Length(length.Draw(t, "max"))},
			Trial:  time.Duration(rapid.Int64().Draw(t, "trial")), Longest: time.Duration(rapid.Int64Range(1e9, 1e14).Draw(t, "longest")),
			Start: reading(),
		}
		for range rapid.IntRange(0, 3).Draw(t, "passes") {
			z.Passes = append(z.Passes, hone.Pass{Lasts: time.Duration(rapid.Int64Range(1, 1e14).Draw(t, "lasts")), After: reading()})
		}
		n, err := z.Next()
		if err != nil {
			return
		}
		for _, e := range []uncertainty.Estimate{n.Size, n.Growth, n.Then} {
			if err := e.Validate(); err != nil {
				t.Errorf("%+v: %v", n, err)
			}
		}
		if n.Lasts < 0 || n.Lasts > max(z.Longest, z.Trial) || n.Passes < 0 || n.Time < 0 || math.IsNaN(n.Risk) || n.String() == "" {
			t.Errorf("%+v", n)
		}
	})
}
