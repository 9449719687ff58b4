package lang

import (
	"strings"
	"unicode/utf8"
)

// Tokens cuts a text into tokens, comments and newlines included. It never
// fails, and no token crosses a line.
func Tokens(text string) []Token {
	out := make([]Token, 0, len(text)/5+8)
	for at := bomLen(text); at < len(text); {
		end := len(text)
		if i := strings.IndexByte(text[at:], '\n'); i >= 0 {
			end = at + i
		}
		out = lexLine(text, at, end, out)
		if at = end; end < len(text) {
			out = append(out, Token{NewlineToken, Span{end, end + 1}})
			at++
		}
	}
	return append(out, Token{EndOfFile, Span{len(text), len(text)}})
}

const byteOrderMark = "\ufeff"

// bomLen measures the mark that some editors put before a text.
func bomLen(text string) int {
	if strings.HasPrefix(text, byteOrderMark) {
		return len(byteOrderMark)
	}
	return 0
}

// lexLine appends the tokens of one line, without its end. What a token is
// depends on nothing outside its line.
func lexLine(text string, from, to int, out []Token) []Token {
	l := scanner{text: text[:to], start: from, at: from, out: out}
	for {
		for l.at < to && isBlank(text[l.at]) {
			l.at++
		}
		if l.at >= to {
			return l.out
		}
		l.next()
	}
}

type scanner struct {
	text  string // up to the end of the line
	start int
	at    int
	out   []Token
	last  TokenKind // the kind of the token before, on the same line
}

func (l *scanner) add(k TokenKind, end int) {
	l.out = append(l.out, Token{k, Span{l.at, end}})
	l.at, l.last = end, k
}

func (l *scanner) peek(i int) byte {
	if i < len(l.text) {
		return l.text[i]
	}
	return 0
}

// A byte class decides with one look what may begin or go on at a byte.
const (
	blankByte = 1 << iota
	digitByte
	smallByte
	capitalByte
	wordByte // goes on a word: letters, digits, "_"
	unitByte // goes on a unit: letters, digits, "%", "/"
)

var byteClass = func() (t [256]uint8) {
	for c := range t {
		switch {
		case c == ' ', c == '\t', c == '\r':
			t[c] = blankByte
		case c >= '0' && c <= '9':
			t[c] = digitByte | wordByte | unitByte
		case c >= 'a' && c <= 'z':
			t[c] = smallByte | wordByte | unitByte
		case c >= 'A' && c <= 'Z':
			t[c] = capitalByte | wordByte | unitByte
		case c == '_':
			t[c] = wordByte
		case c == '%', c == '/':
			t[c] = unitByte
		}
	}
	return t
}()

func isDigit(c byte) bool  { return byteClass[c]&digitByte != 0 }
func isLetter(c byte) bool { return byteClass[c]&(smallByte|capitalByte) != 0 }
func isBlank(c byte) bool  { return byteClass[c]&blankByte != 0 }

func (l *scanner) next() {
	c := l.text[l.at]
	class := byteClass[c]
	switch {
	case class&digitByte != 0:
		l.number(l.at)
	case (l.last == NumberToken || l.last == PairToken) && isUnitStart(l.text[l.at:]) && !isReason(l.text[l.at:]):
		l.add(UnitToken, l.at+unitLen(l.text[l.at:]))
	case class&smallByte != 0:
		l.word(WordToken)
	case class&capitalByte != 0:
		l.word(NameToken)
	case c == '#':
		end := len(l.text)
		if end > l.at && l.text[end-1] == '\r' {
			end--
		}
		l.add(CommentToken, end)
		l.at = len(l.text)
	case c == '"':
		l.quoted()
	case c == '-' && isDigit(l.peek(l.at+1)) && l.signed():
		l.number(l.at + 1)
	default:
		l.symbol(c)
	}
}

// isReason tells the word that gives the reason of a requirement: behind a number
// it is no unit, as in "require A / B <= 3 because ...".
func isReason(s string) bool {
	const word = "because"
	return strings.HasPrefix(s, word) && unitLen(s) == len(word)
}

// signed tells whether a minus belongs to the number behind it: not after a
// value without a blank, where it would be an operator that lacks its blanks.
func (l *scanner) signed() bool {
	if l.at == l.start {
		return true
	}
	switch l.text[l.at-1] {
	case ' ', '\t', '\r', '(', ',', '.', '{', '}':
		return true
	}
	return false
}

// quoted reads a text. One that is not closed ends with the line, before its
// last blanks.
func (l *scanner) quoted() {
	if i := strings.IndexByte(l.text[l.at+1:], '"'); i >= 0 {
		l.add(TextToken, l.at+i+2)
		return
	}
	end := len(l.text)
	for isBlank(l.text[end-1]) {
		end--
	}
	l.add(UnclosedToken, end)
	l.at = len(l.text)
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
		if byteClass[c]&unitByte != 0 {
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
	i, text := l.at+1, l.text
	for {
		for i < len(text) && byteClass[text[i]]&wordByte != 0 {
			i++
		}
		if i == len(text) {
			break
		}
		c := text[i]
		if (c == '-' || c == '.') && i+1 < len(l.text) && byteClass[l.text[i+1]]&(smallByte|capitalByte|digitByte) != 0 {
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
	case s[0] == 'M':
		i = 1
	case strings.HasPrefix(s, "DN"), strings.HasPrefix(s, "PN"):
		i = 2
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
