// SPDX-License-Identifier: BSD-3-Clause

package simulate_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/simulate"
	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/num/hyperdual"
	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.15g, want %.15g ± %g", what, got, want, tol)
	}
}

func must[T any](t *testing.T) func(v T, err error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func input(name string, value, std float64, shape simulate.Shape) simulate.Input {
	return simulate.Input{Input: uncertainty.Input{Name: name, Value: value, Std: std}, Shape: shape}
}

// first is the model that gives its first input.
func first(x []hyperdual.Number) hyperdual.Number { return x[0] }

func total(x []hyperdual.Number) hyperdual.Number {
	y := hyperdual.Number{}
	for _, v := range x {
		y = hyperdual.Add(y, v)
	}
	return y
}

// A shape, its distribution function about 0 with Std 1, its standard deviation and kurtosis. Densities and moments
// of JCGM 101:2008 6.4, digits computed.
type shape struct {
	name          string
	in            simulate.Input
	cdf           func(x float64) float64
	std, kurtosis float64 // kurtosis 0: none, or not looked at
}

func shapes() []shape {
	student := func(dof float64) func(x float64) float64 {
		return func(x float64) float64 {
			p := mathext.RegIncBeta(dof/2, 0.5, dof/(dof+x*x)) / 2
			if x > 0 {
				return 1 - p
			}
			return p
		}
	}
	dof := func(nu float64) simulate.Input {
		return simulate.Input{Input: uncertainty.Input{Std: 1, DoF: nu}}
	}
	inexact := input("", 0, inexactEnds(1, 0.5), simulate.Inexact)
	inexact.Ends = 0.5
	return []shape{
		{"normal", input("", 0, 1, simulate.Normal), func(x float64) float64 { return 0.5 * math.Erfc(-x/math.Sqrt2) }, 1, 3},
		{"rectangular", input("", 0, 1, simulate.Rectangular), func(x float64) float64 { return min(1, max(0, 0.5+x/math.Sqrt(12))) }, 1, 1.8},
		{"triangular", input("", 0, 1, simulate.Triangular), func(x float64) float64 {
			a := math.Sqrt(6)
			d := max(0, a-math.Abs(x)) / a
			if x > 0 {
				return 1 - d*d/2
			}
			return d * d / 2
		}, 1, 2.4},
		{"arcsine", input("", 0, 1, simulate.Arcsine), func(x float64) float64 { return 0.5 + math.Asin(min(1, max(-1, x/math.Sqrt2)))/math.Pi }, 1, 1.5},
		{"inexact", inexact, func(x float64) float64 {
			// the mean, over half-widths h from 1/2 to 3/2, of a rectangle's: |x|/h inside it, 1 outside
			a := math.Abs(x)
			b := min(1.5, max(0.5, a))
			p := 0.5 + (b-0.5+a*math.Log(1.5/b))/2
			if x < 0 {
				return 1 - p
			}
			return p
		}, 0.600925212577332, 2.31976331360947},
		{"t of 3", dof(3), student(3), 1.73205080757, 0},
		{"t of 5", dof(5), student(5), 1.29099444874, 0},
		{"t of 8", dof(8), student(8), 1.15470053838, 0},
		{"t of 24", dof(24), student(24), 1.04446593573, 0},
	}
}

// Draws against their distribution functions, by Kolmogorov's distance at a chance of 1e-4, and moments.
func TestShapes(t *testing.T) {
	const n = 200_000
	for k, c := range shapes() {
		s := simulate.Simulation{Model: first, Inputs: []simulate.Input{c.in}, Seed: uint64(k)}
		var values []float64
		for i := range n / simulate.ChunkSize {
			chunk := make([]float64, simulate.ChunkSize)
			if err := s.Chunk(i, chunk); err != nil {
				t.Fatal(err)
			}
			values = append(values, chunk...)
		}
		slices.Sort(values)
		distance, square, fourth := 0.0, 0.0, 0.0
		for i, v := range values {
			p := c.cdf(v)
			distance = max(distance, p-float64(i)/n, float64(i+1)/n-p)
			square += v * v / n
			fourth += v * v * v * v / n
		}
		if distance > 2.23/math.Sqrt(n) { // √(−ln(1e-4/2)/2)
			t.Errorf("%s: distance %v", c.name, distance)
		}
		if c.kurtosis > 0 {
			near(t, c.name+", variance", square, c.std*c.std, 4*c.std*c.std*math.Sqrt((c.kurtosis-1)/n))
			near(t, c.name+", kurtosis", fourth/(square*square), c.kurtosis, 0.03*c.kurtosis)
		} else if c.name != "t of 3" { // whose fourth moment is infinite
			near(t, c.name+", std", math.Sqrt(square), c.std, 0.02*c.std)
		}
	}
}

// A seed means the same draws for ever, to the last bit.
func TestSeeds(t *testing.T) {
	want := [][2]uint64{ // of trials 0 and 9,999 of chunk 3
		{0xbfe622bdff9b4a7d, 0xbfeee69053d75ad1}, // normal
		{0xbff5b82f4da0671a, 0xbff4c919db652736}, // rectangular
		{0xbfc12479799da18b, 0x3ffeb32e3e98057e}, // triangular
		{0xbff036d712d28899, 0x3ff684666eab907f}, // arcsine
		{0x3fda3f5417f602f4, 0x3ff39cb1a31a8188}, // inexact
		{0x3fea5b1bbcdd4dcf, 0xbff4b2d25b2608dc}, // t of 3
		{0x3fe67cb64b09a29f, 0x4001cf3e946d1a53}, // t of 5
		{0x3fe4873c9616f8ba, 0xbff74fa946f938c8}, // t of 8
		{0x3fe242caf189ca55, 0x3ff7aed6a366157b}, // t of 24
	}
	for k, c := range shapes() {
		s := simulate.Simulation{Model: first, Inputs: []simulate.Input{c.in}, Seed: 20261127}
		values := make([]float64, simulate.ChunkSize)
		if err := s.Chunk(3, values); err != nil {
			t.Fatal(err)
		}
		got := [2]uint64{math.Float64bits(values[0]), math.Float64bits(values[len(values)-1])}
		if k >= len(want) || got != want[k] {
			t.Errorf("%s: {%#x, %#x},", c.name, got[0], got[1])
		}
	}
}

// Chunks in any order, or in part, are those of a run.
func TestChunks(t *testing.T) {
	s := bench()
	all := make([]float64, 30_000)
	for _, i := range []int{2, 0, 1} {
		if err := s.Chunk(i, all[i*simulate.ChunkSize:(i+1)*simulate.ChunkSize]); err != nil {
			t.Fatal(err)
		}
	}
	want := must[simulate.Result](t)(simulate.Summarise(all[:27_123], 0.95))
	if got := must[simulate.Result](t)(s.Run(27_123)); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
	part := make([]float64, 777)
	if err := s.Chunk(1, part); err != nil || !slices.Equal(part, all[10_000:10_777]) {
		t.Error("a part of a chunk", err)
	}
	other := s
	other.Seed++
	if must[simulate.Result](t)(other.Run(27_123)).Mean == want.Mean {
		t.Error("another seed, the same draws")
	}
}

// The textbook's way, by sorting all.
func plainly(values []float64, p float64) simulate.Result {
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	n := len(sorted)
	q := int(p*float64(n) + 0.5)
	r := simulate.Result{Trials: n, Coverage: p}
	for _, v := range values {
		r.Mean += v / float64(n)
	}
	for _, v := range values {
		r.Std += (v - r.Mean) * (v - r.Mean) / float64(n-1)
	}
	r.Std = math.Sqrt(r.Std)
	k := (n - q) / 2
	if (n-q)%2 != 0 {
		k = (n - q + 1) / 2
	}
	r.Symmetric = simulate.Interval{Min: sorted[k-1], Max: sorted[k+q-1]}
	r.Shortest = simulate.Interval{Min: math.Inf(-1), Max: math.Inf(1)}
	for k := range n - q {
		if sorted[k+q]-sorted[k] < r.Shortest.Max-r.Shortest.Min {
			r.Shortest = simulate.Interval{Min: sorted[k], Max: sorted[k+q]}
		}
	}
	return r
}

func TestSummarise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(100, 20_000).Draw(t, "n")
		p := rapid.SampledFrom([]float64{0.05, 0.5, 0.9, 0.95, 0.98}).Draw(t, "p")
		s := simulate.Simulation{Model: first, Inputs: []simulate.Input{shapes()[rapid.IntRange(0, 8).Draw(t, "shape")].in}, Seed: rapid.Uint64().Draw(t, "seed")}
		values := make([]float64, n)
		for i := 0; i < n; i += simulate.ChunkSize {
			if err := s.Chunk(i/simulate.ChunkSize, values[i:min(n, i+simulate.ChunkSize)]); err != nil {
				t.Fatal(err)
			}
		}
		switch rapid.IntRange(0, 4).Draw(t, "bent") {
		case 1: // many alike
			for i := range values {
				values[i] = math.Round(2 * values[i])
			}
		case 2: // a long tail
			for i := range values {
				values[i] = math.Exp(min(5*values[i], 300)) // and its square is a number still
			}
		case 3: // in order, so that a sample of places is one of sizes
			slices.Sort(values)
		case 4: // large ones hidden between the places of the sample
			for i := range values {
				if i%2 == 1 {
					values[i] += 100
				}
			}
		}
		before := slices.Clone(values)
		got, err := simulate.Summarise(values, p)
		if err != nil {
			t.Fatal(err)
		}
		want := plainly(values, p)
		if !slices.Equal(values, before) {
			t.Fatal("the values were moved")
		}
		if math.Abs(got.Mean-want.Mean) > 1e-9*(math.Abs(want.Mean)+want.Std) || math.Abs(got.Std-want.Std) > 1e-9*want.Std {
			t.Fatalf("%+v, want %+v", got, want)
		}
		if got.Symmetric != want.Symmetric || got.Shortest != want.Shortest {
			t.Fatalf("%+v, want %+v", got, want)
		}
	})
}

