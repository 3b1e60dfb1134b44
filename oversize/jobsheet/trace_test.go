// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/oversize/sleeve"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A section is the beginning of a title in the text, and the parts of the JSON that it may print. An i
// stands for the cylinder whose heading comes before, a * for any.
type section struct {
	title string
	paths []string
}

var sections = []section{
	{"JOB SHEET", []string{
		"job.engine.bore", "job.engine.stroke", "job.engine.cylinders", "job.engine.limits", "job.gauge.standard", "choice", "ledger.*.finding",
		"honing", "job.tools.crosshatch", "cylinders.*.rings.*.filing", "ledger.*.price", "cylinders.*.pass", "cylinders.*.dial",
		"sleeve.joint.seat", "sleeve.bored", "sleeve.holding",
	}},
	{"BEFORE MEASURING", []string{"to_read"}},
	{"SIZES", []string{"job.gauge", "cylinders.i.bore", "cylinders.i.form", "cylinders.i.coarse", "cylinders.i.feeler_taper"}},
	{"FINDINGS", []string{"cylinders.*.findings", "cylinders.*.remedies", "choice.risk"}},
	{"ROUTE", []string{"choice", "cylinders.*.clean_up", "cylinders.*.findings"}},
	{"FINISH", []string{"choice.cylinders", "cylinders.*.stock", "cylinders.*.warm", "job.engine.honing_allowance", "job.cuts.warm", "sleeve.bored"}},
	{"SLEEVE", []string{"sleeve", "choice.cylinders", "ledger.*.finding", "cylinders.*.seat"}},
	{"HONING", []string{"honing", "cylinders.*.pass", "cylinders.*.skirts", "job.tools.phases", "job.engine.limits"}},
	{"PISTONS", []string{"cylinders.*.clearances", "cylinders.*.kept_clearances", "job.engine.limits.piston_clearance", "usual_clearance", "matched", "ledger.*.finding"}},
	{"RING GAPS", []string{"cylinders.*.rings", "job.engine.bore", "job.engine.rings", "usual_gap"}},
	{"DISPLACEMENT", []string{"before", "after", "cylinders.*.before", "cylinders.*.after"}},
	{"PROOF", []string{"choice.cylinders", "job.gauge", "job.proof", "cylinders.i.proof", "cylinders.i.texture", "cylinders.i.profiles", "cylinders.i.skirts", "job.cylinders.i.crosshatch", "job.tools", "cylinders.i.rings", "cylinders.i.bore", "ledger"}},
	{"WHAT MUST BE TRUE", []string{"ledger"}},
	{"GOING", nil},
	{"RECORD", []string{"job.gauge", "job.proof", "cylinders.*.bore", "cylinders.*.proof", "job.cylinders.*.crosshatch", "cylinders.*.rings", "ledger.*.finding"}},
	{"TAKEN", nil},
	{"CAUTIONS", nil},
}

// facts are the quantities of a part of a sheet's JSON.
type facts struct {
	lengths []units.Length
	sure    []uncertainty.Estimate // with their expanded uncertainty in place of the standard one
	windows []units.Limits
	others  map[string][]float64 // by what is printed behind them
}

func (f *facts) add(unit string, x ...float64) { f.others[unit] = append(f.others[unit], x...) }

