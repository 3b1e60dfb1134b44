// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
	"borewright.example/units"
)

// An Engine is what the maker and the first look say.
type Engine struct {
	Cylinders int           `json:"cylinders"` // how many: 1 to 64, all of them listed
	Cycle     Cycle         `json:"cycle"`     // two-stroke or four-stroke
	Bore      units.Length  `json:"bore"`      // nominal
	Stroke    units.Length  `json:"stroke"`
	Wall      oversize.Wall `json:"wall"`
	// Material of the cylinder, or of the sleeve in it; Barrel is what stands around a sleeve.
	Material Metal `json:"material,omitzero"`
	Barrel   Metal `json:"barrel,omitzero"`
	// Layout is where things lie along the bore: its length, ring travel, ports.
	Layout bore.Layout `json:"layout,omitzero"`
	// At most one of the three: the space above the piston of one cylinder part by part, its
	// volume, or the ratio it gives at the nominal bore.
	Chamber          Chamber      `json:"chamber,omitzero"`
	ClearanceVolume  units.Volume `json:"clearance_volume,omitzero"`
	CompressionRatio float64      `json:"compression_ratio,omitzero"`
	Limits           Limits       `json:"limits,omitzero"`
	// Duty is the kind of piston and cooling, for the clearances that rules of thumb give.
	Duty           fit.Duty   `json:"duty,omitzero"`
	PistonMaterial Metal      `json:"piston_material,omitzero"` // left out, the aluminium of pistons
	Rings          []Ring     `json:"rings,omitzero"`
	Oversizes      []Oversize `json:"oversizes,omitzero"` // the sizes on offer, smallest first
	// Running temperatures, for end gaps and clearances when hot.
	Running Running `json:"running,omitzero"`
	// Sleeve is what is to be fitted where no size on offer serves.
	Sleeve Sleeve `json:"sleeve,omitzero"`
	// OwnSizes lets each cylinder have its own size; otherwise all share one.
	OwnSizes bool `json:"own_sizes,omitzero"`
	// HoningAllowance is left on the diameter by boring, for the hone.
	HoningAllowance units.Length `json:"honing_allowance,omitzero"`
	// GasketHole of the head gasket: no finished bore may be larger. Left out, it grows with the bore.
	GasketHole units.Length `json:"gasket_hole,omitzero"`
	// MayShift is how far the axis of a bore may move, radial; left out, not at all.
	MayShift units.Length `json:"may_shift,omitzero"`
}

// Limits are the maker's, each optional.
type Limits struct {
	NewBore           units.Limits `json:"new_bore,omitzero"`            // every diameter of a new bore
	Service           units.Length `json:"service,omitzero"`             // the largest diameter allowed, worn
	Ovality           units.Length `json:"ovality,omitzero"`             // greatest minus least in one plane
	Taper             units.Length `json:"taper,omitzero"`               // between the uppermost and the lowest plane, one axis
	GreatestLessLeast units.Length `json:"greatest_less_least,omitzero"` // of all diameters
	PistonClearance   units.Limits `json:"piston_clearance,omitzero"`    // diametral, at 20 °C, of a fresh bore
	WornClearance     units.Length `json:"worn_clearance,omitzero"`      // the most that a kept bore may have
	GreatestOverbore  units.Length `json:"greatest_overbore,omitzero"`   // over nominal
	LeastWall         units.Length `json:"least_wall,omitzero"`          // left at the thinnest place
	// Of a bore that has been bored or honed to size; left out, Ovality and Taper.
	FinishOvality units.Length `json:"finish_ovality,omitzero"`
	FinishTaper   units.Length `json:"finish_taper,omitzero"`
}

// A Chamber is the space above the piston of one cylinder at top dead centre, part by part. The
// hole of the gasket is the engine's.
type Chamber struct {
	Head   units.Volume `json:"head"`            // of the head down to its face, plug or nozzle in place
	Crown  units.Volume `json:"crown,omitzero"`  // above the rim of the crown: positive a dome, negative a dish
	Deck   units.Length `json:"deck,omitzero"`   // from the rim up to the deck; negative where it stands out
	Gasket units.Length `json:"gasket,omitzero"` // thickness when tightened
	// PortTop is the depth of the upper edge of the exhaust port: only above it does a two-stroke
	// compress.
	PortTop units.Length `json:"port_top,omitzero"`
}

// Running has mean temperatures in work.
type Running struct {
	Ring   bore.Temperature `json:"ring,omitzero"`   // of the ring, where it runs hottest
	Bore   bore.Temperature `json:"bore,omitzero"`   // of the bore there
	Piston bore.Temperature `json:"piston,omitzero"` // of the skirt
}

// A Ring is one ring of each piston, from the top, with its limits.
type Ring struct {
	Name     string       `json:"name"`               // such as "top"; no two alike
	Gap      units.Limits `json:"gap,omitzero"`       // window for a new ring
	GapLimit units.Length `json:"gap_limit,omitzero"` // the largest gap in service
	Material Metal        `json:"material,omitzero"`  // left out, grey iron
	// Section and free gap, from which it follows whether the ring follows the bore.
	Thickness units.Length `json:"thickness,omitzero"` // radial
	Height    units.Length `json:"height,omitzero"`    // axial
	FreeGap   units.Length `json:"free_gap,omitzero"`  // of the ring lying on the bench
	HotGap    units.Length `json:"hot_gap,omitzero"`   // the least to be left when running
	// Of a pegged ring: the direction of the middle of its gap, once round from one end of the thrust
	// axis, and how far it can turn about its peg, along the wall.
	Peg  *Peg         `json:"peg,omitempty"`
	Play units.Length `json:"play,omitzero"`
}

// A Peg is where a peg stands. It is a type of its own because 0° is a place like any other.
type Peg struct{ units.Angle }

// An Oversize is one size on offer.
type Oversize struct {
	Over   units.Length `json:"over"`            // over nominal
	Piston Piston       `json:"piston,omitzero"` // for this size, measured or as its supplier states it
	// Pistons are those that came for this size, one by one, to be matched to the finished bores.
	Pistons []Piston `json:"pistons,omitzero"`
}

// A Piston is a skirt as measured, at 20 °C.
type Piston struct {
	Size        units.Length `json:"size"`                  // diameter of the skirt
	Uncertainty units.Length `json:"uncertainty,omitzero"`  // expanded, k = 2
	Axis        fit.Axis     `json:"axis,omitzero"`         // in which it was measured
	Height      units.Length `json:"height,omitzero"`       // of the measured place above the skirt's edge
	MakerHeight units.Length `json:"maker_height,omitzero"` // at which the maker says to measure
	Coating     units.Length `json:"coating,omitzero"`      // on one side, that the maker's clearance does not count
}

// Cycle is how many strokes make a working cycle.
type Cycle int8

// Cycles. Not given is refused: a two-stroke has ports and pegged rings.
const (
	CycleNotGiven Cycle = iota
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

// ring returns what the job says of a ring; every name among the cylinders' rings is one of the engine's.
func (e Engine) ring(name string) Ring {
	for _, r := range e.Rings {
		if r.Name == name {
			return r
		}
	}
	return Ring{}
}
