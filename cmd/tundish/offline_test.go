package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// listeners are the only files that may know a network: they serve the live sheet
// on loopback, when asked to.
var listeners = map[string]bool{"lsp/live.go": true, "lsp/live_http.go": true}

// outgoing are names of net and net/http that reach for another machine.
var outgoing = map[string]bool{
	"Dial": true, "DialTimeout": true, "DialTCP": true, "DialUDP": true, "Dialer": true, "Resolver": true, "LookupHost": true, "LookupAddr": true, "LookupIP": true,
	"Get": true, "Head": true, "Post": true, "PostForm": true, "NewRequest": true, "NewRequestWithContext": true, "Client": true, "DefaultClient": true, "Transport": true, "DefaultTransport": true,
}

// No file of ours opens a connection or starts another program: what is not
// imported cannot happen.
func TestNoConnections(t *testing.T) {
	seen := 0
	err := filepath.WalkDir(root, func(p string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && p != root && strings.HasPrefix(d.Name(), "."):
			return fs.SkipDir
		case d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go"):
			return nil
		}
		seen++
		rel, err := filepath.Rel(root, p)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, 0)
		if err != nil {
			return err
		}
		for _, im := range f.Imports {
			name, err := strconv.Unquote(im.Path.Value)
			if err != nil {
				return err
			}
			switch {
			case name == "net/url", name == "net/netip":
			case (name == "net" || name == "net/http") && listeners[rel]:
			case name == "net", strings.HasPrefix(name, "net/"), strings.HasPrefix(name, "golang.org/x/net"), name == "os/exec", name == "plugin":
				t.Errorf("%s imports %s", rel, name)
			}
		}
		if !listeners[rel] {
			return nil
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok {
				if x, ok := s.X.(*ast.Ident); ok && (x.Name == "net" || x.Name == "http") && outgoing[s.Sel.Name] {
					t.Errorf("%s uses %s.%s", rel, x.Name, s.Sel.Name)
				}
			}
			return true
		})
		return nil
	})
	if err != nil || seen < 100 {
		t.Errorf("%v: %d files seen", err, seen)
	}
}
