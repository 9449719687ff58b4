package lang

import (
	"strconv"
	"strings"

	"github.com/alecthomas/participle/v2/lexer"
)

// reader reads the items of one statement. Expressions and lists come from one
// block of memory each, sized by a first look over the tokens.
type reader struct {
	lex   *lexer.PeekingLexer
	depth int
	exprs []Expr
	lists []*Expr
}

// reserve counts what the statement can hold at most.
func (p *reader) reserve(h *Head) {
	start := p.lex.MakeCheckpoint()
	exprs, members, joined := 0, 0, 0
	for t := p.lex.Peek(); !t.EOF(); t = p.lex.Peek() {
		switch kindOf(t.Type) {
		case NumberToken, PairToken, SizeToken, DateToken, TextToken, WordToken, NameToken:
			exprs++
			members++
		case DotsToken: // two numbers or names make one expression
			exprs--
			members--
		case CommaToken:
			joined++
		case PlusToken, MinusToken, TimesToken, OverToken, AtMostToken, AtLeastToken, LessToken, MoreToken:
			exprs++
			members--
		case LeftToken:
			exprs++
		}
		p.lex.Next()
	}
	p.lex.LoadCheckpoint(start)
	if exprs <= 0 {
		return
	}
	p.exprs = make([]Expr, 0, exprs)
	p.lists = make([]*Expr, 0, max(members, 1))
	h.Items = make([]Item, 0, max(members-joined, 1))
}

// expr takes the next expression of the block; a new block when a broken
// statement holds more than was counted.
func (p *reader) expr(e Expr) *Expr {
	if len(p.exprs) == cap(p.exprs) {
		p.exprs = make([]Expr, 0, 8)
	}
	p.exprs = append(p.exprs, e)
	return &p.exprs[len(p.exprs)-1]
}

func (p *reader) peek() *lexer.Token { return p.lex.Peek() }
func (p *reader) next() *lexer.Token { return p.lex.Next() }

func (p *reader) kind() TokenKind {
	t := p.lex.Peek()
	if t.EOF() {
		return EndOfFile
	}
	return kindOf(t.Type)
}

func (p *reader) fault(message, mend string) *fault {
	return &fault{span(p.peek()), message, mend}
}

func (p *reader) item() (Item, *fault) {
	from := len(p.lists)
	for {
		e, err := p.compare()
		if err != nil {
			return Item{}, err
		}
		p.lists = append(p.lists, e)
		if p.kind() != CommaToken {
			break
		}
		p.next()
		if p.kind() == EndOfFile {
			return Item{}, p.fault("A list ends with a comma.", "name the next member or take the comma out")
		}
	}
	list := p.lists[from:len(p.lists):len(p.lists)]
	return Item{Exprs: list, Span: Span{list[0].Span.Start, list[len(list)-1].Span.End}}, nil
}

func (p *reader) compare() (*Expr, *fault) {
	l, err := p.sum()
	if err != nil {
		return nil, err
	}
	switch p.kind() {
	case AtMostToken, AtLeastToken, LessToken, MoreToken:
		op := p.next().Value
		r, err := p.sum()
		if err != nil {
			return nil, err
		}
		return p.expr(Expr{Kind: CompareExpr, Op: op, L: l, R: r, Span: l.Span.Join(r.Span)}), nil
	}
	return l, nil
}

func (p *reader) sum() (*Expr, *fault) {
	l, err := p.product()
	for err == nil {
		if k := p.kind(); k != PlusToken && k != MinusToken {
			break
		}
		op := p.next().Value
		var r *Expr
		if r, err = p.product(); err == nil {
			l = p.binary(op, l, r)
		}
	}
	return l, err
}

func (p *reader) product() (*Expr, *fault) {
	l, err := p.prime()
	for err == nil {
		if k := p.kind(); k != TimesToken && k != OverToken {
			break
		}
		op := p.next().Value
		var r *Expr
		if r, err = p.prime(); err == nil {
			l = p.binary(op, l, r)
		}
	}
	return l, err
}

func (p *reader) binary(op string, l, r *Expr) *Expr {
	return p.expr(Expr{Kind: BinaryExpr, Op: op, L: l, R: r, Span: l.Span.Join(r.Span)})
}

func (p *reader) prime() (*Expr, *fault) {
	t := p.peek()
	kind, text := BadExpr, t.Value
	switch p.kind() {
	case NumberToken, PairToken:
		return p.quantity()
	case SizeToken:
		kind = SizeExpr
	case DateToken:
		kind = DateExpr
	case TextToken:
		kind, text = TextExpr, t.Value[1:len(t.Value)-1]
	case WordToken:
		kind = WordExpr
	case NameToken:
		return p.name()
	case LeftToken:
		return p.bracket()
	case UnclosedToken:
		return nil, p.fault("This text has no closing quotation mark on its line.", `close it with "`)
	case EndOfFile:
		return nil, p.fault("The statement breaks off here; a value is missing.", "complete the statement")
	default:
		return nil, p.unexpected(t)
	}
	p.next()
	return p.expr(Expr{Kind: kind, Span: span(t), Text: text}), nil
}

