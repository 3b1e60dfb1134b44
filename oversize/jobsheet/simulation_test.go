// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"borewright.example/oversize/jobsheet"
	"borewright.example/units/material"
)

// A finishedEngine is one of 80 mm whose truth is known, in millimetres at 20 °C. Invented.
type finishedEngine struct {
	kept      bool // and deglazed; else bored to the next size
	ported    bool // a two-stroke with pegged rings
	choked    bool // wanted narrower at the deck
	ownSizes  bool // every second cylinder stood at +0.50 and goes to +1.00
	sleeved   bool // the first cylinder, to the standard size
	studied   bool // the gauge's repeatability comes from trials
	pitted    bool
	piston    float64 // of a cylinder at the size that most of them go to
	cylinders []finishedCylinder
}

type finishedCylinder struct {
	offset     float64       // of its size, from that of the others
	bore       [4][5]float64 // by depth and axis, as an honest job reads it
	gaps       [2]float64
	crosshatch float64 // °
	wall       float64 // at its thinnest, before the bore was cut
}

// What the maker of the honest job of 80 mm allows.
const (
	simBore, simOver           = 80, 0.5
	simLeast, simMost          = 0.0007*simBore + 0.005, 0.0012*simBore + 0.025
	simWorn                    = 0.0025*simBore + 0.06 // clearance of a bore that is kept
	simOvality, simTaper       = 0.012 + 0.00005*simBore, 0.014 + 0.00005*simBore
	simForm, simService        = 0.02 + 0.0005*simBore, 0.0015*simBore + 0.01 // of a bore that is kept
	simLeastChoke, simChoke    = 0.004, 0.030
	simFlattest, simSteepest   = 39, 51
	simFirstLeast, simFirstTop = 0.003 * simBore, 0.0075*simBore + 0.08
	simLeastWall, simSeat      = 2 + 0.02*simBore, 85
)

// temptations are what may be just past its limit in one cylinder; the last is nothing.
var temptations = []string{"clearance small", "clearance large", "ovality", "taper", "size", "gap small", "gap large", "crosshatch flat", "crosshatch steep", "wall", "nothing"}

// tempted draws an engine that is well inside all limits but one, and just past that. What does not apply to it, a
// service limit to a fresh bore, leaves it sound.
func tempted(r *rand.Rand, by string) finishedEngine {
	kind := r.IntN(6)
	e := finishedEngine{
		kept: kind == 0, choked: kind == 1, ownSizes: kind == 2, sleeved: kind == 3,
		ported: r.IntN(4) == 0, studied: r.IntN(3) == 0, pitted: r.IntN(3) == 0,
		piston: simBore + simOver + 0.01 - (simLeast + 0.45*(simMost-simLeast)),
	}
	most := simMost
	if e.kept {
		e.piston, most = simBore-0.04, simWorn
	}
	n := []int{1, 1, 1, 2, 2, 3, 4, 6, 8}[r.IntN(9)]
	at := r.IntN(n)
	for i := range n {
		past, by := 0.0002*math.Abs(r.NormFloat64()), by // small against the doubt
		if i != at {
			by = "nothing"
		}
		c := finishedCylinder{gaps: [2]float64{0.45, 0.46}, crosshatch: 45, wall: 8}
		switch {
		case e.ownSizes && i%2 == 1:
			c.offset = simOver
		case e.sleeved && i == 0:
			c.offset = -simOver
		}
		oval, taper, clear := 0.003, 0.003, (simLeast+simMost)/2-0.002
		mostOval, mostTaper := simOvality, simTaper
		if e.kept {
			mostOval, mostTaper = simForm, 1.2*simForm
		}
		if e.choked {
			taper, clear = -(simLeastChoke+simChoke)/2, clear+0.008
		}
		switch by {
		case "clearance small":
			clear = simLeast - past + max(0, -taper)
		case "clearance large":
			oval = 0.001
			if !e.choked {
				taper = 0.001
			}
			clear = most - oval - max(0, taper) + past
		case "ovality":
			oval, clear = mostOval+past, clear-0.004
		case "taper":
			if taper, clear = mostTaper+past, clear-0.004; e.choked {
				taper, clear = -simChoke-past, (simLeast+simMost)/2+0.01
			}
			if e.choked && r.IntN(2) == 0 {
				taper = -simLeastChoke + past
			}
		case "size":
			if e.kept {
				clear = simBore + simService + past - e.piston - oval - taper
			}
		case "gap small":
			c.gaps[0] = simFirstLeast - 10*past
		case "gap large":
			c.gaps[0] = simFirstTop + 10*past
		case "crosshatch flat":
			c.crosshatch = simFlattest - 1000*past
		case "crosshatch steep":
			c.crosshatch = simSteepest + 1000*past
		}
		part := [5]float64{1, 0.7, 0, 0.1, 0.8} // of the ovality, from 0 to 1
		for k, fade := range []float64{1, 0.5, 0, 0} {
			for a := range part {
				c.bore[k][a] = e.piston + c.offset + clear + oval*part[a] + taper*fade
			}
		}
		if by == "wall" {
			c.wall = simLeastWall + e.cut(c) - 100*past
		}
		e.cylinders = append(e.cylinders, c)
	}
	return e
}

