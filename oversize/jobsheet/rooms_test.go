// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"cmp"
	"encoding"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strings"
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

// TestSheetsReadBack: a demo's sheet, read and written again, is the same but for the last digits of bare numbers,
// since of an inch job's temperatures JSON keeps 12.
func TestSheetsReadBack(t *testing.T) {
	short := regexp.MustCompile(`(: -?\d+\.\d{6})\d*(,?\n)`)
	for _, file := range demoJobs(t) {
		_, written := demoSheet(t, file)
		s := must(jobsheet.ReadSheet(bytes.NewReader(written)))(t)
		var again bytes.Buffer
		if err := s.WriteJSON(&again); err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(short.ReplaceAll(again.Bytes(), []byte("$1$2")), short.ReplaceAll(written, []byte("$1$2"))) {
			t.Errorf("%s: read again, the sheet differs", file)
		}
	}
}

// A jobFile is a job as it stands in its file, read by the names of its fields and by nothing of this package, so
// that a field that goes to the wrong place shows.
type jobFile struct {
	t    testing.TB
	tree any
}

// of returns the item of a list at a path.
func (f jobFile) of(path string, i int) jobFile {
	f.t.Helper()
	return jobFile{f.t, pick(f.tree, path)[0].([]any)[i]}
}

// field returns what stands at a path, zero where nothing does.
func field[T any, P interface {
	*T
	encoding.TextUnmarshaler
}](f jobFile, path string) T {
	f.t.Helper()
	var v T
	if text := f.text(path); text != "" {
		if err := P(&v).UnmarshalText([]byte(text)); err != nil {
			f.t.Fatal(err)
		}
	}
	return v
}

func (f jobFile) size(path string) units.Length     { return field[units.Length](f, path) }
func (f jobFile) window(path string) units.Limits   { return field[units.Limits](f, path) }
func (f jobFile) at(path string) bore.Temperature   { return field[bore.Temperature](f, path) }
func (f jobFile) turns(path string) units.Frequency { return field[units.Frequency](f, path) }
func (f jobFile) has(path string) bool              { return len(pick(f.tree, path)) > 0 }

func (f jobFile) text(path string) string {
	if x := pick(f.tree, path); len(x) > 0 {
		return x[0].(string)
	}
	return ""
}

// number returns a bare number; zero where there is none.
func (f jobFile) number(path string) float64 {
	if x := pick(f.tree, path); len(x) > 0 {
		return x[0].(float64)
	}
	return 0
}

func (f jobFile) lasts(path string) time.Duration {
	return must(time.ParseDuration(f.text(path)))(f.t)
}

// count returns how many items a list has.
func (f jobFile) count(path string) int {
	if x := pick(f.tree, path); len(x) > 0 {
		return len(x[0].([]any))
	}
	return 0
}

// sure returns a value with its doubt, "78.194 ± 0.004 mm", of which the doubt is two standard uncertainties.
// Every value of the demos that is read here states its doubt, but those of pistons, which stand by the usual.
func (f jobFile) sure(path string) uncertainty.Estimate {
	f.t.Helper()
	value, doubt, ok := strings.Cut(f.text(path), " ± ")
	if !ok {
		if value != "" {
			f.t.Fatalf("%s: %q states no doubt", path, value)
		}
		return uncertainty.Estimate{}
	}
	_, unit, _ := strings.Cut(doubt, " ")
	return uncertainty.Estimate{
		Value: must(units.ParseLength(value + " " + unit))(f.t), Std: must(units.ParseLength(doubt))(f.t) / 2,
	}
}

// piston returns what stands at a path as package fit wants it.
func (f jobFile) piston(path string) fit.Piston {
	return fit.Piston{
		Size: f.sure(path + "size"), Axis: field[fit.SkirtAxis](f, path+"axis"),
		Height: f.size(path + "height"), MakerHeight: f.size(path + "maker_height"),
	}
}

