// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/material"
)

// 67.00 to 67.05 mm, 90 mm deep: 473.8 mm³, π/4·(D2² − D1²)·L. Computed.
func TestStock(t *testing.T) {
	s := hone.Stock{From: 67 * mm, To: 67*mm + 50*um, Depth: 90 * mm}
	near(t, "mm³", must[units.Volume](t)(s.Volume()).In(units.CubicCentimetre/1000), 473.8, 0.1)
	near(t, "g of 7.3 g/cm³", must[hone.Mass](t)(s.Mass(material.GreyIron())).In(hone.Gram), 3.459, 0.001)
	if r := must[units.Length](t)(s.Radial()); r != 25*um {
		t.Errorf("%v off the wall", r)
	}
	if hone.Kilogram.In(0) != 0 || hone.Kilogram.In(hone.Gram) != 1000 {
		t.Error("a kilogram is no thousand grams")
	}
}

// Volume and mass lead back to the diameter, to a picometre, and are the difference of two cylinders.
func TestStockInverts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, least, most units.Length) units.Length {
			return units.Length(rapid.Int64Range(int64(least), int64(most)).Draw(t, name))
		}
		s := hone.Stock{From: draw("from", mm, units.Metre), Depth: draw("depth", mm, units.Metre)}
		s.To = s.From + draw("grows", 0, units.Metre)
		v := must[units.Volume](t)(s.Volume())
		whole := must[units.Volume](t)(units.CylinderVolume(s.To, s.Depth))
		near(t, "volume", float64(v), float64(whole-must[units.Volume](t)(units.CylinderVolume(s.From, s.Depth))), 1e-14*float64(whole))
		// Ten roundings of 1e-16 of what it grows.
		tol := 1 + 1e-15*float64(s.To-s.From)
		near(t, "by volume", float64(must[hone.Stock](t)(hone.StockOfVolume(s.From, s.Depth, v)).To), float64(s.To), tol)
		m := must[hone.Mass](t)(s.Mass(material.GreyIron()))
		near(t, "by mass", float64(must[hone.Stock](t)(hone.StockOfMass(s.From, s.Depth, m, material.GreyIron())).To), float64(s.To), tol)
	})
}

func TestStockRefuses(t *testing.T) {
	good := hone.Stock{From: 67 * mm, To: 68 * mm, Depth: 90 * mm}
	for _, s := range []hone.Stock{{0, 68 * mm, 90 * mm}, {67 * mm, 0, 90 * mm}, {67 * mm, 68 * mm, 0}} {
		_, err1 := s.Radial()
		_, err2 := s.Volume()
		_, err3 := s.Mass(material.GreyIron())
		for _, err := range []error{err1, err2, err3} {
			if !errors.Is(err, hone.ErrNotGiven) {
				t.Errorf("%+v: %v", s, err)
			}
		}
	}
	if _, err := (hone.Stock{From: 67 * mm, To: 67*mm - 1, Depth: 1 * mm}).Volume(); !errors.Is(err, units.ErrCrossed) {
		t.Errorf("a bore that shrinks: %v", err)
	}
	for density, want := range map[material.Density]error{0: hone.ErrNotGiven, -1: units.ErrRange, 1e6: units.ErrRange, material.Density(math.NaN()): units.ErrRange} {
		metal := material.Material{Density: density}
		if _, err := good.Mass(metal); !errors.Is(err, want) {
			t.Errorf("density %v: %v, want %v", density, err, want)
		}
		if _, err := hone.StockOfMass(67*mm, 90*mm, hone.Gram, metal); !errors.Is(err, want) {
			t.Errorf("density %v: %v, want %v", density, err, want)
		}
	}
	for v, want := range map[units.Volume]error{-1: units.ErrRange, units.Volume(math.NaN()): units.ErrRange, units.Volume(math.Inf(1)): units.ErrRange, 1e3: hone.ErrUnreachable, 9: hone.ErrUnreachable} {
		if _, err := hone.StockOfVolume(67*mm, 90*mm, v); !errors.Is(err, want) {
			t.Errorf("%v m³: %v, want %v", float64(v), err, want)
		}
	}
	if _, err := hone.StockOfVolume(0, 90*mm, 1); !errors.Is(err, hone.ErrNotGiven) {
		t.Errorf("no bore: %v", err)
	}
}
