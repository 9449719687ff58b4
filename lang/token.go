package lang

// TokenKind is the kind of a token.
type TokenKind uint8

// The kinds of token. Every text lexes: what fits nothing is a BadToken.
const (
	EndOfFile TokenKind = iota
	NewlineToken
	WordToken     // small first: back-to-back, basis.load
	NameToken     // capital first: U1, U3.damper
	NumberToken   // 22, 1.30, -3
	PairToken     // 80/60, 1/4
	UnitToken     // the word right after a number
	SizeToken     // DN80, M16, PN16
	DateToken     // 2025-10-03, 1974-01
	TextToken     // "..."
	UnclosedToken // "... without its end
	DotsToken     // ..
	CommaToken
	OpenToken   // {
	CloseToken  // }
	LeftToken   // (
	RightToken  // )
	PlusToken   // +
	MinusToken  // -
	TimesToken  // *
	OverToken   // /
	AtMostToken // <=
	AtLeastToken
	LessToken
	MoreToken
	CommentToken
	BadToken
)

// Token is one token by its place; its text is that stretch of the source.
type Token struct {
	Kind TokenKind
	Span Span
}

// Text gives the token's text.
func (t Token) Text(text string) string { return text[t.Span.Start:t.Span.End] }
