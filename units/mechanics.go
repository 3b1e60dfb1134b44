// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"fmt"
	"math"
)

// Frequency is a rate of turning or of anything that repeats, in hertz. Strokes and cycles of a hone are another
// matter: package bore/hone keeps them apart.
type Frequency float64

// Units of frequency; 650 * units.PerMinute.
const (
	Hertz     Frequency = 1          // one a second
	PerMinute           = Hertz / 60 // one a minute: rev/min
)

// In returns the frequency as a number of the unit; a unit of zero gives 0.
func (f Frequency) In(unit Frequency) float64 { return in(f, unit) }

// ParseFrequency reads a number and a unit, "650 rev/min"; units: rev/min, rpm, Hz. Every error is a [*ParseError].
func ParseFrequency(s string) (f Frequency, err error) { err = f.UnmarshalText([]byte(s)); return }

// String returns the frequency in revolutions a minute to 12 significant digits, "650 rev/min".
func (f Frequency) String() string { return text(f.MarshalText()) }

// MarshalText returns the text of [Frequency.String]; what is not finite is ErrNotFinite.
func (f Frequency) MarshalText() ([]byte, error) { return put(f.In(PerMinute), " rev/min") }

// UnmarshalText is [ParseFrequency]. On error the receiver keeps its value.
func (f *Frequency) UnmarshalText(text []byte) error {
	return parse((*float64)(f), "frequency", string(text), "rev/min Hz rpm",
		float64(PerMinute), float64(Hertz), float64(PerMinute))
}

// Speed is a speed along a line or a surface, in metres a second.
type Speed float64

// Units of speed; 25 * units.MetrePerMinute.
const (
	MetrePerSecond Speed = 1
	MetrePerMinute       = MetrePerSecond / 60
	FootPerMinute        = 0.3048 * MetrePerMinute // 1 ft is 0.3048 m exactly
)

// In returns the speed as a number of the unit; a unit of zero gives 0.
func (v Speed) In(unit Speed) float64 { return in(v, unit) }

// String returns the speed in metres a minute to 12 significant digits, "60 m/min".
func (v Speed) String() string { return text(v.MarshalText()) }

// MarshalText returns the text of [Speed.String]; what is not finite is ErrNotFinite.
func (v Speed) MarshalText() ([]byte, error) { return put(v.In(MetrePerMinute), " m/min") }

// UnmarshalText reads a number and a unit, "60 m/min"; units: m/min, ft/min, mm/s, m/s.
// On error, a [*ParseError], the receiver keeps its value.
func (v *Speed) UnmarshalText(text []byte) error {
	return parse((*float64)(v), "speed", string(text), "m/min ft/min mm/s m/s",
		float64(MetrePerMinute), float64(FootPerMinute), float64(MetrePerSecond/1000), float64(MetrePerSecond))
}

// Volume is a volume, in cubic metres.
type Volume float64

// Units of volume; 16 * units.CubicCentimetre.
const (
	CubicMetre      Volume = 1
	CubicCentimetre        = CubicMetre / 1e6
	CubicInch              = 16.387064 * CubicCentimetre // exactly, since 1 in is 2.54 cm
)

// In returns the volume as a number of the unit; a unit of zero gives 0.
func (v Volume) In(unit Volume) float64 { return in(v, unit) }

// String returns the volume in cubic centimetres to 12 significant digits, "16 cm³".
func (v Volume) String() string { return text(v.MarshalText()) }

// MarshalText returns the text of [Volume.String]; what is not finite is ErrNotFinite.
func (v Volume) MarshalText() ([]byte, error) { return put(v.In(CubicCentimetre), " cm³") }

// UnmarshalText reads a number and a unit, "16 cm³"; units: cm³, cm3, cc, mm³, mm3, in³, in3.
// On error, a [*ParseError], the receiver keeps its value.
func (v *Volume) UnmarshalText(text []byte) error {
	const cm, in, mm = float64(CubicCentimetre), float64(CubicInch), float64(CubicCentimetre / 1000)
	return parse((*float64)(v), "volume", string(text), "cm³ in³ mm³ cm3 in3 mm3 cc", cm, in, mm, cm, in, mm, cm)
}

