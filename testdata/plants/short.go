package plants

import (
	_ "embed"
	"math/rand/v2"
	"strings"
	"text/template"
)

//go:embed short.txt
var shortText string

var shortTemplate = template.Must(template.New("short").Parse(shortText))

// Short gives the text of a sound plant in the fewest words that leave no
// question open, about 3 kB. The same source of random numbers gives the same
// text.
func Short(r *rand.Rand) string {
	v := draw(r)
	v.Name, _, _ = strings.Cut(v.Name, ",")
	return write(shortTemplate, v)
}

// Seeded puts a fault that fits into a text, drawn at random; it is nil where
// none of a hundred fits. Faults that are the size of the text are left out: they
// would make an archive of another kind.
func Seeded(r *rand.Rand, text string) (string, *Fault) {
	for range 100 {
		f := &Faults[r.IntN(len(Faults))]
		if broken, ok := f.Break(text); ok && len(broken) < 2*len(text) {
			return broken, f
		}
	}
	return text, nil
}
