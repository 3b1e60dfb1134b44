// SPDX-License-Identifier: BSD-3-Clause

// Twoaxes is a lesson: two axes at right angles can miss ovality, and what more axes see.
package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/bore"
	"borewright.example/units"
)

// Change these. Invented data: a bore worn oval, the greatest diameter 40 µm over the least.
var shipped = data{
	mean:    78 * units.Millimetre,
	ovality: 40 * units.Micrometre,
	lies:    40, // degrees from the thrust axis to the long axis
}

type data struct {
	mean, ovality units.Length
	lies          float64
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	if d.ovality < 0 {
		must(0, fmt.Errorf("an ovality of %v; want 0 or more, the greatest less the least diameter", d.ovality))
	}
	if math.Abs(d.lies) > 360 {
		must(0, fmt.Errorf("a long axis at %.0f°; want it within a turn, -360° to 360°", d.lies))
	}
	two := must(d.plane(2))
	seen, half := two.Ovality.Value, d.ovality.In(units.Micrometre)/2

	fmt.Fprintln(w, "TWO AXES CAN MISS OVALITY")
	fmt.Fprintf(w, "\nThe question: a wall is oval by V = %v, its long axis at φ = %s from the thrust axis.\nWho measures along thrust and pin, as most manuals ask, reads how much?\n", d.ovality, angle(d.lies))
	fmt.Fprintln(w, "\n1  One diameter     D(θ) = mean + V/2·cos 2(θ − φ)\n   D: diameter; θ: the axis read; V: ovality, greatest less least; φ: where the long axis lies")
	for _, r := range must(d.around(2)) {
		theta := units.Angle(r.Axis).In(units.Degree)
		fmt.Fprintf(w, "   D(%3s) = %v + %.1f µm·cos 2(%s − %s) = %s\n", angle(theta), d.mean, half, angle(theta), angle(d.lies), mm(r.Diameter))
	}
	fmt.Fprintln(w, "\n2  Ovality as read     greatest − least along the axes")
	for _, axes := range []int{2, 3, 4, 6} {
		p, fit := must(d.plane(axes)), "no curve to be laid through two"
		if a := p.TwoLobe.Amplitude.Value; p.TwoLobe != (bore.Lobes{}) {
			fit = fmt.Sprintf("a curve of two lobes laid through them: V = %s", mm(2*a))
			if a > 0 {
				fit += fmt.Sprintf(" at φ = %s", angle(p.TwoLobe.Axis.In(units.Degree)))
			}
		}
		fmt.Fprintf(w, "   %d axes, %2d° apart: %s   %s\n", axes, 180/axes, mm(p.Ovality.Value), fit)
	}
	fmt.Fprintln(w, "   Three axes or more carry the curve, and the curve has all of V, wherever it lies.")

	fmt.Fprintln(w, "\nTHE WALL from above, its departure far out of scale (─ │ the two axes)")
	d.picture(w)

	fmt.Fprintln(w, "\n3  What the two axes read, the long axis turned step by step")
	for turn := 0.0; turn <= 90; turn += 10 {
		turned := d
		turned.lies = turn
		read := must(turned.plane(2)).Ovality.Value
		fmt.Fprintf(w, "   φ = %2.0f°  %s %s\n", turn, mm(read), strings.Repeat("█", int(40*read.In(max(1, d.ovality))+0.5)))
	}
	turned := d
	turned.lies = 45
	fmt.Fprintf(w, "   At 45° they read %s, whatever V is.\n", mm(must(turned.plane(2)).Ovality.Value))

	fmt.Fprintln(w, "\nA SECOND WAY: the formula V·|cos 2φ|, and its mean over all directions, 2/π of V")
	v := d.ovality.In(units.Millimetre)
	fmt.Fprintf(w, "   at φ = %s: %.4f mm (the library: %s)\n", angle(d.lies), v*math.Abs(math.Cos(d.lies*math.Pi/90)), mm(seen))
	sum := units.Length(0)
	for i := range 180 {
		turned.lies = float64(i) + 0.5
		sum += must(turned.plane(2)).Ovality.Value
	}
	fmt.Fprintf(w, "   on the mean over all φ: %.4f mm (the library: %s)\n", v*2/math.Pi, mm(sum/180))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	switch {
	case d.ovality == 0:
		fmt.Fprintln(w, "   • This wall is round, and two axes say so. They would say the same of one oval at 45°.")
	case 10*seen < 9*d.ovality:
		fmt.Fprintf(w, "   • %s is read of an ovality of %s: a limit between the two is kept on paper alone.\n", mm(seen), mm(d.ovality))
	default:
		fmt.Fprintf(w, "   • %s is read of an ovality of %s, by luck: nothing told where the long axis lies.\n", mm(seen), mm(d.ovality))
	}
	fmt.Fprintln(w, "   • Two axes are read twice as a check. That repeats the blindness; turn by 45° instead.")
	radius := func(theta float64) float64 { return 20 * math.Cos(theta*math.Pi/60) } // µm, θ in degrees: three lobes
	three := 0.0
	for i := range 180 {
		three = max(three, math.Abs(radius(float64(i))+radius(float64(i)+180)))
	}
	fmt.Fprintf(w, "   • Three lobes of ±20 µm on the radius: no diameter is off the mean by more than %.1f µm,\n     on any axis. A round reading is not a round bore.\n", three)
	fmt.Fprintln(w, "   • A three-point gauge shows size and no ovality at all.")
	fmt.Fprintln(w, "\nCAUTION: ring ridges and port edges cut fingers. The maker's manual outranks this page.")
}

// around returns readings of the oval wall along evenly spaced axes.
func (d data) around(axes int) ([]bore.Reading, error) {
	var rs []bore.Reading
	for i := range axes {
		theta := float64(i) * 180 / float64(axes)
		off, err := units.Of(d.ovality.In(units.Micrometre)/2*math.Cos((theta-d.lies)*math.Pi/90), units.Micrometre)
		if err != nil {
			return nil, err
		}
		rs = append(rs, bore.Reading{Axis: bore.Axis(units.Angle(theta) * units.Degree), Diameter: d.mean + off})
	}
	return rs, nil
}

// plane returns what readings along so many axes say.
func (d data) plane(axes int) (bore.Plane, error) {
	rs, err := d.around(axes)
	if err != nil {
		return bore.Plane{}, err
	}
	g, err := bore.Analyse(rs, bore.Gauge{})
	if err != nil {
		return bore.Plane{}, err
	}
	return g.Planes[0], nil
}

func (d data) picture(w io.Writer) {
	lobes := map[bool]float64{true: 2, false: 0}[d.ovality > 0]
	for y := 10; y >= -10; y-- {
		line := []rune(strings.Repeat(" ", 50))
		for x := -22; x <= 22; x++ {
			theta, r := math.Atan2(float64(y), float64(x)/2), math.Hypot(float64(y), float64(x)/2)
			switch {
			case math.Abs(r-8-lobes*math.Cos(2*theta-d.lies*math.Pi/90)) < 0.5:
				line[x+25] = '●'
			case y == 0:
				line[x+25] = '─'
			case x == 0:
				line[x+25] = '│'
			}
		}
		fmt.Fprintln(w, strings.TrimRight(string(line), " "))
	}
}

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

func angle(degrees float64) string { return fmt.Sprintf("%.4g°", degrees) }

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
