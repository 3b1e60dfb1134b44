// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"fmt"
	"math"
	"time"

	"borewright.example/units"
)

// What [Operation.Kind] says of the two operations that end at a size to stop at.
const (
	FinishBore = "finish bore" // one cut to the bored size
	FinishHone = "finish hone" // to size and crosshatch
)

// An Operation is one step, its sizes being diameters at 20 °C.
type Operation struct {
	// Kind is what is done: "rough bore", to a little under the bored size, [FinishBore], "mouth chamfer" and "bottom
	// chamfer", so that rings enter and no edge tears the stones, "rough hone", which takes the marks of the boring
	// tool away, [FinishHone], and "plateau hone", which takes the peaks off; "hone" where it is done in one.
	Kind   string        `json:"kind"`
	Before units.Length  `json:"before"`           // size at its start
	After  units.Length  `json:"after"`            // size at its end
	Stock  units.Length  `json:"stock,omitzero"`   // on the diameter; zero for a chamfer
	Passes int           `json:"passes,omitzero"`  // of boring; zero for anything else
	Depth  units.Length  `json:"depth,omitzero"`   // of cut of each pass, radial, rounded up
	Time   time.Duration `json:"time_ns,omitzero"` // of boring; in JSON nanoseconds; zero where feed, speed or length is not given
}

// A Shop is how a workshop divides the stock. Zero lengths leave the operation out; stock is on
// the diameter.
type Shop struct {
	MostDepth  units.Length    `json:"most_depth,omitzero"`  // greatest depth of a rough cut, radial
	FinishBore units.Length    `json:"finish_bore,omitzero"` // stock of the last cut; about 0.05 mm near size is common practice
	FinishHone units.Length    `json:"finish_hone,omitzero"` // stock of finish honing
	Plateau    units.Length    `json:"plateau,omitzero"`     // stock of plateau honing
	BothEnds   bool            `json:"both_ends,omitzero"`   // rings enter from below: the bottom wants a chamfer too
	Length     units.Length    `json:"length,omitzero"`      // to be bored, with the run-in and run-out of the tool
	Feed       units.Length    `json:"feed,omitzero"`        // a turn
	Spindle    units.Frequency `json:"spindle,omitzero"`     // of the boring bar
}

// Cuts returns what is done from the present size to the finished one, in order, their stock
// adding up to all there is to remove. from is the smallest reading, where most comes off;
// bored is the size to bore to, or zero where the bore is honed alone; to is the size to stop
// at.
//
// Chamfers are restored after boring and before honing, which takes their edges off.
//
// Sizes that do not rise, and shares of the stock that are negative or larger than their whole,
// are [units.ErrRange]; so are a depth of cut of zero where a rough cut is wanted, one that would
// want more than 1000 passes, a feed above the length, and a speed or feed out of range; a time beyond a year.
func (s Shop) Cuts(from, bored, to units.Length) ([]Operation, error) {
	for _, l := range []units.Length{s.MostDepth, s.FinishBore, s.FinishHone, s.Plateau} {
		if l < 0 || l > most {
			return nil, refuseLength("share of the stock", l)
		}
	}
	if err := checkSize("present size", from); err != nil {
		return nil, err
	}
	if err := checkSize("finished size", to); err != nil {
		return nil, err
	}
	if bored != 0 && bored < from || max(bored, from) > to {
		return nil, fmt.Errorf("oversize: from %v, bored to %v, finished at %v: %w (rising)", from, bored, to, units.ErrRange)
	}
	var list []Operation
	at := from
	add := func(kind string, after units.Length) {
		list = append(list, Operation{Kind: kind, Before: at, After: after, Stock: after - at})
		at = after
	}
	if bored > from {
		if rough := bored - s.FinishBore; rough > at {
			if err := s.rough(&list, at, rough); err != nil {
				return nil, err
			}
			at = rough
		}
		if bored > at {
			add(FinishBore, bored)
			if err := s.cut(&list[len(list)-1], 1); err != nil {
				return nil, err
			}
		}
		add("mouth chamfer", bored)
		if s.BothEnds {
			add("bottom chamfer", bored)
		}
	}
	last := s.FinishHone + s.Plateau
	if to-at < last {
		return nil, fmt.Errorf("oversize: %v left for honing, of which finish and plateau want %v: %w", to-at, last, units.ErrRange)
	}
	first := "rough hone"
	if last == 0 {
		first = "hone"
	}
	for _, hone := range []struct {
		kind  string
		after units.Length
	}{{first, to - last}, {FinishHone, to - s.Plateau}, {"plateau hone", to}} {
		if hone.after > at {
			add(hone.kind, hone.after)
		}
	}
	return list, nil
}

// rough adds rough boring in equal passes, none deeper than the greatest depth.
func (s Shop) rough(list *[]Operation, from, to units.Length) error {
	stock := to - from
	if s.MostDepth <= 0 || stock/s.MostDepth > 2*mostPasses {
		return fmt.Errorf("oversize: %v to bore in cuts of %v: %w (at most %d passes)", stock, s.MostDepth, units.ErrRange, mostPasses)
	}
	o := Operation{Kind: "rough bore", Before: from, After: to, Stock: stock}
	if err := s.cut(&o, int((stock+2*s.MostDepth-1)/(2*s.MostDepth))); err != nil {
		return err
	}
	*list = append(*list, o)
	return nil
}

const mostPasses = 1000

// cut sets the passes of an operation, their depth and their time.
func (s Shop) cut(o *Operation, passes int) error {
	o.Passes = passes
	per := units.Length(2 * passes)
	o.Depth = (o.Stock + per - 1) / per
	if s.Length == 0 || s.Feed == 0 || s.Spindle == 0 {
		return nil
	}
	var err error
	o.Time, err = boringTime(s.Length, s.Feed, s.Spindle, passes)
	return err
}

// boringTime returns how long the passes take, length/(feed·spindle) each: what the tool is
// fed, without setting up and running back.
func boringTime(length, feed units.Length, spindle units.Frequency, passes int) (time.Duration, error) {
	if err := checkSize("length bored", length); err != nil {
		return 0, err
	}
	if err := checkSize("feed", feed); err != nil {
		return 0, err
	}
	const year = 365 * 24 * time.Hour
	s := length.In(feed) / float64(spindle)
	one := time.Duration(math.Round(min(s, year.Seconds()) * float64(time.Second)))
	if !(s > 0 && s <= year.Seconds()) || feed > length || passes < 1 || passes > int(year/max(one, 1)) {
		return 0, fmt.Errorf("oversize: %d passes of %v at %v a turn and %v: %w", passes, length, feed, spindle, units.ErrRange)
	}
	return one * time.Duration(passes), nil
}
