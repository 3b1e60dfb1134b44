// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"fmt"
	"io"
	"log"
	"math"
	"slices"
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// file is what an instrument stores of an invented plateau-honed wall, 4.8 mm of it: grooves of two depths and a fine
// texture on the plateaus.
func file(at float64) io.Reader {
	var b strings.Builder
	b.WriteString("x mm,z µm\n")
	for i := range 4800 {
		x := at + float64(i)/1000
		z := 0.25*math.Sin(x*331) + 0.15*math.Sin(x*1873+2)
		for k, groove := range []struct{ every, wide, deep float64 }{{0.31, 0.05, 3.4}, {0.173, 0.03, 1.7}} {
			if a := math.Abs(math.Mod(x+0.07*float64(k), groove.every) - groove.wide); a < groove.wide/2 {
				z -= groove.deep * (1 - 2*a/groove.wide)
			}
		}
		fmt.Fprintf(&b, "%.3f,%.6f\n", float64(i)/1000, z)
	}
	return strings.NewReader(b.String())
}

func wall(at float64) surface.Profile {
	p, err := surface.Read(file(at))
	if err != nil {
		log.Fatal(err)
	}
	return p
}

var usual = surface.Filter{CutOff: 800 * units.Micrometre, Short: 2500 * units.Nanometre}

// A file of a profile, and its numbers.
func ExampleRead() {
	file := strings.NewReader("x mm,z µm\n" +
		"0.0000,1.0\n0.0005,-2.0\n0.0010,3.0\n0.0015,-4.0\n0.0020,5.0\n0.0025,-5.0\n0.0030,4.0\n0.0035,-3.0\n0.0040,2.0\n0.0045,-1.0\n")
	p, err := surface.Read(file)
	if err != nil {
		log.Fatal(err)
	}
	t, err := p.Texture(surface.Filter{}) // the instrument has filtered it
	fmt.Println(t.Ra, t.Rt, err)
	// Output: 0.003 mm 0.01 mm <nil>
}

func ExampleProfile_Texture() {
	t, err := wall(0).Texture(usual)
	fmt.Println(t, err)
	fmt.Println(t.TwoProcess)
	fmt.Printf("oil %.4f mm³/cm²\n", t.Oil.In(units.Micrometre)/10)
	// Output:
	// Ra 0.61 µm, Rz 4.30 µm, Rpk 0.05 µm, Rk 0.87 µm, Rvk 2.37 µm, Mr1 3.0 %, Mr2 77.0 % <nil>
	// Rpq 0.20 µm, Rvq 1.63 µm, Rmq 63.3 %
	// oil 0.0273 mm³/cm²
}

// From files of profiles at four places, two of each, to the five numbers of the wall with their doubt, and against what a
// maker of rings might ask.
func ExampleAnalyse() {
	var readings []surface.Reading
	for i, place := range []string{"12 mm, thrust", "12 mm, pin", "60 mm, thrust", "60 mm, pin"} {
		for repeat := range 2 {
			p, err := surface.Read(file(float64(i)*1.37 + float64(repeat)*0.41))
			if err != nil {
				log.Fatal(err)
			}
			t, err := p.Texture(usual)
			if err != nil {
				log.Fatal(err)
			}
			readings = append(readings, surface.Reading{Place: place, Texture: t})
		}
	}
	w, err := surface.Analyse(readings, surface.Instrument{Relative: 0.025})
	if err != nil {
		log.Fatal(err)
	}
	for _, v := range w.Values {
		if slices.Contains([]string{"Rpk", "Rk", "Rvk", "Mr1", "Mr2"}, v.Parameter) {
			fmt.Println(v)
		}
	}
	um := units.Micrometre
	findings, err := w.Judge(surface.Limits{Rpk: units.Limits{Max: um / 5}, Rk: units.Limits{Min: um / 2, Max: um * 9 / 10}, Rvk: units.Limits{Min: 3 * um}}, uncertainty.Risk{})
	for _, f := range findings {
		fmt.Println(f)
	}
	fmt.Println(err)
	// Output:
	// Rpk 0.0546 ± 0.0030 µm
	// Rk 0.877 ± 0.043 µm
	// Rvk 2.34 ± 0.12 µm
	// Mr1 3.3 ± 0.2 %
	// Mr2 76.7 ± 3.8 %
	// Rpk 0.0546 ± 0.0030 µm, max 0.2 µm: within
	// Rk 0.877 ± 0.043 µm, 0.5 to 0.9 µm: undecided
	// Rvk 2.34 ± 0.12 µm, min 3 µm: beyond, 4 of 4 places outside
	// <nil>
}

