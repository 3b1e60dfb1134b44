// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"
	"math"

	"borewright.example/internal/enum"
	"borewright.example/internal/given"
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
func (k Kind) String() string { return enum.Name(k, kindNames[:]) }

// MarshalText returns the text of [Kind.String]; a value that is none of them is an error.
func (k Kind) MarshalText() ([]byte, error) { return enum.Marshal(k, kindNames[:]) }

// UnmarshalText reads the text of [Kind.String]. On error the receiver keeps its value.
func (k *Kind) UnmarshalText(text []byte) error { return enum.Unmarshal(k, text, kindNames[:]) }

// anvils is how many anvils stand evenly round the gauge.
func (k Kind) anvils() int {
	if k == ThreePoint {
		return 3
	}
	return 2
}

// Dial is which way a dial bore gauge runs. On many, a smaller bore pushes the plunger in and
// the hand runs clockwise, so that "plus" on the dial is a smaller bore.
type Dial int8

// Ways a dial can run. The zero Dial is not given, and is refused where a dial is read.
const (
	_ Dial = iota // not given
	PlusIsLarger
	PlusIsSmaller
)

var dialNames = [...]string{"not given", "plus is larger", "plus is smaller"}

// String returns "plus is larger", "plus is smaller" or "not given".
func (d Dial) String() string { return enum.Name(d, dialNames[:]) }

// MarshalText returns the text of [Dial.String]; a value that is none of them is an error.
func (d Dial) MarshalText() ([]byte, error) { return enum.Marshal(d, dialNames[:]) }

// UnmarshalText reads the text of [Dial.String]. On error the receiver keeps its value.
func (d *Dial) UnmarshalText(text []byte) error { return enum.Unmarshal(d, text, dialNames[:]) }

// A Standard is what a gauge was set to: a setting ring, gauge blocks or a micrometer. An instrument that shows the
// diameter itself, such as an inside micrometer, was set to nothing: of its Standard only Std is given, from its
// certificate or a trial on a ring. All readings share it, and it cancels in a difference; what its scale may be off
// from one size to another is the Gauge's DialError, and does not.
type Standard struct {
	Size     units.Length      `json:"size,omitzero"` // at 20 °C; zero where the readings stand for themselves, as those of an inside micrometer
	Std      units.Length      `json:"std,omitzero"`  // standard uncertainty of Size, or of a reading that stands for itself
	Material material.Material `json:"material,omitzero"`
	At       Temperature       `json:"at,omitzero"` // while the gauge was set
}

// A Gauge is the instrument and the way it was used. The zero Gauge is an ideal two-point one whose
// readings are sizes at 20 °C already. Where any temperature is given, all are wanted that take part: of
// the setting standard and of the gauge when set, where there is a standard, of the gauge in use and of the
// cylinder; one that nobody took is written as the range it was in. With s the reading of an instrument that was set to
// nothing, the size at 20 °C is s·(1 + αg·ΔTg)/(1 + αp·ΔTp). Half-widths are greatest departures, anywhere within them alike.
type Gauge struct {
	Kind       Kind         `json:"kind,omitzero"`       // how it touches the wall
	Dial       Dial         `json:"dial,omitzero"`       // which way it runs; wanted where deviations are read
	Resolution units.Length `json:"resolution,omitzero"` // smallest step that is read
	// Repeatability is the standard deviation of one reading as known from earlier trials, such as those
	// of a study, with its degrees of freedom. Where it is zero, or the repeats among the readings
	// scatter more than it allows at a chance of 1 in 100, the repeats give it, with theirs; the places
	// that contradict it are [Geometry].Contradictions.
	Repeatability    units.Length      `json:"repeatability,omitzero"`
	RepeatabilityDoF float64           `json:"repeatability_dof,omitzero"` // 0 = infinitely many: known without doubt
	Standard         Standard          `json:"standard,omitzero"`
	Material         material.Material `json:"material,omitzero"` // of the gauge's rod; matters where SetAt and UsedAt differ
	SetAt            Temperature       `json:"set_at,omitzero"`   // of the gauge while it was set
	UsedAt           Temperature       `json:"used_at,omitzero"`  // of the gauge in use

	Part   material.Material `json:"part,omitzero"`    // of the cylinder
	PartAt Temperature       `json:"part_at,omitzero"` // of the cylinder while it was measured

	// What does not cancel between one place and another, as half-widths.
	DialError   units.Length            `json:"dial_error,omitzero"`   // of the dial over the travel used
	Drift       units.Length            `json:"drift,omitzero"`        // of the zero between one setting and the next
	PlaceSpread units.TemperatureChange `json:"place_spread,omitzero"` // of the wall's temperature from place to place
}

