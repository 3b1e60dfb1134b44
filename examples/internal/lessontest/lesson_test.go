// SPDX-License-Identifier: BSD-3-Clause

package lessontest

import (
	"strings"
	"testing"
)

const good = `A TITLE
The question: how much?

1  Step     a = b
   1.00 mm

THE PICTURE (█ a millimetre)
   █ 1 mm

A SECOND WAY: by other arithmetic
   so 1.00 mm (the library: 1.001 mm), and -2.0 µm (the library: −2.0 µm)

WHAT USUALLY GOES WRONG
   • This.

CAUTION: take care.
`

// TestCheck: a page of the right form passes, and each fault is found.
func TestCheck(t *testing.T) {
	if faults := check(good); faults != nil {
		t.Errorf("good page: %q", faults)
	}
	for _, c := range []struct{ from, to, want string }{
		{"1.00 mm\n\n", "NaN mm\n\n", "NaN"},
		{"1.00 mm\n\n", "+Inf mm\n\n", "Inf"},
		{"This.", "the least f.Min", `f.M`},
		{"This.", "1.1e-05", `prints "1e-05"`},
		{"This.", "the same: true", "true"},
		{"This.", "[3 4]", "[3"},
		{"This.", "1e5 [%!d(string=x)]", "%!"},
		{"This.", strings.Repeat("x", 140), "a line of"},
		{"█ 1 mm\n", "1 mm\n", "picture"},
		{"CAUTION", "caution", "CAUTION"},
		{"1.001 mm)", "1.011 mm)", ""},
		{"1.001 mm)", "1.021 mm)", "the second way has 1.00"},
		{"library: −2.0", "library: 2.0", "the second way has -2.0"},
		{"the library: 1.001 mm", "the library: none", "legible"},
		{"THE PICTURE", Refused + "\n", "without a reason"},
	} {
		faults := strings.Join(check(strings.Replace(good, c.from, c.to, 1)), "\n")
		if c.want == "" && faults != "" || !strings.Contains(faults, c.want) {
			t.Errorf("%q for %q: %q, want %q", c.to, c.from, faults, c.want)
		}
	}
	if faults := check("A TITLE\n" + Refused + "rings: bore -5 mm: impossible size (more than 0)\nChange them.\n"); faults != nil {
		t.Errorf("a refusal: %q", faults)
	}
}
