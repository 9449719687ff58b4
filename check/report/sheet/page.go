package sheet

import (
	_ "embed"
	"html/template"
	"io"
	"strings"
)

//go:embed page.html
var pageText string

var page = template.Must(template.New("page").Funcs(template.FuncMap{
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

// Write writes the page. It is whole in itself: no script, no link outside.
func (s *Sheet) Write(w io.Writer) error { return page.Execute(w, s) }
