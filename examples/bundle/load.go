// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
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
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
)

// A program is a main package and the packages of its module that it imports.
type program struct {
	fset      *token.FileSet
	main      []string          // its files, main.go or the first of them, and what it embeds
	start     *pkg              // the main package
	own       []*pkg            // the others of the module, imported ones first
	path      string            // of the module
	goVersion string            // its go line
	requires  []string          // what others it needs: "path version"
	module    map[string]string // import path to module path, "" for the standard library
	encodes   bool              // encoding/json is called by what is reached, and finds methods by their names
}

// A pkg is a package of the module, type-checked.
type pkg struct {
	path  string
	name  string
	units []*unit
	types *types.Package
	info  *types.Info
	short map[string]string // new names, where they are shortened
}

// A unit is a declaration that is kept or left out as a whole.
type unit struct {
	pkg  *pkg
	decl ast.Decl
	uses []types.Object // package-level objects and methods that it mentions
}

// listed is what go list tells of a package.
type listed struct {
	ImportPath, Name, Dir, Export string
	GoFiles, EmbedFiles, Imports  []string
	DepOnly                       bool
	Module                        *struct {
		Path, Version, GoVersion string
		Main                     bool
	}
}

// load reads the program in a folder with all that it imports.
func load(folder string) (*program, error) {
	cmd := exec.Command("go", "list", "-deps", "-export", "-json=ImportPath,Name,Dir,Export,GoFiles,EmbedFiles,Imports,DepOnly,Module", folder)
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, fmt.Errorf("go list: %w\n%s", err, stderr.Bytes())
	}
	p := &program{fset: token.NewFileSet(), module: map[string]string{}}
	checked, exports := map[string]*types.Package{}, map[string]string{}
	compiled := importer.ForCompiler(p.fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	imports := importerFunc(func(path string) (*types.Package, error) {
		if own := checked[path]; own != nil {
			return own, nil
		}
		return compiled.Import(path)
	})
	for d := json.NewDecoder(bytes.NewReader(out)); ; {
		var l listed
		if err := d.Decode(&l); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, err
		}
		exports[l.ImportPath] = l.Export
		if l.Module == nil {
			continue
		}
		p.module[l.ImportPath] = l.Module.Path
		if !l.Module.Main {
			if m := l.Module.Path + " " + l.Module.Version; !slices.Contains(p.requires, m) {
				p.requires = append(p.requires, m)
			}
			continue
		}
		p.path, p.goVersion = l.Module.Path, l.Module.GoVersion
		pkg, err := check(p.fset, l, imports)
		if err != nil {
			return nil, err
		}
		checked[l.ImportPath] = pkg.types
		if l.DepOnly {
			p.own = append(p.own, pkg)
			continue
		}
		p.start = pkg
		if i := slices.Index(l.GoFiles, "main.go"); i > 0 {
			l.GoFiles = slices.Concat(l.GoFiles[i:i+1], l.GoFiles[:i], l.GoFiles[i+1:])
		}
		for _, f := range slices.Concat(l.GoFiles, l.EmbedFiles) {
			p.main = append(p.main, filepath.Join(l.Dir, f))
		}
	}
	if p.start == nil || p.start.name != "main" {
		return nil, fmt.Errorf("%s is no program of this module", folder)
	}
	return p, nil
}

type importerFunc func(path string) (*types.Package, error)

func (f importerFunc) Import(path string) (*types.Package, error) { return f(path) }

// check parses a package without its comments and finds what each declaration mentions.
func check(fset *token.FileSet, l listed, imports types.Importer) (*pkg, error) {
	p := &pkg{path: l.ImportPath, name: l.Name, info: &types.Info{Defs: map[*ast.Ident]types.Object{}, Uses: map[*ast.Ident]types.Object{}}}
	var files []*ast.File
	for _, name := range l.GoFiles {
		src, err := os.ReadFile(filepath.Join(l.Dir, name))
		if err != nil {
			return nil, err
		}
		if l.DepOnly && bytes.Contains(src, []byte("\n//go:")) {
			return nil, fmt.Errorf("%s/%s has a directive, which would go with the comments", l.ImportPath, name)
		}
		f, err := parser.ParseFile(fset, filepath.Join(l.Dir, name), src, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		files = append(files, f)
	}
	var err error
	if p.types, err = (&types.Config{Importer: imports}).Check(l.ImportPath, fset, files, p.info); err != nil {
		return nil, err
	}
	for _, f := range files {
		for _, d := range f.Decls {
			if g, ok := d.(*ast.GenDecl); ok && g.Tok == token.IMPORT {
				continue
			}
			p.split(d)
		}
	}
	return p, nil
}

// split adds a declaration to the units: types and variables one by one, a group of constants whole,
// since iota counts its lines.
func (p *pkg) split(d ast.Decl) {
	g, ok := d.(*ast.GenDecl)
	if !ok || g.Tok == token.CONST || len(g.Specs) == 1 {
		u := &unit{pkg: p, decl: d}
		ast.Inspect(d, func(n ast.Node) bool {
			if id, ok := n.(*ast.Ident); ok {
				u.mention(p.info.Uses[id])
			}
			return true
		})
		p.units = append(p.units, u)
		return
	}
	for _, s := range g.Specs {
		p.split(&ast.GenDecl{TokPos: s.Pos(), Tok: g.Tok, Specs: []ast.Spec{s}})
	}
}

// mention notes an object that lives on the level of a package, or a method.
func (u *unit) mention(o types.Object) {
	switch x := o.(type) {
	case nil:
		return
	case *types.Func:
		o = x.Origin()
	case *types.PkgName:
		u.uses = append(u.uses, o)
		return
	}
	if _, method := o.(*types.Func); method || o.Pkg() != nil && o.Parent() == o.Pkg().Scope() {
		u.uses = append(u.uses, o)
	}
}

// defines calls f with every object that the unit declares.
func (u *unit) defines(f func(types.Object)) {
	switch d := u.decl.(type) {
	case *ast.FuncDecl:
		f(u.pkg.info.Defs[d.Name])
	case *ast.GenDecl:
		for _, s := range d.Specs {
			switch s := s.(type) {
			case *ast.TypeSpec:
				f(u.pkg.info.Defs[s.Name])
			case *ast.ValueSpec:
				for _, id := range s.Names {
					f(u.pkg.info.Defs[id])
				}
			}
		}
	}
}

// isBlank reports whether the unit declares nothing that has a name, such as a compile-time check.
func (u *unit) isBlank() bool {
	blank := true
	u.defines(func(o types.Object) { blank = blank && (o == nil || strings.Trim(o.Name(), "_") == "") })
	return blank
}
