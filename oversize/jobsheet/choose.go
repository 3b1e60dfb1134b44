// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"errors"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// choose hands the whole engine to package oversize, once every bore has been read; the zero Choice until
// then. The finish of a sleeve's bore, which follows from its piston, is added here.
func choose(g given, read []readBore) (oversize.Choice, error) {
	for _, r := range read {
		if unread(r.bore) {
			return oversize.Choice{}, nil
		}
	}
	e := g.Engine
	engine := oversize.Engine{
		Wall: e.Wall, Nominal: e.Bore,
		NewBore: e.Limits.NewBore, Service: e.Limits.Service,
		Clearance: e.Limits.PistonClearance, WornClearance: e.Limits.WornClearance,
		MostOver: e.Limits.GreatestOverbore, LeastWall: e.Limits.LeastWall,
		GasketHole: e.GasketHole, MayShift: length(e.MayShift), Honing: e.HoningAllowance,
		Deglaze: g.Cuts.deglaze(), Aim: e.Aim, RigidHone: g.Tools.Hone == hone.RigidStone, OwnSizes: e.ownSizes(),
	}
	for _, o := range e.Oversizes {
		engine.Sizes = append(engine.Sizes, oversize.Size{Over: o.Over, Piston: o.piston().fit()})
	}
	cylinders := make([]oversize.Cylinder, len(read))
	for i, r := range read {
		c := g.Cylinders[i]
		cylinders[i] = oversize.NewCylinder(c.Name, r.bore, r.cleanUp, r.findings)
		cylinders[i].Over, cylinders[i].Piston, cylinders[i].PistonFor = c.over(), c.Piston.fit(), length(c.PistonFor)
		cylinders[i].ThinnestWall, cylinders[i].Peeling = c.ThinnestWall.estimate(byCalliper), c.PlatingWhole != nil && !*c.PlatingWhole
	}
	choice, err := oversize.Choose(engine, cylinders, g.risk.choice)
	if err != nil {
		return choice, fault(pathOf(err), err)
	}
	for i := range choice.Cylinders {
		c := &choice.Cylinders[i]
		c.Bored = g.Units.in().BoringStop(c.Bored, c.Finish.Min-e.HoningAllowance)
		if c.Route == oversize.Sleeve && !waiting(g.Job, choice) {
			if err := g.sleeveFinish(i, c, read[i].bore.Largest.Size); err != nil {
				return choice, fault("engine.sleeve", err)
			}
			for _, caution := range c.Cautions {
				if !slices.Contains(choice.Cautions, caution) {
					choice.Cautions = append(choice.Cautions, caution)
				}
			}
		}
	}
	return choice, nil
}

// pathOf says which field of a job a refusal of package oversize is about.
func pathOf(err error) string {
	var p *oversize.PlaceError
	if !errors.As(err, &p) {
		return "engine"
	}
	path := fmt.Sprintf("cylinders[%d]", p.Cylinder)
	if p.Size >= 0 {
		path = fmt.Sprintf("engine.oversizes[%d]", p.Size)
	}
	if errors.Is(err, oversize.ErrPiston) {
		path += ".piston"
	}
	return path
}

// sleeveFinish adds what the bore of a sleeve is finished to: the window that the piston of its size leaves, where one
// was measured, and the size to work to, by a gauge as good as it was in the worn bore.
func (g given) sleeveFinish(i int, c *oversize.CylinderChoice, worn uncertainty.Estimate) error {
	e := g.Engine
	var piston fit.Piston
	if p := g.pistonFor(i, c.Over, -1); p.has() && !e.Limits.PistonClearance.IsZero() {
		var err error
		piston = p.fit()
		if c.Finish, err = fit.FinishWindow(piston, e.Limits.PistonClearance); err != nil {
			return err
		}
	}
	c.Aim = e.at(c.Over)
	if c.Finish.HasMin() && c.Finish.HasMax() {
		aim, caution, err := oversize.SizeToWorkTo(c.Finish, worn, piston, fit.Centre)
		if err != nil {
			return err
		}
		if c.Aim = aim; caution != "" {
			c.Cautions = append(c.Cautions, caution)
		}
	}
	c.Aim = cmp.Or(e.Sleeve.Finish, c.Aim)
	return nil
}

// sideDecides reports whether it hangs on the side of the wear, which no diameter shows, whether the size of a cylinder cleans it up.
func sideDecides(c oversize.CylinderChoice, by bore.CleanUp) bool {
	return c.Route == oversize.Undecided && slices.ContainsFunc(c.Refused, func(r oversize.Refusal) bool {
		most := r.Finding.Limits.Max
		return r.Reason == oversize.CleanUpNotProven && r.Route == oversize.BoreOversize && r.Over == c.Over &&
			by.Original.Min.Value <= most && most < by.Original.Max.Value
	})
}

// stays reports whether a bore keeps its size and form.
func stays(c oversize.CylinderChoice) bool {
	return c.Work == oversize.Deglaze || c.Route == oversize.MakersProcess
}

// cutToSize reports whether a bore is cut to a window of its own: bored, sleeved or trued by the hone.
func cutToSize(c oversize.CylinderChoice) bool {
	return c.Route == oversize.BoreOversize || c.Route == oversize.Sleeve || c.Work == oversize.CorrectForm
}

// A Price is what doubt costs: a cheaper route that less of it might allow.
type Price struct {
	Route oversize.Route `json:"route"` // that could be kept to
	Over  units.Length   `json:"over"`  // its size, over nominal
	Now   units.Length   `json:"now"`   // the doubt that stands against it, expanded to 95 %
	Would units.Length   `json:"would"` // the doubt that would let it through, if the value stayed
}

// price returns the cheapest route that was refused for doubt alone, and what doubt would spare it; nil where
// there is none.
func (b *book) price(c oversize.CylinderChoice) *Price {
	for n, r := range c.Refused {
		alone := true
		for m, other := range c.Refused {
			alone = alone && (m == n || other.Route != r.Route || other.Over != r.Over || other.Work != r.Work)
		}
		f := r.Finding
		if !alone || !r.Reason.Open() || f.Limits.IsZero() || f.Measured.Std == 0 {
			continue
		}
		remedy, unsettled := f.Settle(f.Measured.Std)
		settled := f.Measured
		settled.Std = remedy.Std
		now, unknown := f.Measured.Expanded(0.95)
		would, undone := settled.Expanded(0.95)
		if cmp.Or(unsettled, unknown, undone) == nil && would != 0 && remedy.Toward == uncertainty.Within {
			return &Price{Route: r.Route, Over: r.Over, Now: now, Would: would}
		}
	}
	return nil
}
