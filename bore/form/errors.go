// SPDX-License-Identifier: BSD-3-Clause

package form

import "errors"

// Why a trace, or a question about one, was refused. Test with [errors.Is].
var (
	// ErrPoints: too few points or sections, or all of them one, for the form asked for.
	ErrPoints = errors.New("too few points")
	// ErrAngles: angles that do not increase once round, or are not equally spaced where they have
	// to be.
	ErrAngles = errors.New("angles of the trace")
	// ErrArc: the points do not fix the form: they are as well on a line, or on an arc too short for a
	// circle, or do not surround the circle asked for; or hold no axis, being at one depth, on too
	// short a wall, or along one that leans by 45° or more.
	ErrArc = errors.New("points do not fix the form")
	// ErrCertificate: a circle or a certificate that is not that of the points.
	ErrCertificate = errors.New("certificate does not hold")
	// ErrUnproved: nothing found to be wrong, but no proof that nothing is better.
	ErrUnproved = errors.New("not proved the best")
)
