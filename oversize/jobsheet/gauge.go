// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Gauge is the instrument and the way it was used.
type Gauge struct {
	Kind          bore.Kind    `json:"kind"`                   // left out, two-point
	Resolution    units.Length `json:"resolution"`             // smallest step that is read
	Repeatability units.Length `json:"repeatability,omitzero"` // standard deviation of one reading; left out, repeats give it
	DialError     units.Length `json:"dial_error,omitzero"`    // greatest, over the travel used
	Dial          bore.Dial    `json:"dial,omitzero"`          // needed where deviations are read
	Material      Metal        `json:"material,omitzero"`
	Standard      Standard     `json:"standard,omitzero"`
	Temperatures  Temperatures `json:"temperatures"`
	SetOn         Moment       `json:"set_on,omitzero"` // when it was set to the standard
}

// A Standard is what the gauge was set to.
type Standard struct {
	Name        string       `json:"name,omitzero"`        // such as the number on a setting ring
	Size        units.Length `json:"size"`                 // at 20 °C
	Uncertainty units.Length `json:"uncertainty,omitzero"` // expanded, k = 2
	Material    Metal        `json:"material,omitzero"`
}

// Temperatures has every temperature that takes part. One that nobody measured is written as
// the range it must have been in, "10 to 25 °C", and so finds its way into the doubt.
type Temperatures struct {
	Standard     bore.Temperature        `json:"standard,omitzero"`   // the setting standard, while the gauge was set
	GaugeSet     bore.Temperature        `json:"gauge_set,omitzero"`  // the gauge, while it was set
	GaugeUsed    bore.Temperature        `json:"gauge_used,omitzero"` // the gauge, while it measured
	Cylinder     bore.Temperature        `json:"cylinder,omitzero"`
	PlaceToPlace units.TemperatureChange `json:"place_to_place,omitzero"` // half-width of differences along the wall
}

// part returns the material of the cylinder, and the assumption where the job names none.
func (e Engine) part() (material.Material, []string, error) {
	var assumed []string
	inside, err := e.Material.material()
	if err != nil {
		return inside, nil, err
	}
	if e.Material == "" {
		inside = material.GreyIron()
		if e.Wall == oversize.Plated || e.Wall == oversize.BareAlSi {
			inside = material.AluminiumBlock()
		}
		assumed = append(assumed, "the cylinder wall is "+inside.Name)
	}
	if e.Wall != oversize.IronSleeve {
		return inside, assumed, nil
	}
	barrel, err := e.Barrel.material()
	if err != nil {
		return inside, nil, err
	}
	if e.Barrel == "" {
		barrel = material.AluminiumBlock()
		assumed = append(assumed, "the barrel around the sleeve is "+barrel.Name)
	}
	return material.Between(inside, barrel), append(assumed, "sleeve and barrel grow together, by something between the two"), nil
}

// metalOr returns the named metal, or the usual one with the assumption said.
func metalOr(m Metal, usual material.Material, what string) (material.Material, []string, error) {
	if m == "" {
		return usual, []string{what + " is " + usual.Name}, nil
	}
	named, err := m.material()
	return named, nil, err
}

