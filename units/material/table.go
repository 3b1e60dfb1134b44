// SPDX-License-Identifier: BSD-3-Clause

package material

import (
	"fmt"
	"strings"

	"borewright.example/units"
)

const (
	ppm = 1e-6 * units.PerKelvin
	gpa = units.Gigapascal
	mpa = units.Megapascal

	// callister is the source of expansions that were read; the rest of its appendix is quoted from memory.
	callister = "Callister & Rethwisch, Fundamentals of Materials Science and Engineering, 3rd ed., Table B.6"
	remaining = "; the rest from memory after the same appendix: typical, the maker's figure wins"
	memory    = "from memory after common handbooks: typical, the maker's figure wins"
)

// GreyIron returns grey cast iron of the kind cylinders and sleeves are cast in, grade G3000, with its least tensile
// strength. Its modulus is that of small stresses, 90 to 113 GPa.
func GreyIron() Material {
	return Material{
		Name: "grey iron", Expansion: 11.2 * ppm, Within: 1 * ppm,
		Young: 100 * gpa, Poisson: 0.26, Tensile: 207 * mpa,
		Source: "expansion " + callister + ", grade G3000 (G1800 11.4, G4000 10.6; another handbook has 10.8)" + remaining,
	}
}

// ductileIron returns ductile (nodular) cast iron, with the least strengths of grade 60-40-18.
func ductileIron() Material {
	return Material{
		Name: "ductile iron", Expansion: 10.9 * ppm, Within: 1 * ppm,
		Young: 168 * gpa, Poisson: 0.3, Tensile: 414 * mpa, Yield: 276 * mpa,
		Source: "expansion " + callister + ", between grades 60-40-18 (11.2) and 80-55-06 (10.6)" + remaining,
	}
}

// PlainSteel returns plain carbon steel, with the strengths of hot-rolled 1020.
func PlainSteel() Material {
	return Material{
		Name: "plain steel", Expansion: 11.5 * ppm, Within: 1 * ppm,
		Young: 207 * gpa, Poisson: 0.3, Tensile: 380 * mpa, Yield: 210 * mpa,
		Source: "expansion " + callister + ", between steels 1020 (11.7) and 1040 (11.3); Swyt, J. Res. NIST 99 (1994) 31: 11.5" + remaining,
	}
}

// alloySteel returns low-alloy steel, with the strengths of annealed 4140.
func alloySteel() Material {
	return Material{
		Name: "alloy steel", Expansion: 12.3 * ppm, Within: 1 * ppm,
		Young: 207 * gpa, Poisson: 0.3, Tensile: 655 * mpa, Yield: 417 * mpa,
		Source: "expansion " + callister + ", steels 4140 and 4340" + remaining,
	}
}

// GaugeSteel returns the hardened steel of gauge blocks, setting rings and micrometer standards.
func GaugeSteel() Material {
	return Material{
		Name: "gauge steel", Expansion: 11.5 * ppm, Within: 1 * ppm, From: celsius(10), To: celsius(30),
		Young: 207 * gpa, Poisson: 0.3,
		Source: "expansion and its spread ISO 3650, from memory; the rest as plain steel, from memory",
	}
}

// hypoeutecticAluminium returns a cast aluminium-silicon alloy of about 7 % silicon, with the strengths of 356.0-T6.
func hypoeutecticAluminium() Material {
	return Material{
		Name: "cast aluminium-silicon, hypoeutectic", Expansion: 21.5 * ppm, Within: 1 * ppm,
		Young: 72.4 * gpa, Poisson: 0.33, Tensile: 228 * mpa, Yield: 164 * mpa,
		Source: "expansion " + callister + ", alloy 356.0" + remaining,
	}
}

