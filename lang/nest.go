package lang

import "strconv"

// nest puts the statements into blocks: by the braces, and where those do not
// match, with the indentation as referee, so that one lost brace costs no more
// than itself.
func (p *parser) nest() {
	if p.balanced() {
		p.byBraces()
	} else {
		p.byIndent()
	}
}

func (p *parser) balanced() bool {
	depth := 0
	for i := range p.events {
		ev := &p.events[i]
		switch {
		case ev.st == nil:
			if depth--; depth < 0 {
				return false
			}
		case ev.opens:
			depth++
		}
	}
	return depth == 0
}

func (p *parser) add(parent, st *Statement) {
	st.Parent = parent
	if parent == nil {
		p.file.Statements = append(p.file.Statements, st)
		return
	}
	parent.Block = append(parent.Block, st)
}

func (p *parser) tooDeep(at Span) {
	p.problem(Problem{
		Span: at, Rule: "block-too-deep", Severity: Error,
		Message: "Blocks stand more than " + strconv.Itoa(MaxDepth) + " deep in each other; this one was taken as if it stood outside.",
		Mend:    "take blocks out of each other",
	})
}

func (p *parser) byBraces() {
	var stack []*Statement
	var top *Statement
	said := false
	for i := range p.events {
		ev := &p.events[i]
		if ev.st == nil {
			top.Braces.End = ev.brace.End
			stack = stack[:len(stack)-1]
			top = nil
			if n := len(stack); n > 0 {
				top = stack[n-1]
			}
			continue
		}
		in := top
		if len(stack) > MaxDepth {
			in = stack[MaxDepth-1]
			if !said {
				said = true
				p.tooDeep(ev.st.HeadSpan())
			}
		}
		p.add(in, ev.st)
		if ev.opens {
			ev.st.Braces = ev.brace
			stack = append(stack, ev.st)
			top = ev.st
		}
	}
}

// frame is an open block while nesting by indentation.
type frame struct {
	st     *Statement
	indent int
	braced bool
}

func (p *parser) byIndent() {
	var stack []frame
	indent := 0
	for i := range p.events {
		ev := &p.events[i]
		if ev.indent >= 0 {
			indent = ev.indent
		}
		if ev.st == nil {
			stack = p.closeAt(stack, ev, indent)
			continue
		}
		if ev.indent >= 0 {
			stack = p.leave(stack, indent)
		}
		var parent *Statement
		if n := len(stack); n > 0 {
			parent = stack[min(n, MaxDepth)-1].st
		}
		p.add(parent, ev.st)
		switch {
		case ev.opens:
			ev.st.Braces = ev.brace
			stack = append(stack, frame{ev.st, indent, true})
		case p.deeperFollows(i, indent):
			p.problem(Problem{
				Span: ev.st.HeadSpan(), Rule: "brace-missing", Severity: Error,
				Message: "A block follows this statement, but it opens no brace.", Mend: "write { at the end of the line",
				Fixes: []Fix{{Title: "Open the block with {", Edits: []Edit{{Span: Span{ev.st.HeadSpan().End, ev.st.HeadSpan().End}, NewText: " {"}}, Best: true}},
			})
			ev.st.Braces = Span{ev.st.HeadSpan().End, ev.st.HeadSpan().End}
			stack = append(stack, frame{ev.st, indent, false})
		}
	}
	p.leave(stack, -1)
}

// deeperFollows tells whether the next line stands deeper than this one.
func (p *parser) deeperFollows(i, indent int) bool {
	if i+1 >= len(p.events) {
		return false
	}
	next := &p.events[i+1]
	return next.st != nil && next.indent > indent && p.events[i].indent >= 0
}

// leave closes the blocks that a line at this indentation cannot be in.
func (p *parser) leave(stack []frame, indent int) []frame {
	for n := len(stack); n > 0 && stack[n-1].indent >= indent; n = len(stack) {
		fr := stack[n-1]
		stack = stack[:n-1]
		fr.st.Braces.End = max(fr.st.Braces.End, p.contentEnd(fr.st))
		if fr.braced {
			p.problem(Problem{
				Span: fr.st.HeadSpan(), Rule: "brace-missing", Severity: Error,
				Message: "The block of this statement is not closed.", Mend: "write } on a line of its own behind the block",
			})
		}
	}
	return stack
}

func (p *parser) contentEnd(st *Statement) int {
	if n := len(st.Block); n > 0 {
		return st.Block[n-1].Span().End
	}
	return st.Braces.End
}

// closeAt lets a closing brace close the block that began at its indentation.
func (p *parser) closeAt(stack []frame, ev *event, indent int) []frame {
	if ev.indent < 0 { // behind something on the same line: it closes the innermost
		if n := len(stack); n > 0 {
			stack[n-1].st.Braces.End = ev.brace.End
			return stack[:n-1]
		}
	}
	for k := len(stack) - 1; k >= 0; k-- {
		if stack[k].indent > indent {
			continue
		}
		if stack[k].indent < indent {
			break
		}
		p.leave(stack[k+1:], -1)
		stack[k].st.Braces.End = ev.brace.End
		return stack[:k]
	}
	p.problem(Problem{
		Span: ev.brace, Rule: "brace-astray", Severity: Error,
		Message: "This brace closes no block.", Mend: "take it out, or open the block that it should close",
	})
	return stack
}
