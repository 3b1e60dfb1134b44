// SPDX-License-Identifier: BSD-3-Clause

package house_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

const module = "borewright.example"

// A listed is what go list tells of a package.
type listed struct {
	ImportPath, Dir, Export string
	GoFiles                 []string
	Error                   *struct{ Err string }
	DepOnly                 bool
}

// load returns the packages of this module, and an importer of them and of what they import.
func load(t *testing.T) (*token.FileSet, []listed, types.Importer) {
	t.Helper()
	out := command(t, root, "go", "list", "-e", "-export", "-deps", "-json=ImportPath,Dir,GoFiles,Export,Error,DepOnly", module+"/...")
	exports, own := map[string]string{}, []listed{}
	for d := json.NewDecoder(strings.NewReader(out)); ; {
		var p listed
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		exports[p.ImportPath] = p.Export
		if !p.DepOnly {
			own = append(own, p)
		}
	}
	if len(own) < 2 {
		t.Fatalf("%d packages of %s, want this one and more", len(own), module)
	}
	fset := token.NewFileSet()
	return fset, own, importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) {
		if exports[path] == "" {
			return nil, fmt.Errorf("no export data of %s", path)
		}
		return os.Open(exports[path])
	})
}

// Length × Length compiles and is no Length; so with every quantity. TestNoProductOfQuantities type-checks every package of
// the module and fails where two of them are multiplied. A constant or a conversion from an integer counts, and is no
// quantity; anything else is first read with In or converted to float64.
func TestNoProductOfQuantities(t *testing.T) {
	fset, own, imports := load(t)
	t.Run("mistakes", func(t *testing.T) { checkMistakes(t, fset, imports) })
	for _, p := range own {
		if p.Error != nil {
			t.Errorf("%s: %s", p.ImportPath, p.Error.Err)
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
		found, err := products(fset, imports, p.ImportPath, files)
		if err != nil {
			t.Errorf("%s: %v", p.ImportPath, err)
		}
		for _, f := range found {
			t.Error(f)
		}
	}
}

// checkMistakes holds the package comment to its word: what it says does not compile does not, and what it says does, does.
func checkMistakes(t *testing.T, fset *token.FileSet, imports types.Importer) {
	for body, want := range map[string]string{
		"_ = bore < temperature":                       "mismatched types",
		"_ = bore + temperature":                       "mismatched types",
		"_ = bore + 2.5":                               "truncated",
		"_ = 2.5 * units.Inch":                         "truncated",
		"_ = units.Length(1.0 / 3 * units.PerInch)":    "cannot convert",
		"_ = units.Metre * units.Metre":                "overflows",
		"_ = temperature + change":                     "mismatched types",
		"_ = units.Length(2.5 * units.PerInch)":        "",
		"_ = bore * bore":                              "",
		"_ = (41 / 64) * units.Inch":                   "",
		"_ = 41 * units.Inch / 64":                     "",
		"_ = units.Length(x * units.PerMillimetre)":    "",
		"_ = temperature.Add(change).Sub(temperature)": "",
	} {
		src := "package p\nimport \"" + module + "/units\"\nfunc f(bore units.Length, temperature units.Temperature, change units.TemperatureChange, x float64) {\n" + body + "\n}"
		f, err := parser.ParseFile(fset, "p.go", src, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		_, err = products(fset, imports, "p", []*ast.File{f})
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", body, err, want)
		}
	}
}

// products type-checks a package and returns where two quantities are multiplied.
func products(fset *token.FileSet, imports types.Importer, path string, files []*ast.File) ([]string, error) {
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	if _, err := (&types.Config{Importer: imports}).Check(path, fset, files, info); err != nil {
		return nil, err
	}
	var found []string
	multiplied := func(pos token.Pos, x, y ast.Expr) {
		if a, b := quantity(info, x), quantity(info, y); a != nil && b != nil {
			found = append(found, fmt.Sprintf("%s: %s × %s", fset.Position(pos), types.TypeString(a, nil), types.TypeString(b, nil)))
		}
	}
	for _, f := range files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BinaryExpr:
				if n.Op == token.MUL {
					multiplied(n.OpPos, n.X, n.Y)
				}
			case *ast.AssignStmt:
				if n.Tok == token.MUL_ASSIGN {
					multiplied(n.TokPos, n.Lhs[0], n.Rhs[0])
				}
			}
			return true
		})
	}
	return found, nil
}

// quantity returns the type of x where that is a quantity. A constant is none, and neither is a count converted any
// number of times, as in Speed(float64(n)).
func quantity(info *types.Info, x ast.Expr) types.Type {
	if info.Types[x].Value != nil {
		return nil
	}
	for y := ast.Unparen(x); ; {
		call, ok := y.(*ast.CallExpr)
		if !ok || !info.Types[call.Fun].IsType() {
			break
		}
		y = ast.Unparen(call.Args[0])
		if t := info.Types[y].Type; isNumeric(t, types.IsInteger) && !isQuantity(t) {
			return nil
		}
	}
	if t := info.Types[x].Type; isQuantity(t) {
		return t
	}
	return nil
}

// isQuantity reports whether t is a numeric type of this module that has a method In.
func isQuantity(t types.Type) bool {
	named, ok := types.Unalias(t).(*types.Named)
	if !ok || named.Obj().Pkg() == nil || !strings.HasPrefix(named.Obj().Pkg().Path()+"/", module+"/") || !isNumeric(t, types.IsNumeric) {
		return false
	}
	for m := range named.NumMethods() {
		if named.Method(m).Name() == "In" {
			return true
		}
	}
	return false
}

func isNumeric(t types.Type, kind types.BasicInfo) bool {
	basic, ok := t.Underlying().(*types.Basic)
	return ok && basic.Info()&kind != 0
}

// The check itself is checked, on planted products.
func TestProductsAreFound(t *testing.T) {
	const src = `package planted
type Length int64
func (l Length) In(Length) float64 { return 0 }
type Speed float64
func (v Speed) In(Speed) float64 { return 0 }
type Count int64
type Alias = Length
const Inch Length = 25
func f(a, b Length, v, w Speed, n int, x float64, c, d Count, e Alias) {
	_ = a * b                       // 1
	_ = a + Inch*(b*a)              // 2
	_ = v * w                       // 3
	v *= w                          // 4
	_ = e * a                       // 5
	_ = Length(x) * a               // 6
	_ = Speed(x) * v                // 7
	_ = v * (w)                     // 8
	_ = Speed(a) * v                // 9
	_ = Inch * a * Inch
	_ = 3 * a
	_ = Length(n) * a
	_ = v * Speed(float64(n))
	_ = (Length)(int64(n)) * a
	_ = float64(a) * float64(b)
	_ = c * d
	a *= Length(c)
	_ = a / b
	a *= 2
	a *= Length(n)
}`
	fset := token.NewFileSet()
	f, err := parser.ParseFile(fset, "planted.go", src, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	found, err := products(fset, nil, module+"/planted", []*ast.File{f})
	if err != nil {
		t.Fatal(err)
	}
	var want []string
	for i, line := range strings.Split(src, "\n") {
		if strings.Contains(line, " // ") {
			want = append(want, fmt.Sprintf("planted.go:%d:", i+1))
		}
	}
	if len(want) != 9 || !slices.EqualFunc(found, want, strings.HasPrefix) {
		t.Errorf("found %q, want %q", found, want)
	}
	if found, err := products(fset, nil, "elsewhere/planted", []*ast.File{f}); len(found) != 0 || err != nil {
		t.Errorf("in another module: %q, %v", found, err)
	}
}
