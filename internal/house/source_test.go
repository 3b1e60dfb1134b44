// SPDX-License-Identifier: BSD-3-Clause

package house_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

var snake = regexp.MustCompile(`^[a-z0-9]+(_[a-z0-9]+)*$`)

// TestSource holds the library to rules that its source shows: fields of JSON are snake_case and a duration says its
// unit, nothing is done in init or beside its caller, no package assigns to a variable of its own.
func TestSource(t *testing.T) {
	structs := 0
	packages := map[string][]*ast.File{}
	fset := token.NewFileSet()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		switch name := filepath.Base(path); {
		case err != nil:
			return err
		case d.IsDir() && (strings.HasPrefix(name, ".") && name != ".." || name == "examples" || name == "testdata"):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go"):
			return nil
		}
		f, err := parser.ParseFile(fset, path, nil, parser.SkipObjectResolution)
		packages[filepath.Dir(path)] = append(packages[filepath.Dir(path)], f)
		return err
	})
	if err != nil || len(packages) < 12 {
		t.Fatalf("%d packages: %v", len(packages), err)
	}
	for _, files := range packages {
		names := map[string]bool{} // of the package's variables, which nothing local may hide
		for _, f := range files {
			for _, d := range f.Decls {
				g, ok := d.(*ast.GenDecl)
				if !ok || g.Tok != token.VAR {
					continue
				}
				for _, s := range g.Specs {
					for _, n := range s.(*ast.ValueSpec).Names {
						names[n.Name] = n.Name != "_"
					}
				}
			}
		}
		ours := func(x ast.Expr) bool {
			for {
				switch y := x.(type) {
				case *ast.IndexExpr:
					x = y.X
				case *ast.SelectorExpr:
					x = y.X
				case *ast.StarExpr:
					x = y.X
				case *ast.ParenExpr:
					x = y.X
				case *ast.Ident:
					return names[y.Name]
				default:
					return false
				}
			}
		}
		for _, f := range files {
			ast.Inspect(f, func(n ast.Node) bool {
				at := func() token.Position { return fset.Position(n.Pos()) }
				switch x := n.(type) {
				case *ast.GoStmt:
					t.Errorf("%v: starts a goroutine", at())
				case *ast.FuncDecl:
					if x.Recv == nil && x.Name.Name == "init" {
						t.Errorf("%v: works in init", at())
					}
				case *ast.AssignStmt:
					for _, l := range x.Lhs {
						if x.Tok != token.DEFINE && ours(l) {
							t.Errorf("%v: assigns to a variable of the package, or to what hides it", at())
						}
					}
				case *ast.IncDecStmt:
					if ours(x.X) {
						t.Errorf("%v: assigns to a variable of the package, or to what hides it", at())
					}
				case *ast.StructType:
					structs++
					for _, field := range x.Fields.List {
						if field.Tag == nil {
							continue
						}
						tag, err := strconv.Unquote(field.Tag.Value)
						if err != nil {
							t.Fatal(err)
						}
						name, ok := reflect.StructTag(tag).Lookup("json")
						if name, _, _ = strings.Cut(name, ","); !ok || name == "" || name == "-" {
							continue
						}
						if !snake.MatchString(name) {
							t.Errorf("%v: the JSON field %q is not snake_case", fset.Position(field.Pos()), name)
						}
						if s, ok := field.Type.(*ast.SelectorExpr); ok && s.Sel.Name == "Duration" && !strings.HasSuffix(name, "_ns") {
							t.Errorf("%v: the duration %q does not say its unit, _ns", fset.Position(field.Pos()), name)
						}
					}
				}
				return true
			})
		}
	}
	if structs < 50 {
		t.Errorf("%d structs, want more", structs)
	}
}
