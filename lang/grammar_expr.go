package lang

import (
	"strconv"
	"strings"
)

// reader reads the tokens of one statement. It works like a stack: an expression
// is put on exprs, an operator takes its two sides off again, and what is left
// behind in the end are the expressions of the items, in order.
type reader struct {
	text   string // of the statement, in which the tokens' places count from base
	base   int
	tokens []Token // without line ends and comments
	i      int
	depth  int
	exprs  []Expr
	memory *memory
}

// read reads a whole statement into a head.
func (p *reader) read(h *Head) *fault {
	if p.kind() != WordToken {
		return p.fault("A statement starts with a word such as pipe or altitude.", "start the line with the word that says what this is")
	}
	h.KeySpan = p.span()
	h.Keyword = p.value()
	p.i++
	items := p.reserve()
	for p.i < len(p.tokens) {
		if len(items) >= maxItems {
			h.Items = items
			return p.fault("This statement has too many items.", "cut it into several statements")
		}
		from := len(p.exprs)
		if err := p.item(); err != nil {
			h.Items = items
			return err
		}
		items = append(items, Item{p.exprs[from:len(p.exprs):len(p.exprs)]})
	}
	switch {
	case len(items) == 0:
	case h.kept:
		h.Items = copyItems(items, len(p.exprs))
	default:
		p.memory.exprs.Keep(len(p.exprs))
		p.memory.items.Keep(len(items))
		h.Items = items[:len(items):len(items)]
	}
	return nil
}

// copyItems copies items that hold n expressions, for a head that outlives the
// memory of its file.
func copyItems(items []Item, n int) []Item {
	out, exprs := make([]Item, len(items)), make([]Expr, 0, n)
	for i := range items {
		from := len(exprs)
		exprs = append(exprs, items[i].Exprs...)
		out[i] = Item{exprs[from:len(exprs):len(exprs)]}
	}
	return out
}

// reserve makes room for what the statement can hold at most: one expression and
// one item for each token behind the first. What is not taken serves the next
// statement.
func (p *reader) reserve() []Item {
	n := len(p.tokens) - 1
	p.exprs = p.memory.exprs.Reserve(n)
	return p.memory.items.Reserve(n)
}

var isOperator = [...]bool{
	PlusToken: true, MinusToken: true, TimesToken: true, OverToken: true,
	AtMostToken: true, AtLeastToken: true, LessToken: true, MoreToken: true, BadToken: false,
}

// push puts an expression of the token at hand on the stack and goes on.
func (p *reader) push(kind ExprKind) *Expr {
	p.exprs = append(p.exprs, Expr{})
	e := &p.exprs[len(p.exprs)-1]
	t := p.tokens[p.i].Span.Add(-p.base)
	e.Kind, e.Span, e.Text = kind, t, p.text[t.Start:t.End]
	p.i++
	return e
}

// kind is the kind of the token at hand, EndOfFile behind the last.
func (p *reader) kind() TokenKind {
	if p.i < len(p.tokens) {
		return p.tokens[p.i].Kind
	}
	return EndOfFile
}

// span is the place of the token at hand in the statement.
func (p *reader) span() Span {
	if p.i < len(p.tokens) {
		t := &p.tokens[p.i]
		return Span{t.Span.Start - p.base, t.Span.End - p.base}
	}
	return Span{len(p.text), len(p.text)}
}

// value is the text of the token at hand.
func (p *reader) value() string {
	s := p.span()
	return p.text[s.Start:s.End]
}

func (p *reader) fault(message, mend string) *fault {
	return &fault{p.span(), message, mend}
}

// item puts the expressions of one item on the stack.
func (p *reader) item() *fault {
	for {
		if err := p.compare(); err != nil || p.kind() != CommaToken {
			return err
		}
		p.i++
		if p.kind() == EndOfFile {
			return p.fault("A list ends with a comma.", "name the next member or take the comma out")
		}
	}
}

