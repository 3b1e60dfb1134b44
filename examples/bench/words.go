// SPDX-License-Identifier: BSD-3-Clause

package main

// The words of the page, all of them, so that it can be had in another language. What the sheet, the steps and the
// faults say are words of the library.

// partWords are the heads of the parts of the form, and a line on what they are about.
var partWords = map[string][2]string{
	"engine":        {"Engine", "What the maker says, and the first look."},
	"each":          {"Cylinder", ""},
	"ports":         {"Port in the wall", ""},
	"limits":        {"Limits", "As the maker's manual has them. Two boxes are the least and the greatest; leave one empty where only one is given. A figure the maker does not give can go on somebody's word, in the last part."},
	"gauge":         {"Gauge and standard", "The box after ± is how far it may be off, 19 times of 20. Left empty, a wide doubt is taken, which may cost a size. Of a temperature that nobody measured, write the range it must have been in."},
	"study":         {"Trial of the gauge", "One ring read again and again, ten times or more, gives the gauge's own scatter. A list of numbers in one box will do."},
	"studied":       {"Count of the trials", ""},
	"survey":        {"Readings", "Whole sizes; or what the dial shows, once the gauge's part says which way it runs. A list of numbers in one box goes on into the empty ones after it."},
	"cylinder":      {"Cylinder", ""},
	"readings":      {"Readings", ""},
	"feeler":        {"Feeler test at a depth", "One ring pushed square to two depths, the upper first. It decides no size; at depths where the bore was read it has to agree."},
	"trace":         {"Trace at a depth", "The wall once round, radius by radius, by an indicator or instrument that turns about an axis; the first radius points along the thrust axis. The sheet draws the least round with its circles."},
	"proofTrace":    {"Trace of the finished bore at a depth", ""},
	"pits":          {"Score or pit", "Found by looking and with a fingernail: the gauge bridges them."},
	"counted":       {"Counted on the paper", "What gets lost on the way from paper to page may be the one that mattered."},
	"pistons":       {"Sizes and pistons", "Which sizes can be had, and what boring needs to know. The hole of the gasket is measured, or its maker says it."},
	"oversizes":     {"Size that can be had", "The smallest first."},
	"pistonsGot":    {"Piston that came", "Each as measured."},
	"pistonOf":      {"Piston in hand for cylinder", "The one that is to go in: that which ran there, or the new one once it has come, with the size that it is for."},
	"cuts":          {"Boring", "On one side, as far as the machine may be off. Whoever bores it knows; until then write the worst that it may be, and a route that stands then stands."},
	"rings":         {"Rings", "From the top, of one piston; then each as measured."},
	"ring":          {"Ring", ""},
	"ringsCounted":  {"Count of the rings", ""},
	"ringsOf":       {"Rings in cylinder", ""},
	"gaps":          {"Gap", "As bought, and in which bore that was; then in the finished bore."},
	"tools":         {"Tools", "What is on hand for honing."},
	"phases":        {"Setting", "Settings used one after the other."},
	"passes":        {"Passes of honing", "Read at one depth and along one axis, before the first pass and after each."},
	"honed":         {"Cylinder", ""},
	"pass":          {"Pass", ""},
	"passesCounted": {"Count of the passes", ""},
	"proof":         {"Proof", "Washed, at rest, at the places of the first readings."},
	"proofOf":       {"Cylinder", ""},
	"proofReadings": {"Readings of the finished bore", ""},
	"texture":       {"Texture at a place", ""},
	"profile":       {"Profile at a place", ""},
	"proofCounted":  {"Count of the proof", ""},
	"word":          {"On somebody's word", "What cannot be shown may go on a named person's word, where parts do not touch by it. The word lapses when what stood there changes."},
	"accepted":      {"Word", ""},
	"confirmed":     {"Right, though it looks like a slip", ""},
}

