// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// sidesOf returns the number of distances that a kind has to find.
func sidesOf(kind Reference) int {
	if kind == MZCY {
		return 2
	}
	return 1
}

// weigh finds the weights of the contacts anew where the axis now is, by least squares of what is to
// balance, and leaves out contacts that would weigh less than nothing. It reports whether they
// balance.
func (t *tube) weigh(kind Reference, x, y, z []float64) bool {
	for t.n > 1 {
		weights, rest, ok := t.balance(kind, x, y, z)
		if !ok {
			return false
		}
		least := 0
		for j := range t.n {
			if weights[j] < weights[least] {
				least = j
			}
		}
		if weights[least] < 0 {
			copy(t.contacts[least:], t.contacts[least+1:t.n])
			t.n--
			continue
		}
		for j := range t.n {
			t.contacts[j].Weight = weights[j]
		}
		t.normalise()
		clear(t.contacts[t.n:])
		t.unbalanced = rest
		return rest <= balanced
	}
	return false
}

// balance returns the weights with which the contacts come nearest to balancing, and how far they stay
// off it. They may be negative.
func (t *tube) balance(kind Reference, x, y, z []float64) (weights [mostContacts]float64, rest float64, ok bool) {
	sides := sidesOf(kind)
	// Columns of the contacts; rows: the balance, and one for each side.
	var col [mostContacts][6]float64
	var want [6]float64
	for j, c := range t.contacts[:t.n] {
		u, v, h := t.seen(x[c.Index], y[c.Index], z[c.Index])
		d := norm(u, v)
		u, v = u/d, v/d
		sign, side := 1.0, 4
		if !c.Outer {
			sign, side = -1, 4+sides-1
		}
		col[j] = [6]float64{float64(sign * u), float64(sign * v), float64(sign * h * u), float64(sign * h * v)}
		col[j][side] = 1
		want[side] = 1
	}
	return leastSquaresOf(col[:t.n], want)
}

// balanced is how much of the balance of contacts may be left: it goes into the Bound, by a nanometre for
// each 2 µm that the axis may move. Mostly nothing is left; on two contacts all but opposite each other
// the programs may come and go across an optimum that bends, some picometres from it.
const balanced = 5e-4

// normalise makes the weights of each side add up to 1.
func (t *tube) normalise() {
	var sum [2]float64
	side := func(c Contact) int {
		if c.Outer {
			return 0
		}
		return 1
	}
	for _, c := range t.contacts[:t.n] {
		sum[side(c)] += c.Weight
	}
	for j := range t.contacts[:t.n] {
		t.contacts[j].Weight /= sum[side(t.contacts[j])]
	}
}

// leastSquaresOf combines columns to come as near to what is wanted as they can, by reflections of
// Householder, and returns how far they stay off it.
func leastSquaresOf(col [][6]float64, want [6]float64) (s [mostContacts]float64, rest float64, ok bool) {
	const rows = 6
	n := len(col)
	for k := range n {
		var q float64
		for i := k; i < rows; i++ {
			q += float64(col[k][i] * col[k][i])
		}
		q = math.Sqrt(q)
		if !(q > 1e-12) {
			return s, 0, false
		}
		if col[k][k] > 0 {
			q = -q
		}
		// The mirror is square to the column less its image.
		mirror := col[k]
		mirror[k] -= q
		var mm float64
		for i := k; i < rows; i++ {
			mm += float64(mirror[i] * mirror[i])
		}
		reflect := func(c *[6]float64) {
			var d float64
			for i := k; i < rows; i++ {
				d += float64(mirror[i] * c[i])
			}
			for i := k; i < rows; i++ {
				c[i] -= float64(2 * d / mm * mirror[i])
			}
		}
		for j := k; j < n; j++ {
			reflect(&col[j])
		}
		reflect(&want)
	}
	for k := n - 1; k >= 0; k-- {
		sum := want[k]
		for j := k + 1; j < n; j++ {
			sum -= float64(col[j][k] * s[j])
		}
		s[k] = sum / col[k][k]
	}
	for i := n; i < rows; i++ {
		rest += float64(want[i] * want[i])
	}
	return s, math.Sqrt(rest), true
}
