// SPDX-License-Identifier: BSD-3-Clause

package strictjson_test

import (
	"bytes"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"borewright.example/oversize/jobsheet/internal/strictjson"
)

// A recipe is what the tests read: a loaf, so that no word of any trade gets in.
type recipe struct {
	Name   string  `json:"name,omitzero" want:"given"`
	Loaves int     `json:"loaves,omitzero" want:"few,even"`
	Salt   float64 `json:"salt,omitzero"`
	Rye    bool    `json:"rye,omitzero"`
	Flour  weight  `json:"flour,omitzero" want:"light"`
	Steps  []step  `json:"steps,omitzero"`
	Oven   *oven   `json:"oven,omitzero"`

	Hidden string
	Inner  struct {
		Deep string `json:"deep"`
	}
	Secret string `json:"-"`
}

type step struct {
	Text  string `json:"text"`
	Weigh weight `json:"weigh,omitzero" want:"light"`
}

type oven struct {
	Heat int `json:"heat" want:"few"`
}

// weight is a quantity in grams, a text with its unit.
type weight int64

var (
	errUnit  = errors.New("missing unit")
	errHeavy = errors.New("too heavy")
)

func (w weight) MarshalText() ([]byte, error) { return fmt.Appendf(nil, "%d g", int64(w)), nil }

func (w *weight) UnmarshalText(b []byte) error {
	var grams int64
	if n, err := fmt.Sscanf(string(b), "%d g", &grams); n != 1 || err != nil {
		return fmt.Errorf("weight: %w", errUnit)
	}
	*w = weight(grams)
	return nil
}

func reader() strictjson.Reader {
	return strictjson.Reader{
		MostBytes: 4000, MostDepth: 5, MostText: 20,
		Example: func(encoding.TextUnmarshaler) string { return `"500 g"` },
		Explain: func(err error) string { return "want more sense:\n" + err.Error() },
	}
}

func texts(fs []strictjson.Fault) []string {
	var list []string
	for _, f := range fs {
		list = append(list, f.String())
	}
	return list
}

func TestRead(t *testing.T) {
	const file = `{"name": "rye loaf", "loaves": 2, "salt": 1.5e1, "rye": true, "flour": "500 g",
		"steps": [{"text": "mix"}, {"text": "rest", "weigh": "20 g"}], "oven": {"heat": 230}}`
	want := recipe{Name: "rye loaf", Loaves: 2, Salt: 15, Rye: true, Flour: 500,
		Steps: []step{{Text: "mix"}, {"rest", 20}}, Oven: &oven{230}}
	for name, text := range map[string]string{"plain": file, "with a byte order mark": "\ufeff" + file, "between blanks": " \r\n\t" + file + "\n"} {
		var got recipe
		d := reader().Read([]byte(text), &got)
		if !d.Whole() || d.Faults() != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: %+v, %v", name, got, texts(d.Faults()))
		}
		if all := slices.Collect(d.Texts()); !slices.Equal(all, []string{"rye loaf", "500 g", "mix", "rest", "20 g"}) {
			t.Errorf("%s: texts %q", name, all)
		}
	}
}

