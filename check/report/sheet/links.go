package sheet

import (
	"fmt"
	"html/template"
	"regexp"
	"strings"
	"sync"

	"example.org/tundish/check/draw"
)

var partLink = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`<a href="#([^"]*)">`) })

// links leads the names in the figures to the calculation of their part, or to
// its statement where nothing was computed for it.
func (b *builder) links() {
	has := map[string]bool{}
	for _, bl := range b.s.Blocks {
		for _, k := range bl.Kinds {
			for _, st := range k.Stated {
				for _, p := range st.Parts {
					has[p.ID] = true
				}
			}
		}
	}
	line := map[string]int{}
	for _, x := range b.rep.Plant.All {
		if x.Stmt != nil && x.File == b.rep.Plant.File {
			n, _ := x.File.Source.Position(x.Stmt.Base)
			line[draw.Anchor(x.Address())] = n
		}
	}
	figures := append([]Figure(nil), b.s.Options.Figures...)
	for i := range figures {
		svg := partLink().ReplaceAllStringFunc(string(figures[i].SVG), func(a string) string {
			id := partLink().FindStringSubmatch(a)[1]
			if n := line[id]; !has[id] && n > 0 {
				return strings.Replace(a, "#"+id, fmt.Sprintf("#line-%d", n), 1)
			}
			return a
		})
		figures[i].SVG = template.HTML(svg) //nolint:gosec // the drawing's own markup, with other targets
	}
	b.s.Options.Figures = figures
}
