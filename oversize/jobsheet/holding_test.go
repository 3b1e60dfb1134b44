// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// TestInterferenceThatHolds: both ends of what is said to hold prove the stress and the grip; a micrometre outside, the one or the
// other fails. Where none holds, the end that the stress allows does not grip, and the end that grips is too much.
func TestInterferenceThatHolds(t *testing.T) {
	const um = units.Micrometre
	for _, c := range []struct {
		runs  string
		holds bool
	}{{"140 ± 15 °C", true}, {"160 ± 15 °C", false}} {
		fit := func(d sleeve.Diametral) (s jobsheet.Sheet, stands, grips bool) {
			j := demoTrees(t)["sleeve-loose"]
			put(t, j, "engine.running.bore", c.runs)
			put(t, j, "engine.sleeve.hole", nil)
			put(t, j, "engine.sleeve.shaft", nil)
			put(t, j, "engine.sleeve.interference", d.Min.Format(units.Millimetre, 6)+" to "+d.Max.Format(units.Millimetre, 6))
			s = mustPlan(t, j)
			state := map[string]jobsheet.State{}
			for _, r := range s.Ledger {
				if name(r.Demand) == "sleeve" {
					state[r.Of] = r.State
				}
			}
			proven := jobsheet.StateProven
			return s, state["stress in the sleeve"] == proven && state["stress in the barrel"] == proven, state["grip"] == proven
		}
		s, stands, grips := fit(sleeve.Diametral{Min: 110 * um, Max: 140 * um})
		if stands || grips || s.Sleeve.Holding == nil {
			t.Fatalf("0.11 to 0.14 mm: stands %v, grips %v, holding %v", stands, grips, s.Sleeve.Holding)
		}
		d := *s.Sleeve.Holding
		if d.Min <= d.Max != c.holds {
			t.Fatalf("running at %s: %+v", c.runs, d)
		}
		// By the joint's own inverse: 2/3 of the iron's tensile strength in compression; of the aluminium's yield strength the same
		// as the greatest difference of two stresses, p·(Ko + 1), of which the hoop stress is p·Ko, most where the barrel is thinnest.
		joint := s.Sleeve.Joint
		const ko = (88*88. + 73*73) / (88*88 - 73*73)
		most := units.MaxLength
		for _, j := range []sleeve.Joint{joint, s.Sleeve.Hone.Joint} { // as fitted, and once it is honed thinner
			m, err := j.GreatestInterference(joint.Barrel.Yield/1.5*ko/(ko+1), joint.Sleeve.Tensile/1.5)
			if err != nil {
				t.Fatal(err)
			}
			most = min(most, m)
		}
		if most.Floor(um) != d.Max {
			t.Errorf("greatest %v; said %v", most, d.Max)
		}
		if _, stands, _ := fit(sleeve.Diametral{Min: d.Max, Max: d.Max}); !stands {
			t.Errorf("running at %s: %v is not borne", c.runs, d.Max)
		}
		if _, stands, _ := fit(sleeve.Diametral{Min: d.Max, Max: d.Max + um}); stands {
			t.Errorf("running at %s: %v is borne", c.runs, d.Max+um)
		}
		if _, _, grips := fit(sleeve.Diametral{Min: d.Min, Max: d.Min}); !grips {
			t.Errorf("running at %s: %v does not grip", c.runs, d.Min)
		}
		if _, _, grips := fit(sleeve.Diametral{Min: d.Min - um, Max: d.Min}); grips {
			t.Errorf("running at %s: %v grips", c.runs, d.Min-um)
		}
		b := asPrinted(t, s)
		text := unbroken(b)
		if strings.Contains(text, "less interference") || !strings.Contains(text, "SLEEVE: interference") || strings.Contains(text, "interference none") == c.holds {
			t.Error(text)
		}
	}
}
