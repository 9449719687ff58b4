package lsp

import (
	"context"
	"encoding/json"
	"path/filepath"
	"strings"

	"go.lsp.dev/jsonrpc2"

	"example.org/tundish/lang"
)

// Before files get new names, the statements that read them are told: the edit
// goes along with the change of the names.
var _ = on("workspace/willRenameFiles", func(s *Server, ctx context.Context, params json.RawMessage, at *snapshot) (any, error) {
	p, err := decode[struct {
		Files []struct {
			OldURI string `json:"oldUri"`
			NewURI string `json:"newUri"`
		} `json:"files"`
	}](params)
	if err != nil {
		return nil, err
	}
	moved := func(name string) string {
		for _, f := range p.Files {
			from, to := pathOf(f.OldURI), pathOf(f.NewURI)
			if from == "" || to == "" {
				continue
			}
			if rest, ok := strings.CutPrefix(name, from); ok && (rest == "" || rest[0] == '/') {
				return to + rest
			}
		}
		return name
	}
	edits := map[string][]object{}
	whole := s.eachFile(ctx, at, "Looking for users of the files", nil, func(uri string, f *lang.File) {
		self := f.Source.Name
		for _, st := range f.Statements {
			used := usedPath(f, st)
			if used == "" || moved(used) == used && moved(self) == self {
				continue
			}
			rel, err := filepath.Rel(filepath.Dir(filepath.FromSlash(moved(self))), filepath.FromSlash(moved(used)))
			v := st.Bound.Field("file").Values[0]
			rel = filepath.ToSlash(rel)
			if err != nil || rel == v.Word || strings.ContainsAny(rel, "\"\n") {
				continue // a text of the language has no way to write a quote
			}
			edits[uri] = append(edits[uri], object{"range": s.enc.rangeOf(f.Source, st.Abs(v.Expr.Span)), "newText": "\"" + rel + "\""})
		}
	})
	if !whole {
		return nil, jsonrpc2.NewError(codeFailed, "not every file of the workspace was looked at, so no use statement was changed")
	}
	if len(edits) == 0 {
		return nil, nil
	}
	return s.workspaceEdit(at, edits), nil
})
