// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"errors"
	"image"
	"image/color"
	"io"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
)

var errorType = reflect.TypeFor[error]()

// values makes hostile ones, and gives back what calls answered.
type values struct {
	draw *rand.Rand
	pool map[reflect.Type][]reflect.Value
}

// keep remembers an answer, and what is in it.
func (v values) keep(x reflect.Value) {
	t := x.Type()
	switch t.Kind() {
	case reflect.Struct, reflect.Int64, reflect.Int8, reflect.String:
	case reflect.Slice:
		for i := range min(x.Len(), 3) {
			v.keep(x.Index(i))
		}
	default:
		return
	}
	const most = 40
	if list := v.pool[t]; len(list) < most {
		v.pool[t] = append(list, clone(x))
	} else {
		list[v.draw.IntN(most)] = clone(x)
	}
	for i := 0; t.Kind() == reflect.Struct && i < t.NumField(); i++ {
		if t.Field(i).IsExported() {
			v.keep(x.Field(i))
		}
	}
}

var texts = []string{"", " ", "0", "-1", "1e400", "78.194 mm", "78.194 ± 0.004 mm", "3 1/8 in", "NaN", "inf", "thrust", "12.5°", "45° included",
	"40 cycles/min", "450 rev/min", "22 ± 1 °C", "11.4e-6/K", "H7", "0.05 mm to 0.08 mm", "\x00\xff", strings.Repeat("9", 400), strings.Repeat("é", 1000), "<script>", "−0,5"}

var floats = []float64{0, 1, -1, 0.5, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, 1e-300, 1e18, math.Copysign(0, -1)}

var wholes = []int64{0, 1, -1, 2, 3, 7, 100, math.MaxInt64, math.MinInt64, math.MaxInt64 - 1, math.MaxInt32, math.MinInt32, 1 << 53,
	78_000_000_000, 78_194_000_000, 50_000_000, 1_000_000, 20_000_000, 1_000_000_000}

// of returns a value of a type.
func (v values) of(t reflect.Type, depth int) reflect.Value {
	if list := v.pool[t]; len(list) > 0 && v.draw.IntN(2) == 0 {
		return clone(list[v.draw.IntN(len(list))])
	}
	x := reflect.New(t).Elem()
	if depth > 8 {
		return x
	}
	switch t.Kind() {
	case reflect.Bool:
		x.SetBool(v.draw.IntN(2) == 0)
	case reflect.Int, reflect.Int32, reflect.Int64:
		n := wholes[v.draw.IntN(len(wholes))]
		switch v.draw.IntN(4) {
		case 0:
			n = v.draw.Int64N(200_000_000_000) - 50_000_000_000
		case 1:
			n = v.draw.Int64N(40) - 4
		}
		if t.Kind() != reflect.Int64 && v.draw.IntN(2) == 0 { // a count
			n = v.draw.Int64N(12) - 1
		}
		x.SetInt(n)
		if t.Kind() == reflect.Int32 {
			x.SetInt(int64(int32(n)))
		}
	case reflect.Int8:
		x.SetInt(int64(int8(v.draw.IntN(12) - 1)))
		if v.draw.IntN(20) == 0 {
			x.SetInt(int64(int8(v.draw.IntN(256))))
		}
	case reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64, reflect.Uint:
		x.SetUint(v.draw.Uint64() >> (64 - min(t.Bits(), 63)))
	case reflect.Float64:
		if v.draw.IntN(8) > 0 {
			x.SetFloat(v.draw.NormFloat64() * math.Pow(10, float64(v.draw.IntN(9)-3)))
		} else {
			x.SetFloat(floats[v.draw.IntN(len(floats))])
		}
	case reflect.String:
		x.SetString(texts[v.draw.IntN(len(texts))])
	case reflect.Slice:
		v.slice(x, depth)
	case reflect.Array:
		for i := range t.Len() {
			x.Index(i).Set(v.of(t.Elem(), depth+1))
		}
	case reflect.Map:
		x.Set(reflect.MakeMap(t))
		for range v.draw.IntN(4) {
			x.SetMapIndex(v.of(t.Key(), depth+1), v.of(t.Elem(), depth+1))
		}
	case reflect.Pointer:
		if v.draw.IntN(4) > 0 {
			x.Set(reflect.New(t.Elem()))
			x.Elem().Set(v.of(t.Elem(), depth+1))
		}
	case reflect.Struct:
		for i := range t.NumField() {
			if t.Field(i).IsExported() && v.draw.IntN(6) > 0 {
				x.Field(i).Set(v.of(t.Field(i).Type, depth+1))
			}
		}
	case reflect.Interface:
		v.face(x)
	case reflect.Func:
		// A speed, say: any function of what it is given.
		x.Set(reflect.MakeFunc(t, func([]reflect.Value) (out []reflect.Value) {
			for i := range t.NumOut() {
				out = append(out, v.of(t.Out(i), depth+1))
			}
			return out
		}))
	}
	return x
}

// slice fills one: nothing, a few, many, doubled.
func (v values) slice(x reflect.Value, depth int) {
	t := x.Type()
	n := []int{0, 1, 2, 3, 5, 12, 40}[v.draw.IntN(7)]
	if depth == 0 && v.draw.IntN(10) == 0 && (t.Elem().Kind() == reflect.Int64 || t.Elem().Kind() == reflect.Float64) {
		n = 2000
	}
	if depth > 2 {
		n = min(n, 3)
	}
	if n == 0 && v.draw.IntN(2) == 0 {
		return // nil
	}
	x.Set(reflect.MakeSlice(t, n, n))
	for i := range n {
		if i > 0 && v.draw.IntN(5) == 0 {
			x.Index(i).Set(clone(x.Index(i - 1)))
		} else {
			x.Index(i).Set(v.of(t.Elem(), depth+1))
		}
	}
}

