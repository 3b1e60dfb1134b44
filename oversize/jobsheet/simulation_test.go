// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A tally counts how often the sheet was wrong, of how often it could have been.
type tally struct {
	promised     float64 // the greatest share, per engine
	wrong, could int
}

// most is how many wrong ones the promise allows, with four standard errors of the count.
func (k tally) most() float64 {
	mean := k.promised * float64(k.could)
	return mean + 4*math.Sqrt(mean*(1-k.promised))
}

func (k tally) String() string {
	return fmt.Sprintf("%d of %d (%.2f %%, promised %.0f %%)", k.wrong, k.could, 100*float64(k.wrong)/float64(max(k.could, 1)), 100*k.promised)
}

// The mistakes that a sheet can make, each promised per engine. Those of the findings, of the choice, of the
// proof and of the rings are separate promises of 0.05; a route rests on the first two.
const (
	findingWithin   = "findings: one within that is beyond"
	findingBeyond   = "findings: one beyond that is within"
	keptWorn        = "kept though worn past a limit"
	keptLoose       = "kept though its piston is too loose"
	boredForWear    = "bored for a limit that holds"
	boredForPiston  = "bored for a clearance that holds"
	worn            = "bored to a size that leaves worn wall"
	honedPast       = "honed past the finish window"
	proofWithin     = "proof: one within that is beyond"
	proofBeyond     = "proof: one beyond that is within"
	gapFitted       = "a ring fitted as the sheet says outside its window"
	gapWithin       = "rings: one measured gap within that is beyond"
	readyThoughOut  = "ready to reassemble though a bore is outside"
	readyThoughRing = "ready to reassemble though a gap is outside"
)

// limits of the simulated engine, in millimetres.
const (
	newLeast, newMost     = 78.000, 78.020
	service               = 78.150
	ovality, taper        = 0.050, 0.080
	tight                 = 0.045 // least clearance of a fresh bore
	wornLoose             = 0.210 // of a kept one
	finishOvality         = 0.012
	finishTaper           = 0.015
	allowance             = 0.060 // for the hone
	gapLeast, gapMost     = 0.25, 0.45
	certificate           = 0.004 // of a piston, expanded
	feeler                = 0.010 // of an end gap, expanded
	resolution, repeating = 0.001, 0.0015
	dialError             = 0.0015
	pistonUnder           = 0.055 // a new piston is so much smaller than the nominal bore of its size
	um                    = 0.001
)

var (
	levels = []float64{12, 60, 102}
	axes   = []float64{0, 45, 90}
)

// A trueBore is the diameters at 20 °C of one bore, by level and axis.
type trueBore [3][3]float64

func (b trueBore) all() []float64 { return slices.Concat(b[0][:], b[1][:], b[2][:]) }

func (b trueBore) ovality() float64 {
	most := 0.0
	for _, row := range b {
		most = max(most, slices.Max(row[:])-slices.Min(row[:]))
	}
	return most
}

func (b trueBore) taper() float64 {
	most := 0.0
	for a := range axes {
		most = max(most, math.Abs(b[0][a]-b[2][a]))
	}
	return most
}

// grown returns the bore larger by d all over.
func (b trueBore) grown(d float64) trueBore {
	for i := range b {
		for a := range b[i] {
			b[i][a] += d
		}
	}
	return b
}

// formed returns a bore whose largest diameter is d, with an ovality at the top, of which a share is left at
// the bottom, and a taper along the thrust axis.
func formed(d, ovality, taper, share float64) trueBore {
	var b trueBore
	for i, down := range []float64{0, 0.5, 1} {
		o := ovality * (1 - down*(1-share))
		for a, part := range []float64{0, 0.5, 1} {
			b[i][a] = d - down*taper - part*o
		}
	}
	return b
}

