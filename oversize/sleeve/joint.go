// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/material"
)

// A Joint is a sleeve in a barrel, its sizes those of the parts lying apart at 20 °C.
//
// The sleeve's outside diameter is Seat plus the interference. Bore is that of the sleeve before
// fitting; it closes in as the barrel grips, see [Joint.Fit]. [Joint.Hone] gives the joint as it
// runs, honed to size.
//
// Outer is the outside diameter of the barrel. A plain barrel has Min equal to Max. Of a finned
// one the metal between the fins carries hoop stress and the fins carry some: give the diameter at
// the roots of the fins as Min and that over their tips as Max. Where the thinnest wall was
// measured, make Min no more than Seat plus twice that wall.
type Joint struct {
	Bore  units.Length `json:"bore"`  // inside diameter of the sleeve, apart
	Seat  units.Length `json:"seat"`  // diameter of the hole in the barrel
	Outer units.Limits `json:"outer"` // outside diameter of the barrel, both ends given

	Interference Diametral `json:"diametral_interference"` // DIAMETRAL, never radial

	Sleeve material.Material `json:"sleeve"` // of the sleeve: Young and Poisson always, Expansion where heat takes part
	Barrel material.Material `json:"barrel"` // of the barrel: the same
}

// Bounds of physics, wide enough for every metal.
const (
	leastYoung     = 1 * units.Gigapascal
	greatestYoung  = 1000 * units.Gigapascal
	greatestRatio  = 0.5                    // Poisson's ratio of what cannot be compressed
	greatestStress = 10 * units.Gigapascal  // no metal is as strong
	greatestGrowth = 1e-4 * units.PerKelvin // more than twice what any workshop metal has
	greatestStrain = 100                    // interference up to seat/greatestStrain
	hottest        = 1273.15                // kelvins: nothing here is looked at above 1000 °C
	greatestGas    = 100 * units.Megapascal // some five times a diesel's firing pressure
)

func (j *Joint) check() error {
	if err := checkLength("sleeve's bore", j.Bore); err != nil {
		return err
	}
	if err := checkLength("seat", j.Seat); err != nil {
		return err
	}
	if err := j.checkOuter(); err != nil {
		return err
	}
	if err := j.checkWalls(); err != nil {
		return err
	}
	if err := j.checkInterference(); err != nil {
		return err
	}
	if err := checkMaterial("sleeve", &j.Sleeve); err != nil {
		return err
	}
	return checkMaterial("barrel", &j.Barrel)
}

func (j *Joint) checkOuter() error {
	if err := checkLength("barrel's outside, smaller end", j.Outer.Min); err != nil {
		return err
	}
	if err := checkLength("barrel's outside, larger end", j.Outer.Max); err != nil {
		return err
	}
	if err := j.Outer.Validate(); err != nil {
		return fmt.Errorf("sleeve: barrel's outside: %w", err)
	}
	return nil
}

// checkWalls refuses a sleeve or barrel without a wall, as far as its sizes are given.
func (j *Joint) checkWalls() error {
	if j.Bore >= j.Seat {
		return fmt.Errorf("sleeve: sleeve of bore %v in a seat of %v: %w (bore below the seat)", j.Bore, j.Seat, units.ErrRange)
	}
	if !j.Outer.IsZero() && j.Outer.Min <= j.Seat {
		return fmt.Errorf("sleeve: barrel of outside %v with a seat of %v: %w (outside above the seat)", j.Outer.Min, j.Seat, units.ErrRange)
	}
	return nil
}

func (j *Joint) checkInterference() error {
	d, most := j.Interference, j.Seat/greatestStrain
	switch {
	case d == Diametral{}:
		return fmt.Errorf("sleeve: DIAMETRAL interference: %w", units.ErrNotGiven)
	case d.Min > d.Max:
		return fmt.Errorf("sleeve: DIAMETRAL interference %v to %v: %w (the lesser end first)", d.Min, d.Max, units.ErrCrossed)
	case d.Max <= 0 || d.Max > most || d.Min < -most:
		return fmt.Errorf("sleeve: DIAMETRAL interference %v to %v on %v: %w (above 0, up to %v)", d.Min, d.Max, j.Seat, units.ErrRange, most)
	}
	return nil
}

func checkMaterial(part string, m *material.Material) error {
	if m.Young == 0 {
		return fmt.Errorf("sleeve: Young's modulus of the %s, %q: %w", part, m.Name, units.ErrNotGiven)
	}
	if err := checkElastic(part, m); err != nil {
		return err
	}
	return checkExpansion(part, m)
}

