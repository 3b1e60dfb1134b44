// SPDX-License-Identifier: BSD-3-Clause

// Package strictjson reads JSON that a person or a stranger wrote, and says all that is wrong with it. It
// says so at once: every [Fault] with its path, its place in the file, the value as it was typed and what is
// wanted. encoding/json stops at the first unknown field, and lets through a key given twice, a key in
// another case, null, broken characters and any depth.
//
// The rules: one JSON value (RFC 8259) of bounded size and depth, in UTF-8 with or without a byte order mark;
// names to the letter; each field once; no null, for what is not known is left out; types exactly; texts
// that print, for the ends of a line and the commands of a terminal have no place in a name; no zero in a field
// whose tag has omitzero, for there it is the same as nothing, and whoever wrote it meant something.
//
// What it reads into are structs whose fields have a json tag with a name, slices, pointers, texts, booleans,
// int, float64, and whatever has UnmarshalText. Tags of a field say that it must be there, how many there may be, and
// which rule holds it: [Document.Check] holds a value to them, whether it was read or made by a program.
package strictjson

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"iter"
	"reflect"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A Reader says how much is read at most, and finds words for what it does not know.
type Reader struct {
	MostBytes int // of a file, below 2 GiB
	MostDepth int // of values in values
	MostText  int // bytes of a text

	// Example returns a text that u reads, to be shown where a bare number stands.
	Example func(u encoding.TextUnmarshaler) string
	// Explain says in a line what an error of UnmarshalText or of a rule asks for.
	Explain func(err error) string
}

// A Document is what was read, with all that is wrong with it.
type Document struct {
	reader Reader
	data   string
	root   node
	faults []Fault
	at     map[string]bool // the paths at fault
	last   mark
	shapes map[reflect.Type]*shape
	buffer []byte // of the text being unmarshalled
}

// Made returns the document of a value that no file holds.
func (r Reader) Made() *Document {
	return &Document{reader: r, at: map[string]bool{}, shapes: map[reflect.Type]*shape{}}
}

// Read reads data into v, a pointer. Whatever is at fault leaves v as it was, and the rest is still read.
func (r Reader) Read(data []byte, v any) *Document {
	d := r.Made()
	if d.parse(bytes.TrimPrefix(data, []byte("\ufeff"))); d.Whole() {
		decoder{d}.value(&d.root, reflect.ValueOf(v).Elem(), nil)
	}
	return d
}

// Whole reports whether there is no fault of the document as a whole, so that there is a value to look into.
func (d *Document) Whole() bool { return !d.at[""] }

// Faults returns what is wrong, in the order in which it was found; nil where nothing is.
func (d *Document) Faults() []Fault { return d.faults }

// Fault notes that the value at path is not what is wanted, unless that place, or what it stands in, has a fault
// already. The value is shown as it was typed; where the file does not hold it, or holds a list or an object
// there, as v, or not at all where v is nil.
func (d *Document) Fault(path string, v any, want error) {
	if d.known(path) {
		return
	}
	f := Fault{Path: path, Want: d.reader.Explain(want), Err: want}
	n := d.find(path)
	if n != nil {
		f.Line, f.Column = d.position(int(n.offset))
	}
	switch {
	case n != nil && n.kind != object && n.kind != array:
		f.Value = n.show()
	case v != nil:
		f.Value = display(v)
	}
	d.note(f)
}

// fault notes a fault of a value of the file.
func (d *Document) fault(at *place, n *node, want string, err error) {
	f := Fault{Path: at.String(), Value: n.show(), Want: want, Err: err}
	if d.known(f.Path) {
		return
	}
	f.Line, f.Column = d.position(int(n.offset))
	d.note(f)
}

func (d *Document) note(f Fault) {
	f.Value, f.Want = shorten(f.Value), strings.ReplaceAll(f.Want, "\n", "; ")
	d.at[f.Path] = true
	d.faults = append(d.faults, f)
}

// known reports whether the path, or what it stands in, is at fault already.
func (d *Document) known(path string) bool {
	for path != "" && !d.at[path] {
		path = path[:max(0, strings.LastIndexAny(path, ".["))]
	}
	return d.at[path]
}

// Texts goes through every text of the file, names left out.
func (d *Document) Texts() iter.Seq[string] {
	return func(yield func(string) bool) { d.root.texts(yield) }
}

func (n *node) texts(yield func(string) bool) bool {
	if n.kind == text && !yield(n.text) {
		return false
	}
	for i := range n.fields {
		if !n.fields[i].value.texts(yield) {
			return false
		}
	}
	return true
}

// plain says why a text cannot be printed; "" where it can.
func (r Reader) plain(s string) string {
	switch {
	case len(s) > r.MostText:
		return fmt.Sprintf("longer than %d bytes", r.MostText)
	case strings.ContainsRune(s, utf8.RuneError):
		return "holds a broken character"
	case strings.ContainsFunc(s, func(c rune) bool { return !unicode.IsGraphic(c) }):
		return "holds a character that does not print"
	}
	return ""
}

// display returns a value as it would stand in a file.
func display(v any) string {
	b, err := json.Marshal(v)
	var s string
	switch {
	case err != nil: // NaN has no JSON
		return fmt.Sprint(v)
	case json.Unmarshal(b, &s) == nil:
		return quote(shorten(s))
	}
	return string(b)
}
