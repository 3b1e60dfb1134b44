// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// job reads a demo job of the refresh program.
func job(t testing.TB, name string) jobsheet.Job {
	t.Helper()
	f, err := os.Open("../../examples/refresh/jobs/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	j, err := jobsheet.ReadJob(f)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// TestWholeRound: the same file, from the barrel on the bench to the finished engine; the sheet says
// at each step what is next.
func TestWholeRound(t *testing.T) {
	whole := job(t, "pump-finished")
	bare := func() jobsheet.Job { // the file before anything was done
		j := job(t, "pump-finished")
		for i := range j.Cylinders {
			c := &j.Cylinders[i]
			c.Readings, c.Honing, c.Proof, c.Rings, c.Crosshatch = nil, jobsheet.Honed{}, nil, nil, hone.Crosshatch{}
		}
		return j
	}
	next := func(what string, j jobsheet.Job, want jobsheet.Step, each ...jobsheet.Step) jobsheet.Sheet {
		t.Helper()
		s := plan(t, j)
		if s.Next != want {
			t.Errorf("%s: next %v, want %v", what, s.Next, want)
		}
		for i, w := range each {
			if s.Cylinders[i].Next != w {
				t.Errorf("%s: cylinder %d: next %v, want %v", what, i, s.Cylinders[i].Next, w)
			}
		}
		return s
	}
	j := bare()
	s := next("nothing read", j, jobsheet.Measure)
	if text := asText(t, s); strings.Contains(text, "ROUTE") || strings.Count(text, "________") < 20 {
		t.Errorf("no blanks, or a route out of nothing:\n%s", text)
	}
	j.Cylinders[0].Readings = whole.Cylinders[0].Readings
	next("one read", j, jobsheet.Measure, jobsheet.WaitForOthers, jobsheet.Measure)
	j.Cylinders[1].Readings = whole.Cylinders[1].Readings
	s = next("read", j, jobsheet.BoreOut, jobsheet.BoreOut, jobsheet.BoreOut)
	if text := asText(t, s); !strings.Contains(text, "PROOF") || strings.Count(text, "________") < 30 {
		t.Errorf("no room to write the proof:\n%s", text)
	}
	bored := s.Choice.Cylinders[0].Bored
	at := func(d units.Length) jobsheet.HonedSize {
		return jobsheet.HonedSize{Diameter: d, At: units.ReferenceTemperature}
	}
	h := &j.Cylinders[0].Honing
	h.Start = at(bored)
	s = next("bored", j, jobsheet.BoreOut, jobsheet.HoneToSize, jobsheet.BoreOut)
	if s.Cylinders[0].Pass.Risk != 0 || s.Cylinders[0].Pass.Lasts != j.Tools.TrialPass.Duration {
		t.Errorf("the first pass is no trial: %+v", s.Cylinders[0].Pass)
	}
	lasts := jobsheet.Duration{Duration: 20 * time.Second}
	h.Passes = []jobsheet.Pass{{Lasts: lasts, After: at(bored + 20*units.Micrometre)}, {Lasts: lasts, After: at(bored + 39*units.Micrometre)}}
	next("two passes", j, jobsheet.BoreOut, jobsheet.HoneToSize)
	h.Passes = append(h.Passes, jobsheet.Pass{Lasts: lasts, After: at(bored + 60*units.Micrometre)})
	next("at size", j, jobsheet.BoreOut, jobsheet.WashAndProve)
	over := j
	over.Cylinders = append([]jobsheet.Cylinder(nil), j.Cylinders...)
	over.Cylinders[0].Honing.Passes = []jobsheet.Pass{{Lasts: lasts, After: at(bored + 110*units.Micrometre)}}
	next("run past", over, jobsheet.Oversized, jobsheet.Oversized, jobsheet.WaitForOthers)

	j = whole
	s = next("all done", j, jobsheet.Reassemble, jobsheet.Reassemble, jobsheet.Reassemble)
	if strings.Contains(asText(t, s), "________") {
		t.Error("blanks where everything is known")
	}
	gap := j.Cylinders[1].Rings[0].Finished
	j.Cylinders[1].Rings[0].Finished = 0
	next("a gap not measured", j, jobsheet.SetRingGaps, jobsheet.WaitForOthers, jobsheet.SetRingGaps)
	j.Cylinders[1].Rings[0].Finished = 180 * units.Micrometre
	next("a gap too small", j, jobsheet.SetRingGaps, jobsheet.WaitForOthers, jobsheet.SetRingGaps)
	j.Cylinders[1].Rings[0].Finished = 255 * units.Micrometre // 0.005 mm inside, the doubt 0.020 mm: filed a little it is sure
	next("a gap to file", j, jobsheet.SetRingGaps, jobsheet.WaitForOthers, jobsheet.SetRingGaps)
	j.Cylinders[1].Rings[0].Finished = 447 * units.Micrometre // at the other end nothing can be filed on
	next("a gap in doubt", j, jobsheet.MeasureBetter, jobsheet.WaitForOthers, jobsheet.MeasureBetter)
	j.Cylinders[1].Rings[0].Finished = gap
	one := j.Cylinders[0].Crosshatch
	j.Cylinders[0].Crosshatch = hone.MustParseCrosshatch("12° included")
	next("a flat crosshatch", j, jobsheet.Rework, jobsheet.Rework, jobsheet.WaitForOthers)
	j.Cylinders[0].Crosshatch = hone.Crosshatch{}
	next("a crosshatch nobody measured", j, jobsheet.WashAndProve, jobsheet.WashAndProve, jobsheet.WaitForOthers)
	j.Cylinders[0].Crosshatch = one
	j.Cylinders[0].Proof = nil
	next("one not proven", j, jobsheet.WashAndProve, jobsheet.WashAndProve)
	j = job(t, "pump-finished")
	for i := range j.Cylinders[0].Proof {
		j.Cylinders[0].Proof[i].Diameter += 20 * units.Micrometre
	}
	s = next("too large", j, jobsheet.Oversized, jobsheet.Oversized, jobsheet.WaitForOthers)
	if !strings.Contains(asText(t, s), "Past its size: a piston of 78.4") {
		t.Error("no way out of a bore past its size")
	}
	for i := range j.Cylinders[0].Proof {
		j.Cylinders[0].Proof[i].Diameter -= 12 * units.Micrometre // at the upper end of the window
	}
	s = next("on the limit", j, jobsheet.MeasureBetter, jobsheet.MeasureBetter)
	if !strings.Contains(asText(t, s), "do not reassemble on this") {
		t.Error("an undecided proof is not said to be")
	}
}

// TestOtherSteps: of walls and work of every kind.
func TestOtherSteps(t *testing.T) {
	for name, want := range map[string]jobsheet.Step{
		"unread": jobsheet.Measure, "keep": jobsheet.Reassemble, "sleeve": jobsheet.FitSleeve, "sleeve-loose": jobsheet.ChooseSleeve,
		"plated": jobsheet.AskMaker, "two-stroke": jobsheet.BoreOut, "inch": jobsheet.BoreOut, "pump": jobsheet.BoreOut,
	} {
		if got := plan(t, job(t, name)).Next; got != want {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
	j := job(t, "keep")
	j.Cylinders[0].Proof = nil
	if got := plan(t, j).Next; got != jobsheet.DeglazeBore {
		t.Errorf("kept, not yet deglazed: %v", got)
	}
	// A plated wall within its limits may run again as it is; peeling, it may not.
	j = job(t, "plated")
	j.Engine.Limits.Service, j.Engine.Limits.Ovality = 48_100*units.Micrometre, 40*units.Micrometre
	j.Engine.Limits.Taper = 0 // which nobody measured at the lower end of ring travel
	j.Cylinders[0].Peeling = false
	if s := plan(t, j); s.Next != jobsheet.MeasureBetter || !strings.Contains(asText(t, s), "Open, cylinder 1: the piston is not measured.") {
		t.Errorf("plated, its piston not measured: %v", s.Next)
	}
	j.Cylinders[0].Piston = jobsheet.Piston{Size: 47960 * units.Micrometre, Axis: fit.AcrossPin}
	j.Engine.Limits.WornClearance = 120 * units.Micrometre
	if got := plan(t, j).Next; got != jobsheet.SetRingGaps {
		t.Errorf("plated, its ring not measured: %v", got)
	}
	j.Cylinders[0].Rings = []jobsheet.RingGap{{Ring: "upper", Gap: 220 * units.Micrometre, Uncertainty: 20 * units.Micrometre, Bore: 48 * units.Millimetre}}
	if got := plan(t, j).Next; got != jobsheet.LeaveUntouched {
		t.Errorf("plated and sound: %v", got)
	}
	j.Cylinders[0].Peeling = true
	if got := plan(t, j).Next; got != jobsheet.AskMaker {
		t.Errorf("plated and peeling: %v", got)
	}
	j.Cylinders[0].Peeling = false
	j.Engine.Limits.Ovality = 16 * units.Micrometre // just what was read
	if got := plan(t, j).Next; got != jobsheet.MeasureBetter {
		t.Errorf("plated and in doubt: %v", got)
	}
}

func near(t *testing.T, what string, got, want, within units.Length) {
	t.Helper()
	if (got - want).Abs() > within {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// TestLayoutTakesPart: ring travel says where to read, what was left out, and which plane is unworn.
func TestLayoutTakesPart(t *testing.T) {
	j := job(t, "keep")
	s := plan(t, j)
	if len(s.ToRead) != 4*5 { // three depths in ring travel and one below, five axes
		t.Errorf("to read: %v", s.ToRead)
	}
	// On the original centre: twice the largest less the unworn size, read at 104 mm.
	c := s.Cylinders[0]
	plane, ok := c.Bore.At(104 * units.Millimetre)
	if !ok {
		t.Fatal("no plane at 104 mm")
	}
	near(t, "clean-up", c.CleanUp.Original.Greatest.Value, 2*c.Bore.Largest.Size.Value-plane.Smallest().Size.Value, 3*units.Micrometre)
	j.Engine.Layout = bore.Layout{}
	without := plan(t, j).Cylinders[0].CleanUp.Original.Greatest.Value
	near(t, "clean-up from the maker's least", without, 2*c.Bore.Largest.Size.Value-67*units.Millimetre, units.Micrometre)
	j = job(t, "pump")
	if s := plan(t, j); s.Cylinders[0].Bore.Ridge.Value != 0 {
		t.Error("a ridge where nothing was read above ring travel")
	}
	j.Engine.Layout.RingTop = 40 * units.Millimetre
	if s := plan(t, j); s.Cylinders[0].Bore.Ridge.Value == 0 || !strings.Contains(asText(t, s), "ridge") {
		t.Error("no ridge where a plane above ring travel was read")
	}
}

// TestWearTakesPart: a known share of the wear narrows the clean-up; allowances widen it, twice
// over, since they are radial.
func TestWearTakesPart(t *testing.T) {
	j := job(t, "pump")
	plain := plan(t, j).Cylinders[0].CleanUp
	j.Cylinders[0].WearShare = 0.6
	known := plan(t, j).Cylinders[0].CleanUp
	if known.Original.Least != known.Original.Greatest || known.Original.Greatest.Value >= plain.Original.Greatest.Value {
		t.Errorf("share known %+v, not known %+v", known.Original, plain.Original)
	}
	for _, add := range []*units.Length{&j.Cuts.Locating, &j.Cuts.OutOfSquare, &j.Cuts.Surface} {
		*add = 10 * units.Micrometre
		more := plan(t, j).Cylinders[0].CleanUp
		near(t, "allowance", more.Original.Greatest.Value-known.Original.Greatest.Value, 20*units.Micrometre, units.Micrometre)
		*add = 0
	}
	j.Cylinders[0].WearShare = 0
	j.Engine.MayShift = units.Millimetre / 5
	if c := plan(t, j).Choice.Cylinders[0]; c.Centre != oversize.OriginalCentre && c.Shift > j.Engine.MayShift {
		t.Errorf("%+v", c)
	}
}

// TestChamberTakesPart: from its parts, by hand: (204.49 + 31.3) cm³ over 31.3 cm³, with 28 − 1.5 of the
// head, 0.2 mm of deck over 67 mm and 1.1 mm of gasket over 69 mm.
func TestChamberTakesPart(t *testing.T) {
	s := plan(t, job(t, "keep"))
	swept := math.Pi / 4 * 6.7 * 6.7 * 5.8
	space := 28 - 1.5 + math.Pi/4*(6.7*6.7*0.02+6.9*6.9*0.11)
	if got, want := s.Cylinders[0].Before.Ratio, (swept+space)/space; math.Abs(got-want) > 1e-9 {
		t.Errorf("ratio %v, want %v", got, want)
	}
	two := plan(t, job(t, "two-stroke")).Cylinders[0]
	if two.Before.FromPort <= 1 || two.Before.FromPort >= two.Before.Ratio || two.After.FromPort <= two.Before.FromPort {
		t.Errorf("from the port: %+v, %+v", two.Before, two.After)
	}
}

// TestPistonsTakePart: the running clearance by hand, what is usual, and the matching.
func TestPistonsTakePart(t *testing.T) {
	j := job(t, "keep")
	s := plan(t, j)
	k := s.Cylinders[0].Clearances[0]
	// 67.036 mm of iron at 11.2e-6/K by 100 K, 66.955 mm of piston by 110 K at 19.4e-6/K or so.
	change := k.Size.Value - k.Hot.Value
	low, high := 67.036*11.2e-6*100, 66.955*19.4e-6*110 // the piston grows by more
	near(t, "closing when hot", change, units.Length((high-low)*float64(units.Millimetre)), 8*units.Micrometre)
	if w := s.UsualClearance; w.Min != 67*units.Micrometre || w.Max != 100500*units.Nanometre { // 0.0010 to 0.0015 of 67 mm
		t.Errorf("usual %v", w)
	}
	f := job(t, "pump-finished")
	m := plan(t, f).Matched
	// Bores 78.5025 and 78.4985 mm, pistons 78.449, 78.443 and 78.446 mm, the middle 0.0575 mm: the larger
	// bore wants 78.4450, the smaller 78.4410.
	if m == nil || m.Pairs[0].Piston != 2 || m.Pairs[1].Piston != 1 {
		t.Errorf("%+v", m)
	}
	f.Cylinders[0].Proof = nil
	if s := plan(t, f); s.Matched != nil {
		t.Error("matched to a bore that was not read")
	}
}

// TestHoningTakesPart: motion, tracks, cover and phases.
func TestHoningTakesPart(t *testing.T) {
	j := job(t, "inch")
	h := plan(t, j).Honing
	if h.Motion != jobsheet.EvenMotion || h.Wall.Least != h.Wall.Greatest || h.Retrace.Tracking == hone.NotControllable || h.Cover.Fewest == 0 {
		t.Errorf("even by machine: %+v", h)
	}
	j.Tools.Motion = jobsheet.CrankMotion
	if h := plan(t, j).Honing; h.Wall.Least >= h.Wall.Greatest {
		t.Errorf("a crank: %v to %v", h.Wall.Least, h.Wall.Greatest)
	}
	j.Tools.Drive, j.Tools.Motion = hone.ByHand, jobsheet.MotionNotGiven
	if h := plan(t, j).Honing; h.Motion != jobsheet.CrankMotion || h.Retrace.Tracking != hone.NotControllable {
		t.Errorf("by hand: %+v", h)
	}
	p := job(t, "pump")
	if tr := plan(t, p).Honing.Traces; tr[0].Fate != hone.Replaced || tr[0].Later != 6*units.Micrometre {
		t.Errorf("%+v", tr)
	}
	p.Tools.Phases[1].RadialStock = 3 * units.Micrometre
	if tr := plan(t, p).Honing.Traces; tr[0].Fate != hone.Stays || tr[0].Left != units.Micrometre {
		t.Errorf("%+v", tr)
	}
}

// TestWarmSizes: what the gauge shows at 35 °C, by hand: 78.4425 mm of iron grows by 13.18 µm; the standard,
// 78.003 mm of gauge steel at 22 °C, has 78.0048 mm, and the rod gains 0.9 µm from 22 to 23 °C.
func TestWarmSizes(t *testing.T) {
	c := plan(t, job(t, "pump")).Cylinders[0]
	for _, w := range c.Warm {
		if w.Operation == oversize.FinishBore {
			want := 78.4425*(1+11.2e-6*15) - 78.003*(1+11.5e-6*2)*(1+11.5e-6*1)
			near(t, "shows", w.Shows, units.Length(want*float64(units.Millimetre)), units.Micrometre/2)
			return
		}
	}
	t.Errorf("no warm size: %+v", c.Warm)
}

// TestRingsTakePart: the least gap for the hot one, ends against ports, the feeler test, and what a gap
// says of the bore.
func TestRingsTakePart(t *testing.T) {
	s := plan(t, job(t, "keep"))
	r := s.Cylinders[0].Rings[0]
	if r.SetAt != 84*units.Millimetre || r.HotEnough.Verdict != uncertainty.Within || r.Least.Value <= 50*units.Micrometre {
		t.Errorf("%+v", r)
	}
	// 0.07 mm of gap is 0.07/π mm of diameter.
	near(t, "taper by feeler gauge", s.Cylinders[0].FeelerTaper.Value, 22282*units.Nanometre, units.Nanometre)
	near(t, "grown by the gap", r.Grown.Value, 9549*units.Nanometre, units.Nanometre)
	j := job(t, "two-stroke")
	for _, room := range plan(t, j).Cylinders[0].Rings[0].Ports {
		if room.Crosses {
			t.Errorf("crosses: %+v", room)
		}
	}
	j.Engine.Rings[0].Peg = &jobsheet.Peg{Angle: 20 * units.Degree}
	s = plan(t, j)
	if !strings.Contains(asText(t, s), "AN END CROSSES IT") {
		t.Error("a ring end in the exhaust port is not said to be")
	}
}

// TestPaper: the same sheet in pages and in ASCII: no character of another set, pages no longer than
// asked, nothing lost.
func TestPaper(t *testing.T) {
	for _, name := range []string{"keep", "pump", "pump-finished", "sleeve", "plated", "two-stroke", "inch", "unread"} {
		s := plan(t, job(t, name))
		var whole, paged strings.Builder
		if err := s.Print(&whole, jobsheet.Paper{ASCII: true}); err != nil {
			t.Fatal(err)
		}
		for _, r := range whole.String() {
			if r != '\n' && (r < ' ' || r > '~') {
				t.Fatalf("%s: %q in ASCII", name, r)
			}
		}
		if strings.Contains(whole.String(), "?") && !strings.Contains(asText(t, s), "?") {
			t.Errorf("%s: a character has no name in ASCII", name)
		}
		const lines = 50
		if err := s.Print(&paged, jobsheet.Paper{Lines: lines, ASCII: true}); err != nil {
			t.Fatal(err)
		}
		var body []string
		for i, page := range strings.Split(paged.String(), "\f") {
			all := strings.Split(strings.TrimSuffix(page, "\n"), "\n")
			if len(all) > lines || !strings.Contains(all[0], "page ") {
				t.Errorf("%s: page %d has %d lines and begins %q", name, i+1, len(all), all[0])
			}
			body = append(body, all[2:]...)
		}
		if words(strings.Join(body, " ")) != words(whole.String()) {
			t.Errorf("%s: the pages say something else", name)
		}
	}
	if err := plan(t, job(t, "keep")).Print(&strings.Builder{}, jobsheet.Paper{Lines: 3}); err == nil {
		t.Error("three lines are a page")
	}
}

func words(s string) string { return strings.Join(strings.Fields(s), " ") }

// TestProofTakesPart: the proof has temperatures and a standard of its own, and limits of its own.
func TestProofTakesPart(t *testing.T) {
	j := job(t, "pump-finished")
	base := plan(t, j).Cylinders[0].Proof
	// The cylinder 10 K warmer than said: 78.5 mm of iron at 11.2e-6/K is 8.8 µm smaller at 20 °C.
	warm := j
	warm.Proof.Temperatures.Cylinder.Value += 10
	near(t, "by temperature", base.Bore.Mean.Value-plan(t, warm).Cylinders[0].Proof.Bore.Mean.Value, 8792*units.Nanometre, 20*units.Nanometre)
	// Another ring, 50 K warmer while the gauge was set, is 78 mm · 11.5e-6/K · 50 K larger than it says.
	other := j
	other.Proof.Standard = jobsheet.Standard{Name: "other ring", Size: 78 * units.Millimetre, Uncertainty: 20 * units.Micrometre}
	other.Proof.Temperatures.Standard.Value += 50
	by := plan(t, other).Cylinders[0].Proof.Bore.Mean
	near(t, "by standard", by.Value-base.Bore.Mean.Value, 44850*units.Nanometre, 100*units.Nanometre)
	if by.Std < 10*units.Micrometre || base.Bore.Mean.Std > 3*units.Micrometre {
		t.Errorf("doubt by the other standard %v, by the gauge's %v", by.Std, base.Bore.Mean.Std)
	}
	for i, want := range []string{"finished bore", "ovality", "taper"} {
		f := base.Findings[i]
		if want == "finished bore" && f.Limits != plan(t, j).Choice.Cylinders[0].Finish {
			t.Errorf("%s: %v", want, f.Limits)
		}
		if want == "ovality" && f.Limits.Max != 12*units.Micrometre || want == "taper" && f.Limits.Max != 15*units.Micrometre {
			t.Errorf("%s: %v", want, f.Limits)
		}
	}
	// Clearance of the piston matched, 78.446 mm, at the smallest and the largest place.
	skirt := 78446 * units.Micrometre
	least, greatest := base.Clearances[0], base.Clearances[1]
	near(t, "least clearance", least.Measured.Value, base.Bore.Smallest.Size.Value-skirt, 1)
	near(t, "greatest clearance", greatest.Measured.Value, base.Bore.Largest.Size.Value-skirt, 1)
	if least.Limits.Min != 45*units.Micrometre || greatest.Limits.Max != 70*units.Micrometre {
		t.Errorf("%v, %v", least.Limits, greatest.Limits)
	}
	// Two bores changed over take each other's pistons.
	j.Cylinders[0].Proof, j.Cylinders[1].Proof = j.Cylinders[1].Proof, j.Cylinders[0].Proof
	if m := plan(t, j).Matched; m.Pairs[0].Piston != 1 || m.Pairs[1].Piston != 2 {
		t.Errorf("%+v", m)
	}
	text := asText(t, plan(t, j))
	for _, section := range []string{"PISTONS", "RING GAPS", "PROOF", "HONING", "Pistons matched", "end gap as measured", "came off on the diameter"} {
		if !strings.Contains(text, section) {
			t.Errorf("no %s on the sheet", section)
		}
	}
}

// TestPlayTakesPart: what a ring can turn about its peg comes off the room to the port.
func TestPlayTakesPart(t *testing.T) {
	j := job(t, "two-stroke")
	before := plan(t, j).Cylinders[0].Rings[0].Ports[0].Room
	j.Engine.Rings[0].Play += units.Millimetre
	near(t, "room", before-plan(t, j).Cylinders[0].Rings[0].Ports[0].Room, units.Millimetre, units.Nanometre)
}

// TestNothingUnsafeIsReady: what would hurt the engine or somebody is never ready to go together.
func TestNothingUnsafeIsReady(t *testing.T) {
	um := units.Micrometre
	grow := func(j *jobsheet.Job, by units.Length) {
		for i := range j.Cylinders[0].Proof {
			j.Cylinders[0].Proof[i].Diameter += by
		}
	}
	for _, c := range []struct {
		name, job string
		change    func(j *jobsheet.Job)
		want      jobsheet.Step
		says      string
	}{
		{"a sleeve that can come loose, its bore proven", "sleeve-loose", func(j *jobsheet.Job) {
			j.Proof.Temperatures = j.Gauge.Temperatures
			for _, r := range j.Cylinders[0].Readings {
				r.Deviation = &jobsheet.Deviation{Length: -10 * um}
				j.Cylinders[0].Proof = append(j.Cylinders[0].Proof, r)
			}
		}, jobsheet.ChooseSleeve, "its grip at the running temperature is not proven: DO NOT RUN on it"},
		{"a sleeve whose grip in work nobody knows", "sleeve", func(j *jobsheet.Job) { j.Engine.Running = jobsheet.Running{} }, jobsheet.ChooseSleeve, "whether it grips in work is not known"},
		{"a seat smaller than the worn bore", "sleeve", func(j *jobsheet.Job) {
			j.Engine.Sleeve.Seat = 79100 * um // the worn bore cleans up at 79.18 mm
		}, jobsheet.ChooseSleeve, "the seat does not surely clean up the worn bore"},
		{"a seat that leaves too little wall", "sleeve", func(j *jobsheet.Job) { j.Engine.Limits.LeastWall = 4 * units.Millimetre }, jobsheet.ChooseSleeve, "DO NOT BORE IT"},
		{"a seat in a wall that nobody measured", "sleeve", func(j *jobsheet.Job) { j.Cylinders[0].ThinnestWall = 0 }, jobsheet.MeasureBetter, "the wall is not measured"},
		{"no sleeve at all", "sleeve", func(j *jobsheet.Job) { j.Engine.Sleeve = jobsheet.Sleeve{} }, jobsheet.ChooseSleeve, "give engine.sleeve"},
		{"ring ends that butt when hot", "keep", func(j *jobsheet.Job) {
			j.Engine.Running.Ring = bore.Temperature{Value: units.MustParseTemperature("330 °C")}
			j.Engine.Rings[0].HotGap = 0
		}, jobsheet.AskMaker, "THE ENDS BUTT"},
		{"a window that never leaves the hot gap", "keep", func(j *jobsheet.Job) { j.Engine.Rings[0].HotGap = 500 * um }, jobsheet.AskMaker, "no gap in the window is enough when hot"},
		{"a crosshatch nobody measured", "keep", func(j *jobsheet.Job) { j.Cylinders[0].Crosshatch = hone.Crosshatch{} }, jobsheet.WashAndProve, "The crosshatch was not measured"},
		{"a kept bore that became too loose for its piston", "keep", func(j *jobsheet.Job) { grow(j, 55*um) }, jobsheet.Rework, "another piston"},
		{"places not read again", "keep", func(j *jobsheet.Job) { j.Cylinders[0].Proof = j.Cylinders[0].Proof[:12] }, jobsheet.WashAndProve, "Not read again"},
		{"a proof of a warm cylinder", "keep", func(j *jobsheet.Job) {
			grow(j, 8*um)
			j.Proof.Temperatures.Cylinder.Value += 9
		}, jobsheet.WashAndProve, "not at the temperature of the standard"},
		{"a bore that grew smaller", "keep", func(j *jobsheet.Job) { grow(j, -15*um) }, jobsheet.MeasureBetter, "Metal does not come back"},
		{"a bore smaller than after its last pass", "pump-finished", func(j *jobsheet.Job) {
			last := &j.Cylinders[0].Honing.Passes[3].After
			last.Diameter += 40 * um
		}, jobsheet.MeasureBetter, "Metal does not come back"},
		{"bored into the window, no pass made", "pump-finished", func(j *jobsheet.Job) {
			j.Cylinders[0].Honing = jobsheet.Honed{Start: jobsheet.HonedSize{Diameter: 78503 * um, At: units.ReferenceTemperature}}
			j.Cylinders[0].Proof = nil
		}, jobsheet.HoneToSize, "Bored so far that the hone has no stock"},
		{"honing that starts in the worn bore", "pump", func(j *jobsheet.Job) { j.Cylinders[0].Honing.Start.Diameter = 78100 * um }, jobsheet.BoreOut, "smaller than the worn bore"},
		{"a hone that takes no size", "pump", func(j *jobsheet.Job) {
			j.Tools.Hone, j.Tools.Pressing = hone.BallType, hone.ConstantPressure
		}, jobsheet.BoreOut, "takes no size"},
		{"a finished bore still too small", "pump-finished", func(j *jobsheet.Job) {
			grow(j, -30*um)
			j.Cylinders[0].Honing = jobsheet.Honed{}
		}, jobsheet.HoneToSize, "hone on towards 78.5025 mm"},
		{"proven past its size, its crosshatch not measured", "pump-finished", func(j *jobsheet.Job) {
			grow(j, 40*um)
			j.Cylinders[0].Crosshatch, j.Cylinders[0].Honing = hone.Crosshatch{}, jobsheet.Honed{}
		}, jobsheet.Oversized, "past its size: a larger piston, or the next oversize"},
		{"oval beyond its limit, something else in doubt", "pump-finished", func(j *jobsheet.Job) {
			for i := range j.Cylinders[0].Proof {
				if j.Cylinders[0].Proof[i].Axis.Angle == 0 {
					j.Cylinders[0].Proof[i].Diameter -= 18 * um
				}
			}
		}, jobsheet.Rework, "true it with rigid stones"},
		{"a piston too small for the bore that was cut", "pump-finished", func(j *jobsheet.Job) {
			j.Engine.Oversizes[1].Pistons = nil
			j.Cylinders[0].Piston = jobsheet.Piston{Size: 78430 * um, Axis: fit.AcrossPin}
			j.Cylinders[0].PistonFor = units.Millimetre / 2
			j.Engine.Oversizes[1].Piston.Size = 78445 * um
		}, jobsheet.Oversized, ""},
		{"rings filed for a bore still to be honed", "pump-finished", func(j *jobsheet.Job) {
			grow(j, -30*um)
			j.Cylinders[0].Honing = jobsheet.Honed{}
		}, jobsheet.HoneToSize, "not yet: the bore is not finished"},
		{"a plated bore with a pit", "plated", func(j *jobsheet.Job) {
			j.Engine.Limits.Service, j.Engine.Limits.Ovality = 48100*um, 40*um
			j.Cylinders[0].Peeling, j.Cylinders[0].Pit = false, 10*um
		}, jobsheet.AskMaker, ""},
		{"a plated bore too tight for its piston", "plated", func(j *jobsheet.Job) {
			j.Engine.Limits.Service, j.Engine.Limits.Ovality = 48100*um, 40*um
			j.Cylinders[0].Peeling = false
			j.Cylinders[0].Piston = jobsheet.Piston{Size: 47995 * um, Axis: fit.AcrossPin}
		}, jobsheet.AskMaker, "least clearance, as it stays"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := job(t, c.job)
			c.change(&j)
			s := plan(t, j)
			if s.Next != c.want {
				t.Errorf("next %v, want %v", s.Next, c.want)
			}
			if text := asText(t, s); !strings.Contains(strings.Join(strings.Fields(text), " "), c.says) {
				t.Errorf("does not say %q:\n%s", c.says, text)
			}
		})
	}
}

// TestWhyTheMakerIsAsked: the head of the sheet says what calls for the maker, and nothing else.
func TestWhyTheMakerIsAsked(t *testing.T) {
	const um = units.Micrometre
	sound := func(j *jobsheet.Job) {
		j.Engine.Limits.Service, j.Engine.Limits.Ovality = 48100*um, 40*um
		j.Cylinders[0].Peeling = false
	}
	for _, c := range []struct {
		job    string
		change func(j *jobsheet.Job)
		want   []string
	}{
		{"plated", func(j *jobsheet.Job) {}, []string{"the plating lifts, or bare metal shows", "service limit, beyond"}},
		{"plated", func(j *jobsheet.Job) { sound(j); j.Cylinders[0].Pit = 10 * um }, []string{"the wall has a score or a pit"}},
		{"plated", func(j *jobsheet.Job) {
			sound(j)
			j.Cylinders[0].Piston = jobsheet.Piston{Size: 47995 * um, Axis: fit.AcrossPin}
		}, []string{"least clearance of its piston, beyond"}},
		{"plated", func(j *jobsheet.Job) {
			sound(j)
			j.Engine.Limits = jobsheet.Limits{}
		}, []string{"the job gives no limit that decides on the wall"}},
		{"keep", func(j *jobsheet.Job) { j.Engine.Rings[0].HotGap = 500 * um },
			[]string{"no gap in the window of ring top is enough when hot", "the gap of ring top is too small when hot"}},
		{"keep", func(j *jobsheet.Job) {}, nil},
	} {
		j := job(t, c.job)
		c.change(&j)
		var got []string
		for line := range strings.Lines(asText(t, plan(t, j))) {
			if why, ok := strings.CutPrefix(line, "Why, cylinder 1: "); ok {
				got = append(got, strings.TrimSuffix(why, ".\n"))
			}
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: says %q, want %q", c.job, got, c.want)
		}
	}
}

// TestPistonsOneByOne: where a size has no piston of its own, the bores are cut for the middle one of those that
// came.
func TestPistonsOneByOne(t *testing.T) {
	j := job(t, "pump-finished")
	j.Engine.Oversizes[1].Piston = jobsheet.Piston{}
	s := plan(t, j)
	if w := s.Choice.Cylinders[0].Finish; w.Min != (78446+45)*units.Micrometre || w.Max != (78446+70)*units.Micrometre {
		t.Errorf("finish window %v for pistons of 78.443, 78.446 and 78.449 mm", w)
	}
}
