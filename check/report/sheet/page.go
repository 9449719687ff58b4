package sheet

import (
	_ "embed"
	"fmt"
	"html/template"
	"io"
	"strings"
	"sync"
	"unicode/utf8"
)

//go:embed page.html
var pageText string

// page is read when the first sheet is written: most runs write none.
var page = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("page").Funcs(template.FuncMap{
		"words": words, "heading": heading, "join": strings.Join,
		"plural": func(n int, one, many string) string {
			if n == 1 {
				return one
			}
			return many
		},
		"share": func(x float64) string { return percent(x) },
		"add":   func(a, b int) int { return a + b },
		"short": func(hash string) string { return hash[:min(12, len(hash))] },
	}).Parse(pageText))
})

// Write writes the page. It is whole in itself: no script, no link outside.
func (s *Sheet) Write(w io.Writer) error { return page().Execute(w, s) }

// Foot is what stands at the foot of every page in print, as a CSS string: which
// sheet a loose page belongs to.
func (s *Sheet) Foot() template.CSS {
	foot := s.Title
	if s.Revision != "" {
		foot += ", revision " + s.Revision
	}
	return cssString(foot + ", " + s.Hash[:12])
}

// cssString quotes a text for CSS. Whatever is no letter or digit is written as its
// number, so that nothing in it can end the string.
func cssString(text string) template.CSS {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		if r < utf8.RuneSelf && !('a' <= r && r <= 'z' || 'A' <= r && r <= 'Z' || '0' <= r && r <= '9') {
			fmt.Fprintf(&b, "\\%06x", r)
			continue
		}
		b.WriteRune(r)
	}
	b.WriteByte('"')
	return template.CSS(b.String()) //nolint:gosec // quoted above
}