func (p *reader) unexpected(t *lexer.Token) *fault {
	switch kindOf(t.Type) {
	case RightToken:
		return p.fault("This bracket closes nothing.", "take it out")
	case CommaToken:
		return p.fault("A comma joins two members of a list; the first is missing.", "take the comma out or name the member before it")
	case PlusToken, MinusToken, TimesToken, OverToken, AtMostToken, AtLeastToken, LessToken, MoreToken:
		return p.fault("The operator "+t.Value+" has no value before it.", "write a value on each side, with a blank between")
	case BadToken:
		return p.fault("The character "+strconv.QuoteToGraphic(t.Value)+" has no meaning here.", "take it out")
	}
	return p.fault(strconv.QuoteToGraphic(t.Value)+" does not fit here.", "take it out or complete the statement")
}

func (p *reader) name() (*Expr, *fault) {
	t := p.next()
	e := p.expr(Expr{Kind: NameExpr, Span: span(t), Text: t.Value})
	if p.kind() != DotsToken {
		return e, nil
	}
	p.next()
	if p.kind() != NameToken && p.kind() != SizeToken {
		return nil, p.fault("A span of names needs its last name, as in U1..U8.", "write the last name")
	}
	t = p.next()
	e.Kind = SpanExpr
	e.Last, e.Tail, _ = strings.Cut(t.Value, ".")
	e.Span.End = t.Pos.Offset + len(t.Value)
	return e, nil
}

func (p *reader) bracket() (*Expr, *fault) {
	open := p.next()
	p.depth++
	if p.depth > MaxBrackets {
		return nil, &fault{span(open), "Brackets stand too deep in each other.", "write the sum in parts"}
	}
	e, err := p.sum()
	if err != nil {
		return nil, err
	}
	if p.kind() != RightToken {
		return nil, &fault{span(open), "This bracket is not closed.", "close it with )"}
	}
	end := p.next()
	p.depth--
	return p.expr(Expr{Kind: ParenExpr, L: e, Span: Span{open.Pos.Offset, end.Pos.Offset + 1}}), nil
}

// quantity reads 22 m, 80/60 degC, 17.5..25 mbar, 1 1/4 in. A number without a
// unit stays a bare number; the schema walk says whether that fits.
func (p *reader) quantity() (*Expr, *fault) {
	t := p.next()
	e := p.expr(Expr{Kind: NumberExpr, Span: span(t), Text: t.Value, NumSpan: span(t)})
	var err *fault
	if kindOf(t.Type) == PairToken {
		e.Form = Pair
		a, b, _ := strings.Cut(t.Value, "/")
		e.Num, err = number(t, a)
		if err == nil {
			e.Num2, err = number(t, b)
		}
	} else {
		e.Num, err = number(t, t.Value)
	}
	if err != nil {
		return nil, err
	}
	if kindOf(t.Type) == NumberToken {
		switch p.kind() {
		case DotsToken:
			p.next()
			if p.kind() != NumberToken {
				return nil, p.fault("A range needs its upper number, as in 17.5..25 mbar.", "write the upper number")
			}
			u := p.next()
			e.Form = Range
			if e.Num2, err = number(u, u.Value); err != nil {
				return nil, err
			}
			e.NumSpan.End = u.Pos.Offset + len(u.Value)
		case PairToken: // 1 1/4 in: whole and fraction
			u := p.next()
			a, b, _ := strings.Cut(u.Value, "/")
			top, e1 := number(u, a)
			bottom, e2 := number(u, b)
			if e1 != nil || e2 != nil || bottom == 0 {
				return nil, &fault{span(u), "This fraction cannot be read.", "write it as in 1 1/4 in"}
			}
			e.Form = Pair
			e.Num, e.Num2 = e.Num*bottom+top, bottom
			e.NumSpan.End = u.Pos.Offset + len(u.Value)
		}
	}
	e.Span = e.NumSpan
	if p.kind() == UnitToken {
		u := p.next()
		e.Kind, e.UnitText, e.UnitSpan = QuantityExpr, u.Value, span(u)
		e.Span.End = e.UnitSpan.End
	}
	return e, nil
}

func number(t *lexer.Token, s string) (float64, *fault) {
	if len(s) <= 30 {
		if v, err := strconv.ParseFloat(s, 64); err == nil {
			return v, nil
		}
	}
	return 0, &fault{span(t), "The number " + s[:min(len(s), 20)] + " cannot be read.", "write a plain number such as 12.5"}
}

// Value is the single number that a quantity in inches means, where a pair is a
// fraction; otherwise the first number.
func (e *Expr) Value() float64 {
	if e.Form == Pair && e.Num2 != 0 {
		if u, ok := LookupUnit(e.UnitText); ok && u.Inches() {
			return e.Num / e.Num2
		}
	}
	return e.Num
}
