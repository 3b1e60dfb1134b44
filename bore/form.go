// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"
	"math"

	"borewright.example/bore/internal/lobes"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A TwoLobe is the least-squares D(θ) = Mean + Amplitude·cos 2(θ − Axis) through the diameters
// of a plane, together with a [FourLobe] where five axes or more carry one. It is exact for a wall
// of just these lobes. Since it goes through sines, which differ in the last bit from machine to machine,
// what is fitted is rounded to the nearest nanometre, angles to a millionth of a degree, and standard
// uncertainties up to the next nanometre; so are those of a [FourLobe] and an [Ellipse]. The zero TwoLobe is
// none: fewer than three axes, or axes too close together.
type TwoLobe struct {
	// Mean is the size that the lobes are laid on. From axes spaced unevenly it is nearer to the
	// bore's mean size than the mean of the places is.
	Mean uncertainty.Estimate `json:"mean,omitzero"`
	// Amplitude is of the diameter: half of greatest minus least. Scatter adds to it, as to all
	// that cannot be negative: on a round bore read along n even axes it comes out near
	// 1.25·√(2/n) standard deviations of one reading.
	Amplitude uncertainty.Estimate `json:"amplitude,omitzero"`
	Axis      units.Angle          `json:"axis,omitzero"` // of the greatest diameter, 0 up to 180°; 0 where the amplitude is 0
	// AxisStd is the standard uncertainty of Axis, at most that of a direction of which nothing
	// is known, 180°/√12.
	AxisStd units.Angle `json:"axis_std,omitzero"`
}

// IsZero reports whether there is no fit.
func (t TwoLobe) IsZero() bool { return t == TwoLobe{} }

// Harmonic returns the fit as a harmonic of the wall, its amplitude radial: half of that of
// the diameter.
func (t TwoLobe) Harmonic() Harmonic {
	return Harmonic{Order: 2, Amplitude: t.Amplitude.Value / 2, Phase: t.Axis}
}

// A FourLobe is the part Amplitude·cos 4(θ − Axis) of the diameters of a plane, as four head
// bolts may draw a cylinder. The zero FourLobe is none: fewer than five axes, or axes too close
// together.
type FourLobe struct {
	Amplitude uncertainty.Estimate `json:"amplitude,omitzero"` // of the diameter
	Axis      units.Angle          `json:"axis,omitzero"`      // of a greatest diameter, 0 up to 90°; 0 where the amplitude is 0
	Fitted    bool                 `json:"fitted,omitzero"`    // an amplitude of zero was looked for and found
}

// IsZero reports whether there is no fit.
func (f FourLobe) IsZero() bool { return f == FourLobe{} }

// Harmonic returns the fit as a harmonic of the wall, its amplitude radial: half of that of
// the diameter.
func (f FourLobe) Harmonic() Harmonic {
	return Harmonic{Order: 4, Amplitude: f.Amplitude.Value / 2, Phase: f.Axis}
}

// Harmonics returns the orders of the wall that the axes of the plane could separate, with
// radial amplitudes: none from fewer than three axes, order 2 from three, orders 2 and 4 from
// five. Orders it does not hold were not looked for; odd ones no two opposed anvils can see.
func (p Plane) Harmonics() []Harmonic {
	var hs []Harmonic
	if !p.TwoLobe.IsZero() {
		hs = append(hs, p.TwoLobe.Harmonic())
	}
	if !p.FourLobe.IsZero() {
		hs = append(hs, p.FourLobe.Harmonic())
	}
	return hs
}

// departure returns the greatest departure of a place from the lobes fitted.
func (p *Plane) departure() units.Length {
	var most float64
	for _, q := range p.Places {
		d := (q.Size.Value - p.TwoLobe.Mean.Value).In(units.Micrometre) -
			float64(p.TwoLobe.Amplitude.Value.In(units.Micrometre)*math.Cos(2*float64(q.Axis-p.TwoLobe.Axis))) -
			float64(p.FourLobe.Amplitude.Value.In(units.Micrometre)*math.Cos(4*float64(q.Axis-p.FourLobe.Axis)))
		most = max(most, math.Abs(d))
	}
	l, err := nanometres(most)
	if err != nil {
		return units.MaxLength / 100
	}
	return l
}

