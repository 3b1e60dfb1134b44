// SPDX-License-Identifier: BSD-3-Clause

// Package texture has the texture of a wall as instruments hand it over, profiles or parameters.
//
// It says whether all of a profile is there, since a point that was lost or slipped shifts what the texture comes to, which
// filter goes with it, and what it shows; and of two textures whether they are one written down twice, or too far apart to be
// of one place. The arithmetic is that of package surface.
package texture

import (
	"fmt"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// A Profile is a line along a wall: heights at equal spacing, or points.
type Profile struct {
	Place   string          // on the wall
	CutOff  units.Length    // λc of the mean line in two steps (ISO 13565-1)
	Length  units.Length    // from the first point to the last, as it was written down
	Spacing units.Length    // of Heights
	Heights []units.Length  // positive out of the material
	Points  []surface.Point // instead of Heights and Spacing
}

// What goes together: the cut-offs of ISO 13565-1 with λs of ISO 21920-3 (both from memory). How close points stand at the
// least is this library's own: a groove of 30 µm shows by three of them.
const (
	fineCutOff   = 800 * units.Micrometre
	coarseCutOff = 2500 * units.Micrometre
	fineShort    = 2500 * units.Nanometre
	coarseShort  = 8 * units.Micrometre
	sections     = 5
	perCutOff    = 100
	mostHeight   = units.Millimetre // one from another: more is another unit
	mostPlace    = 5 * units.Metre
)

// Field is which of its two lists it has, by its name in a job.
func (p Profile) Field() string {
	if len(p.Points) > 0 {
		return "points"
	}
	return "heights"
}

func (p Profile) count() int { return len(p.Heights) + len(p.Points) }

// step is the mean distance of neighbours, of a profile of two points or more.
func (p Profile) step() units.Length {
	if n := len(p.Points); n > 0 {
		return (p.Points[n-1].X - p.Points[0].X) / units.Length(n-1)
	}
	return p.Spacing
}

// All returns the heights alone.
func (p Profile) All() []units.Length {
	if len(p.Points) == 0 {
		return p.Heights
	}
	list := make([]units.Length, len(p.Points))
	for i, q := range p.Points {
		list[i] = q.Z
	}
	return list
}

// read returns the profile of the package that computes with it.
func (p Profile) read() (surface.Profile, error) {
	if len(p.Points) > 0 {
		return surface.FromPoints(p.Points)
	}
	return surface.FromHeights(p.Spacing, p.Heights)
}

func (p Profile) filter() surface.Filter {
	f := surface.Filter{CutOff: p.CutOff, Short: fineShort, Sections: sections}
	if p.CutOff == coarseCutOff {
		f.Short = coarseShort
	}
	if 2*p.step() > f.Short { // which such points do not show
		f.Short = 0
	}
	return f
}

// Texture returns the parameters that it shows. The errors are those of package surface.
func (p Profile) Texture() (surface.Texture, error) {
	read, err := p.read()
	if err != nil {
		return surface.Texture{}, err
	}
	return read.Texture(p.filter())
}

// Roughness returns the profile that its five numbers are of. The errors are those of package surface.
func (p Profile) Roughness() (surface.Roughness, error) {
	read, err := p.read()
	if err != nil {
		return surface.Roughness{}, err
	}
	return read.TwoStep(p.filter())
}

// A Fault is what is wrong with a profile.
type Fault struct {
	At    string // the field, "points[3].x"
	Value any    // that stands there; nil where nothing need be shown
	Want  error
}

// Faults returns what is wrong with a profile: it is short, a point is lost or slipped, or of another unit. What is left
// out altogether, a cut-off or a length, is not looked for.
func (p Profile) Faults() (list []Fault) {
	fault := func(at string, value any, want string, args ...any) {
		list = append(list, Fault{at, value, fmt.Errorf(want, args...)})
	}
	n := p.count()
	switch {
	case p.CutOff == 0:
		return nil
	case p.CutOff != fineCutOff && p.CutOff != coarseCutOff:
		fault("cut_off", p.CutOff, "want %v or %v", fineCutOff, coarseCutOff)
	case len(p.Heights) > 0 && len(p.Points) > 0:
		fault(p.Field(), nil, "want either these or heights, not both")
	case len(p.Points) > 0 && p.Spacing != 0:
		fault("spacing", p.Spacing, "points have places: want it with heights alone")
	case n < 2:
		fault(p.Field(), n, "missing: want the heights, or points")
	case len(p.Points) == 0 && p.Spacing <= 0:
		fault("spacing", p.Spacing, "missing: want how far apart the heights are, above 0")
	}
	if list != nil {
		return list
	}
	step := p.step()
	for i, q := range p.Points {
		if q.X.Abs() > mostPlace {
			fault(fmt.Sprintf("points[%d].x", i), q.X, "want at most %v", mostPlace)
			return list
		}
	}
	for i, q := range p.Points { // to a hundredth of a step, and what its rounding adds up to
		if off := q.X - p.Points[0].X - step*units.Length(i); off.Abs() > step/100+units.Length(n-1) {
			fault(fmt.Sprintf("points[%d].x", i), q.X, "want equal steps, of %v from the first to the last: is one lost, or slipped?", step)
			return list
		}
	}
	most, is, least := p.CutOff/perCutOff, step*units.Length(n-1), sections*p.CutOff
	switch {
	case step > most || step <= 0:
		fault(p.Field(), step, "so far apart: want at most %v for this cut-off", most)
		return list
	case p.Length != 0 && (is-p.Length).Abs() > step/2:
		fault("length", p.Length, "%d points %v apart are %v long: is one lost?", n, step, is)
		return list
	case step*units.Length(n) < least:
		fault("length", p.Length, "want five cut-offs, %v, or more", least)
	}
	zs := p.All()
	for k, z := range zs {
		if z.Abs() > mostPlace || (z-zs[0]).Abs() > mostHeight {
			fault(fmt.Sprintf("%s[%d]", p.Field(), k), z, "want it within %v of the first", mostHeight)
			return list
		}
	}
	return list
}