// take adds what stands in a JSON value under a key.
func (f *facts) take(t testing.TB, key string, v any) {
	switch v := v.(type) {
	case map[string]any:
		if _, ok := v["value"].(string); ok {
			var e uncertainty.Estimate
			again(t, v, &e)
			u, err := e.Expanded(0.95)
			if err != nil {
				t.Fatal(err)
			}
			f.lengths = append(f.lengths, e.Value)
			f.sure = append(f.sure, uncertainty.Estimate{Value: e.Value, Std: u})
			return
		}
		if _, ok := v["hand"]; ok { // what the text asks a Reach for
			var r hone.Found
			again(t, v, &r)
			if n, ok := r.SpindlesAt(r.Best.Stroking); ok {
				f.add("rev/min", n.Min.In(units.PerMinute), n.Max.In(units.PerMinute))
			}
			cycles := math.Round(r.Best.Stroking.Cycles().In(units.PerMinute)) // as the front page has them, to be set
			if n, ok := r.SpindlesAt(hone.Cycles(units.Frequency(cycles * float64(units.PerMinute)))); ok {
				least, most := math.Ceil(n.Min.In(units.PerMinute)), math.Floor(n.Max.In(units.PerMinute))
				f.add("rev/min", least, most)
				f.add("strokes", 2*cycles)
			}
		}
		if reach, ok := v["reach"].(map[string]any); ok { // that of a certificate is a length
			var r hone.Found
			var now hone.Setting
			again(t, reach, &r)
			again(t, v["now"], &now)
			if k, ok := r.StrokingsAt(now.Spindle); ok {
				f.stroking(k.Min)
				f.stroking(k.Max)
			}
		}
		if _, ok := v["kind"]; ok && v["before"] != nil { // the stock is that between the sizes as printed
			var o oversize.Operation
			again(t, v, &o)
			for _, step := range []units.Length{units.Micrometre, units.Inch / 10000} {
				f.lengths = append(f.lengths, o.After.Round(step)-o.Before.Round(step))
			}
			v = maps.Clone(v)
			delete(v, "stock")
		}
		if filing, ok := v["filing"]; ok { // the gap once it is filed
			var r rings.Filing
			again(t, filing, &r)
			f.take(t, "", decoded(t, r.After()))
		}
		for k, x := range v {
			if k != "radii" && k != "circle" && k != "locals" && k != "own" { // drawings and differences alone show them
				f.take(t, k, x)
			}
		}
	case []any:
		for i, x := range v {
			f.take(t, key, x)
			f.add("", float64(i+1)) // its number, where the text counts
		}
	case float64:
		if strings.HasSuffix(key, "_ns") {
			f.add("min", v/float64(time.Minute))
			f.add("s", v/float64(time.Second))
			return
		}
		f.add("", v)
		f.add("strokes", v)
		if key == "piston" { // the text counts from 1
			f.add("", v+1)
		}
		f.add("%", 100*v)
		if key == "accept" || key == "reject" { // of a hundred
			f.add("", 100*v)
		}
		f.add(": 1", v)
	case string:
		f.text(v)
	}
}

// decoded returns a value as its JSON is read.
func decoded(t testing.TB, v any) (tree any) {
	t.Helper()
	again(t, v, &tree)
	return tree
}

// again decodes a JSON value once more, into p.
func again(t testing.TB, v, p any) {
	t.Helper()
	b, err := json.Marshal(v)
	if err == nil {
		err = json.Unmarshal(b, p)
	}
	if err != nil {
		t.Fatal(err)
	}
}

func (f *facts) stroking(k hone.Stroking) {
	f.add("cycles/min", k.Cycles().In(units.PerMinute))
	f.add("strokes", k.Strokes().In(units.PerMinute))
}

