// SPDX-License-Identifier: BSD-3-Clause

package main

const usage = `refresh turns the job file of a worn engine into its job sheet: sizes at 20 °C with
their doubt, findings against the maker's limits, the route (keep, oversize, sleeve, or the
maker's process), finish sizes, crosshatch, ring gaps, displacement, checklist and cautions.

  refresh                     the sheet of an invented demo job
  refresh -job FILE           the sheet of your own ( - reads standard input )
  refresh -format html        the same as a page for a browser; or json ( text is the usual form )
  refresh -units in           in inches; mm, or both ( left out, as the job is written )
  refresh -lines 60 -ascii    in pages of 60 lines, for a printer that knows ASCII alone

Exit code 0 with a sheet; 2 without, and then every fault of the job is on standard error,
one a line: its place, its value, and what was allowed.

A job is JSON. Lengths are texts with a unit: "72.031 mm", "2.8360 in", "2-53/64 in",
"1.5 thou". Inch and metric mix freely. Leave out what you do not know. A short one:

{
  "engine": {
    "cylinders": 1, "cycle": "four-stroke", "wall": "bare iron",
    "bore": "67 mm", "stroke": "49.5 mm", "compression_ratio": 9.0,
    "limits": {"new_bore": "67.000 to 67.019 mm", "greatest_less_least": "0.15 mm",
               "piston_clearance": "0.025 to 0.045 mm", "worn_clearance": "0.12 mm"},
    "oversizes": [{"over": "0.25 mm"}, {"over": "0.50 mm"}]
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
      {"depth": "90 mm", "axis": "thrust", "diameter": "67.012 mm"},
      {"depth": "90 mm", "axis": "pin",    "diameter": "67.010 mm"}
    ]
  }]
}

The file lives as long as the job: put down each step as it is done and run it again. Where
engine.layout has ring_top and ring_bottom, readings may be left empty ([]), and the sheet
says where to take them.

More fields, all optional:

  engine     material, barrel, layout (length, ring_top, ring_bottom, ports: name, from, to, at,
             width), duty ("cast, air-cooled"), piston_material, rings (name, gap, gap_limit,
             material, thickness, height, free_gap, hot_gap, peg, play), running (ring, bore,
             piston), sleeve (bore, seat, outer, material, interference or hole and shaft, slip,
             finish), own_sizes, may_shift, honing_allowance, gasket_hole; instead of the ratio
             clearance_volume, or chamber (head, crown, deck, gasket, port_top); in limits
             service, ovality, taper, finish_ovality, finish_taper, greatest_overbore, least_wall;
             an oversize may have a piston, and pistons to be matched to the finished bores
  gauge      material, dial ("plus is larger", "plus is smaller"), dial_error, set_on; kind
             "three-point" or "telescoping"; in temperatures place_to_place
  survey     on ("2026-03-14", "2026-03-14 09:00"), by, clamping ("free", "torque plate")
  readings   deviation, what the dial shows against the standard, instead of diameter; axis
             "thrust", "pin" or an angle from thrust, "45°"; confirmed; readings of one depth and
             axis are repeats
  cylinders  over, piston_for, rings (ring, gap, uncertainty, bore, finished), thinnest_wall,
             wall_uncertainty, pit, peeling, wear_share, feeler_test (upper, lower: depth, gap);
             honing: start (diameter, at) and passes (lasts, after), as they are made; proof,
             the readings of the finished bore, and its crosshatch
  tools      hone ("ball-type hone", "brush hone", "rigid-stone hone"), drive ("by hand",
             "by machine"), grit, stroke, or tool_length, room_top, room_bottom, overtravel_top,
             overtravel_bottom; crosshatch ("45° included"), tolerance, spindle ("60 to 450
             rev/min"), stroking ("20 to 60 cycles/min"), spindle_now, stroking_now, motion
             ("even", "crank"), pressing ("constant pressure", "constant force"), lines,
             line_width, track, trial_pass, longest_pass ("20s"), phases (spindle, stroking,
             radial_stock, groove)
  cuts       most_depth, finish_bore, finish_hone, plateau, both_ends, length, feed, spindle,
             locating, out_of_square, surface, warm
  proof      on, by, clamping, standard, temperatures, set_on: of the readings of finished bores
  risk       accept, reject
  units      "mm", "in" or "both"
  version    1, of this form of the file

An uncertainty is expanded, with k = 2. A wall is "bare iron", "iron sleeve", "plated" or
"bare Al-Si".
`
