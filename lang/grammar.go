package lang

import (
	"errors"
	"io"
	"strconv"
	"strings"
	"sync"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// The grammar, one form for every statement:
//
//	statement = WORD { item }
//	item      = expr { "," expr }
//	expr      = sum [ ("<=" | ">=" | "<" | ">") sum ]
//	sum       = product { ("+" | "-") product }
//	product   = prime { ("*" | "/") prime }
//	prime     = quantity | NUMBER | SIZE | DATE | TEXT | WORD | NAME | NAME ".." NAME | "(" sum ")"
//	quantity  = ( NUMBER [ PAIR ] | PAIR | NUMBER ".." NUMBER ) UNIT
//
// The parser library drives it one statement a call; the node below takes the
// tokens itself, because one token always decides the next step.

var statementParser = sync.OnceValue(func() *participle.Parser[headNode] {
	return participle.MustBuild[headNode](participle.Lexer(definition{}), participle.UseLookahead(0))
})

// definition tells the parser library the names of the tokens.
type definition struct{}

func (definition) Symbols() map[string]lexer.TokenType {
	return map[string]lexer.TokenType{
		"EOF": lexer.EOF, "Word": tokenType(WordToken), "Name": tokenType(NameToken), "Number": tokenType(NumberToken),
		"Pair": tokenType(PairToken), "Unit": tokenType(UnitToken), "Size": tokenType(SizeToken), "Date": tokenType(DateToken),
		"Text": tokenType(TextToken), "Dots": tokenType(DotsToken), "Comma": tokenType(CommaToken),
	}
}

// Lex is there for the library's sake: a whole text as one statement.
func (definition) Lex(_ string, r io.Reader) (lexer.Lexer, error) {
	b, err := io.ReadAll(r)
	if err != nil {
		return nil, err
	}
	return &statementLexer{text: string(b), tokens: Tokens(string(b))}, nil
}

func tokenType(k TokenKind) lexer.TokenType { return lexer.TokenType(-int(k) - 2) }
func kindOf(t lexer.TokenType) TokenKind    { return TokenKind(-int(t) - 2) }

// statementLexer hands the tokens of one statement to the parser library, with
// a synthetic end right behind the last one.
type statementLexer struct {
	text   string
	tokens []Token
	base   int
	i      int
	end    int
}

func (l *statementLexer) Next() (lexer.Token, error) {
	for l.i < len(l.tokens) {
		t := l.tokens[l.i]
		l.i++
		switch t.Kind {
		case NewlineToken, CommentToken:
			continue
		case EndOfFile:
			l.i = len(l.tokens)
			continue
		}
		l.end = t.Span.End
		return lexer.Token{Type: tokenType(t.Kind), Value: t.Text(l.text), Pos: lexer.Position{Offset: t.Span.Start - l.base}}, nil
	}
	return lexer.Token{Type: lexer.EOF, Pos: lexer.Position{Offset: l.end - l.base}}, nil
}

// headNode is the root of the grammar.
type headNode struct {
	keyword string
	keySpan Span
	items   []Item
	fault   error // the library keeps only an error's words; the place is kept here
}

// fault is a syntax error with the stretch of text that it is about.
type fault struct {
	span          Span
	message, mend string
}

func (f *fault) Error() string { return f.message }

// Parse implements participle.Parseable.
func (n *headNode) Parse(lex *lexer.PeekingLexer) error {
	n.fault = n.read(lex)
	return n.fault
}

func (n *headNode) read(lex *lexer.PeekingLexer) error {
	p := &head{lex: lex}
	t := p.peek()
	if kindOf(t.Type) != WordToken || t.EOF() {
		return p.fault("A statement starts with a word such as pipe or altitude.", "start the line with the word that says what this is")
	}
	n.keyword, n.keySpan = t.Value, span(t)
	p.next()
	for !p.peek().EOF() {
		if len(n.items) >= maxItems {
			return p.fault("This statement has too many items.", "cut it into several statements")
		}
		it, err := p.item()
		if err != nil {
			return err
		}
		n.items = append(n.items, it)
	}
	return nil
}

func span(t *lexer.Token) Span {
	return Span{t.Pos.Offset, t.Pos.Offset + len(t.Value)}
}

// head reads the items of one statement.
type head struct {
	lex   *lexer.PeekingLexer
	depth int
}

func (p *head) peek() *lexer.Token { return p.lex.Peek() }
func (p *head) next() *lexer.Token { return p.lex.Next() }

func (p *head) kind() TokenKind {
	t := p.lex.Peek()
	if t.EOF() {
		return EndOfFile
	}
	return kindOf(t.Type)
}

func (p *head) fault(message, mend string) error {
	return &fault{span(p.peek()), message, mend}
}

func (p *head) item() (Item, error) {
	var it Item
	for {
		e, err := p.expr()
		if err != nil {
			return it, err
		}
		it.Exprs = append(it.Exprs, e)
		if p.kind() != CommaToken {
			break
		}
		p.next()
		if p.kind() == EndOfFile {
			return it, p.fault("A list ends with a comma.", "name the next member or take the comma out")
		}
	}
	it.Span = it.Exprs[0].Span.Join(it.Exprs[len(it.Exprs)-1].Span)
	return it, nil
}

func (p *head) expr() (*Expr, error) {
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
		return &Expr{Kind: CompareExpr, Op: op, L: l, R: r, Span: l.Span.Join(r.Span)}, nil
	}
	return l, nil
}