// stood is the size at which a cylinder stood, over nominal.
func (e finishedEngine) stood(c finishedCylinder) float64 { return max(0, c.offset) }

// cut is how much of the wall is cut away, from the smallest place of the worn bore.
func (e finishedEngine) cut(c finishedCylinder) float64 {
	was := simBore + 0.008 + e.stood(c)
	switch {
	case e.kept:
		return 0
	case c.offset < 0:
		return (simSeat - was) / 2
	}
	return (slices.Max(slices.Concat(c.bore[0][:], c.bore[1][:], c.bore[2][:], c.bore[3][:])) - was) / 2
}

// A workshopGauge is a bore gauge with all that it is off by, each as the job states it.
type workshopGauge struct {
	r              *rand.Rand
	h              honest
	says, set      float64 // the size of its standard, by its certificate and in truth as it was used
	grows, at, off float64 // the wall's expansion, its temperature over 20 °C, half-width from place to place
}

func within(r *rand.Rand, half float64) float64 { return half * (2*r.Float64() - 1) }

// set sets a gauge on a standard, at temperatures over 20 °C.
func set(r *rand.Rand, h honest, says, standardAt, setAt, usedAt, cylinderAt float64) workshopGauge {
	spread := func(m material.Material) float64 { return float64(m.Expansion) + within(r, float64(m.Within)) }
	standard := says + 0.001*r.NormFloat64() // ± 0.002 mm
	rod := usedAt - setAt + within(r, 0.4) - within(r, 0.4)
	return workshopGauge{
		r: r, h: h, says: says, set: standard * (1 + spread(material.GaugeSteel())*(standardAt+within(r, 0.4))) * (1 + spread(material.PlainSteel())*rod),
		grows: spread(material.GreyIron()), at: cylinderAt + within(r, 0.4), off: 0.3,
	}
}

func (g workshopGauge) reads(d float64) string {
	warm := d * (1 + g.grows*(g.at+within(g.r, g.off)))
	shown := g.says + warm - g.set + within(g.r, 0.0012) + 0.0008*g.r.NormFloat64()
	return g.h.mm(math.Round(shown*1000) / 1000)
}