// text adds the quantity that a text is, if it is one.
func (f *facts) text(s string) {
	var k hone.Stroking
	var c hone.Crosshatch
	var m jobsheet.Measured
	var v units.Volume
	var p units.Pressure
	var push units.Force
	if strings.Contains(s, "±") && m.UnmarshalText([]byte(s)) == nil {
		f.lengths = append(f.lengths, m.Value)
		f.sure = append(f.sure, uncertainty.Estimate{Value: m.Value, Std: m.Expanded})
	} else if l, err := units.ParseLength(s); err == nil {
		f.lengths = append(f.lengths, l)
	} else if w, err := units.ParseLimits(s); err == nil {
		f.windows = append(f.windows, w)
		f.lengths = append(f.lengths, w.Min, w.Max)
	} else if k.UnmarshalText([]byte(s)) == nil {
		f.stroking(k)
	} else if n, err := units.ParseFrequency(s); err == nil {
		f.add("rev/min", n.In(units.PerMinute))
	} else if c.UnmarshalText([]byte(s)) == nil {
		f.add("°", c.Included().In(units.Degree), c.FromSquare().In(units.Degree))
	} else if a, err := units.ParseAngle(s); err == nil {
		f.add("°", a.In(units.Degree))
	} else if at, err := units.ParseTemperature(s); err == nil {
		f.add("°C", at.Celsius())
		f.add("°F", at.Fahrenheit())
	} else if at, err := bore.ParseTemperature(s); err == nil {
		f.add("°C", at.Value.Celsius(), float64(at.Within))
		f.add("°F", at.Value.Fahrenheit(), 1.8*float64(at.Within))
	} else if v.UnmarshalText([]byte(s)) == nil {
		f.add("cm³", v.In(units.CubicCentimetre))
		f.add("in³", v.In(units.CubicInch))
	} else if p.UnmarshalText([]byte(s)) == nil {
		f.add("MPa", p.In(units.Megapascal))
		f.add("psi", p.In(units.PoundPerSquareInch))
	} else if push.UnmarshalText([]byte(s)) == nil {
		f.add("kN", push.In(1000*units.Newton))
		f.add("lbf", push.In(units.PoundForce))
	}
}

// pick returns what stands at a path of a JSON tree.
func pick(v any, path string) []any {
	if path == "" {
		return []any{v}
	}
	first, rest, _ := strings.Cut(path, ".")
	switch v := v.(type) {
	case map[string]any:
		if x, ok := v[first]; ok {
			return pick(x, rest)
		}
	case []any:
		if i, err := strconv.Atoi(first); err == nil {
			return pick(v[i], rest)
		}
		var all []any
		for _, x := range v {
			all = append(all, pick(x, rest)...)
		}
		return all
	}
	return nil
}

// A claim is what a text prints of a quantity, and where.
type claim struct {
	where, quote string
	kind         string   // how the numbers stand, as the keys of forms
	numbers      []string // as printed
	unit         string
	facts        *facts
}

const number = `([+-]?\d+(?:\.\d+)?)`

// forms are the ways in which the text prints quantities; of several that fit, the first.
var forms = []struct{ kind, pattern string }{
	{"at most", `uncertainty ` + number + ` (mm|in) or less`},
	{"estimate", number + ` ± ` + number + ` (mm|in|µm)\b`},
	{"both", number + `° ± ` + number + `(°)`},
	{"both", number + ` ± ` + number + ` (°C|°F)`},
	{"window", number + ` to ` + number + ` (mm|in|µm)\b`},
	{"both", number + ` to ` + number + ` (MPa|psi|kN|lbf)`},
	{"most", `max ` + number + ` (mm|in|µm)\b`},
	{"least", `min ` + number + ` (mm|in|µm)\b`},
	{"bare window", number + ` to ` + number + `()`},
	{"bare most", `max ` + number + `()`},
	{"bare least", `min ` + number + `()`},
	{"lasts", `\b((?:\d+h)?(?:\d+m)?\d+(?:\.\d+)?s)()\b`},
	{"under", `< ` + number + ` (%)`},
	{"over", `> ` + number + ` (%)`},
	{"one", number + ` ?(in³|cm³|mm\b|µm\b|in\b|rev/min|cycles/min|strokes|min\b|°C|°F|°|MPa|psi|kN|lbf|%|: 1)`},
	{"one", number + `()`},
}

var everyForm, eachForm = func() (*regexp.Regexp, []*regexp.Regexp) {
	var all []string
	var each []*regexp.Regexp
	for _, f := range forms {
		all = append(all, f.pattern)
		each = append(each, regexp.MustCompile(`^(?:`+f.pattern+`)$`))
	}
	return regexp.MustCompile(strings.Join(all, "|")), each
}()

