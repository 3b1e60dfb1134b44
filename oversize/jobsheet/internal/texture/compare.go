// SPDX-License-Identifier: BSD-3-Clause

package texture

import (
	"fmt"
	"math"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// Same reports whether two textures are alike to the last digit in all that both have, and that in more than two places
// hardly share: three parameters.
func Same(a, b *surface.Texture) bool {
	const tellApart = 3
	same := 0
	for _, p := range [...][2]units.Length{{a.Ra, b.Ra}, {a.Rq, b.Rq}, {a.Rz, b.Rz}, {a.Rt, b.Rt}, {a.Rpk, b.Rpk}, {a.Rk, b.Rk}, {a.Rvk, b.Rvk}} {
		if p[0] == 0 || p[1] == 0 {
			continue
		}
		if p[0] != p[1] {
			return false
		}
		same++
	}
	return same >= tellApart && (a.Mr1 == b.Mr1 || a.Mr1 == 0 || b.Mr1 == 0) && (a.Mr2 == b.Mr2 || a.Mr2 == 0 || b.Mr2 == 0)
}

// How far the parameters that an instrument shows at a place may lie from those of a profile there: other filters and a line
// beside it are worth some of that, a point that is moved is not. This library's own judgement.
const (
	mostTimes = 1.5
	mostShare = 0.10
)

// A Difference is a parameter of which an instrument and a profile of one place show other values.
type Difference struct {
	Name  string // of the parameter in a job, "rpk"
	Read  any    // what the instrument showed
	Shown string // what the profile shows
}

// Apart returns the parameters of a texture that are too far from those of a profile; one that was not read is none.
func Apart(read, shown surface.Texture) (list []Difference) {
	for _, v := range [...]struct {
		name        string
		read, shown units.Length
	}{{"ra", read.Ra, shown.Ra}, {"rq", read.Rq, shown.Rq}, {"rpk", read.Rpk, shown.Rpk}, {"rk", read.Rk, shown.Rk}, {"rvk", read.Rvk, shown.Rvk}} {
		if v.read != 0 && float64(max(v.read, v.shown)) > float64(min(v.read, v.shown))*mostTimes {
			list = append(list, Difference{v.name, v.read, v.shown.Format(units.Micrometre, 3)})
		}
	}
	for _, v := range [...]struct {
		name        string
		read, shown float64
	}{{"mr1", read.Mr1, shown.Mr1}, {"mr2", read.Mr2, shown.Mr2}} {
		if v.read != 0 && !(math.Abs(v.read-v.shown) <= mostShare) {
			list = append(list, Difference{v.name, v.read, fmt.Sprintf("%.3f", v.shown)})
		}
	}
	return list
}
