// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"time"

	"borewright.example/units"
)

// A Pass is a stretch of honing without stopping, and the size after it. Read it at one depth and along one axis,
// the gauge set as for the survey.
type Pass struct {
	Lasts    Duration          `json:"lasts,omitzero"`                                    // "20s", "1m30s"; left out where it is the size before the first
	Diameter units.Length      `json:"diameter" needs:"what the gauge shows" want:"near"` // as the gauge shows it, as in the survey
	At       units.Temperature `json:"at" needs:"the cylinder's temperature then, \"27 °C\"" usual:"honing"`
}

// A Duration is a time with its unit in the text: "20s", "1m30s".
type Duration struct{ time.Duration }

// MarshalText returns the text of [time.Duration.String].
func (d Duration) MarshalText() ([]byte, error) { return []byte(d.String()), nil }

// UnmarshalText reads a text as [time.ParseDuration] does. On error the receiver keeps its value.
func (d *Duration) UnmarshalText(text []byte) error {
	v, err := time.ParseDuration(string(text))
	if err != nil {
		return fmt.Errorf("want a time such as \"20s\" or \"1m30s\"")
	}
	d.Duration = v
	return nil
}
