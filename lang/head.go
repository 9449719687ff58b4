package lang

import (
	"errors"
	"strconv"

	"github.com/alecthomas/participle/v2"
	"github.com/alecthomas/participle/v2/lexer"
)

// parseHead parses the tokens of one statement into an empty head. text is the
// statement's own text; every string of the head points into it. base is where the
// statement starts among the tokens' places.
func parseHead(m *memory, h *Head, text string, tokens []Token, base int) {
	h.Text, h.Span = text, Span{0, len(text)}
	if len(text) > MaxLineLength {
		h.Problem = &Problem{
			Span: Span{0, min(len(text), 80)}, Rule: "cannot-read", Severity: Error,
			Message: "This statement is longer than " + strconv.Itoa(MaxLineLength) + " characters.", Mend: "cut it into several statements",
		}
		return
	}
	p := reader{text: text, base: base, tokens: significant(tokens), memory: m}
	if p.read(h) == nil {
		return
	}
	n, err := parseByLibrary(text, tokens, base)
	h.Keyword, h.KeySpan, h.Items = n.head.Keyword, n.head.KeySpan, n.head.Items
	if err != nil {
		h.Problem = syntaxProblem(err, h)
	}
}

// parseByLibrary reads a statement with the parser library. It takes what says
// what is wrong with a statement, and the word for it.
func parseByLibrary(text string, tokens []Token, base int) (*headNode, error) {
	moved := make([]Token, len(tokens))
	for i, t := range tokens {
		moved[i] = Token{t.Kind, t.Span.Add(-base)}
	}
	lex, err := lexer.Upgrade(&statementLexer{text: text, tokens: moved})
	if err != nil {
		return &headNode{}, err // the lexer has no error
	}
	n, err := statementParser().ParseFromLexer(lex)
	if n == nil { // the library does not do this today
		n = &headNode{}
	}
	if n.fault != nil {
		err = n.fault
	}
	return n, err
}

// significant leaves line ends and comments out, which few statements hold.
func significant(tokens []Token) []Token {
	for i := range tokens {
		if k := tokens[i].Kind; k != NewlineToken && k != CommentToken {
			continue
		}
		out := append([]Token(nil), tokens[:i]...)
		for _, t := range tokens[i:] {
			if t.Kind != NewlineToken && t.Kind != CommentToken {
				out = append(out, t)
			}
		}
		return out
	}
	return tokens
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
	p.Span.End = min(p.Span.End, len(h.Text))
	if p.Span.Empty() { // at the end: point at the last character
		p.Span = Span{max(0, p.Span.Start-1), max(1, p.Span.Start)}
	}
	return p
}