// Pressure is a pressure or a stress, in pascals.
type Pressure float64

// Units of pressure; 0.2 * units.Megapascal.
const (
	Pascal             Pressure = 1
	Megapascal                  = 1e6 * Pascal // 1 N/mm²
	Gigapascal                  = 1e9 * Pascal // for moduli
	Bar                         = 1e5 * Pascal
	PoundPerSquareInch          = 0.45359237 * 9.80665 / (0.0254 * 0.0254) * Pascal
)

// In returns the pressure as a number of the unit; a unit of zero gives 0.
func (p Pressure) In(unit Pressure) float64 { return in(p, unit) }

// String returns the pressure in megapascals to 12 significant digits, "0.2 MPa".
func (p Pressure) String() string { return text(p.MarshalText()) }

// MarshalText returns the text of [Pressure.String]; what is not finite is ErrNotFinite.
func (p Pressure) MarshalText() ([]byte, error) { return put(p.In(Megapascal), " MPa") }

// UnmarshalText reads a number and a unit, "0.2 MPa"; units: MPa, GPa, kPa, Pa, bar, psi.
// On error, a [*ParseError], the receiver keeps its value.
func (p *Pressure) UnmarshalText(text []byte) error {
	return parse((*float64)(p), "pressure", string(text), "MPa psi bar kPa GPa Pa",
		float64(Megapascal), float64(PoundPerSquareInch), float64(Bar),
		float64(1000*Pascal), float64(Gigapascal), float64(Pascal))
}

// Force is a force, in newtons.
type Force float64

// Units of force; 26.7 * units.Newton.
const (
	Newton     Force = 1
	PoundForce       = 0.45359237 * kilogramForce // exactly
)

// kilogramForce is what a spring scale calls a kilogram, at standard gravity, exactly.
const kilogramForce = 9.80665 * Newton

// In returns the force as a number of the unit; a unit of zero gives 0.
func (f Force) In(unit Force) float64 { return in(f, unit) }

// String returns the force in newtons to 12 significant digits, "26.7 N".
func (f Force) String() string { return text(f.MarshalText()) }

// MarshalText returns the text of [Force.String]; what is not finite is ErrNotFinite.
func (f Force) MarshalText() ([]byte, error) { return put(f.In(Newton), " N") }

// UnmarshalText reads a number and a unit, "26.7 N"; units: N, lbf, kgf.
// On error, a [*ParseError], the receiver keeps its value.
func (f *Force) UnmarshalText(text []byte) error {
	return parse((*float64)(f), "force", string(text), "N lbf kgf",
		float64(Newton), float64(PoundForce), float64(kilogramForce))
}

// FrequencyFor returns the rate of turning at which a surface of the diameter, the bore under a boring tool or a stone,
// has the speed: v/(π·diameter), with the sign of v. A diameter of zero is ErrNotGiven; one below that or above
// [MaxLength], and a rate above 1e15 Hz, is ErrRange; a v not finite is ErrNotFinite.
func FrequencyFor(diameter Length, v Speed) (Frequency, error) {
	if diameter <= 0 || diameter > MaxLength {
		why := ErrRange
		if diameter == 0 {
			why = ErrNotGiven
		}
		return 0, fmt.Errorf("units: a diameter of %v: %w (above 0, at most %v)", diameter, why, MaxLength)
	}
	f := Frequency(float64(v) / (math.Pi * diameter.In(Metre)))
	switch {
	case !finite(float64(v)):
		return 0, fmt.Errorf("units: frequency for a speed of %v: %w", v, ErrNotFinite)
	case math.Abs(float64(f)) > mostSI:
		return 0, fmt.Errorf("units: frequency for %v on a diameter of %v: %w", v, diameter, ErrRange)
	}
	return f, nil
}