// boxWords are the labels of the fields, by their path or by the end of it.
var boxWords = map[string]string{
	"title": "Title of the job", "units": "Units of the sheet",
	"engine.cylinders": "How many cylinders", "engine.cycle": "Cycle", "engine.bore": "Nominal bore", "engine.stroke": "Stroke",
	"engine.wall": "Wall", "engine.material": "Material of the wall", "engine.barrel": "Metal round the sleeve",
	"engine.layout.length": "Length of the bore, from the deck", "engine.layout.ring_top": "Top ring's highest edge, below the deck",
	"engine.layout.ring_bottom": "Lowest ring's lowest edge, below the deck",
	"ports[].name":              "Name", "ports[].from": "Upper edge, below the deck", "ports[].to": "Lower edge, below the deck",
	"ports[].at": "Direction of its middle, from the thrust axis", "ports[].width": "Width, of the circumference",
	"engine.duty": "Kind of piston and cooling", "engine.compression_ratio": "Compression ratio", "engine.clearance_volume": "Space above the piston",
	"engine.chamber.head": "Space in the head", "engine.chamber.crown": "Dish of the crown; a dome is minus", "engine.chamber.deck": "Crown below the deck",
	"engine.chamber.gasket": "Gasket, pressed", "engine.chamber.port_top": "Top of the exhaust port, below the deck",
	"engine.running.ring": "Temperature of the rings in work", "engine.running.bore": "Temperature of the bore in work", "engine.running.piston": "Temperature of the skirt in work",
	"engine.running.piston_by_window": "The maker's clearance at 20 °C stands for work", "engine.running.rings_by_window": "The maker's gaps at 20 °C stand for work",
	"engine.limits.new_bore": "New bore", "engine.limits.service": "Largest bore in service", "engine.limits.ovality": "Ovality, at most",
	"engine.limits.taper": "Taper, at most", "engine.limits.greatest_less_least": "Greatest minus least of all readings, at most",
	"engine.limits.piston_clearance": "Clearance of a new piston, on the diameter", "engine.limits.least_wall": "Wall left, at least; or tick \"least wall\" below the readings",
	"engine.limits.worn_clearance": "Clearance in a bore that is kept, at most", "engine.limits.greatest_overbore": "Over nominal, at most",
	"engine.limits.taper_at_deck": "Taper limit only on a bore larger at the deck", "engine.limits.choke": "Choke wanted", "engine.limits.finish_ovality": "Ovality of a finished bore",
	"engine.limits.finish_taper": "Taper of a finished bore", "engine.limits.roundness": "Roundness of the wall, by traces", "engine.limits.cylindricity": "Cylindricity of the wall, by traces",
	"engine.texture.ra": "Ra wanted", "engine.texture.rq": "Rq wanted", "engine.texture.rz": "Rz wanted", "engine.texture.rt": "Rt wanted",
	"engine.texture.rpk": "Rpk wanted", "engine.texture.rk": "Rk wanted", "engine.texture.rvk": "Rvk wanted", "engine.texture.oil": "Oil held, as a depth",
	"engine.texture.mr1.min": "Mr1, at least", "engine.texture.mr1.max": "Mr1, at most", "engine.texture.mr2.min": "Mr2, at least", "engine.texture.mr2.max": "Mr2, at most",
	"gauge.kind": "Gauge: points that touch the wall", "gauge.resolution": "Gauge: smallest step that is read", "gauge.standard.size": "Size of the standard it was set on",
	"gauge.temperatures.standard": "Temperature of the standard, while setting", "gauge.temperatures.gauge_set": "Temperature of the gauge, while setting",
	"gauge.temperatures.gauge_used": "Temperature of the gauge, while reading", "gauge.temperatures.cylinder": "Temperature of the cylinder, while reading",
	"gauge.dial": "The dial shows how far from the standard: which way", "gauge.dial_error": "Error of the dial, at most", "gauge.repeatability": "Scatter of one reading, one standard deviation",
	"gauge.set_on": "Set on (day, or day and time)", "gauge.standard.name": "Name of the standard", "gauge.standard.material": "Material of the standard",
	"gauge.material": "Material of the gauge's rod", "gauge.temperatures.place_to_place": "Difference of temperature along the wall",
	"gauge.spindle.on_standard": "Traces: the indicator was set on the standard", "gauge.spindle.repeatability": "Traces: scatter of one radius, one standard deviation", "gauge.spindle.error": "Traces: error of a radius, at most", "gauge.spindle.out_of_square": "Traces: axis out of square to the deck, over the length traced",
	"gauge.profiler.relative": "Texture instrument: doubt, of one", "gauge.profiler.resolution": "Texture instrument: step", "gauge.profiler.digit_of_share": "Texture instrument: step of Mr1 and Mr2",
	"study[].reading": "Reading", "study[].part": "Of which ring", "study[].person": "By whom",
	"survey.on": "Read on (day, or day and time)", "survey.by": "Read by", "survey.torque_plate": "Clamped with a torque plate",
	"cylinders[].name": "Name", "cylinders[].over": "Oversize it has already; 0 is none",
	"readings[].depth": "Depth", "readings[].axis": "Axis", "readings[].diameter": "Reading", "readings[].deviation": "Deviation", "readings[].confirmed": "Taken again, and right",
	"proof[].depth": "Depth", "proof[].axis": "Axis", "proof[].diameter": "Reading", "proof[].deviation": "Deviation", "proof[].confirmed": "Taken again, and right",
	"traces[].depth": "Depth", "traces[].step": "Angle from one to the next", "traces[].radii": "Or radii from the axis, one a line", "traces[].deviations": "What the indicator shows, one a line; plus is farther off",
	"proof_traces[].depth": "Depth", "proof_traces[].step": "Angle from one to the next", "proof_traces[].radii": "Or radii from the axis, one a line", "proof_traces[].deviations": "What the indicator shows, one a line; plus is farther off",
	"pits[].below": "Deep, at most", "pits[].depth": "Upper end, below the deck", "pits[].length": "Long", "pits[].at": "Direction, from the thrust axis; nothing where it runs all round",
	"cylinders[].thinnest_wall": "Thinnest wall, as measured", "cylinders[].wear_share": "Share of the wear on the more worn side, 0.5 to 1; or tick \"wear share\" below the readings", "cylinders[].plating_whole": "Plating is whole; no where it lifts", "cylinders[].ridge_gone": "A kept bore: no ridge is left at the top; no where one is",
	"counted.readings": "Readings written down", "counted.pits": "Scores and pits found; 0 is an answer", "counted.ports": "Ports in one cylinder", "counted.proof": "Readings of finished bores",
	"counted.passes": "Honing passes written down; 0 is an answer", "counted.rings": "Rings on one piston: as many as have a name above", "counted.trials": "Trials written down", "counted.textures": "Textures written down", "counted.traces": "Traces taken",
	"not_known":       "Nobody knows here",
	"engine.one_size": "One size for all cylinders", "engine.honing_allowance": "Left for the hone, on the diameter", "engine.gasket_hole": "Hole of the head gasket",
	"engine.may_shift": "How far the bore's axis may move; 0 is not at all", "oversizes[].over": "Over nominal", "oversizes[].makers_list": "On the maker's own list",
	"piston.size": "Skirt", "piston.axis": "Measured across or along its pin", "piston.coating": "Coating, on one side; 0 is none", "piston.height": "Measured above the skirt's edge",
	"piston.maker_height": "Where the maker measures", "piston.with_standard": "With the micrometer that set the gauge", "cylinders[].piston_for": "For which size, over nominal",
	"pistons[].size": "Skirt", "pistons[].axis": "Measured across or along its pin", "pistons[].coating": "Coating, on one side; 0 is none", "pistons[].height": "Measured above the skirt's edge",
	"pistons[].maker_height": "Where the maker measures", "pistons[].with_standard": "With the micrometer that set the gauge",
	"cuts.locating": "The bar misses its axis by, at most", "cuts.out_of_square": "The bar leans over the length bored by, at most", "cuts.surface": "To come off under the worn skin",
	"engine.piston_material": "Material of the pistons", "engine.aim": "Where in its window to cut to", "cuts.most_depth": "Deepest rough cut, on one side", "cuts.finish_bore": "Last cut, on the diameter",
	"cuts.finish_hone": "Finish honing, on the diameter", "cuts.plateau": "Plateau honing, on the diameter", "cuts.both_ends": "Rings enter from below too", "cuts.length": "Length bored, with run-in and run-out",
	"cuts.feed": "Feed a turn", "cuts.spindle": "Boring bar turns", "cuts.warm": "Cylinder while roughed out", "cuts.deglaze": "Deglazing takes, on the diameter",
	"engine.sleeve.bore": "Sleeve: inside", "engine.sleeve.seat": "Sleeve: seat bored for it", "engine.sleeve.outer": "Sleeve: barrel outside, fins' roots to tips", "engine.sleeve.material": "Sleeve: material",
	"engine.sleeve.interference": "Sleeve: interference, on the diameter", "engine.sleeve.hole": "Sleeve: class of the seat", "engine.sleeve.shaft": "Sleeve: class of its outside", "engine.sleeve.slip": "Sleeve: room while it goes in", "engine.sleeve.finish": "Sleeve: to hone to",
	"engine.rings[].name": "Name", "engine.rings[].gap": "Gap of a new ring", "engine.rings[].gap_limit": "Gap in service, at most", "engine.rings[].material": "Material", "engine.rings[].thickness": "Thickness, radial",
	"engine.rings[].height": "Height", "engine.rings[].free_gap": "Gap on the bench", "engine.rings[].hot_gap": "Gap in work, at least", "engine.rings[].side": "Play in its groove", "engine.rings[].facing": "Facing: plain iron, chromium, molybdenum", "engine.rings[].peg": "Peg, from the thrust axis", "engine.rings[].play": "Play at the peg",
	"rings[].ring": "Ring", "rings[].gap": "Gap as bought", "rings[].bore": "In a bore of", "rings[].finished": "Gap in the finished bore", "rings[].side": "Play in its groove", "rings[].filed": "Filed in between",
	"tools.hone": "Kind of hone", "tools.drive": "Stroked", "tools.crosshatch": "Crosshatch wanted", "tools.spindle": "Can turn", "tools.stroking": "Can stroke; a cycle is there and back", "tools.tool_length": "Length of the abrasive",
	"tools.room_top": "Free above the bore", "tools.room_bottom": "Free below; 0 is closed", "tools.overtravel_top": "Stands out at the top", "tools.overtravel_bottom": "Stands out at the bottom",
	"tools.stroke": "Stroke of the tool", "tools.tolerance": "Crosshatch, either side", "tools.spindle_now": "Set to turn", "tools.stroking_now": "Set to stroke", "tools.trial_pass": "First pass", "tools.longest_pass": "Longest pass",
	"tools.grit": "Grit", "tools.crank": "Stroked by a crank, fastest in the middle", "tools.pressing": "Pressed on", "tools.lines": "Lines of abrasive", "tools.line_width": "Width of a line", "tools.track": "Width of a track",
	"phases[].spindle": "Turning", "phases[].stroking": "Stroking", "phases[].radial_stock": "Takes, on one side", "phases[].groove": "Lines deep",
	"honing[].lasts": "How long; empty for the size before the first pass", "honing[].diameter": "Read after it", "honing[].at": "Temperature of the cylinder then",
	"feeler_test[].depth": "Depth", "feeler_test[].gap": "Gap there", "sleeve_fitted.seat": "Seat as bored", "sleeve_fitted.outside": "Sleeve's outside, before it went in",
	"proof.washed": "Washed before it was read", "proof.on": "Read on (day, or day and time)", "proof.by": "Read by", "proof.torque_plate": "Clamped with a torque plate", "proof.standard.size": "Size of the standard it was set on",
	"proof.temperatures.standard": "Temperature of the standard, while setting", "proof.temperatures.gauge_set": "Temperature of the gauge, while setting", "proof.temperatures.gauge_used": "Temperature of the gauge, while reading", "proof.temperatures.cylinder": "Temperature of the cylinder, while reading",
	"proof.set_on": "Set on (day, or day and time)", "proof.standard.name": "Name of the standard", "proof.standard.material": "Material of the standard", "proof.temperatures.place_to_place": "Difference of temperature along the wall",
	"cylinders[].crosshatch": "Crosshatch, as measured", "cylinders[].crosshatch_doubt": "Its doubt",
	"profiles[].place": "Place", "profiles[].cut_off": "Cut-off, λc", "profiles[].length": "First point to last", "profiles[].spacing": "Point to point", "profiles[].heights": "Heights, one a line",
	"texture[].place": "Place", "texture.ra": "Ra", "texture.rz": "Rz", "texture.rpk": "Rpk", "texture.rk": "Rk", "texture.rvk": "Rvk", "texture.mr1": "Mr1, of one", "texture.mr2": "Mr2, of one",
	"accepted[].row": "What goes on it", "accepted[].by": "Whose word", "accepted[].why": "Why", "accepted[].demand": "Or a kind for which the maker gives no figure", "accepted[].stood": "What stood there",
	"confirmed[].field": "Field", "confirmed[].value": "Stands there", "risk.accept": "Chance of a wrong yes, of one", "risk.reject": "Chance of a wrong no, of one",
}

