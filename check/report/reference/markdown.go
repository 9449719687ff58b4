package reference

import (
	"fmt"
	"io"
	"strings"

	"example.org/tundish/check"
)

// markdown collects a page of Markdown.
type markdown struct{ strings.Builder }

func (m *markdown) line(format string, args ...any) { fmt.Fprintf(m, format+"\n", args...) }

// text keeps a text from being read as markup.
var markup = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", "&lt;", "[", `\[`, "|", `\|`)

func text(s string) string { return markup.Replace(s) }

// field is one fact behind its word; empty ones are left out.
func (m *markdown) field(word, value string) {
	if value != "" {
		m.line("- %s: %s", word, text(value))
	}
}

// WriteRulesMarkdown writes what WriteRulesHTML does as Markdown. The heading of
// a rule is its id, which gives the usual anchor.
func WriteRulesMarkdown(w io.Writer, list []Rule, all []*check.Rule, version string) error {
	groups, err := grouped(list, all)
	if err != nil {
		return err
	}
	m := &markdown{}
	m.line("# Rules\n\n%d rules and faults of the text of tundish %s. The examples were run while this page was written. A rule that is silent is no permission to build, to fire or to open gas.", len(list), version)
	for _, g := range groups {
		m.line("\n## %s", heading(g.Name))
		for _, r := range g.Rules {
			m.line("\n### %s\n\n%s\n", r.ID, text(r.Summary))
			m.field("severity", r.Severity)
			if r.Status != string(check.InForce) {
				m.field("status", r.Status)
			}
			m.field("why", r.Why)
			m.field("mend", r.Mend)
			m.field("does not cover", r.Limits)
			for _, s := range r.Sources {
				note := ""
				if s.Note != "" {
					note = ": " + s.Note
				}
				m.field("source", s.Source+" ("+s.Read+")"+note)
			}
			if r.Example != nil {
				m.example(r.Example)
			}
		}
	}
	_, err = io.WriteString(w, m.String())
	return err
}

func (m *markdown) example(x *Example) {
	m.line("\n%s\n\n```diff", text(x.About))
	for _, l := range x.Lines {
		if l.Sign == "~" {
			m.line("  ...")
			continue
		}
		m.line("%s %s", l.Sign, l.Text)
	}
	m.line("```\n")
	for _, f := range x.Findings {
		m.line("> %s: %s", f.Severity, text(f.Message))
		for _, p := range [][2]string{{"found", f.Found}, {"limit", f.Limit}, {"source", f.Source}, {"mend", f.Mend}} {
			if p[1] != "" {
				m.line("> %s: %s", p[0], text(p[1]))
			}
		}
		m.line("")
	}
	m.line("%s", x.Where())
}

// WriteMarkdown writes the language as Markdown.
func (l *Language) WriteMarkdown(w io.Writer, version string) error {
	m := &markdown{}
	m.line("# The plant language\n\nAs tundish %s reads it. A text that is read without a fault is no permission to build, to fire or to open gas.", version)
	for _, b := range l.Blocks {
		m.line("\n## %s", b.Name)
		for _, st := range b.Statements {
			m.line("\n### %s\n\n%s\n", st.Keyword, text(st.Help))
			m.field("stands in", strings.Join(st.In, ", ")+"; "+st.Times)
			m.field("first name", st.Name)
			m.field("opens", st.Block)
			m.field("asked for by", st.Source)
			for _, s := range st.Slots {
				word := "value"
				if s.Needed {
					word = "needed"
				}
				m.line("- %s: `%s` %s; %s", word, s.Written, text(s.Help), text(s.Takes))
			}
			m.line("\n```\n%s\n```", st.Example)
		}
		if len(b.Also) > 0 {
			var words []string
			for _, a := range b.Also {
				words = append(words, a.Keyword)
			}
			m.line("\nAlso: %s.", text(strings.Join(words, ", ")))
		}
	}
	if len(l.Units) > 0 {
		m.line("\n## Units\n\n| quantity | units |\n|---|---|")
		for _, d := range l.Units {
			var us []string
			for _, u := range d.Units {
				us = append(us, "`"+u.Symbol+"` "+text(u.Help))
			}
			m.line("| %s | %s |", heading(d.Name), strings.Join(us, ", "))
		}
	}
	_, err := io.WriteString(w, m.String())
	return err
}

// WriteText writes the language for a terminal.
func (l *Language) WriteText(w io.Writer) error {
	m := &markdown{}
	for i, b := range l.Blocks {
		for j, st := range b.Statements {
			if i+j > 0 {
				m.line("")
			}
			m.line("%s (in %s; %s)", st.Keyword, strings.Join(st.In, ", "), st.Times)
			m.line("    %s", st.Help)
			if st.Name != "" {
				m.line("    first name  %s", st.Name)
			}
			if st.Block != "" {
				m.line("    opens       the block %s", st.Block)
			}
			for _, s := range st.Slots {
				word := "value "
				if s.Needed {
					word = "needed"
				}
				m.line("    %s      %s  %s; %s", word, s.Written, s.Help, s.Takes)
			}
			m.line("    example")
			for _, line := range strings.Split(st.Example, "\n") {
				m.line("        %s", line)
			}
		}
	}
	_, err := io.WriteString(w, m.String())
	return err
}
