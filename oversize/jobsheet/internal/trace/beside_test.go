// SPDX-License-Identifier: BSD-3-Clause

package trace

import (
	"slices"
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestUnseen: what traces show goes, of each plane only where they reach from end to end of ring travel; what neither shows stays.
func TestUnseen(t *testing.T) {
	list := func(us ...bore.Unseen) []bore.Unseen { return us }
	readings := list(bore.UnseenTop, bore.UnseenBottom, bore.UnseenBetweenAxes, bore.UnseenOddLobes, bore.UnseenElsewhere)
	for name, c := range map[string]struct{ diameters, whole, want []bore.Unseen }{
		// Diameters of traces hold no odd lobes, traces do.
		"from end to end": {list(bore.UnseenOddLobes, bore.UnseenElsewhere), nil, list(bore.UnseenElsewhere)},
		"of few radii":    {list(bore.UnseenOddLobes, bore.UnseenElsewhere), list(bore.UnseenOddLobes), list(bore.UnseenOddLobes, bore.UnseenElsewhere)},
		"not the bottom": {list(bore.UnseenBottom, bore.UnseenOddLobes, bore.UnseenElsewhere), list(bore.UnseenBottom),
			list(bore.UnseenBottom, bore.UnseenBetweenAxes, bore.UnseenOddLobes, bore.UnseenElsewhere)},
		"travel not known": {list(bore.UnseenTravel, bore.UnseenOddLobes), list(bore.UnseenTravel), list(bore.UnseenBetweenAxes, bore.UnseenOddLobes)},
	} {
		was := slices.Clone(readings)
		if got := Unseen(readings, c.diameters, c.whole); !slices.Equal(got, c.want) || !slices.Equal(readings, was) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
	if !OfTravel(bore.UnseenTravel) || !OfTravel(bore.UnseenMiddle) || OfTravel(bore.UnseenElsewhere) {
		t.Error("along ring travel")
	}
}

// TestWorse: beyond before undecided before within, on the same limit alone; what was measured before what was not; of two alike
// the readings'.
func TestWorse(t *testing.T) {
	of := func(limit bore.Limit, v uncertainty.Verdict, depth units.Length, not bool) bore.Finding {
		return bore.Finding{Finding: uncertainty.Finding{Verdict: v}, Limit: limit, Depth: depth, NotMeasured: not}
	}
	const taper, oval = bore.LimitTaper, bore.LimitOvality
	for _, c := range []struct {
		read, traced bore.Finding
		by           units.Length // the depth of the one returned: 1 of the readings', 2 of the traces'
	}{
		{of(oval, uncertainty.Within, 1, false), of(oval, uncertainty.Undecided, 2, false), 2},
		{of(oval, uncertainty.Undecided, 1, false), of(oval, uncertainty.Beyond, 2, false), 2},
		{of(oval, uncertainty.Beyond, 1, false), of(oval, uncertainty.Within, 2, false), 1},
		{of(oval, uncertainty.Beyond, 1, false), of(oval, uncertainty.Undecided, 2, false), 1},
		{of(oval, uncertainty.Within, 1, false), of(oval, uncertainty.Within, 2, false), 1},
		{of(oval, uncertainty.Within, 1, false), of(taper, uncertainty.Beyond, 2, false), 1},
		{of(oval, uncertainty.Undecided, 1, true), of(oval, uncertainty.Within, 2, false), 2},
		{of(oval, uncertainty.Within, 1, false), of(oval, uncertainty.Undecided, 2, true), 1},
	} {
		read := []bore.Finding{c.read}
		if got := Worse(read, []bore.Finding{c.traced}); len(got) != 1 || got[0].Depth != c.by || read[0] != c.read {
			t.Errorf("%v beside %v: that at %v", c.read, c.traced, got[0].Depth)
		}
	}
}
