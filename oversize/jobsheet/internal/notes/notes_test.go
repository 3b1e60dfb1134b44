// SPDX-License-Identifier: BSD-3-Clause

package notes

import (
	"slices"
	"strings"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/rings"
)

// works are all kinds of work on a wall that is bored, and one of each other wall.
func works() (all []Work) {
	yes, no := true, false
	for bits := range 1 << 9 {
		on := func(bit int) bool { return bits>>bit&1 == 1 }
		is := Work{
			Wall: oversize.BareIron, TwoStroke: on(0), Cylinders: 1 + bits>>4&1, Bored: on(1), Sleeved: on(2), Kept: on(3), Ridged: on(3) && on(4), Stroke: on(4),
			Decided: on(5), Open: !on(5) && on(6), Machined: on(7), Ready: on(7) && on(6), TorquePlate: []*bool{nil, &yes, &no}[bits%3],
			Hone: []hone.Kind{0, hone.RigidStone, hone.BallType}[bits%3], Drive: []hone.Drive{hone.ByHand, hone.ByMachine}[bits/3%2],
		}
		if on(8) {
			is.Rings = []string{"top", "second", "oil"}[:1+2*(bits>>2&1)]
		}
		all = append(all, is)
	}
	for _, wall := range []oversize.Wall{0, oversize.IronSleeve, oversize.Plated, oversize.BareAlSi} {
		all = append(all, Work{Wall: wall, Cylinders: 2})
	}
	return all
}

// ofKind is how many cautions belong to a kind of hone, those of any work left out.
func ofKind(k hone.Kind) (n int) {
	for _, c := range k.Cautions() {
		n += one(!c.AnyWork)
	}
	return n
}

