// SPDX-License-Identifier: BSD-3-Clause

package material

import "borewright.example/units"

// UsualWorkshop returns where the temperature of a workshop, and of a gauge, a standard or a bore at rest in it, usually
// lies: 5 to 45 °C (common practice). It catches slips, a point moved by a place or °F for °C: every temperature of the
// band from 8 °C up that is written in °F and read as °C lies outside. What lies outside is not wrong, it wants a second look.
func UsualWorkshop() (least, greatest units.Temperature) { return celsius(5), celsius(45) }

// UsualRunning returns where the mean temperatures of a bore, a skirt and a ring in work usually lie: 60 to 320 °C (common
// practice). It catches a point moved by a place.
func UsualRunning() (least, greatest units.Temperature) { return celsius(60), celsius(320) }
