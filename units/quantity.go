// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Why a text or a number was refused. Test with [errors.Is].
var (
	ErrSyntax      = errors.New("not a quantity")                   // no number, or window, in any form that is read
	ErrMissingUnit = errors.New("missing unit")                     // a bare number: only 0 needs no unit
	ErrUnknownUnit = errors.New("unknown unit")                     // a unit that this quantity does not have
	ErrInexact     = errors.New("not a whole number of picometres") // comes together with the nearest Length
	ErrRange       = errors.New("out of range")                     // outside what the type or the shop can hold
	ErrNotFinite   = errors.New("not a finite number")              // NaN or an infinity
	ErrCrossed     = errors.New("limits crossed")                   // the lower limit lies above the upper one
	ErrUnknownName = errors.New("unknown name")                     // none of an enumeration's, in any package
	ErrNotGiven    = errors.New("not given")                        // left out, and needed, as a size of zero
)

// A ParseError reports a text that could not be read, how far the reading came, and the mend. It wraps a sentinel.
type ParseError struct {
	kind  string // what was wanted: "length", "temperature", "limits", …
	input string // the text given, cut after 80 bytes
	Pos   int    // byte offset in the text where reading stopped
	Err   error  // one of the sentinels
	Mend  string // what to write instead; may be empty
}

// Error returns what was wanted, the text, why and where it was refused, and the mend.
func (e *ParseError) Error() string {
	s := fmt.Sprintf("units: %s %q: %v at byte %d", e.kind, e.input, e.Err, e.Pos)
	if e.Mend != "" {
		s += " (" + e.Mend + ")"
	}
	return s
}

// Unwrap returns the sentinel, for [errors.Is].
func (e *ParseError) Unwrap() error { return e.Err }

// refuse clones its input, so that a caller's text does not escape where reading succeeds.
func refuse(kind, input string, pos int, err error, mend string) *ParseError {
	if err == ErrSyntax && mend == "" {
		mend = slip(input[pos:])
	}
	return &ParseError{kind: kind, input: strings.Clone(head(input, 80)), Pos: pos, Err: err, Mend: mend}
}

// refuseUnit tells what is wrong after a good number, s[:end]: no unit, none of names, or more behind it.
func refuseUnit(kind, s string, end int, names string) *ParseError {
	pos, list := end, strings.Fields(names)
	if strings.HasPrefix(s[pos:], " ") {
		pos++
	}
	rest := s[pos:]
	for _, name := range list {
		if after, ok := strings.CutPrefix(rest, name); ok && !isLetter(after) {
			return refuse(kind, s, len(s)-len(after), ErrSyntax, "nothing may follow the unit")
		}
	}
	switch number := head(s[:end], 20); {
	case rest == "":
		mend := "a bare number has no unit: write " + number + " " + list[0] + " or " + number + " " + list[1]
		return refuse(kind, s, pos, ErrMissingUnit, mend)
	case rest == "mil" || rest == "mils":
		mend := "mil is said for a thousandth of an inch and for a millimetre: write thou or mm"
		return refuse(kind, s, pos, ErrUnknownUnit, mend)
	case isLetter(rest) && exponent(rest) == 0 || strings.ContainsAny(rest[:1], `"'/`) || strings.HasPrefix(rest, "°"):
		return refuse(kind, s, pos, ErrUnknownUnit, "units of "+kind+": "+strings.Join(list, ", "))
	}
	return refuse(kind, s, pos, ErrSyntax, "")
}

// slip names a common slip of the pen by what stands where reading stopped.
func slip(rest string) string {
	switch c, _ := utf8.DecodeRuneInString(rest); {
	case c == ',':
		return "write a decimal point, and nothing between thousands"
	case c == '−' || c == '–':
		return "write the sign as - or +"
	case unicode.IsSpace(c):
		return "one plain space, between number and unit, and no other"
	case exponent(rest) > 0:
		return "write the number without an exponent"
	}
	return "write a number and a unit"
}

