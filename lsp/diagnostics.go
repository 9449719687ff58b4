package lsp

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"path"
	"strconv"

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
			if len(s.sent) > 0 {
				s.explainRules()
			}
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
		// A fault in one document must not keep the others waiting.
		s.front.shield(func() {
			var list []diagnostic
			if !pulls {
				list = s.diagnostics(at, d)
			}
			s.publishOne(uri, d.version, list)
		})
	}
	for uri := range s.sent {
		if at.docs[uri] == nil {
			s.publishOne(uri, 0, nil)
			delete(s.sent, uri)
		}
	}
}

func (s *Server) publishOne(uri string, version int32, list []diagnostic) {
	body := appendDiagnostics(make([]byte, 0, 512*len(list)+2), list)
	if was, ok := s.sent[uri]; ok && was.version == version && bytes.Equal(was.body, body) {
		return
	}
	s.sent[uri] = sentDiagnostics{version, body}
	p := make([]byte, 0, len(body)+len(uri)+64)
	p = appendString(append(p, `{"uri":`...), uri)
	if s.client.diagnosticVersion && version != 0 {
		p = strconv.AppendInt(append(p, `,"version":`...), int64(version), 10)
	}
	p = append(append(append(p, `,"diagnostics":`...), body...), '}')
	s.front.post(outgoing{Method: "textDocument/publishDiagnostics", Params: p})
}

// diagnostics gives the findings of a document; what stands in a catalogue is
// shown in the catalogue when that is open, and else at the use statement.
func (s *Server) diagnostics(at *snapshot, d *document) []diagnostic {
	a := d.analyze(at)
	list := make([]diagnostic, 0, len(a.rep.Findings)+len(a.rep.Unknowns))
	for i := range a.rep.Findings {
		f := &a.rep.Findings[i]
		if a.own(f.File) {
			list = append(list, s.diagnostic(at, d, a, f))
		} else if !shownElsewhere(at, f) {
			list = append(list, s.fromElsewhere(at, d, a, s.diagnostic(at, d, a, f), f.File, f.Span))
		}
	}
	for i := range a.rep.Unknowns {
		u := &a.rep.Unknowns[i]
		o := diagnostic{
			at: s.enc.rangeOf(d.src, firstLine(d.src, u.Span)), severity: 4, rule: u.Rule, link: s.rules.link(u.Rule),
			text: "Not evaluated, which is not a pass: needs " + u.Needs + ".",
		}
		if !a.own(u.File) {
			o = s.fromElsewhere(at, d, a, o, u.File, u.Span)
		}
		list = append(list, o)
	}
	return list
}

// own tells the document's file from those that it reads.
func (a *analysis) own(f *lang.File) bool { return f == nil || f == a.rep.Plant.File }

// shownElsewhere tells a finding that stands in an open document which shows it
// by itself.
func shownElsewhere(at *snapshot, f *check.Finding) bool {
	d := at.byPath[f.File.Source.Name]
	if d == nil {
		return false
	}
	a := d.analyze(at)
	for i := range a.rep.Findings {
		if o := &a.rep.Findings[i]; a.own(o.File) && o.Rule == f.Rule && o.Span == f.Span {
			return true
		}
	}
	return false
}

// fromElsewhere moves what was found in another file to the statement by which
// the document reads that file, and points to the place.
func (s *Server) fromElsewhere(at *snapshot, d *document, a *analysis, o diagnostic, f *lang.File, span lang.Span) diagnostic {
	var by *lang.Statement
	for _, st := range a.rep.Plant.File.Statements {
		name := usedPath(a.rep.Plant.File, st)
		if name == "" {
			continue
		}
		if by == nil || name == f.Source.Name { // of what a catalogue reads in turn, the first
			by = st
		}
		if name == f.Source.Name {
			break
		}
	}
	mark := lang.Span{}
	if by != nil {
		mark = by.HeadSpan()
	}
	o.at = s.enc.rangeOf(d.src, firstLine(d.src, mark))
	line, _ := f.Source.Position(span.Start)
	o.text = fmt.Sprintf("%s, line %d: %s", nameOf(f.Source.Name), line, o.text)
	if src, uri := s.sourceOf(at, a, f.Source.Name); src != nil && s.client.related {
		o.related = append([]relatedPlace{{uri, s.enc.rangeOf(src, firstLine(src, span)), "it stands here"}}, o.related...)
	}
	return o
}

