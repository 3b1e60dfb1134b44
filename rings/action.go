// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"borewright.example/internal/enum"
)

func (a Action) names() []string { return []string{"undecided", "as is", "file", "too wide"} }

// String returns "undecided", "as is", "file" or "too wide".
func (a Action) String() string { return enum.Name(a, a.names()) }

// MarshalText returns the text of [Action.String]; a value that is none of the four is [units.ErrUnknownName].
func (a Action) MarshalText() ([]byte, error) { return enum.Marshal(a, a.names()) }

// UnmarshalText reads the text of [Action.String]; any other is [units.ErrUnknownName]. On error the receiver
// keeps its value.
func (a *Action) UnmarshalText(text []byte) error { return enum.Unmarshal(a, text, a.names()) }
