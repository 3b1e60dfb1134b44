// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A unitOf names one way to write a unit and its size in the SI unit of the quantity.
type unitOf struct {
	text string
	size float64
}

// textDigits is how many significant digits the text of a floating-point quantity keeps:
// enough for every instrument, few enough that rounding on different machines cannot show.
const textDigits = 12

// ofFloat returns x units of the given size, refusing what is not finite.
func ofFloat(kind string, x, size float64) (float64, error) {
	v := x * size
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0, fmt.Errorf("units: %s of %v: %w", kind, x, ErrNotFinite)
	}
	return v, nil
}

// appendFloat appends x with at most textDigits significant digits, never with an exponent.
func appendFloat(b []byte, x float64) []byte {
	var a [32]byte
	r, _ := strconv.ParseFloat(string(strconv.AppendFloat(a[:0], x, 'g', textDigits, 64)), 64)
	if r == 0 {
		r = 0 // no minus sign on zero
	}
	return strconv.AppendFloat(b, r, 'f', -1, 64)
}

// splitUnit cuts s into its leading decimal number and the unit behind it.
func splitUnit(kind, s string, exponent bool) (x float64, unit string, pos int, err error) {
	i := 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	digits := 0
	for ; i < len(s) && (isDigit(s[i]) || s[i] == '.'); i++ {
		if s[i] != '.' {
			digits++
		}
	}
	if digits == 0 {
		return 0, "", i, parseError(kind, s, i, ErrSyntax, "")
	}
	if j := i + 1; exponent && i < len(s) && s[i] == 'e' {
		if j < len(s) && (s[j] == '-' || s[j] == '+') {
			j++
		}
		start := j
		for j < len(s) && isDigit(s[j]) {
			j++
		}
		if j > start {
			i = j
		}
	}
	x, perr := strconv.ParseFloat(s[:i], 64)
	if perr != nil {
		if math.IsInf(x, 0) {
			return 0, "", i, parseError(kind, s, i, ErrRange, "")
		}
		return 0, "", i, parseError(kind, s, i, ErrSyntax, "")
	}
	unit = s[i:]
	if strings.HasPrefix(unit, " ") {
		unit, i = unit[1:], i+1
	}
	return x, unit, i, nil
}

// parseQuantity reads a number and one of the units.
func parseQuantity(kind, s string, exponent bool, units []unitOf) (float64, error) {
	x, unit, pos, err := splitUnit(kind, s, exponent)
	if err != nil {
		return 0, err
	}
	for _, u := range units {
		if u.text == unit {
			v, err := ofFloat(kind, x, u.size)
			if err != nil {
				return 0, parseError(kind, s, pos, ErrRange, "")
			}
			return v, nil
		}
	}
	names := make([]string, len(units))
	for i, u := range units {
		names[i] = u.text
	}
	mend := "units of " + kind + ": " + strings.Join(names, ", ")
	if unit == "" {
		if x == 0 {
			return 0, nil
		}
		return 0, parseError(kind, s, pos, ErrMissingUnit, mend)
	}
	return 0, parseError(kind, s, pos, ErrUnknownUnit, mend)
}

// unmarshalQuantity sets *q from text, or leaves it alone on error.
func unmarshalQuantity[Q any](q *Q, text []byte, parse func(string) (Q, error)) error {
	v, err := parse(string(text))
	if err != nil {
		return err
	}
	*q = v
	return nil
}
