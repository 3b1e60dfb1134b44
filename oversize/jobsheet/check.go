// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// What a job may hold at most, and how far its numbers may lie apart before a slip of the pen
// is likelier than the engine. Each is a check of sense, not a limit of any maker's.
const (
	maxCylinders = 64
	maxReadings  = 1000                 // of one cylinder
	maxRings     = 12                   // of one piston
	maxOversizes = 64                   //
	maxPhases    = 12                   // of honing
	maxPorts     = 64                   //
	largestBore  = 1 * units.Metre      // an inch taken for a millimetre, or the reverse, is caught by nearBore
	largestDepth = 5 * units.Metre      //
	nearBore     = 10                   // sizes lie within this many per cent of the nominal bore
	smallShare   = 5                    // ovality, clearance and the like are below this many per cent of it
	coarsest     = units.Millimetre / 2 // no gauge that decides on a bore reads coarser
)

// A checker collects faults by path, and holds its tongue about what is already found at fault.
type checker struct {
	faults  Faults
	faulted map[string]bool
}

// fault notes a fault unless the place, or what it stands in, has one already.
func (c *checker) fault(path, value, want string, args ...any) {
	for p := path; ; {
		if c.faulted[p] {
			return
		}
		i := strings.LastIndexAny(p, ".[")
		if i < 0 {
			break
		}
		p = p[:i]
	}
	c.faulted[path] = true
	c.faults.add(path, value, want, args...)
}

// texts checks every text of the job, wherever it stands: a job may come from elsewhere than a file.
func (c *checker) texts(path string, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		if why := notPlain(v.String()); why != "" {
			c.fault(path, quote(shorten(v.String())), "%s", why)
		}
	case reflect.Slice:
		for i := range v.Len() {
			c.texts(fmt.Sprintf("%s[%d]", path, i), v.Index(i))
		}
	case reflect.Struct:
		names := fieldNames(v.Type())
		for i, name := range names {
			if name != "" { // the others are quantities
				c.texts(join(path, name), v.Field(i))
			}
		}
	}
}

// length checks a length that may be left out: it must be above zero and at most most.
func (c *checker) length(path string, l, most units.Length) {
	if l < 0 || l > most {
		c.fault(path, quote(l.String()), "want above 0, up to %v", most)
	}
}

// needed checks a length that may not be left out. It reports whether there is a sound one.
func (c *checker) needed(path string, l, most units.Length) bool {
	if l == 0 {
		c.fault(path, "", "missing or zero: want a length above 0, up to %v", most)
		return false
	}
	c.length(path, l, most)
	return l > 0 && l <= most
}

// near checks a size that may be left out against the nominal bore.
func (c *checker) near(path string, l, nominal units.Length) {
	if l == 0 || nominal <= 0 {
		return
	}
	if (l - nominal).Abs() > nominal/100*nearBore {
		c.fault(path, quote(l.String()), "more than %d %% from the nominal bore %v: is the unit right?", nearBore, nominal)
	}
}

// small checks a difference of sizes that may be left out against the nominal bore.
func (c *checker) small(path string, l, nominal units.Length) {
	most := nominal / 100 * smallShare
	if nominal > 0 && (l < 0 || l > most) {
		c.fault(path, quote(l.String()), "want 0 to %v, %d %% of the nominal bore", most, smallShare)
	}
}

// window checks limits of which both ends are wanted where any is given.
func (c *checker) window(path string, w units.Limits) bool {
	if w.IsZero() {
		return false
	}
	if !w.HasMin() || !w.HasMax() || w.Min < 0 || w.Max < w.Min {
		c.fault(path, quote(w.String()), `want both ends, the smaller first, such as "0.040 to 0.065 mm"`)
		return false
	}
	return true
}

// share checks a number from 0 to most.
func (c *checker) share(path string, x, most float64) {
	if !(x >= 0 && x <= most) { // NaN too
		c.fault(path, number64(x), "want 0 to %v", most)
	}
}

