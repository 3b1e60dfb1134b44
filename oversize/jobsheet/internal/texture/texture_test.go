// SPDX-License-Identifier: BSD-3-Clause

package texture

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

const mm, um = units.Millimetre, units.Micrometre

// whole is a profile of five cut-offs of 0.8 mm, a point every so far.
func whole(step units.Length) Profile {
	r := rand.New(rand.NewPCG(15, 87))
	n := int(4*mm/step) + 1
	p := Profile{CutOff: 800 * um, Length: 4 * mm, Spacing: step, Heights: make([]units.Length, n)}
	for i := range p.Heights {
		p.Heights[i] = units.Length(r.NormFloat64()*300_000 + 500_000*math.Sin(float64(i)/3))
	}
	return p
}

// asPoints is the same profile by points.
func asPoints(p Profile) Profile {
	for i, z := range p.Heights {
		p.Points = append(p.Points, surface.Point{X: 3*mm + p.Spacing*units.Length(i), Z: z})
	}
	p.Heights, p.Spacing = nil, 0
	return p
}

// shift moves the points of a profile along.
func shift(p *Profile, by units.Length) {
	for i := range p.Points {
		p.Points[i].X += by - 3*mm
	}
}

// TestFaults: a profile that is whole has none; one that is short, coarse, of which a point is lost, slipped or of another
// unit, has one, at its place.
func TestFaults(t *testing.T) {
	const step = 8 * um
	for name, c := range map[string]struct {
		change func(p *Profile)
		at     string
		says   string
	}{
		"whole":                {func(p *Profile) {}, "", ""},
		"points":               {func(p *Profile) { *p = asPoints(*p) }, "", ""},
		"rounded points":       {func(p *Profile) { *p = asPoints(*p); p.Points[70].X += 79 * units.Nanometre }, "", ""},
		"no cut-off":           {func(p *Profile) { p.CutOff, p.Heights = 0, nil }, "", ""},
		"another cut-off":      {func(p *Profile) { p.CutOff = mm }, "cut_off", "0.8 mm or 2.5 mm"},
		"too short for coarse": {func(p *Profile) { p.CutOff = 2500 * um }, "length", "12.5 mm"},
		"both":                 {func(p *Profile) { p.Points = asPoints(*p).Points }, "points", "not both"},
		"points and spacing":   {func(p *Profile) { *p = asPoints(*p); p.Spacing = step }, "spacing", "points have places"},
		"nothing":              {func(p *Profile) { p.Heights = nil }, "heights", "missing"},
		"two heights":          {func(p *Profile) { p.Heights = p.Heights[:2] }, "length", "2 points 0.008 mm apart are 0.008 mm long"},
		"one height":           {func(p *Profile) { p.Heights = p.Heights[:1] }, "heights", "missing"},
		"as far as 5 m":        {func(p *Profile) { *p = asPoints(*p); shift(p, 4996*mm) }, "", ""},
		"no spacing":           {func(p *Profile) { p.Spacing = 0 }, "spacing", "missing"},
		"coarse":               {func(p *Profile) { p.Spacing = 9 * um }, "heights", "at most 0.008 mm"},
		"one lost":             {func(p *Profile) { p.Heights = p.Heights[1:] }, "length", "is one lost?"},
		"another length":       {func(p *Profile) { p.Length = 4800 * um }, "length", "is one lost?"},
		"four cut-offs":        {func(p *Profile) { p.Heights, p.Length = p.Heights[:401], 3200*um }, "length", "five cut-offs"},
		"another unit":         {func(p *Profile) { p.Heights[7] = -1200 * um }, "heights[7]", "within 1 mm"},
		"a point lost":         {func(p *Profile) { *p = asPoints(*p); p.Points = slices.Delete(p.Points, 200, 201) }, "points[", "is one lost, or slipped?"},
		"a point slipped":      {func(p *Profile) { *p = asPoints(*p); p.Points[70].X += 82 * units.Nanometre }, "points[70].x", "is one lost, or slipped?"},
		"points far away":      {func(p *Profile) { *p = asPoints(*p); p.Points[500].X = 6 * units.Metre }, "points[500].x", "at most 5 m"},
		"points backwards":     {func(p *Profile) { *p = asPoints(*p); slices.Reverse(p.Points) }, "points[0].x", "equal steps, of -0.008 mm"},
	} {
		p := whole(step)
		c.change(&p)
		list := p.Faults()
		if c.at == "" {
			if list != nil {
				t.Errorf("%s: %v", name, list)
			}
			continue
		}
		if len(list) != 1 || !strings.HasPrefix(list[0].At, c.at) || !strings.Contains(strings.ReplaceAll(list[0].Want.Error(), "5000 mm", "5 m"), c.says) {
			t.Errorf("%s: %v", name, list)
		}
	}
}

