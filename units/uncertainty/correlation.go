// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"
)

// A Correlation is the correlation coefficient, −1 to 1, between two components of a [Budget],
// given by their names (JCGM 100:2008 5.2.2). Pairs that are not named have none.
//
// Where two inputs share a cause, such as one setting ring behind two readings, it is often
// clearer to make that cause a component of its own (JCGM 100 F.1.2.4).
type Correlation struct {
	A string  `json:"a"` // name of one component
	B string  `json:"b"` // name of the other
	R float64 `json:"r"` // correlation coefficient, −1 to 1
}

// A pair is a correlation by the places of its components.
type pair struct {
	i, j int
	r    float64
}

// pairs looks the correlations up and checks that quantities can have them all.
func (b Budget) pairs() ([]pair, error) {
	if len(b.Correlations) == 0 {
		return nil, nil
	}
	n := len(b.Components)
	place := make(map[string]int, n)
	for i, c := range b.Components {
		if _, twice := place[c.Name]; twice {
			i = -1
		}
		place[c.Name] = i
	}
	m := make([]float64, n*n)
	for i := range n {
		m[i*n+i] = 1
	}
	pairs := make([]pair, 0, len(b.Correlations))
	for _, c := range b.Correlations {
		i, okA := place[c.A]
		j, okB := place[c.B]
		if !okA || !okB || i < 0 || j < 0 || i == j || !(math.Abs(c.R) <= 1) || m[i*n+j] != 0 {
			return nil, fmt.Errorf("uncertainty: correlation %v of %q with %q: %w (−1 to 1, each pair of two different components once)", c.R, c.A, c.B, ErrCorrelation)
		}
		m[i*n+j], m[j*n+i] = c.R, c.R
		pairs = append(pairs, pair{i, j, c.R})
	}
	if !semidefinite(m, n) {
		return nil, fmt.Errorf("uncertainty: the %d correlations together: %w (not positive semi-definite)", len(pairs), ErrCorrelation)
	}
	return pairs, nil
}

// semidefinite reports whether the symmetric n×n matrix m with unit diagonal, which it
// overwrites, has no eigenvalue below zero, to 1e-9: Cholesky's elimination with the greatest
// pivot first leaves a remainder with no negative diagonal, and nothing at all once its
// diagonal is used up.
func semidefinite(m []float64, n int) bool {
	const tolerance = 1e-9
	done := make([]bool, n)
	for range n {
		k := -1
		for i := range n {
			if !done[i] && (k < 0 || m[i*n+i] > m[k*n+k]) {
				k = i
			}
		}
		done[k] = true
		pivot := m[k*n+k]
		for i := range n {
			if done[i] {
				continue
			}
			f := m[i*n+k]
			if pivot <= tolerance {
				if math.Abs(f) > tolerance {
					return false
				}
				continue
			}
			for j := range n {
				if !done[j] {
					m[i*n+j] -= float64(f * m[k*n+j] / pivot)
				}
			}
			if m[i*n+i] < -tolerance {
				return false
			}
		}
	}
	return true
}

// combineGroups is Combined for a budget with correlations.
func (b Budget) combineGroups(top float64) (std, dof float64, err error) {
	pairs, err := b.pairs()
	if err != nil || top == 0 {
		return 0, 0, err
	}
	n := len(b.Components)
	group := make([]int, n) // the number of each component's group
	for i := range group {
		group[i] = i
	}
	for _, p := range pairs {
		if from, to := group[p.i], group[p.j]; p.r != 0 && from != to {
			for i := range group {
				if group[i] == from {
					group[i] = to
				}
			}
		}
	}
	// of each group: the variance, what it would be without correlation, and the least degrees
	// of freedom
	variance, plain, least := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range b.Components {
		c := &b.Components[i]
		x := c.signed() / top
		g := group[i]
		plain[g] += float64(x * x)
		if x != 0 && c.DoF != 0 && (least[g] == 0 || c.DoF < least[g]) {
			least[g] = c.DoF
		}
	}
	copy(variance, plain)
	for _, p := range pairs {
		x, y := b.Components[p.i].signed()/top, b.Components[p.j].signed()/top
		variance[group[p.i]] += float64(2 * p.r * float64(x*y))
	}
	var s sum
	for g, v := range variance {
		if v > 1e-15*plain[g] { // where all cancels, rounding is left
			s.add(v, least[g])
		}
	}
	return s.combined(top)
}
