package draw

import (
	"sync"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// FontFamily asks for faces with the widths that TextWidth reckons with; every
// text carries its textLength, so that another face is set to the same width.
const FontFamily = "Helvetica, Arial, 'Liberation Sans', sans-serif"

type face struct {
	mu   sync.Mutex
	font *sfnt.Font
	buf  sfnt.Buffer
}

var faces = sync.OnceValue(func() [2]*face {
	var out [2]*face
	for i, ttf := range [][]byte{liberationsansregular.TTF, liberationsansbold.TTF} {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			panic("draw: the font of the metrics cannot be read: " + err.Error()) // the font is compiled in
		}
		out[i] = &face{font: f}
	}
	return out
})

// TextWidth is the width of a text in px at a size in px.
func TextWidth(text string, size float64, bold bool) float64 {
	f := faces()[0]
	if bold {
		f = faces()[1]
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	const ppem = 1000
	sum := 0.0
	for _, r := range text {
		g, err := f.font.GlyphIndex(&f.buf, r)
		if err != nil {
			sum += ppem
			continue
		}
		adv, err := f.font.GlyphAdvance(&f.buf, g, fixed.I(ppem), 0)
		if err != nil {
			sum += ppem
			continue
		}
		sum += float64(adv) / 64
	}
	return sum * size / ppem
}
