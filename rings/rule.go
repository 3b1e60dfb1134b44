// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// A Rule is an end gap that one voice of the trade asks for. It serves to spot a slip of unit
// and where no maker's figure can be had; it is never a limit.
type Rule struct {
	Gap    units.Limits `json:"gap"`    // from the least to the greatest that the voice asks for
	Source string       `json:"source"` // a book, or "common practice" where none could be found
}

// Rules returns the end gaps that rules per unit of bore give for a bore, which is its diameter,
// and the whole of their spread. The rules do not say for what duty they are, and the largest
// asks for three times the smallest; the maker's window comes first. A bore of zero is
// [units.ErrNotGiven], one below that or beyond [units.MaxLength] [units.ErrRange].
func Rules(bore units.Length) (rules []Rule, spread units.Limits, err error) {
	switch {
	case bore <= 0:
		return nil, units.Limits{}, fmt.Errorf("rings: bore %v: %w (more than 0)", bore, given.Err(bore))
	case bore > units.MaxLength:
		return nil, units.Limits{}, fmt.Errorf("rings: bore %v: %w (up to %v)", bore, units.ErrRange, units.MaxLength)
	}
	const common = "common practice"
	for _, r := range [...]struct {
		low, high int64 // ten-thousandths of the bore
		source    string
	}{
		{20, 30, common},
		{30, 40, common},
		{30, 50, common},
		{40, 40, common},
		{45, 50, common},
		{60, 60, common},
		{20, 40, "A Textbook of Machine Design (Khurmi, Gupta), ch. 32"},
	} {
		var gap units.Limits
		if gap.Min, err = bore.MulDiv(r.low, 10_000); err != nil {
			return nil, units.Limits{}, err
		}
		if gap.Max, err = bore.MulDiv(r.high, 10_000); err != nil {
			return nil, units.Limits{}, err
		}
		rules = append(rules, Rule{Gap: gap, Source: r.source})
		if spread.Min == 0 || gap.Min < spread.Min {
			spread.Min = gap.Min
		}
		spread.Max = max(spread.Max, gap.Max)
	}
	return rules, spread, nil
}
