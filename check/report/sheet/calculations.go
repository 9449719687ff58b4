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
	Kinds  []Kind
}

// Kind is the parts of one kind in a block. What is computed alike for each of
// them is one calculation with a row for each.
type Kind struct {
	Word   string // "unit", "branch"
	Stated []Stated
	Calcs  []Calc
}

// Stated is a statement with the parts that it makes.
type Stated struct {
	Text  string
	Line  int
	Parts []Part
}

// Part is one part of the plant.
type Part struct{ ID, Label string }

// Calc is one calculation, done for one part or for several alike.
type Calc struct {
	Ref     string // number as printed: "3.12"
	Title   string
	Case    string // firing case in words; empty without one
	Formula string
	Path    string // how the stable names of several rows end: ".gas-pressure.all-full"
	Inputs  string // the numbers put in that are the same in every row
	Source  Source
	Against []Limit // the limits that rows were held against, each once
	Rows    []Row

	key string
}

// Row is one row of the values.
type Row struct {
	ID       string // anchor
	Path     string // stable name: part.value[.statistic][.case]
	Part     string
	Inputs   string
	Result   string
	Missing  string // what it needs, for a value that could not be computed
	Limits   []Limit
	Findings []int // numbers of the findings that judged it

	inputs []string
}

// Short reports that a row says no more than its result.
func (c Calc) Short() bool {
	for _, r := range c.Rows {
		if r.Inputs != "" || r.Missing != "" || len(r.Limits)+len(r.Findings) > 0 {
			return false
		}
	}
	return len(c.Rows) > 1
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

// Tight is one line of the list of tightest limits.
type Tight struct {
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
	for _, x := range parts {
		title := blockTitle(block(x))
		if title != last || len(b.s.Blocks) == 0 {
			b.s.Blocks = append(b.s.Blocks, Block{Number: len(b.s.Blocks) + 1, Title: title})
			last = title
		}
		kind := b.s.Blocks[len(b.s.Blocks)-1].kind(words(x.Kind))
		b.state(kind, x)
		at := 0
		for _, q := range byPart[x] {
			c, row := b.calc(q)
			row.Limits, row.Findings = limits[row.Path], judged[row.Path]
			delete(limits, row.Path)
			at = kind.add(c, row, at) + 1
			b.s.Verdict.Calculations++
		}
	}
	for i := range b.s.Blocks {
		b.s.Blocks[i].close()
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

// state lists a part under its statement.
func (b *builder) state(k *Kind, x *plant.Part) {
	st := Stated{}
	if x.Stmt != nil && x.File != nil {
		st.Line, _ = x.File.Source.Position(x.Stmt.Base)
		if x.Stmt.Head.Text != x.Stmt.Head.Keyword {
			st.Text = squeeze(x.Stmt.Head.Text)
		}
	}
	n := len(k.Stated)
	if n == 0 || st.Line == 0 || k.Stated[n-1].Line != st.Line || k.Stated[n-1].Text != st.Text {
		k.Stated = append(k.Stated, st)
		n++
	}
	k.Stated[n-1].Parts = append(k.Stated[n-1].Parts, Part{ID: draw.Anchor(x.Address()), Label: x.Label()})
}

// calc gives the calculation of a quantity and its row in it.
func (b *builder) calc(q *solve.Quantity) (Calc, Row) {
	c := Calc{Title: heading(q.Name), Case: caseText[q.Case]}
	row := Row{Path: q.Path(), Part: q.Part.Address(), inputs: report.Inputs(q, b.system()), Missing: q.Missing}
	row.ID = Anchor("value " + row.Path)
	if q.Stat != solve.Plain {
		c.Title += ", " + q.Stat.String()
	}
	c.Path = strings.TrimPrefix(row.Path, q.Part.Address())
	if q.Known() {
		row.Result = report.Show(q, b.system())
	}
	if q.Formula != nil {
		c.Formula, c.Source = q.Formula.Text, b.cite(q.Formula.Source)
	}
	c.key = strings.Join([]string{q.Name, q.Stat.String(), q.Case.String(), c.Formula, c.Source.Line(), c.Source.Read}, "\x00")
	return c, row
}

// kind finds or adds the parts of a kind.
func (bl *Block) kind(word string) *Kind {
	for i := range bl.Kinds {
		if bl.Kinds[i].Word == word {
			return &bl.Kinds[i]
		}
	}
	bl.Kinds = append(bl.Kinds, Kind{Word: word})
	return &bl.Kinds[len(bl.Kinds)-1]
}

// add puts a row to its calculation, which is put in at the place given when it
// is the first of its kind, so that what belongs together stays together. It
// returns the place of the calculation.
func (k *Kind) add(c Calc, row Row, at int) int {
	for i := range k.Calcs {
		if k.Calcs[i].key == c.key {
			k.Calcs[i].Rows = append(k.Calcs[i].Rows, row)
			return i
		}
	}
	c.Rows = []Row{row}
	at = min(at, len(k.Calcs))
	k.Calcs = append(k.Calcs[:at], append([]Calc{c}, k.Calcs[at:]...)...)
	return at
}

// close numbers the calculations and draws together what their rows share.
func (bl *Block) close() {
	n := 0
	for i := range bl.Kinds {
		for j := range bl.Kinds[i].Calcs {
			c := &bl.Kinds[i].Calcs[j]
			n++
			c.Ref = fmt.Sprintf("%d.%d", bl.Number, n)
			c.draw()
		}
	}
}

// draw takes together what the rows of a calculation share.
func (c *Calc) draw() {
	count := map[string]int{}
	for i := range c.Rows {
		for _, in := range c.Rows[i].inputs {
			count[in]++
		}
		for _, l := range c.Rows[i].Limits {
			if head := (Limit{Rule: l.Rule, Text: l.Text, Source: l.Source, Because: l.Because}); !repeats(c.Against, head) {
				c.Against = append(c.Against, head)
			}
		}
	}
	var shared []string
	for _, in := range c.Rows[0].inputs {
		if count[in] == len(c.Rows) {
			shared = append(shared, in)
		}
	}
	c.Inputs = strings.Join(shared, ", ")
	for i := range c.Rows {
		r := &c.Rows[i]
		var own []string
		for _, in := range r.inputs {
			if count[in] < len(c.Rows) {
				own = append(own, in)
			}
		}
		r.Inputs = strings.Join(own, ", ")
	}
}

// limits gathers the comparisons by the value they judged.
func (b *builder) limits() map[string][]Limit {
	out := map[string][]Limit{}
	for i := range b.rep.Comparisons {
		c := &b.rep.Comparisons[i]
		path := c.Quantity.Path()
		word := "at most "
		if c.AtLeast {
			word = "at least "
		}
		l := Limit{
			Rule: c.Rule, Path: path, Found: c.Show(c.Quantity.Num), Text: word + c.Show(c.Limit.Num), Holds: c.Holds,
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
	var rows []Tight
	for _, bl := range b.s.Blocks {
		for _, k := range bl.Kinds {
			for i := range k.Calcs {
				c := &k.Calcs[i]
				for _, row := range c.Rows {
					for _, l := range row.Limits {
						if l.Used != "" {
							rows = append(rows, Tight{ID: row.ID, Ref: c.Ref, Title: c.Title, Part: row.Part, Limit: l})
						}
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
