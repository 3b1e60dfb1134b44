// SPDX-License-Identifier: BSD-3-Clause

package units

// Volume is a volume, in cubic metres.
type Volume float64

// Units of volume. Multiply a constant to make one, divide to count: 2 * units.CubicMetre;
// for a variable use [VolumeOf].
const (
	CubicMetre      Volume = 1
	CubicCentimetre        = CubicMetre / 1e6
	CubicMillimetre        = CubicMetre / 1e9
	CubicInch              = 16.387064 * CubicCentimetre // exactly, since 1 in is 2.54 cm
)

// VolumeOf returns x units as a Volume. NaN and infinities are ErrNotFinite.
func VolumeOf(x float64, unit Volume) (Volume, error) {
	v, err := ofFloat("volume", x, float64(unit))
	return Volume(v), err
}

// In returns the volume as a number of the unit.
func (q Volume) In(unit Volume) float64 { return float64(q / unit) }

// ParseVolume reads a number and a unit, as in "16 cm³". Units: cm³, cm3, cc, mm³, mm3, in³, in3.
// A bare number other than 0 is refused. Every error is a [*ParseError].
func ParseVolume(s string) (Volume, error) {
	v, err := parseQuantity("volume", s, false, []unitOf{{"cm³", float64(CubicCentimetre)}, {"cm3", float64(CubicCentimetre)}, {"cc", float64(CubicCentimetre)}, {"mm³", float64(CubicMillimetre)}, {"mm3", float64(CubicMillimetre)}, {"in³", float64(CubicInch)}, {"in3", float64(CubicInch)}})
	return Volume(v), err
}

// MustParseVolume calls [ParseVolume](s) and panics on error. It is intended for constants and
// tests with hard-coded strings.
func MustParseVolume(s string) Volume {
	q, err := ParseVolume(s)
	if err != nil {
		panic(err)
	}
	return q
}

// String returns the volume to 12 significant digits with its unit, "16 cm³".
func (q Volume) String() string {
	b, _ := q.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [Volume.String].
func (q Volume) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, q.In(CubicCentimetre)), " cm³"...), nil
}

// MarshalText returns the text of [Volume.String].
func (q Volume) MarshalText() ([]byte, error) { return q.AppendText(nil) }

// UnmarshalText reads a text as [ParseVolume] does. On error the receiver keeps its value.
func (q *Volume) UnmarshalText(text []byte) error { return unmarshalQuantity(q, text, ParseVolume) }
