// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/bore/internal/circle"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

const hundredth = 10 * nm // of a micrometre

// A wornWall is a bore of known wear: radial, by direction in steps of 1°, 360 of them.
type wornWall []units.Length

const unwornRadius = 33_500 * um

// drawWall draws a wall that keeps to a share: of what the diameter along any axis gains at most
// so much lies at one end, and along the most worn axis just so much.
func drawWall(t *rapid.T, share float64) wornWall {
	w := make(wornWall, 360)
	most := length(t, "most", um, 300*um)
	worst := rapid.IntRange(0, 179).Draw(t, "worst axis")
	kind := rapid.IntRange(0, 2).Draw(t, "kind")
	for a := range 180 {
		sum := length(t, "sum", 0, most)
		switch kind {
		case 1: // one narrow place
			sum = 0
		case 2: // three places
			if a%60 != worst%60 {
				sum = 0
			}
		}
		of := rapid.Float64Range(1-share, share).Draw(t, "of it")
		if a == worst || kind == 2 && a%60 == worst%60 {
			sum, of = most, share
		}
		one := units.Length(math.Round(of * float64(sum)))
		w[a], w[a+180] = one, sum-one
		// Which end: the worst axis has it where it is, three places a third of a turn apart.
		if kind == 2 && a%120 != worst%120 || kind == 0 && rapid.Bool().Draw(t, "other end") {
			w[a], w[a+180] = w[a+180], w[a]
		}
	}
	return w
}

// readings are those of an ideal gauge along every axis, and of the unworn bottom.
func (w wornWall) readings() []bore.Reading {
	rs := []bore.Reading{{Depth: 90 * mm, Diameter: 2 * unwornRadius}}
	for a := range 180 {
		rs = append(rs, bore.Reading{Depth: 10 * mm, Axis: bore.Axis(degrees(float64(a))), Diameter: 2*unwornRadius + w[a] + w[a+180]})
	}
	return rs
}

// smallest is the diameter of the smallest circle around the wall, any centre, and on the original.
func (w wornWall) smallest() (free, centred float64) {
	x, y := make([]float64, len(w)), make([]float64, len(w))
	for i := range w {
		r := (unwornRadius + w[i]).In(mm)
		s, c := math.Sincos(float64(i) * math.Pi / 180)
		x[i], y[i] = r*c, r*s
		centred = max(centred, 2*r)
	}
	return 2 * circle.Enclosing(x, y).R, centred
}

func (w wornWall) points() []bore.Point {
	ps := make([]bore.Point, len(w))
	for i := range w {
		ps[i] = bore.Point{Depth: units.Length(i%7) * mm, Angle: degrees(float64(i)), Radius: unwornRadius + w[i]}
	}
	return ps
}

// Of a simulated bore with a known share the clean-up on the original centre is exact: it leaves
// no worn wall, and a hundredth of a micrometre less does. With the share unknown the intervals
// hold what the wall really needs.
func TestCleanUpOfKnownWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.Float64Range(0.5, 1).Draw(t, "share")
		w := drawWall(t, share)
		free, centred := w.smallest()
		g := measure(t, w.readings())
		c, err := g.CleanUp(bore.Wear{UnwornAt: 90 * mm, Share: share})
		must(t, c, err)
		if d := c.Original.Max.Value; d != c.Original.Min.Value || d.In(mm) < centred-1e-8 || (d-hundredth).In(mm) >= centred {
			t.Fatalf("original centre %v, the wall needs %.9f mm", c.Original, centred)
		}
		if c.Worn.Min.Value.In(mm) > free+1e-8 || c.Worn.Max.Value.In(mm) < free-1e-8 {
			t.Fatalf("worn centre %v, the wall needs %.9f mm", c.Worn, free)
		}
		c, err = g.CleanUp(bore.Wear{Unworn: uncertainty.Estimate{Value: 2 * unwornRadius}})
		must(t, c, err)
		if c.Original.Min.Value.In(mm) > centred+1e-8 || c.Original.Max.Value.In(mm) < centred-1e-8 ||
			c.Worn.Min.Value.In(mm) > free+1e-8 || c.Worn.Max.Value.In(mm) < free-1e-8 {
			t.Fatalf("%v, the wall needs %.9f mm, or %.9f mm on the original centre", c, free, centred)
		}
		if !slices.Contains(c.Unseen, bore.UnseenCentre) || !slices.Contains(c.Unseen, bore.UnseenScores) {
			t.Fatalf("unseen %v", c.Unseen)
		}
	})
}

