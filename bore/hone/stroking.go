// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"strings"

	"borewright.example/units"
)

// A Stroking is how often the tool goes along the bore. "60 strokes a minute" is said for sixty
// single strokes and for sixty times there and back, which is twice the speed, so a Stroking is
// made only by saying which is counted: [Strokes] (one way) or [Cycles] (there and back).
//
// It keeps what was counted: Cycles(f) and Strokes(2f) are the same motion, their [Stroking.Cycles]
// are equal, but they print differently and == tells them apart. The zero value stands for
// "not given".
type Stroking struct {
	rate   units.Frequency
	oneWay bool
}

// Cycles is a stroking of f full cycles, each one stroke there and one back.
func Cycles(f units.Frequency) Stroking { return Stroking{rate: f} }

// Strokes is a stroking of f single strokes, each one way. Two make a cycle.
func Strokes(f units.Frequency) Stroking { return Stroking{rate: f, oneWay: f != 0} }

// Cycles returns the full cycles, there and back, in a unit of time.
func (k Stroking) Cycles() units.Frequency {
	if k.oneWay {
		return k.rate / 2
	}
	return k.rate
}

// Strokes returns the single strokes, one way, in a unit of time.
func (k Stroking) Strokes() units.Frequency {
	if k.oneWay {
		return k.rate
	}
	return 2 * k.rate
}

// like returns a stroking of f cycles, counted as k is.
func (k Stroking) like(cycles units.Frequency) Stroking {
	if k.oneWay {
		return Strokes(2 * cycles)
	}
	return Cycles(cycles)
}

func (k Stroking) validate() error { return checkRate("stroking", k.rate, k.unit()) }

func (k Stroking) unit() string {
	if k.oneWay {
		return "strokes/min"
	}
	return "cycles/min"
}

// ParseStroking reads a rate that says what it counts: "60 cycles/min", "120 strokes/min",
// "1 cycle/s", "2 strokes/s". A stroke is one way, a cycle there and back. A rate that says
// neither is [ErrConvention].
func ParseStroking(s string) (Stroking, error) {
	for _, u := range []struct {
		words string
		hertz string
		build func(units.Frequency) Stroking
	}{
		{"cycles/min", "rev/min", Cycles}, {"strokes/min", "rev/min", Strokes},
		{"cycle/min", "rev/min", Cycles}, {"stroke/min", "rev/min", Strokes},
		{"cycles/s", "Hz", Cycles}, {"strokes/s", "Hz", Strokes},
		{"cycle/s", "Hz", Cycles}, {"stroke/s", "Hz", Strokes},
	} {
		number, ok := strings.CutSuffix(s, u.words)
		if !ok {
			continue
		}
		f, err := units.ParseFrequency(number + u.hertz)
		if err != nil {
			return Stroking{}, fmt.Errorf("hone: stroking %.80q: %w: write 60 cycles/min or 120 strokes/min", s, units.ErrSyntax)
		}
		k := u.build(f)
		return k, k.validate()
	}
	return Stroking{}, fmt.Errorf("hone: stroking %.80q: %w: write 60 cycles/min (there and back) or "+
		"120 strokes/min (one way); 60 of one are 120 of the other", s, ErrConvention)
}

// String returns the rate a minute to 12 significant digits and what it counts, "60 cycles/min"
// or "120 strokes/min". Where the stroking is not given it is "".
func (k Stroking) String() string {
	if (k == Stroking{}) {
		return ""
	}
	return strings.TrimSuffix(k.rate.String(), "rev/min") + k.unit()
}

// MarshalText returns the text of [Stroking.String]; [units.ErrRange] for a rate that is negative, not finite, above
// a million a minute or below 1e-12.
func (k Stroking) MarshalText() ([]byte, error) { return marshalValid(k) }

// UnmarshalText reads a text as [ParseStroking] does; empty text is "not given". On error the
// receiver keeps its value.
func (k *Stroking) UnmarshalText(text []byte) error { return unmarshal(k, text, ParseStroking) }
