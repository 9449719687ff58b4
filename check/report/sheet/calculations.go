package sheet

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"example.org/tundish/check/cite"
	"example.org/tundish/check/draw"
	"example.org/tundish/check/plant"
	"example.org/tundish/check/report"
	"example.org/tundish/check/solve"
	"example.org/tundish/lang"
)

// Block is one block of the specification with the calculations of its parts.
type Block struct {
	Number int
	Title  string
	Parts  []Part
}

// Part is one part with its calculations.
type Part struct {
	ID, Label, Kind, Text string
	Line                  int
	Calcs                 []Calc
}

// Calc is one calculation: one row of the values.
type Calc struct {
	ID, Ref  string // anchor, and number as printed: "3.12"
	Path     string // stable name: part.value[.statistic][.case]
	Title    string
	Case     string // firing case in words; empty without one
	Formula  string
	Inputs   string
	Result   string
	Missing  string // what it needs, for a value that could not be computed
	Source   Source
	Limits   []Limit
	Findings []int // numbers of the findings that judged it
}

// Limit is one comparison with a limit.
type Limit struct {
	Rule, Path, Found string
	Text              string // "at most 1 mbar"
	Holds             bool
	Used              string // share of the limit used, "34 %"; empty for a limit of zero
	Margin            string // what is left, "66 %"
	Share             float64
	Source            Source
	Because           string // reason of a project that put its own limit in
}

// Width is the length of the bar that shows the share used, in percent.
func (l Limit) Width() int { return int(math.Round(100 * min(max(l.Share, 0), 1))) }

// Row is one line of the list of tightest limits.
type Row struct {
	ID, Ref, Title, Part string
	Limit                Limit
}

var caseText = map[solve.Case]string{
	solve.AllFull: "every unit at full fire", solve.AllLow: "every unit at minimum fire", solve.OneLow: "this unit at minimum, the others at full fire",
	solve.OneAlone: "this unit alone at minimum fire", solve.OneOff: "the largest unit off, the others at full fire", solve.ColdStart: "this unit alone in a cold flue",
}

// calculations groups every computed value by block and part.
func (b *builder) calculations() {
	p, all := b.rep.Plant, b.rep.Results.All()
	limits := b.limits()
	judged := map[string][]int{}
	for i := range b.rep.Findings {
		if q := b.rep.Findings[i].Quantity; q != nil {
			judged[q.Path()] = append(judged[q.Path()], i+1)
		}
	}
	byPart := map[*plant.Part][]*solve.Quantity{}
	var parts []*plant.Part
	for i := range all {
		q := &all[i]
		if byPart[q.Part] == nil {
			parts = append(parts, q.Part)
		}
		byPart[q.Part] = append(byPart[q.Part], q)
	}
	block := func(x *plant.Part) *plant.Part { return blockOf(p, x) }
	sort.SliceStable(parts, func(i, j int) bool {
		x, y := block(parts[i]), block(parts[j])
		if x.Span().Start != y.Span().Start {
			return x.Span().Start < y.Span().Start
		}
		if s, t := parts[i].Span().Start, parts[j].Span().Start; s != t {
			return s < t
		}
		return parts[i].ID < parts[j].ID
	})
	var last string
	n := 0
	for _, x := range parts {
		title := blockTitle(block(x))
		if title != last || len(b.s.Blocks) == 0 {
			b.s.Blocks = append(b.s.Blocks, Block{Number: len(b.s.Blocks) + 1, Title: title})
			last, n = title, 0
		}
		to := &b.s.Blocks[len(b.s.Blocks)-1]
		part := b.part(x)
		for _, q := range byPart[x] {
			n++
			c := b.calc(q)
			c.Ref = fmt.Sprintf("%d.%d", to.Number, n)
			c.Limits, c.Findings = limits[c.Path], judged[c.Path]
			delete(limits, c.Path)
			part.Calcs = append(part.Calcs, c)
			b.s.Verdict.Calculations++
		}
		to.Parts = append(to.Parts, part)
	}
	for i := range b.rep.Comparisons { // in order of judging, not of the map
		path := b.rep.Comparisons[i].Quantity.Path()
		b.s.Further = append(b.s.Further, limits[path]...)
		delete(limits, path)
	}
	b.tightest()
}

func blockTitle(x *plant.Part) string {
	if x.Stmt == nil {
		return heading(x.Label())
	}
	t := heading(x.Stmt.Head.Keyword)
	if x.Name != "" && x.Of <= 1 {
		t += " " + x.Name
	}
	return t
}