func drawPit(t *rapid.T) bore.Pit {
	p := bore.Pit{Below: length(t, "below", 1, mm), Depth: length(t, "pit at", 0, 100*mm), Length: length(t, "pit over", 0, 50*mm)}
	if rapid.Bool().Draw(t, "pit's direction noted") {
		p.At = toward(rapid.Float64Range(-400, 400).Draw(t, "pit toward"))
	}
	return p
}

// toward returns the direction of a pit that is noted.
func toward(degree float64) *units.Angle {
	a := degrees(degree)
	return &a
}

// With a pit in it the wall needs no less than the least and no more than the greatest, and the axis
// moves no further.
func TestCleanUpOfPittedWalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		share := rapid.Float64Range(0.5, 1).Draw(t, "share")
		w := drawWall(t, share)
		g := measure(t, w.readings())
		below, at := length(t, "below", um, 400*um), rapid.IntRange(0, 360).Draw(t, "at")
		pitted := slices.Clone(w)
		pitted[at%360] += below
		free, centred := pitted.smallest()
		pit := bore.Pit{Below: below, Depth: 10 * mm, Length: mm, At: toward(float64(at))}
		for _, known := range []float64{0, share} {
			c, err := g.CleanUp(bore.Wear{UnwornAt: 90 * mm, Share: known, Pits: []bore.Pit{pit}})
			must(t, c, err)
			if c.Original.Min.Value.In(mm) > centred+1e-8 || c.Original.Max.Value.In(mm) < centred-1e-8 ||
				c.Worn.Min.Value.In(mm) > free+1e-8 || c.Worn.Max.Value.In(mm) < free-1e-8 {
				t.Fatalf("share %v: %v, the wall needs %.9f mm, or %.9f mm on the original centre", known, c, free, centred)
			}
			if want := (2*unwornRadius + w[at%360] + w[(at+180)%360]); c.Pits[0].Wall.Value != want || !c.Pits[0].InTravel || c.Pits[0].Pit != pit {
				t.Fatalf("beside the pit %+v, the wall has %v", c.Pits[0], want)
			}
			if slices.Contains(c.Unseen, bore.UnseenScores) {
				t.Fatalf("unseen %v", c.Unseen)
			}
		}
	})
}

