// SPDX-License-Identifier: BSD-3-Clause

// Package uncertainty carries the doubt of a measurement into the decision it serves.
package uncertainty

import "borewright.example/units"

// An Estimate is a measured length with its standard uncertainty (JCGM 100). Std 0 means exact.
// DoF is the degrees of freedom of Std; 0 means that Std is known without doubt.
type Estimate struct {
	Value, Std units.Length
	DoF        float64
}
