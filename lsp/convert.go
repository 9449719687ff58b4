package lsp

import (
	"unicode/utf8"

	"go.lsp.dev/protocol"

	"example.org/tundish/lang"
)

// This file alone maps byte offsets of the engine to positions of the protocol.

// encoding is the unit in which a client counts characters of a line.
type encoding uint8

const (
	utf16 encoding = iota // the protocol's default
	utf8Bytes
)

// position gives the protocol's position of an offset.
func (e encoding) position(src *lang.Source, offset int) protocol.Position {
	offset = max(0, min(offset, len(src.Text)))
	line := src.LineOf(offset)
	start := src.LineStart(line)
	return protocol.Position{Line: uint32(line), Character: uint32(e.units(src.Text[start:offset]))}
}

// units counts a stretch of a line.
func (e encoding) units(s string) int {
	if e == utf8Bytes {
		return len(s)
	}
	n := 0
	for i := 0; i < len(s); {
		if s[i] < utf8.RuneSelf {
			i++
			n++
			continue
		}
		r, size := utf8.DecodeRuneInString(s[i:])
		i += size
		n++
		if r >= 0x10000 {
			n++
		}
	}
	return n
}

// offset is the inverse of position. A position past the end of its line gives
// the line's end, one past the text the text's end: a client may ask before the
// server has seen its last change.
func (e encoding) offset(src *lang.Source, p protocol.Position) int {
	line := int(min(p.Line, 1<<30))
	if line >= src.Lines() {
		return len(src.Text)
	}
	start := src.LineStart(line)
	at, end := start, src.LineStart(line+1)
	for end > at && (src.Text[end-1] == '\n' || src.Text[end-1] == '\r') {
		end--
	}
	want := int(min(p.Character, 1<<30))
	if e == utf8Bytes {
		at = min(at+want, end)
		for at > start && at < len(src.Text) && !utf8.RuneStart(src.Text[at]) {
			at--
		}
		return at
	}
	for n := 0; at < end && n < want; {
		r, size := utf8.DecodeRuneInString(src.Text[at:])
		n++
		if r >= 0x10000 {
			n++
		}
		if n > want {
			break // inside a surrogate pair: before the character
		}
		at += size
	}
	return at
}

func (e encoding) rangeOf(src *lang.Source, s lang.Span) protocol.Range {
	return protocol.Range{Start: e.position(src, s.Start), End: e.position(src, s.End)}
}

func (e encoding) span(src *lang.Source, r protocol.Range) lang.Span {
	s := lang.Span{Start: e.offset(src, r.Start), End: e.offset(src, r.End)}
	if s.End < s.Start {
		s.Start, s.End = s.End, s.Start
	}
	return s
}
