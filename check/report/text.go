// Package report prints reports: text, JSON and the formats of other tools. It
// is the only place where a report becomes output.
package report

import (
	"fmt"
	"io"
	"strconv"
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
func (t *Text) File(name string, rep *check.Report) { t.W.Write(t.Append(nil, name, rep)) }

// Append is File at the end of a text, which it returns.
func (t *Text) Append(b []byte, name string, rep *check.Report) []byte {
	for i := range rep.Findings {
		b = t.finding(b, name, rep, &rep.Findings[i])
	}
	if t.Quiet || len(rep.Unknowns) == 0 {
		return b
	}
	b = fmt.Appendf(b, "%s: %s not decided for want of input; that is not a pass.\n", name, count(len(rep.Unknowns), "question was", "questions were"))
	for _, q := range folded(rep.Unknowns) {
		needs := q.Needs
		if len(q.also) > 0 {
			needs += "; likewise " + strings.Join(q.also, ", ")
		}
		b = add(b, "    ", q.Rule, ": not evaluated, needs ", needs, "  (")
		line, col := place(q.File, q.Span)
		b = addPlace(b, fileName(name, rep, q.File), line, col)
		b = add(b, ")\n")
	}
	return append(b, '\n')
}

func count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// add puts texts behind a text, without one of its own for each line.
func add(b []byte, texts ...string) []byte {
	for _, s := range texts {
		b = append(b, s...)
	}
	return b
}

// addPlace adds name:line:column.
func addPlace(b []byte, name string, line, col int) []byte {
	b = append(add(b, name), ':')
	b = append(strconv.AppendInt(b, int64(line), 10), ':')
	return strconv.AppendInt(b, int64(col), 10)
}

// row starts a row of a finding with its label, which has six characters.
func (t *Text) row(b []byte, label string) []byte {
	return add(b, "    ", t.paint(label, color.Faint), "  ")
}

func (t *Text) finding(b []byte, name string, rep *check.Report, f *check.Finding) []byte {
	head := f.Message
	if f.Part != "" && !strings.HasPrefix(head, f.Part) {
		head = f.Part + ": " + head
	}
	b = add(b, t.paint(head, color.Bold), "\n")
	row := func(label, text string) {
		if text != "" {
			b = add(t.row(b, label), text, "\n")
		}
	}
	row("found ", f.Found)
	row("limit ", f.Limit)
	if f.Source != LanguageSource {
		row("source", SourceText(f.Source))
	}
	row("mend  ", f.Mend)
	own := fileName(name, rep, f.File)
	for _, r := range f.Related {
		file, src := own, sourceOf(rep, f.File)
		if r.File != "" && r.File != file {
			file, src = r.File, sourceNamed(rep, r.File)
		}
		if src != nil {
			b = add(t.row(b, "see   "), r.Message, " (")
			line, col := src.Position(r.Span.Start)
			b = add(addPlace(b, file, line, col), ")\n")
		}
	}
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
	b = add(b, "    ", t.paint(word, tint), " at ")
	line, col := place(f.File, f.Span)
	return add(addPlace(b, own, line, col), ", rule ", f.Rule, "\n\n")
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

func sourceOf(rep *check.Report, f *lang.File) *lang.Source {
	if f != nil {
		return f.Source
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