// checkElastic checks stiffness and strength, as far as they are given.
func checkElastic(part string, m *material.Material) error {
	switch {
	case m.Young != 0 && !(m.Young >= leastYoung && m.Young <= greatestYoung):
		return fmt.Errorf("sleeve: Young's modulus %v of the %s, %q: %w (%v to %v)", m.Young, part, m.Name, units.ErrRange, leastYoung, greatestYoung)
	case !(m.Poisson >= 0 && m.Poisson <= greatestRatio):
		return fmt.Errorf("sleeve: Poisson's ratio %v of the %s, %q: %w (0 to %v)", m.Poisson, part, m.Name, units.ErrRange, greatestRatio)
	case !(m.Yield >= 0 && m.Yield <= greatestStress):
		return fmt.Errorf("sleeve: yield strength %v of the %s, %q: %w (0 to %v)", m.Yield, part, m.Name, units.ErrRange, greatestStress)
	case !(m.Tensile >= 0 && m.Tensile <= greatestStress):
		return fmt.Errorf("sleeve: tensile strength %v of the %s, %q: %w (0 to %v)", m.Tensile, part, m.Name, units.ErrRange, greatestStress)
	}
	return nil
}

// checkExpansion checks what heat asks of a material; an expansion of zero is not given.
func checkExpansion(part string, m *material.Material) error {
	switch {
	case !(m.Expansion >= 0 && m.Expansion <= greatestGrowth):
		return fmt.Errorf("sleeve: expansion %v of the %s, %q: %w (above 0, up to %v)", m.Expansion, part, m.Name, units.ErrRange, greatestGrowth)
	case !(m.Within >= 0 && (m.Within < m.Expansion || m.Within == 0)):
		return fmt.Errorf("sleeve: expansion %v ± %v of the %s, %q: %w (a spread from 0 to below the coefficient)", m.Expansion, m.Within, part, m.Name, units.ErrRange)
	}
	if err := m.From.Validate(); err != nil {
		return fmt.Errorf("sleeve: range of the expansion of the %s, %q: %w", part, m.Name, err)
	}
	if err := m.To.Validate(); err != nil {
		return fmt.Errorf("sleeve: range of the expansion of the %s, %q: %w", part, m.Name, err)
	}
	return nil
}

// checkThermal is what the functions that take temperatures and give stresses ask of a joint.
func (j *Joint) checkThermal() error {
	if err := j.check(); err != nil {
		return err
	}
	return j.checkGrowth()
}

// checkHeat is what a question of heat alone asks of a joint: sizes that overlap, and their growth. What
// else is given must be possible all the same.
func (j *Joint) checkHeat() error {
	if err := checkLength("seat", j.Seat); err != nil {
		return err
	}
	if j.Bore != 0 {
		if err := checkLength("sleeve's bore", j.Bore); err != nil {
			return err
		}
	}
	if !j.Outer.IsZero() {
		if err := j.checkOuter(); err != nil {
			return err
		}
	}
	if err := j.checkWalls(); err != nil {
		return err
	}
	if err := j.checkInterference(); err != nil {
		return err
	}
	if err := checkElastic("sleeve", &j.Sleeve); err != nil {
		return err
	}
	if err := checkElastic("barrel", &j.Barrel); err != nil {
		return err
	}
	return j.checkGrowth()
}

// checkGrowth asks for both expansions.
func (j *Joint) checkGrowth() error {
	if err := checkExpansion("sleeve", &j.Sleeve); err != nil {
		return err
	}
	if err := checkExpansion("barrel", &j.Barrel); err != nil {
		return err
	}
	if j.Sleeve.Expansion == 0 {
		return fmt.Errorf("sleeve: expansion of the sleeve, %q: %w", j.Sleeve.Name, units.ErrNotGiven)
	}
	if j.Barrel.Expansion == 0 {
		return fmt.Errorf("sleeve: expansion of the barrel, %q: %w", j.Barrel.Name, units.ErrNotGiven)
	}
	return nil
}

// above returns t − 20 °C in kelvins.
func above(what string, t units.Temperature) (float64, error) {
	if t.IsZero() {
		return 0, fmt.Errorf("sleeve: temperature of the %s: %w", what, units.ErrNotGiven)
	}
	if err := t.Validate(); err != nil {
		return 0, fmt.Errorf("sleeve: temperature of the %s: %w", what, err)
	}
	if t > hottest {
		return 0, fmt.Errorf("sleeve: temperature of the %s, %v: %w (up to %v)", what, t, units.ErrRange, units.Temperature(hottest))
	}
	return float64(t.AboveReference()), nil
}

// growths returns the least and the greatest of 1 + α·dT over the spread of the coefficient.
func growths(m *material.Material, dT float64) span {
	lo, hi := float64((m.Expansion-m.Within))*dT, float64((m.Expansion+m.Within))*dT
	return span{1 + float64(min(lo, hi)), 1 + float64(max(lo, hi))}
}
