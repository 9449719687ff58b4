package reference

import (
	_ "embed"
	"errors"
	"fmt"
	"html/template"
	"io"
	"strings"
	"sync"

	"example.org/tundish/check"
)

//go:embed style.css
var style string

//go:embed rules.html
var rulesText string

// rulesPage is read when the first page is written.
var rulesPage = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("rules").Funcs(template.FuncMap{"heading": heading, "anchor": groupAnchor}).Parse(rulesText))
})

// group is one group of rules on the page.
type group struct {
	Name  string
	Rules []shown
}

// shown is a rule with its example; nil without one.
type shown struct {
	Rule
	Example *Example
}

// page is what a page of rules shows.
type page struct {
	Style   template.CSS
	Version string
	Groups  []group
	Count   int
}

// WriteRulesHTML writes the rules as one page that is whole in itself: no script,
// no link outside. The id of a rule is its anchor, so that "#trap-missing" leads
// to the rule trap-missing. The examples are run against all, the rules of the
// engine; that takes some tenths of a second for every rule there is, so callers
// that need the page often keep it. version is that of the tool.
func WriteRulesHTML(w io.Writer, list []Rule, all []*check.Rule, version string) error {
	groups, err := grouped(list, all)
	if err != nil {
		return err
	}
	return rulesPage().Execute(w, page{template.CSS(style), version, groups, len(list)}) //nolint:gosec // our own style sheet
}

// grouped puts rules into their groups, in the order in which groups first come,
// and runs the examples.
func grouped(list []Rule, all []*check.Rule) ([]group, error) {
	var out []group
	at := map[string]int{}
	for i := range list {
		s := shown{Rule: list[i]}
		x, err := list[i].Example(all)
		if err != nil && !errors.Is(err, ErrNoExample) {
			return nil, err
		}
		s.Example = x
		g, ok := at[s.Group]
		if !ok {
			g = len(out)
			at[s.Group] = g
			out = append(out, group{Name: s.Group})
		}
		out[g].Rules = append(out[g].Rules, s)
	}
	return out, nil
}

func heading(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

func groupAnchor(name string) string { return "group-" + strings.ReplaceAll(name, " ", "-") }

// Where tells in words what the lines of an example show.
func (x *Example) Where() string {
	what := "A plant that passes differs from it so"
	if x.ByTool {
		what = "The mend that the tool offers changes it so"
	}
	if x.Left == 0 {
		return what + "; then the rule is silent."
	}
	return fmt.Sprintf("%s; then the rule still speaks %d times.", what, x.Left)
}
