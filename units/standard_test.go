// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"bytes"
	"database/sql/driver"
	"encoding"
	"encoding/json"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"reflect"
	"strings"
	"testing"
	"text/template"

	"borewright.example/units"
)

// Every quantity keeps one text contract.
var (
	_ encoding.TextMarshaler   = units.Length(0)
	_ encoding.TextMarshaler   = units.Limits{}
	_ encoding.TextUnmarshaler = (*units.Length)(nil)
	_ encoding.TextUnmarshaler = (*units.Limits)(nil)
)

func asFloat(q any) float64 {
	v := reflect.ValueOf(q)
	if v.CanInt() {
		return float64(v.Int())
	}
	return v.Float()
}

func sameType(a, b any) bool { return reflect.TypeOf(a) == reflect.TypeOf(b) }

// through carries a quantity of type Q, given by its text, through the standard packages.
func through[Q comparable, P interface {
	*Q
	encoding.TextUnmarshaler
}](t *testing.T, text string) {
	t.Helper()
	var q Q
	check(t, P(&q).UnmarshalText([]byte(text)))
	marshaler := any(q).(interface {
		encoding.TextMarshaler
		fmt.Stringer
	})
	same := func(what, got string) {
		t.Helper()
		if got != text {
			t.Errorf("%T %s: %q, want %q", q, what, got, text)
		}
	}
	same("String", marshaler.String())
	same("%v", fmt.Sprintf("%v", q))
	same("%v in a struct", strings.Trim(fmt.Sprintf("%v", struct{ Q Q }{q}), "{}"))
	b, err := marshaler.MarshalText()
	check(t, err)
	same("MarshalText", string(b))

	// JSON, as a value and as a map key. A JSON number has no unit and is refused; null leaves the value.
	quoted, err := json.Marshal(text)
	check(t, err)
	b, err = json.Marshal(map[Q]Q{q: q})
	check(t, err)
	if want := fmt.Sprintf("{%s:%s}", quoted, quoted); !sameJSON(string(b), want) {
		t.Errorf("%T as JSON: %s, want %s", q, b, want)
	}
	var back map[Q]Q
	check(t, json.Unmarshal(b, &back))
	if !reflect.DeepEqual(back, map[Q]Q{q: q}) {
		t.Errorf("%T from JSON: %v, want %v", q, back, q)
	}
	kept := q
	for _, bad := range []string{"1.5", `"nonsense"`, "[]", "true"} {
		if err := json.Unmarshal([]byte(bad), &kept); err == nil || kept != q {
			t.Errorf("%T from JSON %s: %v, %v", q, bad, kept, err)
		}
	}
	if err := json.Unmarshal([]byte("null"), &kept); err != nil || kept != q {
		t.Errorf("%T from JSON null: %v, %v", q, kept, err)
	}

	// XML, as an attribute and as an element.
	type element struct {
		XMLName xml.Name `xml:"bore"`
		Attr    Q        `xml:"at,attr"`
		Inner   Q        `xml:"size"`
	}
	b, err = xml.Marshal(element{Attr: q, Inner: q})
	check(t, err)
	var e element
	check(t, xml.Unmarshal(b, &e))
	if e.Attr != q || e.Inner != q {
		t.Errorf("%T through XML %s: %v, %v", q, b, e.Attr, e.Inner)
	}

	// flag.TextVar, with q as the default; a bad value keeps it.
	fs := flag.NewFlagSet("test", flag.ContinueOnError)
	fs.SetOutput(io.Discard)
	var v Q
	fs.TextVar(P(&v), "q", marshaler, "a quantity")
	same("flag default", fs.Lookup("q").DefValue)
	if err := fs.Parse([]string{"-q", "nonsense"}); err == nil || v != q {
		t.Errorf("%T flag: %v, %v", q, v, err)
	}
	check(t, fs.Parse([]string{"-q", text}))
	if v != q {
		t.Errorf("%T flag: %v, want %v", q, v, q)
	}

	// slog, as text and as JSON.
	var log bytes.Buffer
	plain := &slog.HandlerOptions{ReplaceAttr: func(_ []string, a slog.Attr) slog.Attr {
		if a.Key == "q" {
			return a
		}
		return slog.Attr{}
	}}
	slog.New(slog.NewTextHandler(&log, plain)).Info("", "q", q)
	if got := strings.TrimSpace(log.String()); got != "q="+fmt.Sprintf("%q", text) && got != "q="+text {
		t.Errorf("%T in slog text: %s", q, got)
	}
	log.Reset()
	slog.New(slog.NewJSONHandler(&log, plain)).Info("", "q", q)
	if got := strings.TrimSpace(log.String()); !sameJSON(got, fmt.Sprintf(`{"q":%s}`, quoted)) {
		t.Errorf("%T in slog JSON: %s", q, got)
	}

	log.Reset()
	check(t, template.Must(template.New("").Parse("{{.}}")).Execute(&log, q))
	same("text/template", log.String())
}

