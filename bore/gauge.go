// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Kind is how a gauge touches the wall, and so what it can see at all.
type Kind int8

// Kinds of gauge.
const (
	TwoPoint    Kind = iota // a dial bore gauge: two anvils on one diameter
	ThreePoint              // three anvils, self-centring: size only, blind to ovality
	Telescoping             // a spring-loaded T set in the bore, read with a micrometer
)

var kindNames = [...]string{"two-point", "three-point", "telescoping"}

// String returns "two-point", "three-point" or "telescoping".
func (k Kind) String() string { return enumName(kindNames[:], int(k)) }

// MarshalText returns the text of [Kind.String].
func (k Kind) MarshalText() ([]byte, error) { return []byte(k.String()), nil }

// UnmarshalText reads the text of [Kind.String]. On error the receiver keeps its value.
func (k *Kind) UnmarshalText(text []byte) error { return unmarshalEnum(k, kindNames[:], text) }

// Dial is which way a dial bore gauge runs. On many, a smaller bore pushes the plunger in and
// the hand runs clockwise, so that "plus" on the dial is a smaller bore.
type Dial int8

// Ways a dial can run. The zero Dial is not given, and is refused where a dial is read.
const (
	DialNotGiven Dial = iota
	PlusIsLarger
	PlusIsSmaller
)

var dialNames = [...]string{"not given", "plus is larger", "plus is smaller"}

// String returns "plus is larger", "plus is smaller" or "not given".
func (d Dial) String() string { return enumName(dialNames[:], int(d)) }

// MarshalText returns the text of [Dial.String].
func (d Dial) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads the text of [Dial.String]. On error the receiver keeps its value.
func (d *Dial) UnmarshalText(text []byte) error { return unmarshalEnum(d, dialNames[:], text) }

// A Standard is what a gauge was set to: a setting ring, gauge blocks or a micrometer.
type Standard struct {
	Size     units.Length // at 20 °C; zero where the readings stand for themselves
	Std      units.Length // standard uncertainty of Size
	Material material.Material
	At       Temperature // while the gauge was set
}

// A Gauge is the instrument and the way it was used. The zero Gauge is an ideal two-point one
// with everything at 20 °C. Half-widths are greatest departures, anywhere within them alike.
type Gauge struct {
	Kind       Kind
	Dial       Dial
	Resolution units.Length // smallest step that is read
	// Repeatability is the standard deviation of one reading as known from earlier trials. Where
	// it is zero, repeats among the readings give it, with their degrees of freedom.
	Repeatability units.Length
	Standard      Standard
	Material      material.Material // of the gauge's rod; matters where SetAt and UsedAt differ
	SetAt, UsedAt Temperature       // of the gauge

	Part   material.Material // of the cylinder
	PartAt Temperature       // of the cylinder while it was measured

	// What does not cancel between one place and another, as half-widths.
	DialError   units.Length            // of the dial over the travel used
	Drift       units.Length            // of the zero between one setting and the next
	PlaceSpread units.TemperatureChange // of the wall's temperature from place to place
}

// Diameter returns the diameter that a dial deviation from the setting size means, for a
// [Reading]. It errs with ErrGauge where the gauge has no setting size or no direction of the
// dial.
func (g Gauge) Diameter(deviation units.Length) (units.Length, error) {
	switch {
	case g.Standard.Size <= 0:
		return 0, fmt.Errorf("bore: dial deviation %v: the size of the setting standard is wanted: %w", deviation, ErrGauge)
	case g.Dial == PlusIsLarger:
		return g.Standard.Size + deviation, nil
	case g.Dial == PlusIsSmaller:
		return g.Standard.Size - deviation, nil
	}
	return 0, fmt.Errorf("bore: dial deviation %v: which way the dial runs is wanted: %w", deviation, ErrGauge)
}