// A part of the text of a sheet: a section, or what it says of one cylinder.
type part struct {
	title    string
	cylinder int // whose heading comes before; -1 for none
	text     string
}

var (
	heading  = regexp.MustCompile(`^\d+  ([A-Z].*)`)
	cylinder = regexp.MustCompile(`^  Cylinder (.*?)(: to be read)?$`)
	moment   = regexp.MustCompile(`\d{4}-\d\d-\d\d( \d\d:\d\d)?|\b\d(?:st|nd|rd|th)\b`) // and what comes first, second
)

// parts cuts a text at the headings of sections and of cylinders.
func parts(text string, names []string) []part {
	list := []part{{title: sections[0].title, cylinder: -1}}
	for line := range strings.Lines(text) {
		line = strings.TrimSuffix(line, "\n")
		last := list[len(list)-1]
		if m := heading.FindStringSubmatch(line); m != nil {
			list, line = append(list, part{title: m[1], cylinder: -1}), m[1]
		} else if m := cylinder.FindStringSubmatch(line); m != nil && slices.Contains(names, m[1]) {
			list = append(list, part{title: last.title, cylinder: slices.Index(names, m[1])})
		}
		list[len(list)-1].text += line + "\n"
	}
	return list
}

// factsOf returns the quantities of the JSON that a part of the text is about, and where they stand.
func factsOf(t testing.TB, tree map[string]any, p part) (*facts, string) {
	t.Helper()
	f := &facts{others: map[string][]float64{}}
	f.lengths = append(f.lengths, 0) // zeros are left out of JSON
	for _, unit := range []string{"°", "MPa", "psi", "kN", "lbf", "%"} {
		f.add(unit, 0)
	}
	for _, name := range pick(tree, "job.cylinders.*.name") {
		if n, err := strconv.ParseFloat(name.(string), 64); err == nil {
			f.add("", n)
		}
	}
	i := slices.IndexFunc(sections, func(s section) bool { return strings.HasPrefix(p.title, s.title) })
	if i < 0 {
		t.Fatalf("section %q: say above which part of the JSON it prints", p.title)
	}
	var where []string
	for _, path := range sections[i].paths {
		if strings.Contains(path, ".i.") {
			if p.cylinder < 0 {
				continue
			}
			path = strings.Replace(path, ".i.", fmt.Sprintf(".%d.", p.cylinder), 1)
		}
		where = append(where, path)
		for _, v := range pick(tree, path) {
			f.take(t, "", v)
		}
	}
	if sections[i].title == "JOB SHEET" {
		f.front(tree)
	}
	if sections[i].title == "FINISH" { // what is usual is the room's
		f.lengths = append(f.lengths, oversize.UsualHoning().Min, oversize.UsualHoning().Max)
	}
	return f, sections[i].title + ": " + strings.Join(where, ", ")
}

// front adds what the front page says in words of its own: the figures of its table, which stand without their unit,
// which cylinder of the engine each is, and how many rows it does not name.
func (f *facts) front(tree map[string]any) {
	for _, l := range f.lengths {
		f.add("", l.In(units.Millimetre), l.In(units.Inch))
	}
	for i, c := range pick(tree, "job.cylinders.*") {
		n := 0
		for _, row := range pick(tree, "ledger.*") {
			r := row.(map[string]any)
			if r["cylinder"] == c.(map[string]any)["name"] && r["step"] == pick(tree, fmt.Sprintf("cylinders.%d.next", i))[0] && r["reason"] != "to come" {
				n++
			}
		}
		f.add("", float64(i+1), float64(n-4)) // four are named
	}
}

var (
	eachDoubt = regexp.MustCompile(`([Ee])ach (size|ovality)( ± \d\S* (?:mm|in))[,.]`)
	columns   = regexp.MustCompile(`  +`)
	figure    = regexp.MustCompile(`^-?\d+\.\d+$`)
)

