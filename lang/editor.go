package lang

// Helpers for editors: what stands at an offset, and what may stand there.

// StatementAt finds the innermost statement whose text or block holds an
// offset; nil if there is none.
func StatementAt(f *File, offset int) *Statement {
	var found *Statement
	list := f.Statements
	for {
		var next *Statement
		for _, st := range list {
			if s := st.Span(); s.Start <= offset && offset <= s.End {
				next = st
			}
		}
		if next == nil {
			return found
		}
		found, list = next, next.Block
	}
}

// Walk calls do for every statement, outer ones first, until it gives false.
func Walk(f *File, do func(st *Statement) bool) {
	var walk func(list []*Statement) bool
	walk = func(list []*Statement) bool {
		for _, st := range list {
			if !do(st) || !walk(st.Block) {
				return false
			}
		}
		return true
	}
	walk(f.Statements)
}

// TokenAt gives the token that holds an offset or ends at it; ok is false in
// blanks.
func TokenAt(tokens []Token, offset int) (tok Token, ok bool) {
	for _, t := range tokens {
		if t.Span.Start > offset {
			break
		}
		if t.Kind != NewlineToken && t.Kind != EndOfFile && offset <= t.Span.End {
			tok, ok = t, true
		}
	}
	return tok, ok
}

// BlockAt is the name of the block in which a statement at an offset would
// stand: the block of the innermost statement whose braces hold it, else the
// kind of file.
func BlockAt(f *File, offset int) string {
	block := "plant"
	for _, st := range f.Statements {
		switch k := st.Head.Keyword; k {
		case "plant", "catalogue", "record", "project":
			block = k
		}
	}
	list := f.Statements
	for {
		var next *Statement
		for _, st := range list {
			if !st.Braces.Empty() && st.Braces.Start < offset && (offset < st.Braces.End || st.Braces.End == st.Braces.Start) {
				next = st
			}
		}
		if next == nil {
			return block
		}
		if next.Bound != nil {
			block = next.Bound.Row.BlockName()
		} else {
			block = ""
		}
		list = next.Block
	}
}

// Expectation is what may stand at an offset.
type Expectation struct {
	Row      *Row   // the statement's row, nil at the start of a statement
	Keywords []*Row // at the start of a statement
	Slots    []*Slot
	Value    *Slot // the slot whose value must follow, behind its label
	Unit     bool  // a unit must follow a number
	Number   float64
	Name     bool // the statement's first name must follow
	Prefix   Span // the part of a word that is typed already
}

// Expect tells what may stand at an offset of a bound file.
func Expect(f *File, s *Schema, offset int) Expectation {
	text := f.Source.Text
	line := f.Source.LineOf(offset)
	start := f.Source.LineStart(line)
	var toks []Token
	for _, t := range Tokens(text[start:offset]) {
		switch t.Kind {
		case NewlineToken, EndOfFile:
		case CommentToken, UnclosedToken:
			return Expectation{Prefix: Span{offset, offset}}
		case OpenToken, CloseToken:
			toks = toks[:0]
		default:
			toks = append(toks, Token{t.Kind, t.Span.Add(start)})
		}
	}
	x := Expectation{Prefix: Span{offset, offset}}
	if n := len(toks); n > 0 && toks[n-1].Span.End == offset {
		switch toks[n-1].Kind {
		case WordToken, NameToken, UnitToken, SizeToken, NumberToken, PairToken:
			if toks[n-1].Kind != NumberToken && toks[n-1].Kind != PairToken {
				x.Prefix = toks[n-1].Span
				toks = toks[:n-1]
			}
		}
	}
	block := BlockAt(f, start)
	if len(toks) == 0 {
		x.Keywords = s.RowsOf(block)
		return x
	}
	if toks[0].Kind != WordToken {
		return x
	}
	row := s.Row(block, toks[0].Text(text))
	if row == nil {
		return x
	}
	x.Row = row
	last := toks[len(toks)-1]
	switch last.Kind {
	case NumberToken, PairToken:
		x.Unit = true
	}
	known := toks // without a number that still waits for its unit
	if x.Unit {
		known = toks[:len(toks)-1]
	}
	head := text[toks[0].Span.Start:known[len(known)-1].Span.End]
	probe := Parse(NewSource("", head), nil)
	var b *Bound
	if len(probe.Statements) > 0 {
		b = bindHead(probe.Statements[0].Head, row)
	}
	if len(toks) == 1 && row.Name != NoName && row.Name != MayDefine {
		x.Name = true
	}
	for _, sl := range row.Slots {
		if behind := known[len(known)-1]; behind.Kind == WordToken && sl.Label == behind.Text(text) && len(known) > 1 {
			x.Value = sl
		}
		if b == nil || b.Field(sl.Name) == nil {
			x.Slots = append(x.Slots, sl)
		}
	}
	if x.Value != nil {
		x.Slots = nil
	}
	return x
}