// A pit counts in its place. In a bore worn by 0.15 mm at the top, one of 0.05 mm near the bottom, worn by
// 0.01 mm there, asks for nothing; all of its depth on top of the largest diameter asked for 0.1 mm more.
func TestPitCountsInItsPlace(t *testing.T) {
	rs := []bore.Reading{
		at(10, 0, "67.150 mm"), at(50, 0, "67.060 mm"), at(84, 0, "67.010 mm"), at(98, 0, "67 mm"),
		at(10, 90, "67.090 mm"), at(50, 90, "67.030 mm"), at(84, 90, "67.006 mm"), at(98, 90, "67 mm"),
	}
	l := bore.Layout{Length: 105 * mm, RingTop: 8 * mm, RingBottom: 92 * mm}
	g, err := l.Analyse(rs, bore.Gauge{})
	must(t, g, err)
	for _, c := range []struct {
		name                                string
		pit                                 bore.Pit
		share                               float64
		original, originalMost, worn, shift units.Length // over 67 mm; 0.15, 0.30, 0.15 and 0.075 mm without a pit
		wall                                string
		outside                             bool
	}{
		{"low", bore.Pit{Below: 50 * um, Depth: 80 * mm, Length: 3 * mm, At: toward(20)}, 0, 150 * um, 300 * um, 150 * um, 75 * um, "67.06 mm", false},
		{"low and deep", bore.Pit{Below: 200 * um, Depth: 84 * mm, Length: mm, At: toward(360)}, 0, 400 * um, 420 * um, 210 * um, 105 * um, "67.01 mm", false},
		{"low and deep, share known", bore.Pit{Below: 200 * um, Depth: 84 * mm, Length: mm, At: toward(180)}, 0.5, 410 * um, 410 * um, 210 * um, 100 * um, "67.01 mm", false},
		{"pin side", bore.Pit{Below: 200 * um, Depth: 84 * mm, Length: mm, At: toward(270)}, 0, 400 * um, 412 * um, 206 * um, 103 * um, "67.006 mm", false},
		{"spans all", bore.Pit{Below: 10 * um, Depth: um, Length: 90 * mm, At: toward(360)}, 0, 150 * um, 320 * um, 160 * um, 80 * um, "67.15 mm", false},
		{"anywhere", bore.Pit{Below: 10 * um}, 0, 150 * um, 320 * um, 160 * um, 80 * um, "67.15 mm", false},
		{"below ring travel", bore.Pit{Below: mm, Depth: 95 * mm, Length: mm}, 0, 150 * um, 300 * um, 150 * um, 75 * um, "67.01 mm", true},
		{"at any depth", bore.Pit{Below: 10 * um, Length: mm, At: toward(360)}, 0, 150 * um, 320 * um, 160 * um, 80 * um, "67.15 mm", false},
		{"from there down", bore.Pit{Below: 100 * um, Depth: 50 * mm, At: toward(360)}, 0, 200 * um, 320 * um, 160 * um, 80 * um, "67.06 mm", false},
		{"all round", bore.Pit{Below: 200 * um, Depth: 84 * mm, Length: mm}, 0, 400 * um, 420 * um, 210 * um, 105 * um, "67.01 mm", false},
		{"down into ring travel", bore.Pit{Below: mm, Depth: 2 * mm, At: toward(360)}, 0, 2000 * um, 2300 * um, 1150 * um, 575 * um, "67.15 mm", false},
		{"above ring travel", bore.Pit{Below: mm, Depth: 2 * mm, Length: 5 * mm}, 0, 150 * um, 300 * um, 150 * um, 75 * um, "67.15 mm", true},
		{"into ring travel", bore.Pit{Below: mm, Depth: 2 * mm, Length: 6 * mm}, 0, 2000 * um, 2300 * um, 1150 * um, 575 * um, "67.15 mm", false},
	} {
		got, err := g.CleanUp(bore.Wear{UnwornAt: 98 * mm, Share: c.share, Pits: []bore.Pit{c.pit}})
		must(t, got, err)
		if c.share == 0.5 { // 0.15 mm of wear, half on either side
			within(t, c.name+": shift", got.Shift, 100*um, 1)
		} else {
			within(t, c.name+": shift", got.Shift, c.shift, 1)
		}
		within(t, c.name+": original, least", got.Original.Min.Value, 67*mm+c.original, 1)
		within(t, c.name+": original, greatest", got.Original.Max.Value, 67*mm+c.originalMost, 1)
		within(t, c.name+": worn", got.Worn.Min.Value, 67*mm+c.worn, 1)
		if got.Pits[0].Wall.Value != units.MustParseLength(c.wall) || got.Pits[0].InTravel == c.outside {
			t.Errorf("%s: %+v", c.name, got.Pits[0])
		}
	}
	// Worn across the thrust axis: a pit on it is at 0° as at 360°, one of which nobody noted the direction may be at the worn side.
	across, err := l.Analyse([]bore.Reading{at(10, 0, "67.020 mm"), at(98, 0, "67 mm"), at(10, 90, "67.090 mm"), at(98, 90, "67 mm")}, bore.Gauge{})
	must(t, across, err)
	for _, c := range []struct {
		at   *units.Angle
		wall string
	}{{nil, "67.09 mm"}, {toward(0), "67.02 mm"}, {toward(360), "67.02 mm"}, {toward(90), "67.09 mm"}} {
		got, err := across.CleanUp(bore.Wear{UnwornAt: 98 * mm, Pits: []bore.Pit{{Below: um, Depth: 20 * mm, Length: mm, At: c.at}}})
		if must(t, got, err); got.Pits[0].Wall.Value != units.MustParseLength(c.wall) {
			t.Errorf("toward %v: beside the pit %v, want %s", c.at, got.Pits[0].Wall, c.wall)
		}
	}
	// A plane at the very end of a pit is next to it.
	mid, err := l.Analyse([]bore.Reading{at(10, 0, "67.020 mm"), at(50, 0, "67.060 mm"), at(98, 0, "67 mm")}, bore.Gauge{})
	must(t, mid, err)
	ends, err := mid.CleanUp(bore.Wear{UnwornAt: 98 * mm, Pits: []bore.Pit{{Below: um, Depth: 20 * mm, Length: 30 * mm}}})
	if must(t, ends, err); ends.Pits[0].Wall.Value != units.MustParseLength("67.06 mm") {
		t.Errorf("beside a pit that ends at 50 mm: %v", ends.Pits[0].Wall)
	}
	// Where nothing says how far rings run they may pass over any pit.
	unknown, err := measure(t, rs).CleanUp(bore.Wear{UnwornAt: 98 * mm, Pits: []bore.Pit{{Below: mm, Depth: 99 * mm}}})
	if must(t, unknown, err); !unknown.Pits[0].InTravel {
		t.Errorf("travel not known: %+v", unknown.Pits[0])
	}
}

