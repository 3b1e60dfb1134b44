// SPDX-License-Identifier: BSD-3-Clause

// Package hone is the arithmetic of honing a cylinder: the crosshatch a setting really leaves,
// and the setting that leaves the crosshatch wanted.
package hone
