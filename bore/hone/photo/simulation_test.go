// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import "testing"

// Everyday walls: few enough scenes that the bars leave room for chance. The deep run holds the bars themselves.
func TestEveryday(t *testing.T) {
	if testing.Short() {
		t.Skip("renders and measures 60 walls")
	}
	vs := among(t, 60, everyday(300, 400))
	r := sumUp(vs)
	t.Log(r, refusals(vs))
	if r.answered < 43 || r.median > 0.6 || r.p95 > 2 || r.wild > 1 || share(r.covered, r.answered) < 0.88 || r.u > 2 {
		t.Error(r)
	}
}

// What is no crosshatch gets no angle.
func TestNoCrosshatch(t *testing.T) {
	for name, kind := range map[string]wallKind{"noise": blank, "one family": oneFamily, "turned": turned} {
		vs := among(t, 5, rolled(kind, 300, 360))
		if r := sumUp(vs); r.answered > 0 {
			t.Error(name, r, refusals(vs))
		}
	}
}

func TestDeepInBore(t *testing.T) {
	vs := among(t, 6, deepInBore(300, 400))
	r := sumUp(vs)
	t.Log(r, refusals(vs))
	if r.answered < 3 || r.wild > 0 {
		t.Error(r)
	}
}

// Faint lines are refused or covered; and a swinging hand gets a range or a refusal.
func TestFaintAndSwung(t *testing.T) {
	vs := among(t, 6, faint(300, 400))
	if r := sumUp(vs); r.wild > 0 {
		t.Error(r)
	}
	held, answered := 0, 0
	for _, v := range among(t, 8, swung(300, 450)) {
		if v.err == nil {
			answered++
			if v.spanned() {
				held++
			}
		}
	}
	t.Log("swinging hands:", answered, "answered,", held, "held")
	if share(held, answered) < 0.7 {
		t.Errorf("of %d walls of a swinging hand, %d are held", answered, held)
	}
}
