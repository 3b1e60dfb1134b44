// SPDX-License-Identifier: BSD-3-Clause

package slips

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/units"
)

const step = 2 * units.Micrometre

// Looks with a scatter, rounded to a step of the scale, and counted; wherever the true size lies between two steps they are
// alike no more often, nor is one at any mark.
func TestOnOneStep(t *testing.T) {
	const pairs = 100_000
	r := rand.New(rand.NewPCG(5, 81))
	for _, scatter := range []float64{0.1, 0.4, 1, 3, 40} {
		for _, at := range []float64{0, 0.2, 0.5} {
			same, marked := 0, 0
			for range pairs {
				a, b := math.Round(at+scatter*r.NormFloat64()), math.Round(at+scatter*r.NormFloat64())
				if a == b {
					same++
				}
				if a == 0 {
					marked++
				}
			}
			for what, c := range map[string]struct {
				p     float64
				count int
			}{"alike": {onOneStep(scatter), same}, "at the mark": {onMark(scatter), marked}} {
				share, error4 := float64(c.count)/pairs, 4*math.Sqrt(c.p*(1-c.p)/pairs)
				if share > c.p+error4+1./pairs || at == 0 && share < c.p-error4-1./pairs {
					t.Errorf("scatter %g, %g of a step off: %s in %g, want at most %g", scatter, at, what, share, c.p)
				}
			}
		}
	}
	if p := onOneStep(1e9); !(p > 0 && p <= onOneStep(100)) {
		t.Errorf("on a fine scale: %g", p)
	}
}

// A bench looks at the places of a wall, each so many times.
type bench struct {
	r                   *rand.Rand
	depths, axes, times int
	scatter             float64 // in steps
}

// wall returns the true sizes in steps, place by place.
func (b bench) wall() []float64 {
	sizes := make([]float64, b.depths*b.axes)
	for i := range sizes {
		sizes[i] = 40_000 + 15*b.r.Float64()
	}
	return sizes
}

// look returns what is read of a wall of which some steps were taken, in the order of writing.
func (b bench) look(wall []float64, taken float64) (list []Look) {
	for i, size := range wall {
		for range b.times {
			shown := units.Length(math.Round(size+taken+b.scatter*b.r.NormFloat64())) * step
			list = append(list, Look{Depth: units.Length(i/b.axes) * units.Millimetre, At: float64(i % b.axes), Shown: shown})
		}
	}
	return list
}

var benches = []bench{
	{nil, 4, 3, 1, 1}, {nil, 4, 3, 2, 1}, {nil, 5, 3, 1, 0.3}, {nil, 5, 4, 2, 0.6}, {nil, 2, 2, 1, 2}, {nil, 5, 4, 1, 1},
}

// seldom reports whether an event of a thousandth happened no more often than chance has it, to four standard deviations.
func seldom(n, of int) bool {
	most := float64(of) * rarely
	return float64(n) <= most+4*math.Sqrt(most)
}

// TestHonest: of honest looks at a wall, and at another, hardly any is asked about, whatever was taken off between the two.
func TestHonest(t *testing.T) {
	const looks = 2000
	r := rand.New(rand.NewPCG(9, 82))
	for _, b := range benches {
		b.r = r
		shifted, copied, rewritten, stuck := 0, 0, 0, 0
		for n := range looks {
			wall := b.wall()
			first, second := InOrder(b.look(wall, 0)), b.look(wall, float64(n%3)*1.5)
			if _, yes := InOrder(second).ShiftOf(first, b.scatter); yes {
				shifted++
			}
			if InOrder(b.look(b.wall(), 0)).CopyOf(first, b.scatter, 1) {
				copied++
			}
			if _, _, yes := Rewritten(second, b.scatter); yes {
				rewritten++
			}
			flat := make([]float64, len(wall))
			if InOrder(b.look(flat, 0)).Stuck(b.scatter) {
				stuck++
			}
		}
		for what, n := range map[string]int{"second looks": shifted, "other walls": copied, "repeats": rewritten, "walls without form": stuck} {
			if !seldom(n, looks) {
				t.Errorf("%+v: %d of %d honest %s are asked about", b, n, looks, what)
			}
		}
	}
}

