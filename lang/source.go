package lang

import (
	"sort"
	"strings"
	"sync"
	"unicode/utf8"

	"example.org/tundish/lang/slab"
)

// Source is the text of one file with its line table.
type Source struct {
	Name  string // path as the user gave it, or a label such as "<stdin>"
	Text  string
	lines []int // offset of the first byte of each line
}

// sources holds sources that were given back, for their line tables.
var sources = sync.Pool{New: func() any { return &Source{} }}

// release gives the line table back for the next source.
func (s *Source) release() {
	if s != nil && cap(s.lines) <= slab.Kept {
		*s = Source{lines: s.lines[:0]}
		sources.Put(s)
	}
}

// NewSource indexes the lines of a text. Lines end at "\n"; a "\r" before it
// belongs to the line end.
func NewSource(name, text string) *Source {
	s, n := sources.Get().(*Source), strings.Count(text, "\n")+1
	if cap(s.lines) < n {
		s.lines = make([]int, 0, n)
	}
	s.Name, s.Text, s.lines = name, text, append(s.lines, 0)
	for at := 0; ; {
		i := strings.IndexByte(text[at:], '\n')
		if i < 0 {
			return s
		}
		at += i + 1
		s.lines = append(s.lines, at)
	}
}

// Lines is the number of lines; a text without a line end has one.
func (s *Source) Lines() int { return len(s.lines) }

// LineStart is the offset of the first byte of a 0-based line.
func (s *Source) LineStart(line int) int {
	switch {
	case line < 0:
		return 0
	case line >= len(s.lines):
		return len(s.Text)
	}
	return s.lines[line]
}

// LineOf is the 0-based line that holds the offset.
func (s *Source) LineOf(offset int) int {
	return sort.Search(len(s.lines), func(i int) bool { return s.lines[i] > offset }) - 1
}

// Position gives the 1-based line and column of an offset; columns count
// Unicode code points, an invalid byte counts as one.
func (s *Source) Position(offset int) (line, column int) {
	offset = max(0, min(offset, len(s.Text)))
	l := s.LineOf(offset)
	return l + 1, utf8.RuneCountInString(s.Text[s.lines[l]:offset]) + 1
}

// Offset is the inverse of Position; a column past the line's end gives the
// line's end.
func (s *Source) Offset(line, column int) int {
	start, end := s.LineStart(line-1), s.LineStart(line)
	if end > start && line < len(s.lines)+1 && end <= len(s.Text) && end > 0 && s.Text[end-1] == '\n' {
		end--
	}
	for column > 1 && start < end {
		_, n := utf8.DecodeRuneInString(s.Text[start:end])
		start += n
		column--
	}
	return start
}
