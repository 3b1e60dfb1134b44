// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"errors"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/internal/given"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// ErrPiston: a piston that belongs to another size than the one it is given for.
var ErrPiston = errors.New("piston does not belong to its size")

// A PlaceError is what was refused of one cylinder, or of one size on offer.
type PlaceError struct {
	Cylinder, Size int   // from 0; -1 where it is not about one
	Err            error // with the name of the cylinder
}

// Error returns the text of Err.
func (e *PlaceError) Error() string { return fmt.Sprint(e.Err) }

// Unwrap returns Err.
func (e *PlaceError) Unwrap() error { return e.Err }

// An Engine is what all cylinders have in common. All lengths are diameters at 20 °C unless
// they say otherwise; a limit of zero is not given.
type Engine struct {
	Wall    Wall         `json:"wall"`    // must be given
	Nominal units.Length `json:"nominal"` // bore of the standard size, from which every Over counts
	Sizes   Series       `json:"sizes"`   // on offer

	NewBore       units.Limits `json:"new_bore,omitzero"`       // maker's window for a new bore of standard size; it moves with the size
	Service       units.Length `json:"service,omitzero"`        // greatest size at which a standard bore may be kept; it moves with the size
	Clearance     units.Limits `json:"clearance,omitzero"`      // piston to wall, of a fresh bore
	WornClearance units.Length `json:"worn_clearance,omitzero"` // greatest that a kept bore may have; zero: that of a fresh bore

	MostOver   units.Length `json:"most_over,omitzero"`   // greatest overbore
	LeastWall  units.Length `json:"least_wall,omitzero"`  // least thickness of wall, radial
	GasketHole units.Length `json:"gasket_hole,omitzero"` // of the head gasket; the finished bore must not be larger
	MayShift   units.Length `json:"may_shift,omitzero"`   // how far the axis may move, radial; zero: bored on the original centre

	Honing units.Length `json:"honing,omitzero"` // on the diameter, left by boring for honing
	// Deglaze is what deglazing takes, on the diameter. Where it is zero, not given, it is nothing for
	// the clearance; whether a shallow pit goes with it is open; and one that is deeper than it could be,
	// 0.0127 mm (0.0005 in, common practice) on the diameter, stays.
	Deglaze   units.Length `json:"deglaze,omitzero"`
	RigidHone bool         `json:"rigid_hone,omitzero"` // a hone with rigid stones is on hand
	Aim       fit.Aim      `json:"aim,omitzero"`        // where in the finish window to work to

	OwnSizes bool `json:"own_sizes,omitzero"` // each cylinder may have its own size; else all share one
}

// A Cylinder is one worn bore as measured. All sizes are diameters at 20 °C.
type Cylinder struct {
	Name         string               `json:"name"`                   // as the choice shall call it
	Over         units.Length         `json:"over"`                   // the size it stands at, over the nominal bore; 0 is standard
	Largest      uncertainty.Estimate `json:"largest"`                // of all readings
	Smallest     uncertainty.Estimate `json:"smallest"`               // of all readings
	Places       int                  `json:"places"`                 // how many places they are the extremes of; below 1 counts as 1
	CleanUp      bore.CleanUp         `json:"clean_up"`               // with the pits and scores
	Findings     []bore.Finding       `json:"findings,omitzero"`      // against the maker's limits; see [Deciding]
	Piston       fit.Piston           `json:"piston,omitzero"`        // in hand; zero: none
	PistonFor    units.Length         `json:"piston_for,omitzero"`    // the size it is for, over the nominal bore
	ThinnestWall uncertainty.Estimate `json:"thinnest_wall,omitzero"` // measured, radial; zero: not measured
	Peeling      bool                 `json:"peeling,omitzero"`       // plating lifts, or bare metal shows
}

// NewCylinder returns a worn bore that stands at standard size, from what its readings came to: its
// geometry, what it cleans up at, and the findings on it. What else is known of it is the caller's to
// fill in.
func NewCylinder(name string, g bore.Geometry, c bore.CleanUp, fs []bore.Finding) Cylinder {
	cyl := Cylinder{Name: name, Largest: g.Largest.Size, Smallest: g.Smallest.Size, CleanUp: c, Findings: fs}
	for _, p := range slices.Concat(g.Planes, g.Bridges) {
		cyl.Places += len(p.Places)
	}
	return cyl
}

