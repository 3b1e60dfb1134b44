// SPDX-License-Identifier: BSD-3-Clause

package hone

import "borewright.example/units"

// SurfaceMost is the upper end of the band of peripheral speed often quoted for stones, 15 to 110 m/min. Common
// practice: a reason to think, not a limit.
const (
	surfaceLeast = 15 * units.MetrePerMinute
	SurfaceMost  = 110 * units.MetrePerMinute
)

// Cautions returns what a setting should be warned of: a peripheral speed outside the band often
// quoted, 15 m/min to [SurfaceMost], and a stroking above two cycles a second unless a machine
// strokes. Speeds are compared to a part in 10⁹. Errors are those of
// every [Setting].
func (s Setting) Cautions(d Drive) ([]Caution, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	var cs []Caution
	switch v := units.Speed(s.peripheral()); {
	case v > SurfaceMost*(1+slack):
		cs = append(cs, surfaceFast)
	case v < surfaceLeast*(1-slack):
		cs = append(cs, surfaceSlow)
	}
	if tooFast(s.Stroking, d) {
		cs = append(cs, handTooFast)
	}
	return cs, nil
}
