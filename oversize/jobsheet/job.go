// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"encoding/json"
	"fmt"
	"io"

	"borewright.example/units/uncertainty"
)

// A Job is what is known when an engine's cylinders come to the bench. In JSON the fields have
// the names given here; lengths and other quantities are texts with a unit, and inch and metric
// mix freely. A field that is left out is not known.
//
// It is a living file: put down what is measured, bored, honed and proven as the work goes on, and
// plan it again; the sheet says what is next.
type Job struct {
	Version   int        `json:"version,omitzero"` // of the job's JSON: [Version], or left out
	Title     string     `json:"title,omitzero"`   // printed at the head of the sheet
	Units     Shown      `json:"units,omitzero"`   // to print in; left out, those of the job
	Engine    Engine     `json:"engine"`
	Gauge     Gauge      `json:"gauge"`
	Survey    Survey     `json:"survey,omitzero"` // of the worn bores
	Cylinders []Cylinder `json:"cylinders" most:"64"`
	Tools     Tools      `json:"tools,omitzero"`
	Cuts      Cuts       `json:"cuts,omitzero"`
	Proof     Proof      `json:"proof,omitzero"` // of the finished bores
	// Counted is how much was written down at the bench, so that what is lost on the way here is missed.
	Counted Counted `json:"counted,omitzero"`
	// NotKnown says what nobody knows here, so that this and leaving a thing out are two things: "ring travel" (taken
	// then to be one and a half strokes, from 10 mm below the deck), "wear share" (neither side is taken to be the
	// less worn), "least wall" (only sizes on the maker's own list are bored).
	NotKnown []string `json:"not_known,omitzero"`
	// Confirmed are fields that look like a slip and are right.
	Confirmed []Confirmation `json:"confirmed,omitzero"`
	// Accepted is what goes on somebody's word.
	Accepted []Acceptance `json:"accepted,omitzero"`
	// Risk is the chance of a wrong answer that is accepted, for the whole engine: budget.go says of which.
	Risk uncertainty.Risk `json:"risk,omitzero"`
}

// ReadJob reads a job from JSON of at most 1 MiB, strictly, and checks it. Where anything is
// wrong the error is [Faults]: every fault with its path, its value and what was
// allowed. An error of r comes back wrapped, as no fault of the job.
func ReadJob(r io.Reader) (Job, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxBytes+1))
	if err != nil {
		return Job{}, fmt.Errorf("jobsheet: reading a job: %w", err)
	}
	var j Job
	doc := strict().Read(data, &j)
	if err := j.check(doc); err != nil {
		return Job{}, err
	}
	if j.Units == 0 {
		j.Units = written(doc.Texts())
	}
	return j, nil
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
