// SPDX-License-Identifier: BSD-3-Clause

package trace

import (
	"slices"

	"borewright.example/bore"
	"borewright.example/units/uncertainty"
)

// Traces beside readings of one bore: what both cannot show, and what either finds.

// OfTravel reports whether a blind spot is one along ring travel.
func OfTravel(u bore.Unseen) bool {
	return slices.Contains([]bore.Unseen{bore.UnseenTravel, bore.UnseenTop, bore.UnseenMiddle, bore.UnseenBottom}, u)
}

// ofPlanes are the blind spots of diameters in each plane that traces from end to end of ring travel do not have,
// though the diameters of the traces may; a trace at one depth shows none of them at another.
var ofPlanes = []bore.Unseen{
	bore.UnseenOvality, bore.UnseenBetweenAxes, bore.UnseenFolded, bore.UnseenFourLobes, bore.UnseenHigherLobes, bore.UnseenOddLobes,
	bore.UnseenLobesInSize, bore.UnseenCentre,
}

// Unseen returns, of what readings cannot show, what traces do not show either: diameters has the blind spots of the traces read
// as diameters, whole those of the traces themselves.
func Unseen(readings, diameters, whole []bore.Unseen) []bore.Unseen {
	all := !slices.ContainsFunc(whole, OfTravel)
	return slices.DeleteFunc(slices.Clone(readings), func(u bore.Unseen) bool {
		if slices.Contains(ofPlanes, u) {
			return all && (!slices.Contains(diameters, u) || len(whole) == 0)
		}
		return !slices.Contains(diameters, u)
	})
}

// Worse returns, for each finding of the readings, the worse of that and the traces' on the same limit; where only one of the two
// was measured, that one.
func Worse(read, traced []bore.Finding) []bore.Finding {
	worst := func(v uncertainty.Verdict) int {
		return slices.Index([]uncertainty.Verdict{uncertainty.Within, uncertainty.Undecided, uncertainty.Beyond}, v)
	}
	all := slices.Clone(read)
	for i, f := range all {
		for _, q := range traced {
			if q.Limit == f.Limit && !q.NotMeasured && (f.NotMeasured || worst(q.Verdict) > worst(f.Verdict)) {
				all[i] = q
			}
		}
	}
	return all
}