// head returns the first most bytes of s.
func head(s string, most int) string {
	if len(s) > most {
		return s[:most] + "…"
	}
	return s
}

func isLetter(s string) bool {
	c, _ := utf8.DecodeRuneInString(s)
	return unicode.IsLetter(c)
}

// mostSI bounds the floating-point quantities, in SI units: beyond any workshop, and so far from the end of float64
// that no product of a few overflows.
const mostSI = 1e15

func finite(x float64) bool         { return math.Abs(x) <= math.MaxFloat64 }
func isDigit(c byte) bool           { return c-'0' <= 9 }
func text(b []byte, _ error) string { return string(b) }

// in returns v as a number of the unit, 0 for a unit of 0.
func in[Q ~float64 | ~int64](v, unit Q) float64 {
	if unit == 0 {
		return 0
	}
	return float64(v) / float64(unit)
}

// put returns x, to 12 digits, in which machines do not differ, and its unit. What is not finite is an error besides.
func put(x float64, unit string) (_ []byte, err error) {
	if !finite(x) {
		err = fmt.Errorf("units: text of %v%s: %w", x, unit, ErrNotFinite)
	}
	return append(strconv.AppendFloat(nil, x+0, 'g', 12, 64), unit...), err // −0 + 0 is 0
}

func must[Q any](q Q, err error) Q {
	if err != nil {
		panic(err)
	}
	return q
}

// exponent returns the length of the exponent that s begins with, as e-6, or 0.
func exponent(s string) int {
	i := 1
	if strings.HasPrefix(s, "e-") || strings.HasPrefix(s, "e+") {
		i = 2
	}
	if _, end := scanDigits(s, i); strings.HasPrefix(s, "e") && end > i {
		return end
	}
	return 0
}

// scanFloat reads the decimal number that s begins with; end is where it stopped.
func scanFloat(s string) (x float64, end int, err error) {
	if s != "" && (s[0] == '+' || s[0] == '-') {
		end = 1
	}
	start := end
	for end < len(s) && end <= 100 && (isDigit(s[end]) || s[end] == '.' && !strings.Contains(s[start:end], ".")) {
		end++
	}
	if s[start:end] == "" || s[start:end] == "." {
		return 0, end, ErrSyntax
	}
	if end += exponent(s[end:]); end > 100 {
		return 0, end, ErrRange
	}
	if x, err = strconv.ParseFloat(s[:end], 64); err != nil {
		err = ErrRange
	}
	return x, end, err
}

// unitIndex returns the place of s among the names, or -1.
func unitIndex(names, s string) int {
	for i, more := 0, true; more; i++ {
		var name string
		if name, names, more = strings.Cut(names, " "); name == s {
			return i
		}
	}
	return -1
}

// scanUnit reads a number and the place of its unit among the names, -1 for a bare zero.
func scanUnit(kind, s, names string) (x float64, unit int, err error) {
	x, end, err := scanFloat(s)
	if err != nil {
		return 0, 0, refuse(kind, s, end, err, "")
	}
	unit = unitIndex(names, strings.TrimPrefix(s[end:], " "))
	if unit < 0 && (x != 0 || end < len(s)) {
		return 0, 0, refuseUnit(kind, s, end, names)
	}
	return x, unit, nil
}

// parse sets *q to a number and one of the units, or leaves it alone.
func parse(q *float64, kind, s, names string, units ...float64) error {
	x, unit, err := scanUnit(kind, s, names)
	if err == nil && unit >= 0 {
		x *= units[unit]
	}
	if err == nil && math.Abs(x) > mostSI {
		err = refuse(kind, s, len(s), ErrRange, "")
	}
	if err == nil {
		*q = x
	}
	return err
}

// given sets *q to what parse reads, to the zero Q where text is empty, or leaves it alone.
func given[Q any](q *Q, text []byte, parse func(string) (Q, error)) (err error) {
	var v Q
	if len(text) > 0 {
		v, err = parse(string(text))
	}
	if err == nil {
		*q = v
	}
	return err
}
