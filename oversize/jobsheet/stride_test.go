// SPDX-License-Identifier: BSD-3-Clause

//go:build !deep

package jobsheet_test

// stride is how many attacks are passed over for one that is made, drawnJobs how many jobs are attacked beside
// the demos; the deep tests make them all.
const (
	stride    = 23
	drawnJobs = 4
)
