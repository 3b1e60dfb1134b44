// SPDX-License-Identifier: BSD-3-Clause

package photo

import "math"

// The least-squares problem of a pose has 9 unknowns and 11 residuals: 8 coordinates of corners and what is
// held of the lens before the picture is seen.
const (
	unknowns  = 9
	residuals = 11
)

type (
	vector  [unknowns]float64
	outcome [residuals]float64
	slopes  [residuals]vector // of each residual by each unknown
)

func (v vector) times(k float64) vector {
	for i := range v {
		v[i] *= k
	}
	return v
}

func (v *vector) add(o vector) {
	for i, x := range o {
		v[i] += x
	}
}

// square is the sum of squares.
func (r *outcome) square() float64 {
	var sum float64
	for _, x := range r {
		sum += float64(x * x)
	}
	return sum
}

// A factor is the lower triangle of Cholesky's factorization.
type factor [unknowns]vector

// factorize returns the factor of JᵀJ with its diagonal grown by the share damping; false where it is not
// positive definite.
func (j *slopes) factorize(damping float64) (l factor, ok bool) {
	for i := range unknowns {
		for k := range i + 1 {
			var sum float64
			for n := range residuals {
				sum += float64(j[n][i] * j[n][k])
			}
			if i == k {
				sum *= 1 + damping
			}
			for m := range k {
				sum -= float64(l[i][m] * l[k][m])
			}
			if i != k {
				l[i][k] = sum / l[k][k]
				continue
			}
			if !(sum > 0) || math.IsInf(sum, 0) {
				return l, false
			}
			l[i][i] = math.Sqrt(sum)
		}
	}
	return l, true
}

// solve returns x of L·Lᵀ·x = b.
func (l *factor) solve(b vector) vector {
	for i := range unknowns {
		for k := range i {
			b[i] -= float64(l[i][k] * b[k])
		}
		b[i] /= l[i][i]
	}
	for i := unknowns - 1; i >= 0; i-- {
		for k := i + 1; k < unknowns; k++ {
			b[i] -= float64(l[k][i] * b[k])
		}
		b[i] /= l[i][i]
	}
	return b
}

// down returns −Jᵀr.
func (j *slopes) down(r *outcome) (b vector) {
	for n := range residuals {
		for i := range unknowns {
			b[i] -= float64(j[n][i] * r[n])
		}
	}
	return b
}
