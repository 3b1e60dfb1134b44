// SPDX-License-Identifier: BSD-3-Clause

package rings

// Cautions returns what to mind with any ring, a sentence or two each, in the order of the work. The maker
// comes first. Common practice, but for filing (US Army TM 9-2815-202-34; TM 5-4320-305-24) and for the side
// that faces up (TM 9-2815-255-24; TM 5-3895-346-14; TM 10-4320-344-24).
func Cautions() []string {
	return []string{
		"The maker's gap and limit come before any rule.",
		"Push the ring square with a piston to where the bore is smallest in its travel, clear of the ridge and of ports.",
		"File both ends square and parallel, a little at a time, and measure after each.",
		"On a coated ring cut from the face inward, never outward, and restore the chamfer of the outer edge.",
		"The marked side of a ring, TOP or dimples, faces the crown. A ring with a twist or a taper goes by its mark; " +
			"without one ask the maker: an undercut outside is mostly down, one inside up.",
		"Match the ring's facing to the wall: never hard chromium on hard chromium.",
	}
}

// CautionPegs is what to mind beside [Cautions] with rings that are pegged, as in two-strokes (common practice).
const CautionPegs = "Pegged rings keep the place of their pegs; no ring end may cross a port."