// TestCopied: a copy is seen, in whatever order it is written; where there are twenty looks at the least and they scatter by a
// step also one with the same added to each and one changed by a step.
func TestCopied(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 82))
	for n := range 300 {
		b := benches[n%len(benches)]
		b.r = r
		written := b.look(b.wall(), 0)
		first := InOrder(written)
		slices.Reverse(written)
		again := InOrder(written)
		if by, yes := again.ShiftOf(first, b.scatter); !yes || by != 0 || !again.CopyOf(first, b.scatter, 100) {
			t.Fatalf("%+v: a copy is not seen, or by %v", b, by)
		}
		added := units.Length(n%5) * step
		for i := range written {
			written[i].Shown += added
		}
		written[r.IntN(len(written))].Shown += step
		if by, yes := InOrder(written).ShiftOf(first, b.scatter); b.scatter >= 1 && len(first) >= 20 && (!yes || by != added) {
			t.Fatalf("%+v: a copy with %v added and a step changed: %v, %v", b, added, by, yes)
		}
	}
	// Of a copy of which places were left out, or of more than was copied, what both have counts.
	b := bench{r, 5, 4, 1, 1}
	first := InOrder(b.look(b.wall(), 0))
	for _, part := range []Looks{first[:14], first[6:]} {
		if by, yes := part.ShiftOf(first, 1); !yes || by != 0 {
			t.Errorf("%d of %d looks: %v, %v", len(part), len(first), by, yes)
		}
		if by, yes := first.ShiftOf(part, 1); !yes || by != 0 {
			t.Errorf("%d looks of %d: %v, %v", len(first), len(part), by, yes)
		}
	}
	// With a scatter of three steps five of six alike is no more than chance, any of thirty differences being the most frequent one;
	// six of six are.
	var six, shifted Looks
	for i := range 6 {
		six = append(six, Look{At: float64(i), Shown: units.Length(10*i) * step})
		shifted = append(shifted, Look{At: float64(i), Shown: units.Length(10*i+4) * step})
	}
	if by, yes := shifted.ShiftOf(six, 3); !yes || by != 4*step {
		t.Errorf("six of six: %v, %v", by, yes)
	}
	shifted[5].Shown += step
	if _, yes := shifted.ShiftOf(six, 3); yes {
		t.Error("five of six, by chance")
	}
	for i := range 5 { // p⁵, thirty-one times over, is less than a thousandth
		shifted[i].Shown = six[i].Shown + 4*step
	}
	if _, yes := shifted[:5].ShiftOf(six[:5], 3); !yes {
		t.Error("five of five")
	}
	if _, yes := (Looks)(nil).ShiftOf(nil, 1); yes || (Looks)(nil).CopyOf(nil, 1, 1) {
		t.Error("of nothing nothing is a copy")
	}
}

// TestRewritten: repeats that are copies are counted and asked about, but for a few of them, or by a scale that shows no scatter.
func TestRewritten(t *testing.T) {
	b := bench{rand.New(rand.NewPCG(11, 83)), 4, 3, 1, 1}
	once := b.look(b.wall(), 0)
	for _, c := range []struct {
		times   int
		scatter float64
		want    bool
	}{{1, 1, false}, {2, 1, true}, {10, 1, true}, {10, 0.1, false}} {
		same, all, tooMany := Rewritten(slices.Repeat(once, c.times), c.scatter)
		if n := (c.times - 1) * len(once); same != n || all != n || tooMany != c.want {
			t.Errorf("%d times: %d of %d, %v", c.times, same, all, tooMany)
		}
	}
	// On a scale so fine that a mark is met once in 2,500 looks even one repeat is too many.
	if _, _, tooMany := Rewritten([]Look{{Shown: 7}, {Shown: 7}}, 1000); !tooMany {
		t.Error("one repeat on a fine scale")
	}
	// What is written first counts, not what is least.
	if same, all, _ := Rewritten([]Look{{Shown: 5}, {Shown: 3}, {Shown: 3}, {Shown: 5}, {At: 1, Shown: 5}}, 1); same != 1 || all != 3 {
		t.Errorf("%d of %d", same, all)
	}
}

// TestLikeness by hand: one look is found among three of its place by three times the chance of one pair, two by that and twice
// the chance again; three are not found among one.
func TestLikeness(t *testing.T) {
	three, one := Looks{{Shown: 0}, {Shown: step}, {Shown: 2 * step}}, Looks{{Shown: step}}
	each := onOneStep(2)
	if all, chance := one.likeness(three, 2); !all || math.Abs(chance-3*each) > 1e-12 {
		t.Errorf("one among three: %v, %g of %g", all, chance, 3*each)
	}
	if all, chance := three.likeness(one, 2); all || chance != 1 {
		t.Errorf("three among one: %v, %g", all, chance)
	}
	two := Looks{{Shown: 0}, {Shown: step}}
	if all, chance := two.likeness(three, 2); !all || math.Abs(chance-3*each*2*each) > 1e-12 {
		t.Errorf("two among three: %v, %g of %g", all, chance, 6*each*each)
	}
	// Where nothing is alike chance brings it always.
	if all, chance := (Looks{{Shown: 9 * step}}).likeness(three, 2); all || chance != 1 {
		t.Errorf("none: %v, %g", all, chance)
	}
}

// TestStuck: the chance that twelve looks show one mark, which scatter by a step, is 0.38¹¹; of two it is no wonder.
func TestStuck(t *testing.T) {
	same := slices.Repeat(Looks{{Shown: 7 * step}}, 12)
	if same[:1].Stuck(50) || !same.Stuck(1) || same.Stuck(0.2) || same[:2].Stuck(1) || same[:1].Stuck(1) {
		t.Error("stuck")
	}
	same[4].Shown += step
	if same.Stuck(1) {
		t.Error("one of them moved")
	}
}

