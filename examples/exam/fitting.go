// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/sleeve"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// drill asks for the crosshatch that a drill leaves.
func drill(d dice) (question, error) {
	s := hone.Setting{
		Bore: d.um(60000, 95000, 1000), Stroke: d.um(60000, 110000, 5000),
		Spindle: units.Frequency(d.between(8, 65)*10) * units.PerMinute, Stroking: hone.Cycles(units.Frequency(d.between(6, 14)*5) * units.PerMinute),
	}
	c, err := s.Crosshatch()
	along := 2 * s.Stroke.In(units.Metre) * s.Stroking.Cycles().In(units.PerMinute)
	round := math.Pi * s.Bore.In(units.Metre) * s.Spindle.In(units.PerMinute)
	second := 2 * math.Atan2(along, round) * 180 / math.Pi
	return question{
		Title: "What the drill leaves",
		Text: fmt.Sprintf("A hone in a drill turns at %.0f rev/min in a bore of %v, and is moved by %v there and back, %.0f times a minute. Which angle is left between the lines?",
			s.Spindle.In(units.PerMinute), s.Bore, s.Stroke, s.Stroking.Cycles().In(units.PerMinute)),
		Working: []string{
			fmt.Sprintf("Along the bore 2·%v·%.0f = %.2f m/min, round it π·%v·%.0f = %.2f m/min.", s.Stroke, s.Stroking.Cycles().In(units.PerMinute), along, s.Bore, s.Spindle.In(units.PerMinute), round),
			fmt.Sprintf("A line leans by atan(%.2f/%.2f) = %.1f° from square; between the two families lies twice that.", along, round, second/2),
		},
		Answers: []answer{{"Included angle", c.Included().In(units.Degree), second, 1, "°"}},
	}, err
}

// wear asks for a ring's gap in a worn bore.
func wear(d dice) (question, error) {
	bore, gap, worn := d.um(60000, 95000, 500), d.um(200, 450, 10), d.um(30, 200, 10)
	e := func(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }
	now, err := rings.Gap{Measured: e(gap), Bore: e(bore)}.In(e(bore + worn))
	wire := math.Pi*bore.In(units.Millimetre) - gap.In(units.Millimetre)
	second := math.Pi*(bore+worn).In(units.Millimetre) - wire
	return question{
		Title:   "Gap and wear",
		Text:    fmt.Sprintf("A new ring has a gap of %s in a bore of %s. The bore wears by %s on the diameter, the ring not at all. Which gap has it then?", mm(gap), mm(bore), mm(worn)),
		Working: []string{fmt.Sprintf("The ring's own length stays, so the gap takes all of the way round: %s + π·%s = %.3f mm.", mm(gap), mm(worn), second)},
		Answers: []answer{{"Gap", now.Value.In(units.Millimetre), second, 3, "mm"}},
	}, err
}

// oversized asks for the smallest oversize that cleans up.
func oversized(d dice) (question, error) {
	for {
		nominal := units.Length(d.between(60, 95)) * units.Millimetre
		least, wear := nominal+d.um(0, 20, 5), d.um(60, 420, 10)
		clearance, honing := d.um(30, 60, 5), d.um(30, 80, 10)
		skirt := nominal - clearance - d.um(0, 5, 1)
		need := um(least-nominal) + 2*um(wear) + um(honing) - um(clearance) - um(skirt-nominal)
		steps := math.Ceil(need / 250)
		if steps < 1 || steps > 4 || math.Mod(need, 250) < 5 {
			continue // no such size, or hanging on the last digit
		}
		e := oversize.Engine{Wall: oversize.BareIron, Nominal: nominal, Clearance: units.Limits{Min: clearance, Max: clearance + 20*units.Micrometre}, Honing: honing, Sizes: oversize.Metric()}
		exact := func(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }
		for i := range e.Sizes {
			e.Sizes[i].Piston.Size = exact(skirt + e.Sizes[i].Over)
		}
		c := oversize.Cylinder{Name: "1", Largest: exact(least + wear), Smallest: exact(least), Places: 6}
		c.CleanUp.Original.Min, c.CleanUp.Original.Max = exact(least+wear), exact(least+2*wear)
		c.CleanUp.Worn = c.CleanUp.Original
		c.Piston.Size = exact(skirt)
		choice, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
		if err == nil && choice.Route != oversize.BoreOversize {
			continue // it may stay
		}
		return question{
			Title: "Which oversize",
			Text: fmt.Sprintf("A bore of %v nominal reads %s at its largest and %s below ring travel; all of the wear may lie on one side, and the bar follows the old centre. Pistons are on offer in "+
				"steps of 0.25 mm; the standard one measures %s, the others are as much larger as their name says. The least clearance is %s, and %s on the diameter are left for honing. "+
				"Take the sizes as exact. Which is the smallest oversize that leaves no worn wall?", nominal, mm(least+wear), mm(least), mm(skirt), mm(clearance), mm(honing)),
			Working: []string{
				fmt.Sprintf("Clean-up: least + 2·wear = %s + 2·%s = %s, %.0f µm over nominal.", mm(least), mm(wear), mm(least+2*wear), um(least-nominal)+2*um(wear)),
				fmt.Sprintf("Over ≥ clean-up + honing − clearance − (skirt − nominal) = %.0f + %.0f − %.0f − (%.0f) = %.0f µm; the next step is %.2f mm.",
					um(least-nominal)+2*um(wear), um(honing), um(clearance), um(skirt-nominal), need, steps/4),
			},
			Answers: []answer{{"Oversize", choice.Over.In(units.Millimetre), steps / 4, 2, "mm"}},
		}, err
	}
}