// TestFaults: what is wrong is told with its place, the value and what is wanted, all of it at once.
func TestFaults(t *testing.T) {
	const all = "name, loaves, salt, rye, flour, steps, oven"
	for _, c := range []struct {
		name, file string
		want       []string
	}{
		{"nothing", "", []string{"empty: want a JSON object"}},
		{"blanks", " \n ", []string{"empty: want a JSON object"}},
		{"a mark alone", "\ufeff", []string{"empty: want a JSON object"}},
		{"too long", strings.Repeat(" ", 4001), []string{"larger than 4000 bytes, the most allowed"}},
		{"deep", `{"steps":[[[[[[1]]]]]]}`, []string{"line 1, column 15: nested deeper than 5, the most allowed"}},
		{"not JSON", "{\n  bread\n}", []string{"line 2, column 3: not JSON: invalid character 'b' looking for beginning of object key string"}},
		{"a comma too many", `{"steps":[1,]}`, []string{"line 1, column 13: not JSON: invalid character ']' looking for beginning of value"}},
		{"a comma at once", `,`, []string{"line 1, column 1: not JSON: invalid character ',' looking for beginning of value"}},
		{"cut short", "{\"name\": \"é\",\n", []string{"line 2, column 1: not JSON: it ends too early"}},
		{"an open text", `{"name": "rye`, []string{"line 1, column 14: not JSON: it ends too early"}},
		{"as long as allowed", strings.Repeat(" ", 4000), []string{"empty: want a JSON object"}},
		{"a letter after the end", "{}x", []string{"line 1, column 3: text after the end"}},
		{"two values", "{}\n{}", []string{"line 2, column 1: text after the end"}},
		{"another encoding at once", "\xe9{}", []string{"line 1, column 1: not UTF-8"}},
		{"another encoding", "{\"name\": \"é\xe9\"}", []string{"line 1, column 12: not UTF-8"}},
		{"a list", `[]`, []string{"line 1, column 1: […]: want an object"}},
		{"null", `null`, []string{"line 1, column 1: null: leave the field out where nothing is known"}},

		{"unknown", `{"yeast": 1}`, []string{"yeast: 1: unknown field: want one of " + all}},
		{"misspelt", `{"flower": "500 g"}`, []string{`flower: "500 g": unknown field: is flour meant?`}},
		{"misspelt at its head", `{"xflour": "500 g", "lour": "500 g"}`, []string{`xflour: "500 g": unknown field: is flour meant?`, `lour: "500 g": unknown field: is flour meant?`}},
		{"two letters too many at its head", `{"xyflour": "500 g"}`, []string{`xyflour: "500 g": unknown field: is flour meant?`}},
		{"two letters too many within", `{"flo__ur": "500 g"}`, []string{`flo__ur: "500 g": unknown field: is flour meant?`}},
		{"two letters too few within", `{"flr": "500 g"}`, []string{`flr: "500 g": unknown field: is flour meant?`}},
		{"three letters too many", `{"xyzflour": "500 g"}`, []string{`xyzflour: "500 g": unknown field: want one of ` + all}},
		{"another case", `{"Flour": "500 g"}`, []string{`Flour: "500 g": unknown field: is flour meant?`}},
		{"a field JSON does not hold", `{"Hidden": "x", "deep": "z", "Secret": "y"}`, []string{
			`Hidden: "x": unknown field: want one of ` + all, `deep: "z": unknown field: want one of ` + all, `Secret: "y": unknown field: want one of ` + all}},
		{"no name", `{"": 1}`, []string{`"": 1: unknown field: want one of ` + all}},
		{"a hostile name", `{"a\u0007.b": {}}`, []string{`"a\a.b": {…}: unknown field: want one of ` + all}},
		{"given twice", `{"loaves": 1, "loaves": 2, "loaves": 3}`, []string{"loaves: 2: given twice"}},
		{"given twice, the second time as what does not print", "{\"salt\": 1, \"salt\": \x00}", []string{`salt: \x00: given twice`, `line 1, column 21: not JSON: invalid character '\x00' looking for beginning of value`}},
		{"given twice with other letters", `{"\u0073alt": 1, "salt": 2}`, []string{"salt: 2: given twice"}},

		{"null field", `{"oven": null}`, []string{"oven: null: leave the field out where nothing is known"}},
		{"null item", `{"steps": [null]}`, []string{"steps[0]: null: leave the field out where nothing is known"}},
		{"empty text", `{"name": ""}`, []string{`name: "": empty: leave the field out where nothing is known`}},
		{"empty quantity", `{"flour": ""}`, []string{`flour: "": empty: leave the field out where nothing is known`}},
		{"types", `{"name": 1, "loaves": "2", "salt": true, "rye": "yes", "flour": [], "steps": {}, "oven": 3}`, []string{
			"name: 1: want a text", `loaves: "2": want a number`, "salt: true: want a number", `rye: "yes": want true or false`,
			"flour: […]: want a text", "steps: {…}: want a list", "oven: 3: want an object"}},
		{"half a loaf", `{"loaves": 1.5}`, []string{"loaves: 1.5: want a whole number"}},
		{"too many loaves", `{"loaves": 2147483648}`, []string{"loaves: 2147483648: want a whole number"}},
		{"no such number", `{"salt": 1e999}`, []string{"salt: 1e999: want a number that fits"}},
		{"bare number", `{"flour": 500}`, []string{`flour: 500: a bare number has no unit: want a text such as "500 g"`}},
		{"a zero that says nothing", `{"flour": "0 g"}`, []string{`flour: "0 g": zero, which is the same as nothing here: leave the field out where nothing is known`}},
		{"a quantity's own error", `{"flour": "500"}`, []string{`flour: "500": want more sense:; weight: missing unit`}},

		{"moves the cursor", `{"name": "\u001b[2J"}`, []string{`name: "\x1b[2J": holds a character that does not print`}},
		{"turns the line round", `{"name": "\u202eab"}`, []string{`name: "\u202eab": holds a character that does not print`}},
		{"ends the line", `{"flour": "5 g\n"}`, []string{`flour: "5 g\n": holds a character that does not print`}},
		{"half a pair", `{"name": "\ud800"}`, []string{`name: "�": holds a broken character`}},
		{"long", `{"name": "` + strings.Repeat("x", 70) + `"}`, []string{
			`name: "` + strings.Repeat("x", 59) + "…: longer than 20 bytes"}},
		{"as long as may be", `{"name": "` + strings.Repeat("x", 20) + `"}`, nil},
		{"as long as a line shows", `{"name": "` + strings.Repeat("x", 58) + `"}`, []string{`name: "` + strings.Repeat("x", 58) + `": longer than 20 bytes`}},
		{"long, of letters of two bytes", `{"name": "` + strings.Repeat("é", 40) + `"}`, []string{
			`name: "` + strings.Repeat("é", 29) + "…: longer than 20 bytes"}},
		{"a long name", `{"` + strings.Repeat("y", 40) + `": 1}`, []string{strings.Repeat("y", 40) + ": 1: unknown field: want one of " + all}},
		{"a name too long to be one", `{"` + strings.Repeat("y", 41) + `": 1}`, []string{`"` + strings.Repeat("y", 41) + `": 1: unknown field: want one of ` + all}},

		{"all at once, in order", "{\n \"yeast\": null, \"steps\": [{}, {\"text\": 1, \"weigh\": \"a\"}],\n \"salt\": \"x\"}", []string{
			"yeast: null: unknown field: want one of " + all, "steps[1].text: 1: want a text",
			`steps[1].weigh: "a": want more sense:; weight: missing unit`, `salt: "x": want a number`}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var r recipe
			got := texts(reader().Read([]byte(c.file), &r).Faults())
			if !slices.Equal(got, c.want) {
				t.Errorf("got  %q\nwant %q", got, c.want)
			}
		})
	}
}

