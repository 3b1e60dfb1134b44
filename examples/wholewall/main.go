// SPDX-License-Identifier: BSD-3-Clause

// Wholewall is a lesson: five traces of one bore, its cylinder, cone, bend, and a bore gauge's word.
package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// Change these. Invented data: a pump cylinder stands with its deck on a rotary table in a village workshop; a dial
// at its wall is read at twelve even angles at each depth: micrometres over the radius.
var shipped = data{
	radius: 39 * units.Millimetre,
	depths: []float64{10, 30, 50, 70, 90}, // mm
	dial: [][]float64{
		{29, 26, 18, 13, 17, 20, 25, 26, 22, 14, 13, 21},
		{30, 29, 23, 20, 19, 16, 13, 15, 12, 8, 11, 21},
		{31, 30, 27, 23, 18, 10, 6, 5, 6, 7, 11, 23},
		{33, 31, 26, 21, 14, 3, -1, 1, 4, 8, 16, 28},
		{35, 29, 23, 17, 7, -3, -4, 2, 7, 13, 23, 32},
	},
}

type data struct {
	radius units.Length
	depths []float64
	dial   [][]float64
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	sections := must(d.sections())
	wall := must(form.FromSections(sections))
	var cs []form.Cylinder
	for _, kind := range []form.Reference{form.LSCY, form.MZCY, form.MCCY, form.MICY} {
		cs = append(cs, must(wall.Cylindricity(kind)))
	}
	ls, zone, cone, median := cs[0], cs[1], must(wall.Cone()), must(wall.MedianLine())
	n, first, last := len(d.dial[0]), sections[0].Depth, sections[len(sections)-1].Depth

	fmt.Fprintln(w, "ONE WALL, TOP TO BOTTOM")
	fmt.Fprintf(w, "\nThe question: %d sections of %d points. Is the bore a cylinder, and does it stand square to the deck?\n", len(sections), n)
	fmt.Fprintln(w, "\n1  Four cylinders, free to lean     CYLt = max d − min d     d: distances of all points, square to the axis; R: the radius\n"+
		"   LSCY: least squares; MZCY: minimum zone; MCCY: minimum circumscribed; MICY: maximum inscribed")
	has := []string{"Σ(d − R)² least", "max d − min d least", "max d least: clean-up", "min d greatest: plug"}
	for i, c := range cs {
		fmt.Fprintf(w, "   %v  2R = %s  CYLt = %s − %s = %5.2f µm  %s\n", c.Reference, mm(2*c.Radius), mm(c.Outer), mm(c.Inner), um(c.CYLt), has[i])
	}
	fmt.Fprintln(w, "\n2  The points on which the zone rests     w: weight of each; outside they sum to 1, and inside")
	contacts := zone.Certificate.Contacts()
	slices.SortFunc(contacts, func(a, b form.Contact) int { return a.Index - b.Index })
	for _, outer := range []bool{true, false} {
		for _, p := range contacts {
			if p.Outer == outer {
				fmt.Fprintf(w, "   %-5s %6.4g mm deep at %3.0f°  w = %.4f\n", map[bool]string{true: "outer", false: "inner"}[outer], d.depths[p.Index/n], float64(p.Index%n)*360/float64(n), p.Weight)
			}
		}
	}
	switch err := zone.Check(wall); {
	case err == nil:
		fmt.Fprintf(w, "   That proves that no zone nearby is narrower, both ends of its axis within %.0f mm.\n", zone.Certificate.Reach.In(units.Millimetre))
	case errors.Is(err, form.ErrUnproved):
		fmt.Fprintf(w, "   That does not prove it alone; nothing is better by more than %.3f µm.\n", um(zone.Certificate.Bound))
	default:
		must(0, err)
	}
	from, to, up := ls.Axis.From, ls.Axis.To, float64(first)/float64(last-first)
	fmt.Fprintln(w, "\n3  The axis by least squares, at the deck; how far out of square     x: along the thrust axis; y: along the pin axis")
	fmt.Fprintf(w, "   x %+.2f y %+.2f µm;  %.2f µm in %.4g mm, towards %.0f°\n", um(from.X)-up*um(to.X-from.X), um(from.Y)-up*um(to.Y-from.Y), um(ls.Axis.OutOfSquare()), (last - first).In(units.Millimetre), ls.Axis.Toward().In(units.Degree))
	fmt.Fprintln(w, "\n4  By depth: centre and size of each section, by least squares")
	most, worst, large, small := units.Micrometre, units.Length(0), 0., math.Inf(1)
	for _, l := range median.Locals {
		fmt.Fprintf(w, "   %6.4g mm  x %+6.2f y %+6.2f µm  2R = %s  RONt = %5.2f µm\n", l.Depth.In(units.Millimetre), um(l.Centre.X), um(l.Centre.Y), mm(l.Diameter), um(l.RONt))
		most, worst = max(most, l.Centre.X.Abs(), l.Centre.Y.Abs()), max(worst, l.RONt)
	}
	fmt.Fprintf(w, "   bent by %.2f µm at %.4g mm, off the line from the first centre to the last\n", um(median.Bend), median.BendAt.In(units.Millimetre))
	fmt.Fprintln(w, "\n5  As a cone     taper = 2R at the top − 2R at the bottom")
	fmt.Fprintf(w, "   %s − %s = %.2f µm;  off the cone still %.2f µm, off the cylinder %.2f µm\n", mm(cone.From), mm(cone.To), um(cone.Taper), um(cone.Deviation), um(ls.CYLt))

	step := units.Micrometre
	for most > 25*step {
		step *= 2
	}
	lane := func(at units.Length) string {
		row := []rune(strings.Repeat(" ", 25) + "│" + strings.Repeat(" ", 25))
		row[25+int(math.Round(um(at)/um(step)))] = '○'
		return string(row)
	}
	fmt.Fprintf(w, "\nTHE CENTRES (○) ON THEIR WAY DOWN, a mark to %v: along the thrust axis, and along the pin axis\n", step)
	for _, l := range median.Locals {
		fmt.Fprintf(w, "   %6.4g mm  %s  %s\n", l.Depth.In(units.Millimetre), lane(l.Centre.X), strings.TrimRight(lane(l.Centre.Y), " "))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: the same axis by other arithmetic; then try axes all round, and nearer ones about the best")
	given := [4]float64{um(zone.Axis.From.X), um(zone.Axis.From.Y), um(zone.Axis.To.X), um(zone.Axis.To.Y)}
	fmt.Fprintf(w, "   about the axis of the zone CYLt = %.2f µm (the library: %.2f µm)\n", d.cylt(given), um(zone.CYLt))
	best, least := [4]float64{}, d.cylt([4]float64{})
	for size := 16.0; size > 0.01; {
		from := best
		for k := range 81 {
			p := from
			for j, n := 0, k; j < 4; j, n = j+1, n/3 {
				p[j] += size * float64(n%3-1)
			}
			if c := d.cylt(p); c < least {
				best, least = p, c
			}
		}
		if best == from {
			size /= 2
		}
	}
	fmt.Fprintf(w, "   the best of thousands of others has %.1f µm: ", least)
	if least < um(zone.CYLt)-0.01 {
		fmt.Fprintln(w, "BETTER, which must not be.")
	} else {
		fmt.Fprintln(w, "none is better.")
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	for k, row := range d.dial {
		c := median.Locals[k].Centre
		for i := 0; i < n/2; i += max((n+2)/4, 1) { // thrust axis, and nearest to the pin axis
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			aside := um(c.X)*sin - um(c.Y)*cos // a gauge finds the diameter, no chord
			size := 2*um(d.radius) + row[i] + row[i+n/2] + aside*aside/um(d.radius)
			large, small = max(large, size), min(small, size)
		}
	}
	fmt.Fprintf(w, "   • Roundness taken for cylindricity: by least squares the worst section has RONt %.2f µm, the wall CYLt %.2f µm.\n", um(worst), um(ls.CYLt))
	fmt.Fprintf(w, "   • A bore gauge along thrust and pin axis reads %.4f to %.4f mm: of bend and lean not a word.\n", small/1000, large/1000)
	centre := median.Locals[0].Centre
	_, reach := d.distances([4]float64{um(centre.X), um(centre.Y), um(centre.X), um(centre.Y)})
	fmt.Fprintf(w, "   • A boring bar stands square to the deck, whatever the bore does: centred in the first section it cleans up at %.4f mm,\n"+
		"     along the wall at %s mm.\n", 2*(d.radius.In(units.Millimetre)+reach/1000), mm(2*cs[2].Radius))
	fmt.Fprintln(w, "   • Sections see nothing of what lies between them.")
	fmt.Fprintln(w, "\nCAUTION: keep hands, sleeves and leads away from a turning table. A cylinder unbolted has another\nform than in use; the maker's manual says how to bolt it.")
}

// sections returns the traces, all of as many points.
func (d data) sections() (sections []form.Section, err error) {
	if len(d.dial) != len(d.depths) {
		return nil, fmt.Errorf("%d rows for %d depths; want one for each", len(d.dial), len(d.depths))
	}
	for k, row := range d.dial {
		if len(row) != len(d.dial[0]) {
			return nil, fmt.Errorf("%d readings in row %d; want %d as in the first", len(row), k+1, len(d.dial[0]))
		}
		s := form.Section{}
		var radii []units.Length
		for _, x := range row {
			off, err := units.Of(x, units.Micrometre)
			if err != nil {
				return nil, err
			}
			radii = append(radii, d.radius+off)
		}
		if s.Depth, err = units.Of(d.depths[k], units.Millimetre); err != nil {
			return nil, err
		}
		if s.Trace, err = form.FromRadii(radii); err != nil {
			return nil, err
		}
		sections = append(sections, s)
	}
	return sections, nil
}

// cylt is the greatest less the least distance.
func (d data) cylt(p [4]float64) float64 {
	least, most := d.distances(p)
	return most - least
}

// distances returns the least and the greatest distance of all points, less the radius, in µm, from an axis
// through x, y at the first depth and x, y at the last.
func (d data) distances(p [4]float64) (least, most float64) {
	least, most = math.Inf(1), math.Inf(-1)
	first := 1000 * d.depths[0]
	ux, uy, uz := p[2]-p[0], p[3]-p[1], 1000*d.depths[len(d.depths)-1]-first // along the axis
	length := math.Sqrt(float64(ux*ux) + float64(uy*uy) + float64(uz*uz))
	for k, row := range d.dial {
		for i, off := range row {
			sin, cos := math.Sincos(float64(i) / float64(len(row)) * 2 * math.Pi)
			r := um(d.radius) + off
			x, y, z := float64(r*cos)-p[0], float64(r*sin)-p[1], 1000*d.depths[k]-first
			a, b, c := float64(y*uz)-float64(z*uy), float64(z*ux)-float64(x*uz), float64(x*uy)-float64(y*ux)
			at := math.Sqrt(float64(a*a)+float64(b*b)+float64(c*c))/length - um(d.radius)
			least, most = min(least, at), max(most, at)
		}
	}
	return least, most
}

func um(l units.Length) float64 { return l.In(units.Micrometre) }

func mm(l units.Length) string { return strings.TrimSuffix(l.Format(units.Millimetre, 4), " mm") }

// must returns x, or ends the lesson there.
func must[T any](x T, err error) T {
	if err != nil {
		panic(refusal{err})
	}
	return x
}

type refusal struct{ error }

// refuse ends the page where the numbers cannot be, with the reason.
func refuse(w io.Writer) {
	switch r := recover().(type) {
	case nil:
	case refusal:
		fmt.Fprintf(w, "\nNO ANSWER FOR THESE NUMBERS: %v.\nMend them on top of the file, and run it again.\n", r)
	default:
		panic(r)
	}
}
