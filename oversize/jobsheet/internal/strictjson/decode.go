// SPDX-License-Identifier: BSD-3-Clause

package strictjson

import (
	"encoding"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

const leaveOut = "leave the field out where nothing is known"

// A decoder sets Go values from the tree.
type decoder struct{ doc *Document }

// value sets v. A departure is a fault, and v keeps what it has.
func (d decoder) value(n *node, v reflect.Value, at *place) {
	if n.kind == null {
		d.doc.fault(at, n, leaveOut, nil)
		return
	}
	if u, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		d.unmarshal(n, u, at)
		return
	}
	switch v.Kind() {
	case reflect.Pointer:
		p := reflect.New(v.Type().Elem())
		d.value(n, p.Elem(), at)
		v.Set(p)
	case reflect.Struct:
		if d.is(n, object, at) {
			d.fields(n, v, at)
		}
	case reflect.Slice:
		if d.is(n, array, at) {
			v.Set(reflect.MakeSlice(v.Type(), len(n.fields), len(n.fields)))
			in := &place{up: at, list: true} // one for all, since a path is made at once
			for i := range n.fields {
				in.item = i
				d.value(&n.fields[i].value, v.Index(i), in)
			}
		}
	case reflect.String:
		if d.text(n, at) {
			v.SetString(strings.Clone(n.text)) // of its own, that the file need not stay
		}
	case reflect.Bool:
		if d.is(n, boolean, at) {
			v.SetBool(n.text == "true")
		}
	case reflect.Int:
		if d.is(n, number, at) {
			i, err := strconv.ParseInt(n.text, 10, 32)
			if err != nil {
				d.doc.fault(at, n, "want a whole number", err)
				return
			}
			v.SetInt(i)
		}
	case reflect.Float64:
		if d.is(n, number, at) {
			f, err := strconv.ParseFloat(n.text, 64)
			if err != nil {
				d.doc.fault(at, n, "want a number that fits", err)
				return
			}
			v.SetFloat(f)
		}
	default:
		panic("strictjson: no way to read " + v.Type().String())
	}
}

// is reports whether the node is of the kind, and faults where it is not.
func (d decoder) is(n *node, k kind, at *place) bool {
	if n.kind != k {
		d.doc.fault(at, n, "want "+kindNames[k], nil)
	}
	return n.kind == k
}

// text reports whether the node is a text that can be printed.
func (d decoder) text(n *node, at *place) bool {
	if !d.is(n, text, at) {
		return false
	}
	why := d.doc.reader.plain(n.text)
	if n.text == "" {
		why = "empty: " + leaveOut
	}
	if why != "" {
		d.doc.fault(at, n, why, nil)
	}
	return why == ""
}

// unmarshal reads a text with a meaning of its own, a quantity or the name of a choice.
func (d decoder) unmarshal(n *node, u encoding.TextUnmarshaler, at *place) {
	if n.kind == number {
		d.doc.fault(at, n, "a bare number has no unit: want a text such as "+d.doc.reader.Example(u), nil)
		return
	}
	if !d.text(n, at) {
		return
	}
	d.doc.buffer = append(d.doc.buffer[:0], n.text...) // which whoever unmarshals copies, where he wants to keep it
	if err := u.UnmarshalText(d.doc.buffer); err != nil {
		d.doc.fault(at, n, d.doc.reader.Explain(err), err)
	}
}

// fields sets a struct, and drops what it has no field for.
func (d decoder) fields(n *node, v reflect.Value, at *place) {
	s := d.doc.shape(v.Type())
	in := &place{up: at}
	n.fields = slices.DeleteFunc(n.fields, func(f field) bool {
		in.name = f.name
		m := s.member(f.name)
		if m == nil {
			d.doc.fault(in, &f.value, s.unknown(f.name), nil)
			return true
		}
		to := v.FieldByIndex(m.path)
		d.value(&f.value, to, in)
		if m.omits && (f.value.kind == text || f.value.kind == number) && to.IsZero() {
			d.doc.fault(in, &f.value, "zero, which is the same as nothing here: "+leaveOut, nil)
		}
		return false
	})
}
