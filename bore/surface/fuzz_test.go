// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// attack asks everything of a profile: no panic, and no number that is not finite, which JSON would refuse.
func attack(t failer, p surface.Profile, f surface.Filter) {
	t.Helper()
	for _, q := range []func() (surface.Profile, error){func() (surface.Profile, error) { return p, nil }, p.Level, func() (surface.Profile, error) { return p.Unroll(67 * mm) }} {
		p, err := q()
		if err != nil {
			continue
		}
		tex, err := p.Texture(f)
		if err != nil {
			continue
		}
		if _, err := json.Marshal(tex); err != nil {
			t.Fatal(err)
		}
		for _, x := range []float64{tex.Rsk, tex.Rku, tex.Rdq, tex.Mr1, tex.Mr2, tex.Rmq} {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Fatal(tex)
			}
		}
		r, err := p.TwoStep(f)
		c := must(t, r, err).Curve()
		r.Points()
		for _, cut := range []func(units.Length) (surface.Cut, error){c.Truncate, c.Remove, c.Reach} {
			for _, l := range []units.Length{0, 1, um, tex.Rpk / 2, -1, units.MaxLength} {
				if k, err := cut(l); err == nil {
					if b, err := json.Marshal(k); err != nil || bytes.Contains(b, []byte("NaN")) {
						t.Fatal(k, err)
					}
				}
			}
		}
		if w, err := surface.Analyse([]surface.Reading{{"a", tex}, {"b", tex}}, surface.Instrument{Relative: 0.01}); err == nil {
			if _, err := json.Marshal(w); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func checkWild(t *rapid.T) {
	n := rapid.IntRange(10, 80).Draw(t, "n")
	size := rapid.SampledFrom([]int64{1, 1000, int64(um), int64(mm), int64(units.MaxLength)}).Draw(t, "size")
	h := make([]units.Length, n)
	for i := range h {
		h[i] = units.Length(rapid.Int64Range(-size, size).Draw(t, "z"))
	}
	p, err := surface.FromHeights(units.Length(rapid.SampledFrom([]int64{1, int64(um), int64(mm), int64(100 * mm)}).Draw(t, "step")), h)
	if err != nil {
		t.Fatal(err)
	}
	attack(t, p, surface.Filter{
		CutOff:   units.Length(rapid.SampledFrom([]int64{0, 10, 30, int64(10 * um), int64(12 * mm), int64(2000 * mm)}).Draw(t, "cutoff")),
		Short:    units.Length(rapid.SampledFrom([]int64{0, 2, int64(3 * um), int64(2 * mm)}).Draw(t, "short")),
		Sections: rapid.IntRange(0, 6).Draw(t, "sections"),
	})
}

func TestWild(t *testing.T) { rapid.Check(t, checkWild) }

func FuzzTexture(f *testing.F) { f.Fuzz(rapid.MakeFuzz(checkWild)) }

func FuzzRead(f *testing.F) {
	f.Add("x mm,z µm\n" + strings.Repeat("0.1,2\n", 12))                     // places twice
	f.Add("x [um],z [um]\n0,1\n1,2\n2,1\n3,2\n4,1\n5,2\n6,1\n7,2\n8,1\n9,9") // as short as may be
	f.Add("x mm,z mm\n0,1\n1,2\n2,1\n3,2\n4,1\n5,2\n6,1\n7,2\n8,1\n90,9")    // uneven
	f.Add("x,z\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		p, err := surface.Read(strings.NewReader(text))
		if err != nil || len(p.Z()) > 3000 {
			return
		}
		attack(t, p, surface.Filter{Sections: 1})
	})
}
