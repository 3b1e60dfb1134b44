// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"fmt"
	"math"
	"math/bits"
	"strconv"
	"strings"
)

const lengthTextMax = len("-9223372036.854775808 mm")

// String returns the shortest exact text in millimetres, "67.071875 mm", which [ParseLength] reads back to l.
func (l Length) String() string {
	var a [lengthTextMax]byte
	return string(l.appendText(a[:0]))
}

func (l Length) appendText(b []byte) []byte {
	m := magnitude(l)
	if l < 0 {
		b = append(b, '-')
	}
	b = strconv.AppendUint(b, m/PerMillimetre, 10)
	if frac := m % PerMillimetre; frac != 0 {
		b = appendFraction(b, frac, 9)
		for b[len(b)-1] == '0' {
			b = b[:len(b)-1]
		}
	}
	return append(b, " mm"...)
}

// MarshalText returns the text of [Length.String].
func (l Length) MarshalText() ([]byte, error) {
	return l.appendText(make([]byte, 0, lengthTextMax)), nil
}

// UnmarshalText is [ParseLength]. On any error, ErrInexact too, the receiver keeps its value.
func (l *Length) UnmarshalText(text []byte) error {
	v, err := ParseLength(string(text))
	if err == nil {
		*l = v
	}
	return err
}

// Format returns l in the unit with that many decimal places (0 to 15, the nearer for others), halves away from zero,
// computed in whole numbers: l.Format(units.Inch, 4) is "2.6406 in". A unit that [ParseLength] does not read is written
// as a factor, "1.50 × 50.8 mm"; one not above 0 is taken for a millimetre.
func (l Length) Format(unit Length, places int) string {
	var a [48]byte
	b := a[:0]
	if unit <= 0 {
		unit = Millimetre
	}
	places = min(max(places, 0), 15)
	m, u, scale := magnitude(l), uint64(unit), uint64(math.Pow10(places))
	whole := m / u
	hi, lo := bits.Mul64(m%u, scale)
	frac, _, _ := divide(hi, lo, u) // fits, since the rest is below the unit
	if frac == scale {
		whole, frac = whole+1, 0
	}
	if l < 0 && (whole != 0 || frac != 0) {
		b = append(b, '-')
	}
	b = strconv.AppendUint(b, whole, 10)
	if places > 0 {
		b = appendFraction(b, frac, places)
	}
	b = append(b, ' ')
	if name := lengthName(unit); name != "" {
		return string(append(b, name...))
	}
	return string(unit.appendText(append(b, "× "...)))
}

// appendFraction appends a point and v with leading zeros to the width, at most 15.
func appendFraction(b []byte, v uint64, width int) []byte {
	const zeros = ".000000000000000"
	b = append(b, zeros[:width+1]...)
	for i := len(b) - 1; v != 0; i-- {
		b[i] = byte('0' + v%10)
		v /= 10
	}
	return b
}

// FormatFraction returns the multiple of 1/den inch nearest to l, as a mixed number in lowest terms ("2-41/64 in"), and
// what is left: [ParseLength](text) + rest is l. A den that does not divide the inch into whole picometres, such as 3
// or 1024, is ErrInexact; a multiple that does not fit is ErrRange.
func (l Length) FormatFraction(den int) (text string, rest Length, err error) {
	if den <= 0 || Inch%Length(den) != 0 {
		return "", l, fmt.Errorf("units: fraction of an inch with denominator %d: %w", den, ErrInexact)
	}
	near := l.Round(Inch / Length(den))
	if near%(Inch/Length(den)) != 0 { // saturated
		return "", l, fmt.Errorf("units: fraction of an inch of %v: %w", l, ErrRange)
	}
	sign, whole, n := "", magnitude(near)/uint64(Inch), magnitude(near)%uint64(Inch)
	if near < 0 {
		sign = "-"
	}
	gcd, r := uint64(Inch), n
	for r != 0 {
		gcd, r = r, gcd%r
	}
	text = fmt.Sprintf("%s%d-%d/%d in", sign, whole, n/gcd, uint64(Inch)/gcd)
	if n == 0 {
		text = fmt.Sprintf("%s%d in", sign, whole)
	} else if whole == 0 {
		text = fmt.Sprintf("%s%d/%d in", sign, n/gcd, uint64(Inch)/gcd)
	}
	return text, l - near, nil
}

// ParseLength reads a length:
//
//	length    = [ "+" | "-" ] ( "0" | magnitude [ " " ] unit ) .
//	magnitude = decimal | fraction | digits ( "-" | " " ) fraction .
//	decimal   = digits [ "." { digit } ] | "." digits .
//	fraction  = digits "/" digits .
//	unit      = "mm" | "um" | "µm" | "μm" | "m" | "nm" | "pm" | "in" | `"` | "″" | "thou" | "uin" | "µin" | "μin" .
//
// The sign covers the whole value: -2-41/64 in is −(2 + 41/64) in. The fraction of a mixed number is below 1. A bare
// number other than 0 is ErrMissingUnit, for the unit mistake is the costly one. There is no exponent, decimal comma or
// mil.
//
// The result is exact. A text that is no whole number of picometres, such as 1/3 in or the binary tail that
// spreadsheets print (67.1049999999999999 mm), returns ErrInexact together with the nearest Length, halves away from
// zero, so that a caller may accept it; digits behind the eighteenth decimal place count for ErrInexact alone. A length
// beyond the type's range is ErrRange. Every error is a [*ParseError].
func ParseLength(s string) (Length, error) {
	l, _, at := parseLength(s, 0)
	if at.err != nil {
		return l, lengthError(s, l, at)
	}
	return l, nil
}

