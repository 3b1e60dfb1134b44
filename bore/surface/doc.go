// SPDX-License-Identifier: BSD-3-Clause

// Package surface is the texture of a honed wall, from a profile. It says how much peak is left to run in,
// how much core bears, how much valley holds oil; whether that is what the rings' maker asks for; and what
// plateau strokes change of it.
//
//	p, err := surface.Read(file)                            // or FromHeights, FromPoints
//	t, err := p.Texture(surface.Filter{CutOff: 800 * units.Micrometre})
//	fmt.Println(t.Plateau)                                  // Rpk, Rk, Rvk, Mr1, Mr2
//	w, err := surface.Analyse(readings, instrument)         // several places: with doubt
//	findings, err := w.Judge(limits, uncertainty.Risk{})    // within, beyond or undecided
//	r, err := p.TwoStep(filter)
//	cut, err := r.Curve().Reach(wantedRpk)                  // how much more stock
//
// Heights are positive out of the material: in a bore, towards its axis. Parameters are [units.Length], in
// text in micrometres; material ratios are shares, 0 to 1, in text in percent.
//
// # From a profile to roughness
//
// The mean line m is the Gaussian filter of ISO 16610-21: each height weighed with
//
//	s(u) = exp(−π·(u/(α·λc))²)/(α·λc),  α = √(ln 2/π) = 0.4697
//
// so that of a wave λ long the share 2^−(λc/λ)² passes into m, half of it at λ = λc. The weights are not cut
// off: what is left out is below 1e-7 of the heights. A cut at ±λc/2, which some use, misses the half by
// 0.011 and 1 to 7 % of Rvk. Before that λs, where it is given, takes off what is shorter.
//
// At the ends a part of the weights falls outside. There m is the value of the weighed least-squares line
// of what is left, which keeps the first two moments of the weights (ISO 16610-28 lists this beside
// others, and leaves the choice). Nothing of the profile is lost, and a tilted one stays straight to its
// ends, where weights merely scaled up would be out by 0.15 λc of the slope. The length evaluated
// lies in the middle; run-in and run-out of λc/2 or more make the ends better still.
//
// That line dips into a groove, and beside it the plateau stands up like a shoulder that is not there: by
// 1.04 µm beside a groove 5 µm deep and 0.2 mm wide at λc 0.8 mm. On a wall of plateaus with a true Rvk of
// 4.45 µm it finds 2.96. So [Profile.TwoStep] does as ISO 13565-1 says: fill the profile up to m, take the
// mean line of that, and count the whole profile from there; which finds 4.42. For grooves as wide as a
// quarter of λc two steps are too few: take a longer λc. Under ISO 21920 many instruments use the robust
// filter of ISO 16610-31 in its place, which gives other numbers; it is not here. Ask which one a limit was
// made with.
//
// # Parameters
//
// [Heights] (Ra, Rq, Rz, Rt, Rp, Rv, Rsk, Rku, RSm, Rdq) are those of the plain mean line and of ISO 21920-2:
// Ra, Rq, Rsk and Rku over the whole length evaluated, Rz, Rp and Rv as means over its sections. ISO 4287
// takes each over a sampling length and averages; Rq then comes out a little lower. Its predecessor of 1984
// called another thing Rz, the mean of the five highest and five lowest points: old drawings mean that.
//
// [Plateau] (Rpk, Rk, Rvk, Mr1, Mr2) is read off the material ratio curve, the share of the length that lies
// as high as a level or higher, by ISO 13565-2:
//
//	line       least squares through the flattest 40 % of the curve, drawn on to 0 and 100 %
//	Rk         what it falls by
//	Mr1, Mr2   where the curve comes down to its upper, and reaches its lower end
//	Rpk, Rvk   twice the area of the curve beyond, over the width of that: a triangle of the same area
//	oil        Rvk·(1 − Mr2)/2, a mean depth; 1 µm of it is 0.1 mm³/cm² (common practice)
//
// Others take the chord of the 40 % for the line: Rk of a normal distribution of heights is then 2.622 of its
// deviation, by least squares 2.574. The text of the standard was not at hand: least squares is what users'
// texts describe.
//
// [TwoProcess] (Rpq, Rvq, Rmq) takes the curve as two normal distributions, one over the other.
//
// None of it means much for some curves, and Plateau.Core says so. Of a pure sine the flattest 40 % lies at an end.
// Where 40 % and more lie at one height, Rk is 0 by geometry.
//
// # Doubt
//
// A wall differs from place to place more than an instrument from repeat to repeat. [Analyse] takes
// several places, and the scatter of their means as the doubt of the mean; a wall read at one place is never
// decided, however often it was read.
//
// # What plateau strokes do
//
// The model is truncation: all above a level is gone, all below is as it was. Then, with M the material ratio
// of the wall before, a cut at level c leaves plateaus on M(c) of it and has taken the metal ∫ M dz from c up,
// as a mean thickness, while the highest peak lost the stock. A gauge rests on peaks, and sees the stock; time
// and pressure buy metal (Preston's law, as in package hone). The first strokes lower the peaks fast, later
// ones ever less: each stroke has more wall to take it from. While the cut stays above the core, and the
// flattest 40 % of the curve stays where it was,
//
//	Rpk after = Rpk − 2·metal/Mr1
//
// and the other four numbers stay. Then the core moves on to the plateaus, and all five jump.
//
// A [Cut] is joined to the phases of package hone by its Stock: radial, as theirs; the grooves of the phases
// before are shallower by it.
//
// Its limits: plateaus have a texture of their own, so that Rk and Rpk do not really go to 0; metal may be
// folded into grooves or torn out; the mean line is not filtered anew. And Rvk may rise though no groove
// became deeper: when the flattest 40 % moves on to the plateaus, more of the curve counts as valley. Of
// normally distributed heights Rvk is 0.95 of their deviation, and 1.60 when all above the mean is gone.
//
// # Which question, which function
//
//	how rough is it, what bears, what holds oil?      Profile.Texture
//	the profile is tilted, or bent by the bore?       Profile.Level, Profile.Unroll
//	how much bears at this depth?                     Curve.Ratio, Curve.Height
//	one process or two?                               Curve.TwoProcess
//	is it what the rings want?                        Analyse, Wall.Judge
//	what do so many strokes leave?                    Curve.Remove, Curve.Truncate
//	how much more to reach this Rpk?                  Curve.Reach
//	how do I draw it?                                 Roughness.Points, Curve.Height, Plateau.Top and Bottom
//
// # Sources and validity
//
// ISO 21920-2 and -3:2021 (profile parameters), with clause numbers from their tables of contents; ISO
// 13565-1, -2 and -3:1996 to 1998 (stratified surfaces; part 3 withdrawn in 2021), ISO 4287:1997, ISO 16610-21
// and -28: from memory and from users' texts, as said in each place. Checked against closed forms and against
// values computed apart from this package; no published profile with certified Rk could be had.
//
// A profile shows what the stylus reached: a tip of 2 or 5 µm rounds valleys. One with a skid filters mechanically
// and falls into grooves with it; Rk and its kin want a free tip (common practice). A trace of the wall is
// drawn along the bore, across the lines; crossing them aslant widens them. Spacing and heights are taken as
// exact; the doubt of the instrument is for [Instrument].
//
// # Cautions
//
// Wash before tracing: grit counts as peaks, and scratches. A texture says nothing of torn or folded metal,
// of grit left in the wall, or of size and form. Windows of the rings' maker and the engine's maker outrank
// every figure from here, and there is no window in this package.
//
// NaN and infinities do not come out; wrong data are errors that match the sentinels below with
// [errors.Is], and nothing panics.
package surface
