// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"pgregory.net/rapid"
)

// An arc is a stretch of the wall that has been touched, in spaces between lines of abrasive.
type arc struct{ from, length float64 }

// covered reports whether arcs, wrapped round one space, leave no gap.
func covered(arcs []arc) bool {
	const slip = 1e-7
	var cuts [][2]float64
	for _, a := range arcs {
		if a.length >= 1-slip {
			return true
		}
		from := math.Mod(a.from, 1)
		cuts = append(cuts, [2]float64{from, from + a.length}, [2]float64{from - 1, from - 1 + a.length})
	}
	slices.SortFunc(cuts, func(a, b [2]float64) int {
		if a[0] < b[0] {
			return -1
		}
		return 1
	})
	end := 0.0
	for _, c := range cuts {
		if c[0] > end+slip {
			return false
		}
		end = max(end, c[1])
	}
	return end >= 1-slip
}

// Coverage against a tool that is moved along stroke by stroke.
func checkCover(t *rapid.T) {
	s := hone.Setting{
		Bore:     units.Length(rapid.Int64Range(int64(40*mm), int64(120*mm)).Draw(t, "bore")),
		Stroke:   units.Length(rapid.Int64Range(int64(40*mm), int64(150*mm)).Draw(t, "stroke")),
		Spindle:  units.Frequency(rapid.Float64Range(20, 400).Draw(t, "rev/min")) * units.PerMinute,
		Stroking: hone.Cycles(units.Frequency(rapid.Float64Range(0.4, 3).Draw(t, "hertz"))),
	}
	a := hone.Rig{
		Lines:  rapid.IntRange(1, 6).Draw(t, "lines"),
		Width:  units.Length(rapid.Int64Range(int64(mm/2), int64(8*mm)).Draw(t, "width")),
		Length: units.Length(rapid.Int64Range(int64(5*mm), int64(200*mm)).Draw(t, "length")),
	}
	c, err := s.Cover(a)
	if err != nil {
		t.Fatal(err)
	}
	n, v := float64(s.Spindle), float64(must[units.Speed](t)(s.Axial()))
	lines, length, stroke := float64(a.Lines), a.Length.In(units.Metre), s.Stroke.In(units.Metre)
	width := lines * a.Width.In(units.Metre) / (math.Pi * s.Bore.In(units.Metre))
	period := 2 * stroke / v

	// The rule as it is usually written, for one stroke.
	gap := 1/lines - a.Width.In(units.Metre)/(math.Pi*s.Bore.In(units.Metre))
	if once := n*min(length, stroke)/v >= gap; once != (c.Share == 1) && math.Abs(c.Share-1) > 1e-8 {
		t.Fatalf("one stroke covers: %v, share %v", once, c.Share)
	}
	near(t, "share", c.Share, min(1, lines*n*min(length, stroke)/v+width), 1e-9)
	if (c.Min == 1) != (c.Share > 1-2e-9) {
		t.Fatalf("share %v, fewest %d", c.Share, c.Min)
	}
	const most = 61 // strokes walked
	for i := range 9 {
		z := min(length, stroke) + (max(length, stroke)-min(length, stroke))*float64(i)/8
		from, to := max(0, z-length), min(stroke, z)
		var arcs []arc
		took := 0
		for k := 0; took == 0 && k < most; k++ {
			at := float64(k/2)*period + from/v
			if k%2 == 1 {
				at = float64(k/2+1)*period - to/v
			}
			arcs = append(arcs, arc{lines * n * at, lines*n*(to-from)/v + width})
			if covered(arcs) {
				took = k + 1
			}
		}
		if took > 0 && took < c.Min || c.Max > 0 && c.Max <= most && (took == 0 || took > c.Max) {
			t.Fatalf("at %v m the wall took %d strokes: %+v", z, took, c)
		}
	}
	// Where return strokes add nothing, Most is just what out strokes take.
	var arcs []arc
	for k := 0; k <= most/2; k++ {
		arcs = append(arcs, arc{lines * n * float64(k) * period, lines*n*min(length, stroke)/v + width})
		if covered(arcs) {
			if want := 2*k + 1; c.Max != want {
				t.Fatalf("out strokes cover after %d, want %+v", want, c)
			}
			return
		}
	}
	if c.Max > 0 && c.Max < most {
		t.Fatalf("out strokes do not cover after %d: %+v", most, c)
	}
}

