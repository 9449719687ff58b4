package lsp

import (
	"net/url"
	"path"
	"path/filepath"
	"strings"
)

// pathOf gives the slash path of a file URI in whatever encoding it came; empty
// for an untitled document or another scheme.
func pathOf(raw string) string {
	u, err := url.Parse(raw)
	if err != nil || !strings.EqualFold(u.Scheme, "file") {
		return ""
	}
	p := u.Path
	if len(p) > 2 && p[0] == '/' && p[2] == ':' { // /c:/folder
		p = strings.ToUpper(p[1:2]) + p[2:]
	}
	return path.Clean(filepath.ToSlash(p))
}

// uriOf makes a file URI of a path, for files that no client named yet.
func uriOf(p string) string {
	p = filepath.ToSlash(p)
	if !strings.HasPrefix(p, "/") {
		p = "/" + p
	}
	return (&url.URL{Scheme: "file", Path: p}).String()
}
