// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"math"

	"borewright.example/bore/internal/lobes"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Lobes are the part Amplitude·cos k(θ − Axis) of the diameters D(θ) of a plane, k = 2 for ovality or 4 as four
// head bolts may draw a cylinder, by least squares of both together where five axes or more carry the four. It is
// exact for a wall of just these lobes. Since it goes through sines, which differ in the last bit from machine to
// machine, what is fitted is rounded to the nearest nanometre, angles to a millionth of a degree, and standard
// uncertainties up to the next nanometre. The zero Lobes are none: for two, fewer than three axes, for four, fewer
// than five, or axes too close together.
type Lobes struct {
	// Mean is the size that both are laid on; it stands with the two. From axes spaced unevenly it is nearer to
	// the bore's mean size than the mean of the places is.
	Mean uncertainty.Estimate `json:"mean,omitzero"`
	// Amplitude is of the diameter: of two lobes half of greatest minus least. Scatter adds to it, as to all
	// that cannot be negative: on a round bore read along n even axes it comes out near
	// 1.25·√(2/n) standard deviations of one reading.
	Amplitude uncertainty.Estimate `json:"amplitude,omitzero"`
	Axis      units.Angle          `json:"axis,omitzero"` // of a greatest diameter, 0 up to 180°, of four lobes 90°; 0 where the amplitude is 0
	// AxisStd is the standard uncertainty of the Axis of two lobes, at most that of a direction of which nothing
	// is known, 180°/√12.
	AxisStd units.Angle `json:"axis_std,omitzero"`
	Fitted  bool        `json:"fitted,omitzero"` // of four lobes: an amplitude of zero was looked for and found
}

// harmonic returns the fit as a harmonic of the wall, its amplitude radial: half of that of
// the diameter.
func (l Lobes) harmonic(order int) Harmonic {
	return Harmonic{Order: order, Amplitude: l.Amplitude.Value / 2, Phase: l.Axis}
}

// Harmonics returns the orders of the wall that the axes of the plane could separate, with
// radial amplitudes: none from fewer than three axes, order 2 from three, orders 2 and 4 from
// five. Orders it does not hold were not looked for; odd ones no two opposed anvils can see.
func (p Plane) Harmonics() []Harmonic {
	var hs []Harmonic
	if p.TwoLobe != (Lobes{}) {
		hs = append(hs, p.TwoLobe.harmonic(2))
	}
	if p.FourLobe != (Lobes{}) {
		hs = append(hs, p.FourLobe.harmonic(4))
	}
	return hs
}

// departure returns the greatest departure of a place from the lobes fitted.
func (p *Plane) departure() units.Length {
	var most float64
	for _, q := range p.Places {
		d := (q.Size.Value - p.TwoLobe.Mean.Value).In(units.Micrometre) -
			float64(p.TwoLobe.Amplitude.Value.In(units.Micrometre)*math.Cos(2*float64(q.Axis.angle()-p.TwoLobe.Axis))) -
			float64(p.FourLobe.Amplitude.Value.In(units.Micrometre)*math.Cos(4*float64(q.Axis.angle()-p.FourLobe.Axis)))
		most = max(most, math.Abs(d))
	}
	l, err := nanometres(most)
	if err != nil {
		return units.MaxLength / 100
	}
	return l
}

// fit adds the forms that the axes of a plane can carry. buf has room for two numbers a place.
func (p *Plane) fit(doubts []doubt, buf []float64) error {
	n := len(p.Places)
	theta, d := buf[:n], buf[n:2*n]
	var own, random, dof float64
	for i := range p.Places {
		theta[i], d[i] = float64(p.Places[i].Axis), (p.Places[i].Size.Value - p.Mean.Value).In(units.Micrometre)
		own = max(own, doubts[i].fixed+doubts[i].random)
		random = max(random, doubts[i].random)
		dof = fewer(dof, p.Places[i].Own.DoF)
	}
	f, ok := lobes.Solve(theta, d, lobes.MaxOrders)
	four := ok
	if !ok {
		if f, ok = lobes.Solve(theta, d, 1); !ok {
			return nil
		}
	}
	mean := doubt{random: random * f.Cov[0][0], dof: doubts[0].dof}
	for i := range doubts {
		mean.shared, mean.fixed = max(mean.shared, doubts[i].shared), max(mean.fixed, doubts[i].fixed)
	}
	shift, err := nanometres(f.Mean)
	if err != nil {
		return err
	}
	if p.TwoLobe.Mean, err = mean.estimate(p.Mean.Value + shift); err != nil {
		return err
	}
	if p.TwoLobe.Amplitude, p.TwoLobe.Axis, err = lobe(&f, 0, own, dof); err != nil {
		return err
	}
	p.TwoLobe.AxisStd = axisStd(p.TwoLobe.Amplitude)
	if four {
		p.FourLobe.Fitted = true
		p.FourLobe.Amplitude, p.FourLobe.Axis, err = lobe(&f, 1, own, dof)
	}
	return err
}

// nanometres returns a result of the fit, in micrometres, rounded to a nanometre: it goes through
// sines, which differ in the last bit from machine to machine.
func nanometres(um float64) (units.Length, error) {
	l, err := units.Of(um, units.Micrometre)
	return l.Round(units.Nanometre), err
}

// lobe returns the amplitude of the k-th order with its doubt, for a variance of one diameter,
// and its axis.
func lobe(f *lobes.Fit, k int, variance, dof float64) (uncertainty.Estimate, units.Angle, error) {
	um, phase := f.Amplitude(k)
	value, err := nanometres(um)
	if err != nil {
		return uncertainty.Estimate{}, 0, err
	}
	std, err := units.Of(math.Sqrt(variance*f.Variance(k)), units.Micrometre)
	if err != nil {
		return uncertainty.Estimate{}, 0, err
	}
	e := tidy(uncertainty.Estimate{Value: value, Std: std, DoF: dof})
	if value == 0 {
		return e, 0, e.Validate()
	}
	return e, foldAngle(units.Angle(phase), 180/float64(k+1)), e.Validate()
}

// axisStd returns the standard uncertainty of the axis of two lobes: that of the amplitude, across
// it, over twice the amplitude; at most that of a direction of which nothing is known.
func axisStd(amplitude uncertainty.Estimate) units.Angle {
	most := 180 / math.Sqrt(12)
	if amplitude.Std == 0 {
		return 0
	}
	if amplitude.Value > 0 {
		most = min(most, float64(amplitude.Std)/(2*float64(amplitude.Value))*180/math.Pi)
	}
	return units.Angle(math.Round(most*angleSteps) / angleSteps * float64(units.Degree))
}