// What else the page says.
const (
	wordTitle      = "The bench"
	wordLead       = "Type what the gauge shows; the sheet, beside or below, says what it means. The file of the job is yours: save it."
	wordOpen       = "Open a job"
	wordSave       = "Save the job"
	wordNew        = "New job"
	wordPrint      = "Print the sheet"
	wordNext       = "Next: "
	wordStart      = "Begin here. These are needed before there is a sheet:"
	wordAsked      = "Fill in: "
	wordFault      = "At fault: "
	wordNothing    = "No sheet: why"
	wordNow        = "Where the job stands"
	wordNeeded     = "Needed before there is a sheet:"
	wordFaults     = "Something cannot be as it stands:"
	wordNoSheet    = "The sheet comes here once there is enough to work it out from."
	wordStale      = wordVoid + ": this sheet is of the job before its last changes, which are at fault. Do not work by it."
	wordVoid       = "NOT VALID"
	wordTyping     = "Go on from this box: it is being typed in, and the sheet is of the job before that."
	wordPending    = wordVoid + ": the change is still being worked out."
	wordBroken     = "The library broke on this job, which is our fault and not yours: "
	wordBrokenMore = ". Nothing is lost: save the job file, undo the last change, and report it with the file."
	wordNotRead    = "What was kept here cannot be read, and this is a new job: "
	wordNotOpened  = "This file was not opened, and your work stands: "
	wordOutside    = "Of no box on this page:"
	wordTakeOut    = "Take it out of the job"
	wordMore       = "More, where it is known"
	wordAdd        = "Add: "
	wordRemove     = "Take out"
	wordNone       = "There is none to be had"
	wordValue      = "value %d: "
	wordUnit       = "Unit of: "
	wordJoin       = "Between the boxes of: "
	wordSecond     = ", second box"
	wordAsTyped    = "as typed"
	wordYes        = "yes"
	wordNo         = "no"
	wordNotSaid    = "not said"
	wordPropose    = "Propose the places to read"
	wordAxes       = "Axes"
	wordAxesHint   = "On two axes an oval that lies between them is missed; three show it; five show a form of four lobes too. A three-point gauge needs one."
	wordPlaces     = "Take the places of the first readings"
	wordPlacesOf   = "Take the places of cylinder "
	wordRowsRings  = "A row for each ring"
	wordDepth      = "Add a depth"
	wordAxis       = "Add an axis"
	wordAgain      = "Read this depth again"
	wordOnceMore   = ", once more"
	wordDropDepth  = "Take this depth out"
	wordFar        = "One reading lies far from the others, and is right"
	wordWhere      = "Where to hold the gauge: the depths from the deck down, the wall cut open; beside it the axes, seen from the deck."
	wordDepthHead  = "Depth"
	wordAxisHead   = "Axis"
	wordMarkAsked  = "asked for"
	wordMarkFault  = "at fault"
	wordMoreRows   = "and %d more, on the sheet"
	wordThrust     = "thrust"
	wordClock      = "Start the clock"
	wordClockStop  = "Stop"
	wordWordOn     = "On my word"
	wordOpenRows   = "What is open, and can go on a word"
	wordNobody     = "Nobody can accept this: "
	wordTaken      = "Of these nobody said how far they may be off, and a wide doubt is taken, which has its part in this:"
	wordSizes      = "To which size, and how, stands on the job sheet."
	wordSlip       = "%s: %s: right, or a slip? "
	wordRight      = "It is right as it stands"
	wordNoLayout   = "Places follow from ring travel: fill in the top ring's highest and the lowest ring's lowest edge first."
	wordComma      = "; a comma may part thousands here: write "
	wordKept       = "This browser keeps the work on this page when it is closed or read again. The job file is still the only thing that lasts."
	wordNotKept    = "This browser keeps nothing when this page is closed or read again: save the job file before that."
	wordNoScript   = "This page works by its program: allow JavaScript here."
	wordOld        = "This browser is too old for the library in this page: it needs WebAssembly and DecompressionStream (2023 or newer)."
	wordForm       = "The job"
	wordSheet      = "Job sheet"
	wordFailed     = wordVoid + ": nothing came back, and what you typed waits for the next change. Save the job. "
	wordSure       = "Begin a new job? What is not saved is lost."
	wordWaiting    = "The library is being unpacked."
)