// An Ellipse is the form of a plane taken as an ellipse, with the two axes as diameters.
type Ellipse struct {
	Major uncertainty.Estimate `json:"major"`         // the greatest width
	Minor uncertainty.Estimate `json:"minor"`         // the least
	Axis  units.Angle          `json:"axis,omitzero"` // of Major, 0 up to 180°; 0 where both are equal
}

// Ellipse returns the ellipse whose widths between parallel tangents are the diameters of the
// plane, by least squares: D² = (Major² + Minor²)/2 + (Major² − Minor²)/2·cos 2(θ − Axis), which
// is exact for an ellipse where [TwoLobe] is not (by 14 nm for axes of 87.55 and 87.45 mm). The
// chord through the centre differs from the width by as much as 57 nm there, less than any gauge shows.
//
// Fewer than three axes, axes too close together, a three-point gauge, and diameters that no
// ellipse has are ErrAxes.
func (p Plane) Ellipse() (Ellipse, error) {
	if p.TwoLobe.IsZero() {
		return Ellipse{}, fmt.Errorf("bore: ellipse at %v from %d axes: want three well apart: %w", p.Depth, len(p.Places), ErrAxes)
	}
	base := p.Mean.Value.In(units.Micrometre)
	theta, d := make([]float64, len(p.Places)), make([]float64, len(p.Places))
	for i, q := range p.Places {
		theta[i] = float64(q.Axis)
		d[i] = (q.Size.Value - p.Mean.Value).In(units.Micrometre) * ((q.Size.Value + p.Mean.Value).In(units.Micrometre) / base)
	} // (D² − base²)/base: the scale cancels where the axes are drawn from it
	f, ok := lobes.Solve(theta, d, 1)
	if !ok {
		return Ellipse{}, fmt.Errorf("bore: ellipse at %v: %w", p.Depth, ErrAxes)
	}
	amplitude, phase := f.Amplitude(0)
	var worst Place
	for _, q := range p.Places {
		if q.Own.Std >= worst.Own.Std {
			worst = q
		}
	}
	whole, own := worst.Size.Std.In(units.Micrometre), worst.Own.Std.In(units.Micrometre)
	shared := max(0, float64(whole*whole)-float64(own*own))
	axis := func(sign float64) (uncertainty.Estimate, error) {
		square := 1 + (f.Mean+sign*amplitude)/base // over base²
		if square <= 0 {
			return uncertainty.Estimate{}, fmt.Errorf("bore: ellipse at %v: no ellipse has these diameters: %w", p.Depth, ErrAxes)
		}
		// base·(√square − 1), without the loss of digits
		um := (f.Mean + sign*amplitude) / (1 + math.Sqrt(square))
		value, err := units.Of(um, units.Micrometre)
		if err != nil {
			return uncertainty.Estimate{}, err
		}
		v := own * own * f.Along(0, sign)
		std, err := units.Of(math.Sqrt(shared+v), units.Micrometre)
		if err != nil {
			return uncertainty.Estimate{}, err
		}
		e := tidy(uncertainty.Estimate{Value: p.Mean.Value + value.Round(units.Nanometre), Std: std, DoF: worst.Own.DoF})
		return e, e.Validate()
	}
	var e Ellipse
	var err error
	if e.Major, err = axis(1); err != nil {
		return Ellipse{}, err
	}
	if e.Minor, err = axis(-1); err != nil {
		return Ellipse{}, err
	}
	if e.Major.Value != e.Minor.Value {
		e.Axis = foldAxis(units.Angle(phase))
	}
	return e, nil
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
