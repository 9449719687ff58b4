// Package draw makes the drawings of a plant as SVG: the schematic, the
// elevation of the frame and the flue with its falls. Positions are computed
// from the resolved plant, lines are styled by the share of their limit that is
// used, and labels are placed so that none covers another. Each drawing is one
// self-contained <svg> element that can stand in a page or in a file.
package draw

import (
	"strings"

	"example.org/tundish/check/plant"
)

// Anchor is the id under which a page keeps the calculation of the part with
// this address: "calc-" and the address with every character that an id or a
// link would have to escape written as its code. Drawings link part names to
// "#" + Anchor(address).
func Anchor(address string) string {
	var b strings.Builder
	b.WriteString("calc-")
	for _, r := range address {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-', r == '.', r == '_':
			b.WriteRune(r)
		default:
			b.WriteString("_" + hex(r) + "_")
		}
	}
	return b.String()
}

func hex(r rune) string {
	const digits = "0123456789abcdef"
	var out []byte
	for ; r > 0; r >>= 4 {
		out = append([]byte{digits[r&15]}, out...)
	}
	return string(out)
}

// Title is the heading of a drawing: what it shows and of which plant.
func Title(what string, p *plant.Plant) string {
	head := p.Root.Child("plant")
	if head == nil {
		return what
	}
	if v := head.Get("title"); v.Known() {
		what += " — " + v.Word
	}
	if v := head.Get("revision"); v.Known() {
		what += ", revision " + v.Word
	}
	return what
}

// asWritten is a value as the text writes it, "DN50" or "16 m", without the label
// before and the word behind it; empty without one.
func asWritten(v plant.Value) string {
	if !v.Known() || v.Field == nil || v.File == nil {
		return ""
	}
	s := v.Span()
	text := v.File.Source.Text
	if s.Start < 0 || s.End > len(text) || s.Start >= s.End {
		return ""
	}
	out := strings.Join(strings.Fields(text[s.Start:s.End]), " ")
	out = strings.TrimPrefix(out, v.Slot.Label+" ")
	return strings.TrimSuffix(out, " "+v.Slot.Suffix)
}