// spelled puts the doubt that the line below a table of sizes says of each, behind each.
func spelled(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		doubt := map[string]string{}
		for _, m := range eachDoubt.FindAllStringSubmatch(lines[i], -1) {
			doubt[m[2]] = m[3]
		}
		if len(doubt) == 0 {
			continue
		}
		lines[i] = ""
		for k := i - 1; !strings.HasPrefix(lines[k], "  depth"); k-- {
			cells := columns.Split(strings.TrimSpace(lines[k]), -1)
			for n, cell := range cells {
				what := "size"
				if n == len(cells)-1 {
					what = "ovality"
				}
				if n > 0 && figure.MatchString(cell) {
					cells[n] += doubt[what]
				}
			}
			lines[k] = strings.Join(cells, "  ")
		}
	}
	return strings.Join(lines, "\n")
}

// claims reads every number out of the text of a sheet, but for fixed sentences and what the job calls
// things, each with the facts of the part of the JSON that its section is about.
func claims(t testing.TB, text string, sheet []byte) []claim {
	t.Helper()
	var tree map[string]any
	if err := json.Unmarshal(sheet, &tree); err != nil {
		t.Fatal(err)
	}
	texts := func(paths ...string) (list []string) {
		for _, path := range paths {
			for _, v := range pick(tree, path) {
				list = append(list, unbroken(v.(string)))
			}
		}
		return list
	}
	text = spelled(text)
	cylinders := texts("job.cylinders.*.name")
	var fixed []string
	for _, name := range append(cylinders, texts("job.title", "job.survey.by", "job.proof.by", "job.gauge.standard.name",
		"job.proof.standard.name", "job.engine.rings.*.name", "job.engine.layout.ports.*.name")...) {
		if _, err := strconv.ParseFloat(name, 64); err != nil && strings.ContainsAny(name, "0123456789") {
			fixed = append(fixed, name)
		}
	}
	fixed = append(fixed, texts("checklist.*.says", "cautions.*.says", "omitted.*.on", "omitted.*.says", "unused.*.on", "unused.*.says", "assumed.*.says", "assumed.*.on",
		"ledger.*.says", "ledger.*.give.*", "ledger.*.key")...)
	for bit := range 32 { // what the rooms warn of
		fixed = append(fixed, sleeve.Cautions(1<<bit).Texts()...)
	}
	grits := regexp.MustCompile(`Grit of the last honing: .*? by facing: `) // what sources name, of no job
	for k := hone.Kind(0); k <= hone.RigidStone; k++ {
		for _, c := range k.Cautions() {
			fixed = append(fixed, c.Text)
		}
	}
	for _, rate := range []units.Frequency{1, 1000} { // slow and fast
		cs, err := hone.Setting{Bore: units.Metre / 10, Stroke: units.Metre / 10, Spindle: rate * units.PerMinute, Stroking: hone.Cycles(3 * units.Hertz * rate)}.Cautions(hone.ByHand)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range cs {
			fixed = append(fixed, c.Text)
		}
	}
	// The temperature of every size, what "±" stands for, and which lines are flat.
	fixed = append(fixed, "at 20 °C", "AT 20 °C", "expanded uncertainty, 95 %", "flatter than 30° included", "Of 100 engines")
	for _, class := range texts("job.engine.sleeve.hole", "job.engine.sleeve.shaft") {
		fixed = append(fixed, "to "+class+",")
	}
	slices.SortFunc(fixed, func(a, b string) int { return len(b) - len(a) })
	var list []claim
	for _, p := range parts(text, cylinders) {
		all := grits.ReplaceAllString(moment.ReplaceAllString(unbroken(p.text), "…"), "…")
		for _, s := range fixed {
			if s != "" {
				all = strings.ReplaceAll(all, s, "…")
			}
		}
		f, where := factsOf(t, tree, p)
		for _, quote := range everyForm.FindAllString(all, -1) {
			for i, form := range eachForm {
				if m := form.FindStringSubmatch(quote); m != nil {
					list = append(list, claim{where, quote, forms[i].kind, m[1 : len(m)-1], m[len(m)-1], f})
					break
				}
			}
		}
	}
	return list
}

