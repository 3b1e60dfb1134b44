// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore/surface"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// profileOf is the profile of the traced demo, as it stands in its file.
func profileOf(j tree) tree { return cylinderOf(j, 0)["profiles"].([]any)[0].(tree) }

// asPoints turns the heights of a profile into points.
func asPoints(p tree) {
	var list []any
	for i, z := range p["heights"].([]any) {
		list = append(list, tree{"x": fmt.Sprintf("%.3f mm", 0.008*float64(i)), "z": z})
	}
	delete(p, "heights")
	delete(p, "spacing")
	p["points"] = list
}

// TestProfileIsARead: what a profile shows is what package surface makes of it, and it decides as if an instrument had
// shown that.
func TestProfileIsARead(t *testing.T) {
	j := tracedDemo(t)
	before := mustPlan(t, j)
	shown := before.Cylinders[0].Profiles
	var zs []units.Length
	for _, z := range profileOf(j)["heights"].([]any) {
		zs = append(zs, units.MustParseLength(z.(string)))
	}
	p := must(surface.FromHeights(8*units.Micrometre, zs))(t)
	want := must(p.Texture(surface.Filter{CutOff: 800 * units.Micrometre, Sections: 5}))(t) // λs is below two steps
	if len(shown) != 1 || shown[0] != (surface.Reading{Place: "near the skirt, pin", Texture: want}) {
		t.Fatalf("%v, want %v", shown, want)
	}
	wall := must(surface.Analyse(append(before.Job.Cylinders[0].Texture, shown...), before.Job.Gauge.Profiler))(t)
	for i, name := range []string{"Rpk", "Rk", "Rvk"} {
		v := wall.Values[slices.IndexFunc(wall.Values, func(v surface.Value) bool { return v.Parameter == name })]
		if got := before.Cylinders[0].Texture[i].Value; got.Length != v.Length || v.Places.DoF != 5 {
			t.Errorf("%v, want %v", got, v)
		}
	}
	var html bytes.Buffer
	if err := before.WriteHTML(&html); err != nil || !strings.Contains(html.String(), "Texture: near the skirt, pin") {
		t.Errorf("no picture of the profile: %v", err)
	}
	asPoints(profileOf(j))
	if got := mustPlan(t, j).Cylinders[0]; got.Profiles[0] != shown[0] || !slices.EqualFunc(got.Texture, before.Cylinders[0].Texture, func(a, b surface.Finding) bool { return a.String() == b.String() }) {
		t.Errorf("as points %v, want %v", got.Profiles, shown)
	}
	// Alone it is one place, by which nothing is decided.
	delete(cylinderOf(j, 0), "texture")
	put(t, j, "counted.textures", 1)
	if r := rowOf(t, mustPlan(t, j), "cylinders[0].texture"); r.State != jobsheet.StateOpen {
		t.Errorf("by one place: %v", r)
	}
	// λs goes with points that are near enough to show it.
	fine := tracedDemo(t)
	put(t, fine, "cylinders.0.profiles.0.spacing", "0.001 mm")
	zs = slices.Repeat(zs, 10)[:4501]
	var list []any
	for _, z := range zs {
		list = append(list, z.String())
	}
	put(t, fine, "cylinders.0.profiles.0.heights", list)
	put(t, fine, "cylinders.0.profiles.0.length", "4.5 mm")
	p = must(surface.FromHeights(units.Micrometre, zs))(t)
	want = must(p.Texture(surface.Filter{CutOff: 800 * units.Micrometre, Short: 2500 * units.Nanometre}))(t)
	if got := mustPlan(t, fine).Cylinders[0].Profiles[0].Texture; got != want {
		t.Errorf("with λs %v, want %v", got, want)
	}
}