// A linear model of normal inputs, correlated or not, is what the law of propagation has.
func TestLinearModel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 4).Draw(t, "n")
		var s simulate.Simulation
		var plain []uncertainty.Input
		factors := make([]float64, n)
		for i := range n {
			factors[i] = rapid.Float64Range(-3, 3).Draw(t, "factor")
			in := input(string(rune('a'+i)), rapid.Float64Range(-10, 10).Draw(t, "value"), rapid.Float64Range(0.1, 2).Draw(t, "std"), simulate.Normal)
			s.Inputs, plain = append(s.Inputs, in), append(plain, in.Input)
		}
		if n > 1 {
			s.Correlations = []uncertainty.Correlation{{A: "b", B: "a", R: rapid.Float64Range(-1, 1).Draw(t, "r")}}
		}
		s.Model = func(x []hyperdual.Number) hyperdual.Number {
			y := hyperdual.Number{Real: 7}
			for i := range x {
				y = hyperdual.Add(y, hyperdual.Scale(factors[i], x[i]))
			}
			return y
		}
		s.Seed = rapid.Uint64().Draw(t, "seed")
		p, err := uncertainty.Propagate(s.Model, plain, s.Correlations...)
		if err != nil {
			t.Fatal(err)
		}
		u, _, err := p.Budget.Combined()
		if err != nil {
			t.Fatal(err)
		}
		const trials = 20_000
		r, err := s.Run(trials)
		if err != nil {
			t.Fatal(err)
		}
		const k = 5.5 // standard errors: many cases, some of them sought out
		if math.Abs(r.Mean-p.Value) > k*u/math.Sqrt(trials)+1e-12 || math.Abs(r.Std-u) > k*u/math.Sqrt(2*trials)+1e-9 {
			t.Fatalf("%+v, want %v, %v", r, p.Value, u)
		}
		// an end of the symmetric interval has √(p(1−p)/n)/density as its standard error
		end := 1.959963984540054
		density := math.Exp(-end*end/2) / math.Sqrt(2*math.Pi)
		if tol := k * u * math.Sqrt(0.025*0.975/trials) / density; math.Abs(r.Symmetric.Max-p.Value-end*u) > tol+1e-9 || math.Abs(p.Value-end*u-r.Symmetric.Min) > tol+1e-9 {
			t.Fatalf("%+v, want ±%v", r, end*u)
		}
	})
}

