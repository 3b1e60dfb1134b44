// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"math"
	"slices"
)

// What is held of a lens before the picture is seen, as standard uncertainties. Of cameras the focal length
// is taken as usualFocal times the longer side of the picture, within a factor of e^focalDoubt: common
// practice, from 18 mm to 100 mm on the frame of 36 mm. The axis of the lens meets a whole picture in its
// middle, within 2 % of its longer side; where the picture may have been cropped, anywhere in it. A lens that
// bends shows the corners of the picture farther out or in than one without distortion.
const (
	usualFocal  = 1.1
	focalDoubt  = 0.6
	knownFocal  = 0.03
	wholeMiddle = 0.02
	cropMiddle  = 0.30
	bendDoubt   = 0.015 // at the corners of the picture, in parts of their distance from the middle
)

// A fitted is a pose that fits the corners.
type fitted struct {
	pose
	misfit float64 // sum of squares, each in its standard uncertainty
	slopes slopes
}

// A sight is all that the fit of a pose is given.
type sight struct {
	places  [4]space // of the corners, mm
	corners [4]Pixel // in the picture, pixels
	radius  float64
	marking float64 // standard uncertainty of a coordinate of a corner, pixels

	logFocal, focalStd float64
	mid                Pixel
	midStd             float64
	corner             float64 // of the picture, from mid, pixels
}

// far stands in for a residual that does not exist, as of a corner behind the camera.
const far = 1e6

func (g *sight) residuals(p *pose) (r outcome) {
	for i, at := range g.places {
		q, ok := p.see(at)
		if !ok {
			q = Pixel{far, far}
		}
		r[2*i] = (q.X - g.corners[i].X) / g.marking
		r[2*i+1] = (q.Y - g.corners[i].Y) / g.marking
	}
	r[8] = (math.Log(p.focal) - g.logFocal) / g.focalStd
	r[9] = (p.mid.X - g.mid.X) / g.midStd
	r[10] = (p.mid.Y - g.mid.Y) / g.midStd
	return r
}

// slopes returns the slopes of the residuals by central differences.
func (g *sight) slopes(p *pose) (j slopes) {
	for i := range unknowns {
		h := 1e-6
		if i >= 7 {
			h = 1e-3 // pixels
		}
		var d vector
		d[i] = h
		up := p.moved(d)
		d[i] = -h
		down := p.moved(d)
		hi, lo := g.residuals(&up), g.residuals(&down)
		for n := range residuals {
			j[n][i] = (hi[n] - lo[n]) / (2 * h)
		}
	}
	return j
}

// refine improves a pose by Levenberg and Marquardt's method.
func (g *sight) refine(p pose) (fitted, bool) {
	r := g.residuals(&p)
	f := fitted{pose: p, misfit: r.square()}
	damping := 1e-3
	for range 60 {
		f.slopes = g.slopes(&f.pose)
		b := f.slopes.down(&r)
		moved := false
		for ; damping < 1e8; damping *= 10 {
			l, ok := f.slopes.factorize(damping)
			if !ok {
				continue
			}
			next := f.moved(l.solve(b))
			nr := g.residuals(&next)
			if s := nr.square(); s < f.misfit {
				moved = f.misfit-s > 1e-9*(1+s)
				f.pose, f.misfit, r = next, s, nr
				damping /= 10
				break
			}
		}
		if !moved {
			break
		}
		damping = max(damping/3, 1e-9)
	}
	f.slopes = g.slopes(&f.pose)
	_, ok := f.slopes.factorize(1e-12)
	return f, ok && !math.IsNaN(f.misfit) && f.misfit < far
}

