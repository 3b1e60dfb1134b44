// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"cmp"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/big"
	"slices"
	"strings"
	"testing"

	"borewright.example/units"
	"pgregory.net/rapid"
)

// anyLength draws from the whole range, with the ends, small values and workshop sizes well represented.
func anyLength() *rapid.Generator[units.Length] {
	return rapid.OneOf(
		rapid.Map(rapid.Int64(), func(x int64) units.Length { return units.Length(x) }),
		rapid.Map(rapid.Int64Range(-200*1e9, 200*1e9), func(x int64) units.Length { return units.Length(x) }),
		rapid.Map(rapid.Int64Range(-8000, 8000), func(x int64) units.Length { return units.Length(x) * 198_437_500 }), // 1/128 in
	)
}

var named = []units.Length{
	units.Picometre, units.Nanometre, units.Micrometre, units.Millimetre, units.Metre, units.Microinch, units.Thou, units.Inch,
}

func big64(l units.Length) *big.Int { return big.NewInt(int64(l)) }

func rat(l, unit units.Length) *big.Rat { return new(big.Rat).SetFrac(big64(l), big64(unit)) }

// halfAway rounds a fraction to a whole number, halves away from zero.
func halfAway(r *big.Rat) *big.Int {
	n, d := new(big.Int).Abs(r.Num()), r.Denom()
	n.Mul(n, big.NewInt(2)).Add(n, d)
	n.Quo(n, new(big.Int).Mul(d, big.NewInt(2)))
	if r.Sign() < 0 {
		n.Neg(n)
	}
	return n
}

func TestTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		s := l.String()
		if back, err := units.ParseLength(s); back != l || err != nil {
			t.Fatalf("%s reads back as %v, %v", s, back, err)
		}
		b, err := l.MarshalText()
		if err != nil || string(b) != s {
			t.Fatalf("MarshalText %q, String %q", b, s)
		}
		want := new(big.Rat).SetFrac(big64(l), big64(units.Millimetre))
		if got, ok := new(big.Rat).SetString(strings.TrimSuffix(s, " mm")); !ok || got.Cmp(want) != 0 {
			t.Fatalf("%s is not %v mm", s, want)
		}
		if frac := s[strings.IndexByte(s+".", '.'):]; strings.HasSuffix(frac, "0 mm") {
			t.Fatalf("%s is not the shortest text", s)
		}
		if back, err := units.ParseLength(l.Format(units.Picometre, 0)); back != l || err != nil {
			t.Fatalf("%v in picometres reads back as %v, %v", l, back, err)
		}
	})
}

// A length is a decimal of an inch where it is a whole number of 127 pm (5e-9 in): text in inches and back is then the
// identity. It cannot be anywhere else: an inch is 25.4e9 pm = 127·2⁹·5⁸·… pm, and no power of ten contains 127. The grid
// of eight decimal places is twice as wide, 254 pm.
func TestInchTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		const grid = 127 * units.Picometre
		l := (anyLength().Draw(t, "l") / grid) * grid
		texts := []string{l.Format(units.Inch, 9), l.Decimal(units.Inch).String() + " in"}
		if l%(2*grid) == 0 {
			texts = append(texts, l.Format(units.Inch, 8))
		}
		for _, s := range texts {
			if back, err := units.ParseLength(s); back != l || err != nil {
				t.Fatalf("%v = %s reads back as %v, %v", l, s, back, err)
			}
		}
		off := l/2 + units.Length(rapid.Int64Range(1, 126).Draw(t, "off"))
		if s := off.Format(units.Inch, 15); off%grid != 0 {
			if back, err := units.ParseLength(s); !errors.Is(err, units.ErrInexact) || back != off {
				t.Fatalf("%v = %s in 15 places: %v, %v, want ErrInexact", off, s, back, err)
			}
		}
	})
}

func TestFormatAgainstRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		unit := rapid.SampledFrom(named).Draw(t, "unit")
		places := rapid.IntRange(0, 15).Draw(t, "places")
		// big.Rat rounds halves away from zero, as Format does, but keeps the sign of a zero.
		want := rat(l, unit).FloatString(places)
		if strings.Trim(want, "-0.") == "" {
			want = strings.TrimPrefix(want, "-")
		}
		got := l.Format(unit, places)
		if number, _, _ := strings.Cut(got, " "); number != want {
			t.Fatalf("%v in %v to %d places: %s, want %s", l, unit, places, got, want)
		}
		back, err := units.ParseLength(got)
		if half := unit/units.Length(math.Pow10(places)) + 1; (err == nil || errors.Is(err, units.ErrInexact)) && (back-l).Abs() > half {
			t.Fatalf("%v as %s reads back as %v", l, got, back)
		}
	})
}

func TestFormatOddUnits(t *testing.T) {
	l := units.MustParseLength("76.2 mm")
	for _, c := range []struct {
		unit   units.Length
		places int
		want   string
	}{
		{2 * units.Inch, 2, "1.50 × 50.8 mm"},
		{units.Tenth, 0, "30000 × 0.00254 mm"},
		{0, 1, "76.2 mm"},
		{-units.Inch, 1, "76.2 mm"},
		{units.Inch, -3, "3 in"},
		{units.Inch, 99, "3.000000000000000 in"},
	} {
		if got := l.Format(c.unit, c.places); got != c.want {
			t.Errorf("Format(%v, %d) = %q, want %q", c.unit, c.places, got, c.want)
		}
	}
}

func TestInIsCorrectlyRounded(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := units.Length(rapid.Int64Range(-1<<53, 1<<53).Draw(t, "l"))
		unit := rapid.SampledFrom(named).Draw(t, "unit")
		want, _ := rat(l, unit).Float64()
		if got := l.In(unit); got != want {
			t.Fatalf("%v in %v is %v, want %v", l, unit, got, want)
		}
		if l.Abs() <= units.MaxLength && unit >= units.Micrometre {
			if back, err := units.Of(want, unit); back != l || err != nil {
				t.Fatalf("%v × %v is %v, %v, want %v", want, unit, back, err, l)
			}
		}
	})
}

func TestDecimalIsExact(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, o := anyLength().Draw(t, "l"), anyLength().Draw(t, "o")
		unit := rapid.SampledFrom(named).Draw(t, "unit")
		d := l.Decimal(unit)
		if unit != units.Inch && unit != units.Thou && unit != units.Microinch {
			if d.Rat().Cmp(rat(l, unit)) != 0 {
				t.Fatalf("%v is %v of %v", l, d, unit)
			}
		} else if got := d.Rat().FloatString(16); got != rat(l, unit).FloatString(16) && d.Sign() != 0 {
			t.Fatalf("%v is %v of %v", l, d, unit)
		}
		// The order of lengths is that of the decimals.
		if got := cmp.Compare(l, o); got != l.Decimal(units.Millimetre).Cmp(o.Decimal(units.Millimetre)) {
			t.Fatalf("%v compared with %v is %d", l, o, got)
		}
	})
}

func TestArithmeticAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		num := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-20, 20)).Draw(t, "num")
		den := rapid.OneOf(rapid.Int64(), rapid.Int64Range(-20, 20)).Draw(t, "den")
		got, err := l.MulDiv(num, den)
		if den == 0 {
			if !errors.Is(err, units.ErrRange) {
				t.Fatalf("%v × %d / 0: %v, %v", l, num, got, err)
			}
		} else {
			product := new(big.Int).Mul(big64(l), big.NewInt(num))
			want := halfAway(new(big.Rat).SetFrac(product, big.NewInt(den)))
			if want.IsInt64() != (err == nil) || err == nil && int64(got) != want.Int64() || err != nil && (!errors.Is(err, units.ErrRange) || got != 0) {
				t.Fatalf("%v × %d / %d: %v, %v, want %v", l, num, den, got, err, want)
			}
		}

		ls := rapid.SliceOfN(anyLength(), 0, 40).Draw(t, "ls")
		kept := slices.Clone(ls)
		total := new(big.Int)
		for _, l := range ls {
			total.Add(total, big64(l))
		}
		mean, err := units.Mean(ls...)
		if len(ls) == 0 {
			if !errors.Is(err, units.ErrNotGiven) {
				t.Fatalf("mean of none: %v, %v", mean, err)
			}
		} else if want := halfAway(new(big.Rat).SetFrac(total, big.NewInt(int64(len(ls))))); err != nil || int64(mean) != want.Int64() {
			t.Fatalf("mean of %v: %v, %v, want %v", ls, mean, err, want)
		}
		if !slices.Equal(ls, kept) {
			t.Fatal("Mean changed its argument")
		}

		abs := new(big.Int).Abs(big64(l))
		if got := l.Abs(); abs.IsInt64() && int64(got) != abs.Int64() || !abs.IsInt64() && got != math.MaxInt64 {
			t.Fatalf("|%v| is %v", l, got)
		}
	})
}