// inexactEnds is the standard deviation within ±half where the ends are known to ±d (JCGM 101:2008 6.4.3).
func inexactEnds(half, d float64) float64 { return math.Hypot(half/math.Sqrt(3), d/3) }

// correlate returns the correlation coefficient of pairs.
func correlate(xs, ys []float64) float64 {
	var x, y, xx, xy, yy float64
	for i := range xs {
		x, y = x+xs[i], y+ys[i]
		xx, xy, yy = xx+xs[i]*xs[i], xy+xs[i]*ys[i], yy+ys[i]*ys[i]
	}
	n := float64(len(xs))
	return (xy - x*y/n) / math.Sqrt((xx-x*x/n)*(yy-y*y/n))
}

// Correlations are those that were asked for: of the draws themselves.
func TestCorrelated(t *testing.T) {
	s := simulate.Simulation{Inputs: []simulate.Input{input("a", 1, 2, simulate.Normal), input("odd", 0, 1, simulate.Arcsine), input("b", 2, 3, simulate.Normal), input("exact", 5, 0, simulate.Normal), input("c", 3, 1, simulate.Normal)},
		Correlations: []uncertainty.Correlation{{A: "a", B: "b", R: -0.6}, {A: "c", B: "a", R: 0.3}, {A: "exact", B: "b", R: 0.5}}, Seed: 4}
	whole := simulate.Simulation{Inputs: []simulate.Input{input("a", 1, 2, simulate.Normal), input("b", 5, 3, simulate.Normal)}, Correlations: []uncertainty.Correlation{{A: "a", B: "b", R: 1}}, Seed: 4}
	whole.Model = func(x []hyperdual.Number) hyperdual.Number { // one moves with the other
		if math.Abs((x[0].Real-1)/2-(x[1].Real-5)/3) > 1e-12 {
			t.Errorf("%v beside %v", x[0].Real, x[1].Real)
		}
		return x[1]
	}
	near(t, "std of the other", must[simulate.Result](t)(whole.Run(10_000)).Std, 3, 4*3/math.Sqrt(20_000))
	var a, b, c, odd []float64
	s.Model = func(x []hyperdual.Number) hyperdual.Number {
		a, odd, b, c = append(a, x[0].Real), append(odd, x[1].Real), append(b, x[2].Real), append(c, x[4].Real)
		return x[0]
	}
	must[simulate.Result](t)(s.Run(100_000))
	for _, x := range []struct {
		name string
		x, y []float64
		want float64
	}{{"a b", a, b, -0.6}, {"a c", a, c, 0.3}, {"b c", b, c, 0}, {"a odd", a, odd, 0}} {
		near(t, x.name, correlate(x.x, x.y), x.want, 4/math.Sqrt(100_000))
	}
	for _, x := range []struct {
		xs        []float64
		mean, std float64
	}{{a, 1, 2}, {b, 2, 3}, {c, 3, 1}} {
		d := must[uncertainty.Sample](t)(uncertainty.Describe(x.xs...))
		near(t, "mean", d.Mean, x.mean, 4*x.std/math.Sqrt(100_000))
		near(t, "std", d.Std, x.std, 4*x.std/math.Sqrt(200_000))
	}
}

