package lang

import "strconv"

// split cuts the text into statements and braces, line by line. A line that the
// cache knows is not looked at again; any other is cut into tokens.
func (p *parser) split() {
	src := p.file.Source
	for n := src.Lines(); p.line < n; {
		from, end := p.lineSpan(p.line)
		start := from
		for start < end && isBlank(p.text[start]) {
			start++
		}
		if start == end {
			p.line++
			continue
		}
		stop := end
		for isBlank(p.text[stop-1]) {
			stop--
		}
		switch {
		case p.text[start] == '#':
			p.comment(start, end, true)
			p.line++
			continue
		case p.text[start] == '}' && stop == start+1:
			p.events = append(p.events, event{brace: Span{start, stop}, indent: start - src.LineStart(p.line)})
			p.line++
			continue
		}
		l, hash := p.cache.get(p.text[start:stop])
		if l != nil && len(p.events) < MaxStatements {
			p.known(l, start, end)
			p.line++
			continue
		}
		if !p.unknown(hash, start, stop) {
			return
		}
	}
}

// lineSpan gives a line without its end.
func (p *parser) lineSpan(n int) (from, end int) {
	src := p.file.Source
	from, end = src.LineStart(n), src.LineStart(n+1)
	if n+1 < src.Lines() {
		end--
	}
	if n == 0 {
		from = bomLen(p.text)
	}
	return from, end
}

// comment keeps a comment that runs to the end of its line.
func (p *parser) comment(start, end int, alone bool) {
	if p.text[end-1] == '\r' {
		end--
	}
	p.file.Comments = append(p.file.Comments, Comment{Span{start, end}, alone})
}

// known takes a line from the cache.
func (p *parser) known(l *line, start, end int) {
	ev := event{st: p.newStatement(&l.head, start), indent: start - p.file.Source.LineStart(p.line)}
	if l.brace >= 0 {
		ev.opens, ev.brace = true, Span{start + l.brace, start + l.brace + 1}
	}
	if l.comment >= 0 {
		p.comment(start+l.comment, end, false)
	}
	p.events = append(p.events, ev)
}

// unknown cuts a line, and those that turn out to belong to it, into tokens and
// statements. Where the line is one statement alone it may go to the cache. It
// reports whether reading goes on.
func (p *parser) unknown(hash uint64, start, stop int) bool {
	number, events, comments := p.line, len(p.events), len(p.file.Comments)
	l := p.cache.keep(p.text[start:stop], hash)
	p.keep, p.keepAt = l, start
	more := p.cut()
	p.keep = nil
	if l == nil || p.line != number+1 || len(p.events) != events+1 {
		return more
	}
	ev := &p.events[events]
	if ev.st == nil || ev.st.Head != &l.head || ev.indent < 0 {
		return more
	}
	if ev.opens {
		l.brace = ev.brace.Start - start
	}
	if len(p.file.Comments) > comments {
		l.comment = p.file.Comments[comments].Span.Start - start
	}
	p.cache.put(l)
	return more
}

// token gives a token of the lines at hand, and takes in the next line when
// there is no such token yet.
func (p *parser) token(i int) Token {
	for i >= len(p.tokens) {
		if p.line >= p.file.Source.Lines() {
			p.tokens = append(p.tokens, Token{EndOfFile, Span{len(p.text), len(p.text)}})
			continue
		}
		from, end := p.lineSpan(p.line)
		p.tokens = lexLine(p.text, from, end, p.tokens)
		if p.line++; p.line < p.file.Source.Lines() {
			p.tokens = append(p.tokens, Token{NewlineToken, Span{end, end + 1}})
		}
	}
	return p.tokens[i]
}

