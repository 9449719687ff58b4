package lsp

import "example.org/tundish/lang"

// lineMap leads from the lines of an older text to those of a newer one, so that
// what was computed before an edit stays beside its statement while the edit
// goes on. Lines before the first and after the last difference keep their
// neighbors; of the rest, those that still stand at the same place.
type lineMap struct {
	same          bool
	before, after int // first lines that differ; last lines that are equal, counted from the end
	old, new      int // number of lines
}

func mapLines(from, to *lang.Source) lineMap {
	m := lineMap{same: from == to || from.Text == to.Text, old: from.Lines(), new: to.Lines()}
	if m.same {
		return m
	}
	short := min(m.old, m.new)
	for m.before < short && lineText(from, m.before) == lineText(to, m.before) {
		m.before++
	}
	for m.after < short-m.before && lineText(from, m.old-1-m.after) == lineText(to, m.new-1-m.after) {
		m.after++
	}
	return m
}

// line is where a line of the older text stands now; ok is false when it is gone.
func (m lineMap) line(n int) (now int, ok bool) {
	switch {
	case m.same || n < m.before:
		return n, true
	case n >= m.old-m.after:
		return n + m.new - m.old, true
	}
	return n, n < m.new-m.after
}

func lineText(src *lang.Source, n int) string { return src.Text[src.LineStart(n):src.LineStart(n+1)] }
