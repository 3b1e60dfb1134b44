// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"math"

	"borewright.example/units"
)

// A Tally is what the lines of a whole wall come to, weighed in one way or another.
type Tally struct {
	Mean units.Angle `json:"mean"` // of the included angles, rounded to 10⁻¹²°
	Flat float64     `json:"flat"` // share of lines flatter than asked for, a fraction of 1, rounded to 10⁻⁹
}

// CountLines returns the mean angle of the lines of a wall and the share of them that is flatter than flat,
// when the tool moves by m on the travel t, weighed in two ways: by length, as dots of a picture add up and as
// [Profile] has it, and by number, as one counts with a needle over the lines of a circle round the wall, which
// every grain that passes there crosses once, steep or flat. Where the tool slows down it draws long stretches of flat lines, but
// few of them: by number they count for less than by length. An angle of 30° included is often named as the
// flattest that is wanted (common practice).
//
// By length the lines drawn in a time dt weigh the resultant speed times dt, by number the axial speed times
// dt; both times as much of the tool as lies within the bore. A line as steep as flat, to a part in 10¹², is
// not flatter.
//
// Errors are those of [Setting.Profile]; a flat that is not given is [units.ErrNotGiven].
func (s Setting) CountLines(m Motion, t Travel, flat Crosshatch) (byLength, byNumber Tally, err error) {
	w, err := s.worked(m, t, ConstantPressure)
	if err := firstError(err, flat.check()); err != nil {
		return Tally{}, Tally{}, err
	}
	edge := flat.slope() / w.slope * (1 - 1e-12) // as a speed
	var length, number weighed
	for cell := range len(w.ends) - 1 {
		from, to := w.ends[cell], w.ends[cell+1]
		cuts := []float64{from, to}
		if (w.at[cell] < edge) != (w.at[cell+1] < edge) {
			cuts = []float64{from, w.crossing(cell+1, edge), to}
		}
		for i := 1; i < len(cuts); i++ {
			isFlat := w.speed((cuts[i-1]+cuts[i])/2) < edge
			angle := func(t float64) float64 { return 2 * math.Atan(w.slope*w.speed(t)) }
			drawn := func(t float64) float64 { return float64(w.along(t) * w.inside(cell, t)) }
			crossed := func(t float64) float64 { return float64(w.speed(t) * w.inside(cell, t)) }
			length.add(cuts[i-1], cuts[i], drawn, angle, isFlat)
			number.add(cuts[i-1], cuts[i], crossed, angle, isFlat)
		}
	}
	return length.tally(), number.tally(), nil
}

// weighed sums up lines by some weight.
type weighed struct{ all, angle, flat float64 }

func (w *weighed) add(from, to float64, weight, angle func(t float64) float64, flat bool) {
	all := gauss(from, to, weight)
	w.all += all
	w.angle += gauss(from, to, func(t float64) float64 { return float64(weight(t) * angle(t)) })
	if flat {
		w.flat += all
	}
}

func (w *weighed) tally() Tally {
	return Tally{roundAngle(w.angle / w.all), math.Round(min(max(w.flat/w.all, 0), 1)*1e9) / 1e9}
}
