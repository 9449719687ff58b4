package report

import (
	"strings"
	"unicode/utf8"
)

// Wrap breaks a text into lines of at most width characters at blanks; a longer
// word has a line of its own.
func Wrap(text string, width int) string {
	var b strings.Builder
	col := 0
	for _, w := range strings.Fields(text) {
		n := utf8.RuneCountInString(w)
		switch {
		case col == 0:
		case col+1+n > width:
			b.WriteByte('\n')
			col = 0
		default:
			b.WriteByte(' ')
			col++
		}
		b.WriteString(w)
		col += n
	}
	return b.String()
}
