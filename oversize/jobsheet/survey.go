// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"errors"
	"time"
)

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
	SetOn        string       `json:"set_on,omitzero" want:"moment"` // when the gauge was set
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
