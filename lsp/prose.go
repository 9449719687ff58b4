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

// maxExample bounds the lines of an example in a hover.
const maxExample = 8

// example shows a statement as it is written, of a long one the beginning.
func (p *prose) example(text string) {
	lines := strings.Split(strings.TrimRight(text, "\n"), "\n")
	p.paragraph()
	p.text("Example:")
	if len(lines) == 2 && lines[1] == "}" { // a block that the example leaves empty
		lines = []string{lines[0] + " ... }"}
	}
	if len(lines) == 1 {
		p.text(" ")
		p.code(lines[0])
		return
	}
	if len(lines) > maxExample {
		lines = append(lines[:maxExample-1:maxExample-1], "  ...")
	}
	body := strings.Join(lines, "\n")
	if p.markdown {
		body = "```plant\n" + body + "\n```"
	}
	p.b.WriteString("\n" + body)
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