// measured writes down what a workshop reads of it.
func (e finishedEngine) measured(t testing.TB, r *rand.Rand) tree {
	h := honest{bore: simBore, stroke: 76, cylinders: len(e.cylinders), bored: !e.kept, twoStroke: e.ported, r: r}
	j := h.tree(true)
	survey, proof := set(r, h, simBore+0.002, 1, 1.1, 1.5, 2), set(r, h, simBore+simOver, 0.5, 0.6, 0.6, 0.7)
	piston := func(offset float64) tree {
		return tree{"size": h.doubtful(e.piston+offset+0.001*r.NormFloat64(), 0.002), "axis": "across pin", "coating": h.mm(0)}
	}
	sizes := map[float64][]any{0: {}, simOver: {}}
	for i, c := range e.cylinders {
		to := j["cylinders"].([]any)[i].(tree)
		for k, p := range to["proof"].([]any) {
			p.(tree)["diameter"] = proof.reads(c.bore[k/5][k%5])
			was := to["readings"].([]any)[k].(tree)
			d := numberOf(t, was["diameter"])
			switch {
			case e.kept:
				was["diameter"] = survey.reads(c.bore[k/5][k%5] - 0.002)
			case c.offset < 0 && k < 5:
				was["diameter"] = h.mm(d + 0.6) // which no size on offer cleans up
			default:
				was["diameter"] = h.mm(d + e.stood(c))
			}
		}
		to["over"], to["thinnest_wall"] = h.mm(e.stood(c)), h.doubtful(c.wall+0.1*r.NormFloat64(), 0.2)
		for n, gap := range c.gaps {
			to["rings"].([]any)[n].(tree)["finished"] = h.doubtful(gap+0.0075*r.NormFloat64(), 0.015)
			to["rings"].([]any)[n].(tree)["bore"] = h.mm(c.bore[3][0])
		}
		to["ridge_gone"] = true
		to["crosshatch"], to["crosshatch_doubt"] = fmt.Sprintf("%.1f° included", c.crosshatch+r.NormFloat64()), "2°"
		switch {
		case e.kept, c.offset < 0:
			to["piston"], to["piston_for"] = piston(c.offset), h.mm(0)
		default:
			sizes[c.offset] = append(sizes[c.offset], piston(c.offset))
		}
		if c.offset < 0 {
			to["sleeve_fitted"] = tree{"seat": h.doubtful(simSeat+0.002, 0.004), "outside": h.doubtful(simSeat+0.052, 0.004)}
		}
		if e.pitted {
			below := 0.02
			if e.kept {
				below = 0.001
			}
			to["pits"] = []any{tree{"below": h.mm(below), "depth": h.mm(45), "length": h.mm(3), "at": "200°"}}
		}
	}
	e.fill(t, r, h, j, sizes)
	return j
}

// fill writes down what the whole engine needs.
func (e finishedEngine) fill(t testing.TB, r *rand.Rand, h honest, j tree, sizes map[float64][]any) {
	oversizes := j["engine"].(tree)["oversizes"].([]any)
	if !e.kept {
		put(t, oversizes[0], "pistons", sizes[0])
	}
	if e.ownSizes {
		put(t, j, "engine.oversizes", append(oversizes, tree{"over": h.mm(2 * simOver), "makers_list": true, "pistons": sizes[simOver]}))
		put(t, j, "engine.limits.greatest_overbore", h.mm(1.3))
		put(t, j, "engine.gasket_hole", h.mm(simBore+2.5))
	}
	if e.ownSizes || e.sleeved {
		put(t, j, "engine.one_size", false)
	}
	if e.sleeved {
		put(t, j, "engine.sleeve", tree{"bore": h.mm(simBore - 0.2), "seat": h.mm(simSeat), "outer": h.window(94, 106), "material": "grey iron", "interference": h.window(0.04, 0.06)})
		put(t, j, "engine.running.bore", "120 ± 15 °C")
	}
	if e.choked {
		put(t, j, "engine.limits.choke", h.window(simLeastChoke, simChoke))
		put(t, j, "engine.limits.taper", nil)
		put(t, j, "engine.limits.finish_taper", nil)
	}
	if e.pitted {
		put(t, j, "counted.pits", len(e.cylinders))
	}
	if e.studied {
		var trials []any
		for range 10 {
			trials = append(trials, tree{"part": "ring", "person": "the machinist", "reading": h.mm(math.Round(1000*(simBore+simOver+0.0008*r.NormFloat64())) / 1000)})
		}
		put(t, j, "gauge.repeatability", nil)
		put(t, j, "gauge.study", trials)
		put(t, j, "counted.trials", len(trials))
	}
}

