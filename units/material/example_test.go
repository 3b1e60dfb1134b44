// SPDX-License-Identifier: BSD-3-Clause

package material_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"borewright.example/units"
	"borewright.example/units/material"
)

// The gauge is set on a ring in a cool office and used in a warm shed, on a barrel that has stood in the sun.
func Example() {
	standard, barrel := material.GaugeSteel(), material.AluminiumBlock()
	c := material.Comparison{
		Standard:   units.MustParseLength("67.000 mm"),
		Deviation:  units.MustParseLength("0.061 mm"),
		StandardAt: units.MustParseTemperature("19 °C"), StandardExpansion: standard.Expansion,
		GaugeSetAt: units.MustParseTemperature("19 °C"),
		GaugeUseAt: units.MustParseTemperature("27 °C"), GaugeExpansion: material.PlainSteel().Expansion,
		PartAt: units.MustParseTemperature("41 °C"), PartExpansion: barrel.Expansion,
	}
	l, err := c.SizeAt20()
	fmt.Println("dial alone:", (c.Standard+c.Deviation).Format(units.Millimetre, 4))
	fmt.Println("at 20 °C:  ", l.Format(units.Millimetre, 4), err)
	// Output:
	// dial alone: 67.0610 mm
	// at 20 °C:   67.0361 mm <nil>
}

// Set and used at 30 °C with no time to cool, on a bore of the standard's own steel: the dial is right, for all that matters.
func ExampleComparison_SizeAt20() {
	warm := units.MustParseTemperature("30 °C")
	c := material.Comparison{
		Standard: 67 * units.Millimetre, Deviation: 30 * units.Micrometre,
		StandardAt: warm, GaugeSetAt: warm, GaugeUseAt: warm, PartAt: warm,
		StandardExpansion: 11.5e-6 * units.PerKelvin, GaugeExpansion: 11.5e-6 * units.PerKelvin, PartExpansion: 11.5e-6 * units.PerKelvin,
	}
	l, err := c.SizeAt20()
	fmt.Println(l.Format(units.Micrometre, 3), err)
	// Output: 67029.997 µm <nil>
}

// The barrel is still warm from the cut. What should the dial show now, so that the bore is
// 66.994 mm when it has cooled? For roughing only.
func ExampleComparison_DialReading() {
	now := material.Comparison{
		Standard: units.MustParseLength("67 mm"), StandardAt: units.ReferenceTemperature,
		GaugeSetAt: units.ReferenceTemperature, GaugeUseAt: units.ReferenceTemperature,
		PartAt: units.MustParseTemperature("45 °C"), PartExpansion: 21.5e-6,
	}
	d, err := now.DialReading(units.MustParseLength("66.994 mm"))
	fmt.Println(d.Format(units.Millimetre, 3), err)
	// Output: 0.030 mm <nil>
}

// What each doubt is worth: a kelvin of the barrel matters twice as much as one of the steel.
func ExampleSensitivities() {
	c := material.Comparison{
		Standard:   units.MustParseLength("67.000 mm"),
		StandardAt: units.MustParseTemperature("19 °C"), StandardExpansion: 11.5e-6 * units.PerKelvin,
		GaugeSetAt: units.MustParseTemperature("19 °C"), GaugeUseAt: units.MustParseTemperature("27 °C"), GaugeExpansion: 11.5e-6 * units.PerKelvin,
		PartAt: units.MustParseTemperature("41 °C"), PartExpansion: 21.5e-6 * units.PerKelvin,
	}
	s, err := c.Sensitivities()
	for _, row := range []struct {
		of string
		l  units.Length
	}{
		{"1 K of the standard", s.StandardAt}, {"1 K of the gauge in use", s.GaugeUseAt}, {"1 K of the part", s.PartAt}, {"1e-6/K of the part", s.PartExpansion},
	} {
		fmt.Printf("%-23s %8s\n", row.of, row.l.Format(units.Micrometre, 2))
	}
	fmt.Println(err)
	// Output:
	// 1 K of the standard      0.77 µm
	// 1 K of the gauge in use  0.77 µm
	// 1 K of the part         -1.44 µm
	// 1e-6/K of the part      -1.41 µm
	// <nil>
}

// A user's own metal is one literal. A coefficient that has lost its 10⁻⁶ is refused.
func ExampleMaterial() {
	own := material.Material{Name: "my barrel", Expansion: 20.5e-6 * units.PerKelvin, Within: 0.5e-6 * units.PerKelvin, Source: "the maker's drawing"}
	l, err := own.SizeAt20(units.MustParseLength("67.050 mm"), units.MustParseTemperature("35 °C"))
	fmt.Println(l.Format(units.Millimetre, 4), err)

	own.Expansion = 20.5
	_, err = own.SizeAt20(units.MustParseLength("67.050 mm"), units.MustParseTemperature("35 °C"))
	fmt.Println(err)
	// Output:
	// 67.0294 mm <nil>
	// material: my barrel with an expansion of 20500000e-6/K from 20 °C to 35 °C grows by 308: out of range (±0.1; 11.4e-6/K is usual)
}

