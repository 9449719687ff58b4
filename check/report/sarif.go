package report

import (
	"io"
	"path"
	"strings"

	"github.com/owenrumney/go-sarif/v3/pkg/report/v210/sarif"

	"example.org/tundish/check"
)

// SARIF writes a lint run as SARIF 2.1.0: findings as results with fixes, rules
// that lacked input as notifications of the invocation, because SARIF has no
// result that means "could not tell".
func SARIF(w io.Writer, d *Document, rules []*check.Rule) error {
	run := sarif.NewRun()
	driver := sarif.NewToolComponent().WithName(d.Tool.Name).WithVersion(d.Tool.Version).WithSemanticVersion(d.Tool.Version)
	run.WithTool(sarif.NewTool().WithDriver(driver))
	run.WithColumnKind("unicodeCodePoints")
	index := map[string]int{}
	for _, r := range rules {
		index[r.ID] = len(index)
		driver.AddRule(sarifRule(r))
	}
	inv := sarif.NewInvocation().WithExecutionSuccessful(true)
	for i := range d.Findings {
		run.AddResult(sarifResult(&d.Findings[i], index))
	}
	for _, u := range d.NotEvaluated {
		n := sarif.NewNotification().WithLevel("note").
			WithMessage(sarif.NewTextMessage(u.Rule + " was not evaluated: needs " + u.Needs + ".")).
			WithLocations([]*sarif.Location{sarifLocation(u.File, u.Line, 0, 0, 0)})
		inv.AddToolExecutionNotification(n)
	}
	run.AddInvocation(inv)
	rep := sarif.NewReport()
	rep.AddRun(run)
	return rep.PrettyWrite(w)
}

func sarifRule(r *check.Rule) *sarif.ReportingDescriptor {
	d := sarif.NewRule(r.ID).
		WithShortDescription(sarif.NewMultiformatMessageString().WithText(r.Summary)).
		WithFullDescription(sarif.NewMultiformatMessageString().WithText(r.Why))
	var help strings.Builder
	help.WriteString(r.Why + "\n\nWhat mends it: " + r.Mend)
	for _, s := range r.Sources {
		help.WriteString("\nSource: " + SourceText(s))
	}
	d.WithHelp(sarif.NewMultiformatMessageString().WithText(help.String()))
	return d.WithDefaultConfiguration(sarif.NewReportingConfiguration().WithLevel(r.Severity.String()))
}

func sarifResult(f *JSONFinding, index map[string]int) *sarif.Result {
	text := f.Message
	if f.Limit != "" {
		text += " Found " + f.Found + ", limit " + f.Limit + "."
	}
	if f.Source != "" {
		text += " Source: " + f.Source + " (" + f.Read + ")."
	}
	if f.Mend != "" {
		text += " Mend: " + f.Mend + "."
	}
	res := sarif.NewRuleResult(f.Rule).WithLevel(f.Severity).WithMessage(sarif.NewTextMessage(text))
	if i, ok := index[f.Rule]; ok {
		res.WithRuleIndex(i)
	}
	res.AddLocation(sarifLocation(f.File, f.Line, f.Column, f.EndLine, f.EndColumn))
	res.WithPartialFingerprints(map[string]string{"tundish/v1": Fingerprint(f)})
	for _, fix := range f.Fixes {
		byFile := map[string]*sarif.ArtifactChange{}
		sf := sarif.NewFix().WithDescription(sarif.NewTextMessage(fix.Title))
		for _, e := range fix.Edits {
			name := e.File
			if name == "" {
				name = f.File
			}
			ch := byFile[name]
			if ch == nil {
				ch = sarif.NewArtifactChange().WithArtifactLocation(sarif.NewSimpleArtifactLocation(sarifURI(name)))
				byFile[name] = ch
				sf.AddArtifactChange(ch)
			}
			ch.AddReplacement(sarif.NewReplacement().
				WithDeletedRegion(sarifRegion(e.Line, e.Column, e.EndLine, e.EndColumn)).
				WithInsertedContent(sarif.NewArtifactContent().WithText(e.NewText)))
		}
		if len(byFile) > 0 {
			res.AddFixe(sf)
		}
	}
	return res
}

func sarifLocation(file string, line, col, endLine, endCol int) *sarif.Location {
	return sarif.NewLocation().WithPhysicalLocation(sarif.NewPhysicalLocation().
		WithArtifactLocation(sarif.NewSimpleArtifactLocation(sarifURI(file))).
		WithRegion(sarifRegion(line, col, endLine, endCol)))
}

func sarifRegion(line, col, endLine, endCol int) *sarif.Region {
	r := sarif.NewRegion().WithStartLine(max(line, 1))
	if col > 0 {
		r.WithStartColumn(col)
	}
	if endLine > 0 {
		r.WithEndLine(endLine).WithEndColumn(max(endCol, 1))
	}
	return r
}

// sarifURI makes a relative URI reference of a path; what cannot stand in one
// is escaped.
func sarifURI(name string) string {
	name = path.Clean(strings.ReplaceAll(name, "\\", "/"))
	var b strings.Builder
	for i := 0; i < len(name); i++ {
		c := name[i]
		switch {
		case c >= 'a' && c <= 'z', c >= 'A' && c <= 'Z', c >= '0' && c <= '9', strings.IndexByte("-._~/!$&'()*+,;=@", c) >= 0:
			b.WriteByte(c)
		default:
			const hex = "0123456789ABCDEF"
			b.WriteByte('%')
			b.WriteByte(hex[c>>4])
			b.WriteByte(hex[c&15])
		}
	}
	return b.String()
}
