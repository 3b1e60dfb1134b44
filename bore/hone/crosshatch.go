// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"borewright.example/units"
)

// A Crosshatch is the angle between the two families of lines that a hone leaves on the wall.
//
// The trade gives this one angle in four ways, so a Crosshatch is made only by naming one of
// them: [Included], [FromSquare], or the words of [ParseCrosshatch]. With a the lean of one line from
// the plane square to the axis of the bore, it is 2a included, a from square, 90° − a from the axis and
// 180° − 2a across the axis.
//
// Crosshatches compare with == and can be map keys: the angle is held as a whole number of
// 10⁻¹² degrees of a, so the four ways convert into one another exactly. The zero value stands
// for "not given".
type Crosshatch struct {
	// The lean a, in picodegrees: 1 to 90e12 − 1.
	half int64
}

const picodegrees = 1e12 // to a degree

// Included is the crosshatch whose two families of lines open by a, measured along the
// circumference: 45° leaves each line leaning 22.5° from square. Above 0°, below 180°; anything
// else is [units.ErrRange].
func Included(a units.Angle) (Crosshatch, error) {
	return crosshatch(a.In(units.Degree)/2, a, "included", 180)
}

// FromSquare is the crosshatch whose every line leans by a from the plane square to the axis,
// the lead angle of a thread: 45° is 90° included. Above 0°, below 90°; anything else is
// [units.ErrRange].
func FromSquare(a units.Angle) (Crosshatch, error) {
	return crosshatch(a.In(units.Degree), a, "from square", 90)
}

// fromAxis is the crosshatch whose every line leans by a from the axis of the bore: 67.5° is
// 45° included. Above 0°, below 90°; anything else is [units.ErrRange].
func fromAxis(a units.Angle) (Crosshatch, error) {
	return crosshatch(90-a.In(units.Degree), a, "from axis", 90)
}

// acrossAxis is the crosshatch whose two families of lines open by a, measured along the axis
// of the bore: 135° is 45° included. Above 0°, below 180°; anything else is [units.ErrRange].
func acrossAxis(a units.Angle) (Crosshatch, error) {
	return crosshatch(90-a.In(units.Degree)/2, a, "across axis", 180)
}

// crosshatch makes the lean, in degrees, a Crosshatch.
func crosshatch(lean float64, given units.Angle, convention string, end int) (Crosshatch, error) {
	c, ok := rounded(lean * picodegrees)
	if !ok {
		return Crosshatch{}, fmt.Errorf("hone: crosshatch of %v %s: %w: want above 0°, below %d°",
			given, convention, units.ErrRange, end)
	}
	return c, nil
}

// rounded rounds a lean in picodegrees, once, and reports whether it lies between the ends.
func rounded(lean float64) (Crosshatch, bool) {
	p := math.Round(lean)
	if !(p >= 1 && p <= 90*picodegrees-1) {
		return Crosshatch{}, false
	}
	return Crosshatch{int64(p)}, true
}

// fromSlope is the crosshatch of lines that climb by the tangent.
func fromSlope(tangent float64) (Crosshatch, error) {
	a := math.Atan(tangent)
	if c, ok := rounded(a * (180 / math.Pi * picodegrees)); ok {
		return c, nil
	}
	return FromSquare(units.Angle(a)) // for its error
}

// lean is a in radians; slope its tangent.
func (c Crosshatch) lean() float64  { return float64(c.half) / picodegrees * float64(units.Degree) }
func (c Crosshatch) slope() float64 { return math.Tan(c.lean()) }

// IsZero reports whether the crosshatch is not given. It also serves JSON's omitzero.
func (c Crosshatch) IsZero() bool { return c == Crosshatch{} }

// Included returns the angle between the two families along the circumference: 2a.
func (c Crosshatch) Included() units.Angle { return degrees(2 * c.half) }

// FromSquare returns the lean of one line from the plane square to the axis: a.
func (c Crosshatch) FromSquare() units.Angle { return degrees(c.half) }

