// SPDX-License-Identifier: BSD-3-Clause

// Wholewall is a lesson: five traces of one bore, its cylinder, cone and bend, and what a bore gauge made of it.
package main

import (
	"errors"
	"fmt"
	"log"
	"math"
	"strings"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// Change these. Invented data: a pump cylinder stands with its deck on a rotary table in a village workshop,
// and a dial against its wall is read at twelve even angles at each depth: micrometres over the radius.
var (
	radius = 39 * units.Millimetre
	depths = []units.Length{10, 30, 50, 70, 90} // mm
	dial   = [][]units.Length{
		{29, 26, 18, 13, 17, 20, 25, 26, 22, 14, 13, 21},
		{30, 29, 23, 20, 19, 16, 13, 15, 12, 8, 11, 21},
		{31, 30, 27, 23, 18, 10, 6, 5, 6, 7, 11, 23},
		{33, 31, 26, 21, 14, 3, -1, 1, 4, 8, 16, 28},
		{35, 29, 23, 17, 7, -3, -4, 2, 7, 13, 23, 32},
	}
)

func main() {
	var sections []form.Section
	for k, row := range dial {
		var radii []units.Length
		for _, d := range row {
			radii = append(radii, radius+d*units.Micrometre)
		}
		sections = append(sections, form.Section{Depth: depths[k] * units.Millimetre, Trace: must(form.FromRadii(radii))})
	}
	wall := must(form.FromSections(sections))
	var cs []form.Cylinder
	for _, kind := range []form.Reference{form.LSCY, form.MZCY, form.MCCY, form.MICY} {
		cs = append(cs, must(wall.Cylinder(kind)))
	}
	ls, zone := cs[0], cs[1]

	fmt.Println("ONE WALL, TOP TO BOTTOM")
	fmt.Printf("\nThe question: %d sections of %d points. Is the bore a cylinder, and does it stand square to the deck?\n", len(dial), len(dial[0]))
	fmt.Println("\n1  Four cylinders, free to lean     d: distances of all points, square to the axis;  CYLt = max d − min d")
	has := []string{"Σ(d − R)² least", "max d − min d least", "max d least: clean-up", "min d greatest: plug"}
	for i, c := range cs {
		fmt.Printf("   %v  2R = %s  CYLt = %s − %s = %5.2f µm  %s\n", c.Reference, mm(2*c.Radius), mm(c.Outer), mm(c.Inner), um(c.CYLt), has[i])
	}
	fmt.Printf("   CYLp = %.2f µm, CYLv = %.2f µm, CYLq = %.2f µm about LSCY\n", um(ls.CYLp), um(ls.CYLv), um(ls.CYLq))
	fmt.Println("\n2  The proof of the zone     weights Σ w = 1 outside, Σ w = 1 inside, and Σ w·n, Σ w·z·n the same for both")
	for _, p := range zone.Certificate.Contacts() {
		fmt.Printf("   %-5s %3.0f mm deep at %3.0f°  w = %.4f\n", map[bool]string{true: "outer", false: "inner"}[p.Outer], float64(depths[p.Index/len(dial[0])]),
			float64(p.Index%len(dial[0]))*360/float64(len(dial[0])), p.Weight)
	}
	err := zone.Check(wall)
	fmt.Printf("   proved, both ends of the axis within %.0f mm: %t", zone.Certificate.Reach.In(units.Millimetre), err == nil)
	if errors.Is(err, form.ErrUnproved) {
		fmt.Printf(", but nothing is better by %.3f µm", um(zone.Certificate.Bound))
	}
	fmt.Println()
	at := must(ls.Axis.At(0))
	fmt.Println("\n3  The axis     where it meets the deck, and out of square = √(Δx² + Δy²) from first to last section")
	fmt.Printf("   x %+.2f y %+.2f µm;  %.2f µm in %.0f mm, towards %.0f°\n", um(at.X), um(at.Y), um(ls.Axis.OutOfSquare()),
		float64(depths[len(depths)-1]-depths[0]), ls.Axis.Toward().In(units.Degree))
	fmt.Println("\n4  By depth     centre and size of each section, by least squares")
	median := must(wall.MedianLine())
	for _, l := range median.Locals {
		fmt.Printf("   %3.0f mm  x %+6.2f y %+6.2f µm  2R = %s  RONt = %5.2f µm\n", l.Depth.In(units.Millimetre), um(l.Centre.X), um(l.Centre.Y), mm(l.Diameter), um(l.RONt))
	}
	fmt.Printf("   bent by %.2f µm at %.0f mm, towards %.0f°, off the line from the first centre to the last\n", um(median.Bend), median.BendAt.In(units.Millimetre), median.Toward.In(units.Degree))
	cone := must(wall.Cone())
	fmt.Println("\n5  As a cone     taper = 2R at the top − 2R at the bottom;  apex angle = 2·atan(taper/2L)")
	fmt.Printf("   %s − %s = %.2f µm;  %.5f°;  off the cone still %.2f µm, off the cylinder %.2f µm\n", mm(cone.From), mm(cone.To), um(cone.Taper), cone.Angle.In(units.Degree), um(cone.Deviation), um(ls.CYLt))

	fmt.Println("\nTHE CENTRES (o) ON THEIR WAY DOWN, a step to a micrometre: along the thrust axis, and along the pin axis")
	for i, l := range median.Locals {
		fmt.Printf("   %3.0f mm  %s  %s\n", float64(depths[i]), lane(l.Centre.X), strings.TrimRight(lane(l.Centre.Y), " "))
	}

	fmt.Println("\nA SECOND WAY: try axes all round, and nearer ones about the best")
	best, least := [4]float64{}, cylt([4]float64{})
	for step := 16.0; step > 1e-4; {
		from := best
		for k := range 81 {
			p := from
			for j, n := 0, k; j < 4; j, n = j+1, n/3 {
				p[j] += step * float64(n%3-1)
			}
			if c := cylt(p); c < least {
				best, least = p, c
			}
		}
		if best == from {
			step /= 2
		}
	}
	top, end := must(zone.Axis.At(depths[0]*units.Millimetre)), must(zone.Axis.At(depths[len(depths)-1]*units.Millimetre))
	fmt.Printf("   CYLt %.2f µm, %.2f µm worse than the library's zone, whose axis gives %.2f µm by the same arithmetic\n",
		least, least-um(zone.CYLt), cylt([4]float64{um(top.X), um(top.Y), um(end.X), um(end.Y)}))

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	worst, large, small := units.Length(0), units.Length(0), units.MaxLength
	for _, s := range sections {
		worst = max(worst, must(s.Trace.MinimumZone()).RONt)
		for _, r := range must(s.Trace.Readings(s.Depth, must(s.Trace.LeastSquares()).Centre, []units.Angle{0, 90 * units.Degree})) {
			large, small = max(large, r.Diameter), min(small, r.Diameter)
		}
	}
	fmt.Printf("   • Roundness taken for cylindricity: the worst section has RONt %.2f µm, the wall CYLt %.2f µm.\n", um(worst), um(zone.CYLt))
	fmt.Printf("   • A bore gauge along thrust and pin axis reads %s to %s mm: of the bend and the lean not a word.\n", mm(small), mm(large))
	square := must(must(wall.Along(form.Square(form.Point{}))).MinimumCircumscribed())
	fmt.Printf("   • The boring bar stands square to the deck, the bore does not: it cleans up at %s, not at %s mm.\n", mm(2*square.Radius), mm(2*cs[2].Radius))
	fmt.Println("   • Five sections see nothing of what lies between them.")
	fmt.Println("\nCAUTION: keep hands, sleeves and leads away from a turning table. A cylinder unbolted has another\nform than in use; the maker's manual says how to bolt it.")
}

// lane draws a place on a line of 51 µm.
func lane(at units.Length) string {
	row := []rune(strings.Repeat(" ", 25) + "|" + strings.Repeat(" ", 25))
	row[min(max(25+int(math.Round(um(at))), 0), 50)] = 'o'
	return string(row)
}

// cylt is the greatest less the least distance of all points, in µm, from an axis through x, y at the
// first depth and x, y at the last. It leans so little that distances in each section do.
func cylt(p [4]float64) float64 {
	least, most := math.Inf(1), math.Inf(-1)
	for k, row := range dial {
		down := float64(depths[k]-depths[0]) / float64(depths[len(depths)-1]-depths[0])
		for i, d := range row {
			sin, cos := math.Sincos(float64(i) / float64(len(row)) * 2 * math.Pi)
			r := um(radius + d*units.Micrometre)
			x, y := float64(r*cos)-float64(p[0]*(1-down))-float64(p[2]*down), float64(r*sin)-float64(p[1]*(1-down))-float64(p[3]*down)
			at := math.Hypot(x, y) - um(radius)
			least, most = min(least, at), max(most, at)
		}
	}
	return most - least
}

func um(l units.Length) float64 { return l.In(units.Micrometre) }

func mm(l units.Length) string { return strings.TrimSuffix(l.Format(units.Millimetre, 4), " mm") }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
