// SPDX-License-Identifier: BSD-3-Clause

package main

const module = "borewright.example"

// What there is to be called; the script run writes a file in this one's place.
var (
	functions = map[string]any{}
	types     = []any{}
)
