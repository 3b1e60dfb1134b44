// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// atPlaces has the traced demo read the texture at places, none by a profile: each reading a little off the one before.
func atPlaces(t *testing.T, places ...string) tree {
	t.Helper()
	j := tracedDemo(t)
	var list []any
	for i, place := range places {
		list = append(list, tree{"place": place, "texture": tree{"rpk": fmt.Sprintf("0.2%d µm", i), "rk": fmt.Sprintf("0.7%d µm", i), "rvk": fmt.Sprintf("1.3%d µm", i)}})
	}
	put(t, j, "cylinders.0.profiles", nil)
	put(t, j, "cylinders.0.texture", list)
	put(t, j, "counted.textures", len(list))
	return j
}

// TestOnePlaceByManyNames: one place decides nothing, with whatever blanks and capitals its name is written, and a place
// without a name is none.
func TestOnePlaceByManyNames(t *testing.T) {
	for _, c := range []struct {
		places []string
		state  jobsheet.State
	}{
		{[]string{"thrust", "thrust", "thrust"}, jobsheet.StateOpen},
		{[]string{"thrust", "Thrust ", "thr ust"}, jobsheet.StateOpen},
		{[]string{"thrust", "pin", "other pin"}, jobsheet.StateProven},
	} {
		if r := rowOf(t, mustPlan(t, atPlaces(t, c.places...)), "cylinders[0].texture"); r.State != c.state {
			t.Errorf("at %q: %v", c.places, r.Stands)
		}
	}
	for _, none := range []any{nil, "", " "} {
		j := atPlaces(t, "thrust", "thrust", "thrust")
		put(t, j, "cylinders.0.texture.1.place", none)
		if _, err := planned(t, j); err == nil || !strings.Contains(err.Error(), "cylinders[0].texture[1].place") {
			t.Errorf("place %v: %v", none, err)
		}
		j = tracedDemo(t)
		put(t, j, "cylinders.0.profiles.0.place", none)
		if _, err := planned(t, j); err == nil || !strings.Contains(err.Error(), "cylinders[0].profiles[0].place") {
			t.Errorf("place %v of a profile: %v", none, err)
		}
	}
	// A profile stands beside the reading at its place, however that is written.
	j := tracedDemo(t)
	put(t, j, "cylinders.0.texture.0", tree{"place": "Near the skirt,  pin", "texture": tree{"rpk": "2.1 µm", "rk": "0.72 µm", "rvk": "1.55 µm"}})
	if s := mustPlan(t, j); s.Next != jobsheet.StepTell {
		t.Errorf("ten times the profile's Rpk: %v", s.Next)
	}
}

// TestCopiesAreAsked: what was taken at one place stands at no other, nor in another cylinder, as the same values, a profile
// not with the instrument set or levelled anew either; and is confirmed where it is right.
func TestCopiesAreAsked(t *testing.T) {
	levelled := func(j tree) tree { // higher, tilted, and to the other scale's next step
		again := tree{"place": "elsewhere"}
		for name, v := range profileOf(j) {
			if name != "place" && name != "heights" {
				again[name] = v
			}
		}
		var list []any
		for i, z := range profileOf(j)["heights"].([]any) {
			list = append(list, fmt.Sprintf("%.4f µm", 3+0.002*float64(i)+1.02*units.MustParseLength(z.(string)).In(units.Micrometre)))
		}
		again["heights"] = list
		return again
	}
	other := func(j tree) tree { // a second cylinder, as the first is but for one step in every reading
		copied := maps.Clone(cylinderOf(j, 0))
		copied["name"] = "2"
		put(t, j, "cylinders", []any{cylinderOf(j, 0), copied})
		put(t, j, "engine.cylinders", 2)
		put(t, j, "engine.one_size", false)
		for _, n := range []string{"readings", "proof", "textures", "traces", "pits"} {
			if v, ok := j["counted"].(tree)[n]; ok {
				put(t, j, "counted."+n, fmt.Sprint(v))
				switch v := v.(type) {
				case int:
					put(t, j, "counted."+n, 2*v)
				case float64:
					put(t, j, "counted."+n, 2*v)
				}
			}
		}
		return copied
	}
	for _, c := range []struct {
		job   func() tree
		asked string
	}{
		{func() tree {
			j := atPlaces(t, "thrust", "pin", "other pin")
			put(t, j, "cylinders.0.texture.2.texture", cylinderOf(j, 0)["texture"].([]any)[0].(tree)["texture"])
			return j
		}, "cylinders[0].texture[2]"},
		{func() tree {
			j := tracedDemo(t)
			cylinderOf(j, 0)["profiles"] = []any{profileOf(j), levelled(j)}
			put(t, j, "counted.textures", 7)
			return j
		}, "cylinders[0].profiles[1]"},
		{func() tree { j := tracedDemo(t); other(j); return j }, "cylinders[1].traces[0]"},
		{func() tree { j := tracedDemo(t); other(j); return j }, "cylinders[1].proof_traces[1]"},
		{func() tree { j := tracedDemo(t); other(j); return j }, "cylinders[1].texture[3]"},
	} {
		j := c.job()
		slip := func() string {
			for _, r := range mustPlan(t, j).Ledger {
				if name(r.Demand) == "usual" && r.Of == c.asked && r.State == jobsheet.StateOpen {
					return r.Says
				}
			}
			return ""
		}
		says := slip()
		value, _, ok := strings.Cut(strings.TrimPrefix(says, c.asked+" "), ": ")
		if !ok {
			t.Errorf("%s is not asked about", c.asked)
			continue
		}
		put(t, j, "confirmed", []any{tree{"field": c.asked, "value": value}})
		if again := slip(); again != "" {
			t.Errorf("%s is confirmed, and asked about: %s", c.asked, again)
		}
	}
}

