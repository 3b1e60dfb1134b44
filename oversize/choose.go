// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Choice is the route for an engine and for each of its cylinders.
type Choice struct {
	Route     Route            `json:"route"` // Undecided where any cylinder is; else that of the cylinder for which most is done
	Over      units.Length     `json:"over"`  // the size that the cylinders will share, over the nominal bore; where each has its own, the greatest
	Cylinders []CylinderChoice `json:"cylinders"`
	Cautions  []string         `json:"cautions,omitzero"` // what the choice rests on and the workshop has to know, in sentences

	// Of an Undecided engine: the route and size it would have if all that is open turned out
	// against it. Undecided again where nothing but measuring can tell.
	Otherwise     Route        `json:"otherwise,omitzero"`
	OtherwiseOver units.Length `json:"otherwise_over,omitzero"`

	Risk uncertainty.Risk `json:"risk"` // of leaving worn wall, too thin a wall or too much clearance in any bore of the engine
}

// A CylinderChoice is the route for one cylinder. Sizes are diameters at 20 °C.
type CylinderChoice struct {
	Name  string       `json:"name"`  // as given
	Route Route        `json:"route"` // of this cylinder
	Over  units.Length `json:"over"`  // the size it will stand at, over the nominal bore
	Work  string       `json:"work,omitzero"`
	// Shift is how far the axis moves at most, radial: the bar is centred on the worn bore. At zero it is centred on
	// the original bore, by the register or by the unworn wall below ring travel, where the crankshaft wants it.
	Shift units.Length `json:"shift,omitzero"`

	Finish units.Limits `json:"finish,omitzero"` // window for the finished bore; zero while its piston is not measured
	Aim    units.Length `json:"aim,omitzero"`    // size to work to; zero where there is none, as for deglazing
	Bored  units.Length `json:"bored,omitzero"`  // size to bore to, which leaves the honing allowance
	// Stock to be removed, on the diameter, from the largest reading and from the smallest to the size to work to.
	Stock    units.Limits         `json:"stock,omitzero"`
	WallLeft uncertainty.Estimate `json:"wall_left,omitzero"` // thinnest, radial; zero where it was not measured

	Refused  []Refusal `json:"refused,omitzero"`  // every cheaper route, the cheapest first, and why not
	Cautions []string  `json:"cautions,omitzero"` // of this cylinder alone
}

// maxCylinders is more than any engine has.
const maxCylinders = 64

// Choose returns the route for an engine: hone and keep the present size where form, size and
// their doubt permit; else the smallest size on offer at which every bore cleans up, with its
// piston and clearance, inside the greatest overbore and with enough wall left; else a sleeve
// for as few cylinders as will do, the rest taking the smallest size that serves them. Plated
// and bare aluminium-silicon walls get MakersProcess whatever was measured.
//
// A bore of which a limit was not measured at all is not corrected on the strength of that: it is
// Undecided until it has been.
//
// The engine is Undecided where keeping it rests on an undecided finding and no cylinder has to
// be bored, and where only missing or doubtful measurements stand between a cylinder and a
// size on offer.
//
// The risk is per engine, for each kind of mistake; zero stands for 0.05. It is shared over the cylinders
// and over the two decisions that each needs. The findings of the cylinders come with their own.
//
// Data that contradict themselves are errors, of one cylinder or size in a [PlaceError]: ErrPiston,
// those of package fit, units.ErrNotGiven for no kind of wall, units.ErrRange and units.ErrCrossed, each naming its place.
func Choose(e Engine, cs []Cylinder, r uncertainty.Risk) (Choice, error) {
	if len(cs) == 0 || len(cs) > maxCylinders {
		return Choice{}, fmt.Errorf("oversize: %d cylinders: %w (1 to %d)", len(cs), units.ErrRange, maxCylinders)
	}
	if err := e.validate(); err != nil {
		return Choice{}, err
	}
	for i := range cs {
		if err := e.validateCylinder(&cs[i]); err != nil {
			return Choice{}, &PlaceError{Cylinder: i, Size: -1, Err: err}
		}
	}
	c := Choice{Risk: r.Share(1)}
	if e.Wall == Plated || e.Wall == BareAlSi {
		c.Route = MakersProcess
		for i := range cs {
			c.Cylinders = append(c.Cylinders, makersProcess(&cs[i]))
			c.Over = max(c.Over, cs[i].Over)
		}
		return c, nil
	}
	each := r.Share(2 * len(cs))
	groups := [][]Cylinder{cs}
	if e.OwnSizes {
		groups = groups[:0]
		for i := range cs {
			groups = append(groups, cs[i:i+1])
		}
	}
	var routes, otherwise []Route
	for _, g := range groups {
		one, err := e.chooseShared(g, each)
		if err != nil {
			return Choice{}, err
		}
		c.Cylinders = append(c.Cylinders, one.Cylinders...)
		c.Over = max(c.Over, one.Over)
		c.OtherwiseOver = max(c.OtherwiseOver, one.OtherwiseOver)
		routes, otherwise = append(routes, one.Route), append(otherwise, one.Otherwise)
	}
	c.Route, c.Otherwise = ofAll(routes), ofAll(otherwise)
	if c.Route != Undecided {
		c.Otherwise, c.OtherwiseOver = Undecided, 0
	}
	c.Cautions = e.cautions(c)
	return c, nil
}

