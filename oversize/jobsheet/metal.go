// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"strings"

	"borewright.example/units/material"
)

// A Metal is a material as a job names it: one of [material.Names], or the maker's coefficient
// of expansion, "11.4e-6/K", with its half-width where it is known, "11.4e-6/K ± 0.3e-6/K"; where it is not, ± 1e-6/K is
// taken.
type Metal string

// UnmarshalText checks the text and keeps it. On error the receiver keeps its value.
func (m *Metal) UnmarshalText(text []byte) error {
	err := Metal(text).check()
	if err == nil {
		*m = Metal(text)
	}
	return err
}

// check says what is wrong with the text of a metal, which may be left out.
func (m Metal) check() error {
	if _, err := m.material(); m != "" && err != nil {
		return fmt.Errorf(`want one of %s, or an expansion such as "11.4e-6/K"`, strings.Join(material.Names(), ", "))
	}
	return nil
}

// material returns what the text names.
func (m Metal) material() (material.Material, error) {
	if known, err := material.ByName(string(m)); err == nil {
		return known, nil
	}
	value, within, ranged := strings.Cut(string(m), " ± ")
	named := material.Material{Name: string(m), Within: ofExpansion, Source: "the job"}
	err := named.Expansion.UnmarshalText([]byte(value))
	if err == nil && ranged {
		err = named.Within.UnmarshalText([]byte(within))
	}
	return named, err
}

// or returns what the text names, else the usual metal. That it names none is a fault of the job.
func (m Metal) or(usual material.Material) material.Material {
	if named, err := m.material(); err == nil {
		return named
	}
	return usual
}
