// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"
	"time"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// The zero value of every type, and nonsense from a hostile file, may be asked anything: it
// answers or errs, soon, and never panics.
func TestNothingPanics(t *testing.T) {
	worst := uncertainty.Estimate{Value: math.MinInt64, Std: math.MaxInt64, DoF: math.NaN()}
	place := bore.Place{Depth: math.MinInt64, Axis: bore.Axis(units.Angle(math.NaN())), Size: worst, Own: worst}
	plane := bore.Plane{
		Depth: math.MaxInt64, Places: []bore.Place{place, {}, place}, Mean: worst, Ovality: worst, HasOvality: true,
		TwoLobe:  bore.Lobes{Mean: worst, Amplitude: worst, Axis: units.Angle(math.Inf(1)), AxisStd: -1},
		FourLobe: bore.Lobes{Amplitude: worst, Axis: units.Angle(math.Inf(-1))},
	}
	taper := bore.Taper{Axis: bore.Axis(units.Angle(math.Inf(1))), From: math.MaxInt64, To: math.MinInt64, Size: worst}
	for _, v := range []any{
		bore.Allowances{}, bore.Change{}, bore.CleanUp{}, bore.Coarse{},
		bore.Lobes{}, bore.Gauge{}, bore.Geometry{}, bore.Harmonic{}, bore.Interval{}, bore.Layout{},
		bore.Limits{}, bore.Place{}, bore.PlaceChange{}, bore.Plane{}, bore.Point{}, bore.Port{}, bore.Reading{},
		bore.Standard{}, bore.Survey{}, bore.Taper{}, bore.Temperature{}, bore.Wear{},
		bore.Kind(0), bore.Dial(0), bore.Unseen(0), bore.Kind(-1), bore.Dial(99), bore.Unseen(127),
		place, plane, taper, plane.TwoLobe, plane.FourLobe,
		bore.Geometry{Planes: []bore.Plane{plane, {}, plane}, Bridges: []bore.Plane{plane}, Largest: place, Smallest: place, Tapers: []bore.Taper{taper}, Unseen: []bore.Unseen{99}},
		bore.Layout{Length: math.MaxInt64, RingTop: math.MinInt64, RingBottom: math.MaxInt64, Ports: []bore.Port{{From: math.MinInt64, To: math.MaxInt64, At: units.Angle(math.NaN()), Width: units.Angle(math.Inf(1))}}},
		bore.Coarse{Expanded: math.MinInt64, Allowed: math.MaxInt64},
	} {
		p := reflect.New(reflect.TypeOf(v))
		p.Elem().Set(reflect.ValueOf(v))
		for i := range p.NumMethod() {
			m := p.Method(i)
			name := fmt.Sprintf("%T.%s", v, p.Type().Method(i).Name)
			args := make([]reflect.Value, m.Type().NumIn())
			for k := range args {
				args[k] = reflect.Zero(m.Type().In(k))
			}
			start := time.Now()
			func() {
				defer func() {
					if r := recover(); r != nil {
						t.Errorf("%s panics: %v", name, r)
					}
				}()
				m.Call(args)
			}()
			if d := time.Since(start); d > time.Second { // 10 ms alone on a quiet machine
				t.Errorf("%s took %v", name, d)
			}
		}
	}
}

func TestHostileNumbers(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64} {
		_ = bore.Axis(x).String()
		for name, err := range map[string]error{
			"axis":  second(bore.Analyse([]bore.Reading{{Axis: bore.Axis(units.Angle(x)), Diameter: mm}}, bore.Gauge{})),
			"share": second(measure(t, sixReadings()).CleanUp(bore.Wear{Unworn: uncertainty.Estimate{Value: 67 * mm}, Share: x})),
			"angle": second(bore.CleanUpRadial([]bore.Point{{Angle: units.Angle(x), Radius: mm}}, 0, bore.Allowances{})),
			"time":  second(bore.WearRate([]bore.Survey{survey(0, mm, 1), survey(float64(x), mm, 1)}, 1)),
			"per":   second(bore.WearRate([]bore.Survey{survey(0, mm, 1), survey(1, mm, 1)}, float64(x))),
			"port":  second(bore.Layout{Ports: []bore.Port{{To: 1, Width: units.Angle(x)}}}.Analyse(sixReadings(), bore.Gauge{})),
			"dof":   second(bore.WearRate([]bore.Survey{survey(0, mm, 1), {At: 1, Size: uncertainty.Estimate{Std: 1, DoF: x}}}, 1)),
		} {
			if name == "dof" && x == math.MaxFloat64 {
				continue // as good as infinitely many
			}
			if err == nil && math.Abs(x) > 1e-300 {
				t.Errorf("%s of %v is taken", name, x)
			}
		}
	}
}

func second[T any](_ T, err error) error { return err }

// Differences of sizes that no bore has stay where they are: at the largest that one can be.
func TestDifferencesDoNotWrapAround(t *testing.T) {
	place := func(l units.Length) bore.Place {
		return bore.Place{Size: uncertainty.Estimate{Value: l}, Own: uncertainty.Estimate{Value: l}}
	}
	high, low := place(math.MaxInt64), place(math.MinInt64)
	const most = units.MaxLength
	for name, got := range map[string]units.Length{
		"minus": high.Minus(low).Value, "over": high.Over(math.MinInt64).Value,
		"minus, but for its sign": -low.Minus(high).Value,
	} {
		if got != 2*most {
			t.Errorf("%s: %v", name, got)
		}
	}
	if c := bore.Choke(bore.Taper{Size: low.Size}).Value; c != most {
		t.Errorf("choke %v", c)
	}
}

// A geometry that nobody measured may hold any axis; a finding along none is refused.
func TestJudgeWantsFiniteAxes(t *testing.T) {
	g := measure(t, sixReadings())
	g.Planes[1].Places[0].Axis = bore.Axis(units.Angle(math.Inf(1)))
	if fs, err := g.Judge(bore.Limits{Taper: um}, noRisk); !errors.Is(err, bore.ErrReading) {
		t.Errorf("%v, %v", fs, err)
	}
}
