package lsp

import (
	"context"
	"encoding/json"
	"fmt"

	"example.org/tundish/check/report"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

var _ = on("textDocument/codeLens", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	p, err := decode[docPosition](params)
	if err != nil {
		return nil, err
	}
	d := at.find(p.TextDocument.URI)
	if d == nil {
		return []object{}, nil
	}
	a, stale := d.shown(at)
	now := mapLines(a.src, d.src)
	out := []object{}
	add := func(st *lang.Statement, command object) {
		if line, ok := now.line(a.src.LineOf(st.Base)); ok {
			start := d.src.LineStart(line)
			out = append(out, object{"range": s.enc.rangeOf(d.src, lang.Span{Start: start, End: start}), "command": command})
		}
	}
	for _, st := range a.rep.Plant.File.Statements {
		if k := st.Head.Keyword; k == "plant" || k == "record" {
			add(st, object{"title": "Show the calculation sheet", "command": commandSheet, "arguments": []string{d.uri}})
		}
		if st.Braces.Empty() || st.Bound == nil {
			continue
		}
		title := lensTitle(a, st)
		if stale {
			title += " (before this edit)"
		}
		add(st, object{"title": title, "command": ""})
	}
	return out, nil
})

// lensTitle sums a block up: its findings, its main value, the tightest limit.
func lensTitle(a *analysis, st *lang.Statement) string {
	n := map[lang.Severity]int{}
	span := st.Span()
	for i := range a.rep.Findings {
		f := &a.rep.Findings[i]
		if (f.File == nil || f.File == a.rep.Plant.File) && f.Span.Start >= span.Start && f.Span.End <= span.End {
			n[f.Severity]++
		}
	}
	open := 0
	for i := range a.rep.Unknowns {
		if u := &a.rep.Unknowns[i]; u.File == a.rep.Plant.File && u.Span.Start >= span.Start && u.Span.Start < span.End {
			open++
		}
	}
	title := fmt.Sprintf("errors %d, warnings %d, not evaluated %d", n[lang.Error], n[lang.Warning], open)
	tightest, where := 0.0, ""
	for i := range a.rep.Comparisons {
		c := &a.rep.Comparisons[i]
		if c.Quantity.Part.Stmt == nil || c.Quantity.Part.File != a.rep.Plant.File {
			continue
		}
		at := c.Quantity.Part.Span()
		if at.Start < span.Start || at.End > span.End {
			continue
		}
		if share, ok := c.Used(); ok && share > tightest && share < 100 {
			tightest, where = share, c.Quantity.Path()
		}
	}
	if where != "" {
		title += fmt.Sprintf("; tightest limit %s: %s %% used", where, lang.Num(100*tightest, 3))
	}
	if st.Head.Keyword == "units" {
		if q := a.rep.Results.Group(a.rep.Plant.UnitGroup(), "output", solve.Total, solve.Always); q.Known() {
			title += "; together " + report.Show(q, lang.Metric)
		}
	}
	return title
}