// gauge returns the gauge as it was set for the survey, "gauge", or for the proof. The demos are of grey iron, or
// take it. One reading of an unknown scatter that nobody repeated is taken to scatter by a step of the scale.
func (f jobFile) gauge(path string) bore.Gauge {
	standard := f.sure(path + ".standard.size")
	return bore.Gauge{
		Kind:       field[bore.Kind](f, "gauge.kind"),
		Resolution: f.size("gauge.resolution"), Repeatability: f.size("gauge.repeatability"), DialError: f.size("gauge.dial_error"),
		Standard: bore.Standard{
			Size: standard.Value, Std: standard.Std,
			Material: material.GaugeSteel(), At: f.at(path + ".temperatures.standard"),
		},
		Material: material.PlainSteel(), SetAt: f.at(path + ".temperatures.gauge_set"), UsedAt: f.at(path + ".temperatures.gauge_used"),
		Part: material.GreyIron(), PartAt: f.at(path + ".temperatures.cylinder"),
		PlaceSpread: field[units.TemperatureChange](f, path+".temperatures.place_to_place"),
	}
}

func (f jobFile) layout() bore.Layout {
	l := bore.Layout{
		Length: f.size("engine.layout.length"), RingTop: f.size("engine.layout.ring_top"), RingBottom: f.size("engine.layout.ring_bottom"),
	}
	for i := range f.count("engine.layout.ports") {
		p := f.of("engine.layout.ports", i)
		l.Ports = append(l.Ports, bore.Port{
			Name: p.text("name"), From: p.size("from"), To: p.size("to"),
			At: field[units.Angle](p, "at"), Width: field[units.Angle](p, "width"),
		})
	}
	return l
}

// measured returns the geometry of the readings of a cylinder, of the survey or of the proof.
func (f jobFile) measured(i int, which string, g bore.Gauge) bore.Geometry {
	f.t.Helper()
	var rs []bore.Reading
	c := f.of("cylinders", i)
	for k := range c.count(which) {
		r := c.of(which, k)
		rs = append(rs, bore.Reading{Depth: r.size("depth"), Axis: field[bore.Axis](r, "axis"), Diameter: r.size("diameter")})
	}
	return must(f.layout().Analyse(rs, g))(f.t)
}