// gauge returns a gauge of the job as package bore wants it, with what was assumed.
func (j Job) gauge(g Gauge) (bore.Gauge, []string, error) {
	t := g.Temperatures
	part, assumed, err := j.Engine.part()
	if err != nil {
		return bore.Gauge{}, nil, err
	}
	rod, more, err := metalOr(g.Material, material.PlainSteel(), "the gauge's rod")
	if err != nil {
		return bore.Gauge{}, nil, err
	}
	assumed = append(assumed, more...)
	out := bore.Gauge{
		Kind: g.Kind, Dial: g.Dial, Resolution: g.Resolution, Repeatability: g.Repeatability, DialError: g.DialError,
		Material: rod, SetAt: t.GaugeSet, UsedAt: t.GaugeUsed,
		Part: part, PartAt: t.Cylinder, PlaceSpread: t.PlaceToPlace,
	}
	for _, set := range j.unrepeated() {
		assumed = append(assumed, "the gauge repeats itself exactly in the "+set+", for no repeatability is given and no place was read twice")
	}
	if g.Standard == (Standard{}) {
		assumed = append(assumed, "the readings are sizes as they stand, for no setting standard is given")
	} else {
		metal, more, err := metalOr(g.Standard.Material, material.GaugeSteel(), "the setting standard")
		if err != nil {
			return bore.Gauge{}, nil, err
		}
		assumed = append(assumed, more...)
		std, err := certified(g.Standard.Size, g.Standard.Uncertainty)
		if err != nil {
			return bore.Gauge{}, nil, err
		}
		out.Standard = bore.Standard{Size: g.Standard.Size, Std: std.Std, Material: metal, At: t.Standard}
	}
	return out, assumed, nil
}

// unrepeated lists the sets of readings of which nothing says how well the gauge repeats itself.
func (j Job) unrepeated() []string {
	if j.Gauge.Repeatability != 0 {
		return nil
	}
	var sets []string
	for _, c := range j.Cylinders {
		for _, set := range []struct {
			what     string
			readings []Reading
		}{{"survey", c.Readings}, {"proof", c.Proof}} {
			if len(set.readings) > 0 && !repeats(set.readings) {
				sets = append(sets, set.what+" of cylinder "+c.Name)
			}
		}
	}
	return sets
}

// repeats reports whether any place was read more than once.
func repeats(rs []Reading) bool {
	seen := map[[2]string]bool{}
	for _, r := range rs {
		place := [2]string{r.Depth.String(), bore.FormatAxis(r.Axis.Angle)}
		if seen[place] {
			return true
		}
		seen[place] = true
	}
	return false
}

// shown returns the diameter of a reading, whichever way the job gives it.
func (g Gauge) shown(r Reading) (units.Length, error) {
	if r.Deviation == nil {
		return r.Diameter, nil
	}
	return bore.Gauge{Dial: g.Dial, Standard: bore.Standard{Size: g.Standard.Size}}.Diameter(r.Deviation.Length)
}

// proofGauge returns the gauge as it was set for the proof.
func (j Job) proofGauge() Gauge {
	g := j.Gauge
	if j.Proof.Standard != (Standard{}) {
		g.Standard = j.Proof.Standard
	}
	g.Temperatures, g.SetOn = j.Proof.Temperatures, j.Proof.SetOn
	return g
}

// proven reports whether any finished bore has been read.
func (j Job) proven() bool {
	return slices.ContainsFunc(j.Cylinders, func(c Cylinder) bool { return len(c.Proof) > 0 })
}

// measure returns the geometry that readings by a gauge come to.
func (j Job) measure(readings []Reading, by Gauge) (bore.Geometry, error) {
	g, _, err := j.gauge(by)
	if err != nil {
		return bore.Geometry{}, err
	}
	rs := make([]bore.Reading, len(readings))
	for i, r := range readings {
		d, err := by.shown(r)
		if err != nil {
			return bore.Geometry{}, err
		}
		rs[i] = bore.Reading{Depth: r.Depth, Axis: r.Axis.Angle, Diameter: d, Confirmed: r.Confirmed}
	}
	layout := j.Engine.Layout
	layout.Stroke = j.Engine.Stroke // where ring travel is not given
	return layout.Measure(rs, g)
}

// coverage is the k of every expanded uncertainty in a job: certificates state it for about 95 %.
const coverage = 2

// certified returns a size with the expanded uncertainty, k = 2, that came with it.
func certified(size, expanded units.Length) (uncertainty.Estimate, error) {
	std := uncertainty.FromCertificate(expanded.In(units.Micrometre), coverage)
	b := uncertainty.Budget{Components: []uncertainty.Component{{Name: "certificate", Sensitivity: 1, Std: std}}}
	return b.Estimate(size, units.Micrometre)
}
