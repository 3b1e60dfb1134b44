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
	p, r, _, _ := algebraicCylinder(w.x, w.y, w.z, (w.high-w.low)/2)
	return p.upright(r)
}

func LeastSquaresCylinder(w Wall) (c Upright, rms float64) {
	f, _ := w.start(w.x, w.y, w.z)
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

// A Region is that of moves of no part above half, cut by faces.
type Region struct{ region }

func Cube(half float64) *Region {
	var r Region
	r.cube(half)
	return &r
}

func (r *Region) Cut(face [4]float64, at float64) bool { return r.cut(&face, at, 1e-12) }

func (r *Region) Corners() (all [][4]float64) {
	for _, c := range r.corners[:r.n] {
		all = append(all, c.at)
	}
	return all
}

// A Look is a search from the axis of a cylinder after a move of its ends, at moves of no part above half from there, for
// what is better than points from in to out.
type Look struct {
	q      axisSearch
	r      region
	middle [4]float64
}

func LookFrom(c Cylinder, w Wall, m [4]float64, half, in, out float64) *Look {
	l := &Look{middle: m}
	q := &l.q
	q.s, _ = c.sight(w)
	q.margin = c.bounds(q.s)
	q.s.inner, q.s.outer = in, out
	q.start(c.Certificate.contacts[:c.Certificate.n])
	q.look(&m, 2*half)
	l.r.cube(half)
	for i := range l.r.corners[:l.r.n] {
		for k := range m {
			l.r.corners[i].at[k] += m[k]
		}
	}
	return l
}

// Contact is what is seen of a contact: its distance, its pull, and by how much more it may come nearer (outer), or get
// farther.
func (l *Look) Contact(i int) (distance float64, pull [4]float64, bends float64) {
	p := &l.q.seen[i]
	return p.distance, p.pull, l.q.bends(p, l.q.points[i].weight > 0, &l.r, &l.middle)
}

// Face is what of a move from there measures more than at where nothing is better, of those that one given is beyond.
func (l *Look) Face(m [4]float64) (face [4]float64, at float64) { return l.q.face(&m, &l.r, &l.middle) }

// Gain is by how much the cylinder may be better.
func (l *Look) Gain() float64 {
	slope, at := l.q.gain(&l.r, &l.middle)
	_, most := l.r.most(&slope, &l.middle)
	return at + most
}

// Searched is by how much a cylinder may be better after moves of its ends by up to half, by a search alone.
func Searched(c Cylinder, w Wall, half float64) (bound float64) {
	q := new(axisSearch)
	q.s, _ = c.sight(w)
	q.margin = c.bounds(q.s)
	q.start(c.Certificate.contacts[:c.Certificate.n])
	q.exclude(half)
	return q.bound
}

// Sight is the two directions square to the axis of a cylinder in which its ends move.
func Sight(c Cylinder, w Wall) (right, up [3]float64) {
	s, _ := c.sight(w)
	return s.right, s.up
}

// From is the cylinder of a kind that an axis leads to, that of a cylinder after a move of its ends, whatever it proves.
func From(c Cylinder, w Wall, m [4]float64) (Cylinder, error) {
	s, _ := c.sight(w)
	var room workspace
	t, ok := room.tube(c.Reference, w, s.moved(&m), 1)
	if !ok {
		return Cylinder{}, ErrArc
	}
	d, _, err := room.certified(c.Reference, w, t)
	return d, err
}