// clamp returns x as a Length, or the nearer end of the range.
func clamp(x *big.Int) units.Length {
	switch {
	case x.IsInt64():
		return units.Length(x.Int64())
	case x.Sign() < 0:
		return math.MinInt64
	}
	return math.MaxInt64
}

func TestRoundingAgainstBig(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l, o := anyLength().Draw(t, "l"), anyLength().Draw(t, "o")
		step := rapid.OneOf(anyLength(), rapid.Map(rapid.Int64Range(1, 12), func(x int64) units.Length { return units.Length(x) })).Draw(t, "step")
		if step <= 0 {
			if l.Round(step) != l || l.Floor(step) != l || l.Ceil(step) != l {
				t.Fatalf("%v to a step of %v is not itself", l, step)
			}
			return
		}
		multiple := func(n *big.Int) units.Length { return clamp(n.Mul(n, big64(step))) }
		floor := new(big.Int).Div(big64(l), big64(step)) // Euclidean: down, as step > 0
		ceil := new(big.Int).Neg(new(big.Int).Div(new(big.Int).Neg(big64(l)), big64(step)))
		for _, c := range []struct {
			name string
			f    func(units.Length, units.Length) units.Length
			want *big.Int
		}{
			{"Floor", units.Length.Floor, floor},
			{"Ceil", units.Length.Ceil, ceil},
			{"Round", units.Length.Round, halfAway(rat(l, step))},
		} {
			got, want := c.f(l, step), multiple(c.want)
			if got != want {
				t.Fatalf("%s(%d, %d) is %d, want %d", c.name, l, step, got, want)
			}
			if got%step == 0 && c.f(got, step) != got {
				t.Fatalf("%s(%d, %d) is not idempotent", c.name, l, step)
			}
			if other := c.f(o, step); (o < l && other > got) || (o > l && other < got) {
				t.Fatalf("%s to %d is not monotone: %d to %d, %d to %d", c.name, step, l, got, o, other)
			}
		}
	})
}

func TestFractionsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := anyLength().Draw(t, "l")
		den := rapid.SampledFrom([]int{1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 5, 10, 100, 1000, 10000, 127, 254, 635}).Draw(t, "den")
		text, rest, err := l.FormatFraction(den)
		if err != nil {
			if !errors.Is(err, units.ErrRange) || l.Abs() < math.MaxInt64-units.Inch {
				t.Fatalf("%v to 1/%d in: %v", l, den, err)
			}
			return
		}
		if back, err := units.ParseLength(text); err != nil || back+rest != l {
			t.Fatalf("%v to 1/%d in is %s and %v: reads back as %v, %v", l, den, text, rest, back, err)
		}
		if step := units.Inch / units.Length(den); 2*rest.Abs() > step {
			t.Fatalf("%v to 1/%d in leaves %v", l, den, rest)
		}
		if i := strings.IndexByte(text, '/'); i >= 0 {
			number := strings.TrimSuffix(text[strings.LastIndexByte(text[:i], '-')+1:], " in")
			if r, ok := new(big.Rat).SetString(number); !ok || r.String() != number || r.Denom().Int64() > int64(den) {
				t.Fatalf("%s is not in lowest terms", text)
			}
		}
	})
	for l, want := range map[units.Length]string{0: "0 in", -units.Micrometre: "0 in", -units.Inch: "-1 in", -units.Inch / 2: "-1/2 in", units.Inch * 5 / 2: "2-1/2 in"} {
		if text, _, err := l.FormatFraction(64); text != want || err != nil {
			t.Errorf("%v is %q, %v, want %q", l, text, err, want)
		}
	}
	for _, den := range []int{3, 7, 1024, 0, -64, math.MinInt, math.MaxInt} {
		if _, _, err := units.Inch.FormatFraction(den); !errors.Is(err, units.ErrInexact) {
			t.Errorf("1/%d in: %v, want ErrInexact", den, err)
		}
	}
}

