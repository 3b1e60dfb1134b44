// SPDX-License-Identifier: BSD-3-Clause

package show

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

const mm, um, inch = units.Millimetre, units.Micrometre, units.Inch

var (
	metric = In{mm}
	inches = In{inch}
	both   = In{mm, inch}
)

// TestTexts: how a bench writes each kind of length, by hand; 25.4 mm are an inch.
func TestTexts(t *testing.T) {
	const size = 78_502_300 * units.Nanometre
	for _, c := range []struct{ got, want string }{
		{metric.Length(size), "78.502 mm"}, {inches.Length(size), "3.0906 in"}, {both.Length(size), "78.502 mm = 3.0906 in"},
		{metric.Finer(size), "78.5023 mm"}, {inches.Finer(size), "3.09064 in"},
		{metric.Gap(350 * um), "0.35 mm"}, {inches.Gap(350 * um), "0.014 in"},
		{metric.Room(2540 * um), "2.5 mm"}, {inches.Room(2540 * um), "0.10 in"},
		{metric.Along(101600 * um), "102 mm"}, {inches.Along(101600 * um), "4.00 in"},
		{metric.Plain(78500 * um), "78.5 mm"}, {metric.Plain(20 * mm), "20 mm"}, {inches.Plain(3 * inch / 8), "0.375 in"}, {metric.Plain(inch / 3), "8.467 mm"},
		{metric.Over(500 * um), "+0.5 mm"}, {inches.Over(20 * units.Thou), "+0.020 in"}, {inches.Over(500 * um), "+0.0197 in"},
		{metric.Stop(78430 * um), "78.43 mm"}, {metric.Stop(78400 * um), "78.40 mm"}, {metric.Stop(78433 * um), "78.433 mm"}, {inches.Stop(3 * inch), "3.0000 in"},
		{metric.Bare("78.502 mm"), "78.502"}, {both.Bare("0.012 to 0.034 mm = 0.0005 to 0.0013 in"), "0.012 to 0.034"}, {inches.Bare("max 0.0013 in"), "max 0.0013"},
		{Signed("0.012 mm"), "+0.012 mm"}, {Signed("-0.012 mm"), "-0.012 mm"},
		{both.Temperature(units.ReferenceTemperature + 80), "100 °C = 212 °F"},
		{both.Within(bore.Temperature{Value: units.ReferenceTemperature, Within: 5}), "20.0 ± 5.0 °C = 68.0 ± 9.0 °F"}, {metric.Within(bore.Temperature{Value: units.ReferenceTemperature}), "20.0 °C"},
		{both.Pressures(units.Megapascal, 10*units.Megapascal), "1.0 to 10.0 MPa = 145 to 1450 psi"},
		{both.Forces(4448.2*units.Newton, 8896.4*units.Newton), "4.4 to 8.9 kN = 1000 to 2000 lbf"},
		{metric.Capacity(oversize.Compression{Swept: 500 * units.CubicCentimetre, Ratio: 9.5, FromPort: 7}), "500.0 cm³, 9.50 : 1, 7.00 : 1 from where the port closes"},
		{inches.Capacity(oversize.Compression{Swept: 500 * units.CubicCentimetre}), "30.51 in³"},
		{metric.Route(oversize.BoreOversize, 500*um), oversize.BoreOversize.String() + " to +0.5 mm"}, {metric.Route(oversize.HoneAndKeep, 500*um), oversize.HoneAndKeep.String()},
		{Crosshatch(square(t, 22.25)), "44.5° included (22.2° from square)"},
		{metric.GapLimits(units.Limits{Min: 355 * um, Max: 400 * um}), "0.355 to 0.400 mm"}, {metric.GapLimits(units.Limits{Min: 350 * um, Max: 405 * um}), "0.350 to 0.405 mm"},
		{metric.GapLimits(units.Limits{Min: 350 * um, Max: 400 * um}), "0.35 to 0.40 mm"}, {metric.GapLimits(units.Limits{Max: 405 * um}), "max 0.405 mm"},
		{inches.Limits(units.Limits{Min: 3 * inch, Max: 3*inch + inch/2000 + inch/20_000}), "3.00000 to 3.00055 in"}, {inches.Limits(units.Limits{Min: 3 * inch, Max: 3*inch + inch/2000}), "3.0000 to 3.0005 in"},
		{Degrees(44.6 * units.Degree), "45°"}, {Turns(121.54 * units.PerMinute), "121.5 rev/min"}, {Cycles(hone.Strokes(90 * units.PerMinute)), "45 cycles/min (90 strokes)"},
		{percent(0), "< 0.1 %"}, {percent(0.0009), "< 0.1 %"}, {percent(0.5), "50.0 %"}, {percent(0.9992), "> 99.9 %"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}

// square is the crosshatch whose lines lie at so many degrees to the plane square to the axis.
func square(t *testing.T, degrees units.Angle) hone.Crosshatch {
	t.Helper()
	c, err := hone.FromSquare(degrees * units.Degree)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// numbers returns the lengths of a text in one unit: "0.012 to 0.034 mm" has two.
func numbers(t *testing.T, text string) (list []units.Length) {
	t.Helper()
	unit := mm
	if strings.HasSuffix(text, "in") {
		unit = inch
	}
	for _, word := range strings.Fields(text) {
		if x, err := strconv.ParseFloat(word, 64); err == nil {
			l, err := units.Of(x, unit)
			if err != nil {
				t.Fatal(err)
			}
			list = append(list, l)
		}
	}
	return list
}

// TestNeverMore: a doubt is printed no smaller than it is, a window no wider, a size within half a step of it; and what is taken
// off is the difference of the sizes as they are printed.
func TestNeverMore(t *testing.T) {
	r := rand.New(rand.NewPCG(14, 86))
	for range 3000 {
		in := []In{metric, inches}[r.IntN(2)]
		step := um
		if in == inches {
			step = inch / 10_000
		}
		at := 70*mm + units.Length(r.Int64N(int64(20*mm)))
		if got := numbers(t, in.Length(at))[0]; (got - at).Abs() > step/2+units.Nanometre {
			t.Fatalf("%v as %v", at, got)
		}
		e := uncertainty.Estimate{Value: at, Std: units.Length(math.Exp(8*r.Float64()) * float64(10*units.Nanometre))}
		for _, text := range []string{in.Estimate(e), in.GapEstimate(e)} {
			u, err := e.Expanded(0.95)
			if got := numbers(t, text); err != nil || len(got) != 2 || got[1] < u-u/10 || got[1] > 2*u+10*step {
				t.Fatalf("%s for %v", text, u)
			} else if digits := strings.Fields(text)[2]; got[1] < u-u/20 && len(strings.TrimLeft(digits, "0.")) != 2 {
				t.Fatalf("%s for %v: rounded, and not to two digits", text, u)
			}
		}
		w := units.Limits{Min: at, Max: at + 2*step + units.Length(r.Int64N(int64(mm)))}
		for _, text := range []string{in.Limits(w), in.GapLimits(w), in.Thumb(units.Limits{Min: w.Min, Max: w.Max + mm}), in.GapThumb(units.Limits{Min: w.Min, Max: w.Max + mm})} {
			if got := numbers(t, text); len(got) != 2 || got[0] < w.Min-units.Nanometre || got[1] > w.Max+mm+units.Nanometre || got[0] > w.Min+10*step {
				t.Fatalf("%s for %v", text, w)
			}
		}
		if got := numbers(t, in.Limits(w)); got[1] > w.Max+units.Nanometre || got[1] < w.Max-step {
			t.Fatalf("%v for %v", got, w)
		}
		after := at + units.Length(r.Int64N(int64(mm)))
		sum := numbers(t, in.Length(after))[0] - numbers(t, in.Length(at))[0]
		if got := numbers(t, in.Stock(at, after))[0]; (got - sum).Abs() > units.Nanometre {
			t.Fatalf("%v taken off, by its sizes %v", got, sum)
		}
		least := at - units.Length(r.Int64N(int64(10*um)))
		if stop := in.BoringStop(at, least); stop < least || stop > at || stop != at && len(strings.TrimRight(in.Stop(stop), " inm")) > 7 {
			t.Fatalf("bored to %v, of %v to %v", stop, least, at)
		}
	}
}

// TestOneEnd: a window of one end, one narrower than its grid, and none.
func TestOneEnd(t *testing.T) {
	for _, c := range []struct {
		w    units.Limits
		want string
	}{
		{units.Limits{Max: 50 * um}, "max 0.050 mm"}, {units.Limits{Min: 50 * um}, "min 0.050 mm"}, {units.Limits{}, "–"},
		{units.Limits{Min: 100 * units.Nanometre, Max: 900 * units.Nanometre}, "0.0001 mm to 0.0009 mm"},
	} {
		if got := metric.Limits(c.w); got != c.want {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

// TestWritten tells the units of a job by its lengths; a zero and what is no length have no say.
func TestWritten(t *testing.T) {
	for _, c := range []struct {
		texts string
		want  In
	}{
		{"78.5 mm|0.02 to 0.04 mm", metric}, {"3.25 in|20 thou", inches}, {"78.5 mm|20 thou", both}, {"3 1/4\"|0 mm|main|worn", inches},
		{"", metric}, {"0 in|iron|20 °C", metric}, {"0.5 µm|1 m", metric}, {"0.001 to 0.002 in|0.1 mm", both},
	} {
		if got := Written(slices.Values(strings.Split(c.texts, "|"))); got != c.want {
			t.Errorf("%s: %v, want %v", c.texts, got, c.want)
		}
	}
	if list := both.Units(); !slices.Equal(list, []In{metric, inches}) || both.First() != mm {
		t.Error(list)
	}
}

// measured is a bore of 80 mm, wider by so many micrometres at each depth and axis.
func measured(t *testing.T, axes []bore.Axis, wider [][]int) bore.Geometry {
	t.Helper()
	var rs []bore.Reading
	for d, row := range wider {
		for a, by := range row {
			rs = append(rs, bore.Reading{Depth: units.Length(10+40*d) * mm, Axis: axes[a], Diameter: 80*mm + units.Length(by)*um})
		}
	}
	g, err := bore.Analyse(rs, bore.Gauge{Repeatability: um})
	if err != nil {
		t.Fatal(err)
	}
	return g
}

// TestSizes: depths down, axes across, every size where it was read, and the doubt of all of them once.
func TestSizes(t *testing.T) {
	g := measured(t, []bore.Axis{0, bore.Axis(90 * units.Degree)}, [][]int{{40, 10}, {22, 20}})
	rows, each := metric.Sizes(g)
	want := [][]string{{"depth", "thrust", "pin", "ovality"}, {"10 mm", "80.0400", "80.0100", "0.0300"}, {"50 mm", "80.0220", "80.0200", "0.0020"}}
	for i, row := range rows {
		for k, cell := range row {
			if cell != want[i][k] {
				t.Errorf("%v, want %v", row, want[i])
				break
			}
		}
	}
	// 1.96 times the standard deviation of one reading, and √2 of that for a difference, to two digits since either is
	// less than three steps of a micrometre.
	if each != "Each size ± 0.0020 mm, each ovality ± 0.0028 mm." {
		t.Errorf("%q", each)
	}
	figures, of := metric.Figures(g)
	text := fmt.Sprint(figures)
	for _, want := range []string{"[largest 80.0400 ± 0.0020 mm at 10 mm, thrust]", "[ovality 0.0300 ± 0.0028 mm at 10 mm", "thrust axis, 10 mm to 50 mm, larger at the deck", "[greatest minus least 0.0300 ± 0.0028 mm ]"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s in %s", want, text)
		}
	}
	if of != "" {
		t.Error(of)
	}
}

// TestFigures: what stands out is named with its place, what does not is not.
func TestFigures(t *testing.T) {
	axes := []bore.Axis{0, bore.Axis(45 * units.Degree), bore.Axis(90 * units.Degree)}
	oval, _ := metric.Figures(measured(t, axes, [][]int{{40, 20, 0}, {22, 21, 20}, {21, 21, 21}}))
	even, _ := metric.Figures(measured(t, axes, [][]int{{21, 20, 21}, {20, 21, 20}}))
	if text := fmt.Sprint(oval); !strings.Contains(text, "at 10 mm; as two lobes through all axes, largest about 0° from thrust") {
		t.Error(text)
	}
	if text := fmt.Sprint(even); strings.Contains(text, "two lobes") || !strings.Contains(text, "none that stands out of the doubt") {
		t.Error(text)
	}
	for _, rows := range [][][]string{oval, even} {
		for _, row := range rows {
			if len(row) != 3 || row[0] == "" || row[1] == "" {
				t.Errorf("%q", row)
			}
		}
	}
	smaller, _ := metric.Figures(measured(t, axes, [][]int{{0, 0, 0}, {20, 20, 20}}))
	if text := fmt.Sprint(smaller); !strings.Contains(text, "smaller at the deck") || strings.Contains(text, "larger at the deck") {
		t.Error(text)
	}
}

// TestFewAxes: of many axes the four nearest to eighths of a turn are printed, and where each depth is largest and smallest.
func TestFewAxes(t *testing.T) {
	var axes []bore.Axis
	var row []int
	for i := range 36 {
		axes = append(axes, bore.Axis(units.Angle(i)*5*units.Degree))
		row = append(row, i%7)
	}
	row[20], row[31] = 50, -50 // 100° and 155°
	g := measured(t, axes, [][]int{row, row})
	few, fewer := Few(g)
	var left []bore.Axis
	for _, q := range few.Planes[0].Places {
		left = append(left, q.Axis)
	}
	at := func(degrees ...units.Angle) (list []bore.Axis) {
		for _, d := range degrees {
			list = append(list, bore.Axis(d*units.Degree))
		}
		return list
	}
	if want := at(0, 45, 90, 100, 135, 155); !fewer || !slices.Equal(left, want) || len(g.Planes[0].Places) != 36 {
		t.Errorf("%v, want %v", left, want)
	}
	rows, _ := metric.Sizes(g)
	if !slices.Equal(rows[0], []string{"depth", "thrust", "45°", "pin", "135°", "ovality"}) {
		t.Error(rows[0])
	}
	if _, of := metric.Figures(g); of != "Four of 36 axes are printed; the figures below are of all." {
		t.Error(of)
	}
	places := []bore.Reading{{Depth: 10 * mm}, {Depth: 10 * mm, Axis: axes[9]}, {Depth: 50 * mm}}
	if kept := Printed(slices.Clone(places)); len(kept) != 3 {
		t.Error(kept)
	}
	blanks := Blanks(metric.Along, places, "___")
	if text := fmt.Sprint(blanks); text != "[[depth thrust 45°] [10 mm ___ ___] [50 mm ___ –]]" {
		t.Error(text)
	}
}

// TestSetting: speeds that a drill can be set to lie inside those that will do.
func TestSetting(t *testing.T) {
	on := hone.OnHand{
		Bore: 80 * mm, Stroke: 100 * mm, Spindle: hone.SpindleRange{Min: 60 * units.PerMinute, Max: 400 * units.PerMinute},
		Stroking: hone.StrokingRange{Min: hone.Cycles(20 * units.PerMinute), Max: hone.Cycles(60 * units.PerMinute)},
	}
	wide, err := hone.Included(45 * units.Degree)
	if err != nil {
		t.Fatal(err)
	}
	r, err := on.SettingFor(hone.Want{Crosshatch: wide, Tolerance: 5 * units.Degree})
	if err != nil {
		t.Fatal(err)
	}
	var best, least, most, cycles float64
	if _, err := fmt.Sscanf(Setting(r), "%f rev/min (%f rev/min to %f rev/min will do), %f cycles", &best, &least, &most, &cycles); err != nil {
		t.Fatal(Setting(r), err)
	}
	for _, n := range []float64{best, least, most} {
		left, err := hone.Setting{Bore: on.Bore, Stroke: on.Stroke, Spindle: units.Frequency(n) * units.PerMinute, Stroking: hone.Cycles(units.Frequency(cycles) * units.PerMinute)}.Crosshatch()
		if off := left.Included().In(units.Degree) - 45; err != nil || math.Abs(off) > 5 || n != math.Round(n) || n < least || n > most {
			t.Errorf("%g rev/min with %g cycles leaves %v", n, cycles, left)
		}
	}
}

// TestRemedy: what no gauge can be brought to settles nothing.
func TestRemedy(t *testing.T) {
	for std, never := range map[units.Length]bool{leastStd - 1: true, leastStd: false, 0: false} {
		r := uncertainty.Remedy{Toward: uncertainty.Within, Std: std, Repeats: 4}
		if got := metric.Remedy(r); strings.HasPrefix(got, "no gauge") != never {
			t.Errorf("%v: %s", std, got)
		}
	}
	one, two := uncertainty.Estimate{Value: 80 * mm, Std: um}, uncertainty.Estimate{Value: 81 * mm, Std: um}
	if got := metric.Interval(bore.Interval{Min: one, Max: two}); got != "80.000 mm to "+metric.Estimate(two) || metric.Interval(bore.Interval{Min: one, Max: one}) != metric.Estimate(one) {
		t.Error(got)
	}
	if metric.Known(uncertainty.Estimate{}) != "–" || metric.Known(one) != metric.Estimate(one) {
		t.Error("known")
	}
}

// TestGrit by hand: of the seven lines on the last honing in package hone, three name no facing, two iron or chromium, two molybdenum.
func TestGrit(t *testing.T) {
	for _, c := range []struct {
		facing string
		on     int
		want   string
	}{
		{"", 180, "for any facing of the top ring sources name 180 to 220, 220, 280, 320, 320 to 400; yours, 180, is named by 1 of 7. They"},
		{"chromium", 0, "for a top ring of chromium sources name 180 to 220, 220, 320. They"},
		{"molybdenum", 400, "for a top ring of molybdenum sources name 180 to 220, 220, 280, 320, 320 to 400; yours, 400, is named by 1 of 5. They"},
	} {
		if got := metric.Grit(c.facing, c.on); !strings.Contains(got, c.want) || !strings.Contains(got, "Ra 0.38 to 4.00 µm,") {
			t.Errorf("%q, %d: %s", c.facing, c.on, got)
		}
	}
	if got := inches.Grit("", 0); !strings.Contains(got, "Ra 15 to 157 µin,") {
		t.Error(got)
	}
}

// TestAbout: each limit with the place that it was found at.
func TestAbout(t *testing.T) {
	f := bore.Finding{Depth: 20 * mm, From: 10 * mm, To: 90 * mm, Axis: bore.Axis(90 * units.Degree)}
	for _, c := range []struct {
		limit   bore.Limit
		between bool
		want    string
	}{
		{bore.LimitOvality, false, "ovality at 20 mm"}, {bore.LimitTrueOvality, false, bore.LimitTrueOvality.String() + " at 20 mm"}, {bore.LimitTaper, false, "taper, pin axis"},
		{bore.LimitTaper, true, "taper, as a difference from 10 mm to 90 mm, pin axis"}, {bore.LimitChoke, false, "choke, pin axis"}, {bore.LimitService, false, bore.LimitService.String()},
	} {
		f.Limit, f.Between = c.limit, c.between
		if got := metric.About(f); got != c.want || metric.AboutFinished(f) != got {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
	f.NotMeasured = true
	if got := metric.About(f); !strings.HasSuffix(got, ", not measured") {
		t.Error(got)
	}
	if got := metric.AboutFinished(bore.Finding{Limit: bore.LimitNew}); got != "finished bore" {
		t.Error(got)
	}
	row := metric.Finding("size", uncertainty.Finding{Measured: uncertainty.Estimate{Value: 80 * mm, Std: 2 * um}, Limits: units.Limits{Max: 81 * mm}, Verdict: uncertainty.Within, Conform: 0.97}, true)
	if got := fmt.Sprint(row); got != "[size 80.000 ± 0.004 mm max 81.000 mm within 97.0 %]" || len(row) != len(FindingHead()) {
		t.Error(got)
	}
}

// TestSlow: a slow spindle is set by tenths, and what a range leaves out is never named.
func TestSlow(t *testing.T) {
	for _, c := range []struct{ rate, want float64 }{{12.34, 12.3}, {19.96, 20}, {20.4, 20}, {121.6, 122}} {
		if got := whole(units.Frequency(c.rate)*units.PerMinute, math.Round).In(units.PerMinute); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%g: %g, want %g", c.rate, got, c.want)
		}
	}
}
