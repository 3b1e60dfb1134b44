// SPDX-License-Identifier: BSD-3-Clause

// Package show puts what the rooms find in the words and the figures of a bench.
//
// A size is printed to a micrometre, or a tenth of a thou; a gap to what feeler gauges have, a depth to what a rule has. A
// doubt is rounded up, a window inward, so that what is printed never says more than what was found. Where a bench
// works in both units every length stands in both, "78.502 mm = 3.0906 in". How many digits there are and how they
// round is this library's own; that a doubt keeps two of them, and the value the same place, is JCGM 100, 7.2.6.
package show

import (
	"iter"
	"strings"

	"borewright.example/units"
)

// In is the units that are shown: millimetres, inches, or the one and then the other. The second is 0 where there is one.
type In [2]units.Length

// First is the unit that comes first.
func (s In) First() units.Length { return s[0] }

// Units returns the units, each by itself.
func (s In) Units() (list []In) {
	for _, u := range s {
		if u != 0 {
			list = append(list, In{u})
		}
	}
	return list
}

// Written returns the units in which the lengths among texts are written; millimetres where there are none.
func Written(texts iter.Seq[string]) In {
	metric, inch := false, false
	for text := range texts {
		l, err := units.ParseLength(text)
		_, errs := units.ParseLimits(text)
		if err != nil && errs != nil || err == nil && l == 0 {
			continue // no length, or one that is the same in any unit
		}
		inches := strings.HasSuffix(text, "in") || strings.HasSuffix(text, "thou") || strings.HasSuffix(text, `"`) || strings.HasSuffix(text, "″")
		inch = inch || inches
		metric = metric || !inches && strings.HasSuffix(text, "m")
	}
	switch {
	case metric && inch:
		return In{units.Millimetre, units.Inch}
	case inch:
		return In{units.Inch}
	}
	return In{units.Millimetre}
}
