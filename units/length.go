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
// The zero value is a length of zero. Lengths compare with ==, <, sort with [slices.Sort], and
// can be map keys and constants. The range is about ±9 223 km; sums and differences beyond it
// wrap, as all Go integers do. [Of] refuses anything beyond ±[MaxLength], so that sums of
// lengths of a workshop cannot come near.
type Length int64

// Common lengths. To count units in a Length, divide: int64(bore / units.Thou). To make a
// Length from a whole number of units, multiply: units.Length(n) * units.Micrometre.
//
// Write 41*units.Inch/64, not (41/64)*units.Inch, which is 0: Go divides 41 by 64 first.
//
// There is no Mil: the word is said for a thousandth of an inch and for a millimetre.
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

// Picometres to a millimetre and to an inch, untyped, for exact constants with a fraction:
//
//	const bore = units.Length(2.640625 * units.PerInch)
//
// The compiler refuses a constant that is not a whole number of picometres. On a variable the
// same expression truncates instead: with x = 67.02, Length(x*PerMillimetre) is
// 67.019999999999 mm. Use [Of], which rounds.
const (
	PerMillimetre = 1_000_000_000
	PerInch       = 25_400_000_000
)

// MaxLength is the greatest size, either sign, that a function of this library takes or gives
// where floating point is involved: 10 m.
const MaxLength = 10 * Metre

// Of returns x units as a Length, rounded to the nearest picometre, halves away from zero.
// It is the one way in from floating point. NaN and infinities are ErrNotFinite; anything
// beyond ±[MaxLength], or a unit that is not positive, is ErrRange.
func Of(x float64, unit Length) (Length, error) {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return 0, fmt.Errorf("units: length of %v: %w", x, ErrNotFinite)
	}
	pm := x * float64(unit)
	if unit <= 0 || math.Abs(pm) > float64(MaxLength) {
		return 0, fmt.Errorf("units: length of %v × %v: %w (±%v)", x, unit, ErrRange, MaxLength)
	}
	return Length(math.Round(pm)), nil
}

// In returns l as a number of the unit: l.In(units.Thou). The division is correctly rounded
// for lengths below 9 007 m. A unit of zero gives 0.
func (l Length) In(unit Length) float64 {
	if unit == 0 {
		return 0
	}
	return float64(l) / float64(unit)
}

// Decimal returns l as a number of the unit, exactly where the unit is metric; otherwise to 16
// decimal places, halves away from zero. A unit of zero gives 0.
func (l Length) Decimal(unit Length) decimal.Decimal {
	if unit == 0 {
		return decimal.Decimal{}
	}
	return decimal.NewFromInt(int64(l)).DivRound(decimal.NewFromInt(int64(unit)), 16)
}

// FromDecimal returns d units as a Length. A value that is not a whole number of picometres
// returns the nearest Length with ErrInexact; one that does not fit is ErrRange.
func FromDecimal(d decimal.Decimal, unit Length) (Length, error) {
	// Scale before multiplying: a decimal with a huge exponent would cost unbounded work.
	if e := int64(d.Exponent()) + int64(d.NumDigits()); e > 20 || d.NumDigits() > 1000 {
		return 0, fmt.Errorf("units: length from decimal: %w", ErrRange)
	} else if e < -40 {
		if d.IsZero() {
			return 0, nil
		}
		return 0, fmt.Errorf("units: length from decimal: %w", ErrInexact)
	}
	pm := d.Mul(decimal.NewFromInt(int64(unit)))
	whole := pm.Round(0)
	if !whole.BigInt().IsInt64() {
		return 0, fmt.Errorf("units: length of %v × %v: %w", d, unit, ErrRange)
	}
	l := Length(whole.IntPart())
	if !whole.Equal(pm) {
		return l, fmt.Errorf("units: length of %v × %v: %w", d, unit, ErrInexact)
	}
	return l, nil
}

// Compare returns -1, 0 or +1 as l is less than, equal to or greater than o.
func (l Length) Compare(o Length) int { return cmp.Compare(l, o) }

// Abs returns the absolute value of l. The smallest Length, which has none, gives the largest.
func (l Length) Abs() Length {
	switch {
	case l >= 0:
		return l
	case l == math.MinInt64:
		return math.MaxInt64
	default:
		return -l
	}
}

// Round returns l rounded to the nearest multiple of step, halves away from zero. A step of
// zero or less returns l unchanged; a result that does not fit saturates.
func (l Length) Round(step Length) Length {
	return l.roundBy(step, func(_, rest Length) bool { return rest >= step-rest })
}

