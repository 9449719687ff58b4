package lang

import (
	"io"
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
		"Text": tokenType(TextToken), "Unclosed": tokenType(UnclosedToken), "Dots": tokenType(DotsToken), "Comma": tokenType(CommaToken),
		"Open": tokenType(OpenToken), "Close": tokenType(CloseToken), "Left": tokenType(LeftToken), "Right": tokenType(RightToken),
		"Plus": tokenType(PlusToken), "Minus": tokenType(MinusToken), "Times": tokenType(TimesToken), "Over": tokenType(OverToken),
		"AtMost": tokenType(AtMostToken), "AtLeast": tokenType(AtLeastToken), "Less": tokenType(LessToken), "More": tokenType(MoreToken),
		"Bad": tokenType(BadToken),
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

// statementLexer hands out the tokens of one text that mean something.
type statementLexer struct {
	text   string
	tokens []Token
	i, end int
}

func (l *statementLexer) Next() (lexer.Token, error) {
	for l.i < len(l.tokens) {
		t := l.tokens[l.i]
		l.i++
		switch t.Kind {
		case NewlineToken, CommentToken, EndOfFile:
			continue
		}
		l.end = t.Span.End
		return lexer.Token{Type: tokenType(t.Kind), Value: t.Text(l.text), Pos: lexer.Position{Offset: t.Span.Start}}, nil
	}
	return lexer.EOFToken(lexer.Position{Offset: l.end}), nil
}

// window is a lexer of the library whose tokens are written anew for each
// statement: the library's own way makes a lexer, a map and a list of tokens
// for every call, which costs more than the parse.
type window struct {
	lex    *lexer.PeekingLexer
	tokens []lexer.Token // those of lex
}

var windows = sync.Pool{New: func() any { w := &window{}; w.grow(64); return w }}

func (w *window) grow(n int) {
	lex, err := lexer.Upgrade(&blankLexer{left: n})
	if err != nil {
		panic(err) // blankLexer has no error
	}
	w.lex, w.tokens = lex, lex.Range(0, lexer.RawCursor(n))
}

// blankLexer gives a number of tokens to be written over.
type blankLexer struct{ left int }

func (l *blankLexer) Next() (lexer.Token, error) {
	if l.left == 0 {
		return lexer.EOFToken(lexer.Position{}), nil
	}
	l.left--
	return lexer.Token{Type: tokenType(BadToken)}, nil
}

// load writes the tokens of one statement, with a synthetic end right behind
// the last one. Their places count from the start of the statement.
func (w *window) load(text string, tokens []Token, base int) {
	if len(tokens) >= len(w.tokens) {
		w.grow(2*len(tokens) + 1)
	}
	n := 0
	for _, t := range tokens {
		if t.Kind == NewlineToken || t.Kind == CommentToken {
			continue
		}
		from, to := t.Span.Start-base, t.Span.End-base
		to = min(to, len(text)) // of the last token blanks may have been cut
		p := &w.tokens[n]
		p.Type, p.Value, p.Pos.Offset = tokenType(t.Kind), text[from:to], from
		n++
	}
	w.tokens[n] = lexer.EOFToken(lexer.Position{Offset: len(text)})
	w.lex.LoadCheckpoint(lexer.Checkpoint{})
}

// headNode is the root of the grammar: a head in the making.
type headNode struct {
	head  Head
	fault *fault // the library keeps only an error's words; the place is kept here
}

// fault is a syntax error with the stretch of text that it is about.
type fault struct {
	span          Span
	message, mend string
}

func (f *fault) Error() string { return f.message }

// Parse implements participle.Parseable.
func (n *headNode) Parse(lex *lexer.PeekingLexer) error {
	if n.fault = n.read(lex); n.fault != nil {
		return n.fault
	}
	return nil
}

func (n *headNode) read(lex *lexer.PeekingLexer) *fault {
	p := reader{lex: lex}
	h := &n.head
	t := p.peek()
	if kindOf(t.Type) != WordToken {
		return p.fault("A statement starts with a word such as pipe or altitude.", "start the line with the word that says what this is")
	}
	h.Keyword, h.KeySpan = t.Value, span(t)
	p.next()
	p.reserve(h)
	for !p.peek().EOF() {
		if len(h.Items) >= maxItems {
			return p.fault("This statement has too many items.", "cut it into several statements")
		}
		it, err := p.item()
		if err != nil {
			return err
		}
		h.Items = append(h.Items, it)
	}
	return nil
}

func span(t *lexer.Token) Span {
	return Span{t.Pos.Offset, t.Pos.Offset + len(t.Value)}
}