// TestTexturesAreBounded: each is held against all before it, so that there are at most a thousand in all.
func TestTexturesAreBounded(t *testing.T) {
	for n, refused := range map[int]bool{500: false, 501: true} {
		j := fullJobs(t)["full, bored"]
		for i := range 2 {
			put(t, j, fmt.Sprintf("cylinders.%d.texture", i), slices.Repeat(cylinderOf(j, i)["texture"].([]any)[:1], n))
		}
		put(t, j, "counted.textures", 2*n)
		if _, err := planned(t, j); (err != nil) != refused {
			t.Errorf("2 × %d: %v", n, err)
		}
	}
}

// TestTextureOfAnUnknownInstrument: to leave out what is known of the instrument is not to know it exactly.
func TestTextureOfAnUnknownInstrument(t *testing.T) {
	j := atPlaces(t, "thrust", "pin", "other pin")
	std := func() units.Length {
		f := mustPlan(t, j).Cylinders[0].Texture[0]
		return f.Value.Length.Std
	}
	known := std()
	put(t, j, "gauge.profiler.resolution", nil)
	if got := std(); got < known {
		t.Errorf("without the step of the instrument ± %v, with it ± %v", got, known)
	}
	put(t, j, "gauge.profiler.digit_of_share", nil)
	put(t, j, "gauge.profiler.relative", nil)
	if got := std(); got < known {
		t.Errorf("without the doubt of the instrument ± %v, with it ± %v", got, known)
	}
	if s := mustPlan(t, j); !slices.ContainsFunc(s.Assumed, func(r jobsheet.Remark) bool { return r.On == "gauge.profiler.relative" }) {
		t.Errorf("taken and not said: %v", s.Assumed)
	}
}

// TestInstrumentSlippedByTen: an instrument of which less doubt is stated than any has is asked about, or more.
func TestInstrumentSlippedByTen(t *testing.T) {
	j := atPlaces(t, "thrust", "pin", "other pin", "other thrust")
	for path, values := range map[string][]any{
		"gauge.profiler.relative": {0.0025, 0.25}, "gauge.profiler.resolution": {"0.0001 µm", "1 µm"}, "gauge.profiler.digit_of_share": {0.00001, 0.1},
	} {
		before := mustPlan(t, j).Next
		for _, v := range values {
			put(t, j, path, v)
			if next := mustPlan(t, j).Next; next != jobsheet.StepTell || before != jobsheet.StepReassemble {
				t.Errorf("%s %v: %v, before %v", path, v, next, before)
			}
		}
		put(t, j, path, nil)
		put(t, j, "engine.texture", tree{"rk": "0.3 to 1.5 µm"}) // which is within by the doubt that is taken too
	}
}

// TestPitTowardsThrust: 0° is a direction like any other; left out, a pit may be at the worst one.
func TestPitTowardsThrust(t *testing.T) {
	cleanUp := func(at any) units.Length {
		j := finished(true, false)
		pit := tree{"below": "0.2 mm", "depth": "40 mm", "length": "5 mm"}
		put(t, pit, "at", at)
		cylinderOf(j, 0)["pits"] = []any{pit}
		put(t, j, "counted.pits", 1)
		return mustPlan(t, j).Cylinders[0].CleanUp.Original.Max.Value
	}
	thrust, turn, across, anywhere := cleanUp("0°"), cleanUp("360°"), cleanUp("90°"), cleanUp(nil)
	if thrust != turn || !(across < thrust) || anywhere < thrust {
		t.Errorf("clean-up with a pit at 0° %v, at 360° %v, at 90° %v, nobody knows where %v", thrust, turn, across, anywhere)
	}
}