// must passes a value on, or ends the test.
func must[T any](v T, err error) func(testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// same compares what the sheet has with what a call of a room gives.
func same(t *testing.T, what string, got, want any) {
	t.Helper()
	if g, w := asJSON(t, got), asJSON(t, want); g != w {
		t.Errorf("%s: the sheet has\n%s\nthe room says\n%s", what, g, w)
	}
}

// demoRooms is a demo job as its file has it, and the sheet of it, written and read back.
func demoRooms(t *testing.T, name string) (jobFile, jobsheet.Sheet) {
	t.Helper()
	data, err := os.ReadFile("../../examples/refresh/jobs/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	f := jobFile{t: t}
	if err := json.Unmarshal(data, &f.tree); err != nil {
		t.Fatal(err)
	}
	_, written := planData(t, data)
	return f, must(jobsheet.ReadSheet(bytes.NewReader(written)))(t)
}

// TestRooms: what stands on the sheets of four demos is what the rooms say when they are called one by one, by
// their documentation, with what stands in the file.
func TestRooms(t *testing.T) {
	for _, name := range []string{
		"pump", "pump-finished", "keep", "two-stroke",
	} {
		t.Run(name, func(t *testing.T) {
			f, s := demoRooms(t, name)
			f.survey(t, s)
			f.choice(t, s)
			f.stock(t, s)
			f.proof(t, s)
			f.clearances(t, s)
			f.capacities(t, s)
			f.rings(t, s)
			f.hone(t, s)
			f.passes(t, s)
		})
	}
}

// limits are the maker's for a worn bore.
func (f jobFile) limits() bore.Limits {
	const path = "engine.limits."
	return bore.Limits{
		New: f.window(path + "new_bore"), Service: units.Limits{Max: f.size(path + "service")},
		Ovality: f.size(path + "ovality"), Taper: f.size(path + "taper"), Spread: f.size(path + "greatest_less_least"),
	}
}

// cleanUp returns the clean-up of a measured bore. Where a plane lies below ring travel the unworn size is
// read there; else it is the least of a new one.
func (f jobFile) cleanUp(i int, g bore.Geometry) bore.CleanUp {
	w := bore.Wear{
		Share: f.of("cylinders", i).number("wear_share"),
		Allowances: bore.Allowances{
			Locating: f.size("cuts.locating"), OutOfSquare: f.size("cuts.out_of_square"),
			Surface: f.size("cuts.surface"),
		},
	}
	if last := g.Planes[len(g.Planes)-1]; last.Depth > f.size("engine.layout.ring_bottom") {
		w.UnwornAt = last.Depth
	} else {
		w.Unworn = uncertainty.Estimate{Value: f.window("engine.limits.new_bore").Min}
	}
	return must(g.CleanUp(w))(f.t)
}

func (f jobFile) survey(t *testing.T, s jobsheet.Sheet) {
	same(t, "where to read", s.ToRead, must(f.layout().ToRead(5, bore.TwoPoint))(t))
	for i, c := range s.Cylinders {
		g := f.measured(i, "readings", f.gauge("gauge"))
		same(t, "geometry", c.Bore, g)
		each := uncertainty.Risk{Accept: 0.05, Reject: 0.05}.Share(4 * f.count("cylinders")) // four figures of wear
		same(t, "findings", c.Findings, must(g.Judge(f.limits(), each))(t))
		same(t, "clean-up", c.CleanUp, f.cleanUp(i, g))
		if own := f.of("cylinders", i); own.has("feeler_test") {
			lower := own.of("feeler_test", 1).sure("gap")
			upper := own.of("feeler_test", 0).sure("gap")
			same(t, "feeler test", c.FeelerTaper, must(rings.DiameterChange(lower, upper))(t))
		}
	}
}

// choice wires the whole engine.
func (f jobFile) choice(t *testing.T, s jobsheet.Sheet) {
	limits := f.limits()
	e := oversize.Engine{
		Wall: field[oversize.Wall](f, "engine.wall"), Nominal: f.size("engine.bore"),
		NewBore: limits.New, Service: limits.Service.Max,
		Clearance: f.window("engine.limits.piston_clearance"), WornClearance: f.size("engine.limits.worn_clearance"),
		MostOver: f.size("engine.limits.greatest_overbore"), LeastWall: f.size("engine.limits.least_wall"),
		GasketHole: f.size("engine.gasket_hole"), MayShift: f.size("engine.may_shift"), Deglaze: 4 * units.Micrometre, Honing: f.size("engine.honing_allowance"),
		RigidHone: f.text("tools.hone") == "rigid-stone hone", OwnSizes: f.count("cylinders") == 1,
	}
	for i := range f.count("engine.oversizes") {
		o := f.of("engine.oversizes", i)
		e.Sizes = append(e.Sizes, oversize.Size{Over: o.size("over"), Piston: o.offered()})
	}
	var cs []oversize.Cylinder
	for i, c := range s.Cylinders {
		own := f.of("cylinders", i)
		cyl := oversize.NewCylinder(own.text("name"), c.Bore, c.CleanUp, c.Findings)
		cyl.Piston, cyl.ThinnestWall = own.piston("piston."), own.sure("thinnest_wall")
		cs = append(cs, cyl)
	}
	want := must(oversize.Choose(e, cs, uncertainty.Risk{}))(t)
	for i := range want.Cylinders { // as a boring tool is set, the rest being the hone's
		want.Cylinders[i].Bored = want.Cylinders[i].Bored / (10 * units.Micrometre) * (10 * units.Micrometre)
	}
	same(t, "choice", s.Choice, want)
	for i, c := range s.Choice.Cylinders {
		if c.Route != oversize.BoreOversize {
			continue
		}
		window := must(fit.FinishWindow(f.chosen(s, i), e.Clearance))(t)
		same(t, "finish window", c.Finish, window)
		same(t, "size to work to", c.Aim, must(fit.AimIn(window, 0, fit.Centre))(t))
		if left := c.Aim - c.Bored; left < e.Honing || left >= e.Honing+10*units.Micrometre {
			t.Errorf("bored to %v the hone has %v", c.Bored, left)
		}
	}
}

// chosen returns the piston on offer for the size that a cylinder gets.
func (f jobFile) chosen(s jobsheet.Sheet, i int) fit.Piston {
	for k := range f.count("engine.oversizes") {
		if o := f.of("engine.oversizes", k); o.size("over") == s.Choice.Cylinders[i].Over {
			return o.offered()
		}
	}
	return f.of("cylinders", i).piston("piston.")
}

// offered returns the piston that the bores of a size on offer are cut for: of those that came the middle one.
func (f jobFile) offered() fit.Piston {
	var came []fit.Piston
	for k := range f.count("pistons") {
		came = append(came, f.of("pistons", k).piston(""))
	}
	if len(came) == 0 {
		return f.piston("piston.")
	}
	slices.SortFunc(came, func(a, b fit.Piston) int { return cmp.Compare(a.Size.Value, b.Size.Value) })
	return came[len(came)/2]
}

func (f jobFile) stock(t *testing.T, s jobsheet.Sheet) {
	shop := oversize.Shop{
		MostDepth: f.size("cuts.most_depth"), FinishBore: f.size("cuts.finish_bore"), FinishHone: f.size("cuts.finish_hone"),
		Plateau: f.size("cuts.plateau"), BothEnds: f.has("cuts.both_ends"),
		Length: f.size("cuts.length"), Feed: f.size("cuts.feed"), Spindle: f.turns("cuts.spindle"),
	}
	g := f.gauge("gauge")
	for i, c := range s.Cylinders {
		choice := s.Choice.Cylinders[i]
		if choice.Bored == 0 {
			if len(c.Stock) > 0 {
				t.Error("stock of a bore that is kept")
			}
			continue
		}
		want := must(shop.Cuts(c.Bore.Smallest.Size.Value, choice.Bored, choice.Aim))(t)
		if now := c.Pass.Size.Value; now != 0 { // what the hone has taken is done, and all before it
			want = slices.DeleteFunc(want, func(o oversize.Operation) bool { return o.After <= now })
			if len(want) == 0 {
				want = nil
			} else {
				want[0].Before, want[0].Stock = now, want[0].After-now
			}
		}
		if f.count("engine.layout.ports") > 0 { // their edges are dressed before the first hone and after the last
			first := slices.IndexFunc(want, func(o oversize.Operation) bool { return strings.HasSuffix(o.Kind, "hone") })
			want = slices.Insert(want, first, oversize.Operation{Kind: "port edges", Before: choice.Bored, After: choice.Bored})
			want = append(want, oversize.Operation{Kind: "port edges, lightly", Before: choice.Aim, After: choice.Aim})
		}
		same(t, "stock", c.Stock, want)
		if f.text("cuts.warm") == "" || len(want) == 0 {
			continue
		}
		now := material.Comparison{
			Standard: g.Standard.Size, StandardAt: g.Standard.At.Value, StandardExpansion: g.Standard.Material.Expansion,
			GaugeSetAt: g.SetAt.Value, GaugeUseAt: g.UsedAt.Value, GaugeExpansion: g.Material.Expansion,
			PartAt: field[units.Temperature](f, "cuts.warm"), PartExpansion: g.Part.Expansion,
		}
		for _, w := range c.Warm {
			now.Deviation = w.Shows
			if back := must(now.SizeAt20())(t); (back - w.Size).Abs() > units.Nanometre { // rounded on both ways
				t.Errorf("%v warm is %v, not %v", w.Operation, back, w.Size)
			}
		}
		if len(c.Warm) == 0 {
			t.Error("no warm sizes")
		}
	}
}

// row is the risk of each row of the ledger: the job's, which is 0.05, over twelve of each cylinder and four of each
// of its rings.
func (f jobFile) row() uncertainty.Risk {
	rows := f.count("cylinders") * (12 + 4*f.count("engine.rings"))
	return uncertainty.Risk{Accept: 0.05, Reject: 0.05}.Share(rows)
}

func (f jobFile) proof(t *testing.T, s jobsheet.Sheet) {
	var bores []units.Length
	for i, c := range s.Cylinders {
		if !f.of("cylinders", i).has("proof") {
			if c.Proof != nil {
				t.Error("a proof of nothing")
			}
			continue
		}
		g := f.measured(i, "proof", f.gauge("proof"))
		same(t, "proof", c.Proof.Bore, g)
		same(t, "what came off", c.Proof.Changed, must(bore.Compare(c.Bore, g))(t))
		bores = append(bores, g.Smallest.Size.Value)

		limits := f.limits()
		if s.Choice.Cylinders[i].Work == oversize.Deglaze {
			limits.New = units.Limits{}
		} else {
			limits = bore.Limits{
				New: s.Choice.Cylinders[i].Finish, Spread: limits.Spread, Ovality: f.size("engine.limits.finish_ovality"), Taper: f.size("engine.limits.finish_taper"),
			}
		}
		same(t, "findings of the proof", c.Proof.Findings, must(g.Judge(limits, f.row()))(t))
		crosshatch, want := field[hone.Crosshatch](f.of("cylinders", i), "crosshatch"), f.want()
		same(t, "crosshatch", *c.Proof.Crosshatch == uncertainty.Within, want.Judge(crosshatch, 0) == uncertainty.Within)
	}
	if s.Matched == nil {
		return
	}
	var pistons []units.Length
	for k := range f.count("engine.oversizes.1.pistons") {
		pistons = append(pistons, f.of("engine.oversizes.1.pistons", k).sure("size").Value)
	}
	same(t, "matching", s.Matched, []fit.Matched{must(fit.Match(bores, pistons, f.window("engine.limits.piston_clearance")))(t)})
}

// fitted returns the piston that a cylinder is going to have.
func (f jobFile) fitted(s jobsheet.Sheet, i int) fit.Piston {
	if s.Matched != nil {
		return f.of("engine.oversizes.1.pistons", s.Matched[0].Pairs[i].Piston).piston("")
	}
	return f.chosen(s, i)
}

func (f jobFile) clearances(t *testing.T, s jobsheet.Sheet) {
	for i, c := range s.Cylinders {
		p := f.fitted(s, i)
		for _, k := range c.Clearances {
			size := c.Bore.Mean
			switch k.At {
			case "greatest now":
				size = c.Bore.Largest.Size
			case "least now":
				size = c.Bore.Smallest.Size
			default:
				size.Value = s.Choice.Cylinders[i].Aim
			}
			same(t, "clearance "+k.At, k.Size, must(fit.Clearance(size, p))(t))
			if f.text("engine.running.piston") == "" {
				continue
			}
			// The least that the running temperatures leave.
			b, q := f.at("engine.running.bore"), f.at("engine.running.piston")
			warm := fit.Warm{
				Bore: material.GreyIron(), BoreAt: b.Value.Add(-b.Within),
				Piston: material.EutecticAluminium(), PistonAt: q.Value.Add(q.Within),
			}
			same(t, "running clearance "+k.At, k.Hot, must(warm.HotClearance(size, p))(t))
		}
		if len(c.Clearances) == 0 {
			t.Error("no clearance")
		}
		if c.Proof == nil {
			continue
		}
		g := c.Proof.Bore
		least, greatest := rowOf(t, s, fmt.Sprintf("cylinders[%d].least clearance", i)).Finding, rowOf(t, s, fmt.Sprintf("cylinders[%d].greatest clearance", i)).Finding
		if least == nil || greatest == nil {
			t.Fatal("no clearance is proven")
		}
		same(t, "least clearance proven", least.Measured, must(fit.Clearance(g.Smallest.Size, p))(t))
		same(t, "greatest clearance proven", greatest.Measured, must(fit.Clearance(g.Largest.Size, p))(t))
		w := f.window("engine.limits.piston_clearance")
		if s.Choice.Cylinders[i].Work == oversize.Deglaze { // as much as a worn one may have
			w.Max = max(w.Max, f.size("engine.limits.worn_clearance"))
		}
		same(t, "clearances allowed", []units.Limits{least.Limits, greatest.Limits}, []units.Limits{{Min: w.Min}, {Max: w.Max}})
	}
	same(t, "usual clearance", s.UsualClearance, must(fit.Usual(field[fit.Duty](f, "engine.duty"), f.size("engine.bore")))(t))
}

// capacities: of a chamber part by part, or of the ratio that the maker gives at the nominal bore.
func (f jobFile) capacities(t *testing.T, s jobsheet.Sheet) {
	stroke, nominal := f.size("engine.stroke"), f.size("engine.bore")
	capacity := func(d units.Length) oversize.Compression {
		swept := must(oversize.Displacement(d, stroke, 1))(t)
		if !f.has("engine.chamber") {
			clearance := must(oversize.ClearanceVolume(must(oversize.Displacement(nominal, stroke, 1))(t), f.number("engine.compression_ratio")))(t)
			return oversize.Compression{Swept: swept, Clearance: clearance, Ratio: must(oversize.Ratio(swept, clearance))(t)}
		}
		chamber := oversize.Chamber{
			Head: field[units.Volume](f, "engine.chamber.head"), Crown: field[units.Volume](f, "engine.chamber.crown"),
			Deck: f.size("engine.chamber.deck"), Gasket: f.size("engine.chamber.gasket"), GasketHole: f.size("engine.gasket_hole"),
			PortTop: f.size("engine.chamber.port_top"),
		}
		return must(chamber.Compression(d, stroke))(t)
	}
	var before, after []units.Volume
	for i, c := range s.Cylinders {
		finished := s.Choice.Cylinders[i].Aim
		if c.Proof != nil {
			finished = c.Proof.Bore.Mean.Value
		}
		for _, x := range []struct {
			got  oversize.Compression
			want oversize.Compression
			all  *[]units.Volume
		}{{c.Before, capacity(nominal), &before}, {c.After, capacity(finished), &after}} {
			closeTo(t, "swept volume", float64(x.got.Swept), float64(x.want.Swept))
			closeTo(t, "ratio", x.got.Ratio, x.want.Ratio)
			closeTo(t, "ratio from the port", x.got.FromPort, x.want.FromPort)
			closeTo(t, "space above the piston", float64(x.got.Clearance), float64(x.want.Clearance))
			*x.all = append(*x.all, x.want.Swept)
		}
	}
	closeTo(t, "displacement before", float64(s.Before), float64(total(before...)))
	closeTo(t, "displacement after", float64(s.After), float64(total(after...)))
}

// total is the sum of volumes.
func total(all ...units.Volume) (sum units.Volume) {
	for _, v := range all {
		sum += v
	}
	return sum
}

// closeTo compares quantities of which JSON keeps 12 digits.
func closeTo(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-11*math.Abs(want) {
		t.Errorf("%s: the sheet has %v, the room says %v", what, got, want)
	}
}

// finished returns the size that a ring of a cylinder will be in, and its depth: the narrowest level of a bore that has
// been proven, else the size to work to.
func (f jobFile) finished(t *testing.T, s jobsheet.Sheet, i int) bore.Plane {
	c := s.Cylinders[i]
	if c.Proof == nil {
		e := c.Bore.Mean
		e.Value = s.Choice.Cylinders[i].Aim
		return bore.Plane{Mean: e}
	}
	return must(rings.Narrowest(c.Proof.Bore.Planes, bore.RingTravel{Top: f.size("engine.layout.ring_top"), Bottom: f.size("engine.layout.ring_bottom")}))(t)
}

func (f jobFile) rings(t *testing.T, s jobsheet.Sheet) {
	_, usual, err := rings.Rules(f.size("engine.bore"))
	if err != nil {
		t.Fatal(err)
	}
	same(t, "usual gap", s.UsualGap, usual)
	measured := 0
	for i := range s.Cylinders {
		measured += f.of("cylinders", i).count("rings")
	}
	for i, c := range s.Cylinders {
		if len(c.Rings) != f.of("cylinders", i).count("rings") {
			t.Error("not every ring is on the sheet")
		}
		at := f.finished(t, s, i)
		for k, r := range c.Rings {
			own, engine := f.of("cylinders", i).of("rings", k), f.of("engine.rings", k) // in one order
			each := f.row()
			first := own.sure("gap")
			gap := must(rings.Gap{Measured: first, Bore: uncertainty.Estimate{Value: own.size("bore")}}.In(at.Mean))(t)
			if own.text("finished") != "" { // what was measured there says more than what was foretold
				same(t, "gap foretold", r.Foretold, gap)
				gap = own.sure("finished")
			}
			same(t, "ring", []any{r.Ring, r.Bore, r.SetAt}, []any{engine.text("name"), at.Mean, at.Depth})
			same(t, "gap", r.Gap, gap)
			window := engine.window("gap")
			heat := rings.Warm{
				Ring: material.GreyIron(), RingAt: f.at("engine.running.ring").Value, RingWithin: f.at("engine.running.ring").Within,
				Bore: material.GreyIron(), BoreAt: f.at("engine.running.bore").Value, BoreWithin: f.at("engine.running.bore").Within,
			}
			margin := engine.size("hot_gap")
			if margin != 0 {
				window = must(heat.Window(window, at.Mean.Value, margin))(t)
			}
			filing := must(rings.FileTo(gap, window, each))(t)
			same(t, "filing", r.Filing, filing)
			service := must(uncertainty.Judge(gap, units.Limits{Max: engine.size("gap_limit")}, each))(t)
			same(t, "gap in service", []any{r.Service.Verdict, r.Service.Conform, r.Service.Limits}, []any{service.Verdict, service.Conform, service.Limits})

			same(t, "hot gap", r.Hot.Measured, must(heat.HotGap(filing.After(), at.Mean))(t))
			if margin != 0 {
				same(t, "least gap", r.Least, must(heat.Least(at.Mean.Value, margin))(t))
			}
			same(t, "ends apart", []any{r.Hot.Verdict, r.Hot.Conform}, judged(t, r.Hot.Measured, units.Limits{Min: 1}, each))
			if margin != 0 {
				same(t, "hot enough", []any{r.HotEnough.Verdict, r.HotEnough.Conform}, judged(t, r.Hot.Measured, units.Limits{Min: margin}, each))
			}
			if own.text("finished") != "" {
				after := own.sure("finished")
				same(t, "gap as measured", r.Measured.Measured, after)
				same(t, "growth by the gap", r.Grown, must(rings.DiameterChange(first, after))(t))
			}
			if peg := engine.text("peg"); peg != "" {
				ends := rings.Ends{
					Peg: field[units.Angle](engine, "peg"), Gap: filing.After().Value, Play: engine.size("play"), Bore: at.Mean.Value,
				}
				travel := bore.RingTravel{Top: f.layout().RingTop, Bottom: f.layout().RingBottom}
				same(t, "room to the ports", r.Ports, must(ends.Clear(f.layout().Ports, travel))(t))
			}
			if allowed := engine.window("side"); allowed != (units.Limits{}) {
				same(t, "side clearance", []any{r.Side.Verdict, r.Side.Conform}, judged(t, own.sure("side"), allowed, each))
			}
			f.follows(t, s, i, r, engine)
		}
	}
	if measured == 0 {
		t.Error("no ring was measured")
	}
}

func judged(t *testing.T, e uncertainty.Estimate, l units.Limits, r uncertainty.Risk) []any {
	f := must(uncertainty.Judge(e, l, r))(t)
	return []any{f.Verdict, f.Conform}
}

// follows holds the form of the worst plane against a ring whose section is given.
func (f jobFile) follows(t *testing.T, s jobsheet.Sheet, i int, r jobsheet.RingSheet, engine jobFile) {
	proof := s.Cylinders[i].Proof
	if engine.text("free_gap") == "" || proof == nil {
		return
	}
	section := rings.Section{
		Bore: f.size("engine.bore"), Thickness: engine.size("thickness"), Height: engine.size("height"), Young: material.GreyIron().Young,
	}
	tension := must(section.Tension(engine.size("free_gap"), r.Gap.Value))(t)
	worst, _ := proof.Bore.At(proof.Bore.OvalityAt)
	same(t, "conformity", r.Follows, must(tension.Follow(worst.Harmonics()))(t))
}

func (f jobFile) want() hone.Want {
	w := hone.Want{Crosshatch: field[hone.Crosshatch](f, "tools.crosshatch"), Tolerance: field[units.Angle](f, "tools.tolerance")}
	if w.Tolerance == 0 {
		w.Tolerance = 5 * units.Degree
	}
	return w
}

func (f jobFile) hone(t *testing.T, s jobsheet.Sheet) {
	h := s.Honing
	run := hone.Run{
		Kind: field[hone.Kind](f, "tools.hone"), Depth: f.size("engine.layout.length"), Tool: f.size("tools.tool_length"),
		RoomTop: f.size("tools.room_top"), RoomBottom: f.size("tools.room_bottom"),
	}
	for _, p := range f.layout().Ports {
		run.Ports = append(run.Ports, units.Limits{Min: p.From, Max: p.To})
	}
	travel := must(hone.UsualTravel(run))(t)
	if top := f.size("tools.overtravel_top"); top != 0 {
		travel = must(run.Travel(top, f.size("tools.overtravel_bottom")))(t)
	}
	same(t, "travel", h.Travel, travel)
	stroke := must(travel.Stroke())(t)
	same(t, "stroke", h.Now.Stroke, stroke)
	d := f.finished(t, s, 0).Mean.Value
	same(t, "bore honed", h.Now.Bore, d)

	spindle, stroking := field[hone.SpindleRange](f, "tools.spindle"), field[hone.StrokingRange](f, "tools.stroking")
	drive := field[hone.Drive](f, "tools.drive")
	reach := must(hone.OnHand{Bore: d, Stroke: stroke, Spindle: spindle, Stroking: stroking, Drive: drive}.SettingFor(f.want()))(t)
	same(t, "reach", h.Reach, reach)
	used := reach.Best
	if f.text("tools.spindle_now") != "" {
		now := hone.Setting{Bore: d, Stroke: stroke, Spindle: f.turns("tools.spindle_now"), Stroking: field[hone.Stroking](f, "tools.stroking_now")}
		same(t, "setting", h.Now, now)
		leaves := must(now.Crosshatch())(t)
		same(t, "crosshatch left", h.Leaves, leaves)
		if f.want().Judge(leaves, 0) == uncertainty.Within {
			used = now
		}
		same(t, "cautions of the setting", append([]hone.Caution{}, h.Cautions...), append([]hone.Caution{}, must(now.Cautions(drive))(t)...))
	}
	same(t, "setting worked out", h.Used, used)
	const points = 33
	// From here the setting is that of the sheet's JSON, which keeps 12 digits.
	wall := must(h.Used.Profile(hone.Crank(), travel, f.want(), points))(t)
	closeTo(t, "least angle", float64(h.Wall.Min), float64(wall.Min))
	closeTo(t, "greatest angle", float64(h.Wall.Max), float64(wall.Max))
	closeTo(t, "mean angle", float64(h.Wall.Mean), float64(wall.Mean))
	_, lines, err := h.Used.CountLines(hone.Crank(), travel, must(hone.Included(30*units.Degree))(t))
	if err != nil {
		t.Fatal(err)
	}
	closeTo(t, "mean of the lines as counted", float64(h.Flat.Mean), float64(lines.Mean))
	closeTo(t, "flat lines", h.Flat.Flat, lines.Flat)
	same(t, "turning round", []units.Length{h.Wall.ReversalTop, h.Wall.ReversalBottom}, []units.Length{wall.ReversalTop, wall.ReversalBottom})
	if pressing := f.text("tools.pressing"); pressing != "" && f.size("engine.honing_allowance") != 0 {
		r := must(h.Used.Removal(hone.Crank(), travel, field[hone.Pressing](f, "tools.pressing"), f.size("engine.honing_allowance"), points))(t)
		r.Points = nil
		same(t, "removal", h.Removal, r)
	}
	var phases []hone.Phase
	for k := range f.count("tools.phases") {
		p := f.of("tools.phases", k)
		phases = append(phases, hone.Phase{
			Setting: hone.Setting{Bore: d, Stroke: stroke, Spindle: p.turns("spindle"), Stroking: field[hone.Stroking](p, "stroking")},
			Stock:   p.size("radial_stock"), Groove: p.size("groove"),
		})
	}
	if len(phases) > 0 {
		same(t, "traces", h.Traces, must(hone.Traces(phases))(t))
	}
}

// passes: each honed size is what the gauge shows, brought to 20 °C as a reading of the survey is.
func (f jobFile) passes(t *testing.T, s jobsheet.Sheet) {
	for i, c := range s.Cylinders {
		own := f.of("cylinders", i)
		if !own.has("honing") {
			continue
		}
		read := func(diameter units.Length, at units.Temperature) hone.Reading {
			g := f.gauge("gauge")
			g.PartAt.Value = at
			one := must(bore.Analyse([]bore.Reading{{Diameter: diameter}}, g))(t).Largest.Size
			return hone.Reading{Diameter: uncertainty.Estimate{Value: one.Value, Std: c.Bore.Largest.Size.Std}, At: units.ReferenceTemperature}
		}
		z := hone.Sizing{
			Metal: material.GreyIron(), Finish: s.Choice.Cylinders[i].Finish,
			Risk:  0.05 / float64(len(s.Cylinders)), // of the engine
			Start: read(own.of("honing", 0).size("diameter"), field[units.Temperature](own.of("honing", 0), "at")),
			Trial: f.lasts("tools.trial_pass"), Longest: f.lasts("tools.longest_pass"),
		}
		for k := 1; k < own.count("honing"); k++ {
			p := own.of("honing", k)
			z.Passes = append(z.Passes, hone.Pass{Lasts: p.lasts("lasts"), After: read(p.size("diameter"), field[units.Temperature](p, "at"))})
		}
		same(t, "next pass", c.Pass, must(z.Next())(t))
	}
}
