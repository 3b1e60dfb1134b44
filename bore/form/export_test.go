// SPDX-License-Identifier: BSD-3-Clause

package form

// TraceOf is a trace of points in mm, not rounded to picometres.
func TraceOf(x, y []float64) Trace { return Trace{x: x, y: y} }

// XY are the points in mm from the origin.
func (t Trace) XY() (x, y []float64) { return t.x, t.y }

// OriginOf is the point that XY counts from.
func OriginOf(t Trace) Point { return t.origin }

// A Ring is an answer before it is rounded, in mm.
type Ring struct {
	X, Y, In, Out, R, Bound float64
	Contacts                []Contact
	Searched, OK            bool
}

// Solve is the kernel of each reference circle.
func Solve(kind Reference, t Trace) Ring {
	var w Workspace
	if kind == LSCI {
		x, y, r, _, ok := leastSquares(t.x, t.y)
		return Ring{X: x, Y: y, R: r, OK: ok}
	}
	z, ok := w.solve(kind, t.x, t.y)
	var bound float64
	var searched bool
	if kind != MCCI {
		z, bound, searched = w.prove(kind, t.x, t.y, z, ok)
		ok = bound < 1e300
	}
	return Ring{z.x, z.y, z.in, z.out, (z.in + z.out) / 2, bound, z.contacts[:z.n], searched, ok}
}

// An Upright is a cylinder before it is rounded, in mm from the wall's origin: where its axis passes the depth of that,
// how far it leans for each millimetre of depth, and its radius.
type Upright struct{ X, Y, LeanX, LeanY, R float64 }

func (p *pose) upright(r float64) Upright {
	ax, ay := p.w[0]/p.w[2], p.w[1]/p.w[2]
	return Upright{p.c[0] - float64(p.c[2]*ax), p.c[1] - float64(p.c[2]*ay), ax, ay, r}
}

// AlgebraicCylinder and LeastSquaresCylinder are the kernels of the least-squares cylinder.
func AlgebraicCylinder(w Wall) Upright {
	low, high := extremes(w.z)
	p, r, _, _ := algebraicCylinder(w.x, w.y, w.z, (high-low)/2)
	return p.upright(r)
}

func LeastSquaresCylinder(w Wall) (c Upright, rms float64) {
	f, _ := startCylinder(w.x, w.y, w.z)
	return f.upright(f.r), f.rms
}

// Points are those of the wall, in mm from its origin.
func (w Wall) Points() (x, y, z []float64) { return w.x, w.y, w.z }

// Tilt gives the first contact a little of the weight of the second.
func (c *Certificate) Tilt(by float64) {
	c.contacts[0].Weight += by
	c.contacts[1].Weight -= by
}

// Hull and StripWidth are tested against brute force.
var (
	Hull       = hull
	StripWidth = stripWidth
)

// Replace puts another point in the place of a contact, Drop leaves out the last.
func (c *Certificate) Replace(k, index int) { c.contacts[k].Index = index }

func (c *Certificate) Drop() {
	c.n--
	c.contacts[c.n] = Contact{}
}

// Margins are the bounds of the second and the third order of a move of size m.
func Margins(kind Reference, in, out, length, m float64) (third, bent, total float64) {
	p := margin{in: in, out: out, length: length, outer: kind != MICY, inner: kind != MCCY}
	p.bend()
	return p.third(m), p.bent, p.total
}

// Closure is that of a wall about the axis of a cylinder.
func Closure(c Cylinder, w Wall) float64 {
	s, _ := c.sight(w)
	return s.closure()
}

// Growth is how fast the contacts of a cylinder make it worse, and how stiffly their bending holds the rest.
func Growth(c Cylinder, w Wall) (growth, stiff float64) {
	s, _ := c.sight(w)
	return c.growth(s)
}

// A Margin is what holds, and how far, of contacts with such a growth.
type Margin struct {
	Growth, Stiff, In, Out, Length float64
	Kind                           Reference
}

func (m Margin) of() margin {
	p := margin{growth: m.Growth, stiff: m.Stiff, in: m.In, out: m.Out, length: m.Length, outer: m.Kind != MICY, inner: m.Kind != MCCY}
	p.bend()
	return p
}

func (m Margin) Holds(move float64) bool { return m.of().holds(move) }
func (m Margin) Reach() float64          { return m.of().reach() }
func (m Margin) Lost(unbalanced, move float64) float64 {
	p := m.of()
	p.unbalanced = unbalanced
	return p.lost(move)
}

// Widest is the widest gap of the directions, in radians, as the sectors round a diamond show it.
func Widest(angles []float64) float64 {
	var taken [sectors]bool
	r := newRose()
	for _, a := range angles {
		for i := range taken {
			if r[i] <= a && a < r[i+1] {
				taken[i] = true
			}
		}
	}
	return r.widest(&taken)
}

// Workspace is what the benchmarks keep from trace to trace: it answers as Trace and Wall do.
type Workspace struct{ workspace }

func (w *Workspace) LeastSquares(t Trace) (Circle, error)         { return t.LeastSquares() }
func (w *Workspace) MinimumZone(t Trace) (Circle, error)          { return w.minimax(MZCI, t, 4) }
func (w *Workspace) MinimumCircumscribed(t Trace) (Circle, error) { return w.minimax(MCCI, t, 3) }
func (w *Workspace) MaximumInscribed(t Trace) (Circle, error)     { return w.minimax(MICI, t, 3) }
func (w *Workspace) Cylinder(kind Reference, of Wall) (Cylinder, error) {
	return w.cylinder(kind, of)
}

// Len counts the points of a wall.
func (w Wall) Len() int { return w.len() }