// A bench is what a workshop measures with and in, as it truly is.
type bench struct {
	rng                                 *rand.Rand
	ring                                float64 // true size of the setting ring
	standard, set, used, part           float64 // true temperatures less 20 °C
	ringGrows, gaugeGrows, cylinderGrow float64 // true coefficients
	says                                jobsheet.Temperatures
}

func (b *bench) within(half float64) float64 { return half * (2*b.rng.Float64() - 1) }

const ringSays = 78.003

// newBench draws a hot workshop whose gauge, ring and cylinder are at temperatures that are each known to a kelvin.
func newBench(rng *rand.Rand) *bench {
	b := &bench{rng: rng, ring: ringSays + 0.001*rng.NormFloat64()}
	spread := func(m material.Material) float64 { return float64(m.Expansion) + b.within(float64(m.Within)) }
	b.ringGrows, b.gaugeGrows, b.cylinderGrow = spread(material.GaugeSteel()), spread(material.PlainSteel()), spread(material.GreyIron())
	b.warm(20, 1)
	return b
}

// warm draws the temperatures anew, in a room up to so much above 20 °C, each known within so much.
func (b *bench) warm(above, within float64) {
	room := above * b.rng.Float64()
	draw := func() (float64, bore.Temperature) {
		says := math.Round(10*(room+b.within(1))) / 10
		at, err := units.Celsius(20 + says)
		if err != nil {
			panic(err) // no such room
		}
		return says + b.within(within), bore.Temperature{Value: at, Within: units.TemperatureChange(within)}
	}
	b.standard, b.says.Standard = draw()
	b.set, b.says.GaugeSet = draw()
	b.used, b.says.GaugeUsed = draw()
	b.part, b.says.Cylinder = draw()
	b.says.PlaceToPlace = 0.5
}

// shows returns what the gauge shows of a diameter, as its user writes it: what repeats it truly is at the
// wall's temperature then, less the setting, scattered, and read off in whole steps. errs is what the dial
// and this place of the wall are off by.
func (b *bench) shows(d20, part, errs float64) units.Length {
	set := b.ring * (1 + b.ringGrows*b.standard) * (1 + b.gaugeGrows*(b.used-b.set))
	shown := ringSays + d20*(1+b.cylinderGrow*part) - set + errs + repeating*b.rng.NormFloat64()
	return mm(math.Round(shown/resolution) * resolution)
}

// here draws the temperature of the wall at a place and the error of the dial there.
func (b *bench) here(part float64) (temperature, errs float64) {
	return part + b.within(0.5), b.within(dialError)
}

// read returns the readings of a bore, each place so many times.
func (b *bench) read(t trueBore, times int) []jobsheet.Reading {
	var rs []jobsheet.Reading
	for i, level := range levels {
		for a, axis := range axes {
			part, errs := b.here(b.part)
			for range times {
				rs = append(rs, jobsheet.Reading{
					Depth: mm(level), Axis: jobsheet.Axis{Angle: units.Angle(axis) * units.Degree}, Diameter: b.shows(t[i][a], part, errs),
				})
			}
		}
	}
	return rs
}

// mm returns a length to a nanometre.
func mm(x float64) units.Length { return units.Length(math.Round(x*1e6)) * units.Nanometre }

// A shopEngine is an engine whose truth is known, and its job as the workshop keeps it.
type shopEngine struct {
	t       testing.TB
	rng     *rand.Rand
	bench   *bench
	kind    int // of wear
	bores   [2]trueBore
	share   [2]float64 // of the wear on the worse side
	pistons [2]float64 // true, in hand
	loose   float64    // the most clearance of a fresh bore
	job     jobsheet.Job
	count   map[string]*tally
	reached map[string]int
}

// The kinds of wear that an engine is drawn with.
const (
	sound      = iota // every limit is kept well
	justWithin        // every limit is just kept, in both cylinders
	oneBeyond         // one limit of one cylinder is just passed
	justBeyond        // every limit is just passed
	allRound          // every place stands just within the service limit
	farBeyond         // is to be bored
	tooFarWorn        // is to be bored, and whether a size cleans up is in question
	kindsOfWear
)

