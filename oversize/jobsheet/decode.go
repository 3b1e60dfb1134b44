// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"encoding"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

// decode sets v from the tree, strictly: names must match to the letter, types exactly, and
// nothing may be null. Every departure becomes a fault and the rest is still read.
func decode(n node, v reflect.Value, fs *Faults) {
	if n.kind == null {
		fs.add(n.path, n.show(), "leave the field out where nothing is known")
		return
	}
	if u, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		decodeText(n, u, fs)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		p := reflect.New(v.Type().Elem())
		decode(n, p.Elem(), fs)
		v.Set(p)
	case reflect.Struct:
		decodeStruct(n, v, fs)
	case reflect.Slice:
		if !is(n, array, fs) {
			return
		}
		v.Set(reflect.MakeSlice(v.Type(), len(n.items), len(n.items)))
		for i, item := range n.items {
			decode(item, v.Index(i), fs)
		}
	case reflect.String:
		if is(n, text, fs) && plainText(n, fs) {
			v.SetString(n.text)
		}
	case reflect.Bool:
		if is(n, boolean, fs) {
			v.SetBool(n.text == "true")
		}
	case reflect.Int:
		if !is(n, number, fs) {
			return
		}
		i, err := strconv.ParseInt(n.text, 10, 32)
		if err != nil {
			fs.add(n.path, n.show(), "want a whole number")
			return
		}
		v.SetInt(i)
	case reflect.Float64:
		if !is(n, number, fs) {
			return
		}
		f, err := strconv.ParseFloat(n.text, 64)
		if err != nil {
			fs.add(n.path, n.show(), "want a number that fits")
			return
		}
		v.SetFloat(f)
	}
}

// is reports whether the node is of the kind, and faults where it is not.
func is(n node, k kind, fs *Faults) bool {
	if n.kind != k {
		fs.add(n.path, n.show(), "want %s", kindNames[k])
	}
	return n.kind == k
}

// plainText refuses what could upset a terminal or a printer.
func plainText(n node, fs *Faults) bool {
	why := notPlain(n.text)
	if n.text == "" {
		why = "empty: leave the field out where nothing is known"
	}
	if why != "" {
		fs.add(n.path, n.show(), "%s", why)
	}
	return why == ""
}

// notPlain says why a text cannot stand on a sheet; "" where it can.
func notPlain(s string) string {
	const most = 200
	switch {
	case len(s) > most:
		return fmt.Sprintf("longer than %d bytes", most)
	case !utf8.ValidString(s), strings.ContainsFunc(s, func(r rune) bool { return !unicode.IsGraphic(r) }):
		return "holds a character that does not print"
	}
	return ""
}

// decodeText reads a quantity or the name of a choice.
func decodeText(n node, u encoding.TextUnmarshaler, fs *Faults) {
	if n.kind == number {
		fs.add(n.path, n.show(), "a bare number has no unit: want a text such as %s", example(u))
		return
	}
	if !is(n, text, fs) {
		return
	}
	if n.text == "" {
		fs.add(n.path, n.show(), "empty: leave the field out where nothing is known")
		return
	}
	err := u.UnmarshalText([]byte(n.text))
	var p *units.ParseError
	var name *enum.NameError
	switch {
	case err == nil:
	case errors.As(err, &p):
		want := p.Err.Error()
		if p.Mend != "" {
			want += ": " + p.Mend
		}
		fs.add(n.path, n.show(), "%s", want)
	case errors.As(err, &name):
		given := slices.DeleteFunc(name.Names, func(s string) bool { return s == "not given" || s == "none" })
		fs.add(n.path, n.show(), "want one of %s", strings.Join(given, ", "))
	default:
		fs.add(n.path, n.show(), "%v", err)
	}
}

// example returns a text that u reads.
func example(u encoding.TextUnmarshaler) string {
	switch u.(type) {
	case *units.Length:
		return `"72.031 mm" or "2.8360 in"`
	case *units.Volume:
		return `"38 cm³"`
	case *units.Frequency:
		return `"120 rev/min"`
	case *units.Limits:
		return `"72.000 to 72.020 mm"`
	}
	return "the examples in the documentation show"
}

func decodeStruct(n node, v reflect.Value, fs *Faults) {
	if !is(n, object, fs) {
		return
	}
	names := fieldNames(v.Type())
	for _, f := range n.fields {
		i := slices.Index(names, f.name)
		if i < 0 {
			fs.add(f.value.path, f.value.show(), "%s", unknownField(f.name, names))
			continue
		}
		decode(f.value, v.Field(i), fs)
	}
}

// fieldNames returns the JSON names of a struct's fields, in order.
func fieldNames(t reflect.Type) []string {
	names := make([]string, t.NumField())
	for i := range names {
		names[i], _, _ = strings.Cut(t.Field(i).Tag.Get("json"), ",")
	}
	return names
}

// unknownField names the field that was probably meant, or all that are known.
func unknownField(name string, names []string) string {
	best, least := "", 3
	for _, known := range names {
		if d := distance(strings.ToLower(name), known); d < least {
			best, least = known, d
		}
	}
	if best != "" {
		return "unknown field: is " + best + " meant?"
	}
	return "unknown field: want one of " + strings.Join(names, ", ")
}

// distance counts the letters to change, add or drop to turn a into b, up to 3.
func distance(a, b string) int {
	const most = 3
	if len(a) > len(b)+most || len(b) > len(a)+most {
		return most
	}
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			diagonal, row[j+1] = row[j+1], min(row[j+1]+1, row[j]+1, diagonal+cost)
		}
	}
	return min(row[len(b)], most)
}
