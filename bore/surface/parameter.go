// SPDX-License-Identifier: BSD-3-Clause

package surface

import "borewright.example/units"

// The symbols of the parameters that a window can be set to, in their order. All are lengths but Mr1 and
// Mr2, which are shares.
const (
	symbolRa  = "Ra"
	symbolRq  = "Rq"
	symbolRz  = "Rz"
	symbolRt  = "Rt"
	symbolRpk = "Rpk"
	symbolRk  = "Rk"
	symbolRvk = "Rvk"
	symbolOil = "oil"
	symbolMr1 = "Mr1"
	symbolMr2 = "Mr2"
)

func symbols() []string {
	return []string{
		symbolRa, symbolRq, symbolRz, symbolRt, symbolRpk, symbolRk, symbolRvk, symbolOil, symbolMr1, symbolMr2,
	}
}

// length returns a parameter that is a length.
func (t Texture) length(symbol string) units.Length {
	switch symbol {
	case symbolRa:
		return t.Ra
	case symbolRq:
		return t.Rq
	case symbolRz:
		return t.Rz
	case symbolRt:
		return t.Rt
	case symbolRpk:
		return t.Rpk
	case symbolRk:
		return t.Rk
	case symbolRvk:
		return t.Rvk
	case symbolOil:
		return t.Oil
	}
	return 0
}

// share returns a parameter that is a share.
func (t Texture) share(symbol string) float64 {
	switch symbol {
	case symbolMr1:
		return t.Mr1
	case symbolMr2:
		return t.Mr2
	}
	return 0
}