// holds reports whether a fact of its part of the JSON rounds to what the claim says.
func (c claim) holds() bool {
	switch c.kind {
	case "estimate":
		return slices.ContainsFunc(c.facts.sure, func(e uncertainty.Estimate) bool {
			u, digits := c.length(e.Std), strings.TrimLeft(c.numbers[1], "0.")
			// A doubt of up to ten steps is rounded up, a larger one to two digits, to the nearest.
			up, near := roundsUp(u, c.numbers[1]), rounds(u, c.numbers[1])
			return rounds(c.length(e.Value), c.numbers[0]) && (len(digits) == 1 && up || digits == "10" && (up || near) || len(digits) > 1 && near)
		})
	case "window":
		return slices.ContainsFunc(c.facts.windows, func(w units.Limits) bool {
			return w.HasMin() && w.HasMax() && roundsUp(c.length(w.Min), c.numbers[0]) && roundsUp(-c.length(w.Max), minus(c.numbers[1]))
		})
	case "most":
		return slices.ContainsFunc(c.facts.windows, func(w units.Limits) bool {
			return w.HasMax() && roundsUp(-c.length(w.Max), minus(c.numbers[0]))
		})
	case "least":
		return slices.ContainsFunc(c.facts.windows, func(w units.Limits) bool {
			return w.HasMin() && roundsUp(c.length(w.Min), c.numbers[0])
		})
	case "bare most", "bare least": // printed inward, in one unit or the other
		return slices.ContainsFunc(c.facts.windows, func(w units.Limits) bool {
			for _, unit := range []units.Length{units.Millimetre, units.Inch} {
				if c.kind == "bare most" && w.HasMax() && roundsUp(-w.Max.In(unit), minus(c.numbers[0])) ||
					c.kind == "bare least" && w.HasMin() && roundsUp(w.Min.In(unit), c.numbers[0]) {
					return true
				}
			}
			return false
		})
	case "bare window":
		return slices.ContainsFunc(c.facts.windows, func(w units.Limits) bool {
			for _, unit := range []units.Length{units.Millimetre, units.Inch} {
				if roundsUp(w.Min.In(unit), c.numbers[0]) && roundsUp(-w.Max.In(unit), minus(c.numbers[1])) {
					return true
				}
			}
			return false
		})
	case "at most":
		return slices.ContainsFunc(c.facts.lengths, func(l units.Length) bool { return roundsUp(-c.length(l), minus(c.numbers[0])) })
	case "lasts":
		d, err := time.ParseDuration(c.numbers[0])
		return err == nil && slices.Contains(c.facts.others["s"], d.Seconds())
	case "under":
		return slices.ContainsFunc(c.facts.others[c.unit], func(x float64) bool { return x < parse(c.numbers[0]) })
	case "over":
		return slices.ContainsFunc(c.facts.others[c.unit], func(x float64) bool { return x > parse(c.numbers[0]) })
	}
	for _, printed := range c.numbers {
		round := func(x float64) bool { return rounds(x, printed) }
		if c.unit == "mm" || c.unit == "in" || c.unit == "µm" {
			if !slices.ContainsFunc(c.facts.lengths, func(l units.Length) bool { return round(c.length(l)) }) {
				return false
			}
		} else if !slices.ContainsFunc(c.facts.others[c.unit], round) {
			return false
		}
	}
	return true
}

// length returns a length in the unit of the claim.
func (c claim) length(l units.Length) float64 {
	switch c.unit {
	case "in":
		return l.In(units.Inch)
	case "µm":
		return l.In(units.Micrometre)
	}
	return l.In(units.Millimetre)
}

func parse(printed string) float64 {
	x, err := strconv.ParseFloat(printed, 64)
	if err != nil {
		return math.NaN()
	}
	return x
}

// last is the value of a one in the last place of a number.
func last(printed string) float64 {
	_, decimals, _ := strings.Cut(printed, ".")
	return math.Pow10(-len(decimals))
}