// past names what is truly past its limit; "" where nothing is.
func (e finishedEngine) past() string {
	for _, c := range e.cylinders {
		piston := e.piston + c.offset
		mostOval, mostTaper, most := simOvality, simTaper, simMost
		if e.kept {
			mostOval, mostTaper, most = simForm, 1.2*simForm, simWorn
		}
		var all []float64
		oval, taper, choke := 0.0, 0.0, c.bore[3][0]-c.bore[0][0]
		for k := range c.bore {
			row := c.bore[k][:]
			all = append(all, row...)
			oval = max(oval, slices.Max(row)-slices.Min(row))
			for a := range row {
				taper = max(taper, math.Abs(c.bore[0][a]-c.bore[k][a]))
			}
		}
		for name, is := range map[string]bool{
			"gap": c.gaps[0] < simFirstLeast || c.gaps[0] > simFirstTop, "crosshatch": c.crosshatch < simFlattest || c.crosshatch > simSteepest,
			"ovality": oval > mostOval, "taper": !e.choked && taper > mostTaper, "choke": e.choked && (choke < simLeastChoke || choke > simChoke),
			"clearance": slices.Min(all)-piston < simLeast || slices.Max(all)-piston > most, "size": e.kept && slices.Max(all) > simBore+simService,
			"wall": c.wall-e.cut(c) < simLeastWall,
		} {
			if is {
				return name
			}
		}
	}
	return ""
}

// name says what kind of engine it is.
func (e finishedEngine) name() string {
	switch {
	case e.kept:
		return "kept"
	case e.choked:
		return "choked"
	case e.ownSizes:
		return "sizes of their own"
	case e.sleeved:
		return "sleeved"
	}
	return "bored"
}

// TestReadyIsTrue: of engines with something just past its limit no more than the risk accepted are said to be ready,
// not even where something is left out of the job; and sound ones are said to be.
func TestReadyIsTrue(t *testing.T) { readyIsTrue(t, 66, 1) }

func readyIsTrue(t *testing.T, engines int, seed uint64) {
	const promised = 0.05
	r := rand.New(rand.NewPCG(seed, 5))
	ready, false_, sound, cylinders := map[string]int{}, map[string]int{}, map[string]int{}, map[int]int{}
	could, wrong, without := 0, 0, 0
	for n := range engines {
		by := temptations[n%len(temptations)]
		e := tempted(r, by)
		truth := e.past()
		if by == "nothing" && truth != "" {
			t.Fatalf("%s is drawn wrongly: %+v", truth, e)
		}
		j := e.measured(t, r)
		s := mustPlan(t, j)
		is := s.Next == jobsheet.StepReassemble
		cylinders[len(e.cylinders)]++
		switch {
		case truth == "":
			sound[e.name()]++
			if is {
				ready[e.name()]++
			}
		default:
			if could++; is {
				wrong++
				false_[e.name()+", "+truth]++
			}
		}
		var all []spot
		spots("", j, func(x spot) {
			if !excepted.MatchString(x.path) {
				all = append(all, x)
			}
		})
		gone := all[r.IntN(len(all))]
		gone.remove()
		if less, err := planned(t, j); err == nil && less.Next == jobsheet.StepReassemble {
			without++
			if !is {
				t.Errorf("%s, %s: ready without %s alone", e.name(), by, gone.path)
			}
		}
	}
	low, high := share(wrong, could)
	t.Logf("%d of %d ready though something is past its limit, %.2f to %.2f %% (95 %%), %v; promised %.0f %%",
		wrong, could, 100*low, 100*high, false_, 100*promised)
	t.Logf("ready %v of sound %v; with something left out %d; engines by cylinders %v", ready, sound, without, cylinders)
	mean := promised * float64(could)
	if float64(wrong) > mean+4*math.Sqrt(mean) {
		t.Errorf("%d of %d, promised %.0f %%", wrong, could, 100*promised)
	}
	for name, n := range sound {
		if 2*ready[name] < n {
			t.Errorf("%s: only %d of %d sound engines are ready", name, ready[name], n)
		}
	}
}

// share returns the ends of the 95 % interval of Clopper and Pearson (1934) for k of n.
func share(k, n int) (low, high float64) {
	high = 1
	if k > 0 {
		low = mathext.InvRegIncBeta(float64(k), float64(n-k+1), 0.025)
	}
	if k < n {
		high = mathext.InvRegIncBeta(float64(k+1), float64(n-k), 0.975)
	}
	return low, high
}
