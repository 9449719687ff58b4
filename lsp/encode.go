package lsp

import (
	"encoding/json"
	"strconv"
	"unicode/utf8"

	"go.lsp.dev/protocol"
)

// object is a JSON object whose shape the protocol makes a union of; writing it
// out is clearer than the library's union types.
type object = map[string]any

// encode gives the JSON of a result. The library's types know how to write
// themselves; objects that hold them go through it too. What is JSON already
// stays as it is.
func encode(v any) (json.RawMessage, error) {
	switch v := v.(type) {
	case nil:
		return json.RawMessage("null"), nil
	case json.RawMessage:
		return v, nil
	}
	b, err := protocol.Marshal(v)
	return json.RawMessage(b), err
}

// The lists that grow with the text, diagnostics and semantic tokens, are
// written by hand: in a long file that takes a tenth of the time.

func appendRange(b []byte, r protocol.Range) []byte {
	b = append(b, `{"start":{"line":`...)
	b = strconv.AppendUint(b, uint64(r.Start.Line), 10)
	b = append(b, `,"character":`...)
	b = strconv.AppendUint(b, uint64(r.Start.Character), 10)
	b = append(b, `},"end":{"line":`...)
	b = strconv.AppendUint(b, uint64(r.End.Line), 10)
	b = append(b, `,"character":`...)
	b = strconv.AppendUint(b, uint64(r.End.Character), 10)
	return append(b, `}}`...)
}

// appendString writes a JSON string; bytes that are no UTF-8 become U+FFFD.
func appendString(b []byte, s string) []byte {
	const hex = "0123456789abcdef"
	b = append(b, '"')
	from := 0
	for i := 0; i < len(s); {
		c := s[i]
		if c >= ' ' && c != '"' && c != '\\' && c < utf8.RuneSelf {
			i++
			continue
		}
		if c >= utf8.RuneSelf {
			r, size := utf8.DecodeRuneInString(s[i:])
			if r != utf8.RuneError || size > 1 {
				i += size
				continue
			}
		}
		b = append(b, s[from:i]...)
		switch {
		case c == '"' || c == '\\':
			b = append(b, '\\', c)
		case c == '\n':
			b = append(b, `\n`...)
		case c == '\t':
			b = append(b, `\t`...)
		case c < ' ':
			b = append(b, `\u00`...)
			b = append(b, hex[c>>4], hex[c&15])
		default:
			b = append(b, `\ufffd`...)
		}
		i++
		from = i
	}
	b = append(b, s[from:]...)
	return append(b, '"')
}

func appendNumbers(b []byte, list []uint32) []byte {
	b = append(b, '[')
	for i, n := range list {
		if i > 0 {
			b = append(b, ',')
		}
		b = strconv.AppendUint(b, uint64(n), 10)
	}
	return append(b, ']')
}
