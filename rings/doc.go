// SPDX-License-Identifier: BSD-3-Clause

// Package rings is the arithmetic of piston rings: the end gap, its filing, the gap when hot, the
// groove, and whether a ring follows a bore that is not round.
package rings
