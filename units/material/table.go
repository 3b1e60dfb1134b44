// SPDX-License-Identifier: BSD-3-Clause

package material

import (
	"errors"
	"fmt"
	"strings"

	"borewright.example/units"
)

// ErrUnknown: no material of this package has the name.
var ErrUnknown = errors.New("unknown material")

const (
	ppm = 1e-6 * units.PerKelvin
	gpa = units.Gigapascal
	mpa = units.Megapascal
	gcc = GramPerCubicCentimetre
)

// GreyIron returns grey cast iron of the kind cylinders and sleeves are cast in.
func GreyIron() Material {
	return Material{Name: "grey iron", Expansion: 11.2 * ppm, Within: 0.6 * ppm, Young: 100 * gpa, Poisson: 0.26, Density: 7.3 * gcc, Tensile: 207 * mpa}
}

// DuctileIron returns ductile (nodular) cast iron.
func DuctileIron() Material {
	return Material{Name: "ductile iron", Expansion: 10.9 * ppm, Within: 0.6 * ppm, Young: 168 * gpa, Poisson: 0.3, Density: 7.1 * gcc, Tensile: 414 * mpa, Yield: 276 * mpa}
}

// PlainSteel returns plain carbon steel.
func PlainSteel() Material {
	return Material{Name: "plain steel", Expansion: 11.5 * ppm, Within: 0.5 * ppm, Young: 207 * gpa, Poisson: 0.3, Density: 7.85 * gcc}
}

// AlloySteel returns low-alloy steel.
func AlloySteel() Material {
	return Material{Name: "alloy steel", Expansion: 12.3 * ppm, Within: 1 * ppm, Young: 207 * gpa, Poisson: 0.3, Density: 7.85 * gcc}
}

// GaugeSteel returns the hardened steel of gauge blocks and setting standards.
func GaugeSteel() Material {
	return Material{Name: "gauge steel", Expansion: 11.5 * ppm, Within: 1 * ppm, Young: 207 * gpa, Poisson: 0.3, Density: 7.85 * gcc}
}

// HypoeutecticAluminium returns a cast aluminium-silicon alloy of about 7 % silicon.
func HypoeutecticAluminium() Material {
	return Material{Name: "cast aluminium-silicon, hypoeutectic", Expansion: 21.5 * ppm, Within: 1 * ppm, Young: 72.4 * gpa, Poisson: 0.33, Density: 2.69 * gcc}
}

// EutecticAluminium returns a cast aluminium-silicon piston alloy of about 12 % silicon.
func EutecticAluminium() Material {
	return Material{Name: "cast aluminium-silicon, eutectic", Expansion: 19.5 * ppm, Within: 1 * ppm, Young: 80 * gpa, Poisson: 0.33, Density: 2.7 * gcc}
}

// HypereutecticAluminium returns a cast aluminium-silicon alloy of about 17 % silicon.
func HypereutecticAluminium() Material {
	return Material{Name: "cast aluminium-silicon, hypereutectic", Expansion: 19 * ppm, Within: 2 * ppm, Young: 81 * gpa, Poisson: 0.33, Density: 2.73 * gcc}
}

// WroughtAluminium4032 returns the forged piston alloy with 12 % silicon.
func WroughtAluminium4032() Material {
	return Material{Name: "wrought aluminium 4032", Expansion: 19.4 * ppm, Within: 1 * ppm, Young: 79 * gpa, Poisson: 0.33, Density: 2.68 * gcc}
}

// WroughtAluminium2618 returns the forged piston alloy without silicon.
func WroughtAluminium2618() Material {
	return Material{Name: "wrought aluminium 2618", Expansion: 22.3 * ppm, Within: 1 * ppm, Young: 74 * gpa, Poisson: 0.33, Density: 2.76 * gcc}
}

// AluminiumBlock returns a casting alloy of cylinder blocks and barrels.
func AluminiumBlock() Material {
	return Material{Name: "aluminium block", Expansion: 21.5 * ppm, Within: 1 * ppm, Young: 74 * gpa, Poisson: 0.33, Density: 2.79 * gcc}
}

// Bronze returns cast bearing bronze.
func Bronze() Material {
	return Material{Name: "bronze", Expansion: 18 * ppm, Within: 1 * ppm, Young: 100 * gpa, Poisson: 0.34, Density: 8.93 * gcc}
}

func all() []Material {
	return []Material{
		GreyIron(), DuctileIron(), PlainSteel(), AlloySteel(), GaugeSteel(),
		HypoeutecticAluminium(), EutecticAluminium(), HypereutecticAluminium(),
		WroughtAluminium4032(), WroughtAluminium2618(), AluminiumBlock(), Bronze(),
	}
}

// Names returns the names that [ByName] knows.
func Names() []string {
	ms := all()
	names := make([]string, len(ms))
	for i, m := range ms {
		names[i] = m.Name
	}
	return names
}

// ByName returns the material of a name of [Names]; any other is [ErrUnknown].
func ByName(name string) (Material, error) {
	for _, m := range all() {
		if m.Name == name {
			return m, nil
		}
	}
	return Material{}, fmt.Errorf("material: %q: %w (want one of: %s)", name, ErrUnknown, strings.Join(Names(), ", "))
}