// AcrossAxis returns the angle between the two families along the axis: 180° − 2a.
func (c Crosshatch) AcrossAxis() units.Angle { return degrees(180*picodegrees - 2*c.half) }

func degrees(p int64) units.Angle { return units.Angle(float64(p)/picodegrees) * units.Degree }

// ParseCrosshatch reads an angle with its convention:
//
//	45° included      22.5° from square      67.5° from axis      135° across axis
//
// The angle is written as [units.ParseAngle] reads it ("45 deg", "0.785 rad"). An angle alone is
// [ErrConvention]: the trade says "45°" for the opening between the lines and for the lean of
// one line, and the second is twice as steep as the first.
func ParseCrosshatch(s string) (Crosshatch, error) {
	for _, convention := range []struct {
		words string
		build func(units.Angle) (Crosshatch, error)
	}{
		{" included", Included}, {" from square", FromSquare}, {" from axis", fromAxis}, {" across axis", acrossAxis},
	} {
		text, ok := strings.CutSuffix(s, convention.words)
		if !ok {
			continue
		}
		a, err := units.ParseAngle(text)
		if err != nil {
			return Crosshatch{}, fmt.Errorf("hone: crosshatch %.80q: %w: %w", s, units.ErrSyntax, err)
		}
		return convention.build(a)
	}
	if _, err := units.ParseAngle(s); err == nil {
		return Crosshatch{}, fmt.Errorf("hone: crosshatch %.80q: %w: the trade uses a bare angle for the opening between "+
			"the two families of lines and for the lean of one of them; write %[1]s included, %[1]s from square, "+
			"%[1]s from axis or %[1]s across axis", s, ErrConvention)
	}
	return Crosshatch{}, fmt.Errorf("hone: crosshatch %.80q: %w: write 45° included, 22.5° from square, 67.5° from axis "+
		"or 135° across axis", s, units.ErrSyntax)
}

// String returns the included angle, exactly: "45° included". [ParseCrosshatch] reads it back to
// the same value. Where the crosshatch is not given it is "".
func (c Crosshatch) String() string {
	if c.IsZero() {
		return ""
	}
	places := 12
	for p := 2 * c.half; places > 0 && p%10 == 0; p /= 10 {
		places--
	}
	var a [32]byte // more than the longest
	return string(append(appendDegrees(a[:0], 2*c.half, places), "° included"...))
}

// Format returns the included angle with that many decimal places, 0 to 12, halves away from
// zero: "8.03° included". Where the crosshatch is not given it is "".
func (c Crosshatch) Format(places int) string {
	if c.IsZero() {
		return ""
	}
	step := int64(1)
	for range 12 - min(max(places, 0), 12) {
		step *= 10
	}
	p := (2*c.half + step/2) / step * step
	return string(appendDegrees(nil, p, min(max(places, 0), 12))) + "° included"
}

// appendDegrees appends p picodegrees to that many decimal places, cutting the rest.
func appendDegrees(b []byte, p int64, places int) []byte {
	b = strconv.AppendInt(b, p/picodegrees, 10)
	if places == 0 {
		return b
	}
	var a [16]byte
	frac := strconv.AppendInt(a[:0], picodegrees+p%picodegrees, 10)[1:]
	return append(append(b, '.'), frac[:places]...)
}

// MarshalText returns the text of [Crosshatch.String].
func (c Crosshatch) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// UnmarshalText reads a text as [ParseCrosshatch] does; empty text is "not given". On error the
// receiver keeps its value.
func (c *Crosshatch) UnmarshalText(text []byte) error { return unmarshal(c, text, ParseCrosshatch) }

// unmarshal sets *v from text, or leaves it alone on error; empty text is the zero value.
func unmarshal[V any](v *V, text []byte, parse func(string) (V, error)) error {
	var got V
	if len(text) > 0 {
		var err error
		if got, err = parse(string(text)); err != nil {
			return err
		}
	}
	*v = got
	return nil
}
