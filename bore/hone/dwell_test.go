// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// tapered is a bore worn 30 µm wider at the top than at the bottom of the piston's travel.
func tapered() hone.Correction {
	c := hone.Correction{
		Run:  hone.Run{Kind: hone.RigidStone, Depth: 90 * mm, Tool: 30 * mm, RoomTop: 60 * mm, RoomBottom: 60 * mm},
		Size: 67*mm + 80*um, Finish: 10 * um,
	}
	for i := range 10 {
		c.Measured = append(c.Measured, hone.Place{Depth: 10*mm + units.Length(i)*70*mm/9, Diameter: 67*mm + 40*um - units.Length(i*30)*um/9})
	}
	return c
}

// A taper of 30 µm comes down to half or less. Full strokes alone would leave more than there was, because of the
// ends.
func TestCorrectTaper(t *testing.T) {
	s := small(120, 0, hone.Cycles(1*units.Hertz))
	for _, law := range []hone.Pressing{hone.ConstantPressure, hone.ConstantForce} {
		c := tapered()
		p := must[hone.DwellPlan](t)(s.Correct(hone.Steady(), law, c))
		if p.After > 15*um {
			t.Errorf("%v: %v after", law, p.After)
		}
		// More below the middle than above it.
		var above, below units.Length
		for _, d := range p.Dwells {
			if d.Middle < 45*mm {
				above += d.Takes
			} else {
				below += d.Takes
			}
		}
		if below <= above {
			t.Errorf("%v: %v above, %v below", law, above, below)
		}
		if p.Full < c.Finish-units.Nanometre {
			t.Errorf("%v: full strokes take %v", law, p.Full)
		}
	}
}

// Whatever is measured: nothing beyond the size, no negative amounts, shares that make a whole; and for a
// steady stroke at constant pressure what is foretold is the sum of what its parts take, by closed forms.
func TestCorrectAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := tapered()
		c.Run.Tool = units.Length(rapid.Int64Range(20, 100).Draw(t, "tool")) * mm
		c.Run.RoomTop = units.Length(rapid.Int64Range(0, 50).Draw(t, "room")) * mm
		c.Finish = units.Length(rapid.Int64Range(0, 10).Draw(t, "finish")) * um
		for i := range c.Measured {
			c.Measured[i].Depth = units.Length(i) * 10 * mm
			c.Measured[i].Diameter = 67*mm + units.Length(rapid.Float64Range(0, 60).Draw(t, "worn")*float64(um))
		}
		s := small(120, 0, hone.Cycles(1*units.Hertz))
		p, err := s.Correct(hone.Steady(), hone.ConstantPressure, c)
		if err != nil {
			if !errors.Is(err, hone.ErrRoom) {
				t.Fatal(err)
			}
			return
		}
		travel := must[hone.Travel](t)(hone.UsualTravel(c.Run))
		full := must[hone.Removal](t)(s.Removal(hone.Steady(), travel, hone.ConstantPressure, 1*mm, len(p.Places)))
		alone := 1e9 // µm that full strokes alone could take
		places := make([]float64, len(p.Places))
		time := p.FullTime
		for _, d := range p.Dwells {
			time += d.Time
			if d.Takes <= 0 || d.Time < 0 || d.Middle < c.Run.Tool/2-travel.Top || d.Middle > c.Run.Depth+travel.Bottom-c.Run.Tool/2 {
				t.Errorf("%+v", d)
			}
		}
		if p.Full > 0 {
			near(t, "time", time, 1, 1e-7)
		}
		for i, at := range p.Places {
			above, next := i*9/60, min(i*9/60+1, 9) // measured places
			was := c.Measured[above].Diameter.In(um)
			was += (c.Measured[next].Diameter.In(um) - was) * (float64(i)*9/60 - float64(above))
			places[i] = c.Size.In(um) - was
			if f := full.Points[i].Diameter.In(mm); f > 0 {
				alone = min(alone, places[i]/f)
			}
			if at.Diameter > c.Size || at.Depth != units.Length(i)*90*mm/60 {
				t.Errorf("%+v", at)
			}
			sum := p.Full.In(um) * full.Points[i].Diameter.In(mm)
			covered := func(z, middle float64) float64 { // share of a short stroke, to 5/8 of the stones away
				tool := c.Run.Tool.In(mm)
				return min(max((tool*5/8-math.Abs(z-middle))/(tool/4), 0), 1)
			}
			for _, d := range p.Dwells {
				middle := d.Middle.In(mm)
				sum += d.Takes.In(um) * covered(at.Depth.In(mm), middle) / covered(min(max(middle, 0), 90), middle)
			}
			// A nanometre is left out for each station that takes less.
			near(t, "foretold", at.Diameter.In(um)-was, sum, 0.001*64+1e-6)
		}
		least, greatest := math.Inf(1), math.Inf(-1)
		for i, left := range places {
			rest := left - alone*full.Points[i].Diameter.In(mm)
			least, greatest = min(least, rest), max(greatest, rest)
		}
		if p.After.In(um) > greatest-least+1e-6 {
			t.Errorf("differs by %v µm, by full strokes alone by %v", p.After.In(um), greatest-least)
		}
	})
}

func TestCorrectRefuses(t *testing.T) {
	s := small(120, 0, hone.Cycles(1*units.Hertz))
	for name, row := range map[string]struct {
		change func(c *hone.Correction)
		want   error
	}{
		"good":           {func(*hone.Correction) {}, nil},
		"ball-type":      {func(c *hone.Correction) { c.Run.Kind = hone.BallType }, units.ErrRange},
		"brush":          {func(c *hone.Correction) { c.Run.Kind = hone.BrushType }, units.ErrRange},
		"no kind":        {func(c *hone.Correction) { c.Run.Kind = 0 }, units.ErrNotGiven},
		"no size":        {func(c *hone.Correction) { c.Size = 0 }, units.ErrNotGiven},
		"finish":         {func(c *hone.Correction) { c.Finish = -1 }, units.ErrRange},
		"one place":      {func(c *hone.Correction) { c.Measured = c.Measured[:1] }, units.ErrRange},
		"many places":    {func(c *hone.Correction) { c.Measured = make([]hone.Place, 1001) }, units.ErrRange},
		"above":          {func(c *hone.Correction) { c.Measured[0].Depth = -1 }, units.ErrRange},
		"below":          {func(c *hone.Correction) { c.Measured[0].Depth = 90*mm + 1 }, units.ErrRange},
		"out of order":   {func(c *hone.Correction) { c.Measured[3].Depth = c.Measured[2].Depth }, units.ErrCrossed},
		"no diameter":    {func(c *hone.Correction) { c.Measured[3].Diameter = 0 }, units.ErrNotGiven},
		"past":           {func(c *hone.Correction) { c.Measured[3].Diameter = c.Size + 1 }, units.ErrRange},
		"no finish left": {func(c *hone.Correction) { c.Measured[3].Diameter = c.Size - 5*um }, units.ErrRange},
		"no full stroke": {func(c *hone.Correction) { c.Run.Tool, c.Run.RoomTop, c.Run.RoomBottom = 80*mm, 0, 0 }, hone.ErrRoom},
	} {
		c := tapered()
		row.change(&c)
		if _, err := s.Correct(hone.Steady(), hone.ConstantForce, c); !errors.Is(err, row.want) {
			t.Errorf("%s: %v, want %v", name, err, row.want)
		}
	}
	if _, err := s.Correct(hone.Steady(), 0, tapered()); !errors.Is(err, units.ErrNotGiven) {
		t.Errorf("no law: %v", err)
	}
}