// Diameter returns the diameter that a dial deviation from the setting size means, for a
// [Reading]. It errs with [units.ErrNotGiven] where the gauge has no setting size or no direction of the
// dial, and with ErrReading where the diameter is not above 0 and up to [units.MaxLength].
func (g Gauge) Diameter(deviation units.Length) (units.Length, error) {
	if g.Standard.Size <= 0 || g.Standard.Size > units.MaxLength {
		return 0, fmt.Errorf("bore: dial deviation %v: the size of the setting standard is wanted, not %v: %w", deviation, g.Standard.Size, given.Err(g.Standard.Size))
	}
	if deviation.Abs() > units.MaxLength {
		return 0, fmt.Errorf("bore: dial deviation %v: want ±%v at most: %w", deviation, units.MaxLength, ErrReading)
	}
	d := g.Standard.Size
	switch g.Dial {
	case PlusIsLarger:
		d += deviation
	case PlusIsSmaller:
		d -= deviation
	default:
		return 0, fmt.Errorf("bore: dial deviation %v: which way the dial runs is wanted: %w", deviation, units.ErrNotGiven)
	}
	if d <= 0 || d > units.MaxLength {
		return 0, fmt.Errorf("bore: dial deviation %v from %v: diameter %v: want above 0, up to %v: %w", deviation, g.Standard.Size, d, units.MaxLength, ErrReading)
	}
	return d, nil
}

// DialReading is the inverse of [Gauge.Diameter] and of the correction to 20 °C together: the deviation that the dial
// shows, with the sign that it shows it with, where the bore has the given diameter at 20 °C, with gauge, setting
// standard and cylinder at the temperatures of the Gauge. Up to half a resolution it is off.
//
// It errs as [Gauge.Diameter] and as [Analyse] do, and with [units.ErrNotGiven] or [units.ErrRange] for a diameter that is
// not above 0 and up to [units.MaxLength].
func (g Gauge) DialReading(diameter units.Length) (units.Length, error) {
	if _, err := g.Diameter(0); err != nil {
		return 0, err
	}
	if err := g.validate(); err != nil {
		return 0, err
	}
	shows, err := g.comparison(g.Standard.Size).DialReading(diameter)
	if err != nil {
		return 0, fmt.Errorf("bore: dial at a diameter of %v: %w", diameter, err)
	}
	if g.Dial == PlusIsSmaller {
		shows = -shows
	}
	return shows, nil
}

func (g Gauge) validate() error {
	if _, err := g.Kind.MarshalText(); err != nil {
		return fmt.Errorf("bore: gauge: kind: %w", err)
	}
	for _, l := range [...]struct {
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
			return fmt.Errorf("bore: gauge: %s %v: want 0 to %v: %w", l.what, l.size, l.most, units.ErrRange)
		}
	}
	if d := g.RepeatabilityDoF; d != 0 && !(d >= 1 && !math.IsInf(d, 0) && g.Repeatability > 0) {
		return fmt.Errorf("bore: gauge: repeatability %v with %v degrees of freedom: want 0, or 1 and more of one above 0: %w", g.Repeatability, d, units.ErrRange)
	}
	s := float64(g.PlaceSpread)
	if !(s >= 0 && s <= 1000) {
		return fmt.Errorf("bore: gauge: spread of temperature from place to place %v K: want 0 to 1000 K: %w", s, units.ErrRange)
	}
	for _, t := range [...]struct {
		what   string
		at     Temperature
		of     *material.Material
		wanted bool
	}{
		{"setting standard", g.Standard.At, &g.Standard.Material, false},
		{"gauge when set", g.SetAt, &g.Material, false},
		{"gauge in use", g.UsedAt, &g.Material, false},
		{"cylinder", g.PartAt, &g.Part, s > 0},
	} {
		if err := t.at.validate(" of the ", t.what); err != nil {
			return err
		}
		e, w := float64(t.of.Expansion), float64(t.of.Within)
		if !(e >= 0 && e <= 1e-3 && w >= 0 && w <= 1e-3) {
			return fmt.Errorf("bore: expansion of the %s, %v ± %v /K: want 0 to 1000e-6 /K: %w", t.what, e, w, units.ErrRange)
		}
		if e == 0 && (t.wanted || !t.at.isReference()) {
			return fmt.Errorf("bore: the %s was at %v: its expansion is wanted to bring it to 20 °C: %w", t.what, t.at, units.ErrNotGiven)
		}
	}
	return g.checkGiven()
}

