// SPDX-License-Identifier: BSD-3-Clause

//go:build !deep

package jobsheet_test

// stride is how many attacks are passed over for one that is made, slipStride the same of slips, digitJobs how many jobs have their digits swapped,
// drawnJobs how many are attacked beside the demos, hostileStride the same as stride of spoilt sheets; the deep tests
// make them all, and more of the sheets.
const (
	stride        = 59
	slipStride    = 181
	digitJobs     = 3
	drawnJobs     = 4
	hostileStride = 1009
)