// TestNames: a name that is a plain word stands in a path as it is, any other as in the file.
func TestNames(t *testing.T) {
	word := regexp.MustCompile(`^[0-9A-Za-z_]$`)
	for c := '!'; c <= '~'; c++ {
		name := string(c)
		file, err := json.Marshal(map[string]int{name: 1})
		if err != nil {
			t.Fatal(err)
		}
		want := name
		if !word.MatchString(name) {
			want = strconv.Quote(name)
		}
		var r recipe
		if fs := reader().Read(file, &r).Faults(); len(fs) != 1 || fs[0].Path != want {
			t.Errorf("%s: %q, want the path %s", file, texts(fs), want)
		}
	}
}

// TestPlaces: a fault knows its line and column, in characters, and the error beneath it.
func TestPlaces(t *testing.T) {
	file := "\ufeff{\"name\": \"é\", \"loaves\": 1.5,\n\n  \"steps\": [\n    {\"text\":\"a\",\"weigh\" : \"b\"}], \"rye\": 1}"
	var r recipe
	d := reader().Read([]byte(file), &r)
	d.Fault("name", nil, errHeavy) // found later, standing earlier
	d.Fault("oven.heat", 0, errHeavy)
	d.Fault("steps[0].text", nil, errHeavy)
	d.Fault("steps[0]", nil, errHeavy) // before that in its line
	var got []string
	for _, f := range d.Faults() {
		got = append(got, fmt.Sprintf("%s %d:%d %t", f.Path, f.Line, f.Column, errors.Is(f.Err, errUnit)))
	}
	want := []string{"loaves 1:25 false", "steps[0].weigh 4:27 true", "rye 4:41 false", "name 1:10 false", "oven.heat 0:0 false", "steps[0].text 4:13 false", "steps[0] 4:5 false"}
	if !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// TestFault: what is found by hand keeps the value as it was typed, and a place has one fault.
func TestFault(t *testing.T) {
	var r recipe
	d := reader().Read([]byte(`{"flour": "0500 g", "loaves": 1.5, "steps": [{"text": "mix"}, 7]}`), &r)
	before := len(d.Faults()) // loaves, steps[1]
	d.Fault("flour", r.Flour, errHeavy)
	d.Fault("flour", r.Flour, errHeavy)
	d.Fault("loaves", r.Loaves, errHeavy)
	d.Fault("steps[1].weigh", nil, errHeavy)
	d.Fault("steps[0].text", nil, errHeavy)
	d.Fault("steps[2].text", "x\x1b", errHeavy) // where the file has nothing
	d.Fault("steps[x].text", 1, errHeavy)
	d.Fault("steps[-1].text", 1, errHeavy)
	d.Fault("steps", 3, errHeavy)
	d.Fault("salt", math.NaN(), errHeavy)
	want := []string{
		`flour: "0500 g": want more sense:; too heavy`, `steps[0].text: "mix": want more sense:; too heavy`,
		`steps[2].text: "x\x1b": want more sense:; too heavy`,
		"steps[x].text: 1: want more sense:; too heavy", "steps[-1].text: 1: want more sense:; too heavy", "steps: 3: want more sense:; too heavy", "salt: NaN: want more sense:; too heavy"}
	if got := texts(d.Faults()[before:]); !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

func rules() map[string]strictjson.Rule {
	return map[string]strictjson.Rule{
		"given": func(v any) error {
			if v == "" {
				return errors.New("missing: want a name")
			}
			return nil
		},
		"few": func(v any) error {
			if v.(int) > 10 {
				return errors.New("want 10 or fewer")
			}
			return nil
		},
		"even": func(v any) error {
			if v.(int)%2 == 1 {
				return errors.New("want an even number")
			}
			return nil
		},
		"light": func(v any) error {
			if v.(weight) > 1000 {
				return fmt.Errorf("want up to %d g: %w", 1000, errHeavy)
			}
			return nil
		},
	}
}

// TestCheck: tags hold a value to rules, whether it was read or made, and every text is one that prints.
func TestCheck(t *testing.T) {
	file := `{"loaves": 13, "flour": "02000 g", "steps": [{"text": "mix", "weigh": "1 g"}, {"text": "rest", "weigh": "1001 g"}]}`
	var r recipe
	read := reader().Read([]byte(file), &r)
	read.Check(r, rules())
	want := []string{"name: want more sense:; missing: want a name", "loaves: 13: want more sense:; want 10 or fewer",
		`flour: "02000 g": want more sense:; want up to 1000 g: too heavy`, `steps[1].weigh: "1001 g": want more sense:; want up to 1000 g: too heavy`}
	if got := texts(read.Faults()); !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if f := read.Faults()[2]; !errors.Is(f.Err, errHeavy) || f.Line != 1 || f.Column != 25 {
		t.Errorf("%+v", f)
	}

	r.Name, r.Steps[0].Text, r.Secret = "x\x00", strings.Repeat("y", 21), "\x00"
	made := reader().Made()
	made.Check(r, rules())
	want = []string{`name: "x\x00": want more sense:; holds a character that does not print`, want[1],
		`flour: "2000 g": want more sense:; want up to 1000 g: too heavy`, `steps[0].text: "yyyyyyyyyyyyyyyyyyyyy": want more sense:; longer than 20 bytes`, want[3]}
	if got := texts(made.Faults()); !slices.Equal(got, want) {
		t.Errorf("got  %q\nwant %q", got, want)
	}
}

// TestTags: what must be there is asked for by its tag, and may not be zero; of a list or a whole number there is a most;
// nobody looks into what is left out; what is usual is handed on with its path.
func TestTags(t *testing.T) {
	type shelf struct {
		Oven  oven     `json:"oven,omitzero"`
		Size  weight   `json:"size" needs:"how much it bears" usual:"light"`
		Rows  int      `json:"rows,omitzero" most:"3"`
		Doors int      `json:"doors,omitzero" most:"1"`
		Steps []step   `json:"steps,omitzero" most:"1" usual:"few,even"`
		Notes []string `json:"notes,omitzero"`
		Spice struct {
			Hot  int  `json:"hot" needs:"how hot"`
			Cold int  `json:"cold,omitzero" usual:"few"`
			Old  bool `json:"old,omitzero"`
		} `json:"spice,omitzero"`
	}
	for file, want := range map[string][]string{
		`{}`: {"size: want more sense:; missing: want how much it bears"},
		`{"size": "0 g", "rows": 4, "steps": [{"text": "a"}, {"text": "b"}]}`: {`size: "0 g": want more sense:; want how much it bears`,
			"rows: 4: want more sense:; want at most 3", "steps: 2: want more sense:; want at most 1"},
		`{"size": "1 g", "rows": -1, "notes": ["a", "this is a long text, too long"], "spice": {"hot": 0}}`: {`notes[1]: "this is a long text, too long": longer than 20 bytes`,
			"rows: -1: want more sense:; want 0 to 3"},
		`{"size": "1 g", "doors": 2}`:                                               {"doors: 2: want more sense:; want at most 1"},
		`{"size": "1 g", "spice": {"old": true}}`:                                   {"spice.hot: want more sense:; missing: want how hot"},
		`{"size": "1 g", "rows": 3, "spice": {"hot": 1}, "steps": [{"text": "a"}]}`: nil,
	} {
		var s shelf
		d := reader().Read([]byte(file), &s)
		d.Check(s, rules())
		if got := texts(d.Faults()); !slices.Equal(got, want) {
			t.Errorf("%s:\ngot  %q\nwant %q", file, got, want)
		}
	}
	made := reader().Made()
	made.Check(shelf{Size: 1, Notes: []string{"a", "\x00"}}, rules())
	if want := []string{`notes[1]: "\x00": want more sense:; holds a character that does not print`}; !slices.Equal(texts(made.Faults()), want) {
		t.Errorf("got  %q\nwant %q", texts(made.Faults()), want)
	}
	var looked []string
	s := shelf{Size: 3, Steps: []step{{Text: "a"}}}
	s.Spice.Cold = 4
	reader().Made().Walk(s, func(path fmt.Stringer, v any, usual []string) {
		looked = append(looked, fmt.Sprint(path.String(), v, usual))
	})
	if want := []string{"size3 [light]", "steps[{a 0}] [few even]", "spice.cold4 [few]"}; !slices.Equal(looked, want) {
		t.Errorf("%q", looked)
	}
}

// TestWrongProgram: a tag without its rule, and a type that cannot be read, are the programmer's.
func TestWrongProgram(t *testing.T) {
	for name, call := range map[string]func(){
		"rule": func() { reader().Made().Check(recipe{}, nil) },
		"type": func() {
			reader().Read([]byte(`{"x": {}}`), &struct {
				X map[string]int `json:"x"`
			}{})
		},
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if r := recover(); r == nil || !strings.HasPrefix(fmt.Sprint(r), "strictjson: ") {
					t.Errorf("recovered %v", r)
				}
			}()
			call()
		})
	}
}

