package check

import (
	"slices"

	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// ProjectFile is the name of the file with a project's settings. It holds for
// the folder it stands in and those below.
const ProjectFile = "project.plant"

// Settings are a project's own: the gate and the limits that it replaced.
type Settings struct {
	Gate      string           // severity that gates, as written; empty: not set
	Overrides map[string]Limit // by id of the limit
	Problems  []plant.FileProblem
	Text      string // of the project file; empty without one
}

// ReadSettings reads a bound project file. Settings that it does not know are
// Problems, and so are replaced limits of another kind. A nil file gives empty
// settings.
func ReadSettings(f *lang.File) *Settings {
	s := &Settings{}
	if f == nil {
		return s
	}
	s.Text = f.Source.Text
	p := plant.Resolve(f, nil)
	for i := range f.Problems {
		s.Problems = append(s.Problems, plant.FileProblem{File: f, Problem: f.Problems[i]})
	}
	s.Problems = append(s.Problems, p.Problems...)
	if g := p.One("gate").First(); g.Known() {
		s.Gate = g.Word
	}
	for _, l := range p.ByKind("limit") {
		s.override(f, l)
	}
	return s
}

// override puts the project's own value in the place of a limit, with the
// reason; the value must be of the limit's kind.
func (s *Settings) override(f *lang.File, l *plant.Part) {
	id, v := l.Get("limit"), l.Get("value")
	if !id.Known() || !v.Known() {
		return
	}
	table := tables.LimitOf(id.Word)
	problem := lang.Problem{Span: id.Span(), Rule: "unknown-name", Severity: lang.Error, Message: "There is no limit named " + id.Word + "."}
	if table == nil {
		if near := lang.Suggest(id.Word, slices.Sorted(tables.LimitIDs())); near != "" {
			problem.Mend = "did you mean " + near + "?"
		}
		s.Problems = append(s.Problems, plant.FileProblem{File: f, Problem: problem})
		return
	}
	limit := *table
	u, _ := lang.LookupUnit(v.Field.Values[0].Expr.UnitText)
	if u == nil || u.Dim != limit.Dim {
		problem.Rule, problem.Span = "wrong-unit", v.Span()
		problem.Message = "The limit " + id.Word + " is " + lang.Article(limit.Dim.String()) + "."
		problem.Mend = "give it in " + limit.Unit
		s.Problems = append(s.Problems, plant.FileProblem{File: f, Problem: problem})
		return
	}
	limit.Num, limit.Unit = v.Num, u.Symbol
	limit.Because = l.Get("because").Word
	limit.Origin = lang.Related{File: f.Source.Name, Span: v.Span(), Message: "the project's own limit is set here"}
	limit.Source.Work = "the project's own limit, in place of " + limit.Source.Work
	limit.Source.Note = limit.Because
	if s.Overrides == nil {
		s.Overrides = map[string]Limit{}
	}
	s.Overrides[id.Word] = limit
}