// TestScatter finds the scatter of repeats: their pooled standard deviation, (1² + 1²)/2 here, and the true one of many.
func TestScatter(t *testing.T) {
	if s, ok := InOrder([]Look{{Shown: step}, {Shown: 3 * step}, {At: 1, Shown: 9 * step}}).Scatter(step); !ok || math.Abs(s-math.Sqrt2) > 1e-12 {
		t.Errorf("%v, %v", s, ok)
	}
	if s, ok := InOrder([]Look{{Shown: step}, {Shown: 2 * step}}).Scatter(step); !ok || math.Abs(s-math.Sqrt(0.5)) > 1e-12 {
		t.Errorf("a step apart: %v, %v", s, ok)
	}
	if _, ok := InOrder([]Look{{Shown: step}, {At: 1, Shown: 3 * step}, {At: 1, Shown: 3 * step}}).Scatter(step); ok {
		t.Error("nothing was seen to scatter")
	}
	b := bench{rand.New(rand.NewPCG(12, 84)), 40, 5, 4, 3}
	if s, ok := InOrder(b.look(b.wall(), 0)).Scatter(step); !ok || math.Abs(s-3.01) > 0.4 { // a twelfth of a step² more by rounding
		t.Errorf("%v of 3, %v", s, ok)
	}
}

// wavy is a wall of two and three lobes, in radii once round.
func wavy(n int) []units.Length {
	list := make([]units.Length, n)
	for i := range list {
		a := 2 * math.Pi * float64(i) / float64(n)
		list[i] = 40*units.Millimetre + units.Length(math.Round((30*math.Cos(2*a)+8*math.Sin(3*a))*1000))*units.Nanometre
	}
	return list
}

// TestSpikes: what is moved by more than most is named alone, wherever in the round, and by how much; a smooth wall has none.
func TestSpikes(t *testing.T) {
	const most = 5 * units.Micrometre
	if list := Spikes(wavy(72), most); list != nil {
		t.Errorf("smooth: %v", list)
	}
	for _, at := range []int{0, 1, 35, 70, 71} {
		for _, off := range []units.Length{12 * units.Micrometre, -12 * units.Micrometre} {
			round := wavy(72)
			round[at] += off
			list := Spikes(round, most)
			if len(list) != 1 || list[0].At != at || (list[0].Off-off.Abs()).Abs() > units.Micrometre {
				t.Errorf("at %d by %v: %v", at, off, list)
			}
		}
	}
	if Spikes(nil, most) != nil || Range(nil) != 0 || Range([]units.Length{-3, 4}) != 7 {
		t.Error("of nothing")
	}
	// A cubic runs on without any, but where its ends meet.
	var cubic []units.Length
	for k := range units.Length(40) {
		cubic = append(cubic, k*k*k*600)
	}
	for _, spike := range Spikes(cubic, 0) {
		if spike.At > 1 && spike.At < 38 && spike.Off != 0 {
			t.Errorf("of a cubic: %v", spike)
		}
	}
	if off := Spikes([]units.Length{0, 0, 0, 0, 60, 0, 0, 0, 0}, 0); len(off) != 1 || off[0] != (Spike{4, 60}) {
		t.Errorf("one of nine: %v", off)
	}
}

// TestLone: the least and the greatest, where it is farther out than all others are apart, and not where it is as far.
func TestLone(t *testing.T) {
	for _, c := range []struct {
		values []units.Length
		want   []Spike
	}{
		{[]units.Length{4, 0, 9, 2}, []Spike{{2, 4}}}, {[]units.Length{4, 0, 8, 2}, nil}, {[]units.Length{4, -5, 1, 2}, []Spike{{1, 3}}},
		{[]units.Length{0, 10, 20, 9}, nil}, {[]units.Length{3, 3}, nil}, {[]units.Length{3, 8}, []Spike{{0, 0}, {1, 0}}},
	} {
		if got := Lone(c.values); !slices.Equal(got, c.want) {
			t.Errorf("%v: %v, want %v", c.values, got, c.want)
		}
	}
}

// TestOneLine: a line set otherwise, levelled otherwise and at another scale is that line; another line is not.
func TestOneLine(t *testing.T) {
	r := rand.New(rand.NewPCG(13, 85))
	line := func() []units.Length {
		list := make([]units.Length, 400)
		for i := range list {
			list[i] = units.Length(r.NormFloat64() * 500_000)
		}
		return list
	}
	for range 50 {
		a, b := line(), line()
		again := slices.Clone(a)
		for i := range again {
			again[i] = again[i]*13/10 + 7*units.Micrometre + units.Length(i)*10*units.Nanometre + units.Length(r.NormFloat64()*50_000)
		}
		if !OneLine(a, a) || !OneLine(a, again) || !OneLine(again, a) {
			t.Error("a line is not known again")
		}
		if OneLine(a, b) {
			t.Error("two lines are taken for one")
		}
		for i := range again {
			again[i] = -again[i]
		}
		if OneLine(a, again) {
			t.Error("hills are valleys")
		}
	}
}
