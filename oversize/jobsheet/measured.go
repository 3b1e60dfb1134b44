// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"strings"

	"borewright.example/oversize/jobsheet/internal/measured"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Measured is a value with the doubt that came with it, in one text, as sheets print it:
// "78.194 ± 0.004 mm", or "78.194 ± 0.004 mm (9 readings)" where so many readings stand behind the doubt.
// The doubt is expanded to 95 %. "78.194 mm" is a value of which nobody said how sure it is.
type Measured struct {
	Value    units.Length // as measured
	Expanded units.Length // half-width that holds 95 %; 0: not said
	Readings int          // that the doubt was worked out from, 2 or more; 0: a certificate, or experience
}

// isZero reports whether nothing was measured.
func (m Measured) isZero() bool { return m == Measured{} }

// String returns the text of a Measured, in millimetres.
func (m Measured) String() string { return measured.Value(m).String() }

// MarshalText returns the text of [Measured.String].
func (m Measured) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// UnmarshalText reads a length, or one with its doubt. On error the receiver keeps its value.
func (m *Measured) UnmarshalText(text []byte) error {
	v, err := measured.Parse(string(text))
	if err == nil {
		*m = Measured(v)
	}
	return err
}

// estimate returns the value with its standard uncertainty; where no doubt came with it, the one that is usual for such a value.
func (m Measured) estimate(usual units.Length) uncertainty.Estimate {
	return measured.Value(m).Estimate(usual)
}

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
	if m == "" {
		return nil
	}
	if _, err := m.material(); err != nil {
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
