// Package report prints reports: text, JSON and the formats of other tools. It
// is the only place where a report becomes output.
package report

import (
	"fmt"
	"io"
	"strings"

	"github.com/fatih/color"

	"example.org/tundish/check"
	"example.org/tundish/check/cite"
	"example.org/tundish/lang"
)

// Text writes findings as short paragraphs: the part and its fault in words,
// the numbers, and last the place and the rule. Color is for terminals only.
type Text struct {
	W     io.Writer
	Color bool
	// Texts about rules that lacked input are left out when Quiet is set.
	Quiet bool
}

func (t *Text) paint(s string, attrs ...color.Attribute) string {
	if !t.Color {
		return s
	}
	c := color.New(attrs...)
	c.EnableColor()
	return c.Sprint(s)
}

// File writes the findings and the open questions of one file.
func (t *Text) File(name string, rep *check.Report) {
	for i := range rep.Findings {
		t.finding(name, rep, &rep.Findings[i])
	}
	if t.Quiet || len(rep.Unknowns) == 0 {
		return
	}
	fmt.Fprintf(t.W, "%s: %s not decided for want of input; that is not a pass.\n", name, count(len(rep.Unknowns), "question was", "questions were"))
	for _, q := range folded(rep.Unknowns) {
		line, col := place(q.File, q.Span)
		needs := q.Needs
		if len(q.also) > 0 {
			needs += "; likewise " + strings.Join(q.also, ", ")
		}
		fmt.Fprintf(t.W, "    %s: not evaluated, needs %s  (%s:%d:%d)\n", q.Rule, needs, fileName(name, rep, q.File), line, col)
	}
	fmt.Fprintln(t.W)
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func (t *Text) finding(name string, rep *check.Report, f *check.Finding) {
	head := f.Message
	if f.Part != "" && !strings.HasPrefix(head, f.Part) {
		head = f.Part + ": " + head
	}
	fmt.Fprintln(t.W, t.paint(head, color.Bold))
	row := func(label, text string) {
		if text != "" {
			fmt.Fprintf(t.W, "    %s  %s\n", t.paint(fmt.Sprintf("%-6s", label), color.Faint), text)
		}
	}
	row("found", f.Found)
	row("limit", f.Limit)
	if f.Source != LanguageSource {
		row("source", SourceText(f.Source))
	}
	row("mend", f.Mend)
	for _, r := range f.Related {
		file := fileName(name, rep, f.File)
		src := sourceOf(rep, f)
		if r.File != "" && r.File != file {
			file = r.File
			src = sourceNamed(rep, r.File)
		}
		if src != nil {
			line, col := src.Position(r.Span.Start)
			row("see", fmt.Sprintf("%s (%s:%d:%d)", r.Message, file, line, col))
		}
	}
	line, col := place(f.File, f.Span)
	word := f.Severity.String()
	if f.Trial {
		word = "on trial, " + word
	}
	tint := color.FgCyan
	switch f.Severity {
	case lang.Error:
		tint = color.FgRed
	case lang.Warning:
		tint = color.FgYellow
	}
	fmt.Fprintf(t.W, "    %s at %s:%d:%d, rule %s\n\n", t.paint(word, tint), fileName(name, rep, f.File), line, col, f.Rule)
}

// SourceText prints a source with how it was read.
func SourceText(s cite.Source) string {
	switch {
	case s.Work == "":
		return ""
	case s.Read == "":
		return s.String()
	}
	return s.String() + " (" + string(s.Read) + ")"
}

// LanguageSource marks findings about the text itself, which cite no work.
var LanguageSource = cite.Source{Work: "the plant language", Read: cite.Published}

func place(f *lang.File, s lang.Span) (line, col int) {
	if f == nil {
		return 1, 1
	}
	return f.Source.Position(s.Start)
}

func fileName(name string, rep *check.Report, f *lang.File) string {
	if f == nil || f == rep.Plant.File {
		return name
	}
	return f.Source.Name
}

func sourceOf(rep *check.Report, f *check.Finding) *lang.Source {
	if f.File != nil {
		return f.File.Source
	}
	return rep.Plant.File.Source
}

func sourceNamed(rep *check.Report, name string) *lang.Source {
	for _, c := range rep.Plant.Catalogues {
		if c.Source.Name == name {
			return c.Source
		}
	}
	if rep.Plant.File.Source.Name == name {
		return rep.Plant.File.Source
	}
	return nil
}
