// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/surface"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
	"borewright.example/units"
)

// An Engine is what the maker and the first look say.
type Engine struct {
	Cylinders int           `json:"cylinders" needs:"a whole number from 1 to 64" most:"64"` // how many, all of them listed
	Cycle     Cycle         `json:"cycle" needs:"two-stroke or four-stroke"`
	Bore      units.Length  `json:"bore" needs:"a length above 0, up to 1 m" want:"wide"` // nominal
	Stroke    units.Length  `json:"stroke" needs:"a length above 0, up to 5 m" want:"far" usual:"stroke"`
	Wall      oversize.Wall `json:"wall" needs:"bare iron, iron sleeve, plated or bare Al-Si"`
	// Material of the cylinder, or of the sleeve in it; Barrel is what stands around a sleeve.
	Material Metal `json:"material,omitzero" want:"metal"`
	Barrel   Metal `json:"barrel,omitzero" want:"metal"`
	// Layout is where things lie along the bore: its length, ring travel, ports.
	Layout bore.Layout `json:"layout,omitzero"`
	// At most one of the three: the space above the piston of one cylinder part by part, its
	// volume, or the ratio it gives at the nominal bore.
	Chamber          oversize.Chamber `json:"chamber,omitzero"` // without the gasket's hole, which is GasketHole
	ClearanceVolume  units.Volume     `json:"clearance_volume,omitzero" want:"volume"`
	CompressionRatio float64          `json:"compression_ratio,omitzero" want:"ratio" usual:"ratio"`
	Limits           Limits           `json:"limits,omitzero"`
	// Duty is the kind of piston and cooling, for the clearances that rules of thumb give.
	Duty           fit.Duty `json:"duty,omitzero"`
	PistonMaterial Metal    `json:"piston_material,omitzero" want:"metal"` // left out, the aluminium of pistons
	Rings          []Ring   `json:"rings,omitzero" most:"12"`
	// Texture is what the rings want of the finished wall, of its mean over the places read.
	Texture surface.Limits `json:"texture,omitzero"`
	// Aim is where in its window a bore is cut to; left out, the middle.
	Aim fit.Aim `json:"aim,omitzero"`
	// Oversizes are the sizes that can be had, smallest first. An empty list says that there is none; left
	// out, nobody has asked yet.
	Oversizes []Oversize `json:"oversizes,omitzero" most:"64"`
	// Running temperatures, for end gaps and clearances when hot.
	Running Running `json:"running,omitzero"`
	// Sleeve is what is to be fitted where no size on offer serves.
	Sleeve Sleeve `json:"sleeve,omitzero"`
	// OneSize says that the cylinders of an engine of several share a size, or that each may have its own.
	OneSize *bool `json:"one_size,omitempty"`
	// HoningAllowance is left on the diameter by boring, for the hone.
	HoningAllowance units.Length `json:"honing_allowance,omitzero" want:"small" usual:"allowance"`
	// GasketHole is the hole of the head gasket to be fitted: no finished bore may be larger.
	GasketHole units.Length `json:"gasket_hole,omitzero" want:"near"`
	// MayShift is how far the axis of a bore may move, radial; "0 mm" is not at all.
	MayShift *units.Length `json:"may_shift,omitempty" want:"small" usual:"shift"`
}

// ownSizes reports whether each cylinder may have its own size.
func (e Engine) ownSizes() bool { return e.OneSize != nil && !*e.OneSize || e.Cylinders == 1 }

// Limits are the maker's, each optional.
type Limits struct {
	NewBore           units.Limits `json:"new_bore,omitzero" want:"window,near" usual:"new"`                // every diameter of a new bore
	Service           units.Length `json:"service,omitzero" want:"near" usual:"service"`                    // the largest diameter allowed, worn
	Ovality           units.Length `json:"ovality,omitzero" want:"small" usual:"form"`                      // greatest minus least in one plane
	Taper             units.Length `json:"taper,omitzero" want:"small" usual:"form"`                        // along one axis, from end to end of ring travel
	TaperAtDeck       bool         `json:"taper_at_deck,omitzero"`                                          // the limit is on a bore larger at the deck alone; left out, either way
	Choke             units.Limits `json:"choke,omitzero" want:"small"`                                     // wanted: smaller at the deck, cold
	GreatestLessLeast units.Length `json:"greatest_less_least,omitzero" want:"small" usual:"form"`          // of all diameters
	PistonClearance   units.Limits `json:"piston_clearance,omitzero" want:"window,small" usual:"clearance"` // diametral, at 20 °C, of a fresh bore
	WornClearance     units.Length `json:"worn_clearance,omitzero" want:"small" usual:"worn"`               // the most that a kept bore may have
	GreatestOverbore  units.Length `json:"greatest_overbore,omitzero" want:"small" usual:"over"`            // over nominal
	LeastWall         units.Length `json:"least_wall,omitzero" want:"wide" usual:"wall"`                    // left at the thinnest place
	// Of the wall that goes together, as traces show it; left out, nobody asks.
	Roundness    units.Length `json:"roundness,omitzero" want:"small" usual:"round"`    // RONt of the minimum zone, at every depth
	Cylindricity units.Length `json:"cylindricity,omitzero" want:"small" usual:"round"` // CYLt of the minimum zone
	// Of a bore that has been bored or honed to size; left out, Ovality and Taper.
	FinishOvality units.Length `json:"finish_ovality,omitzero" want:"small" usual:"finish"`
	FinishTaper   units.Length `json:"finish_taper,omitzero" want:"small" usual:"finish"`
}