// A cut is a phase of honing: its stock is what the grooves of the phase before lose.
func ExampleCut() {
	r, err := wall(0).TwoStep(usual)
	if err != nil {
		log.Fatal(err)
	}
	c := r.Curve()
	cut, err := c.Reach(50 * units.Nanometre)
	if err != nil {
		log.Fatal(err)
	}
	drill := hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 110 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	left, err := hone.Traces([]hone.Phase{
		{Setting: drill, Stock: 20 * units.Micrometre, Groove: c.Height(0) - c.Height(1)},
		{Setting: drill, Stock: cut.Stock},
	})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("grooves of", (c.Height(0)-c.Height(1)).Format(units.Micrometre, 2), "less", cut.Stock.Format(units.Micrometre, 2), "are", left[0].Left.Format(units.Micrometre, 2))
	// Output: grooves of 5.19 µm less 0.02 µm are 5.17 µm
}

// A trace along the circumference: the circle of the bore comes off before anything else.
func ExampleProfile_Unroll() {
	var heights []units.Length
	for i := range 2001 {
		x := float64(i-1000) / 500 // mm
		z := 1000*(33.5-math.Sqrt(33.5*33.5-x*x)) + math.Sin(x*100)
		heights = append(heights, units.Length(z*float64(units.Micrometre)))
	}
	p, _ := surface.FromHeights(2*units.Micrometre, heights)
	flat, err := p.Unroll(67 * units.Millimetre)
	if err != nil {
		log.Fatal(err)
	}
	bent, _ := p.Texture(surface.Filter{})
	unrolled, _ := flat.Texture(surface.Filter{})
	fmt.Println("Rt", bent.Rt.Format(units.Micrometre, 1), "is", unrolled.Rt.Format(units.Micrometre, 1))
	// Output: Rt 61.6 µm is 2.0 µm
}

// A trace of a filtered profile that stands aslant.
func ExampleProfile_Level() {
	var heights []units.Length
	for i := range 100 {
		heights = append(heights, units.Length(i)*units.Micrometre/10+units.Length(i%2)*units.Micrometre)
	}
	p, _ := surface.FromHeights(units.Micrometre, heights)
	tilted, _ := p.Texture(surface.Filter{})
	p, err := p.Level()
	level, _ := p.Texture(surface.Filter{})
	fmt.Println("Ra", tilted.Ra.Format(units.Micrometre, 2), "is", level.Ra.Format(units.Micrometre, 2), err)
	// Output: Ra 2.53 µm is 0.50 µm <nil>
}

// How much of the wall bears half a micrometre below the 5 % line.
func ExampleCurve_Ratio() {
	r, err := wall(0).TwoStep(usual)
	if err != nil {
		log.Fatal(err)
	}
	c := r.Curve()
	fmt.Printf("%.1f %%\n", 100*c.Ratio(c.Height(0.05)-units.Micrometre/2))
	// Output: 61.2 %
}

// Two finishes, one over the other.
func ExampleCurve_TwoProcess() {
	r, err := wall(0).TwoStep(usual)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(r.Curve().TwoProcess())
	// Output: Rpq 0.20 µm, Rvq 1.63 µm, Rmq 63.3 % <nil>
}

// Strokes that each take the same metal lower the peaks less and less; and the stock for a wanted Rpk.
func ExampleCurve_Remove() {
	var heights []units.Length
	for i := range 4000 {
		z := 0.9*math.Sin(float64(i)/3.1) + 0.6*math.Sin(float64(i)/7.7) + 0.5*math.Sin(float64(i)*1.3)
		heights = append(heights, units.Length(z*float64(units.Micrometre)))
	}
	p, _ := surface.FromHeights(units.Micrometre, heights)
	r, err := p.TwoStep(surface.Filter{CutOff: 800 * units.Micrometre, Sections: 4})
	if err != nil {
		log.Fatal(err)
	}
	c := r.Curve()
	for strokes := 0; strokes <= 3; strokes++ {
		k, err := c.Remove(units.Length(strokes) * 5 * units.Nanometre)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Println(strokes, "strokes:", k.Stock.Format(units.Micrometre, 2), "off the peaks,", k.Plateau)
	}
	k, err := c.Reach(100 * units.Nanometre)
	fmt.Println("Rpk 0.10 µm after", k.Stock.Format(units.Micrometre, 2), err)
	// Output:
	// 0 strokes: 0.00 µm off the peaks, Rpk 0.57 µm, Rk 2.44 µm, Rvk 0.57 µm, Mr1 8.1 %, Mr2 91.8 %
	// 1 strokes: 0.41 µm off the peaks, Rpk 0.44 µm, Rk 2.44 µm, Rvk 0.57 µm, Mr1 8.1 %, Mr2 91.8 %
	// 2 strokes: 0.54 µm off the peaks, Rpk 0.32 µm, Rk 2.44 µm, Rvk 0.57 µm, Mr1 8.1 %, Mr2 91.8 %
	// 3 strokes: 0.64 µm off the peaks, Rpk 0.20 µm, Rk 2.44 µm, Rvk 0.57 µm, Mr1 8.1 %, Mr2 91.8 %
	// Rpk 0.10 µm after 0.70 µm <nil>
}
