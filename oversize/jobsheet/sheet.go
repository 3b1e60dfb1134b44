// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Version is the version of the sheet's JSON that this package writes.
const Version = 1

// A Sheet is a job with everything that follows from it. JSON keeps every length to the
// picometre and every other quantity to the 12 digits of its text; written again it is the same
// to the letter.
type Sheet struct {
	Version   int             `json:"version"`          // of the JSON: [Version]
	Job       Job             `json:"job"`              // what the sheet was worked out from
	Assumed   []string        `json:"assumed,omitzero"` // what the job did not say and the sheet took
	Cylinders []CylinderSheet `json:"cylinders"`        // in the order of the job
	Choice    oversize.Choice `json:"choice"`
	Honing    HoneSheet       `json:"honing,omitzero"`
	Sleeve    *SleeveSheet    `json:"sleeve,omitempty"` // where a cylinder is routed to one
	Before    Capacity        `json:"before"`           // of the whole engine, at the sizes it stands at
	After     Capacity        `json:"after,omitzero"`   // at the sizes chosen; zero where none is
	Omitted   []Omission      `json:"omitted,omitzero"`
	Checklist []string        `json:"checklist"`
	Cautions  []Caution       `json:"cautions"`
}

// A CylinderSheet is what one bore's readings say and what follows for it.
type CylinderSheet struct {
	Name     string         `json:"name"`              // of the cylinder, from the job
	Bore     bore.Geometry  `json:"bore"`              // sizes and form at 20 °C
	Findings []bore.Finding `json:"findings,omitzero"` // one for each limit given
	// Clearances of the piston in hand in the bore as it is; none where it is for another size.
	Clearances []Clearance `json:"clearances,omitzero"`
	// Remedies has, for each undecided finding, what would settle it if the value stayed.
	Remedies []Remedy     `json:"remedies,omitzero"`
	CleanUp  bore.CleanUp `json:"clean_up"`
	// Stock is what comes off, operation by operation, where the bore is bored.
	Stock []oversize.Operation `json:"stock,omitzero"`
	// Next is what the next honing pass may be, where the honing has begun.
	Next   hone.Next   `json:"next,omitzero"`
	Rings  []RingSheet `json:"rings,omitzero"`
	Before Capacity    `json:"before"`
	After  Capacity    `json:"after,omitzero"`
}

// A Remedy is what would settle an undecided finding.
type Remedy struct {
	Subject string `json:"subject"` // of the finding
	uncertainty.Remedy
}

// A Clearance is a diametral clearance of a piston, negative where the piston is the larger.
type Clearance struct {
	What string               `json:"what"` // "greatest" or "least"
	Size uncertainty.Estimate `json:"size"` // at 20 °C
}

// A RingSheet is one ring's gap in the finished bore.
type RingSheet struct {
	Ring   string               `json:"ring"` // its name, from the job
	Bore   uncertainty.Estimate `json:"bore"` // the size of the finished bore
	Gap    uncertainty.Estimate `json:"gap"`  // there; negative where the ends would overlap
	Filing rings.Filing         `json:"filing,omitzero"`
	// Doubtful says that the window is too narrow for the doubt of the gap: no reading would
	// prove anything.
	Doubtful bool                `json:"doubtful,omitzero"`
	Service  uncertainty.Finding `json:"service,omitzero"` // against the largest gap in service
	// Hot is the gap at the running temperatures, after filing; negative where the ends butt. It
	// is zero where they are not given.
	Hot uncertainty.Estimate `json:"hot,omitzero"`
	// Follows says whether the ring follows the bore where its form stays as it was read: zero
	// where that form goes, was not seen, or the ring's section is not given.
	Follows *rings.Conformity `json:"follows,omitempty"`
}

