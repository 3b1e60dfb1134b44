// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"maps"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// TestAnotherCylinderRepeatsNothing: that the same place was read in another cylinder, or twice there, says nothing of how
// the readings of this one scatter.
func TestAnotherCylinderRepeatsNothing(t *testing.T) {
	j := finished(false, false)
	for path, v := range map[string]any{"gauge.repeatability": nil, "cylinders.0.proof": nil, "counted.proof": nil, "engine.one_size": false} {
		put(t, j, path, v)
	}
	alone := mustPlan(t, j).Cylinders[0].Bore.Largest.Size.Std
	one := j["cylinders"].([]any)[0].(tree)
	readings := one["readings"].([]any)
	for name, more := range map[string][]any{"read once": nil, "one place twice": readings[:1]} {
		other := maps.Clone(one)
		other["name"], other["readings"] = "other", append(readings[:len(readings):len(readings)], more...)
		put(t, j, "cylinders", []any{one, other})
		put(t, j, "engine.cylinders", 2)
		put(t, j, "counted.readings", 2*len(readings)+len(more))
		s := mustPlan(t, j)
		if got := s.Cylinders[0].Bore.Largest.Size.Std; got < alone {
			t.Errorf("%s: %v, alone %v", name, got, alone)
		}
		said := false
		for _, a := range s.Assumed {
			said = said || strings.HasPrefix(a.Says, "one reading scatters by 0.001 mm")
		}
		if !said {
			t.Errorf("%s: taken and not said: %v", name, s.Assumed)
		}
	}
}

// TestOneReadingWrittenTwice: a reading that was written down twice, to the last digit, does not show how readings scatter.
func TestOneReadingWrittenTwice(t *testing.T) {
	for _, list := range []string{"readings", "proof"} {
		j := finished(false, false)
		put(t, j, "gauge.repeatability", nil)
		c := cylinderOf(j, 0)
		put(t, c, "readings", once(c["readings"]))
		put(t, c, "proof", once(c["proof"]))
		std := func(again int) units.Length {
			all := once(c[list])
			put(t, j, "cylinders.0."+list, append(all, all[:again]...))
			put(t, j, "counted.readings", len(c["readings"].([]any)))
			put(t, j, "counted.proof", len(c["proof"].([]any)))
			s := mustPlan(t, j)
			put(t, c, list, all)
			if list == "proof" {
				return s.Cylinders[0].Proof.Bore.Smallest.Size.Std
			}
			return s.Cylinders[0].Bore.Smallest.Size.Std
		}
		alone := std(0)
		if twice := std(1); twice < alone*9/10 { // what that one place has to itself is halved
			t.Errorf("%s: %v with one of them written twice, %v without", list, twice, alone)
		}
	}
}

// once returns readings with each place read once.
func once(readings any) (list []any) {
	seen := map[string]bool{}
	for _, r := range readings.([]any) {
		at := fmt.Sprint(r.(tree)["depth"], r.(tree)["axis"])
		if !seen[at] {
			list = append(list, r)
		}
		seen[at] = true
	}
	return list
}

// TestAxisWrittenAnotherWay: a place is the place whatever its axis is called: thrust is 180°, and 720° too.
func TestAxisWrittenAnotherWay(t *testing.T) {
	for _, axis := range []string{"thrust", "180°", "720°"} {
		j := finished(false, false)
		put(t, j, "gauge.repeatability", nil)
		c := cylinderOf(j, 0)
		again := maps.Clone(c["readings"].([]any)[0].(tree))
		for _, r := range c["readings"].([]any) {
			if r.(tree)["axis"] == "thrust" {
				again = maps.Clone(r.(tree))
			}
		}
		d := numberOf(t, again["diameter"])
		again["axis"], again["diameter"] = axis, fmt.Sprintf("%.4f mm", d-0.009)
		all := append(c["readings"].([]any), any(again))
		put(t, c, "readings", all)
		put(t, j, "counted.readings", len(all))
		if s := mustPlan(t, j); !anyRowSays(s, "from another reading of the same place") {
			t.Errorf("%s: 9 steps apart, and nothing asked: %v", axis, s.Next)
		}
	}
	// The survey's readings with their axes turned by half a turn are no second look.
	j := finished(false, false)
	c := cylinderOf(j, 0)
	var proof []any
	for _, r := range c["readings"].([]any) {
		turned := maps.Clone(r.(tree))
		var a bore.Axis
		if err := a.UnmarshalText([]byte(turned["axis"].(string))); err != nil {
			t.Fatal(err)
		}
		turned["axis"] = fmt.Sprintf("%.0f°", units.Angle(a).In(units.Degree)+180)
		proof = append(proof, turned)
	}
	put(t, c, "proof", proof)
	put(t, j, "counted.proof", len(proof))
	if r := rowOf(t, mustPlan(t, j), "engine.cylinders[0].proof.usual"); r.State != jobsheet.StateOpen || !strings.Contains(r.Says, "once more") {
		t.Errorf("turned: %v", r.Stands)
	}
}
