// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/units"
)

// A Grit is a range of grit, the number that abrasives are sold by (a higher one is finer), that a source
// names for a purpose on a bare iron wall.
type Grit struct {
	For    string `json:"for"`    // the purpose
	Coarse int    `json:"coarse"` // coarsest number named
	Fine   int    `json:"fine"`   // finest, not below Coarse
	Source string `json:"source"` // a manual, or "common practice"
}

// Grits returns what sources name, the coarsest first. They agree on no more than this, and the maker of the
// rings outranks them. None is for a plated or a bare aluminium-silicon wall: those are not honed so.
//
// No source was found that ties a grit to a roughness: that hangs on the abrasive, its bond, the oil and the
// pressure as well. See [Finishes] for roughness.
func Grits() []Grit {
	return []Grit{
		{"breaking the glaze of a small air-cooled cylinder", 80, 100, "US Army TM 10-4320-351-14, 6.4.5"},
		{"breaking the glaze of a liner", 120, 120, "US Army TM 9-2815-202-34; TM 5-3895-346-14"},
		{"last honing for plain iron or chromium-faced rings", 180, 220, commonPractice + ", from memory"},
		{"last honing for molybdenum-faced rings", 220, 320, commonPractice + ", from memory"},
	}
}

// A Finish is the roughness that a source asks of a bore, or finds in it.
type Finish struct {
	Of        string       `json:"of"`        // the surface
	Roughness units.Limits `json:"roughness"` // as printed, both ends
	Measure   string       `json:"measure"`   // "Ra", or "rms", which reads the same surface higher
	Source    string       `json:"source"`    // a manual or handbook
}

// Finishes returns roughness as sources print it, the coarsest first.
func Finishes() []Finish {
	const um, liner = units.Micrometre, "US Army TM 5-3895-382-24, liner hone specifications"
	return []Finish{
		{"a liner honed to 99.950 mm, of 100.017 mm in the end", units.Limits{Min: 22 * um / 10, Max: 3 * um}, "Ra", liner},
		{"the same at 100.012 mm", units.Limits{Min: 13 * um / 10, Max: 16 * um / 10}, "Ra", liner},
		{"the same, finished at 100.017 mm", units.Limits{Min: 65 * um / 100, Max: 13 * um / 10}, "Ra", liner},
		{"honed surfaces, most common range", units.Limits{Min: 3 * units.Microinch, Max: 50 * units.Microinch}, "rms",
			"Machinery's Handbook, 31st ed., p. 1338"},
	}
}

// Fits reports whether a tool is of a size for a bore that is honed from one diameter to another; it returns
// nil, or why it is not. For rigid stones size is from the least diameter that they draw in to, to the
// greatest they open to: they must go in freely and still reach the last size. For a ball-type or brush
// hone it is the diameter of the free tool, Min alone or Min to Max: it presses only by being larger
// than the bore, up to the last size. By how much is for its maker to say; such tools are mostly sold by
// the bore they are for, and are larger themselves (common practice).
//
// A tool that does not fit is [ErrRoom], a kind that is not given [ErrNotGiven].
func (k Kind) Fits(size units.Limits, from, to units.Length) error {
	if err := (Stock{From: from, To: to, Depth: units.Millimetre}).check(); err != nil {
		return err
	}
	if err := checkLength("size of the tool", size.Min); err != nil {
		return err
	}
	switch k {
	case BallType, BrushType:
		if size.Min <= to {
			return fmt.Errorf("hone: %v of %v in a bore up to %v: %w: want it larger, or it does not press", k, size.Min, to, ErrRoom)
		}
	case RigidStone:
		if size.Min >= from || size.Max < to {
			return fmt.Errorf("hone: %v of %v in a bore from %v to %v: %w: want it to go in and to reach the last size", k, size, from, to, ErrRoom)
		}
	case KindUnknown:
		return fmt.Errorf("hone: kind of hone: %w", ErrNotGiven)
	default:
		return fmt.Errorf("hone: kind of hone %v: %w", k, units.ErrRange)
	}
	return nil
}
