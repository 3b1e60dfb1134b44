// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore/surface"
	"borewright.example/oversize/jobsheet/internal/slips"
	"borewright.example/oversize/jobsheet/internal/texture"
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

// line is a profile as package texture has it.
func (p Profile) line() texture.Profile { return texture.Profile(p) }

// profiled returns what profiles show, each at its place.
func profiled(path string, ps []Profile) (all []surface.Reading, err error) {
	for i, p := range ps {
		t, err := p.line().Texture()
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
		path := fmt.Sprintf("%s[%d].", path, i)
		c.place(path+"place", p.Place)
		for _, f := range p.line().Faults() {
			c.doc.Fault(path+f.At, f.Value, f.Want)
		}
	}
}

// profiles holds each height of a cylinder's profiles against the rest, and the parameters that were read at a place against
// those of the profile there.
func (s *slipper) profiles(i int) {
	c := s.job.Cylinders[i]
	for m, p := range c.Profiles {
		path := fmt.Sprintf("cylinders[%d].profiles[%d]", i, m)
		zs := p.line().All()
		for _, out := range slips.Lone(zs) {
			s.ask(fmt.Sprintf("%s.%s[%d]", path, p.line().Field(), out.At), zs[out.At],
				"it stands out of all others by more than they are apart, %v: a scratch, or a slip?", out.Off)
		}
		for k, r := range c.Texture {
			if plainName(r.Place) == plainName(p.Place) {
				for _, d := range texture.Apart(r.Texture, s.job.profiled[i][m].Texture) {
					s.ask(fmt.Sprintf("cylinders[%d].texture[%d].texture.%s", i, k, d.Name), d.Read, "the profile at that place shows %s", d.Shown)
				}
			}
		}
	}
}
