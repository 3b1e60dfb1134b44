// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"errors"
	"fmt"
	"math"
	"time"

	"borewright.example/internal/enum"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// ErrShrunk: a pass after which the bore was read smaller than before, beyond its uncertainty.
var ErrShrunk = errors.New("bore read smaller after honing than before")

// A Reading is the diameter as it was read while the cylinder had the temperature At. A cylinder warms
// as it is honed; where At is not given the reading waits until it is.
//
// Std of Diameter is all that the gauge and the temperature may be wrong by. Read at one depth and
// along one axis for all of a job, where the bore is to come to size; how the rest of it stands
// is for a whole survey to say.
type Reading struct {
	Diameter uncertainty.Estimate `json:"diameter,omitzero"` // as read
	At       units.Temperature    `json:"at,omitzero"`       // of the cylinder then
}

// A Pass is a stretch of honing without stopping, and the reading after it.
type Pass struct {
	Lasts time.Duration `json:"lasts_ns,omitzero"` // above 0, up to a day
	After Reading       `json:"after,omitzero"`    // once it has stopped
}

// A Sizing is the honing of one bore to size, as far as it has got.
type Sizing struct {
	Metal  material.Material `json:"metal,omitzero"`  // of the cylinder; its Expansion is used
	Finish units.Limits      `json:"finish,omitzero"` // diameter at 20 °C, both ends; Max is the stop size

	// Risk is the probability, over all passes after the trial pass, that the bore runs past Finish.Max:
	// [LeastRisk] to 0.5; 0 stands for 0.05.
	Risk float64 `json:"risk,omitzero"`
	// Scatter is by what fraction of itself the rate differs from one pass to the next, one standard
	// deviation, up to 0.3; 0 stands for 0.2, this library's own judgement.
	Scatter float64 `json:"scatter,omitzero"`

	Trial   time.Duration `json:"trial_ns,omitzero"`   // the first pass, while nothing is known
	Longest time.Duration `json:"longest_ns,omitzero"` // no pass is longer; a second at least

	Start  Reading `json:"start,omitzero"` // before the first pass
	Passes []Pass  `json:"passes,omitempty"`
}

// A Decision is what to do after a reading. The zero value is the safe one.
type Decision int8

// The decisions.
const (
	MeasureAgain Decision = iota // no pass of a second keeps to the risk: the gauge, or what is known of the rate, is too coarse
	GoOn                         // with a pass of the length told
	StopHere                     // the size lies within the finish limits
	PastSize                     // the size lies beyond the stop size
)

var decisionNames = []string{"measure again", "go on", "stop", "past the size"}

// String returns "measure again", "go on", "stop" or "past the size".
func (d Decision) String() string { return enum.Name(d, decisionNames) }

// MarshalText returns the text of [Decision.String]. A value that is no decision is [units.ErrUnknownName].
func (d Decision) MarshalText() ([]byte, error) { return enum.Marshal(d, decisionNames) }

// UnmarshalText reads the text of [Decision.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (d *Decision) UnmarshalText(text []byte) error { return enum.Unmarshal(d, text, decisionNames) }

// A Next is what to do now. All sizes are at 20 °C.
type Next struct {
	Decision Decision             `json:"decision"` // what to do
	Size     uncertainty.Estimate `json:"size"`     // of the bore now

	Lasts time.Duration        `json:"lasts_ns,omitzero"` // of the next pass, in whole seconds unless it is a trial
	Risk  float64              `json:"risk,omitzero"`     // probability that the next pass may take, 0 to 1; 0 for a trial, which nothing is known of
	Then  uncertainty.Estimate `json:"then,omitzero"`     // the size to expect after it; zero for a trial

	Growth uncertainty.Estimate `json:"growth,omitzero"` // of the diameter in a minute of honing, the later passes counting more
	// Whether the rate changes from pass to pass beyond doubt and scatter. Where it fades, stones glaze or load,
	// or oil fails: dress, clean, look. Where it rises, the promise of [Sizing.Next] does not hold for long: make
	// shorter passes.
	Fades bool `json:"fades,omitzero"`
	Rises bool `json:"rises,omitzero"`

	// How much is still to expect, the next pass included; 0 where that cannot be told.
	Passes int           `json:"passes,omitzero"`
	Time   time.Duration `json:"time_ns,omitzero"` // of honing alone
}

// String returns what to do in a sentence, rounded for reading.
func (n Next) String() string {
	s := fmt.Sprintf("%v: %v", n.Decision, n.Size)
	if n.Decision != GoOn {
		return s
	}
	s += fmt.Sprintf("; a pass of %v", n.Lasts)
	if n.Risk == 0 {
		return s + ", then measure"
	}
	s += fmt.Sprintf(" should bring %v", n.Then)
	if n.Passes > 0 {
		s += fmt.Sprintf("; %d to come, %v in all", n.Passes, n.Time)
	}
	return s
}

