// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"errors"
	"time"

	"borewright.example/bore"
	"borewright.example/bore/surface"
	"borewright.example/units"
	"borewright.example/units/uncertainty/study"
)

// A Gauge is the instrument and the way it was used.
type Gauge struct {
	Kind       *bore.Kind   `json:"kind" needs:"two-point, three-point or telescoping"`                               // how many points it touches at
	Resolution units.Length `json:"resolution" needs:"a length above 0, up to 0.5 mm" want:"fine" usual:"resolution"` // smallest step that is read
	// Repeatability is the standard deviation of one reading; left out, repeats that differ give it, else a step of the scale is taken
	Repeatability units.Length `json:"repeatability,omitzero" want:"fine" usual:"scatter"`
	// Study is trials of the gauge, one ring or several read again and again: they give the repeatability.
	Study []study.Trial `json:"study,omitzero" most:"1000"`
	// Profiler is what is known of the instrument that read the texture; left out, wide doubts are taken.
	Profiler     surface.Instrument `json:"profiler,omitzero"`
	DialError    units.Length       `json:"dial_error,omitzero" want:"fine" usual:"dial"` // greatest, over the travel used; left out, two steps of the scale
	Dial         bore.Dial          `json:"dial,omitzero"`                                // needed where deviations are read
	Spindle      Spindle            `json:"spindle,omitzero"`                             // that took traces, where any were taken
	Material     Metal              `json:"material,omitzero" want:"metal"`
	Standard     Standard           `json:"standard,omitzero"`
	Temperatures Temperatures       `json:"temperatures"`
	SetOn        string             `json:"set_on,omitzero" want:"moment"` // when it was set to the standard: "2026-03-14", "2026-03-14 08:00"
}

// A Standard is what the gauge was set to.
type Standard struct {
	Name     string   `json:"name,omitzero"`                                                                          // such as the number on a setting ring
	Size     Measured `json:"size" needs:"the size of what the gauge was set on" want:"measured,known" usual:"doubt"` // at 20 °C
	Material Metal    `json:"material,omitzero" want:"metal"`
}

// Temperatures has every temperature that takes part. One that nobody measured is written as
// the range it must have been in, "10 to 25 °C", and so finds its way into the doubt; one without a half-width
// is known to ± 2 K.
type Temperatures struct {
	Standard     bore.Temperature        `json:"standard,omitzero" want:"valid" usual:"workshop"`   // the setting standard, while the gauge was set
	GaugeSet     bore.Temperature        `json:"gauge_set,omitzero" want:"valid" usual:"workshop"`  // the gauge, while it was set
	GaugeUsed    bore.Temperature        `json:"gauge_used,omitzero" want:"valid" usual:"workshop"` // the gauge, while it measured
	Cylinder     bore.Temperature        `json:"cylinder,omitzero" want:"valid" usual:"workshop"`
	PlaceToPlace units.TemperatureChange `json:"place_to_place,omitzero" want:"apart" usual:"place to place"` // half-width of differences along the wall; left out, 1 K
}

// kind is how the gauge touches the wall; a job that does not say is refused.
func (g Gauge) kind() bore.Kind {
	if g.Kind == nil {
		return bore.ThreePoint // the one that shows least
	}
	return *g.Kind
}

// A Survey is when, by whom and how the worn bores were read. It is for the record, and to see that
// the proof was taken the same way.
type Survey struct {
	On string `json:"on,omitzero" want:"moment"` // when the readings were taken: "2026-03-14", "2026-03-14 09:30"
	By string `json:"by,omitzero"`               // name, as it shall stand on the sheet
	// TorquePlate says that the cylinders were clamped with one, since tightened bolts pull a bore out of round, or
	// lay free.
	TorquePlate *bool `json:"torque_plate,omitempty"`
}

// A Proof is when, by whom and how the finished bores were read: washed, at rest, at the places of the
// survey. The gauge is the survey's, its temperatures are taken anew.
type Proof struct {
	Survey
	Standard     Standard     `json:"standard,omitzero"`             // that the gauge was set on this time
	Temperatures Temperatures `json:"temperatures,omitzero"`         // needed where any finished bore is read
	SetOn        string       `json:"set_on,omitzero" want:"moment"` // when the gauge was set, as Gauge.SetOn
	Washed       bool         `json:"washed,omitzero"`               // the bores were washed before they were read
}

// When is written as a day, "2026-03-14", or a minute of it, "2026-03-14 09:30", by the workshop's clock.
const (
	dayLayout    = "2006-01-02"
	minuteLayout = "2006-01-02 15:04"
)

// moment holds what says when, and may be left out, to how it is written.
func moment(v any) error {
	text, ok := v.(string)
	for _, layout := range [...]string{dayLayout, minuteLayout} {
		if t, err := time.Parse(layout, text); ok && (text == "" || err == nil && t.Format(layout) == text) {
			return nil
		}
	}
	return errors.New(`want a day such as "2026-03-14" or a minute such as "2026-03-14 09:30"`)
}

// before reports whether both of two moments are given and a is the earlier one. Where one of them is a day
// without a minute, days are compared.
func before(a, b string) bool {
	n := min(len(a), len(b))
	return a[:n] < b[:n]
}
