package lsp

import (
	"bytes"
	"context"
	"encoding/json"

	"go.lsp.dev/protocol"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
	"example.org/tundish/lang"
)

// sentDiagnostics is what the client has of a document.
type sentDiagnostics struct {
	version int32
	body    []byte
}

// publisher sends the diagnostics of the newest snapshot, and of no older one.
func (s *Server) publisher(ctx context.Context) {
	for {
		select {
		case <-ctx.Done():
			return
		case <-s.publish:
		}
		s.front.shield(func() {
			at := s.current()
			s.publishAll(at)
			s.live.changed(at)
		})
	}
}

func (s *Server) publishAll(at *snapshot) {
	for uri, d := range at.docs {
		if s.current() != at {
			s.wake() // a newer snapshot came: start over with that
			return
		}
		s.mu.Lock()
		pulls := s.pulled[uri]
		s.mu.Unlock()
		list := []object{}
		if !pulls {
			list = s.diagnostics(at, d)
		}
		s.publishOne(uri, d.version, list)
	}
	for uri := range s.sent {
		if at.docs[uri] == nil {
			s.publishOne(uri, 0, []object{})
			delete(s.sent, uri)
		}
	}
}

func (s *Server) publishOne(uri string, version int32, list []object) {
	body, err := encode(list)
	if err != nil {
		return
	}
	if was, ok := s.sent[uri]; ok && was.version == version && bytes.Equal(was.body, body) {
		return
	}
	s.sent[uri] = sentDiagnostics{version, body}
	p := object{"uri": uri, "diagnostics": list}
	if s.client.diagnosticVersion && version != 0 {
		p["version"] = version
	}
	s.tell("textDocument/publishDiagnostics", p)
}

// diagnostics gives the findings of a document; what stands in a catalogue is
// shown in the catalogue when that is open, and else at the use statement.
func (s *Server) diagnostics(at *snapshot, d *document) []object {
	a := d.analyze(at)
	list := make([]object, 0, len(a.rep.Findings)+len(a.rep.Unknowns))
	for i := range a.rep.Findings {
		f := &a.rep.Findings[i]
		if f.File != nil && f.File != a.rep.Plant.File {
			continue
		}
		list = append(list, s.diagnostic(at, d, a, f))
	}
	for i := range a.rep.Unknowns {
		u := &a.rep.Unknowns[i]
		if u.File != a.rep.Plant.File {
			continue
		}
		list = append(list, object{
			"range": s.enc.rangeOf(d.src, firstLine(d.src, u.Span)), "severity": 4, "source": "tundish", "code": u.Rule,
			"message": "Not evaluated, which is not a pass: needs " + u.Needs + ".",
		})
	}
	return list
}

// firstLine keeps a mark from running over a whole block.
func firstLine(src *lang.Source, s lang.Span) lang.Span {
	end := src.LineStart(src.LineOf(s.Start) + 1)
	for end > s.Start && (src.Text[end-1] == '\n' || src.Text[end-1] == '\r') {
		end--
	}
	if s.End > end {
		s.End = end
	}
	return s
}

var severities = map[lang.Severity]int{lang.Error: 1, lang.Warning: 2, lang.Note: 3}

func (s *Server) diagnostic(at *snapshot, d *document, a *analysis, f *check.Finding) object {
	o := object{
		"range": s.enc.rangeOf(d.src, firstLine(d.src, f.Span)), "severity": severities[f.Severity], "source": "tundish", "code": f.Rule,
		"message": diagnosticText(f),
	}
	if f.Rule == "deviation-unused" {
		o["tags"] = []int{1} // unnecessary
	}
	if s.client.related {
		var rel []object
		for _, r := range f.Related {
			if r.File == "" || r.File == d.name {
				rel = append(rel, object{"location": object{"uri": d.uri, "range": s.enc.rangeOf(d.src, firstLine(d.src, r.Span))}, "message": r.Message})
			} else if src, uri := s.sourceOf(at, a, r.File); src != nil {
				rel = append(rel, object{"location": object{"uri": uri, "range": s.enc.rangeOf(src, r.Span)}, "message": r.Message})
			}
		}
		if rel != nil {
			o["relatedInformation"] = rel
		}
	}
	return o
}

// diagnosticText is the sentence of a finding with its limit, source and mend.
func diagnosticText(f *check.Finding) string {
	text := f.Message
	if f.Limit != "" {
		text += "\nLimit: " + f.Limit
	}
	if f.Source != report.LanguageSource {
		text += "\nSource: " + report.SourceText(f.Source)
	}
	if f.Mend != "" {
		text += "\nMend: " + f.Mend
	}
	return text
}

// sourceOf gives the text of another file that an analysis read, with the URI
// by which the client knows it.
func (s *Server) sourceOf(at *snapshot, a *analysis, name string) (*lang.Source, string) {
	for _, c := range a.rep.Plant.Catalogues {
		if c.Source.Name == name {
			if d := at.byPath[name]; d != nil {
				return c.Source, d.uri
			}
			return c.Source, uriOf(name)
		}
	}
	return nil, ""
}

var _ = on("textDocument/diagnostic", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	p, err := decode[docPosition](params)
	if err != nil {
		return nil, err
	}
	d := at.find(p.TextDocument.URI)
	if d == nil {
		return object{"kind": "full", "items": []object{}}, nil
	}
	s.mu.Lock()
	first := !s.pulled[d.uri]
	s.pulled[d.uri] = true
	s.mu.Unlock()
	if first {
		s.wake() // what was pushed is withdrawn
	}
	return object{"kind": "full", "items": s.diagnostics(at, d)}, nil
})

var _ = protocol.Range{}
