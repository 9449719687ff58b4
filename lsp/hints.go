package lsp

import (
	"context"
	"encoding/json"

	"example.org/tundish/check/report"
	"example.org/tundish/check/solve"
)

// hintNames are the values shown beside a statement, with their kind.
var hintNames = map[string]string{
	"velocity": "velocity", "pressure-loss": "loss", "gas-pressure": "pressure", "pump-margin": "margin", "flue-margin": "margin", "seal-margin": "margin",
	"design-flow": "flow", "needed-capacity": "capacity", "capacity": "capacity", "needed-area-low": "capacity", "installed-ratio": "capacity", "load": "capacity", "rate": "flow",
}

var _ = on("textDocument/inlayHint", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	p, err := decode[docPosition](params)
	if err != nil {
		return nil, err
	}
	d := at.find(p.TextDocument.URI)
	if d == nil {
		return []object{}, nil
	}
	a, stale := d.shown(at)
	window := s.enc.span(d.src, p.Range)
	from, to := d.src.LineOf(window.Start), d.src.LineOf(window.End)
	return s.hints(d, a, stale, from, to), nil
})

// hints gives the hints of the lines from to to, at the ends of their lines.
func (s *Server) hints(d *document, a *analysis, stale bool, from, to int) []object {
	sys := system(a)
	labels := map[int]string{}
	tips := map[int]string{}
	worst := map[int]map[string]*solve.Quantity{}
	now := mapLines(a.src, d.src)
	all := a.rep.Results.All()
	for i := range all {
		q := &all[i]
		kind := hintNames[q.Name]
		if kind == "" || !q.Known() || q.Part.File != a.rep.Plant.File || q.Stat != solve.Plain && q.Name != "load" || !s.config.hint(kind) {
			continue
		}
		span := q.At
		if span.Empty() {
			span = q.Part.Span()
		}
		line, ok := now.line(a.src.LineOf(span.Start))
		if !ok || line < from || line > to {
			continue
		}
		if worst[line] == nil {
			worst[line] = map[string]*solve.Quantity{}
		}
		// Of a group, and of several cases, the governing value is shown.
		old := worst[line][q.Name]
		low := kind == "margin" || kind == "pressure"
		if old == nil || low && q.Num < old.Num || !low && q.Num > old.Num {
			worst[line][q.Name] = q
		}
	}
	out := []object{}
	for line, byName := range worst {
		for _, name := range hintOrder {
			q := byName[name]
			if q == nil {
				continue
			}
			if labels[line] != "" {
				labels[line] += ", "
				tips[line] += "\n"
			}
			labels[line] += shortName(name) + " " + report.Show(q, sys)
			tips[line] += q.Path() + " = " + report.Show(q, sys)
			if q.Formula != nil {
				tips[line] += ": " + q.Formula.Text
			}
		}
		end := d.src.LineStart(line + 1)
		for end > d.src.LineStart(line) && (d.src.Text[end-1] == '\n' || d.src.Text[end-1] == '\r') {
			end--
		}
		label := labels[line]
		if stale {
			label += " (before this edit)"
		}
		out = append(out, object{"position": s.enc.position(d.src, end), "label": label, "paddingLeft": true, "tooltip": tips[line]})
	}
	sortByLine(out)
	return out
}

var hintOrder = []string{"load", "installed-ratio", "rate", "design-flow", "velocity", "pressure-loss", "gas-pressure", "pump-margin", "flue-margin", "seal-margin", "capacity", "needed-capacity", "needed-area-low"}

func shortName(name string) string {
	switch name {
	case "pressure-loss":
		return "loses"
	case "gas-pressure":
		return "gas"
	case "pump-margin":
		return "pump left"
	case "flue-margin":
		return "flue left"
	case "seal-margin":
		return "seal left"
	case "design-flow":
		return "flow"
	case "needed-capacity":
		return "needs"
	case "needed-area-low":
		return "needs low"
	case "installed-ratio":
		return "installed"
	case "velocity":
		return "at"
	}
	return name
}
