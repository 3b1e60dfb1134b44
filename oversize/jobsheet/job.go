// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"encoding/json"
	"fmt"
	"io"
	"reflect"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
	"borewright.example/units"
)

// A Job is what is known when an engine's cylinders come to the bench. In JSON the fields have
// the names given here; lengths and other quantities are texts with a unit, and inch and metric
// mix freely. A field that is left out is not known.
type Job struct {
	Title     string     `json:"title,omitzero"` // printed at the head of the sheet
	Units     Shown      `json:"units,omitzero"` // to print in; left out, those of the job
	Engine    Engine     `json:"engine"`
	Gauge     Gauge      `json:"gauge"`
	Cylinders []Cylinder `json:"cylinders"`
	Tools     Tools      `json:"tools,omitzero"`
	Cuts      Cuts       `json:"cuts,omitzero"`
	Risk      Risk       `json:"risk,omitzero"`
}

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
	// One of the two: the volume above the piston of one cylinder, or the ratio it gives.
	ClearanceVolume  units.Volume `json:"clearance_volume,omitzero"`
	CompressionRatio float64      `json:"compression_ratio,omitzero"`
	Limits           Limits       `json:"limits,omitzero"`
	Rings            []Ring       `json:"rings,omitzero"`
	Oversizes        []Oversize   `json:"oversizes,omitzero"` // the sizes on offer, smallest first
	// Running temperatures, for the end gap when hot.
	Running Running `json:"running,omitzero"`
	// Sleeve is what is to be fitted where no size on offer serves.
	Sleeve Sleeve `json:"sleeve,omitzero"`
	// OwnSizes lets each cylinder have its own size; otherwise all share one.
	OwnSizes bool `json:"own_sizes,omitzero"`
	// HoningAllowance is left on the diameter by boring, for the hone.
	HoningAllowance units.Length `json:"honing_allowance,omitzero"`
	// GasketHole of the head gasket: no finished bore may be larger.
	GasketHole units.Length `json:"gasket_hole,omitzero"`
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
}

// Running has the mean temperatures of ring and bore where the ring runs hottest.
type Running struct {
	Ring bore.Temperature `json:"ring"` // of the ring
	Bore bore.Temperature `json:"bore"` // of the bore
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
}