// An iron bore and an aluminium piston close up as they warm: the bore at 60 °C, the piston too.
func ExampleMaterial_SizeAt() {
	warm := units.MustParseTemperature("60 °C")
	bore, err := material.GreyIron().SizeAt(units.MustParseLength("67.000 mm"), warm)
	piston, err2 := material.EutecticAluminium().SizeAt(units.MustParseLength("66.960 mm"), warm)
	fmt.Println((bore-piston).Format(units.Micrometre, 1), err, err2)
	// Output: 17.8 µm <nil> <nil>
}

// The inverse is exact, the usual shortcut l·(1 − α·ΔT) is not.
func ExampleMaterial_SizeAt20() {
	iron := material.Material{Expansion: 11.4e-6 * units.PerKelvin}
	l, err := iron.SizeAt20(units.MustParseLength("87.535 mm"), units.MustParseTemperature("35 °C"))
	fmt.Println(l, err)
	// Output: 87.520034074 mm <nil>
}

func ExampleByName() {
	m, err := material.ByName("ductile iron")
	fmt.Println(m.Expansion, m.Young, err)
	_, err = material.ByName("cheese")
	fmt.Println(err != nil)
	// Output:
	// 10.9e-6/K 168000 MPa <nil>
	// true
}

func ExampleNames() {
	for _, name := range material.Names() {
		m, err := material.ByName(name)
		fmt.Printf("%-37s %10s ± %s %v\n", name, m.Expansion, m.Within, err)
	}
	// Output:
	// grey iron                              11.2e-6/K ± 1e-6/K <nil>
	// ductile iron                           10.9e-6/K ± 1e-6/K <nil>
	// plain steel                            11.5e-6/K ± 1e-6/K <nil>
	// alloy steel                            12.3e-6/K ± 1e-6/K <nil>
	// gauge steel                            11.5e-6/K ± 1e-6/K <nil>
	// cast aluminium-silicon, hypoeutectic   21.5e-6/K ± 1e-6/K <nil>
	// cast aluminium-silicon, eutectic       19.5e-6/K ± 1e-6/K <nil>
	// cast aluminium-silicon, hypereutectic    19e-6/K ± 2e-6/K <nil>
	// wrought aluminium 4032                 19.4e-6/K ± 1e-6/K <nil>
	// wrought aluminium 2618                 22.3e-6/K ± 1e-6/K <nil>
	// aluminium block                        21.5e-6/K ± 1e-6/K <nil>
	// bronze                                   18e-6/K ± 1e-6/K <nil>
}

// An iron sleeve in an aluminium barrel grows with neither coefficient.
func ExampleBetween() {
	m := material.Between(material.GreyIron(), material.AluminiumBlock())
	fmt.Println(m.Name, m.Expansion, "±", m.Within)
	// Output: grey iron in aluminium block 16.35e-6/K ± 6.15e-6/K
}

// The grade that the figures are of is in Source.
func ExampleGreyIron() {
	m := material.GreyIron()
	fmt.Println(m.Expansion, m.Young, m.Poisson)
	// Output: 11.2e-6/K 100000 MPa 0.26
}

func ExamplePlainSteel() {
	fmt.Printf("%.1fe-6/°F\n", material.PlainSteel().Expansion.In(1e-6*units.PerFahrenheit))
	// Output: 6.4e-6/°F
}

func ExampleGaugeSteel() {
	m := material.GaugeSteel()
	fmt.Println(m.Expansion, "±", m.Within, "from", m.From, "to", m.To)
	// Output: 11.5e-6/K ± 1e-6/K from 10 °C to 30 °C
}

func ExampleEutecticAluminium() {
	fmt.Println(material.EutecticAluminium().Expansion)
	// Output: 19.5e-6/K
}

func ExampleAluminiumBlock() {
	fmt.Println(material.AluminiumBlock().Expansion)
	// Output: 21.5e-6/K
}

// A metal in a file, by its name or by figures of its own.
func ExampleMaterial_UnmarshalJSON() {
	for _, text := range []string{`"grey iron"`, `{"name": "this liner", "expansion": "10.5e-6/K"}`, `"gray iron"`} {
		var m material.Material
		err := json.Unmarshal([]byte(text), &m)
		fmt.Printf("%q %v %v\n", m.Name, m.Expansion, errors.Is(err, units.ErrUnknownName))
	}
	// Output:
	// "grey iron" 11.2e-6/K false
	// "this liner" 10.5e-6/K false
	// "" 0e-6/K true
}