const most = units.MaxLength / 10 // of any size here, so that sums stay far inside units.MaxLength

func (e *Engine) validate() error {
	switch e.Wall {
	case BareIron, IronSleeve, Plated, BareAlSi:
	default:
		return fmt.Errorf("oversize: kind of wall %v: %w", e.Wall, units.ErrNotGiven)
	}
	if e.Nominal <= 0 || e.Nominal > most {
		return fmt.Errorf("oversize: nominal bore %v: %w (above 0, up to %v)", e.Nominal, given.Err(e.Nominal), most)
	}
	for _, l := range []struct {
		what        string
		value, most units.Length
	}{
		{"service limit", e.Service, e.Nominal + e.Nominal/10},
		{"worn clearance", e.WornClearance, e.Nominal / 10},
		{"greatest overbore", e.MostOver, e.Nominal},
		{"least wall", e.LeastWall, e.Nominal},
		{"gasket hole", e.GasketHole, most},
		{"allowed shift of the axis", e.MayShift, e.Nominal / 10},
		{"honing allowance", e.Honing, e.Nominal / 10},
		{"stock taken by deglazing", e.Deglaze, e.Nominal / 10},
	} {
		if l.value < 0 || l.value > l.most {
			return fmt.Errorf("oversize: %s %v: %w (0 to %v)", l.what, l.value, units.ErrRange, l.most)
		}
	}
	for _, w := range []struct {
		what        string
		window      units.Limits
		least, most units.Length
	}{
		{"new bore", e.NewBore, e.Nominal - e.Nominal/10, e.Nominal + e.Nominal/10},
		{"clearance", e.Clearance, 1, e.Nominal / 10},
	} {
		if w.window.IsZero() {
			continue
		}
		if !w.window.HasMin() || !w.window.HasMax() {
			return fmt.Errorf("oversize: window for the %s, %v: %w (both ends)", w.what, w.window, units.ErrRange)
		}
		if err := w.window.Validate(); err != nil {
			return fmt.Errorf("oversize: window for the %s: %w", w.what, err)
		}
		if w.window.Min < w.least || w.window.Max > w.most {
			return fmt.Errorf("oversize: window for the %s, %v: %w (%v to %v)", w.what, w.window, units.ErrRange, w.least, w.most)
		}
	}
	if e.WornClearance != 0 && e.WornClearance < e.Clearance.Max {
		return fmt.Errorf("oversize: worn clearance %v below that of a fresh bore, %v: %w", e.WornClearance, e.Clearance, units.ErrCrossed)
	}
	if err := e.Sizes.validate(); err != nil {
		return err
	}
	for i, s := range e.Sizes {
		if s.Over > e.Nominal {
			return fmt.Errorf("oversize: size %v over a bore of %v: %w", s.Over, e.Nominal, units.ErrRange)
		}
		if err := e.checkPiston(s.Piston, s.Over); err != nil {
			return &PlaceError{Cylinder: -1, Size: i, Err: err}
		}
	}
	return nil
}

// checkPiston refuses a piston that does not suit a fresh bore of the size it is given for, and is
// nearer to another size or larger than all.
func (e *Engine) checkPiston(p fit.Piston, over units.Length) error {
	if p.IsZero() {
		return nil
	}
	skirt, err := p.Skirt()
	if err != nil {
		return err
	}
	fresh := e.NewBore
	if fresh.IsZero() {
		fresh = units.Limits{Min: e.Nominal, Max: e.Nominal}
	}
	if skirt.Value+e.Clearance.Max >= fresh.Min+over && skirt.Value+e.Clearance.Min <= fresh.Max+over {
		return nil // it suits a fresh bore of its size
	}
	standard, _ := fresh.Middle()
	clearance, _ := e.Clearance.Middle()
	off := skirt.Value + clearance - standard
	greatest, room := units.Length(0), leastRoom
	nearer := func(o units.Length) error {
		if (off - o).Abs() < (off - over).Abs() {
			return fmt.Errorf("oversize: piston of %v for the size %v over %v is nearer to %v over: %w", skirt.Value, over, e.Nominal, o, ErrPiston)
		}
		return nil
	}
	err = nearer(0)
	for _, s := range e.Sizes {
		if s.Over > 0 {
			room = (s.Over - greatest) / 2
		}
		greatest = s.Over
		if err == nil {
			err = nearer(s.Over)
		}
	}
	if greatest = max(greatest, over); off > greatest+room {
		return fmt.Errorf("oversize: piston of %v is larger than every size on offer, up to %v over %v: %w", skirt.Value, greatest, e.Nominal, ErrPiston)
	}
	return err
}