// TestProfileRefused: a profile that is short, that has lost a point or has one slipped is refused where it stands.
func TestProfileRefused(t *testing.T) {
	const at = "cylinders[0].profiles[0]"
	heights := func(n int) func(tree) {
		return func(p tree) { p["heights"] = p["heights"].([]any)[n:] }
	}
	point := func(i int, x string) func(tree) {
		return func(p tree) { asPoints(p); p["points"].([]any)[i].(tree)["x"] = x }
	}
	field := func(name string, v any) func(tree) {
		return func(p tree) {
			if p[name] = v; v == nil {
				delete(p, name)
			}
		}
	}
	for _, c := range []struct {
		change func(tree)
		want   string
	}{
		{heights(1), at + ".length: \"4 mm\": 500 points 0.008 mm apart are 3.992 mm long: is one lost?"},
		{heights(501), at + ".heights: 0: missing: want the heights, or points"},
		{field("heights", nil), at + ".heights: 0: missing"},
		{field("spacing", nil), at + ".spacing: \"0 mm\": missing: want how far apart the heights are"},
		{field("spacing", "-0.008 mm"), at + ".spacing: \"-0.008 mm\": missing"},
		{field("spacing", "0.08 mm"), at + ".heights: \"0.08 mm\": so far apart: want at most 0.008 mm for this cut-off"},
		{field("spacing", "0.0008 mm"), at + ".length: \"4 mm\": 501 points 0.0008 mm apart are 0.4 mm long"},
		{field("length", nil), at + ".length: missing: want how far it is"},
		{field("length", "4.8 mm"), at + ".length: \"4.8 mm\": 501 points 0.008 mm apart are 4 mm long: is one lost?"},
		{field("cut_off", nil), at + ".cut_off: missing: want \"0.8 mm\""},
		{field("cut_off", "0.08 mm"), at + ".cut_off: \"0.08 mm\": want 0.8 mm or 2.5 mm"},
		{field("cut_off", "2.5 mm"), at + ".length: \"4 mm\": want five cut-offs, 12.5 mm, or more"},
		{field("place", nil), at + ".place: missing: want where on the wall"},
		{func(p tree) { p["heights"].([]any)[7] = "-1.2 mm" }, at + ".heights[7]: \"-1.2 mm\": want it within 1 mm of the first"},
		{field("points", []any{tree{"x": "0 mm", "z": "1 µm"}}), at + ".points: want either these or heights, not both"},
		{func(p tree) { asPoints(p); p["spacing"] = "0.008 mm" }, at + ".spacing: \"0.008 mm\": points have places"},
		{func(p tree) { asPoints(p); p["points"] = slices.Delete(p["points"].([]any), 200, 201) }, at + ".points["},
		{func(p tree) { asPoints(p); p["points"] = p["points"].([]any)[1:] }, at + ".length: \"4 mm\": 500 points"},
		{point(300, "24 mm"), at + ".points[300].x: \"24 mm\": want equal steps"},
		{point(300, "2400 m"), at + ".points[300].x: \"2400 m\": want at most"},
		{point(500, "400 mm"), at + ".points["},
		{func(p tree) { asPoints(p); slices.Reverse(p["points"].([]any)) }, at + ".points["},
	} {
		j := tracedDemo(t)
		c.change(profileOf(j))
		if _, err := planned(t, j); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v\nwant %s", err, c.want)
		}
	}
	j := tracedDemo(t)
	put(t, j, "cylinders.0.profiles", nil)
	if _, err := planned(t, j); err == nil || !strings.Contains(err.Error(), "counted.textures: 6: the job holds 5") {
		t.Errorf("without its profile: %v", err)
	}
}

// TestProfileIsAsked: a height that stands alone, a profile that stands at two places and parameters that are not those of the
// profile at their place are asked about, and go once confirmed.
func TestProfileIsAsked(t *testing.T) {
	beside := func(name string, v any) func(tree) {
		return func(j tree) {
			list := cylinderOf(j, 0)["texture"].([]any)
			list[0] = tree{"place": "near the skirt, pin", "texture": tree{"rpk": "0.21 µm", "rk": "0.72 µm", "rvk": "1.55 µm", "mr1": 0.085, "mr2": 0.815}}
			put(t, list[0], "texture."+name, v)
		}
	}
	for _, c := range []struct {
		change      func(tree)
		path, value string
	}{
		{func(j tree) { profileOf(j)["heights"].([]any)[99] = "31 µm" }, "cylinders[0].profiles[0].heights[99]", "0.031 mm"},
		{func(j tree) { profileOf(j)["heights"].([]any)[98] = "-31 µm" }, "cylinders[0].profiles[0].heights[98]", "-0.031 mm"},
		{func(j tree) {
			again := tree{"place": "elsewhere"}
			for _, name := range []string{"cut_off", "length", "spacing", "heights"} {
				again[name] = profileOf(j)[name]
			}
			cylinderOf(j, 0)["profiles"] = []any{profileOf(j), again}
			put(t, j, "counted.textures", 7)
		}, "cylinders[0].profiles[1]", "501 heights, -0.00278 mm to 0.00079 mm"},
		{beside("rpk", "2.1 µm"), "cylinders[0].texture[0].texture.rpk", "0.0021 mm"},
		{beside("rk", "0.072 µm"), "cylinders[0].texture[0].texture.rk", "0.000072 mm"},
		{beside("rvk", "15.5 µm"), "cylinders[0].texture[0].texture.rvk", "0.0155 mm"},
		{beside("ra", "4 µm"), "cylinders[0].texture[0].texture.ra", "0.004 mm"},
		{beside("rq", "5 µm"), "cylinders[0].texture[0].texture.rq", "0.005 mm"},
		{beside("mr1", 0.3), "cylinders[0].texture[0].texture.mr1", "0.3"},
		{beside("mr2", 0.6), "cylinders[0].texture[0].texture.mr2", "0.6"},
		{beside("rk", "0.72 µm"), "", ""}, // they agree
	} {
		j := tracedDemo(t)
		c.change(j)
		asked := func() (list []string) {
			for _, r := range mustPlan(t, j).Ledger {
				if name(r.Demand) == "usual" && r.State == jobsheet.StateOpen {
					list = append(list, r.Says)
				}
			}
			return list
		}
		if c.path == "" {
			if got := asked(); len(got) > 0 {
				t.Errorf("asked about what agrees: %v", got)
			}
			continue
		}
		if got := asked(); len(got) != 1 || !strings.HasPrefix(got[0], c.path+" "+c.value) {
			t.Errorf("%s: asked %q", c.path, got)
		}
		put(t, j, "confirmed", []any{tree{"field": c.path, "value": c.value}})
		if got := asked(); len(got) > 0 {
			t.Errorf("%s: confirmed, and asked %q", c.path, got)
		}
	}
}
