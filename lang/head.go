package lang

import (
	"errors"
	"strconv"

	"github.com/alecthomas/participle/v2"
)

// parseHead parses the tokens of one statement. text is the statement's own
// text; every string of the head points into it. base is where the statement
// starts among the tokens' places.
func parseHead(w *window, text string, tokens []Token, base int) *Head {
	if len(text) > MaxLineLength {
		h := &Head{Text: text, Span: Span{0, len(text)}}
		h.Problem = &Problem{
			Span: Span{0, min(len(text), 80)}, Rule: "cannot-read", Severity: Error,
			Message: "This statement is longer than " + strconv.Itoa(MaxLineLength) + " characters.", Mend: "cut it into several statements",
		}
		return h
	}
	w.load(text, tokens, base)
	n, err := statementParser().ParseFromLexer(w.lex)
	if n == nil { // the library does not do this today
		n = &headNode{}
	}
	h := &n.head
	h.Text, h.Span = text, Span{0, len(text)}
	if n.fault != nil {
		err = n.fault
	}
	if err != nil {
		h.Problem = syntaxProblem(err, h)
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
	p.Span.End = min(p.Span.End, len(h.Text))
	if p.Span.Empty() { // at the end: point at the last character
		p.Span = Span{max(0, p.Span.Start-1), max(1, p.Span.Start)}
	}
	return p
}
