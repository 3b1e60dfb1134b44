// SPDX-License-Identifier: BSD-3-Clause

// Docs finds what a module exports and does not explain, a line for each: a package without a comment or with
// a first sentence of more than 100 characters; a constant, variable, type, field, function or method without a
// comment; a comment that begins with another name than that of what it stands on; a link in brackets that leads nowhere. It
// ends with 1 where there is any.
//
//	go run -C .ci ./docs ..
package main

import (
	"fmt"
	"go/ast"
	"go/doc"
	"go/doc/comment"
	"go/parser"
	"go/token"
	"log"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"borewright.example/ci/internal/golist"
)

func main() {
	log.SetFlags(0)
	log.SetPrefix("docs: ")
	if len(os.Args) != 2 {
		log.Fatal("usage: go run -C .ci ./docs FOLDER")
	}
	c, err := load(os.Args[1])
	if err != nil {
		log.Fatal(err)
	}
	for _, path := range c.order {
		c.pkg(c.packages[path])
	}
	slices.Sort(c.faults)
	for _, f := range c.faults {
		fmt.Println(f)
	}
	if len(c.faults) > 0 {
		os.Exit(1)
	}
}

// A checker has all packages of the module and what was found.
type checker struct {
	fset     *token.FileSet
	root     string
	packages map[string]*doc.Package
	order    []string
	symbols  map[string]map[string]bool // by package: "Name", "Type.Name"
	faults   []string
}

// listed is what is asked of the go command.
type listed struct {
	Dir, ImportPath string
	GoFiles         []string
}

// load reads the packages below a folder, without their tests.
func load(folder string) (*checker, error) {
	root, err := filepath.Abs(folder)
	if err != nil {
		return nil, err
	}
	packages, err := golist.Packages[listed](folder, "-json=Dir,ImportPath,GoFiles")
	if err != nil {
		return nil, err
	}
	c := &checker{fset: token.NewFileSet(), root: root, packages: map[string]*doc.Package{}, symbols: map[string]map[string]bool{}}
	for _, p := range packages {
		if err := c.read(p.ImportPath, p.Dir, p.GoFiles); err != nil {
			return nil, err
		}
	}
	return c, nil
}

// read parses one package; one of tests alone has no files.
func (c *checker) read(path, dir string, names []string) error {
	var files []*ast.File
	for _, name := range names {
		f, err := parser.ParseFile(c.fset, filepath.Join(dir, name), nil, parser.ParseComments)
		if err != nil {
			return err
		}
		files = append(files, f)
	}
	if len(files) == 0 {
		return nil
	}
	p, err := doc.NewFromFiles(c.fset, files, path, doc.PreserveAST)
	if err != nil {
		return err
	}
	known := map[string]bool{}
	for _, f := range files {
		for _, d := range f.Decls {
			known[name(d)] = true
			gen, ok := d.(*ast.GenDecl)
			for i := 0; ok && i < len(gen.Specs); i++ {
				specNames(gen.Specs[i], func(n string) { known[n] = true })
			}
		}
	}
	c.packages[path], c.symbols[path] = p, known
	c.order = append(c.order, path)
	return nil
}

// name returns "Func" or "Type.Method", "" for what is neither.
func name(d ast.Decl) string {
	f, ok := d.(*ast.FuncDecl)
	switch {
	case !ok:
		return ""
	case f.Recv == nil:
		return f.Name.Name
	}
	return receiver(f.Recv.List[0].Type) + "." + f.Name.Name
}

func receiver(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.StarExpr:
		return receiver(e.X)
	case *ast.IndexExpr:
		return receiver(e.X)
	case *ast.Ident:
		return e.Name
	}
	return ""
}

// specNames calls f for each name of a declaration: constants, variables, types, and "Type.Field".
func specNames(s ast.Spec, f func(string)) {
	switch s := s.(type) {
	case *ast.ValueSpec:
		for _, n := range s.Names {
			f(n.Name)
		}
	case *ast.TypeSpec:
		f(s.Name.Name)
		if fields := members(s.Type); fields != nil {
			for _, m := range fields.List {
				for _, n := range m.Names {
					f(s.Name.Name + "." + n.Name)
				}
			}
		}
	}
}

// members returns the fields of a struct or the methods of an interface, nil for another type.
func members(e ast.Expr) *ast.FieldList {
	switch t := e.(type) {
	case *ast.StructType:
		return t.Fields
	case *ast.InterfaceType:
		return t.Methods
	}
	return nil
}

func (c *checker) fault(pos token.Pos, format string, args ...any) {
	p := c.fset.Position(pos)
	if rel, err := filepath.Rel(c.root, p.Filename); err == nil {
		p.Filename = filepath.ToSlash(rel)
	}
	c.faults = append(c.faults, fmt.Sprintf("%s:%d: %s", p.Filename, p.Line, fmt.Sprintf(format, args...)))
}

// longest is how many characters of a package's first sentence a list of packages shows.
const longest = 100