// leastRoom is how far a piston may be from the standard size where no step says more.
const leastRoom = units.Millimetre / 10

func (e *Engine) validateCylinder(c *Cylinder) error {
	name := func(err error) error { return fmt.Errorf("oversize: cylinder %q: %w", c.Name, err) }
	for _, x := range []uncertainty.Estimate{c.Largest, c.Smallest, c.ThinnestWall,
		c.CleanUp.Original.Min, c.CleanUp.Original.Max, c.CleanUp.Worn.Min, c.CleanUp.Worn.Max} {
		if err := x.Validate(); err != nil {
			return name(err)
		}
		if x.Value > most || x.Std > most/100 {
			return name(fmt.Errorf("%v: %w (up to %v)", x, units.ErrRange, most))
		}
	}
	low, high := e.Nominal-e.Nominal/10, e.Nominal+c.Over+e.Nominal/10
	switch {
	case c.Over < 0 || c.Over > e.Nominal:
		return name(fmt.Errorf("stands at %v over: %w (0 to %v)", c.Over, units.ErrRange, e.Nominal))
	case c.Smallest.Value < low || c.Largest.Value > high:
		return name(fmt.Errorf("sizes %v to %v: %w (%v to %v)", c.Smallest.Value, c.Largest.Value, units.ErrRange, low, high))
	case c.Smallest.Value > c.Largest.Value:
		return name(fmt.Errorf("smallest size %v above the largest, %v: %w", c.Smallest.Value, c.Largest.Value, units.ErrCrossed))
	case c.ThinnestWall.Value < 0:
		return name(fmt.Errorf("thinnest wall %v: %w (0 or more)", c.ThinnestWall.Value, units.ErrRange))
	case c.CleanUp.Shift < 0 || c.CleanUp.Shift > e.Nominal/10:
		return name(fmt.Errorf("shift of the axis %v: %w (0 to %v)", c.CleanUp.Shift, units.ErrRange, e.Nominal/10))
	}
	for _, p := range c.CleanUp.Pits {
		if p.Below <= 0 || p.Below > e.Nominal/10 {
			return name(fmt.Errorf("pit %v below the wall: %w (above 0, up to %v)", p.Below, units.ErrRange, e.Nominal/10))
		}
	}
	if e.Wall == Plated || e.Wall == BareAlSi {
		return nil // nothing is bored
	}
	for _, i := range []bore.Interval{c.CleanUp.Original, c.CleanUp.Worn} {
		if i.Min.Value < c.Largest.Value || i.Max.Value < i.Min.Value {
			return name(fmt.Errorf("clean-up %v to %v of a bore of up to %v: %w", i.Min.Value, i.Max.Value, c.Largest.Value, units.ErrCrossed))
		}
	}
	if err := e.checkPiston(c.Piston, c.PistonFor); err != nil {
		return name(err)
	}
	return nil
}

// pistonFor returns the piston for a size: the cylinder's own where it is for that size, else
// that of the series, else none.
func (e *Engine) pistonFor(c *Cylinder, over units.Length) fit.Piston {
	if !c.Piston.IsZero() && c.PistonFor == over {
		return c.Piston
	}
	for _, s := range e.Sizes {
		if s.Over == over {
			return s.Piston
		}
	}
	return fit.Piston{}
}
