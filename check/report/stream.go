package report

import (
	"bytes"
	"encoding/json"
	"io"

	"example.org/tundish/check"
)

// Stream writes a Document while its findings come, in the same bytes as
// Document.Write. Findings go out at once; open questions stand behind them and
// wait in a Spool.
type Stream struct {
	w     io.Writer
	open  Spool
	files int
	begun bool
	found bool
	err   error
}

// Spool keeps bytes until they are asked for; a bytes.Buffer is one.
type Spool interface {
	io.Writer
	io.WriterTo
}

// NewStream begins a document; shard is nil for a whole run.
func NewStream(w io.Writer, t Tool, shard *Shard, open Spool) *Stream {
	s := &Stream{w: w, open: open}
	s.text("{\n  \"tool\": ", inner(t, "  "))
	if shard != nil {
		s.text(",\n  \"shard\": ", inner(shard, "  "))
	}
	s.text(",\n  \"findings\": [")
	return s
}

func (s *Stream) text(parts ...string) {
	for _, p := range parts {
		if s.err == nil {
			_, s.err = io.WriteString(s.w, p)
		}
	}
}

// inner is the JSON form of a value inside a document.
func inner(v any, indent string) string {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent(indent, "  ")
	if err := enc.Encode(v); err != nil {
		return "null" // texts and whole numbers always have a form
	}
	return string(bytes.TrimSuffix(b.Bytes(), []byte("\n")))
}

// Findings is the form that findings have in a Stream; it may be made beside the
// stream and is handed to Add.
func Findings(list []JSONFinding) []byte { return members(list) }

// Unknowns is the form that open questions have in a Stream.
func Unknowns(list []JSONUnknown) []byte { return members(list) }

func members[T any](list []T) []byte {
	if len(list) == 0 {
		return nil
	}
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("    ", "  ")
	for i := range list {
		if i > 0 {
			b.Truncate(b.Len() - 1) // the line end of the encoder
			b.WriteByte(',')
		}
		b.WriteString("\n    ")
		if err := enc.Encode(&list[i]); err != nil {
			b.WriteString("null\n")
		}
	}
	return b.Bytes()[:b.Len()-1]
}

// Add writes one file's findings and open questions, as Findings and Unknowns give
// them.
func (s *Stream) Add(findings, unknowns []byte) error {
	s.files++
	if len(findings) > 0 {
		if s.found {
			s.text(",")
		}
		s.found = true
		if s.err == nil {
			_, s.err = s.w.Write(findings)
		}
	}
	if len(unknowns) > 0 && s.err == nil {
		if s.begun {
			_, s.err = s.open.Write([]byte(","))
		}
		s.begun = true
		if s.err == nil {
			_, s.err = s.open.Write(unknowns)
		}
	}
	return s.err
}

// Close writes the rest of the document.
func (s *Stream) Close() error {
	if s.found {
		s.text("\n  ")
	}
	s.text("],\n  \"notEvaluated\": [")
	if s.begun {
		if s.err == nil {
			_, s.err = s.open.WriteTo(s.w)
		}
		s.text("\n  ")
	}
	s.text("],\n  \"files\": ", inner(s.files, ""), "\n}\n")
	return s.err
}

// openQuestion gives the JSON form of an open question.
func openQuestion(name string, rep *check.Report, u *check.Unknown) JSONUnknown {
	line, _ := place(u.File, u.Span)
	return JSONUnknown{File: fileName(name, rep, u.File), Line: line, Rule: u.Rule, Part: u.Part, Needs: u.Needs}
}