// start returns a pose with those tilts of the camera, turned, shifted and placed so that the label comes
// about where its corners are.
func (g *sight) start(tiltX, tiltY float64) (pose, bool) {
	p := pose{focal: math.Exp(g.logFocal), mid: g.mid, radius: g.radius}
	p.rot = turned(turned([3]space{{1, 0, 0}, {0, -1, 0}, {0, 0, -1}}, space{0, tiltY, 0}), space{tiltX, 0, 0})
	var middle Pixel
	for _, c := range g.corners {
		middle.X += c.X / 4
		middle.Y += c.Y / 4
	}
	size := func(at func(i int) (x, y float64)) (size, turn float64) {
		x0, y0 := at(0)
		x1, y1 := at(1)
		x2, y2 := at(2)
		x3, y3 := at(3)
		return math.Hypot(x2-x0, y2-y0) + math.Hypot(x3-x1, y3-y1), math.Atan2(y1+y2-y0-y3, x1+x2-x0-x3)
	}
	flat := func(i int) (x, y float64) { return dot(p.rot[0], g.places[i]), dot(p.rot[1], g.places[i]) }
	seen, seenTurn := size(func(i int) (x, y float64) { return g.corners[i].X, g.corners[i].Y })
	own, ownTurn := size(flat)
	p.rot = turned(p.rot, space{0, 0, seenTurn - ownTurn})
	depth := p.focal * own / seen
	p.shift = space{(middle.X - p.mid.X) * own / seen, (middle.Y - p.mid.Y) * own / seen, depth}
	return p, depth > 0 && !math.IsInf(depth, 0)
}

// worstTilt is beyond which a label is too thin a line to carry a scale.
const worstTilt = 65 * math.Pi / 180

// fits returns the poses that fit the corners, best first: of a small flat thing seen from
// afar, two tilts look nearly alike.
func (g *sight) fits() []fitted {
	var all []fitted
	for _, tiltX := range []float64{-0.8, -0.3, 0.3, 0.8} {
		for _, tiltY := range []float64{-0.6, 0, 0.6} {
			p, ok := g.start(tiltX, tiltY)
			if !ok {
				continue
			}
			f, ok := g.refine(p)
			if !ok || f.misfit > mostMisfit || f.tilt() > worstTilt {
				continue
			}
			all = append(all, f)
		}
	}
	slices.SortStableFunc(all, func(a, b fitted) int {
		switch {
		case a.misfit < b.misfit:
			return -1
		case a.misfit > b.misfit:
			return 1
		}
		return 0
	})
	apart := all[:0]
	for _, f := range all {
		if !slices.ContainsFunc(apart, func(o fitted) bool { return near(&f.pose, &o.pose) }) {
			apart = append(apart, f)
		}
	}
	return apart
}

// near reports poses that are turned by less than a third of a degree from one another.
func near(a, b *pose) bool {
	var trace float64
	for i := range 3 {
		trace += dot(a.rot[i], b.rot[i])
	}
	return trace > 1+2*math.Cos(0.006)
}

// mostMisfit is what the sum of squares of a fit may come to: it has two degrees of freedom, and is above this
// once in 8,000 times by chance.
const mostMisfit = 18.0

// place returns the poses that fit, best first, and refuses corners that none fits, or that fit a quarter turn
// round as well.
func (g *sight) place(l Label) ([]fitted, error) {
	fs := g.fits()
	if len(fs) == 0 {
		return nil, fmt.Errorf("photo: %w: no camera sees a label of %v by %v so, tilted by up to %.0f°, on the wall of a bore of %.4g mm",
			ErrCorners, l.Round, l.Along, worstTilt*toDegrees, 2*g.radius)
	}
	if l.Arrowed {
		return fs, nil
	}
	turned := *g
	for i := range turned.corners {
		turned.corners[i] = g.corners[(i+1)%4]
	}
	if len(turned.fits()) > 0 {
		return nil, fmt.Errorf("photo: %w: a label of %v by %v fits them a quarter turn round as well: want an oblong, or an arrow on it",
			ErrCorners, l.Round, l.Along)
	}
	return fs, nil
}

// parts returns by how far each unknown moves with one standard uncertainty of each residual's input.
func (f *fitted) parts() (moves [residuals]vector, err error) {
	l, ok := f.slopes.factorize(1e-12)
	if !ok {
		return moves, fmt.Errorf("photo: %w: they leave the place of the camera open", ErrCorners)
	}
	for n := range residuals {
		moves[n] = l.solve(f.slopes[n])
	}
	return moves, nil
}