// A HoneSheet is the crosshatch: what a setting leaves, and what is on hand.
type HoneSheet struct {
	Bore   units.Length    `json:"bore"`            // diameter that the angles are worked out for
	Travel hone.Travel     `json:"travel,omitzero"` // zero where the job gives the stroke itself
	Stroke units.Length    `json:"stroke"`
	Now    hone.Setting    `json:"now,omitzero"`    // as it is meant to be set
	Leaves hone.Crosshatch `json:"leaves,omitzero"` // what Now leaves
	Reach  *hone.Reach     `json:"reach,omitempty"` // what is on hand for the wanted crosshatch
	// Removal is where the honing allowance goes along the wall; zero where the job does not say
	// enough.
	Removal hone.Removal `json:"removal,omitzero"`
	// Cautions about Now; those about what is on hand are in Reach.
	Cautions []hone.Caution `json:"cautions,omitzero"`
}

// A Capacity is the swept volume and the compression ratio that goes with it, 0 where the
// volume above the piston is not known.
type Capacity struct {
	Bore  units.Length `json:"bore,omitzero"` // zero for the whole of an engine
	Swept units.Volume `json:"swept"`
	Ratio float64      `json:"ratio,omitzero"` // compression ratio, a pure number above 1
}

// An Omission is a part of the sheet that the job did not say enough for.
type Omission struct {
	Part string `json:"part"` // what is left out
	Why  string `json:"why"`  // what the job would have to say, or what went wrong
}

// Undecided reports whether the route, or what to do about any ring, still waits for a better
// measurement. A finding that is undecided where the bore is going to be cut anyway does not
// count.
func (s Sheet) Undecided() bool {
	if s.Choice.Route == oversize.Undecided {
		return true
	}
	for _, c := range s.Cylinders {
		for _, r := range c.Rings {
			if r.Doubtful || r.Filing.Now.Subject != "" && r.Filing.Action == rings.Undecided {
				return true
			}
		}
	}
	return false
}

// waiting reports whether no cylinder may be cut yet, because all share a size that is not
// decided.
func (s Sheet) waiting() bool {
	return s.Choice.Route == oversize.Undecided && !s.Job.Engine.OwnSizes
}

// WriteJSON writes the sheet, every quantity as text with its unit. An error is the writer's.
func (s Sheet) WriteJSON(w io.Writer) error { return writeJSON(w, s) }

// ErrSheet: what was read is no sheet of this package's version.
var ErrSheet = errors.New("not a sheet")

// ReadSheet reads a sheet that [Sheet.WriteJSON] wrote. What is no JSON of a sheet is
// an error of encoding/json; another version, trailing text and a job that cannot be are [ErrSheet].
func ReadSheet(r io.Reader) (Sheet, error) {
	var s Sheet
	d := json.NewDecoder(r)
	d.DisallowUnknownFields()
	if err := d.Decode(&s); err != nil {
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w", err)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w: text after its end", ErrSheet)
	}
	if s.Version != Version {
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w: version %d, want %d", ErrSheet, s.Version, Version)
	}
	if err := s.Job.check(nil); err != nil {
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w: %w", ErrSheet, err)
	}
	return s, nil
}

// part returns the material of the cylinder, and the assumption where the job names none.
func (e Engine) part() (material.Material, []string, error) {
	var assumed []string
	inside, err := e.Material.material()
	if err != nil {
		return inside, nil, err
	}
	if e.Material == "" {
		inside = material.GreyIron()
		if e.Wall == oversize.Plated || e.Wall == oversize.BareAlSi {
			inside = material.AluminiumBlock()
		}
		assumed = append(assumed, "the cylinder wall is "+inside.Name)
	}
	if e.Wall != oversize.IronSleeve {
		return inside, assumed, nil
	}
	barrel, err := e.Barrel.material()
	if err != nil {
		return inside, nil, err
	}
	if e.Barrel == "" {
		barrel = material.AluminiumBlock()
		assumed = append(assumed, "the barrel around the sleeve is "+barrel.Name)
	}
	return material.Between(inside, barrel), append(assumed, "sleeve and barrel grow together, by something between the two"), nil
}

