// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"cmp"
	"go/ast"
	"go/token"
	"go/types"
	"maps"
	"slices"
)

// shorten gives names of a letter or two to what the program does not mention: in each package to what that
// keeps to itself, which is its unexported functions, types, fields and methods, all that is local to a
// function, what it calls the packages that it imports, and float64; and over all of them to exported functions,
// types, fields, variables and constants, unless their names are to be found when encoding. What is called alike
// before is called alike after, and no new name is one that stands there already, so that every name
// still means what it meant. Methods that are exported keep their names, for the standard library asks for some.
func (p *program) shorten(keep map[*unit]bool) {
	mentioned, own := map[string]bool{}, map[*types.Package]bool{}
	for _, u := range p.start.units {
		for id := range identifiers(u.decl) {
			mentioned[id.Name] = true
		}
	}
	for _, pkg := range p.own {
		own[pkg.types] = true
	}
	float := types.Universe.Lookup("float64") // what numerical code says most
	exported := renaming{first: 'A', taken: maps.Clone(mentioned), count: map[string]int{}}
	for _, pkg := range p.own {
		private := renaming{first: 'a', taken: map[string]bool{}, count: map[string]int{}}
		for _, u := range pkg.units {
			if !keep[u] || u.isBlank() {
				continue
			}
			for id := range identifiers(u.decl) {
				private.taken[id.Name], exported.taken[id.Name] = true, true
				switch o := pkg.object(id); {
				case pkg.keepsToItself(id), o == float:
					private.add(id)
				case o != nil && own[o.Pkg()] && ast.IsExported(id.Name) && !mentioned[id.Name] && !p.encodes && !isMethod(o):
					exported.add(id)
				}
			}
		}
		pkg.short = private.apply()
	}
	exported.apply()
}

// A renaming is what is to have shorter names.
type renaming struct {
	first rune // letter of the new names: a or A
	taken map[string]bool
	count map[string]int
	ids   []*ast.Ident
}

func (r *renaming) add(id *ast.Ident) {
	r.ids = append(r.ids, id)
	r.count[id.Name]++
}

// apply gives the names, the shortest to what is named most, and returns them by the old ones.
func (r *renaming) apply() map[string]string {
	names := slices.SortedFunc(maps.Keys(r.count), func(a, b string) int {
		return cmp.Or(cmp.Compare(r.count[b], r.count[a]), cmp.Compare(a, b))
	})
	short, next := map[string]string{}, 0
	for _, name := range names {
		candidate := letters(r.first, next)
		for r.taken[candidate] || token.IsKeyword(candidate) || types.Universe.Lookup(candidate) != nil {
			next++
			candidate = letters(r.first, next)
		}
		if len(candidate) < len(name) {
			short[name] = candidate
			next++
		}
	}
	for _, id := range r.ids {
		id.Name = cmp.Or(short[id.Name], id.Name)
	}
	return short
}

// letters returns the n-th name: a, b, … z, aa, ba …
func letters(first rune, n int) string {
	name := string(first + rune(n%26))
	for n = n/26 - 1; n >= 0; n = n/26 - 1 {
		name += string(first + rune(n%26))
	}
	return name
}

// identifiers returns those of a declaration.
func identifiers(d ast.Decl) func(yield func(*ast.Ident) bool) {
	return func(yield func(*ast.Ident) bool) {
		for n := range ast.Preorder(d) {
			if id, ok := n.(*ast.Ident); ok && !yield(id) {
				return
			}
		}
	}
}

// object returns what an identifier names, nil for the variable of a type switch.
func (p *pkg) object(id *ast.Ident) types.Object {
	return cmp.Or(p.info.Defs[id], p.info.Uses[id])
}

// keepsToItself reports whether an identifier names what no other package can: of this package, unexported; or a package
// that is imported, by what it is called here.
func (p *pkg) keepsToItself(id *ast.Ident) bool {
	if ast.IsExported(id.Name) || id.Name == "_" || id.Name == "init" {
		return false
	}
	_, switched := p.info.Defs[id]
	o := p.object(id)
	return o == nil && switched || o != nil && o.Pkg() == p.types
}

func isMethod(o types.Object) bool {
	f, ok := o.(*types.Func)
	return ok && f.Signature().Recv() != nil
}
