// SPDX-License-Identifier: BSD-3-Clause

package surface

import (
	"borewright.example/internal/enum"
	"borewright.example/units"
)

// A Parameter is one of the parameters of a texture that a window can be set to. Its text is its symbol.
type Parameter int8

// The parameters. All are lengths but Mr1 and Mr2, which are shares.
const (
	NoParameter Parameter = iota
	Ra
	Rq
	Rz
	Rt
	Rpk
	Rk
	Rvk
	Oil
	Mr1
	Mr2
)

var parameterNames = []string{"", "Ra", "Rq", "Rz", "Rt", "Rpk", "Rk", "Rvk", "oil", "Mr1", "Mr2"}

// String returns the symbol; a value that is no parameter is "surface.Parameter(n)".
func (p Parameter) String() string { return enum.Name(p, parameterNames) }

// MarshalText returns the text of [Parameter.String]. Another value is [units.ErrUnknownName].
func (p Parameter) MarshalText() ([]byte, error) { return enum.Marshal(p, parameterNames) }

// UnmarshalText reads the text of [Parameter.String]; any other is [units.ErrUnknownName], and the receiver
// keeps its value.
func (p *Parameter) UnmarshalText(text []byte) error { return enum.Unmarshal(p, text, parameterNames) }

// length returns a parameter that is a length.
func (t Texture) length(p Parameter) units.Length {
	switch p {
	case Ra:
		return t.Ra
	case Rq:
		return t.Rq
	case Rz:
		return t.Rz
	case Rt:
		return t.Rt
	case Rpk:
		return t.Rpk
	case Rk:
		return t.Rk
	case Rvk:
		return t.Rvk
	case Oil:
		return t.Oil
	}
	return 0
}

// share returns a parameter that is a share.
func (t Texture) share(p Parameter) float64 {
	switch p {
	case Mr1:
		return t.Mr1
	case Mr2:
		return t.Mr2
	}
	return 0
}
