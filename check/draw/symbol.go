package draw

import (
	"fmt"

	"example.org/tundish/check/plant"
)

// symbol is a shape around its center, drawn for a flow to the right. Valves,
// pumps, check valves, filters, exchangers and vessels follow the usual forms
// of ISO 14617 and EN ISO 10628 (read: from memory); the others are plain
// shapes of our own.
type symbol struct {
	w, h float64
	body string // of shapes that take stroke and fill of the group
}

var symbols = map[string]symbol{
	"valve":      {20, 14, `<path d="M-10 -6L10 6V-6L-10 6Z"/>`},
	"actuated":   {20, 34, `<path d="M-10 -6L10 6V-6L-10 6Z"/><path d="M0 0V-9" fill="none"/><rect x="-7" y="-17" width="14" height="8"/>`},
	"regulator":  {20, 34, `<path d="M-10 -6L10 6V-6L-10 6Z"/><path d="M0 0V-9" fill="none"/><path d="M-9 -9A9 9 0 0 1 9 -9Z"/>`},
	"check":      {18, 14, `<path d="M-8 -6L7 0L-8 6Z"/><path d="M8 -6V6" fill="none"/>`},
	"pump":       {22, 22, `<circle r="11"/><path d="M-5.5 -9.5L11 0L-5.5 9.5" fill="none"/>`},
	"strainer":   {20, 14, `<rect x="-10" y="-7" width="20" height="14"/><path d="M-10 7L10 -7" fill="none" stroke-dasharray="3 2"/>`},
	"filter":     {20, 16, `<rect x="-10" y="-8" width="20" height="16"/><path d="M0 -8V8" fill="none" stroke-dasharray="3 2"/>`},
	"separator":  {34, 150, `<rect x="-17" y="-75" width="34" height="150" rx="15"/><path d="M0 -58V58" fill="none" stroke-dasharray="6 4"/>`},
	"exchanger":  {44, 150, `<rect x="-22" y="-75" width="44" height="150"/><path d="M-22 75L22 -75" fill="none"/>`},
	"vessel":     {30, 44, `<rect x="-15" y="-22" width="30" height="44" rx="13"/><path d="M-15 2C-7 9 7 -5 15 2" fill="none"/>`},
	"relief":     {26, 26, `<path d="M0 0L-6 11H6Z"/><path d="M0 0L11 -6V6Z"/><path d="M0 0V-5L-4 -6L4 -8L-4 -10L4 -12L0 -13" fill="none"/>`},
	"meter":      {28, 28, `<circle r="14"/>`},
	"booster":    {24, 24, `<circle r="12"/><path d="M-8 -9L11 -5M-8 9L11 5" fill="none"/>`},
	"damper":     {16, 16, `<path d="M-8 -6V6M8 -6V6M-7 5L6 -5" fill="none"/><circle cx="6" cy="-5" r="1.8" fill="#222222"/>`},
	"trap":       {16, 18, `<path d="M0 -9V-6H-6V3A3 3 0 0 0 0 3V-2A3 3 0 0 1 6 -2V6H0V9" fill="none"/>`},
	"neutralise": {46, 26, `<rect x="-23" y="-13" width="46" height="26"/><path d="M-23 -5H23" fill="none" stroke-dasharray="3 2"/>`},
	"gully":      {26, 20, `<path d="M-13 -10L-6 2V10H6V2L13 -10" fill="none"/>`},
	"tundish":    {20, 20, `<path d="M-10 -10L0 2L10 -10M0 2V10" fill="none"/>`},
	"terminal":   {24, 22, `<path d="M-6 11V0L-11 -6H11L6 0V11" fill="none"/><path d="M0 -6V-11" fill="none"/>`},
	"load":       {44, 26, `<rect x="-22" y="-13" width="44" height="26"/><path d="M-14 7V-7M-5 7V-7M5 7V-7M14 7V-7" fill="none"/>`},
	"blank":      {6, 18, `<path d="M-2 -9V9M2 -9V9" fill="none"/>`},
	"vent":       {10, 14, `<path d="M0 7V0" fill="none"/><path d="M-5 0H5L0 -7Z"/>`},
	"drain":      {10, 14, `<path d="M0 -7V0" fill="none"/><path d="M-5 0H5L0 7Z"/>`},
	"source":     {20, 20, `<path d="M-10 -8H2L10 0L2 8H-10Z"/>`},
	"unit":       {76, 78, `<rect x="-38" y="-39" width="76" height="78"/><path d="M-24 30H24M-18 30L-12 18L-6 30L0 18L6 30L12 18L18 30" fill="none"/><path d="M-28 2H-20L-15 -8L-5 12L5 -8L15 12L20 2H28" fill="none"/>`},
}

// sym draws a symbol in the style of a part; turn is in degrees clockwise.
func (c *canvas) sym(name string, part *plant.Part, x, y float64, turn int) box {
	s := symbols[name]
	st := strokes[c.marks.Of(part).Band]
	width := min(st.width, 3.2)
	fill := "#ffffff"
	switch c.marks.Of(part).Band {
	case Over:
		fill = "#f3c6cf"
	case Unknown:
		fill = "#e2e2e2"
	}
	fmt.Fprintf(&c.syms, `<g transform="translate(%s %s) rotate(%d)" fill="%s" stroke="%s" stroke-width="%s" stroke-linejoin="round">%s</g>`+"\n", num(x), num(y), turn, fill, st.color, num(width), s.body)
	w, h := s.w, s.h
	if turn == 90 || turn == -90 || turn == 270 {
		w, h = h, w
	}
	b := around(x, y, w, h)
	switch {
	case turn == 0 && (name == "actuated" || name == "regulator"):
		b = box{x - 10, y - 18, x + 10, y + 7}
	case turn == -90 && (name == "actuated" || name == "regulator"):
		b = box{x - 18, y - 10, x + 7, y + 10}
	}
	c.solid = append(c.solid, b)
	c.cover(b)
	return b
}