// ofAll returns the route of an engine from those of its parts: undecided before all, else the
// one that does most.
func ofAll(parts []Route) Route {
	if slices.Contains(parts, Undecided) {
		return Undecided
	}
	return slices.Max(parts)
}

// Deciding returns the findings that decide whether a worn bore may stay. That it is no longer a
// new one decides nothing where the maker says in any other way how far it may wear. The slice
// is not changed.
func Deciding(fs []bore.Finding) []bore.Finding {
	isNew := func(f bore.Finding) bool { return f.Limit == bore.LimitNew }
	worn := fs
	for len(worn) > 0 && isNew(worn[0]) { // where they stand as they are judged
		worn = worn[1:]
	}
	if slices.ContainsFunc(worn, isNew) {
		worn = slices.DeleteFunc(slices.Clone(worn), isNew)
	}
	if len(worn) == 0 {
		return fs
	}
	return slices.Clip(worn)
}

// makersProcess refuses boring and honing for a wall that stands neither.
func makersProcess(c *Cylinder) CylinderChoice {
	cc := CylinderChoice{Name: c.Name, Route: MakersProcess, Over: c.Over}
	if c.Peeling {
		cc.Refused = append(cc.Refused, Refusal{Route: HoneAndKeep, Over: c.Over, Reason: peeling})
	}
	for _, f := range Deciding(c.Findings) {
		if why := limitReason(f.Verdict); why != noReason {
			cc.Refused = append(cc.Refused, Refusal{Route: HoneAndKeep, Over: c.Over, Reason: why, Finding: f.Finding})
		}
	}
	for _, route := range []Route{HoneAndKeep, BoreOversize, Sleeve} {
		cc.Refused = append(cc.Refused, Refusal{Route: route, Over: c.Over, Reason: wallForbids})
	}
	return cc
}

// A result is how one cylinder fared at one size.
type result struct {
	verdict uncertainty.Verdict // Within: the size serves; Undecided: better measurements could make it serve
	kept    bool                // the size is the one at which the cylinder stands
}

// proven reports whether the size is known to serve.
func (t result) proven() bool { return t.verdict == uncertainty.Within }

// hoped reports whether the size serves or nothing speaks against it but doubt.
func (t result) hoped() bool { return t.verdict != uncertainty.Beyond }

// taken reports whether the size serves, or is the present one with only doubt against it: a
// larger size is no remedy for doubt about keeping, while boring has to be proven.
func (t result) taken() bool { return t.proven() || t.kept && t.hoped() }

// chooseShared chooses for cylinders that share one size.
func (e *Engine) chooseShared(cs []Cylinder, r uncertainty.Risk) (Choice, error) {
	sizes := e.sizesFrom(cs)
	results := make([][]result, 0, len(sizes)) // by size, then by cylinder
	refused := make([][]Refusal, len(cs))      // by cylinder, in the order of the sizes
	for j := range refused {
		refused[j] = make([]Refusal, 0, len(sizes)+2)
	}
	for _, over := range sizes {
		row := make([]result, len(cs))
		for j := range cs {
			t, err := e.try(&cs[j], over, r, refused[j])
			if err != nil {
				return Choice{}, err
			}
			row[j], refused[j] = result{t.verdict, over == cs[j].Over}, t.refused
		}
		results = append(results, row)
		if failures(row, result.proven) == 0 {
			break // nothing dearer is wanted
		}
		for j, t := range row {
			if t.proven() {
				refused[j] = append(refused[j], sharedWith(&cs[j], over))
			}
		}
	}
	at, left := fewest(results, result.taken)
	if hope, n := fewest(results, result.hoped); n < left {
		at = hope // measuring may spare a sleeve
	}
	c := Choice{Over: sizes[at], Cylinders: make([]CylinderChoice, len(cs))}
	routes := make([]Route, len(cs))
	for j := range cs {
		cc, err := e.outcome(&cs[j], results[at][j], sizes[at], refused[j], r)
		if err != nil {
			return Choice{}, err
		}
		c.Cylinders[j], routes[j] = cc, cc.Route
	}
	c.Route = ofAll(routes)
	if c.Route == Undecided {
		at, left := fewest(results, result.proven)
		c.Otherwise, c.OtherwiseOver = BoreOversize, sizes[at]
		if left > 0 {
			c.Otherwise = Sleeve
		}
	}
	return c, nil
}

