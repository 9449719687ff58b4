package report

import (
	"encoding/json"
	"io"

	"example.org/tundish/check"
	"example.org/tundish/lang"
)

// Tool names the tool and its version in machine-read output.
type Tool struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

// Document is the JSON form of a lint run. Positions are 1-based, columns count
// Unicode code points, ends are exclusive.
type Document struct {
	Tool         Tool          `json:"tool"`
	Shard        *Shard        `json:"shard,omitempty"` // of a run that was cut into parts
	Findings     []JSONFinding `json:"findings"`
	NotEvaluated []JSONUnknown `json:"notEvaluated"`
	Files        int           `json:"files"` // that were read; last, because a run knows it last
}

// JSONFinding is one finding.
type JSONFinding struct {
	File      string    `json:"file"`
	Line      int       `json:"line"`
	Column    int       `json:"column"`
	EndLine   int       `json:"endLine"`
	EndColumn int       `json:"endColumn"`
	Rule      string    `json:"rule"`
	Severity  string    `json:"severity"`
	Part      string    `json:"part"`
	Message   string    `json:"message"`
	Found     string    `json:"found"`
	Limit     string    `json:"limit"`
	Source    string    `json:"source"`
	Read      string    `json:"read"`
	Mend      string    `json:"mend"`
	OnTrial   bool      `json:"onTrial,omitempty"`
	Fixes     []JSONFix `json:"fixes"`
}

// JSONFix is one way to mend a finding.
type JSONFix struct {
	Title string     `json:"title"`
	Edits []JSONEdit `json:"edits"`
}

// JSONEdit replaces a stretch of text. File is only set when it is not the
// finding's own file.
type JSONEdit struct {
	File      string `json:"file,omitempty"`
	Line      int    `json:"line"`
	Column    int    `json:"column"`
	EndLine   int    `json:"endLine"`
	EndColumn int    `json:"endColumn"`
	NewText   string `json:"newText"`
}

// JSONUnknown is one rule that lacked input.
type JSONUnknown struct {
	File  string `json:"file"`
	Line  int    `json:"line"`
	Rule  string `json:"rule"`
	Part  string `json:"part,omitempty"`
	Needs string `json:"needs"`
}

// NewDocument makes an empty document; its lists print as [].
func NewDocument(t Tool) *Document {
	return &Document{Tool: t, Findings: []JSONFinding{}, NotEvaluated: []JSONUnknown{}}
}

// Add appends one file's report under the name the user gave.
func (d *Document) Add(name string, rep *check.Report) {
	d.Files++
	for i := range rep.Findings {
		d.Findings = append(d.Findings, Finding(name, rep, &rep.Findings[i]))
	}
	for i := range rep.Unknowns {
		d.NotEvaluated = append(d.NotEvaluated, openQuestion(name, rep, &rep.Unknowns[i]))
	}
}

// Finding gives the JSON form of one finding.
func Finding(name string, rep *check.Report, f *check.Finding) JSONFinding {
	src := sourceOf(rep, f.File)
	out := JSONFinding{
		File: fileName(name, rep, f.File), Rule: f.Rule, Severity: f.Severity.String(), Part: f.Part,
		Message: f.Message, Found: f.Found, Limit: f.Limit, Source: f.Source.String(), Read: string(f.Source.Read),
		Mend: f.Mend, OnTrial: f.Trial, Fixes: []JSONFix{},
	}
	out.Line, out.Column = src.Position(f.Span.Start)
	out.EndLine, out.EndColumn = src.Position(max(f.Span.End, f.Span.Start))
	for _, fix := range f.Fixes {
		jf := JSONFix{Title: fix.Title, Edits: []JSONEdit{}}
		for _, e := range fix.Edits {
			jf.Edits = append(jf.Edits, jsonEdit(rep, src, e))
		}
		out.Fixes = append(out.Fixes, jf)
	}
	return out
}

func jsonEdit(rep *check.Report, src *lang.Source, e lang.Edit) JSONEdit {
	if e.File != "" {
		if s := sourceNamed(rep, e.File); s != nil {
			src = s
		}
	}
	out := JSONEdit{File: e.File, NewText: e.NewText}
	out.Line, out.Column = src.Position(e.Span.Start)
	out.EndLine, out.EndColumn = src.Position(e.Span.End)
	return out
}

// Write prints the document.
func (d *Document) Write(w io.Writer) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	return enc.Encode(d)
}
