package check_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

const module = "example.org/tundish/"

// sources gives the files of a folder of the module, without those of tests and of
// what helps tests.
func sources(t *testing.T, folder string) map[string]*ast.File {
	t.Helper()
	out := map[string]*ast.File{}
	err := filepath.WalkDir(filepath.Join("..", folder), func(p string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(p, ".go") || strings.HasSuffix(p, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), p, nil, 0)
		if err == nil && !slices.Contains(imports(f), "testing") {
			out[filepath.ToSlash(p)] = f
		}
		return err
	})
	if err != nil || len(out) == 0 {
		t.Fatalf("reading the sources of %s: %d files, %v", folder, len(out), err)
	}
	return out
}

func imports(f *ast.File) (list []string) {
	for _, i := range f.Imports {
		p, _ := strconv.Unquote(i.Path.Value)
		list = append(list, p)
	}
	return list
}

// The language and the engine know no disk, no network and no clock, and nothing
// in them is left to chance.
func TestEngineKnowsNoDiskAndNoClock(t *testing.T) {
	for _, folder := range []string{"lang", "check"} {
		for name, f := range sources(t, folder) {
			for _, p := range imports(f) {
				switch first, _, _ := strings.Cut(p, "/"); {
				case p == "os", first == "os", first == "net", p == "log", p == "log/slog", strings.HasPrefix(p, "math/rand"), p == "syscall":
					t.Errorf("%s imports %s", name, p)
				}
			}
			ast.Inspect(f, func(n ast.Node) bool {
				if s, ok := n.(*ast.SelectorExpr); ok && s.Sel.Name == "Now" {
					if x, ok := s.X.(*ast.Ident); ok && x.Name == "time" {
						t.Errorf("%s asks for the time of day", name)
					}
				}
				return true
			})
		}
	}
}

// Imports go one way: from the text to the plant, the results, the rules, and
// what shows them.
func TestImportsGoOneWay(t *testing.T) {
	for _, c := range []struct {
		folder string
		not    []string
	}{
		{"lang", []string{"check", "lsp", "cmd"}},
		{"check/cite", []string{"lang", "check", "lsp", "cmd"}},
		{"check/calc", []string{"check/plant", "check/solve", "check/rules", "check/report", "lsp", "cmd"}},
		{"check/plant", []string{"check/calc", "check/solve", "check/rules", "check/report", "lsp", "cmd"}},
		{"check/tables", []string{"check/rules", "check/report", "lsp", "cmd"}},
		{"check/solve", []string{"check/rules", "check/report", "lsp", "cmd"}},
		{"check/rules", []string{"check/report", "check/draw", "lsp", "cmd"}},
		{"check", []string{"lsp", "cmd"}},
		{"lsp", []string{"cmd"}},
	} {
		for name, f := range sources(t, c.folder) {
			for _, p := range imports(f) {
				for _, not := range c.not {
					if rest, ok := strings.CutPrefix(p, module+not); ok && (rest == "" || rest[0] == '/') {
						if c.folder == "check/cite" || !strings.HasPrefix(p, module+c.folder) {
							t.Errorf("%s imports %s", name, p)
						}
					}
				}
			}
		}
	}
}