// An Oversize is one size on offer.
type Oversize struct {
	Over   units.Length `json:"over"`            // over nominal
	Piston Piston       `json:"piston,omitzero"` // for this size, measured or as its supplier states it
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

// A Gauge is the instrument and the way it was used.
type Gauge struct {
	Kind          bore.Kind    `json:"kind"`                   // left out, two-point
	Resolution    units.Length `json:"resolution"`             // smallest step that is read
	Repeatability units.Length `json:"repeatability,omitzero"` // standard deviation of one reading; left out, repeats give it
	DialError     units.Length `json:"dial_error,omitzero"`    // greatest, over the travel used
	Dial          bore.Dial    `json:"dial,omitzero"`          // needed where deviations are read
	Material      Metal        `json:"material,omitzero"`
	Standard      Standard     `json:"standard,omitzero"`
	Temperatures  Temperatures `json:"temperatures"`
}

// A Standard is what the gauge was set to.
type Standard struct {
	Name        string       `json:"name,omitzero"`        // such as the number on a setting ring
	Size        units.Length `json:"size"`                 // at 20 °C
	Uncertainty units.Length `json:"uncertainty,omitzero"` // expanded, k = 2
	Material    Metal        `json:"material,omitzero"`
}

// Temperatures has every temperature that takes part. One that nobody measured is written as
// the range it must have been in, "10 to 25 °C", and so finds its way into the doubt.
type Temperatures struct {
	Standard     bore.Temperature        `json:"standard,omitzero"`   // the setting standard, while the gauge was set
	GaugeSet     bore.Temperature        `json:"gauge_set,omitzero"`  // the gauge, while it was set
	GaugeUsed    bore.Temperature        `json:"gauge_used,omitzero"` // the gauge, while it measured
	Cylinder     bore.Temperature        `json:"cylinder,omitzero"`
	PlaceToPlace units.TemperatureChange `json:"place_to_place,omitzero"` // half-width of differences along the wall
}

// A Cylinder is one bore with what belongs to it.
type Cylinder struct {
	Name      string       `json:"name"`          // as it stands on the sheet; no two alike
	Over      units.Length `json:"over,omitzero"` // the size it stands at, over nominal
	Readings  []Reading    `json:"readings"`
	Piston    Piston       `json:"piston,omitzero"`     // the one in hand for it
	PistonFor units.Length `json:"piston_for,omitzero"` // the size that piston is for, over nominal; left out, Over
	Rings     []RingGap    `json:"rings,omitzero"`
	// ThinnestWall is the thinnest wall as measured, not as drawn.
	ThinnestWall    units.Length `json:"thinnest_wall,omitzero"`
	WallUncertainty units.Length `json:"wall_uncertainty,omitzero"` // expanded, k = 2
	// Pit is the depth of the deepest score or pit: gauge anvils bridge it.
	Pit units.Length `json:"pit,omitzero"`
	// Honing is how far the honing to size has got; it grows as the passes are made.
	Honing Honed `json:"honing,omitzero"`
	// Peeling is a plating that lifts, or bare metal that shows.
	Peeling bool `json:"peeling,omitzero"`
}

// A Reading is one diameter: as read, or as the dial's deviation from the setting standard.
type Reading struct {
	Depth     units.Length `json:"depth"` // from the deck
	Axis      Axis         `json:"axis"`
	Diameter  units.Length `json:"diameter,omitzero"`
	Deviation *Deviation   `json:"deviation,omitempty"`
	Confirmed bool         `json:"confirmed,omitzero"` // taken again and right, though far from the others
}

// A Deviation is what a dial shows, plus or minus. It is a type of its own because zero is a
// reading like any other.
type Deviation struct{ units.Length }

// A RingGap is a ring's end gap as measured.
type RingGap struct {
	Ring        string       `json:"ring"`                 // the name of one of the engine's rings
	Gap         units.Length `json:"gap"`                  // end gap, at 20 °C
	Uncertainty units.Length `json:"uncertainty,omitzero"` // expanded, k = 2
	Bore        units.Length `json:"bore"`                 // diameter of the bore or ring gauge it was measured in
}

// Tools are what is on hand for honing.
type Tools struct {
	Hone       hone.Kind    `json:"hone,omitzero"`        // kind of hone; its cautions depend on it
	Drive      hone.Drive   `json:"drive,omitzero"`       // by hand or by machine
	Grit       int          `json:"grit,omitzero"`        // of the abrasive, for the record
	ToolLength units.Length `json:"tool_length,omitzero"` // of the abrasive
	BoreLength units.Length `json:"bore_length,omitzero"`
	Stroke     units.Length `json:"stroke,omitzero"` // one way; left out, it follows from the lengths and the room
	// Room is what is free beyond each end of the bore, 0 at a closed one; overtravel is how much
	// of the tool stands out there at the end of a stroke; left out at both ends, what is usual
	// for the kind of hone.
	RoomTop          units.Length `json:"room_top,omitzero"`
	RoomBottom       units.Length `json:"room_bottom,omitzero"`
	OvertravelTop    units.Length `json:"overtravel_top,omitzero"`
	OvertravelBottom units.Length `json:"overtravel_bottom,omitzero"`

	Crosshatch hone.Crosshatch `json:"crosshatch,omitzero"` // wanted; its text names the convention
	Tolerance  units.Angle     `json:"tolerance,omitzero"`  // either side, on the included angle; left out, 5°

	Spindle  hone.SpindleRange  `json:"spindle,omitzero"`  // what the drill or machine can turn
	Stroking hone.StrokingRange `json:"stroking,omitzero"` // what the hand or machine can hold

	// Pressing is how the abrasive is pressed on; where the metal goes depends on it.
	Pressing hone.Pressing `json:"pressing,omitzero"`
	// The first pass, while nothing is known of the rate, and the longest of any.
	TrialPass   Duration `json:"trial_pass,omitzero"`
	LongestPass Duration `json:"longest_pass,omitzero"`

	// The setting that is meant to be used, if there is one already.
	SpindleNow  units.Frequency `json:"spindle_now,omitzero"`
	StrokingNow hone.Stroking   `json:"stroking_now,omitzero"`
}

// Cuts is how the stock is to be divided, on the diameter where nothing else is said. What is
// left out is not done.
type Cuts struct {
	MostDepth  units.Length    `json:"most_depth"`           // greatest depth of a rough cut, radial
	FinishBore units.Length    `json:"finish_bore,omitzero"` // stock of the last cut
	FinishHone units.Length    `json:"finish_hone,omitzero"` // stock of finish honing
	Plateau    units.Length    `json:"plateau,omitzero"`     // stock of plateau honing
	BothEnds   bool            `json:"both_ends,omitzero"`   // rings enter from below too
	Length     units.Length    `json:"length,omitzero"`      // to be bored, with run-in and run-out
	Feed       units.Length    `json:"feed,omitzero"`        // a turn
	Spindle    units.Frequency `json:"spindle,omitzero"`     // of the boring bar
}

// Risk is the chance of a wrong finding that is accepted, for the whole engine.
type Risk struct {
	Accept float64 `json:"accept,omitzero"` // probability of calling within what is beyond; left out, 0.05
	Reject float64 `json:"reject,omitzero"` // probability of calling beyond what is within; left out, 0.05
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

// An Axis is the direction of a reading, from the thrust axis: "thrust", "pin" or "45°".
type Axis struct{ units.Angle }

// MarshalText returns "thrust", "pin" or the angle.
func (a Axis) MarshalText() ([]byte, error) {
	switch a.Angle {
	case bore.ThrustAxis:
		return []byte("thrust"), nil
	case bore.PinAxis:
		return []byte("pin"), nil
	}
	return a.Angle.MarshalText()
}

// UnmarshalText reads an axis as [bore.ParseAxis] does. On error the receiver keeps its value.
func (a *Axis) UnmarshalText(text []byte) error {
	v, err := bore.ParseAxis(string(text))
	if err != nil {
		return fmt.Errorf(`want "thrust", "pin" or an angle such as "45°"`)
	}
	a.Angle = v
	return nil
}

// ReadJob reads a job from JSON of at most 1 MiB, strictly, and checks it. Where anything is
// wrong the error is [Faults]: every fault with its path, its value and what was
// allowed. An error of r comes back wrapped, as no fault of the job.
func ReadJob(r io.Reader) (Job, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return Job{}, fmt.Errorf("jobsheet: reading a job: %w", err)
	}
	root, fs, whole := readTree(data)
	if !whole {
		return Job{}, fs
	}
	var j Job
	decode(root, reflect.ValueOf(&j).Elem(), &fs)
	if err := j.check(fs); err != nil {
		return Job{}, err
	}
	if _, err := j.sheet(); err != nil { // what only the rooms can see
		return Job{}, err
	}
	if j.Units == ShownAsWritten {
		j.Units = written(root)
	}
	return j, nil
}

// clone returns the job with slices of its own.
func (j Job) clone() Job {
	j.Engine.Rings = slices.Clone(j.Engine.Rings)
	j.Engine.Oversizes = slices.Clone(j.Engine.Oversizes)
	j.Cylinders = slices.Clone(j.Cylinders)
	for i := range j.Cylinders {
		c := &j.Cylinders[i]
		c.Rings = slices.Clone(c.Rings)
		c.Honing.Passes = slices.Clone(c.Honing.Passes)
		c.Readings = slices.Clone(c.Readings)
		for k := range c.Readings {
			if d := c.Readings[k].Deviation; d != nil {
				c.Readings[k].Deviation = &Deviation{d.Length}
			}
		}
	}
	return j
}

// WriteJSON writes the job as [ReadJob] reads it. An error is the writer's, or that of a number
// that JSON cannot hold, such as NaN.
func (j Job) WriteJSON(w io.Writer) error { return writeJSON(w, j) }

func writeJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}