// cut cuts the next line into statements and braces, with the lines that an
// open bracket joins to it or that had to be looked at to decide that. It
// reports whether there may be more.
func (p *parser) cut() bool {
	p.tokens = p.tokens[:0]
	lineStart, first := p.file.Source.LineStart(p.line), true // nothing but blanks so far
	for i := 0; ; {
		if i > 0 && i == len(p.tokens) && p.tokens[i-1].Kind == NewlineToken {
			return true
		}
		t := p.token(i)
		indent := -1
		if first {
			indent = t.Span.Start - lineStart
		}
		switch t.Kind {
		case EndOfFile:
			return false
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
			if len(p.events) >= MaxStatements {
				p.problem(Problem{
					Span: t.Span, Rule: "too-many-statements", Severity: Error,
					Message: "The file holds more than " + strconv.Itoa(MaxStatements) + " statements; the rest was not read.",
					Mend:    "cut the file",
				})
				return false
			}
			end := p.statementEnd(i)
			ev := event{st: p.statement(p.tokens[i:end]), indent: indent}
			i = end
			if p.token(i).Kind == OpenToken {
				ev.opens, ev.brace = true, p.tokens[i].Span
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
	if n := len(p.events); n > 0 && p.events[n-1].st != nil && !p.events[n-1].opens && p.nextLine(p.events[n-1].st, t) && mayOpen(p.events[n-1].st.Head.Keyword) {
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
	depth, seen := 0, i
	for j := i; ; j++ {
		var kind TokenKind
		if j < len(p.tokens) {
			kind = p.tokens[j].Kind
		} else {
			kind = p.token(j).Kind
		}
		switch kind {
		case LeftToken:
			depth++
		case RightToken:
			depth--
		case EndOfFile, OpenToken, CloseToken:
			return p.beforeComment(j)
		case CommentToken:
			if depth <= 0 || depth > MaxBrackets || p.tokens[i].Kind != WordToken {
				return j
			}
		case NewlineToken:
			if depth <= 0 || depth > MaxBrackets || p.tokens[i].Kind != WordToken {
				return p.beforeComment(j)
			}
			next := j + 1
			for k := p.token(next).Kind; k == NewlineToken || k == CommentToken; k = p.token(next).Kind {
				next++
			}
			if p.startsStatement(j, next) {
				return p.beforeComment(j)
			}
			for ; seen < next; seen++ {
				if p.tokens[seen].Kind == CommentToken {
					p.file.Comments = append(p.file.Comments, Comment{Span: p.tokens[seen].Span})
				}
			}
			j = next - 1
		}
	}
}

// beforeComment steps back over a comment that stands behind a bracket that
// nothing closes: it is not in the statement.
func (p *parser) beforeComment(end int) int {
	if p.tokens[end-1].Kind == CommentToken {
		return end - 1
	}
	return end
}

// startsStatement tells whether the token behind a line end inside brackets
// begins a statement of its own.
func (p *parser) startsStatement(newline, next int) bool {
	if k := p.tokens[next].Kind; k != WordToken {
		return k == CloseToken || k == EndOfFile
	}
	if p.tokens[newline-1].Kind == CommentToken {
		newline--
	}
	switch p.tokens[newline-1].Kind { // an operator waits for its right side
	case PlusToken, MinusToken, TimesToken, OverToken, LeftToken, CommaToken, AtMostToken, AtLeastToken, LessToken, MoreToken:
		switch p.token(next + 1).Kind { // in a sum, no value follows a word
		case WordToken, NameToken, NumberToken, PairToken, SizeToken, DateToken, TextToken, UnclosedToken, OpenToken:
			return true
		}
		return false
	}
	return true
}

// statement parses the tokens of one statement.
func (p *parser) statement(toks []Token) *Statement {
	last := len(toks) - 1
	for last > 0 && (toks[last].Kind == NewlineToken || toks[last].Kind == CommentToken) {
		last--
	}
	toks = toks[:last+1]
	base := toks[0].Span.Start
	text := p.text[base:toks[last].Span.End]
	var h *Head
	if l := p.keep; l != nil && base == p.keepAt && len(text) <= len(l.text) {
		h, text = &l.head, l.text[:len(text)]
	} else {
		h = p.memory.heads.One()
		*h = Head{}
	}
	parseHead(p.memory, h, text, toks, base)
	return p.newStatement(h, base)
}
