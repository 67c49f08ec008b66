package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// sources are the packages that random tests draw from.
var sources = []string{"pgregory.net/rapid", "boxwright/config/seeds"}

// target is a random test or a fuzz target.
type target struct {
	folder, path string // of the package
	name         string
	fuzz         bool
}

func (t target) String() string { return t.path + " " + t.name }

// find lists every fuzz target and every test that draws at random.
func find() ([]target, error) {
	list := exec.Command("go", "list", "-json=Dir,ImportPath,TestGoFiles,XTestGoFiles", "./...")
	list.Stderr = os.Stderr
	out, err := list.Output()
	if err != nil {
		return nil, fmt.Errorf("listing the packages: %w", err)
	}
	var all []target
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p struct {
			Dir, ImportPath           string
			TestGoFiles, XTestGoFiles []string
		}
		if err := d.Decode(&p); errors.Is(err, io.EOF) {
			return all, nil
		} else if err != nil {
			return nil, err
		}
		for _, files := range [][]string{p.TestGoFiles, p.XTestGoFiles} {
			names, err := random(p.Dir, files)
			if err != nil {
				return nil, err
			}
			for _, n := range names {
				all = append(all, target{p.Dir, p.ImportPath, n, strings.HasPrefix(n, "Fuzz")})
			}
		}
	}
}

// random lists the fuzz targets in the files of one package, and the tests that
// use a source of chance, themselves or through functions they call.
func random(folder string, files []string) ([]string, error) {
	uses := map[string][]string{} // names that a function uses
	draws := map[string]bool{}
	for _, file := range files {
		f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(folder, file), nil, 0)
		if err != nil {
			return nil, err
		}
		chance := sourceNames(f)
		for _, d := range f.Decls {
			fn, ok := d.(*ast.FuncDecl)
			if !ok {
				continue
			}
			ast.Inspect(fn, func(n ast.Node) bool {
				switch n := n.(type) {
				case *ast.Ident:
					uses[fn.Name.Name] = append(uses[fn.Name.Name], n.Name)
				case *ast.SelectorExpr:
					if from, ok := n.X.(*ast.Ident); ok && slices.Contains(chance, from.Name) &&
						n.Sel.Name != "InOrder" {
						draws[fn.Name.Name] = true
					}
				}
				return true
			})
		}
	}
	for more := true; more; {
		more = false
		for name, used := range uses {
			if !draws[name] && slices.ContainsFunc(used, func(u string) bool { return draws[u] }) {
				draws[name], more = true, true
			}
		}
	}
	var names []string
	for name := range uses {
		if strings.HasPrefix(name, "Fuzz") || strings.HasPrefix(name, "Test") && name != "TestMain" && draws[name] {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names, nil
}

// sourceNames are the names under which a file imports sources of chance.
func sourceNames(f *ast.File) []string {
	var names []string
	for _, i := range f.Imports {
		path, err := strconv.Unquote(i.Path.Value)
		if err != nil || !slices.Contains(sources, path) {
			continue
		}
		if i.Name != nil {
			names = append(names, i.Name.Name)
		} else {
			names = append(names, filepath.Base(path))
		}
	}
	return names
}
