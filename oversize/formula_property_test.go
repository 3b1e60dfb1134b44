// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"slices"
	"testing"
	"time"

	"pgregory.net/rapid"

	"borewright.example/oversize"
	"borewright.example/units"
)

// kinds are the operations in the order in which they are done.
var kinds = []string{"rough bore", "finish bore", "mouth chamfer", "bottom chamfer", "hone", "rough hone", "finish hone", "plateau hone"}

// TestStockAddsUp: the operations follow on each other and take all there is, no cut deeper than
// allowed.
func TestStockAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		from := drawLength(t, "from", mm("30"), mm("120"))
		bored := from + drawLength(t, "to bore", 0, mm("1"))
		to := bored + drawLength(t, "to hone", mm("0.02"), mm("0.15"))
		s := oversize.Shop{
			MostDepth: drawLength(t, "depth", mm("0.02"), mm("0.3")), FinishBore: drawLength(t, "finish cut", 0, mm("0.1")),
			FinishHone: drawLength(t, "finish hone", 0, mm("0.01")), Plateau: drawLength(t, "plateau", 0, mm("0.005")),
			BothEnds: rapid.Bool().Draw(t, "both ends"),
			Length:   mm("90"), Feed: mm("0.1"), Spindle: 300 * units.PerMinute,
		}
		ops, err := s.Cuts(from, bored, to)
		if err != nil {
			t.Fatal(err)
		}
		at, kind := from, -1
		for _, o := range ops {
			if o.Before != at || o.Stock != o.After-o.Before || o.Stock < 0 || slices.Index(kinds, o.Kind) <= kind {
				t.Fatalf("%+v", ops)
			}
			if boring := o.Kind == "rough bore" || o.Kind == "finish bore"; boring != (o.Passes > 0) {
				t.Fatalf("%+v", o)
			} else if boring {
				perPass := o.Time / time.Duration(o.Passes)
				if 2*o.Depth*units.Length(o.Passes) < o.Stock || o.Kind == "rough bore" && o.Depth > s.MostDepth || perPass != 3*time.Minute {
					t.Fatalf("%+v", o)
				}
			}
			at, kind = o.After, slices.Index(kinds, o.Kind)
		}
		if at != to {
			t.Fatalf("ends at %v, not %v: %+v", at, to, ops)
		}
	})
}

// TestRatioScales: where all clearance is a cylinder of the bore the ratio does not depend on it;
// where any of it is fixed, a larger bore raises it; the head for a ratio gives that ratio.
func TestRatioScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bore, stroke := drawLength(t, "bore", mm("30"), mm("120")), drawLength(t, "stroke", mm("30"), mm("120"))
		larger := bore + drawLength(t, "over", units.Micrometre, mm("2"))
		c := oversize.Chamber{Deck: drawLength(t, "deck", 0, mm("5")), Gasket: drawLength(t, "gasket", units.Micrometre, mm("2"))}
		ratios := func() (a, b float64) {
			x, err := c.Compression(bore, stroke)
			y, yerr := c.Compression(larger, stroke)
			if err != nil || yerr != nil {
				t.Fatal(err, yerr)
			}
			return x.Ratio, y.Ratio
		}
		if a, b := ratios(); !close(a, b, 1e-9*a) {
			t.Fatalf("%v becomes %v", a, b)
		}
		c.GasketHole = mm("125")
		if a, b := ratios(); b <= a {
			t.Fatalf("gasket of its own: %v becomes %v", a, b)
		}
		c.Head = units.Volume(rapid.Float64Range(1, 200).Draw(t, "head")) * units.CubicCentimetre
		if a, b := ratios(); b <= a {
			t.Fatalf("fixed head: %v becomes %v", a, b)
		}
		c.Crown = units.Volume(rapid.Float64Range(-20, 20).Draw(t, "crown")) * units.CubicCentimetre
		if rapid.Bool().Draw(t, "two-stroke") {
			c.PortTop = c.Deck + drawLength(t, "port", stroke/2, stroke)
		}
		want := rapid.Float64Range(1.5, 9).Draw(t, "ratio")
		head, err := c.HeadFor(bore, stroke, want)
		if err != nil {
			return // the other parts already leave too much or too little
		}
		c.Head = head
		r, err := c.Compression(bore, stroke)
		got := r.Ratio
		if c.PortTop != 0 {
			got = r.FromPort
			if r.FromPort > r.Ratio*(1+1e-12) { // a port at the bottom gives the same but for the last digit
				t.Fatalf("from the port %v, from the whole stroke %v", r.FromPort, r.Ratio)
			}
		}
		if err != nil || !close(got, want, 1e-9*want) {
			t.Fatalf("%+v, %v; want %v", r, err, want)
		}
	})
}

// TestTravel: half a turn is the stroke, either way round is the same, and the piston only
// descends on the way down.
func TestTravel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stroke := drawLength(t, "stroke", mm("20"), mm("150"))
		rod := stroke/2 + drawLength(t, "rod", units.Micrometre, mm("200"))
		travel := func(degrees float64) units.Length {
			l, err := oversize.PistonTravel(stroke, rod, units.Angle(degrees)*units.Degree)
			if err != nil {
				t.Fatal(err)
			}
			return l
		}
		a := rapid.Float64Range(0, 179).Draw(t, "angle")
		if travel(0) != 0 || (travel(180)-stroke).Abs() > 1 || travel(a) != travel(-a) || travel(a) > travel(a+1) {
			t.Fatalf("stroke %v, rod %v: %v, %v at %v°", stroke, rod, travel(180), travel(a), a)
		}
	})
}
