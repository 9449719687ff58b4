package lang

// Span is a stretch of text by byte offsets, end exclusive. Spans inside a Head
// count from the start of the statement, so that a cached Head serves wherever
// the same text stands; Statement.Abs turns them into offsets in the file.
type Span struct{ Start, End int }

// Empty reports whether the span covers no text.
func (s Span) Empty() bool { return s.End <= s.Start }

// Add shifts the span by base bytes.
func (s Span) Add(base int) Span { return Span{s.Start + base, s.End + base} }

// Contains reports whether the offset lies in the span; the end counts, because
// a cursor right after a word still belongs to it.
func (s Span) Contains(offset int) bool { return s.Start <= offset && offset <= s.End }

// Join gives the smallest span that covers both.
func (s Span) Join(t Span) Span {
	if s.Empty() {
		return t
	}
	if t.Empty() {
		return s
	}
	return Span{min(s.Start, t.Start), max(s.End, t.End)}
}
