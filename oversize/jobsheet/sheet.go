// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/study"
)

// Version is the version of the JSON of jobs and sheets that this package writes. It grows when
// an older program would read a newer file wrongly.
const Version = 2

// A Sheet is a job with everything that follows from it. JSON keeps every length to the
// picometre and every other quantity to the 12 digits of its text, so that one read back may differ in the
// last digits of a bare number.
type Sheet struct {
	Version int      `json:"version"`          // of the JSON: [Version]
	Job     Job      `json:"job"`              // what the sheet was worked out from
	Next    Step     `json:"next"`             // of the engine: that of the most pressing row
	Ledger  []Row    `json:"ledger"`           // everything that must be true, and where it stands
	Assumed []Remark `json:"assumed,omitzero"` // what the job did not say and the sheet took
	// ToRead is where to read each bore, where ring travel is known; no diameters yet.
	ToRead    []bore.Reading  `json:"to_read,omitzero"`
	Cylinders []CylinderSheet `json:"cylinders"` // in the order of the job
	// Choice is the zero Choice, undecided, until every cylinder has been read.
	Choice oversize.Choice `json:"choice"`
	Study  *study.Study    `json:"study,omitempty"` // of the gauge, where its trials are in the job
	Honing HoneSheet       `json:"honing,omitzero"`
	Sleeve *SleeveSheet    `json:"sleeve,omitempty"` // where a cylinder is routed to one
	// UsualClearance is what rules of thumb give a piston of the engine's duty, UsualGap what they
	// give a ring, both in the nominal bore. They decide nothing.
	UsualClearance units.Limits  `json:"usual_clearance,omitzero"`
	UsualGap       units.Limits  `json:"usual_gap,omitzero"`
	Matched        []fit.Matched `json:"matched,omitzero"` // pistons to finished bores, size by size; a bore is its cylinder
	// Before is what the whole engine sweeps at the sizes it stands at, After at the sizes chosen; zero where none is.
	Before units.Volume `json:"before,omitzero"`
	After  units.Volume `json:"after,omitzero"`
	// Past is the chance, from 0 to 1 and for the whole engine, that honing runs past a size.
	Past      float64  `json:"past,omitzero"`
	Omitted   []Remark `json:"omitted,omitzero"` // parts that the job does not say enough for
	Unused    []Remark `json:"unused,omitzero"`  // what was given and stands behind no row
	Checklist []Remark `json:"checklist"`        // what to look at and to do, by operation
	Cautions  []Remark `json:"cautions"`         // what can hurt someone or spoil the work, by operation
}

// A CylinderSheet is what one bore's readings say and what follows for it.
type CylinderSheet struct {
	Name     string         `json:"name"` // of the cylinder, from the job
	Next     Step           `json:"next"`
	Bore     bore.Geometry  `json:"bore"`              // sizes and form at 20 °C
	Form     *WallForm      `json:"form,omitempty"`    // of the wall, where it was traced
	Findings []bore.Finding `json:"findings,omitzero"` // one for each limit given
	Coarse   []bore.Coarse  `json:"coarse,omitzero"`   // limits that the gauge is too coarse for
	// Clearances of the piston in hand in the bore as it is, and of the one for the finished bore
	// at the size to work to.
	Clearances []Clearance `json:"clearances,omitzero"`
	// Skirts is the skirt diameters that fit a bore that is past its size, or has been proven; zero where its form
	// leaves none.
	Skirts units.Limits `json:"skirts,omitzero"`
	// Remedies has, for each undecided finding by its place from 0, what would settle it if the value stayed.
	Remedies map[int]uncertainty.Remedy `json:"remedies,omitempty"`
	CleanUp  bore.CleanUp               `json:"clean_up"`
	// FeelerTaper is by how much the bore is larger at the upper of the two depths of a feeler test.
	FeelerTaper uncertainty.Estimate `json:"feeler_taper,omitzero"`
	// Seat is what comes off the barrel for a sleeve that is not in yet; Stock off the bore, or off the sleeve once it
	// is in, operation by operation.
	Seat  []oversize.Operation `json:"seat,omitzero"`
	Stock []oversize.Operation `json:"stock,omitzero"`
	// Warm is what the dial shows, with its own sign, while the cylinder is warm, one for each size in Stock.
	Warm []GaugeSize `json:"warm,omitzero"`
	// Dial is what the dial shows, with its own sign, at the sizes to bore and to hone to, all being at one temperature.
	Dial []GaugeSize `json:"dial,omitzero"`
	// Pass is what the next honing pass may be, where the honing has begun.
	Pass hone.Next `json:"pass,omitzero"`
	// Texture is that of the finished wall against what the rings want.
	Texture []surface.Finding `json:"texture,omitzero"`
	// Profiles is what each profile of the finished wall shows, at its place.
	Profiles []surface.Reading `json:"profiles,omitzero"`
	Rings    []RingSheet       `json:"rings,omitzero"`
	Proof    *ProofSheet       `json:"proof,omitempty"` // where the finished bore has been read
	// Before is the displacement and compression of the size it stands at, After of the one chosen; a ratio of 0 is not
	// known, and the one from the port only where the chamber names it.
	Before oversize.Compression `json:"before,omitzero"`
	After  oversize.Compression `json:"after,omitzero"`
}

