// SPDX-License-Identifier: BSD-3-Clause

// Package borewright is the landing page of a library for one workshop job, a worn engine cylinder.
// It lies on the bench, with a dial bore gauge, a drill or a lathe, and the maker's limits. Is it
// to be honed and kept, bored to the next oversize, or sleeved? At what size does the work stop,
// what crosshatch does the hone really leave, what will the ring gaps and clearances be, and do the
// readings prove it?
//
//	job, err := jobsheet.ReadJob(file)
//	sheet, err := jobsheet.Plan(job)
//	err = sheet.WriteText(os.Stdout)
//
// This package has no code. The rooms are:
//
//   - [borewright.example/units]: exact lengths, windows, temperatures, angles and the rest
//   - [borewright.example/units/material]: properties of metals, and sizes away from 20 °C
//   - [borewright.example/units/uncertainty]: doubt, and verdicts that admit it
//   - [borewright.example/units/uncertainty/study]: what a gauge, and those who read it, are good for
//   - [borewright.example/units/uncertainty/simulate]: doubt by Monte Carlo, where the formula is not enough
//   - [borewright.example/bore]: what gauge readings of a cylinder say and cannot say
//   - [borewright.example/bore/fit]: the piston in its bore
//   - [borewright.example/bore/form]: roundness by the standards, from radial traces, with proof
//   - [borewright.example/bore/hone]: the crosshatch, and the setting that leaves it
//   - [borewright.example/bore/hone/photo]: the crosshatch that is there, from a photograph
//   - [borewright.example/bore/surface]: the texture that rings run on, from a profile
//   - [borewright.example/rings]: gaps, filing, grooves, and whether a ring follows its bore
//   - [borewright.example/oversize]: which size next, for the whole engine
//   - [borewright.example/oversize/sleeve]: interference, ISO fits, heat, and whether it stays tight
//   - [borewright.example/oversize/jobsheet]: the whole job, from a file to a sheet
//   - [borewright.example/oversize/jobsheet/page]: a document, and its typists of text and HTML; it knows no engine
//   - [borewright.example/oversize/jobsheet/picture]: what the rooms compute, drawn to scale
//
// # Which question, which function
//
// The questions a workshop asks, and where they are answered:
//
//	re-ring, hone, or rebore?                      oversize.Choose
//	how much taper is too much?                    bore.Geometry.Judge, with the maker's limit
//	does my taper hold over the whole travel?      bore.Taper.Whole, bore.RingTravel
//	choked on purpose, or worn?                    bore.Limits.TaperAtDeck, Choke
//	ovality or taper: which did I measure?         bore.Analyse
//	I have a micrometer and no setting ring?       bore.Gauge, without Standard.Size
//	where and along which axes do I measure?       bore.Layout.ToRead
//	my readings are in a table of a spreadsheet?   bore.ReadCSV
//	what does a handbook's window say in inches?   units.ParseLimits, units.Limits.Inward
//	which 64th of an inch is that?                 units.Length.FormatFraction
//	how fast may the bar turn at this speed?       units.FrequencyFor
//	what have my readings not seen?                bore.Geometry.Unseen
//	does this finished bore prove itself?          bore.Geometry.Judge, bore.Compare
//	how sure am I of a size?                       bore.Place.Size, uncertainty.Budget
//	I read it five times: how large, how sure?     uncertainty.FromRepeats
//	what doubt has a step, a swing, a certificate? uncertainty.Resolution, UShaped, FromCertificate, Rectangular, Triangular
//	what is most of my doubt?                      uncertainty.Budget.Rows
//	inside by U, outside by U?                     uncertainty.JudgeExpanded
//	what range do n readings of one size show?     uncertainty.MeanRange
//	does the formula for my doubt do here?         simulate.Simulation.Run, Result.Validate
//	how many trials do I want?                     simulate.Simulation.Adapt
//	how good is my gauge?                          study.Analyse, study.Study.Doubt, Categories
//	how many readings of a place would do?         study.Study.Repeats
//	does my dial creep?                            study.DriftOf
//	how far out is my dial over its travel?        study.Linear, Linearity.At, Greatest
//	what does an older sheet of ranges hide?       study.ByRanges
//	what does my gauge let through, of many?       study.Process.Risks, GuardBand, Given, study.Risks.Delivered
//	what would settle an undecided finding?        uncertainty.Finding.Settle
//	do my repeats say what the gauge is said to?   bore.Geometry.Contradictions
//	how long until it is worn out?                 bore.WearRate, bore.WornOutAt
//	how does a trace, a wall, get in?              form.FromRadii, FromPolar, FromPoints, FromSections, FromWallPoints
//	what passes 15 undulations a turn?             form.Trace.Filter
//	how round is this trace?                       form.Trace.MinimumZone, LeastSquares
//	what cleans it up, what plug enters?           form.Trace.MinimumCircumscribed, MaximumInscribed
//	is that really the best circle?                form.Circle.Check
//	how cylindrical is the whole wall?             form.Wall.Cylindricity, form.Cylinder.Check
//	does the bore stand square to the deck?        form.Axis.OutOfSquare, Lean, Toward
//	is the bore bent, and towards where?           form.Wall.MedianLine
//	at what size does a leaning bore clean up?     form.Wall.Along, bore.CleanUpRadial
//	how much taper, and what is left beside it?    form.Wall.Cone
//	are opposite sides straight and parallel?      form.Wall.Pair
//	which lobes has the wall?                      form.Trace.Harmonics
//	what would my gauge or vee have read?          form.Trace.Readings, form.Setup.Read
//	how straight is the wall?                      form.StraightMinimumZone, StraightLeastSquares, form.Wall.Generator
//	taper from a ring and a feeler gauge?          rings.DiameterChange
//	the gap grew: how much bore is gone?           rings.DiameterChange
//	the gap is too small: how much to file?        rings.FileTo
//	what will have to be filed, before it is bored? rings.Expect
//	what gap for this bore, by rule?               rings.Rules
//	what gap is scrap?                             uncertainty.Judge, with the maker's limit
//	where in a worn bore do I set the gap?         rings.Narrowest
//	what gap in the finished bore?                 rings.Gap.In
//	what gap when hot, and which cold one for it?  rings.Warm.HotGap, rings.Warm.Least
//	is the groove worn, or the ring?               rings.GrooveHeight, rings.Groove.SideClearance, BackClearance
//	where do the ends of the rings go?             rings.Stagger, rings.Ends
//	how thick a ring for this wall pressure?       rings.Thickness
//	how hard does a ring press?                    rings.Section.Tension, TensionUnder
//	will the ring follow an oval bore?             rings.Tension.Follow, Bound, rings.Oval.Harmonic
//	how long is an oval wall, how large its round? rings.Oval.Perimeter, Round
//	my drill turns at 600 rev/min: what angle?     hone.Setting.Crosshatch
//	how slow must it turn for 45°?                 hone.Setting.SpindleSpeedFor, hone.OnHand.SettingFor
//	which angle is really on the wall?             photo.Shot.Crosshatch
//	is 45° between the lines or to the square?     hone.Included, hone.FromSquare, ParseCrosshatch
//	are those strokes or full cycles?              hone.Strokes, hone.Cycles, ParseStroking
//	how long a stroke, how far out of the bore?    hone.UsualTravel, hone.Travel.Stroke
//	how many of the lines are flat?                hone.Setting.CountLines
//	which of the wall has no grain passed?         hone.Cover.Untouched
//	how does my machine turn round?                hone.Crank, Trapezoid, Shaped
//	how much metal does half a minute take?        hone.Sizing.Next
//	tapered: where does the hone dwell?            hone.Setting.Correct
//	which grit for these rings, and how rough?     hone.Grits, hone.Finishes
//	is the texture what the rings want?            surface.Profile.Texture, surface.Analyse, surface.Wall.Judge
//	which profile, from a file, tilted or bent?    surface.Read, surface.Profile.Level, surface.Profile.Unroll
//	how much of the wall bears at this depth?      surface.Curve.Ratio, surface.Curve.TwoProcess
//	what do plateau strokes change, how many more? surface.Curve.Remove, surface.Curve.Reach
//	how much stock for honing after boring?        oversize.Shop.Cuts, oversize.UsualHoning
//	which oversize cleans up?                      bore.Geometry.CleanUp, oversize.NewCylinder, Choose
//	what does a pit or a score ask for?            bore.Wear.Pits, bore.CleanUp.Pits
//	the finish size for this piston?               fit.FinishWindow, fit.AimIn
//	what clearance is usual?                       fit.Usual
//	is that limit a slip of the point?             bore.UsualForm, fit.UsualClearance, rings.UsualGap
//	how does clearance change when hot?            fit.Warm.HotClearance
//	which piston into which bore?                  fit.Match
//	what is left open where a piston was measured? fit.Piston.Cautions
//	what clearance says a feeler strip and a pull? fit.FeelerRule.Clearance
//	displacement and ratio after the overbore?     oversize.Chamber.Compression, oversize.Displacement
//	what does the gauge show while it is warm?     bore.Gauge.DialReading
//	do ring ends clear the ports?                  rings.Ends.Clear
//	is enough wall left, is a sleeve needed?       oversize.WallLeft, oversize.Choose
//	how much wall does a new cylinder want?        oversize.HoopWall, oversize.ReboringAllowance
//	the port opens at 95°: how deep is that?       oversize.PistonTravel
//	what interference, does it stay tight hot?      sleeve.Joint.Fit, LooseAt, Stresses
//	which fit is H7/s6, how wide is grade 7?       sleeve.DiametralFromClasses, sleeve.Class.Sizes, sleeve.Tolerance
//	what interference have my parts, what is usual? sleeve.DiametralFromMeasured, sleeve.TradeInterference
//	how hot an oven, how cold a sleeve?            sleeve.Joint.HeatTo, ChillTo
//	how does an old sleeve come out?               sleeve.Joint.TakeOut
//	how hard must the press push?                  sleeve.Joint.Press
//	how does the bore of a sleeved barrel grow?    sleeve.Joint.Growth
//	how much may a joint have, how much must it?   sleeve.Joint.GreatestInterference, LeastInterference
//	to what is the seat bored for this sleeve?     sleeve.SeatFor
//	how far does the sleeve stand proud?           sleeve.Proud
//	does the hone clean the fitted sleeve up?      sleeve.Honing.Allowed
//	what does the wear look like?                  picture.Wear, picture.Section
//	which size cleans up, at a glance?             picture.Ladder
//	what do 45° look like, and what I leave?       picture.Crosshatch, picture.Speeds
//	where does honing take the metal, at a glance? picture.Removal
//	what do gap, ports and trace look like?        picture.RingGap, picture.Ports, picture.Trace
//	what bears, what runs in, what holds oil?      picture.MaterialRatio
//	how do I print that, as a file of its own?     page.Picture.WriteSVG
//	how do I type a sheet of my own?               page.Text, page.HTML
//	is this still the sheet of its job?            jobsheet.ReadSheet, jobsheet.Job.WriteJSON
//
// # Conventions
//
// Lengths are exact ([borewright.example/units.Length] counts picometres) and typed at every boundary; geometry is
// floating point inside a function and rounded once at its end. Sizes are at 20 °C (ISO 1) unless
// a name says otherwise. A measurement carries its standard uncertainty, and a verdict has three
// answers: within, beyond, undecided. Wrong data are errors that errors.Is can match; nothing
// panics on data. Nothing here reads a file, a clock or the environment.
//
// # Glossary
//
//   - anvil: what a gauge touches the wall with
//   - axis, axes: a direction across the bore, given as its angle from the thrust axis, which stands square to
//     the piston pin
//   - back clearance: radial, behind a ring in its groove, with the piston in the middle of the bore
//   - ball-type hone: with balls of abrasive on bristles, which follow the wall they find
//   - barrel: a bore widest between its ends; also the part of an air-cooled engine that has the bore
//   - bell-mouth: a bore that opens towards an end faster than a straight taper
//   - bore: the round hole of a cylinder, and its diameter; to bore is to widen it with a cutting edge on a
//     turning bar
//   - bore gauge: an instrument with two or three points of contact that compares bores; it is set in a ring
//     and shows on a dial
//   - boring bar: the bar, or the machine with it, that carries the cutting edge
//   - butt: of the ends of a ring, to touch, which breaks it or the piston
//   - casting: a part poured from molten metal
//   - choke: a barrel made smaller at the head when cold, on purpose
//   - circumscribed: around all points, touching the outermost
//   - clean-up: the smallest true cylinder that leaves no worn wall
//   - clearance: bore less piston, on the diameter
//   - compression ratio: the volume above the piston at the bottom of its stroke, over that at the top
//   - conformability: how far a ring follows a wall that is not round, by its own spring
//   - crosshatch: the two families of lines a hone leaves; its angle is named by convention
//   - cutoff (λc): of a texture, the length of wave that parts roughness from form (ISO 16610-21)
//   - cycle: of a hone, there and back; a stroke is one way
//   - cylinder: the part of an engine with the bore, or the form that the bore is meant to have
//   - cylindricity: of a wall, between the two coaxial cylinders that hold it closest (CYLt of ISO 12180)
//   - deck: the face the cylinder head sits on; depths count from it
//   - deglaze: to roughen a polished wall with a hone that takes next to no metal
//   - degrees of freedom: how many readings a doubt rests on, less what was estimated from them
//   - deviation: how far something lies from what it is counted from; of a fit, a limit of size less the
//     nominal size (ISO 286)
//   - dial: of a gauge, which shows departures from a setting; which way it runs is to be known
//   - displacement: the volume that all pistons sweep, each in a stroke
//   - dress: of a stone, to lay its grains open again
//   - dwell: of a hone, to stay longer at one place
//   - end gap: between the ends of a ring in its bore
//   - expansion coefficient: the share of its length by which a metal grows for each kelvin
//   - feeler leaf: a strip of known thickness that goes into a gap or does not
//   - fit: of two parts, how their sizes go together: loose, tight, or either; its classes of tolerance are
//     letters and numbers (ISO 286)
//   - focal length: of a camera, which sets how much a lens enlarges
//   - gasket: the seal between deck and head, with a hole for each bore
//   - glaze: of a stone, to lose its bite; of a wall, a polish that holds no oil
//   - grit: the grains of an abrasive, and their size
//   - head: of an engine, what closes its cylinders at the top
//   - hone: a tool of abrasive that is turned and moved to and fro in a bore; also to work with it
//   - included angle: between the two families of lines, opening along the circumference
//   - inscribed: inside all points, touching the innermost
//   - interference: outside of a sleeve less its seat, on the DIAMETER here; textbooks print half of it
//   - ISO: the body that publishes international standards, which have its name and a number
//   - kelvin: a difference in temperature, as large as a degree Celsius
//   - least squares: where the sum of the squares of all distances is least
//   - ln: the natural logarithm, the power to which e = 2.718 is raised
//   - load: of a stone, to fill up with chips
//   - lobe: one of the evenly spaced crests of a wall that is not round; two are ovality
//   - material ratio: the share of a profile that lies as high as a level or higher
//   - micrometer: an instrument that measures by a screw; a micrometre is a thousandth of a millimetre
//   - minimum zone: between two circles, cylinders or lines that hold all points as closely as possible
//   - MPa: megapascal, of pressure and stress: a newton on each square millimetre
//   - nominal: the size in name, from which limits and oversizes count
//   - ovality: greatest minus least diameter in one plane
//   - oversize: a bore, piston and rings larger than nominal by a step on offer
//   - overtravel: how far a hone stands out of the bore at the end of its stroke
//   - peak-to-valley: from the highest point to the lowest
//   - pin axis: along the piston pin, 90° from the thrust axis
//   - piston: what slides in the bore and turns pressure into motion
//   - pit: a small hole in a wall, of rust or of a bad casting
//   - plateau: a wall whose peaks are taken off and whose grooves stay, to hold oil
//   - plated: with a thin layer of another metal or a hard coating
//   - plug: a gauge that enters a bore or does not
//   - Poisson's ratio: how much a metal that is stretched grows thinner, over how much it grows longer
//   - port: an opening in the wall of a two-stroke cylinder
//   - profile: of a texture, the heights along a line of the wall
//   - px: pixels, the dots of a picture
//   - rad: radian, an angle of 57.3°, whose arc is as long as its radius
//   - radial: along a radius, out of or into the middle
//   - rebore: to bore a worn cylinder to a larger size
//   - reference circle: what roundness counts from (ISO 12181-1): least squares (LSCI), minimum zone (MZCI),
//     minimum circumscribed (MCCI), maximum inscribed (MICI)
//   - resolution: the smallest step that an instrument shows
//   - rev/min: turns in a minute
//   - rigid-stone hone: its stones are held so that they cut true, whatever the wall was
//   - ring: of a piston, a springy one that closes the gap to the wall; else a setting ring
//   - ring ridge: the unworn edge of a worn bore, above the travel of the rings
//   - roughing: taking off most of the metal, with the size still to come
//   - roundness: of a section, between the two concentric circles that hold it closest (RONt about the minimum
//     zone, ISO 12181-1)
//   - Rpk, Rk, Rvk: of a texture, how high its peaks are, how deep its core, and how deep its valleys (ISO
//     13565-2)
//   - scatter: how far readings of the same thing lie apart
//   - score: a scratch along the wall that something hard, or a piston, has left
//   - seat: the bored hole in which a sleeve sits
//   - seize: to stick to the wall for want of clearance or oil
//   - service limit: the size up to which the maker lets a worn bore run
//   - setting ring: a ring of known bore in which a gauge is set to zero
//   - shaft: of a fit, whatever goes into the hole (ISO 286)
//   - side clearance: axial play of a ring in its groove
//   - skirt: the lower part of a piston, which guides it; measured across the pin
//   - sleeve: a cylinder fitted into a bored-out one
//   - soak: to be left until all of it has one temperature
//   - spindle: what turns the tool, or the work
//   - standard uncertainty: the doubt of a value as one standard deviation: about two thirds of all values lie
//     within it
//   - stock: metal still to come off, on the diameter
//   - stone: of a hone, a stick of bonded abrasive
//   - stroke: of a piston or hone, its travel one way
//   - Student's t: by how much a doubt from few readings is widened
//   - stylus: the point that is drawn over a surface to trace it
//   - taper: the difference of sizes along one axis between two depths
//   - texture: of a wall, its peaks, grooves and finer marks
//   - thrust axis: square to the piston pin, where the connecting rod pushes the piston to the wall
//   - tolerance: the greatest size allowed less the least; of a form, the greatest deviation
//   - trace: what an instrument records on its way along or around a wall
//   - transition fit: loose or tight, as the two sizes come
//   - travel: of rings, the part of the wall that they pass over; of a hone, the way that it goes
//   - undecided: neither within nor beyond at the risk stated: measure better, do not reassemble
//   - vee-block: a block with two faces at an angle, in which round work is laid and turned
//   - waist: a bore narrowest between its ends
//   - wall: of a bore, its surface; also how thick the metal behind it is
//   - window: the least and the greatest size allowed
//   - Young's modulus: how stiff a metal is: the stress for a stretch of its own length
//   - Σ: the sum of all that follows
//
// # Cautions
//
// Figures from here do not replace the maker's manual, local rules or a qualified machinist, all
// of which outrank them. The cautions that belong to a kind of work stand with it, and on the
// sheet.
package borewright