func (b *builder) part(x *plant.Part) Part {
	out := Part{ID: draw.Anchor(x.Address), Label: x.Label(), Kind: words(x.Kind)}
	if x.Stmt != nil && x.File != nil {
		out.Line, _ = x.File.Source.Position(x.Stmt.Base)
		if x.Stmt.Head.Text != x.Stmt.Head.Keyword {
			out.Text = squeeze(x.Stmt.Head.Text)
		}
	}
	if strings.EqualFold(words(out.Label), out.Kind) {
		out.Kind = ""
	}
	return out
}

func (b *builder) calc(q *solve.Quantity) Calc {
	c := Calc{Path: q.Path(), Title: heading(q.Name), Case: caseText[q.Case], Missing: q.Missing}
	c.ID = Anchor("value " + c.Path)
	if q.Stat != solve.Plain {
		c.Title += ", " + q.Stat.String()
	}
	if q.Known() {
		c.Result = report.Show(q, b.system())
	}
	if q.Formula != nil {
		c.Formula, c.Source = q.Formula.Text, b.cite(q.Formula.Source)
	}
	c.Inputs = report.InputsText(q, b.system())
	return c
}

// limits gathers the comparisons by the value they judged.
func (b *builder) limits() map[string][]Limit {
	out := map[string][]Limit{}
	for i := range b.rep.Comparisons {
		c := &b.rep.Comparisons[i]
		path := c.Quantity.Path()
		unit := c.Limit.Unit
		if unit == "" {
			unit = c.Quantity.Unit
		}
		show := func(v float64) string {
			if unit == "" {
				return lang.Quantity(v, c.Limit.Dim, b.system())
			}
			return lang.In(v, unit)
		}
		word := "at most "
		if c.AtLeast {
			word = "at least "
		}
		l := Limit{
			Rule: c.Rule, Path: path, Found: show(c.Quantity.Num), Text: word + show(c.Limit.Num), Holds: c.Holds,
			Source: b.cite(c.Limit.Source), Because: c.Limit.Because,
		}
		if share, ok := c.Used(); ok && !math.IsInf(share, 0) && share > -10 && share < 100 {
			l.Share = share
			l.Used, l.Margin = percent(share), percent(1-share)
		}
		if !repeats(out[path], l) {
			out[path] = append(out[path], l)
		}
		b.s.Verdict.Limits++
	}
	return out
}

func repeats(list []Limit, l Limit) bool {
	for _, x := range list {
		if x == l {
			return true
		}
	}
	return false
}

// percent prints a share; one that is not whole is never rounded to 100 %.
func percent(share float64) string {
	p := 100 * share
	if r := math.Round(p); math.Abs(p) < 1000 && (r != 100 && r != 0 || r == p) {
		return lang.Num(r, 4) + " %"
	}
	return lang.Num(p, 4) + " %"
}

// tightest lists the limits of which most is used, each once.
func (b *builder) tightest() {
	var rows []Row
	for i := range b.s.Blocks {
		for j := range b.s.Blocks[i].Parts {
			part := &b.s.Blocks[i].Parts[j]
			for k := range part.Calcs {
				c := &part.Calcs[k]
				for _, l := range c.Limits {
					if l.Used != "" {
						rows = append(rows, Row{ID: c.ID, Ref: c.Ref, Title: c.Title, Part: part.Label, Limit: l})
					}
				}
			}
		}
	}
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].Limit.Share > rows[j].Limit.Share })
	seen := map[string]bool{}
	for _, r := range rows {
		if key := r.Title + r.Limit.Rule + r.Limit.Text + r.Limit.Found; !seen[key] && len(b.s.Tightest) < 12 {
			seen[key] = true
			b.s.Tightest = append(b.s.Tightest, r)
		}
	}
}

// Anchor is the id of a name on the page: letters, digits and hyphens.
func Anchor(name string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r >= 'a' && r <= 'z', r >= 'A' && r <= 'Z', r >= '0' && r <= '9', r == '-':
			return r
		}
		return '_'
	}, name)
}

// Source is a cited work as it is printed, with how it was read.
type Source struct {
	Work, Edition, Clause, Read, Note string
}

// cite turns a source into its printed form and counts it.
func (b *builder) cite(c cite.Source) Source {
	s := Source{c.Work, c.Edition, c.Clause, string(c.Read), c.Note}
	if s.Work == "" {
		return s
	}
	if b.cited == nil {
		b.cited = map[Source]int{}
	}
	b.cited[Source{Work: s.Work, Edition: s.Edition, Read: s.Read}]++
	return s
}

// Line is the source in one line, without how it was read.
func (s Source) Line() string {
	return cite.Source{Work: s.Work, Edition: s.Edition, Clause: s.Clause}.String()
}

// Tag is the class of how the source was read, for its look.
func (s Source) Tag() string {
	switch cite.Read(s.Read) {
	case cite.Published:
		return "published"
	case cite.Memory:
		return "memory"
	}
	return "practice"
}
