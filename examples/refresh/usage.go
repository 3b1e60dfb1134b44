// SPDX-License-Identifier: BSD-3-Clause

package main

const usage = `refresh turns the job file of a worn engine into its job sheet: a front page with what to do
next and why, sizes at 20 °C with their doubt, findings against the maker's limits, the route
(keep, oversize, sleeve, or the maker's process), finish sizes, crosshatch, ring gaps, the
proof, what must be true before it goes together and where that stands, and cautions.

  refresh                     the sheet of an invented demo job
  refresh -job FILE           the sheet of your own ( - reads standard input )
  refresh -format html        one file for a browser, a telephone or paper ( text, html or json )
  refresh -units in           in inches; mm, or both ( left out, as the job is written )
  refresh -lines 60 -ascii    in pages of 60 lines, for a printer that knows ASCII alone

Exit code 0 with a sheet; 2 without, and then every fault of the job is on standard error,
one a line: its place, its value, and what was allowed.

A job is JSON. Lengths are texts with a unit: "72.031 mm", "2.8360 in", "2-53/64 in",
"1.5 thou"; with their doubt, expanded to 95 %, "72.031 ± 0.004 mm". Inch and metric mix
freely. A short one, which the sheet then asks to be told more:

{
  "version": 2,
  "engine": {
    "cylinders": 1, "cycle": "four-stroke", "wall": "bare iron",
    "bore": "67 mm", "stroke": "49.5 mm", "compression_ratio": 9.0,
    "limits": {"new_bore": "67.000 to 67.019 mm", "service": "67.10 mm", "ovality": "0.05 mm",
               "taper": "0.07 mm", "greatest_less_least": "0.09 mm",
               "piston_clearance": "0.025 to 0.045 mm", "worn_clearance": "0.12 mm"},
    "oversizes": [{"over": "0.25 mm", "makers_list": true}, {"over": "0.50 mm", "makers_list": true}]
  },
  "gauge": {
    "kind": "two-point", "resolution": "0.001 mm", "repeatability": "0.001 mm",
    "standard": {"size": "67.002 ± 0.002 mm"},
    "temperatures": {"standard": "21 °C", "gauge_set": "21 °C",
                     "gauge_used": "21 ± 1 °C", "cylinder": "10 to 25 °C"}
  },
  "cylinders": [{
    "name": "1", "over": "0 mm",
    "piston": {"size": "66.972 mm", "axis": "across pin", "coating": "0 mm"}, "piston_for": "0 mm",
    "readings": [
      {"depth": "10 mm", "axis": "thrust", "diameter": "67.051 mm"},
      {"depth": "10 mm", "axis": "pin",    "diameter": "67.034 mm"},
      {"depth": "74 mm", "axis": "thrust", "diameter": "67.012 mm"},
      {"depth": "74 mm", "axis": "pin",    "diameter": "67.010 mm"}
    ]
  }],
  "counted": {"readings": 4, "pits": 0},
  "not_known": ["ring travel", "wear share", "least wall"]
}

The file lives as long as the job: put down each step as it is done and run it again. Nothing
is taken for true because it was left out: the sheet names the fields that would settle what
is open. Where engine.layout has ring_top and ring_bottom, readings may be left empty ([]),
and the sheet says where to take them.

More fields:

  engine     material, barrel, layout (length, ring_top, ring_bottom, ports: name, from, to, at,
             width), duty ("cast, air-cooled"), piston_material, rings (name, gap, gap_limit,
             material, thickness, height, free_gap, hot_gap, peg, play), texture (ra, rz, rpk, rk,
             rvk …), running (ring, bore, piston; or rings_by_window, piston_by_window), sleeve
             (bore, seat, outer, material, interference or hole and shaft, slip, finish), one_size
             (true, false: each its own), may_shift, honing_allowance, gasket_hole, aim;
             instead of the ratio clearance_volume, or chamber (head, crown, deck, gasket,
             port_top); in limits taper_at_deck, choke, finish_ovality, finish_taper,
             roundness, cylindricity, greatest_overbore, least_wall; an oversize has a piston as its supplier states it,
             and pistons, each measured
  gauge      material, dial ("plus is larger", "plus is smaller"), dial_error, set_on; kind
             "three-point" or "telescoping"; in temperatures place_to_place; study (part, person,
             reading): trials of the gauge, which give its repeatability; profiler (relative,
             resolution); spindle (on_standard, repeatability, error,
             out_of_square), which took traces
  survey     on ("2026-03-14", "2026-03-14 09:00"), by, torque_plate (true, false)
  readings   deviation, what the dial shows against the standard, instead of diameter; axis
             "thrust", "pin" or an angle from thrust, "45°"; confirmed; readings of one depth and
             axis are repeats
  cylinders  over, piston, piston_for, rings (ring, gap, bore, finished, filed), thinnest_wall,
             pits (below, depth, length, at), plating_whole (true, false), wear_share,
             ridge_gone (true, false), feeler_test (depth, gap; the upper one first); honing: the size before the first pass
             (diameter, at), then each as it is made (lasts, diameter, at); proof, the readings of
             the finished bore, its crosshatch, crosshatch_doubt and texture (place, texture), or
             profiles (place, cut_off, length, and spacing with heights, or points: x, z)
  traces     and proof_traces, of a cylinder: depth, step ("15°"), radii, or deviations from half the
             standard's size, once round from one end of the thrust axis; instead of readings and
             proof, or beside them
  tools      hone ("ball-type hone", "brush hone", "rigid-stone hone"), drive ("by hand",
             "by machine"), grit, stroke, or tool_length, room_top, room_bottom, overtravel_top,
             overtravel_bottom; crosshatch ("45° included"), tolerance, spindle ("60 to 450
             rev/min"), stroking ("20 to 60 cycles/min"), spindle_now, stroking_now, crank
             (true, false: even), pressing ("constant pressure", "constant force"), lines,
             line_width, track, trial_pass, longest_pass ("20s"), phases (spindle, stroking,
             radial_stock, groove)
  cuts       most_depth, finish_bore, finish_hone, plateau, both_ends, length, feed, spindle,
             locating, out_of_square, surface, deglaze, warm
  proof      on, by, torque_plate, washed, standard, temperatures, set_on: of the readings of finished
             bores
  counted    readings, proof, passes, pits, rings, ports, trials, textures, traces: how many stand on the
             paper at the bench, so that one that gets lost is missed
  not_known  "ring travel", "wear share", "least wall": what nobody knows, which is another thing
             than leaving it out
  confirmed  field and value of what looks like a slip and is right
  accepted   row (its key), or demand for a kind for which the maker gives no figure; by, why,
             stood (what stands in the row): what goes on somebody's word
`
