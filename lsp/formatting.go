package lsp

import (
	"encoding/json"
	"strings"

	"example.org/tundish/lang"
)

var _ = on("textDocument/formatting", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, _ docPosition, _ json.RawMessage) (any, error) {
	return s.formatEdits(d, a, 0, d.src.Lines()), nil
}))

var _ = on("textDocument/rangeFormatting", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, _ json.RawMessage) (any, error) {
	w := s.enc.span(d.src, p.Range)
	return s.formatEdits(d, a, d.src.LineOf(w.Start), d.src.LineOf(w.End)), nil
}))

var _ = on("textDocument/onTypeFormatting", onDocument(func(s *Server, _ *snapshot, d *document, a *analysis, p docPosition, raw json.RawMessage) (any, error) {
	q, err := decode[struct {
		Ch string `json:"ch"`
	}](raw)
	if err != nil {
		return nil, err
	}
	line := d.src.LineOf(s.enc.offset(d.src, p.Position))
	if q.Ch == "\n" {
		line-- // the line that was just finished
	}
	if line < 0 {
		return []object{}, nil
	}
	return s.formatEdits(d, a, line, line), nil
}))

// formatEdits gives the edits that make lines canonical: only lines that
// differ, and of a line only the stretch that differs, because some clients
// mangle whole lines.
func (s *Server) formatEdits(d *document, a *analysis, from, to int) []object {
	old := strings.Split(d.src.Text, "\n")
	want := strings.Split(lang.Format(a.rep.Plant.File), "\n")
	out := []object{}
	for _, h := range hunks(old, want) {
		if h.oldEnd <= from && !(h.oldStart == h.oldEnd && h.oldStart >= from) || h.oldStart > to {
			continue
		}
		start, end := d.src.LineStart(h.oldStart), d.src.LineStart(h.oldEnd)
		if h.oldEnd >= len(old) {
			end = len(d.src.Text)
		}
		text := strings.Join(want[h.newStart:h.newEnd], "\n")
		if h.newEnd > h.newStart && h.oldEnd < len(old) {
			text += "\n"
		} else if h.newEnd > h.newStart && h.newEnd < len(want) {
			text += "\n"
		}
		was := d.src.Text[start:end]
		// Trim what both share.
		pre := 0
		for pre < len(was) && pre < len(text) && was[pre] == text[pre] {
			pre++
		}
		for pre > 0 && pre < len(was) && was[pre]&0xC0 == 0x80 {
			pre--
		}
		post := 0
		for post < len(was)-pre && post < len(text)-pre && was[len(was)-1-post] == text[len(text)-1-post] {
			post++
		}
		for post > 0 && was[len(was)-post]&0xC0 == 0x80 {
			post--
		}
		out = append(out, object{"range": s.enc.rangeOf(d.src, lang.Span{Start: start + pre, End: end - post}), "newText": text[pre : len(text)-post]})
	}
	return out
}

type hunk struct{ oldStart, oldEnd, newStart, newEnd int }

// hunks aligns two lists of lines: lines that are equal but for blanks belong
// together, and only blank lines come and go.
func hunks(old, want []string) []hunk {
	squeeze := func(l string) string { return strings.Join(strings.Fields(l), " ") }
	var out []hunk
	i, j := 0, 0
	for i < len(old) || j < len(want) {
		switch {
		case i < len(old) && j < len(want) && old[i] == want[j]:
			i, j = i+1, j+1
		case i < len(old) && strings.TrimSpace(old[i]) == "" && (j >= len(want) || strings.TrimSpace(want[j]) != ""):
			out = append(out, hunk{i, i + 1, j, j})
			i++
		case j < len(want) && strings.TrimSpace(want[j]) == "" && (i >= len(old) || strings.TrimSpace(old[i]) != ""):
			out = append(out, hunk{i, i, j, j + 1})
			j++
		case i < len(old) && j < len(want):
			// One line may become several ("a { b }"): join until the words agree.
			k, l := i+1, j+1
			have, need := squeeze(old[i]), squeeze(want[j])
			for sorted(have) != sorted(need) && (k < len(old) || l < len(want)) {
				if len(have) <= len(need) && k < len(old) {
					have += " " + squeeze(old[k])
					k++
				} else if l < len(want) {
					need += " " + squeeze(want[l])
					l++
				} else {
					k = len(old)
					break
				}
			}
			out = append(out, hunk{i, k, j, l})
			i, j = k, l
		case i < len(old):
			out = append(out, hunk{i, len(old), j, j})
			i = len(old)
		default:
			out = append(out, hunk{i, i, j, len(want)})
			j = len(want)
		}
	}
	return out
}

// sorted counts the letters of a line without order: the formatter moves words.
func sorted(s string) [256]int {
	var n [256]int
	for i := 0; i < len(s); i++ {
		if s[i] != ' ' {
			n[s[i]]++
		}
	}
	return n
}