// pkg checks one package: of a command, or one that is internal, the comment of the package alone.
func (c *checker) pkg(p *doc.Package) {
	at := c.clause(p)
	switch s := p.Synopsis(p.Doc); {
	case s == "":
		c.fault(at, "package %s has no comment", p.ImportPath)
	case len([]rune(s)) > longest && p.Name != "main":
		c.fault(at, "package %s begins with %d characters, more than %d: %s", p.ImportPath, len([]rune(s)), longest, s)
	}
	c.links(p, at, p.Doc)
	if p.Name == "main" || strings.Contains(p.ImportPath+"/", "/internal/") {
		return
	}
	c.values(p, p.Consts)
	c.values(p, p.Vars)
	c.funcs(p, "", p.Funcs)
	for _, t := range p.Types {
		c.comment(p, t.Decl.Pos(), t.Name, t.Doc)
		c.fields(p, t)
		c.values(p, t.Consts)
		c.values(p, t.Vars)
		c.funcs(p, "", t.Funcs)
		c.funcs(p, t.Name+".", t.Methods)
	}
}

// clause returns where a package clause of the package stands.
func (c *checker) clause(p *doc.Package) (at token.Pos) {
	c.fset.Iterate(func(f *token.File) bool {
		if slices.Contains(p.Filenames, f.Name()) {
			at = f.Pos(0)
		}
		return at == token.NoPos
	})
	return at
}

// comment checks that a function or type has a comment which begins with its name, an article left aside, or has it in
// its first line.
func (c *checker) comment(p *doc.Package, at token.Pos, full, text string) {
	c.links(p, at, text)
	first := text
	for _, article := range []string{"A ", "An ", "The "} {
		first = strings.TrimPrefix(first, article)
	}
	word := full[strings.LastIndex(full, ".")+1:]
	line, _, _ := strings.Cut(text, "\n")
	switch {
	case text == "":
		c.fault(at, "%s has no comment", full)
	case !strings.HasPrefix(first, word) && !strings.Contains(line, word):
		c.fault(at, "the comment of %s begins with %.30q", full, text)
	}
}

func (c *checker) funcs(p *doc.Package, of string, list []*doc.Func) {
	for _, f := range list {
		if f.Level == 0 && ast.IsExported(f.Name) { // else promoted from what is embedded
			c.comment(p, f.Decl.Pos(), of+f.Name, f.Doc)
		}
	}
}

// values checks that each constant or variable has a comment above it, behind it, or above its group.
func (c *checker) values(p *doc.Package, list []*doc.Value) {
	for _, v := range list {
		c.links(p, v.Decl.Pos(), v.Doc)
		for _, s := range v.Decl.Specs {
			s, ok := s.(*ast.ValueSpec)
			if !ok {
				continue
			}
			own := s.Doc.Text() + s.Comment.Text()
			c.links(p, s.Pos(), own)
			for _, n := range s.Names {
				if n.IsExported() && own == "" && v.Doc == "" {
					c.fault(n.Pos(), "%s has no comment", n.Name)
				}
			}
		}
	}
}

// fields checks that each field of a struct and each method of an interface has a comment above it or behind it; one
// stands for the lines directly below it too.
func (c *checker) fields(p *doc.Package, t *doc.Type) {
	for _, s := range t.Decl.Specs {
		s, ok := s.(*ast.TypeSpec)
		if !ok || s.Name.Name != t.Name {
			continue
		}
		list := members(s.Type)
		if list == nil {
			continue
		}
		said, last := "", 0 // the comment of the line above, and which line that is
		for _, f := range list.List {
			own := f.Doc.Text() + f.Comment.Text()
			c.links(p, f.Pos(), own)
			if own == "" && c.fset.Position(f.Pos()).Line == last+1 {
				own = said
			}
			said, last = own, c.fset.Position(f.End()).Line
			for _, n := range f.Names {
				if n.IsExported() && own == "" {
					c.fault(n.Pos(), "%s.%s has no comment", t.Name, n.Name)
				}
			}
		}
	}
}

var bracketed = regexp.MustCompile(`\[\*?((?:[a-z0-9]+\.)?[A-Z]\w*(?:\.[A-Z]\w*)?)\]`)

// links checks that what stands in brackets in a comment is a link to something there is.
func (c *checker) links(p *doc.Package, at token.Pos, text string) {
	var walk func([]comment.Text)
	walk = func(list []comment.Text) {
		for _, x := range list {
			switch x := x.(type) {
			case comment.Plain:
				for _, m := range bracketed.FindAllStringSubmatch(string(x), -1) {
					c.fault(at, "[%s] leads nowhere", m[1])
				}
			case comment.Italic:
			case *comment.Link:
				walk(x.Text)
			case *comment.DocLink:
				path := x.ImportPath
				if path == "" {
					path = p.ImportPath
				}
				full := x.Name
				if x.Recv != "" {
					full = x.Recv + "." + x.Name
				}
				if known := c.symbols[path]; known != nil && full != "" && !known[full] {
					c.fault(at, "[%s.%s] leads nowhere", path, full)
				}
			}
		}
	}
	var blocks func([]comment.Block)
	blocks = func(list []comment.Block) {
		for _, b := range list {
			switch b := b.(type) {
			case *comment.Paragraph:
				walk(b.Text)
			case *comment.Heading:
				walk(b.Text)
			case *comment.List:
				for _, item := range b.Items {
					blocks(item.Content)
				}
			}
		}
	}
	blocks(p.Parser().Parse(text).Content)
}