// metalOr returns the named metal, or the usual one with the assumption said.
func metalOr(m Metal, usual material.Material, what string) (material.Material, []string, error) {
	if m == "" {
		return usual, []string{what + " is " + usual.Name}, nil
	}
	named, err := m.material()
	return named, nil, err
}

// gauge returns the job's gauge as package bore wants it, with what was assumed.
func (j Job) gauge() (bore.Gauge, []string, error) {
	g, t := j.Gauge, j.Gauge.Temperatures
	part, assumed, err := j.Engine.part()
	if err != nil {
		return bore.Gauge{}, nil, err
	}
	rod, more, err := metalOr(g.Material, material.PlainSteel(), "the gauge's rod")
	if err != nil {
		return bore.Gauge{}, nil, err
	}
	assumed = append(assumed, more...)
	out := bore.Gauge{
		Kind: g.Kind, Dial: g.Dial, Resolution: g.Resolution, Repeatability: g.Repeatability, DialError: g.DialError,
		Material: rod, SetAt: t.GaugeSet, UsedAt: t.GaugeUsed,
		Part: part, PartAt: t.Cylinder, PlaceSpread: t.PlaceToPlace,
	}
	if g.Repeatability == 0 && !j.repeats() {
		assumed = append(assumed, "the gauge repeats itself exactly, for no repeatability is given and no place was read twice")
	}
	if g.Standard == (Standard{}) {
		assumed = append(assumed, "the readings are sizes as they stand, for no setting standard is given")
	} else {
		metal, more, err := metalOr(g.Standard.Material, material.GaugeSteel(), "the setting standard")
		if err != nil {
			return bore.Gauge{}, nil, err
		}
		assumed = append(assumed, more...)
		std, err := certified(g.Standard.Size, g.Standard.Uncertainty)
		if err != nil {
			return bore.Gauge{}, nil, err
		}
		out.Standard = bore.Standard{Size: g.Standard.Size, Std: std.Std, Material: metal, At: t.Standard}
	}
	return out, assumed, nil
}

// repeats reports whether any place was read more than once.
func (j Job) repeats() bool {
	for _, c := range j.Cylinders {
		seen := map[[2]string]bool{}
		for _, r := range c.Readings {
			place := [2]string{r.Depth.String(), bore.FormatAxis(r.Axis.Angle)}
			if seen[place] {
				return true
			}
			seen[place] = true
		}
	}
	return false
}

// shown returns the diameter of a reading, whichever way the job gives it.
func (j Job) shown(r Reading) (units.Length, error) {
	if r.Deviation == nil {
		return r.Diameter, nil
	}
	g := bore.Gauge{Dial: j.Gauge.Dial, Standard: bore.Standard{Size: j.Gauge.Standard.Size}}
	return g.Diameter(r.Deviation.Length)
}

// measure returns the geometry of one cylinder.
func (j Job) measure(c Cylinder) (bore.Geometry, error) {
	g, _, err := j.gauge()
	if err != nil {
		return bore.Geometry{}, err
	}
	rs := make([]bore.Reading, len(c.Readings))
	for i, r := range c.Readings {
		d, err := j.shown(r)
		if err != nil {
			return bore.Geometry{}, err
		}
		rs[i] = bore.Reading{Depth: r.Depth, Axis: r.Axis.Angle, Diameter: d, Confirmed: r.Confirmed}
	}
	return bore.Measure(rs, g)
}

// coverage is the k of every expanded uncertainty in a job: certificates state it for about 95 %.
const coverage = 2

// certified returns a size with the expanded uncertainty, k = 2, that came with it.
func certified(size, expanded units.Length) (uncertainty.Estimate, error) {
	std := uncertainty.FromCertificate(expanded.In(units.Micrometre), coverage)
	b := uncertainty.Budget{Components: []uncertainty.Component{{Name: "certificate", Sensitivity: 1, Std: std}}}
	return b.Estimate(size, units.Micrometre)
}
