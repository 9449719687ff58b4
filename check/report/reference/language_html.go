package reference

import (
	_ "embed"
	"html/template"
	"io"
)

//go:embed language.html
var languageText string

var languagePage = template.Must(template.New("language").Funcs(template.FuncMap{"heading": heading}).Parse(languageText))

// WriteHTML writes the language as one page that is whole in itself. The anchor of
// a statement is its block and its word: "#gas-run.pipe".
func (l *Language) WriteHTML(w io.Writer, version string) error {
	return languagePage.Execute(w, struct {
		*Language
		Style   template.CSS
		Version string
	}{l, template.CSS(style), version}) //nolint:gosec // our own style sheet
}