func (p *reader) compare() *fault {
	if err := p.prime(); err != nil || !isOperator[p.kind()] {
		return err // nearly always a value that stands alone
	}
	err := p.restOfProduct()
	if err == nil {
		err = p.restOfSum()
	}
	if err != nil {
		return err
	}
	switch p.kind() {
	case AtMostToken, AtLeastToken, LessToken, MoreToken:
		op := p.value()
		p.i++
		if err := p.sum(); err != nil {
			return err
		}
		p.join(CompareExpr, op)
	}
	return nil
}

func (p *reader) sum() *fault {
	err := p.product()
	if err == nil {
		err = p.restOfSum()
	}
	return err
}

// restOfSum reads on behind the first member of a sum.
func (p *reader) restOfSum() (err *fault) {
	for err == nil {
		if k := p.kind(); k != PlusToken && k != MinusToken {
			break
		}
		op := p.value()
		p.i++
		if err = p.product(); err == nil {
			p.join(BinaryExpr, op)
		}
	}
	return err
}

func (p *reader) product() *fault {
	err := p.prime()
	if err == nil {
		err = p.restOfProduct()
	}
	return err
}

// restOfProduct reads on behind the first member of a product.
func (p *reader) restOfProduct() (err *fault) {
	for err == nil {
		if k := p.kind(); k != TimesToken && k != OverToken {
			break
		}
		op := p.value()
		p.i++
		if err = p.prime(); err == nil {
			p.join(BinaryExpr, op)
		}
	}
	return err
}

// join puts the two uppermost expressions together.
func (p *reader) join(kind ExprKind, op string) {
	n := len(p.exprs) - 2
	sides := [2]Expr(p.exprs[n:])
	l, r := &sides[0], &sides[1]
	p.exprs = p.exprs[:n+1]
	p.exprs[n] = Expr{Kind: kind, Text: op, L: l, R: r, Span: l.Span.Join(r.Span)}
}

func (p *reader) prime() *fault {
	switch p.kind() {
	case NumberToken, PairToken:
		return p.quantity()
	case SizeToken:
		p.push(SizeExpr)
	case DateToken:
		p.push(DateExpr)
	case TextToken:
		e := p.push(TextExpr)
		e.Text = e.Text[1 : len(e.Text)-1]
	case WordToken:
		p.push(WordExpr)
	case NameToken:
		return p.name()
	case LeftToken:
		return p.bracket()
	case UnclosedToken:
		return p.fault("This text has no closing quotation mark on its line.", `close it with "`)
	case EndOfFile:
		return p.fault("The statement breaks off here; a value is missing.", "complete the statement")
	default:
		return p.unexpected()
	}
	return nil
}

func (p *reader) unexpected() *fault {
	switch p.kind() {
	case RightToken:
		return p.fault("This bracket closes nothing.", "take it out")
	case CommaToken:
		return p.fault("A comma joins two members of a list; the first is missing.", "take the comma out or name the member before it")
	case PlusToken, MinusToken, TimesToken, OverToken, AtMostToken, AtLeastToken, LessToken, MoreToken:
		return p.fault("The operator "+p.value()+" has no value before it.", "write a value on each side, with a blank between")
	case BadToken:
		return p.fault("The character "+strconv.QuoteToGraphic(p.value())+" has no meaning here.", "take it out")
	}
	return p.fault(strconv.QuoteToGraphic(p.value())+" does not fit here.", "take it out or complete the statement")
}

func (p *reader) name() *fault {
	e := p.push(NameExpr)
	if p.kind() != DotsToken {
		return nil
	}
	p.i++
	if p.kind() != NameToken && p.kind() != SizeToken {
		return p.fault("A span of names needs its last name, as in U1..U8.", "write the last name")
	}
	e.Kind, e.R = SpanExpr, &Expr{Kind: NameExpr, Span: p.span(), Text: p.value()}
	e.Span.End = e.R.Span.End
	p.i++
	return nil
}