// loose asks when a sleeve comes loose.
func loose(d dice) (question, error) {
	seat, delta := d.um(60000, 95000, 1000), d.um(30, 90, 5)
	iron, block := material.GreyIron(), material.AluminiumBlock()
	iron.Within, block.Within = 0, 0
	joint := sleeve.Joint{Bore: seat - 6*units.Millimetre, Seat: seat, Outer: units.Limits{Min: seat + 18*units.Millimetre, Max: seat + 18*units.Millimetre},
		Interference: sleeve.Diametral{Min: delta, Max: delta}, Sleeve: iron, Barrel: block}
	loosens, err := joint.LooseAt(sleeve.Warm{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature})
	as, ab := iron.Expansion.In(1e-6*units.PerKelvin), block.Expansion.In(1e-6*units.PerKelvin)
	second := 20 + um(delta)/(um(seat)*ab-um(seat+delta)*as)*1e6
	return question{
		Title: "A sleeve comes loose",
		Text: fmt.Sprintf("An iron sleeve sits in an aluminium barrel: its outside is %s larger than the seat of %v, at 20 °C. Both are heated alike. At what temperature is the grip gone? "+
			"(Growth a kelvin, in millionths: iron %.1f, aluminium %.1f.)", mm(delta), seat, as, ab),
		Working: []string{fmt.Sprintf("Each kelvin the seat grows away by %v·(%.1f − %.1f)/1 000 000, nearly %.3f µm; %.0f µm are gone after %.0f K, at %.0f °C.", seat, ab, as, um(seat)*(ab-as)/1e6, um(delta), second-20, second),
			"In an engine the sleeve is the hotter part, which helps."},
		Answers: []answer{{"The grip is gone at", loosens.Hot.Min.Celsius(), second, 0, "°C"}},
	}, err
}

// rebore asks for volume and ratio after a rebore.
func rebore(d dice) (question, error) {
	before, over := d.um(60000, 90000, 1000), d.um(250, 1000, 250)
	stroke, n := d.um(55000, 100000, 1000), int(d.between(1, 6))
	head := units.Volume(d.between(25, 70)) * units.CubicCentimetre
	all, err := oversize.Displacement(before+over, stroke, n)
	if err != nil {
		return question{}, err
	}
	c, err := oversize.Chamber{Head: head}.Compression(before+over, stroke)
	v := math.Pi / 4 * math.Pow((before+over).In(units.Millimetre)/10, 2) * stroke.In(units.Millimetre) / 10
	space := head.In(units.CubicCentimetre)
	return question{
		Title: "After the rebore",
		Text: fmt.Sprintf("An engine of %d × %v by %v is bored %s over. Above each piston at the top are %.0f cm³, which stay. Which displacement has it now, and which compression ratio?",
			n, before, stroke, over.Format(units.Millimetre, 2), space),
		Working: []string{
			fmt.Sprintf("V = π/4·(%s)²·%v = %.1f cm³ for one cylinder, %.1f cm³ for %d.", mm(before+over), stroke, v, float64(n)*v, n),
			fmt.Sprintf("R = (V + C)/C = (%.1f + %.0f)/%.0f = %.2f.", v, space, space, 1+v/space),
		},
		Answers: []answer{{"Displacement", all.In(units.CubicCentimetre), float64(n) * v, 1, "cm³"}, {"Compression ratio", c.Ratio, 1 + v/space, 2, ": 1"}},
	}, err
}
