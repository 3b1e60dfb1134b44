// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// An honest job is one of a small workshop that has measured everything and has the maker's manual: a
// micrometer, a dial gauge, no acceptance. Invented, and drawn to the millimetre so that inch and metric text
// hold the same numbers.
type honest struct {
	bore, stroke float64 // mm
	cylinders    int
	twoStroke    bool
	inches       bool
	bored        bool // to the next oversize; else kept
	r            *rand.Rand
}

// mm writes a length in the units of the job, to a tenth of a micrometre.
func (h honest) mm(x float64) string {
	if h.inches {
		return fmt.Sprintf("%.6f in", x/25.4)
	}
	return fmt.Sprintf("%.4f mm", x)
}

func (h honest) doubtful(x, u float64) string {
	if h.inches {
		return fmt.Sprintf("%.6f ± %.6f in", x/25.4, u/25.4)
	}
	return fmt.Sprintf("%.4f ± %.4f mm", x, u)
}

func (h honest) window(a, b float64) string {
	if h.inches {
		return fmt.Sprintf("%.6f to %.6f in", a/25.4, b/25.4)
	}
	return fmt.Sprintf("%.4f to %.4f mm", a, b)
}

// tree returns the job, carried to its proof where finished.
func (h honest) tree(finished bool) tree {
	d := h.bore
	over := 0.5
	least, most := 0.0007*d+0.005, 0.0012*d+0.025 // clearance
	form := 0.02 + 0.0005*d
	service := min(0.0015*d+0.01, 0.15)
	length := h.stroke * 1.7
	top, bottom := 0.1*h.stroke, 1.3*h.stroke
	rings := []any{
		tree{"name": "first", "gap": h.window(0.003*d, 0.0075*d+0.08), "gap_limit": h.mm(0.014 * d)},
		tree{"name": "second", "gap": h.window(0.0029*d, 0.0074*d+0.08), "gap_limit": h.mm(0.0145 * d)},
	}
	layout := tree{"length": h.mm(length), "ring_top": h.mm(top), "ring_bottom": h.mm(bottom)}
	counted := tree{"rings": 2, "pits": 0, "passes": 0}
	cycle := "four-stroke"
	if h.twoStroke {
		cycle = "two-stroke"
		layout["ports"] = []any{tree{"name": "exhaust", "from": h.mm(0.55 * h.stroke), "to": h.mm(0.75 * h.stroke), "at": "0°", "width": "60°"}}
		counted["ports"] = 1
		rings[0].(tree)["peg"], rings[0].(tree)["play"] = "150°", h.mm(0.2)
		rings[1].(tree)["peg"], rings[1].(tree)["play"] = "215°", h.mm(0.25)
	}
	gauge := tree{
		"kind": "two-point", "resolution": h.mm(0.001), "repeatability": h.mm(0.0008), "dial_error": h.mm(0.0012),
		"standard":     tree{"name": "micrometer", "size": h.doubtful(d+0.002, 0.002), "material": "gauge steel"},
		"temperatures": temperatures(21, 21.5, 22),
	}
	limits := tree{
		"new_bore": h.window(d, d+0.02), "service": h.mm(d + service), "ovality": h.mm(form), "taper": h.mm(1.2 * form),
		"greatest_less_least": h.mm(1.5 * form), "piston_clearance": h.window(least, most), "worn_clearance": h.mm(0.0025*d + 0.06),
		"finish_ovality": h.mm(0.012 + 0.00005*d), "finish_taper": h.mm(0.014 + 0.00005*d), "least_wall": h.mm(2 + 0.02*d), "greatest_overbore": h.mm(0.8),
	}
	engine := tree{
		"cylinders": h.cylinders, "cycle": cycle, "bore": h.mm(d), "stroke": h.mm(h.stroke), "wall": "bare iron", "material": "grey iron",
		"layout": layout, "compression_ratio": 8.5, "limits": limits, "rings": rings, "one_size": true,
		"running":          tree{"piston_by_window": true, "rings_by_window": true},
		"honing_allowance": h.mm(0.05), "gasket_hole": h.mm(d + 1.5), "may_shift": h.mm(0),
	}
	piston := func(over float64) tree {
		at := (least + most) / 2
		if h.bored {
			at = least + 0.45*(most-least)
		}
		return tree{"size": h.doubtful(d+over+0.01-at, 0.002), "axis": "across pin", "coating": h.mm(0)}
	}
	size := tree{"over": h.mm(over), "makers_list": true}
	var pistons []any
	for range h.cylinders {
		pistons = append(pistons, piston(over))
	}
	size["pistons"] = pistons
	engine["oversizes"] = []any{size}
	wear := 0.35 * form // of the kept bore, at its top
	if h.bored {
		wear = service + 0.03 // past its service limit, and within what +0.50 cleans up
	}
	var cylinders []any
	readings, again := 0, 0
	for i := range h.cylinders {
		c := tree{
			"name": fmt.Sprintf("no. %d", i+1), "over": h.mm(0), "thinnest_wall": h.doubtful(4+0.03*d, 0.2), "wear_share": 0.6 + 0.01*float64(i),
		}
		if !h.bored {
			c["piston"], c["piston_for"] = piston(0), h.mm(0)
		}
		var survey, proof []any
		for k, depth := range []float64{top + min(0.05*h.stroke, 6), (top + bottom) / 2, bottom - 0.05*h.stroke, length - 0.02*h.stroke} {
			if h.twoStroke && k == 1 {
				depth = 0.85 * h.stroke // below the port
			}
			fade := []float64{1, 0.5, 0.2, 0}[k]
			for a := range 5 {
				at := tree{"depth": h.mm(depth), "axis": fmt.Sprintf("%d°", 36*a)}
				oval := []float64{1, 0.8, 0.6, 0.62, 0.85}[a]
				worn := d + 0.008 + wear*fade*oval
				read := func() float64 { return math.Round(0.8*h.r.NormFloat64()) / 1000 } // off, by the gauge's repeatability
				was := worn + read()
				survey = append(survey, tree{"depth": at["depth"], "axis": at["axis"], "diameter": h.mm(was)})
				is := worn + 0.002 + read()
				if h.bored {
					// what the middle of the window asks for, on a form of a few micrometres
					is = d + over + 0.01 - (least + 0.45*(most-least)) + (least+most)/2 + 0.0008*oval + read()
				}
				proof = append(proof, tree{"depth": at["depth"], "axis": at["axis"], "diameter": h.mm(is)})
			}
		}
		c["readings"] = survey
		readings += len(survey)
		if finished {
			c["proof"], c["crosshatch"], c["ridge_gone"] = proof, "44.5° included", true
			again += len(proof)
			gap, in := 0.005*d+0.04, d+0.01
			if h.bored {
				in += over
			}
			c["rings"] = []any{
				tree{"ring": "first", "gap": h.doubtful(gap, 0.015), "bore": h.mm(in), "finished": h.doubtful(gap+0.01, 0.015), "filed": true},
				tree{"ring": "second", "gap": h.doubtful(gap+0.01, 0.016), "bore": h.mm(in + 0.002), "finished": h.doubtful(gap+0.02, 0.016), "filed": true},
			}
		}
		cylinders = append(cylinders, c)
	}
	counted["readings"] = readings
	j := tree{
		"version": 2, "title": "An honest job (invented)", "engine": engine, "gauge": gauge, "cylinders": cylinders, "counted": counted,
		"survey": tree{"on": "2026-05-02", "by": "the machinist", "torque_plate": false},
		"tools": tree{"hone": "rigid-stone hone", "drive": "by hand", "stroke": h.mm(h.stroke), "crosshatch": "45° included", "tolerance": "6°",
			"spindle": "40 to 400 rev/min", "stroking": "20 to 60 cycles/min"},
		"cuts": tree{"locating": h.mm(0.01), "out_of_square": h.mm(0.009), "surface": h.mm(0.008), "most_depth": h.mm(0.12)},
	}
	if finished {
		counted["proof"] = again
		j["proof"] = tree{"on": "2026-05-05", "by": "the machinist", "torque_plate": false, "washed": true, "standard": tree{
			"name": "micrometer, set again", "size": h.doubtful(d+0.5, 0.002), "material": "gauge steel"}, "temperatures": temperatures(20.5, 20.6, 20.7)}
	}
	return j
}