func (g Gauge) validate() error {
	for _, l := range []struct {
		what string
		size units.Length
		most units.Length
	}{
		{"resolution", g.Resolution, units.Millimetre},
		{"repeatability", g.Repeatability, units.Millimetre},
		{"standard's size", g.Standard.Size, units.MaxLength},
		{"standard's uncertainty", g.Standard.Std, units.Millimetre},
		{"dial error", g.DialError, units.Millimetre},
		{"drift", g.Drift, units.Millimetre},
	} {
		if l.size < 0 || l.size > l.most {
			return fmt.Errorf("bore: gauge: %s %v: want 0 to %v: %w", l.what, l.size, l.most, ErrGauge)
		}
	}
	if s := float64(g.PlaceSpread); math.IsNaN(s) || s < 0 || s > 1000 {
		return fmt.Errorf("bore: gauge: spread of temperature from place to place %v K: want 0 to 1000 K: %w", s, ErrGauge)
	}
	for _, t := range []struct {
		what string
		at   Temperature
		of   material.Material
	}{
		{"setting standard", g.Standard.At, g.Standard.Material},
		{"gauge when set", g.SetAt, g.Material},
		{"gauge in use", g.UsedAt, g.Material},
		{"cylinder", g.PartAt, g.Part},
	} {
		if err := t.at.validate(t.what); err != nil {
			return err
		}
		e, w := float64(t.of.Expansion), float64(t.of.Within)
		if math.IsNaN(e) || e < 0 || e > 1e-3 || math.IsNaN(w) || w < 0 || w > 1e-3 {
			return fmt.Errorf("bore: expansion of the %s, %v ± %v: want 0 to 1000e-6/K: %w", t.what, t.of.Expansion, t.of.Within, ErrGauge)
		}
		if !t.at.isReference() && e == 0 {
			return fmt.Errorf("bore: the %s was at %v: its expansion is wanted to bring it to 20 °C: %w", t.what, t.at, ErrGauge)
		}
	}
	return nil
}

// comparison is the model of one reading.
func (g Gauge) comparison(shown units.Length) material.Comparison {
	c := material.Comparison{
		Standard: g.Standard.Size, Deviation: shown - g.Standard.Size,
		StandardAt: g.Standard.At.orReference().Value,
		GaugeSetAt: g.SetAt.orReference().Value, GaugeUseAt: g.UsedAt.orReference().Value,
		PartAt:            g.PartAt.orReference().Value,
		StandardExpansion: g.Standard.Material.Expansion,
		GaugeExpansion:    g.Material.Expansion, PartExpansion: g.Part.Expansion,
	}
	if g.Standard.Size == 0 { // the reading stands for itself, at the gauge's temperature
		c.Standard, c.Deviation = shown, 0
	}
	return c
}

// shared returns the components of doubt, in micrometres, that all places of one bore have in
// common: the standard, the four temperatures and the three expansions. They move every size
// alike and cancel in a difference.
func (g Gauge) shared(c material.Comparison) ([]uncertainty.Component, error) {
	s, err := c.Sensitivities()
	if err != nil {
		return nil, err
	}
	const um = units.Micrometre
	perK := func(name string, l units.Length, within units.TemperatureChange) uncertainty.Component {
		return uncertainty.Component{Name: name, Sensitivity: l.In(um), Std: uncertainty.Rectangular(within.In(units.Kelvin))}
	}
	perMillion := func(name string, l units.Length, within units.Expansion) uncertainty.Component {
		return uncertainty.Component{Name: name, Sensitivity: l.In(um), Std: uncertainty.Rectangular(float64(within) * 1e6)}
	}
	return []uncertainty.Component{
		{Name: "setting standard", Sensitivity: s.Standard, Std: g.Standard.Std.In(um)},
		perK("temperature of the standard", s.StandardAt, g.Standard.At.Within),
		perK("temperature of the gauge when set", s.GaugeSetAt, g.SetAt.Within),
		perK("temperature of the gauge in use", s.GaugeUseAt, g.UsedAt.Within),
		perK("temperature of the cylinder", s.PartAt, g.PartAt.Within),
		perMillion("expansion of the standard", s.StandardExpansion, g.Standard.Material.Within),
		perMillion("expansion of the gauge", s.GaugeExpansion, g.Material.Within),
		perMillion("expansion of the cylinder", s.PartExpansion, g.Part.Within),
	}, nil
}

// own returns the components of doubt, in micrometres, that each place has to itself, for a
// mean of n readings of which one scatters by repeatability.
func (g Gauge) own(c material.Comparison, repeatability float64, dof float64, n int) ([]uncertainty.Component, error) {
	s, err := c.Sensitivities()
	if err != nil {
		return nil, err
	}
	const um = units.Micrometre
	return []uncertainty.Component{
		{Name: "repeatability", Sensitivity: s.Deviation, Std: repeatability / math.Sqrt(float64(n)), DoF: dof},
		{Name: "resolution", Sensitivity: s.Deviation, Std: uncertainty.Resolution(g.Resolution.In(um))},
		{Name: "dial error", Sensitivity: s.Deviation, Std: uncertainty.Rectangular(g.DialError.In(um))},
		{Name: "drift of the zero", Sensitivity: s.Deviation, Std: uncertainty.Rectangular(g.Drift.In(um))},
		{Name: "temperature from place to place", Sensitivity: s.PartAt.In(um), Std: uncertainty.Rectangular(g.PlaceSpread.In(units.Kelvin))},
	}, nil
}