// FuzzRead: nothing panics; what is JSON and what is not is as encoding/json has it; a file without a fault is
// read as encoding/json reads it; every fault is one line that prints, and stands in the file.
func FuzzRead(f *testing.F) {
	for _, s := range []string{
		`{"name":"a","steps":[{"text":"b","weigh":"3 g"}],"oven":{"heat":1}}`, `{"a":1,"a":2}`, "{\"name\":\"\xff\"}",
		`{"flour":"1 g","salt":-0.0,"rye":false}`, `[1 2]`, `{"a" 1}`, `{"a":1,}`, `{,}`, `"x"x`, "\ufeff{}", "{}\n\n]", `{"loaves":01}`, `{"a":[}`, `nul`,
	} {
		f.Add([]byte(s))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		var r, other recipe
		limits := reader()
		limits.MostBytes, limits.MostDepth, limits.MostText = 1<<20, 1000, 1<<20
		d := limits.Read(data, &r)
		d.Check(r, map[string]strictjson.Rule{"given": none, "few": none, "even": none, "light": none})
		plain := bytes.TrimPrefix(data, []byte("\ufeff"))
		fs := d.Faults()
		if valid := json.Valid(plain) && utf8.Valid(plain); valid != d.Whole() && !rootFault(fs) {
			t.Fatalf("JSON: %t, and read: %q", valid, texts(fs))
		}
		if fs == nil {
			if err := json.Unmarshal(plain, &other); err != nil || !reflect.DeepEqual(r, other) {
				t.Fatalf("%+v, by encoding/json %+v, %v", r, other, err)
			}
		}
		lines := bytes.Count(plain, []byte("\n")) + 1
		for _, one := range fs {
			if s := one.String(); strings.ContainsAny(s, "\n\r\x1b\x00") || !utf8.ValidString(s) {
				t.Fatalf("%q", s)
			}
			if one.Line < 0 || one.Line > lines || one.Line > 0 && one.Column < 1 {
				t.Fatalf("%+v", one)
			}
		}
	})
}