func anyLimits() *rapid.Generator[units.Limits] {
	return rapid.Custom(func(t *rapid.T) units.Limits {
		size := rapid.Map(rapid.Int64Range(-1e10, 1e13), func(x int64) units.Length { return units.Length(x) })
		w := units.Limits{Min: size.Draw(t, "min"), Max: size.Draw(t, "max")}
		switch rapid.IntRange(0, 5).Draw(t, "ends") {
		case 0:
			w.Min = 0
		case 1:
			w.Max = 0
		}
		return w
	})
}

func TestInwardNeverWidens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyLimits().Draw(t, "w")
		switch rapid.IntRange(0, 4).Draw(t, "shape") {
		case 0:
			w.Min = 0
		case 1:
			w.Max = 0
		case 2:
			w.Max = w.Min + units.Length(rapid.Int64Range(0, 1e8).Draw(t, "width"))
		}
		grid := units.Length(rapid.OneOf(rapid.Int64Range(-5, 1e9), rapid.Int64()).Draw(t, "grid"))
		r, err := w.Inward(grid)
		if err != nil {
			if r != (units.Limits{}) {
				t.Fatalf("%v inward to %v: %v with %v", w, grid, r, err)
			}
			switch {
			case errors.Is(err, units.ErrCrossed):
				if w.Validate() == nil {
					t.Fatalf("%v: %v", w, err)
				}
			case errors.Is(err, units.ErrRange):
				if grid <= 0 {
					break
				}
				// By trial: the first grid value at or above Min is above Max, is beyond the range, or is zero.
				lo, hi := w.Min.Ceil(grid), w.Max.Floor(grid)
				none := lo%grid != 0 || hi%grid != 0 || w.HasMin() && w.HasMax() && lo > hi
				if !none && (!w.HasMin() || lo != 0) && (!w.HasMax() || hi != 0) {
					t.Fatalf("%v inward to %v: %v, but %v to %v fits", w, grid, err, lo, hi)
				}
			default:
				t.Fatal(err)
			}
			return
		}
		if r.HasMin() != w.HasMin() || r.HasMax() != w.HasMax() || r.Min%grid != 0 || r.Max%grid != 0 || r.Validate() != nil {
			t.Fatalf("%v inward to %v is %v", w, grid, r)
		}
		for _, end := range []units.Length{r.Min, r.Max} {
			if end != 0 && !w.Contains(end) {
				t.Fatalf("%v inward to %v is %v", w, grid, r)
			}
		}
		if w.HasMin() && r.Min-w.Min >= grid || w.HasMax() && w.Max-r.Max >= grid {
			t.Fatalf("%v inward to %v is %v, a grid or more lost", w, grid, r)
		}
		if again, err := r.Inward(grid); again != r || err != nil {
			t.Fatalf("%v inward again to %v is %v, %v", r, grid, again, err)
		}
	})
}

func TestLimitsAlgebra(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyLimits().Draw(t, "w")
		x := units.Length(rapid.Int64Range(-2e10, 2e13).Draw(t, "x"))
		if width, ok := w.Width(); ok != (w.HasMin() && w.HasMax()) || ok && width != w.Max-w.Min {
			t.Fatalf("%v is %v wide, %v", w, width, ok)
		}
		if middle, ok := w.Middle(); ok && w.Validate() == nil && (!w.Contains(middle) || (w.Max-middle-(middle-w.Min)).Abs() > 1) {
			t.Fatalf("%v has its middle at %v", w, middle)
		}
		d := units.Length(rapid.Int64Range(-1e12, 1e12).Draw(t, "d"))
		s, err := w.Shift(d)
		if collides := w.HasMin() && w.Min == -d || w.HasMax() && w.Max == -d; (err != nil) != collides {
			t.Fatalf("%v shifted by %v: %v", w, d, err)
		}
		if err == nil {
			if s.Contains(x+d) != w.Contains(x) {
				t.Fatalf("%v shifted by %v is %v", w, d, s)
			}
			if back, err := s.Shift(-d); back != w || err != nil {
				t.Fatalf("%v shifted back by %v is %v, %v", s, d, back, err)
			}
		}
		if w.Validate() == nil && !w.IsZero() {
			if back, err := units.ParseLimits(w.String()); back != w || err != nil {
				t.Fatalf("%v reads back as %v, %v", w, back, err)
			}
			b, err := json.Marshal(w)
			var back units.Limits
			if err2 := json.Unmarshal(b, &back); err != nil || err2 != nil || back != w {
				t.Fatalf("%v as JSON is %s and comes back as %v: %v, %v", w, b, back, err, err2)
			}
		}
	})
}

