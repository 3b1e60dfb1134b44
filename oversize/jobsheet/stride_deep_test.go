// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package jobsheet_test

const (
	stride        = 1
	slipStride    = 1
	digitJobs     = 12
	drawnJobs     = 200
	hostileStride = 29
)