// MustParseLength is [ParseLength] for constants and tests with hard-coded strings: it panics on error.
func MustParseLength(s string) Length { return must(ParseLength(s)) }

// A stop is where and why reading ended. It becomes a ParseError late, so that success does not allocate.
type stop struct {
	pos  int
	err  error
	mend string
}

func lengthError(s string, l Length, at stop) *ParseError {
	switch at.err {
	case ErrMissingUnit, ErrUnknownUnit:
		return refuseUnit("length", s, at.pos, lengthNames)
	case ErrInexact:
		at.mend = "the nearest length is " + l.String()
	}
	return refuse("length", s, at.pos, at.err, at.mend)
}

// parseLength also returns the unit that the text names, or 0. A number without one is in units of bare, if that is not
// 0.
func parseLength(s string, bare Length) (l, unit Length, at stop) {
	i := 0
	if s != "" && (s[0] == '+' || s[0] == '-') {
		i = 1
	}
	n, at := scanNumber(s, i)
	if at.err != nil {
		return 0, 0, at
	}
	if rest := s[at.pos:]; rest != "" {
		if unit = lengthUnit(strings.TrimPrefix(rest, " ")); unit == 0 {
			return 0, 0, stop{at.pos, ErrUnknownUnit, ""}
		}
		bare = unit
	} else if bare == 0 && (n.whole|n.num != 0 || n.more) {
		return 0, 0, stop{at.pos, ErrMissingUnit, ""}
	}
	at.pos = len(s)
	pm, exact, ok := n.times(uint64(bare))
	l, fits := signed(pm, i == 1 && s[0] == '-')
	if !ok || !fits {
		return 0, unit, stop{len(s), ErrRange, ""}
	}
	if !exact {
		at.err = ErrInexact
	}
	return l, unit, at
}

// A number is whole + num/den, and a little more where digits were dropped that only tell inexact from exact.
type number struct {
	whole, num, den uint64
	more            bool
}

// times returns n·unit rounded to the nearest, halves up; whether it is exact; and whether it fits.
func (n number) times(unit uint64) (pm uint64, exact, ok bool) {
	over, whole := bits.Mul64(n.whole, unit)
	hi, lo := bits.Mul64(n.num, unit)
	part, exact, ok := divide(hi, lo, n.den)
	pm, carry := bits.Add64(whole, part, 0)
	return pm, exact && !n.more, ok && over == 0 && carry == 0
}

// scanNumber reads a decimal, a fraction or a mixed number from s[i:].
func scanNumber(s string, i int) (n number, at stop) {
	const mixedMend = "a mixed number is written as 2-41/64, the fraction below 1"
	start := i
	n.den = 1
	n.whole, i = scanDigits(s, i)
	switch {
	case i < len(s) && s[i] == '.':
		point := i
		for i++; i < len(s) && isDigit(s[i]); i++ {
			if i-point <= 18 { // 1e-18 of the largest unit is a millionth of a picometre
				n.num, n.den = n.num*10+uint64(s[i]-'0'), n.den*10
			} else if s[i] != '0' {
				n.more = true
			}
		}
		if i-start == 1 {
			return n, stop{i, ErrSyntax, ""}
		}
	case i == start:
		return n, stop{i, ErrSyntax, ""}
	case i+1 < len(s) && (s[i] == '/' || s[i] == '-' || s[i] == ' ') && isDigit(s[i+1]):
		mixed := s[i] != '/'
		if mixed {
			n.num, i = scanDigits(s, i+1)
			if i+1 >= len(s) || s[i] != '/' || !isDigit(s[i+1]) {
				return n, stop{i, ErrSyntax, mixedMend}
			}
		} else {
			n.whole, n.num = 0, n.whole
		}
		slash := i
		n.den, i = scanDigits(s, i+1)
		switch {
		case n.num == tooBig || n.den == tooBig:
			return n, stop{i, ErrRange, ""}
		case n.den == 0:
			return n, stop{i, ErrSyntax, "nothing is divided by 0"}
		case mixed && n.num >= n.den:
			return n, stop{slash, ErrSyntax, mixedMend}
		}
	}
	return n, stop{pos: i}
}

// tooBig stands for digits that do not fit in 63 bits; as a whole number it is out of range itself.
const tooBig = math.MaxUint64

// scanDigits reads digits from s[i:].
func scanDigits(s string, i int) (v uint64, end int) {
	for ; i < len(s) && isDigit(s[i]); i++ {
		if v > math.MaxInt64/10 {
			v = tooBig
		} else {
			v = v*10 + uint64(s[i]-'0')
		}
	}
	return v, i
}

// lengthNames are the units of length as text.
const lengthNames = `mm in µm thou µin m nm pm um uin " ″ μm μin`

func lengthUnit(name string) Length {
	if i := unitIndex(lengthNames, name); i >= 0 {
		return [...]Length{
			Millimetre, Inch, Micrometre, Thou, Microinch, Metre, Nanometre, Picometre,
			Micrometre, Microinch, Inch, Inch, Micrometre, Microinch,
		}[i]
	}
	return 0
}

func lengthName(unit Length) string {
	for i, u := range [...]Length{Millimetre, Inch, Micrometre, Thou, Microinch, Metre, Nanometre, Picometre} {
		if u == unit {
			return [...]string{"mm", "in", "µm", "thou", "µin", "m", "nm", "pm"}[i]
		}
	}
	return ""
}