// LeastRisk is the least risk that a [Sizing] takes: the scatter of a stone is not known well enough to
// keep to less. This library's own judgement.
const LeastRisk = 0.01

const (
	usualRisk    = 0.05
	usualScatter = 0.2
	shrinks      = 3    // standard uncertainties by which a bore may seem to shrink
	maxPasses    = 1000 // made, and looked ahead
)

// checked is a Sizing with its defaults filled in and its lengths at 20 °C, in picometres.
type checked struct {
	min, max      float64
	risk, scatter float64
	dof           float64
	trial, most   float64 // seconds
	size, std     []float64
	lasts         []float64
}

func (z Sizing) check() (checked, error) {
	c := checked{risk: z.Risk, scatter: z.Scatter, min: float64(z.Finish.Min), max: float64(z.Finish.Max)}
	if c.risk == 0 {
		c.risk = usualRisk
	}
	if c.scatter == 0 {
		c.scatter = usualScatter
	}
	err := firstError(checkLength("least finish size", z.Finish.Min), checkLength("stop size", z.Finish.Max),
		checkTime("trial pass", z.Trial), checkTime("longest pass", z.Longest))
	switch {
	case err != nil:
		return c, err
	case z.Finish.Min >= z.Finish.Max:
		return c, fmt.Errorf("hone: least finish size %v, stop size %v: %w: want the stop size above", z.Finish.Min, z.Finish.Max, units.ErrCrossed)
	case !(c.risk >= LeastRisk && c.risk <= 0.5):
		return c, fmt.Errorf("hone: risk %v: %w: want %v to 0.5", c.risk, units.ErrRange, LeastRisk)
	case !(c.scatter > 0 && c.scatter <= 0.3):
		return c, fmt.Errorf("hone: scatter of the rate %v: %w: want above 0, up to 0.3", c.scatter, units.ErrRange)
	case z.Longest < time.Second:
		return c, fmt.Errorf("hone: time of the longest pass %v: %w: want a second or more", z.Longest, units.ErrRange)
	case z.Metal.Expansion == 0:
		return c, fmt.Errorf("hone: expansion of the cylinder's metal: %w", units.ErrNotGiven)
	case len(z.Passes) > maxPasses:
		return c, fmt.Errorf("hone: %d passes: %w: want up to %d", len(z.Passes), units.ErrRange, maxPasses)
	}
	c.trial, c.most = min(z.Trial, z.Longest).Seconds(), z.Longest.Seconds()
	room := make([]float64, 3*len(z.Passes)+2)
	n := len(z.Passes) + 1
	c.size, c.std, c.lasts = room[:0:n], room[n:n:2*n], room[2*n:2*n]
	if err := c.read(z.Start, z.Metal); err != nil {
		return c, fmt.Errorf("hone: at the start: %w", err)
	}
	for i, p := range z.Passes {
		if err := checkTime("pass", p.Lasts); err != nil {
			return c, fmt.Errorf("hone: pass %d: %w", i+1, err)
		}
		if err := c.read(p.After, z.Metal); err != nil {
			return c, fmt.Errorf("hone: after pass %d: %w", i+1, err)
		}
		c.lasts = append(c.lasts, p.Lasts.Seconds())
		if took := c.size[i+1] - c.size[i]; took < -shrinks*math.Hypot(c.std[i], c.std[i+1]) {
			return c, fmt.Errorf("hone: pass %d: %w: by %v at 20 °C; look for heat, dirt or another axis",
				i+1, ErrShrunk, units.Length(-took).Round(units.Nanometre))
		}
	}
	return c, nil
}

// read corrects a reading for its temperature and adds it.
func (c *checked) read(r Reading, metal material.Material) error {
	if err := firstError(checkLength("diameter", r.Diameter.Value), r.Diameter.Validate()); err != nil {
		return err
	}
	if r.At.IsZero() {
		return fmt.Errorf("hone: temperature of the cylinder: %w: the reading waits for it", units.ErrNotGiven)
	}
	size, err := metal.SizeAt20(r.Diameter.Value, r.At)
	if err != nil {
		return err
	}
	c.size, c.std = append(c.size, float64(size)), append(c.std, float64(r.Diameter.Std))
	if d := r.Diameter.DoF; d != 0 && (c.dof == 0 || d < c.dof) {
		c.dof = d
	}
	return nil
}

// checkTime refuses a time outside (0, a day].
func checkTime(name string, d time.Duration) error {
	switch {
	case d == 0:
		return fmt.Errorf("hone: time of the %s: %w", name, units.ErrNotGiven)
	case d < 0 || d > maxSeconds*time.Second:
		return fmt.Errorf("hone: time of the %s %v: %w: want above 0, up to a day", name, d, units.ErrRange)
	}
	return nil
}
