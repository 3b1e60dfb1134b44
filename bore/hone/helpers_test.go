// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"math"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

const mm = units.Millimetre

// A tester is a *testing.T, *testing.B or *rapid.T.
type tester interface {
	Helper()
	Fatal(args ...any)
	Errorf(format string, args ...any)
}

// must returns v, or stops the test that called for it.
func must[V any](t tester) func(v V, err error) V {
	return func(v V, err error) V {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// near fails where got is further from want than tol.
func near(t tester, name string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.9g, want %.9g ± %.2g", name, got, want, tol)
	}
}

// small is the bore of the invented irrigation-pump engine with a drill at the speed.
func small(rpm float64, stroke units.Length, k hone.Stroking) hone.Setting {
	return hone.Setting{Bore: 67 * mm, Stroke: stroke, Spindle: units.Frequency(rpm) * units.PerMinute, Stroking: k}
}

// crosshatch reads a crosshatch that is written out in a test.
func crosshatch(text string) hone.Crosshatch {
	c, err := hone.ParseCrosshatch(text)
	if err != nil {
		panic(err)
	}
	return c
}

func included(c hone.Crosshatch) float64 { return c.Included().In(units.Degree) }
