package lsp

import (
	"context"
	"encoding/json"
	"strconv"
	"sync"

	"example.org/tundish/lang"
)

// tokenTypes is the legend of the semantic tokens.
var tokenTypes = []string{"keyword", "variable", "property", "enumMember", "number", "string", "comment", "operator", "type", "modifier"}

const (
	tkKeyword = iota
	tkVariable
	tkProperty
	tkChoice
	tkNumber
	tkString
	tkComment
	tkOperator
	tkType
	tkUnit
)

// tokenMemory keeps the last answer by document, for deltas.
type tokenMemory struct {
	mu   sync.Mutex
	next int
	last map[string]tokenAnswer
}

type tokenAnswer struct {
	id   string
	data []uint32
}

func (m *tokenMemory) keep(uri string, data []uint32) string {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.last == nil {
		m.last = map[string]tokenAnswer{}
	}
	m.next++
	id := strconv.Itoa(m.next)
	m.last[uri] = tokenAnswer{id, data}
	return id
}

func (m *tokenMemory) get(uri, id string) ([]uint32, bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	a, ok := m.last[uri]
	return a.data, ok && a.id == id
}

func (m *tokenMemory) forget(uri string) {
	m.mu.Lock()
	defer m.mu.Unlock()
	delete(m.last, uri)
}

// semanticTokens encodes the tokens of the lines from to to.
func (s *Server) semanticTokens(a *analysis, from, to int) []uint32 {
	src := a.src
	keywords := map[int]bool{}
	labels := map[int]bool{}
	types := map[int]bool{}
	lang.Walk(a.rep.Plant.File, func(st *lang.Statement) bool {
		keywords[st.Base] = true
		if st.Bound != nil {
			for i := range st.Bound.Fields {
				f := &st.Bound.Fields[i]
				if !f.Label.Empty() {
					labels[st.Abs(f.Label).Start] = true
				}
				for j := range f.Values {
					if e := f.Values[j].Expr; e != nil && e.Kind == lang.NameExpr && a.rep.Plant.Types[e.Text] != nil {
						types[st.Abs(e.Span).Start] = true
					}
				}
			}
		}
		return true
	})
	out := []uint32{}
	prevLine, prevChar := uint32(0), uint32(0)
	for _, t := range lang.Tokens(src.Text) {
		kind := -1
		switch t.Kind {
		case lang.WordToken:
			switch {
			case keywords[t.Span.Start]:
				kind = tkKeyword
			case labels[t.Span.Start]:
				kind = tkProperty
			default:
				kind = tkChoice
			}
		case lang.NameToken:
			kind = tkVariable
			if types[t.Span.Start] {
				kind = tkType
			}
		case lang.NumberToken, lang.PairToken, lang.SizeToken, lang.DateToken:
			kind = tkNumber
		case lang.UnitToken:
			kind = tkUnit
		case lang.TextToken, lang.UnclosedToken:
			kind = tkString
		case lang.CommentToken:
			kind = tkComment
		case lang.PlusToken, lang.MinusToken, lang.TimesToken, lang.OverToken, lang.AtMostToken, lang.AtLeastToken, lang.LessToken, lang.MoreToken, lang.DotsToken:
			kind = tkOperator
		}
		if kind < 0 {
			continue
		}
		p := s.enc.position(src, t.Span.Start)
		if int(p.Line) < from || int(p.Line) > to {
			continue
		}
		length := s.enc.units(t.Text(src.Text))
		if length == 0 {
			continue
		}
		char := p.Character
		if p.Line == prevLine {
			char -= prevChar
		}
		out = append(out, p.Line-prevLine, char, uint32(length), uint32(kind), 0)
		prevLine, prevChar = p.Line, p.Character
	}
	return out
}

var _ = on("textDocument/semanticTokens/full", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, _ docPosition, _ json.RawMessage) (any, error) {
	data := s.semanticTokens(a, 0, d.src.Lines())
	return tokenAnswerJSON(s.tokens.keep(d.uri, data), data), nil
}))

// tokenAnswerJSON is the protocol's answer; without an id for a stretch.
func tokenAnswerJSON(id string, data []uint32) json.RawMessage {
	b := make([]byte, 0, 4*len(data)+64)
	b = append(b, '{')
	if id != "" {
		b = append(appendString(append(b, `"resultId":`...), id), ',')
	}
	b = append(appendNumbers(append(b, `"data":`...), data), '}')
	return b
}

var _ = on("textDocument/semanticTokens/range", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	w := s.enc.span(d.src, p.Range)
	return tokenAnswerJSON("", s.semanticTokens(a, d.src.LineOf(w.Start), d.src.LineOf(w.End))), nil
}))

var _ = on("textDocument/semanticTokens/full/delta", func(s *Server, _ context.Context, params json.RawMessage, at *snapshot) (any, error) {
	p, err := decode[struct {
		docPosition
		PreviousResultID string `json:"previousResultId"`
	}](params)
	if err != nil {
		return nil, err
	}
	d := at.find(p.TextDocument.URI)
	if d == nil {
		return nil, nil
	}
	data := s.semanticTokens(d.analyze(at), 0, d.src.Lines())
	old, ok := s.tokens.get(d.uri, p.PreviousResultID)
	id := s.tokens.keep(d.uri, data)
	if !ok {
		return tokenAnswerJSON(id, data), nil
	}
	start := 0
	for start < len(old) && start < len(data) && old[start] == data[start] {
		start++
	}
	start -= start % 5
	end := 0
	for end < len(old)-start && end < len(data)-start && old[len(old)-1-end] == data[len(data)-1-end] {
		end++
	}
	end -= end % 5
	edits := []object{}
	if start < len(old)-end || start < len(data)-end {
		edits = append(edits, object{"start": start, "deleteCount": len(old) - end - start, "data": json.RawMessage(appendNumbers(nil, data[start:len(data)-end]))})
	}
	return object{"resultId": id, "edits": edits}, nil
})
