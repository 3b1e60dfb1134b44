// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"slices"

	"borewright.example/oversize/jobsheet/internal/strictjson"
)

// Plan works a job out through every room: it measures, judges, chooses the route and says what
// follows for hone, rings and displacement, and what of all that must be true is shown to be. The error for
// a job that [ReadJob] would refuse is [Faults].
//
// Plan reads no clock: the same job gives the same sheet.
func Plan(j Job) (Sheet, error) {
	doc := strict().Made()
	if err := j.check(doc); err != nil {
		return Sheet{}, err
	}
	return j.plan(doc)
}

// plan is the chain of the work: each step takes what it needs and returns its part; none writes into an
// earlier one.
//
//	survey -> choice -> sleeve, passes -> stock
//	                                   -> proofs -> matching -> fits
//	                                             -> bores -> rings, hone
//	                                             -> volumes
//	all of them, and the textures -> ledger -> sheet
func (j Job) plan(doc *strictjson.Document) (Sheet, error) {
	g, err := j.given()
	if err != nil {
		return Sheet{}, err
	}
	read, err := perCylinder(g, "readings", func(_ int, c Cylinder) (readBore, error) { return g.readBore(c) })
	if err != nil {
		return Sheet{}, err
	}
	choice, err := choose(g, read)
	if err != nil {
		return Sheet{}, err
	}
	untold, slipped := g.untold(choice), g.slipped(doc, read, choice)
	if len(untold)+len(slipped) > 0 {
		choice = withheld(choice)
	}
	passes := passed(g, read, choice)
	sleeve, seats, noFit, err := sleeved(g, read, choice)
	if err != nil {
		return Sheet{}, err
	}
	cuts, notCut, err := cut(g, read, choice, sleeve, passes)
	if err != nil {
		return Sheet{}, err
	}
	proofs, err := perCylinder(g, "proof", func(i int, c Cylinder) (*ProofSheet, error) {
		if !c.reread() || len(choice.Cylinders) == 0 {
			return nil, nil
		}
		return g.prove(c, read[i], choice.Cylinders[i])
	})
	if err != nil {
		return Sheet{}, err
	}
	pairs, notMatched, err := match(g, choice, proofs)
	if err != nil {
		return Sheet{}, err
	}
	fits, err := perCylinder(g, "piston", func(i int, _ Cylinder) (fitting, error) {
		return g.fitted(i, read[i], choice, proofs[i], pairs.of[i])
	})
	if err != nil {
		return Sheet{}, err
	}
	bores := ringBores(g, read, choice, proofs)
	gaps, notGapped, err := ringGaps(g, read, choice, proofs, bores)
	if err != nil {
		return Sheet{}, err
	}
	var honing HoneSheet
	var notHoned []Remark
	if len(choice.Cylinders) > 0 {
		if honing, notHoned, err = honed(g, choice, bores); err != nil {
			return Sheet{}, err
		}
	}
	walls, err := textures(g)
	if err != nil {
		return Sheet{}, err
	}
	volumes, notRatio, err := capacities(g, choice, proofs)
	if err != nil {
		return Sheet{}, err
	}
	all := book{
		given: g, read: read, choice: choice, passes: passes, cuts: cuts, proofs: proofs, matched: pairs.matched, fits: fits, bores: bores,
		rings: gaps, honing: honing, sleeve: sleeve, seats: seats, noFit: noFit, textures: walls, volumes: volumes,
		omitted: slices.Concat(notCut, notMatched, notGapped, notHoned, notRatio), untold: untold, slipped: slipped,
	}
	return all.sheet()
}