// near draws a distance from a limit that is small against the doubt, above zero.
func (e *shopEngine) near() float64 { return 0.2 * um * math.Abs(e.rng.NormFloat64()) }

// drawEngine makes an engine of a kind of wear.
func drawEngine(t testing.TB, rng *rand.Rand, kind int) *shopEngine {
	e := &shopEngine{t: t, rng: rng, bench: newBench(rng), kind: kind, loose: []float64{0.060, 0.085}[rng.IntN(2)]}
	const clear = 0.03
	side := -1.0 // of the limits
	if kind == justBeyond {
		side = 1
	}
	unlucky, which := rng.IntN(2), rng.IntN(4)
	for i := range e.bores {
		d, o, p, c := side*e.near(), side*e.near(), side*e.near(), side*e.near()
		if kind == sound || kind == oneBeyond {
			d, o, p, c = -clear, -clear/2, -clear, -clear
			if kind == oneBeyond && i == unlucky {
				*[]*float64{&d, &o, &p, &c}[which] = e.near()
			}
		}
		d, o, p = service+d, ovality+o, taper+p
		switch kind {
		case allRound:
			o, p = 2*um*rng.Float64(), 2*um*rng.Float64()
		case farBeyond:
			d, o, p = service+0.03+0.02*rng.Float64(), 0.06, 0.09
		case tooFarWorn:
			d, o, p = 78.185, 0.06, 0.09
			if i == unlucky { // all on one side, to the size that the bar for the second piston leaves
				d = newLeast + (0.5-pistonUnder+tight-allowance+e.near())/2
			}
		}
		e.bores[i] = formed(d, o, p, []float64{0.5, 1}[rng.IntN(2)])
		e.pistons[i] = d - wornLoose - c
		e.share[i] = 1
		if kind != tooFarWorn {
			e.share[i] = 0.5 + 0.5*rng.Float64()
		}
	}
	e.write()
	return e
}

// piston returns a piston as its maker or the workshop measured it.
func (e *shopEngine) piston(size float64) jobsheet.Piston {
	return jobsheet.Piston{Size: mm(size + certificate/2*e.rng.NormFloat64()), Uncertainty: mm(certificate), Axis: fit.AcrossPin}
}

// oversizes returns the pistons on offer: one measured for each size, and all of its size alike.
func (e *shopEngine) oversizes() []jobsheet.Oversize {
	var list []jobsheet.Oversize
	for _, over := range []float64{0.25, 0.5, 0.75, 1} {
		list = append(list, jobsheet.Oversize{Over: mm(over), Piston: e.piston(78 + over - pistonUnder)})
	}
	return list
}

// write puts the job down.
func (e *shopEngine) write() {
	times := 1
	j := jobsheet.Job{
		Units: jobsheet.Millimetres,
		Engine: jobsheet.Engine{
			Cylinders: 2, Cycle: jobsheet.FourStroke, Bore: mm(78), Stroke: mm(72), Wall: oversize.BareIron, Material: "grey iron",
			Layout: bore.Layout{Length: mm(118), RingTop: mm(8), RingBottom: mm(106)},
			Limits: jobsheet.Limits{
				NewBore: units.Limits{Min: mm(newLeast), Max: mm(newMost)}, Service: mm(service), Ovality: mm(ovality), Taper: mm(taper),
				PistonClearance: units.Limits{Min: mm(tight), Max: mm(e.loose)}, WornClearance: mm(wornLoose),
				FinishOvality: mm(finishOvality), FinishTaper: mm(finishTaper),
			},
			Rings:           []jobsheet.Ring{{Name: "top", Gap: units.Limits{Min: mm(gapLeast), Max: mm(gapMost)}, GapLimit: mm(1)}},
			HoningAllowance: mm(allowance),
			Oversizes:       e.oversizes(),
		},
		Gauge: jobsheet.Gauge{
			Resolution: mm(resolution), Repeatability: mm(repeating), DialError: mm(dialError), Material: "plain steel",
			Standard:     jobsheet.Standard{Size: mm(ringSays), Uncertainty: mm(0.002), Material: "gauge steel"},
			Temperatures: e.bench.says,
		},
		Tools: jobsheet.Tools{
			Hone: hone.RigidStone, Stroke: mm(98),
			TrialPass: jobsheet.Duration{Duration: 15 * time.Second}, LongestPass: jobsheet.Duration{Duration: time.Minute},
		},
	}
	if e.rng.IntN(4) == 0 { // nobody knows how the gauge repeats: the readings tell
		j.Gauge.Repeatability, times = 0, 2
	}
	for i, b := range e.bores {
		j.Cylinders = append(j.Cylinders, jobsheet.Cylinder{Name: fmt.Sprint(i + 1), Readings: e.bench.read(b, times), Piston: e.piston(e.pistons[i])})
	}
	e.job = j
}

