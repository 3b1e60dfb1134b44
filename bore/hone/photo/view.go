// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// What a picture needs to have of wall beside the label.
const (
	leastTiles  = 10
	leastBlocks = 6
)

// A view is what was made of a picture: where the camera was, and what the wall says of directions.
type view struct {
	grey   *grey
	weight []float32 // of its pixels
	sight  *sight
	fits   []fitted // at least one, the best first
	used   []tile
	chart  *chart
	grid   [2]float64 // leans that the rows and columns of the picture have on the wall, degrees
}

func (v *view) pose() *pose { return &v.fits[0].pose }

// look reads the picture.
func (s Shot) look() (*view, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	v := &view{}
	var err error
	if v.grey, err = readGrey(s.Picture); err != nil {
		return nil, err
	}
	g := v.grey
	if v.sight, err = s.sight(g); err != nil {
		return nil, err
	}
	if v.fits, err = v.sight.place(s.Label); err != nil {
		return nil, err
	}
	ts, err := layTiles(v.pose(), g.w, g.h)
	if err != nil {
		return nil, err
	}
	flat, weight := g.flatten(ts.side/4, grown(v.sight.corners, 1.1, 3))
	v.weight = weight
	v.turn(&ts, flat)
	if v.chart.tiles < leastTiles || v.chart.full < leastBlocks {
		return nil, fmt.Errorf("photo: %d pieces of wall beside the label, in %d of %d parts: %w: want %d in %d: more wall in the picture, or less glare",
			v.chart.tiles, v.chart.full, across*across, ErrSmall, leastTiles, leastBlocks)
	}
	v.chart.close(ts.side)
	return v, nil
}

// turn turns the tiles into the roses of the chart.
func (v *view) turn(ts *tiles, flat []float32) {
	v.chart = newChart(ts.side)
	compass, transform := newCompass(ts.side), newTransform(ts.side)
	power := make([]float64, ts.side*(ts.side/2+1))
	v.used = make([]tile, 0, len(ts.all))
	var grid [2]Pixel // of doubled angles: a direction has no sign
	for i := range ts.all {
		t := &ts.all[i]
		if transform.read(t, flat, v.weight, v.grey.w) < leastShare {
			continue
		}
		v.used = append(v.used, *t)
		transform.power(power)
		compass.add(power, v.chart.rose(ts.part(t)))
		f, _ := v.pose().frame(t.s, t.y)
		for k, d := range [2]Pixel{{1, 0}, {0, 1}} {
			sin, cos := math.Sincos(2 * f.lean(d))
			grid[k].X += cos
			grid[k].Y += sin
		}
	}
	for k, d := range grid {
		v.grid[k] = math.Atan2(d.Y, d.X) / 2 * toDegrees
	}
}

const toDegrees = 180 / math.Pi

// usualMarking is how well a person marks a corner, in pixels.
const usualMarking = 0.5

// check refuses what was not given or is out of range.
func (s Shot) check() error {
	for _, one := range []struct {
		name string
		l    units.Length
	}{{"bore", s.Bore}, {"label round the bore", s.Label.Round}, {"label along the bore", s.Label.Along}} {
		switch {
		case one.l == 0:
			return fmt.Errorf("photo: %s: %w", one.name, units.ErrNotGiven)
		case one.l < 0 || one.l > units.MaxLength:
			return fmt.Errorf("photo: %s %v: %w: want above 0, up to %v", one.name, one.l, units.ErrRange, units.MaxLength)
		}
	}
	switch {
	case s.Label.Round > s.Bore:
		return fmt.Errorf("photo: label of %v round a bore of %v: %w: want no more than the bore", s.Label.Round, s.Bore, units.ErrRange)
	case !(s.Marking >= 0 && s.Marking < 100):
		return fmt.Errorf("photo: corners marked to %v pixels: %w: want 0 for %v, or below 100", s.Marking, units.ErrRange, usualMarking)
	case !(s.Focal >= 0 && s.Focal < 1e6):
		return fmt.Errorf("photo: focal length of %v pixels: %w: want 0 for not known, or below a million", s.Focal, units.ErrRange)
	}
	return nil
}

// sight puts what was given into the pixels of g.
func (s Shot) sight(g *grey) (*sight, error) {
	marking := s.Marking
	if marking == 0 {
		marking = usualMarking
	}
	out := &sight{radius: s.Bore.In(units.Millimetre) / 2, marking: marking / g.step}
	for i, q := range s.Corners {
		out.corners[i] = Pixel{q.X / g.step, q.Y / g.step}
	}
	if err := checkCorners(out.corners, float64(g.w), float64(g.h)); err != nil {
		return nil, err
	}
	r, a := s.Label.Round.In(units.Millimetre)/2, s.Label.Along.In(units.Millimetre)/2
	for i, at := range [4][2]float64{{-r, a}, {r, a}, {r, -a}, {-r, -a}} {
		out.places[i] = onWall(out.radius, at[0], at[1])
	}
	side := float64(max(g.w, g.h))
	out.logFocal, out.focalStd = math.Log(usualFocal*side), focalDoubt
	if s.Focal > 0 {
		out.logFocal, out.focalStd = math.Log(s.Focal/g.step), knownFocal
	}
	out.mid, out.midStd = Pixel{float64(g.w) / 2, float64(g.h) / 2}, cropMiddle*side
	out.corner = math.Hypot(out.mid.X, out.mid.Y)
	if s.Whole {
		out.midStd = wholeMiddle * side
	}
	return out, nil
}
