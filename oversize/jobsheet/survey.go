// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"time"
)

// A Survey is when, by whom and how the worn bores were read. It is for the record, and to see that
// the proof was taken the same way.
type Survey struct {
	On Moment `json:"on,omitzero"` // when the readings were taken
	By string `json:"by,omitzero"` // name, as it shall stand on the sheet
	// TorquePlate says that the cylinders were clamped with one, since tightened bolts pull a bore out of round, or
	// lay free.
	TorquePlate *bool `json:"torque_plate,omitempty"`
}

// A Proof is when, by whom and how the finished bores were read: washed, at rest, at the places of the
// survey. The gauge is the survey's, its temperatures are taken anew.
type Proof struct {
	On           Moment       `json:"on,omitzero"`            // when the readings were taken
	By           string       `json:"by,omitzero"`            // name, as it shall stand on the sheet
	TorquePlate  *bool        `json:"torque_plate,omitempty"` // the cylinders were clamped with one, or lay free
	Standard     Standard     `json:"standard,omitzero"`      // that the gauge was set on this time
	Temperatures Temperatures `json:"temperatures,omitzero"`  // needed where any finished bore is read
	SetOn        Moment       `json:"set_on,omitzero"`        // when the gauge was set
	Washed       bool         `json:"washed,omitzero"`        // the bores were washed before they were read
}

// A Moment is a day, "2026-03-14", or a minute of it, "2026-03-14 09:30", by the workshop's clock.
type Moment time.Time

const (
	day          = 24 * time.Hour
	dayLayout    = "2006-01-02"
	minuteLayout = "2006-01-02 15:04"
)

// IsZero reports whether the moment is not given. It also serves JSON's omitzero.
func (m Moment) isZero() bool { return time.Time(m).IsZero() }

// before reports whether both moments are given and m is the earlier one. Where one of them is a
// day without a minute, days are compared.
func (m Moment) before(n Moment) bool {
	a, b := time.Time(m), time.Time(n)
	if m.isDay() || n.isDay() {
		a, b = a.Truncate(day), b.Truncate(day)
	}
	return !m.isZero() && !n.isZero() && a.Before(b)
}

func (m Moment) isDay() bool { return time.Time(m).Equal(time.Time(m).Truncate(day)) }

// String returns the day, and the minute where it is not midnight; "" for the zero Moment.
func (m Moment) String() string {
	switch {
	case m.isZero():
		return ""
	case m.isDay():
		return time.Time(m).Format(dayLayout)
	}
	return time.Time(m).Format(minuteLayout)
}

// MarshalText returns the text of [Moment.String].
func (m Moment) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads a day or a minute. On error the receiver keeps its value.
func (m *Moment) UnmarshalText(text []byte) error {
	for _, layout := range [...]string{dayLayout, minuteLayout} {
		if t, err := time.Parse(layout, string(text)); err == nil {
			*m = Moment(t)
			return nil
		}
	}
	return fmt.Errorf("want a day such as \"2026-03-14\" or a minute such as \"2026-03-14 09:30\"")
}