// EutecticAluminium returns a cast aluminium-silicon piston alloy of about 12 % silicon.
func EutecticAluminium() Material {
	return Material{
		Name: "cast aluminium-silicon, eutectic", Expansion: 19.5 * ppm, Within: 1 * ppm, From: celsius(20), To: celsius(100),
		Young: 80 * gpa, Poisson: 0.33,
		Source: "expansion 19 to 20, " + memory,
	}
}

// hypereutecticAluminium returns a cast aluminium-silicon alloy of about 17 % silicon, as 390.0.
func hypereutecticAluminium() Material {
	return Material{
		Name: "cast aluminium-silicon, hypereutectic", Expansion: 19 * ppm, Within: 2 * ppm,
		Young: 81 * gpa, Poisson: 0.33,
		Source: "expansion public data sheets of 390.0 (18) and A390.0 (20), which disagree although the metal is the same; the rest " + memory,
	}
}

// wroughtAluminium4032 returns the forged piston alloy with 12 % silicon, with the strengths of state T6.
func wroughtAluminium4032() Material {
	return Material{
		Name: "wrought aluminium 4032", Expansion: 19.4 * ppm, Within: 1 * ppm, From: celsius(20), To: celsius(100),
		Young: 79 * gpa, Poisson: 0.33, Tensile: 380 * mpa, Yield: 315 * mpa,
		Source: memory,
	}
}

// wroughtAluminium2618 returns the forged piston alloy without silicon, with the strengths of state T61. It grows by some
// 3e-6/K more than 4032, and wants the larger cold clearance.
func wroughtAluminium2618() Material {
	return Material{
		Name: "wrought aluminium 2618", Expansion: 22.3 * ppm, Within: 1 * ppm, From: celsius(20), To: celsius(100),
		Young: 74 * gpa, Poisson: 0.33, Tensile: 440 * mpa, Yield: 370 * mpa,
		Source: memory,
	}
}

// AluminiumBlock returns a casting alloy of cylinder blocks and barrels, 319.0, with the strengths of sand castings as cast.
func AluminiumBlock() Material {
	return Material{
		Name: "aluminium block", Expansion: 21.5 * ppm, Within: 1 * ppm, From: celsius(20), To: celsius(100),
		Young: 74 * gpa, Poisson: 0.33, Tensile: 185 * mpa, Yield: 125 * mpa,
		Source: memory,
	}
}

// bronze returns cast bearing bronze, C93200.
func bronze() Material {
	return Material{
		Name: "bronze", Expansion: 18 * ppm, Within: 1 * ppm,
		Young: 100 * gpa, Poisson: 0.34, Tensile: 240 * mpa, Yield: 125 * mpa,
		Source: memory,
	}
}

// celsius is [units.Celsius] for the whole degrees of this file, which are temperatures.
func celsius(x float64) units.Temperature {
	return units.ReferenceTemperature.Add(units.TemperatureChange(x - 20))
}

func all() [12]Material {
	return [...]Material{
		GreyIron(), ductileIron(), PlainSteel(), alloySteel(), GaugeSteel(),
		hypoeutecticAluminium(), EutecticAluminium(), hypereutecticAluminium(),
		wroughtAluminium4032(), wroughtAluminium2618(), AluminiumBlock(), bronze(),
	}
}

// Names returns the names that [ByName] knows: "grey iron", "ductile iron", "plain steel", "alloy steel", "gauge steel",
// "cast aluminium-silicon, hypoeutectic", "…, eutectic" and "…, hypereutectic", "wrought aluminium 4032" and "… 2618",
// "aluminium block", "bronze".
func Names() []string {
	ms := all()
	names := make([]string, len(ms))
	for i, m := range ms {
		names[i] = m.Name
	}
	return names
}

// ByName returns the material of a name of [Names], written as there; any other is [units.ErrUnknownName].
func ByName(name string) (Material, error) {
	for _, m := range all() {
		if m.Name == name {
			return m, nil
		}
	}
	return Material{}, fmt.Errorf("material: %.80q: %w (want one of: %s)", name, units.ErrUnknownName, strings.Join(Names(), "; "))
}
