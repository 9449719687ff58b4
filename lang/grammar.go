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
// The reader of grammar_expr.go takes the tokens itself, because one token always
// decides the next step. The parser library drives it through headNode; a
// statement that reads without a fault, as nearly all do, goes to it directly
// (head.go). A test holds both ways to the same trees.

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
	var tokens []Token
	var text []byte
	for t := lex.Next(); !t.EOF(); t = lex.Next() {
		for len(text) < t.Pos.Offset {
			text = append(text, ' ')
		}
		text = append(text, t.Value...)
		tokens = append(tokens, Token{kindOf(t.Type), Span{t.Pos.Offset, len(text)}})
	}
	r := reader{text: string(text), tokens: tokens, memory: &memory{}}
	if n.fault = r.read(&n.head); n.fault != nil {
		return n.fault
	}
	return nil
}
