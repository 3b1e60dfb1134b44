// SPDX-License-Identifier: BSD-3-Clause

package fit

// Cautions returns, in sentences, what the measured size of the piston leaves open; nothing for the zero
// Piston.
func (p Piston) Cautions() []string {
	if p.IsZero() {
		return nil
	}
	var list []string
	add := func(when bool, text string) {
		if when {
			list = append(list, text)
		}
	}
	add(p.Axis == 0, "Measure the skirt square to the pin: along the pin it is smaller, and the bore would come out tight.")
	add(p.Height == 0, "Measure the skirt at the maker's height: it is tapered.")
	add(p.Height != 0 && p.MakerHeight != 0 && p.Height != p.MakerHeight, "The skirt was measured at another height than the maker's, and it is tapered.")
	add(p.Coating != 0, "The clearance is counted from under the skirt's coating.")
	return list
}