func one(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// TestNotes holds the notes of every kind of work to what must be said of it.
func TestNotes(t *testing.T) {
	order := []string{AnyWork, Stripping, Measuring, Boring, Honing, FittingRings, Sleeving, Washing, GoingTogether}
	for _, is := range works() {
		checks, cautions := is.Checklist(), is.Cautions()
		says := map[string]bool{}
		for _, n := range slices.Concat(checks, cautions) {
			if says[n.Says] || n.Says == "" {
				t.Fatalf("%+v: said twice: %q", is, n.Says)
			}
			says[n.Says] = true
			if is.Behind(n.On) {
				t.Fatalf("%+v: %s lies behind: %q", is, n.On, n.Says)
			}
		}
		if !slices.IsSortedFunc(cautions, func(a, b Note) int { return slices.Index(order, a.On) - slices.Index(order, b.On) }) {
			t.Fatalf("%+v: not in the order of the work", is)
		}
		of := func(list []Note, op, part string) (n int) {
			for _, one := range list {
				if one.On == op && strings.Contains(one.Says, part) {
					n++
				}
			}
			return n
		}
		cut, ringed, now := is.Bored || is.Sleeved, len(is.Rings) > 0, !is.Machined
		honed, hones := cut || is.Kept, cut || is.Kept || is.Stroke
		clamped := is.TorquePlate != nil && *is.TorquePlate
		for _, c := range []struct {
			what      string
			said, due bool
		}{
			{"the manual", of(cautions, AnyWork, "The maker's manual, local rules") == 1, true},
			{"eyes", of(cautions, AnyWork, "Guard the eyes") == 1, true},
			{"which wall it is", of(checks, Measuring, "Wall: ") == 1, !is.Machined},
			{"how it was clamped", of(checks, Measuring, "torque plate") == 1, !is.Machined},
			{"undecided", of(checks, Measuring, "Undecided: do not reassemble") == 1, is.Open && !is.Machined},
			{"pistons before the cut", of(checks, Boring, "New pistons measured") == 1, is.Decided && is.Bored && !is.Machined},
			{"heat of a sleeve", of(cautions, Sleeving, "Hot parts and cold gases burn") == 1, is.Sleeved && !is.Machined},
			{"stones to size", of(cautions, Boring, "follows the wall and takes no size") == 1, cut && is.Hone != hone.RigidStone && !is.Machined},
			{"a drill grabs", of(cautions, Honing, "A slow drill grabs") == 1, (cut || is.Kept || is.Stroke) && is.Drive != hone.ByMachine && !is.Machined},
			{"ridge", of(checks, Honing, "The ridge at the top taken off") == 1, is.Decided && is.Ridged && len(is.Rings) > 0 && !is.Machined},
			{"ports whole", of(checks, Measuring, "Ports: edges whole") == 1, is.TwoStroke && now},
			{"sleeve measured", of(checks, Sleeving, "The sleeve measured first") == 1, is.Decided && is.Sleeved && now},
			{"sleeve home", of(checks, Sleeving, "Sleeve home on its step") == 1, is.Decided && is.Sleeved && now},
			{"sleeve to its piston", of(checks, Sleeving, "Bored and honed to the piston") == 1, is.Decided && is.Sleeved && now},
			{"ports of a sleeve", of(cautions, Sleeving, "Every port of the sleeve") == 1, is.Sleeved && is.TwoStroke && now},
			{"pistons weighed", of(checks, Boring, "New pistons weighed") == 1, is.Decided && is.Bored && is.Cylinders > 1 && now},
			{"oil ways", of(checks, Boring, "Oil ways") == 1, is.Decided && is.Bored && now},
			{"plate for a cut", of(checks, Boring, "The torque plate on for every cut") == 1, is.Decided && cut && clamped && now},
			{"plate for the hone", of(checks, Honing, "The torque plate on, as for") == 1, is.Decided && honed && clamped && now},
			{"edges before a stone", of(checks, Honing, "dressed after boring") == 1, is.Decided && cut && is.TwoStroke && now},
			{"edges after honing", of(checks, Honing, "dressed lightly again") == 1, is.Decided && honed && is.TwoStroke && now},
			{"cool before the last passes", of(checks, Honing, "Honed; stopped to cool") == 1, is.Decided && honed && now},
			{"chamfer", of(cautions, Boring, "Restore the chamfer") == 1, cut && now},
			{"the bar stopped", of(cautions, Boring, "The bar or machine stopped") == 1, cut && now},
			{"a bridge", of(cautions, Boring, "A bridge across a wide port") == 1, cut && is.TwoStroke && now},
			{"stones over ports", of(cautions, Honing, "Stones have to be long enough") == 1, hones && is.TwoStroke && now},
			{"what the kind of hone calls for", of(cautions, Honing, "") == ofKind(is.Hone)*one(hones && now)+one(hones && now && is.Drive != hone.ByMachine)+one(hones && now && is.TwoStroke), true},
			{"gaps in the finished bore", of(checks, FittingRings, "Each ring's gap measured") == 1, ringed},
			{"which side up, two-stroke", of(checks, FittingRings, "Each ring with the side up") == 1, ringed && is.TwoStroke},
			{"which side up", of(checks, FittingRings, "Rings staggered, each with the side up") == 1, ringed && !is.TwoStroke},
			{"what rings call for", of(cautions, FittingRings, "") == one(ringed)*(1+len(rings.Cautions()))+one(ringed && is.TwoStroke), true},
			{"to their own bores", of(checks, GoingTogether, "Each piston in the bore") == 1, is.Ready},
			{"gaskets", of(checks, GoingTogether, "New gaskets") == 1, is.Ready},
			{"turned by hand", of(checks, GoingTogether, "Turned two full turns") == 1 && of(cautions, GoingTogether, "While it is turned by hand") == 1, is.Ready},
			{"first run", of(checks, GoingTogether, "First run") == 1, is.Ready},
			{"at their pegs", of(checks, GoingTogether, "Pegged rings at their pegs; no end over a port.") == 1, is.Ready && is.TwoStroke},
			{"by the maker alone", of(checks, GoingTogether, "Ring gaps where the maker puts them.") == 1, is.Ready && !is.TwoStroke && len(is.Rings) < 2},
			{"rings cut", of(cautions, FittingRings, "Ring edges cut") == 1, len(is.Rings) > 0},
			{"pegs", of(checks, FittingRings, "Pegged rings") == 1, len(is.Rings) > 0 && is.TwoStroke},
			{"the wash", of(checks, Washing, "white cloth") == 1 && of(cautions, Washing, "white cloth") == 1, true},
			{"air at skin", of(cautions, Washing, "never at skin") == 1, true},
			{"fumes", of(cautions, GoingTogether, "Exhaust gas kills") == 1, is.Ready},
			{"weights", of(checks, GoingTogether, "weighed") == 1, is.Ready && is.Cylinders > 1},
			{"staggered", of(checks, GoingTogether, "from thrust: top ") == 1, is.Ready && !is.TwoStroke && len(is.Rings) == 3},
		} {
			if c.said != c.due {
				t.Fatalf("%+v: %s: said %v, due %v", is, c.what, c.said, c.due)
			}
		}
		if uncut := (Work{Wall: oversize.BareIron}); cut && len(is.Cautions()) <= len(uncut.Cautions()) && !is.Machined {
			t.Fatalf("%+v: a cut calls for no caution more", is)
		}
	}
}

// TestEveryNoteIsDue: a line that no work calls for is none, nor is one that all do where it hangs on something.
func TestEveryNoteIsDue(t *testing.T) {
	seen, all := map[Note]int{}, works()
	for _, is := range all {
		for _, n := range slices.Concat(is.Checklist(), is.Cautions()) {
			seen[n]++
		}
	}
	always, walls := 0, 0
	for n, count := range seen {
		if count == len(all) {
			always++
			if n.On != AnyWork && n.On != Stripping && n.On != Washing {
				t.Errorf("always: %v", n)
			}
		}
		if strings.HasPrefix(n.Says, "Wall: ") {
			walls++
		}
	}
	if walls != 5 || always != 12 {
		t.Errorf("%d walls, %d lines always", walls, always)
	}
}