func number64(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// check returns every fault of the job together with those already found.
func (j Job) check(found Faults) error {
	c := &checker{faults: found, faulted: map[string]bool{}}
	for _, f := range found {
		c.faulted[f.Path] = true
	}
	if c.faulted[""] {
		return c.faults // not an object at all
	}
	switch {
	case j.Version > Version:
		c.fault("version", strconv.Itoa(j.Version), "newer than %d, the newest that is known here", Version)
	case j.Version < 0:
		c.fault("version", strconv.Itoa(j.Version), "want %d, or leave it out", Version)
	}
	c.texts("", reflect.ValueOf(j))
	c.engine(j.Engine)
	c.gauge(j.Gauge)
	c.cylinders(j)
	c.tools(j.Tools)
	c.cuts(j.Cuts, j.Engine)
	c.proof(j)
	c.share("risk.accept", j.Risk.Accept, 0.5)
	c.share("risk.reject", j.Risk.Reject, 0.5)
	return c.faults.err()
}

func (c *checker) engine(e Engine) {
	if e.Cylinders < 1 || e.Cylinders > maxCylinders {
		c.fault("engine.cylinders", strconv.Itoa(e.Cylinders), "want a whole number from 1 to %d", maxCylinders)
	}
	if e.Cycle == CycleNotGiven {
		c.fault("engine.cycle", "", "missing: want two-stroke or four-stroke")
	}
	if e.Wall == oversize.WallNotGiven {
		c.fault("engine.wall", "", "missing: want %v, %v, %v or %v", oversize.BareIron, oversize.IronSleeve, oversize.Plated, oversize.BareAlSi)
	}
	c.needed("engine.bore", e.Bore, largestBore)
	c.needed("engine.stroke", e.Stroke, largestDepth)
	switch v := float64(e.ClearanceVolume); {
	case e.Chamber != (Chamber{}) && (e.ClearanceVolume != 0 || e.CompressionRatio != 0):
		c.fault("engine.chamber", "", "want this, clearance_volume or compression_ratio, and no two of them")
	case e.ClearanceVolume != 0 && e.CompressionRatio != 0:
		c.fault("engine.compression_ratio", number64(e.CompressionRatio), "want either this or clearance_volume, not both")
	case v < 0 || v > 1:
		c.fault("engine.clearance_volume", quote(e.ClearanceVolume.String()), "want above 0, up to 1 m³")
	case e.CompressionRatio != 0 && !(e.CompressionRatio > 1 && e.CompressionRatio <= 100):
		c.fault("engine.compression_ratio", number64(e.CompressionRatio), "want above 1, up to 100")
	}
	if n := len(e.Layout.Ports); n > maxPorts {
		c.fault("engine.layout.ports", strconv.Itoa(n), "want at most %d", maxPorts)
	} else if err := e.Layout.Validate(); err != nil {
		c.fault("engine.layout", "", "%v", err)
	}
	c.limits(e.Limits, e.Bore)
	c.sleeve(e.Sleeve, e.Bore)
	c.small("engine.honing_allowance", e.HoningAllowance, e.Bore)
	c.near("engine.gasket_hole", e.GasketHole, e.Bore)
	c.small("engine.may_shift", e.MayShift, e.Bore)
	if len(e.Rings) > maxRings {
		c.fault("engine.rings", strconv.Itoa(len(e.Rings)), "want at most %d", maxRings)
	}
	seen := map[string]bool{}
	for i, r := range e.Rings {
		path := fmt.Sprintf("engine.rings[%d]", i)
		c.name(path+".name", r.Name, seen)
		c.window(path+".gap", r.Gap)
		c.small(path+".gap", r.Gap.Max, e.Bore)
		c.small(path+".gap_limit", r.GapLimit, e.Bore)
		c.small(path+".hot_gap", r.HotGap, e.Bore)
		c.small(path+".play", r.Play, e.Bore)
		for _, l := range []struct {
			path string
			size units.Length
		}{{"thickness", r.Thickness}, {"height", r.Height}, {"free_gap", r.FreeGap}} {
			c.length(path+"."+l.path, l.size, max(e.Bore, 0))
		}
		if r.GapLimit > 0 && r.GapLimit < r.Gap.Max {
			c.fault(path+".gap_limit", quote(r.GapLimit.String()), "want at least the upper end of gap, %v", r.Gap.Max)
		}
	}
	if len(e.Oversizes) > maxOversizes {
		c.fault("engine.oversizes", strconv.Itoa(len(e.Oversizes)), "want at most %d", maxOversizes)
	}
	for i, o := range e.Oversizes {
		path := fmt.Sprintf("engine.oversizes[%d]", i)
		if c.needed(path+".over", o.Over, units.MaxLength) {
			c.small(path+".over", o.Over, e.Bore)
			if i > 0 && o.Over <= e.Oversizes[i-1].Over {
				c.fault(path+".over", quote(o.Over.String()), "want more than the size before it, %v", e.Oversizes[i-1].Over)
			}
		}
		c.piston(path+".piston", o.Piston, e.Bore)
		if len(o.Pistons) > maxCylinders {
			c.fault(path+".pistons", strconv.Itoa(len(o.Pistons)), "want at most %d", maxCylinders)
			continue
		}
		if n := len(o.Pistons); n > 0 && n < e.Cylinders {
			c.fault(path+".pistons", strconv.Itoa(n), "want one for each of the %d cylinders, or more", e.Cylinders)
		}
		for k, p := range o.Pistons {
			path := fmt.Sprintf("%s.pistons[%d]", path, k)
			if p == (Piston{}) {
				c.fault(path+".size", "", "missing: want the skirt's diameter")
			}
			c.piston(path, p, e.Bore)
		}
	}
}

func (c *checker) sleeve(v Sleeve, nominal units.Length) {
	if v == (Sleeve{}) {
		return
	}
	const path = "engine.sleeve."
	c.needed(path+"bore", v.Bore, largestBore)
	c.needed(path+"seat", v.Seat, largestBore)
	if !c.window(path+"outer", v.Outer) && v.Outer.IsZero() {
		c.fault(path+"outer", "", "missing: want the outside of the barrel, roots of the fins to their tips")
	}
	classes := v.Hole != sleeve.Class{} || v.Shaft != sleeve.Class{}
	switch {
	case v.Interference.IsZero() && !classes:
		c.fault(path+"interference", "", "missing: want the DIAMETRAL interference, or hole and shaft")
	case !v.Interference.IsZero() && classes:
		c.fault(path+"interference", quote(v.Interference.String()), "want either this or hole and shaft, not both")
	case !v.Interference.IsZero():
		if c.window(path+"interference", v.Interference) {
			c.small(path+"interference", v.Interference.Max, nominal)
		}
	}
	c.small(path+"slip", v.Slip, nominal)
	c.near(path+"finish", v.Finish, nominal)
}

func (c *checker) limits(l Limits, nominal units.Length) {
	const path = "engine.limits."
	if c.window(path+"new_bore", l.NewBore) {
		c.near(path+"new_bore", l.NewBore.Min, nominal)
		c.near(path+"new_bore", l.NewBore.Max, nominal)
	}
	c.near(path+"service", l.Service, nominal)
	if l.Service > 0 && l.Service < l.NewBore.Max {
		c.fault(path+"service", quote(l.Service.String()), "want at least the upper end of new_bore, %v", l.NewBore.Max)
	}
	c.small(path+"ovality", l.Ovality, nominal)
	c.small(path+"taper", l.Taper, nominal)
	c.small(path+"greatest_less_least", l.GreatestLessLeast, nominal)
	if c.window(path+"piston_clearance", l.PistonClearance) {
		c.small(path+"piston_clearance", l.PistonClearance.Max, nominal)
	}
	c.small(path+"worn_clearance", l.WornClearance, nominal)
	if l.WornClearance > 0 && l.WornClearance < l.PistonClearance.Max {
		c.fault(path+"worn_clearance", quote(l.WornClearance.String()), "want at least the upper end of piston_clearance, %v", l.PistonClearance.Max)
	}
	c.small(path+"greatest_overbore", l.GreatestOverbore, nominal)
	c.length(path+"least_wall", l.LeastWall, largestBore)
	c.small(path+"finish_ovality", l.FinishOvality, nominal)
	c.small(path+"finish_taper", l.FinishTaper, nominal)
}

// name checks a name that must be there, and be the only one.
func (c *checker) name(path, name string, seen map[string]bool) {
	switch {
	case name == "":
		c.fault(path, "", "missing: want a name")
	case seen[name]:
		c.fault(path, quote(name), "another one has this name")
	}
	seen[name] = true
}

func (c *checker) piston(path string, p Piston, nominal units.Length) {
	if p == (Piston{}) {
		return
	}
	if p.Size == 0 {
		c.fault(path+".size", "", "missing: want the skirt's diameter")
	}
	c.near(path+".size", p.Size, nominal)
	c.small(path+".uncertainty", p.Uncertainty, nominal)
	c.length(path+".height", p.Height, largestDepth)
	c.length(path+".maker_height", p.MakerHeight, largestDepth)
	c.small(path+".coating", p.Coating, nominal)
}

// missingTemperature says how a temperature may be written.
const missingTemperature = `missing: write it, "21 °C" or "21 ± 1 °C", or where nobody measured it the range it must have been in, "10 to 25 °C"`

func (c *checker) gauge(g Gauge) {
	c.needed("gauge.resolution", g.Resolution, coarsest)
	c.length("gauge.repeatability", g.Repeatability, coarsest)
	c.length("gauge.dial_error", g.DialError, coarsest)
	c.temperatures("gauge.temperatures", g.Temperatures, g.Standard != Standard{})
	c.standard("gauge.standard", g.Standard)
}

func (c *checker) temperatures(path string, t Temperatures, set bool) {
	for _, at := range []struct {
		path   string
		given  bool
		needed bool
	}{
		{"standard", t.Standard != bore.Temperature{}, set},
		{"gauge_set", t.GaugeSet != bore.Temperature{}, set},
		{"gauge_used", t.GaugeUsed != bore.Temperature{}, true},
		{"cylinder", t.Cylinder != bore.Temperature{}, true},
	} {
		if at.needed && !at.given {
			c.fault(path+"."+at.path, "", missingTemperature)
		}
	}
	if s := float64(t.PlaceToPlace); !(s >= 0 && s <= 100) {
		c.fault(path+".place_to_place", quote(t.PlaceToPlace.String()), "want 0 to 100 K")
	}
}

func (c *checker) standard(path string, s Standard) {
	if s != (Standard{}) {
		c.needed(path+".size", s.Size, largestBore)
		c.length(path+".uncertainty", s.Uncertainty, coarsest)
	}
}

// proof checks what goes with the readings of the finished bores, and that survey and proof were
// taken in their order and in the same way.
func (c *checker) proof(j Job) {
	p := j.Proof
	if j.proven() {
		c.temperatures("proof.temperatures", p.Temperatures, j.proofGauge().Standard != Standard{})
	}
	c.standard("proof.standard", p.Standard)
	for _, order := range []struct {
		path         string
		later, first Moment
		want         string
	}{
		{"gauge.set_on", j.Survey.On, j.Gauge.SetOn, "the gauge was set after it was used, on %v"},
		{"proof.set_on", p.On, p.SetOn, "the gauge was set after it was used, on %v"},
	} {
		if order.later.before(order.first) {
			c.fault(order.path, quote(order.first.String()), order.want, order.later)
		}
	}
	if p.On.before(j.Survey.On) {
		c.fault("proof.on", quote(p.On.String()), "before the survey, on %v", j.Survey.On)
	}
	if a, b := j.Survey.Clamping, p.Clamping; a != ClampingNotSaid && b != ClampingNotSaid && a != b {
		c.fault("proof.clamping", quote(b.String()), "the survey was read %v: read both the same way, or they cannot be compared", a)
	}
}

func (c *checker) cuts(b Cuts, e Engine) {
	if b == (Cuts{}) {
		return
	}
	if e.Wall == oversize.Plated || e.Wall == oversize.BareAlSi {
		c.fault("cuts", "", "a %v wall is never bored here: leave it out", e.Wall)
		return
	}
	nominal := e.Bore
	for _, l := range []struct {
		path string
		size units.Length
	}{{"most_depth", b.MostDepth}, {"finish_bore", b.FinishBore}, {"finish_hone", b.FinishHone}, {"plateau", b.Plateau}, {"feed", b.Feed},
		{"locating", b.Locating}, {"out_of_square", b.OutOfSquare}, {"surface", b.Surface}} {
		c.small("cuts."+l.path, l.size, nominal)
	}
	c.length("cuts.length", b.Length, largestDepth)
	c.rate("cuts.spindle", b.Spindle)
}

// rate checks a speed of turning that may be left out.
func (c *checker) rate(path string, f units.Frequency) {
	const most = 100_000 * units.PerMinute
	if f != 0 && !(f > 0 && f <= most) { // NaN too
		c.fault(path, quote(f.String()), "want above 0, up to %v", most)
	}
}

func (c *checker) tools(t Tools) {
	for _, l := range []struct {
		path string
		size units.Length
	}{
		{"tool_length", t.ToolLength},
		{"line_width", t.LineWidth},
		{"track", t.Track},
		{"stroke", t.Stroke},
		{"room_top", t.RoomTop},
		{"room_bottom", t.RoomBottom},
		{"overtravel_top", t.OvertravelTop},
		{"overtravel_bottom", t.OvertravelBottom},
	} {
		c.length("tools."+l.path, l.size, largestDepth)
	}
	for _, end := range []struct {
		path      string
		out, room units.Length
	}{{"top", t.OvertravelTop, t.RoomTop}, {"bottom", t.OvertravelBottom, t.RoomBottom}} {
		if end.out > end.room {
			c.fault("tools.overtravel_"+end.path, quote(end.out.String()), "want at most tools.room_%s, %v", end.path, end.room)
		}
	}
	for _, d := range []struct {
		path  string
		lasts Duration
	}{{"trial_pass", t.TrialPass}, {"longest_pass", t.LongestPass}} {
		if d.lasts.Duration < 0 {
			c.fault("tools."+d.path, quote(d.lasts.String()), "want above 0")
		}
	}
	if t.Grit < 0 || t.Grit > 5000 {
		c.fault("tools.grit", strconv.Itoa(t.Grit), "want a whole number up to 5000")
	}
	if t.Lines < 0 || t.Lines > 1000 {
		c.fault("tools.lines", strconv.Itoa(t.Lines), "want a whole number up to 1000")
	}
	if len(t.Phases) > maxPhases {
		c.fault("tools.phases", strconv.Itoa(len(t.Phases)), "want at most %d", maxPhases)
	} else {
		for i, p := range t.Phases {
			path := fmt.Sprintf("tools.phases[%d]", i)
			c.rate(path+".spindle", p.Spindle)
			c.needed(path+".radial_stock", p.RadialStock, coarsest)
			c.length(path+".groove", p.Groove, coarsest)
		}
	}
	c.rate("tools.spindle_now", t.SpindleNow)
	for _, v := range []struct {
		path  string
		text  string
		given bool
		err   error
	}{
		{"spindle", t.Spindle.String(), !t.Spindle.IsZero(), t.Spindle.Validate()},
		{"stroking", t.Stroking.String(), !t.Stroking.IsZero(), t.Stroking.Validate()},
		{"stroking_now", t.StrokingNow.String(), !t.StrokingNow.IsZero(), t.StrokingNow.Validate()},
	} {
		if v.given && v.err != nil {
			c.fault("tools."+v.path, quote(v.text), "%v", v.err)
		}
	}
	if a := float64(t.Tolerance); math.IsNaN(a) || a < 0 || a > float64(90*units.Degree) {
		c.fault("tools.tolerance", quote(t.Tolerance.String()), "want 0 to 90°")
	}
}