// TestShows: the parameters are those of package surface with the filter that goes with the cut-off, λs being left out where two
// steps are longer, and points show what heights do.
func TestShows(t *testing.T) {
	for _, c := range []struct {
		step  units.Length
		short units.Length
	}{{8 * um, 0}, {1250 * units.Nanometre, 2500 * units.Nanometre}, {1260 * units.Nanometre, 0}, {um, 2500 * units.Nanometre}} {
		p := whole(c.step)
		read, err := surface.FromHeights(c.step, p.Heights)
		if err != nil {
			t.Fatal(err)
		}
		want, err := read.Texture(surface.Filter{CutOff: 800 * um, Short: c.short, Sections: 5})
		got, gotErr := p.Texture()
		points, pointsErr := asPoints(p).Texture()
		if err != nil || gotErr != nil || pointsErr != nil || got != want || math.Abs(float64(points.Rk-want.Rk)) > float64(units.Nanometre) {
			t.Errorf("every %v: %v and %v, want %v; %v, %v, %v", c.step, got, points, want, err, gotErr, pointsErr)
		}
		five, err := p.Roughness()
		if err != nil || five.Curve().Plateau().Rk != want.Rk {
			t.Errorf("every %v: the drawn one: %v", c.step, err)
		}
	}
	if f := (Profile{CutOff: 2500 * um, Spacing: um}).filter(); f.Short != 8*um {
		t.Errorf("λs of a coarse wall: %v", f.Short)
	}
	if _, err := (Profile{}).Texture(); err == nil {
		t.Error("of nothing")
	}
	if _, err := (Profile{}).Roughness(); err == nil {
		t.Error("of nothing")
	}
}

// TestSame: alike in three parameters, and in all that both have.
func TestSame(t *testing.T) {
	of := func(ra, rz, rk units.Length, mr1 float64) *surface.Texture {
		return &surface.Texture{Heights: surface.Heights{Ra: ra, Rz: rz}, Plateau: surface.Plateau{Rk: rk, Mr1: mr1, Mr2: 0.8}}
	}
	another, left := of(400, 3000, 900, 0.08), of(400, 3000, 900, 0.08)
	another.Mr2, left.Mr2 = 0.81, 0
	a := of(400, 3000, 900, 0.08)
	for _, c := range []struct {
		b    *surface.Texture
		want bool
	}{
		{of(400, 3000, 900, 0.08), true}, {of(400, 3000, 900, 0), true}, {of(400, 3000, 900, 0.09), false}, {of(400, 3000, 901, 0.08), false},
		{another, false}, {left, true}, {of(400, 3000, 0, 0.08), false}, {of(0, 0, 0, 0), false}, {of(401, 3000, 900, 0.08), false},
	} {
		if Same(a, c.b) != c.want || Same(c.b, a) != c.want {
			t.Errorf("%v: not %v", c.b, c.want)
		}
	}
}

// TestApart: half as much again, or a tenth of a share, is near enough; a hair more is named, with both values.
func TestApart(t *testing.T) {
	shown := surface.Texture{Heights: surface.Heights{Ra: 400 * units.Nanometre}, Plateau: surface.Plateau{Rk: 900 * units.Nanometre, Mr1: 0.10, Mr2: 0.80}}
	read := surface.Texture{Heights: surface.Heights{Ra: 600 * units.Nanometre}, Plateau: surface.Plateau{Rk: 600 * units.Nanometre, Mr2: 0.75}}
	if list := Apart(read, shown); list != nil {
		t.Error(list)
	}
	read.Ra, read.Rk, read.Mr2, read.Rvk = read.Ra+1, read.Rk-1, 0.69, 2*um
	list := Apart(read, shown)
	if got := fmt.Sprint(list); got != fmt.Sprint([]Difference{{"ra", read.Ra, "0.400 µm"}, {"rk", read.Rk, "0.900 µm"}, {"rvk", read.Rvk, "0.000 µm"}, {"mr2", 0.69, "0.800"}}) {
		t.Error(got)
	}
}
