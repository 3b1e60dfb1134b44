// SPDX-License-Identifier: BSD-3-Clause

package lobes_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/internal/lobes"
)

// Whatever was asked before, sines and cosines are those of the angle.
func TestSinesAreThoseOfTheAngle(t *testing.T) {
	r := rand.New(rand.NewPCG(83, 1))
	var s lobes.Sines
	angle := 0.0
	for range 200_000 {
		switch r.IntN(50) {
		case 0:
			angle = 2000 * math.Pi * (2*r.Float64() - 1)
		case 1:
			angle = float64(r.IntN(9)) * math.Pi / 2
		default:
			angle += 0.1 * math.Pow(10, -3*r.Float64()) * (2*r.Float64() - 1)
		}
		sin, cos := s.Of(angle)
		wantSin, wantCos := math.Sincos(angle)
		if math.Abs(sin-wantSin) > 4e-16 || math.Abs(cos-wantCos) > 4e-16 {
			t.Fatalf("%v: %v and %v, want %v and %v", angle, sin, cos, wantSin, wantCos)
		}
	}
}

func BenchmarkSines(b *testing.B) {
	angles := make([]float64, 3600)
	for i := range angles {
		angles[i] = 2 * math.Pi * (float64(i) + 0.4*math.Sin(float64(i*i))) / float64(len(angles))
	}
	for b.Loop() {
		var s lobes.Sines
		for _, a := range angles {
			s.Of(a)
		}
	}
}
