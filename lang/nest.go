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

// balanced tells whether the braces match, and counts the statements of each
// block.
func (p *parser) balanced() bool {
	open, outside := p.blocks[:0], 0
	for i := range p.events {
		ev := &p.events[i]
		n := len(open)
		if ev.st == nil {
			if n == 0 {
				return false
			}
			open = open[:n-1]
			continue
		}
		if n == 0 {
			outside++
		} else {
			p.events[open[min(n, MaxDepth)-1]].inside++
		}
		if ev.opens {
			open = append(open, int32(i))
		}
	}
	p.blocks = open
	p.file.Statements = p.block(outside)
	return len(open) == 0
}

// block gives room for so many statements.
func (p *parser) block(n int) []*Statement {
	if n == 0 {
		return nil
	}
	list := p.memory.blocks.Take(n)[:0]
	return list
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
			ev.st.Block = p.block(ev.inside)
			stack = append(stack, ev.st)
			top = ev.st
		}
	}
}

// frame is an open block while nesting by indentation.
type frame struct {
	st     *Statement
	indent int
	inner  int // indentation of the first statement in it, -1 before there is one
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
			if n := len(stack); n > 0 && p.goesOn(i, stack[n-1].indent) {
				p.astray(ev.brace)
				continue
			}
			stack = p.closeAt(stack, ev, indent)
			continue
		}
		opens := ev.opens
		if opens && (p.openInLine(i) || ev.st.Head.Text == "" && p.within(i, stack)) {
			if ev.st.Head.Text == "" { // nothing but the brace, already reported
				continue
			}
			opens = false
			p.problem(Problem{
				Span: ev.brace, Rule: "brace-astray", Severity: Error,
				Message: "This brace opens a block in the middle of its line, and nothing closes it.", Mend: "take it out, or write what stands behind it on lines of its own",
			})
		}
		if ev.indent >= 0 {
			stack = p.leave(stack, indent)
			stack = p.headless(stack, ev)
		}
		var parent *Statement
		if n := len(stack); n > 0 {
			parent = stack[min(n, MaxDepth)-1].st
			if stack[n-1].inner < 0 && ev.indent >= 0 {
				stack[n-1].inner = indent
			}
		}
		p.add(parent, ev.st)
		switch {
		case opens:
			ev.st.Braces = ev.brace
			stack = append(stack, frame{ev.st, indent, -1, true})
		case p.deeperFollows(i, indent) && mayOpenIn(parent, ev.st.Head.Keyword):
			p.problem(Problem{
				Span: ev.st.HeadSpan(), Rule: "brace-missing", Severity: Error,
				Message: "A block follows this statement, but it opens no brace.", Mend: "write { at the end of the line",
				Fixes: []Fix{{Title: "Open the block with {", Edits: []Edit{{Span: Span{ev.st.HeadSpan().End, ev.st.HeadSpan().End}, NewText: " {"}}, Best: true}},
			})
			ev.st.Braces = Span{ev.st.HeadSpan().End, ev.st.HeadSpan().End}
			stack = append(stack, frame{ev.st, indent, -1, false})
		}
	}
	p.leave(stack, -1)
}

// headless puts a statement without words before lines that stand deeper than
// their block: the head of their own block is gone.
func (p *parser) headless(stack []frame, ev *event) []frame {
	outer, inner := -1, 0
	var parent *Statement
	if n := len(stack); n > 0 {
		parent, outer, inner = stack[n-1].st, stack[n-1].indent, stack[n-1].inner
	}
	if inner < 0 || ev.indent <= inner || ev.st.Head.Text == "" || len(stack) >= MaxDepth {
		return stack
	}
	p.problem(Problem{
		Span: ev.st.HeadSpan(), Rule: "brace-missing", Severity: Error,
		Message: "From here on lines stand in a block that no statement opens.", Mend: "write the statement that the block belongs to, or set the lines back",
	})
	st := &Statement{Head: &Head{Problem: &Problem{}}, Base: ev.st.Base, Braces: Span{ev.st.Base, ev.st.Base}}
	p.add(parent, st)
	return append(stack, frame{st, max(outer+1, inner), ev.indent, false})
}

// within tells whether a brace without a statement stands among the lines of an
// open block, by the next line.
func (p *parser) within(i int, stack []frame) bool {
	if len(stack) == 0 || i+1 >= len(p.events) || p.events[i+1].st == nil {
		return false
	}
	fr, next := stack[len(stack)-1], p.events[i+1].indent
	return next == fr.inner || fr.inner < 0 && next > fr.indent
}

// maxLookLine bounds how far the nesting looks ahead on a line.
const maxLookLine = 64

// openInLine tells whether a brace opens in the middle of a line that does not
// close it again: something else of that line opens the block.
func (p *parser) openInLine(i int) bool {
	depth := 1
	k := i + 1
	for ; k < min(len(p.events), i+maxLookLine) && p.events[k].indent < 0; k++ {
		switch ev := &p.events[k]; {
		case ev.st == nil:
			if depth--; depth == 0 {
				return false
			}
		case ev.opens:
			depth++
		}
	}
	return k > i+1
}

// goesOn tells whether a block that began at an indentation goes on behind a
// closing brace, by the next line: then the brace is not the one that closes it.
// A brace that has its line to itself is believed.
func (p *parser) goesOn(i, indent int) bool {
	k, last := i+1, min(len(p.events), i+maxLookLine)
	for k < last && p.events[k].indent < 0 {
		k++
	}
	alone := k == i+1 && p.events[i].indent >= 0
	return k < last && !alone && p.events[k].indent > indent
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
	p.astray(ev.brace)
	return stack
}

func (p *parser) astray(brace Span) {
	p.problem(Problem{
		Span: brace, Rule: "brace-astray", Severity: Error,
		Message: "This brace closes no block.", Mend: "take it out, or open the block that it should close",
	})
}
