// SPDX-License-Identifier: BSD-3-Clause

// Verdict is a lesson: a measured size, its doubt and a limit leave three answers, not two.
package main

import (
	"fmt"
	"log"
	"math"
	"strings"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a service limit, the size of a worn bore read five times, and what
// else may be wrong with it.
var (
	limit            = units.Limits{Max: units.MustParseLength("78.150 mm")}
	repeats          = []float64{78.1482, 78.1501, 78.1494, 78.1479, 78.1489} // mm
	ringStd  float64 = 1                                                      // µm, standard uncertainty of the setting ring, from its certificate
	division float64 = 1                                                      // µm, the smallest step of the dial that is read
	warmth   float64 = 1                                                      // K, half-width of what the temperature of ring against barrel may be
)

func main() {
	fmt.Println("WITHIN, BEYOND OR UNDECIDED: what a limit asks of a measurement")
	fmt.Printf("\nThe question: five readings of a worn bore, and a service limit, %v. May it stay?\n", limit)

	fmt.Println("\n1  What is doubtful     uᵢ = |cᵢ|·std, u² = Σ uᵢ²")
	s := must(uncertainty.Describe(repeats...))
	perKelvin := material.GreyIron().Expansion.In(units.PerKelvin) * s.Mean * 1000 // µm
	budget := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "mean of the readings", Std: s.OfMean().Std * 1000, DoF: s.OfMean().DoF, Sensitivity: 1, Unit: "µm"},
		{Name: "setting ring", Std: ringStd, Sensitivity: 1, Unit: "µm"},
		{Name: "resolution", Std: uncertainty.Resolution(division), Sensitivity: 1, Unit: "µm"},
		{Name: "ring against barrel", Std: uncertainty.Rectangular(warmth), Sensitivity: perKelvin, Unit: "K"},
	}}
	var squares []string
	for _, r := range must(budget.Rows()) {
		fmt.Printf("   %-21s %5.3f µm/%-2s · %5.3f = %5.2f µm  %s\n", r.Name, r.Sensitivity, r.Unit, r.Std, r.Contribution, strings.Repeat("█", int(r.Contribution*20+0.5)))
		squares = append(squares, fmt.Sprintf("%.2f²", r.Contribution))
	}
	value := must(units.Of(s.Mean, units.Millimetre))
	e := must(budget.Estimate(value, units.Micrometre))
	u := e.Std.In(units.Micrometre)
	fmt.Printf("   u = √(%s) = %.2f µm, with %.0f effective degrees of freedom: %v (95 %%)\n", strings.Join(squares, " + "), u, e.DoF, e)

	fmt.Println("\n2  The verdict     P(within) = F((limit − y)/u), F Student's t;  within where 1 − P ≤ 5 %")
	f := must(uncertainty.Judge(e, limit, uncertainty.Risk{}))
	t := (limit.Max - value).In(units.Micrometre) / u
	fmt.Printf("   (%s − %s)/%.2f µm = %.2f;  P = %.1f %%:  %v\n", mm(limit.Max), mm(value), u, t, 100*f.Conform, strings.ToUpper(f.Verdict.String()))

	fmt.Println("\nWHERE OTHER SIZES WOULD STAND (a mark is half a micrometre; ┃ the limit, ● the value, ─ ±U)")
	U := must(e.Expanded(0.95))
	step := 500 * units.Nanometre
	for d := -6; d <= 6; d += 2 {
		at := limit.Max + units.Length(d)*units.Micrometre
		verdict := must(uncertainty.Judge(uncertainty.Estimate{Value: at, Std: e.Std, DoF: e.DoF}, limit, uncertainty.Risk{})).Verdict
		line := ""
		for i := -24; i <= 24; i++ {
			switch l := limit.Max + units.Length(i)*step; {
			case l == at:
				line += "●"
			case l == limit.Max:
				line += "┃"
			case (l - at).Abs() <= U:
				line += "─"
			default:
				line += " "
			}
		}
		fmt.Printf("   %s %s %v\n", mm(at), line, verdict)
	}

	fmt.Println("\nA SECOND WAY: throw the dice. A bore exactly at the limit, measured 200 000 times")
	wrong, n, seed := 0, 200000, uint64(1)
	uniform := func() float64 { // xorshift: the same numbers on every machine
		seed ^= seed << 13
		seed ^= seed >> 7
		seed ^= seed << 17
		return float64(seed>>11) / (1 << 53)
	}
	guard := 1.645 * u // for a known u: the quantile of the normal distribution
	for range n {
		sum := -6.0
		for range 12 {
			sum += uniform()
		}
		if u*sum <= -guard {
			wrong++
		}
	}
	exact := must(uncertainty.Judge(uncertainty.Estimate{Value: limit.Max - must(units.Of(guard, units.Micrometre)), Std: e.Std}, limit, uncertainty.Risk{}))
	fmt.Printf("   called within by a guard band of 1.645·u = %.1f µm: %.1f %%; by the library %.1f %%; by ½erfc %.1f %%\n", guard,
		100*float64(wrong)/float64(n), 100*(1-exact.Conform), 50*math.Erfc(1.645/math.Sqrt2))

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	simple := must(uncertainty.JudgeSimply(e, limit))
	fmt.Printf("   • Read, compare, done: %q. At the limit that is wrong every second time.\n", simple.Verdict)
	fmt.Printf("   • Undecided is taken for a weak within. It wants a better measurement:\n     %v.\n", must(f.Settle(must(units.Of(s.OfMean().Std, units.Millimetre)))))
	fmt.Printf("   • Only the scatter is counted: %.2f µm in place of %.2f µm. Repeats do not find a wrong ring.\n", s.OfMean().Std*1000, u)
	fmt.Printf("   • Twelve limits in one engine, 5 %% each: the chance of some wrong answer is up to %.0f %%.\n     Share the risk: %.2g %% each.\n", 100*(1-math.Pow(0.95, 12)), 100*uncertainty.Risk{}.OrDefault().Share(12).Accept)
	fmt.Println("\nCAUTION: do not reassemble on an undecided finding. The maker's limits outrank any rule here.")
}

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