func none(any) error { return nil }

// rootFault reports whether the one fault is that the JSON is not an object.
func rootFault(fs []strictjson.Fault) bool {
	return len(fs) == 1 && fs[0].Path == "" && fs[0].Value != ""
}

// BenchmarkRead reads what people write, and the worst that a stranger may send.
func BenchmarkRead(b *testing.B) {
	r := reader()
	r.MostBytes = 1 << 20
	for name, unit := range map[string]string{"sound": `{"text":"mix","weigh":"20 g"}`, "all wrong": `{"test":1,"weigh":2}`, "empty": "{}", "spread": "{\n}"} {
		file := []byte(`{"steps":[` + strings.Repeat(unit+",", 1_000_000/(len(unit)+1)) + unit + "]}")
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(file)))
			b.ReportAllocs()
			for b.Loop() {
				var v recipe
				d := r.Read(file, &v)
				d.Check(v, rules())
				for i := range v.Steps { // as a caller does that finds the same of each
					d.Fault(fmt.Sprintf("steps[%d].text", i), nil, errHeavy)
				}
			}
		})
	}
}

type spice struct {
	Name string `json:"name"`
	Hot  int    `json:"hot,omitzero" want:"few"`
}

// TestEmbedded: the fields of an embedded struct stand among those of the one it is in, as encoding/json has them.
func TestEmbedded(t *testing.T) {
	type jar struct {
		spice
		Full bool `json:"full,omitzero"`
	}
	var j jar
	d := reader().Read([]byte(`{"name": "x", "full": true, "hot": 12, "cold": 1}`), &j)
	d.Check(j, rules())
	want := []string{`cold: 1: unknown field: want one of name, hot, full`, "hot: 12: want more sense:; want 10 or fewer"}
	if got := texts(d.Faults()); !slices.Equal(got, want) || j.Name != "x" || j.Hot != 12 || !j.Full {
		t.Errorf("%+v, %q", j, got)
	}
}

