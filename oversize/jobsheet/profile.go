// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/bore/surface"
	"borewright.example/oversize/jobsheet/internal/sense"
	"borewright.example/oversize/jobsheet/internal/slips"
	"borewright.example/units"
)

// A Profile is the texture of the finished wall along a line at one place, as an instrument exports it before any filter:
// heights at equal spacing, or points. The sheet works the parameters out by itself, and takes them as it takes those
// that an instrument shows.
type Profile struct {
	Place string `json:"place" needs:"where on the wall it was taken"` // repeats at one place have its name
	// CutOff is λc of the mean line in two steps (ISO 13565-1). Five such lengths in the middle of the profile are
	// evaluated, less what is shorter than the λs that goes with it, 2.5 or 8 µm, where the points are near enough to show it.
	CutOff units.Length `json:"cut_off" needs:"\"0.8 mm\", or \"2.5 mm\" for a coarse wall"`
	// Length is from the first point to the last: by it a point that is lost is missed.
	Length  units.Length    `json:"length" needs:"how far it is from the first point to the last"`
	Spacing units.Length    `json:"spacing,omitzero"`               // of Heights
	Heights []units.Length  `json:"heights,omitzero" most:"100000"` // positive out of the material, towards the axis of the bore
	Points  []surface.Point `json:"points,omitzero" most:"100000"`  // instead of Heights and Spacing
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
)

// read returns the profile of the package that computes with it.
func (p Profile) read() (surface.Profile, error) {
	if len(p.Points) > 0 {
		return surface.FromPoints(p.Points)
	}
	return surface.FromHeights(p.Spacing, p.Heights)
}