// usedPath is the path of the file that a statement reads; empty for another
// statement.
func usedPath(f *lang.File, st *lang.Statement) string {
	if k := st.Head.Keyword; k != "use" && k != "of-plant" || st.Bound == nil {
		return ""
	}
	v := st.Bound.Field("file")
	if v == nil || len(v.Values) == 0 {
		return ""
	}
	return path.Join(path.Dir(f.Source.Name), v.Values[0].Word)
}

// diagnostic is one entry of the protocol's list.
type diagnostic struct {
	at       protocol.Range
	severity int
	rule     string
	link     string // to the explanation of the rule; empty: none
	text     string
	tag      int // of the protocol; 0: none
	related  []relatedPlace
}

type relatedPlace struct {
	uri  string
	at   protocol.Range
	text string
}

// tagUnnecessary is the protocol's tag of a text that does nothing. Its other
// tag, deprecated, has no use: no word or unit of the language is on its way out.
const tagUnnecessary = 1

func appendDiagnostics(b []byte, list []diagnostic) []byte {
	b = append(b, '[')
	for i := range list {
		if i > 0 {
			b = append(b, ',')
		}
		b = list[i].append(b)
	}
	return append(b, ']')
}

func (d *diagnostic) append(b []byte) []byte {
	b = appendRange(append(b, `{"range":`...), d.at)
	b = strconv.AppendInt(append(b, `,"severity":`...), int64(d.severity), 10)
	b = appendString(append(b, `,"code":`...), d.rule)
	if d.link != "" {
		b = append(appendString(append(b, `,"codeDescription":{"href":`...), d.link), '}')
	}
	b = appendString(append(b, `,"source":"tundish","message":`...), d.text)
	if d.tag != 0 {
		b = append(strconv.AppendInt(append(b, `,"tags":[`...), int64(d.tag), 10), ']')
	}
	for i, r := range d.related {
		if i == 0 {
			b = append(b, `,"relatedInformation":[`...)
		} else {
			b = append(b, ',')
		}
		b = appendString(append(b, `{"location":{"uri":`...), r.uri)
		b = appendRange(append(b, `,"range":`...), r.at)
		b = append(appendString(append(b, `},"message":`...), r.text), '}')
	}
	if len(d.related) > 0 {
		b = append(b, ']')
	}
	return append(b, '}')
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

func (s *Server) diagnostic(at *snapshot, d *document, a *analysis, f *check.Finding) diagnostic {
	o := diagnostic{
		at: s.enc.rangeOf(d.src, firstLine(d.src, f.Span)), severity: severities[f.Severity], rule: f.Rule, link: s.rules.link(f.Rule), text: diagnosticText(f),
	}
	switch f.Rule {
	case "deviation-unused", "deviation-expired", "deviation-from-unknown-rule":
		o.tag = tagUnnecessary // the statement does nothing
	}
	if s.client.related {
		for _, r := range f.Related {
			if r.File == "" && !a.own(f.File) {
				r.File = f.File.Source.Name
			}
			if r.File == "" || r.File == d.name {
				o.related = append(o.related, relatedPlace{d.uri, s.enc.rangeOf(d.src, firstLine(d.src, r.Span)), r.Message})
			} else if src, uri := s.sourceOf(at, a, r.File); src != nil {
				o.related = append(o.related, relatedPlace{uri, s.enc.rangeOf(src, r.Span), r.Message})
			}
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
	for _, c := range a.reads() {
		if c.Source.Name == name {
			if d := at.byPath[name]; d != nil {
				return c.Source, d.uri
			}
			return c.Source, uriOf(name)
		}
	}
	if a.uses[name] { // the project file
		if f, err := at.load(name); err == nil {
			if d := at.byPath[name]; d != nil {
				return f.Source, d.uri
			}
			return f.Source, uriOf(name)
		}
	}
	return nil, ""
}

var _ = on("textDocument/diagnostic", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	p, err := decode[struct {
		docPosition
		PreviousResultID string `json:"previousResultId"`
	}](params)
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
	items := appendDiagnostics(nil, s.diagnostics(at, d))
	sum := sha256.Sum256(items)
	id := hex.EncodeToString(sum[:12])
	if id == p.PreviousResultID {
		return object{"kind": "unchanged", "resultId": id}, nil
	}
	b := append([]byte(`{"kind":"full","resultId":"`+id+`","items":`), items...)
	return json.RawMessage(append(b, '}')), nil
})
