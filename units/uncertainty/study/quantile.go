// SPDX-License-Identifier: BSD-3-Clause

package study

import (
	"math"

	"gonum.org/v1/gonum/mathext"
)

// The ends of the intervals here, of 95 % confidence.
const (
	lower = 0.025
	upper = 0.975
)

// chiSquared returns the value below which a chi-squared variable lies with probability p.
func chiSquared(p, dof float64) float64 { return 2 * mathext.GammaIncRegInv(dof/2, p) }

// fQuantile returns the value below which the ratio of two independent mean squares of equal
// expectation lies with probability p.
func fQuantile(p, above, below float64) float64 {
	// The beta variable and its complement, each from its own tail, so that neither loses digits.
	x, rest := mathext.InvRegIncBeta(above/2, below/2, p), mathext.InvRegIncBeta(below/2, above/2, 1-p)
	return below / above * (x / rest)
}

// fTail returns the probability that such a ratio is f or more, to 1e-9, so that every machine
// shows the same.
func fTail(f, above, below float64) float64 {
	return round(mathext.RegIncBeta(below/2, above/2, below/(below+float64(above*f))))
}

// tTails returns the probability, to 1e-9, that Student's t departs from zero by |t| or more.
func tTails(t, dof float64) float64 { return fTail(float64(t*t), 1, dof) }

func round(p float64) float64 { return math.Round(p*1e9) / 1e9 }
