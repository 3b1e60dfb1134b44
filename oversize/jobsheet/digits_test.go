// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"testing"

	"borewright.example/oversize"
)

// twice writes every reading of the survey and of the proof down a second time, half a micrometre off, as somebody does
// who reads every place twice.
func twice(j tree) tree {
	n := map[string]int{}
	for _, c := range j["cylinders"].([]any) {
		c := c.(tree)
		for _, of := range []string{"readings", "proof"} {
			list, ok := c[of].([]any)
			if !ok {
				continue
			}
			for _, r := range slices.Clone(list) {
				again := maps.Clone(r.(tree))
				var x float64
				if _, err := fmt.Sscanf(again["diameter"].(string), "%f mm", &x); err == nil {
					again["diameter"] = fmt.Sprintf("%.4f mm", x+0.0005)
				}
				list = append(list, again)
			}
			c[of], n[of] = list, n[of]+len(list)
		}
	}
	for of, count := range n {
		j["counted"].(tree)[of] = count
	}
	return j
}

// swapped returns a text with two neighbouring digits of it changed about, every such pair by itself; the point may
// stand between them.
func swapped(text string) []string {
	var list []string
	at := regexp.MustCompile(`\d`).FindAllStringIndex(text, -1)
	for i := 1; i < len(at); i++ {
		a, b := at[i-1][0], at[i][0]
		apart := b - a
		if text[a] == text[b] || apart > 2 || apart == 2 && text[a+1] != '.' {
			continue
		}
		x := []byte(text)
		x[a], x[b] = x[b], x[a]
		list = append(list, string(x))
	}
	return list
}

// TestTwoDigitsSwapped: two neighbouring digits of a reading changed about never change a cut or let anything go
// together where its place was read twice. In figures that stand in the job once no rule can see it: those are counted.
func TestTwoDigitsSwapped(t *testing.T) {
	diameter := regexp.MustCompile(`(readings|proof)\[\d+\]\.diameter$`)
	once, onceBold, turn := 0, 0, 0
	readings := 0
	for i, h := range honestJobs(digitJobs, 23) {
		h.cylinders, h.inches = 1, false
		j := twice(h.tree(i%3 > 0))
		before := mustPlan(t, j)
		spots("", j, func(s spot) {
			text, ok := s.value.(string)
			if !ok || words.MatchString(s.path) {
				return
			}
			for _, x := range swapped(text) {
				if turn++; turn%(stride/2+1) != 0 {
					continue
				}
				s.set(x)
				after, err := planned(t, j)
				s.set(s.value)
				read := diameter.MatchString(s.path)
				if read {
					readings++
				} else {
					once++
				}
				if err != nil {
					continue
				}
				var was, is oversize.CylinderChoice
				if len(before.Choice.Cylinders) > 0 && len(after.Choice.Cylinders) > 0 {
					was, is = before.Choice.Cylinders[0], after.Choice.Cylinders[0]
				}
				switch bold := bolder(before.Cylinders[0], after.Cylinders[0], was, is); {
				case bold && read:
					t.Errorf("%s %s for %s: %v %v %v, was %v %v %v", s.path, x, text,
						after.Cylinders[0].Next, is.Route, is.Over, before.Cylinders[0].Next, was.Route, was.Over)
				case bold:
					onceBold++
				}
			}
		})
	}
	if readings < 20 {
		t.Errorf("only %d readings tried", readings)
	}
	t.Logf("%d swaps in readings taken twice, none bolder; %d in figures given once, %d bolder", readings, once, onceBold)
}