func (p *reader) bracket() *fault {
	open := p.span()
	p.i++
	p.depth++
	if p.depth > MaxBrackets {
		return &fault{open, "Brackets stand too deep in each other.", "write the sum in parts"}
	}
	if err := p.sum(); err != nil {
		return err
	}
	if p.kind() != RightToken {
		return &fault{open, "This bracket is not closed.", "close it with )"}
	}
	end := p.span()
	p.i++
	p.depth--
	n := len(p.exprs) - 1
	inner := p.exprs[n]
	p.exprs[n] = Expr{Kind: ParenExpr, L: &inner, Span: Span{open.Start, end.Start + 1}}
	return nil
}

// quantity reads 22 m, 80/60 degC, 17.5..25 mbar, 1 1/4 in. A number without a
// unit stays a bare number; the schema walk says whether that fits.
func (p *reader) quantity() *fault {
	first := p.kind()
	e := p.push(NumberExpr)
	var ok bool
	if first == PairToken {
		e.Form = Pair
		a, b, _ := strings.Cut(e.Text, "/")
		if e.Num, ok = number(a); !ok {
			return noNumber(e.Span, a)
		}
		if e.Num2, ok = number(b); !ok {
			return noNumber(e.Span, b)
		}
	} else if e.Num, ok = number(e.Text); !ok {
		return noNumber(e.Span, e.Text)
	}
	if first == NumberToken {
		switch p.kind() {
		case DotsToken:
			p.i++
			if p.kind() != NumberToken {
				return p.fault("A range needs its upper number, as in 17.5..25 mbar.", "write the upper number")
			}
			e.Form = Range
			if e.Num2, ok = number(p.value()); !ok {
				return noNumber(p.span(), p.value())
			}
			e.Span.End = p.span().End
			p.i++
		case PairToken: // 1 1/4 in: whole and fraction
			a, b, _ := strings.Cut(p.value(), "/")
			top, ok1 := number(a)
			bottom, ok2 := number(b)
			if !ok1 || !ok2 || bottom == 0 {
				return p.fault("This fraction cannot be read.", "write it as in 1 1/4 in")
			}
			e.Form = Pair
			e.Num, e.Num2 = e.Num*bottom+top, bottom
			e.Span.End = p.span().End
			p.i++
		}
	}
	e.numLen = uint32(e.Span.End - e.Span.Start)
	if p.kind() == UnitToken {
		e.Kind, e.UnitText = QuantityExpr, p.value()
		e.unit = unitTable()[e.UnitText]
		e.Span.End = p.span().End
		p.i++
	}
	return nil
}

// number reads a number of at most 30 characters. One of up to 15 is an
// integer over a power of ten, both exact, so their quotient is what the slower
// way gives.
func number(s string) (v float64, ok bool) {
	if s == "" || !isDigit(s[len(s)-1]) {
		return 0, false
	}
	if len(s) <= 15 {
		digits, point, i := 0.0, -1, 0
		if s[0] == '-' {
			i = 1
		}
		for ; i < len(s); i++ {
			switch c := s[i]; {
			case isDigit(c):
				digits = digits*10 + float64(c-'0')
			case c == '.' && point < 0:
				point = i
			default:
				return 0, false
			}
		}
		if point >= 0 {
			digits /= tens[len(s)-1-point]
		}
		if s[0] == '-' {
			digits = -digits
		}
		return digits, true
	}
	if len(s) <= 30 {
		if v, err := strconv.ParseFloat(s, 64); err == nil {
			return v, true
		}
	}
	return 0, false
}

var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14}

func noNumber(at Span, s string) *fault {
	return &fault{at, "The number " + s[:min(len(s), 20)] + " cannot be read.", "write a plain number such as 12.5"}
}

// Value is the single number that a quantity in inches means, where a pair is a
// fraction; otherwise the first number.
func (e *Expr) Value() float64 {
	if e.Form == Pair && e.Num2 != 0 {
		if u, ok := e.unitOf(); ok && u.Inches() {
			return e.Num / e.Num2
		}
	}
	return e.Num
}
