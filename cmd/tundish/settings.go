package main

import (
	"os"
	"path/filepath"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/tables"
	"example.org/tundish/lang"
)

// settings are the project's own: the gate and the limits it replaced, read
// from project.plant in the root of the workspace.
type settings struct {
	gate      string
	overrides map[string]check.Limit
	problems  []plant.FileProblem // unknown settings are findings
	file      *lang.File
}

// loadSettings reads the project file of a workspace; without one the settings
// are empty.
func (w *workspace) loadSettings() *settings {
	s := &settings{}
	name := filepath.Join(w.root, projectFile)
	b, err := os.ReadFile(name)
	if err != nil {
		return s
	}
	s.file = w.parse(filepath.ToSlash(name), string(b))
	p := plant.Resolve(s.file, nil)
	for i := range s.file.Problems {
		s.problems = append(s.problems, plant.FileProblem{File: s.file, Problem: s.file.Problems[i]})
	}
	s.problems = append(s.problems, p.Problems...)
	if g := p.One("gate").First(); g.Known() {
		s.gate = g.Word
	}
	for _, l := range p.ByKind("limit") {
		s.override(l)
	}
	return s
}

// override puts the project's own value in the place of a limit, with the
// reason; the value must be of the limit's kind.
func (s *settings) override(l *plant.Part) {
	id, v := l.Get("limit"), l.Get("value")
	if !id.Known() || !v.Known() {
		return
	}
	limit, ok := tables.Limits()[id.Word]
	problem := lang.Problem{Span: id.Span(), Rule: "unknown-name", Severity: lang.Error, Message: "There is no limit named " + id.Word + "."}
	if !ok {
		names := make([]string, 0, len(tables.Limits()))
		for n := range tables.Limits() {
			names = append(names, n)
		}
		if near := lang.Suggest(id.Word, names); near != "" {
			problem.Mend = "did you mean " + near + "?"
		}
		s.problems = append(s.problems, plant.FileProblem{File: s.file, Problem: problem})
		return
	}
	u, _ := lang.LookupUnit(v.Field.Values[0].Expr.UnitText)
	if u == nil || u.Dim != limit.Dim {
		problem.Rule, problem.Span = "wrong-unit", v.Span()
		problem.Message = "The limit " + id.Word + " is a " + limit.Dim.String() + "."
		problem.Mend = "give it in " + limit.Unit
		s.problems = append(s.problems, plant.FileProblem{File: s.file, Problem: problem})
		return
	}
	limit.Num, limit.Unit = v.Num, u.Symbol
	limit.Because = l.Get("because").Word
	limit.Source.Work = "the project's own limit, in place of " + limit.Source.Work
	limit.Source.Note = limit.Because
	if s.overrides == nil {
		s.overrides = map[string]check.Limit{}
	}
	s.overrides[id.Word] = limit
}
