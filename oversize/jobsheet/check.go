// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"borewright.example/oversize/jobsheet/internal/notes"
	"borewright.example/oversize/jobsheet/internal/sense"
	"borewright.example/oversize/jobsheet/internal/strictjson"
)

// Of one cylinder, or of all its engine's texture; the tags of the fields say what else a list may hold.
const (
	maxReadings = 1000
	maxPorts    = 64
)

// A checker holds a job to what makes sense.
type checker struct{ doc *strictjson.Document }

// fault notes a fault unless the place, or what it stands in, has one already.
func (c *checker) fault(path string, value any, want string, args ...any) {
	c.doc.Fault(path, value, fmt.Errorf(want, args...))
}

// refuse notes a fault where something is wrong.
func (c *checker) refuse(wrong bool, path string, value any, want string, args ...any) {
	if wrong {
		c.fault(path, value, want, args...)
	}
}

// hold notes a fault of a value where there is one.
func (c *checker) hold(path string, value any, err error) {
	if err != nil {
		c.doc.Fault(path, value, err)
	}
}

// check returns every fault of the job together with those that its file already has.
func (j Job) check(doc *strictjson.Document) error {
	if !doc.Whole() {
		return faults(doc)
	}
	c := &checker{doc}
	c.refuse(j.Version > Version, "version", j.Version, "newer than %d, the newest that is known here", Version)
	c.refuse(j.Version != 0 && j.Version < Version, "version", j.Version, "%s", olderVersion)
	doc.Check(j, rules(j.Engine.Bore))
	c.engine(j.Engine)
	c.gauge(j.Gauge)
	c.cylinders(j)
	c.tools(j.Tools)
	c.cuts(j.Cuts, j.Engine)
	c.proof(j)
	c.words(j)
	r := j.Risk.OrDefault()
	const least = 1e-5 // that an engine's many rows can share
	c.hold("risk.accept", r.Accept, sense.InRange(r.Accept, least, 0.5, "want 0.00001 to 0.5"))
	c.hold("risk.reject", r.Reject, sense.InRange(r.Reject, least, 0.5, "want 0.00001 to 0.5"))
	return faults(doc)
}

// name checks a name that must be there, and be the only one.
func (c *checker) name(path, name string, seen map[string]bool) {
	bare := plainName(name)
	switch {
	case bare == "":
		c.fault(path, nil, "missing: want a name")
	case seen[bare]:
		c.fault(path, name, "another one has this name, but for blanks and capitals")
	}
	seen[bare] = true
}

// plainName is a name without blanks and capitals, which tell no two things apart.
func plainName(name string) string {
	return strings.ToLower(strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) || !unicode.IsPrint(r) {
			return -1
		}
		return r
	}, name))
}

// place checks the name of a place on the wall: without one, repeats at a place would be another place.
func (c *checker) place(path, name string) {
	if plainName(name) == "" {
		c.fault(path, nil, "missing: want where on the wall it was taken")
	}
}

// words checks what the job says about itself: counts, what is not known, confirmed or accepted.
func (c *checker) words(j Job) {
	for _, n := range j.counts() {
		c.refuse(n.path == "counted.textures" && n.holds > maxReadings, n.path, n.holds, "want at most %d readings and profiles in all", maxReadings)
		switch {
		case n.must && n.given == nil && n.holds > 0:
			c.fault(n.path, nil, "missing: how many stand on the paper?")
		case n.given != nil && *n.given != n.holds:
			c.fault(n.path, *n.given, "the job holds %d: is one missing?", n.holds)
		}
	}
	for i, u := range j.NotKnown {
		path := fmt.Sprintf("not_known[%d]", i)
		given := u == ringTravel && j.Engine.Layout.RingBottom != 0 || u == leastWall && j.Engine.Limits.LeastWall != 0
		for _, cyl := range j.Cylinders {
			given = given || u == wearShare && cyl.WearShare != 0
		}
		c.refuse(u != ringTravel && u != wearShare && u != leastWall, path, u, "want one of %s, %s, %s", ringTravel, wearShare, leastWall)
		c.refuse(given, path, u, "the job gives it: take one of the two out")
		c.refuse(slices.Contains(j.NotKnown[:i], u), path, u, "given twice")
	}
	for i, f := range j.Confirmed {
		c.refuse(f.Field == "" || f.Value == "", fmt.Sprintf("confirmed[%d]", i), nil, "want field and value, as the sheet writes them")
	}
	for i, a := range j.Accepted {
		path := fmt.Sprintf("accepted[%d]", i)
		switch {
		case (a.Row == "") == (a.Demand == demandTold):
			c.fault(path, nil, "want row, the key of one row, or demand, a kind for which the maker gives no figure")
		case strings.TrimSpace(a.By) == "" || strings.TrimSpace(a.Why) == "":
			c.fault(path, nil, "want by and why: a row goes on somebody's word")
		case a.Row != "" && a.Stood == "":
			c.fault(path+".stood", nil, "missing: write what stands in the row, as the sheet prints it")
		}
	}
}

// proof checks what goes with the readings of the finished bores, and that survey and proof were
// taken in their order and in the same way.
func (c *checker) proof(j Job) {
	p, was, is := j.Proof, j.Gauge.Standard, j.Proof.Standard
	if j.proven() {
		c.temperatures("proof.temperatures", p.Temperatures, is != Standard{})
	}
	c.refuse(j.proven() && was != (Standard{}) && is == (Standard{}), "proof.standard", nil, "missing: write again what the gauge was set on, for it may have been another")
	c.refuse(was.Name != "" && was.Name == is.Name && was.Size != is.Size, "proof.standard.size", is.Size,
		"%q was %v for the survey: one setting has one size, and another setting another name", was.Name, was.Size)
	c.refuse(before(j.Survey.On, j.Gauge.SetOn), "gauge.set_on", j.Gauge.SetOn, "the gauge was set after it was used, on %v", j.Survey.On)
	c.refuse(before(p.On, p.SetOn), "proof.set_on", p.SetOn, "the gauge was set after it was used, on %v", p.On)
	c.refuse(before(p.SetOn, j.Gauge.SetOn), "proof.set_on", p.SetOn, "before the gauge was set for the survey, on %v: that setting is gone", j.Gauge.SetOn)
	c.refuse(before(p.On, j.Survey.On), "proof.on", p.On, "before the survey, on %v", j.Survey.On)
	if a, b := j.Survey.TorquePlate, p.TorquePlate; a != nil && b != nil && *a != *b {
		c.fault("proof.torque_plate", *b, "the survey was read %v: read both the same way, or they cannot be compared", notes.Clamped(*a))
	}
}

// olderVersion says what to change in a job file of version 1.
const olderVersion = `an older job file: write doubts behind their values, "78.194 ± 0.004 mm", in place of uncertainty and wall_uncertainty; ` +
	`give over of every cylinder and piston_for of every piston in hand, kind of the gauge, and proof.standard; one_size, true or ` +
	`false, in place of own_sizes, pits in place of pit, plating_whole in place of peeling, torque_plate in place of clamping; ` +
	`honing as a list, the size before the first pass first; then version 2`
