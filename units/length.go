// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"cmp"
	"fmt"
	"math"
	"math/bits"

	"github.com/shopspring/decimal"
)

// Length is a distance, held as an exact whole number of picometres (10⁻¹² m).
//
// Lengths compare with == and <, sort with [slices.Sort], and can be map keys and constants. The range is about ±9 223
// km; sums beyond it wrap, as all Go integers do. [Of] refuses anything beyond [MaxLength], so that sums cannot come
// near.
type Length int64

// Common lengths. To count units in a Length, divide: int64(bore / units.Thou). To make a Length from a whole number of
// units, multiply: units.Length(n) * units.Micrometre. There is no Mil: it is said for a thou and for a millimetre.
const (
	Picometre  Length = 1
	Nanometre         = 1000 * Picometre
	Micrometre        = 1000 * Nanometre
	Millimetre        = 1000 * Micrometre
	Metre             = 1000 * Millimetre

	Microinch = 25_400 * Picometre // 1 in is 25.4 mm exactly
	Tenth     = 100 * Microinch    // a machinist's tenth: 0.0001 in
	Thou      = 1000 * Microinch
	Inch      = 1000 * Thou
)

// Picometres to a millimetre and to an inch, untyped, for exact constants: units.Length(2.640625 * units.PerInch). On a
// variable the same truncates instead: with x = 67.02, Length(x*PerMillimetre) is 67.019999999 mm. [Of] rounds.
const (
	PerMillimetre = 1_000_000_000
	PerInch       = 25_400_000_000
)

// MaxLength is the greatest size, either sign, where floating point is involved in this library: 10 m.
const MaxLength = 10 * Metre

// Of returns x units, rounded to the nearest picometre, halves away from zero: the one way in from floating point. NaN
// and infinities are ErrNotFinite; anything beyond [MaxLength] either way, or a unit that is not positive, is ErrRange.
func Of(x float64, unit Length) (Length, error) {
	pm := x * float64(unit)
	switch {
	case !finite(x):
		return 0, fmt.Errorf("units: length of %v: %w", x, ErrNotFinite)
	case unit <= 0 || math.Abs(pm) > float64(MaxLength):
		return 0, fmt.Errorf("units: length of %v × %v: %w (±%v)", x, unit, ErrRange, MaxLength)
	}
	return Length(math.Round(pm)), nil
}

// In returns l as a number of the unit, correctly rounded for lengths below 9 007 m; a unit of zero gives 0.
func (l Length) In(unit Length) float64 { return in(l, unit) }

// Decimal returns l as a number of the unit: exactly where the unit is metric, or where l is a whole number of 5e-9 in
// (127 pm); otherwise to 16 decimal places, halves away from zero. A unit of zero gives 0.
func (l Length) Decimal(unit Length) decimal.Decimal {
	if unit == 0 {
		return decimal.Decimal{}
	}
	return decimal.NewFromInt(int64(l)).DivRound(decimal.NewFromInt(int64(unit)), 16)
}

// Abs returns the absolute value of l. The smallest Length, which has none, gives the largest.
func (l Length) Abs() Length { return max(l, -max(l, -math.MaxInt64)) }

// Round returns l rounded to the nearest multiple of step, halves away from zero. A step of zero or less returns l
// unchanged; a result that does not fit saturates.
func (l Length) Round(step Length) Length {
	return l.snap(step, func(_ bool, over int) bool { return over > 0 || over == 0 && l > 0 })
}

// Floor returns the greatest multiple of step that is not above l, with the exceptions of [Length.Round].
func (l Length) Floor(step Length) Length {
	return l.snap(step, func(bool, int) bool { return false })
}

// Ceil returns the least multiple of step that is not below l, with the exceptions of [Length.Round].
func (l Length) Ceil(step Length) Length {
	return l.snap(step, func(bool, int) bool { return true })
}

// snap returns the multiple of step below l or, where up says so, above: odd is of the one below, over of l to the
// middle.
func (l Length) snap(step Length, up func(odd bool, over int) bool) Length {
	if step <= 0 {
		return l
	}
	n := int64(l) / int64(step)
	rest := l - Length(n*int64(step)) // not l%step: with two divisions Go's compiler for ppc64 gets -1 and 2 wrong
	if rest == 0 {
		return l
	}
	if rest < 0 {
		n, rest = n-1, rest+step
	}
	below := l - rest
	above := below + step // right even where below wrapped
	switch up := up(n%2 != 0, cmp.Compare(rest, step-rest)); {
	case up && above < l:
		return math.MaxInt64
	case up:
		return above
	case below > l:
		return math.MinInt64
	}
	return below
}

// MulDiv returns l·num/den, rounded once, halves away from zero. A den of zero or a result that does not fit is
// ErrRange.
func (l Length) MulDiv(num, den int64) (Length, error) {
	hi, lo := bits.Mul64(magnitude(l), magnitude(Length(num)))
	q, _, ok := divide(hi, lo, magnitude(Length(den)))
	r, fits := signed(q, (l < 0) != (num < 0) != (den < 0))
	if !ok || !fits {
		return 0, fmt.Errorf("units: %v × %d / %d: %w", l, num, den, ErrRange)
	}
	return r, nil
}

// magnitude returns |l|; it is right for the smallest Length too.
func magnitude(l Length) uint64 {
	if l < 0 {
		return -uint64(l)
	}
	return uint64(l)
}

// signed returns ±q as a Length, and whether it fits.
func signed(q uint64, negative bool) (Length, bool) {
	if negative {
		return Length(-q), q <= 1<<63
	}
	return Length(q), q < 1<<63
}

// divide returns the 128-bit number over d, halves rounded up; whether that is exact; and whether it fits (d = 0 does
// not).
func divide(hi, lo, d uint64) (q uint64, exact, ok bool) {
	if hi >= d {
		return 0, false, false
	}
	q, rest := bits.Div64(hi, lo, d)
	if rest != 0 && rest >= d-rest {
		q++
		return q, false, q != 0
	}
	return q, rest == 0, true
}

// sum returns 128 bits, right below 2³² lengths (34 GB): the sum of all upper halves fits, and so that of the lower
// halves.
func sum(ls []Length) (hi int64, lo uint64) {
	var upper int64
	for _, l := range ls {
		upper += int64(l >> 32)
		lo += uint64(l) // wraps
	}
	_, carry := bits.Add64(uint64(upper)<<32, lo-uint64(upper)<<32, 0)
	return upper>>32 + int64(carry), lo
}

// Mean returns the arithmetic mean of the lengths, rounded once, halves away from zero. The mean of none is
// ErrNotGiven.
func Mean(ls ...Length) (Length, error) {
	if len(ls) == 0 {
		return 0, fmt.Errorf("units: mean of no lengths: %w", ErrNotGiven)
	}
	hi, lo := sum(ls)
	negative := hi < 0
	if negative {
		var borrow uint64
		lo, borrow = bits.Sub64(0, lo, 0)
		hi = -hi - int64(borrow)
	}
	q, _, _ := divide(uint64(hi), lo, uint64(len(ls))) // fits, since |sum| ≤ n·2⁶³
	l, _ := signed(q, negative)
	return l, nil
}