func temperatures(standard, gauge, cylinder float64) tree {
	at := func(x float64) string { return fmt.Sprintf("%.1f ± 0.4 °C", x) }
	return tree{"standard": at(standard), "gauge_set": at(standard + 0.1), "gauge_used": at(gauge), "cylinder": at(cylinder), "place_to_place": "0.3 K"}
}

// honestJobs draws jobs of 30 to 250 mm bore, inch and metric, two- and four-stroke, of one to twelve cylinders.
func honestJobs(n int, seed uint64) []honest {
	r := rand.New(rand.NewPCG(seed, 7))
	var list []honest
	for i := range n {
		d := float64(30 + (220*i)/max(n-1, 1))
		list = append(list, honest{
			bore: d, stroke: float64(int(d * (0.8 + 0.5*r.Float64()))), cylinders: []int{1, 2, 3, 4, 6, 8, 12, 1}[i%8],
			twoStroke: i%3 == 1, inches: i%4 == 2, bored: i%2 == 0, r: r,
		})
	}
	return list
}

// TestHonestJobs: a complete job reaches its definite step without anybody's word.
func TestHonestJobs(t *testing.T) {
	for _, h := range honestJobs(16, 1) {
		name := fmt.Sprintf("%g mm, %d cylinders, inches %v, two-stroke %v, bored %v", h.bore, h.cylinders, h.inches, h.twoStroke, h.bored)
		for _, finished := range []bool{false, true} {
			s, err := planned(t, h.tree(finished))
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			want := jobsheet.StepReassemble
			switch {
			case !finished && h.bored:
				want = jobsheet.StepBore
			case !finished:
				want = jobsheet.StepDeglaze
			}
			if s.Next != want {
				t.Errorf("%s, finished %v: %v, want %v", name, finished, s.Next, want)
				n := 0
				for _, r := range s.Ledger {
					if !settled(r.State) && n < 6 {
						t.Logf("  %s: %s (%v)", r.Key, r.Stands, r.Step)
						n++
					}
				}
			}
		}
	}
}