// ulps is what float64 may be wrong by on numbers below a million.
const ulps = 1e-9

// rounds reports whether x rounds to the number as printed, a half either way.
func rounds(x float64, printed string) bool {
	return math.Abs(x-parse(printed)) <= last(printed)/2+ulps
}

// roundsUp reports whether the number as printed is x, or the next one above with as many places.
func roundsUp(x float64, printed string) bool {
	d := parse(printed) - x
	return d >= -ulps && d < last(printed)-ulps
}

func minus(printed string) string { return "-" + printed }

func asPrinted(t testing.TB, s jobsheet.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	if err := s.WriteText(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// unbroken is a text whose lines are not broken, nor its columns apart.
func unbroken(text string) string { return strings.Join(strings.Fields(text), " ") }

// TestEveryNumberIsTraced: every number in the text of each demo job's sheet is a rounding of a value in the
// part of its JSON that the section is about, in each choice of units, and in no other unit.
func TestEveryNumberIsTraced(t *testing.T) {
	for _, file := range demoJobs(t) {
		for _, show := range []jobsheet.Shown{jobsheet.ShownMillimetres, jobsheet.ShownInches, jobsheet.ShownBoth} {
			t.Run(strings.TrimSuffix(filepath.Base(file), ".json")+" "+show.String(), func(t *testing.T) {
				s, _ := demoSheet(t, file)
				s.Job.Units = show
				var b bytes.Buffer
				if err := s.WriteJSON(&b); err != nil {
					t.Fatal(err)
				}
				for _, c := range claims(t, asPrinted(t, s), b.Bytes()) {
					if !c.holds() {
						t.Errorf("%q comes from nothing in %s", c.quote, c.where)
					}
					if show == jobsheet.ShownInches && c.unit == "mm" || show == jobsheet.ShownMillimetres && c.unit == "in" {
						t.Errorf("%q on a sheet in %v", c.quote, show)
					}
				}
			})
		}
	}
}

// altered returns the claim with one of its numbers one more or less in its last place.
func (c claim) altered(i int, by float64) claim {
	_, decimals, _ := strings.Cut(c.numbers[i], ".")
	c.numbers = slices.Clone(c.numbers)
	c.numbers[i] = strconv.FormatFloat(parse(c.numbers[i])+by*last(c.numbers[i]), 'f', len(decimals), 64)
	return c
}

// TestAnInventedNumberIsSeen: the trace finds what comes from nowhere. A number altered by one in its last
// place escapes only where another value of the same part of the sheet happens to be printed so. Sizes are printed to
// a micrometre or a tenth of a thou, where those of one bore stand a few apart, gaps to a hundredth of a millimetre: of a
// bore that was traced, at sixty places, every fourth may be taken.
func TestAnInventedNumberIsSeen(t *testing.T) {
	for _, file := range demoJobs(t) {
		s, sheet := demoSheet(t, file)
		text := spelled(asPrinted(t, s))
		all, escaped, done := 0, 0, false
		for _, c := range claims(t, text, sheet) {
			if c.unit != "mm" && c.unit != "in" {
				continue
			}
			for i := range c.numbers {
				for _, by := range []float64{-1, 1} {
					all++
					if c.altered(i, by).holds() {
						escaped++
					}
				}
			}
			if c.kind != "estimate" || done {
				continue
			}
			done = true
			changed := strings.Replace(text, c.quote, strings.Replace(c.quote, c.numbers[0], c.altered(0, 1).numbers[0], 1), 1)
			if !slices.ContainsFunc(claims(t, changed, sheet), func(c claim) bool { return !c.holds() }) {
				t.Errorf("%s: nobody saw that %q was altered in the text", file, c.quote)
			}
		}
		if all == 0 || 4*escaped > all {
			t.Errorf("%s: %d of %d altered numbers escaped", file, escaped, all)
		}
	}
}