// A Clearance is a diametral clearance of a piston, negative where the piston is the larger.
type Clearance struct {
	At   string               `json:"at"`           // where: "greatest now", "least now" or "at the size to work to"
	Size uncertainty.Estimate `json:"size"`         // at 20 °C
	Hot  uncertainty.Estimate `json:"hot,omitzero"` // running; zero where the temperatures are not given
}

// A GaugeSize is what the gauge shows when a bore has a size.
type GaugeSize struct {
	Operation string       `json:"operation"` // at whose end, an [oversize.Operation.Kind]
	Size      units.Length `json:"size"`      // at 20 °C
	Shows     units.Length `json:"shows"`     // deviation from the setting standard
}

// A RingSheet is one ring's gap in the finished bore.
type RingSheet struct {
	Ring   string               `json:"ring"`            // its name, from the job
	Bore   uncertainty.Estimate `json:"bore"`            // the size of the finished bore
	SetAt  units.Length         `json:"set_at,omitzero"` // depth of that size, where the bore is smallest in ring travel
	Gap    uncertainty.Estimate `json:"gap"`             // there; negative where the ends would overlap
	Filing rings.Filing         `json:"filing,omitzero"`
	// Foretold is what the first reading of the gap comes to in this bore, where Gap was measured in it; else zero.
	Foretold uncertainty.Estimate `json:"foretold,omitzero"`
	Service  uncertainty.Finding  `json:"service,omitzero"` // against the largest gap in service
	// Least is the least gap at 20 °C that leaves the hot gap that is wanted, or keeps the ends apart.
	Least uncertainty.Estimate `json:"least,omitzero"`
	// Hot is the gap at the running temperatures, after filing, against touching: negative where the ends butt, zero
	// where the temperatures are not given. HotEnough is the same against what the job wants, zero where it wants none.
	Hot       uncertainty.Finding `json:"hot,omitzero"`
	HotEnough uncertainty.Finding `json:"hot_enough,omitzero"`
	// Measured is the gap in the finished bore as measured, against the window; Grown how much
	// larger that bore is than the one of the first reading, by the two gaps, if nothing was filed
	// off in between.
	Measured uncertainty.Finding  `json:"measured,omitzero"`
	Grown    uncertainty.Estimate `json:"grown,omitzero"`
	// Side is the axial play in the groove against what is allowed; zero where one of the two is not given.
	Side uncertainty.Finding `json:"side,omitzero"`
	// Follows says whether the ring follows the bore where its form stays as it was read: zero
	// where that form goes, was not seen, or the ring's section is not given.
	Follows *rings.Conformity `json:"follows,omitempty"`
	// Ports is the room between the ends of a pegged ring and each port.
	Ports []rings.Room `json:"ports,omitzero"`

	unfit    bool                // no gap in the maker's window leaves the hot gap that is wanted
	expected uncertainty.Finding // the gap against the window, while it was not measured in this bore
}

// inBore reports whether the gap was measured in the bore that goes together.
func (r RingSheet) inBore() bool { return r.Foretold != uncertainty.Estimate{} }

