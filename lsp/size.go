package lsp

import (
	"context"
	"encoding/json"
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// sizeTrial is what an offered size needs to be tried when the user looks at it.
type sizeTrial struct {
	URI     string `json:"uri"`
	Version int32  `json:"version"`
	Part    string `json:"part"`
	Start   int    `json:"start"` // bytes of the text that the size replaces
	End     int    `json:"end"`
	Size    string `json:"size"`
}

// An offered size is tried when the client shows it: it is put into the text, and
// what the engine then computes and finds is told beside it.
var _ = on("completionItem/resolve", func(s *Server, ctx context.Context, params json.RawMessage, at *snapshot) (any, error) {
	item, err := decode[map[string]json.RawMessage](params)
	if err != nil {
		return nil, err
	}
	t, err := decode[sizeTrial](item["data"])
	d := at.find(t.URI)
	if err != nil || d == nil || d.version != t.Version || t.Start < 0 || t.End < t.Start || t.End > len(d.src.Text) {
		return params, nil // nothing more is known of it
	}
	a := d.with(at, d.src.Text[:t.Start]+t.Size+d.src.Text[t.End:])
	part := a.rep.Plant.Find(t.Part)
	if part == nil {
		return params, nil
	}
	detail, _ := decode[string](item["detail"])
	bore, _, _ := strings.Cut(detail, ",")
	if v := effectText(a, part); v != "" {
		detail = v
		if bore != "" {
			detail = bore + ", " + v
		}
		if item["detail"], err = json.Marshal(detail); err != nil {
			return nil, err
		}
	}
	if item["documentation"], err = json.Marshal(findingsText(a, part)); err != nil {
		return nil, err
	}
	return item, nil
})

// with judges the document as if its text were another one.
func (d *document) with(at *snapshot, text string) *analysis {
	o := &document{uri: d.uri, path: d.path, name: d.name, version: d.version, src: lang.NewSource(d.name, text)}
	return o.analyze(at)
}

// effectText tells the velocity and the loss of a part where they are known, the
// governing case of several.
func effectText(a *analysis, part *plant.Part) string {
	sys := system(a)
	worst := map[string]*solve.Quantity{}
	a.rep.Results.Of(part, func(q *solve.Quantity) {
		if q.Known() && q.Stat == solve.Plain && (worst[q.Name] == nil || q.Num > worst[q.Name].Num) {
			worst[q.Name] = q
		}
	})
	var out []string
	if q := worst["velocity"]; q != nil {
		out = append(out, report.Show(q, sys))
	}
	if q := worst["pressure-loss"]; q != nil {
		out = append(out, "loses "+report.Show(q, sys))
	}
	return strings.Join(out, ", ")
}

// findingsText tells what the rules find on a part.
func findingsText(a *analysis, part *plant.Part) string {
	var out []string
	for i := range a.rep.Findings {
		f := &a.rep.Findings[i]
		if a.own(f.File) && f.Severity >= lang.Warning && onStatement(f, part) {
			out = append(out, f.Message)
		}
	}
	if len(out) == 0 {
		return "Nothing is found on this statement then."
	}
	return strings.Join(out, "\n")
}

func onStatement(f *check.Finding, part *plant.Part) bool {
	s := part.Stmt.HeadSpan()
	return f.Span.Start >= s.Start && f.Span.Start < s.End
}

// system is the system of units in which a plant is read.
func system(a *analysis) lang.System {
	if a.rep.Plant.US() {
		return lang.US
	}
	return lang.Metric
}
