// SPDX-License-Identifier: BSD-3-Clause

package main

import "borewright.example/oversize/jobsheet"

// A part is a part of the form: fields of a job, by their path below that of the part they stand in.
type part struct {
	key   string   // of its words
	list  string   // of what it is an item; "" where it is none
	boxes []string // that are asked for
	more  []string // that most jobs leave out: folded away
	parts []part   // below its boxes
	grid  bool     // a list of readings, set out by depth and axis
	fixed bool     // as many items as elsewhere was said
	seeds []string // what a proposal writes: an item that holds nothing else is still to be filled in
	empty bool     // a list that holds nothing is an answer
}

// form is the form in the order of the work.
var form = []part{
	{
		key: "engine",
		boxes: []string{"title", "engine.cylinders", "engine.cycle", "engine.wall", "engine.bore", "engine.stroke",
			"engine.layout.length", "engine.layout.ring_top", "engine.layout.ring_bottom"},
		parts: []part{
			{key: "each", list: "cylinders", fixed: true, boxes: []string{"name", "over"}},
			{key: "ports", list: "engine.layout.ports", boxes: []string{"name", "from", "to", "at", "width"}},
		},
		more: []string{"units", "engine.material", "engine.barrel", "engine.duty", "engine.compression_ratio", "engine.clearance_volume",
			"engine.chamber.head", "engine.chamber.crown", "engine.chamber.deck", "engine.chamber.gasket", "engine.chamber.port_top",
			"engine.running.ring", "engine.running.bore", "engine.running.piston", "engine.running.piston_by_window", "engine.running.rings_by_window"},
	},
	{
		key: "limits",
		boxes: []string{"engine.limits.new_bore", "engine.limits.service", "engine.limits.ovality", "engine.limits.taper",
			"engine.limits.greatest_less_least", "engine.limits.piston_clearance", "engine.limits.worn_clearance", "engine.limits.least_wall"},
		more: []string{"engine.limits.greatest_overbore", "engine.limits.taper_at_deck", "engine.limits.choke",
			"engine.limits.finish_ovality", "engine.limits.finish_taper", "engine.limits.roundness", "engine.limits.cylindricity",
			"engine.texture.ra", "engine.texture.rq", "engine.texture.rz", "engine.texture.rt", "engine.texture.rpk", "engine.texture.rk",
			"engine.texture.rvk", "engine.texture.oil", "engine.texture.mr1.min", "engine.texture.mr1.max", "engine.texture.mr2.min", "engine.texture.mr2.max"},
	},
	{
		key: "gauge",
		boxes: []string{"gauge.kind", "gauge.resolution", "gauge.dial", "gauge.standard.size", "gauge.temperatures.standard", "gauge.temperatures.gauge_set",
			"gauge.temperatures.gauge_used", "gauge.temperatures.cylinder"},
		more: []string{"gauge.dial_error", "gauge.repeatability", "gauge.set_on", "gauge.standard.name", "gauge.standard.material",
			"gauge.material", "gauge.temperatures.place_to_place", "gauge.spindle.on_standard", "gauge.spindle.repeatability", "gauge.spindle.error", "gauge.spindle.out_of_square",
			"gauge.profiler.relative", "gauge.profiler.resolution", "gauge.profiler.digit_of_share"},
		parts: []part{{key: "study", list: "gauge.study", boxes: []string{"reading", "part", "person"}}, {key: "studied", boxes: []string{"counted.trials"}}},
	},
	{
		key:   "survey",
		boxes: []string{"survey.on", "survey.by", "survey.torque_plate"},
		parts: []part{
			{key: "cylinder", list: "cylinders", fixed: true, boxes: nil,
				parts: []part{
					{key: "readings", list: "readings", grid: true, seeds: []string{"depth", "axis"}, boxes: []string{"depth", "axis", "diameter", "deviation", "confirmed"}},
					{key: "pits", list: "pits", boxes: []string{"below", "depth", "length", "at"}},
					{key: "feeler", list: "feeler_test", boxes: []string{"depth", "gap"}},
					{key: "trace", list: "traces", boxes: traceBoxes},
				},
				more: []string{"thinnest_wall", "wear_share", "plating_whole"}},
			{key: "counted", boxes: []string{"counted.readings", "counted.pits", "not_known"}, more: []string{"counted.ports", "counted.traces"}},
		},
	},
	{
		key:   "pistons",
		boxes: []string{"engine.one_size", "engine.honing_allowance", "engine.gasket_hole", "engine.may_shift"},
		parts: []part{
			{key: "oversizes", list: "engine.oversizes", empty: true, boxes: []string{"over", "makers_list"},
				parts: []part{{key: "pistonsGot", list: "pistons", boxes: pistonBoxes, more: pistonMore}},
				more:  []string{"piston.size", "piston.axis", "piston.coating", "piston.height", "piston.maker_height", "piston.with_standard"}},
			{key: "pistonOf", list: "cylinders", fixed: true, boxes: []string{"piston.size", "piston.axis", "piston.coating", "piston_for"},
				more: []string{"piston.height", "piston.maker_height", "piston.with_standard"}},
			{key: "cuts", boxes: []string{"cuts.locating", "cuts.out_of_square", "cuts.surface"}},
		},
		more: []string{"engine.piston_material", "engine.aim", "cuts.most_depth", "cuts.finish_bore", "cuts.finish_hone", "cuts.plateau",
			"cuts.both_ends", "cuts.length", "cuts.feed", "cuts.spindle", "cuts.warm", "cuts.deglaze",
			"engine.sleeve.bore", "engine.sleeve.seat", "engine.sleeve.outer", "engine.sleeve.material", "engine.sleeve.interference",
			"engine.sleeve.hole", "engine.sleeve.shaft", "engine.sleeve.slip", "engine.sleeve.finish"},
	},
	{
		key: "rings",
		parts: []part{
			{key: "ring", list: "engine.rings", boxes: []string{"name", "gap", "gap_limit"},
				more: []string{"material", "thickness", "height", "free_gap", "hot_gap", "side", "facing", "peg", "play"}},
			{key: "ringsCounted", boxes: []string{"counted.rings"}},
			{key: "ringsOf", list: "cylinders", fixed: true,
				parts: []part{{key: "gaps", list: "rings", seeds: []string{"ring"}, boxes: []string{"ring", "gap", "bore", "finished", "side", "filed"}}}},
		},
	},
	{
		key: "tools",
		boxes: []string{"tools.hone", "tools.drive", "tools.crosshatch", "tools.spindle", "tools.stroking", "tools.tool_length",
			"tools.room_top", "tools.room_bottom", "tools.overtravel_top", "tools.overtravel_bottom"},
		more: []string{"tools.stroke", "tools.tolerance", "tools.spindle_now", "tools.stroking_now", "tools.trial_pass", "tools.longest_pass",
			"tools.grit", "tools.crank", "tools.pressing", "tools.lines", "tools.line_width", "tools.track"},
		parts: []part{{key: "phases", list: "tools.phases", boxes: []string{"spindle", "stroking", "radial_stock", "groove"}}},
	},
	{
		key: "passes",
		parts: []part{
			{key: "honed", list: "cylinders", fixed: true,
				parts: []part{{key: "pass", list: "honing", boxes: []string{"lasts", "diameter", "at"}}},
				more:  []string{"sleeve_fitted.seat", "sleeve_fitted.outside"}},
			{key: "passesCounted", boxes: []string{"counted.passes"}},
		},
	},
	{
		key: "proof",
		boxes: []string{"proof.washed", "proof.on", "proof.by", "proof.torque_plate", "proof.standard.size", "proof.temperatures.standard",
			"proof.temperatures.gauge_set", "proof.temperatures.gauge_used", "proof.temperatures.cylinder"},
		more: []string{"proof.set_on", "proof.standard.name", "proof.standard.material", "proof.temperatures.place_to_place"},
		parts: []part{
			{key: "proofOf", list: "cylinders", fixed: true, boxes: []string{"crosshatch"}, more: []string{"crosshatch_doubt", "ridge_gone"},
				parts: []part{
					{key: "proofReadings", list: "proof", grid: true, seeds: []string{"depth", "axis"}, boxes: []string{"depth", "axis", "diameter", "deviation", "confirmed"}},
					{key: "proofTrace", list: "proof_traces", boxes: traceBoxes},
					{key: "texture", list: "texture", boxes: []string{"place", "texture.ra", "texture.rz", "texture.rpk", "texture.rk", "texture.rvk", "texture.mr1", "texture.mr2"}},
					{key: "profile", list: "profiles", boxes: []string{"place", "cut_off", "length", "spacing", "heights"}},
				}},
			{key: "proofCounted", boxes: []string{"counted.proof"}, more: []string{"counted.textures"}},
		},
	},
	{
		key: "word",
		parts: []part{
			{key: "accepted", list: "accepted", seeds: []string{"row", "demand", "stood"}, boxes: []string{"row", "by", "why"}, more: []string{"demand", "stood"}},
			{key: "confirmed", list: "confirmed", boxes: []string{"field", "value"}},
		},
		more: []string{"risk.accept", "risk.reject"},
	},
}