// Steady digits are steady: of many seeds, nearly all are within the tolerance of the truth.
func TestAdapt(t *testing.T) {
	off, n := 0, 40
	for seed := range n {
		s := simulate.Simulation{Model: total, Inputs: []simulate.Input{input("a", 10, 0.03, simulate.Normal), input("b", 0, 0.04, simulate.Rectangular)}, Seed: uint64(seed)}
		r := must[simulate.Result](t)(s.Adapt(1, 2_000_000))
		if tol := 0.005; math.Abs(r.Mean-10) > tol || math.Abs(r.Std-0.05) > tol { // half a unit of the digit of 0.05
			off++
		}
		if r.Trials < 20_000 || r.Trials%simulate.ChunkSize != 0 {
			t.Error(r.Trials)
		}
	}
	if off > 0 { // 2 s of five in a hundred, here many times that
		t.Errorf("%d of %d results are off", off, n)
	}
	// two digits want about a hundred times the trials of one
	s := simulate.Simulation{Model: first, Inputs: []simulate.Input{input("a", 0, 0.2, simulate.Normal)}, Coverage: 0.9}
	two := must[simulate.Result](t)(s.Adapt(2, 20_000_000))
	if two.Trials < 60_000 {
		t.Error(two.Trials)
	}
	near(t, "std", two.Std, 0.2, 0.005)
	r, err := s.Adapt(2, 30_000)
	if !errors.Is(err, simulate.ErrUnstable) || r.Trials != 30_000 {
		t.Error(r, err)
	}
	s.Coverage = 0.9999 // blocks of a million
	if _, err := s.Adapt(1, 1_999_999); !errors.Is(err, simulate.ErrTrials) {
		t.Error(err)
	}
}

