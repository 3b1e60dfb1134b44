// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
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
