// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"os"
	"strings"
	"testing"
)

// TestQuestions: each question that a workshop asks is answered by a line of some demo's sheet. The root
// of the documentation says which function answers it.
func TestQuestions(t *testing.T) {
	root, err := os.ReadFile("../../doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, q := range []struct{ question, job, line string }{
		{"re-ring, hone, or rebore?", "keep", "ROUTE: hone and keep"},
		{"how much taper is too much?", "pump", "taper, thrust axis 0.132 ± 0.006 mm max 0.080 mm"},
		{"ovality or taper: which did I measure?", "pump", "ovality 0.064 ± 0.006 mm at 12 mm"},
		{"where and along which axes do I measure?", "unread", "Where to read, each place twice: at 12 mm, 50 mm, 88 mm, 102 mm below the deck"},
		{"taper from a ring and a feeler gauge?", "keep", "By the ring and feeler gauge the bore is 0.022 ± 0.009 mm larger above than below"},
		{"the gap grew: how much bore is gone?", "keep", "By its gap, ring top finds the bore 0.010 ± 0.009 mm larger"},
		{"the gap is too small: how much to file?", "pump", "expected: file 0.07 mm off, to 0.29 mm; file only in the finished, washed bore"},
		{"what gap for this bore, by rule?", "pump", "Rules of thumb for a new ring in a bore of 78 mm: 0.16 to 0.46 mm"},
		{"what gap is scrap?", "pump", "max 1.00 mm: within"},
		{"where in a worn bore do I set the gap?", "keep", "Cylinder 1: set each gap at 84 mm, where the bore is smallest in ring travel"},
		{"my drill turns at 600 rev/min: what angle?", "pump", "Your setting, 450 rev/min with 40 cycles/min (80 strokes) leaves 7.8° included"},
		{"how slow must it turn for 45°?", "pump", "With 40 cycles/min (80 strokes), 66.1 rev/min to 84.7 rev/min will do."},
		{"is 45° between the lines or to the square?", "pump", "45.0° included (22.5° from square)"},
		{"how many of the lines are flat?", "pump", "Of the lines as one counts them across, 7 % are flatter than 30° included, and their mean is 54.8°."},
		{"are those strokes or full cycles?", "pump", "40 cycles/min (80 strokes)"},
		{"how long a stroke, how far out of the bore?", "two-stroke", "The tool of 50 mm stands out by 17 mm at the top and 14 mm at the bottom."},
		{"how much metal does half a minute take?", "pump", "A minute of honing has taken 0.034 ± 0.030 mm on the diameter"},
		{"how much stock for honing after boring?", "pump", "The hone has 0.060 mm on the diameter, or a little more; 0.020 mm to 0.130 mm is usual."},
		{"which oversize cleans up?", "pump", "not rebore to +0.25 mm: worn wall may be left (clean-up on the original centre"},
		{"the finish size for this piston?", "pump", "finished bore       78.491 to 78.516 mm    78.491 to 78.516 mm   aim                 78.504 mm"},
		{"what clearance is usual?", "keep", "Rules of thumb for cast, air-cooled pistons: 0.067 to 0.100 mm."},
		{"how does clearance change when hot?", "two-stroke", "at the size to work to 0.073 ± 0.005 mm -0.048 ± 0.015 mm: the piston"},
		{"will the ring follow an oval bore?", "keep", "what the ring can follow by its own spring"},
		{"displacement and ratio after the overbore?", "inch", "cylinder A 24.93 in³, 6.67 : 1 25.42 in³, 6.78 : 1"},
		{"is enough wall left, is a sleeve needed?", "pump", "5.35 ± 0.20 mm"},
		{"what interference, does it stay tight hot?", "sleeve-loose", "its grip at the running temperature is not proven: do not run on it."},
	} {
		if !strings.Contains(string(root), "//   - "+q.question+" ") {
			t.Errorf("the list in doc.go does not ask %q", q.question)
		}
		var out, errs bytes.Buffer
		if code := run([]string{"-job", "jobs/" + q.job + ".json"}, nil, &out, &errs); code != 0 {
			t.Fatalf("%s: exit %d: %s", q.job, code, &errs)
		}
		// A long line is wrapped.
		text := strings.Join(strings.Fields(out.String()), " ")
		if !strings.Contains(text, strings.Join(strings.Fields(q.line), " ")) {
			t.Errorf("%s: %q is not on the sheet of %s", q.question, q.line, q.job)
		}
	}
}