// sharedWith is the refusal of a size that would serve this cylinder.
func sharedWith(c *Cylinder, over units.Length) Refusal {
	if over == c.Over {
		return Refusal{Route: HoneAndKeep, Over: over, Reason: sharedSize}
	}
	return Refusal{Route: BoreOversize, Over: over, Reason: sharedSize}
}

// failures counts the cylinders that a size does not serve.
func failures(row []result, serves func(result) bool) int {
	n := 0
	for _, t := range row {
		if !serves(t) {
			n++
		}
	}
	return n
}

// fewest returns the index of the size that fails the fewest cylinders, of several the smallest,
// and how many those are.
func fewest(results [][]result, serves func(result) bool) (at, failed int) {
	failed = failures(results[0], serves)
	for i := 1; i < len(results); i++ {
		if n := failures(results[i], serves); n < failed {
			at, failed = i, n
		}
	}
	return at, failed
}

// sizesFrom returns the sizes that the cylinders could share: from the largest that any stands
// at upwards.
func (e *Engine) sizesFrom(cs []Cylinder) []units.Length {
	least := cs[0].Over
	for i := range cs {
		least = max(least, cs[i].Over)
	}
	sizes := append(make([]units.Length, 0, len(e.Sizes)+1), least)
	for _, s := range e.Sizes {
		if s.Over > least {
			sizes = append(sizes, s.Over)
		}
	}
	return sizes
}

// outcome returns what becomes of a cylinder where the engine goes to a size. refused are its
// refusals at all sizes tried.
func (e *Engine) outcome(c *Cylinder, t result, over units.Length, refused []Refusal, r uncertainty.Risk) (CylinderChoice, error) {
	var cc CylinderChoice
	switch {
	case t.proven():
		again, err := e.try(c, over, r, nil)
		if err == nil {
			err = again.aim()
		}
		if err != nil {
			return CylinderChoice{}, err
		}
		cc = again.choice
	case t.hoped():
		cc.Route = Undecided
	default:
		cc.Route = Sleeve
		if !slices.ContainsFunc(e.Sizes, func(s Size) bool { return s.Over > c.Over }) {
			refused = append(refused, Refusal{Route: BoreOversize, Over: c.Over, Reason: nothingLarger})
		}
	}
	cc.Name, cc.Over = c.Name, over
	if cc.Route != Sleeve { // what is dearer need not be refused
		n := slices.IndexFunc(refused, func(x Refusal) bool {
			return x.Over > over || x.Over == over && x.Reason == sharedSize
		})
		if n >= 0 {
			refused = refused[:n:n]
		}
	}
	if len(refused) > 0 {
		cc.Refused = refused
	}
	return cc, nil
}

func (e *Engine) cautions(c Choice) []string {
	var list []string
	add := func(x string, when bool) {
		if when && !slices.Contains(list, x) {
			list = append(list, x)
		}
	}
	bores := slices.ContainsFunc(c.Cylinders, func(cc CylinderChoice) bool { return cc.Route == BoreOversize })
	width, _ := e.Clearance.Width()
	for i, s := range e.Sizes {
		step := s.Over
		if i > 0 {
			step -= e.Sizes[i-1].Over
		}
		add(windowSpansSizes, step > 0 && width > step)
	}
	add(honingUnusual, bores && e.Honing != 0 && !UsualHoning().Contains(e.Honing))
	add(noHoningStock, bores && e.Honing == 0)
	for i := range c.Cylinders {
		for _, x := range c.Cylinders[i].Cautions {
			add(x, true)
		}
	}
	return list
}
