// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// twoAxes asks what two axes read of an oval bore.
func twoAxes(d dice) (question, error) {
	v, phi := d.um(20, 90, 2), d.between(5, 40)
	mean := units.Length(d.between(60, 100)) * units.Millimetre
	var rs []bore.Reading
	for _, axis := range []float64{0, 90} {
		off, err := units.Of(um(v)/2*cos(2*(axis-float64(phi))), units.Micrometre)
		if err != nil {
			return question{}, err
		}
		rs = append(rs, bore.Reading{Axis: bore.Axis(units.Angle(axis) * units.Degree), Diameter: mean + off})
	}
	g, err := bore.Analyse(rs, bore.Gauge{})
	second := um(v) * math.Abs(cos(2*float64(phi)))
	return question{
		Title: "Two axes",
		Text: fmt.Sprintf("A bore is oval: its greatest diameter is %.0f µm more than its least, and lies %d° from the thrust axis. "+
			"It is read along the thrust axis and the pin axis alone. Which ovality is read?", um(v), phi),
		Working: []string{
			"Along θ a diameter is off the mean by V/2·cos 2(θ − φ); at 0° and 90° these are opposite, so V·|cos 2φ| is read.",
			fmt.Sprintf("%.0f µm·|cos %d°| = %.1f µm. The rest is not seen, and at 45° nothing would be.", um(v), 2*phi, second),
		},
		Answers: []answer{{"Ovality as read", um(g.Ovality.Value), second, 1, "µm"}},
	}, err
}

// repeats asks what a mean near its limit says, and how many readings settle it.
func repeats(d dice) (question, error) {
	for {
		limit := d.um(60000, 90000, 50)
		short := d.um(2, 5, 1) // the mean is below the limit by this
		s, rest, taken := float64(d.between(20, 60))/10, float64(d.between(4, 16))/10, int(d.between(2, 4))
		exact := s * s / (math.Pow(um(short)/1.645, 2) - rest*rest)
		if part := math.Mod(exact, 1); exact < float64(taken)+1 || exact > 60 || part < 0.1 || part > 0.9 {
			continue // decided already, past all patience, or hanging on the last digit
		}
		judge := func(n int) (uncertainty.Finding, error) {
			std, err := units.Of(math.Sqrt(s*s/float64(n)+rest*rest), units.Micrometre)
			if err != nil {
				return uncertainty.Finding{}, err
			}
			return uncertainty.Judge(uncertainty.Estimate{Value: limit - short, Std: std}, units.Limits{Max: limit}, uncertainty.Risk{})
		}
		n := taken
		f, err := judge(n)
		for err == nil && f.Verdict == uncertainty.Undecided {
			n++
			f, err = judge(n)
		}
		return question{
			Title: "Undecided",
			Text: fmt.Sprintf("The service limit is %s at most. The mean of %d readings is %s; a reading scatters by %.1f µm (one standard deviation), and "+
				"%.1f µm of standard uncertainty are the same in all of them. The risk is 5 %%. What does the mean say, and how many readings in all would settle it "+
				"if the mean stayed?", mm(limit), taken, mm(limit-short), s, rest),
			Working: []string{
				fmt.Sprintf("u = √(%.1f²/%d + %.1f²) = %.2f µm, and 1.645·u = %.2f µm is more than the %.0f µm to the limit: undecided. That is no weak within.",
					s, taken, rest, math.Sqrt(s*s/float64(taken)+rest*rest), 1.645*math.Sqrt(s*s/float64(taken)+rest*rest), um(short)),
				fmt.Sprintf("n = %.1f²/((%.0f/1.645)² − %.1f²) = %.1f, so %.0f. Were %.1f µm more than %.2f µm, no number would do.", s, um(short), rest, exact, math.Ceil(exact), rest, um(short)/1.645),
			},
			Answers: []answer{{"Readings in all", float64(n), math.Ceil(exact), 0, "readings"}},
		}, err
	}
}

// warm asks what the dial shows on a warm bore.
func warm(d dice) (question, error) {
	ring := d.um(60000, 90000, 500)
	wanted := ring + d.um(-80, 80, 10)
	gaugeAt, boreAt := d.between(24, 34), d.between(35, 48)
	part := material.GreyIron()
	if d.IntN(2) > 0 {
		part = material.AluminiumBlock()
	}
	steel := material.GaugeSteel()
	degrees := func(t int64) units.Temperature {
		return units.ReferenceTemperature.Add(units.TemperatureChange(t - 20))
	}
	shows, err := material.Comparison{
		Standard: ring, StandardAt: degrees(20), GaugeSetAt: degrees(20), GaugeUseAt: degrees(gaugeAt), PartAt: degrees(boreAt),
		StandardExpansion: steel.Expansion, GaugeExpansion: steel.Expansion, PartExpansion: part.Expansion,
	}.DialReading(wanted)
	ppm := func(m material.Material) float64 { return m.Expansion.In(1e-6 * units.PerKelvin) }
	bored := um(wanted) * ppm(part) * float64(boreAt-20) / 1e6
	gauge := um(ring) * ppm(steel) * float64(gaugeAt-20) / 1e6
	second := um(wanted-ring) + bored - gauge
	return question{
		Title: "A warm bore",
		Text: fmt.Sprintf("A gauge is set to zero in a ring of %s; ring and gauge are at 20 °C then. Now the gauge is at %d °C and the bore, of %s, at %d °C. "+
			"It is to be %s at 20 °C. What does the dial show when it is there, plus for larger? (Growth a kelvin, in millionths: steel %.1f, the bore %.1f.)",
			mm(ring), gaugeAt, part.Name, boreAt, mm(wanted), ppm(steel), ppm(part)),
		Working: []string{
			fmt.Sprintf("Cold: %s − %s = %+.0f µm. The bore has grown by %s·%.1f·%d/1 000 000 = %.1f µm, the gauge by %s·%.1f·%d/1 000 000 = %.1f µm.",
				mm(wanted), mm(ring), um(wanted-ring), mm(wanted), ppm(part), boreAt-20, bored, mm(ring), ppm(steel), gaugeAt-20, gauge),
			fmt.Sprintf("The dial shows %+.0f + %.1f − %.1f = %+.1f µm. The last cut is judged cold.", um(wanted-ring), bored, gauge, second),
		},
		Answers: []answer{{"The dial", um(shows), second, 0, "µm"}},
	}, err
}

