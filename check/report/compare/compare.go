// Package compare tells what changed between two revisions of a specification:
// in what it states, in what was computed, in its margins and in its findings.
package compare

import (
	"math"
	"strings"

	"example.org/tundish/check"
	"example.org/tundish/check/report"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// Changes are the differences from one revision to the next.
type Changes struct {
	Inputs   []Input   `json:"inputs"`
	Values   []Value   `json:"values"`
	Margins  []Margin  `json:"margins"`
	Findings []Finding `json:"findings"`
	Open     []Finding `json:"notEvaluated"`
}

// Input is a statement that came, went or changed.
type Input struct {
	Where string `json:"where"` // the block, empty at the top
	What  string `json:"what"`  // added, removed or changed
	Was   string `json:"was,omitempty"`
	Is    string `json:"is,omitempty"`
	Line  int    `json:"line"` // in the newer revision; of a removed one in the older
}

// Value is a computed value that differs.
type Value struct {
	Path string `json:"path"`
	Was  string `json:"was"` // empty: it was not computed
	Is   string `json:"is"`
}

// Margin is a limit of which another share is used, or that broke or holds again.
type Margin struct {
	Rule  string  `json:"rule"`
	Path  string  `json:"path"`
	Was   float64 `json:"was"` // share of the limit that was used
	Is    float64 `json:"is"`
	Broke bool    `json:"broke"` // it held and does not any more
	Mends bool    `json:"mends"` // it holds again
}

// Finding is one that is new or gone.
type Finding struct {
	What     string `json:"what"` // new or gone
	Rule     string `json:"rule"`
	Severity string `json:"severity,omitempty"`
	Part     string `json:"part"`
	Message  string `json:"message"`
	Line     int    `json:"line"`
}

// Empty reports that nothing differs.
func (c *Changes) Empty() bool {
	return len(c.Inputs)+len(c.Values)+len(c.Margins)+len(c.Findings)+len(c.Open) == 0
}

// Compare gives the changes from an older report to a newer one.
func Compare(was, is *check.Report) *Changes {
	c := &Changes{Inputs: []Input{}, Values: []Value{}, Margins: []Margin{}, Findings: []Finding{}, Open: []Finding{}}
	c.inputs(was.Plant.File, is.Plant.File)
	c.values(was, is)
	c.margins(was, is)
	c.Findings = differ(findings(was), findings(is))
	c.Open = differ(unknowns(was), unknowns(is))
	return c
}

// stated is a statement in its place, by what it is about.
type stated struct {
	where, key, text string
	line             int
}

// statements lists a file's statements. The key says which statement of another
// revision speaks of the same: block, word and name, and of several alike which.
func statements(f *lang.File) []stated {
	var out []stated
	seen := map[string]int{}
	lang.Walk(f, func(st *lang.Statement) bool {
		where := ""
		for up := st.Parent; up != nil; up = up.Parent {
			where = up.Head.Keyword + nameOf(up) + "/" + where
		}
		key := where + st.Head.Keyword + nameOf(st)
		seen[key]++
		if n := seen[key]; n > 1 {
			key += "#" + lang.Num(float64(n), 6)
		}
		line, _ := f.Source.Position(st.Base)
		out = append(out, stated{strings.TrimSuffix(where, "/"), key, strings.Join(strings.Fields(st.Head.Text), " "), line})
		return true
	})
	return out
}

func nameOf(st *lang.Statement) string {
	if st.Bound == nil || st.Bound.Name == nil {
		return ""
	}
	e := st.Bound.Name
	return " " + st.Head.Text[e.Span.Start:e.Span.End]
}

func (c *Changes) inputs(was, is *lang.File) {
	old := map[string]stated{}
	for _, s := range statements(was) {
		old[s.key] = s
	}
	have := map[string]bool{}
	for _, s := range statements(is) {
		have[s.key] = true
		o, ok := old[s.key]
		switch {
		case !ok:
			c.Inputs = append(c.Inputs, Input{Where: s.where, What: "added", Is: s.text, Line: s.line})
		case o.text != s.text:
			c.Inputs = append(c.Inputs, Input{Where: s.where, What: "changed", Was: o.text, Is: s.text, Line: s.line})
		}
	}
	for _, s := range statements(was) {
		if !have[s.key] {
			c.Inputs = append(c.Inputs, Input{Where: s.where, What: "removed", Was: s.text, Line: s.line})
		}
	}
}

// system is how the newer revision writes its numbers.
func system(rep *check.Report) lang.System {
	if rep.Plant.US() {
		return lang.US
	}
	return lang.Metric
}

func (c *Changes) values(was, is *check.Report) {
	sys := system(is)
	show := func(q *solve.Quantity) string {
		if !q.Known() {
			return ""
		}
		return report.Show(q, sys)
	}
	old := map[string]*solve.Quantity{}
	list := was.Results.All()
	for i := range list {
		old[list[i].Path()] = &list[i]
	}
	have := map[string]bool{}
	now := is.Results.All()
	for i := range now {
		q := &now[i]
		path := q.Path()
		have[path] = true
		o := old[path]
		if o.Known() && q.Known() && math.Abs(o.Num-q.Num) <= 1e-9*(math.Abs(o.Num)+math.Abs(q.Num)) || !o.Known() && !q.Known() {
			continue
		}
		c.Values = append(c.Values, Value{path, show(o), show(q)})
	}
	for i := range list {
		if path := list[i].Path(); !have[path] && list[i].Known() {
			c.Values = append(c.Values, Value{path, show(&list[i]), ""})
		}
	}
}

func (c *Changes) margins(was, is *check.Report) {
	type key struct {
		rule, path string
		least      bool
	}
	old := map[key]*check.Comparison{}
	for i := range was.Comparisons {
		x := &was.Comparisons[i]
		old[key{x.Rule, x.Quantity.Path(), x.AtLeast}] = x
	}
	for i := range is.Comparisons {
		x := &is.Comparisons[i]
		k := key{x.Rule, x.Quantity.Path(), x.AtLeast}
		o := old[k]
		if o == nil {
			continue
		}
		delete(old, k) // a limit that is asked twice is told once
		a, ok1 := o.Used()
		b, ok2 := x.Used()
		moved := ok1 && ok2 && math.Abs(a-b) > 5e-4
		if moved || o.Holds != x.Holds {
			c.Margins = append(c.Margins, Margin{x.Rule, k.path, a, b, o.Holds && !x.Holds, !o.Holds && x.Holds})
		}
	}
}

func findings(rep *check.Report) []Finding {
	var out []Finding
	for i := range rep.Findings {
		f := report.Finding("", rep, &rep.Findings[i])
		out = append(out, Finding{Rule: f.Rule, Severity: f.Severity, Part: f.Part, Message: f.Message, Line: f.Line})
	}
	return out
}

func unknowns(rep *check.Report) []Finding {
	var out []Finding
	for i := range rep.Unknowns {
		u := &rep.Unknowns[i]
		line, _ := rep.Plant.File.Source.Position(u.Span.Start)
		out = append(out, Finding{Rule: u.Rule, Part: u.Part, Message: "needs " + u.Needs, Line: line})
	}
	return out
}

// differ gives what is new and what is gone. A finding stays the same when its
// rule and part do, though its numbers move.
func differ(was, is []Finding) []Finding {
	count := map[[2]string]int{}
	for _, f := range was {
		count[[2]string{f.Rule, f.Part}]++
	}
	out := []Finding{}
	left := map[[2]string]int{}
	for _, f := range is {
		k := [2]string{f.Rule, f.Part}
		if count[k] > 0 {
			count[k]--
			left[k]++
			continue
		}
		f.What = "new"
		out = append(out, f)
	}
	for _, f := range was {
		k := [2]string{f.Rule, f.Part}
		if left[k] > 0 {
			left[k]--
			continue
		}
		f.What = "gone"
		out = append(out, f)
	}
	return out
}
