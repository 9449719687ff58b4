package lang

import (
	"strings"
	"unicode/utf8"
)

// Tokens cuts a text into tokens, comments and newlines included. It never
// fails, and no token crosses a line.
func Tokens(text string) []Token {
	return lex(text, make([]Token, 0, len(text)/5+8))
}

func lex(text string, out []Token) []Token {
	l := scanner{text: text, out: out}
	if strings.HasPrefix(text, "\ufeff") {
		l.at = len("\ufeff")
	}
	for l.at < len(text) {
		l.next()
	}
	return append(l.out, Token{EndOfFile, Span{len(text), len(text)}})
}

type scanner struct {
	text string
	at   int
	out  []Token
}

func (l *scanner) add(k TokenKind, end int) {
	l.out = append(l.out, Token{k, Span{l.at, end}})
	l.at = end
}

// last is the kind of the token before, on the same line.
func (l *scanner) last() TokenKind {
	if n := len(l.out); n > 0 {
		return l.out[n-1].Kind
	}
	return NewlineToken
}

func (l *scanner) peek(i int) byte {
	if i < len(l.text) {
		return l.text[i]
	}
	return 0
}

func (l *scanner) next() {
	c := l.text[l.at]
	switch {
	case c == '\n':
		l.add(NewlineToken, l.at+1)
	case c == ' ', c == '\t', c == '\r':
		l.at++
	case c == '#':
		l.comment()
	case c == '"':
		l.quoted()
	case c >= '0' && c <= '9':
		l.number(l.at)
	case c == '-' && isDigit(l.peek(l.at+1)) && l.signed():
		l.number(l.at + 1)
	case l.afterNumber() && isUnitStart(l.text[l.at:]):
		l.add(UnitToken, l.at+unitLen(l.text[l.at:]))
	case c >= 'a' && c <= 'z':
		l.word(WordToken)
	case c >= 'A' && c <= 'Z':
		l.word(NameToken)
	default:
		l.symbol(c)
	}
}