// Running has mean temperatures in work; one without a half-width is known to ± 20 K.
type Running struct {
	Ring   bore.Temperature `json:"ring,omitzero" want:"valid" usual:"running"`   // of the ring, where it runs hottest
	Bore   bore.Temperature `json:"bore,omitzero" want:"valid" usual:"running"`   // of the bore there
	Piston bore.Temperature `json:"piston,omitzero" want:"valid" usual:"running"` // of the skirt
	// PistonByWindow and RingsByWindow say instead that the maker's windows at 20 °C stand for the running ones,
	// as most manuals mean them to.
	PistonByWindow bool `json:"piston_by_window,omitzero"`
	RingsByWindow  bool `json:"rings_by_window,omitzero"`
}

// A Ring is one ring of each piston, from the top, with its limits.
type Ring struct {
	Name     string       `json:"name"`                                              // such as "top"; no two alike
	Gap      units.Limits `json:"gap,omitzero" want:"window,small" usual:"gap"`      // window for a new ring
	GapLimit units.Length `json:"gap_limit,omitzero" want:"small" usual:"gap limit"` // the largest gap in service
	Side     units.Limits `json:"side,omitzero" want:"window,small" usual:"side"`    // its axial play in its groove, new or as the maker allows it worn
	Facing   string       `json:"facing,omitzero"`                                   // what runs on the wall: "plain iron", "chromium" or "molybdenum", for the grit
	Material Metal        `json:"material,omitzero" want:"metal"`                    // left out, grey iron
	// Section and free gap, from which it follows whether the ring follows the bore.
	Thickness units.Length `json:"thickness,omitzero" want:"inside"`              // radial
	Height    units.Length `json:"height,omitzero" want:"inside"`                 // axial
	FreeGap   units.Length `json:"free_gap,omitzero" want:"inside"`               // of the ring lying on the bench
	HotGap    units.Length `json:"hot_gap,omitzero" want:"small" usual:"hot gap"` // the least to be left when running
	// Of a pegged ring: the direction of the middle of its gap, once round from one end of the thrust
	// axis, and how far it can turn about its peg, along the wall.
	Peg  *units.Angle  `json:"peg,omitempty"`
	Play *units.Length `json:"play,omitempty" want:"small" usual:"play"`
}

// An Oversize is one size on offer.
type Oversize struct {
	Over units.Length `json:"over" needs:"how much over nominal" want:"small" usual:"over"` // on the diameter
	// MakersList says that the engine's maker lists this size.
	MakersList bool `json:"makers_list,omitzero"`
	// Piston for this size as its supplier states it: enough to choose by, not to cut by.
	Piston Piston `json:"piston,omitzero"`
	// Pistons are those that came for this size, each measured, to be matched to the finished bores.
	Pistons []Piston `json:"pistons,omitzero" most:"64"`
}

// A Piston is a skirt as measured, at 20 °C.
type Piston struct {
	Size        Measured      `json:"size" needs:"the skirt's diameter" want:"measured,near" usual:"doubt"` // diameter of the skirt
	Axis        fit.SkirtAxis `json:"axis,omitzero"`                                                        // in which it was measured
	Height      units.Length  `json:"height,omitzero" want:"far"`                                           // of the measured place above the skirt's edge
	MakerHeight units.Length  `json:"maker_height,omitzero" want:"far"`                                     // at which the maker says to measure
	Coating     *units.Length `json:"coating,omitempty" want:"small" usual:"coating"`                       // on one side, that the maker's clearance does not count; "0 mm" where it has none
	// WithStandard says that it was measured with the micrometer on which the gauge was set: then what that
	// micrometer is off cancels in the clearance.
	WithStandard bool `json:"with_standard,omitzero"`
}

// Cycle is how many strokes make a working cycle.
type Cycle int8

// Cycles. Not given is refused: a two-stroke has ports and pegged rings.
const (
	_ Cycle = iota // not given
	TwoStroke
	FourStroke
)

var cycleNames = []string{"", "two-stroke", "four-stroke"}

// String returns "two-stroke", "four-stroke" or "".
func (c Cycle) String() string { return enum.Name(c, cycleNames) }

// MarshalText returns the text of [Cycle.String].
func (c Cycle) MarshalText() ([]byte, error) { return enum.Marshal(c, cycleNames) }

// UnmarshalText reads "two-stroke" or "four-stroke". On error the receiver keeps its value.
func (c *Cycle) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, cycleNames)
}

// has reports whether there is a piston.
func (p Piston) has() bool { return !p.Size.isZero() }

// ring returns what the job says of a ring; every name among the cylinders' rings is one of the engine's.
func (e Engine) ring(name string) Ring {
	for _, r := range e.Rings {
		if r.Name == name {
			return r
		}
	}
	return Ring{}
}