func (e *shopEngine) plan() jobsheet.Sheet {
	s, err := jobsheet.Plan(e.job)
	if err != nil {
		e.t.Fatal(err)
	}
	return s
}

// note counts one engine that could have gone wrong in a way, and whether it did.
func (e *shopEngine) note(mistake string, could, wrong bool) {
	k := e.count[mistake]
	if k == nil {
		k = &tally{promised: 0.05}
		e.count[mistake] = k
	}
	if could {
		k.could++
		if wrong {
			k.wrong++
		}
	}
}

// reach counts an engine that came to a stage.
func (e *shopEngine) reach(stage string, did bool) {
	if did {
		e.reached[stage]++
	}
}

// beyond reports whether a true bore is beyond the limit of a finding, the bore being held against the window
// w where the finding is of a finished one.
func (b trueBore) beyond(f bore.Finding) bool {
	lo, hi := f.Limits.Min.In(units.Millimetre), f.Limits.Max.In(units.Millimetre)
	switch f.Limit {
	case bore.LimitOvality:
		return b.ovality() > hi
	case bore.LimitTaper:
		return b.taper() > hi
	case bore.LimitService:
		return slices.Max(b.all()) > hi
	}
	return slices.Max(b.all()) > hi || slices.Min(b.all()) < lo
}

// misjudged reports of findings whether any could be wrong each way, and whether one is.
func misjudged(b trueBore, fs []bore.Finding) (couldAccept, accepted, couldReject, rejected bool) {
	for _, f := range fs {
		if b.beyond(f) {
			couldAccept, accepted = true, accepted || f.Verdict == uncertainty.Within
		} else {
			couldReject, rejected = true, rejected || f.Verdict == uncertainty.Beyond
		}
	}
	return
}

// survey plans the worn engine and counts its mistakes. It reports whether it is to be bored.
func (e *shopEngine) survey() (jobsheet.Sheet, bool) {
	s := e.plan()
	var a, wrongA, r, wrongR, isLoose, forWear, forPiston bool
	for i, b := range e.bores {
		ca, wa, cr, wr := misjudged(b, oversize.Deciding(s.Cylinders[i].Findings))
		a, wrongA, r, wrongR = a || ca, wrongA || wa, r || cr, wrongR || wr
		isLoose = isLoose || slices.Max(b.all())-e.pistons[i] > wornLoose
		for _, x := range s.Choice.Cylinders[i].Refused {
			forWear = forWear || x.Reason == oversize.BeyondLimit
			forPiston = forPiston || x.Reason == oversize.ClearanceBeyond
		}
	}
	tempted := e.kind > sound && e.kind < farBeyond
	e.note(findingWithin, a && tempted, wrongA)
	e.note(findingBeyond, r && tempted, wrongR)
	kept, bored := s.Choice.Route == oversize.HoneAndKeep, s.Choice.Route == oversize.BoreOversize
	for _, c := range s.Choice.Cylinders {
		kept = kept && c.Work == oversize.Deglaze
	}
	e.note(keptWorn, a && e.kind == oneBeyond, kept)
	e.note(keptLoose, isLoose && e.kind == oneBeyond, kept)
	cut := s.Choice.Route == oversize.BoreOversize || s.Choice.Route == oversize.Sleeve
	e.note(boredForWear, tempted && !a && !isLoose, cut && forWear)
	e.note(boredForPiston, tempted && !a && !isLoose, cut && forPiston)
	e.reach("kept", kept)
	e.reach("bored", bored)
	return s, bored
}

