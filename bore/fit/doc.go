// SPDX-License-Identifier: BSD-3-Clause

// Package fit is about the piston in its bore: the window for the finished bore, the size to
// aim at, and the clearance that is left.
package fit
