// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package photo_test

import (
	"flag"
	"testing"
)

var (
	scenes = flag.Int("scenes", 1000, "how many to draw of a kind")
	first  = flag.Uint64("first", 0, "how many to leave out before, for a run in parts")
)

// later leaves scenes out.
func later(make func(uint64) *scene) func(uint64) *scene {
	return func(seed uint64) *scene { return make(seed + *first) }
}

// The bars of the package, on 1,000 scenes of a kind, of 300 to 3,000 pixels.
func TestDeepScenes(t *testing.T) {
	const least, most = 300, 3000
	n := *scenes
	t.Run("everyday", func(t *testing.T) {
		vs := among(t, n, later(everyday(least, most)))
		r := sumUp(vs)
		t.Log(r, refusals(vs))
		cover := share(r.covered, r.answered)
		if r.median > 0.3 || r.p95 > 1 || r.worst > 3 || r.answered < n*88/100 || cover < 0.93 || cover > 0.98 || r.u > 1.2 {
			t.Error(r)
		}
	})
	t.Run("deep in a bore", func(t *testing.T) {
		vs := among(t, n/10, later(deepInBore(least, most)))
		r := sumUp(vs)
		t.Log(r, refusals(vs))
		if r.p95 > 1.2 {
			t.Error(r)
		}
	})
	t.Run("faint", func(t *testing.T) {
		vs := among(t, n/5, later(faint(least, most)))
		r := sumUp(vs)
		t.Log(r, refusals(vs))
		if r.wild > n/1000 {
			t.Error(r)
		}
	})
	for name, kind := range map[string]wallKind{"noise": blank, "one family": oneFamily, "turned": turned} {
		t.Run(name, func(t *testing.T) {
			vs := among(t, n, later(rolled(kind, least, most/3)))
			r := sumUp(vs)
			t.Log(r, refusals(vs))
			if r.answered > 1 {
				t.Error(r)
			}
		})
	}
	t.Run("swinging hand", func(t *testing.T) {
		held, answered := 0, 0
		for _, v := range among(t, n/4, later(swung(least, most/2))) {
			if v.err == nil {
				answered++
				if v.spanned() {
					held++
				}
			}
		}
		t.Log(answered, "answered,", held, "held")
		if share(held, answered) < 0.93 {
			t.Errorf("of %d, %d are held", answered, held)
		}
	})
}
