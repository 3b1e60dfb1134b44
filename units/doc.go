// SPDX-License-Identifier: BSD-3-Clause

// Package units has the quantities of a workshop: exact lengths and windows for them, and
// temperatures, angles, speeds, frequencies, volumes, pressures, forces and expansions.
package units