var (
	traceBoxes  = []string{"depth", "step", "deviations", "radii"}
	pistonBoxes = []string{"size", "axis", "coating"}
	pistonMore  = []string{"height", "maker_height", "with_standard"}
)

// enteredIn is where a step of the work is written down as it is done, below its cylinder: the proof comes after it.
var enteredIn = map[jobsheet.Step]string{
	jobsheet.StepFitSleeve: "sleeve_fitted.seat",
	jobsheet.StepBore:      "honing",
	jobsheet.StepHone:      "honing",
}

// notShown are the fields that the form keeps as the file has them and does not show, and why. One stands for all below it.
var notShown = map[string]string{
	"version":                              "of the file; a new one gets that of the library",
	"engine.chamber.gasket_hole":           "the gasket's hole is asked for once",
	"cylinders[].texture[].texture.rq":     instrument,
	"cylinders[].texture[].texture.rt":     instrument,
	"cylinders[].texture[].texture.rp":     instrument,
	"cylinders[].texture[].texture.rv":     instrument,
	"cylinders[].texture[].texture.rsm":    instrument,
	"cylinders[].texture[].texture.rsk":    instrument,
	"cylinders[].texture[].texture.rku":    instrument,
	"cylinders[].texture[].texture.rdq":    instrument,
	"cylinders[].texture[].texture.oil":    instrument,
	"cylinders[].texture[].texture.top":    instrument,
	"cylinders[].texture[].texture.bottom": instrument,
	"cylinders[].texture[].texture.from":   instrument,
	"cylinders[].texture[].texture.core":   instrument,
	"cylinders[].texture[].texture.rpq":    instrument,
	"cylinders[].texture[].texture.rvq":    instrument,
	"cylinders[].texture[].texture.rmq":    instrument,
	"cylinders[].profiles[].points[].x":    instrument,
	"cylinders[].profiles[].points[].z":    instrument,
}

const instrument = "nobody types it: it comes in the file of an instrument"

// lists are the parts that are lists, by the path of their items.
var lists = listsOf(form)

func listsOf(form []part) map[string]part {
	all := map[string]part{}
	var walk func(base string, parts []part)
	walk = func(base string, parts []part) {
		for _, p := range parts {
			below := base
			if p.list != "" {
				below = join(base, p.list) + "[]"
				if old, ok := all[below]; !ok || len(old.seeds)+len(old.boxes) < len(p.seeds)+len(p.boxes) {
					all[below] = p
				}
			}
			walk(below, p.parts)
		}
	}
	walk("", form)
	return all
}

func join(base, name string) string {
	if base == "" {
		return name
	}
	return base + "." + name
}