// RoundToEven returns l rounded to the nearest multiple of step, halves to the even multiple
// (ISO 80000-1:2009 Annex B, rule A). A step of zero or less returns l unchanged; a result that
// does not fit saturates.
func (l Length) RoundToEven(step Length) Length {
	return l.roundBy(step, func(n, rest Length) bool {
		return rest > step-rest || rest == step-rest && n%2 != 0
	})
}

// roundBy rounds the magnitude of l: up(n, rest) says whether n·step + rest goes to n+1.
func (l Length) roundBy(step Length, up func(n, rest Length) bool) Length {
	if step <= 0 {
		return l
	}
	rest := l % step
	whole := l - rest
	if rest < 0 {
		if !up(-(whole / step), -rest) {
			return whole
		}
		if whole < math.MinInt64+step {
			return math.MinInt64
		}
		return whole - step
	}
	if rest == 0 || !up(whole/step, rest) {
		return whole
	}
	if whole > math.MaxInt64-step {
		return math.MaxInt64
	}
	return whole + step
}

// Floor returns the greatest multiple of step that is not above l. A step of zero or less
// returns l unchanged; a result that does not fit saturates.
func (l Length) Floor(step Length) Length {
	if step <= 0 {
		return l
	}
	rest := l % step
	if rest == 0 {
		return l
	}
	whole := l - rest
	if rest > 0 {
		return whole
	}
	if whole < math.MinInt64+step {
		return math.MinInt64
	}
	return whole - step
}

// Ceil returns the least multiple of step that is not below l. A step of zero or less returns
// l unchanged; a result that does not fit saturates.
func (l Length) Ceil(step Length) Length {
	if step <= 0 {
		return l
	}
	rest := l % step
	if rest == 0 {
		return l
	}
	whole := l - rest
	if rest < 0 {
		return whole
	}
	if whole > math.MaxInt64-step {
		return math.MaxInt64
	}
	return whole + step
}

// MulDiv returns l·num/den, with a 128-bit product rounded once, halves away from zero. A den
// of zero or a result that does not fit is ErrRange.
func (l Length) MulDiv(num, den int64) (Length, error) {
	hi, lo := bits.Mul64(magnitude(int64(l)), magnitude(num))
	d := magnitude(den)
	if hi >= d { // also den == 0
		return 0, fmt.Errorf("units: %v × %d / %d: %w", l, num, den, ErrRange)
	}
	q, rest := bits.Div64(hi, lo, d)
	if rest >= d-rest && rest != 0 {
		q++ // cannot wrap: q == MaxUint64 is out of range below, and 0 would need hi == d-1 and rest == 0
		if q == 0 {
			return 0, fmt.Errorf("units: %v × %d / %d: %w", l, num, den, ErrRange)
		}
	}
	r, ok := signed(q, (l < 0) != (num < 0) != (den < 0))
	if !ok {
		return 0, fmt.Errorf("units: %v × %d / %d: %w", l, num, den, ErrRange)
	}
	return r, nil
}

// magnitude returns |x| as a uint64; it is right for the smallest int64 too.
func magnitude(x int64) uint64 {
	if x < 0 {
		return -uint64(x)
	}
	return uint64(x)
}

// signed returns ±q as a Length, and whether it fits.
func signed(q uint64, negative bool) (Length, bool) {
	if negative {
		return Length(-q), q <= 1<<63
	}
	return Length(q), q < 1<<63
}

// sum adds with a 128-bit accumulator, which no slice can overflow.
func sum(ls []Length) (hi int64, lo uint64) {
	var carry uint64
	for _, l := range ls {
		lo, carry = bits.Add64(lo, uint64(l), 0)
		hi += int64(l)>>63 + int64(carry)
	}
	return hi, lo
}

// Sum returns the sum of the lengths; of none, zero. A sum that does not fit is ErrRange, in
// whatever order the terms stand.
func Sum(ls ...Length) (Length, error) {
	hi, lo := sum(ls)
	if hi != int64(lo)>>63 {
		return 0, fmt.Errorf("units: sum of %d lengths: %w", len(ls), ErrRange)
	}
	return Length(lo), nil
}

// Mean returns the arithmetic mean of the lengths, rounded once, halves away from zero. The
// mean of none is ErrEmpty.
func Mean(ls ...Length) (Length, error) {
	if len(ls) == 0 {
		return 0, fmt.Errorf("units: mean: %w", ErrEmpty)
	}
	hi, lo := sum(ls)
	negative := hi < 0
	if negative {
		var borrow uint64
		lo, borrow = bits.Sub64(0, lo, 0)
		hi = -hi - int64(borrow)
	}
	n := uint64(len(ls))
	q, rest := bits.Div64(uint64(hi), lo, n) // |sum| ≤ n·2⁶³, so hi < n
	if rest != 0 && rest >= n-rest {
		q++
	}
	l, _ := signed(q, negative)
	return l, nil
}
