// SPDX-License-Identifier: BSD-3-Clause

package show

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
)

// Route names a route, with the size that it goes to.
func (s In) Route(r oversize.Route, over units.Length) string {
	if r == oversize.BoreOversize && over != 0 { // of a wall that forbids boring every size is refused
		return r.String() + " to " + s.Over(over)
	}
	return r.String()
}

// Temperature returns t in the degrees that go with the units shown, to a whole one.
func (s In) Temperature(t units.Temperature) string {
	return s.Either(fmt.Sprintf("%.0f °C", t.Celsius()), fmt.Sprintf("%.0f °F", t.Fahrenheit()))
}

// Within returns a temperature with its half-width, to a tenth of a degree.
func (s In) Within(t bore.Temperature) string {
	if t.Within == 0 {
		return s.Either(fmt.Sprintf("%.1f °C", t.Value.Celsius()), fmt.Sprintf("%.1f °F", t.Value.Fahrenheit()))
	}
	return s.Either(fmt.Sprintf("%.1f ± %.1f °C", t.Value.Celsius(), t.Within.In(units.Kelvin)),
		fmt.Sprintf("%.1f ± %.1f °F", t.Value.Fahrenheit(), t.Within.In(units.DegreeFahrenheit)))
}

// Pressures returns a range of pressures in the units that go with those shown.
func (s In) Pressures(least, greatest units.Pressure) string {
	const psi = units.PoundPerSquareInch
	return s.Either(fmt.Sprintf("%.1f to %.1f MPa", least.In(units.Megapascal), greatest.In(units.Megapascal)),
		fmt.Sprintf("%.0f to %.0f psi", least.In(psi), greatest.In(psi)))
}

// Forces returns a range of forces in the units that go with those shown.
func (s In) Forces(least, greatest units.Force) string {
	const kilonewton = 1000 * units.Newton
	return s.Either(fmt.Sprintf("%.1f to %.1f kN", least.In(kilonewton), greatest.In(kilonewton)),
		fmt.Sprintf("%.0f to %.0f lbf", least.In(units.PoundForce), greatest.In(units.PoundForce)))
}

// Capacity returns a swept volume in every unit shown, and the ratio where it is known.
func (s In) Capacity(c oversize.Compression) string {
	text := s.Either(fmt.Sprintf("%.1f cm³", c.Swept.In(units.CubicCentimetre)), fmt.Sprintf("%.2f in³", c.Swept.In(units.CubicInch)))
	if c.Ratio != 0 {
		text += fmt.Sprintf(", %.2f : 1", c.Ratio)
	}
	if c.FromPort != 0 {
		text += fmt.Sprintf(", %.2f : 1 from where the port closes", c.FromPort)
	}
	return text
}
