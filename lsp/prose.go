package lsp

import "strings"

// prose is a short text for a hover, as Markdown or plain as the client can.
type prose struct {
	markdown bool
	b        strings.Builder
}

// Signs that Markdown would take for its own in running text.
var markdownSigns = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "<", "&lt;", "[", `\[`)

// text writes running text.
func (p *prose) text(list ...string) {
	for _, s := range list {
		if p.markdown {
			s = markdownSigns.Replace(s)
		}
		p.b.WriteString(s)
	}
}

// strong writes the word that the text is about.
func (p *prose) strong(s string) {
	if !p.markdown {
		p.b.WriteString(s)
		return
	}
	p.b.WriteString("**" + markdownSigns.Replace(s) + "**")
}

// code writes a piece of a specification, a formula or a value, as it stands.
func (p *prose) code(s string) {
	if !p.markdown {
		p.b.WriteString(s)
		return
	}
	fence := "`"
	if strings.Contains(s, "`") {
		fence = "``"
	}
	p.b.WriteString(fence + s + fence)
}

// line begins a new line, paragraph a new paragraph.
func (p *prose) line() {
	if p.markdown {
		p.b.WriteString("  ") // two blanks break a line in Markdown
	}
	p.b.WriteString("\n")
}

func (p *prose) paragraph() {
	if p.b.Len() > 0 {
		p.b.WriteString("\n\n")
	}
}

func (p *prose) String() string { return p.b.String() }
