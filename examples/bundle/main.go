// SPDX-License-Identifier: BSD-3-Clause

// Bundle prints a program of this module as one text for the Go playground.
//
// It is a txtar archive of the program, a go.mod, and each package of the module that it imports, folded into one
// file without comments.
//
// Until the module is published the playground cannot fetch it, and then a bundle is how to run and
// change a lesson there. The playground takes at most 20 files, and shares at most 64 KiB; running
// has no such limit. Packages go in whole where that fits, otherwise without what the program cannot
// reach, and where that is still too long with short names for what the program does not mention. The
// program itself stays as it is. What is said on standard error tells which, and whether it fits.
package main

import (
	"fmt"
	"os"
	"path"
	"path/filepath"
	"strings"
)

// Limits of the playground, from its source.
const (
	maxFiles = 20
	maxShare = 64 << 10
)

func main() {
	if len(os.Args) != 2 || strings.HasPrefix(os.Args[1], "-") {
		fmt.Fprintln(os.Stderr, "usage: go run ./examples/bundle ./examples/NAME")
		os.Exit(2)
	}
	text, note, err := bundle(os.Args[1])
	if err != nil {
		fmt.Fprintln(os.Stderr, "bundle:", err)
		os.Exit(1)
	}
	fmt.Print(text)
	fmt.Fprintf(os.Stderr, "%s: %s\n", filepath.Base(os.Args[1]), note)
}

// bundle returns the archive of the program in a folder, and what is to be said of it.
func bundle(folder string) (text, note string, err error) {
	p, err := load(folder)
	if err != nil {
		return "", "", err
	}
	how := "packages whole"
	if text, err = p.archive(p.all(), false); err == nil && len(text) > maxShare {
		how = "without what it cannot reach"
		text, err = p.archive(p.reached(), false)
	}
	if err == nil && len(text) > maxShare {
		keep := p.reached()
		p.shorten(keep)
		var short string
		if short, err = p.archive(keep, true); len(short) <= maxShare { // else it is of no use
			how, text = how+", in short names", short
		}
	}
	if err != nil {
		return "", "", err
	}
	files := strings.Count("\n"+text, "\n-- ") + 1
	note = fmt.Sprintf("%d files, %d bytes, %s", files, len(text), how)
	if files > maxFiles {
		note += fmt.Sprintf("; OVER the %d files that the playground runs", maxFiles)
	}
	if len(text) > maxShare {
		note += fmt.Sprintf("; OVER the %d bytes that it shares, though it runs", maxShare)
	}
	return text, note, nil
}

// archive returns the program with the units of its packages that are kept. The text before the first
// file is the program itself, as the playground has it.
func (p *program) archive(keep map[*unit]bool, tight bool) (string, error) {
	var packages strings.Builder
	used := map[string]bool{} // modules
	for _, pkg := range p.own {
		src, imports, err := pkg.fold(p.fset, keep, tight)
		if err != nil {
			return "", err
		}
		if src == "" {
			continue
		}
		for _, path := range imports {
			used[p.module[path]] = true
		}
		fmt.Fprintf(&packages, "-- %s/%s.go --\n%s", strings.TrimPrefix(pkg.path, p.path+"/"), path.Base(pkg.path), src)
	}
	var text strings.Builder
	for i, f := range p.main {
		b, err := os.ReadFile(f)
		if err != nil {
			return "", err
		}
		if i > 0 {
			name, err := filepath.Rel(filepath.Dir(p.main[0]), f)
			if err != nil {
				return "", err
			}
			fmt.Fprintf(&text, "-- %s --\n", filepath.ToSlash(name))
		}
		text.Write(b)
	}
	fmt.Fprintf(&text, "-- go.mod --\nmodule %s\n\ngo %s\n", p.path, p.goVersion)
	for _, m := range p.requires {
		name, _, _ := strings.Cut(m, " ")
		if used[name] {
			fmt.Fprintf(&text, "\nrequire %s\n", m)
		}
	}
	return text.String() + packages.String(), nil
}
