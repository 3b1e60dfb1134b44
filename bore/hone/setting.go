// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Setting is how a hone is driven. Every method needs only the fields it uses; a field left at
// zero that it needs is [units.ErrNotGiven], a negative or not finite one, a length above 10 m or a
// rate above a million a minute or below 1e-12 is [units.ErrRange].
//
// The stroke goes at a steady speed here, 2·stroke·cycles, which is also the mean speed of every
// other motion; see [Motion] for those.
type Setting struct {
	Bore     units.Length    `json:"bore,omitzero"`     // diameter of the bore
	Stroke   units.Length    `json:"stroke,omitzero"`   // travel of the tool one way
	Spindle  units.Frequency `json:"spindle,omitzero"`  // turning of the tool against the bore
	Stroking Stroking        `json:"stroking,omitzero"` // strokes or cycles of the tool
}

// Peripheral returns the speed of the abrasive round the bore, π·bore·spindle. Errors are those of
// every [Setting].
func (s Setting) Peripheral() (units.Speed, error) {
	if err := s.checkTurning(); err != nil {
		return 0, err
	}
	return units.Speed(s.peripheral()), nil
}

// Axial returns the mean speed of the abrasive along the bore, 2·stroke·cycles. Errors are those of
// every [Setting].
func (s Setting) Axial() (units.Speed, error) {
	if err := s.checkStroking(); err != nil {
		return 0, err
	}
	return units.Speed(s.axial()), nil
}

// Crosshatch returns the crosshatch that the setting leaves: a line leans from square by the
// angle whose tangent is axial speed over peripheral speed. A setting so lopsided that the lean
// rounds to 0° or 90° is [units.ErrRange].
func (s Setting) Crosshatch() (Crosshatch, error) {
	if err := s.check(); err != nil {
		return Crosshatch{}, err
	}
	return fromSlope(s.slope())
}

// Advance returns how far the tool moves along the bore while it turns once. Beyond 10 m it is
// [ErrUnreachable]; other errors are those of every [Setting].
func (s Setting) Advance() (units.Length, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	return reachLength("advance", s.axial()/float64(s.Spindle)) // (4)
}

// SpindleSpeedFor returns the spindle speed that leaves c with this bore, stroke and stroking. It
// does not look at Spindle. A zero c is [units.ErrNotGiven], a speed that no workshop has [ErrUnreachable].
func (s Setting) SpindleSpeedFor(c Crosshatch) (units.Frequency, error) {
	s.Spindle = 1 * units.Hertz
	if err := firstError(s.check(), c.check()); err != nil {
		return 0, err
	}
	return reachRate("spindle", units.Frequency(s.slope()/c.slope()), "rev/min")
}

// StrokingRateFor returns the stroking, counted in cycles, that leaves c with this bore, stroke and
// spindle speed. It does not look at Stroking. Errors are as for [Setting.SpindleSpeedFor].
func (s Setting) StrokingRateFor(c Crosshatch) (Stroking, error) {
	s.Stroking = Cycles(1 * units.Hertz)
	if err := firstError(s.check(), c.check()); err != nil {
		return Stroking{}, err
	}
	f, err := reachRate("stroking", units.Frequency(c.slope()/s.slope()), "cycles/min")
	return Cycles(f), err
}

// StrokeLengthFor returns the length of stroke that leaves c with this bore, spindle speed and
// stroking, to the nearest picometre. It does not look at Stroke. Errors are as for [Setting.SpindleSpeedFor].
func (s Setting) StrokeLengthFor(c Crosshatch) (units.Length, error) {
	s.Stroke = 1 * units.Metre
	if err := firstError(s.check(), c.check()); err != nil {
		return 0, err
	}
	return reachLength("stroke", c.slope()/s.slope())
}

// slope is axial over peripheral speed, the tangent of the lean of a line.
func (s Setting) slope() float64 {
	along := float64(s.Stroke) * float64(s.Stroking.Strokes())
	return along / float64(math.Pi*float64(s.Bore)*float64(s.Spindle)) // (3)
}

// peripheral and axial are in metres a second.
func (s Setting) peripheral() float64 {
	return math.Pi * s.Bore.In(units.Metre) * float64(s.Spindle) // (1)
}

func (s Setting) axial() float64 {
	return s.Stroke.In(units.Metre) * float64(s.Stroking.Strokes()) // (2): two strokes a cycle
}

func (s Setting) checkTurning() error {
	return firstError(checkLength("bore", s.Bore), checkRate("spindle", s.Spindle, "rev/min"))
}

func (s Setting) checkStroking() error {
	return firstError(checkLength("stroke", s.Stroke), s.Stroking.validate())
}

func (s Setting) check() error {
	if goodLength(s.Bore) && goodLength(s.Stroke) && goodRate(s.Spindle) && goodRate(s.Stroking.rate) {
		return nil
	}
	return firstError(s.checkTurning(), s.checkStroking())
}

func (c Crosshatch) check() error {
	if c.IsZero() {
		return fmt.Errorf("hone: crosshatch: %w", units.ErrNotGiven)
	}
	return nil
}

func firstError(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// reachRate and reachLength refuse an answer that no workshop can have.
func reachRate(name string, f units.Frequency, per string) (units.Frequency, error) {
	if !goodRate(f) {
		return 0, fmt.Errorf("hone: %s of %.3g %s: %w: want above 0, up to %v %s",
			name, f.In(units.PerMinute), per, ErrUnreachable, float64(maxRate/units.PerMinute), per)
	}
	return f, nil
}

func reachLength(name string, metres float64) (units.Length, error) {
	l, err := units.Of(metres, units.Metre)
	if err != nil || l == 0 {
		return 0, fmt.Errorf("hone: %s of %.3g m: %w: want above 0, up to %v", name, metres, ErrUnreachable, units.MaxLength)
	}
	return l, nil
}