// checkGiven refuses a gauge of which some temperatures are given and others not: nothing says that what
// was forgotten was at 20 °C, or as warm as the rest.
func (g Gauge) checkGiven() error {
	all := [...]struct {
		what string
		at   Temperature
	}{{"gauge in use", g.UsedAt}, {"cylinder", g.PartAt}, {"setting standard", g.Standard.At}, {"gauge when set", g.SetAt}}
	wanted := all[:]
	if g.Standard.Size == 0 {
		wanted = all[:2] // nothing was set
	}
	for _, missing := range wanted {
		if !missing.at.IsZero() {
			continue
		}
		for _, given := range all {
			if !given.at.IsZero() {
				return fmt.Errorf("bore: temperature of the %s: %w, while the %s was at %v", missing.what, units.ErrNotGiven, given.what, given.at)
			}
		}
	}
	return nil
}

// comparison is the model of one reading.
func (g *Gauge) comparison(shown units.Length) material.Comparison {
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

// scatter is the standard deviation of one reading, in micrometres, and its degrees of freedom,
// 0 for infinitely many.
type scatter struct{ std, dof float64 }

// The components of doubt of one place, in their order: first those that all places of one bore
// share, which move every size alike and cancel in a difference; then those that a place has to
// itself, of which more repeats lessen the first alone.
const (
	firstOwn = 8
	allParts = 13
)

type parts [allParts]uncertainty.Component

// components returns what the doubt of one size is made of, in micrometres, for the mean of n
// readings.
func (g *Gauge) components(c *material.Comparison, sc scatter, n int) (parts, error) {
	s, err := c.Sensitivities()
	if err != nil {
		return parts{}, err
	}
	const um = units.Micrometre
	perK := func(name string, l units.Length, within units.TemperatureChange) uncertainty.Component {
		return uncertainty.Component{Name: name, Sensitivity: l.In(um), Std: uncertainty.Rectangular(within.In(units.Kelvin)), Unit: "K"}
	}
	perMillion := func(name string, l units.Length, within units.Expansion) uncertainty.Component {
		return uncertainty.Component{Name: name, Sensitivity: l.In(um), Std: uncertainty.Rectangular(float64(within) * 1e6), Unit: "1e-6/K"}
	}
	length := func(name string, sensitivity, std float64) uncertainty.Component {
		return uncertainty.Component{Name: name, Sensitivity: sensitivity, Std: std, Unit: "µm"}
	}
	ps := parts{
		length("setting standard", s.Standard, g.Standard.Std.In(um)),
		perK("temperature of the standard", s.StandardAt, g.Standard.At.Within),
		perK("temperature of the gauge when set", s.GaugeSetAt, g.SetAt.Within),
		perK("temperature of the gauge in use", s.GaugeUseAt, g.UsedAt.Within),
		perK("temperature of the cylinder", s.PartAt, g.PartAt.Within),
		perMillion("expansion of the standard", s.StandardExpansion, g.Standard.Material.Within),
		perMillion("expansion of the gauge", s.GaugeExpansion, g.Material.Within),
		perMillion("expansion of the cylinder", s.PartExpansion, g.Part.Within),

		length("repeatability", s.Deviation, sc.std/math.Sqrt(float64(n))),
		length("resolution", s.Deviation, uncertainty.Resolution(g.Resolution.In(um))),
		length("dial error", s.Deviation, uncertainty.Rectangular(g.DialError.In(um))),
		length("drift of the zero", s.Deviation, uncertainty.Rectangular(g.Drift.In(um))),
		perK("temperature from place to place", s.PartAt, g.PlaceSpread),
	}
	ps[firstOwn].DoF = sc.dof
	return ps, nil
}