func sameJSON(a, b string) bool {
	var x, y any
	return json.Unmarshal([]byte(a), &x) == nil && json.Unmarshal([]byte(b), &y) == nil && reflect.DeepEqual(x, y)
}

func TestStandardPackages(t *testing.T) {
	through[units.Length](t, "67.071875 mm")
	through[units.Limits](t, "72 mm to 72.02 mm")
	through[units.Limits](t, "max 0.05 mm")
	through[units.Temperature](t, "31.5 °C")
	through[units.TemperatureChange](t, "10 K")
	through[units.Angle](t, "44.5°")
	through[units.Speed](t, "60 m/min")
	through[units.Frequency](t, "650 rev/min")
	through[units.Volume](t, "16 cm³")
	through[units.Pressure](t, "0.2 MPa")
	through[units.Force](t, "26.7 N")
	through[units.Expansion](t, "11.4e-6/K")
}

// What is not given stays out of JSON with omitzero, and is empty text without.
func TestNotGiven(t *testing.T) {
	var omit struct {
		T units.Temperature `json:"t,omitzero"`
		W units.Limits      `json:"w,omitzero"`
	}
	if b, err := json.Marshal(omit); string(b) != "{}" || err != nil {
		t.Errorf("%s, %v", b, err)
	}
	var with struct {
		T units.Temperature
		W units.Limits
	}
	b, err := json.Marshal(with)
	if string(b) != `{"T":"","W":""}` || err != nil {
		t.Errorf("%s, %v", b, err)
	}
	with.T, with.W.Min = units.ReferenceTemperature, 1
	if err := json.Unmarshal(b, &with); err != nil || !with.T.IsZero() || !with.W.IsZero() {
		t.Errorf("%+v, %v", with, err)
	}
	if with.T.String() != "not given" || with.W.String() != "not given" {
		t.Errorf("%v, %v", with.T, with.W)
	}
}

// What carries the bare number carries no unit: these are the ways to lose one.
func TestWhereTheUnitIsLost(t *testing.T) {
	l := 3 * units.Millimetre
	if got := fmt.Sprintf("%d", l); got != "3000000000" {
		t.Errorf("%%d prints %s", got)
	}
	if _, err := fmt.Sscan("3", &l); err != nil || l != 3*units.Picometre {
		t.Errorf("Sscan reads %v, %v", l, err)
	}
	v := 60 * units.MetrePerMinute
	if got := fmt.Sprintf("%.2f", v); got != "1.00" {
		t.Errorf("%%f prints %s", got)
	}
	if got, err := driver.DefaultParameterConverter.ConvertValue(units.Millimetre); got != int64(1_000_000_000) || err != nil {
		t.Errorf("database/sql stores %v, %v", got, err)
	}
	if got, err := driver.DefaultParameterConverter.ConvertValue(v); got != 1.0 || err != nil {
		t.Errorf("database/sql stores %v, %v", got, err)
	}
	if got, err := driver.DefaultParameterConverter.ConvertValue(l.String()); got != "0.000000003 mm" || err != nil {
		t.Errorf("database/sql stores %v, %v", got, err)
	}
}

func TestErrorsMatch(t *testing.T) {
	var e *units.ParseError
	err := fmt.Errorf("reading 3: %w", func() error { _, err := units.ParseLength("67.02"); return err }())
	if !errors.Is(err, units.ErrMissingUnit) || !errors.As(err, &e) || e.Pos != 5 || errors.Is(err, units.ErrSyntax) {
		t.Errorf("%v", err)
	}
}
