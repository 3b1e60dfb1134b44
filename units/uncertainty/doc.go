// SPDX-License-Identifier: BSD-3-Clause

// Package uncertainty carries the doubt of a measurement into the decision it serves.
package uncertainty
