// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

// Photo is the program inside the page that marks a photograph of a wall and tells its crosshatch.
//
// It runs in a browser alone: go run ./examples/bench -photo -o photo.html writes the page.
package main

import (
	"fmt"
	"os"
)

func main() {
	fmt.Fprintln(os.Stderr, "photo: this runs inside a page: go run ./examples/bench -photo -o photo.html writes it")
	os.Exit(2)
}
