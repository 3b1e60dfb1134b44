// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"fmt"
	"math/bits"
	"strconv"
)

// AppendText appends the text of [Length.String] and never fails. It serves [encoding.TextAppender].
func (l Length) AppendText(b []byte) ([]byte, error) {
	m := magnitude(int64(l))
	if l < 0 {
		b = append(b, '-')
	}
	b = strconv.AppendUint(b, m/PerMillimetre, 10)
	if frac := m % PerMillimetre; frac != 0 {
		b = append(b, '.')
		b = appendPadded(b, frac, 9)
		for b[len(b)-1] == '0' {
			b = b[:len(b)-1]
		}
	}
	return append(b, " mm"...), nil
}

// appendPadded appends v with leading zeros to a width of at most 20.
func appendPadded(b []byte, v uint64, width int) []byte {
	var digits [20]byte
	d := strconv.AppendUint(digits[:0], v, 10)
	for n := len(d); n < width; n++ {
		b = append(b, '0')
	}
	return append(b, d...)
}

// longest text: "-9223372036.854775808 mm"
const lengthTextMax = 24

// String returns the shortest exact text in millimetres, with its unit: "67.071875 mm". It is
// always millimetres, so that a column of readings stays readable, and always reads back:
// [ParseLength](l.String()) is l.
func (l Length) String() string {
	var a [lengthTextMax]byte
	b, _ := l.AppendText(a[:0])
	return string(b)
}

// MarshalText returns the text of [Length.String].
func (l Length) MarshalText() ([]byte, error) { return l.AppendText(make([]byte, 0, lengthTextMax)) }

// UnmarshalText reads a text as [ParseLength] does. On any error, ErrInexact too, the receiver
// keeps its value.
func (l *Length) UnmarshalText(text []byte) error {
	v, err := ParseLength(string(text))
	if err != nil {
		return err
	}
	*l = v
	return nil
}

// Format returns l in the unit with exactly that many decimal places, halves away from zero,
// computed in whole numbers: l.Format(units.Inch, 4) is "2.6406 in".
//
// The unit is one of this package's constants and there are 0 to 15 places; anything else is
// a mistake in the calling program and panics.
func (l Length) Format(unit Length, places int) string {
	var a [48]byte
	return string(l.AppendFormat(a[:0], unit, places))
}

// AppendFormat appends the text of [Length.Format] to b.
func (l Length) AppendFormat(b []byte, unit Length, places int) []byte {
	name := unitName(unit)
	if name == "" || places < 0 || places > 15 {
		panic("units: Length.Format: want one of the package's units and 0 to 15 places")
	}
	m, u := magnitude(int64(l)), uint64(unit)
	whole, rest := m/u, m%u
	scale := pow10(places)
	hi, lo := bits.Mul64(rest, scale) // rest < unit, so hi < unit
	frac, left := bits.Div64(hi, lo, u)
	if left != 0 && left >= u-left {
		if frac++; frac == scale {
			whole, frac = whole+1, 0
		}
	}
	if l < 0 && (whole != 0 || frac != 0) {
		b = append(b, '-')
	}
	b = strconv.AppendUint(b, whole, 10)
	if places > 0 {
		b = append(b, '.')
		b = appendPadded(b, frac, places)
	}
	b = append(b, ' ')
	return append(b, name...)
}

func pow10(n int) uint64 {
	p := uint64(1)
	for ; n > 0; n-- {
		p *= 10
	}
	return p
}

func unitName(unit Length) string {
	switch unit {
	case Picometre:
		return "pm"
	case Nanometre:
		return "nm"
	case Micrometre:
		return "µm"
	case Millimetre:
		return "mm"
	case Metre:
		return "m"
	case Microinch:
		return "µin"
	case Thou:
		return "thou"
	case Inch:
		return "in"
	}
	return ""
}

// FormatFraction returns the multiple of 1/den inch nearest to l, as a mixed number in lowest
// terms ("2-41/64 in"), and what is left: [ParseLength](text) + rest is l. A den that does not
// divide the inch into whole picometres, such as 3 or 1024, is ErrInexact.
func (l Length) FormatFraction(den int) (text string, rest Length, err error) {
	if den <= 0 || Inch%Length(den) != 0 {
		return "", l, fmt.Errorf("units: fraction of an inch with denominator %d: %w", den, ErrInexact)
	}
	step := Inch / Length(den)
	near := l.Round(step)
	if near%step != 0 { // saturated
		return "", l, fmt.Errorf("units: fraction of an inch of %v: %w", l, ErrRange)
	}
	m := magnitude(int64(near))
	whole, n, d := m/uint64(Inch), m%uint64(Inch)/uint64(step), uint64(den)
	for n != 0 && n%2 == 0 && d%2 == 0 {
		n, d = n/2, d/2
	}
	for n != 0 && n%5 == 0 && d%5 == 0 {
		n, d = n/5, d/5
	}
	for n != 0 && n%127 == 0 && d%127 == 0 {
		n, d = n/127, d/127
	}
	b := make([]byte, 0, 32)
	if near < 0 {
		b = append(b, '-')
	}
	if whole != 0 || n == 0 {
		b = strconv.AppendUint(b, whole, 10)
	}
	if n != 0 {
		if whole != 0 {
			b = append(b, '-')
		}
		b = strconv.AppendUint(b, n, 10)
		b = append(b, '/')
		b = strconv.AppendUint(b, d, 10)
	}
	return string(append(b, " in"...)), l - near, nil
}
