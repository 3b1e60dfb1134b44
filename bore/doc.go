// SPDX-License-Identifier: BSD-3-Clause

// Package bore turns gauge readings of a cylinder into its sizes, form and findings.
package bore
