// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore/form"
)

// A turn takes a direction of a data set to one that leans a little from the depth, as points of a
// bore lie: certified sets lie anyhow in space.
type turn [3][3]float64

func turnTo(from, to [3]float64) turn {
	cross := func(a, b [3]float64) [3]float64 {
		return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
	}
	unit := func(a [3]float64) [3]float64 {
		d := math.Sqrt(a[0]*a[0] + a[1]*a[1] + a[2]*a[2])
		return [3]float64{a[0] / d, a[1] / d, a[2] / d}
	}
	frame := func(w [3]float64) [3][3]float64 {
		w = unit(w)
		u := [3]float64{1, 0, 0}
		if math.Abs(w[0]) > 0.7 {
			u = [3]float64{0, 1, 0}
		}
		v := unit(cross(w, u))
		return [3][3]float64{cross(v, w), v, w}
	}
	a, b := frame(from), frame(to)
	var m turn
	for i := range m {
		for j := range m[i] {
			for k := range a {
				m[i][j] += b[k][i] * a[k][j]
			}
		}
	}
	return m
}

func (m turn) of(p [3]float64) (q [3]float64) {
	for i := range q {
		q[i] = m[i][0]*p[0] + m[i][1]*p[1] + m[i][2]*p[2]
	}
	return q
}

func triple(t failer, row map[string]string, prefix string) [3]float64 {
	return [3]float64{number(t, row[prefix+"x"]), number(t, row[prefix+"y"]), number(t, row[prefix+"z"])}
}

func wallOf(t failer, ps [][3]float64) form.Wall {
	t.Helper()
	points := make([]form.WallPoint, len(ps))
	for i, p := range ps {
		points[i] = form.WallPoint{X: length(p[0]), Y: length(p[1]), Depth: length(p[2])}
	}
	w, err := form.FromWallPoints(points)
	return must(t, w, err)
}

// wallSet returns a certified set about the certified point, its axis turned to the direction given.
func wallSet(t failer, file string, row map[string]string, to [3]float64) (form.Wall, turn) {
	m := turnTo(triple(t, row, "a_"), to)
	at := triple(t, row, "p_")
	var ps [][3]float64
	for _, p := range table(t, file) {
		if p["set"] == row["set"] {
			q := triple(t, p, "")
			ps = append(ps, m.of([3]float64{q[0] - at[0], q[1] - at[1], q[2] - at[2]}))
		}
	}
	return wallOf(t, ps), m
}

// Certified least-squares cylinders of the NIST algorithm testing service, to the digits given, along
// the depth and leaning by 8° and 35°; cylindricity about them computed from the points.
func TestCertifiedCylinders(t *testing.T) {
	rows := table(t, "nist_cylinder_expected.csv")
	if len(rows) != 13 {
		t.Fatalf("%d sets", len(rows))
	}
	for _, row := range rows {
		for _, to := range [][3]float64{{0, 0, 1}, {0.12, -0.07, 1}, {0.3, 0.63, 1}} {
			w, _ := wallSet(t, "nist_cylinder_points.csv", row, to)
			c, err := w.Cylindricity(form.LSCY)
			if err != nil {
				t.Errorf("%s: %v", row["set"], err)
				continue
			}
			near(t, row["set"]+" diameter", 2*c.Radius, length(number(t, row["ls_diameter"])), 1e-7)
			near(t, row["set"]+" CYLt", c.CYLt, length(number(t, row["CYLt_ls"])), 1e-8)
			near(t, row["set"]+" CYLv", c.CYLv, length(number(t, row["CYLp_ls"])), 1e-8) // of a shaft in the file
			near(t, row["set"]+" CYLp", c.CYLp, length(number(t, row["CYLv_ls"])), 1e-8)
			near(t, row["set"]+" CYLq", c.CYLq, length(number(t, row["CYLq_ls"])), 1e-8)
			at, err := c.Axis.At(0) // through the certified point, 0, along the certified direction
			if err != nil {
				t.Fatal(err)
			}
			near(t, row["set"]+" x", at.X, 0, 1e-7)
			near(t, row["set"]+" y", at.Y, 0, 1e-7)
			if lean := math.Atan(math.Hypot(to[0], to[1])); math.Abs(float64(c.Axis.Lean())-lean) > 1e-8 {
				t.Errorf("%s: leans by %v, want %v", row["set"], float64(c.Axis.Lean()), lean)
			}
		}
	}
}