// A HoneSheet is the crosshatch: what a setting leaves, and what is on hand.
type HoneSheet struct {
	Travel hone.Travel `json:"travel,omitzero"` // zero where the job gives the stroke itself
	// Now is the setting in the job: the bore that the angles are worked out for, the stroke, and the speeds, zero where
	// the job has none.
	Now    hone.Setting    `json:"now,omitzero"`
	Leaves hone.Crosshatch `json:"leaves,omitzero"` // what Now leaves
	Reach  *hone.Found     `json:"reach,omitempty"` // what is on hand for the wanted crosshatch
	// Used is the setting that the following is worked out for: Now, or the best on hand where Now
	// is not known or does not leave the crosshatch wanted.
	Used hone.Setting `json:"used,omitzero"`
	// Wall is the angle along the wall; zero where the travel is not known.
	Wall hone.Profile `json:"wall,omitzero"`
	// Flat is the lines of that wall as one counts them across: their mean angle, and the share flatter than 30°
	// included.
	Flat    hone.Tally   `json:"flat,omitzero"`
	Retrace hone.Retrace `json:"retrace,omitzero"` // zero unless the job gives lines and track
	Cover   hone.Cover   `json:"cover,omitzero"`   // zero unless it gives lines and their width
	Traces  []hone.Trace `json:"traces,omitzero"`  // what is left of the lines of each phase
	// Removal is where the honing allowance goes along the wall; zero where the job does not say
	// enough.
	Removal hone.Removal `json:"removal,omitzero"`
	// Cautions about Now; those about what is on hand are in Reach.
	Cautions []hone.Caution `json:"cautions,omitzero"`
}

// A Remark is a word about something: what the sheet took, left out or had no use for, and why; a check or a
// warning for one operation, which the maker's manual, local rules and a qualified machinist outrank.
type Remark struct {
	On   string `json:"on"`   // a field of the job, a part of the sheet, or an operation, "fitting rings"
	Says string `json:"says"` // in a sentence or two
}

// WriteJSON writes the sheet, every quantity as text with its unit. An error is the writer's, or that of
// a number that JSON cannot hold, such as NaN.
func (s Sheet) WriteJSON(w io.Writer) error { return writeJSON(w, s) }

// ErrSheet: what was read is no sheet that this package can read. ErrChanged: it is one, and the same job
// makes another sheet now.
var (
	ErrSheet   = errors.New("not a sheet")
	ErrChanged = errors.New("the job makes another sheet now")
)

// mostSheet is the largest sheet that is read: that of a job of the largest size is far below.
const mostSheet = 64 << 20

// ReadSheet reads a sheet that [Sheet.WriteJSON] wrote, of at most 64 MiB. It believes the job in it and
// nothing else: the job is planned again, and that sheet is returned. Where the ledger that stands in the file
// differs, the error is [ErrChanged] and names the first row that does and the version that wrote the file; the
// sheet comes with it. What is no sheet, or holds a job that cannot be, is [ErrSheet].
func ReadSheet(r io.Reader) (Sheet, error) {
	data, err := io.ReadAll(io.LimitReader(r, mostSheet+1))
	switch {
	case err != nil:
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w", err)
	case len(data) > mostSheet:
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w: larger than %d bytes", ErrSheet, mostSheet)
	}
	var file struct {
		Version int             `json:"version"`
		Job     json.RawMessage `json:"job"`
		Next    string          `json:"next"`
		Ledger  []struct{ Key, State, Stands string }
	}
	if err := json.Unmarshal(data, &file); err != nil {
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w: %w", ErrSheet, err)
	}
	if file.Version < 1 || file.Version > Version {
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w: version %d, want %d", ErrSheet, file.Version, Version)
	}
	var s Sheet
	job, err := ReadJob(bytes.NewReader(file.Job))
	if err == nil {
		s, err = Plan(job)
	}
	if err != nil {
		return Sheet{}, fmt.Errorf("jobsheet: sheet: %w: %w", ErrSheet, err)
	}
	changed := func(what string, args ...any) (Sheet, error) {
		return s, fmt.Errorf("jobsheet: sheet of version %d: %w: %s", file.Version, ErrChanged, fmt.Sprintf(what, args...))
	}
	for i, row := range s.Ledger {
		if i >= len(file.Ledger) {
			return changed("row %s is new", row.Key)
		}
		was := file.Ledger[i]
		if was.Key != row.Key || was.State != row.State.String() || was.Stands != row.Stands {
			return changed("row %s is %q, was %s, %q", row.Key, row.Stands, was.Key, was.Stands)
		}
	}
	switch {
	case len(file.Ledger) > len(s.Ledger):
		return changed("row %s is gone", file.Ledger[len(s.Ledger)].Key)
	case file.Next != s.Next.String():
		return changed("next is %v, was %s", s.Next, file.Next)
	}
	return s, nil
}