func TestCover(t *testing.T) { rapid.Check(t, checkCover) }

func TestCoverStates(t *testing.T) {
	stones := hone.Rig{Lines: 4, Width: 6 * mm, Length: 40 * mm}
	// 120 rev/min and a cycle a second: eight spaces in a cycle, so that every stroke of a machine
	// falls where the first one fell and what it leaves is never touched.
	s := small(120, 80*mm, hone.Cycles(1*units.Hertz))
	thin := hone.Rig{Lines: 4, Width: 1 * mm, Length: 1 * mm}
	if c := must[hone.Cover](t)(s.Cover(thin)); c.Max != 0 || c.Min < 2 {
		t.Errorf("a tool in its own tracks covers: %+v", c)
	}
	if c := must[hone.Cover](t)(s.Cover(stones)); c != (hone.Cover{Share: 1, Min: 1, Max: 1}) {
		t.Errorf("four stones: %+v", c)
	}
	ring := hone.Rig{Lines: 1, Width: units.Length(math.Floor(math.Pi * float64(67*mm))), Length: mm}
	if c := must[hone.Cover](t)(s.Cover(ring)); c.Share != 1 || c.Min != 1 {
		t.Errorf("a ring of abrasive: %+v", c)
	}
	for name, row := range map[string]struct {
		s   hone.Setting
		a   hone.Rig
		err error
	}{
		"no setting":     {hone.Setting{}, stones, units.ErrNotGiven},
		"no lines":       {s, hone.Rig{Width: mm, Length: mm}, units.ErrNotGiven},
		"negative lines": {s, hone.Rig{Lines: -1, Width: mm, Length: mm}, units.ErrRange},
		"too many lines": {s, hone.Rig{Lines: 1001, Width: mm, Length: mm}, units.ErrRange},
		"no width":       {s, hone.Rig{Lines: 1, Length: mm}, units.ErrNotGiven},
		"no length":      {s, hone.Rig{Lines: 1, Width: mm}, units.ErrNotGiven},
		"no room round":  {s, hone.Rig{Lines: 40, Width: 6 * mm, Length: mm}, hone.ErrRoom},
		"turns too much": {small(1e6, 80*mm, hone.Cycles(1)), stones, units.ErrRange},
		"hardly strokes": {small(100, 80*mm, hone.Cycles(1e-300)), stones, units.ErrRange},
	} {
		if c, err := row.s.Cover(row.a); !errors.Is(err, row.err) || c != (hone.Cover{}) {
			t.Errorf("%s: %+v, %v; want %v", name, c, err, row.err)
		}
	}
}

// What chance leaves untouched, against strokes thrown with a fixed seed.
func TestUntouched(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	c := hone.Cover{Share: 0.37}
	const throws, strokes = 20_000, 3
	left := 0
	for range throws {
		point, hit := r.Float64(), false
		for range strokes {
			hit = hit || math.Mod(point-r.Float64()+1, 1) < c.Share
		}
		if !hit {
			left++
		}
	}
	want := c.Untouched(strokes)
	near(t, "untouched", float64(left)/throws, want, 4*math.Sqrt(want*(1-want)/throws))
	if c.Untouched(0) != 1 || c.Untouched(-3) != 1 || (hone.Cover{Share: 1}).Untouched(1) != 0 || (hone.Cover{Share: 3}).Untouched(2) != 0 {
		t.Error("no strokes leave all, full strokes nothing")
	}
}
