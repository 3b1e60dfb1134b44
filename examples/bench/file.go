// SPDX-License-Identifier: BSD-3-Clause

//go:build !js

package main

import (
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// writeFile writes the page as one file with the library inside, or that of photographs. The same sources and compiler give
// the same bytes.
func writeFile(ctx context.Context, name string, photo bool) error {
	program, html := "borewright.example/examples/bench", document.html
	if photo {
		program, html = program+"/photo", photoHTML
	}
	d, err := build(ctx, program)
	if err != nil {
		return err
	}
	file, err := bytesOf(html(d))
	if err != nil {
		return err
	}
	return os.WriteFile(name, file, 0o644)
}

// build compiles a program for the browser.
func build(ctx context.Context, program string) (d document, err error) {
	folder, err := os.MkdirTemp("", "bench")
	if err != nil {
		return d, err
	}
	defer os.RemoveAll(folder)
	wasm := filepath.Join(folder, "bench.wasm")
	// Inlining makes a turn faster, but for that of these, which is a twentieth of the file.
	compile := exec.CommandContext(ctx, "go", "build", "-trimpath", "-buildvcs=false", "-gcflags=fmt=-l", "-gcflags=encoding/json=-l",
		"-gcflags=borewright.example/oversize/jobsheet/page=-l", "-gcflags=borewright.example/oversize/jobsheet/picture=-l", "-gcflags="+program+"=-l",
		"-ldflags=-s -w -buildid=", "-o", wasm, program)
	compile.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "CGO_ENABLED=0")
	if out, err := compile.CombinedOutput(); err != nil {
		return d, fmt.Errorf("go build: %w: %s", err, out)
	}
	data, err := os.ReadFile(wasm)
	if err != nil {
		return d, err
	}
	if d.packed, d.size, err = pack(data); err != nil {
		return d, err
	}
	root, err := exec.CommandContext(ctx, "go", "env", "GOROOT").Output()
	if err != nil {
		return d, fmt.Errorf("go env: %w", err)
	}
	// It belongs to the compiler: that of another does not fit.
	support, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", "wasm_exec.js"))
	d.support = string(support)
	return d, err
}