// forms are the ways a manual writes a window; all say the same.
func TestLimitsForms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]units.Length{units.Millimetre, units.Inch, units.Micrometre, units.Thou}).Draw(t, "unit")
		places := rapid.IntRange(0, 3).Draw(t, "places")
		step := unit / units.Length(math.Pow10(places))
		size := units.Length(rapid.Int64Range(1, 300).Draw(t, "size")) * step
		up, down := units.Length(rapid.Int64Range(1, 90).Draw(t, "up"))*step, units.Length(rapid.Int64Range(0, 90).Draw(t, "down"))*step
		want := units.Limits{Min: size - down, Max: size + up}
		number := func(l units.Length) string { n, _, _ := strings.Cut(l.Format(unit, places), " "); return n }
		_, name, _ := strings.Cut(size.Format(unit, 0), " ")
		texts := []string{
			number(want.Min) + " to " + number(want.Max) + " " + name,
			number(want.Min) + " - " + number(want.Max) + " " + name,
			number(want.Min) + " " + name + " – " + number(want.Max) + name,
			number(size) + " +" + number(up) + "/-" + number(down) + " " + name,
			number(size) + name + " -" + number(down) + " +" + number(up) + name,
			want.Min.String() + " to " + want.Max.String(),
		}
		if up == down {
			texts = append(texts, number(size)+" ± "+number(up)+" "+name, number(size)+" "+name+" +/- "+number(up)+name, number(size)+"±"+number(up)+name)
		}
		for _, s := range texts {
			if got, err := units.ParseLimits(s); got != want || err != nil {
				t.Fatalf("%s is %v, %v, want %v", s, got, err, want)
			}
		}
	})
}

// A plain is a floating-point quantity, seen through its text.
type plain struct {
	name  string
	parse func(string) (float64, error)
	text  func(float64) (string, error)
}

func plainOf[Q interface {
	~float64
	MarshalText() ([]byte, error)
}, P interface {
	*Q
	encoding.TextUnmarshaler
}](name string) plain {
	return plain{
		name:  name,
		parse: func(s string) (float64, error) { q, err := readText[Q, P](s); return float64(q), err },
		text:  func(x float64) (string, error) { b, err := Q(x).MarshalText(); return string(b), err },
	}
}

var plains = []plain{
	plainOf[units.Angle]("angle"),
	plainOf[units.Expansion]("expansion"),
	plainOf[units.Force]("force"),
	plainOf[units.Frequency]("frequency"),
	plainOf[units.Pressure]("pressure"),
	plainOf[units.Speed]("speed"),
	plainOf[units.TemperatureChange]("temperature change"),
	plainOf[units.Volume]("volume"),
	plainOf[units.Temperature]("temperature"),
}

// The text of a floating-point quantity has 12 significant digits: it reads back to within 1e-11, and is then kept for ever.
func TestPlainTextRoundTrip(t *testing.T) {
	for _, q := range plains {
		t.Run(q.name, rapid.MakeCheck(func(t *rapid.T) {
			x := rapid.OneOf(rapid.Float64Range(-1e12, 1e12), rapid.Float64Range(-100, 100), rapid.Float64Range(-1e-6, 1e-6)).Draw(t, "x")
			if math.Abs(x) < 1e-290 {
				x = 0 // next to the denormals, which have fewer digits
			}
			within := 1e-11 * math.Abs(x)
			if q.name == "temperature" {
				x, within = math.Abs(x)+1, max(1e-9, within) // 1e-9 °C
			}
			s, err := q.text(x)
			if err != nil {
				t.Fatal(err)
			}
			back, err := q.parse(s)
			if err != nil || math.Abs(back-x) > within {
				t.Fatalf("%v as %s reads back as %v, %v", x, s, back, err)
			}
			if again, err := q.text(back); again != s || err != nil {
				t.Fatalf("%s reads back and prints as %s, %v", s, again, err)
			}
		}))
	}
}

func TestTemperatureScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.Float64Range(-270, 3000).Draw(t, "°C")
		c, err := units.Celsius(x)
		if err != nil {
			t.Fatal(err)
		}
		f, err := units.Fahrenheit(c.Fahrenheit())
		if err != nil || math.Abs(float64(f-c)) > 1e-11 || math.Abs(c.Celsius()-x) > 1e-12 {
			t.Fatalf("%v °C is %v °F and comes back as %v K, %v", x, c.Fahrenheit(), float64(f), err)
		}
		d := units.TemperatureChange(rapid.Float64Range(-1, 1).Draw(t, "d"))
		if got := c.Add(d).Sub(c); math.Abs(float64(got-d)) > 1e-12 {
			t.Fatalf("%v + %v − %v is %v", c, d, c, got)
		}
		if got := c.AboveReference(); math.Abs(float64(got)-(x-20)) > 1e-11 {
			t.Fatalf("%v is %v above 20 °C", c, got)
		}
	})
	var none units.Temperature
	if none.AboveReference() != 0 || !none.IsZero() || none.Validate() != nil {
		t.Error("a temperature that is not given")
	}
}

func TestDegreesMinutesSeconds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d, m, s := rapid.IntRange(0, 400).Draw(t, "d"), rapid.IntRange(0, 59).Draw(t, "m"), rapid.IntRange(0, 59).Draw(t, "s")
		want := float64(d) + float64(m)/60 + float64(s)/3600
		a := units.Angle(want) * units.Degree
		if rapid.Bool().Draw(t, "negative") {
			a, want = -a, -want
		}
		text := fmt.Sprintf("%d° %02d′ %02d″", d, m, s)
		if a < 0 {
			text = "-" + text
		}
		back, err := units.ParseAngle(text)
		if err != nil || math.Abs(back.In(units.Degree)-want) > 1e-12*(1+math.Abs(want)) {
			t.Fatalf("%v° is %s and reads back as %v, %v", want, text, back, err)
		}
	})
}

func TestProductsInvert(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		size := rapid.Map(rapid.Int64Range(1e6, 1e13), func(x int64) units.Length { return units.Length(x) })
		d := size.Draw(t, "d")
		f := units.Frequency(rapid.Float64Range(1e-6, 1e4).Draw(t, "f"))
		if rapid.Bool().Draw(t, "backwards") {
			f = -f
		}
		v := units.Speed(math.Pi*d.In(units.Metre)*float64(f)) * units.MetrePerSecond // a circumference a turn
		if back, err := units.FrequencyFor(d, v); err != nil || math.Abs(float64(back-f)) > 1e-15*math.Abs(float64(f))*4 {
			t.Fatalf("%v at %v is %v, and back %v, %v", d, f, v, back, err)
		}
	})
}

// TestHalfOfTheLeast: a picometre is half of two, and goes away from zero; so do all odd numbers of them.
func TestHalfOfTheLeast(t *testing.T) {
	for l := units.Length(1); l < 20; l += 2 {
		if up, down := l.Round(2), (-l).Round(2); up != l+1 || down != -l-1 {
			t.Errorf("%d and %d pm round to %d and %d", l, -l, up, down)
		}
	}
}

// TestNothingIsNothing: no width of a window without both ends, no unit of a thousandth for an expansion of nothing, and a
// letter alone is no length, window or size.
func TestNothingIsNothing(t *testing.T) {
	for _, w := range []units.Limits{{}, {Min: 3}, {Max: 3}} {
		if d, ok := w.Width(); d != 0 || ok {
			t.Errorf("%v: width %v, %t", w, d, ok)
		}
	}
	if s := units.Expansion(0).String(); s != "0e-6/K" {
		t.Errorf("no expansion is %s", s)
	}
	l, w := units.Millimetre, units.Limits{Min: 1, Max: 2}
	if l.UnmarshalText([]byte("x")) == nil || w.UnmarshalText([]byte("x")) == nil || l != units.Millimetre || w != (units.Limits{Min: 1, Max: 2}) {
		t.Errorf("a letter was read as %v, %v", l, w)
	}
}
