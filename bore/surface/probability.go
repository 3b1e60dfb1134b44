// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A TwoProcess is a wall as two processes one over the other, each of normally distributed heights: the
// base that left the valleys, and the plateau over it (ISO 13565-3, withdrawn in 2021; ISO 21920-2, 4.5.4).
type TwoProcess struct {
	Rpq units.Length `json:"rpq"` // root mean square roughness of the plateaus
	Rvq units.Length `json:"rvq"` // and of the process that left the valleys
	Rmq float64      `json:"rmq"` // material ratio at which one goes over into the other, 0 to 1
}

// String returns the three numbers in a line.
func (t TwoProcess) String() string {
	return fmt.Sprintf("Rpq %s, Rvq %s, Rmq %s", fine(t.Rpq), fine(t.Rvq), percent(t.Rmq))
}

// On the normal scale the curve is looked at from −3 to 3 standard deviations, which leaves the highest
// and the lowest 0.13 % out, at even steps; each line has at least so many of these.
const (
	normalEnd   = 3.0
	normalSteps = 300
	leastSteps  = 15
	apart       = 1.1
)

// TwoProcess returns the two lines of which the curve consists on a normal probability scale: over the
// quantile q of the standard normal distribution that the ratio is reached by, normally distributed heights
// lie on a straight line that falls by their deviation. The curve is cut in two where two least-squares
// lines together fit best; their slopes are Rpq and Rvq, and they cross at Rmq.
//
// ISO 13565-3 finds the two regions by a conic section fitted to the curve and leaves the bends out: its
// numbers differ where the bends are wide. From memory, and from the definition.
//
// Where the second line is not the steeper by a tenth at least (this library's own judgement, so that scatter
// makes no second process), or the two do not cross within three deviations, it is ErrOneProcess.
func (c Curve) TwoProcess() (TwoProcess, error) {
	none := fmt.Errorf("surface: curve on the normal scale: %w", ErrOneProcess)
	if len(c.z) == 0 {
		return TwoProcess{}, none
	}
	const n = normalSteps + 1
	var q, z [n]float64
	for i := range q {
		q[i] = -normalEnd + 2*normalEnd*float64(i)/normalSteps
		z[i] = c.at(math.Erfc(-q[i]/math.Sqrt2) / 2)
	}
	var before sums // of the points up to the cut
	var all sums
	for i := range q {
		all.add(q[i], z[i])
	}
	best := math.Inf(1)
	var plateau, valley line
	for i := range n - leastSteps {
		before.add(q[i], z[i])
		if i+1 < leastSteps {
			continue
		}
		a, b := before.fit(), all.less(before).fit()
		if s := a.squares + b.squares; s < best {
			best, plateau, valley = s, a, b
		}
	}
	rpq, rvq := max(0, -plateau.slope), max(0, -valley.slope)
	cross := (valley.at0 - plateau.at0) / (plateau.slope - valley.slope)
	if !(rvq > apart*rpq && math.Abs(cross) <= normalEnd) {
		return TwoProcess{}, none
	}
	return TwoProcess{um(rpq), um(rvq), roundShare(math.Erfc(-cross/math.Sqrt2) / 2)}, nil
}

// sums are what a least-squares line needs of its points.
type sums struct{ n, x, y, xx, xy, yy float64 }

func (s *sums) add(x, y float64) {
	*s = sums{s.n + 1, s.x + x, s.y + y, s.xx + float64(x*x), s.xy + float64(x*y), s.yy + float64(y*y)}
}

func (s sums) less(o sums) sums {
	return sums{s.n - o.n, s.x - o.x, s.y - o.y, s.xx - o.xx, s.xy - o.xy, s.yy - o.yy}
}

// A line is a least-squares line with the sum of the squares off it.
type line struct{ at0, slope, squares float64 }

func (s sums) fit() line {
	mx, my := s.x/s.n, s.y/s.n
	sxy, sxx := s.xy-float64(s.x*my), s.xx-float64(s.x*mx)
	slope := sxy / sxx
	return line{my - float64(slope*mx), slope, s.yy - float64(s.y*my) - float64(slope*sxy)}
}
