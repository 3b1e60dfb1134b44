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
//   - re-ring, hone, or rebore? [borewright.example/oversize.Choose]
//   - how much taper is too much? [borewright.example/bore.Geometry.Judge], with the maker's limit
//   - does my taper hold over the whole travel? [borewright.example/bore.Taper.Whole],
//     [borewright.example/bore.RingTravel]
//   - choked on purpose, or worn? [borewright.example/bore.Limits.TaperAtDeck], [borewright.example/bore.Limits.Choke]
//   - ovality or taper: which did I measure? [borewright.example/bore.Analyse]
//   - I have a micrometer and no setting ring? [borewright.example/bore.Gauge], without Standard.Size
//   - where and along which axes do I measure? [borewright.example/bore.Layout.ToRead]
//   - my readings are in a table of a spreadsheet? [borewright.example/bore.ReadCSV]
//   - what does a handbook's window say in inches? [borewright.example/units.ParseLimits],
//     [borewright.example/units.Limits.Inward]
//   - which 64th of an inch is that? [borewright.example/units.Length.FormatFraction]
//   - how fast may the bar turn at this speed? [borewright.example/units.FrequencyFor]
//   - what have my readings not seen? [borewright.example/bore.Geometry.Unseen]
//   - does this finished bore prove itself? [borewright.example/bore.Geometry.Judge],
//     [borewright.example/bore.Compare]
//   - how sure am I of a size? [borewright.example/bore.Place.Size], [borewright.example/units/uncertainty.Budget]
//   - I read it five times: how large, how sure? [borewright.example/units/uncertainty.FromRepeats]
//   - what doubt has a step, a swing, a certificate? [borewright.example/units/uncertainty.Resolution],
//     [borewright.example/units/uncertainty.UShaped], [borewright.example/units/uncertainty.FromCertificate],
//     [borewright.example/units/uncertainty.Rectangular], [borewright.example/units/uncertainty.Triangular]
//   - what is most of my doubt? [borewright.example/units/uncertainty.Budget.Rows]
//   - inside by U, outside by U? [borewright.example/units/uncertainty.JudgeExpanded]
//   - what range do n readings of one size show? [borewright.example/units/uncertainty.MeanRange]
//   - does the formula for my doubt do here? [borewright.example/units/uncertainty/simulate.Simulation.Run],
//     [borewright.example/units/uncertainty/simulate.Result.Validate]
//   - how many trials do I want? [borewright.example/units/uncertainty/simulate.Simulation.Adapt]
//   - how good is my gauge? [borewright.example/units/uncertainty/study.Analyse],
//     [borewright.example/units/uncertainty/study.Study.Doubt],
//     [borewright.example/units/uncertainty/study.Study.Categories]
//   - how many readings of a place would do? [borewright.example/units/uncertainty/study.Study.Repeats]
//   - does my dial creep? [borewright.example/units/uncertainty/study.DriftOf]
//   - how far out is my dial over its travel? [borewright.example/units/uncertainty/study.Linear],
//     [borewright.example/units/uncertainty/study.Linearity.At],
//     [borewright.example/units/uncertainty/study.Linearity.Greatest]
//   - which straight line runs through my data, how sure? [borewright.example/units/uncertainty.FitLine],
//     [borewright.example/units/uncertainty.Line.At]
//   - what does an older sheet of ranges hide? [borewright.example/units/uncertainty/study.ByRanges]
//   - what does my gauge let through, of many? [borewright.example/units/uncertainty/study.Process.Risks],
//     [borewright.example/units/uncertainty/study.Process.GuardBand],
//     [borewright.example/units/uncertainty/study.Process.Given],
//     [borewright.example/units/uncertainty/study.Risks.Delivered]
//   - what would settle an undecided finding? [borewright.example/units/uncertainty.Finding.Settle]
//   - do my repeats say what the gauge is said to? [borewright.example/bore.Geometry.Contradictions]
//   - how long until it is worn out? [borewright.example/bore.WearRate], [borewright.example/bore.WornOutAt]
//   - how does a trace, a wall, get in? [borewright.example/bore/form.FromRadii],
//     [borewright.example/bore/form.FromPolar], [borewright.example/bore/form.FromPoints],
//     [borewright.example/bore/form.FromSections], [borewright.example/bore/form.FromWallPoints]
//   - what passes 15 undulations a turn? [borewright.example/bore/form.Trace.Filter]
//   - how round is this trace? [borewright.example/bore/form.Trace.MinimumZone],
//     [borewright.example/bore/form.Trace.LeastSquares]
//   - what cleans it up, what plug enters? [borewright.example/bore/form.Trace.MinimumCircumscribed],
//     [borewright.example/bore/form.Trace.MaximumInscribed]
//   - is that really the best circle? [borewright.example/bore/form.Circle.Check]
//   - how cylindrical is the whole wall? [borewright.example/bore/form.Wall.Cylindricity],
//     [borewright.example/bore/form.Cylinder.Check]
//   - does the bore stand square to the deck? [borewright.example/bore/form.Axis.OutOfSquare],
//     [borewright.example/bore/form.Axis.Lean], [borewright.example/bore/form.Axis.Toward]
//   - is the bore bent, and towards where? [borewright.example/bore/form.Wall.MedianLine]
//   - at what size does a leaning bore clean up? [borewright.example/bore/form.Wall.Along],
//     [borewright.example/bore.CleanUpRadial]
//   - how much taper, and what is left beside it? [borewright.example/bore/form.Wall.Cone]
//   - are opposite sides straight and parallel? [borewright.example/bore/form.Wall.Pair]
//   - which lobes has the wall? [borewright.example/bore/form.Trace.Harmonics]
//   - what would my gauge or vee have read? [borewright.example/bore/form.Trace.Readings],
//     [borewright.example/bore/form.Setup.Read]
//   - how straight is the wall? [borewright.example/bore/form.StraightMinimumZone],
//     [borewright.example/bore/form.StraightLeastSquares], [borewright.example/bore/form.Line.Check],
//     [borewright.example/bore/form.Wall.Generator]
//   - taper from a ring and a feeler gauge? [borewright.example/rings.DiameterChange]
//   - the gap grew: how much bore is gone? [borewright.example/rings.DiameterChange]
//   - the gap is too small: how much to file? [borewright.example/rings.FileTo]
//   - what will have to be filed, before it is bored? [borewright.example/rings.Expect]
//   - what gap for this bore, by rule? [borewright.example/rings.Rules]
//   - what gap is scrap? [borewright.example/units/uncertainty.Judge], with the maker's limit
//   - where in a worn bore do I set the gap? [borewright.example/rings.Narrowest]
//   - what gap in the finished bore? [borewright.example/rings.Gap.In]
//   - what gap when hot, and which cold one for it? [borewright.example/rings.Warm.HotGap],
//     [borewright.example/rings.Warm.Least]
//   - is the groove worn, or the ring? [borewright.example/rings.GrooveHeight],
//     [borewright.example/rings.Groove.SideClearance], [borewright.example/rings.Groove.BackClearance]
//   - where do the ends of the rings go? [borewright.example/rings.Stagger], [borewright.example/rings.Ends]
//   - how thick a ring for this wall pressure? [borewright.example/rings.Thickness]
//   - how hard does a ring press? [borewright.example/rings.Section.Tension],
//     [borewright.example/rings.Section.TensionUnder]
//   - will the ring follow an oval bore? [borewright.example/rings.Tension.Follow],
//     [borewright.example/rings.Tension.Bound], [borewright.example/rings.Oval.Harmonic]
//   - how long is an oval wall, how large its round? [borewright.example/rings.Oval.Perimeter],
//     [borewright.example/rings.Oval.Round]
//   - my drill turns at 600 rev/min: what angle? [borewright.example/bore/hone.Setting.Crosshatch]
//   - how slow must it turn for 45°? [borewright.example/bore/hone.Setting.SpindleSpeedFor],
//     [borewright.example/bore/hone.OnHand.SettingFor]
//   - which angle is really on the wall? [borewright.example/bore/hone/photo.Shot.Crosshatch]
//   - is 45° between the lines or to the square? [borewright.example/bore/hone.Included],
//     [borewright.example/bore/hone.FromSquare], [borewright.example/bore/hone.ParseCrosshatch]
//   - are those strokes or full cycles? [borewright.example/bore/hone.Strokes], [borewright.example/bore/hone.Cycles],
//     [borewright.example/bore/hone.ParseStroking]
//   - how long a stroke, how far out of the bore? [borewright.example/bore/hone.UsualTravel],
//     [borewright.example/bore/hone.Travel.Stroke]
//   - how many of the lines are flat? [borewright.example/bore/hone.Setting.CountLines]
//   - which of the wall has no grain passed? [borewright.example/bore/hone.Cover.Untouched]
//   - how does my machine turn round? [borewright.example/bore/hone.Crank], [borewright.example/bore/hone.Trapezoid],
//     [borewright.example/bore/hone.Shaped]
//   - how much metal does half a minute take? [borewright.example/bore/hone.Sizing.Next]
//   - tapered: where does the hone dwell? [borewright.example/bore/hone.Setting.Correct]
//   - which grit for these rings, and how rough? [borewright.example/bore/hone.Grits],
//     [borewright.example/bore/hone.Finishes]
//   - is the texture what the rings want? [borewright.example/bore/surface.Profile.Texture],
//     [borewright.example/bore/surface.Analyse], [borewright.example/bore/surface.Wall.Judge]
//   - which profile, from a file, tilted or bent? [borewright.example/bore/surface.Read],
//     [borewright.example/bore/surface.Profile.Level], [borewright.example/bore/surface.Profile.Unroll]
//   - how much of the wall bears at this depth? [borewright.example/bore/surface.Curve.Ratio],
//     [borewright.example/bore/surface.Curve.TwoProcess]
//   - what do plateau strokes change, how many more? [borewright.example/bore/surface.Curve.Remove],
//     [borewright.example/bore/surface.Curve.Reach], [borewright.example/bore/surface.Cut.Curve]
//   - how much stock for honing after boring? [borewright.example/oversize.Shop.Cuts],
//     [borewright.example/oversize.UsualHoning]
//   - which oversize cleans up? [borewright.example/bore.Geometry.CleanUp], [borewright.example/oversize.NewCylinder],
//     [borewright.example/oversize.Choose]
//   - what does a pit or a score ask for? [borewright.example/bore.Wear.Pits], [borewright.example/bore.CleanUp.Pits]
//   - the finish size for this piston? [borewright.example/bore/fit.FinishWindow], [borewright.example/bore/fit.AimIn]
//   - what clearance is usual? [borewright.example/bore/fit.Usual]
//   - is that limit a slip of the point? [borewright.example/bore.UsualForm],
//     [borewright.example/bore/fit.UsualClearance], [borewright.example/rings.UsualGap]
//   - how does clearance change when hot? [borewright.example/bore/fit.Warm.HotClearance]
//   - which piston into which bore? [borewright.example/bore/fit.Match]
//   - what is left open where a piston was measured? [borewright.example/bore/fit.Piston.Cautions]
//   - what clearance says a feeler strip and a pull? [borewright.example/bore/fit.FeelerRule.Clearance]
//   - displacement and ratio after the overbore? [borewright.example/oversize.Chamber.Compression],
//     [borewright.example/oversize.Displacement]
//   - what does the gauge show while it is warm? [borewright.example/bore.Gauge.DialReading]
//   - do ring ends clear the ports? [borewright.example/rings.Ends.Clear]
//   - is enough wall left, is a sleeve needed? [borewright.example/oversize.WallLeft],
//     [borewright.example/oversize.Choose]
//   - how much wall does a new cylinder want? [borewright.example/oversize.HoopWall],
//     [borewright.example/oversize.ReboringAllowance]
//   - the port opens at 95°: how deep is that? [borewright.example/oversize.PistonTravel]
//   - what interference, does it stay tight hot? [borewright.example/oversize/sleeve.Joint.Fit],
//     [borewright.example/oversize/sleeve.Joint.LooseAt], [borewright.example/oversize/sleeve.Joint.Stresses]
//   - which fit is H7/s6, how wide is grade 7? [borewright.example/oversize/sleeve.DiametralFromClasses],
//     [borewright.example/oversize/sleeve.Class.Sizes], [borewright.example/oversize/sleeve.Tolerance]
//   - what interference have my parts, what is usual? [borewright.example/oversize/sleeve.DiametralFromMeasured],
//     [borewright.example/oversize/sleeve.TradeInterference]
//   - how hot an oven, how cold a sleeve? [borewright.example/oversize/sleeve.Joint.HeatTo],
//     [borewright.example/oversize/sleeve.Joint.ChillTo]
//   - how does an old sleeve come out? [borewright.example/oversize/sleeve.Joint.TakeOut]
//   - how hard must the press push? [borewright.example/oversize/sleeve.Joint.Press]
//   - how does the bore of a sleeved barrel grow? [borewright.example/oversize/sleeve.Joint.Growth]
//   - how much may a joint have, how much must it? [borewright.example/oversize/sleeve.Joint.GreatestInterference],
//     [borewright.example/oversize/sleeve.Joint.LeastInterference]
//   - to what is the seat bored for this sleeve? [borewright.example/oversize/sleeve.SeatFor]
//   - how far does the sleeve stand proud? [borewright.example/oversize/sleeve.Proud]
//   - does the hone clean the fitted sleeve up? [borewright.example/oversize/sleeve.Honing.Allowed]
//   - what does the wear look like? [borewright.example/oversize/jobsheet/picture.Wear],
//     [borewright.example/oversize/jobsheet/picture.Section]
//   - which size cleans up, at a glance? [borewright.example/oversize/jobsheet/picture.Ladder]
//   - what do 45° look like, and what I leave? [borewright.example/oversize/jobsheet/picture.Crosshatch],
//     [borewright.example/oversize/jobsheet/picture.Speeds]
//   - where does honing take the metal, at a glance? [borewright.example/oversize/jobsheet/picture.Removal]
//   - what do gap, ports and trace look like? [borewright.example/oversize/jobsheet/picture.RingGap],
//     [borewright.example/oversize/jobsheet/picture.Ports], [borewright.example/oversize/jobsheet/picture.Trace]
//   - what bears, what runs in, what holds oil? [borewright.example/oversize/jobsheet/picture.MaterialRatio]
//   - how do I print that, as a file of its own? [borewright.example/oversize/jobsheet/page.Picture.WriteSVG]
//   - how do I type a sheet of my own? [borewright.example/oversize/jobsheet/page.Text],
//     [borewright.example/oversize/jobsheet/page.HTML]
//   - what does a whole job come to, on paper? [borewright.example/oversize/jobsheet.ReadJob],
//     [borewright.example/oversize/jobsheet.Plan], [borewright.example/oversize/jobsheet.Sheet.WriteText]
//   - is this still the sheet of its job? [borewright.example/oversize/jobsheet.ReadSheet],
//     [borewright.example/oversize/jobsheet.Job.WriteJSON]
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
