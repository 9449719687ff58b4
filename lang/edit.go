package lang

import (
	"slices"
	"strings"
)

// Apply makes edits to a text. Edits that overlap an earlier one are left out,
// and so is an exact repeat; the rest of the text stays to the byte.
func Apply(text string, edits []Edit) string {
	if len(edits) == 0 {
		return text
	}
	list := slices.Clone(edits)
	slices.SortStableFunc(list, func(a, b Edit) int {
		if a.Span.Start != b.Span.Start {
			return a.Span.Start - b.Span.Start
		}
		return a.Span.End - b.Span.End
	})
	var b strings.Builder
	at := 0
	for i, e := range list {
		if e.Span.Start < at || e.Span.End < e.Span.Start || e.Span.End > len(text) {
			continue
		}
		if i > 0 && e.Span == list[i-1].Span && e.NewText == list[i-1].NewText {
			continue
		}
		b.WriteString(text[at:e.Span.Start])
		b.WriteString(e.NewText)
		at = e.Span.End
	}
	b.WriteString(text[at:])
	return b.String()
}
