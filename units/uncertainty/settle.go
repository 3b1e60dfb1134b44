// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Remedy is what would settle an undecided finding, if the measured value stayed where it is.
type Remedy struct {
	// Toward is the verdict that would come of it; Undecided where nothing helps, because the
	// value stands on the limit itself.
	Toward Verdict `json:"toward"`
	// Std is the greatest standard uncertainty that settles it, rounded down: by a thousandth at the
	// most, and by 3 % where a range would be beyond.
	Std units.Length `json:"std"`
	// Repeats is how many times as many readings as were taken would bring the uncertainty
	// down so far; 0 where no number of them does, 1 where it is settled already.
	Repeats int `json:"repeats"`
}

// mostRepeats is beyond any number of readings that a person would take.
const mostRepeats = 1000

// Settle returns what would settle an undecided finding: which standard uncertainty in place
// of Measured.Std, and how many readings. random is the part of Measured.Std that more readings
// average out; the rest, such as the setting standard's and the temperatures', stays as it is,
// so that repeats may not be enough. The degrees of freedom are left as they are, which is
// cautious, since repeats would add to them; of several places it is the one that decides.
//
// A finding that is decided comes back as its verdict, with its own Std and 1 for Repeats.
// A random part that is negative or greater than Measured.Std is ErrStd; a finding that cannot
// be judged gives the error of [Judge].
func (f Finding) Settle(random units.Length) (Remedy, error) {
	std := f.Measured.Std
	if f.Verdict != Undecided {
		return Remedy{Toward: f.Verdict, Std: std, Repeats: 1}, nil
	}
	if err := f.check(); err != nil {
		return Remedy{}, err
	}
	if random < 0 || random > std {
		return Remedy{}, fmt.Errorf("uncertainty: random part %v of a std of %v: %w (no more than the whole)", random, std, ErrStd)
	}
	verdict := func(std units.Length) Verdict {
		g := f
		g.Measured.Std = std
		g.judge()
		return g.Verdict
	}
	low, high := units.Picometre, std // settled at low; not at high
	toward := verdict(low)
	if toward == Undecided {
		return Remedy{}, nil
	}
	if verdict(high) != Undecided {
		return Remedy{Toward: toward, Std: std, Repeats: 1}, nil
	}
	part := units.Length(1000)
	if f.Kind == RangeOf && toward == Beyond {
		part = 32 // each step may cost an integral
	}
	for high-low > max(1, low/part) {
		middle := units.Length(math.Sqrt(float64(low) * float64(high)))
		middle = min(max(middle, low+1), high-1)
		if verdict(middle) == Undecided {
			high = middle
		} else {
			low = middle
		}
	}
	r := Remedy{Toward: toward, Std: low}
	rnd, target := random.In(units.Picometre), low.In(units.Picometre)
	whole := std.In(units.Picometre)
	steady := float64(whole*whole) - float64(rnd*rnd)
	if room := float64(target*target) - steady; room > 0 {
		if n := math.Ceil(float64(rnd*rnd) / room); n <= mostRepeats {
			r.Repeats = int(n)
		}
	}
	return r, nil
}

// Format returns the remedy in words, the uncertainty in the unit and rounded down to two digits; a unit that
// is not above zero is taken for a millimetre, as [units.Length.Format] does:
//
//	within, were the standard uncertainty 0.0012 mm or less, or with 4 times the readings
func (r Remedy) Format(unit units.Length) string {
	if unit <= 0 {
		unit = units.Millimetre
	}
	switch {
	case r.Toward == Undecided:
		return "nothing would settle it: the value stands on the limit"
	case r.Repeats == 1:
		return "settled: " + r.Toward.String()
	}
	step, places := unit, 0
	for r.Std/step < 10 && step%10 == 0 {
		step, places = step/10, places+1
	}
	s := fmt.Sprintf("%v, were the standard uncertainty %s or less", r.Toward, r.Std.Floor(step).Format(unit, places))
	if r.Repeats > 1 {
		return s + fmt.Sprintf(", or with %d times the readings", r.Repeats)
	}
	return s + "; more readings alone would not do"
}
