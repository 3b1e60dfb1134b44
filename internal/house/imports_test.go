// SPDX-License-Identifier: BSD-3-Clause

package house_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"
)

// roads says which packages of this module each of them may import, and so which way things go.
var roads = map[string][]string{
	"borewright.example":         {}, // no code
	"units":                      {},
	"internal/enum":              {"units"},
	"internal/given":             {"units"},
	"internal/house":             {}, // tests of the module as a whole
	"units/material":             {"units", "internal/given"},
	"units/uncertainty":          {"units", "internal/enum"},
	"units/uncertainty/simulate": {"units", "units/uncertainty", "internal/enum"},
	"units/uncertainty/study":    {"units", "units/uncertainty", "internal/enum"},
	"bore/internal/circle":       {},
	"bore/internal/lobes":        {},
	"bore":                       {"units", "internal/given", "units/material", "units/uncertainty", "internal/enum", "bore/internal/circle", "bore/internal/lobes"},
	"bore/fit":                   {"units", "internal/given", "units/material", "units/uncertainty", "internal/enum"},
	"bore/form":                  {"units", "internal/enum", "bore", "bore/internal/circle", "bore/internal/lobes"},
	"bore/hone":                  {"units", "units/material", "units/uncertainty", "internal/enum"},
	"bore/hone/photo":            {"units", "units/uncertainty", "bore/hone"},
	"bore/surface":               {"units", "internal/given", "units/uncertainty", "internal/enum"},
	"rings":                      {"units", "internal/given", "units/material", "units/uncertainty", "internal/enum", "bore"},
	"oversize":                   {"units", "internal/given", "units/material", "units/uncertainty", "internal/enum", "bore", "bore/fit"},
	"oversize/sleeve":            {"units", "internal/given", "units/material", "units/uncertainty", "internal/enum"},
	"oversize/jobsheet": {"units", "units/material", "units/uncertainty", "internal/enum", "bore", "bore/fit", "bore/hone", "bore/form", "rings", "oversize", "oversize/sleeve",
		"oversize/jobsheet/internal/measured", "oversize/jobsheet/internal/notes", "oversize/jobsheet/internal/sense", "oversize/jobsheet/internal/show", "oversize/jobsheet/internal/slips", "oversize/jobsheet/internal/strictjson", "oversize/jobsheet/internal/texture",
		"oversize/jobsheet/internal/trace", "oversize/jobsheet/page", "oversize/jobsheet/picture", "units/uncertainty/study", "bore/surface"},

	"oversize/jobsheet/internal/measured": {"units", "units/uncertainty"},
	"oversize/jobsheet/internal/notes":    {"bore/hone", "oversize", "rings", "oversize/jobsheet/internal/show"},
	"oversize/jobsheet/internal/sense": {"units", "units/material", "bore", "bore/fit", "bore/hone", "rings", "oversize", "oversize/sleeve",
		"oversize/jobsheet/internal/show"},
	"oversize/jobsheet/internal/show":       {"units", "units/uncertainty", "bore", "bore/form", "bore/hone", "oversize"},
	"oversize/jobsheet/internal/slips":      {"units"},
	"oversize/jobsheet/internal/strictjson": {},
	"oversize/jobsheet/internal/texture":    {"units", "bore/surface"},
	"oversize/jobsheet/internal/trace":      {"units", "units/material", "units/uncertainty", "bore", "bore/form", "oversize/jobsheet/internal/sense"},
	"oversize/jobsheet/page":                {},
	"oversize/jobsheet/picture":             {"units", "units/uncertainty", "bore", "bore/form", "bore/hone", "bore/surface", "oversize/jobsheet/page"},
}

// standard is what packages of the library take from the standard library: nothing that reads a file, a
// clock's time, the environment or chance, and nothing unsafe.
var standard = []string{
	"bufio", "bytes", "cmp", "encoding", "encoding/csv", "encoding/json", "errors", "fmt", "html", "image", "image/color", "io", "iter", "maps", "math", "math/bits", "reflect",
	"slices", "sort", "strconv", "strings", "text/tabwriter", "time", "unicode", "unicode/utf8",
}

// light is what they take from other modules.
var light = []string{
	"github.com/shopspring/decimal",
	"gonum.org/v1/gonum/dsp/fourier",
	"gonum.org/v1/gonum/floats",
	"gonum.org/v1/gonum/integrate/quad",
	"gonum.org/v1/gonum/mathext",
	"gonum.org/v1/gonum/num/dual",
	"gonum.org/v1/gonum/num/hyperdual",
}

// heavy must not come in by a back door either: seconds of every importer's build, or test libraries.
var heavy = []string{
	"gonum.org/v1/gonum/mat", "gonum.org/v1/gonum/stat", "gonum.org/v1/gonum/optimize", "gonum.org/v1/gonum/interp",
	"gonum.org/v1/plot", "golang.org/x/tools", "pgregory.net/rapid",
}

func below(path, parent string) bool { return path == parent || strings.HasPrefix(path, parent+"/") }

// TestImports lists what every package of the library imports, directly and behind that; and of every package its
// first sentence, which lists of packages show, has a line's room at most.
func TestImports(t *testing.T) {
	list := command(t, root, "go", "list", "-f", "{{.ImportPath}}\t{{join .Imports \" \"}}\t{{join .Deps \" \"}}\t{{.Doc}}", module+"/...")
	packages := 0
	for line := range strings.Lines(list) {
		columns := strings.Split(strings.TrimRight(line, "\n"), "\t")
		path, imports, deps := columns[0], strings.Fields(columns[1]), strings.Fields(columns[2])
		name := strings.TrimPrefix(path, module+"/")
		if n := utf8.RuneCountInString(columns[3]); n > 100 { // this folder of tests alone has none
			t.Errorf("%s: a first sentence of %d characters, want 100 at most: %s", name, n, columns[3])
		}
		if below(name, "examples") {
			continue
		}
		packages++
		t.Logf("%s: %s", name, strings.Join(imports, " "))
		allowed, known := roads[name]
		if !known {
			t.Errorf("%s has no line in roads: say what it may import", name)
		}
		for _, i := range imports {
			own, ok := strings.CutPrefix(i, module+"/")
			if ok && !slices.Contains(allowed, own) {
				t.Errorf("%s imports %s", name, own)
			}
			if !ok && !slices.Contains(standard, i) && !slices.Contains(light, i) {
				t.Errorf("%s imports %s", name, i)
			}
		}
		for _, d := range deps {
			if slices.ContainsFunc(heavy, func(h string) bool { return below(d, h) }) {
				t.Errorf("behind the imports of %s stands %s", name, d)
			}
		}
	}
	if packages < 12 {
		t.Errorf("%d packages, want more", packages)
	}
}

// TestModule: what importers inherit by go.mod is the least there can be: three modules, a Go version
// that is no newer than those need, and no tools.
func TestModule(t *testing.T) {
	mod, err := os.ReadFile(filepath.Join(root, "go.mod"))
	if err != nil {
		t.Fatal(err)
	}
	const want = "module borewright.example\n\ngo 1.24.0\n\nrequire (\n\tgithub.com/shopspring/decimal "
	if n := strings.Count(string(mod), "\n\t"); !strings.HasPrefix(string(mod), want) || n != 3 {
		t.Errorf("go.mod has grown:\n%s", mod)
	}
}