// finish is the window that the sheet gives a cylinder, in millimetres.
func finish(s jobsheet.Sheet, i int) (least, most float64) {
	w := s.Choice.Cylinders[i].Finish
	return w.Min.In(units.Millimetre), w.Max.In(units.Millimetre)
}

// bored bores the engine as the sheet says, with what a boring bar is off by, and counts worn wall left.
func (e *shopEngine) bored(s jobsheet.Sheet) {
	could, left := false, false
	second := e.job.Engine.Oversizes[1].Piston.Size.In(units.Millimetre)
	for i, c := range s.Choice.Cylinders {
		needs := newLeast + 2*e.share[i]*(slices.Max(e.bores[i].all())-newLeast)
		least, _ := finish(s, i)
		could = could || e.kind == tooFarWorn && needs > second+tight-allowance
		left = left || needs > least-allowance
		to := c.Bored.In(units.Millimetre) + 2*um*e.rng.NormFloat64()
		e.bores[i] = formed(to, 4*um*e.rng.Float64(), 4*um*(2*e.rng.Float64()-1), e.rng.Float64())
		e.pistons[i] = 78 + s.Choice.Over.In(units.Millimetre) - pistonUnder
	}
	e.note(worn, could, left)
}

// honed hones both cylinders in the passes that the sheet says, until it says stop or nothing more will do,
// and counts those run past the window after the trial pass.
func (e *shopEngine) honed() jobsheet.Sheet {
	const level, axis = 1, 0 // where the honing is measured
	rate, heat := [2]float64{}, [2]float64{}
	again, over, past := [2]int{}, [2]bool{}, false
	read := func(i, times int) jobsheet.HonedSize {
		part := e.bench.part + heat[i]
		at, err := units.Celsius(20 + part + e.bench.within(1))
		if err != nil {
			e.t.Fatal(err)
		}
		place, errs := e.bench.here(part)
		var all []units.Length
		for range times {
			all = append(all, e.bench.shows(e.bores[i][level][axis], place, errs))
		}
		mean, err := units.Mean(all...)
		if err != nil {
			e.t.Fatal(err)
		}
		return jobsheet.HonedSize{Diameter: mean, At: at}
	}
	for i := range e.bores {
		rate[i] = math.Exp(math.Log(8*um) + e.rng.Float64()*math.Log(60./8)) // a minute, on the diameter
		e.job.Cylinders[i].Honing.Start = read(i, 1)
	}
	var s jobsheet.Sheet
	for !over[0] || !over[1] {
		s = e.plan()
		for i := range e.bores {
			h := &e.job.Cylinders[i].Honing
			n := s.Cylinders[i].Pass
			switch {
			case over[i]:
			case n.Decision == hone.GoOn:
				again[i] = 0
				took := rate[i] * n.Lasts.Minutes() * max(0, 1+0.2*e.rng.NormFloat64())
				e.bores[i] = e.bores[i].grown(took)
				heat[i] = 8 * e.rng.Float64()
				h.Passes = append(h.Passes, jobsheet.Pass{Lasts: jobsheet.Duration{Duration: n.Lasts}, After: read(i, 1)})
				_, most := finish(s, i)
				past = past || len(h.Passes) > 1 && e.bores[i][level][axis] > most
			case n.Decision == hone.MeasureAgain && n.Size.Value != 0 && again[i] < 2 && len(h.Passes) > 0:
				again[i]++
				h.Passes[len(h.Passes)-1].After = read(i, 4)
			default:
				over[i] = true
			}
		}
	}
	e.note(honedPast, true, past)
	e.reach("honed to size", s.Cylinders[0].Pass.Decision == hone.StopHere && s.Cylinders[1].Pass.Decision == hone.StopHere)
	return s
}