// zones are those minimum zones of the certified sets that were found by sequential linear programming
// from 25 random starts about the least-squares axis, all with one answer.
var zones = map[string]struct {
	zone     float64
	contacts []int
}{
	"cyl2":  {0.001048406317748, []int{2, 4, 6, 14, 15, 18}},
	"cyl3":  {2.239215186466e-4, []int{1, 3, 5, 6, 7, 8}},
	"cyl6":  {7.526199194e-6, []int{1, 10, 14, 15, 20, 33}},
	"cyl7":  {1.547609355e-6, []int{1, 2, 3, 4, 5, 6}},
	"cyl9":  {0.002663190197008, []int{1, 2, 5, 10, 11, 13}},
	"cyl18": {0.0394430818315, []int{2, 4, 6, 7, 16, 18}},
	"cyl27": {0.01330211750122, []int{3, 4, 5, 6, 8, 9}},
}

// Minimax cylinders of the same sets: sequential linear programming from many starts, and an
// independent method.
func TestMinimaxCylindersOfCertifiedSets(t *testing.T) {
	for _, row := range table(t, "nist_cylinder_expected.csv") {
		set := row["set"]
		for _, to := range [][3]float64{{0, 0, 1}, {0.12, -0.07, 1}} {
			w, _ := wallSet(t, "nist_cylinder_points.csv", row, to)
			zone, contacts := zones[set].zone, zones[set].contacts
			if row["mz_zone"] != "" {
				zone, contacts = number(t, row["mz_zone"]), nil
				for _, f := range strings.Fields(row["mz_outer_pts"] + " " + row["mz_inner_pts"]) {
					contacts = append(contacts, int(number(t, f)))
				}
				slices.Sort(contacts)
			}
			c, err := w.Cylindricity(form.MZCY)
			if err != nil {
				t.Errorf("%s: %v", set, err)
				continue
			}
			near(t, set+" zone", c.CYLt, length(zone), 1e-10)
			var got []int
			for _, p := range c.Certificate.Contacts() {
				got = append(got, p.Index+1)
			}
			slices.Sort(got)
			if !slices.Equal(got, contacts) {
				t.Errorf("%s: contacts %v, want %v", set, got, contacts)
			}
			if row["mc_r"] != "" {
				c, err := w.Cylindricity(form.MCCY)
				if err != nil {
					t.Errorf("%s: %v", set, err)
				}
				near(t, set+" circumscribed", c.Radius, length(number(t, row["mc_r"])), 1e-9)
			}
			if row["mi_r"] != "" {
				c, err := w.Cylindricity(form.MICY)
				if err != nil {
					t.Errorf("%s: %v", set, err)
				}
				near(t, set+" inscribed", c.Radius, length(number(t, row["mi_r"])), 1e-9)
			}
		}
	}
}

// Three sections of eight points, computed by formula and rounded to 0.1 µm; answers by sequential
// linear programming from many starts and by an independent method. Half of the starts end in a worse
// local optimum of the zone.
func TestWallOf24(t *testing.T) {
	var ps [][3]float64
	for _, p := range table(t, "wall_bore24.csv") {
		ps = append(ps, triple(t, p, ""))
	}
	w := wallOf(t, ps)
	get := func(kind form.Reference) form.Cylinder {
		c, err := w.Cylindricity(kind)
		return must(t, c, err)
	}
	ls := get(form.LSCY)
	near(t, "radius", ls.Radius, length(43.7604967480), 1e-9)
	near(t, "CYLt", ls.CYLt, length(0.0478003019), 1e-9)
	near(t, "CYLp", ls.CYLp, length(0.0232803151), 1e-9) // a bore: peaks point to the axis
	near(t, "CYLv", ls.CYLv, length(0.0245199839), 1e-9)
	near(t, "CYLq", ls.CYLq, length(0.0125747633), 1e-9)
	mz, mc, mi := get(form.MZCY), get(form.MCCY), get(form.MICY)
	near(t, "zone", mz.CYLt, length(0.0431977632546), 1e-9)
	near(t, "circumscribed", mc.Radius, length(43.78209802998), 1e-9)
	near(t, "inscribed", mi.Radius, length(43.73890194768), 1e-9)
	for _, c := range []struct {
		got  form.Cylinder
		want []int
	}{{mz, []int{1, 5, 9, 19, 23}}, {mc, []int{1, 5, 21}}, {mi, []int{19, 20, 23}}} {
		var got []int
		for _, p := range c.got.Certificate.Contacts() {
			got = append(got, p.Index+1)
		}
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%v: contacts %v, want %v", c.got.Reference, got, c.want)
		}
	}
}
