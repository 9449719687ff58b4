package reference

import (
	_ "embed"
	"html/template"
	"io"
	"sync"
)

//go:embed language.html
var languageText string

// languagePage is read when the first page is written.
var languagePage = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("language").Funcs(template.FuncMap{"heading": heading}).Parse(languageText))
})

// WriteHTML writes the language as one page that is whole in itself. The anchor of
// a statement is its block and its word: "#gas-run.pipe".
func (l *Language) WriteHTML(w io.Writer, version string) error {
	return languagePage().Execute(w, struct {
		*Language
		Style   template.CSS
		Version string
	}{l, template.CSS(style), version}) //nolint:gosec // our own style sheet
}
