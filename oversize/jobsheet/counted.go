// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import "slices"

// Counted is how many of each thing stand on the paper at the bench, for the whole engine. A reading, a pass
// or a pit that is lost between paper and file is not seen by anything else, and it may be the one that
// mattered. Zero is a count; nil is none.
type Counted struct {
	Readings *int `json:"readings,omitempty"` // of the survey, all cylinders together, repeats too
	Proof    *int `json:"proof,omitempty"`    // of the finished bores
	Passes   *int `json:"passes,omitempty"`   // of honing; 0 where no record was kept
	Rings    *int `json:"rings,omitempty"`    // on one piston
	Pits     *int `json:"pits,omitempty"`     // scores and pits found by looking, all cylinders together
	Ports    *int `json:"ports,omitempty"`    // in one cylinder of a two-stroke
	Trials   *int `json:"trials,omitempty"`   // of the gauge's study
	Textures *int `json:"textures,omitempty"` // readings and profiles of the texture, all cylinders together
	Traces   *int `json:"traces,omitempty"`   // of worn and of finished bores, all cylinders together
}

// A count is what was counted of one thing beside what the job holds.
type count struct {
	path  string
	given *int
	holds int
	must  bool // it is asked for where the job holds any
}

// counts returns every count, given or not.
func (j Job) counts() []count {
	var readings, proof, passes, pits, textures, traces int
	for _, c := range j.Cylinders {
		readings, proof = readings+len(c.Readings), proof+len(c.Proof)
		passes, pits = passes+c.passes(), pits+len(c.Pits)
		textures, traces = textures+len(c.Texture)+len(c.Profiles), traces+len(c.Traces)+len(c.ProofTraces)
	}
	n := j.Counted
	return []count{
		{"counted.readings", n.Readings, readings, false}, {"counted.proof", n.Proof, proof, false}, {"counted.passes", n.Passes, passes, false},
		{"counted.rings", n.Rings, len(j.Engine.Rings), false}, {"counted.pits", n.Pits, pits, false}, {"counted.ports", n.Ports, len(j.Engine.Layout.Ports), false},
		{"counted.trials", n.Trials, len(j.Gauge.Study), true}, {"counted.textures", n.Textures, textures, true}, {"counted.traces", n.Traces, traces, true},
	}
}

// What may be said to be not known.
const (
	ringTravel = "ring travel"
	wearShare  = "wear share"
	leastWall  = "least wall"
)

// unknown reports whether a thing is said to be not known.
func (j Job) unknown(what string) bool { return slices.Contains(j.NotKnown, what) }

// A Confirmation says that a field which looks like a slip is right as it stands. It lapses when the
// field is changed.
type Confirmation struct {
	Field string `json:"field"` // its path, "engine.limits.service"
	Value string `json:"value"` // what stands there, as the sheet quotes it
}
