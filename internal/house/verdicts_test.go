// SPDX-License-Identifier: BSD-3-Clause

package house_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"path/filepath"
	"strings"
	"testing"
)

// Only the ledger of the job sheet says what a verdict means for the work; a second place that asks a verdict soon
// says something else. These functions outside it ask one, and why they may.
var asksVerdict = map[string]string{
	"session.go judge":        "works out what would settle a finding, which is printed",
	"choose.go price":         "works out what less doubt would spare, which is printed",
	"texture.go texture":      "writes a row of the ledger",
	"alone.go pastLimits":     "finds what hangs on one reading, which wants to be confirmed: a row is open for it",
	"hone.go honed":           "takes the setting in use where it leaves the crosshatch wanted, without a doubt to ask",
	"overview.go mark":        "prints the finding of a row that is open because the work is to come",
	"text_proof.go proofWork": "prints the way out of a row that has failed",
}

// TestVerdictsAreAskedInOnePlace finds every comparison, switch, map, search and conversion of an uncertainty.Verdict, or of
// its text, in the job sheet outside the ledger.
func TestVerdictsAreAskedInOnePlace(t *testing.T) {
	fset, own, imports := load(t)
	seen := map[string]bool{}
	for _, p := range own {
		if p.ImportPath != module+"/oversize/jobsheet" {
			continue
		}
		var files []*ast.File
		for _, name := range p.GoFiles {
			f, err := parser.ParseFile(fset, filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, f)
		}
		info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
		config := types.Config{Importer: imports}
		if _, err := config.Check(p.ImportPath, fset, files, info); err != nil {
			t.Fatal(err)
		}
		for _, f := range files {
			name := filepath.Base(fset.Position(f.Pos()).Filename)
			if strings.HasPrefix(name, "ledger") || name == "agree.go" {
				continue
			}
			for _, d := range f.Decls {
				in := name
				if fn, ok := d.(*ast.FuncDecl); ok {
					in += " " + fn.Name.Name
				}
				ast.Inspect(d, func(n ast.Node) bool {
					if what := asked(info, n); what != "" {
						seen[in] = true
						if asksVerdict[in] == "" {
							t.Errorf("%v: %s on a verdict in %q: the ledger decides", fset.Position(n.Pos()), what, in)
						}
					}
					return true
				})
			}
		}
	}
	for in := range asksVerdict {
		if !seen[in] {
			t.Errorf("%q asks no verdict: take it off the list", in)
		}
	}
}

// asked says how a node asks a verdict; "" where it does not.
func asked(info *types.Info, n ast.Node) string {
	verdict := func(e ast.Expr) bool {
		return e != nil && fmt.Sprint(info.TypeOf(e)) == module+"/units/uncertainty.Verdict"
	}
	said := func(e ast.Expr) bool { // its text
		call, ok := e.(*ast.CallExpr)
		if !ok {
			return false
		}
		method, ok := call.Fun.(*ast.SelectorExpr)
		return ok && verdict(method.X)
	}
	switch n := n.(type) {
	case *ast.BinaryExpr:
		if n.Op != token.ADD && (verdict(n.X) || verdict(n.Y) || said(n.X) || said(n.Y)) {
			return "a comparison"
		}
	case *ast.CallExpr:
		if info.Types[n.Fun].IsType() && len(n.Args) == 1 && verdict(n.Args[0]) {
			return "a conversion"
		}
	case *ast.ArrayType:
		if verdict(n.Elt) {
			return "a list"
		}
	case *ast.SwitchStmt:
		if n.Tag != nil && (verdict(n.Tag) || said(n.Tag)) {
			return "a switch"
		}
	case *ast.MapType:
		if verdict(n.Key) {
			return "a map"
		}
	case *ast.IndexExpr:
		if verdict(n.Index) || said(n.Index) {
			return "a look-up"
		}
	}
	return ""
}