func isDigit(c byte) bool  { return c >= '0' && c <= '9' }
func isLetter(c byte) bool { return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' }

// signed tells whether a minus belongs to the number behind it: not after a
// value without a blank, where it would be an operator that lacks its blanks.
func (l *scanner) signed() bool {
	if l.at == 0 {
		return true
	}
	switch l.text[l.at-1] {
	case ' ', '\t', '(', ',', '.', '\n':
		return true
	}
	return false
}

func (l *scanner) afterNumber() bool {
	k := l.last()
	return k == NumberToken || k == PairToken
}

func (l *scanner) comment() {
	end := strings.IndexByte(l.text[l.at:], '\n')
	if end < 0 {
		end = len(l.text)
	} else {
		end += l.at
	}
	if end > l.at && l.text[end-1] == '\r' {
		end--
	}
	l.add(CommentToken, end)
}

func (l *scanner) quoted() {
	for i := l.at + 1; i < len(l.text); i++ {
		switch l.text[i] {
		case '"':
			l.add(TextToken, i+1)
			return
		case '\n':
			if l.text[i-1] == '\r' && i-1 > l.at {
				i--
			}
			l.add(UnclosedToken, i)
			return
		}
	}
	l.add(UnclosedToken, len(l.text))
}

// number reads a number, a pair or a date that starts with digits at i.
func (l *scanner) number(i int) {
	if n := dateLen(l.text[i:]); n > 0 && i == l.at {
		l.add(DateToken, i+n)
		return
	}
	i = l.decimal(i)
	if l.peek(i) == '/' && isDigit(l.peek(i+1)) {
		l.add(PairToken, l.decimal(i+1))
		return
	}
	l.add(NumberToken, i)
}

func (l *scanner) decimal(i int) int {
	for isDigit(l.peek(i)) {
		i++
	}
	if l.peek(i) == '.' && isDigit(l.peek(i+1)) {
		i++
		for isDigit(l.peek(i)) {
			i++
		}
	}
	return i
}

// dateLen measures a date at the start of s: 2025-10-03 or 1974-01, and nothing
// stuck to it.
func dateLen(s string) int {
	digits := func(from, to int) bool {
		for i := from; i < to; i++ {
			if i >= len(s) || !isDigit(s[i]) {
				return false
			}
		}
		return true
	}
	if len(s) < 7 || !digits(0, 4) || s[4] != '-' || !digits(5, 7) {
		return 0
	}
	n := 7
	if len(s) >= 10 && s[7] == '-' && digits(8, 10) {
		n = 10
	}
	if n < len(s) && (isDigit(s[n]) || isLetter(s[n]) || s[n] == '-') {
		return 0
	}
	return n
}

// isUnitStart tells the start of a unit: a letter, %, degree or micro sign.
func isUnitStart(s string) bool {
	if isLetter(s[0]) || s[0] == '%' {
		return true
	}
	if s[0] < utf8.RuneSelf {
		return false
	}
	r, _ := utf8.DecodeRuneInString(s)
	return r == '°' || r == 'µ' || r == 'μ' || r == 'Ω' || r == '℃'
}

// unitLen measures a unit such as m3/h, %LEL or W/mK. A hyphen belongs to it, so
// that a word stuck to a number is one unknown unit and not two tokens.
func unitLen(s string) int {
	i := 0
	for i < len(s) {
		c := s[i]
		if isLetter(c) || isDigit(c) || c == '%' || c == '/' {
			i++
			continue
		}
		if (c == '.' || c == '-' || c == '_') && i+1 < len(s) && isLetter(s[i+1]) {
			i++
			continue
		}
		if c >= utf8.RuneSelf {
			r, n := utf8.DecodeRuneInString(s[i:])
			switch r {
			case '°', 'µ', 'μ', 'Ω', '²', '³', '·', '⁻', '¹', '℃':
				i += n
				continue
			}
		}
		break
	}
	return i
}

// word reads a word or a name with its dotted rest; a name may be a size.
func (l *scanner) word(k TokenKind) {
	i := l.at + 1
	for i < len(l.text) {
		c := l.text[i]
		if isLetter(c) || isDigit(c) || c == '_' {
			i++
			continue
		}
		if (c == '-' || c == '.') && i+1 < len(l.text) && (isLetter(l.text[i+1]) || isDigit(l.text[i+1])) {
			i++
			continue
		}
		break
	}
	if k == NameToken && isSize(l.text[l.at:i]) {
		k = SizeToken
	}
	l.add(k, i)
}

// isSize tells DN80, M16 and PN16 from names.
func isSize(s string) bool {
	i := 0
	switch {
	case strings.HasPrefix(s, "DN"), strings.HasPrefix(s, "PN"):
		i = 2
	case strings.HasPrefix(s, "M"):
		i = 1
	default:
		return false
	}
	if i == len(s) {
		return false
	}
	for ; i < len(s); i++ {
		if !isDigit(s[i]) {
			return false
		}
	}
	return true
}

func (l *scanner) symbol(c byte) {
	two := l.peek(l.at + 1)
	switch {
	case c == '.' && two == '.':
		l.add(DotsToken, l.at+2)
	case c == '<' && two == '=':
		l.add(AtMostToken, l.at+2)
	case c == '>' && two == '=':
		l.add(AtLeastToken, l.at+2)
	default:
		if k := oneByte[c]; k != 0 {
			l.add(k, l.at+1)
			return
		}
		_, n := utf8.DecodeRuneInString(l.text[l.at:])
		l.add(BadToken, l.at+n)
	}
}

var oneByte = [256]TokenKind{
	',': CommaToken, '{': OpenToken, '}': CloseToken, '(': LeftToken, ')': RightToken,
	'+': PlusToken, '-': MinusToken, '*': TimesToken, '/': OverToken, '<': LessToken, '>': MoreToken,
}