// Neither bound can be narrowed: one narrow place needs the least on the worn centre, three places
// a third of a turn apart the greatest.
func TestCleanUpBoundsAreMet(t *testing.T) {
	one, three := make(wornWall, 360), make(wornWall, 360)
	one[0] = 150 * um
	three[0], three[120], three[240] = 150*um, 150*um, 150*um
	for name, c := range map[string]struct {
		w    wornWall
		free units.Length
	}{"one": {one, 67*mm + 150*um}, "three": {three, 67*mm + 300*um}} {
		free, centred := c.w.smallest()
		within(t, name+" on the worn centre", millimetres(free), c.free, hundredth)
		within(t, name+" on the original centre", millimetres(centred), 67*mm+300*um, 0)
		up, err := measure(t, c.w.readings()).CleanUp(bore.Wear{UnwornAt: 90 * mm})
		must(t, up, err)
		within(t, name+", least", up.Worn.Min.Value, 67*mm+150*um, 0)
		within(t, name+", greatest", up.Worn.Max.Value, 67*mm+300*um, 0)
		within(t, name+", shift", up.Shift, 75*um, 0)
	}
}

// Radial points give one number for each centre, which holds every point; a hundredth of a
// micrometre less does not, and for a free centre that goes for any centre.
func TestCleanUpRadial(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := drawWall(t, 1)
		free, centred := w.smallest()
		c, err := bore.CleanUpRadial(w.points(), um, bore.Allowances{})
		must(t, c, err)
		if c.Original.Min != c.Original.Max || c.Worn.Min != c.Worn.Max {
			t.Fatalf("intervals from points: %v", c)
		}
		for _, q := range []struct {
			got  units.Length
			want float64
		}{{c.Original.Min.Value, centred}, {c.Worn.Min.Value, free}} {
			if q.got.In(mm) < q.want-1e-9 || (q.got-hundredth).In(mm) >= q.want {
				t.Fatalf("%v, the wall needs %.9f mm", q.got, q.want)
			}
		}
		if !slices.Equal(c.Unseen, []bore.Unseen{bore.UnseenScores, bore.UnseenElsewhere}) {
			t.Fatalf("unseen %v", c.Unseen)
		}
		more, err := bore.CleanUpRadial(w.points(), um, bore.Allowances{Locating: 7 * um, Surface: 4 * um})
		must(t, more, err)
		if more.Extra != 22*um || more.Original.Max.Value-c.Original.Max.Value != 22*um || more.Worn.Min.Value-c.Worn.Min.Value != 22*um {
			t.Fatalf("with allowances %v, without %v", more, c)
		}
		s, cos := math.Sincos(float64(c.Toward))
		cx, cy := c.Shift.In(mm)*cos, c.Shift.In(mm)*s
		for i := range w {
			r := (unwornRadius + w[i]).In(mm)
			s, cos := math.Sincos(float64(i) * math.Pi / 180)
			if d := math.Hypot(r*cos-cx, r*s-cy); d > c.Worn.Min.Value.In(mm)/2+1e-6 {
				t.Fatalf("the axis moved by %v toward %v: the point at %d° lies %g mm outside", c.Shift, c.Toward, i, d-c.Worn.Min.Value.In(mm)/2)
			}
		}
		// A diameter of two radii, or a circle through three: never better known than by three
		// that share the doubt, nor worse than by one.
		if u := c.Worn.Min.Std; c.Original.Min.Std != 2*um || u < 2*um*1000/1733 || u > 2*um*1000/1414 {
			t.Fatalf("doubt %v, %v", c.Original.Min.Std, u)
		}
	})
}