// refinished gives most engines another end: near the ends of their windows, where a proof can be wrong, or well inside.
func (e *shopEngine) refinished(s jobsheet.Sheet) {
	const small, form = 0.5 * um, 3 * um
	how, unlucky := e.rng.IntN(16), e.rng.IntN(2)
	for i, p := range e.pistons {
		least, most := finish(s, i)
		ends := []trueBore{
			// All round just inside.
			formed(most-e.near(), small, 0, 1), formed(least+small+e.near(), small, 0, 1),
			formed(p+e.loose-e.near(), small, 0, 1), formed(p+tight+small+e.near(), small, 0, 1),
			// One limit of one cylinder just passed.
			formed(most+e.near(), form, form, 1), formed(least+2*form-e.near(), form, form, 1),
			formed(p+e.loose+e.near(), form, form, 1), formed(p+tight+2*form-e.near(), form, form, 1),
			formed((least+most)/2, finishOvality+e.near(), form, 0.5), formed((least+most)/2, form, finishTaper+e.near(), 1),
		}
		switch {
		case how >= len(ends)+3: // as honed
		case how >= len(ends) || how >= 4 && i != unlucky:
			e.bores[i] = formed((least+most)/2, form, form, 1)
		default:
			e.bores[i] = ends[how]
		}
	}
}

// proven reads the finished bores and counts what their proof says wrongly. It reports whether any bore is
// truly outside.
func (e *shopEngine) proven() bool {
	e.bench.warm(5, 0.5) // in the cool of the morning
	e.job.Proof.Temperatures = e.bench.says
	for i, b := range e.bores {
		e.job.Cylinders[i].Proof = e.bench.read(b, 3)
	}
	s := e.plan()
	var a, wrongA, r, wrongR bool
	for i, b := range e.bores {
		proof := s.Cylinders[i].Proof
		ca, wa, cr, wr := misjudged(b, proof.Findings)
		a, wrongA, r, wrongR = a || ca, wrongA || wa, r || cr, wrongR || wr
		for _, f := range proof.Clearances {
			out := slices.Min(b.all())-e.pistons[i] < tight
			if f.Limits.HasMax() {
				out = slices.Max(b.all())-e.pistons[i] > e.loose
			}
			a, r = a || out, r || !out
			wrongA, wrongR = wrongA || out && f.Verdict == uncertainty.Within, wrongR || !out && f.Verdict == uncertainty.Beyond
		}
	}
	e.note(proofWithin, a, wrongA)
	e.note(proofBeyond, r, wrongR)
	return a
}

