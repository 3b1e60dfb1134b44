// SPDX-License-Identifier: BSD-3-Clause

package enum_test

import (
	"errors"
	"slices"
	"testing"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

type colour int8

var names = []string{"", "red", "", "blue"}

func TestBothWays(t *testing.T) {
	for _, i := range []int{0, 1, 3} {
		name := names[i]
		b, err := enum.Marshal(colour(i), names)
		if err != nil || string(b) != name || enum.Name(colour(i), names) != name {
			t.Errorf("%d: %q, %v, %q", i, b, err, enum.Name(colour(i), names))
		}
		var c colour
		if err := enum.Unmarshal(&c, b, names); err != nil || c != colour(i) {
			t.Errorf("%q: %d, %v", b, c, err)
		}
	}
}

func TestNoName(t *testing.T) {
	for _, c := range []colour{-128, -1, 2, 4, 127} {
		if _, err := enum.Marshal(c, names); !errors.Is(err, units.ErrUnknownName) {
			t.Errorf("%d: %v", c, err)
		}
	}
	if got := enum.Name(colour(2), names); got != "enum_test.colour(2)" {
		t.Error(got)
	}
	c := colour(1)
	err := enum.Unmarshal(&c, []byte("Red"), names)
	if !errors.Is(err, units.ErrUnknownName) || c != 1 {
		t.Error(c, err)
	}
	var unknown *enum.NameError
	if !errors.As(err, &unknown) || !slices.Equal(unknown.Names, []string{"red", "blue"}) {
		t.Errorf("%v offers %q", err, unknown.Names)
	}
}
