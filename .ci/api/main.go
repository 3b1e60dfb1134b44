// SPDX-License-Identifier: BSD-3-Clause

// Api prints what a module exports, a line for each constant, variable, function, type, field and
// method, in an order that does not change. The list that stands beside it in .ci/api.txt shows in
// review what a change does to those who import the module.
//
//	go run -C .ci ./api .. >.ci/api.txt
package main

import (
	"fmt"
	"go/importer"
	"go/token"
	"go/types"
	"io"
	"log"
	"os"
	"slices"
	"strings"

	"borewright.example/ci/internal/golist"
)

func main() {
	log.SetFlags(0)
	log.SetPrefix("api: ")
	if len(os.Args) != 2 {
		log.Fatal("usage: go run -C .ci ./api FOLDER")
	}
	lines, err := list(os.Args[1])
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(strings.Join(lines, "\n"))
}

// listed is what is asked of the go command.
type listed struct {
	ImportPath, Name, Export string
	DepOnly                  bool
	Module                   *struct {
		Path string
		Main bool
	}
}

func list(folder string) ([]string, error) {
	packages, err := golist.Packages[listed](folder, "-deps", "-export", "-json=ImportPath,Name,Export,DepOnly,Module")
	if err != nil {
		return nil, err
	}
	exports, public, module := map[string]string{}, []string{}, ""
	for _, p := range packages {
		exports[p.ImportPath] = p.Export
		if p.Module != nil && p.Module.Main {
			module = p.Module.Path
		}
		if !p.DepOnly && p.Name != "main" && !strings.Contains(p.ImportPath+"/", "/internal/") {
			public = append(public, p.ImportPath)
		}
	}
	compiled := importer.ForCompiler(token.NewFileSet(), "gc", func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) })
	var lines []string
	for _, path := range public {
		if exports[path] == "" { // a package of tests alone
			continue
		}
		p, err := compiled.Import(path)
		if err != nil {
			return nil, err
		}
		lines = append(lines, exported(p, module)...)
	}
	slices.Sort(lines)
	return lines, nil
}

// exported returns the lines of one package, named by its path within the module.
func exported(p *types.Package, module string) []string {
	here := func(other *types.Package) string {
		if other == p {
			return ""
		}
		return other.Name()
	}
	var lines []string
	add := func(format string, args ...any) { // "bore: func Measure(…"
		lines = append(lines, strings.TrimPrefix(p.Path(), module+"/")+": "+fmt.Sprintf(format, args...))
	}
	for _, name := range p.Scope().Names() {
		o := p.Scope().Lookup(name)
		if !o.Exported() {
			continue
		}
		switch o := o.(type) {
		case *types.Const:
			add("const %s %s = %s", name, types.TypeString(o.Type(), here), o.Val().ExactString())
		case *types.TypeName:
			t := types.TypeString(o.Type().Underlying(), here)
			fields, _ := o.Type().Underlying().(*types.Struct)
			if fields != nil {
				t = "struct"
			}
			add("type %s %s", types.TypeString(o.Type(), here), t)
			for i := 0; fields != nil && i < fields.NumFields(); i++ {
				f := fields.Field(i)
				switch {
				case f.Embedded() && f.Exported():
					add("type %s struct, embedded %s %s", name, types.TypeString(f.Type(), here), fields.Tag(i))
				case f.Exported():
					add("type %s struct, %s %s %s", name, f.Name(), types.TypeString(f.Type(), here), fields.Tag(i))
				}
			}
			named, ok := o.Type().(*types.Named)
			for i := 0; ok && i < named.NumMethods(); i++ {
				if m := named.Method(i); m.Exported() {
					add("method (%s) %s%s", types.TypeString(m.Signature().Recv().Type(), here), m.Name(), strings.TrimPrefix(types.TypeString(m.Signature(), here), "func"))
				}
			}
		default: // variables and functions
			add("%s", types.ObjectString(o, here))
		}
	}
	for i, l := range lines {
		lines[i] = strings.TrimRight(l, " ")
	}
	return lines
}