// ringed fits the rings as the sheet says, measures their gaps, and counts those outside. It reports
// whether any is.
func (e *shopEngine) ringed() (jobsheet.Sheet, bool) {
	gauge := 78 + e.plan().Choice.Over.In(units.Millimetre) // a plain ring of the size
	narrow := func(b trueBore) float64 {
		least := math.Inf(1)
		for _, row := range b {
			least = min(least, (row[0]+row[1]+row[2])/3)
		}
		return least
	}
	outside := func(g float64) bool { return g < gapLeast || g > gapMost }
	read := func(g float64) float64 { return g + feeler/2*e.rng.NormFloat64() }
	var gap, last [2]float64 // in the finished bore: true, and as read last
	tempted := e.rng.IntN(3) // or none
	for i := range gap {
		gap[i] = 0.15 + 0.25*e.rng.Float64()
		if i == tempted {
			gap[i] = []float64{gapLeast - 3*e.near(), gapLeast + 3*e.near(), gapMost - 3*e.near()}[e.rng.IntN(3)]
		}
		// As the ring lies in the plain ring.
		other := math.Pi * (narrow(e.bores[i]) - gauge)
		last[i] = read(gap[i]-other) + other
		e.job.Cylinders[i].Rings = []jobsheet.RingGap{{Ring: "top", Gap: mm(last[i] - other), Uncertainty: mm(feeler), Bore: mm(gauge)}}
	}
	s := e.plan()
	could, wrong, out := true, false, false
	for i := range gap {
		switch r := s.Cylinders[i].Rings[0]; {
		case r.Doubtful || r.Filing.Action == rings.Undecided || r.Filing.Action == rings.TooWide:
			could = false
		case r.Filing.Action == rings.AsIs:
			last[i] = read(gap[i])
		default: // filed by what comes off, and then to the reading
			for off := r.Filing.TakeOff.In(units.Millimetre); off > 0; off = r.Filing.Target.In(units.Millimetre) - last[i] {
				gap[i] += off
				last[i] = read(gap[i])
			}
		}
		wrong = wrong || outside(gap[i])
	}
	e.note(gapFitted, could, wrong)
	if e.rng.IntN(2) == 0 { // somebody was in a hurry
		i := e.rng.IntN(2)
		gap[i] = []float64{gapLeast - 3*e.near(), gapMost + 3*e.near()}[e.rng.IntN(2)]
		last[i] = read(gap[i])
	}
	for i := range gap {
		e.job.Cylinders[i].Rings[0].Finished = mm(last[i])
		out = out || outside(gap[i])
	}
	s, wrong = e.plan(), false
	for i := range gap {
		wrong = wrong || outside(gap[i]) && s.Cylinders[i].Rings[0].Measured.Verdict == uncertainty.Within
	}
	e.note(gapWithin, out, wrong)
	return s, out
}

// mistakes takes so many engines through the shop and counts what the sheets said wrongly, and how many engines
// came to each stage.
func mistakes(t testing.TB, engines int, seed uint64) (count map[string]*tally, reached map[string]int) {
	rng := rand.New(rand.NewPCG(seed, 12))
	count, reached = map[string]*tally{}, map[string]int{}
	for n := range engines {
		e := drawEngine(t, rng, n%kindsOfWear)
		e.count, e.reached = count, reached
		s, bored := e.survey()
		if !bored {
			continue
		}
		e.bored(s)
		e.refinished(e.honed())
		out := e.proven()
		s, gapOut := e.ringed()
		ready := s.Next == jobsheet.Reassemble
		e.reach("ready to reassemble", ready)
		e.note(readyThoughOut, out, ready)
		e.note(readyThoughRing, gapOut, ready)
	}
	return count, reached
}

// TestMistakesStayWithinTheRisk: whole engines whose truth is known, taken through the shop by what their sheets say.
func TestMistakesStayWithinTheRisk(t *testing.T) {
	checkMistakes(t, 350, 1)
}

func checkMistakes(t *testing.T, engines int, seed uint64) {
	t.Helper()
	count, reached := mistakes(t, engines, seed)
	for _, mistake := range slices.Sorted(maps.Keys(count)) {
		k := count[mistake]
		t.Logf("%s: %v", mistake, k)
		if float64(k.wrong) > k.most() {
			t.Errorf("%s: %v", mistake, k)
		}
		if k.most() > float64(k.could)/2 { // then nothing would fail it
			t.Errorf("%s: only %d engines came to it", mistake, k.could)
		}
	}
	if len(count) != 14 {
		t.Errorf("%d kinds of mistakes were counted", len(count))
	}
	t.Logf("engines that came to a stage: %v", reached)
	for _, stage := range []string{"kept", "bored", "honed to size", "ready to reassemble"} {
		if reached[stage] < engines/200 {
			t.Errorf("%s: only %d of %d engines", stage, reached[stage], engines)
		}
	}
}