func (p *head) sum() (*Expr, error) {
	l, err := p.product()
	for err == nil && (p.kind() == PlusToken || p.kind() == MinusToken) {
		l, err = p.binary(l, p.product)
	}
	return l, err
}

func (p *head) product() (*Expr, error) {
	l, err := p.prime()
	for err == nil && (p.kind() == TimesToken || p.kind() == OverToken) {
		l, err = p.binary(l, p.prime)
	}
	return l, err
}

func (p *head) binary(l *Expr, right func() (*Expr, error)) (*Expr, error) {
	op := p.next().Value
	r, err := right()
	if err != nil {
		return nil, err
	}
	return &Expr{Kind: BinaryExpr, Op: op, L: l, R: r, Span: l.Span.Join(r.Span)}, nil
}

func (p *head) prime() (*Expr, error) {
	t := p.peek()
	e := &Expr{Span: span(t), Text: t.Value}
	switch p.kind() {
	case NumberToken, PairToken:
		return p.quantity()
	case SizeToken:
		e.Kind = SizeExpr
	case DateToken:
		e.Kind = DateExpr
	case TextToken:
		e.Kind, e.Text = TextExpr, t.Value[1:len(t.Value)-1]
	case WordToken:
		e.Kind = WordExpr
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
	return e, nil
}

func (p *head) unexpected(t *lexer.Token) error {
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

func (p *head) name() (*Expr, error) {
	t := p.next()
	e := &Expr{Kind: NameExpr, Span: span(t), Text: t.Value}
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

func (p *head) bracket() (*Expr, error) {
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
	return &Expr{Kind: ParenExpr, L: e, Span: Span{open.Pos.Offset, end.Pos.Offset + 1}}, nil
}

// quantity reads 22 m, 80/60 degC, 17.5..25 mbar, 1 1/4 in. A number without a
// unit stays a bare number; the schema walk says whether that fits.
func (p *head) quantity() (*Expr, error) {
	t := p.next()
	e := &Expr{Kind: NumberExpr, Span: span(t), Text: t.Value, NumSpan: span(t)}
	var err error
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

func number(t *lexer.Token, s string) (float64, error) {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || len(s) > 30 {
		return 0, &fault{span(t), "The number " + s[:min(len(s), 20)] + " cannot be read.", "write a plain number such as 12.5"}
	}
	return v, nil
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

// parseHead parses the tokens of one statement.
func parseHead(text string, tokens []Token, base int, keep string) *Head {
	h := &Head{Text: keep, Span: Span{0, len(keep)}}
	if len(keep) > MaxLineLength {
		h.Problem = &Problem{
			Span: Span{0, min(len(keep), 80)}, Rule: "cannot-read", Severity: Error,
			Message: "This statement is longer than " + strconv.Itoa(MaxLineLength) + " characters.", Mend: "cut it into several statements",
		}
		return h
	}
	lex, err := lexer.Upgrade(&statementLexer{text: text, tokens: tokens, base: base})
	if err == nil {
		var n *headNode
		n, err = statementParser().ParseFromLexer(lex)
		if n != nil {
			h.Keyword, h.KeySpan, h.Items = n.keyword, n.keySpan, n.items
			ownStrings(h, keep)
			if n.fault != nil {
				err = n.fault
			}
		}
	}
	if err != nil {
		h.Problem = syntaxProblem(err, h)
		if h.Keyword == "" {
			if t := tokens[0]; t.Kind == WordToken {
				h.Keyword, h.KeySpan = keep[:t.Span.End-t.Span.Start], Span{0, t.Span.End - t.Span.Start}
			}
		}
	}
	return h
}

func syntaxProblem(err error, h *Head) *Problem {
	p := &Problem{Rule: "cannot-read", Severity: Error, Span: h.Span, Message: "This statement cannot be read.", Mend: "complete the statement"}
	var f *fault
	var pe participle.Error
	switch {
	case errors.As(err, &f):
		p.Span, p.Message, p.Mend = f.span, f.message, f.mend
	case errors.As(err, &pe):
		p.Span = Span{pe.Position().Offset, pe.Position().Offset}
	}
	if p.Span.End > len(h.Text) {
		p.Span.End = len(h.Text)
	}
	if p.Span.Empty() { // at the end: point at the last character
		p.Span = Span{max(0, p.Span.Start-1), max(1, p.Span.Start)}
	}
	return p
}

// ownStrings points every string of the head into its own text, so that a
// cached head does not hold the file it was first read from.
func ownStrings(h *Head, keep string) {
	h.Keyword = keep[h.KeySpan.Start:h.KeySpan.End]
	for i := range h.Items {
		for _, e := range h.Items[i].Exprs {
			ownExpr(e, keep)
		}
	}
}

func ownExpr(e *Expr, keep string) {
	if e == nil {
		return
	}
	switch e.Kind {
	case TextExpr:
		e.Text = keep[e.Span.Start+1 : e.Span.End-1]
	case SpanExpr:
		whole := keep[e.Span.Start:e.Span.End]
		dots := strings.Index(whole, "..")
		e.Text = strings.TrimSpace(whole[:dots])
		e.Last, e.Tail, _ = strings.Cut(strings.TrimSpace(whole[dots+2:]), ".")
	default:
		if e.Text != "" {
			e.Text = keep[e.Span.Start : e.Span.Start+len(e.Text)]
		}
	}
	if e.UnitText != "" {
		e.UnitText = keep[e.UnitSpan.Start:e.UnitSpan.End]
	}
	ownExpr(e.L, keep)
	ownExpr(e.R, keep)
}