// roughness returns the profile that its five numbers are of.
func (p Profile) roughness() (surface.Roughness, error) {
	read, err := p.read()
	if err != nil {
		return surface.Roughness{}, err
	}
	return read.TwoStep(p.filter())
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

// field is which of its two lists it has.
func (p Profile) field() string {
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

// heights returns the heights alone.
func (p Profile) heights() []units.Length {
	if len(p.Points) == 0 {
		return p.Heights
	}
	list := make([]units.Length, len(p.Points))
	for i, q := range p.Points {
		list[i] = q.Z
	}
	return list
}

// profiled returns what profiles show, each at its place.
func profiled(path string, ps []Profile) ([]surface.Reading, error) {
	var all []surface.Reading
	for i, p := range ps {
		read, err := p.read()
		var t surface.Texture
		if err == nil {
			t, err = read.Texture(p.filter())
		}
		if err != nil {
			return nil, fault(fmt.Sprintf("%s.profiles[%d]", path, i), err)
		}
		all = append(all, surface.Reading{Place: p.Place, Texture: t})
	}
	return all, nil
}

// profiles checks the profiles of a cylinder: that no point is lost, and none of another unit.
func (c *checker) profiles(path string, ps []Profile) {
	for i, p := range ps {
		path := fmt.Sprintf("%s[%d]", path, i)
		c.place(path+".place", p.Place)
		n, list := p.count(), path+"."+p.field()
		switch {
		case p.CutOff == 0: // a fault by its tag
		case p.CutOff != fineCutOff && p.CutOff != coarseCutOff:
			c.fault(path+".cut_off", p.CutOff, "want %v or %v", fineCutOff, coarseCutOff)
		case len(p.Heights) > 0 && len(p.Points) > 0:
			c.fault(list, nil, "want either these or heights, not both")
		case len(p.Points) > 0 && p.Spacing != 0:
			c.fault(path+".spacing", p.Spacing, "points have places: want it with heights alone")
		case n < 2:
			c.fault(list, n, "missing: want the heights, or points")
		case len(p.Points) == 0 && p.Spacing <= 0:
			c.fault(path+".spacing", p.Spacing, "missing: want how far apart the heights are, above 0")
		case c.placed(path+".points", p.Points):
			c.line(path, list, p)
		}
	}
}

// line checks how long a profile is, whose points stand at equal steps, and how high.
func (c *checker) line(path, list string, p Profile) {
	n, step, zs := p.count(), p.step(), p.heights()
	most, is, least := p.CutOff/perCutOff, step*units.Length(n-1), sections*p.CutOff
	switch {
	case step > most || step <= 0:
		c.fault(list, step, "so far apart: want at most %v for this cut-off", most)
		return
	case p.Length != 0 && (is-p.Length).Abs() > step/2:
		c.fault(path+".length", p.Length, "%d points %v apart are %v long: is one lost?", n, step, is)
		return
	case step*units.Length(n) < least:
		c.fault(path+".length", p.Length, "want five cut-offs, %v, or more", least)
	}
	for k, z := range zs {
		if z.Abs() > sense.LargestDepth || (z-zs[0]).Abs() > mostHeight {
			c.fault(fmt.Sprintf("%s[%d]", list, k), z, "want it within %v of the first", mostHeight)
			return
		}
	}
}

// placed reports whether points stand at equal steps, to a hundredth of one, and notes the first that does not.
func (c *checker) placed(path string, ps []surface.Point) bool {
	for i, p := range ps {
		if p.X.Abs() > sense.LargestDepth {
			c.fault(fmt.Sprintf("%s[%d].x", path, i), p.X, "want at most %v", sense.LargestDepth)
			return false
		}
	}
	n, step := units.Length(len(ps)-1), Profile{Points: ps}.step()
	for i, p := range ps {
		if off := p.X - ps[0].X - step*units.Length(i); off.Abs() > step/100+n {
			c.fault(fmt.Sprintf("%s[%d].x", path, i), p.X, "want equal steps, of %v from the first to the last: is one lost, or slipped?", step)
			return false
		}
	}
	return true
}

// How far the parameters that an instrument shows at a place may lie from those of a profile there: other filters and a line
// beside it are worth some of that, a point that is moved is not. This library's own judgement.
const (
	mostTimes = 1.5
	mostShare = 0.10
)

// profiles holds the profiles of a cylinder against those before them, each height against the rest, and the parameters that
// were read at a place against those of the profile there.
func (s *slipper) profiles(i int) {
	c := s.job.Cylinders[i]
	for m, p := range c.Profiles {
		path := fmt.Sprintf("cylinders[%d].profiles[%d]", i, m)
		s.lone(path, p)
		zs := p.heights()
		k, l, copied := s.before(i, m, func(c Cylinder) int { return len(c.Profiles) }, func(k, l int) bool {
			q := s.job.Cylinders[k].Profiles[l]
			if k == i && plainName(p.Place) == plainName(q.Place) { // where a line may be traced twice, not read alike
				return slices.Equal(zs, q.heights())
			}
			return slips.OneLine(zs, q.heights())
		})
		if copied {
			s.ask(path, among(len(zs), "heights", zs), "they are those of cylinders[%d].profiles[%d] too: copied for the wrong place?", k, l)
		}
		for k, r := range c.Texture {
			if plainName(r.Place) == plainName(p.Place) {
				s.apart(fmt.Sprintf("cylinders[%d].texture[%d].texture", i, k), r.Texture, s.job.profiled[i][m].Texture)
			}
		}
	}
}

// lone asks about a height that stands further out than all others are apart.
func (s *slipper) lone(path string, p Profile) {
	zs := p.heights()
	for _, out := range slips.Lone(zs) {
		s.ask(fmt.Sprintf("%s.%s[%d]", path, p.field(), out.At), zs[out.At],
			"it stands out of all others by more than they are apart, %v: a scratch, or a slip?", out.Off)
	}
}

// apart asks about parameters that an instrument shows at a place of which a profile shows others.
func (s *slipper) apart(path string, read, shown surface.Texture) {
	for _, v := range [...]struct {
		name        string
		read, shown units.Length
	}{{"ra", read.Ra, shown.Ra}, {"rq", read.Rq, shown.Rq}, {"rpk", read.Rpk, shown.Rpk}, {"rk", read.Rk, shown.Rk}, {"rvk", read.Rvk, shown.Rvk}} {
		most := float64(min(v.read, v.shown)) * mostTimes
		s.say(path+"."+v.name, v.read, v.read == 0 || float64(max(v.read, v.shown)) <= most,
			"the profile at that place shows %s", v.shown.Format(units.Micrometre, 3))
	}
	for _, v := range [...]struct {
		name        string
		read, shown float64
	}{{"mr1", read.Mr1, shown.Mr1}, {"mr2", read.Mr2, shown.Mr2}} {
		s.say(path+"."+v.name, v.read, v.read == 0 || math.Abs(v.read-v.shown) <= mostShare,
			"the profile at that place shows %.3f", v.shown)
	}
}