// TestCopy: whatever is written into the lists of a copy, those of the value stay, and the other way round; nothing and an empty
// list stay what they are.
func TestCopy(t *testing.T) {
	type point struct{ X, Y int }
	type line struct {
		Name   string
		Points []point
		hidden []int
	}
	type sheet struct {
		One   line
		Lines []line
		Names []string
		Grid  [][]int
		None  []int
		Empty []int
	}
	made := func() sheet {
		points := func(n int) []point { return []point{{n, 1}, {n, 2}} }
		return sheet{
			One: line{"a", points(1), []int{1}}, Lines: []line{{"b", points(2), nil}, {"c", points(3), nil}}, Names: []string{"d", "e"},
			Grid: [][]int{{1, 2}, {3}}, Empty: []int{},
		}
	}
	v := made()
	c := strictjson.Copy(v)
	if !reflect.DeepEqual(c, v) || c.None != nil || c.Empty == nil {
		t.Fatalf("%+v of %+v", c, v)
	}
	c.One.Points[0], c.Lines[0].Points[1], c.Lines[1], c.Names[1], c.Grid[0][1], c.Grid[1] = point{9, 9}, point{8, 8}, line{}, "z", 7, nil
	if !reflect.DeepEqual(v, made()) {
		t.Errorf("the copy writes into what it was made of: %+v", v)
	}
}