// Raising a worn reading, the unworn size held, never lowers any bound; neither does more
// allowance, nor a larger share.
func TestCleanUpIsMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := append(drawReadings(t), bore.Reading{Depth: 150 * mm, Diameter: 67 * mm})
		w := bore.Wear{UnwornAt: 150 * mm, Share: rapid.SampledFrom([]float64{0, 0.5, 0.6, 1}).Draw(t, "share")}
		if rapid.Bool().Draw(t, "from elsewhere") {
			w.Unworn.Value = 67 * mm
		}
		before, err := measure(t, rs).CleanUp(w)
		must(t, before, err)
		raised := slices.Clone(rs)
		raised[rapid.IntRange(0, len(rs)-2).Draw(t, "which")].Diameter += length(t, "by", 0, 300*um)
		g := measure(t, raised)
		for name, more := range map[string]bore.Wear{
			"reading": w,
			"pit":     {Unworn: w.Unworn, UnwornAt: w.UnwornAt, Share: w.Share, Pits: []bore.Pit{drawPit(t)}},
			"surface": {Unworn: w.Unworn, UnwornAt: w.UnwornAt, Share: w.Share, Allowances: bore.Allowances{Surface: length(t, "surface", 0, mm)}},
		} {
			after, err := g.CleanUp(more)
			must(t, after, err)
			for i, p := range [][2]uncertainty.Estimate{
				{before.Original.Min, after.Original.Min}, {before.Original.Max, after.Original.Max},
				{before.Worn.Min, after.Worn.Min}, {before.Worn.Max, after.Worn.Max},
			} {
				if p[1].Value < p[0].Value {
					t.Fatalf("more %s: bound %d fell from %v to %v", name, i, p[0], p[1])
				}
			}
		}
		if w.Share != 0 {
			w.Share = min(1, w.Share+0.1)
			after, err := measure(t, rs).CleanUp(w)
			if must(t, after, err); after.Original.Max.Value < before.Original.Max.Value {
				t.Fatalf("larger share: %v, %v", before, after)
			}
		}
	})
}

// What the gauge's setting is uncertain by moves largest and unworn alike and counts once; what
// each reading has to itself counts as often as it enters.
func TestCleanUpDoubt(t *testing.T) {
	rs := []bore.Reading{at(10, 0, "67.15 mm"), at(90, 0, "67 mm")}
	gauge := bore.Gauge{Standard: bore.Standard{Size: 67 * mm, Std: 4 * um}, Repeatability: um}
	g, err := bore.Analyse(rs, gauge)
	must(t, g, err)
	c, err := g.CleanUp(bore.Wear{UnwornAt: 90 * mm})
	must(t, c, err)
	// 2·largest − unworn: own √(4 + 1) µm, shared 4 µm once. Each step rounds up to a nanometre.
	within(t, "same gauge", c.Original.Max.Std, millimetres(math.Sqrt(5+16)/1000), 3*nm)
	within(t, "same gauge, one width", c.Worn.Min.Std, millimetres(math.Sqrt(1+16)/1000), 3*nm)
	c, err = g.CleanUp(bore.Wear{Unworn: uncertainty.Estimate{Value: 67 * mm, Std: 3 * um}})
	must(t, c, err)
	// 2·largest − unworn, nothing shared: √(4·17 + 9) µm.
	within(t, "from elsewhere", c.Original.Max.Std, millimetres(math.Sqrt(4*17+9)/1000), 3*nm)
}
