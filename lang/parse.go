package lang

import (
	"sort"
	"strconv"
	"sync"
	"unicode/utf8"
)

// Parse reads a source. It never fails: what cannot be read is a Problem of the
// file, and the other statements stand. cache may be nil.
func Parse(src *Source, cache *Cache) *File {
	f := &File{Source: src}
	text := src.Text
	if len(text) > MaxFileSize {
		f.Problems = append(f.Problems, Problem{
			Span: Span{0, 0}, Rule: "file-too-large", Severity: Error,
			Message: "The file is larger than " + strconv.Itoa(MaxFileSize>>20) + " MiB; nothing of it was read.",
			Mend:    "cut it into a plant and catalogues",
		})
		return f
	}
	buf := tokenBuffers.Get().(*[]Token)
	tokens := lex(text, (*buf)[:0])
	p := parser{file: f, text: text, tokens: tokens, cache: cache}
	p.strayBytes()
	p.split()
	p.nest()
	*buf = tokens[:0]
	tokenBuffers.Put(buf)
	return f
}

var tokenBuffers = sync.Pool{New: func() any { b := make([]Token, 0, 1024); return &b }}

// event is one thing the splitter found, in order of text.
type event struct {
	st     *Statement // a statement; nil for a brace that closes
	opens  bool       // a brace follows the statement
	brace  Span       // of the brace that opens or closes
	indent int        // column of the first byte on its line, -1 when not first
}

type parser struct {
	file   *File
	text   string
	tokens []Token
	cache  *Cache
	events []event
}

func (p *parser) problem(pr Problem) { p.file.Problems = append(p.file.Problems, pr) }

// strayBytes reports text that is no text once, at its first place.
func (p *parser) strayBytes() {
	for i := 0; i < len(p.text); i++ {
		c := p.text[i]
		if c >= utf8.RuneSelf {
			r, n := utf8.DecodeRuneInString(p.text[i:])
			if r == utf8.RuneError && n == 1 {
				p.problem(Problem{
					Span: Span{i, i + 1}, Rule: "not-text", Severity: Error,
					Message: "From here on the file is not UTF-8 text.", Mend: "save it as UTF-8",
				})
				return
			}
			i += n - 1
			continue
		}
		if c == 0 {
			p.problem(Problem{
				Span: Span{i, i + 1}, Rule: "not-text", Severity: Error,
				Message: "The file holds a NUL byte, which is no text.", Mend: "save it as plain UTF-8 text",
			})
			return
		}
	}
}

// split cuts the tokens into statements and braces.
func (p *parser) split() {
	toks := p.tokens
	p.events = make([]event, 0, 64)
	lineStart, first := 0, true // where the line begins; nothing but blanks so far
	for i := 0; i < len(toks); {
		t := toks[i]
		indent := -1
		if first {
			indent = t.Span.Start - lineStart
		}
		switch t.Kind {
		case EndOfFile:
			return
		case NewlineToken:
			lineStart, first = t.Span.End, true
			i++
			continue
		case CommentToken:
			p.file.Comments = append(p.file.Comments, Comment{t.Span, first})
			i++
			continue
		case OpenToken:
			p.openAlone(t, indent)
			i++
		case CloseToken:
			p.events = append(p.events, event{brace: t.Span, indent: indent})
			i++
		default:
			end := p.statementEnd(i)
			if len(p.events) >= MaxStatements {
				p.problem(Problem{
					Span: t.Span, Rule: "too-many-statements", Severity: Error,
					Message: "The file holds more than " + strconv.Itoa(MaxStatements) + " statements; the rest was not read.",
					Mend:    "cut the file",
				})
				return
			}
			ev := event{st: p.statement(toks[i:end]), indent: indent}
			i = end
			if toks[i].Kind == OpenToken {
				ev.opens, ev.brace = true, toks[i].Span
				i++
			}
			p.events = append(p.events, ev)
		}
		first = false
	}
}

// openAlone takes a brace that no statement stands before: it belongs to the
// statement on the line above, or to one whose first line was lost.
func (p *parser) openAlone(t Token, indent int) {
	if n := len(p.events); n > 0 && p.events[n-1].st != nil && !p.events[n-1].opens && p.nextLine(p.events[n-1].st, t) {
		p.events[n-1].opens, p.events[n-1].brace = true, t.Span
		return
	}
	p.problem(Problem{
		Span: t.Span, Rule: "brace-astray", Severity: Error,
		Message: "This brace opens a block, but no statement stands before it.", Mend: "write the statement that the block belongs to",
	})
	h := &Head{Problem: &Problem{}, Span: Span{0, 0}}
	p.events = append(p.events, event{st: &Statement{Head: h, Base: t.Span.Start}, opens: true, brace: t.Span, indent: indent})
}

// nextLine tells whether a brace stands on the line right below a statement.
func (p *parser) nextLine(st *Statement, brace Token) bool {
	src := p.file.Source
	return src.LineOf(brace.Span.Start)-src.LineOf(max(st.HeadSpan().End-1, 0)) <= 1
}

// statementEnd finds the token behind a statement: a line end outside brackets,
// a brace, or the end. Inside an open bracket a new line goes on, unless it
// looks like a statement of its own.
func (p *parser) statementEnd(i int) int {
	depth := 0
	for j := i; ; j++ {
		switch p.tokens[j].Kind {
		case LeftToken:
			depth++
		case RightToken:
			depth--
		case EndOfFile, OpenToken, CloseToken, CommentToken:
			if p.tokens[j].Kind == CommentToken && depth > 0 && depth <= MaxBrackets {
				p.file.Comments = append(p.file.Comments, Comment{Span: p.tokens[j].Span})
				continue
			}
			return j
		case NewlineToken:
			if depth <= 0 || depth > MaxBrackets || p.startsStatement(j) {
				return j
			}
		}
	}
}

func (p *parser) startsStatement(newline int) bool {
	k := newline + 1
	for p.tokens[k].Kind == NewlineToken || p.tokens[k].Kind == CommentToken {
		k++
	}
	if p.tokens[k].Kind != WordToken {
		return p.tokens[k].Kind == CloseToken || p.tokens[k].Kind == EndOfFile
	}
	for newline > 0 && p.tokens[newline-1].Kind == CommentToken {
		newline--
	}
	switch p.tokens[newline-1].Kind { // an operator waits for its right side
	case PlusToken, MinusToken, TimesToken, OverToken, LeftToken, CommaToken, AtMostToken, AtLeastToken, LessToken, MoreToken:
		return false
	}
	return true
}

func (p *parser) statement(toks []Token) *Statement {
	last := len(toks) - 1
	for last > 0 && (toks[last].Kind == NewlineToken || toks[last].Kind == CommentToken) {
		last--
	}
	toks = toks[:last+1]
	base := toks[0].Span.Start
	text := p.text[base:toks[last].Span.End]
	h := p.cache.get(text)
	if h == nil {
		h = parseHead(p.text, toks, base, own(p.cache, text))
		if p.cache != nil && len(text) <= MaxLineLength {
			p.cache.put(h)
		}
	}
	st := &Statement{Head: h, Base: base}
	if h.Problem != nil {
		pr := *h.Problem
		pr.Span = pr.Span.Add(base)
		p.problem(pr)
	}
	return st
}

func sortProblems(list []Problem) {
	sort.SliceStable(list, func(i, j int) bool { return list[i].Span.Start < list[j].Span.Start })
}
