// SPDX-License-Identifier: BSD-3-Clause

// Package oversize decides which size is next for a whole engine, and what that does to its
// displacement and compression.
package oversize
