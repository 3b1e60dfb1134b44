// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"math"
	"math/bits"
)

const lengthMend = "write 67.02 mm, 2.6406 in, 2-41/64 in or 1.5 thou"

// ParseLength reads a length:
//
//	length    = [ "+" | "-" ] ( "0" | magnitude [ " " ] unit ) .
//	magnitude = decimal | fraction | digits ( "-" | " " ) fraction .
//	decimal   = digits [ "." { digit } ] | "." digits .
//	fraction  = digits "/" digits .
//	unit      = "mm" | "um" | "µm" | "μm" | "m" | "nm" | "pm"
//	          | "in" | `"` | "″" | "thou" | "uin" | "µin" | "μin" .
//
// The sign covers the whole value: -2-41/64 in is −(2 + 41/64) in. In a mixed number the
// numerator is smaller than the denominator. A bare number other than 0 is ErrMissingUnit,
// for the unit mistake is the costly one. There is no exponent, no decimal comma and no mil.
//
// The result is exact. A text that is no whole number of picometres, such as 1/3 in or the
// binary tail that spreadsheets print (67.10499999999999999 mm), returns ErrInexact together
// with the nearest Length, halves away from zero, so that a caller may accept it. A length
// beyond the type's range is ErrRange. Every error is a [*ParseError].
func ParseLength(s string) (Length, error) {
	l, pos, err := parseLength(s)
	if err != nil {
		mend := ""
		switch err {
		case ErrMissingUnit:
			mend = "a bare number has no unit: write " + s[:min(pos, 20)] + " mm or " + s[:min(pos, 20)] + " in"
		case ErrUnknownUnit:
			mend = "units of length: mm, µm, um, m, nm, pm, in, thou, µin, uin"
		case ErrSyntax:
			mend = lengthMend
		}
		return l, parseError("length", s, pos, err, mend)
	}
	return l, nil
}

// MustParseLength calls [ParseLength](s) and panics on error. It is intended for constants and
// tests with hard-coded strings.
func MustParseLength(s string) Length {
	l, err := ParseLength(s)
	if err != nil {
		panic(err)
	}
	return l
}

// parseLength returns the length, the offset where reading stopped, and a bare sentinel, so
// that the path of success does not allocate.
func parseLength(s string) (Length, int, error) {
	i := 0
	negative := false
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		negative = s[i] == '-'
		i++
	}
	num, i, err := scanMagnitude(s, i)
	if err != nil {
		return 0, i, err
	}
	if i == len(s) {
		if num.isZero() && !num.fraction {
			return 0, i, nil
		}
		return 0, i, ErrMissingUnit
	}
	if s[i] == ' ' {
		i++
	}
	unit, ok := lengthUnit(s[i:])
	if !ok {
		if i == len(s) {
			return 0, i, ErrMissingUnit
		}
		return 0, i, ErrUnknownUnit
	}
	pm, exact, ok := num.times(uint64(unit))
	if !ok {
		return 0, i, ErrRange
	}
	l, ok := signed(pm, negative)
	if !ok {
		return 0, i, ErrRange
	}
	if !exact {
		return l, len(s), ErrInexact
	}
	return l, len(s), nil
}

// A number is the value whole + num/den, with inexact set where further digits that cannot
// matter but to exactness were dropped.
type number struct {
	whole, num, den uint64
	inexact         bool
	fraction        bool // written with a slash
}

func (n number) isZero() bool { return n.whole == 0 && n.num == 0 && !n.inexact }

// times returns n·unit rounded to the nearest, halves away from zero; whether it is exact;
// and whether it fits in 64 bits.
func (n number) times(unit uint64) (pm uint64, exact, ok bool) {
	hi, whole := bits.Mul64(n.whole, unit)
	if hi != 0 {
		return 0, false, false
	}
	hi, lo := bits.Mul64(n.num, unit)
	if hi >= n.den {
		return 0, false, false
	}
	q, rest := bits.Div64(hi, lo, n.den)
	exact = rest == 0 && !n.inexact
	if rest != 0 && rest >= n.den-rest {
		q++
	}
	pm, carry := bits.Add64(whole, q, 0)
	return pm, exact, carry == 0
}

// scanMagnitude reads a decimal, a fraction or a mixed number from s[i:].
func scanMagnitude(s string, i int) (number, int, error) {
	whole, start, i, ok := uint64(0), i, i, true
	for ; i < len(s) && isDigit(s[i]); i++ {
		whole, ok = appendDigit(whole, s[i], ok)
	}
	digits := i > start
	switch {
	case i < len(s) && s[i] == '.':
		n := number{whole: whole, den: 1}
		places := 0
		for i++; i < len(s) && isDigit(s[i]); i++ {
			digits = true
			if places < 18 {
				n.num = n.num*10 + uint64(s[i]-'0')
				n.den *= 10
				places++
			} else if s[i] != '0' {
				// 10⁻¹⁸ of the largest unit is a millionth of a picometre.
				n.inexact = true
			}
		}
		if !digits {
			return number{}, i, ErrSyntax
		}
		if !ok {
			return number{}, i, ErrRange
		}
		return n, i, nil
	case !digits:
		return number{}, i, ErrSyntax
	case !ok:
		return number{}, i, ErrRange
	case i < len(s) && s[i] == '/':
		den, j, err := scanDenominator(s, i)
		if err != nil {
			return number{}, j, err
		}
		return number{num: whole, den: den, fraction: true}, j, nil
	case i+1 < len(s) && (s[i] == '-' || s[i] == ' ') && isDigit(s[i+1]):
		num, ok := uint64(0), true
		j := i + 1
		for ; j < len(s) && isDigit(s[j]); j++ {
			num, ok = appendDigit(num, s[j], ok)
		}
		if j == len(s) || s[j] != '/' {
			return number{}, j, ErrSyntax
		}
		den, k, err := scanDenominator(s, j)
		if err != nil {
			return number{}, k, err
		}
		if !ok || num >= den {
			return number{}, j, ErrSyntax // 2-65/64 is a slip of the pen
		}
		return number{whole: whole, num: num, den: den, fraction: true}, k, nil
	}
	return number{whole: whole, den: 1}, i, nil
}

// scanDenominator reads "/digits" at s[i:].
func scanDenominator(s string, i int) (uint64, int, error) {
	den, ok := uint64(0), true
	start := i + 1
	for i = start; i < len(s) && isDigit(s[i]); i++ {
		den, ok = appendDigit(den, s[i], ok)
	}
	if i == start || den == 0 && ok {
		return 0, i, ErrSyntax
	}
	if !ok {
		return 0, i, ErrRange
	}
	return den, i, nil
}

func isDigit(c byte) bool { return '0' <= c && c <= '9' }

// appendDigit returns 10n + c and whether that still fits in an int64.
func appendDigit(n uint64, c byte, ok bool) (uint64, bool) {
	if !ok || n > math.MaxInt64/10 {
		return n, false
	}
	return n*10 + uint64(c-'0'), true
}

func lengthUnit(s string) (Length, bool) {
	switch s {
	case "mm":
		return Millimetre, true
	case "um", "µm", "μm":
		return Micrometre, true
	case "m":
		return Metre, true
	case "nm":
		return Nanometre, true
	case "pm":
		return Picometre, true
	case "in", `"`, "″":
		return Inch, true
	case "thou":
		return Thou, true
	case "uin", "µin", "μin":
		return Microinch, true
	}
	return 0, false
}