func TestRefusals(t *testing.T) {
	second := func(_ any, err error) error { return err }
	with := func(change func(s *simulate.Simulation)) error {
		s := bench()
		s.Inputs = slices.Clone(s.Inputs)
		change(&s)
		return second(s.Run(1000))
	}
	values := make([]float64, 200)
	values[7] = math.NaN()
	huge := make([]float64, 200)
	huge[7] = 1e300
	for name, c := range map[string]struct{ got, want error }{
		"no model":      {with(func(s *simulate.Simulation) { s.Model = nil }), uncertainty.ErrModel},
		"no input":      {with(func(s *simulate.Simulation) { s.Inputs = nil }), uncertainty.ErrNoData},
		"std":           {with(func(s *simulate.Simulation) { s.Inputs[0].Std = -1 }), uncertainty.ErrStd},
		"std NaN":       {with(func(s *simulate.Simulation) { s.Inputs[0].Std = math.NaN() }), uncertainty.ErrStd},
		"value":         {with(func(s *simulate.Simulation) { s.Inputs[0].Value = math.Inf(1) }), units.ErrNotFinite},
		"two degrees":   {with(func(s *simulate.Simulation) { s.Inputs[0].DoF = 2 }), uncertainty.ErrStd},
		"shape":         {with(func(s *simulate.Simulation) { s.Inputs[0].Shape = 9 }), units.ErrUnknownName},
		"ends":          {with(func(s *simulate.Simulation) { s.Inputs[0].Ends = 1e-6 }), uncertainty.ErrStd},
		"ends too far":  {with(func(s *simulate.Simulation) { s.Inputs[1].Shape, s.Inputs[1].Ends = simulate.Inexact, 1 }), uncertainty.ErrStd},
		"coverage":      {with(func(s *simulate.Simulation) { s.Coverage = 1 }), units.ErrRange},
		"no such input": {with(func(s *simulate.Simulation) { s.Correlations = []uncertainty.Correlation{{A: "D", B: "x", R: 0.1}} }), uncertainty.ErrCorrelation},
		"not normal":    {with(func(s *simulate.Simulation) { s.Correlations = []uncertainty.Correlation{{A: "D", B: "ring", R: 0.1}} }), uncertainty.ErrCorrelation},
		"impossible":    {with(func(s *simulate.Simulation) { s.Correlations = []uncertainty.Correlation{{A: "D", B: "T", R: 1.1}} }), uncertainty.ErrCorrelation},
		"model of NaN": {with(func(s *simulate.Simulation) {
			s.Model = func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Log(x[2]) }
		}), uncertainty.ErrModel},
		"few trials":     {second(bench().Run(999)), simulate.ErrTrials},
		"many trials":    {second(bench().Run(math.MaxInt)), simulate.ErrTrials},
		"digits":         {second(bench().Adapt(3, 100_000)), simulate.ErrTrials},
		"most":           {second(bench().Adapt(1, 19_999)), simulate.ErrTrials},
		"chunk":          {bench().Chunk(-1, nil), simulate.ErrTrials},
		"values":         {bench().Chunk(0, make([]float64, simulate.ChunkSize+1)), simulate.ErrTrials},
		"summary, few":   {second(simulate.Summarise(make([]float64, 99), 0.5)), simulate.ErrTrials},
		"summary, tails": {second(simulate.Summarise(make([]float64, 200), 0.995)), simulate.ErrTrials},
		"summary, p":     {second(simulate.Summarise(make([]float64, 200), math.NaN())), units.ErrRange},
		"summary, NaN":   {second(simulate.Summarise(values, 0.9)), units.ErrNotFinite},
		"summary, huge":  {second(simulate.Summarise(huge, 0.9)), units.ErrNotFinite},
		"validation":     {second(simulate.Result{Coverage: 0.95}.Validate(uncertainty.Propagation{}, 0)), simulate.ErrTrials},
		"no budget":      {second(simulate.Result{Coverage: 0.95}.Validate(uncertainty.Propagation{}, 1)), uncertainty.ErrNoData},
	} {
		if !errors.Is(c.got, c.want) {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
	for name, err := range map[string]error{ // the last that is allowed
		"ends of half the width": with(func(s *simulate.Simulation) {
			s.Inputs[0].Shape, s.Inputs[0].Std, s.Inputs[0].Ends = simulate.Inexact, 2, 3 // √(3²/3 + 3²/9)
		}),
		"two blocks":     ignoreUnstable(second(bench().Adapt(1, 20_000))),
		"one value":      second(simulate.Summarise(make([]float64, 200), 0.005)),
		"tails of two":   second(simulate.Summarise(make([]float64, 200), 0.99)),
		"a hundred":      second(simulate.Summarise(make([]float64, 100), 0.5)),
		"largest degree": with(func(s *simulate.Simulation) { s.Inputs[0].Shape, s.Inputs[0].DoF = simulate.Normal, 1e9 }),
	} {
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	var sh simulate.Shape
	if err := sh.UnmarshalText([]byte("triangular")); err != nil || sh != simulate.Triangular || sh.String() != "triangular" {
		t.Error(sh, err)
	}
	if _, err := simulate.Shape(5).MarshalText(); !errors.Is(err, units.ErrUnknownName) {
		t.Error(err)
	}
}

func ignoreUnstable(err error) error {
	if errors.Is(err, simulate.ErrUnstable) {
		return nil
	}
	return err
}

// TestScale: draws about another value with another standard uncertainty are the same draws, moved and stretched.
func TestScale(t *testing.T) {
	for k, c := range shapes() {
		one := simulate.Simulation{Model: first, Inputs: []simulate.Input{c.in}, Seed: uint64(k)}
		in := c.in
		in.Value, in.Std, in.Ends = 7, 0.25*in.Std, 0.25*in.Ends
		other := simulate.Simulation{Model: first, Inputs: []simulate.Input{in}, Seed: uint64(k)}
		x, y := make([]float64, simulate.ChunkSize), make([]float64, simulate.ChunkSize)
		if err := errors.Join(one.Chunk(0, x), other.Chunk(0, y)); err != nil {
			t.Fatal(err)
		}
		for i := range x {
			if want := 7 + 0.25*x[i]; math.Abs(y[i]-want) > 1e-12*(1+math.Abs(want)) {
				t.Fatalf("%s: %v, want %v", c.name, y[i], want)
			}
		}
	}
}

// TestTail: as many normal draws lie beyond 3.7, 4 and 4.5 standard deviations as the distribution has there, which is
// beyond the last layer that the draws are made of.
func TestTail(t *testing.T) {
	const n = 400 * simulate.ChunkSize
	s := simulate.Simulation{Model: first, Inputs: []simulate.Input{input("", 0, 1, simulate.Normal)}, Seed: 9}
	edges, beyond := []float64{3.7, 4, 4.5}, [3]float64{}
	chunk := make([]float64, simulate.ChunkSize)
	for i := range n / simulate.ChunkSize {
		if err := s.Chunk(i, chunk); err != nil {
			t.Fatal(err)
		}
		for _, x := range chunk {
			for k, edge := range edges {
				if math.Abs(x) > edge {
					beyond[k]++
				}
			}
		}
	}
	for k, edge := range edges {
		want := n * math.Erfc(edge/math.Sqrt2)
		if math.Abs(beyond[k]-want) > 4*math.Sqrt(want) {
			t.Errorf("%v of %d draws beyond %v, want %.0f", beyond[k], n, edge, want)
		}
	}
}