// zone asks for the roundness about two centres.
func zone(d dice) (question, error) {
	const n = 12
	for {
		var radii []units.Length
		radius := units.Length(d.between(30, 45)) * units.Millimetre
		turn := float64(d.between(0, 359))
		for i := range n {
			at := float64(i)*360/n - turn
			off, err := units.Of(12*cos(at)+8*cos(2*at)+3*cos(3*at+40)+float64(d.between(-20, 20))/10, units.Micrometre)
			if err != nil {
				return question{}, err
			}
			radii = append(radii, radius+off.Round(100*units.Nanometre))
		}
		trace, err := form.FromRadii(radii)
		if err != nil {
			return question{}, err
		}
		ls, err := trace.LeastSquares()
		if err != nil {
			return question{}, err
		}
		mz, err := trace.MinimumZone()
		if err != nil {
			return question{}, err
		}
		if um(ls.RONt-mz.RONt) < 0.5 {
			continue // no difference to find
		}
		// What an instrument prints: the departures from a circle about each centre.
		rows := make([]string, 2)
		var ront [2]float64
		for k, c := range []form.Circle{ls, mz} {
			least, most := math.Inf(1), math.Inf(-1)
			var shown []string
			for i, r := range radii {
				x := um(r)*cos(float64(i)*360/n) - um(c.Centre.X)
				y := um(r)*cos(float64(i)*360/n-90) - um(c.Centre.Y)
				off := math.Round(100*(math.Hypot(x, y)-um(c.Radius))) / 100
				least, most = min(least, off), max(most, off)
				shown = append(shown, fmt.Sprintf("%+.2f", off))
			}
			rows[k], ront[k] = strings.Join(shown, ", "), most-least
		}
		order := []int{0, 1}
		if d.IntN(2) > 0 {
			slices.Reverse(order)
		}
		return question{
			Title: "Zone and least squares",
			Text: fmt.Sprintf("An instrument gives the departures of one wall, in µm, at %d even angles, counted from two circles. A: %s. B: %s. "+
				"One circle is that of least squares, one that of the minimum zone. Which is which, and which roundness has the wall about each?", n, rows[order[0]], rows[order[1]]),
			Working: []string{
				fmt.Sprintf("Greatest less least: A %.2f µm, B %.2f µm. No circle leaves less than the minimum zone, so that is %s, and its number is the least that a drawing can ask for; "+
					"least squares, moved little by one bad point, gives more.", ront[order[0]], ront[order[1]], []string{"B", "A"}[order[0]]),
			},
			Answers: []answer{{"RONt about least squares", um(ls.RONt), ront[0], 1, "µm"}, {"RONt about the minimum zone", um(mz.RONt), ront[1], 1, "µm"}},
		}, nil
	}
}

// lobes asks what a vee shows.
func lobes(d dice) (question, error) {
	n, a, high := int(d.between(2, 9)), []float64{60, 90, 108, 120}[d.IntN(4)], d.um(6, 40, 2)
	vee, err := form.Vee(units.Angle(a) * units.Degree)
	sum := func(turn float64) float64 { // half the height times the waves at the three places touched
		w := 1 / (2 * math.Sin(a*math.Pi/360))
		at := func(theta float64) float64 { return um(high) / 2 * cos(float64(n)*theta) }
		return at(turn) + w*(at(turn+90+a/2)+at(turn-90-a/2))
	}
	least, most := math.Inf(1), math.Inf(-1)
	for i := range 1440 {
		least, most = min(least, sum(float64(i)/4)), max(most, sum(float64(i)/4))
	}
	factor := 1 + cos(float64(n)*(90+a/2))/math.Sin(a*math.Pi/360)
	says := "The dial moves that much, and divided by F it is the height of the lobes again."
	if math.Abs(factor) < 0.005 {
		says = "The dial stands still: this vee misses these lobes, and the work is not round for that. Turn it in a vee of another angle."
	}
	return question{
		Title: "What a vee misses",
		Text: fmt.Sprintf("A sleeve with %d lobes, %.0f µm from valley to peak on the radius, is turned in a vee of %.0f° with the dial opposite. By how much does the dial move, "+
			"from least to most?", n, um(high), a),
		Working: []string{
			fmt.Sprintf("F = 1 + cos(n·(90° + a/2))/sin(a/2) = 1 + cos(%d·%.0f°)/sin %.0f° = %.2f;  |F|·%.0f µm = %.1f µm.", n, 90+a/2, a/2, factor, um(high), math.Abs(factor)*um(high)),
			says,
		},
		Answers: []answer{{"The dial moves by", math.Abs(vee.Factor(n)) * um(high), most - least, 1, "µm"}},
	}, err
}
