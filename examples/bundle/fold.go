// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"cmp"
	"fmt"
	"go/ast"
	"go/printer"
	"go/scanner"
	"go/token"
	"go/types"
	"maps"
	"path"
	"slices"
)

// byName are the methods that the standard library finds by name in any value: fmt and errors, and
// with encoding/json in the program also its own.
var (
	byName     = []string{"String", "Error", "Unwrap", "Is", "As"}
	byEncoding = []string{"MarshalText", "UnmarshalText", "MarshalJSON", "UnmarshalJSON", "IsZero"}
)

// all returns every unit of the packages.
func (p *program) all() map[*unit]bool {
	keep := map[*unit]bool{}
	for _, pkg := range p.own {
		for _, u := range pkg.units {
			keep[u] = true
		}
	}
	return keep
}

// reached returns the units that the program mentions, those which these mention, and so on. Of a
// type the methods that are mentioned are kept, and those that the standard library finds. Where
// nothing that is kept calls encoding/json, its methods and the tags of fields go.
func (p *program) reached() map[*unit]bool {
	keep := p.reachedBy(byName)
	p.encodes = mentions(keep, "encoding/json")
	if p.encodes {
		return p.reachedBy(slices.Concat(byName, byEncoding))
	}
	for u := range keep {
		ast.Inspect(u.decl, func(n ast.Node) bool {
			if f, ok := n.(*ast.Field); ok {
				f.Tag = nil
			}
			return true
		})
	}
	return keep
}

// mentions reports whether some unit mentions a package.
func mentions(keep map[*unit]bool, path string) bool {
	for u := range keep {
		for _, o := range u.uses {
			if n, ok := o.(*types.PkgName); ok && n.Imported().Path() == path {
				return true
			}
		}
	}
	return false
}

// reachedBy returns what is reached where methods of these names are found in any value.
func (p *program) reachedBy(found []string) map[*unit]bool {
	home, methods := map[types.Object]*unit{}, map[types.Object][]types.Object{}
	for _, pkg := range p.own {
		for _, u := range pkg.units {
			u.defines(func(o types.Object) {
				home[o] = u
				f, ok := o.(*types.Func)
				if !ok || f.Signature().Recv() == nil || !slices.Contains(found, f.Name()) {
					return
				}
				receiver := f.Signature().Recv().Type()
				if pointer, ok := receiver.(*types.Pointer); ok {
					receiver = pointer.Elem()
				}
				t := receiver.(*types.Named).Obj()
				methods[t] = append(methods[t], o)
			})
		}
	}
	keep := map[*unit]bool{}
	queue := slices.Clone(p.start.units)
	for len(queue) > 0 {
		u := queue[0]
		queue = queue[1:]
		if keep[u] {
			continue
		}
		keep[u] = true
		for _, o := range u.uses {
			if v := home[o]; v != nil {
				queue = append(queue, v)
			}
		}
		u.defines(func(o types.Object) {
			for _, m := range methods[o] {
				queue = append(queue, home[m])
			}
		})
	}
	return keep
}

// fold returns the kept units of the package as one file without comments, or "" where there are
// none, and the paths that it imports. Tight, it has no space that Go can do without.
func (p *pkg) fold(fset *token.FileSet, keep map[*unit]bool, tight bool) (src string, imports []string, err error) {
	var body bytes.Buffer
	printing := printer.Config{Mode: printer.TabIndent, Tabwidth: 8} // columns by tabs take fewer bytes
	names := map[string]string{}                                     // path to name
	for _, u := range p.units {
		if !keep[u] || u.isBlank() {
			continue
		}
		var decl bytes.Buffer
		if err := printing.Fprint(&decl, fset, u.decl); err != nil {
			return "", nil, err
		}
		if tight {
			fmt.Fprintf(&body, "%s\n", squeeze(decl.Bytes()))
		} else {
			fmt.Fprintf(&body, "\n%s\n", &decl)
		}
		for _, o := range u.uses {
			n, ok := o.(*types.PkgName)
			if !ok {
				continue
			}
			called := cmp.Or(p.short[n.Name()], n.Name())
			if name, twice := names[n.Imported().Path()]; twice && name != called {
				return "", nil, fmt.Errorf("%s calls %s by two names", p.path, n.Imported().Path())
			}
			names[n.Imported().Path()] = called
		}
	}
	if body.Len() == 0 {
		return "", nil, nil
	}
	imports = slices.Sorted(maps.Keys(names))
	var head bytes.Buffer
	fmt.Fprintf(&head, "package %s\n\nimport (\n", p.name)
	for _, i := range imports {
		if names[i] != path.Base(i) {
			fmt.Fprintf(&head, "\t%s %q\n", names[i], i)
			continue
		}
		fmt.Fprintf(&head, "\t%q\n", i)
	}
	head.WriteString(")\n")
	if float := p.short["float64"]; float != "" {
		fmt.Fprintf(&head, "type %s=float64\n", float)
	}
	return head.String() + body.String(), imports, nil
}

// squeeze returns Go source without the space that its tokens do not need: what remains is between two
// words, between two operators, and a line's end where a statement ends and no bracket closes after it.
func squeeze(src []byte) []byte {
	const bracket, word, operator = 0, 1, 2
	kind := func(t token.Token) int {
		switch t {
		case token.LPAREN, token.RPAREN, token.LBRACK, token.RBRACK, token.LBRACE, token.RBRACE, token.COMMA, token.SEMICOLON:
			return bracket
		}
		if t.IsOperator() {
			return operator
		}
		return word
	}
	var s scanner.Scanner
	file := token.NewFileSet().AddFile("", -1, len(src))
	s.Init(file, src, nil, 0)
	var out []byte
	last, end, ended := bracket, 0, false
	for {
		pos, t, text := s.Scan()
		if t == token.EOF {
			return out
		}
		if t == token.SEMICOLON && text == "\n" {
			ended = true
			continue
		}
		if text == "" || t.IsOperator() {
			text = t.String()
		}
		at := file.Offset(pos)
		switch {
		case ended && t != token.RPAREN && t != token.RBRACE:
			out = append(out, '\n')
		case at > end && kind(t) == last && last != bracket:
			out = append(out, ' ')
		}
		out = append(out, text...)
		last, end, ended = kind(t), at+len(text), false
	}
}
