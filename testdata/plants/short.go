package plants

import (
	"math/rand/v2"
	"regexp"
	"strings"
)

// later are the blocks and lines that a plant in an early stage of design does
// not have yet.
var later = regexp.MustCompile(`(?ms)^(frame Frame-A|room|electrical|insulation|water-quality|tests|handover) ?[^\n]*\{\n.*?^\}\n\n?`)

var laterLines = regexp.MustCompile(`(?m)^(  (strainer|thermometer     on|pressure-gauge  on|sleeve|purge-point|test-point|cap             DN20 2 off|isolator|frost|strategy|cycling|heat-detector).*|caution (height|electrical|legionella|lifting|tip-over|hot-surface).*|person (F1|K1).*|#.*|require .*)\n`)

// Short gives a plant in an early stage of design, about 5 kB. What it states is
// sound; the rules miss what it does not state yet.
func Short(r *rand.Rand) string {
	text := later.ReplaceAllString(Sound(r), "")
	text = laterLines.ReplaceAllString(text, "")
	return regexp.MustCompile(` {2,}(\S)`).ReplaceAllStringFunc(text, func(s string) string {
		if strings.HasPrefix(s, "   ") {
			return " " + s[len(s)-1:] // columns cost bytes and no meaning
		}
		return s
	})
}
