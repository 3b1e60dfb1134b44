// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"testing"

	"pgregory.net/rapid"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/material"
)

// A shot is the displacement of a tube's wall and its radial stress at one radius.
type shot struct{ u, radial float64 }

// integrate carries a shot from one radius to another by Runge and Kutta's method of order four
// over the equations of plane stress themselves, with no use of their solution:
//
//	equilibrium  dσr/dr = (σθ − σr)/r
//	Hooke        σθ = E·u/r + ν·σr      du/dr = (σr − ν·σθ)/E
func integrate(s shot, from, to float64, m material.Material) shot {
	e, nu := float64(m.Young), m.Poisson
	slope := func(r float64, s shot) shot {
		hoop := e*s.u/r + nu*s.radial
		return shot{(s.radial - nu*hoop) / e, (hoop - s.radial) / r}
	}
	plus := func(s, d shot, h float64) shot { return shot{s.u + h*d.u, s.radial + h*d.radial} }
	const steps = 400
	h := (to - from) / steps
	for i := range steps {
		r := from + float64(i)*h
		k1 := slope(r, s)
		k2 := slope(r+h/2, plus(s, k1, h/2))
		k3 := slope(r+h/2, plus(s, k2, h/2))
		k4 := slope(r+h, plus(s, k3, h))
		s = plus(plus(plus(plus(s, k1, h/6), k2, h/3), k3, h/3), k4, h/6)
	}
	return s
}

// TestAgainstTheEquationsOfEquilibrium shoots from the bore of the sleeve, where the radial stress
// is minus the gas pressure, and from the outside of the barrel, where it is 0, and finds the
// pressure at which the two displacements differ by the interference. All is linear in the
// unknown displacements, so that two shots a part and one solution give it.
func TestAgainstTheEquationsOfEquilibrium(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := exactJoint(t)
		gas := rapid.Float64Range(0, 15e6).Draw(t, "gas")
		s := must(j.Stresses(sleeve.Warm{Gas: units.Pressure(gas), Sleeve: room, Barrel: room}))
		a, c, b := j.Bore.In(units.Metre)/2, j.Seat.In(units.Metre)/2, j.Outer.Min.In(units.Metre)/2
		// at returns displacement and radial stress at the joint, as base + x·unit for a
		// displacement x at the free side.
		at := func(free float64, stress float64, m material.Material) (base, unit shot) {
			base = integrate(shot{0, stress}, free, c, m)
			one := integrate(shot{1e-6, stress}, free, c, m)
			return base, shot{(one.u - base.u) / 1e-6, (one.radial - base.radial) / 1e-6}
		}
		si, ui := at(a, -gas, j.Sleeve)
		so, uo := at(b, 0, j.Barrel)
		// Radial stresses meet: si + x·ui = so + y·uo; displacements differ by the radial
		// interference: (so + y·uo) − (si + x·ui) = d.
		d := j.Interference.Min.In(units.Metre) / 2
		det := ui.radial*uo.u - uo.radial*ui.u
		r1, r2 := so.radial-si.radial, d+si.u-so.u
		x, y := (r1*uo.u+uo.radial*r2)/det, (ui.radial*r2+ui.u*r1)/det
		p := -(si.radial + x*ui.radial)
		const tol = 2e-6 // of Runge and Kutta's steps, on walls up to twice the bore
		near(t, "pressure", float64(s.Pressure.Min), p, tol*p)
		near(t, "hoop stress of the sleeve", float64(s.SleeveHoop.Min), float64(j.Sleeve.Young)*x/a-j.Sleeve.Poisson*gas, tol*(p+gas)*200)
		near(t, "closing-in", s.BoreCloses.Min.In(units.Metre), -2*x, 1e-12+tol*1e-3)
		opens := 2 * (so.u + y*uo.u)
		near(t, "opening", s.BarrelOpens.Min.In(units.Metre), opens, 1e-12+tol*opens)
		hoop := float64(j.Barrel.Young)*opens/(2*c) - j.Barrel.Poisson*p
		near(t, "hoop stress of the barrel", float64(s.BarrelHoop.Min), hoop, tol*hoop)
	})
}
