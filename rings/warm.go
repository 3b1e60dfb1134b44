// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Warm is a ring and the bore round it at their working temperatures, each a mean round the
// circumference where the ring runs hottest. Of an iron sleeve in an aluminium barrel the bore
// grows with neither coefficient but in between, so that its material is one of the caller's
// own.
type Warm struct {
	// Of the materials Expansion and Within are used; Within 0 is exact.
	Ring material.Material `json:"ring"`
	Bore material.Material `json:"bore"`
	// Neither temperature may be left out.
	RingAt units.Temperature `json:"ring_at"`
	BoreAt units.Temperature `json:"bore_at"`
	// Half-widths of what the temperatures may really be; 0 is exact.
	RingWithin units.TemperatureChange `json:"ring_within,omitzero"`
	BoreWithin units.TemperatureChange `json:"bore_within,omitzero"`
}

// Change returns by how much the end gap grows from 20 °C to the working temperatures in a bore
// of the given diameter, π·d·(αb·ΔTb − αr·ΔTr): less than zero where the ring grows more than
// the bore. The growth of the gap itself is left out: below 1 µm, and on the safe side.
//
// Its uncertainty is that of the coefficients and the temperatures, each anywhere within its
// half-width with equal probability. A temperature or coefficient that is not given is
// [units.ErrNotGiven]; a half-width that is negative, beyond 1000 K or beyond the coefficient, or a
// growth by more than a tenth, is units.ErrRange; below absolute zero it is the error of
// [units.Temperature.Validate]; a bore of zero is not given, one below that out of range.
func (w Warm) Change(bore units.Length) (uncertainty.Estimate, error) {
	if err := checkBore(uncertainty.Estimate{Value: bore}); err != nil {
		return uncertainty.Estimate{}, err
	}
	var s sum
	if err := s.grow("bore", math.Pi, bore, &w.Bore, w.BoreAt, w.BoreWithin); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := s.grow("ring", -math.Pi, bore, &w.Ring, w.RingAt, w.RingWithin); err != nil {
		return uncertainty.Estimate{}, err
	}
	return s.estimate()
}

const (
	mostWithin = 1000 * units.Kelvin // about such a temperature nothing is known
	mostGrowth = 0.1                 // beyond, a coefficient has lost its 10⁻⁶
)

// grow adds by times the growth of l from 20 °C to t.
func (s *sum) grow(what string, by float64, l units.Length, m *material.Material, t units.Temperature, within units.TemperatureChange) error {
	if err := t.Validate(); err != nil {
		return fmt.Errorf("rings: temperature of the %s: %w", what, err)
	}
	growth := float64(m.Expansion) * float64(t.AboveReference())
	switch {
	case t.IsZero():
		return fmt.Errorf("rings: temperature of the %s: %w", what, units.ErrNotGiven)
	case m.Expansion == 0:
		return fmt.Errorf("rings: coefficient of expansion of the %s (%s): %w", what, m.Name, units.ErrNotGiven)
	case !(math.Abs(growth) <= mostGrowth):
		return fmt.Errorf("rings: growth of the %s, %v at %v: %w (up to a tenth)", what, m.Expansion, t, units.ErrRange)
	case !(within >= 0 && within <= mostWithin):
		return fmt.Errorf("rings: temperature of the %s within %v: %w (0 to %v)", what, within, units.ErrRange, mostWithin)
	case !(m.Within >= 0 && float64(m.Within) <= math.Abs(float64(m.Expansion))):
		return fmt.Errorf("rings: coefficient of expansion of the %s, %v, within %v: %w (0 up to the coefficient)", what, m.Expansion, m.Within, units.ErrRange)
	}
	d := by * float64(l)
	s.value += float64(d * growth)
	s.doubt(uncertainty.Rectangular(math.Abs(d * float64(t.AboveReference()) * float64(m.Within))))
	s.doubt(uncertainty.Rectangular(math.Abs(d * float64(m.Expansion) * float64(within))))
	return nil
}

// HotGap returns the end gap at the working temperatures of a ring whose gap at 20 °C is cold.
// Where nothing is left of it the error is ErrButts, with the overlap as a negative gap; where
// what is left is less than its uncertainty, judging it against a margin tells.
//
// A cold gap of zero is [units.ErrNotGiven], below that [units.ErrRange]. Other errors are those of [Warm.Change].
func (w Warm) HotGap(cold, bore uncertainty.Estimate) (uncertainty.Estimate, error) {
	if err := (Gap{Measured: cold, Bore: bore}).validate(); err != nil {
		return uncertainty.Estimate{}, err
	}
	change, err := w.Change(bore.Value)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	var s sum
	s.add(1, cold)
	s.add(1, change)
	hot, err := s.estimate()
	if err == nil && hot.Value <= 0 {
		err = fmt.Errorf("rings: end gap %v at 20 °C, ring at %v, bore at %v: %w (the gap would be %v)", cold.Value, w.RingAt, w.BoreAt, ErrButts, hot.Value)
	}
	return hot, err
}

// Least returns the least end gap at 20 °C that leaves the margin, both at 20 °C and at the
// working temperatures. A gap of exactly its value leaves less than the margin as often as not:
// its expanded uncertainty comes on top. After a hard start the ring is hot while the bore is
// still cold; ask for that case too. The maker's window, where there is one, comes first.
//
// A margin that is negative, or more than a tenth of the bore, is [units.ErrRange]. Other errors are those of
// [Warm.Change].
func (w Warm) Least(bore, margin units.Length) (uncertainty.Estimate, error) {
	least, err := w.Change(bore)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	if margin < 0 || margin > bore/10 {
		return uncertainty.Estimate{}, fmt.Errorf("rings: margin %v in a bore of %v: %w (0 up to a tenth of the bore)", margin, bore, units.ErrRange)
	}
	least.Value = margin + max(0, -least.Value)
	return least, nil
}

// Window returns what of a window for the end gap at 20 °C leaves the margin when hot: its lower end
// is raised, where need be, to [Warm.Least] with its expanded uncertainty for 95 % on top. A window
// that leaves it nowhere is ErrButts; one without an upper end, or crossed, is [units.ErrRange]. Other errors
// are those of Least.
func (w Warm) Window(window units.Limits, bore, margin units.Length) (units.Limits, error) {
	least, err := w.Least(bore, margin)
	if err != nil {
		return units.Limits{}, err
	}
	if !window.HasMax() || window.Validate() != nil {
		return units.Limits{}, fmt.Errorf("rings: window %q: %w (both ends, the smaller first)", window, units.ErrRange)
	}
	u, err := least.Expanded(0.95)
	if err != nil {
		return units.Limits{}, fmt.Errorf("rings: least gap: %w", err)
	}
	window.Min = max(window.Min, least.Value+u)
	if window.Min > window.Max {
		return units.Limits{}, fmt.Errorf("rings: least gap %v for a margin of %v, window up to %v: %w", window.Min, margin, window.Max, ErrButts)
	}
	return window, nil
}
