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