// face fills an interface that the module asks for.
func (v values) face(x reflect.Value) {
	for _, one := range []any{
		io.Reader(strings.NewReader(texts[v.draw.IntN(len(texts))] + "\n1,2,3\n")), io.Writer(io.Discard), errors.New("of a hammer"), odd{v.draw.IntN(5), v.draw.IntN(70)},
	} {
		if reflect.TypeOf(one).AssignableTo(x.Type()) {
			x.Set(reflect.ValueOf(one))
			return
		}
	}
}

// odd is an image of a kind that nobody knows, empty, thin or noisy.
type odd struct{ w, h int }

func (odd) ColorModel() color.Model   { return color.NRGBA64Model }
func (o odd) Bounds() image.Rectangle { return image.Rect(-3, 2, o.w*20-3, o.h+2) }
func (o odd) At(x, y int) color.Color {
	return color.NRGBA64{uint16(x * 7919 * y), uint16(x ^ y), uint16(y), uint16(x)}
}

// clone copies a value so that no slice, map or pointer is shared, as far as fields can be set.
func clone(x reflect.Value) reflect.Value {
	out := reflect.New(x.Type()).Elem()
	out.Set(x)
	switch x.Kind() {
	case reflect.Slice:
		if !x.IsNil() {
			out.Set(reflect.MakeSlice(x.Type(), x.Len(), x.Len()))
			for i := range x.Len() {
				out.Index(i).Set(clone(x.Index(i)))
			}
		}
	case reflect.Map:
		if !x.IsNil() {
			out.Set(reflect.MakeMap(x.Type()))
			for _, k := range x.MapKeys() {
				out.SetMapIndex(k, clone(x.MapIndex(k)))
			}
		}
	case reflect.Pointer:
		if !x.IsNil() {
			out.Set(reflect.New(x.Type().Elem()))
			out.Elem().Set(clone(x.Elem()))
		}
	case reflect.Array:
		for i := range x.Len() {
			out.Index(i).Set(clone(x.Index(i)))
		}
	case reflect.Struct:
		for i := range x.NumField() {
			if x.Type().Field(i).IsExported() {
				out.Field(i).Set(clone(x.Field(i)))
			}
		}
	}
	return out
}

// same compares as [reflect.DeepEqual] does, NaN being itself.
func same(a, b reflect.Value) bool {
	switch a.Kind() {
	case reflect.Float64:
		return math.Float64bits(a.Float()) == math.Float64bits(b.Float())
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			return false
		}
		for i := range a.Len() {
			if !same(a.Index(i), b.Index(i)) {
				return false
			}
		}
		return true
	case reflect.Struct:
		for i := range a.NumField() {
			if !same(a.Field(i), b.Field(i)) {
				return false
			}
		}
		return true
	case reflect.Pointer:
		return a.IsNil() == b.IsNil() && (a.IsNil() || same(a.Elem(), b.Elem()))
	case reflect.Map:
		if a.Len() != b.Len() {
			return false
		}
		for _, k := range a.MapKeys() {
			if o := b.MapIndex(k); !o.IsValid() || !same(a.MapIndex(k), o) {
				return false
			}
		}
		return true
	case reflect.Func, reflect.Interface:
		return true
	case reflect.String:
		return a.String() == b.String()
	case reflect.Bool:
		return a.Bool() == b.Bool()
	}
	if a.CanInt() {
		return a.Int() == b.Int()
	}
	if a.CanUint() {
		return a.Uint() == b.Uint()
	}
	return true
}

// wild reports whether something in a value is no number, or one of no quantity in this world.
func wild(x reflect.Value, depth int) bool {
	if depth > 12 {
		return false
	}
	switch x.Kind() {
	case reflect.Float64:
		f := math.Abs(x.Float())
		return !(f == 0 || f > 1e-60 && f < 1e60)
	case reflect.Slice, reflect.Array:
		for i := range x.Len() {
			if wild(x.Index(i), depth+1) {
				return true
			}
		}
	case reflect.Struct:
		for i := range x.NumField() {
			if wild(x.Field(i), depth+1) {
				return true
			}
		}
	case reflect.Pointer:
		return !x.IsNil() && wild(x.Elem(), depth+1)
	}
	return false
}

// notANumber says where in an answer a NaN or an infinity is, "" where there is none.
func notANumber(x reflect.Value, path string, depth int) string {
	if depth > 12 {
		return ""
	}
	switch x.Kind() {
	case reflect.Float64:
		if f := x.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return path + " is no finite number"
		}
	case reflect.Slice, reflect.Array:
		for i := range min(x.Len(), 50) {
			if w := notANumber(x.Index(i), path+"[]", depth+1); w != "" {
				return w
			}
		}
	case reflect.Struct:
		for i := range x.NumField() {
			if w := notANumber(x.Field(i), path+"."+x.Type().Field(i).Name, depth+1); w != "" {
				return w
			}
		}
	case reflect.Pointer:
		if !x.IsNil() {
			return notANumber(x.Elem(), path, depth+1)
		}
	}
	return ""
}
